import type { Source } from '../basis/source.js';

/** Pressure and its slopes at a temperature and a molar density; the kernel writes into it, the caller owns it. */
export interface Pvt {
  p_Pa: number;
  /** (∂p/∂ρ) at constant temperature, Pa m3/mol. */
  dpdrho_T: number;
  /** (∂p/∂T) at constant density, Pa/K. */
  dpdT_rho: number;
}

/** The arithmetic of a model, on bare SI numbers within its validity. It throws nothing and checks nothing. */
export interface GasKernel {
  /** Pressure and its slopes. */
  readonly pvt: (T_K: number, rho_mol_m3: number, out: Pvt) => void;
  /** Molar density; NaN if the solver did not close. */
  readonly density: (T_K: number, p_Pa: number) => number;
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
 * none of them knows which gas it is.
 */
export interface GasModel {
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
