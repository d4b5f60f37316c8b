import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { minutesOutOfOrder, negative, notANumber, outsideBounds, tooFewTimed, unknownWord } from '../basis/problem.js';
import { taken, type Fields } from '../basis/taken.js';
import { need, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { checkStep, needDivision, type Division } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import type { Timed } from './fit.js';

/** A gas pressure read while the gas settles, nothing being added, let out or drained. */
export interface TimedReading {
  /** Since the gas or the oil stopped; zero or more, each later than the one before. */
  readonly minutes: number;
  readonly pressure: GaugePressure;
}

/** What was done before the readings. */
export type DoneBefore = 'filling' | 'bleeding' | 'draining';

/** What is stated of readings that were taken while the gas settled. */
export interface TimedGiven {
  /** Smallest division to which the gauge is read: a reading stands for half a step to either side. */
  readonly gaugeStep: Division<PressureUnit>;
  readonly after: DoneBefore;
}

/** Readings for the arithmetic; pressures turned so that settling is a fall. */
export interface CheckedTimed extends Timed {
  /** Of the gauge. */
  readonly gaugeStep_Pa: number;
  /** The same, and a little for the last place of the conversion. */
  readonly step: number;
  /** 1, or −1 for pressures that rise while they settle. */
  readonly sign: 1 | -1;
  /** Largest fall and largest rise from any reading to any later one, turned as the pressures. */
  readonly fall: number;
  readonly rise: number;
}

const MOST_MINUTES = 1e6;
const LEAST_APART = 1e-6;
/** Every three readings are looked at. */
export const MOST_TIMED = 60;

const READINGS: Fields[string] = [
  { minutes: 'as it is', pressure: 'as it is' },
  { most: MOST_TIMED, what: 'readings' },
];
const AFTER: readonly DoneBefore[] = ['filling', 'bleeding', 'draining'];
/** A reading on a mark counts as on it, whatever the last place of its conversion. */
const SLACK = 1e-9;

/** Timed readings, each part read once, and all that is wrong with them reported. */
export function timedOf(readings: readonly TimedReading[], given: TimedGiven, least: number): CheckedTimed {
  if (!Array.isArray(readings)) wrongKind('list of readings', readings, 'readings');
  const own: readonly TimedReading[] = taken({ readings }, { readings: READINGS }).readings;
  if (own.length < least) fail(tooFewTimed, 'readings', `${own.length} readings`, { least: String(least) });
  const { gaugeStep, after } = given;
  const problems: Problem[] = [];
  own.forEach((reading, i) => {
    collect(problems, `readings[${i}]`, () => needTimed(reading, own[i - 1]));
  });
  let step = Number.NaN;
  collect(problems, 'given.gaugeStep', () => {
    const division = needDivision(gaugeStep, '');
    checkStep(division.step);
    step = pressureDifference(division.step, division.unit).pascals;
  });
  if (!AFTER.includes(after)) {
    collect(problems, 'given.after', () =>
      fail(unknownWord, '', quote(after), { words: AFTER.map((word) => `'${word}'`).join(' or ') }),
    );
  }
  failIfAny(problems);
  const sign = after === 'filling' ? 1 : -1;
  const t = own.map(({ minutes }) => minutes);
  const p = own.map(({ pressure }) => sign * pressure.pascals);
  return { t, p, gaugeStep_Pa: step, step: step * (1 + SLACK), sign, ...furthest(p) };
}

function needTimed(reading: TimedReading, before: TimedReading | undefined): void {
  if (typeof reading !== 'object' || reading === null) wrongKind('reading: minutes and pressure', reading, '');
  const { minutes, pressure } = reading;
  const problems: Problem[] = [];
  collect(problems, 'minutes', () => {
    if (typeof minutes !== 'number' || !Number.isFinite(minutes)) fail(notANumber, '', quote(minutes));
    if (minutes < 0) fail(negative, '', `${minutes} min`);
    if (minutes > MOST_MINUTES) fail(outsideBounds, '', `${minutes} min`, { bounds: `at most ${MOST_MINUTES} min` });
    // What is wrong with the reading before it is said there.
    if (
      typeof before === 'object' &&
      before !== null &&
      typeof before.minutes === 'number' &&
      minutes - before.minutes < LEAST_APART
    )
      fail(minutesOutOfOrder, '', `${minutes} min`, { before: String(before.minutes) });
  });
  collect(problems, 'pressure', () => need('gauge pressure', pressure, ''));
  failIfAny(problems);
}

function furthest(p: readonly number[]): { readonly fall: number; readonly rise: number } {
  let [fall, rise] = [0, 0];
  let [highest, lowest] = [-Infinity, Infinity];
  for (const one of p) {
    highest = Math.max(highest, one);
    lowest = Math.min(lowest, one);
    fall = Math.max(fall, highest - one);
    rise = Math.max(rise, one - lowest);
  }
  return { fall, rise };
}

/** Whether a change is one that the gauge can show. */
export function isSeen(change: number, { step }: CheckedTimed): boolean {
  return change >= step * (1 - 3 * SLACK);
}
