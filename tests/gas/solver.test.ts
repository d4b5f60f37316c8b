import fc from 'fast-check';
import { nitrogen, saturationAt, temperature } from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { RHO_REDUCING } from '../../src/gas/nitrogen/coefficients.js';
import { densityRoot, increasingRoot } from '../../src/gas/solve.js';
import { anyColdTemperature, anyGas, anyPressure, evenly, T_CRITICAL } from '../support/gas-states.js';
import { numberRows, relativeError } from '../support/reference.js';

const { pvt, density } = nitrogen['~kernel'];
const [, HOTTEST] = nitrogen.validity.temperature_K;
/** Four times the reducing density, where the solver's bracket ends, mol/m3. */
const BRACKET = 4 * RHO_REDUCING;

function pressure(T_K: number, rho: number): number {
  const out = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
  pvt(T_K, rho, out);
  return out.p_Pa;
}

/**
 * How often the solvers look at the size of a step: once for each evaluation of the equation, in pairs for the two phases of
 * saturation, whose last step is looked at twice.
 */
function evaluations(solve: () => unknown): number {
  const size = vi.spyOn(Math, 'abs');
  try {
    solve();
    return size.mock.calls.length;
  } finally {
    size.mockRestore();
  }
}

describe('the solver', () => {
  test.each([
    { from: T_CRITICAL, to: 160, most: 14 },
    { from: 160, to: 1000, most: 6 },
  ])('evaluates the equation 1 to $most times from $from K to $to K', ({ from, to, most }) => {
    const coldest = Array.from({ length: 400 }, (_, i) => (i + 1) * 5e5);
    for (const p of coldest) expect(evaluations(() => density(from, p))).toBeLessThanOrEqual(most);
    fc.assert(
      fc.property(evenly(from, to), anyPressure, (T, p) => {
        const count = evaluations(() => density(T, p));
        expect(count).toBeGreaterThanOrEqual(1);
        expect(count).toBeLessThanOrEqual(most);
      }),
      { numRuns: 1000 },
    );
  });

  test('evaluates it at most 5 times for the states of the grid, 223 K to 423 K', () => {
    const rows = numberRows('nitrogen-grid.csv', ['T_K', 'p_Pa']);
    expect(rows.filter((row) => evaluations(() => density(row.T_K, row.p_Pa)) > 5)).toEqual([]);
  });

  // The search begins at the density of an ideal gas, and a dilute gas is nearly one.
  test('evaluates it at most 3 times up to 1 bar', () => {
    fc.assert(
      fc.property(evenly(T_CRITICAL, HOTTEST), evenly(1, 1e5), (T, p) => {
        expect(evaluations(() => density(T, p))).toBeLessThanOrEqual(3);
      }),
    );
  });

  test('finds saturation in 2 to 5 steps up to 126 K', () => {
    const out = { p_Pa: 0, rho_liquid: 0, rho_vapour: 0 };
    fc.assert(
      fc.property(evenly(64, 126), (T) => {
        const steps = evaluations(() => nitrogen['~kernel'].saturation(T, out)) - 1;
        expect(steps).toBeGreaterThanOrEqual(2);
        expect(steps).toBeLessThanOrEqual(5);
      }),
    );
  });

  test('finds the density of vapour in at most 8 evaluations on top of saturation', () => {
    fc.assert(
      fc.property(evenly(64, 125), evenly(1e-6, 1), (T, share) => {
        const out = { p_Pa: 0, rho_liquid: 0, rho_vapour: 0 };
        const before = evaluations(() => nitrogen['~kernel'].saturation(T, out));
        expect(evaluations(() => density(T, share * out.p_Pa)) - before).toBeLessThanOrEqual(8);
      }),
    );
  });

  // The bracket is wider than the model's pressures: the solver must hold up to its end, and give nothing beyond it.
  test('finds every density of its bracket again, in as few evaluations', () => {
    fc.assert(
      fc.property(evenly(160, HOTTEST), evenly(0.001, 0.999), (T, part) => {
        const rho = part * BRACKET;
        const p = pressure(T, rho);
        let found = Number.NaN;
        const count = evaluations(() => (found = density(T, p)));
        expect(relativeError(found, rho)).toBeLessThanOrEqual(1e-13);
        expect(count).toBeLessThanOrEqual(6);
      }),
      { numRuns: 1000 },
    );
  });

  test.each([T_CRITICAL, 160, 300, 1000])('at %d K gives no number for a density beyond its bracket', (T) => {
    const p_Pa = pressure(T, 1.1 * BRACKET);
    for (const p of [p_Pa, 10 * p_Pa, Number.POSITIVE_INFINITY, Number.NaN]) expect(density(T, p)).toBeNaN();
  });

  test('keeps nothing from one state to the next: alone or in any order, the same bits', () => {
    const rows = [
      ...numberRows('nitrogen-grid.csv', ['T_K', 'p_Pa']),
      ...numberRows('nitrogen-cold.csv', ['T_K', 'p_Pa']),
    ];
    const solve = (row: { T_K: number; p_Pa: number }): number => density(row.T_K, row.p_Pa);
    const forwards = rows.map(solve);
    expect(forwards.every((rho) => rho > 0)).toBe(true);
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

  test('keeps nothing of a saturation either', () => {
    const all = Array.from({ length: 124 }, (_, i) => 64 + i / 2);
    const solve = (T: number): unknown => saturationAt(nitrogen, temperature(T, 'K'));
    const forwards = all.map(solve);
    expect([...all].reverse().map(solve).reverse()).toStrictEqual(forwards);
  });

  test('vacuum needs no search: the density is zero', () => {
    expect(density(300, 0)).toBe(0);
    expect(density(70, 0)).toBe(0);
  });
});

// On functions whose roots are known.
describe('the two roots', () => {
  test('increasingRoot closes wherever the root lies, on curves that mislead Newton', () => {
    fc.assert(
      fc.property(evenly(-3, 3), (root) => {
        for (const f of [
          { value: (x: number) => x ** 3, slope: (x: number) => 3 * x * x },
          { value: Math.atan, slope: (x: number) => 1 / (1 + x * x) },
          { value: Math.exp, slope: Math.exp },
        ]) {
          const found = increasingRoot(
            (x, out) => {
              out.value = f.value(x);
              out.slope = f.slope(x);
            },
            f.value(root),
            -20,
            30,
          );
          expect(Math.abs(found - root)).toBeLessThanOrEqual(1e-8);
        }
      }),
    );
  });

  test('a function that is not a number gives none', () => {
    const nothing = (_: number, out: { value: number; slope: number }): void => {
      out.value = Number.NaN;
      out.slope = Number.NaN;
    };
    // From another end than zero, towards which a search without sides would close.
    expect(increasingRoot(nothing, 1, 1, 10)).toBeNaN();
    expect(
      densityRoot(
        (_, out) => {
          out.z = Number.NaN;
        },
        1,
        1,
        4,
      ),
    ).toBeNaN();
  });

  // At zero no bracket is small beside the number in it, so that halving it never ends.
  test('a jump at zero is no root: the search is given up', () => {
    const jump = (x: number, out: { value: number; slope: number }): void => {
      out.value = x < 0 ? -1 : 1;
      out.slope = 0;
    };
    expect(increasingRoot(jump, 0, -1, 1.5)).toBeNaN();
  });
});

test('the same state costs the same, whatever was asked before', () => {
  fc.assert(
    fc.property(anyGas, anyColdTemperature, ({ T, p }, other) => {
      const first = evaluations(() => density(T, p));
      density(other, 1000);
      expect(evaluations(() => density(T, p))).toBe(first);
    }),
    { numRuns: 200 },
  );
});
