import { fail } from '../basis/fault.js';
import { relation, type Relation, type Trace } from '../basis/relation.js';
import type { GasModel, Pvt, Range } from './model.js';

// The doors between a calculation and a kernel: limits are checked before and after, a solver that does not close is
// reported, and the step is shown to whoever traces.

// @__NO_SIDE_EFFECTS__
function implicit<const From extends readonly string[]>(given: Relation<From>): Relation<From> {
  return given;
}

/** The density of a state: a root, not a closed formula. p(T, rho) is the model's equation. */
export const DENSITY = /* @__PURE__ */ implicit({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['T', 'p_abs'],
  formula: 'p(T, rho) = p_abs',
  source: 'the gas model',
});

export const PRESSURE = /* @__PURE__ */ implicit({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['T', 'rho'],
  formula: 'p(T, rho)',
  source: 'the gas model',
});

/** The temperature at which a density has a pressure: a root. */
export const TEMPERATURE_OF = /* @__PURE__ */ implicit({
  gives: 'T',
  unit: 'K',
  from: ['rho', 'p_abs'],
  formula: 'p(T, rho) = p_abs',
  source: 'the gas model',
});

export const COMPRESSIBILITY = /* @__PURE__ */ relation({
  gives: 'Z',
  unit: '1',
  from: ['p_abs', 'rho', 'R', 'T'],
  formula: 'p_abs / (rho * R * T)',
  source: 'compression factor, by definition',
  of: (p, rho, R, T) => p / (rho * R * T),
});

/** Molar density at a temperature and an absolute pressure. */
export function densityAt(
  model: GasModel,
  T_K: number,
  p_Pa: number,
  path: string,
  about: string,
  trace?: Trace,
): number {
  checkTemperature(model, T_K, path);
  checkPressure(model, p_Pa, path);
  const rho = model['~kernel'].density(T_K, p_Pa);
  if (Number.isNaN(rho)) noSolution(model, `${p_Pa} Pa absolute at ${T_K} K`, path);
  if (trace !== undefined) trace({ relation: DENSITY, about, values: [T_K, p_Pa], result: rho });
  return rho;
}

/** Pressure and slopes of a state that is known to lie inside the model. */
export function pvtOf(model: GasModel, T_K: number, rho: number): Pvt {
  const out: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  model['~kernel'].pvt(T_K, rho, out);
  return out;
}

/** Absolute pressure, with its slopes, at a temperature and a molar density. */
export function pvtAt(model: GasModel, T_K: number, rho: number, path: string, about: string, trace?: Trace): Pvt {
  checkTemperature(model, T_K, path);
  const out = pvtOf(model, T_K, rho);
  checkPressure(model, out.p_Pa, path, `${rho} mol/m3, which is ${out.p_Pa} Pa absolute`);
  if (trace !== undefined) trace({ relation: PRESSURE, about, values: [T_K, rho], result: out.p_Pa });
  return out;
}

/**
 * The temperature at which a molar density has a pressure, by Newton's method inside a bracket; undefined if it lies
 * outside the model. At constant density p increases with T, so there is at most one.
 */
export function temperatureAt(
  model: GasModel,
  rho: number,
  p_Pa: number,
  about: string,
  trace?: Trace,
): number | undefined {
  if (rho === 0) return undefined; // no temperature gives vacuum a pressure
  const { pvt } = model['~kernel'];
  const out: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  let [low, high] = model.validity.temperature_K;
  pvt(low, rho, out);
  if (out.p_Pa > p_Pa) return undefined;
  pvt(high, rho, out);
  if (out.p_Pa < p_Pa) return undefined;
  let T = (low + high) / 2;
  for (let step = 0; step < 100; step += 1) {
    pvt(T, rho, out);
    if (out.p_Pa < p_Pa) low = T;
    else high = T;
    const next = T + (p_Pa - out.p_Pa) / out.dpdT_rho;
    const inside = next >= low && next <= high;
    const change = inside ? next - T : (low + high) / 2 - T;
    T += change;
    // Quadratic convergence: after a change below 1e-9 the next would be below the rounding of a double.
    if (inside && Math.abs(change) <= 1e-9 * T) {
      if (trace !== undefined) trace({ relation: TEMPERATURE_OF, about, values: [rho, p_Pa], result: T });
      return T;
    }
  }
  return noSolution(model, `${p_Pa} Pa absolute at ${rho} mol/m3`, '');
}

/** Refuses a temperature outside the model. */
export function checkTemperature(model: GasModel, T_K: number, path: string): void {
  const range = model.validity.temperature_K;
  if (within(T_K, range)) return;
  outside(model, path, `${T_K} K`, `${range[0]} K to ${range[1]} K`);
}

function checkPressure(model: GasModel, p_Pa: number, path: string, found = `${p_Pa} Pa absolute`): void {
  const range = model.validity.pressure_Pa;
  if (within(p_Pa, range)) return;
  outside(model, path, found, `${range[0]} Pa to ${range[1]} Pa absolute`);
}

/** Whether a number lies in a closed range; NaN does not. */
export function within(x: number, [min, max]: Range): boolean {
  return x >= min && x <= max;
}

function outside(model: GasModel, path: string, found: string, wanted: string): never {
  fail({
    code: 'outside the model',
    path,
    found,
    wanted: `${wanted}, where the model ${model.id} is valid`,
    remedy: `check value and unit; the model ends there because ${model.validity.reason}`,
  });
}

function noSolution(model: GasModel, found: string, path: string): never {
  fail({
    code: 'no solution',
    path,
    found,
    wanted: `a state that the model ${model.id} can solve`,
    remedy: 'this should not happen inside the limits of the model: please report it with these numbers',
  });
}
