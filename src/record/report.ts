import { USUAL, caution, type CautionCode } from '../basis/caution.js';
import { fail, failIfAny, problem, quote, type Problem } from '../basis/fault.js';
import { optional } from '../basis/has.js';
import { problemsCutShort, unknownWord } from '../basis/problem.js';
import { inWords, type UncertaintyCode, type Words } from '../basis/words.js';
import { gasQuantity } from '../charge/charge.js';
import type { Check } from '../charge/check.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { canonicalSha256 } from './canonical.js';
import { fillingOf, type Filling } from './filling.js';
import { readDocument, type Document, type Read } from './document.js';
import { emptyFindings, MOST_LISTED, valueAt, type Findings } from './problems.js';
import type { RoundReport } from './report-shape.js';
import { safetyOf, type Safety } from './safety.js';
import { LIBRARY_VERSION } from './version.js';
import { ownWords } from './words.js';
import { wholeRound } from './whole.js';
import { cautionsOf, gasJson, judgedJson } from './write.js';
import { termJson, termsOf } from './write-certainty.js';

/** What to do about a document with something wrong in it. There is no default: a partial report is a decision. */
export interface When {
  /** `refuse the round`: throw, with every problem. `report the rest`: judge what is sound, list the problems with it. */
  readonly problems: 'refuse the round' | 'report the rest';
  /** Words to use in the report in place of the library's. */
  readonly words?: Words;
}

/**
 * Judges a round of checks from unknown JSON data: the work needed on each accumulator from its reading as found, the work
 * done from its reading as left.
 *
 * The data is not trusted: shape and meaning are checked, every problem is found (the first thousand are listed, with
 * path, what was found, what is wanted and the remedy), and what depends on one is not judged. For JSON text use
 * {@link reportRoundText}, which also sees duplicate keys. Limits: {@link MOST_ACCUMULATORS}, {@link MOST_VALUES}.
 *
 * The report carries the round as it was given, the version of the library, the gas model and a digest over all of it, so
 * that {@link reverify} can judge it again.
 *
 * @throws {@link Fault} with the problems, if any were found and `when` says `refuse the round`; `unknown word` for
 * another `when`; for words under other codes than the library's, or none or too many of them, the problems of these
 * @example
 * ```ts
 * const report = reportRound(round, { problems: 'report the rest' });
 * report.complete; // => 'complete'
 * report.accumulators[0]?.asFound.outcome; // => 'undercharged'
 * ```
 */
export function reportRound(json: unknown, when: When): RoundReport {
  return reportFound({ json, isWhole: true }, when, emptyFindings());
}

/** {@link reportRound}, for a document in which problems may have been found already, or that could not be read at all. */
export function reportFound(document: Document | undefined, when: When, findings: Findings): RoundReport {
  if (when?.problems !== 'refuse the round' && when?.problems !== 'report the rest') badWhen(when);
  const { problems } = when;
  const words = ownWords(optional(when, 'words'), 'when.words');
  const report = judgeRound(document, words, findings);
  if (problems === 'refuse the round') failIfAny(cutShort(findings).map((problem) => inWords(problem, words)));
  return { ...report, digest: canonicalSha256(report) };
}

/** A report, but for its digest. */
export function judgeRound(
  document: Document | undefined,
  words: Words | undefined,
  findings: Findings,
): Omit<RoundReport, 'digest'> {
  const read = readDocument(document, findings);
  const filling = read.supply && fillingOf(read.supply, read.judged, words, findings);
  const bottles = (filling?.json.bottles ?? []).map(({ name, contents }) => ({ name, moles: contents.amount.value }));
  const safety = read.safety && safetyOf(read.safety, read.judged, bottles, findings);
  return reportOf(read, { filling, safety }, words);
}

