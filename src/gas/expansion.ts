import { fail } from '../basis/fault.js';
import { liquid } from '../basis/problem.js';
import { relation, step1, step2, step3, type Trace } from '../basis/relation.js';
import { need, temperatureOf, type AbsolutePressure, type Temperature } from '../quantity/kind.js';
import type { GasCondition } from '../quantity/normal-volume.js';
import { ENERGY, ENTROPY, shownProperty } from './caloric.js';
import { checkTemperature, coldestUnder, densityAt, notEmpty, saturationOf } from './door.js';
import type { GasModel, Properties } from './model.js';
import { needModel, stateAt } from './state.js';

export const VAPOUR_FRACTION = /* @__PURE__ */ relation({
  gives: 'x_vapour',
  unit: '1',
  from: ['s', 's_liquid', 's_vapour'],
  formula: '(s - s_liquid) / (s_vapour - s_liquid)',
  source: 'entropy of two phases in equilibrium, by their amounts (lever rule)',
  of: (s, s_liquid, s_vapour) => (s - s_liquid) / (s_vapour - s_liquid),
});

export const OF_BOTH_PHASES = /* @__PURE__ */ relation({
  gives: 'y',
  unit: '1',
  from: ['x_vapour', 'y_liquid', 'y_vapour'],
  formula: 'y_liquid + x_vapour * (y_vapour - y_liquid)',
  source: 'property per amount of two phases in equilibrium, by their amounts (lever rule)',
  of: (x_vapour, y_liquid, y_vapour) => y_liquid + x_vapour * (y_vapour - y_liquid),
});

export const OF_VOLUME = /* @__PURE__ */ relation({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['v_mol'],
  formula: '1 / v_mol',
  source: 'molar density, by definition',
  of: (v_mol) => 1 / v_mol,
});

export const WORK = /* @__PURE__ */ relation({
  gives: 'w',
  unit: 'J/mol',
  from: ['u_high', 'u_low'],
  formula: 'u_high - u_low',
  source: 'first law: without heat the work is the loss of internal energy',
  of: (u_high, u_low) => u_high - u_low,
});

/** A gas before and after an expansion at constant entropy. */
export interface Expansion {
  /** The `id` of the model. */
  readonly model: string;
  readonly temperature: Temperature;
  readonly pressure: AbsolutePressure;
  /** What is there at the end: gas, or liquid and vapour in equilibrium. */
  readonly phase: 'gas' | 'liquid and vapour';
  /** Share of the amount that is vapour, 0 to 1; 1 for gas. */
  readonly vapourFraction: number;
  /** Amount per volume at the start and at the end, of both phases together, mol/m3. */
  readonly densities_mol_m3: readonly [before: number, after: number];
  /** Internal energy at the start less that at the end, J/mol: the work of the expansion, that on the surroundings included. */
  readonly work_J_mol: number;
}

/**
 * What becomes of a gas that expands to a lower pressure at constant entropy: without friction and without heat. From
 * about 100 bar at 20 °C down to an ambient pressure nitrogen ends as liquid and vapour, which are taken to be in
 * equilibrium. A real burst is faster than droplets form, and ends elsewhere; equilibrium gives the most work.
 *
 * @param from temperature and absolute pressure of the gas
 * @param to the lower absolute pressure; above vacuum
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `empty space` for vacuum; `outside the model`,
 * `liquid`, also where all of it would be liquid at the end
 * @example
 * ```ts
 * const filled = { pressure: absolute(150, 'bar'), temperature: temperature(20, '°C') };
 * const end = isentropicExpansion(nitrogen, filled, standardAtmosphere);
 * [end.phase, end.vapourFraction.toFixed(3), end.temperature.kelvins.toFixed(2)]; // => ['liquid and vapour', '0.935', '77.35']
 * ```
 */
export function isentropicExpansion(
  model: GasModel,
  from: GasCondition,
  to: AbsolutePressure,
  trace?: Trace,
): Expansion {
  needModel(model, 'model');
  const { pressure, temperature } = from ?? {};
  need('absolute pressure', pressure, 'from.pressure');
  need('temperature', temperature, 'from.temperature');
  need('absolute pressure', to, 'to');
  return expansionOf(model, { pressure, temperature }, to, trace);
}

