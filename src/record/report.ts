import { caution, USUAL, type CautionCode } from '../basis/caution.js';
import { collect, cut, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { gasQuantity } from '../charge/charge.js';
import { check, type Check } from '../charge/check.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import type { Specification } from '../target/specification.js';
import { admitReading, admitSpecification, admitStated, type Admitted, type Part, type Stated } from './admit.js';
import { add, emptyFindings, isBroken, MOST_LISTED, shapeProblems, valueAt, type Findings } from './problems.js';
import type { RoundReport } from './report-shape.js';
import { AccumulatorShell, GroupShell, RoundShell } from './shape.js';
import { minutesBetween, restTooLong, visitProblems, type Clock } from './visit.js';
import { gasJson, judgedJson } from './write.js';

/** What to do about a document with something wrong in it. There is no default: a partial report is a decision. */
export interface When {
  /** `refuse the round`: throw, with every problem. `report the rest`: judge what is sound, list the problems with it. */
  readonly problems: 'refuse the round' | 'report the rest';
}

/** Most accumulators that one document may hold. */
export const MOST_ACCUMULATORS = 250_000;

/**
 * Judges a round of checks from unknown JSON data: the work needed on each accumulator from its reading as found, the work
 * done from its reading as left.
 *
 * The data is not trusted: shape and meaning are checked, every problem is found (the first thousand are listed, with
 * path, what was found, what is wanted and the remedy), and what depends on one is not judged. For JSON text use
 * {@link reportRoundText}, which also sees duplicate keys.
 *
 * @throws {@link Fault} with the problems, if any were found and `when` says `refuse the round`; `unknown word` for
 * another `when`
 * @example
 * ```ts
 * const report = reportRound(round, { problems: 'report the rest' });
 * report.complete; // => 'complete'
 * report.accumulators[0]?.asFound.outcome; // => 'undercharged'
 * ```
 */
export function reportRound(json: unknown, when: When): RoundReport {
  return reportFound({ json }, when, emptyFindings());
}

/** {@link reportRound}, for a document in which problems may have been found already, or that could not be read at all. */
export function reportFound(
  document: { readonly json: unknown } | undefined,
  when: When,
  findings: Findings,
): RoundReport {
  if (when?.problems !== 'refuse the round' && when?.problems !== 'report the rest') badWhen(when);
  const reader = { findings, judged: [], notJudged: [], room: MOST_ACCUMULATORS };
  const title = document === undefined ? undefined : readRound(document.json, reader);
  const report = reportOf(title, reader);
  if (when.problems === 'refuse the round') failIfAny(cutShort(findings));
  return report;
}

/** The problems as listed, and one that says how many are not. */
function cutShort({ listed, found }: Findings): readonly Problem[] {
  if (found === listed.length) return listed;
  const rest: Problem = {
    code: 'too large',
    path: '$',
    found: `${found} problems`,
    wanted: `at most ${MOST_LISTED} to be listed`,
    remedy: 'mend those listed first; the rest will be listed then',
  };
  return [...listed, rest];
}

function badWhen(when: unknown): never {
  fail({
    code: 'unknown word',
    path: 'when.problems',
    found: quote(valueAt(when, ['problems'])),
    wanted: "'refuse the round' or 'report the rest'",
    remedy: 'decide what happens to a round with something wrong in it',
  });
}

/** Reads a round into the reader; returns its title. */
function readRound(json: unknown, reader: Reader): unknown {
  const problems = shapeProblems(RoundShell, json);
  add(reader.findings, '$', problems);
  if (isBroken(problems, 'version') || reader.findings.tainted.has('$')) return undefined;
  readGroups(listAt(json, 'groups'), readSpecifications(listAt(json, 'specifications'), reader.findings), reader);
  return isBroken(problems, 'title') ? undefined : valueAt(json, ['title']);
}

/** What is known while a round is read. */
interface Reader {
  readonly findings: Findings;
  readonly judged: Judged[];
  readonly notJudged: RoundReport['notJudged'];
  /** How many more accumulators the document may hold. */
  room: number;
}

/** By name; undefined where the name is given but the specification is not sound. */
type Specifications = ReadonlyMap<string, Specification | undefined>;

interface Judged {
  readonly group: string;
  readonly name: string;
  readonly specification: string;
  readonly asFound: [Admitted, Check];
  readonly asLeft: [Admitted, Check] | undefined;
  readonly state: State;
}

function readSpecifications(list: readonly unknown[], findings: Findings): Specifications {
  const specifications = new Map<string, Specification | undefined>();
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const { spec, problems } = admitSpecification(raw);
    const name = nameOf(raw);
    const path = `$.specifications[${i}]`;
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    if (repeated.has(name)) add(findings, path, [duplicate('specification', name)], shownName(name));
    specifications.set(name, repeated.has(name) || findings.tainted.has(path) ? undefined : spec);
  });
  return specifications;
}

