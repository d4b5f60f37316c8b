import fc from 'fast-check';
import { cubicNitrogen, nitrogen, type GasModel } from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { densityRoot, increasingRoot } from '../../src/gas/solve.js';
import { evenly } from '../support/evenly.js';

// A mistake in a slope or in a first guess leaves every answer right and only makes the search longer, until one day it
// does not close. So the work is counted, never timed.

/** The model with a kernel that counts how often its pressure is asked for. */
function counting(model: GasModel): { model: GasModel; count: () => number } {
  let calls = 0;
  const { pvt } = model['~kernel'];
  const kernel = {
    ...model['~kernel'],
    pvt: (...of: Parameters<typeof pvt>): void => {
      calls += 1;
      pvt(...of);
    },
  };
  return { model: { ...model, '~kernel': kernel }, count: () => calls };
}

const pressure = (model: GasModel, T: number, rho: number): number => {
  const out = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
  model['~kernel'].pvt(T, rho, out);
  return out.p_Pa;
};

test.each([
  [nitrogen, 170, 8],
  [cubicNitrogen, 170, 8],
] as const)('$id: the temperature of a density takes few pressures', (model, from, most) => {
  let worst = 0;
  fc.assert(
    fc.property(evenly(from, 1000), evenly(1, 80e6), (T, p) => {
      const rho = model['~kernel'].density(T, p);
      const counted = counting(model);
      const found = temperatureAt(counted.model, rho, pressure(model, T, rho), 'test');
      expect(found).toBeCloseTo(T, 7);
      worst = Math.max(worst, counted.count());
    }),
    { numRuns: 300 },
  );
  expect(worst).toBeLessThanOrEqual(most);
});

// Its solver looks at the size of a step once for each evaluation.
test('the cubic equation: a density takes few evaluations', () => {
  let worst = 0;
  fc.assert(
    fc.property(evenly(160, 1000), evenly(1, 100e6), (T, p) => {
      const size = vi.spyOn(Math, 'abs');
      try {
        cubicNitrogen['~kernel'].density(T, p);
        expect(size.mock.calls).not.toEqual([]);
        worst = Math.max(worst, size.mock.calls.length);
      } finally {
        size.mockRestore();
      }
    }),
    { numRuns: 300 },
  );
  expect(worst).toBeLessThanOrEqual(6);
});

// On functions whose roots are known, with every evaluation counted.
describe('the two roots close as Newton does', () => {
  test.each([
    ['a straight line', (x: number) => 3 * x - 1, () => 3, 2],
    ['an exponential', Math.exp, Math.exp, 5],
    ['a square', (x: number) => x * x, (x: number) => 2 * x, 5],
  ])('increasingRoot, on %s', (_, value, slope, most) => {
    let calls = 0;
    const found = increasingRoot(
      (x, out) => {
        calls += 1;
        out.value = value(x);
        out.slope = slope(x);
      },
      value(0.7),
      0,
      2,
    );
    expect(Math.abs(found - 0.7)).toBeLessThanOrEqual(1e-15);
    expect(calls).toBeLessThanOrEqual(most);
  });

  test.each([
    ['an ideal gas', () => 1, () => 1, 0.5, 2],
    ['a straight line in the logarithms', (rho: number) => rho, (rho: number) => 2 * rho, 0.5, 4],
    ['a virial equation of hard spheres', (rho: number) => 1 + rho, (rho: number) => 1 + 2 * rho, 1.5, 4],
    ['a virial equation with attraction', (rho: number) => 1 - rho / 5, (rho: number) => 1 - (2 * rho) / 5, 1.5, 5],
  ])('densityRoot, on %s', (_, z, zz, root, most) => {
    let calls = 0;
    const found = densityRoot(
      (rho, out) => {
        calls += 1;
        out.z = z(rho);
        out.zz = zz(rho);
      },
      root * z(root),
      1,
      2,
    );
    expect(Math.abs(found - root)).toBeLessThanOrEqual(4e-15);
    expect(calls).toBeLessThanOrEqual(most);
  });
});
