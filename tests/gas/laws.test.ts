import fc from 'fast-check';
import { nitrogen, type Pvt } from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { RHO_REDUCING } from '../../src/gas/nitrogen/coefficients.js';
import { anyPressure, anyTemperature, at, evenly } from '../support/gas-states.js';
import { numberRows, relativeError } from '../support/reference.js';

// What must hold of any gas above its critical temperature, and of any solver, whatever the equation.

const { pvt, density } = nitrogen['~kernel'];
const R = nitrogen.gasConstant_J_molK;
const [COLDEST, HOTTEST] = nitrogen.validity.temperature_K;
const HIGHEST = nitrogen.validity.pressure_Pa[1];
/** Four times the reducing density, where the solver's bracket ends, mol/m3. */
const BRACKET = 4 * RHO_REDUCING;

function kernelAt(T_K: number, rho_mol_m3: number): Pvt {
  const out: Pvt = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
  pvt(T_K, rho_mol_m3, out);
  return out;
}

describe('density and pressure', () => {
  test('density grows with pressure, for neighbours and for distant pressures', () => {
    const ratio = evenly(0, 1).map((x) => 1e-9 * 10 ** (9 * x));
    fc.assert(
      fc.property(anyTemperature, anyPressure, ratio, (T, p, more) => {
        const higher = Math.min(p * (1 + more), HIGHEST);
        fc.pre(higher > p * (1 + 1e-10));
        expect(density(T, higher)).toBeGreaterThan(density(T, p));
      }),
      { numRuns: 2000 },
    );
  });

  test('pressure to density and back', () => {
    fc.assert(
      fc.property(anyTemperature, anyPressure, (T, p) => {
        expect(relativeError(kernelAt(T, density(T, p)).p_Pa, p)).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 2000 },
    );
  });

  const isotherms = Array.from({ length: 85 }, (_, i) => COLDEST + 10 * i);

  test('pressure rises with density on every isotherm up to the end of the solver’s bracket, so there is one root', () => {
    const densities = Array.from({ length: 501 }, (_, i) => (BRACKET * i) / 500);
    for (const T of isotherms) {
      const slopes = densities.map((rho) => kernelAt(T, rho).dpdrho_T);
      // 0.477 RT at 160 K, near the critical density, is the least there is; at the critical point it would be 0.
      expect(Math.min(...slopes) / (R * T)).toBeGreaterThan(0.47);
      expect(kernelAt(T, BRACKET).p_Pa).toBeGreaterThan(HIGHEST);
    }
    expect(isotherms.at(-1)).toBe(HOTTEST);
  });

  test('no density beyond the bracket has a pressure that the model would accept', () => {
    const densities = Array.from({ length: 400 }, (_, i) => BRACKET * 1.05 ** i);
    for (const T of isotherms) {
      expect(Math.min(...densities.map((rho) => kernelAt(T, rho).p_Pa))).toBeGreaterThan(HIGHEST);
    }
  });

  test('pressure rises with temperature at constant density', () => {
    fc.assert(
      fc.property(anyTemperature, anyPressure, (T, p) => {
        expect(kernelAt(T, density(T, p)).dpdT_rho).toBeGreaterThan(0);
      }),
    );
  });
});

describe('the ideal-gas limit', () => {
  test.each([160, 293.15, 1000])('at %d K and 1e-6 Pa Z is 1 and the slopes are those of p = ρRT', (T) => {
    const state = at(T, 1e-6);
    expect(state.compressibility).toBeCloseTo(1, 12);
    expect(relativeError(state.density_mol_m3, 1e-6 / (R * T))).toBeLessThanOrEqual(1e-12);
    expect(relativeError(state.dpdrho_Pa_m3_mol, R * T)).toBeLessThanOrEqual(1e-12);
    expect(relativeError(state.dpdT_Pa_K, 1e-6 / T)).toBeLessThanOrEqual(1e-12);
  });

  /** (Z − 1) / ρ in cm3/mol at 10 kPa, which tends to the second virial coefficient as p tends to 0. */
  const B_cm3_mol = (T: number): number => {
    const { compressibility, density_mol_m3 } = at(T, 10_000);
    return ((compressibility - 1) / density_mol_m3) * 1e6;
  };

  // Source: second virial coefficients of nitrogen as recommended by handbooks (after Dymond and Smith), from memory.
  test.each([
    { T: 200, B: -35.2 },
    { T: 250, B: -16.2 },
    { T: 300, B: -4.2 },
    { T: 400, B: 9.0 },
    { T: 500, B: 16.9 },
    { T: 600, B: 21.3 },
  ])('at $T K Z leaves 1 with a second virial coefficient of $B cm3/mol, within 1', ({ T, B }) => {
    expect(Math.abs(B_cm3_mol(T) - B)).toBeLessThanOrEqual(1);
  });

  // Source: the Boyle temperature of nitrogen, 327 K in textbooks of physical chemistry, from memory.
  test('the second virial coefficient changes sign at the Boyle temperature, 327 K within 2 K', () => {
    expect(B_cm3_mol(325)).toBeLessThan(0);
    expect(B_cm3_mol(329)).toBeGreaterThan(0);
  });

  test('Z − 1 goes to zero in proportion to the pressure', () => {
    // The next term of the series is C ρ / B of this one: 1e-3 at 10 kPa leaves room for it at every temperature here.
    for (const T of [160, 200, 250, 293.15, 500, 1000]) {
      const rate = (p: number): number => (at(T, p).compressibility - 1) / p;
      expect(relativeError(rate(1000), rate(10_000))).toBeLessThanOrEqual(1e-3);
    }
  });
});

describe('slopes against differences of the pressure', () => {
  /**
   * Central differences of steps h and h/2, extrapolated: the error is of order h⁴ (1e-12, times derivatives of the
   * fifth order) and of rounding / h (1e-16 / 1e-3). 1e-10 leaves a factor of 40 to what was seen.
   */
  const H = 1e-3;
  function slope(f: (x: number) => number, x: number): number {
    const central = (h: number): number => (f(x * (1 + h)) - f(x * (1 - h))) / (x * (1 + h) - x * (1 - h));
    return (4 * central(H / 2) - central(H)) / 3;
  }

  test('(∂p/∂T) at constant density and (∂p/∂ρ) at constant temperature', () => {
    fc.assert(
      fc.property(anyTemperature, anyPressure, (T, p) => {
        const rho = density(T, p);
        const { dpdT_rho, dpdrho_T } = kernelAt(T, rho);
        const byT = slope((x) => kernelAt(x, rho).p_Pa, T);
        const byRho = slope((x) => kernelAt(T, x).p_Pa, rho);
        expect(relativeError(dpdT_rho, byT)).toBeLessThanOrEqual(1e-10);
        expect(relativeError(dpdrho_T, byRho)).toBeLessThanOrEqual(1e-10);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the temperature at which a density has a pressure', () => {
  test('turns the equation around, wherever the model answers', () => {
    fc.assert(
      fc.property(anyTemperature, anyPressure, (T, p) => {
        const rho = density(T, p);
        expect(
          relativeError(temperatureAt(nitrogen, rho, kernelAt(T, rho).p_Pa, 'test') ?? Number.NaN, T),
        ).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 1000 },
    );
  });

  // Here the root is the end of the bracket, where rounding may throw every Newton step out of it.
  test('the ends of the model are still inside', () => {
    fc.assert(
      fc.property(fc.constantFrom(COLDEST, HOTTEST), anyPressure, (T, p) => {
        const rho = density(T, p);
        const found = temperatureAt(nitrogen, rho, kernelAt(T, rho).p_Pa, 'test') ?? Number.NaN;
        expect(relativeError(found, T)).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 500 },
    );
  });

  test.each([1, 5000, 12_000])('at %d mol/m3 nothing is answered beyond them', (rho) => {
    expect(temperatureAt(nitrogen, rho, kernelAt(COLDEST, rho).p_Pa * (1 - 1e-9), 'test')).toBeUndefined();
    expect(temperatureAt(nitrogen, rho, kernelAt(HOTTEST, rho).p_Pa * (1 + 1e-9), 'test')).toBeUndefined();
  });
});

describe('the solver', () => {
  /** Evaluations of the equation: each takes four exponentials, one for every power of δ in them. */
  function evaluations(solve: () => unknown): number {
    const exp = vi.spyOn(Math, 'exp');
    try {
      solve();
      return exp.mock.calls.length / 4;
    } finally {
      exp.mockRestore();
    }
  }

  test('evaluates the equation at most 6 times, anywhere in the model', () => {
    const coldest = Array.from({ length: 400 }, (_, i) => ({ T: COLDEST, p: ((i + 1) * HIGHEST) / 400 }));
    for (const { T, p } of coldest) expect(evaluations(() => density(T, p))).toBeLessThanOrEqual(6);
    fc.assert(
      fc.property(anyTemperature, anyPressure, (T, p) => {
        const count = evaluations(() => density(T, p));
        expect(count).toBeGreaterThanOrEqual(1);
        expect(count).toBeLessThanOrEqual(6);
      }),
      { numRuns: 2000 },
    );
  });

  test('evaluates it at most 5 times for the states of the grid, 223 K to 423 K', () => {
    const rows = numberRows('nitrogen-grid.csv', ['T_K', 'p_Pa']);
    expect(rows.filter((row) => evaluations(() => density(row.T_K, row.p_Pa)) > 5)).toEqual([]);
  });

  // The bracket is wider than the model's pressures: the solver must hold up to its end, and give nothing beyond it.
  test('finds every density of its bracket again, in as few evaluations', () => {
    fc.assert(
      fc.property(anyTemperature, evenly(0.001, 0.999), (T, part) => {
        const rho = part * BRACKET;
        const { p_Pa } = kernelAt(T, rho);
        let found = Number.NaN;
        const count = evaluations(() => (found = density(T, p_Pa)));
        expect(relativeError(found, rho)).toBeLessThanOrEqual(1e-13);
        expect(count).toBeLessThanOrEqual(6);
      }),
      { numRuns: 2000 },
    );
  });

  test.each([160, 300, 1000])('at %d K gives no number for a density beyond its bracket', (T) => {
    const { p_Pa } = kernelAt(T, 1.1 * BRACKET);
    for (const p of [p_Pa, 10 * p_Pa, Number.POSITIVE_INFINITY, Number.NaN]) expect(density(T, p)).toBeNaN();
  });

  // At 160 K itself it may take some sixty: there the bracket closes by halves. Readings lie far above.
  test('finds the temperature of a density in at most 14 evaluations from 161 K on', () => {
    fc.assert(
      fc.property(evenly(161, HOTTEST), anyPressure, (T, p) => {
        const rho = density(T, p);
        const wanted = kernelAt(T, rho).p_Pa;
        // Pressure and slopes are two sums; each end of the bracket takes one evaluation.
        expect(evaluations(() => temperatureAt(nitrogen, rho, wanted, 'test')) / 2).toBeLessThanOrEqual(14);
      }),
      { numRuns: 500 },
    );
  });

  test('keeps nothing from one state to the next: alone or in any order, the same bits', () => {
    const rows = numberRows('nitrogen-grid.csv', ['T_K', 'p_Pa']);
    const solve = (row: { T_K: number; p_Pa: number }): number => density(row.T_K, row.p_Pa);
    const forwards = rows.map(solve);
    const backwards = [...rows].reverse().map(solve).reverse();
    expect(backwards).toStrictEqual(forwards);
    // After a state far away from it.
    const alternating = rows.map((row, i) => {
      const other = rows[rows.length - 1 - i];
      if (other !== undefined) solve(other);
      return solve(row);
    });
    expect(alternating).toStrictEqual(forwards);
  });
});
