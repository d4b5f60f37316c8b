import fc from 'fast-check';
import { idealNitrogen, nitrogen, saturationAt, temperature } from 'isochore';
import { describe, expect, test } from 'vitest';
import { anyPressure, at, atDensity, evenly } from '../support/gas-states.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';

// Source: CODATA 2018, from memory; exact as the product of two constants of the SI.
const R = 6.02214076e23 * 1.380649e-23;

const anyState = fc.record({ T: evenly(64, 1000), p: anyPressure });

describe('nitrogen as an ideal gas', () => {
  test('R is that of CODATA 2018', () => {
    expect(relativeError(idealNitrogen.gasConstant_J_molK, R)).toBeLessThanOrEqual(1e-15);
    expect(idealNitrogen.molarMass_kg_mol).toBe(nitrogen.molarMass_kg_mol);
  });

  test('Z is 1, p = ρRT, throttling changes nothing, cp − cv = R', () => {
    fc.assert(
      fc.property(anyState, ({ T, p }) => {
        const state = at(T, p, idealNitrogen);
        expect(relativeError(state.compressibility, 1)).toBeLessThanOrEqual(5e-16);
        expect(relativeError(state.density_mol_m3, p / (R * T))).toBeLessThanOrEqual(1e-15);
        expect(state.jouleThomson_K_Pa).toBe(0);
        expect(relativeError(state.dpdT_Pa_K, p / T)).toBeLessThanOrEqual(1e-15);
        expect(relativeError(state.dpdrho_Pa_m3_mol, R * T)).toBeLessThanOrEqual(1e-15);
        expect(relativeError(state.cp_J_molK - state.cv_J_molK, R)).toBeLessThanOrEqual(1e-14);
        expect(relativeError(state.enthalpy_J_mol - state.internalEnergy_J_mol, R * T)).toBeLessThanOrEqual(1e-12);
        const w = Math.sqrt(((state.cp_J_molK / state.cv_J_molK) * R * T) / idealNitrogen.molarMass_kg_mol);
        expect(relativeError(state.speedOfSound_m_s, w)).toBeLessThanOrEqual(1e-15);
      }),
    );
  });

  test('energy and heat capacity do not depend on the pressure', () => {
    for (const T of [64, 200, 300, 1000]) {
      const [low, high] = [at(T, 1, idealNitrogen), at(T, 200e6, idealNitrogen)];
      expect(high.internalEnergy_J_mol).toBe(low.internalEnergy_J_mol);
      expect(high.cp_J_molK).toBe(low.cp_J_molK);
      expect(relativeError(low.entropy_J_molK - high.entropy_J_molK, R * Math.log(200e6))).toBeLessThanOrEqual(1e-13);
    }
  });

  test.each([64, 126.192, 300, 1000])('cp at %d K is that of the reference equation at zero pressure', (T) => {
    const limit = at(T, 1e-3).cp_J_molK / nitrogen.gasConstant_J_molK;
    expect(relativeError(at(T, 1e-3, idealNitrogen).cp_J_molK / R, limit)).toBeLessThanOrEqual(1e-8);
  });

  // Source: NIST-JANAF tables, heat capacity and entropy of the ideal gas at 298.15 K and 1000 K, from memory; the
  // entropies are for 1 bar.
  test.each([
    { T: 298.15, cp: 29.124, s: 191.609 },
    { T: 1000, cp: 32.697, s: 228.17 },
  ])('at $T K cp is $cp and the entropy at 1 bar $s J/(mol K)', ({ T, cp, s }) => {
    const state = at(T, 1e5, idealNitrogen);
    expect(Math.abs(state.cp_J_molK - cp)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(state.entropy_J_molK - s)).toBeLessThanOrEqual(0.01);
  });

  // Source: seven halves of R for a diatomic gas whose rotation is free and whose vibration is frozen: textbooks.
  test('cp is 7/2 R from 64 K to 250 K within 0.1 %', () => {
    for (const T of [64, 100, 160, 250]) {
      expect(relativeError(at(T, 1e5, idealNitrogen).cp_J_molK, 3.5 * R)).toBeLessThanOrEqual(1e-3);
    }
  });
});

describe('where it answers', () => {
  test.each([
    { T: 63.99, p: 1e5, path: 'temperature', wanted: '64 K to 1000 K' },
    { T: 1000.01, p: 1e5, path: 'temperature', wanted: '64 K to 1000 K' },
    { T: 300, p: 200_000_001, path: 'pressure', wanted: '0 Pa to 200000000 Pa absolute' },
  ])('$T K and $p Pa are refused', ({ T, p, path, wanted }) => {
    expect(problemOf(() => at(T, p, idealNitrogen))).toMatchObject({
      code: 'outside the model',
      path,
      wanted: `${wanted}, where the model nitrogen-ideal is valid`,
    });
  });

  test('it knows no liquid: every pressure down to 64 K is gas', () => {
    expect(at(64, 1e6, idealNitrogen).compressibility).toBeCloseTo(1, 14);
    expect(atDensity(64, 30_000, idealNitrogen).compressibility).toBeCloseTo(1, 14);
    expect(problemOf(() => saturationAt(idealNitrogen, temperature(80, 'K')))).toMatchObject({
      code: 'model without saturation',
      path: 'model',
      wanted: 'a model that knows liquid and vapour',
    });
  });

  test('claims no uncertainty', () => {
    expect(at(300, 1e6, idealNitrogen).densityUncertainty).toBe('not stated by the source');
  });
});
