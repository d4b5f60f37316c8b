// The stable codes that a report may hold, as lists, from the catalogues of their texts.
import { CAUTION, type CautionCode } from '../basis/caution.js';
import type { ProblemCode } from '../basis/fault.js';
import {
  aboveAllowable,
  correctedTwice,
  absoluteForGauge,
  bandReachesZero,
  bandWithoutWidth,
  basisMissing,
  belowAbsoluteZero,
  belowVacuumAbsolute,
  belowVacuumGauge,
  beyondDouble,
  cellsLeftOut,
  daysBackwards,
  duplicateKey,
  duplicateName,
  emptySpace,
  forbiddenKey,
  gaugeForAbsolute,
  inheritedByAll,
  leavesModel,
  leftOutSilently,
  limitsCrossed,
  liquid,
  minutesOutOfOrder,
  missing,
  mixedUnits,
  moreThanThereIs,
  negative,
  nominalWithoutTable,
  noPhases,
  noSaturation,
  noSolution,
  notACopy,
  notACount,
  notADate,
  notADecimal,
  notAList,
  notAmbient,
  notAnAccuracyClass,
  notAnObject,
  notANumber,
  notAPair,
  notAPercentage,
  notAQuantity,
  notAReferenceState,
  notAReport,
  notAStatement,
  notAStep,
  notAText,
  notATime,
  notATolerance,
  notEachOnce,
  notJson,
  notJsonText,
  notMinutesAtRest,
  notOneOf,
  notPositive,
  notSigned,
  notTheHottest,
  operatorOnQuantity,
  orderOfReadings,
  otherAmbient,
  otherInstrument,
  outsideBounds,
  outsideModel,
  outsideTable,
  pressuresCrossed,
  problemsCutShort,
  rangeBackwards,
  ratioToZero,
  referenceOutsideTable,
  restContradicts,
  rowsAlike,
  rowsOutOfOrder,
  signedTooEarly,
  statedNowhere,
  stepTooFine,
  stopNotBeyond,
  textForANumber,
  timesBackwards,
  tooDeep,
  tooFewRows,
  tooFewRowsToAudit,
  tooFewTimed,
  tooLong,
  tooManyRows,
  tooMuch,
  tooShort,
  twoPhases,
  uncheckedCopy,
  uncheckedSpecification,
  unknownColumn,
  unknownField,
  unknownInstrument,
  unknownSpecification,
  unknownTable,
  unknownUnit,
  unknownVersion,
  unknownWord,
  wordsUnsound,
  wrongBasis,
  wrongKind,
  wrongShape,
} from '../basis/problem.js';
import {
  CAUSE,
  CONTRIBUTION,
  LACKING,
  NOT_COUNTED,
  REASON,
  SETTLED,
  SLIP,
  SUPPLY,
  UNDECIDED,
  type Cause,
  type Reason,
  type SettledBy,
  type SlipCode,
  type SupplyCode,
  type UncertaintyCode,
} from '../basis/words.js';
import type { Outcome } from '../verdict/judge.js';

// @__NO_SIDE_EFFECTS__
export function codesOf<Code extends string>(all: Readonly<Record<Code, unknown>>): readonly Code[] {
  return Object.keys(all) as Code[];
}

/**
 * Codes of every outcome of a reading.
 *
 * @example
 * ```ts
 * OUTCOMES.at(-1); // => 'within'
 * ```
 */
export const OUTCOMES: readonly Outcome[] = codesOf<Outcome>({
  'gas not known': true,
  'not comparable': true,
  'gas side empty': true,
  'gauge too coarse': true,
  undercharged: true,
  overcharged: true,
  within: true,
});

/**
 * Codes of every reason for an outcome, and for a quantity or a stop that is withheld.
 *
 * @example
 * ```ts
 * REASONS.includes('oil side not drained'); // => true
 * ```
 */
export const REASONS: readonly Reason[] = codesOf(REASON);

/**
 * Codes of what may be behind an empty gas side, cheapest to check first.
 *
 * @example
 * ```ts
 * CAUSES.at(-1); // => 'separator torn'
 * ```
 */
export const CAUSES: readonly Cause[] = codesOf(CAUSE);

/**
 * Codes of every caution.
 *
 * @example
 * ```ts
 * CAUTION_CODES.includes('asphyxiation'); // => true
 * ```
 */
