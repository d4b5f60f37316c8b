import fc from 'fast-check';
import { absolute, nitrogen, saturationAt, stateAt, temperature, type GasModel, type GasState } from 'isochore';
import { relativeError } from './reference.js';
import { SPAN_2000_JSON, type EquationState } from './span2000.js';

/** The state of a gas, nitrogen by the reference equation unless told, from bare SI numbers. */
export function at(T_K: number, p_Pa: number, model: GasModel = nitrogen): GasState {
  return stateAt(model, { temperature: temperature(T_K, 'K'), pressure: absolute(p_Pa, 'Pa') });
}

/** The state at a temperature and a molar density. */
export function atDensity(T_K: number, density_mol_m3: number, model: GasModel = nitrogen): GasState {
  return stateAt(model, { temperature: temperature(T_K, 'K'), density_mol_m3 });
}

/** Evenly spread numbers, both ends included; a double drawn by its bits would nearly always be tiny. */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const steps = 2 ** 20;
  return fc.integer({ min: 0, max: steps }).map((i) => min + ((max - min) * i) / steps);
}

/** The critical temperature of the equation, K; the last millikelvin below it has tests of its own. */
export const T_CRITICAL = SPAN_2000_JSON.reducing.T_K;

/** Temperatures of supercritical fluid, K: a third of them below 160 K, where the Gaussian terms count. */
const anyTemperature = fc.oneof(evenly(T_CRITICAL, 160), { arbitrary: evenly(T_CRITICAL, 1000), weight: 2 });

/** Pressures of the model's validity from 1 Pa on, Pa: half of them evenly spread, half evenly in their logarithm. */
export const anyPressure = fc.oneof(
  evenly(1, 200e6),
  evenly(0, Math.log(200e6)).map((x) => Math.min(Math.exp(x), 200e6)),
);

/** Temperatures at which there is a vapour, K. */
export const anyColdTemperature = evenly(64, T_CRITICAL - 1e-3);

export interface Point {
  readonly T: number;
  readonly p: number;
}

/** States of vapour: a third of them saturated or within a millionth of it. */
export const anyVapour: fc.Arbitrary<Point> = fc
  .tuple(
    anyColdTemperature,
    fc.oneof(
      evenly(0, 1e-6).map((x) => 1 - x),
      evenly(1e-6, 1),
      evenly(-14, 0).map((x) => Math.exp(x)),
    ),
  )
  .map(([T, share]) => ({ T, p: share * saturationAt(nitrogen, temperature(T, 'K')).pressure.pascals }));

/** States of supercritical fluid. */
export const anyFluid: fc.Arbitrary<Point> = fc.record({ T: anyTemperature, p: anyPressure });

/** States of the gas: vapour or supercritical fluid. */
export const anyGas: fc.Arbitrary<Point> = fc.oneof(anyVapour, { arbitrary: anyFluid, weight: 2 });

/** A property as the reference files name it, taken from a state of the library. */
export const OF_STATE: Readonly<Record<keyof EquationState | 'rho_mol_m3', (state: GasState) => number>> = {
  p_Pa: (state) => state.pressure.pascals,
  rho_mol_m3: (state) => state.density_mol_m3,
  Z: (state) => state.compressibility,
  u_J_mol: (state) => state.internalEnergy_J_mol,
  h_J_mol: (state) => state.enthalpy_J_mol,
  s_J_molK: (state) => state.entropy_J_molK,
  cv_J_molK: (state) => state.cv_J_molK,
  cp_J_molK: (state) => state.cp_J_molK,
  w_m_s: (state) => state.speedOfSound_m_s,
  dpdT_rho_Pa_K: (state) => state.dpdT_Pa_K,
  dpdrho_T_Pa_m3_mol: (state) => state.dpdrho_Pa_m3_mol,
  mu_JT_K_Pa: (state) => state.jouleThomson_K_Pa,
};

/** The Joule–Thomson coefficient passes zero: it is compared on the scale of its values, K/Pa. */
const JT_RANGE = 4e-6;

/**
 * How far a property lies from a reference value: relative to the reference, or where it may pass zero, as u, h and the
 * Joule–Thomson coefficient do, to the scale on which it varies.
 */
export function apart(property: keyof typeof OF_STATE, value: number, reference: number, T_K: number): number {
  if (property === 'mu_JT_K_Pa') return Math.abs(value - reference) / JT_RANGE;
  if (property === 'u_J_mol' || property === 'h_J_mol') {
    return Math.abs(value - reference) / Math.max(Math.abs(reference), SPAN_2000_JSON.gasConstant_J_molK * T_K);
  }
  return relativeError(value, reference);
}

/**
 * p / (ρ ∂p/∂ρ): by how much rounding of the pressure grows in the density, and in what depends on it. It is 1 for an
 * ideal gas and has no bound at the critical point.
 */
export function amplification(state: { p_Pa: number; rho_mol_m3: number; dpdrho_T_Pa_m3_mol: number }): number {
  return Math.max(1, state.p_Pa / (state.rho_mol_m3 * state.dpdrho_T_Pa_m3_mol));
}
