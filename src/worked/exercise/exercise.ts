// What an exercise is: plain data, before it is written in any words or units.
import type { Specification } from '../../target/specification.js';
import type { Reading } from '../../reading/reading.js';
import type { Verdict } from '../../verdict/judge.js';
import type {
  AbsolutePressure,
  GaugePressure,
  Mass,
  PressureDifference,
  Temperature,
  Volume,
} from '../../quantity/kind.js';
import type { Derivation } from '../derivation/derivation.js';

/** What is to be worked out. */
export type Arithmetic = 'target' | 'gas to add' | 'gas held';

/** What is to be recognised behind readings that look wrong. */
export type Diagnosis = 'not drained' | 'cold after draining' | 'unit slip' | 'shifted gauge' | 'torn separator';

/** What an exercise is about. */
export type ExerciseTopic = Arithmetic | Diagnosis;

/** A mistake that people make. */
export type Mistake =
  'gauge taken for absolute' | '°C taken for K' | 'ideal gas taken for real' | 'temperature not taken into account';

/** What the sheet states: a sentence by its code, and the quantities and numbers in it. */
export interface Fact {
  readonly code: FactCode;
  readonly values: Readonly<Record<string, FactValue>>;
}

/** What is filled into the sentence of a fact. */
export type FactValue =
  | AbsolutePressure
  | GaugePressure
  | PressureDifference
  | Temperature
  | Volume
  | number
  /** A name, or a unit as it was noted. */
  | string;

/** Stable codes of the sentences that state something. */
export type FactCode =
  | 'stated'
  | 'tolerance'
  | 'ambient'
  | 'gas temperature'
  | 'gas volume'
  | 'nitrogen'
  | 'factor as stated'
  | 'factor at the target'
  | 'factor as read'
  | 'reading'
  | 'drained'
  | 'system pressure'
  | 'nothing of the oil side'
  | 'minutes after draining'
  | 'at rest'
  | 'noted temperature'
  | 'noted pressure'
  | 'others within'
  | 'one of the round'
  | 'one gauge'
  | 'charged lately'
  | 'oil at the gas valve'
  | 'follows the system';

/** An answer to choose, by the mistake that leads to it. */
export interface Choice {
  readonly mistake: Mistake | 'none';
  readonly quantity: GaugePressure | Mass;
  /** How it is come to: the wrong ones as well. */
  readonly derivation: Derivation;
}

/** Something to be worked out, with the right answer among the wrong ones. */
export interface ArithmeticExercise {
  readonly topic: Arithmetic;
  readonly facts: readonly Fact[];
  readonly choices: readonly Choice[];
  /** Which of the choices is right, counted from 0. */
  readonly answer: number;
}

/** Something to be recognised. */
export interface DiagnosisExercise {
  readonly topic: Diagnosis;
  readonly facts: readonly Fact[];
  readonly choices: readonly Diagnosis[];
  /** Which of the choices is right, counted from 0. */
  readonly answer: number;
  /** What the library says of the reading that looks wrong. */
  readonly judged: { readonly spec: Specification; readonly reading: Reading; readonly verdict: Verdict };
}

/** An exercise with its answers. */
export type Exercise = ArithmeticExercise | DiagnosisExercise;
