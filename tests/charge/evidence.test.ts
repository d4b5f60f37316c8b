import fc from 'fast-check';
import { check, pressureDifference, type Check, type Reading, type Specification } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, pointOf, readingWith, reads, specBy, specWith, tableOf } from '../support/accumulator.js';

// What can hurt: gas moved on a reading that shows something else than the pre-charge.

/** Whether anything in a result is a quantity of gas or a pressure to stop at, wherever it stands. */
function movesGas(charge: Check['charge']): boolean {
  return /"(gas|amount|mass|normalVolume|moles|kilograms|stop|mark)"/.test(JSON.stringify(charge));
}

const specs = [
  specWith(),
  specWith({ tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' } }),
  specWith({ tolerance: { plusMinusPercentOfGauge: 2, applies: 'at the reference temperature' }, allowable: bar(150) }),
];

// At 40 °C the same target to a hundredth of a bar, by a table.
const TABLE = tableOf(
  [
    [140, 20],
    [152.61, 40],
  ],
  { printedStep: barOf(0.01) },
);
const byTable = [
  specBy(TABLE),
  specBy(TABLE, { tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' } }),
  specBy(TABLE, {
    nominal: pointOf(139, 20),
    tolerance: {
      minimum: pointOf(138, 20),
      maximum: tableOf([
        [142, 20],
        [154.6, 40],
      ]),
    },
    allowable: bar(150),
  }),
];

const PRESSURES = [-0.5, 0, 0.1, 1, 20, 130, 143, 150, 152, 152.6, 153, 154, 155, 160, 199, 200, 201, 250].map(bar);

const anyReading: fc.Arbitrary<Reading> = fc
  .record({
    pressure: fc.constantFrom(...PRESSURES),
    gaugeStep: fc.constantFrom<Reading['gaugeStep']>(
      { step: 1, unit: 'bar' },
      { step: 0.1, unit: 'bar' },
      { step: 20, unit: 'psi' },
    ),
    oilSide: fc.constantFrom<Reading['oilSide']>(
      'drained, zero verified',
      'drained, zero verified',
      'not drained',
      'not known',
    ),
    gasInside: fc.constantFrom<Reading['gasInside']>('nitrogen', 'nitrogen', 'nitrogen', 'not known'),
    minutesAtRest: fc.constantFrom<Reading['minutesAtRest']>(0, 4.9, 5, 30, 30, 'not known'),
    system: fc.constantFrom(undefined, undefined, ...PRESSURES),
    cleared: fc.boolean(),
  })
  .map(({ system, cleared, ...rest }) =>
    readingWith({
      ...rest,
      ...(system === undefined ? {} : { systemPressure: system }),
      ...(cleared ? { emptyGasSide: 'investigated and cleared' as const } : {}),
    }),
  );

/** The evidence that the method asks for before a quantity is given, in its own words. */
function onFullEvidence(reading: Reading, { verdict }: Check): boolean {
  const step = pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals;
  const system = reading.systemPressure?.pascals ?? 0;
  // As well as two gauges agree: to a step, or to 2.5 % of the system's (class 2.5 of EN 837-1, from memory).
  const readsTheSystem = system > step && Math.abs(system - reading.pressure.pascals) <= Math.max(step, 0.025 * system);
  const empty = reading.pressure.pascals <= 0.05 * verdict.target.pascals;
  return (
    reading.gasInside === 'nitrogen' &&
    reading.oilSide === 'drained, zero verified' &&
    typeof reading.minutesAtRest === 'number' &&
    reading.minutesAtRest >= 5 &&
    !readsTheSystem &&
    (!empty || reading.emptyGasSide === 'investigated and cleared')
  );
}

describe('without full evidence', () => {
  test('no quantity of gas and no stop pressure, whatever is read', () => {
    const count = { add: 0, vent: 0, none: 0, withheld: 0 };
    fc.assert(
      fc.property(fc.constantFrom<Specification>(...specs, ...byTable), anyReading, (spec, reading) => {
        const result = check(spec, reading);
        const { charge, verdict } = result;
        count[charge.action] += 1;
        if (!onFullEvidence(reading, result)) expect(charge.action).toBe('withheld');
        expect(movesGas(charge)).toBe(charge.action === 'add' || charge.action === 'vent');
        if (charge.action === 'vent') expect(reading.pressure.pascals).toBeGreaterThan(verdict.band.upper.pascals);
        if (charge.action === 'add') expect(reading.pressure.pascals).toBeLessThan(verdict.band.lower.pascals);
        if (charge.action === 'none') {
          expect(verdict.outcome).toBe('within');
          expect(reading.pressure.pascals).toBeLessThanOrEqual(spec.allowable.pascals);
        }
      }),
      { numRuns: 4000 },
    );
    // None of the four is rare enough to have been missed.
    for (const times of Object.values(count)) expect(times).toBeGreaterThan(20);
  });

  const cases: [string, Reading][] = (['not drained', 'not known'] as const).flatMap((oilSide) =>
    [199, 200, 200.4, 201].map((p): [string, Reading] => [
      `${p} bar, system at 200 bar, oil side ${oilSide}`,
      reads(p, { oilSide, systemPressure: bar(200) }),
    ]),
  );
  cases.push(
    ...[199, 200, 201].map((p): [string, Reading] => [
      `${p} bar, system at 200 bar, oil side said to be drained`,
      reads(p, { systemPressure: bar(200) }),
    ]),
  );

  test.each(cases)('no venting on the pressure of the oil: %s', (_, reading) => {
    const { verdict, charge, cautions } = check(specWith(), reading);
    expect(verdict.outcome).toBe('not comparable');
    expect(verdict.because).toContain('reads like system pressure');
    expect(charge.action).toBe('withheld');
    expect(movesGas(charge)).toBe(false);
    expect(cautions[0]?.code).toBe('not comparable');
  });

  test('the same reading with the system elsewhere is vented', () => {
    expect(check(specWith(), reads(200, { systemPressure: bar(50) })).charge.action).toBe('vent');
  });

  test.each([0, 1, -1])('no gas into an empty gas side, %d bar, before its cause is found', (p) => {
    const { charge, cautions } = check(specWith(), reads(p));
    expect(charge).toEqual({ action: 'withheld', because: ['reads zero', 'not investigated'] });
    expect(cautions[0]?.code).toBe('empty gas side');
    const cleared = check(specWith(), reads(p, { emptyGasSide: 'investigated and cleared' }));
    expect(cleared.verdict.outcome).toBe('gas side empty');
    expect(cleared.charge.action).toBe('add');
    expect(cleared.cautions.map(({ code }) => code)).not.toContain('empty gas side');
  });

  test('no quantity where the gauge is too coarse to tell', () => {
    for (const [, narrow = specWith()] of [specs, byTable]) {
      const { verdict, charge } = check(narrow, reads(152));
      expect(verdict.outcome).toBe('gauge too coarse');
      expect(charge).toEqual({ action: 'withheld', because: verdict.because });
    }
  });
});
