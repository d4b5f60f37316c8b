import { fail, quote } from '../basis/fault.js';
import { step4, type Trace } from '../basis/relation.js';
import { absoluteOf, need, wrongKind, type Temperature } from '../quantity/kind.js';
import type { GasCondition } from '../quantity/normal-volume.js';
import { checkTemperature, COMPRESSIBILITY, densityAt, pvtAt, pvtOf, within } from './door.js';
import type { GasModel, Pvt } from './model.js';

/** A state of a gas, named by its molar density and temperature. */
export interface DensityCondition {
  /** Molar density, mol/m3. Zero or more. */
  readonly density_mol_m3: number;
  readonly temperature: Temperature;
}

/** What a model says about one state. */
export interface GasState extends GasCondition {
  /** The `id` of the model. */
  readonly model: string;
  readonly density_mol_m3: number;
  /** Compression factor Z = p / (ρ R T); 1 in the ideal-gas limit. */
  readonly compressibility: number;
  /** (∂p/∂T) at constant density, Pa/K: what a closed vessel gains per kelvin. */
  readonly dpdT_Pa_K: number;
  /** (∂p/∂ρ) at constant temperature, Pa m3/mol. */
  readonly dpdrho_Pa_m3_mol: number;
  /** Relative uncertainty of the density at this pressure and temperature, as the model's source states it. */
  readonly densityUncertainty: DensityUncertainty;
}

/** A relative uncertainty, or the plain statement that the model's source gives none for this state. */
export type DensityUncertainty = number | 'not stated by the source';

/**
 * The state of a gas at a temperature and either an absolute pressure or a molar density.
 *
 * @param model the gas, e.g. {@link nitrogen}
 * @param at temperature and pressure (absolute), or temperature and density, within `model.validity`
 * @throws {@link Fault} `wrong kind`; `outside the model`, with the bounds and the reason for them
 * @example
 * ```ts
 * const state = stateAt(nitrogen, { pressure: absolute(20, 'MPa'), temperature: temperature(350, 'K') });
 * (state.density_mol_m3 / 1000).toFixed(4); // => '6.3552'
 * state.densityUncertainty; // => 0.0002
 * ```
 */
export function stateAt(model: GasModel, at: GasCondition | DensityCondition, trace?: Trace): GasState {
  needModel(model, 'model');
  if (typeof at !== 'object' || at === null) wrongKind('state: temperature with pressure or density', at, 'at');
  need('temperature', at.temperature, 'temperature');
  const T = at.temperature.kelvins;
  checkTemperature(model, T, 'temperature');
  if ('pressure' in at && 'density_mol_m3' in at) bothGiven();
  if ('pressure' in at) {
    need('absolute pressure', at.pressure, 'pressure');
    const rho = densityAt(model, T, at.pressure.pascals, 'pressure', 'state', trace);
    return stateOf(model, at, rho, pvtOf(model, T, rho), trace);
  }
  const rho = at.density_mol_m3 + 0;
  if (!(Number.isFinite(at.density_mol_m3) && rho >= 0)) badDensity(at.density_mol_m3);
  const pvt = pvtAt(model, T, rho, 'density_mol_m3', 'state', trace);
  return stateOf(model, { temperature: at.temperature, pressure: absoluteOf(pvt.p_Pa) }, rho, pvt, trace);
}

function bothGiven(): never {
  fail({
    code: 'wrong shape',
    path: 'at',
    found: 'pressure and density_mol_m3',
    wanted: 'one of the two beside the temperature',
    remedy: 'leave out the one that is not known; the model gives it',
  });
}

function stateOf(model: GasModel, at: GasCondition, rho: number, pvt: Pvt, trace?: Trace): GasState {
  const T = at.temperature.kelvins;
  const p = at.pressure.pascals;
  const R = model.gasConstant_J_molK;
  return {
    model: model.id,
    pressure: at.pressure,
    temperature: at.temperature,
    density_mol_m3: rho,
    // Towards zero pressure Z tends to 1; the quotient itself would be 0/0 there.
    compressibility: rho === 0 ? 1 : step4(trace, COMPRESSIBILITY, 'state', p, rho, R, T),
    dpdT_Pa_K: pvt.dpdT_rho,
    dpdrho_Pa_m3_mol: pvt.dpdrho_T,
    densityUncertainty: densityUncertainty(model, T, p),
  };
}

/** The uncertainty of density that the model's source states at a temperature and an absolute pressure. */
export function densityUncertainty(model: GasModel, T_K: number, p_Pa: number): DensityUncertainty {
  const region = model.uncertainty.find((r) => within(T_K, r.temperature_K) && within(p_Pa, r.pressure_Pa));
  return region?.density ?? 'not stated by the source';
}

function badDensity(found: number): never {
  fail({
    code: 'not a number',
    path: 'density_mol_m3',
    found: quote(found),
    wanted: 'a finite number of mol/m3, zero or more',
    remedy: 'give the molar density; a mass density is divided by the molar mass first',
  });
}

/** Refuses everything but a gas model of this library. */
export function needModel(model: GasModel, path: string): void {
  if (typeof model?.['~kernel']?.density !== 'function') wrongKind('gas model', model, path);
}
