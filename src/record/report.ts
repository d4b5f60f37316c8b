import { USUAL, type CautionCode } from '../basis/caution.js';
import { collect, cut, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { gasQuantity } from '../charge/charge.js';
import { check, type Check } from '../charge/check.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { afterCharging, type Specification } from '../target/specification.js';
import { admitReading, admitSpecification, admitStated, type Admitted, type Around } from './admit.js';
import { canonicalSha256, wellFormed } from './canonical.js';
import { ACCUMULATOR_FIELDS, FOR_THE_GROUP, GROUP_FIELDS } from './carried.js';
import { admitUsed, instrumentProblems, type Instruments } from './instruments.js';
import { copied, jsonData, MOST_VALUES } from './json-data.js';
import {
  add,
  emptyFindings,
  isBroken,
  MOST_LISTED,
  shapeProblems,
  valueAt,
  type Findings,
  type Part,
} from './problems.js';
import type { AccumulatorJson, RoundReport } from './report-shape.js';
import { admitTable, type Table, type Tables } from './stated.js';
import { AccumulatorShell, GroupShell, RoundShell } from './shape.js';
import { LIBRARY_VERSION } from './version.js';
import { minutesBetween, restTooLong, visitProblems, type Clock, WORKED } from './visit.js';
import { cautionIn, needWords, type Words } from './words.js';
import { gasJson, judgedJson } from './write.js';

/** What to do about a document with something wrong in it. There is no default: a partial report is a decision. */
export interface When {
  /** `refuse the round`: throw, with every problem. `report the rest`: judge what is sound, list the problems with it. */
  readonly problems: 'refuse the round' | 'report the rest';
  /** Words to use in the report in place of the library's. */
  readonly words?: Words;
}

/** Deepest nesting of a document that is read, as text or carried into its report; a round needs nine levels. */
export const DEEPEST = 32;

/** Most accumulators that one document may hold. */
export const MOST_ACCUMULATORS = 250_000;

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

/** A document as the report takes it. */
export interface Document {
  readonly json: unknown;
  /** False where it is not all that was given: of a key given twice, a parser keeps the last. */
  readonly isWhole: boolean;
}

/** {@link reportRound}, for a document in which problems may have been found already, or that could not be read at all. */
export function reportFound(document: Document | undefined, when: When, findings: Findings): RoundReport {
  if (when?.problems !== 'refuse the round' && when?.problems !== 'report the rest') badWhen(when);
  needWords(when.words, 'when.words');
  const report = judgeRound(document, when.words, findings);
  if (when.problems === 'refuse the round') failIfAny(cutShort(findings));
  return { ...report, digest: canonicalSha256(report) };
}

/** A report, but for its digest. */
export function judgeRound(
  document: Document | undefined,
  words: Words | undefined,
  findings: Findings,
): Omit<RoundReport, 'digest'> {
  const reader: Reader = { findings, instruments: [], groups: [], judged: [], notJudged: [], room: MOST_ACCUMULATORS };
  return reportOf(document === undefined ? {} : readDocument(document, reader), reader, words);
}

/** What a report says of its round as a whole. */
interface About {
  readonly title?: unknown;
  readonly input?: { readonly json: unknown };
}

function readDocument({ json, isWhole }: Document, reader: Reader): About {
  const kind = jsonData(json, DEEPEST);
  if (kind === 'too many values') {
    add(reader.findings, '$', [tooManyValues()]);
    return {};
  }
  if (kind === 'not JSON data') {
    const title = readRound(json, reader);
    // What has its place in a round is JSON data, so that something has been said already; but for what hides itself.
    if (reader.findings.found === 0) add(reader.findings, '$', [notData()]);
    return { title };
  }
  const own = copied(json);
  const title = readRound(own, reader);
  return isWhole ? { title, input: { json: own } } : { title };
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
  const tables = readTables(listAt(json, 'tables'), reader.findings);
  const specifications = readSpecifications(listAt(json, 'specifications'), tables, reader.findings);
  const instruments = isBroken(problems, 'instruments')
    ? 'not sound'
    : readInstruments(listAt(json, 'instruments'), reader);
  readGroups(listAt(json, 'groups'), specifications, instruments, reader);
  return isBroken(problems, 'title') ? undefined : valueAt(json, ['title']);
}

/** What is known while a round is read. */
interface Reader {
  readonly findings: Findings;
  readonly instruments: RoundReport['instruments'];
  readonly groups: RoundReport['groups'];
  readonly judged: Judged[];
  readonly notJudged: RoundReport['notJudged'];
  /** How many more accumulators the document may hold. */
  room: number;
}

/** By name; undefined where the name is given but the specification is not sound. */
type Specifications = ReadonlyMap<string, Bands | undefined>;

/** A specification with the band in service, and with the band after charging. */
interface Bands {
  readonly inService: Specification;
  readonly afterCharging: Specification;
}

interface Judged {
  /** Group, name, specification, and what is carried. */
  readonly whose: Whose;
  readonly asFound: [Admitted, Check];
  readonly asLeft: [Admitted, Check] | undefined;
  readonly state: State;
}

function readTables(list: readonly unknown[], findings: Findings): Tables {
  const tables = new Map<string, Table | undefined>();
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const { table, problems } = admitTable(raw);
    const name = nameOf(raw);
    const path = `$.tables[${i}]`;
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    if (repeated.has(name)) add(findings, path, [duplicate('table', name)], shownName(name));
    tables.set(name, repeated.has(name) || findings.tainted.has(path) ? undefined : table);
  });
  return tables;
}

