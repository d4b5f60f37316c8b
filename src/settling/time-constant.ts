import {
  gaugeOf,
  pressureDifferenceOf,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
} from '../quantity/kind.js';
import { wrongDirection } from './evidence.js';
import { nearest, ratesWithin, settledBetween } from './fit.js';
import { timedOf, type CheckedTimed, type TimedGiven, type TimedReading } from './timed.js';
import type { SettlingOutcome } from './words.js';

/** A time constant that the readings determine. */
export interface TimeConstantFound {
  readonly outcome: 'levelling out';
  readonly timeConstantMinutes: number;
  /** All time constants with which a curve passes every reading within half a step. */
  readonly betweenMinutes: readonly [least: number, most: number];
  /** What the gauge settles at. */
  readonly settled: GaugePressure;
  /** All that such curves settle at. */
  readonly settledBetween: { readonly lowest: GaugePressure; readonly highest: GaugePressure };
  /** From the last reading to the settled pressure; negative for a fall still to come. */
  readonly stillToCome: PressureDifference;
  /** Of the reading farthest from the curve. */
  readonly farthest: PressureDifference;
}

/** No time constant: what the readings say instead. */
export interface NoTimeConstant {
  readonly outcome: Exclude<SettlingOutcome, 'levelling out'> | 'settles before it is read' | 'no single time constant';
}

/**
 * The time constant of a vessel, and what its gauge settles at, from three or more readings while it settles. It is the
 * exponential whose farthest reading is nearest; beside it stand all time constants, and all settled pressures, of curves
 * that pass every reading within half a step of the gauge.
 *
 * The pressure is taken to follow the temperature in a straight line, as it does at constant density to 0.02 bar over 20 K
 * about 150 bar. The shell must have kept its temperature, and nothing may have leaked: a slow loss under a settling gas
 * bends the curve less and makes the time constant too long.
 *
 * @param readings in order of time, 3 to 60 of them; best over two or three time constants
 * @returns the outcome that stands against it where the readings determine none: they do not change, go the wrong way, do
 * not level out, or have levelled out before the second one
 * @throws {@link Fault} with every problem found: `wrong kind`, `absolute for gauge`, `unchecked copy`, `too few readings`,
 * `too long`, `not a number`, `negative`, `minutes out of order`, `outside bounds`, `not a step`, `unknown unit`, `unknown word`
 * @example
 * ```ts
 * const readings = [[0, 154], [2, 152.4], [4, 151.4], [8, 150.5], [15, 150.1]].map(([minutes = 0, bar = 0]) => ({ minutes, pressure: gauge(bar, 'bar') }));
 * const found = fitTimeConstant(readings, { gaugeStep: { step: 0.1, unit: 'bar' }, after: 'filling' });
 * if (found.outcome === 'levelling out') found.timeConstantMinutes.toFixed(1); // => '3.8'
 * if (found.outcome === 'levelling out') write(found.settled, { step: 0.1, unit: 'bar' }); // => '150.0 bar gauge'
 * ```
 */
export function fitTimeConstant(
  readings: readonly TimedReading[],
  given: TimedGiven,
): TimeConstantFound | NoTimeConstant {
  if (typeof given !== 'object' || given === null)
    wrongKind('statement of the readings: gaugeStep and after', given, 'given');
  const { gaugeStep, after } = given;
  const timed = timedOf(readings, { gaugeStep, after }, 3);
  const direction = wrongDirection(timed);
  if (direction !== undefined) return { outcome: direction };
  const rates = ratesWithin(timed, timed.step);
  if (rates === 'no rate') return { outcome: 'no single time constant' };
  if (rates === 'accelerates' || rates.low === 0) return { outcome: 'not levelling out' };
  if (rates.high === Infinity) return { outcome: 'settles before it is read' };
  const { rate, settled, farthest } = nearest(timed, timed.step, rates);
  const [least, most] = settledBetween(timed, timed.step, rates);
  return {
    outcome: 'levelling out',
    timeConstantMinutes: 1 / rate,
    betweenMinutes: [1 / rates.high, 1 / rates.low],
    settled: gaugeOf(timed.sign * settled),
    settledBetween: {
      lowest: gaugeOf(timed.sign > 0 ? least : -most),
      highest: gaugeOf(timed.sign > 0 ? most : -least),
    },
    stillToCome: toCome(timed, settled),
    farthest: pressureDifferenceOf(farthest),
  };
}

function toCome({ p, sign }: CheckedTimed, settled: number): PressureDifference {
  return pressureDifferenceOf(sign * (settled - (p.at(-1) ?? 0)));
}
