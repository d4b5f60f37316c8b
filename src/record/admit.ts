// From sound shapes to quantities, specifications and readings: by the same doors that a caller of the core uses.
// One part that is wrong does not hide what is wrong with another: each is admitted by itself, and what the core then
// says about a part that is already reported is left out.
import { collect, type Problem } from '../basis/fault.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { checkTemperature } from '../gas/door.js';
import { toSI } from '../quantity/decimal.js';
import type { Kind, QuantityOf } from '../quantity/kind.js';
import { checkStep, FORM, type Division } from '../quantity/step.js';
import { textToSI } from '../quantity/text.js';
import { PRESSURE, scaleOf, type PressureUnit } from '../quantity/unit.js';
import { needAmbient } from '../target/conditions.js';
import { needReading, type Reading } from '../reading/reading.js';
import { specification, type Specification, type SpecificationGiven } from '../target/specification.js';
import { isBroken, shapeProblems, valueAt } from './problems.js';
import type { JudgedJson } from './report-shape.js';
import { ReadingShape, SpecificationShape, type ReadingJson } from './shape.js';

/** A value with its unit, as JSON carries it. */
interface Measured {
  readonly value: number | string;
  readonly unit: string;
}

/** A part of a document: its raw value, and the problems found in it so far, with paths relative to it. */
export interface Part {
  readonly raw: unknown;
  readonly problems: Problem[];
}

/** A quantity at a path of a part; undefined if it is not there or is not sound. */
export function quantityAt<K extends Kind>(part: Part, path: string, kind: K): QuantityOf<K> | undefined {
  const json = soundAt(part, path);
  return json === undefined ? undefined : collect(part.problems, path, () => quantity(kind, json as Measured));
}

/** A gauge step at a path of a part. */
export function divisionAt(part: Part, path: string): Division<PressureUnit> | undefined {
  const json = soundAt(part, path);
  return json === undefined ? undefined : collect(part.problems, path, () => division(json as Measured));
}

function soundAt({ raw, problems }: Part, path: string): unknown {
  return isBroken(problems, path) ? undefined : valueAt(raw, path.split('.'));
}

function quantity<K extends Kind>(kind: K, { value, unit }: Measured): QuantityOf<K> {
  const { units, of } = FORM[kind];
  const scale = scaleOf<string>(units, unit, 'unit');
  const si = typeof value === 'number' ? toSI(value, scale) : textToSI(value, scale, 'value');
  return of(si, 'value', Number(value), unit);
}

function division({ value, unit }: Measured): Division<PressureUnit> {
  if (typeof value === 'string') textToSI(value, scaleOf<string>(PRESSURE, unit, 'unit'), 'value');
  return { step: Number(value), unit: unit as PressureUnit };
}

/** A specification from JSON; undefined, with its problems, if it is not sound. */
export function admitSpecification(raw: unknown): { spec: Specification | undefined; problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(SpecificationShape, raw) };
  const at = <K extends Kind>(path: string, kind: K): QuantityOf<K> | undefined => quantityAt(part, path, kind);
  const tolerance = withoutUndefined({
    plusMinus: at('tolerance.plusMinus', 'pressure difference'),
    below: at('tolerance.below', 'pressure difference'),
    above: at('tolerance.above', 'pressure difference'),
    plusMinusPercentOfGauge: soundAt(part, 'tolerance.plusMinusPercentOfGauge'),
    applies: soundAt(part, 'tolerance.applies'),
  });
  const given = {
    gas: nitrogen, // the shape knows no other
    precharge: {
      pressure: at('precharge.pressure', 'gauge pressure'),
      temperature: at('precharge.temperature', 'temperature'),
    },
    ambient: at('ambient', 'absolute pressure'),
    tolerance,
    gasVolume: at('gasVolume', 'volume'),
    allowable: at('allowable', 'gauge pressure'),
    settling: {
      allowance: at('settling.allowance', 'pressure difference'),
      minutes: soundAt(part, 'settling.minutes'),
    },
  };
  // Parts may be undefined here: the core then reports them, and only what is not reported yet is kept.
  const spec = collectNew(part.problems, () => specification(given as unknown as SpecificationGiven));
  return { spec: part.problems.length === 0 ? spec : undefined, problems: part.problems };
}

/** What a group states once for the readings that do not state their own. */
export interface Stated {
  readonly temperature: Reading['temperature'] | Unstated;
  readonly ambient: Reading['ambient'] | Unstated;
  readonly gaugeStep: Reading['gaugeStep'] | Unstated;
}
/** `not sound`: the group states it, wrongly; that is reported once, with the group. */
type Unstated = 'not stated' | 'not sound';

/** Where each of the three was stated. */
export type StatedAt = Readonly<Record<keyof Stated, 'for the reading' | 'for the group'>>;

/** What a group states, with the problems of it added to the part. */
export function admitStated(part: Part): Stated {
  const or = <T>(field: keyof Stated, value: T | undefined): T | Unstated =>
    value ?? (valueAt(part.raw, [field]) === undefined ? 'not stated' : 'not sound');
  return {
    temperature: or('temperature', temperatureAt(part)),
    ambient: or('ambient', ambientAt(part)),
    gaugeStep: or('gaugeStep', gaugeStepAt(part)),
  };
}

