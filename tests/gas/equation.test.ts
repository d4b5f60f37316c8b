import fc from 'fast-check';
import { nitrogen, type Properties, type Pvt } from 'isochore';
import { describe, expect, test } from 'vitest';
import { BELL, IDEAL, M, R, RHO_REDUCING, T_REDUCING, TERM } from '../../src/gas/nitrogen/coefficients.js';
import { amplification, anyGas, apart, type Point } from '../support/gas-states.js';
import { numberRows, relativeError } from '../support/reference.js';
import { PRINTED, span2000, SPAN_2000_JSON, type Coefficients, type EquationState } from '../support/span2000.js';

// Source: Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361, by way of tests/reference/nitrogen-span-2000.json.
const { pvt, properties, density } = nitrogen['~kernel'];

describe('the coefficients', () => {
  const { power, gaussian } = SPAN_2000_JSON.residual;

  test('the tables have 32 and 4 terms', () => {
    expect(Object.keys(TERM)).toEqual(power.map((_, i) => String(i + 1)));
    expect(Object.keys(BELL)).toEqual(gaussian.map((_, i) => String(i + 33)));
    expect(power).toHaveLength(32);
    expect(gaussian).toHaveLength(4);
  });

  test.each(power.map((term, i) => ({ ...term, number: i + 1 })))('term $number: $n', ({ number, ...term }) => {
    expect(TERM[number as keyof typeof TERM]).toStrictEqual(term);
  });

  test.each(gaussian.map((term, i) => ({ ...term, number: i + 33 })))('term $number: $n', ({ number, ...term }) => {
    expect(BELL[number as keyof typeof BELL]).toStrictEqual(term);
  });

  test('the ideal part', () => {
    const { a1, a2, logTau, power: powers, planckEinstein } = SPAN_2000_JSON.idealGas;
    expect(IDEAL).toStrictEqual({
      a1,
      a2,
      lnTau: logTau,
      power: Object.fromEntries(powers.map(({ n, t }) => [String(t), n])),
      n_e: planckEinstein.n,
      theta_K: planckEinstein.theta_K,
    });
  });

  test('the constants that belong to the equation', () => {
    expect(R).toBe(SPAN_2000_JSON.gasConstant_J_molK);
    expect(M).toBe(SPAN_2000_JSON.molarMass_kg_mol);
    expect(T_REDUCING).toBe(SPAN_2000_JSON.reducing.T_K);
    expect(RHO_REDUCING).toBe(SPAN_2000_JSON.reducing.rho_mol_m3_coolprop);
    expect(nitrogen.gasConstant_J_molK).toBe(R);
    expect(nitrogen.molarMass_kg_mol).toBe(M);
  });

  test('the reducing density is the 313.3 kg/m3 behind the printed 11.1839 mol/dm3', () => {
    expect(relativeError(RHO_REDUCING * M, 313.3)).toBeLessThanOrEqual(1e-15);
    expect((RHO_REDUCING / 1000).toFixed(4)).toBe('11.1839');
  });
});

describe('the collapsed sums are the equation, all 36 terms one after another', () => {
  // Z is a small difference of its terms at high density: 1e-13 is some seven times what rounding was seen to do, once
  // the nearness of the critical point is allowed for.
  const TOLERANCE = 1e-13;

  function kernelAt(T_K: number, rho: number): EquationState {
    const a: Pvt = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
    const b = {} as Properties;
    pvt(T_K, rho, a);
    properties(T_K, rho, b);
    return {
      p_Pa: a.p_Pa,
      Z: a.p_Pa / (rho * R * T_K),
      u_J_mol: b.u_J_mol,
      h_J_mol: b.h_J_mol,
      s_J_molK: b.s_J_molK,
      cv_J_molK: b.cv_J_molK,
      cp_J_molK: b.cp_J_molK,
      w_m_s: b.w_m_s,
      dpdT_rho_Pa_K: a.dpdT_rho,
      dpdrho_T_Pa_m3_mol: a.dpdrho_T,
      mu_JT_K_Pa: b.jt_K_Pa,
    };
  }

  function compare({ T, p }: Point): void {
    const rho = density(T, p);
    const here = kernelAt(T, rho);
    const printed = span2000(T, rho);
    const allowed = TOLERANCE * amplification({ ...printed, rho_mol_m3: rho });
    for (const name of Object.keys(printed) as (keyof EquationState)[]) {
      expect(apart(name, here[name], printed[name], T), name).toBeLessThanOrEqual(allowed);
    }
  }

  test('every property, wherever the model answers', () => {
    fc.assert(fc.property(anyGas, compare), { numRuns: 1500 });
  });

  // The kernel leaves the bells out above 168 K, the equation has them everywhere.
  test.each([150, 160, 167, 168, 168.25, 168.257, 170, 180, 300])('every property at %d K, at all densities', (T) => {
    for (let p = 1e6; p <= 200e6; p += 1e6) compare({ T, p });
  });

  test('the density that the solver finds is a root of the equation', () => {
    fc.assert(
      fc.property(anyGas, ({ T, p }) => {
        expect(relativeError(span2000(T, density(T, p)).p_Pa, p)).toBeLessThanOrEqual(TOLERANCE);
      }),
      { numRuns: 1000 },
    );
  });
});

