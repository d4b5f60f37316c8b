import fc from 'fast-check';
import { nitrogen, saturationAt, temperature } from 'isochore';
import { describe, expect, test } from 'vitest';
import { anyColdTemperature, at, T_CRITICAL } from '../support/gas-states.js';
import { numberRows, printedRows, relativeError } from '../support/reference.js';
import { span2000, SPAN_2000_JSON } from '../support/span2000.js';

const saturation = (T_K: number): { p: number; liquid: number; vapour: number } => {
  const { pressure, liquidDensity_mol_m3, vapourDensity_mol_m3 } = saturationAt(nitrogen, temperature(T_K, 'K'));
  return { p: pressure.pascals, liquid: liquidDensity_mol_m3, vapour: vapourDensity_mol_m3 };
};

// Source: tests/reference/nitrogen-saturation.csv, equal Gibbs energy of both phases to 50 digits. Seen: 1.5e-13 in the
// densities at 126 K, where rounding grows.
describe('saturation from 64 K to 126 K', () => {
  const rows = numberRows('nitrogen-saturation.csv', ['T_K', 'p_Pa', 'rho_liquid_mol_m3', 'rho_vapour_mol_m3']);

  test('pressure and both densities of 35 states', () => {
    expect(rows).toHaveLength(35);
    for (const row of rows) {
      const { p, liquid, vapour } = saturation(row.T_K);
      expect(relativeError(p, row.p_Pa)).toBeLessThanOrEqual(5e-14);
      expect(relativeError(liquid, row.rho_liquid_mol_m3)).toBeLessThanOrEqual(1e-12);
      expect(relativeError(vapour, row.rho_vapour_mol_m3)).toBeLessThanOrEqual(1e-12);
    }
  });

  test('both phases have the same pressure and the same Gibbs energy by the equation, term by term', () => {
    fc.assert(
      fc.property(anyColdTemperature, (T) => {
        const { p, liquid, vapour } = saturation(T);
        const gibbs = [liquid, vapour].map((rho) => {
          const state = span2000(T, rho);
          return (state.h_J_mol - T * state.s_J_molK) / (SPAN_2000_JSON.gasConstant_J_molK * T);
        });
        expect(relativeError(span2000(T, vapour).p_Pa, p)).toBeLessThanOrEqual(1e-13);
        // The liquid's pressure is a small difference of large terms.
        const { p_Pa, dpdrho_T_Pa_m3_mol } = span2000(T, liquid);
        expect(Math.abs(p_Pa - p) / (liquid * dpdrho_T_Pa_m3_mol + p)).toBeLessThanOrEqual(1e-13);
        expect(Math.abs((gibbs[0] ?? Number.NaN) - (gibbs[1] ?? Number.NaN))).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  test('pressure and vapour density rise with temperature, the liquid density falls', () => {
    const states = Array.from({ length: 6219 }, (_, i) => saturation(64 + i / 100));
    states.slice(1).forEach((warmer, i) => {
      const colder = states[i];
      expect(colder).toBeDefined();
      if (colder === undefined) return;
      expect(warmer.p).toBeGreaterThan(colder.p);
      expect(warmer.vapour).toBeGreaterThan(colder.vapour);
      expect(warmer.liquid).toBeLessThan(colder.liquid);
    });
  });
});

// Source: tests/reference/published-saturation.csv, Span et al. (2000), p. 1403. The row of the triple point, 63.151 K,
// lies below where the model begins. Energy and entropy are on the paper's own zero: it is that of the model.
describe('the printed saturation table, from 64 K: every printed digit', () => {
  const printed = printedRows('published-saturation.csv', [
    'T_K',
    'p_MPa',
    'rho_liquid_mol_dm3',
    'rho_vapour_mol_dm3',
    'h_liquid_J_mol',
    'h_vapour_J_mol',
    's_liquid_J_molK',
    's_vapour_J_molK',
  ]).filter((row) => Number(row.T_K) >= 64);

  test('there are 4 rows', () => {
    expect(printed).toHaveLength(4);
  });

  test.each(printed)('$T_K K', (row) => {
    const T = Number(row.T_K);
    const { p, liquid, vapour } = saturation(T);
    const state = at(T, p);
    const digits = (text: string): number => text.split('.')[1]?.length ?? 0;
    expect((p / 1e6).toFixed(digits(row.p_MPa))).toBe(row.p_MPa);
    expect((liquid / 1e3).toFixed(digits(row.rho_liquid_mol_dm3))).toBe(row.rho_liquid_mol_dm3);
    expect((vapour / 1e3).toFixed(digits(row.rho_vapour_mol_dm3))).toBe(row.rho_vapour_mol_dm3);
    expect(state.enthalpy_J_mol.toFixed(digits(row.h_vapour_J_mol))).toBe(row.h_vapour_J_mol);
    expect(state.entropy_J_molK.toFixed(digits(row.s_vapour_J_molK))).toBe(row.s_vapour_J_molK);
  });

  // The model says nothing of the liquid's energy, but Clausius and Clapeyron do: Δh = T (1/ρ'' − 1/ρ') dp/dT.
  test.each(printed)('the heat of vaporisation at $T_K K, from the slope of the pressure', (row) => {
    const T = Number(row.T_K);
    const { liquid, vapour } = saturation(T);
    const h = 1e-3;
    const dpdT = (saturation(T + h).p - saturation(T - h).p) / (2 * h);
    const heat = T * (1 / vapour - 1 / liquid) * dpdT;
    // Two values printed to a tenth, and the slope; at 126 K the phases are nearly alike.
    expect(Math.abs(heat - (Number(row.h_vapour_J_mol) - Number(row.h_liquid_J_mol)))).toBeLessThanOrEqual(0.11);
    expect(Math.abs(heat / T - (Number(row.s_vapour_J_molK) - Number(row.s_liquid_J_molK)))).toBeLessThanOrEqual(0.011);
  });
});

// In the last 0.0002 K the densities come from an expansion instead of Newton's method.
describe('beside the critical point', () => {
  const half = (T: number): number => {
    const { liquid, vapour } = saturation(T);
    return (liquid - vapour) / 2;
  };

  // Source: tests/reference/nitrogen-critical.csv, the equation to 50 digits on both sides of where the expansion
  // begins. Nearer than 0.00005 K it is the critical point of the printed coefficients that lies 4e-10 K lower.
  const rows = numberRows('nitrogen-critical.csv', ['T_K', 'p_Pa', 'rho_liquid_mol_m3', 'rho_vapour_mol_m3']);
  test.each(rows)('pressure and both densities at $T_K K', (row) => {
    const { p, liquid, vapour } = saturation(row.T_K);
    const below = T_CRITICAL - row.T_K;
    const within = below > 9e-5 ? 2e-9 : 1.6e-10 / Math.sqrt(below);
    expect(relativeError(p, row.p_Pa)).toBeLessThanOrEqual(1e-13);
    expect(relativeError(liquid, row.rho_liquid_mol_m3)).toBeLessThanOrEqual(within);
    expect(relativeError(vapour, row.rho_vapour_mol_m3)).toBeLessThanOrEqual(within);
  });

  test('nothing jumps: pressure and vapour density still rise, the liquid density falls', () => {
    const states = Array.from({ length: 4000 }, (_, i) => saturation(T_CRITICAL - (4000 - i) * 1e-7));
    states.slice(1).forEach((warmer, i) => {
      const colder = states[i] ?? { p: Number.NaN, liquid: Number.NaN, vapour: Number.NaN };
      expect(warmer.p).toBeGreaterThan(colder.p);
      expect(warmer.vapour).toBeGreaterThan(colder.vapour);
      expect(warmer.liquid).toBeLessThan(colder.liquid);
    });
    const [below, above] = [2.000001e-4, 1.999999e-4].map(
      (distance) => half(T_CRITICAL - distance) / Math.sqrt(distance),
    );
    expect(relativeError(above ?? Number.NaN, below ?? Number.NaN)).toBeLessThanOrEqual(2e-6);
  });

  // Source: Landau's expansion of an analytic equation of state at its critical point, in any textbook of statistical
  // mechanics: half the difference of the densities is √(6 (∂²p/∂ρ∂T) / (∂³p/∂ρ³) · (T_c − T)), and to that order their
  // middle is the critical one. The derivatives are differences of the equation, term by term.
  test.each([1e-5, 1e-6, 1e-7, 1e-8])(
    '%d K below it half the difference of the densities is that of the equation',
    (distance) => {
      const rho = SPAN_2000_JSON.reducing.rho_mol_m3_coolprop;
      const slope = (T: number, delta: number): number => span2000(T, delta * rho).dpdrho_T_Pa_m3_mol;
      const [h, k] = [2e-3, 1e-3];
      const cross = (slope(T_CRITICAL + k, 1) - slope(T_CRITICAL - k, 1)) / (2 * k);
      const third = (slope(T_CRITICAL, 1 + h) - 2 * slope(T_CRITICAL, 1) + slope(T_CRITICAL, 1 - h)) / (h * rho) ** 2;
      const { liquid, vapour } = saturation(T_CRITICAL - distance);
      expect(relativeError(half(T_CRITICAL - distance), Math.sqrt((6 * cross * distance) / third))).toBeLessThanOrEqual(
        1e-3,
      );
      expect(relativeError((liquid + vapour) / 2, rho)).toBeLessThanOrEqual(distance);
    },
  );
});

// Source: normal boiling point of nitrogen, 77.355 K in handbooks, from memory; half its last digit is 6e-5 of p.
test('at 77.355 K the saturation pressure is one atmosphere', () => {
  expect(relativeError(saturation(77.355).p, 101_325)).toBeLessThanOrEqual(1e-4);
});

// Source: critical point of nitrogen, 126.192 K, 3.3958 MPa, 11.1839 mol/dm3 (Span et al. 2000, from memory).
test('towards the critical point both densities and the pressure tend to the critical ones', () => {
  const { p, liquid, vapour } = saturation(T_CRITICAL - 1e-3);
  expect((p / 1e6).toFixed(3)).toBe('3.396');
  expect(relativeError((liquid + vapour) / 2, 11_183.9)).toBeLessThanOrEqual(1e-3);
  const critical = span2000(T_CRITICAL, SPAN_2000_JSON.reducing.rho_mol_m3_coolprop);
  expect((critical.p_Pa / 1e6).toFixed(4)).toBe('3.3958');
});
