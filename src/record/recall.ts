// An instrument was found wrong at its calibration: which of the verdicts that rest on it change. Stored reports carry their
// rounds; these are judged again with what the instrument showed and with that corrected, and the two are compared. Both by
// this version of the library, so that nothing but the correction makes a difference.
import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { listed, type Bound } from '../basis/listed.js';
import { daysBackwards, notAText } from '../basis/problem.js';
import { wellFormed } from '../basis/well-formed.js';
import { taken } from '../basis/taken.js';
import { inWords, type Words } from '../basis/words.js';
import { shift } from '../quantity/arithmetic.js';
import { isChecked, wrongKind, type PressureDifference, type TemperatureDifference } from '../quantity/kind.js';
import type { PressureUnit, TemperatureUnit } from '../quantity/unit.js';
import { needDate } from '../reading/certificate.js';
import { isObject } from '../target/table.js';
import type { Checked, Judged } from './accumulator.js';
import { readDocument } from './document.js';
import { dayOf } from './instruments.js';
import { emptyFindings, isUnder, listAt, valueAt, type Findings } from './problems.js';
import { gaugeJson, quantity, temperatureJson, type Measured } from './quantities.js';
import type { AccumulatorJson, JudgedJson, RoundReport } from './report-shape.js';
import { lookedAt, reverifyText, type Reverified } from './reverify.js';
import { ownWords } from './words.js';

/** An instrument that was found wrong, and for which days that is taken to hold. */
export interface Recalling {
  /** Its name in the rounds. */
  readonly instrument: string;
  /** First and last day, as RFC 3339 dates; both count. */
  readonly from: string;
  readonly to: string;
  /**
   * To be added to what it showed: minus the error that was found. A gauge that showed 2.1 bar too much has −2.1 bar. A
   * pressure difference corrects pressures read by it, a temperature difference temperatures.
   */
  readonly correction: PressureDifference | TemperatureDifference;
}

/** What a reading said, and decided if its round has a rule and states its instruments. */
export interface RecalledReading {
  readonly outcome: JudgedJson['outcome'];
  readonly decision?: NonNullable<JudgedJson['decision']>['outcome'];
}

/** What an accumulator's visit came to. */
export interface RecalledVisit {
  readonly asFound: RecalledReading;
  readonly asLeft: RecalledReading | 'not read';
  readonly state: AccumulatorJson['state'];
}

/** A report, as those who keep it find it again. */
export interface RecalledReport {
  /** Place in the list that was given. */
  readonly index: number;
  readonly digest?: string;
  readonly title?: string;
}

/** A visit whose verdict, decision or state changes with the correction. */
export interface RecallChange extends RecalledReport {
  /** JSON path in the round of the report. */
  readonly path: string;
  readonly group: string;
  readonly name: string;
  readonly before: RecalledVisit;
  readonly after: RecalledVisit;
}

/** A visit that used the instrument and could not be compared. */
export interface NotRecalled extends RecalledReport {
  readonly path: string;
  readonly name?: string;
  /** It has no verdict that could change; or, with the correction, it has none any more. */
  readonly because: 'not judged in its round' | 'cannot be judged with the correction';
  /** Of the visit itself; none where its group or specification is at fault. */
  readonly problems: readonly Problem[];
}

/** A report that is not to be relied upon as it is. */
export interface ReportProblem extends RecalledReport {
  /** As {@link reverify} gives them. With `another result` or `other library version` alone it is judged again all the same. */
  readonly because: Reverified['because'];
  readonly why: string;
  readonly problems: readonly Problem[];
}

/** What becomes of stored verdicts. */
export interface Recalled {
  /** How many visits with readings by the instrument were judged again. */
  readonly judgedAgain: number;
  readonly changes: readonly RecallChange[];
  readonly notJudgedAgain: readonly NotRecalled[];
  readonly problems: readonly ReportProblem[];
}

/** Of a fleet, for years. */
const MOST_STORED: Bound = { most: 1_000_000, what: 'reports' };