/** The problems as listed, and one that says how many are not. */
function cutShort({ listed, found }: Findings): readonly Problem[] {
  if (found === listed.length) return listed;
  return [...listed, problem(problemsCutShort, '$', `${found} problems`, { most: String(MOST_LISTED) })];
}

function badWhen(when: unknown): never {
  const words = "'refuse the round' or 'report the rest'";
  fail(unknownWord, 'when.problems', quote(valueAt(when, ['problems'])), { words });
}

/** What stands beside the judged accumulators. */
interface Beside {
  readonly filling: Filling | undefined;
  readonly safety: Safety | undefined;
}

function reportOf(read: Read, { filling, safety }: Beside, words: Words | undefined): Omit<RoundReport, 'digest'> {
  const { title, input, findings, instruments, groups, judged, notJudged, deciding } = read;
  const counts: RoundReport['counts'] = {};
  const decisions: NonNullable<RoundReport['decisions']> = {};
  const codes = new Set<CautionCode>();
  const terms = new Set<UncertaintyCode>();
  const accumulators = judged.map(({ whose, asFound, asLeft, state }) => {
    const { outcome } = asFound.check.verdict;
    counts[outcome] = (optional(counts, outcome) ?? 0) + 1;
    for (const checked of asLeft === undefined ? [asFound] : [asFound, asLeft]) {
      for (const code of cautionsOf(checked)) codes.add(code);
    }
    const found = judgedJson(asFound, words);
    const left = asLeft === undefined ? ('not read' as const) : judgedJson(asLeft, words);
    for (const one of left === 'not read' ? [found] : [found, left]) {
      for (const code of termsOf(one)) terms.add(code);
    }
    const decided = optional(found, 'decision')?.outcome;
    if (decided !== undefined) decisions[decided] = (optional(decisions, decided) ?? 0) + 1;
    return { ...whose, state, asFound: found, asLeft: left };
  });
  const whole = wholeRound(judged);
  if (whole.some(({ outcome }) => outcome === 'common shift')) codes.add('common shift');
  for (const code of [...(filling?.cautions ?? []), ...(safety?.cautions ?? [])]) codes.add(code);
  const own = [...codes].filter((code) => !USUAL.includes(code));
  const { id, source } = nitrogen; // the shape of a round knows no other gas
  return {
    version: 1,
    libraryVersion: LIBRARY_VERSION,
    ...(typeof title === 'string' ? { title } : {}),
    complete: findings.found === 0 ? 'complete' : 'partial',
    problemsFound: findings.found,
    problems: findings.listed.map((problem) => ({ ...inWords(problem, words) })),
    cautions: [...own, ...USUAL].map((code) => caution(code, words?.cautions)),
    models: [{ id, ...source }],
    counts,
    ...(deciding === undefined ? {} : { rule: { ...deciding.rule, risk: { ...deciding.rule.risk } }, decisions }),
    together: whole,
    ...(terms.size === 0 ? {} : { terms: [...terms].map((code) => termJson(code, words)) }),
    gasToAdd: {
      asFound: gasToAdd(judged.map(({ asFound }) => asFound.check)),
      stillToAdd: gasToAdd(judged.map(({ asFound, asLeft }) => (asLeft ?? asFound).check)),
    },
    ...(filling === undefined ? {} : { filling: filling.json }),
    ...(safety === undefined ? {} : { safety: safety.json }),
    instruments,
    groups,
    accumulators,
    notJudged,
    ...(input === undefined ? {} : { input: input.json }),
  };
}

/** Gas to add by some checks. */
function gasToAdd(checks: readonly Check[]): RoundReport['gasToAdd']['asFound'] {
  const adding = checks.flatMap(({ charge }) => (charge.action === 'add' ? [charge.gas.amount.moles] : []));
  if (adding.length === 0) return { accumulators: 0 };
  const moles = adding.reduce((sum, one) => sum + one, 0);
  return { accumulators: adding.length, gas: gasJson(gasQuantity(nitrogen, moles, 'up')) };
}