function readGroups(list: readonly unknown[], specifications: Specifications, reader: Reader): void {
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const path = `$.groups[${i}]`;
    const part: Part = { raw, problems: shapeProblems(GroupShell, raw) };
    const stated = admitStated(part);
    const name = nameOf(raw);
    if (name !== undefined && repeated.has(name)) part.problems.push(duplicate('group', name));
    const specification = valueAt(raw, ['specification']);
    if (!isBroken(part.problems, 'specification') && !specifications.has(String(specification))) {
      part.problems.push(unknownSpecification(specification));
    }
    add(reader.findings, path, part.problems, shownName(name));
    const sound = !isBroken(part.problems, 'specification') && !reader.findings.tainted.has(path);
    const spec = sound ? specifications.get(String(specification)) : undefined;
    const group = { raw, path, stated, name: isBroken(part.problems, 'name') ? undefined : name, spec };
    readAccumulators(group, listAt(raw, 'accumulators'), reader);
  });
}

interface Group {
  readonly raw: unknown;
  readonly path: string;
  readonly name: string | undefined;
  readonly stated: Stated;
  readonly spec: Specification | undefined;
}

function readAccumulators(group: Group, list: readonly unknown[], reader: Reader): void {
  const repeated = repeatedNames(list);
  for (const [i, raw] of list.entries()) {
    const path = `${group.path}.accumulators[${i}]`;
    if (reader.room === 0) {
      add(reader.findings, path, [tooMany(list.length - i)], group.name);
      return;
    }
    reader.room -= 1;
    const name = nameOf(raw);
    const problems = shapeProblems(AccumulatorShell, raw);
    if (name !== undefined && repeated.has(name)) problems.push(duplicate('accumulator', name));
    const readings = isBroken(problems, 'visit') ? [] : readVisit(raw, group, problems);
    add(reader.findings, path, problems, shownName(name));
    const sound = problems.length === 0 && !reader.findings.tainted.has(path);
    const judged = sound && name !== undefined ? judge(group, name, readings, path, reader) : undefined;
    if (judged === undefined) reader.notJudged.push(whose(path, group.name, name));
    else reader.judged.push(judged);
  }
}

/** The readings of a visit; undefined for one that is not sound, or that takes something unsound from its group. */
function readVisit(raw: unknown, group: Group, problems: Problem[]): readonly (Admitted | undefined)[] {
  const clocks: Clock[] = [];
  const readings = listAt(raw, 'visit').map((reading, i) => {
    const { admitted, problems: own } = admitReading(reading, group.stated, group.raw);
    const soundAt = (field: string): unknown => (isBroken(own, field) ? undefined : valueAt(reading, [field]));
    const rest = soundAt('minutesAtRest');
    clocks.push({
      role: soundAt('role') as string | undefined,
      at: soundAt('at') as string | undefined,
      minutesAtRest: typeof rest === 'number' ? rest : undefined,
    });
    for (const problem of own) problems.push({ ...problem, path: under(`visit[${i}]`, problem.path) });
    return admitted;
  });
  problems.push(...visitProblems(clocks));
  return readings;
}

function judge(
  group: Group,
  name: string,
  readings: readonly (Admitted | undefined)[],
  path: string,
  { findings }: Reader,
): Judged | undefined {
  const { spec } = group;
  const first = readings.at(0);
  const last = readings.at(-1);
  if (spec === undefined || group.name === undefined || first === undefined || last === undefined) return undefined;
  const checked = (admitted: Admitted, index: number): [Admitted, Check] | undefined => {
    const problems: Problem[] = [];
    const checked = collect(problems, '', () => check(spec, admitted.reading));
    add(findings, `${path}.visit[${index}]`, problems, name);
    return checked === undefined ? undefined : [admitted, checked];
  };
  const asFound = checked(first, 0);
  const asLeft = last.role === 'as left' ? checked(last, readings.length - 1) : undefined;
  if (asFound === undefined || (last.role === 'as left' && asLeft === undefined)) return undefined;
  if (asLeft !== undefined && gasMoved(asFound[1], asLeft[1])) {
    const most = minutesBetween(first.at, last.at);
    const { minutesAtRest } = last.reading;
    if (minutesAtRest !== 'not known' && minutesAtRest > most) {
      add(findings, path, [restTooLong(readings.length - 1, minutesAtRest, most)], name);
      return undefined;
    }
  }
  const specification = String(valueAt(group.raw, ['specification']));
  const readAfter = readings.length > 1;
  return { group: group.name, name, specification, asFound, asLeft, state: stateOf(asFound, asLeft, readAfter) };
}

/** Whether gas was moved between two readings: a pre-charge that was off is right only because somebody worked on it. */
function gasMoved(found: Check, left: Check): boolean {
  return stateAfter(found) === 'work needed' && left.verdict.outcome === 'within';
}

type State = RoundReport['accumulators'][number]['state'];

