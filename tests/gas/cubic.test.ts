import fc from 'fast-check';
import { absolute, cubicNitrogen, nitrogen, saturationAt, stateAt, temperature, type GasState } from 'isochore';
import { describe, expect, test } from 'vitest';
import { at, atDensity, evenly } from '../support/gas-states.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';

// Source: Peng and Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59, from memory: the form of the equation, 0.45724,
// 0.07780, κ = 0.37464 + 1.54226 ω − 0.26992 ω², and 0.307 for the critical compression factor.
const T_C = 126.192;
const P_C = 3.3958e6;
const OMEGA = 0.0372;
const R = cubicNitrogen.gasConstant_J_molK;
const { pvt } = cubicNitrogen['~kernel'];

/**
 * Ω_a and Ω_b from the condition that they stand for: at the critical point the cubic
 * Z³ − (1 − B) Z² + (A − 2B − 3B²) Z − (AB − B² − B³) is (Z − Zc)³, so that 3 Zc = 1 − B and 3 Zc² = A − 2B − 3B².
 */
function criticalConstants(): { A: number; B: number; Z: number } {
  const of = (B: number): { A: number; Z: number; rest: number } => {
    const Z = (1 - B) / 3;
    const A = 3 * Z ** 2 + 2 * B + 3 * B ** 2;
    return { A, Z, rest: Z ** 3 - A * B + B ** 2 + B ** 3 };
  };
  let [low, high] = [0.07, 0.09];
  for (let i = 0; i < 60; i += 1) {
    const B = (low + high) / 2;
    if (of(B).rest > 0) low = B;
    else high = B;
  }
  return { ...of(low), B: low };
}
const CRITICAL = criticalConstants();

/** The equation as it is printed, in the molar volume. */
function printed(T: number, rho: number, omega_a: number, omega_b: number): number {
  const kappa = 0.37464 + 1.54226 * OMEGA - 0.26992 * OMEGA ** 2;
  const alpha = (1 + kappa * (1 - Math.sqrt(T / T_C))) ** 2;
  const a = (omega_a * (R * T_C) ** 2) / P_C;
  const b = (omega_b * R * T_C) / P_C;
  const v = 1 / rho;
  return (R * T) / (v - b) - (a * alpha) / (v ** 2 + 2 * b * v - b ** 2);
}

function kernelAt(T: number, rho: number): { p_Pa: number; dpdrho_T: number } {
  const out = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
  pvt(T, rho, out);
  return out;
}

const anyState = fc.record({ T: evenly(160, 1000), p: evenly(1e5, 100e6) });

describe('the cubic equation of Peng and Robinson', () => {
  test('the constants of the critical point are those that the paper prints', () => {
    expect(CRITICAL.A.toFixed(5)).toBe('0.45724');
    expect(CRITICAL.B.toFixed(5)).toBe('0.07780');
    expect(CRITICAL.Z.toFixed(4)).toBe('0.3074');
  });

  test('the kernel is the equation', () => {
    fc.assert(
      fc.property(anyState, ({ T, p }) => {
        const rho = at(T, p, cubicNitrogen).density_mol_m3;
        expect(relativeError(printed(T, rho, CRITICAL.A, CRITICAL.B), p)).toBeLessThanOrEqual(1e-12);
        // The printed digits of the two constants move the pressure by some 3e-4 at most.
        expect(relativeError(printed(T, rho, 0.45724, 0.0778), p)).toBeLessThanOrEqual(5e-4);
      }),
    );
  });

  test('at its critical point Z is 0.3074, and the isotherm is level and turns', () => {
    const rho = P_C / (CRITICAL.Z * R * T_C);
    expect(relativeError(kernelAt(T_C, rho).p_Pa, P_C)).toBeLessThanOrEqual(1e-12);
    expect(Math.abs(kernelAt(T_C, rho).dpdrho_T) / (R * T_C)).toBeLessThanOrEqual(1e-12);
    // Level there, rising on both sides.
    const [below, above] = [kernelAt(T_C, 0.99 * rho).dpdrho_T, kernelAt(T_C, 1.01 * rho).dpdrho_T];
    for (const slope of [below, above]) {
      expect(slope / (R * T_C)).toBeGreaterThan(0);
      expect(slope / (R * T_C)).toBeLessThan(1e-3);
    }
  });

  // The acentric factor by its definition (Pitzer 1955, from memory), with the reference equation's own saturation.
  test('ω = −log10(p_sat / p_c) − 1 at 0.7 T_c is 0.0372', () => {
    const { pressure } = saturationAt(nitrogen, temperature(0.7 * T_C, 'K'));
    expect((-Math.log10(pressure.pascals / P_C) - 1).toFixed(4)).toBe(OMEGA.toFixed(4));
  });

  test.each([160, 293.15, 1000])('Z tends to 1 at %d K', (T) => {
    expect(relativeError(at(T, 1, cubicNitrogen).compressibility, 1)).toBeLessThanOrEqual(1e-6);
    expect(relativeError(at(T, 1e-6, cubicNitrogen).compressibility, 1)).toBeLessThanOrEqual(1e-12);
  });

  test('has the molar mass and the zero-pressure heat capacity of the reference equation', () => {
    expect(cubicNitrogen.molarMass_kg_mol).toBe(nitrogen.molarMass_kg_mol);
    for (const T of [160, 300, 1000]) {
      const share = (model: typeof nitrogen): number => at(T, 1e-3, model).cp_J_molK / model.gasConstant_J_molK;
      expect(relativeError(share(cubicNitrogen), share(nitrogen))).toBeLessThanOrEqual(1e-9);
    }
  });
});