function readSpecifications(list: readonly unknown[], tables: Tables, findings: Findings): Specifications {
  const specifications = new Map<string, Bands | undefined>();
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const { spec, problems } = admitSpecification(raw, tables);
    const name = nameOf(raw);
    const path = `$.specifications[${i}]`;
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    if (repeated.has(name)) add(findings, path, [duplicate('specification', name)], shownName(name));
    const sound = spec !== undefined && !repeated.has(name) && !findings.tainted.has(path);
    specifications.set(name, sound ? { inService: spec, afterCharging: afterCharging(spec) } : undefined);
  });
  return specifications;
}

function readInstruments(list: readonly unknown[], { findings, instruments: sound }: Reader): Instruments {
  const instruments = new Map<string, RoundReport['instruments'][number] | undefined>();
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const problems = instrumentProblems(raw);
    const name = nameOf(raw);
    const path = `$.instruments[${i}]`;
    if (name !== undefined && repeated.has(name)) problems.push(duplicate('instrument', name));
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    const isSound = problems.length === 0 && !findings.tainted.has(path);
    const instrument = copied(raw) as RoundReport['instruments'][number];
    if (isSound) sound.push(instrument);
    instruments.set(name, isSound ? instrument : undefined);
  });
  return instruments;
}

function readGroups(
  list: readonly unknown[],
  specifications: Specifications,
  instruments: Instruments,
  reader: Reader,
): void {
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const path = `$.groups[${i}]`;
    const part: Part = { raw, problems: shapeProblems(GroupShell, raw) };
    const stated = admitStated(part);
    const used = admitUsed(part, instruments);
    const name = nameOf(raw);
    if (name !== undefined && repeated.has(name)) part.problems.push(duplicate('group', name));
    const specification = valueAt(raw, ['specification']);
    if (!isBroken(part.problems, 'specification') && !specifications.has(String(specification))) {
      part.problems.push(unknownSpecification(specification));
    }
    add(reader.findings, path, part.problems, shownName(name));
    const sound = !isBroken(part.problems, 'specification') && !reader.findings.tainted.has(path);
    const spec = sound ? specifications.get(String(specification)) : undefined;
    const carried = carriedOf(GROUP_FIELDS, part);
    const isNamed = name !== undefined && !isBroken(part.problems, 'name');
    if (isNamed && sound) reader.groups.push({ name, specification: String(specification), ...carried });
    const forEach = forTheGroup(carried);
    const around = { raw, path, stated, used, instruments, forEach, name: isNamed ? name : undefined };
    const group = { ...around, specification: String(specification), spec, specifications };
    readAccumulators(group, listAt(raw, 'accumulators'), reader);
  });
}

