import { fail } from '../basis/fault.js';
import { optional } from '../basis/has.js';
import { negative } from '../basis/problem.js';
import { need, pressureDifferenceOf, wrongKind, type PressureDifference } from '../quantity/kind.js';
import { ratesWithin } from './fit.js';
import { isSeen, timedOf, type CheckedTimed, type TimedGiven, type TimedReading } from './timed.js';
import { needMinutes } from './vessel.js';
import type { SettlingOutcome } from './words.js';

/** What is stated of readings that are to show whether the gas has settled. */
export interface EvidenceGiven extends TimedGiven {
  /** Of this vessel, where it is known: a fall that bends less than it says is no cooling. */
  readonly timeConstantMinutes?: number;
  /** Most that cooling can take off, as {@link filling} has it at its adiabatic bound: stop less settled pressure. */
  readonly mostByCooling?: PressureDifference;
}

/** What timed readings say about whether the gas has settled. */
export interface SettlingEvidence {
  readonly outcome: SettlingOutcome;
  /** From the first reading to the last; negative for a fall. */
  readonly change: PressureDifference;
  /** A change smaller than this in these minutes would not have been seen: the step of the gauge. */
  readonly notSeenBelow: PressureDifference;
  readonly overMinutes: number;
}

/**
 * What two or more readings say while the gas settles. A rise after draining or bleeding is the gas warming; a fall after
 * filling is the gas cooling, or gas being lost, and the two are told apart by whether the fall levels out. A change of less
 * than the step of the gauge says nothing.
 *
 * A fall levels out if no straight line passes the readings within half a step, and does not if no exponential does that is
 * as quick as the time constant that was stated, or, where none was, as the time from the first reading to the last.
 * Readings that allow both say so: read on.
 *
 * @param readings in order of time; 2 to 60 of them, the shell at one temperature throughout
 * @throws {@link Fault} with every problem found: `wrong kind`, `absolute for gauge`, `unchecked copy`, `too few readings`,
 * `too long`, `not a number`, `negative`, `minutes out of order`, `outside bounds`, `not a step`, `unknown unit`, `unknown word`,
 * `not positive`
 * @example
 * ```ts
 * const readings = [[0, 154], [2, 152.4], [4, 151.4], [8, 150.5], [15, 150.1]].map(([minutes = 0, bar = 0]) => ({ minutes, pressure: gauge(bar, 'bar') }));
 * settlingEvidence(readings, { gaugeStep: { step: 0.2, unit: 'bar' }, after: 'filling' }).outcome; // => 'levelling out'
 * ```
 */
export function settlingEvidence(readings: readonly TimedReading[], given: EvidenceGiven): SettlingEvidence {
  if (typeof given !== 'object' || given === null)
    wrongKind('statement of the readings: gaugeStep and after', given, 'given');
  const { gaugeStep, after } = given;
  const timeConstantMinutes = optional(given, 'timeConstantMinutes');
  const mostByCooling = optional(given, 'mostByCooling');
  const timed = timedOf(readings, { gaugeStep, after }, 2);
  if (timeConstantMinutes !== undefined) needMinutes(timeConstantMinutes, 'given.timeConstantMinutes');
  if (mostByCooling !== undefined) {
    need('pressure difference', mostByCooling, 'given.mostByCooling');
    if (mostByCooling.pascals < 0) fail(negative, 'given.mostByCooling', `${mostByCooling.pascals} Pa`);
  }
  const [first = 0, last = 0] = [timed.p.at(0), timed.p.at(-1)];
  return {
    outcome: outcomeOf(timed, timeConstantMinutes, mostByCooling?.pascals),
    change: pressureDifferenceOf(timed.sign * (last - first)),
    notSeenBelow: pressureDifferenceOf(timed.gaugeStep_Pa),
    overMinutes: (timed.t.at(-1) ?? 0) - (timed.t.at(0) ?? 0),
  };
}

function outcomeOf(timed: CheckedTimed, timeConstant: number | undefined, most: number | undefined): SettlingOutcome {
  const direction = wrongDirection(timed);
  if (direction !== undefined) return direction;
  if (timed.sign < 0) return 'warming';
  if (most !== undefined && timed.fall > most + timed.step) return 'falls further than by cooling';
  const rates = ratesWithin(timed, timed.step);
  if (rates === 'accelerates') return 'not levelling out';
  const watched = (timed.t.at(-1) ?? 0) - (timed.t.at(0) ?? 0);
  if (rates !== 'no rate' && rates.high < 1 / (timeConstant ?? watched)) return 'not levelling out';
  // No single rate: quick at first and slow later, which is a fall that bends.
  return rates === 'no rate' || rates.low > 0 ? 'levelling out' : 'cooling or losing gas';
}

/** What readings say that do not go the way in which such gas settles; undefined if they do, by more than a step. */
export function wrongDirection(timed: CheckedTimed): Exclude<SettlingOutcome, 'levelling out'> | undefined {
  const [falls, rises] = [isSeen(timed.fall, timed), isSeen(timed.rise, timed)];
  if (!falls && !rises) return 'no change seen';
  if (falls && rises) return 'rises and falls';
  if (falls) return undefined;
  return timed.sign > 0 ? 'rises after filling' : 'falls after letting out';
}