/** {@link isentropicExpansion}, for checked input. */
export function expansionOf(model: GasModel, from: GasCondition, to: AbsolutePressure, trace?: Trace): Expansion {
  const p_Pa = to.pascals;
  notEmpty(from.pressure.pascals, 'from.pressure', 'Pa absolute');
  notEmpty(p_Pa, 'to', 'Pa absolute');
  checkTemperature(model, from.temperature.kelvins, 'from.temperature');
  const rho = densityAt(model, from.temperature.kelvins, from.pressure.pascals, 'from.pressure', 'before', trace);
  const before = propertiesOf(model, from.temperature.kelvins, rho);
  const s = before.s_J_molK;
  if (trace !== undefined) {
    const state = { T_K: from.temperature.kelvins, rho };
    shownProperty(trace, ENTROPY, 'before', model, state);
    shownProperty(trace, ENERGY, 'before', model, state);
  }
  const phases = phasesUnder(model, p_Pa);
  const found = { model: model.id, pressure: to };
  // The last place may put saturated vapour into two phases.
  if (phases === undefined || s >= phases.vapour.s_J_molK * (1 - 1e-13)) {
    const end = stateAt(model, { pressure: to, entropy_J_molK: s }, trace);
    const state = { T_K: end.temperature.kelvins, rho: end.density_mol_m3 };
    if (trace !== undefined) shownProperty(trace, ENERGY, 'after', model, state);
    return {
      ...found,
      temperature: end.temperature,
      phase: 'gas',
      vapourFraction: 1,
      densities_mol_m3: [rho, end.density_mol_m3],
      work_J_mol: step2(trace, WORK, 'expansion', before.u_J_mol, end.internalEnergy_J_mol),
    };
  }
  const { T_K, rho_liquid, rho_vapour, vapour, liquid: wet } = phases;
  if (s < wet.s_J_molK)
    fail(liquid, 'to', `${p_Pa} Pa absolute at ${s} J/(mol K)`, { range: `at least ${wet.s_J_molK} J/(mol K)` });
  const x = step3(trace, VAPOUR_FRACTION, 'after', s, wet.s_J_molK, vapour.s_J_molK);
  const u = step3(trace, OF_BOTH_PHASES, 'internal energy after', x, wet.u_J_mol, vapour.u_J_mol);
  const v = step3(trace, OF_BOTH_PHASES, 'volume after', x, 1 / rho_liquid, 1 / rho_vapour);
  return {
    ...found,
    temperature: temperatureOf(T_K),
    phase: 'liquid and vapour',
    vapourFraction: x,
    densities_mol_m3: [rho, step1(trace, OF_VOLUME, 'after', v)],
    work_J_mol: step2(trace, WORK, 'expansion', before.u_J_mol, u),
  };
}

interface Phases {
  readonly T_K: number;
  readonly rho_liquid: number;
  readonly rho_vapour: number;
  readonly liquid: Properties;
  readonly vapour: Properties;
}

/** Liquid and vapour in equilibrium under a pressure; undefined where the model has none under it. */
function phasesUnder(model: GasModel, p_Pa: number): Phases | undefined {
  const T_K = coldestUnder(model, p_Pa);
  const [coldest] = model.validity.temperature_K;
  if (T_K === coldest || T_K >= model['~kernel'].criticalTemperature_K) return undefined;
  const { rho_liquid, rho_vapour } = saturationOf(model, T_K, 'to');
  const liquid = propertiesOf(model, T_K, rho_liquid);
  return { T_K, rho_liquid, rho_vapour, liquid, vapour: propertiesOf(model, T_K, rho_vapour) };
}

function propertiesOf(model: GasModel, T_K: number, rho: number): Properties {
  const out: Properties = { u_J_mol: 0, h_J_mol: 0, s_J_molK: 0, cv_J_molK: 0, cp_J_molK: 0, w_m_s: 0, jt_K_Pa: 0 };
  model['~kernel'].properties(T_K, rho, out);
  return out;
}
