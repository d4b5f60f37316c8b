import { absolute, idealNitrogen, nitrogen, purge, stateAt, temperature, volume, type Purge } from 'isochore';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { celsius } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';

const GIVEN: Purge = {
  gas: nitrogen,
  gasVolume: volume(5, 'L'),
  high: absolute(10, 'bar'),
  low: absolute(1, 'bar'),
  temperature: celsius(20),
  before: 0.21,
  inSupply: 0,
  wanted: 1e-4,
};
const run = (changed: Partial<Purge> = {}) => purge({ ...GIVEN, ...changed });

describe('closed form: x_n = x_0 (p_low / p_high)^n', () => {
  test('by the ideal gas', () => {
    const { left, fillings, outcome } = run({ gas: idealNitrogen });
    expect(outcome).toBe('reached');
    expect(fillings).toBe(4);
    left.forEach((x, i) => {
      expect(relativeError(x, 0.21 * 0.1 ** (i + 1))).toBeLessThan(1e-12);
    });
  });

  test('by the real gas, with amounts for pressures', () => {
    const [high, low] = [GIVEN.high, GIVEN.low].map(
      (pressure) => stateAt(nitrogen, { pressure, temperature: celsius(20) }).density_mol_m3,
    );
    const { ratio, left, gas } = run({ high: GIVEN.high });
    expect(ratio).toBe((low ?? 0) / (high ?? 0));
    expect(relativeError(left[2] ?? 0, 0.21 * ratio ** 3)).toBeLessThan(1e-14);
    expect(relativeError(gas.amount.moles, left.length * 0.005 * ((high ?? 0) - (low ?? 0)))).toBeLessThan(1e-13);
  });

  test('with some of it in the supply: x_n = y + (x_0 - y) r^n', () => {
    const { left, ratio } = run({ inSupply: 5e-5 });
    left.forEach((x, i) => {
      expect(relativeError(x, 5e-5 + (0.21 - 5e-5) * ratio ** (i + 1))).toBeLessThan(1e-12);
    });
  });
});

describe('amount of the other gas is conserved', () => {
  test('filling by filling, counted in mol', () => {
    fc.assert(
      fc.property(evenly(1.5, 150), evenly(0, 1.4), evenly(0.01, 1), evenly(0, 1e-3), (high, low, before, inSupply) => {
        const changed = { high: absolute(high, 'bar'), low: absolute(low, 'bar'), before, inSupply };
        const { left, ratio } = run({ ...changed, wanted: 2e-3 });
        let x = before;
        for (const next of left) {
          // In a volume that holds 1 mol when filled: what was left in, and what the filling brings.
          expect(Math.abs(ratio * x + (1 - ratio) * inSupply - next)).toBeLessThan(1e-15);
          x = next;
        }
        expect(left.at(-1) ?? before).toBeLessThanOrEqual(2e-3);
        expect(left.at(-2) ?? 1).toBeGreaterThan(2e-3);
      }),
      { numRuns: 200 },
    );
  });
});

describe('outcomes', () => {
  test('pure enough already: no filling', () => {
    expect(run({ before: 1e-4 })).toMatchObject({ outcome: 'reached', fillings: 0, left: [] });
  });
  test('from vacuum one filling brings what the supply has', () => {
    expect(run({ low: absolute(0, 'bar'), inSupply: 1e-5 })).toMatchObject({ fillings: 1, left: [1e-5] });
  });
  test('never below what the supply brings', () => {
    expect(run({ inSupply: 1e-3 }).outcome).toBe('not reached by any number of fillings');
    expect(run({ inSupply: 1e-4 }).outcome).toBe('not reached by any number of fillings');
  });
  test('nor by a hundred fillings to hardly more than the ambient pressure', () => {
    const result = run({ high: absolute(1.001, 'bar') });
    expect(result).toMatchObject({ outcome: 'not reached by the most that are counted', fillings: 100 });
    expect(result.left).toHaveLength(100);
  });
  test('the cautions say what is not known, and that it is a calculation', () => {
    expect(run().cautions.map(({ code }) => code)).toEqual([
      'gas not known',
      'purged by calculation',
      'asphyxiation',
      'stored pressure',
      'maker decides',
    ]);
  });
});

describe('what is refused', () => {
  test.each([
    ['a space without volume', { gasVolume: volume(0, 'L') }, 'gasVolume', 'not positive'],
    ['nothing to vent', { low: absolute(10, 'bar') }, 'low', 'pressures crossed'],
    ['per cent', { before: 21 }, 'before', 'outside bounds'],
    ['a negative fraction', { inSupply: -1e-6 }, 'inSupply', 'outside bounds'],
    ['nothing at all', { wanted: 0 }, 'wanted', 'outside bounds'],
    ['no number', { wanted: Number.NaN }, 'wanted', 'not a number'],
    ['too cold', { temperature: temperature(60, 'K') }, 'high', 'outside the model'],
    ['no pressure', { high: undefined }, 'high', 'wrong kind'],
  ])('%s', (_, changed, path, code) => {
    expect(problemOf(() => run(changed as Partial<Purge>))).toMatchObject({ path, code });
  });
});
