import fc from 'fast-check';
import { absolute, cubicNitrogen, idealNitrogen, nitrogen, saturationAt, stateAt, temperature } from 'isochore';
import type { GasModel, Properties, Pvt } from 'isochore';
import { describe, expect, test } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { RHO_REDUCING } from '../../src/gas/nitrogen/coefficients.js';
import { anyFluid, anyGas, anyPressure, at, evenly, T_CRITICAL, type Point } from '../support/gas-states.js';
import { relativeError } from '../support/reference.js';

// What must hold of any gas, whatever the equation.

const { density } = nitrogen['~kernel'];
const R = nitrogen.gasConstant_J_molK;
const [COLDEST, HOTTEST] = nitrogen.validity.temperature_K;
const HIGHEST = nitrogen.validity.pressure_Pa[1];
/** Four times the reducing density, where the solver's bracket ends, mol/m3. */
const BRACKET = 4 * RHO_REDUCING;

function kernelAt(T_K: number, rho_mol_m3: number, model: GasModel = nitrogen): Pvt & Properties {
  const out = {} as Pvt & Properties;
  model['~kernel'].pvt(T_K, rho_mol_m3, out);
  model['~kernel'].properties(T_K, rho_mol_m3, out);
  return out;
}

describe('density and pressure', () => {
  test('density grows with pressure, for neighbours and for distant pressures', () => {
    const ratio = evenly(0, 1).map((x) => 1e-9 * 10 ** (9 * x));
    fc.assert(
      fc.property(anyFluid, ratio, ({ T, p }, more) => {
        const higher = Math.min(p * (1 + more), HIGHEST);
        fc.pre(higher > p * (1 + 1e-10));
        expect(density(T, higher)).toBeGreaterThan(density(T, p));
      }),
      { numRuns: 1000 },
    );
  });

  test('pressure to density and back, in vapour and fluid', () => {
    fc.assert(
      fc.property(anyGas, ({ T, p }) => {
        expect(relativeError(kernelAt(T, density(T, p)).p_Pa, p)).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 1000 },
    );
  });

  const isotherms = [T_CRITICAL, 126.2, 126.5, 127, 128, ...Array.from({ length: 88 }, (_, i) => 130 + 10 * i)];

  test('from the critical temperature on p rises with ρ up to the end of the bracket, so there is one root', () => {
    const densities = Array.from({ length: 501 }, (_, i) => (BRACKET * i) / 500);
    for (const T of isotherms) {
      const least = Math.min(...densities.map((rho) => kernelAt(T, rho).dpdrho_T)) / (R * T);
      // Zero at the critical point itself, and nowhere else.
      expect(least).toBeGreaterThan(T === T_CRITICAL ? -1e-6 : 0);
      if (T >= 160) expect(least).toBeGreaterThan(0.47);
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

  test('below it p rises with ρ up to the saturated vapour', () => {
    for (let T = COLDEST; T < T_CRITICAL - 1e-3; T += 0.5) {
      const end = saturationAt(nitrogen, temperature(T, 'K')).vapourDensity_mol_m3;
      for (let i = 0; i <= 100; i += 1) expect(kernelAt(T, (end * i) / 100).dpdrho_T).toBeGreaterThan(0);
    }
  });

  // What the search for a temperature, from pressure and density, stands on.
  test('pressure rises with temperature at constant density', () => {
    fc.assert(
      fc.property(anyGas, ({ T, p }) => {
        expect(kernelAt(T, density(T, p)).dpdT_rho).toBeGreaterThan(0);
      }),
    );
  });
});

describe('the ideal-gas limit', () => {
  test.each([64, 100, T_CRITICAL, 160, 293.15, 1000])(
    'at %d K and 1e-6 Pa Z is 1, the slopes those of p = ρRT',
    (T) => {
      const state = at(T, 1e-6);
      expect(relativeError(state.compressibility, 1)).toBeLessThanOrEqual(1e-11);
      expect(relativeError(state.density_mol_m3, 1e-6 / (R * T))).toBeLessThanOrEqual(1e-11);
      expect(relativeError(state.dpdrho_Pa_m3_mol, R * T)).toBeLessThanOrEqual(1e-11);
      expect(relativeError(state.dpdT_Pa_K, 1e-6 / T)).toBeLessThanOrEqual(1e-11);
      expect(relativeError(state.cp_J_molK - state.cv_J_molK, R)).toBeLessThanOrEqual(1e-11);
      expect(relativeError(state.enthalpy_J_mol - state.internalEnergy_J_mol, R * T)).toBeLessThanOrEqual(1e-11);
      const w = Math.sqrt(((state.cp_J_molK / state.cv_J_molK) * R * T) / nitrogen.molarMass_kg_mol);
      expect(relativeError(state.speedOfSound_m_s, w)).toBeLessThanOrEqual(1e-11);
    },
  );

  // Source: the zero of the equation as published, see tests/reference/README.md; the rest is for the real gas, here at
  // 1 Pa, with R T ln p added to the entropy.
  test('h = 8670 J/mol and s = 191.5 J/(mol K) for the ideal gas at 298.15 K and 101 325 Pa', () => {
    const state = at(298.15, 1);
    expect(Math.abs(state.enthalpy_J_mol - 8670)).toBeLessThanOrEqual(1e-3);
    expect(Math.abs(state.entropy_J_molK - R * Math.log(101_325) - 191.5)).toBeLessThanOrEqual(1e-5);
  });

  // Source: heat capacity of the ideal gas at 298.15 K, 29.124 J/(mol K) (NIST-JANAF tables), from memory.
  test('cp at 298.15 K is 29.124 J/(mol K)', () => {
    expect(Math.abs(at(298.15, 1).cp_J_molK - 29.124)).toBeLessThanOrEqual(2e-3);
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

  // Source: the inversion temperature of nitrogen at low pressure, 621 K in textbooks of physical chemistry, from memory.
  test('throttling stops cooling at the inversion temperature, 621 K within 20 K', () => {
    expect(at(600, 1000).jouleThomson_K_Pa).toBeGreaterThan(0);
    expect(at(640, 1000).jouleThomson_K_Pa).toBeLessThan(0);
  });

  test('Z − 1 goes to zero in proportion to the pressure', () => {
    // The next term of the series is C ρ / B of this one: 1e-3 at 10 kPa leaves room for it at every temperature here.
    for (const T of [160, 200, 250, 293.15, 500, 1000]) {
      const rate = (p: number): number => (at(T, p).compressibility - 1) / p;
      expect(relativeError(rate(1000), rate(10_000))).toBeLessThanOrEqual(1e-3);
    }
  });
});

/**
 * Every derivative as a difference of other properties, by independent evaluations. Central differences of steps h and
 * h/2, extrapolated: the error is of order h⁴ and of rounding / h; the bells bend within 0.04 of τ.
 */
const H = 2e-4;
function slope(f: (x: number) => number, x: number): number {
  const central = (h: number): number => (f(x * (1 + h)) - f(x * (1 - h))) / (x * (1 + h) - x * (1 - h));
  return (4 * central(H / 2) - central(H)) / 3;
}

/** Vapour has to stay vapour, and fluid fluid, over the steps; and no closer to the critical point than 1 K. */
const anyInside = anyGas.filter(
  ({ T, p }) =>
    Math.abs(T - T_CRITICAL) > 1 &&
    T > COLDEST + 0.1 &&
    T < HOTTEST - 1 &&
    p < 0.99 * HIGHEST &&
    (T > T_CRITICAL || p < 0.99 * saturationAt(nitrogen, temperature(T, 'K')).pressure.pascals),
);
const MODELS = [
  { model: nitrogen, states: anyInside },
  {
    model: cubicNitrogen,
    states: fc.record({ T: evenly(161, 999), p: anyPressure.filter((p) => p < 99e6) }),
  },
  { model: idealNitrogen, states: fc.record({ T: evenly(65, 999), p: anyPressure.filter((p) => p < 199e6) }) },
];

describe.each(MODELS)('thermodynamics of $model.id', ({ model, states }) => {
  const solve = model['~kernel'].density;
  const of = (T: number, rho: number): Pvt & Properties => kernelAt(T, rho, model);
  /** The difference of two values on the scale of a third. */
  const close = (value: number, expected: number, scale: number, within: number): void => {
    expect(Math.abs(value - expected) / scale).toBeLessThanOrEqual(within);
  };
  const check = (law: (point: Point) => void): void => {
    fc.assert(fc.property(states, law), { numRuns: 200 });
  };
  const R_ = model.gasConstant_J_molK;

  test('(∂p/∂T) at constant density and (∂p/∂ρ) at constant temperature', () => {
    check(({ T, p }) => {
      const rho = solve(T, p);
      const { dpdT_rho, dpdrho_T } = of(T, rho);
      close(
        dpdT_rho,
        slope((x) => of(x, rho).p_Pa, T),
        dpdT_rho,
        1e-9,
      );
      close(
        dpdrho_T,
        slope((x) => of(T, x).p_Pa, rho),
        dpdrho_T + (R_ * T) / 10,
        1e-9,
      );
    });
  });

  test('cv is (∂u/∂T) at constant density, and T (∂s/∂T)', () => {
    check(({ T, p }) => {
      const rho = solve(T, p);
      const { cv_J_molK } = of(T, rho);
      close(
        slope((x) => of(x, rho).u_J_mol, T),
        cv_J_molK,
        cv_J_molK,
        1e-8,
      );
      close(T * slope((x) => of(x, rho).s_J_molK, T), cv_J_molK, cv_J_molK, 1e-8);
    });
  });

  test('du = T ds − p dv along the isotherm, and the Maxwell relation (∂s/∂v) = (∂p/∂T)', () => {
    check(({ T, p }) => {
      const rho = solve(T, p);
      const { dpdT_rho } = of(T, rho);
      const dsdrho = slope((x) => of(T, x).s_J_molK, rho);
      close(-dsdrho * rho * rho, dpdT_rho, dpdT_rho, 1e-8);
      const dudrho = slope((x) => of(T, x).u_J_mol, rho);
      close(dudrho * rho * rho, p - T * dpdT_rho, p + T * dpdT_rho, 1e-8);
    });
  });

  test('h = u + p / ρ', () => {
    check(({ T, p }) => {
      const rho = solve(T, p);
      const { u_J_mol, h_J_mol } = of(T, rho);
      close(h_J_mol, u_J_mol + p / rho, R_ * T, 1e-12);
    });
  });

  test('cp is (∂h/∂T) at constant pressure; Joule–Thomson is (∂T/∂p) at constant enthalpy', () => {
    check(({ T, p }) => {
      const { cp_J_molK, jt_K_Pa } = of(T, solve(T, p));
      const h = (x: number, y: number): number => of(x, solve(x, y)).h_J_mol;
      const dhdT = slope((x) => h(x, p), T);
      close(dhdT, cp_J_molK, cp_J_molK, 1e-7);
      const dhdp = slope((x) => h(T, x), p);
      // At low pressure the difference of enthalpies is all rounding: it counts as h / p does.
      close((-dhdp / cp_J_molK) * p, jt_K_Pa * p, T, 1e-8);
    });
  });

  // Here the Joule–Thomson coefficient is a difference of tenths of R T, not of the last digits of h.
  test('Joule–Thomson from T (∂v/∂T) − v at constant pressure', () => {
    check(({ T, p }) => {
      const { cp_J_molK, jt_K_Pa } = of(T, solve(T, p));
      const v = 1 / solve(T, p);
      const dvdT = slope((x) => 1 / solve(x, p), T);
      close((T * dvdT - v) / v, (jt_K_Pa * cp_J_molK) / v, 1, 1e-7);
    });
  });

  test('M w² is (∂p/∂ρ) at constant entropy', () => {
    check(({ T, p }) => {
      const { entropy_J_molK, speedOfSound_m_s } = at(T, p, model);
      const [coldest, hottest] = model.validity.temperature_K;
      fc.pre(T > coldest * 1.01 && T < hottest * 0.99);
      const v = (x: number): number =>
        1 / stateAt(model, { pressure: absolute(x, 'Pa'), entropy_J_molK }).density_mol_m3;
      const rho = solve(T, p);
      const dpdrho = -1 / slope(v, p) / (rho * rho);
      close(Math.sqrt(dpdrho / model.molarMass_kg_mol), speedOfSound_m_s, speedOfSound_m_s, 1e-7);
    });
  });

  test('a gas is stable: cv and ∂p/∂ρ above zero, cp above cv', () => {
    check(({ T, p }) => {
      const { cv_J_molK, cp_J_molK, dpdrho_T } = of(T, solve(T, p));
      // Five degrees of freedom, and R more for a real gas that pushes its neighbours away.
      expect(cv_J_molK).toBeGreaterThan(2.49 * R_);
      expect(dpdrho_T).toBeGreaterThan(0);
      expect(cp_J_molK - cv_J_molK).toBeGreaterThan(0.8 * R_);
    });
  });
});

describe('the temperature at which a density has a pressure', () => {
  test('turns the equation around, wherever the model answers short of saturation itself', () => {
    const unsaturated = anyGas.filter(
      ({ T, p }) => T >= T_CRITICAL || p < (1 - 1e-12) * saturationAt(nitrogen, temperature(T, 'K')).pressure.pascals,
    );
    fc.assert(
      fc.property(unsaturated, ({ T, p }) => {
        const rho = density(T, p);
        const found = temperatureAt(nitrogen, rho, kernelAt(T, rho).p_Pa, 'test') ?? Number.NaN;
        expect(relativeError(found, T)).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 1000 },
    );
  });

  // Here the root is the end of the bracket, where rounding may throw every Newton step out of it.
  test.each([COLDEST, T_CRITICAL, HOTTEST])('at the ends of the bracket, %d K', (T) => {
    fc.assert(
      fc.property(T === COLDEST ? evenly(1, 14_600) : anyPressure, (p) => {
        const rho = density(T, p);
        const found = temperatureAt(nitrogen, rho, kernelAt(T, rho).p_Pa, 'test') ?? Number.NaN;
        expect(relativeError(found, T)).toBeLessThanOrEqual(1e-13);
      }),
      { numRuns: 200 },
    );
  });

  test.each([1, 20])('at %d mol/m3 nothing is answered below 64 K or above 1000 K', (rho) => {
    expect(temperatureAt(nitrogen, rho, kernelAt(COLDEST, rho).p_Pa * (1 - 1e-9), 'test')).toBeUndefined();
    expect(temperatureAt(nitrogen, rho, kernelAt(HOTTEST, rho).p_Pa * (1 + 1e-9), 'test')).toBeUndefined();
  });

  test.each([100, 1000, 9000])('at %d mol/m3 nothing is answered where the vapour would begin to condense', (rho) => {
    // The pressure falls with the temperature down to saturation, below which there is no such gas.
    let [low, high] = [COLDEST, T_CRITICAL - 1e-3];
    while (high - low > 1e-9) {
      const T = (low + high) / 2;
      if (saturationAt(nitrogen, temperature(T, 'K')).vapourDensity_mol_m3 > rho) high = T;
      else low = T;
    }
    const { pascals } = saturationAt(nitrogen, temperature(high, 'K')).pressure;
    expect(temperatureAt(nitrogen, rho, pascals * (1 + 1e-6), 'test')).toBeGreaterThan(high);
    expect(temperatureAt(nitrogen, rho, pascals * (1 - 1e-6), 'test')).toBeUndefined();
  });

  test('vacuum has none, and a density beyond the critical none below the critical temperature', () => {
    expect(temperatureAt(nitrogen, 0, 1e5, 'test')).toBeUndefined();
    expect(temperatureAt(nitrogen, 0, 0, 'test')).toBeUndefined();
    expect(temperatureAt(nitrogen, 15_000, kernelAt(T_CRITICAL, 15_000).p_Pa * (1 - 1e-9), 'test')).toBeUndefined();
    expect(temperatureAt(nitrogen, 15_000, kernelAt(T_CRITICAL, 15_000).p_Pa * (1 + 1e-9), 'test')).toBeGreaterThan(
      T_CRITICAL,
    );
  });
});
