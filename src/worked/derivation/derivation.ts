// What a derivation is: plain data, before it is written in any words, units or format.
import type { Relation, Step } from '../../basis/relation.js';
import { CheckedValue, isChecked, wrongKind, type Checked } from '../../quantity/kind.js';
import type { Meaning } from './symbol.js';

/** Where a value of a step comes from. */
export type Origin =
  /** The result of an earlier step, by its number. */
  | { readonly from: 'step'; readonly step: number }
  /** Handed in, under this path. */
  | { readonly from: 'given'; readonly path: string }
  /** A row of a table that was handed in, counted from 1. */
  | { readonly from: 'table'; readonly path: string; readonly row: number }
  /** A constant of the gas model, or a property that its equation gives. */
  | { readonly from: 'model'; readonly model: string }
  /** A number that the source of the relation publishes. */
  | { readonly from: 'published'; readonly source: string }
  /** A change of one unit: what the result is per pascal, per kelvin. */
  | { readonly from: 'one unit' }
  /** Found by trial: it goes into a later step, or comes out of one, that leads to what was wanted. */
  | { readonly from: 'trial'; readonly step: number }
  /** The same value as in an earlier step, which was found by trial. */
  | { readonly from: 'tried'; readonly step: number }
  /** So many of the steps before. */
  | { readonly from: 'counted' }
  /** Worked out in the calculation without a step of its own. */
  | { readonly from: 'calculation' };

/** A quantity with its symbol. */
export interface NamedQuantity {
  readonly symbol: string;
  /** In SI units, to the last bit. */
  readonly value: number;
  /** The SI unit of `value`: `Pa`, `K`, `mol/m3`, … */
  readonly unit: string;
  /** What it is, and with that the basis of a pressure: gauge, absolute or a difference. */
  readonly meaning: Meaning;
}

/** An argument of a step. */
export interface Argument extends NamedQuantity {
  readonly origin: Origin;
  /** By how much the result changes with it, in SI units: how far the digits of a printed number reach. */
  readonly slope: number;
}

/** One step: a relation with its numbers. */
export interface DerivedStep {
  /** Counted from 1. */
  readonly number: number;
  /** Whose values these are: `reference point`, `reading`, `target`, … */
  readonly about: string;
  readonly relation: Relation;
  readonly from: readonly Argument[];
  readonly result: NamedQuantity;
  /** An earlier step with the same relation and the same values. */
  readonly sameAs?: number;
  /** For a state of the gas: the equation of the model at it, and the pressure by hand. */
  readonly state?: GasStateWorking;
}

/** A state of the gas, worked again from its temperature and density, without the solver. */
export interface GasStateWorking {
  /** The model whose equation it is. */
  readonly model: string;
  /** Reduced variables, the compression factor, and p = Z ρ R T with it. */
  readonly steps: readonly DerivedStep[];
  /** The terms of the equation, each followed by the sum up to it. */
  readonly terms: readonly Step[];
  readonly temperature_K: number;
  readonly density_mol_m3: number;
  readonly compressibility: number;
  readonly pressure_Pa: number;
  /** Pressure by hand less the pressure of the state. */
  readonly residual_Pa: number;
  /** An earlier step with the same temperature and density, which has the same working. */
  readonly asIn?: number;
}

/** A value that was rounded for people. */
export interface RoundedQuantity extends NamedQuantity {
  /** Of which result: `lower limit`, `stop`, … */
  readonly of: RoundedOf;
  readonly toward: 'up' | 'down' | 'nearest even';
  /** As it was written, with its unit. */
  readonly written: string;
}

/** Which part of a result was rounded. */
export type RoundedOf = 'target' | 'lower limit' | 'upper limit' | 'stop' | 'mass' | 'normal volume';

/** A gas model, with its source. */
export interface ModelCited {
  readonly id: string;
  readonly gas: string;
  readonly citation: string;
}

/** How a result was got: what went in, every step, what was rounded. It carries the mark that a quantity carries. */
export interface Derivation<R = unknown> extends Checked<'derivation'> {
  readonly result: R;
  /** The gas models that were handed in; none for a calculation without gas. */
  readonly models: readonly ModelCited[];
  readonly steps: readonly DerivedStep[];
  readonly roundings: readonly RoundedQuantity[];
}

class DerivationValue<R> extends CheckedValue<'derivation'> implements Derivation<R> {
  readonly result: R;
  readonly models: readonly ModelCited[];
  readonly steps: readonly DerivedStep[];
  readonly roundings: readonly RoundedQuantity[];

  constructor({ result, models, steps, roundings }: Omit<Derivation<R>, keyof Checked<'derivation'>>) {
    super('derivation');
    this.result = result;
    this.models = Object.freeze(models);
    this.steps = Object.freeze(steps.map((step) => Object.freeze(step)));
    this.roundings = Object.freeze(roundings);
    Object.freeze(this);
  }
}

/** The door to a derivation. */
export function derivation<R>(given: Omit<Derivation<R>, keyof Checked<'derivation'>>): Derivation<R> {
  return new DerivationValue(given);
}

/** Refuses what is no derivation, and a copy of one. */
export function needDerivation(given: Derivation, path: string): void {
  if (!isChecked(given, 'derivation')) wrongKind('derivation', given, path);
}
