// What a language is: every code of the library has its words in it, and a missing one does not compile.
import type { CautionCode, Severity } from '../../basis/caution.js';
import type { ProblemCode } from '../../basis/fault.js';
import type { ProblemText } from '../../basis/problem.js';
import type { Cause, Reason, SettledBy, SlipCode, SupplyCode, UncertaintyCode, Words } from '../../basis/words.js';
import type { StepRemark, WorkStep } from '../../procedure/steps.js';
import type { SettlingCode } from '../../settling/words.js';
import type { DerivationWords, ExerciseWords } from './derivation-words.js';
import type { DocumentWords } from './document-words.js';

/** Words under every code of a report, none left out. */
export interface EveryWord extends Words {
  readonly reasons: Readonly<Record<Reason, string>>;
  readonly causes: Readonly<Record<Cause, string>>;
  readonly cautions: Readonly<Record<CautionCode, string>>;
  readonly problems: Readonly<Record<ProblemCode, ProblemText>>;
  readonly uncertainty: Readonly<Record<UncertaintyCode, string>>;
  readonly settled: Readonly<Record<SettledBy, string>>;
  readonly slips: Readonly<Record<SlipCode, string>>;
  readonly supply: Readonly<Record<SupplyCode, string>>;
  readonly explained: string;
  readonly corrected: string;
}

/** How numbers and pressures are written, by data of our own: never by the settings of the machine. */
export interface NumberFormat {
  readonly decimal: '.' | ',';
  /** Stands after the unit of a pressure. */
  readonly basis: Readonly<Record<'gauge' | 'absolute' | 'difference', string>>;
  /** At which state a normal volume is stated. */
  readonly atState: string;
}

/** A language in which the library's documents can be written. */
export interface Language {
  /** As BCP 47 has it. */
  readonly code: string;
  readonly numbers: NumberFormat;
  /** For a report in this language as well: `reportRound(round, { problems, words: german.words })`. */
  readonly words: EveryWord;
  readonly settling: Readonly<Record<SettlingCode, string>>;
  readonly steps: Readonly<Record<WorkStep | StepRemark, string>>;
  readonly severities: Readonly<Record<Severity, string>>;
  readonly document: DocumentWords;
  readonly derivation: DerivationWords;
  readonly exercise: ExerciseWords;
  /** Where a relation comes from, by its source as the relation states it; a source that is not here is said as it stands. */
  readonly sources: Readonly<Record<string, string>>;
  /** Whose values a step of a calculation shows, by the words of the step. */
  readonly about: Readonly<Record<string, string>>;
}
