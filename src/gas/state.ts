import { fail, fieldNames, quote } from '../basis/fault.js';
import { liquid, noPhases, noSaturation, notANumber, notAPair, twoPhases } from '../basis/problem.js';
import { show, step4, type Trace } from '../basis/relation.js';
import {
  absoluteOf,
  isChecked,
  need,
  temperatureOf,
  wrongKind,
  type AbsolutePressure,
  type Temperature,
} from '../quantity/kind.js';
import type { GasCondition } from '../quantity/normal-volume.js';
import { showRoot, T_BY_ENERGY, T_BY_ENTROPY } from './caloric.js';
import {
  checkDensity,
  checkTemperature,
  coldestAt,
  coldestLiquidAt,
  coldestUnder,
  COMPRESSIBILITY,
  densityAt,
  notEmpty,
  outside,
  PRESSURE,
  pvtAt,
  pvtOf,
  saturationOf,
  unsolved,
  within,
} from './door.js';
import type { GasModel, Properties } from './model.js';
import { increasingRoot, type Sloped } from './solve.js';

/** What names a state of a gas: two of its properties, in one of four pairs. */
export type Given =
  | GasCondition
  | {
      readonly temperature: Temperature;
      /** Molar density, mol/m3; from 1e-290 on, as an absolute pressure in Pa. */
      readonly density_mol_m3: number;
    }
  | {
      readonly pressure: AbsolutePressure;
      /** Molar entropy, J/(mol K), on the zero of the model. */
      readonly entropy_J_molK: number;
    }
  | {
      /** Molar density, mol/m3; from 1e-290 on, as an absolute pressure in Pa. */
      readonly density_mol_m3: number;
      /** Molar internal energy, J/mol, on the zero of the model. */
      readonly internalEnergy_J_mol: number;
    };

/**
 * What a model says about one state. The zeros of energy, enthalpy and entropy are those of the reference equation,
 * h = 8670 J/mol and s = 191.5 J/(mol K) for the ideal gas at 298.15 K and 101 325 Pa; other models of the same gas share
 * its ideal part of a/(RT), so that theirs differ by the ratio of the gas constants.
 */
export interface GasState extends GasCondition {
  /** The `id` of the model. */
  readonly model: string;
  readonly density_mol_m3: number;
  /** Compression factor Z = p / (ρ R T); 1 in the ideal-gas limit. */
  readonly compressibility: number;
  readonly internalEnergy_J_mol: number;
  readonly enthalpy_J_mol: number;
  readonly entropy_J_molK: number;
  /** Heat capacity at constant volume. */
  readonly cv_J_molK: number;
  /** Heat capacity at constant pressure. */
  readonly cp_J_molK: number;
  readonly speedOfSound_m_s: number;
  /** (∂p/∂T) at constant density, Pa/K: what a closed vessel gains per kelvin. */
  readonly dpdT_Pa_K: number;
  /** (∂p/∂ρ) at constant temperature, Pa m3/mol. */
  readonly dpdrho_Pa_m3_mol: number;
  /** Joule–Thomson coefficient (∂T/∂p) at constant enthalpy, K/Pa: what throttling does. */
  readonly jouleThomson_K_Pa: number;
  /** Relative uncertainty of the density at this pressure and temperature, as the model's source states it. */
  readonly densityUncertainty: DensityUncertainty;
}

/** A relative uncertainty, or the plain statement that the model's source gives none for this state. */
export type DensityUncertainty = number | 'not stated by the source';

/**
 * The state of a gas, named by temperature and absolute pressure, temperature and molar density, absolute pressure and
 * molar entropy, or molar density and molar internal energy.
 *
 * Vapour and supercritical fluid only: a liquid state, or one of two phases side by side, is refused by that name.
 *
 * @param model the gas, e.g. {@link nitrogen}
 * @param given two properties, within `model.validity`
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `not a pair of properties`, `not a number`,
 * `empty space`; `outside the model`, with the bounds and the reason for them; `liquid`, `two phases`
 * @example
 * ```ts
 * const state = stateAt(nitrogen, { pressure: absolute(20, 'MPa'), temperature: temperature(350, 'K') });
 * (state.density_mol_m3 / 1000).toFixed(4); // => '6.3552'
 * state.densityUncertainty; // => 0.0002
 * ```
 */
export function stateAt(model: GasModel, given: Given, trace?: Trace): GasState {
  needModel(model, 'model');
  if (typeof given !== 'object' || given === null) wrongKind('state: two of its properties', given, 'given');
  const own = { ...given }; // read once: what is checked is what is used
  switch (pairOf(own)) {
    case 'pressure temperature':
      return byPressure(model, own as GasCondition, trace);
    case 'density_mol_m3 temperature':
      return byDensity(model, own as ByDensity, trace);
    case 'entropy_J_molK pressure':
      return byEntropy(model, own as ByEntropy, trace);
    case 'density_mol_m3 internalEnergy_J_mol':
      return byEnergy(model, own as ByEnergy, trace);
    default:
      return fail(notAPair, 'given', fieldNames(Object.keys(own), ', ') || 'nothing', { pairs: PAIRS });
  }
}