// A typo in a coefficient is what a table test is for, but the table may share it. Here: do the reference files see it?
// Every coefficient and exponent in turn is left out, and is altered by a millionth (exponents by their least step); some
// reference state must then lie outside what the grid tests allow.
describe('a single coefficient, left out or altered, moves a reference state', () => {
  const columns = ['u_J_mol', 'h_J_mol', 's_J_molK', 'cv_J_molK', 'cp_J_molK', 'w_m_s'] as const;
  const slopes = ['Z', 'dpdT_rho_Pa_K', 'dpdrho_T_Pa_m3_mol'] as const;
  const compared = [...slopes, ...columns];
  const names = ['T_K', 'p_Pa', 'rho_mol_m3', ...compared] as const;
  const warm = numberRows('nitrogen-grid.csv', names).map((row) => ({ ...row, allowed: 1e-13 }));
  const cold = numberRows('nitrogen-cold.csv', names).map((row) => ({ ...row, allowed: 5e-13 * amplification(row) }));

  /** Whether a property of some state lies outside its tolerance, which is that of grid.test.ts. */
  function seen(coefficients: Coefficients, rows = [...cold, ...warm]): boolean {
    return rows.some((row) => {
      const state = span2000(row.T_K, row.rho_mol_m3, coefficients);
      return compared.some((name) => !(apart(name, state[name], row[name], row.T_K) <= row.allowed));
    });
  }

  test('as printed, no state moves', () => {
    expect(seen(PRINTED)).toBe(false);
  });

  // Why there are cold reference files at all.
  test('the warm grid alone does not see the four Gaussian terms', () => {
    const without = { ...PRINTED, gaussian: [] };
    expect(seen(without, warm)).toBe(false);
    expect(seen(without, cold)).toBe(true);
  });

  const replaced = <Item>(items: readonly Item[], at: number, item: Item): Item[] =>
    items.map((old, i) => (i === at ? item : old));
  const millionth = (x: number): number => x * (1 + 1e-6);
  const none = (): number => 0;
  const one = (x: number): number => x + 1;
  const eighth = (x: number): number => x + 0.125;

  const power = PRINTED.power.flatMap((term, i) =>
    (
      [
        ['n', none],
        ['n', millionth],
        ['d', one],
        ['t', eighth],
        ['l', one],
      ] as const
    ).map(([part, change]) => ({
      name: `term ${i + 1}: ${part} = ${term[part]} as ${change(term[part])}`,
      coefficients: { ...PRINTED, power: replaced(PRINTED.power, i, { ...term, [part]: change(term[part]) }) },
    })),
  );
  const gaussian = PRINTED.gaussian.flatMap((term, i) =>
    (
      [
        ['n', none],
        ['n', millionth],
        ['d', one],
        ['t', eighth],
        ['eta', none],
        ['eta', millionth],
        ['epsilon', none],
        ['epsilon', millionth],
        ['beta', none],
        ['beta', millionth],
        ['gamma', none],
        ['gamma', millionth],
      ] as const
    ).map(([part, change]) => ({
      name: `term ${i + 33}: ${part} = ${term[part]} as ${change(term[part])}`,
      coefficients: { ...PRINTED, gaussian: replaced(PRINTED.gaussian, i, { ...term, [part]: change(term[part]) }) },
    })),
  );
  const { idealGas } = PRINTED;
  const ideal = [none, millionth]
    .flatMap((change) => [
      { name: 'a1', idealGas: { ...idealGas, a1: change(idealGas.a1) } },
      { name: 'a2', idealGas: { ...idealGas, a2: change(idealGas.a2) } },
      { name: '2.5 of ln τ', idealGas: { ...idealGas, logTau: change(idealGas.logTau) } },
      ...idealGas.power.map((term, i) => ({
        name: `n of τ^${term.t}`,
        idealGas: { ...idealGas, power: replaced(idealGas.power, i, { ...term, n: change(term.n) }) },
      })),
      ...(['n', 'theta_K'] as const).map((part) => ({
        name: `${part} of the vibration`,
        idealGas: {
          ...idealGas,
          planckEinstein: { ...idealGas.planckEinstein, [part]: change(idealGas.planckEinstein[part]) },
        },
      })),
    ])
    .map(({ name, idealGas: altered }) => ({ name, coefficients: { ...PRINTED, idealGas: altered } }));

  test.each([...power, ...gaussian, ...ideal])('$name', ({ coefficients }) => {
    expect(seen(coefficients)).toBe(true);
  });

  // A typo that circulates in public copies; see tests/reference/README.md.
  test('term 23 as 0.4808822981509e-2', () => {
    const term = PRINTED.power[22];
    expect(term?.n).toBe(0.408822981509e-2);
    if (term === undefined) return;
    expect(seen({ ...PRINTED, power: replaced(PRINTED.power, 22, { ...term, n: 0.4808822981509e-2 }) })).toBe(true);
  });
});