function temperatureAt(part: Part): Reading['temperature'] | undefined {
  const temperature = quantityAt(part, 'temperature', 'temperature');
  return sound(part, 'temperature', temperature, ({ kelvins }) => checkTemperature(nitrogen, kelvins, ''));
}

function ambientAt(part: Part): Reading['ambient'] | undefined {
  const ambient = quantityAt(part, 'ambient', 'absolute pressure');
  return sound(part, 'ambient', ambient, (pressure) => needAmbient(pressure, ''));
}

function gaugeStepAt(part: Part): Reading['gaugeStep'] | undefined {
  return sound(part, 'gaugeStep.value', divisionAt(part, 'gaugeStep'), ({ step }) => checkStep(step, ''));
}

/** A value that passes a further check, whose problem goes under `path`. */
function sound<T>(part: Part, path: string, value: T | undefined, check: (value: T) => void): T | undefined {
  if (value === undefined) return undefined;
  const before = part.problems.length;
  collect(part.problems, path, () => check(value));
  return part.problems.length === before ? value : undefined;
}

/** A sound reading, beside the words in which it was given. */
export interface Admitted {
  readonly reading: Reading;
  readonly role: ReadingJson['role'];
  readonly at: string;
  readonly stated: StatedAt;
  /** The reading as given, with what it takes from its group filled in. */
  readonly given: Omit<JudgedJson['reading'], 'stated'>;
}

/** A reading from JSON; undefined if it, or what it takes from its group, is not sound. */
export function admitReading(
  raw: unknown,
  group: Stated,
  groupRaw: unknown,
): { readonly admitted: Admitted | undefined; readonly problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(ReadingShape, raw) };
  const fromGroup: (keyof Stated)[] = [];
  const own = <F extends keyof Stated>(field: F, value: Reading[F] | undefined): Reading[F] | undefined => {
    if (valueAt(raw, [field]) !== undefined || isBroken(part.problems, field)) return value;
    fromGroup.push(field);
    const stated = group[field] as Reading[F] | Unstated;
    if (stated === 'not stated') part.problems.push(statedNowhere(field));
    return stated === 'not stated' || stated === 'not sound' ? undefined : stated;
  };
  const word = (field: string): unknown => soundAt(part, field);
  const reading = withoutUndefined({
    pressure: quantityAt(part, 'pressure', 'gauge pressure'),
    temperature: own('temperature', temperatureAt(part)),
    ambient: own('ambient', ambientAt(part)),
    gaugeStep: own('gaugeStep', gaugeStepAt(part)),
    oilSide: word('oilSide'),
    systemPressure: quantityAt(part, 'systemPressure', 'gauge pressure'),
    gasInside: word('gasInside'),
    minutesAtRest: word('minutesAtRest'),
    emptyGasSide: word('emptyGasSide'),
  }) as unknown as Reading;
  const unsound = fromGroup.filter((field) => group[field] === 'not sound');
  collectNew(part.problems, () => needReading(reading), unsound);
  if (part.problems.length > 0 || unsound.length > 0) return { admitted: undefined, problems: part.problems };
  const where = (field: keyof Stated): StatedAt[keyof Stated] =>
    fromGroup.includes(field) ? 'for the group' : 'for the reading';
  const stated = { temperature: where('temperature'), ambient: where('ambient'), gaugeStep: where('gaugeStep') };
  // Both are sound here, shape and meaning. Copies: the report is not the input's.
  const json = raw as ReadingJson;
  const fromGroupRaw = groupRaw as Partial<JudgedJson['reading']>;
  const given = withoutUndefined({
    pressure: { ...json.pressure },
    temperature: { ...(json.temperature ?? fromGroupRaw.temperature) },
    ambient: { ...(json.ambient ?? fromGroupRaw.ambient) },
    gaugeStep: { ...(json.gaugeStep ?? fromGroupRaw.gaugeStep) },
    oilSide: json.oilSide,
    systemPressure: json.systemPressure === undefined ? undefined : { ...json.systemPressure },
    gasInside: json.gasInside,
    minutesAtRest: json.minutesAtRest,
    emptyGasSide: json.emptyGasSide,
  }) as unknown as Admitted['given'];
  return { admitted: { reading, role: json.role, at: json.at, stated, given }, problems: [] };
}

function statedNowhere(field: string): Problem {
  return {
    code: 'stated nowhere',
    path: field,
    found: 'nothing, neither for the reading nor for its group',
    wanted: `the ${field} of the reading`,
    remedy: 'state it for the reading, or once for the group',
  };
}

/** Runs an admission and keeps those of its problems that are not about a part already reported. */
function collectNew<T>(problems: Problem[], admit: () => T, reported: readonly string[] = []): T | undefined {
  const found: Problem[] = [];
  const value = collect(found, '', admit);
  const known = [...problems];
  const isNew = (path: string): boolean =>
    !isBroken(known, path) && !reported.some((field) => path === field || path.startsWith(`${field}.`));
  // The core calls the size of a gauge step `step`; in a document it is a `value`.
  const renamed = found.map((problem) =>
    problem.path === 'gaugeStep.step' ? { ...problem, path: 'gaugeStep.value' } : problem,
  );
  problems.push(...renamed.filter((problem) => isNew(problem.path)));
  return value;
}

function withoutUndefined(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const kept: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(fields)) if (value !== undefined) kept[field] = value;
  return kept;
}