/**
 * Judges the visits of stored reports again whose readings were taken with an instrument that was found wrong, with a
 * correction added to what it showed, and lists whose verdict, decision or state changes. A correction that the instrument's
 * own certificate states is kept; this one comes on top.
 *
 * Nothing is dropped: a report that is none, or was altered, is listed, and so is a visit that cannot be judged.
 *
 * @param reports as {@link reportRound} made them, or as JSON.parse gives them back
 * @throws {@link Fault} `wrong kind` for no list of reports or another correction, `too long` for more than a million
 * reports, `not a text`, `not a date`, `days run backwards` for what is recalled; for words as {@link reportRound}
 * @example
 * ```ts
 * const stored = [reportRound(round, { problems: 'refuse the round' })];
 * const days = { instrument: 'gauge A', from: '2026-01-01', to: '2026-03-31' };
 * const small = recall(stored, { ...days, correction: pressureDifference(2.1, 'bar') });
 * [small.judgedAgain, small.changes.length]; // => [1, 0]
 * const [change] = recall(stored, { ...days, correction: pressureDifference(9, 'bar') }).changes;
 * [change?.name, change?.before.state, change?.after.state]; // => ['EV 1', 'work needed', 'in order']
 * ```
 */
export function recall(reports: readonly unknown[], recalling: Recalling, givenWords?: Words): Recalled {
  if (!Array.isArray(reports)) wrongKind('list of reports', reports, 'reports');
  const what = neededRecalling(recalling);
  const words = ownWords(givenWords, 'words');
  const all: Gathered = { judgedAgain: 0, changes: [], notJudgedAgain: [], problems: [] };
  listed(reports as readonly unknown[], MOST_STORED, 'reports', (report, i) => {
    recallOne(report, i, what, words, all);
  });
  return all;
}

interface Gathered {
  judgedAgain: number;
  readonly changes: RecallChange[];
  readonly notJudgedAgain: NotRecalled[];
  readonly problems: ReportProblem[];
}

function neededRecalling(given: Recalling): Recalling {
  if (!isObject(given)) wrongKind('recall: instrument, from, to and correction', given, 'recalling');
  const own = taken(given, {
    instrument: 'as it is',
    from: 'as it is',
    to: 'as it is',
    correction: 'as it is',
  });
  const { instrument, from, to, correction } = own;
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): unknown => collect(problems, `recalling.${path}`, admit);
  check('instrument', () => {
    if (typeof instrument !== 'string') fail(notAText, '', quote(instrument));
  });
  check('from', () => needDate(from));
  check('to', () => needDate(to));
  if (problems.length === 0 && to < from) check('to', () => fail(daysBackwards, '', quote(to), { from }));
  check('correction', () => {
    if (isChecked(correction, 'temperature difference') || isChecked(correction, 'pressure difference')) return;
    wrongKind('pressure difference', correction, '');
  });
  failIfAny(problems);
  return own;
}

function recallOne(report: unknown, index: number, what: Recalling, words: Words | undefined, all: Gathered): void {
  const looked = lookedAt(report);
  const which = whichReport(report, index);
  const own = (problems: readonly Problem[]): Problem[] => problems.map((one) => inWords(one, words));
  const refuse = (because: Reverified['because'], problems: readonly Problem[] = []): void => {
    all.problems.push({ ...which, because, why: reverifyText(because), problems: own(problems) });
  };
  if (looked.report === undefined || looked.because.includes('digest does not match'))
    return refuse(looked.because, looked.problems);
  if (!Object.hasOwn(looked.report, 'input')) return refuse(['no input', ...looked.because]);

  const { json, paths, problems } = corrected(looked.report.input, what);
  if (paths.size === 0) return;
  const [before, after] = [judgedOf(looked.report.input), judgedOf(json)];
  if (differs(looked.report, before.judged, paths))
    refuse(looked.because.length === 0 ? ['another result'] : looked.because);
  for (const [path, name] of paths) {
    const [was, is] = [before.judged.get(path), after.judged.get(path)];
    const not = (because: NotRecalled['because'], found: readonly Problem[]): void => {
      const named = name === undefined ? {} : { name };
      all.notJudgedAgain.push({ ...which, path, ...named, because, problems: own(found) });
    };
    const ownProblems = problems.filter((one) => isUnder(one.path, path));
    if (was === undefined) not('not judged in its round', under(before.findings, path));
    else if (is === undefined || ownProblems.length > 0 || (isBeyondScale(is) && !isBeyondScale(was)))
      not('cannot be judged with the correction', [...ownProblems, ...under(after.findings, path)]);
    else {
      all.judgedAgain += 1;
      const visits = [visitOf(was), visitOf(is)] as const;
      if (JSON.stringify(visits[0]) === JSON.stringify(visits[1])) continue;
      const { group, name: called } = was.whose;
      all.changes.push({ ...which, path, group, name: called, before: visits[0], after: visits[1] });
    }
  }
}

function whichReport(report: unknown, index: number): RecalledReport {
  const [digest, title] = [valueAt(report, ['digest']), valueAt(report, ['title'])];
  return {
    index,
    ...(typeof digest === 'string' ? { digest: wellFormed(digest) } : {}),
    ...(typeof title === 'string' ? { title: wellFormed(title) } : {}),
  };
}