describe('how far it lies from the reference equation', () => {
  const off = (T: number, p: number): number => at(T, p, cubicNitrogen).density_mol_m3 / at(T, p).density_mol_m3 - 1;
  const worst = (coldest: number, hottest: number, highest: number): number => {
    let most = 0;
    for (let T = coldest; T <= hottest; T += 10) {
      for (let p = 5e5; p <= highest; p += 5e5) most = Math.max(most, Math.abs(off(T, p)));
    }
    return most;
  };

  test('over its validity at most 13.6 % of the density, at 160 K and 82.5 MPa', () => {
    expect(off(160, 82.5e6).toFixed(4)).toBe('0.1357');
    expect(worst(160, 1000, 100e6)).toBeLessThan(0.1358);
  });

  test('at 250 K to 350 K below 30 MPa at most 5.2 %', () => {
    expect(worst(250, 350, 30e6).toFixed(3)).toBe('0.051');
  });

  test('at 20 °C and 140 bar 2.2 % of the compression factor', () => {
    const state = (model: typeof nitrogen): GasState =>
      stateAt(model, { pressure: absolute(140, 'bar'), temperature: temperature(20, '°C') });
    const z = [nitrogen, cubicNitrogen].map((model) => state(model).compressibility);
    expect(z.map((x) => x.toFixed(3))).toEqual(['1.016', '0.994']);
  });
});

describe('where it answers', () => {
  test('refuses what lies outside, by its own name', () => {
    expect(problemOf(() => at(159.99, 1e5, cubicNitrogen))).toMatchObject({
      code: 'outside the model',
      path: 'temperature',
      wanted: '160 K to 1000 K, where the model nitrogen-peng-robinson-1976 is valid',
    });
    expect(problemOf(() => at(300, 100_000_001, cubicNitrogen))).toMatchObject({
      code: 'outside the model',
      path: 'pressure',
      wanted: '0 Pa to 100000000 Pa absolute, where the model nitrogen-peng-robinson-1976 is valid',
    });
  });

  // The pole at 1/b: beyond it the equation has no meaning.
  test('refuses a density near and beyond its pole', () => {
    const pole = P_C / (CRITICAL.B * R * T_C);
    for (const rho of [0.99 * pole, 1.01 * pole, 2 * pole]) {
      expect(problemOf(() => atDensity(300, rho, cubicNitrogen)).code).toBe('outside the model');
    }
  });

  test('has no saturation', () => {
    expect(problemOf(() => saturationAt(cubicNitrogen, temperature(200, 'K')))).toMatchObject({
      code: 'model without saturation',
      path: 'model',
      wanted: 'a model that knows liquid and vapour',
    });
  });

  test('claims no uncertainty', () => {
    expect(at(300, 1e6, cubicNitrogen).densityUncertainty).toBe('not stated by the source');
  });
});
