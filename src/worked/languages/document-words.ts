// The words of documents: headings, heads of columns, sentences with names in braces for what is filled in.
import type { FillingWords, SafetyWords } from './charging-words.js';
import type { Outcome } from '../../verdict/judge.js';
import type { Acceptance } from '../../verdict/rule.js';
import type { Separator } from '../../target/specification.js';
import type { Applies } from '../../target/tolerance.js';
import type { TargetSource } from '../../target/curve.js';
import type { GasInside, OilSide } from '../../reading/reading.js';
import type { Reverified } from '../../record/reverify.js';
import type { AccumulatorJson, JudgedJson } from '../../record/report-shape.js';
import type { Stake } from '../../record/worst-first.js';

type DecisionOutcome = NonNullable<JudgedJson['decision']>['outcome'];

/** Words of the adjustment card. */
export interface CardWords {
  readonly title: string;
  readonly titled: string;
  readonly use: string;
  readonly tableHeading: string;
  readonly ambient: string;
  readonly temperature: string;
  readonly target: string;
  readonly lower: string;
  readonly upper: string;
  readonly noMark: string;
  readonly tooHigh: string;
  readonly beyondTable: string;
  readonly validityHeading: string;
  readonly point: string;
  readonly byTable: string;
  readonly statedAmbient: string;
  readonly tolerance: string;
  readonly percent: string;
  readonly limits: string;
  readonly separator: string;
  readonly volume: string;
  readonly allowable: string;
  readonly settling: string;
  readonly model: string;
  readonly rounding: string;
  readonly otherAmbient: string;
  readonly disagreements: string;
  readonly cautionsHeading: string;
  readonly provenanceHeading: string;
  readonly manual: string;
}

/** Words of the report of a round. */
export interface RoundWords {
  readonly title: string;
  readonly summaryHeading: string;
  readonly complete: string;
  readonly partial: string;
  readonly judged: string;
  readonly found: string;
  readonly nothingFound: string;
  readonly rule: string;
  readonly problemsHeading: string;
  readonly problem: string;
  readonly more: string;
  readonly notJudged: string;
  readonly cautionsHeading: string;
  readonly cautionFor: string;
  readonly cautionBy: string;
  readonly togetherHeading: string;
  readonly tooFew: string;
  readonly noShift: string;
  readonly shift: string;
  readonly perhaps: string;
  readonly slipKinds: Readonly<Record<'stated for' | 'absolute stated as gauge' | 'gauge stated as absolute', string>>;
  readonly compare: string;
  readonly byThemselves: string;
  readonly instrumentsShift: Readonly<Record<'can explain it' | 'cannot explain it' | 'not stated', string>>;
  readonly tableHeading: string;
  readonly tableOf: string;
  readonly columns: Readonly<
    Record<'accumulator' | 'unit' | 'read' | 'temperature' | 'target' | 'allowed' | 'off' | 'outcome' | 'state', string>
  >;
  readonly offNote: string;
  readonly intervalNote: string;
  readonly groupTemperature: string;
  readonly uncertaintyNote: string;
  readonly asLeft: string;
  readonly to: string;
  readonly workHeading: string;
  readonly nothingToDo: string;
  readonly nothingJudged: string;
  readonly unit: string;
  readonly noUnit: string;
  readonly add: string;
  readonly vent: string;
  readonly stop: string;
  readonly noMark: string;
  readonly noStop: string;
  readonly next: Readonly<
    Record<Exclude<Outcome, 'undercharged' | 'overcharged' | 'within'> | 'beyond the scale' | 'slip possible', string>
  >;
  readonly underOne: string;
  readonly overNinetyNine: string;
  readonly meant: Readonly<Record<'within' | 'gauge too coarse', string>>;
  readonly inconclusive: string;
  readonly settle: string;
  readonly lacking: string;
  readonly left: string;
  readonly cause: string;
  readonly gasHeading: string;
  readonly gasFound: string;
  readonly gasStill: string;
  readonly gasSum: string;
  readonly gasNone: string;
  readonly losses: string;
  readonly ofThePart: string;
  readonly instrumentsHeading: string;
  readonly instrument: string;
  readonly kind: string;
  readonly certificate: string;
  readonly due: string;
  readonly pastDue: string;
  readonly readingsHeading: string;
  readonly readings: Readonly<
    Record<'accumulator' | 'at' | 'evidence' | 'instruments' | 'leftAt' | 'readBy' | 'verifiedBy', string>
  >;
  readonly oilSide: Readonly<Record<OilSide, string>>;
  readonly gasInside: Readonly<Record<GasInside, string>>;
  readonly rest: string;
  readonly restNotKnown: string;
  readonly ruledOut: string;
  readonly notRead: string;
  readonly remarksHeading: string;
  readonly permit: string;
  readonly parts: string;
  readonly workingHeading: string;
  readonly workingOf: string;
  readonly workingLeft: string;
  readonly workingSafety: string;
  readonly workingReleased: string;
  readonly noWorking: string;
  readonly signaturesHeading: string;
  readonly readBy: string;
  readonly verifiedBy: string;
  readonly provenanceHeading: string;
  readonly judgedBy: string;
  readonly digest: string;
  readonly judgedAgain: string;
  readonly notAgain: string;
  readonly fields: readonly [string, string, string];
}

/** Words that documents use of their own, and those of every outcome. */
export interface DocumentWords {
  readonly outcomes: Readonly<Record<Outcome, string>>;
  readonly decisions: Readonly<Record<DecisionOutcome, string>>;
  readonly states: Readonly<Record<AccumulatorJson['state'], string>>;
  readonly stakes: Readonly<Record<Stake, string>>;
  readonly acceptances: Readonly<Record<Acceptance, string>>;
  readonly separators: Readonly<Record<Separator, string>>;
  readonly applies: Readonly<Record<Applies, string>>;
  readonly targetBy: Readonly<Record<TargetSource['by'], string>>;
  readonly because: Readonly<Record<Reverified['because'][number], string>>;
  /** Words that stand in the place of a value in sentences of the library. */
  readonly values: Readonly<Record<'not known' | 'none in range', string>>;
  readonly provenance: string;
  readonly model: string;
  readonly card: CardWords;
  readonly round: RoundWords;
  readonly filling: FillingWords;
  readonly safety: SafetyWords;
}
