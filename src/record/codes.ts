// The stable codes that a report may hold, as lists. Complete by their types: a code that the core has and a list lacks, or
// the other way round, does not compile.
import type { CautionCode } from '../basis/caution.js';
import type { ProblemCode } from '../basis/fault.js';
import { REASON, type Reason } from '../basis/words.js';
import type { Outcome } from '../verdict/judge.js';

// @__NO_SIDE_EFFECTS__
function codesOf<Code extends string>(all: Readonly<Record<Code, unknown>>): readonly Code[] {
  return Object.keys(all) as Code[];
}

/** Codes of every outcome of a reading. */
export const OUTCOMES = codesOf<Outcome>({
  'gas not known': true,
  'not comparable': true,
  'gas side empty': true,
  'gauge too coarse': true,
  undercharged: true,
  overcharged: true,
  within: true,
});

/** Codes of every reason for an outcome, and for a quantity or a stop that is withheld. */
export const REASONS: readonly Reason[] = codesOf(REASON);

/** Codes of every caution. */
export const CAUTION_CODES = codesOf<CautionCode>({
  'reading above the allowable pressure': true,
  'target above the allowable pressure': true,
  'stop pressure above the allowable pressure': true,
  'nitrogen only': true,
  'stored pressure': true,
  'secure and drain': true,
  asphyxiation: true,
  'maker decides': true,
  'empty gas side': true,
  'large loss': true,
  'not comparable': true,
  'no mark to stop at': true,
  'table and nominal point disagree': true,
  'model uncertainty not stated': true,
});

/** Codes of everything that can be wrong with a document, or with a call. */
export const PROBLEM_CODES = codesOf<ProblemCode>({
  'wrong kind': true,
  'not a number': true,
  'not a decimal': true,
  'unknown unit': true,
  'basis missing': true,
  'below absolute zero': true,
  'below vacuum': true,
  'not positive': true,
  negative: true,
  'outside the model': true,
  'no solution': true,
  liquid: true,
  'two phases': true,
  'unknown table': true,
  'mixed units': true,
  'not an ambient pressure': true,
  'above allowable': true,
  'band without width': true,
  'band reaches zero': true,
  'limits crossed': true,
  'rows out of order': true,
  'outside the table': true,
  'step too fine': true,
  'unknown word': true,
  'wrong shape': true,
  'unknown field': true,
  missing: true,
  'unknown version': true,
  'duplicate name': true,
  'duplicate key': true,
  'forbidden key': true,
  'unknown specification': true,
  'stated nowhere': true,
  'order of readings': true,
  'rest contradicts readings': true,
  'not JSON': true,
  'too deep': true,
  'too large': true,
});
