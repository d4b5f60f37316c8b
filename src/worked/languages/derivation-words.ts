// The words of derivations and exercises: sentences with names in braces for what is filled in.
import type { Arithmetic, Diagnosis, FactCode, Mistake } from '../exercise/exercise.js';
import type { Origin, RoundedOf, RoundedQuantity } from '../derivation/derivation.js';

/** Words of derivations. */
export interface DerivationWords {
  readonly title: string;
  readonly stepsHeading: string;
  readonly stepHeading: string;
  readonly sameStep: string;
  readonly origins: Readonly<Record<Origin['from'], string>>;
  readonly normalConditions: string;
  readonly labelTemperature: string;
  readonly byHand: string;
  readonly byHandAgain: string;
  readonly residual: string;
  readonly sumOfTerms: string;
  readonly termsCaption: string;
  readonly term: string;
  readonly coefficients: string;
  readonly termValue: string;
  readonly sumSoFar: string;
  readonly resultHeading: string;
  readonly quantity: string;
  readonly symbol: string;
  readonly value: string;
  readonly noSteps: string;
  readonly roundingsHeading: string;
  readonly exact: string;
  readonly direction: string;
  readonly written: string;
  readonly directions: Readonly<Record<RoundedQuantity['toward'], string>>;
  readonly rounded: Readonly<Record<RoundedOf, string>>;
  readonly model: string;
  readonly digits: string;
  readonly comparedDigits: string;
  readonly exactDigits: string;
  readonly comparisonIntro: string;
  readonly allAlike: string;
  readonly by: string;
  readonly difference: string;
  readonly onlyIn: string;
  /** What a symbol stands for; one that is not here is said by its symbol. */
  readonly terms: Readonly<Record<string, string>>;
}

/** Words of exercises. */
export interface ExerciseWords {
  readonly heading: string;
  readonly ask: Readonly<Record<Arithmetic | 'diagnosis', string>>;
  readonly facts: Readonly<Record<FactCode, string>>;
  readonly diagnoses: Readonly<Record<Diagnosis, string>>;
  readonly reasons: Readonly<Record<Diagnosis, string>>;
  readonly mistakes: Readonly<Record<Mistake, string>>;
  readonly choice: string;
  readonly right: string;
  readonly wrong: string;
  /** What was meant otherwise: `slip`. */
  readonly slip: string;
  readonly check: string;
  readonly caution: string;
}
