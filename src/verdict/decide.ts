import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { notANumber, outsideBounds, unknownWord } from '../basis/problem.js';
import { taken } from '../basis/taken.js';
import type { ContributionCode, Undecided } from '../basis/words.js';
import {
  pressureDifferenceOf,
  temperatureDifferenceOf,
  temperatureOf,
  wrongKind,
  type PressureDifference,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { ACCURACY_CLASSES, notCovered, OF_SPAN, type AccuracyClass } from '../reading/gauge.js';
import { MOST_READINGS, type Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { asCorrected } from './as-corrected.js';
import { bandAbout } from './band.js';
import { checkedMeasured, standardOf, sumOfParts } from './budget.js';
import { compareWith, correctedReading, type Comparison, type Part } from './contributions.js';
import { cumulative, type Sum } from './distribution.js';
import { judge, type Outcome } from './judge.js';
import { subjectsOf } from './subject.js';

// Decisions after JCGM 106:2012. The limits are those of the band; what is compared with them is the reading, and what is
// not certain is everything that the comparison rests on.

/**
 * Which side carries the doubt (JCGM 106, clause 8). Simple acceptance: neither, the reading as it stands decides. Guarded
 * acceptance: it is within only if the risk of its being outside is small. Guarded rejection: it is outside only if the risk
 * of its being inside is small. Guarded both ways: either only if its risk is small. Between the two it is inconclusive.
 */
export type Acceptance = 'simple acceptance' | 'guarded acceptance' | 'guarded rejection' | 'guarded both ways';

/** A rule of decision, which is the caller's to choose. */
export interface Rule {
  readonly acceptance: Acceptance;
  /**
   * The largest risk of a wrong decision about the lower and about the upper limit: a probability from 1e-6 to below 0.5
   * each. They are apart, because too little gas tears a diaphragm and too much stores no oil.
   */
  readonly risk: { readonly below: number; readonly above: number };
}

/** Probabilities that the true pre-charge lies below the lower limit, inside the band, above the upper limit. */
export interface Probabilities {
  readonly below: number;
  /** What the others leave. They leave too little where limits of their own cross within the errors; never below zero. */
  readonly within: number;
  readonly above: number;
}

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

/** A reading on which there is a decision, or of which it is known why there is none. */
export interface Decided {
  readonly outcome: 'within' | 'undercharged' | 'overcharged' | 'inconclusive';
  readonly rule: Rule;
  /** Whether the reading, as it stands, lies inside the band. */
  readonly inBand: boolean;
  readonly probability: Probabilities;
  /**
   * On which side of the target the truth lies: low only if the risk of its being high is at most that of the upper limit,
   * high only if the risk of its being low is at most that of the lower limit.
   */
  readonly direction: 'low' | 'high' | 'not certain';
  /**
   * Whether adjusting to the target with the same instruments is worth it: only if one of the risks is not kept as it is,
   * and the probability of lying outside falls by more than the smaller of the two, below which the rule has nothing matter.
   * The same instruments err by as much afterwards. That the gas settles, and the step to which one stops, are not counted.
   */
  readonly adjusting: {
    readonly worth: boolean;
    readonly outsideNow: number;
    readonly outsideAfter: number;
  };
  /** Only if inconclusive. */
  readonly settling?: Settling;
}

/** No decision: the reading is no evidence, or lies where the accuracy of its gauge does not hold. */
export interface NotDecided {
  readonly outcome: 'no decision';
  readonly because: Undecided;
}

/** What a reading, with its uncertainty, says against the band. */
export type Decision = Decided | NotDecided;

/** How well the errors at one limit are known, and how far from it the reading lies. */
export interface Side {
  /** Of the reading from the limit, positive inside the band; Pa. */
  readonly inside: number;
  /** Of the target from the limit, likewise. */
  readonly targetInside: number;
  readonly parts: readonly Part[];
  readonly span_Pa: number;
}

export interface Sides {
  /** Of the reading from the target, Pa. */
  readonly offTarget: number;
  readonly targetParts: readonly Part[];
  readonly lower: Side;
  readonly upper: Side;
}

const NO_EVIDENCE: readonly Outcome[] = ['gas not known', 'not comparable', 'gas side empty'];
const LEAST_RISK = 1e-6;

/**
 * Decides on a reading with its uncertainty, by a rule that the caller chooses: whether it is in the band, whether the
 * direction is certain, and whether adjusting is worth it, which are three questions. Where the uncertainty leaves the rule
 * without an answer the outcome is `inconclusive`, with what would settle it.
 *
 * The probabilities are those of JCGM 106 without knowledge beyond the reading: of the limit at the corrected temperature,
 * with everything that the limit itself rests on. There is no decision without evidence, nor on an empty gas side. A gauge
 * that is too coarse for the band is not turned away here: its step is one of the contributions.
 *
 * @throws {@link Fault} as {@link uncertainty}; for the rule: `unknown word`, `not a number`, `outside bounds`
 * @example
 * ```ts
 * const rule = { acceptance: 'guarded acceptance', risk: { below: 0.02, above: 0.05 } } as const;
 * const close = { ...reading, pressure: gauge(153, 'bar') };
 * const decision = decide(spec, close, instruments, rule);
 * decision.outcome; // => 'inconclusive'
 * if ('settling' in decision) decision.settling?.largest; // => 'gauge'
 * decide(spec, reading, instruments, rule).outcome; // => 'undercharged'
 * ```
 */
export function decide(
  spec: Specification,
  givenReading: Reading,
  givenInstruments: Instruments,
  givenRule: Rule,
): Decision {
  const { reading, instruments } = checkedMeasured(spec, givenReading, givenInstruments);
  const rule = checkedRule(givenRule);
  if (NO_EVIDENCE.includes(judge(spec, asCorrected(spec, reading, instruments)).outcome))
    return { outcome: 'no decision', because: 'no evidence' };
  const because = notCovered(instruments.gauge, reading);
  if (because !== undefined) return { outcome: 'no decision', because };

  const sides = sidesOf(spec, reading, instruments);
  const { lower, upper } = sides;
  const { readings } = instruments;
  const sums = sumsOf(sides, readings);
  const below = cumulative(sums.lower, -lower.inside);
  const above = cumulative(sums.upper, -upper.inside);
  const outsideAfter = cumulative(sums.lower, -lower.targetInside) + cumulative(sums.upper, -upper.targetInside);
  const outsideNow = below + above;
  const better = outsideNow - outsideAfter;
  const outcome = outcomeOf(sides, sums, rule);
  const kept = below <= rule.risk.below && above <= rule.risk.above;
  return {
    outcome,
    rule,
    inBand: lower.inside >= 0 && upper.inside >= 0,
    // An error that is beyond both limits, where lines of their own cross within the errors, is counted on both sides: the
    // two may then add up to more than one, as they may in the last place.
    probability: { below, within: Math.max(0, 1 - below - above), above },
    direction: directionOf(sides, readings, rule),
    adjusting: { worth: !kept && better > Math.min(rule.risk.below, rule.risk.above), outsideNow, outsideAfter },
    ...(outcome === 'inconclusive' ? { settling: settlingOf(sides, rule, readings) } : {}),
  };
}

/** Where a reading, corrected, and its target lie against both limits, for checked input. */
export function sidesOf(spec: Specification, reading: Reading, instruments: Instruments): Sides {
  const subjects = subjectsOf(spec, instruments);
  const { T_K, p_g_Pa } = correctedReading(reading, instruments);
  const [target, low, high] = [subjects.target, subjects.lower, subjects.upper].map((subject) =>
    compareWith(spec, reading, instruments, subject),
  ) as [Comparison, Comparison, Comparison];
  const at = { temperature: temperatureOf(T_K), ambient: reading.ambient };
  const { lower, upper } = bandAbout(spec, at, target.p_g_Pa, reading);
  const span_Pa = instruments.gauge.fullScale.pascals;
  // Where the target shifts with the vessel, the limits shift with theirs.
  const side = (by: Comparison, above: (p_Pa: number) => number): Side => ({
    inside: above(p_g_Pa),
    targetInside: above(target.p_g_Pa + target.shift_Pa),
    parts: by.parts,
    span_Pa,
  });
  return {
    offTarget: p_g_Pa - target.p_g_Pa - target.shift_Pa,
    targetParts: target.parts,
    lower: side(low, (p_Pa) => p_Pa - lower.pascals - low.shift_Pa),
    upper: side(high, (p_Pa) => upper.pascals + high.shift_Pa - p_Pa),
  };
}

interface Sums {
  readonly lower: Sum;
  readonly upper: Sum;
}

/** The distributions of the errors at both limits. */
export function sumsOf({ lower, upper }: Sides, readings: number): Sums {
  return { lower: sumOfParts(lower.parts, readings), upper: sumOfParts(upper.parts, readings) };
}

/** Which decisions a rule guards. */
export function guards({ acceptance }: Rule): { readonly accepting: boolean; readonly rejecting: boolean } {
  return {
    accepting: acceptance === 'guarded acceptance' || acceptance === 'guarded both ways',
    rejecting: acceptance === 'guarded rejection' || acceptance === 'guarded both ways',
  };
}

function outcomeOf({ lower, upper }: Sides, sums: Sums, rule: Rule): Decided['outcome'] {
  const { accepting, rejecting } = guards(rule);
  const { risk } = rule;
  if (lower.inside < 0)
    return rejecting && cumulative(sums.lower, lower.inside) > risk.below ? 'inconclusive' : 'undercharged';
  if (upper.inside < 0)
    return rejecting && cumulative(sums.upper, upper.inside) > risk.above ? 'inconclusive' : 'overcharged';
  if (!accepting) return 'within';
  const kept =
    cumulative(sums.lower, -lower.inside) <= risk.below && cumulative(sums.upper, -upper.inside) <= risk.above;
  return kept ? 'within' : 'inconclusive';
}

function directionOf({ offTarget, targetParts }: Sides, readings: number, { risk }: Rule): Decided['direction'] {
  const sum = sumOfParts(targetParts, readings);
  if (cumulative(sum, offTarget) <= risk.above) return 'low';
  return cumulative(sum, -offTarget) <= risk.below ? 'high' : 'not certain';
}

// A sum of symmetric errors with one peak is the more peaked, the narrower any of them is (Z. W. Birnbaum, Ann. Math.
// Statist. 19 (1948) 76, from memory): what decides at one size decides at every smaller one, and halving finds the largest.

function settlingOf(sides: Sides, rule: Rule, readings: number): Settling {
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

const ACCEPTANCES: readonly Acceptance[] = [
  'simple acceptance',
  'guarded acceptance',
  'guarded rejection',
  'guarded both ways',
];

/** Refuses what is no rule of decision. */
/** A rule whose parts are read once and checked: what is checked is what is used. */
export function checkedRule(given: Rule): Rule {
  if (!isObject(given)) wrongKind('rule of decision: acceptance and risk', given, 'rule');
  const rule = taken(given, {
    acceptance: 'as it is',
    risk: { below: 'as it is', above: 'as it is' },
  });
  const problems: Problem[] = [];
  collect(problems, 'rule.acceptance', () => {
    if (ACCEPTANCES.includes(rule.acceptance)) return;
    fail(unknownWord, '', quote(rule.acceptance), { words: ACCEPTANCES.map((one) => `'${one}'`).join(' or ') });
  });
  for (const side of ['below', 'above'] as const) {
    collect(problems, `rule.risk.${side}`, () => {
      const risk = rule.risk?.[side];
      if (!Number.isFinite(risk)) fail(notANumber, '', quote(risk));
      if (risk >= LEAST_RISK && risk < 0.5) return;
      fail(outsideBounds, '', String(risk), { bounds: 'a probability from 0.000001 to below 0.5' });
    });
  }
  failIfAny(problems);
  return rule;
}
