// From a reading in a document, and what its group states for it, to a reading of the core with what its uncertainty
// rests on.
import { problem, under, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { statedNowhere } from '../basis/problem.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { checkTemperature } from '../gas/door.js';
import { gaugeOf, type PressureDifference, type Temperature } from '../quantity/kind.js';
import { needCount, needTemperature } from '../reading/checks.js';
import { MOST_READINGS } from '../reading/instruments.js';
import { needGaugeStep, needReading, type Reading } from '../reading/reading.js';
import { needAmbient } from '../target/conditions.js';
import { collectNew } from './admit.js';
import { admitUsed, namesOf, withGroup, type Instruments, type Used } from './instruments.js';
import type { RoundReading } from './parts.js';
import { isBroken, shapeProblems, valueAt, type Part } from './problems.js';
import { divisionAt, quantityAt, soundAt, withoutUndefined } from './quantities.js';
import type { JudgedJson } from './report-shape.js';
import { ReadingShape } from './shape.js';
import { needSize } from '../target/tolerance.js';

/** What a group states once for the readings that do not state their own. */
export interface GroupStated {
  readonly temperature: Reading['temperature'] | Unstated;
  readonly ambient: Reading['ambient'] | Unstated;
  readonly gaugeStep: Reading['gaugeStep'] | Unstated;
  readonly gaugeTemperature: Hour['gaugeTemperature'] | Unstated;
  readonly ambientLimit: Hour['ambientLimit'] | Unstated;
  readonly readings: Hour['readings'] | Unstated;
}

/** What the uncertainty of a reading rests on, of its hour. */
export interface Hour {
  readonly gaugeTemperature: Temperature | 'not known';
  readonly ambientLimit: PressureDifference;
  readonly readings: number;
}

/** `not sound`: the group states it, wrongly; that is reported once, with the group. */
type Unstated = 'not stated' | 'not sound';

/** Without these there is no reading. */
const NEEDED = ['temperature', 'ambient', 'gaugeStep'] as const;
/** Without these there is no uncertainty. */
const OF_THE_HOUR = ['gaugeTemperature', 'ambientLimit', 'readings'] as const;

/** What a reading states by itself. */
const EVIDENCE = ['oilSide', 'systemPressure', 'gasInside', 'minutesAtRest', 'emptyGasSide', 'possibleSlip'] as const;

/** Where each of them was stated. */
export type StatedAt = JudgedJson['reading']['stated'];

/** What a group states, with the problems of it added to the part. */
export function admitStated(part: Part): GroupStated {
  const or = <T>(field: keyof GroupStated, value: T | undefined): T | Unstated =>
    value ?? (valueAt(part.raw, [field]) === undefined ? 'not stated' : 'not sound');
  return {
    temperature: or('temperature', temperatureAt(part)),
    ambient: or('ambient', ambientAt(part)),
    gaugeStep: or('gaugeStep', gaugeStepAt(part)),
    gaugeTemperature: or('gaugeTemperature', gaugeTemperatureAt(part)),
    ambientLimit: or('ambientLimit', ambientLimitAt(part)),
    readings: or('readings', readingsAt(part)),
  };
}

function gaugeTemperatureAt(part: Part): Hour['gaugeTemperature'] | undefined {
  if (soundAt(part, 'gaugeTemperature') === 'not known') return 'not known';
  const temperature = quantityAt(part, 'gaugeTemperature', 'temperature');
  return sound(part, 'gaugeTemperature', temperature, needTemperature);
}

function ambientLimitAt(part: Part): Hour['ambientLimit'] | undefined {
  return sound(part, 'ambientLimit', quantityAt(part, 'ambientLimit', 'pressure difference'), needSize);
}

function readingsAt(part: Part): number | undefined {
  const count = soundAt(part, 'readings') as number | undefined;
  return sound(part, 'readings', count, (one) => needCount(one, 1, MOST_READINGS));
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
  return sound(part, 'gaugeStep', divisionAt(part, 'gaugeStep'), (step) => needGaugeStep(step, gaugeOf(0)));
}

/** A value that passes a further check, whose problem goes under `path`. */
function sound<T>(part: Part, path: string, value: T | undefined, check: (value: T) => void): T | undefined {
  if (value === undefined) return undefined;
  const before = part.problems.length;
  collectNew(part.problems, () => under(path, () => check(value)), []);
  return part.problems.length === before ? value : undefined;
}

/** A sound reading, beside the words in which it was given. */
export interface Admitted {
  readonly reading: Reading;
  readonly role: RoundReading['role'];
  readonly at: string;
  readonly stated: StatedAt;
  readonly hour: Partial<Hour>;
  readonly used: Used;
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
  const own = <F extends keyof GroupStated>(
    field: F,
    value: Exclude<GroupStated[F], Unstated> | undefined,
  ): Exclude<GroupStated[F], Unstated> | undefined => {
    if (valueAt(raw, [field]) !== undefined || isBroken(part.problems, field)) return value;
    const stated = group[field] as Exclude<GroupStated[F], Unstated> | Unstated;
    const isNeeded = NEEDED.some((one) => one === field);
    if (isNeeded || stated !== 'not stated') fromGroup.push(field);
    if (isNeeded && stated === 'not stated')
      part.problems.push(
        problem(statedNowhere, field, 'nothing, neither for the reading nor for its group', { field }),
      );
    return stated === 'not stated' || stated === 'not sound' ? undefined : stated;
  };
  const word = (field: string): unknown => soundAt(part, field);
  // Each field has its place, so that what all objects inherit under its name stands for none.
  const reading = {
    pressure: quantityAt(part, 'pressure', 'gauge pressure'),
    temperature: own('temperature', temperatureAt(part)),
    ambient: own('ambient', ambientAt(part)),
    gaugeStep: own('gaugeStep', gaugeStepAt(part)),
    oilSide: word('oilSide'),
    systemPressure: quantityAt(part, 'systemPressure', 'gauge pressure'),
    gasInside: word('gasInside'),
    minutesAtRest: word('minutesAtRest'),
    emptyGasSide: word('emptyGasSide'),
    possibleSlip: word('possibleSlip'),
    correctionIncluded: undefined,
    fullScale: undefined,
  } as unknown as Reading;
  const hour = withoutUndefined({
    gaugeTemperature: own('gaugeTemperature', gaugeTemperatureAt(part)),
    ambientLimit: own('ambientLimit', ambientLimitAt(part)),
    readings: own('readings', readingsAt(part)),
  }) as Partial<Hour>;
  const unsound = fromGroup.filter((field) => group[field] === 'not sound');
  const found = [...part.problems];
  collectNew(found, () => needReading(reading), unsound);
  // The step of a group is sound by itself: what does not suit it is the pressure.
  const isOfGroup = ({ path }: Problem): boolean => path === 'gaugeStep.value' && fromGroup.includes('gaugeStep');
  const fresh = found.slice(part.problems.length);
  part.problems.push(...fresh.map((one) => (isOfGroup(one) ? { ...one, path: 'pressure' } : one)));
  const used = withGroup(admitUsed(part, instruments), groupUsed);
  if (part.problems.length + unsound.length + used.unsound.length > 0)
    return { admitted: undefined, problems: part.problems };
  const where = (field: keyof GroupStated): 'for the reading' | 'for the group' | undefined =>
    fromGroup.includes(field)
      ? 'for the group'
      : NEEDED.some((one) => one === field) || has(hour, field)
        ? 'for the reading'
        : undefined;
  const stated = withoutUndefined(
    Object.fromEntries([...NEEDED, ...OF_THE_HOUR].map((field) => [field, where(field)])),
  ) as unknown as StatedAt;
  // Both are sound here, shape and meaning.
  const json = raw as RoundReading;
  const ofRaw = (fields: readonly string[], from: (field: string) => unknown): object =>
    Object.fromEntries(fields.map((field) => [field, from(field)]));
  const ownRaw = (field: string): unknown => valueAt(raw, [field]);
  const given = withoutUndefined({
    pressure: json.pressure,
    ...ofRaw([...NEEDED, ...OF_THE_HOUR], (field) => ownRaw(field) ?? valueAt(groupRaw, [field])),
    ...ofRaw(EVIDENCE, ownRaw),
    instruments: namesOf(used),
  }) as unknown as Admitted['given'];
  return {
    admitted: { reading: { ...reading, ...scaleOf(used) }, role: json.role, at: json.at, stated, hour, used, given },
    problems: [],
  };
}

/** The end of the scale of the gauge that a reading names, if it is stated. */
function scaleOf({ by }: Used): Pick<Reading, 'fullScale'> {
  const characterised = by.pressure?.characterised;
  return characterised !== undefined && has(characterised, 'gauge') ? { fullScale: characterised.gauge.fullScale } : {};
}
