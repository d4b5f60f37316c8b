import { CAUTION, type CautionCode } from '../../basis/caution.js';
import type { ProblemCode } from '../../basis/fault.js';
import type { ProblemText } from '../../basis/problem.js';
import {
  CAUSE,
  CONTRIBUTION,
  CORRECTED,
  EXPLAINED,
  LACKING,
  NOT_COUNTED,
  REASON,
  SETTLED,
  SLIP,
  SUPPLY,
  UNDECIDED,
} from '../../basis/words.js';
import { REMARK, STEP } from '../../procedure/steps.js';
import { problemTexts } from '../../record/codes.js';
import { WHY } from '../../record/because.js';
import { SETTLING } from '../../settling/words.js';
import { ENGLISH_DERIVATION } from './english-derivation.js';
import { ENGLISH_EXERCISE } from './english-exercise.js';
import { ENGLISH_DOCUMENTS } from './english-documents.js';
import type { Language } from './language.js';

/**
 * English: the words that stand in the library under its codes, gathered. Nothing is said twice.
 *
 * @example
 * ```ts
 * english.words.causes['valve not open']; // => 'the gas valve or the valve of the charging kit is not open'
 * english.numbers.decimal; // => '.'
 * ```
 */
export const english: Language = /* @__PURE__ */ englishWords();

// In a function: nothing at the top of a file may look like something to be done.
function englishWords(): Language {
  const cautions = Object.fromEntries(Object.entries(CAUTION).map(([code, [, text]]) => [code, text]));
  const problems = Object.fromEntries(problemTexts.map(({ code, wanted, remedy }) => [code, { wanted, remedy }]));
  return {
    code: 'en',
    numbers: {
      decimal: '.',
      basis: { gauge: 'gauge', absolute: 'absolute', difference: 'difference' },
      atState: 'at {temperature} and {pressure}',
    },
    words: {
      reasons: REASON,
      causes: CAUSE,
      cautions: cautions as Record<CautionCode, string>,
      problems: problems as Record<ProblemCode, ProblemText>,
      uncertainty: { ...CONTRIBUTION, ...NOT_COUNTED, ...UNDECIDED, ...LACKING },
      settled: SETTLED,
      slips: SLIP,
      supply: SUPPLY,
      explained: EXPLAINED,
      corrected: CORRECTED,
    },
    settling: SETTLING,
    steps: { ...STEP, ...REMARK },
    severities: { danger: 'Danger', caution: 'Caution', note: 'Note' },
    document: { ...ENGLISH_DOCUMENTS, because: WHY },
    sources: {},
    derivation: ENGLISH_DERIVATION,
    exercise: ENGLISH_EXERCISE,
    about: {},
  };
}
