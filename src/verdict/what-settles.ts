import type { ContributionCode } from '../basis/words.js';
import {
  pressureDifferenceOf,
  temperatureDifferenceOf,
  type PressureDifference,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { ACCURACY_CLASSES, OF_SPAN, type AccuracyClass } from '../reading/gauge.js';
import { MOST_READINGS } from '../reading/instruments.js';
import { standardOf, sumOfParts } from './budget.js';
import type { Part } from './contributions.js';
import { cumulative } from './distribution.js';
import { outcomeOf, type Rule } from './rule.js';
import { sumsOf, type Side, type Sides } from './sides.js';

/** What would settle an inconclusive reading that came out the same; each by itself, all else as it is. */
export interface Settling {
  /** The contribution that weighs most at the limit in doubt. */
  readonly largest: ContributionCode;
  /** Largest standard uncertainty that would do, with every contribution lessened alike; none on the limit itself. */
  readonly standard: PressureDifference | 'nothing';
  /** Largest limit of error of the gauge that would do. */
  readonly gaugeLimit: PressureDifference | 'no gauge';
  /** Coarsest accuracy class after EN 837-1 of a gauge of the same scale that would do. */
  readonly accuracyClass: AccuracyClass | 'no class';
  /** Largest limit of error of the thermometer that would do. */
  readonly thermometerLimit: TemperatureDifference | 'no thermometer';
  /** Largest difference of shell and gas that would do: more time to settle, shade, no draught. */
  readonly shellToGas: TemperatureDifference | 'no settling';
  /** Fewest readings whose mean would do, if each is taken anew. */
  readonly readings: number | 'no repeats';
}

// A sum of symmetric errors with one peak is the more peaked, the narrower any of them is (Z. W. Birnbaum, Ann. Math.
// Statist. 19 (1948) 76, from memory): what decides at one size decides at every smaller one, and halving finds the largest.

/** What would settle a reading on which a rule decides nothing. */
export function settlingOf(sides: Sides, rule: Rule, readings: number): Settling {
  const decidedWith = (changed: (part: Part) => Part, count: number): boolean => {
    const lower = { ...sides.lower, parts: sides.lower.parts.map(changed) };
    const upper = { ...sides.upper, parts: sides.upper.parts.map(changed) };
    const narrower = { ...sides, lower, upper };
    return outcomeOf(narrower, sumsOf(narrower, count), rule) !== 'inconclusive';
  };
  /** The largest size of a change, up to a most, that decides; undefined if not even none at all does. */
  const largest = (changed: (size: number) => (part: Part) => Part, most: number): number | undefined => {
    if (!decidedWith(changed(0), readings)) return undefined;
    let [low, high] = [0, most];
    for (let i = 0; i < HALVINGS; i += 1) {
      const size = 0.5 * (low + high);
      if (decidedWith(changed(size), readings)) low = size;
      else high = size;
    }
    return low > 0 ? low : undefined;
  };
  const limited =
    (of: ContributionCode) =>
    (size: number) =>
    (part: Part): Part =>
      part.of === of ? { ...part, distribution: 'rectangle', size } : part;
  const lessened =
    (by: number) =>
    (part: Part): Part => ({ ...part, size: part.size * by });
  const same = (part: Part): Part => part;
  const { span_Pa } = sides.lower;
  const side = sideInDoubt(sides, readings, rule);
  const all = largest(lessened, 1);
  const limitOf = (of: ContributionCode): number | undefined => largest(limited(of), presentLimit(side, of));
  const [gauge, thermometer, shell] = [limitOf('gauge'), limitOf('thermometer'), limitOf('shell to gas')];
  return {
    largest: largestAt(side, readings),
    standard: all === undefined ? 'nothing' : pressureDifferenceOf(all * sumOfParts(side.parts, readings).standard),
    gaugeLimit: gauge === undefined ? 'no gauge' : pressureDifferenceOf(gauge),
    accuracyClass:
      [...ACCURACY_CLASSES].reverse().find((one) => OF_SPAN.of(one, span_Pa) <= (gauge ?? 0)) ?? 'no class',
    thermometerLimit: thermometer === undefined ? 'no thermometer' : temperatureDifferenceOf(thermometer),
    shellToGas: shell === undefined ? 'no settling' : temperatureDifferenceOf(shell),
    readings: decidedWith(same, MOST_READINGS) ? fewest((count) => decidedWith(same, count), readings) : 'no repeats',
  };
}

/** To one part in four thousand, on the side that decides. */
const HALVINGS = 12;

/** The size of a contribution as a limit: beyond it nothing decides, because it does not as it is. */
function presentLimit({ parts }: Side, of: ContributionCode): number {
  const part = parts.find((one) => one.of === of);
  if (part === undefined) return 0;
  return part.distribution === 'rectangle' ? part.size : 4 * part.size;
}

/** The fewest readings that decide, more than the present ones, which do not. */
function fewest(decides: (count: number) => boolean, present: number): number {
  let [low, high] = [present, MOST_READINGS];
  while (high - low > 1) {
    const count = Math.floor(0.5 * (low + high));
    if (decides(count)) high = count;
    else low = count;
  }
  return high;
}

/** The limit whose risk is least kept. */
function sideInDoubt(sides: Sides, readings: number, { risk }: Rule): Side {
  const { lower, upper } = sides;
  const sums = sumsOf(sides, readings);
  const below = cumulative(sums.lower, -Math.abs(lower.inside)) / risk.below;
  const above = cumulative(sums.upper, -Math.abs(upper.inside)) / risk.above;
  return below >= above ? lower : upper;
}

function largestAt({ parts }: Side, readings: number): ContributionCode {
  return parts.reduce((most, part) => (standardOf(part, readings) > standardOf(most, readings) ? part : most)).of;
}
