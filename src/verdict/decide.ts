import type { Trace } from '../basis/relation.js';
import type { Undecided } from '../basis/words.js';
import { notCovered } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { asCorrected } from './as-corrected.js';
import { checkedMeasured, sumOfParts, uncertainty } from './budget.js';
import { cumulative } from './distribution.js';
import { judge, type Outcome } from './judge.js';
import { checkedRule, outcomeOf, type Rule, type RuledOutcome } from './rule.js';
import { sidesOf, sumsOf, type Sides } from './sides.js';
import { tell } from './sides-told.js';
import { settlingOf, type Settling } from './what-settles.js';

// Decisions after JCGM 106:2012. The limits are those of the band; what is compared with them is the reading, and what is
// not certain is everything that the comparison rests on.

/** Probabilities that the true pre-charge lies below the lower limit, inside the band, above the upper limit. */
export interface Probabilities {
  readonly below: number;
  /** What the others leave. They leave too little where limits of their own cross within the errors; never below zero. */
  readonly within: number;
  readonly above: number;
}

/** A reading on which there is a decision, or of which it is known why there is none. */
export interface Decided {
  readonly outcome: RuledOutcome;
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

const NO_EVIDENCE: readonly Outcome[] = ['gas not known', 'not comparable', 'gas side empty'];

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
  trace?: Trace,
): Decision {
  const { reading, instruments } = checkedMeasured(spec, givenReading, givenInstruments);
  const rule = checkedRule(givenRule);
  // What each contribution is, the uncertainty tells.
  if (trace !== undefined) uncertainty(spec, reading, instruments, trace);
  return decided(spec, reading, instruments, rule, trace);
}

/** {@link decide}, for checked input whose contributions are told already. */
export function decided(
  spec: Specification,
  reading: Reading,
  instruments: Instruments,
  rule: Rule,
  trace?: Trace,
): Decision {
  if (NO_EVIDENCE.includes(judge(spec, asCorrected(spec, reading, instruments)).outcome))
    return { outcome: 'no decision', because: 'no evidence' };
  const because = notCovered(instruments.gauge, reading);
  if (because !== undefined) return { outcome: 'no decision', because };

  const sides = sidesOf(spec, reading, instruments, trace);
  const { lower, upper } = sides;
  const { readings } = instruments;
  const sums = sumsOf(sides, readings);
  if (trace !== undefined) tell(sides, sums, readings, rule, trace);
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

function directionOf({ offTarget, targetParts }: Sides, readings: number, { risk }: Rule): Decided['direction'] {
  const sum = sumOfParts(targetParts, readings);
  if (cumulative(sum, offTarget) <= risk.above) return 'low';
  return cumulative(sum, -offTarget) <= risk.below ? 'high' : 'not certain';
}