type ByDensity = Extract<Given, { temperature: Temperature; density_mol_m3: number }>;
type ByEntropy = Extract<Given, { entropy_J_molK: number }>;
type ByEnergy = Extract<Given, { internalEnergy_J_mol: number }>;

const PAIRS =
  'temperature with pressure, temperature with density_mol_m3, pressure with entropy_J_molK, or density_mol_m3 with ' +
  'internalEnergy_J_mol';

function pairOf(given: Given): string {
  return Object.keys(given).sort().join(' ');
}

function byPressure(model: GasModel, given: GasCondition, trace?: Trace): GasState {
  const T = temperatureIn(model, given.temperature);
  const p = pressureIn(given.pressure);
  const rho = densityAt(model, T, p, 'pressure', 'state', trace);
  return stateOf(model, given, rho, trace);
}

function byDensity(model: GasModel, given: ByDensity, trace?: Trace): GasState {
  const T = temperatureIn(model, given.temperature);
  const rho = positive(given.density_mol_m3, 'density_mol_m3', 'mol/m3');
  const { p_Pa } = pvtAt(model, T, rho, 'density_mol_m3', 'state', trace);
  return stateOf(model, { temperature: given.temperature, pressure: absoluteOf(p_Pa) }, rho, trace);
}

function byEntropy(model: GasModel, given: ByEntropy, trace?: Trace): GasState {
  const p = pressureIn(given.pressure);
  const s = finite(given.entropy_J_molK, 'entropy_J_molK');
  const low = coldestUnder(model, p);
  const sought: Sought = {
    value: s,
    path: 'entropy_J_molK',
    unit: 'J/(mol K)',
    found: `${s} J/(mol K) at ${p} Pa absolute`,
    at: (T, out) => {
      const rho = densityAt(model, T, p, 'pressure', 'state');
      const of = propertiesOf(model, T, rho);
      out.value = of.s_J_molK;
      out.slope = of.cp_J_molK / T;
    },
    // Cooled further at a pressure below the critical one it condenses first; above, it becomes liquid without a boundary.
    below: () => {
      if (low >= model['~kernel'].criticalTemperature_K) return liquid;
      const { rho_liquid } = saturationOf(model, low);
      return s < propertiesOf(model, low, rho_liquid).s_J_molK ? liquid : twoPhases;
    },
  };
  const T = temperatureWhere(model, low, sought);
  if (trace !== undefined)
    showRoot(trace, T_BY_ENTROPY, 'state', { T_K: T, rho: densityAt(model, T, p, 'pressure', 'state') }, s);
  return byPressure(model, { temperature: temperatureOf(T), pressure: given.pressure }, trace);
}

function byEnergy(model: GasModel, given: ByEnergy, trace?: Trace): GasState {
  const rho = positive(given.density_mol_m3, 'density_mol_m3', 'mol/m3');
  const u = finite(given.internalEnergy_J_mol, 'internalEnergy_J_mol');
  checkDensity(model, rho, 'density_mol_m3', `${rho} mol/m3`);
  const low = coldestAt(model, rho);
  const sought: Sought = {
    value: u,
    path: 'internalEnergy_J_mol',
    unit: 'J/mol',
    found: `${u} J/mol at ${rho} mol/m3`,
    at: (T, out) => {
      const of = propertiesOf(model, T, rho);
      out.value = of.u_J_mol;
      out.slope = of.cv_J_molK;
    },
    // Cooled further at a density below the critical one it condenses in part; above, it is liquid first.
    below: () => {
      if (low < model['~kernel'].criticalTemperature_K) return twoPhases;
      return u < propertiesOf(model, coldestLiquidAt(model, rho), rho).u_J_mol ? twoPhases : liquid;
    },
  };
  const T = temperatureWhere(model, low, sought);
  if (trace !== undefined) showRoot(trace, T_BY_ENERGY, 'state', { T_K: T, rho }, u);
  return byDensity(model, { temperature: temperatureOf(T), density_mol_m3: rho }, trace);
}

/** A property that increases with temperature, and the value of it that names the state. */
interface Sought {
  readonly value: number;
  readonly path: string;
  readonly unit: string;
  /** The value as a message names it. */
  readonly found: string;
  readonly at: (T_K: number, out: Sloped) => void;
  /** What stands there when the value is below that of the coldest gas. */
  readonly below: () => typeof liquid | typeof twoPhases;
}

/** The temperature of the gas at which a property has a value, from the coldest gas on; refused by name where there is none. */
function temperatureWhere(model: GasModel, low: number, { value, path, unit, found, at, below }: Sought): number {
  const [coldest, high] = model.validity.temperature_K;
  const ends: Sloped = { value: 0, slope: 0 };
  at(low, ends);
  const least = ends.value;
  at(high, ends);
  const most = ends.value;
  // The last place may put a state at the end of the range beyond it.
  if (value < least && least - value <= 1e-12 * Math.abs(least)) return low;
  if (value < least && low > coldest) fail(below(), path, found, { range: `at least ${least} ${unit}` });
  if (!(value >= least && value <= most)) {
    outside(model, path, found, `${least} ${unit} to ${most} ${unit}, which it has from ${low} K to ${high} K`);
  }
  const T = increasingRoot(at, value, low, high);
  if (Number.isNaN(T)) unsolved(model, found, path);
  return T;
}