interface Group extends Around {
  readonly path: string;
  readonly name: string | undefined;
  /** What it says for each of its accumulators that does not say it itself. */
  readonly forEach: Carried;
  readonly specification: string;
  readonly spec: Bands | undefined;
  /** All of the document, for an accumulator that follows another one. */
  readonly specifications: Specifications;
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
    const ownSpecification = isBroken(problems, 'specification')
      ? undefined
      : (valueAt(raw, ['specification']) as string | undefined);
    if (ownSpecification !== undefined && !group.specifications.has(ownSpecification)) {
      problems.push(unknownSpecification(ownSpecification));
    }
    const specs = ownSpecification === undefined ? group.spec : group.specifications.get(ownSpecification);
    const readings = isBroken(problems, 'visit') ? [] : readVisit(raw, group, problems);
    add(reader.findings, path, problems, shownName(name));
    const sound = problems.length === 0 && !reader.findings.tainted.has(path);
    const carried = { ...group.forEach, ...carriedOf(ACCUMULATOR_FIELDS, { raw, problems }) };
    const own = { specification: ownSpecification ?? group.specification, specs, carried };
    const judged = sound && name !== undefined ? judge(group, { name, ...own }, readings, path, reader) : undefined;
    if (judged === undefined) reader.notJudged.push(whose(path, group.name, name, carried));
    else reader.judged.push(judged);
  }
}

type Carried = Omit<AccumulatorJson, 'group' | 'name' | 'specification' | 'state' | 'asFound' | 'asLeft'>;
type Whose = Omit<AccumulatorJson, 'state' | 'asFound' | 'asLeft'>;

/** What is carried of a part as it was given: those of some fields that are there and sound. */
function carriedOf(fields: Readonly<Record<string, unknown>>, { raw, problems }: Part): Carried {
  const carried: Record<string, unknown> = {};
  for (const field of Object.keys(fields)) {
    const value = valueAt(raw, [field]);
    if (value !== undefined && !isBroken(problems, field)) carried[field] = copied(value);
  }
  return carried;
}

/** Of what a group says, that which it says for its accumulators. */
function forTheGroup(group: Carried): Carried {
  return Object.fromEntries(Object.entries(group).filter(([field]) => FOR_THE_GROUP.includes(field)));
}

