import { fail, quote } from '../basis/fault.js';
import { missing, notANumber, notAText, notPositive, outsideBounds } from '../basis/problem.js';
import { isWellFormed } from '../basis/well-formed.js';
import { need, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { isObject } from '../target/table.js';

// What is checked of the numbers of this room. Each check throws under a path that its caller goes on from.

export function needGiven(given: unknown, what: string): void {
  if (!isObject(given)) wrongKind(what, given, '');
}

/** Refuses a gauge pressure of zero or less. */
export function needPressure(pressure: GaugePressure): void {
  need('gauge pressure', pressure, '');
  if (!(pressure.pascals > 0)) fail(notPositive, '', `${inBar(pressure.pascals)} gauge`);
}

/** Refuses a number that is not above zero, or outside of what it can mean. */
export function needNumber(value: number, unit: string, least: number, most: number): void {
  if (!Number.isFinite(value)) fail(notANumber, '', quote(value));
  if (!(value > 0)) fail(notPositive, '', `${value} ${unit}`);
  if (value < least || value > most)
    fail(outsideBounds, '', `${value} ${unit}`, { bounds: `${least} ${unit} to ${most} ${unit}` });
}

/** Refuses what is no fraction from zero to one. */
export function needFraction(value: number): void {
  if (!Number.isFinite(value)) fail(notANumber, '', quote(value));
  if (!(value >= 0 && value <= 1)) fail(outsideBounds, '', String(value), { bounds: '0 to 1; 21 % is 0.21' });
}

const LONGEST_TEXT = 2000;

/** Refuses what says nothing. */
export function needSaid(text: unknown, what: string): void {
  if (text === undefined || (typeof text === 'string' && text.trim() === ''))
    fail(missing, '', 'nothing', { wanted: what });
  if (typeof text !== 'string' || text.length > LONGEST_TEXT || !isWellFormed(text)) fail(notAText, '', quote(text));
}