export const CAUTION_CODES: readonly CautionCode[] = codesOf(CAUTION);

/**
 * Codes of what an uncertainty is made of, what it does not count, why there is none, and what it lacks.
 *
 * @example
 * ```ts
 * UNCERTAINTY_CODES.includes('gauge not named'); // => true
 * ```
 */
export const UNCERTAINTY_CODES: readonly UncertaintyCode[] = codesOf<UncertaintyCode>({
  ...CONTRIBUTION,
  ...NOT_COUNTED,
  ...UNDECIDED,
  ...LACKING,
});

/**
 * Codes of what would settle a reading that decides nothing.
 *
 * @example
 * ```ts
 * SETTLED_BY[0]; // => 'better gauge'
 * ```
 */
export const SETTLED_BY: readonly SettledBy[] = codesOf(SETTLED);

/**
 * Codes of what may have been stated otherwise than the instrument showed it.
 *
 * @example
 * ```ts
 * SLIP_CODES[0]; // => 'unit of pressure'
 * ```
 */
export const SLIP_CODES: readonly SlipCode[] = codesOf(SLIP);

/**
 * Codes of why a bottle or an accumulator takes no part in a filling, or is not completed.
 *
 * @example
 * ```ts
 * SUPPLY_CODES[0]; // => 'another gas on the label'
 * ```
 */
export const SUPPLY_CODES: readonly SupplyCode[] = codesOf(SUPPLY);

// One by one: a namespace object would keep all of them in every bundle. A test holds the list against the file.
/** What is said of every problem. */
export const problemTexts = [
  wrongKind,
  gaugeForAbsolute,
  absoluteForGauge,
  uncheckedCopy,
  uncheckedSpecification,
  operatorOnQuantity,
  notANumber,
  textForANumber,
  beyondDouble,
  notADecimal,
  notAQuantity,
  unknownUnit,
  belowAbsoluteZero,
  belowVacuumAbsolute,
  belowVacuumGauge,
  notPositive,
  negative,
  ratioToZero,
  notAStep,
  stepTooFine,
  unknownWord,
  notACopy,
  outsideModel,
  liquid,
  twoPhases,
  noSolution,
  noSaturation,
  noPhases,
  notAPair,
  emptySpace,
  notAReferenceState,
  notMinutesAtRest,
  notAmbient,
  outsideTable,
  referenceOutsideTable,
  rowsOutOfOrder,
  tooFewRows,
  unknownColumn,
  cellsLeftOut,
  limitsCrossed,
  bandReachesZero,
  notAPercentage,
  bandWithoutWidth,
  notATolerance,
  nominalWithoutTable,
  aboveAllowable,
  tooManyRows,
  rangeBackwards,
  rowsAlike,
  missing,
  basisMissing,
  wrongBasis,
  unknownField,
  forbiddenKey,
  unknownVersion,
  notAnObject,
  notAList,
  notAText,
  notATime,
  notADate,
  tooShort,
  tooLong,
  wrongShape,
  statedNowhere,
  notAStatement,
  duplicateName,
  duplicateKey,
  unknownSpecification,
  unknownTable,
  unknownInstrument,
  otherInstrument,
  mixedUnits,
  otherAmbient,
  orderOfReadings,
  timesBackwards,
  daysBackwards,
  restContradicts,
  notJson,
  inheritedByAll,
  notJsonText,
  tooDeep,
  tooMuch,
  problemsCutShort,
  notAReport,
  wordsUnsound,
  notOneOf,
  notAnAccuracyClass,
  correctedTwice,
  outsideBounds,
  notACount,
  tooFewRowsToAudit,
  notEachOnce,
  stopNotBeyond,
  moreThanThereIs,
  leavesModel,
  tooFewTimed,
  minutesOutOfOrder,
  notTheHottest,
  pressuresCrossed,
  notSigned,
  leftOutSilently,
  signedTooEarly,
] as const;

/**
 * Codes of everything that can be wrong with a document, or with a call.
 *
 * @example
 * ```ts
 * PROBLEM_CODES.includes('below absolute zero'); // => true
 * ```
 */
export const PROBLEM_CODES: readonly ProblemCode[] = problemTexts.map(({ code }) => code);
