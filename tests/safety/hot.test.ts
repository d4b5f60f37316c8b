import { gauge, pressureWhenHot, standardAtmosphere, temperature, type Conditions } from 'isochore';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anySpec, bar, celsius, hPa, reads, specBy, specOf, specWith, tableOf } from '../support/accumulator.js';
import { numberRows } from '../support/reference.js';
import { problemOf } from '../support/problem.js';

const at = (t_C: number, ambient = standardAtmosphere): Conditions => ({ temperature: celsius(t_C), ambient });

describe('lines of constant density in tests/reference/isochore.csv', () => {
  const rows = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', 'p_gauge_span2000_bar']).filter(
    (row) => row.p_ref_gauge_bar >= 50 && row.T_C >= row.T_ref_C,
  );
  test('the gas of the target when hot, to 1e-8 bar of the same equation in another program', () => {
    expect(rows.length).toBeGreaterThan(100);
    for (const row of rows) {
      const spec = specOf(row.p_ref_gauge_bar, row.T_ref_C, { allowable: bar(700) });
      const { pressure } = pressureWhenHot(spec, 'target', at(row.T_C));
      expect(Math.abs(pressure.pascals / 1e5 - row.p_gauge_span2000_bar)).toBeLessThan(1e-8);
    }
  });
});

describe('against the allowable pressure', () => {
  test('on it is not above it, one bit more is', () => {
    const spec = specOf(140, 20);
    const hot = pressureWhenHot(spec, 'target', at(60)).pressure.pascals;
    const of = (allowable: number) =>
      pressureWhenHot(specOf(140, 20, { allowable: gauge(allowable, 'Pa') }), 'target', at(60));
    expect(of(hot).outcome).toBe('not above the allowable pressure');
    expect(of(hot - 1).outcome).toBe('above the allowable pressure');
    expect(of(hot - 1).cautions.map(({ code }) => code)).toEqual([
      'hot gas above the allowable pressure',
      'stored pressure',
      'maker decides',
    ]);
    expect(of(hot + 5).belowAllowable.pascals).toBeCloseTo(5, 6);
  });

  test('the upper limit is above the target, and a reading is itself', () => {
    const spec = specWith();
    const [target, upper] = (['target', 'upper limit'] as const).map((gas) => pressureWhenHot(spec, gas, at(60)));
    // The example of tests/reference/README.md: 140 bar at 20 °C is 165.17 bar at 60 °C.
    expect((target?.pressure.pascals ?? 0) / 1e5).toBeCloseTo(165.17, 2);
    expect(upper?.pressure.pascals).toBeGreaterThan((target?.pressure.pascals ?? 0) + 2e5);
    const read = reads(142, { temperature: celsius(20) });
    expect(pressureWhenHot(spec, read, at(60)).pressure.pascals).toBeCloseTo(upper?.pressure.pascals ?? 0, 6);
  });

  test('of a table it is the line through its reference temperature', () => {
    const table = specBy(
      tableOf([
        [140, 20],
        [150, 40],
      ]),
    );
    expect(pressureWhenHot(table, 'target', at(60)).pressure).toEqual(
      pressureWhenHot(specWith(), 'target', at(60)).pressure,
    );
  });
});

test('the most that the gas may have now comes to the allowable pressure when hot', () => {
  fc.assert(
    fc.property(anySpec, fc.integer({ min: 41, max: 90 }), (spec, t) => {
      const { mostNow, allowable } = pressureWhenHot(spec, 'target', at(t));
      const read = { ...mostNow, ambient: spec.ambient };
      const again = pressureWhenHot(spec, read, at(t));
      expect(Math.abs(again.pressure.pascals - allowable.pascals)).toBeLessThan(1e-8 * allowable.pascals);
    }),
    { numRuns: 100 },
  );
});

test('hotter is more', () => {
  const pressures = [20, 30, 45, 60, 80].map((t) => pressureWhenHot(specWith(), 'target', at(t)).pressure.pascals);
  expect([...pressures].sort((a, b) => a - b)).toEqual(pressures);
  expect(new Set(pressures).size).toBe(5);
});

describe('what is refused', () => {
  const spec = specWith();
  test('a hottest temperature below the reading', () => {
    const problem = problemOf(() => pressureWhenHot(spec, reads(143), at(39)));
    expect(problem).toMatchObject({ code: 'not the hottest', path: 'hottest.temperature' });
    expect(pressureWhenHot(spec, reads(143), at(40)).pressure).toEqual(bar(143));
  });
  test.each([
    ['another word', 'reading', at(60), 'unknown word', 'gas'],
    ['nothing', null, at(60), 'wrong kind', 'gas.temperature'],
    ['no conditions', 'target', null, 'wrong kind', 'hottest.temperature'],
    ['a barometer in bar', 'target', { ...at(60), ambient: hPa(1.013) }, 'not an ambient pressure', 'hottest.ambient'],
    [
      'an oven',
      'target',
      { ...at(60), temperature: temperature(1001, 'K') },
      'outside the model',
      'hottest.temperature',
    ],
  ])('%s', (_, gas, hottest, code, path) => {
    expect(problemOf(() => pressureWhenHot(spec, gas as never, hottest as never))).toMatchObject({ code, path });
  });
  test('a copy of a specification', () => {
    expect(problemOf(() => pressureWhenHot({ ...spec }, 'target', at(60))).code).toBe('unchecked specification');
  });
});
