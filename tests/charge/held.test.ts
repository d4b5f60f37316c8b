import { check, gauge, temperature, type Reading, type Reason, type Specification } from 'isochore';
import { describe, expect, test } from 'vitest';
import { held } from '../../src/charge/held.js';
import { slips } from '../../src/verdict/slips.js';
import { bar, celsius, readingWith, reads, specOf, specWith } from '../support/accumulator.js';
import { onlyNormal } from '../support/instruments.js';

// 140 bar at 20 °C, so 152.6 bar at 40 °C, ± 2 bar; and one of 100 bar, which is 1450 psi.
const spec = specWith();
const low = specOf(100, 20);

const CLEARED = { possibleSlip: 'read again and ruled out' } as const;

const ASKED: readonly (readonly [string, Specification, Reading, readonly Reason[]])[] = [
  ['104 °F typed as °C, undercharged', spec, reads(152, { temperature: celsius(104) }), []],
  ['40 °C typed as °F, overcharged', spec, reads(153, { temperature: temperature(40, '°F') }), []],
  [
    '153 bar stated in kPa, empty',
    spec,
    readingWith({ pressure: gauge(153, 'kPa'), gaugeStep: { step: 1, unit: 'kPa' } }),
    ['reads zero', 'not investigated'],
  ],
  [
    '1450 psi stated in bar, beyond the scale',
    low,
    reads(1450, { temperature: celsius(20), fullScale: bar(250) }),
    ['beyond the scale'],
  ],
];

describe.each(ASKED)('gas on a reading that may be a slip: %s', (_, of, reading, because) => {
  const found = check(of, reading);

  test('is held back, with a caution before all others, and nothing else of the check is changed', () => {
    const { check: after, slips: candidates } = held(of, reading, found, undefined);
    expect(candidates.length).toBeGreaterThan(0);
    expect(candidates).toEqual(slips(of, reading).candidates);
    expect(after.charge).toEqual({ action: 'withheld', because: [...because, 'slip possible'] });
    const [first, ...others] = after.cautions;
    expect(first?.code).toBe('slip possible');
    expect({ ...after, charge: found.charge, cautions: others }).toEqual(found);
  });

  test('is not once the slip was ruled out', () => {
    const cleared = { ...reading, ...CLEARED };
    expect(held(of, cleared, found, undefined)).toEqual({ check: found, slips: [] });
  });
});

test.each<[string, Reading]>([
  ['no unit explains', reads(100)],
  ['lies in its band', reads(152.5)],
  ['is no evidence in any unit', reads(15.3, { oilSide: 'not drained' })],
])('nothing is held back on a reading that %s', (_, reading) => {
  const found = check(spec, reading);
  expect(held(spec, reading, found, undefined)).toEqual({ check: found, slips: [] });
});

test('nor on one that its instruments explain', () => {
  // 140 on a gauge in bar, stated in kgf/cm2: 137.3 bar, where 138 to 142 are allowed.
  const reading = readingWith({ pressure: gauge(140, 'kgf/cm2'), temperature: celsius(20) });
  const found = check(spec, reading);
  expect(found.verdict.outcome).toBe('undercharged');
  expect(held(spec, reading, found, onlyNormal(2)).slips).toEqual([]);
  expect(held(spec, reading, found, onlyNormal(0.2)).slips).not.toEqual([]);
});
