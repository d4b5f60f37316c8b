// The first law for the gas of a rigid vessel, on bare SI numbers. Amounts and energies are taken per volume of the vessel:
// mol/m3 and J/m3. Without heat both ways are algebra: what flows in brings its enthalpy, and what stays behind when gas
// flows out expands along its isentrope. Nothing is thrown; NaN stands for a state that the model does not have.
import { coldestAt } from '../gas/door.js';
import type { GasModel, Properties, Pvt } from '../gas/model.js';
import { increasingRoot, type Sloped } from '../gas/solve.js';

/** All of a state that an energy balance needs; the caller's object. */
export interface Fluid extends Pvt, Properties {}

/** A state: temperature and molar density. */
export interface State {
  readonly T_K: number;
  readonly rho: number;
}

const NOWHERE: State = { T_K: Number.NaN, rho: Number.NaN };

function fluid(): Fluid {
  return {
    ...{ p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 },
    ...{ u_J_mol: 0, h_J_mol: 0, s_J_molK: 0, cv_J_molK: 0, cp_J_molK: 0, w_m_s: 0, jt_K_Pa: 0 },
  };
}

/** The whole of a state. */
export function fluidAt(model: GasModel, { T_K, rho }: State, out = fluid()): Fluid {
  model['~kernel'].pvt(T_K, rho, out);
  model['~kernel'].properties(T_K, rho, out);
  return out;
}

/** Absolute pressure of a state. */
export function pressureOf(model: GasModel, { T_K, rho }: State): number {
  const out: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  model['~kernel'].pvt(T_K, rho, out);
  return out.p_Pa;
}

/**
 * The temperature at which a molar density has an internal energy or an entropy; NaN where the gas has none. `near_K` is a
 * temperature from which Newton's method is tried before the root is bracketed.
 */
export function temperatureWith(
  model: GasModel,
  rho: number,
  property: 'u_J_mol' | 's_J_molK',
  wanted: number,
  near_K: number,
): number {
  if (!(rho > 0) || rho >= model['~kernel'].densest_mol_m3) return Number.NaN;
  const of = fluid();
  const at = (T: number, out: Sloped): void => {
    model['~kernel'].properties(T, rho, of);
    out.value = of[property];
    out.slope = property === 'u_J_mol' ? of.cv_J_molK : of.cv_J_molK / T;
  };
  const end: Sloped = { value: 0, slope: 0 };
  const [coldest, hottest] = model.validity.temperature_K;
  // Nearly always the root lies above the critical temperature, and the two-phase region need not be looked for.
  let low = Math.max(model['~kernel'].criticalTemperature_K, coldest);
  let high = hottest;
  let T_K = near_K;
  for (let step = 0; step < 6 && T_K > low && T_K < high; step += 1) {
    at(T_K, end);
    const change = (wanted - end.value) / end.slope;
    T_K += change;
    if (Math.abs(change) <= 1e-9 * T_K) return T_K;
  }
  at(low, end);
  if (end.value > wanted) {
    high = low;
    low = coldestAt(model, rho);
    at(low, end);
    if (end.value > wanted) return Number.NaN;
  } else {
    at(high, end);
    if (!(end.value >= wanted)) return Number.NaN;
  }
  return increasingRoot(at, wanted, low, high);
}

/** What a supply has handed over once some gas was drawn from it, per volume of the vessel that is filled. */
export interface Fed {
  /** Molar enthalpy of the gas that it gives at this moment. */
  readonly h_J_mol: number;
  /** Energy handed over since the start, J/m3. */
  readonly energy: number;
  /** The supply itself. */
  readonly state: State;
}

/** A supply, by what was drawn from it, mol/m3 of the vessel that is filled. */
export type Source = (drawn: number) => Fed;

/** A supply that stays at its pressure and temperature, whatever is drawn. */
export function steadySource(model: GasModel, state: State): Source {
  const { h_J_mol } = fluidAt(model, state);
  return (drawn) => ({ h_J_mol, energy: h_J_mol * drawn, state });
}

