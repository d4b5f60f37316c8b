// From sound shapes to quantities, specifications and readings: by the same doors that a caller of the core uses.
// One part that is wrong does not hide what is wrong with another: each is admitted by itself, and what the core then
// says about a part that is already reported is left out.
import { collect, problem, type Problem } from '../basis/fault.js';
import { statedNowhere } from '../basis/problem.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { checkTemperature } from '../gas/door.js';
import type { Kind, QuantityOf } from '../quantity/kind.js';
import { checkStep } from '../quantity/step.js';
import { needAmbient } from '../target/conditions.js';
import { needReading, type Reading } from '../reading/reading.js';
import { specification, type Specification, type SpecificationGiven } from '../target/specification.js';
import type { Stated } from '../target/table.js';
import { admitUsed, withGroup, type Instruments, type Used } from './instruments.js';
import { isBroken, isUnder, shapeProblems, valueAt, type Part } from './problems.js';
import { divisionAt, quantityAt, soundAt, withoutUndefined } from './quantities.js';
import type { JudgedJson } from './report-shape.js';
import { ReadingShape, SpecificationShape, type ReadingJson } from './shape.js';
import { statedAt, type Tables } from './stated.js';

/** A specification from JSON; undefined, with its problems, if it or a table that it uses is not sound. */
export function admitSpecification(
  raw: unknown,
  tables: Tables,
): { spec: Specification | undefined; problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(SpecificationShape, raw) };
  const at = <K extends Kind>(path: string, kind: K): QuantityOf<K> | undefined => quantityAt(part, path, kind);
  const ambient = at('ambient', 'absolute pressure');
  // What is stated by a table that is not sound: that is said once, where the table stands.
  const unsound: string[] = [];
  const stated = (path: string): Stated | undefined => {
    const found = statedAt(part, path, tables, ambient);
    if (found !== 'not sound') return found;
    unsound.push(path);
    return undefined;
  };
  const allowed = (path: string): unknown => {
    if (valueAt(raw, [path]) === undefined) return undefined;
    // A limit that is there, but not sound, stays one: without any, the core would ask for a tolerance.
    const limit = (field: string): object =>
      valueAt(raw, [path, field]) === undefined ? {} : { [field]: stated(`${path}.${field}`) };
    const tolerance = withoutUndefined({
      plusMinus: at(`${path}.plusMinus`, 'pressure difference'),
      below: at(`${path}.below`, 'pressure difference'),
      above: at(`${path}.above`, 'pressure difference'),
      plusMinusPercentOfGauge: soundAt(part, `${path}.plusMinusPercentOfGauge`),
      applies: soundAt(part, `${path}.applies`),
    });
    return { ...tolerance, ...limit('minimum'), ...limit('maximum') };
  };
  const given = withoutUndefined({
    gas: nitrogen, // the shape knows no other
    precharge: stated('precharge'),
    nominal: stated('nominal'),
    ambient,
    tolerance: allowed('tolerance'),
    toleranceAfterCharging: allowed('toleranceAfterCharging'),
    separator: soundAt(part, 'separator'),
    gasVolume: at('gasVolume', 'volume'),
    allowable: at('allowable', 'gauge pressure'),
    settling: {
      allowance: at('settling.allowance', 'pressure difference'),
      minutes: soundAt(part, 'settling.minutes'),
    },
  });
  // Parts may be missing here: the core then reports them, and only what is not reported yet is kept.
  const spec = collectNew(part.problems, () => specification(given as unknown as SpecificationGiven), unsound);
  const isSound = part.problems.length + unsound.length === 0;
  return { spec: isSound ? spec : undefined, problems: part.problems };
}

/** What a group states once for the readings that do not state their own. */
export interface GroupStated {
  readonly temperature: Reading['temperature'] | Unstated;
  readonly ambient: Reading['ambient'] | Unstated;
  readonly gaugeStep: Reading['gaugeStep'] | Unstated;
}
/** `not sound`: the group states it, wrongly; that is reported once, with the group. */
type Unstated = 'not stated' | 'not sound';

/** Where each of the three was stated. */
export type StatedAt = Readonly<Record<keyof GroupStated, 'for the reading' | 'for the group'>>;

/** What a group states, with the problems of it added to the part. */
export function admitStated(part: Part): GroupStated {
  const or = <T>(field: keyof GroupStated, value: T | undefined): T | Unstated =>
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

/** What stands around a reading. */
export interface Around {
  readonly raw: unknown;
  readonly stated: GroupStated;
  readonly used: Used;
  /** The instruments of the round. */
  readonly instruments: Instruments;
}

/** A reading from JSON; undefined if it, or what it takes from its group, is not sound. */
export function admitReading(
  raw: unknown,
  { stated: group, raw: groupRaw, used: groupUsed, instruments }: Around,
): { readonly admitted: Admitted | undefined; readonly problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(ReadingShape, raw) };
  const fromGroup: (keyof GroupStated)[] = [];
  const own = <F extends keyof GroupStated>(field: F, value: Reading[F] | undefined): Reading[F] | undefined => {
    if (valueAt(raw, [field]) !== undefined || isBroken(part.problems, field)) return value;
    fromGroup.push(field);
    const stated = group[field] as Reading[F] | Unstated;
    if (stated === 'not stated')
      part.problems.push(
        problem(statedNowhere, field, 'nothing, neither for the reading nor for its group', { field }),
      );
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
  const used = withGroup(admitUsed(part, instruments), groupUsed);
  if (part.problems.length + unsound.length + used.unsound.length > 0)
    return { admitted: undefined, problems: part.problems };
  const where = (field: keyof GroupStated): StatedAt[keyof GroupStated] =>
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
    instruments: Object.keys(used.names).length === 0 ? undefined : used.names,
  }) as unknown as Admitted['given'];
  return { admitted: { reading, role: json.role, at: json.at, stated, given }, problems: [] };
}

/** Runs an admission and keeps those of its problems that are not about a part already reported. */
function collectNew<T>(problems: Problem[], admit: () => T, reported: readonly string[] = []): T | undefined {
  const found: Problem[] = [];
  const value = collect(found, '', admit);
  const known = [...problems];
  const isNew = (path: string): boolean =>
    !isBroken(known, path) && !reported.some((other) => isUnder(path, other) || isUnder(other, path));
  // The core calls the size of a gauge step `step`; in a document it is a `value`.
  const renamed = found.map((problem) =>
    problem.path === 'gaugeStep.step' ? { ...problem, path: 'gaugeStep.value' } : problem,
  );
  problems.push(...renamed.filter((problem) => isNew(problem.path)));
  return value;
}
