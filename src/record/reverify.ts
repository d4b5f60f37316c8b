import { fail, quote, type Problem } from '../basis/fault.js';
import { notAReport } from '../basis/problem.js';
import { canonicalSha256 } from './canonical.js';
import { readData } from './json-data.js';
import { emptyFindings, MOST_LISTED, pathOf, shapeProblems, valueAt } from './problems.js';
import { RoundReportShape, type RoundReport } from './report-shape.js';
import { DEEPEST_REPORT } from './read-report.js';
import { judgeRound } from './report.js';
import { WHY } from './because.js';
import { LIBRARY_VERSION } from './version.js';

/** A place in which the results of a report differ from those that its input gives now. */
export interface Change {
  /** JSON path (RFC 9535) in the report. */
  readonly path: string;
  /** What the report says, `nothing` where it says nothing; cut short. */
  readonly from: string;
  /** What its input gives now. */
  readonly to: string;
}

/** What {@link reverify} found. */
export interface Reverified {
  /**
   * `same`: the digest matches, and the input gives the same results again. `changed`: one of the two does not hold.
   * `cannot be judged again`: the digest matches, but there is no input. `not a report`: nothing could be compared.
   */
  readonly outcome: 'same' | 'changed' | 'cannot be judged again' | 'not a report';
  /** Stable codes of what lies behind it; empty for `same`. */
  readonly because: readonly (keyof typeof WHY)[];
  /** The same in words, which may be reworded; the codes are for programs. */
  readonly why: string;
  /** How many places differ; the first hundred are listed. */
  readonly changesFound: number;
  readonly changes: readonly Change[];
  /** What is wrong with the shape of something that is no report, a thousand at most. */
  readonly problems: readonly Problem[];
}

/** Most changes that are listed. */
const MOST_CHANGES = 100;

/**
 * Checks a report again: its shape, its digest, and whether its input, judged again, gives the same results. A report by
 * another version of the library that gives the same is `same`.
 *
 * Texts are no results: what is said under a code (`why`, the text of a cause or a caution, what a problem found and wants
 * and its remedy, a citation) is not compared, so that neither a release that rewords nor words of one's own change a
 * report. A text that was altered after the report was made is seen by the digest.
 *
 * A digest that matches does not prove who made a report: anybody can compute one. What does is a signature over it.
 *
 * @param report any JSON data, as JSON.parse gives it; nothing in it throws
 * @throws {@link Fault} `not a report` for a function, a symbol, a bigint or nothing in place of the report
 * @example
 * ```ts
 * const report = reportRound(round, { problems: 'refuse the round' });
 * reverify(JSON.parse(JSON.stringify(report))).outcome; // => 'same'
 * const { because, changes } = reverify({ ...report, complete: 'partial' });
 * because; // => ['digest does not match']
 * changes; // => [{ path: '$.complete', from: '"partial"', to: '"complete"' }]
 * ```
 */
export function reverify(report: unknown): Reverified {
  if (['undefined', 'function', 'symbol', 'bigint'].includes(typeof report)) fail(notAReport, 'report', quote(report));
  const looked = lookedAt(report);
  return looked.report === undefined
    ? answer('not a report', looked.because, [], looked.problems)
    : judgedAgain(looked.report, looked.because);
}

type Because = keyof typeof WHY;

/** The codes in words. */
export function reverifyText(because: readonly Because[]): string {
  return because.map((code) => WHY[code]).join('; ');
}

/** What can be seen of a report without judging it again; no report where it has not the shape of one. */
export interface LookedAt {
  readonly report?: RoundReport;
  readonly because: readonly Because[];
  readonly problems: readonly Problem[];
}

/** Looks at the shape, the digest and the versions of a report. */
export function lookedAt(report: unknown): LookedAt {
  const given = readData(report, DEEPEST_REPORT);
  if (given.read !== 'JSON data') return { because: ['not a report'], problems: listed([given.problem]) };
  const { data } = given;
  const because = [...alteration(data), ...versions(data)];
  const problems = shapeProblems(RoundReportShape, data);
  if (problems.length === 0) return { report: data as RoundReport, because, problems };
  return { because: ['not a report', ...because], problems: listed(problems) };
}

function listed(problems: readonly Problem[]): readonly Problem[] {
  return problems.slice(0, MOST_LISTED).map((one) => ({ ...one, path: under('$', one.path) }));
}

function judgedAgain(report: RoundReport, because: readonly Because[]): Reverified {
  const isAltered = because.includes('digest does not match');
  if (!Object.hasOwn(report, 'input')) {
    return answer(isAltered ? 'changed' : 'cannot be judged again', ['no input', ...because]);
  }
  const again = judgeRound({ json: report.input, isWhole: true }, undefined, emptyFindings());
  const changes: Change[] = [];
  const changesFound = compare(compared(report), compared(again), [], changes);
  if (changesFound === 0 && !isAltered) return answer('same', []);
  const models = ({ models }: Pick<RoundReport, 'models'>): string => models.map(({ id }) => id).join();
  const all: Because[] = models(report) === models(again) ? [...because] : [...because, 'other model'];
  return answer('changed', all.length === 0 ? ['another result'] : all, changes, [], changesFound);
}

/** All that must come out again: the input is the same by itself, and another version may come to the same. */
function compared(report: Omit<RoundReport, 'digest'>): Readonly<Record<string, unknown>> {
  return { ...report, digest: undefined, libraryVersion: undefined, input: undefined };
}

function alteration(report: unknown): Because[] {
  if (typeof report !== 'object' || report === null || !Object.hasOwn(report, 'digest')) return [];
  const { digest, ...rest } = report as Readonly<Record<string, unknown>>;
  return canonicalSha256(rest) === digest ? [] : ['digest does not match'];
}

function versions(report: unknown): Because[] {
  const [schema, library] = [valueAt(report, ['version']), valueAt(report, ['libraryVersion'])];
  return [
    ...(typeof schema === 'number' && schema !== 1 ? ['other schema version' as const] : []),
    ...(typeof library === 'string' && library !== LIBRARY_VERSION ? ['other library version' as const] : []),
  ];
}

/** Fields of a report that hold what is said under a code; nothing that is carried has a field of these names. */
const TEXTS: readonly string[] = ['why', 'text', 'found', 'wanted', 'remedy', 'values', 'citation'];

/** Lists where two JSON values differ but for their texts, up to the limit; returns in how many places. */
function compare(from: unknown, to: unknown, keys: readonly PropertyKey[], changes: Change[]): number {
  // Both have the shape of a report, so that neither is a list where the other is an object.
  if (isBranch(from) && isBranch(to)) {
    let found = 0;
    const isList = Array.isArray(from);
    for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) {
      if (TEXTS.includes(key)) continue;
      const next = [...keys, isList ? Number(key) : key];
      found += compare(valueAt(from, [key]), valueAt(to, [key]), next, changes);
    }
    return found;
  }
  if (from === to) return 0;
  const said = (value: unknown): string => (value === undefined ? 'nothing' : quote(value));
  if (changes.length < MOST_CHANGES) changes.push({ path: under('$', pathOf(keys)), from: said(from), to: said(to) });
  return 1;
}

function isBranch(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function answer(
  outcome: Reverified['outcome'],
  because: readonly Because[],
  changes: readonly Change[] = [],
  problems: readonly Problem[] = [],
  changesFound = changes.length,
): Reverified {
  return { outcome, because, why: reverifyText(because), changesFound, changes, problems };
}

function under(outer: string, inner: string): string {
  return inner === '' || inner.startsWith('[') ? outer + inner : `${outer}.${inner}`;
}
