import type { Source } from '../basis/source.js';
import { CheckedValue, type Checked } from '../quantity/kind.js';

/** Pressure and its slopes at a temperature and a molar density; the kernel writes into it, the caller owns it. */
export interface Pvt {
  p_Pa: number;
  /** (∂p/∂ρ) at constant temperature, Pa m3/mol. */
  dpdrho_T: number;
  /** (∂p/∂T) at constant density, Pa/K. */
  dpdT_rho: number;
}

/** Caloric properties at a temperature and a molar density; the kernel writes into it, the caller owns it. */
export interface Properties {
  u_J_mol: number;
  h_J_mol: number;
  s_J_molK: number;
  cv_J_molK: number;
  cp_J_molK: number;
  w_m_s: number;
  /** Joule–Thomson coefficient, (∂T/∂p) at constant enthalpy, K/Pa. */
  jt_K_Pa: number;
}

/** Liquid and vapour in equilibrium at a temperature; the kernel writes into it, the caller owns it. */
export interface Equilibrium {
  p_Pa: number;
  rho_liquid: number;
  rho_vapour: number;
}

/** What {@link GasKernel.density} gives for a pressure above saturation. */
export const LIQUID = -1;

/** The arithmetic of a model, on bare SI numbers within its validity. It throws nothing and checks nothing. */
export interface GasKernel {
  /** Pressure and its slopes. */
  readonly pvt: (T_K: number, rho_mol_m3: number, out: Pvt) => void;
  /** Caloric properties; the density is greater than zero. */
  readonly properties: (T_K: number, rho_mol_m3: number, out: Properties) => void;
  /** Molar density of vapour or supercritical fluid; LIQUID above saturation, NaN if the solver did not close. */
  readonly density: (T_K: number, p_Pa: number) => number;
  /** Liquid and vapour in equilibrium below the critical temperature; false if the solver did not close. */
  readonly saturation: (T_K: number, out: Equilibrium) => boolean;
  /** Molar density that no state of the model reaches. */
  readonly densest_mol_m3: number;
  /** Below it there may be two phases; 0 for a model whose validity holds none. */
  readonly criticalTemperature_K: number;
}

/** A closed range of one quantity, in the unit that its name says. */
export type Range = readonly [min: number, max: number];

/** A region in which the model's source states an uncertainty of density. */
export interface UncertaintyRegion {
  readonly temperature_K: Range;
  readonly pressure_Pa: Range;
  /** Relative uncertainty of density at a given temperature and pressure, as the source states it. */
  readonly density: number;
}

/**
 * A model of a gas: it owns its constants, its limits, its uncertainty and its citation. Calculations take a model;
 * none of them knows which gas it is. It is frozen through and through, because all who calculate share it, and a copy of
 * it is refused as one of a quantity is.
 */
export interface GasModel extends Checked<'gas model'> {
  /** Stable name, carried into every result. */
  readonly id: string;
  /** The gas, as it is to be named in an order and on a label. */
  readonly gas: string;
  readonly source: Source;
  readonly molarMass_kg_mol: number;
  readonly gasConstant_J_molK: number;
  /** Where the model answers. Outside it refuses; nothing is extrapolated. */
  readonly validity: {
    readonly temperature_K: Range;
    readonly pressure_Pa: Range;
    /** Why it ends there. */
    readonly reason: string;
  };
  /** What the source claims for density, tightest region first; elsewhere nothing is claimed. */
  readonly uncertainty: readonly UncertaintyRegion[];
  /** The arithmetic; opaque, not for implementing outside this library. */
  readonly '~kernel': GasKernel;
}

type Stated = Omit<GasModel, keyof Checked<'gas model'>>;

class GasModelValue extends CheckedValue<'gas model'> implements GasModel {
  readonly id: string;
  readonly gas: string;
  readonly source: Source;
  readonly molarMass_kg_mol: number;
  readonly gasConstant_J_molK: number;
  readonly validity: GasModel['validity'];
  readonly uncertainty: readonly UncertaintyRegion[];
  declare readonly '~kernel': GasKernel;

  constructor(given: Stated) {
    super('gas model');
    const { validity, uncertainty } = given;
    this.id = given.id;
    this.gas = given.gas;
    this.source = Object.freeze({ ...given.source });
    this.molarMass_kg_mol = given.molarMass_kg_mol;
    this.gasConstant_J_molK = given.gasConstant_J_molK;
    this.validity = Object.freeze({
      temperature_K: range(validity.temperature_K),
      pressure_Pa: range(validity.pressure_Pa),
      reason: validity.reason,
    });
    this.uncertainty = Object.freeze(
      uncertainty.map(({ temperature_K, pressure_Pa, density }) =>
        Object.freeze({ temperature_K: range(temperature_K), pressure_Pa: range(pressure_Pa), density }),
      ),
    );
    this['~kernel'] = Object.freeze({ ...given['~kernel'] });
    Object.freeze(this);
  }
}

function range([min, max]: Range): Range {
  return Object.freeze([min, max] as const);
}

/** The door to a gas model: a frozen one, marked as the quantities are, from what its source states and its arithmetic. */
// @__NO_SIDE_EFFECTS__
export function gasModel(given: Stated): GasModel {
  return new GasModelValue(given);
}
