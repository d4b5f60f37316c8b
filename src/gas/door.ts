import { fail } from '../basis/fault.js';
import { emptySpace, liquid, noSolution, outsideModel, twoPhases } from '../basis/problem.js';
import { relation, show, type Relation, type Trace } from '../basis/relation.js';
import { LIQUID, type Equilibrium, type GasModel, type Pvt, type Range } from './model.js';
import { increasingRoot, type Sloped } from './solve.js';

// The doors between a calculation and a kernel: limits are checked before and after, a solver that does not close is
// reported, and the step is shown to whoever traces.

/** Declares a relation whose arithmetic is the gas model's. */
// @__NO_SIDE_EFFECTS__
export function implicit<const From extends readonly string[]>(given: Relation<From>): Relation<From> {
  Object.freeze(given.from);
  return Object.freeze(given);
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

/**
 * The least pressure in Pa, and density in mol/m3, of a gas: what is computed from less leaves the range in which a number
 * keeps its digits (IEEE 754: from 2.2e-308 on), and entropy has no value. One molecule in all that can be seen of the
 * universe is more.
 */
const LEAST = 1e-290;

/** Refuses a pressure or a density of no gas. */
export function notEmpty(value: number, path: string, unit: string): number {
  return value >= LEAST ? value : fail(emptySpace, path, `${value} ${unit}`, { least: `${LEAST} ${unit}` });
}

/** Molar density of vapour or supercritical fluid at a temperature and an absolute pressure; 0 in vacuum. */
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
  if (p_Pa !== 0) notEmpty(p_Pa, path, 'Pa absolute');
  const rho = model['~kernel'].density(T_K, p_Pa);
  if (rho === LIQUID) isLiquid(`${p_Pa} Pa absolute at ${T_K} K`, saturationOf(model, T_K, path), path);
  if (Number.isNaN(rho)) unsolved(model, `${p_Pa} Pa absolute at ${T_K} K`, path);
  if (trace !== undefined) show(trace, { relation: DENSITY, about, values: [T_K, p_Pa], result: rho });
  return rho;
}

/** Pressure and slopes of a state that is known to lie inside the model. */
export function pvtOf(model: GasModel, T_K: number, rho: number): Pvt {
  const out: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  model['~kernel'].pvt(T_K, rho, out);
  return out;
}

/** Absolute pressure, with its slopes, at a temperature and a molar density; never inside the two-phase region. */
export function pvtAt(model: GasModel, T_K: number, rho: number, path: string, about: string, trace?: Trace): Pvt {
  checkTemperature(model, T_K, path);
  checkOnePhase(model, T_K, rho, path);
  const out = pvtOf(model, T_K, rho);
  // The last place may put a state at the end of the model beyond it.
  const p = out.p_Pa * (1 - 1e-14);
  checkPressure(model, p, path, `${rho} mol/m3, which is ${out.p_Pa} Pa absolute`);
  if (trace !== undefined) show(trace, { relation: PRESSURE, about, values: [T_K, rho], result: out.p_Pa });
  return out;
}

/**
 * The temperature at which a molar density has a pressure; undefined if it lies outside the model. At constant density p
 * increases with T, so there is at most one. The search begins above the two-phase region.
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
  const [coldest, hottest] = model.validity.temperature_K;
  pvt(hottest, rho, out);
  if (out.p_Pa < p_Pa) return undefined;
  // Nearly always the root lies above the critical temperature, and the two-phase region need not be looked for.
  let low = Math.max(model['~kernel'].criticalTemperature_K, coldest);
  let high = hottest;
  pvt(low, rho, out);
  if (out.p_Pa > p_Pa) {
    high = low;
    low = coldestAt(model, rho);
    pvt(low, rho, out);
    // Rounding must not put saturated vapour outside.
    if (out.p_Pa > p_Pa) return out.p_Pa - p_Pa <= 1e-12 * p_Pa ? low : undefined;
  }
  const isochore = (T: number, of: Sloped): void => {
    pvt(T, rho, out);
    of.value = out.p_Pa;
    of.slope = out.dpdT_rho;
  };
  const T = increasingRoot(isochore, p_Pa, low, high);
  if (Number.isNaN(T)) unsolved(model, `${p_Pa} Pa absolute at ${rho} mol/m3`, '');
  if (trace !== undefined) show(trace, { relation: TEMPERATURE_OF, about, values: [rho, p_Pa], result: T });
  return T;
}

/** Liquid and vapour in equilibrium at a temperature below the critical one. */
export function saturationOf(model: GasModel, T_K: number, path = ''): Equilibrium {
  const out: Equilibrium = { p_Pa: 0, rho_liquid: 0, rho_vapour: 0 };
  if (!model['~kernel'].saturation(T_K, out)) unsolved(model, `saturation at ${T_K} K`, path);
  return out;
}

/** The lowest temperature at which a molar density is gas: that of saturation, the critical one, or the model's end. */
export function coldestAt(model: GasModel, rho: number): number {
  return saturatedWhere(model, (phases) => phases.rho_vapour >= rho);
}

/** The temperature below which a molar density is that of two phases, if it is one of liquid above it. */
export function coldestLiquidAt(model: GasModel, rho: number): number {
  return saturatedWhere(model, (phases) => phases.rho_liquid <= rho);
}

/** The lowest temperature at which an absolute pressure is that of gas. */
export function coldestUnder(model: GasModel, p_Pa: number): number {
  return saturatedWhere(model, (phases) => phases.p_Pa >= p_Pa);
}

// From cold to the critical point pressure and vapour density of saturation increase and the liquid's density decreases, so
// that bisection finds where one of them passes a value.
function saturatedWhere(model: GasModel, passed: (phases: Equilibrium) => boolean): number {
  let [low] = model.validity.temperature_K;
  let high = model['~kernel'].criticalTemperature_K;
  if (high <= low || passed(saturationOf(model, low))) return low;
  for (;;) {
    const T = 0.5 * (low + high);
    if (T === low || T === high) return high;
    if (passed(saturationOf(model, T))) high = T;
    else low = T;
  }
}

function checkOnePhase(model: GasModel, T_K: number, rho: number, path: string): void {
  const found = `${rho} mol/m3 at ${T_K} K`;
  const { criticalTemperature_K } = model['~kernel'];
  if (T_K >= criticalTemperature_K) {
    checkDensity(model, rho, path, found);
    return;
  }
  const phases = saturationOf(model, T_K, path);
  // Rounding must not make two phases of saturated vapour.
  if (rho <= phases.rho_vapour * (1 + 1e-12)) return;
  if (rho >= phases.rho_liquid) isLiquid(found, phases, path);
  fail(twoPhases, path, found, { range: `at most ${phases.rho_vapour} mol/m3` });
}

/** Refuses a molar density that no state of the model reaches. */
export function checkDensity(model: GasModel, rho: number, path: string, found: string): void {
  const { densest_mol_m3 } = model['~kernel'];
  if (rho >= densest_mol_m3) outside(model, path, found, `less than ${densest_mol_m3} mol/m3`);
}

function isLiquid(found: string, { p_Pa }: Equilibrium, path: string): never {
  fail(liquid, path, found, { range: `at most ${p_Pa} Pa absolute` });
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

/** Reports a value beyond where the model answers. */
export function outside(model: GasModel, path: string, found: string, range: string): never {
  fail(outsideModel, path, found, { range, model: model.id, reason: model.validity.reason });
}

/** Reports a solver that did not close. */
export function unsolved(model: GasModel, found: string, path: string): never {
  fail(noSolution, path, found, { model: model.id });
}