/** The state of an accumulator: by its reading as left; as found, if nothing was read after that. */
function stateOf(asFound: [Admitted, Check], asLeft: [Admitted, Check] | undefined, readAfter: boolean): State {
  if (asLeft === undefined) return readAfter ? 'read again' : stateAfter(asFound[1]);
  const cleared = [asFound, asLeft].some(([{ reading }]) => reading.emptyGasSide === 'investigated and cleared');
  const unexplained = asFound[1].verdict.outcome === 'gas side empty' && !cleared;
  return unexplained ? 'work needed' : stateAfter(asLeft[1]);
}

function stateAfter({ verdict, charge }: Check): State {
  switch (verdict.outcome) {
    case 'within':
      // A reading within its band, but above the allowable pressure, is not in order.
      return charge.action === 'none' ? 'in order' : 'work needed';
    case 'undercharged':
    case 'overcharged':
    case 'gas side empty':
      return 'work needed';
    case 'gas not known':
    case 'not comparable':
    case 'gauge too coarse':
      return 'read again';
  }
}

/** Gas to add by some checks. */
function gasToAdd(checks: readonly Check[]): RoundReport['gasToAdd']['asFound'] {
  const adding = checks.flatMap(({ charge }) => (charge.action === 'add' ? [charge.gas.amount.moles] : []));
  if (adding.length === 0) return { accumulators: 0 };
  const moles = adding.reduce((sum, one) => sum + one, 0);
  return { accumulators: adding.length, gas: gasJson(gasQuantity(nitrogen, moles, 'up')) };
}

function reportOf(title: unknown, { findings, judged, notJudged }: Reader): RoundReport {
  const counts: Record<string, number> = {};
  const codes = new Set<CautionCode>();
  const accumulators = judged.map(({ group, name, specification, asFound, asLeft, state }) => {
    const { outcome } = asFound[1].verdict;
    counts[outcome] = (counts[outcome] ?? 0) + 1;
    for (const [, { cautions }] of asLeft === undefined ? [asFound] : [asFound, asLeft]) {
      for (const { code } of cautions) codes.add(code);
    }
    const left = asLeft === undefined ? ('not read' as const) : judgedJson(...asLeft);
    return { group, name, specification, state, asFound: judgedJson(...asFound), asLeft: left };
  });
  const own = [...codes].filter((code) => !USUAL.includes(code));
  const { id, source } = nitrogen; // the shape of a round knows no other gas
  return {
    version: 1,
    ...(typeof title === 'string' ? { title } : {}),
    complete: findings.found === 0 ? 'complete' : 'partial',
    problemsFound: findings.found,
    problems: findings.listed,
    cautions: [...own, ...USUAL].map((code) => ({ ...caution(code) })),
    models: [{ id, ...source }],
    counts,
    gasToAdd: {
      asFound: gasToAdd(judged.map(({ asFound }) => asFound[1])),
      stillToAdd: gasToAdd(judged.map(({ asFound, asLeft }) => (asLeft ?? asFound)[1])),
    },
    accumulators,
    notJudged,
  };
}

function listAt(raw: unknown, key: string): readonly unknown[] {
  const list = valueAt(raw, [key]);
  return Array.isArray(list) ? list : [];
}

/** The name of an element as its problems quote it; what compares names uses the whole of it. */
function shownName(name: string | undefined): string | undefined {
  return name === undefined ? undefined : cut(name);
}

function nameOf(raw: unknown): string | undefined {
  const name = valueAt(raw, ['name']);
  return typeof name === 'string' ? name : undefined;
}

/** Names that stand more than once: none of their bearers can be told from the others. */
function repeatedNames(list: readonly unknown[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const raw of list) {
    const name = nameOf(raw);
    if (name === undefined) continue;
    if (seen.has(name)) repeated.add(name);
    seen.add(name);
  }
  return repeated;
}

function duplicate(what: string, name: string): Problem {
  return {
    code: 'duplicate name',
    path: 'name',
    found: quote(name),
    wanted: `a name that no other ${what} beside it has`,
    remedy: 'name each one apart; none of those that share the name is judged',
  };
}

function unknownSpecification(name: unknown): Problem {
  return {
    code: 'unknown specification',
    path: 'specification',
    found: quote(name),
    wanted: 'the name of one of the specifications of this document',
    remedy: 'check the spelling, or add the specification',
  };
}

function tooMany(left: number): Problem {
  return {
    code: 'too large',
    path: '',
    found: `${left} more accumulators`,
    wanted: `at most ${MOST_ACCUMULATORS} accumulators in a document`,
    remedy: 'split the document; these were not read',
  };
}

function whose(path: string, group: string | undefined, name: string | undefined): RoundReport['notJudged'][number] {
  return {
    path,
    ...(group === undefined ? {} : { group: cut(group) }),
    ...(name === undefined ? {} : { name: cut(name) }),
  };
}

function under(outer: string, inner: string): string {
  return inner === '' ? outer : `${outer}.${inner}`;
}
