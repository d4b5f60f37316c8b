// Reads a round, part by part: what is sound goes to be judged, what is not is listed with its problems and everything
// that depends on it.
import { collect, problem, quote, type Problem } from '../basis/fault.js';
import { tooMuch, unknownSpecification } from '../basis/problem.js';
import { needBetween } from '../reading/checks.js';
import { afterCharging } from '../target/specification.js';
import { checkedRule } from '../verdict/rule.js';
import { judge, type Bands, type Judged } from './accumulator.js';
import { admitSpecification } from './admit.js';
import { admitReading, admitStated, type Admitted, type Around } from './admit-reading.js';
import { ACCUMULATOR_FIELDS, FOR_THE_GROUP, GROUP_FIELDS } from './carried.js';
import { admitSupply, type AdmittedSupply } from './admit-supply.js';
import type { Deciding } from './certainty.js';
import { admitInstrument, admitUsed, type Instrument, type Instruments } from './instruments.js';
import { readData } from './json-data.js';
import { duplicate, nameOf, repeatedNames, shownName } from './named.js';
import { add, isBroken, listAt, shapeProblems, valueAt, type Findings, type Part } from './problems.js';
import { soundAt } from './quantities.js';
import type { AccumulatorJson, RoundReport } from './report-shape.js';
import { admitSafety, type AdmittedSafety } from './admit-safety.js';
import { AccumulatorShell, GroupShell, RoundShell, type RuleJson } from './shape.js';
import { admitTable, type Table, type Tables } from './stated.js';
import { visitProblems, type Clock } from './visit.js';

/**
 * Deepest nesting of a document that is read, as text or as data; a round needs nine levels.
 *
 * @example
 * ```ts
 * DEEPEST; // => 32
 * ```
 */
export const DEEPEST = 32;

/**
 * Most accumulators that one document may hold.
 *
 * @example
 * ```ts
 * MOST_ACCUMULATORS; // => 250000
 * ```
 */
export const MOST_ACCUMULATORS = 250_000;

/** A document as the report takes it. */
export interface Document {
  readonly json: unknown;
  /** False where it is not all that was given: of a key given twice, a parser keeps the last. */
  readonly isWhole: boolean;
}

/** What was read of a document. */
export interface Read extends Reader {
  readonly title: unknown;
  /** The document itself, where a report can carry it. */
  readonly input: { readonly json: unknown } | undefined;
}

/** Reads and judges a document; undefined for one that could not be read at all, whose problems are found already. */
export function readDocument(document: Document | undefined, findings: Findings): Read {
  const reader: Reader = {
    findings,
    instruments: [],
    groups: [],
    judged: [],
    notJudged: [],
    room: MOST_ACCUMULATORS,
    deciding: undefined,
    supply: undefined,
    safety: undefined,
  };
  if (document === undefined) return { ...reader, title: undefined, input: undefined };
  const read = readInto(reader, document);
  return { ...reader, ...read };
}

function readInto(reader: Reader, { json, isWhole }: Document): Pick<Read, 'title' | 'input'> {
  const given = readData(json, DEEPEST);
  if (given.read === 'nothing') {
    add(reader.findings, '$', [given.problem]);
    return { title: undefined, input: undefined };
  }
  const title = readRound(given.data, reader);
  if (given.read === 'JSON data') return { title, input: isWhole ? { json: given.data } : undefined };
  // What has its place in a round is JSON data, so that something has been said already; but for what hides itself.
  if (reader.findings.found === 0) add(reader.findings, '$', [given.problem]);
  return { title, input: undefined };
}

/** Reads a round into the reader; returns its title. */
function readRound(json: unknown, reader: Reader): unknown {
  const problems = shapeProblems(RoundShell, json);
  add(reader.findings, '$', problems);
  if (isBroken(problems, 'version') || reader.findings.tainted.has('$')) return undefined;
  const tables = isBroken(problems, 'tables') ? 'not sound' : readTables(listAt(json, 'tables'), reader.findings);
  const specifications = isBroken(problems, 'specifications')
    ? 'not sound'
    : readSpecifications(listAt(json, 'specifications'), tables, reader.findings);
  const instruments = isBroken(problems, 'instruments')
    ? 'not sound'
    : readInstruments(listAt(json, 'instruments'), reader);
  const deciding = admitDeciding(json, problems, reader.findings);
  if (deciding !== 'not sound') reader.deciding = deciding;
  reader.supply = admitSupply(json, reader.findings);
  reader.safety = admitSafety(json, reader.findings);
  readGroups(listAt(json, 'groups'), specifications, instruments, deciding, reader);
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
  /** Undefined where the round has no sound rule. */
  deciding: Deciding | undefined;
  /** Undefined where the round states none, or none that is sound. */
  supply: AdmittedSupply | undefined;
  safety: AdmittedSafety | undefined;
}

