import * as z from 'zod/mini';
import { CAUTION } from '../basis/caution.js';
import { failIfAny, problem, quote, type Problem } from '../basis/fault.js';
import { wordsUnsound } from '../basis/problem.js';
import {
  CAUSE,
  CORRECTED,
  EXPLAINED,
  REASON,
  SETTLED,
  SLIP,
  SUPPLY,
  uncertaintyText,
  type Words,
} from '../basis/words.js';
import {
  CAUTION_CODES,
  CAUSES,
  PROBLEM_CODES,
  problemTexts,
  REASONS,
  SETTLED_BY,
  SLIP_CODES,
  SUPPLY_CODES,
  UNCERTAINTY_CODES,
} from './codes.js';
import { characters } from './length.js';
import { pathOf, shapeProblems } from './problems.js';

// A caution is shown where people work, so that none may be empty or run on.
const text = z.string().check(...characters(1, 2000), z.regex(/^[^\uD800-\uDFFF]*$/u));

const WordsShape = z.strictObject({
  reasons: z.optional(z.partialRecord(z.enum(REASONS), text)),
  causes: z.optional(z.partialRecord(z.enum(CAUSES), text)),
  cautions: z.optional(z.partialRecord(z.enum(CAUTION_CODES), text)),
  problems: z.optional(z.partialRecord(z.enum(PROBLEM_CODES), z.strictObject({ wanted: text, remedy: text }))),
  uncertainty: z.optional(z.partialRecord(z.enum(UNCERTAINTY_CODES), text)),
  settled: z.optional(z.partialRecord(z.enum(SETTLED_BY), text)),
  supply: z.optional(z.partialRecord(z.enum(SUPPLY_CODES), text)),
  slips: z.optional(z.partialRecord(z.enum(SLIP_CODES), text)),
  explained: z.optional(text),
  corrected: z.optional(text),
});

/** Words, each read once, so that what is checked is what is used. Refused if they are not sound; the path leads to them. */
export function ownWords(given: Words | undefined, path: string): Words | undefined {
  if (given === undefined) return undefined;
  const words = copyOf(given, LEVELS) as z.infer<typeof WordsShape>;
  const shape = shapeProblems(WordsShape, words).map(({ path: inner, found, wanted }) =>
    problem(wordsUnsound, under(path, inner), found, { wanted }),
  );
  failIfAny(shape);
  failIfAny(braceProblems(words, path));
  return words as Words;
}

/** Kind, code, and the two texts of a problem. */
const LEVELS = 3;

function copyOf(given: unknown, levels: number): unknown {
  if (levels === 0 || typeof given !== 'object' || given === null || Array.isArray(given)) return given;
  const copy = { __proto__: null } as unknown as Record<string, unknown>; // or it would have what all objects inherit
  for (const [key, inner] of Object.entries(given)) copy[key] = copyOf(inner, levels - 1);
  return copy;
}

/** Names in braces that the library has no value for. */
function braceProblems(words: z.infer<typeof WordsShape>, path: string): Problem[] {
  const problems: Problem[] = [];
  const check = (keys: readonly string[], own: string | undefined, ...library: readonly string[]): void => {
    if (own === undefined) return;
    const known = library.flatMap(braces);
    const unknown = braces(own).find((brace) => !known.includes(brace));
    if (unknown === undefined) return;
    const wanted = known.length === 0 ? 'no name in braces' : `no name in braces but ${known.join(', ')}`;
    problems.push(problem(wordsUnsound, under(path, pathOf(keys)), quote(own), { wanted }));
  };
  for (const code of REASONS) check(['reasons', code], words.reasons?.[code], REASON[code]);
  for (const code of CAUSES) check(['causes', code], words.causes?.[code], CAUSE[code]);
  for (const code of CAUTION_CODES) check(['cautions', code], words.cautions?.[code], CAUTION[code][1]);
  for (const code of UNCERTAINTY_CODES) check(['uncertainty', code], words.uncertainty?.[code], uncertaintyText(code));
  for (const code of SETTLED_BY) check(['settled', code], words.settled?.[code], SETTLED[code]);
  for (const code of SUPPLY_CODES) check(['supply', code], words.supply?.[code], SUPPLY[code]);
  for (const code of SLIP_CODES) check(['slips', code], words.slips?.[code], SLIP[code]);
  for (const { code, wanted, remedy } of problemTexts) {
    check(['problems', code, 'wanted'], words.problems?.[code]?.wanted, wanted, remedy);
    check(['problems', code, 'remedy'], words.problems?.[code]?.remedy, wanted, remedy);
  }
  check(['explained'], words.explained, EXPLAINED);
  check(['corrected'], words.corrected, CORRECTED);
  return problems;
}

function braces(template: string): readonly string[] {
  return template.match(/\{\w+\}/g) ?? [];
}

function under(outer: string, inner: string): string {
  return inner === '' ? outer : `${outer}.${inner}`;
}
