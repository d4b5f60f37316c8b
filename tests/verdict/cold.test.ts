import { check, specification, volume } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, celsius, reads, specBy, specOf, tableOf } from '../support/accumulator.js';
import { problemOf } from '../support/problem.js';

// A pre-charge so low that in the cold its band passes zero gauge: there an empty vessel would count as charged.
const low = specOf(0.2, 20, {
  tolerance: { plusMinus: barOf(0.1), applies: 'at the measured temperature' },
  separator: 'bladder',
  gasVolume: volume(1, 'L'),
  allowable: bar(10),
});
const at = (t_C: number, p_bar: number) =>
  reads(p_bar, { temperature: celsius(t_C), gaugeStep: { step: 0.01, unit: 'bar' } });

describe('a band that passes zero in the cold', () => {
  test.each([0, -0.01, -0.1, 0.05])('judges no reading: %d bar', (p_bar) => {
    expect(problemOf(() => check(low, at(-60, p_bar)))).toMatchObject({
      code: 'band reaches zero',
      path: 'temperature',
    });
  });
  test('judges none where the lower limit is zero itself, and says where that is', () => {
    const rows: [number, number][] = [[2, 0], [2.5, 20]]; // prettier-ignore
    const spec = specBy(tableOf(rows), {
      tolerance: { plusMinus: barOf(2), applies: 'at the measured temperature' },
      allowable: bar(10),
    });
    expect(problemOf(() => check(spec, at(0, 2)))).toMatchObject({
      code: 'band reaches zero',
      found: '273.15 K, where the lower limit is 0 bar gauge',
    });
    expect(check(spec, at(1, 2)).verdict.outcome).toBe('within');
  });
  test('judges where it is above zero', () => {
    expect(check(low, at(20, 0.2)).verdict.outcome).toBe('within');
  });
});

test('a system pressure below vacuum is refused', () => {
  const reading = { ...at(20, 0.2), systemPressure: bar(-5) };
  expect(problemOf(() => check(low, reading))).toMatchObject({ code: 'gauge below vacuum', path: 'systemPressure' });
});

test('a tolerance too small for doubles is no band', () => {
  const given = { ...low, tolerance: { ...low.tolerance, plusMinus: barOf(1e-20) } };
  expect(problemOf(() => specification(given))).toMatchObject({ code: 'band without width', path: 'tolerance' });
});