function stateOf(model: GasModel, at: GasCondition, rho: number, trace?: Trace): GasState {
  const T = at.temperature.kelvins;
  const p = at.pressure.pascals;
  const R = model.gasConstant_J_molK;
  const pvt = pvtOf(model, T, rho);
  const of = propertiesOf(model, T, rho);
  return {
    model: model.id,
    pressure: at.pressure,
    temperature: at.temperature,
    density_mol_m3: rho,
    compressibility: step4(trace, COMPRESSIBILITY, 'state', p, rho, R, T),
    internalEnergy_J_mol: of.u_J_mol,
    enthalpy_J_mol: of.h_J_mol,
    entropy_J_molK: of.s_J_molK,
    cv_J_molK: of.cv_J_molK,
    cp_J_molK: of.cp_J_molK,
    speedOfSound_m_s: of.w_m_s,
    dpdT_Pa_K: pvt.dpdT_rho,
    dpdrho_Pa_m3_mol: pvt.dpdrho_T,
    jouleThomson_K_Pa: of.jt_K_Pa,
    densityUncertainty: densityUncertainty(model, T, p),
  };
}

function propertiesOf(model: GasModel, T_K: number, rho: number): Properties {
  const out: Properties = { u_J_mol: 0, h_J_mol: 0, s_J_molK: 0, cv_J_molK: 0, cp_J_molK: 0, w_m_s: 0, jt_K_Pa: 0 };
  model['~kernel'].properties(T_K, rho, out);
  return out;
}

function temperatureIn(model: GasModel, temperature: Temperature): number {
  need('temperature', temperature, 'temperature');
  checkTemperature(model, temperature.kelvins, 'temperature');
  return temperature.kelvins;
}

function pressureIn(pressure: AbsolutePressure): number {
  need('absolute pressure', pressure, 'pressure');
  // At vacuum entropy has no value and Z is 0/0.
  return positive(pressure.pascals, 'pressure', 'Pa absolute');
}

function finite(value: number, path: string): number {
  return Number.isFinite(value) ? value : fail(notANumber, path, quote(value));
}

function positive(value: number, path: string, unit: string): number {
  return notEmpty(finite(value, path), path, unit);
}

/** A state of saturation: liquid and vapour in equilibrium. */
export interface Saturation {
  readonly model: string;
  readonly temperature: Temperature;
  readonly pressure: AbsolutePressure;
  readonly liquidDensity_mol_m3: number;
  readonly vapourDensity_mol_m3: number;
}

/**
 * Pressure and densities of liquid and vapour in equilibrium, by equal pressure and equal Gibbs energy.
 *
 * In the last 0.0002 K below the critical temperature, where rounding hides the equilibrium, the densities are those of an
 * expansion at the critical point, to 1e-8 of them at its colder end.
 *
 * A trace shows the pressure of the vapour: that the liquid has the same pressure and the same Gibbs energy was solved for.
 *
 * @param temperature from the model's lowest to below its critical temperature (126.192 K for nitrogen)
 * @throws {@link Fault} `wrong kind`, `unchecked copy`, `outside the model`; `no saturation` from the critical temperature
 * on, `model without saturation` for a model that has none
 * @example
 * ```ts
 * (saturationAt(nitrogen, temperature(80, 'K')).pressure.pascals / 1e6).toFixed(5); // => '0.13687'
 * ```
 */
export function saturationAt(model: GasModel, temperature: Temperature, trace?: Trace): Saturation {
  needModel(model, 'model');
  const T = temperatureIn(model, temperature);
  const critical = model['~kernel'].criticalTemperature_K;
  if (T >= critical) {
    if (critical === 0) fail(noPhases, 'model', `the model ${model.id}`);
    fail(noSaturation, 'temperature', `${T} K`, { critical: String(critical) });
  }
  const { p_Pa, rho_liquid, rho_vapour } = saturationOf(model, T, 'temperature');
  if (trace !== undefined)
    show(trace, { relation: PRESSURE, about: 'saturated vapour', values: [T, rho_vapour], result: p_Pa });
  return {
    model: model.id,
    temperature,
    pressure: absoluteOf(p_Pa),
    liquidDensity_mol_m3: rho_liquid,
    vapourDensity_mol_m3: rho_vapour,
  };
}

/** The uncertainty of density that the model's source states at a temperature and an absolute pressure. */
export function densityUncertainty(model: GasModel, T_K: number, p_Pa: number): DensityUncertainty {
  const region = model.uncertainty.find((r) => within(T_K, r.temperature_K) && within(p_Pa, r.pressure_Pa));
  return region?.density ?? 'not stated by the source';
}

/** Refuses everything but a gas model of this library. */
export function needModel(model: GasModel, path: string): void {
  if (!isChecked(model, 'gas model')) wrongKind('gas model', model, path);
}
