import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { notACount, notANumber, notOneOf, notPositive, outsideBounds, unknownWord } from '../basis/problem.js';
import {
  need,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { isObject } from '../target/table.js';
import { MOST_PA } from '../target/tolerance.js';

// What is checked of an instrument, whichever it is. Each check throws under a path that its caller goes on from.

export type Difference = PressureDifference | TemperatureDifference;

/** Runs every check of a part, and throws all its problems together. */
export function all(...checks: (readonly [path: string, admit: () => void])[]): void {
  const problems: Problem[] = [];
  for (const [path, admit] of checks) collect(problems, path, admit);
  failIfAny(problems);
}

export function needPositive(kind: Difference['kind'], value: Difference): void {
  need<string>(kind, value, '');
  const size = has(value, 'pascals') ? value.pascals : value.kelvins;
  if (!(size > 0)) fail(notPositive, '', has(value, 'pascals') ? `${inBar(size)} difference` : `${size} K`);
  needOfInstrument(value);
}

// No instrument on board has, or errs by, as much.
const MOST_K = 1000;

/** Refuses a difference that no instrument has. */
export function needOfInstrument(value: Difference): void {
  const [size, most] = has(value, 'pascals') ? [value.pascals, MOST_PA] : [value.kelvins, MOST_K];
  if (Math.abs(size) <= most) return;
  const isPressure = has(value, 'pascals');
  const found = isPressure ? `${inBar(size)} difference` : `${size} K`;
  fail(outsideBounds, '', found, { bounds: isPressure ? `at most ${inBar(MOST_PA)}` : `at most ${MOST_K} K` });
}

/** Refuses what is not the end of a scale. */
export function needScale(fullScale: GaugePressure): void {
  need('gauge pressure', fullScale, '');
  const { pascals } = fullScale;
  if (!(pascals > 0)) fail(notPositive, '', `${inBar(pascals)} gauge`);
  if (pascals > MOST_PA) fail(outsideBounds, '', `${inBar(pascals)} gauge`, { bounds: `at most ${inBar(MOST_PA)}` });
}

/** Refuses a temperature that no gauge, and nothing about an accumulator, has. */
export function needTemperature(value: Temperature): void {
  need('temperature', value, '');
  if (value.kelvins > 2 * MOST_K)
    fail(outsideBounds, '', `${value.kelvins} K`, {
      bounds: `at most ${2 * MOST_K} K`,
    });
}

/** Refuses what is no temperature difference of zero or more. */
export function needSpan(size: TemperatureDifference): void {
  need('temperature difference', size, '');
  if (size.kelvins < 0) fail(outsideBounds, '', `${size.kelvins} K`, { bounds: 'zero or more' });
  needOfInstrument(size);
}

export function needBetween(value: number, least: number, most: number, unit: string): void {
  if (!Number.isFinite(value)) fail(notANumber, '', quote(value));
  if (value >= least && value <= most) return;
  const of = unit === '' ? '' : ` ${unit}`;
  fail(outsideBounds, '', `${value}${of}`, { bounds: `${least} to ${most}${of}` });
}

export function needCount(value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  fail(notACount, '', quote(value), { least: String(least), most: String(most) });
}

export function needWord(found: unknown, words: readonly string[]): void {
  if (typeof found === 'string' && words.includes(found)) return;
  fail(unknownWord, '', quote(found), { words: words.map((word) => `'${word}'`).join(' or ') });
}

export function oneOf(given: object, keys: readonly string[]): string {
  const found = isObject(given) ? keys.filter((key) => has(given, key)) : [];
  const [one] = found;
  if (one !== undefined && found.length === 1) return one;
  return fail(notOneOf, '', found.join(' with ') || 'none of them', { words: keys.join(', ') });
}
