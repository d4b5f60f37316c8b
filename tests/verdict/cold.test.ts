import {
  check,
  gauge,
  nitrogen,
  pressureDifference,
  specification,
  standardAtmosphere,
  temperature,
  volume,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { problemOf } from '../support/problem.js';

// A pre-charge so low that in the cold its band passes zero gauge: there an empty vessel would count as charged.
const at = (celsius: number, bar: number) => ({
  pressure: gauge(bar, 'bar'),
  temperature: temperature(celsius, '°C'),
  ambient: standardAtmosphere,
  gaugeStep: { step: 0.01, unit: 'bar' } as const,
  oilSide: 'drained, zero verified' as const,
  gasInside: 'nitrogen' as const,
  minutesAtRest: 30,
});
const low = specification({
  gas: nitrogen,
  precharge: { pressure: gauge(0.2, 'bar'), temperature: temperature(20, '°C') },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: pressureDifference(0.1, 'bar'), applies: 'at the measured temperature' },
  separator: 'bladder',
  gasVolume: volume(1, 'L'),
  allowable: gauge(10, 'bar'),
  settling: { allowance: pressureDifference(0, 'bar'), minutes: 5 },
});

describe('a band that passes zero in the cold', () => {
  test.each([0, -0.01, -0.1, 0.05])('judges no reading: %d bar', (bar) => {
    expect(problemOf(() => check(low, at(-60, bar)))).toMatchObject({ code: 'band reaches zero', path: 'temperature' });
  });
  test('judges where it is above zero', () => {
    expect(check(low, at(20, 0.2)).verdict.outcome).toBe('within');
  });
});

test('a system pressure below vacuum is refused', () => {
  const reading = { ...at(20, 0.2), systemPressure: gauge(-5, 'bar') };
  expect(problemOf(() => check(low, reading))).toMatchObject({ code: 'below vacuum', path: 'systemPressure' });
});

test('a tolerance too small for doubles is no band', () => {
  const given = { ...low, tolerance: { ...low.tolerance, plusMinus: pressureDifference(1e-20, 'bar') } };
  expect(problemOf(() => specification(given))).toMatchObject({ code: 'band without width', path: 'tolerance' });
});