/** A bottle that feeds a vessel and exchanges no heat: what remains in it expands along its isentrope. */
export function bottleSource(model: GasModel, start: State, volume_m3: number, vessel_m3: number): Source {
  const { u_J_mol: u_1, s_J_molK: s_1 } = fluidAt(model, start);
  return (drawn) => {
    const rho = fedTo(start.rho, drawn, volume_m3, vessel_m3);
    const state = drawn === 0 ? start : { T_K: temperatureWith(model, rho, 's_J_molK', s_1, start.T_K), rho };
    const { u_J_mol, h_J_mol } = fluidAt(model, state);
    return { h_J_mol, energy: (volume_m3 * (start.rho * u_1 - rho * u_J_mol)) / vessel_m3, state };
  };
}

/** The density in a bottle once so much was drawn from it, per volume of the vessel. */
export function fedTo(rho: number, drawn: number, volume_m3: number, vessel_m3: number): number {
  return rho - (vessel_m3 * drawn) / volume_m3;
}

/** The gas of a vessel that was filled without heat up to a density: n2 u2 = n1 u1 + what the supply has handed over. */
export function filledAdiabatically(model: GasModel, start: State, from: Source, rho: number): State {
  const before = start.rho * fluidAt(model, start).u_J_mol;
  const u = (before + from(rho - start.rho).energy) / rho;
  return { T_K: temperatureWith(model, rho, 'u_J_mol', u, start.T_K), rho };
}

/** The gas that remains in a vessel once its density has fallen without heat: on its isentrope. */
export function expandedIsentropically(model: GasModel, start: State, rho: number): State {
  return { T_K: temperatureWith(model, rho, 's_J_molK', fluidAt(model, start).s_J_molK, start.T_K), rho };
}

const MOST_STEPS = 200;

/**
 * The state on a path, a state for each density, that has a pressure, which increases along it. Secants inside a bracket
 * that every evaluation narrows, or its middle. Where the path leaves the model, pressure counts as beyond the one wanted;
 * NaN if it is not reached before.
 */
export function stateWithPressure(
  model: GasModel,
  path: (rho: number) => State,
  p_Pa: number,
  [low, high]: readonly [low: number, high: number],
  outside: 'too high' | 'too low',
): State {
  let [a, b] = [low, high];
  let before = { x: a, p: pressureOf(model, path(a)) };
  if (isAt(before.p, p_Pa)) return path(a);
  let x = b;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const state = path(x);
    const p = pressureOf(model, state);
    if (isAt(p, p_Pa)) return state;
    if (Number.isNaN(p) ? outside === 'too low' : p < p_Pa) a = x;
    else b = x;
    const next = x + ((p_Pa - p) * (x - before.x)) / (p - before.p);
    const inside = next > a && next < b;
    before = { x, p };
    x = inside ? next : 0.5 * (a + b);
    // Closed: on the pressure as near as rounding lets it, or on the end of what the model has.
    if (x === before.x || b - a <= 1e-15 * b) return Math.abs(p - p_Pa) <= 1e-10 * p_Pa ? state : NOWHERE;
  }
  return NOWHERE;
}

function isAt(p: number, wanted: number): boolean {
  return Math.abs(p - wanted) <= 1e-13 * wanted;
}

/** A density at which a path has passed a pressure, or has left the model: the end of a bracket that begins at `rho`. */
export function densityBeyond(model: GasModel, path: (rho: number) => State, p_Pa: number, start: State): number {
  const of = fluidAt(model, start);
  let by = Math.max(p_Pa - of.p_Pa, 1e-9 * p_Pa) / of.dpdrho_T;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const p = pressureOf(model, path(start.rho + by));
    if (!(p < p_Pa)) return start.rho + by;
    by *= 2;
  }
  return Number.NaN;
}

/** The gas of a vessel that was filled without heat up to an absolute pressure. */
export function filledToPressure(model: GasModel, start: State, from: Source, p_Pa: number): State {
  const path = (rho: number): State => filledAdiabatically(model, start, from, rho);
  return stateWithPressure(model, path, p_Pa, [start.rho, densityBeyond(model, path, p_Pa, start)], 'too high');
}

/** The gas that remains in a vessel whose pressure has fallen without heat. */
export function expandedToPressure(model: GasModel, start: State, p_Pa: number): State {
  const path = (rho: number): State => expandedIsentropically(model, start, rho);
  return stateWithPressure(model, path, p_Pa, [0, start.rho], 'too low');
}