/**
 * By name; undefined where the name is given but the specification is not sound. `not sound`: so is the whole list, and
 * nothing can be said of any name.
 */
type Specifications = ReadonlyMap<string, Bands | undefined> | 'not sound';

function specificationOf(specifications: Specifications, name: string): Bands | 'not listed' | undefined {
  if (specifications === 'not sound') return undefined;
  return specifications.has(name) ? specifications.get(name) : 'not listed';
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
    const { spec, manual, problems } = admitSpecification(raw, tables);
    const name = nameOf(raw);
    const path = `$.specifications[${i}]`;
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    if (repeated.has(name)) add(findings, path, [duplicate('specification', name)], shownName(name));
    const sound = spec !== undefined && !repeated.has(name) && !findings.tainted.has(path);
    specifications.set(name, sound ? { inService: spec, afterCharging: afterCharging(spec), manual } : undefined);
  });
  return specifications;
}

function readInstruments(list: readonly unknown[], { findings, instruments: sound }: Reader): Instruments {
  const instruments = new Map<string, Instrument | undefined>();
  const repeated = repeatedNames(list);
  list.forEach((raw, i) => {
    const { instrument, problems } = admitInstrument(raw);
    const name = nameOf(raw);
    const path = `$.instruments[${i}]`;
    if (name !== undefined && repeated.has(name)) problems.push(duplicate('instrument', name));
    add(findings, path, problems, shownName(name));
    if (name === undefined) return;
    const own = problems.length === 0 && !findings.tainted.has(path) ? instrument : undefined;
    if (own !== undefined) sound.push(own.json);
    instruments.set(name, own);
  });
  return instruments;
}

/** How a round decides; undefined without a rule. `not sound`: by its rule nothing can be judged. */
function admitDeciding(
  raw: unknown,
  shape: readonly Problem[],
  findings: Findings,
): Deciding | 'not sound' | undefined {
  const part: Part = { raw, problems: [...shape] };
  const rule = soundAt(part, 'rule') as RuleJson | undefined;
  const modelErrorCorrelation = soundAt(part, 'modelErrorCorrelation') as number | undefined;
  const problems: Problem[] = [];
  if (rule !== undefined) collect(problems, '', () => checkedRule(rule));
  if (modelErrorCorrelation !== undefined)
    collect(problems, 'modelErrorCorrelation', () => needBetween(modelErrorCorrelation, -1, 1, ''));
  add(findings, '$', problems);
  const isSound = problems.length === 0 && !isBroken(shape, 'modelErrorCorrelation');
  if (valueAt(raw, ['rule']) === undefined) return undefined;
  return isSound && rule !== undefined ? { rule, modelErrorCorrelation } : 'not sound';
}

function readGroups(
  list: readonly unknown[],
  specifications: Specifications,
  instruments: Instruments,
  deciding: Deciding | 'not sound' | undefined,
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
    const said = valueAt(raw, ['specification']);
    const specification = typeof said === 'string' && !isBroken(part.problems, 'specification') ? said : undefined;
    const listed = specification === undefined ? undefined : specificationOf(specifications, specification);
    if (specification !== undefined && listed === 'not listed') part.problems.push(noSpecification(specification));
    add(reader.findings, path, part.problems, shownName(name));
    const sound = !isBroken(part.problems, 'specification') && !reader.findings.tainted.has(path);
    const spec = sound && listed !== 'not listed' ? listed : undefined;
    const carried = carriedOf(GROUP_FIELDS, part);
    const isNamed = name !== undefined && !isBroken(part.problems, 'name');
    if (isNamed && sound && specification !== undefined) reader.groups.push({ name, specification, ...carried });
    const forEach = forTheGroup(carried);
    const around = { raw, path, stated, used, instruments, forEach, name: isNamed ? name : undefined };
    const group = { ...around, specification, spec, specifications, deciding };
    readAccumulators(group, listAt(raw, 'accumulators'), reader);
  });
}