/** The readings of a visit; undefined for one that is not sound, or that takes something unsound from its group. */
function readVisit(raw: unknown, group: Group, problems: Problem[]): readonly (Admitted | undefined)[] {
  const clocks: Clock[] = [];
  const readings = listAt(raw, 'visit').map((reading, i) => {
    const { admitted, problems: own } = admitReading(reading, group);
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

interface Accumulator {
  readonly name: string;
  /** Name of the specification that it follows: its own, or its group's. */
  readonly specification: string;
  readonly specs: Bands | undefined;
  readonly carried: Carried;
}

function judge(
  group: Group,
  { name, specification, specs, carried }: Accumulator,
  readings: readonly (Admitted | undefined)[],
  path: string,
  { findings }: Reader,
): Judged | undefined {
  const first = readings.at(0);
  const last = readings.at(-1);
  if (specs === undefined || group.name === undefined || first === undefined || last === undefined) return undefined;
  const checked = (admitted: Admitted, index: number, spec: Specification): [Admitted, Check] | undefined => {
    const problems: Problem[] = [];
    const checked = collect(problems, '', () => check(spec, admitted.reading));
    add(findings, `${path}.visit[${index}]`, problems, name);
    return checked === undefined ? undefined : [admitted, checked];
  };
  const asFound = checked(first, 0, specs.inService);
  const worked = asFound !== undefined && (stateAfter(asFound[1]) === 'work needed' || readings.some(isWork));
  const left = worked ? specs.afterCharging : specs.inService;
  const asLeft = last.role === 'as left' ? checked(last, readings.length - 1, left) : undefined;
  if (asFound === undefined || (last.role === 'as left' && asLeft === undefined)) return undefined;
  if (asLeft !== undefined && gasMoved(asFound[1], asLeft[1])) {
    const most = minutesBetween(first.at, last.at);
    const { minutesAtRest } = last.reading;
    if (minutesAtRest !== 'not known' && minutesAtRest > most) {
      add(findings, path, [restTooLong(readings.length - 1, minutesAtRest, most)], name);
      return undefined;
    }
  }
  const readAfter = readings.length > 1;
  const whose = { group: group.name, name, specification, ...carried };
  return { whose, asFound, asLeft, state: stateOf(asFound, asLeft, readAfter) };
}

function isWork(reading: Admitted | undefined): boolean {
  return reading !== undefined && WORKED.includes(reading.role);
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

function reportOf({ title, input }: About, reader: Reader, words: Words | undefined): Omit<RoundReport, 'digest'> {
  const { findings, instruments, groups, judged, notJudged } = reader;
  const counts: RoundReport['counts'] = {};
  const codes = new Set<CautionCode>();
  const accumulators = judged.map(({ whose, asFound, asLeft, state }) => {
    const { outcome } = asFound[1].verdict;
    counts[outcome] = (counts[outcome] ?? 0) + 1;
    for (const [, { cautions }] of asLeft === undefined ? [asFound] : [asFound, asLeft]) {
      for (const { code } of cautions) codes.add(code);
    }
    const left = asLeft === undefined ? ('not read' as const) : judgedJson(...asLeft);
    return { ...whose, state, asFound: judgedJson(...asFound), asLeft: left };
  });
  const own = [...codes].filter((code) => !USUAL.includes(code));
  const { id, source } = nitrogen; // the shape of a round knows no other gas
  return {
    version: 1,
    libraryVersion: LIBRARY_VERSION,
    ...(typeof title === 'string' ? { title } : {}),
    complete: findings.found === 0 ? 'complete' : 'partial',
    problemsFound: findings.found,
    problems: findings.listed,
    cautions: [...own, ...USUAL].map((code) => cautionIn(words, code)),
    models: [{ id, ...source }],
    counts,
    gasToAdd: {
      asFound: gasToAdd(judged.map(({ asFound }) => asFound[1])),
      stillToAdd: gasToAdd(judged.map(({ asFound, asLeft }) => (asLeft ?? asFound)[1])),
    },
    instruments,
    groups,
    accumulators,
    notJudged,
    ...(input === undefined ? {} : { input: input.json }),
  };
}

function listAt(raw: unknown, key: string): readonly unknown[] {
  const list = valueAt(raw, [key]);
  return Array.isArray(list) ? list : [];
}

/** The name of an element as its problems quote it; what compares names uses the whole of it. */
function shownName(name: string): string;
function shownName(name: string | undefined): string | undefined;
function shownName(name: string | undefined): string | undefined {
  return name === undefined ? undefined : wellFormed(cut(name));
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

function tooManyValues(): Problem {
  return {
    code: 'too large',
    path: '',
    found: `more than ${MOST_VALUES} values`,
    wanted: `at most ${MOST_VALUES} values in a document`,
    remedy: 'split the document; it was not read',
  };
}

function notData(): Problem {
  return {
    code: 'not JSON',
    path: '',
    found: 'what JSON cannot carry',
    wanted: 'JSON data, such as JSON.parse gives',
    remedy: 'give plain data: the report could not carry this, and nobody could judge it again',
  };
}

function whose(
  path: string,
  group: string | undefined,
  name: string | undefined,
  { unitServed }: Carried,
): RoundReport['notJudged'][number] {
  return {
    path,
    ...(group === undefined ? {} : { group: shownName(group) }),
    ...(name === undefined ? {} : { name: shownName(name) }),
    ...(unitServed === undefined ? {} : { unitServed }),
  };
}

function under(outer: string, inner: string): string {
  return inner === '' ? outer : `${outer}.${inner}`;
}
