import { collect, fail, failIfAny, type Problem } from '../basis/fault.js';
import { notPositive } from '../basis/problem.js';
import { taken } from '../basis/taken.js';
import { exp } from '../gas/elementary.js';
import { need, wrongKind, type PressureDifference } from '../quantity/kind.js';
import { notCovered, type NotCovered } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { inBar } from '../quantity/unit.js';
import { checkedMeasured } from './budget.js';
import { checkedRule, guards, type Rule } from './rule.js';
import { sidesOf, sumsOf } from './sides.js';
import { cumulative, quantile } from './distribution.js';

// Global risks after JCGM 106:2012, clause 9.5: what a rule of decision does to a whole population of accumulators, of
// which something is known before any of them is read. A specific risk needs no such knowledge; a global one has no meaning
// without it.

/** How far from their targets the true pre-charges of a population lie, before reading: a normal distribution. */
export interface Prior {
  /** Negative where they lose gas. */
  readonly mean: PressureDifference;
  /** Standard deviation. More than zero. */
  readonly standard: PressureDifference;
}

/** Shares of a population, each 0 to 1, that a rule of decision leads to. */
export interface GlobalRisks {
  /** Inside the band in truth. */
  readonly conforming: number;
  /** Accepted although too low, or too high, in truth. */
  readonly falselyAccepted: { readonly below: number; readonly above: number };
  /** Rejected although inside in truth. */
  readonly falselyRejected: number;
  readonly accepted: number;
  readonly rejected: number;
  readonly inconclusive: number;
}

const PANELS = 400;
const SIGMAS = 9;

/**
 * Global risks of a rule of decision: of a population of accumulators of this specification, read under the conditions and
 * with the instruments of a reading, how many are accepted, rejected and left inconclusive, and how many of these wrongly.
 * The pressure of the reading is that at which a digital gauge or a certificate is taken to err; the true ones are those of
 * the prior.
 *
 * @throws {@link Fault} as {@link decide}; `wrong kind`, `not positive` for the prior
 * @example
 * ```ts
 * const rule = { acceptance: 'simple acceptance', risk: { below: 0.05, above: 0.05 } } as const;
 * const prior = { mean: pressureDifference(-1, 'bar'), standard: pressureDifference(2, 'bar') };
 * const risks = globalRisks(spec, reading, instruments, rule, prior);
 * if ('conforming' in risks) [risks.conforming.toFixed(2), risks.falselyAccepted.below.toFixed(2)]; // => ['0.62', '0.09']
 * ```
 */
export function globalRisks(
  spec: Specification,
  givenReading: Reading,
  givenInstruments: Instruments,
  givenRule: Rule,
  givenPrior: Prior,
): GlobalRisks | { readonly because: NotCovered } {
  const { reading, instruments } = checkedMeasured(spec, givenReading, givenInstruments);
  const rule = checkedRule(givenRule);
  const prior = checkedPrior(givenPrior);
  const because = notCovered(instruments.gauge, reading);
  if (because !== undefined) return { because };

  const sides = sidesOf(spec, reading, instruments);
  const sums = sumsOf(sides, instruments.readings);
  const { accepting, rejecting } = guards(rule);
  // Guard bands: how far inside, or outside, a reading must lie.
  const guard = {
    lower: quantile(sums.lower, 1 - rule.risk.below),
    upper: quantile(sums.upper, 1 - rule.risk.above),
  };
  const [lower, upper] = [-sides.lower.targetInside, sides.upper.targetInside];
  /** Probability that the reading of a true difference lies below, or above, a bound. */
  const readsBelow = (bound: number, truth: number): number => cumulative(sums.lower, bound - truth);
  const readsAbove = (bound: number, truth: number): number => cumulative(sums.upper, truth - bound);
  const isAccepted = (truth: number): number => {
    const [from, to] = accepting ? [lower + guard.lower, upper - guard.upper] : [lower, upper];
    return from > to ? 0 : Math.max(0, 1 - readsBelow(from, truth) - readsAbove(to, truth));
  };
  const isRejected = (truth: number): number => {
    const [from, to] = rejecting ? [lower - guard.lower, upper + guard.upper] : [lower, upper];
    return readsBelow(from, truth) + readsAbove(to, truth);
  };

  const mean = prior.mean.pascals;
  const sigma = prior.standard.pascals;
  // In standard deviations of the prior, which stay apart however narrow it is.
  const placed = (truth: number): number => Math.min(Math.max(-SIGMAS, (truth - mean) / sigma), SIGMAS);
  const [first, last] = [-SIGMAS, SIGMAS];
  const [a, b] = [placed(lower), placed(upper)];
  // About the limits a fine gauge decides within less than a panel of the whole: there the panels are its own.
  const reach = SIGMAS * Math.max(sums.lower.standard, sums.upper.standard);
  const knots = [lower, upper].flatMap((limit) => [placed(limit - reach), placed(limit), placed(limit + reach)]);
  const integral = (of: (truth: number) => number, from: number, to: number): number => {
    const ends = [from, ...knots.filter((z) => z > from && z < to).sort((x, y) => x - y), to];
    return ends
      .slice(1)
      .reduce((sum, end, i) => sum + simpson((z) => of(mean + z * sigma) * normalDensity(z), ends[i] ?? from, end), 0);
  };
  const one = (): number => 1;
  const overAll = (of: (truth: number) => number): number =>
    integral(of, first, a) + integral(of, a, b) + integral(of, b, last);
  const [accepted, rejected] = [overAll(isAccepted), overAll(isRejected)];
  return {
    conforming: integral(one, a, b),
    falselyAccepted: { below: integral(isAccepted, first, a), above: integral(isAccepted, b, last) },
    falselyRejected: integral(isRejected, a, b),
    accepted,
    rejected,
    inconclusive: Math.max(0, 1 - accepted - rejected),
  };
}

function normalDensity(z: number): number {
  return exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** Simpson's rule; the integrands are smooth but for corners of the distributions of rectangles. */
function simpson(of: (x: number) => number, from: number, to: number): number {
  const h = (to - from) / (2 * PANELS);
  let sum = of(from) + of(to);
  for (let i = 1; i < 2 * PANELS; i += 1) sum += (i % 2 === 1 ? 4 : 2) * of(from + i * h);
  return (sum * h) / 3;
}

/** A prior whose parts are read once and checked. */
function checkedPrior(given: Prior): Prior {
  if (!isObject(given)) wrongKind('prior: mean and standard', given, 'prior');
  const prior = taken(given, { mean: 'as it is', standard: 'as it is' });
  const problems: Problem[] = [];
  collect(problems, 'prior.mean', () => need('pressure difference', prior.mean, ''));
  collect(problems, 'prior.standard', () => {
    need('pressure difference', prior.standard, '');
    if (!(prior.standard.pascals > 0)) fail(notPositive, '', `${inBar(prior.standard.pascals)} difference`);
  });
  failIfAny(problems);
  return prior;
}