/** A round with its corrected readings, and the accumulators that have any, by path with their names. */
interface Corrected {
  readonly json: unknown;
  readonly paths: ReadonlyMap<string, string | undefined>;
  /** Of readings that no correction can be added to. */
  readonly problems: readonly Problem[];
}

function corrected(input: unknown, { instrument, from, to, correction }: Recalling): Corrected {
  const json: unknown = JSON.parse(JSON.stringify(input)); // own JSON data, in which readings are replaced
  const paths = new Map<string, string | undefined>();
  const problems: Problem[] = [];
  const isPressure = correction.kind === 'pressure difference';
  const measured = isPressure ? 'pressure' : 'temperature';
  listAt(json, 'groups').forEach((group, g) => {
    listAt(group, 'accumulators').forEach((accumulator, a) => {
      const path = `$.groups[${g}].accumulators[${a}]`;
      listAt(accumulator, 'visit').forEach((reading, r) => {
        const at = valueAt(reading, ['at']);
        const used = valueAt(reading, ['instruments', measured]) ?? valueAt(group, ['instruments', measured]);
        if (used !== instrument || typeof at !== 'string' || dayOf(at) < from || dayOf(at) > to) return;
        const name = valueAt(accumulator, ['name']);
        paths.set(path, typeof name === 'string' ? name : undefined);
        // A pressure is never the group's: in a round its shape forbids it.
        const shown = valueAt(reading, [measured]) ?? valueAt(group, [measured]);
        const found: Problem[] = [];
        const value = collect(found, `${path}.visit[${r}].${measured}`, () => withCorrection(shown, correction));
        // What is not sound stays as it is: the round says so.
        if (value !== undefined) (reading as Record<string, unknown>)[measured] = value;
        problems.push(...found);
      });
    });
  });
  return { json, paths, problems };
}

function withCorrection(shown: unknown, correction: Recalling['correction']): object | undefined {
  if (typeof valueAt(shown, ['unit']) !== 'string') return undefined;
  const json = shown as Measured;
  return correction.kind === 'pressure difference'
    ? gaugeJson(shift(quantity('gauge pressure', json), correction), json.unit as PressureUnit)
    : temperatureJson(shift(quantity('temperature', json), correction), json.unit as TemperatureUnit);
}

function judgedOf(json: unknown): { readonly judged: ReadonlyMap<string, Judged>; readonly findings: Findings } {
  const findings = emptyFindings();
  const { judged } = readDocument({ json, isWhole: true }, findings);
  return { judged: new Map(judged.map((one) => [one.path, one])), findings };
}

function under({ listed }: Findings, path: string): Problem[] {
  return listed.filter((one) => isUnder(one.path, path));
}

/** Whether it goes beyond the end of a scale; that its gauge should have shown as much more says nothing of the accumulator. */
function isBeyondScale({ asFound, asLeft }: Judged): boolean {
  return [asFound, asLeft].some((one) => one?.check.verdict.because.includes('beyond the scale'));
}

function visitOf({ asFound, asLeft, state }: Judged): RecalledVisit {
  return { asFound: readingOf(asFound), asLeft: asLeft === undefined ? 'not read' : readingOf(asLeft), state };
}

function readingOf({ check }: Checked): RecalledReading {
  const { outcome } = check.verdict;
  return has(check, 'decision') ? { outcome, decision: check.decision.outcome } : { outcome };
}

/** Whether a report says something else of a recalled visit than its round gives now. */
function differs(
  { accumulators }: RoundReport,
  judged: ReadonlyMap<string, Judged>,
  paths: ReadonlyMap<string, unknown>,
): boolean {
  const nameOf = (group: string, name: string): string => JSON.stringify([group, name]);
  const stored = new Map(accumulators.map((one) => [nameOf(one.group, one.name), one]));
  return [...paths.keys()].some((path) => {
    const now = judged.get(path);
    const was = now && stored.get(nameOf(now.whose.group, now.whose.name));
    if (now === undefined) return false;
    return was === undefined || JSON.stringify(storedVisit(was)) !== JSON.stringify(visitOf(now));
  });
}

function storedVisit({ asFound, asLeft, state }: AccumulatorJson): RecalledVisit {
  const of = ({ outcome, decision }: JudgedJson): RecalledReading =>
    decision === undefined ? { outcome } : { outcome, decision: decision.outcome };
  return { asFound: of(asFound), asLeft: asLeft === 'not read' ? asLeft : of(asLeft), state };
}
