import * as z from 'zod/mini';
import { failIfAny, quote } from '../basis/fault.js';
import { caution, type Caution, type CautionCode } from '../basis/caution.js';
import { CAUTION_CODES } from './codes.js';
import { shapeProblems } from './problems.js';

/** Words of the caller's own in place of those of the library, under the stable codes: a translation, for instance. */
export interface Words {
  /** 1 to 2000 characters each. A caution left out here keeps its words; none can be left out of a report. */
  readonly cautions?: Readonly<Partial<Record<CautionCode, string>>>;
}

const WordsShape = z.strictObject({
  cautions: z.optional(
    z.partialRecord(
      z.enum(CAUTION_CODES),
      z.string().check(z.minLength(1), z.maxLength(2000), z.regex(/^[^\uD800-\uDFFF]*$/u)),
    ),
  ),
});

/** Refuses words that are not sound; the path leads to them. */
export function needWords(words: unknown, path: string): void {
  if (words === undefined) return;
  failIfAny(
    shapeProblems(WordsShape, words).map((problem) => ({
      ...problem,
      path: problem.path === '' ? path : `${path}.${problem.path}`,
      remedy: `give words under the codes of the library, ${quote('nitrogen only')} for instance`,
    })),
  );
}

/** The caution of a code, in the words that are to be used. */
export function cautionIn(words: Words | undefined, code: CautionCode): Caution {
  const own = caution(code);
  return { ...own, text: words?.cautions?.[code] ?? own.text };
}