interface Group extends Around {
  readonly path: string;
  readonly name: string | undefined;
  /** What it says for each of its accumulators that does not say it itself. */
  readonly forEach: Carried;
  /** Name of its specification; undefined where that is no text. */
  readonly specification: string | undefined;
  readonly spec: Bands | undefined;
  /** All of the document, for an accumulator that follows another one. */
  readonly specifications: Specifications;
  readonly deciding: Deciding | 'not sound' | undefined;
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
    const own = ownSpecification === undefined ? group.spec : specificationOf(group.specifications, ownSpecification);
    if (ownSpecification !== undefined && own === 'not listed') problems.push(noSpecification(ownSpecification));
    const specs = own === 'not listed' ? undefined : own;
    const carried = { ...group.forEach, ...carriedOf(ACCUMULATOR_FIELDS, { raw, problems }) };
    // Stated wrongly, it is not taken from the group instead.
    const drainedAt = isBroken(problems, 'drainedAt') ? undefined : carried.drainedAt;
    const readings = isBroken(problems, 'visit') ? [] : readVisit(raw, group, drainedAt, problems);
    add(reader.findings, path, problems, shownName(name));
    const sound = problems.length === 0 && !reader.findings.tainted.has(path);
    const one = { name, specification: ownSpecification ?? group.specification, specs, carried };
    const judged = sound ? judgedIn(group, one, readings, path, reader.findings) : undefined;
    if (judged === undefined) reader.notJudged.push(whose(path, group.name, name, carried));
    else reader.judged.push(judged);
  }
}

/** Judges an accumulator, if all that it depends on is sound. */
function judgedIn(
  group: Group,
  { name, specification, specs, carried }: Own,
  readings: readonly (Admitted | undefined)[],
  path: string,
  findings: Findings,
): Judged | undefined {
  const sound = readings.filter((admitted) => admitted !== undefined);
  if (specs === undefined || specification === undefined) return undefined;
  if (group.name === undefined || name === undefined || group.deciding === 'not sound') return undefined;
  if (!isSome(sound) || sound.length < readings.length) return undefined;
  return judge({ group: group.name, name, specification, ...carried }, specs, sound, group.deciding, path, findings);
}

interface Own {
  readonly name: string | undefined;
  /** Name of the specification that it follows: its own, or its group's. */
  readonly specification: string | undefined;
  readonly specs: Bands | undefined;
  readonly carried: Carried;
}

function isSome<T>(list: readonly T[]): list is readonly [T, ...T[]] {
  return list.length > 0;
}

type Carried = Omit<AccumulatorJson, 'group' | 'name' | 'specification' | 'state' | 'asFound' | 'asLeft'>;

/** What is carried of a part as it was given: those of some fields that are there and sound. */
function carriedOf(fields: Readonly<Record<string, unknown>>, { raw, problems }: Part): Carried {
  const carried: Record<string, unknown> = {};
  for (const field of Object.keys(fields)) {
    const value = valueAt(raw, [field]);
    if (value !== undefined && !isBroken(problems, field)) carried[field] = value;
  }
  return carried;
}

/** Of what a group says, that which it says for its accumulators. */
function forTheGroup(group: Carried): Carried {
  return Object.fromEntries(Object.entries(group).filter(([field]) => FOR_THE_GROUP.includes(field)));
}

/** The readings of a visit; undefined for one that is not sound, or that takes something unsound from its group. */
function readVisit(
  raw: unknown,
  group: Group,
  drainedAt: string | undefined,
  problems: Problem[],
): readonly (Admitted | undefined)[] {
  const clocks: Clock[] = [];
  const readings = listAt(raw, 'visit').map((reading, i) => {
    const { admitted, problems: own } = admitReading(reading, group);
    const soundAt = (field: string): unknown => (isBroken(own, field) ? undefined : valueAt(reading, [field]));
    const rest = soundAt('minutesAtRest');
    clocks.push({
      role: soundAt('role') as string | undefined,
      at: soundAt('at') as string | undefined,
      minutesAtRest: typeof rest === 'number' ? rest : undefined,
      saysDrained: soundAt('oilSide') === 'drained, zero verified',
    });
    for (const problem of own) problems.push({ ...problem, path: under(`visit[${i}]`, problem.path) });
    return admitted;
  });
  problems.push(...visitProblems(clocks, drainedAt));
  return readings;
}

function noSpecification(name: string): Problem {
  return problem(unknownSpecification, 'specification', quote(name));
}

function tooMany(left: number): Problem {
  const most = String(MOST_ACCUMULATORS);
  return problem(tooMuch, '', `${left} more accumulators`, { most, what: 'accumulators' });
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
