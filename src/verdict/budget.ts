import type { CautionCode } from '../basis/caution.js';
import { has } from '../basis/has.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import type { ContributionCode, NotCounted } from '../basis/words.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  temperatureDifferenceOf,
  temperatureOf,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { valueIn } from '../quantity/step.js';
import { notCovered, type NotCovered } from '../reading/gauge.js';
import { copyOfInstruments, instrumentCautions, needInstruments, type Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { OFF_TARGET } from './compare.js';
import { compareWith, type Part, type Repeats } from './contributions.js';
import { correctedReading } from './corrected-reading.js';
import { combinedOf } from './combined.js';
import { quantile, sumOf, type Rectangles, type Sum } from './distribution.js';
import { checkedReading } from './judge.js';
import { subjectsOf } from './subject.js';

// How sure (reading − target) is, after JCGM 100 (GUM) and JCGM 101: each contribution with its distribution and its
// sensitivity, and the interval from the distribution of their sum.

/** One contribution to the uncertainty of (reading − target). */
export interface Contribution {
  readonly of: ContributionCode;
  readonly distribution: 'rectangle' | 'normal';
  /**
   * Half width of the rectangle, or standard deviation of the normal distribution, of one reading and in its own unit: a
   * difference of pressure or temperature; for the equation of state and the vessel, a relative error of density.
   */
  readonly size: PressureDifference | TemperatureDifference | number;
  /** By how much (reading − target) changes with it: Pa for one Pa, one K, or one as a relative error of density. */
  readonly sensitivity: number;
  /** Its standard uncertainty, in the mean of the readings. */
  readonly standard: PressureDifference;
  /** Its share of the variance, 0 to 1. */
  readonly share: number;
  readonly repeats: Repeats;
}

/** How sure a comparison of a reading with its target is. */
export interface Budget {
  /** The reading with the correction of the gauge's certificate, where there is one. */
  readonly corrected: GaugePressure;
  /** The temperature with the correction of the thermometer's certificate, where there is one. */
  readonly temperature: Temperature;
  /** Corrected reading less target: the target at the corrected temperature, and of the warm vessel if that is corrected. */
  readonly offTarget: PressureDifference;
  /** Every contribution, the largest share first. */
  readonly contributions: readonly Contribution[];
  /** Combined standard uncertainty. */
  readonly standard: PressureDifference;
  /** In which the true difference from the target lies, as probable below as above it; from the distribution of the sum. */
  readonly interval: {
    readonly coverage: 0.95;
    readonly lower: PressureDifference;
    readonly upper: PressureDifference;
  };
  /** The interval of JCGM 100 beside it: the sum taken as normal. Its half width is `expanded`. */
  readonly gum: {
    readonly coverageFactor: number;
    readonly expanded: PressureDifference;
    /** By JCGM 101, clause 8: whether the ends of both intervals agree within the second digit of the standard uncertainty. */
    readonly validation: 'passes' | 'fails';
  };
  readonly notCounted: readonly NotCounted[];
  readonly cautions: readonly CautionCode[];
}

/** The reading lies where the accuracy of its gauge does not hold. */
export interface NoBudget {
  readonly because: NotCovered;
  readonly cautions: readonly CautionCode[];
}

export const STANDARD_OF_RECTANGLE = /* @__PURE__ */ relation({
  gives: 'u',
  unit: 'Pa',
  from: ['c', 'e'],
  formula: 'abs(c) * e / sqrt(3)',
  source:
    'standard deviation of a rectangle whose half width is the limit of an error by its sensitivity (JCGM 100, 4.3.7)',
  of: (c, e) => (Math.abs(c) * e) / Math.sqrt(3),
});

export const STANDARD_OF_NORMAL = /* @__PURE__ */ relation({
  gives: 'u',
  unit: 'Pa',
  from: ['c', 'e'],
  formula: 'abs(c) * e',
  source: 'standard uncertainty by its sensitivity (JCGM 100, 5.1.3)',
  of: (c, e) => Math.abs(c) * e,
});

export const STANDARD_OF_MEAN = /* @__PURE__ */ relation({
  gives: 'u',
  unit: 'Pa',
  from: ['u_single', 'times'],
  formula: 'u_single / sqrt(times)',
  source: 'standard uncertainty of the mean of independent readings (JCGM 100, 4.2.3)',
  of: (u_single, times) => u_single / Math.sqrt(times),
});

export const EXPANDED = /* @__PURE__ */ relation({
  gives: 'dp_expanded',
  unit: 'Pa',
  from: ['k_p', 'u'],
  formula: 'k_p * u',
  source: 'expanded uncertainty as if the sum were normal, for comparison (JCGM 100, 6.2)',
  of: (k_p, u) => k_p * u,
});

const INTERVAL =
  'interval of 95 %, as probable below as above: its half width is that of the distribution of the sum of all contributions (JCGM 101, 7.7)';

export const LOWER_END = /* @__PURE__ */ relation({
  gives: 'dp_low',
  unit: 'Pa',
  from: ['dp_off', 'dp_half'],
  formula: 'dp_off - dp_half',
  source: INTERVAL,
  of: (dp_off, dp_half) => dp_off - dp_half,
});

export const UPPER_END = /* @__PURE__ */ relation({
  gives: 'dp_high',
  unit: 'Pa',
  from: ['dp_off', 'dp_half'],
  formula: 'dp_off + dp_half',
  source: INTERVAL,
  of: (dp_off, dp_half) => dp_off + dp_half,
});

/** Standard uncertainty of a part in the mean of several readings, Pa. */
export function standardOf(
  { of, distribution, size, sensitivity, repeats }: Part,
  readings: number,
  trace?: Trace,
): number {
  // Of which sign it is does not matter; as it stands, it is that of the target.
  const c = Math.abs(sensitivity) === 1 ? 1 : -sensitivity;
  const one =
    distribution === 'normal'
      ? step2(trace, STANDARD_OF_NORMAL, of, c, size)
      : step2(trace, STANDARD_OF_RECTANGLE, of, c, size);
  return repeats === 'per reading' && readings > 1 ? step2(trace, STANDARD_OF_MEAN, of, one, readings) : one;
}

/** The distribution of the sum of all parts, Pa, in the mean of several readings. */
export function sumOfParts(parts: readonly Part[], readings: number): Sum {
  const rectangles: Rectangles[] = [];
  let variance = 0;
  for (const part of parts) {
    const one = Math.abs(part.sensitivity) * part.size;
    const times = part.repeats === 'per reading' ? readings : 1;
    if (part.distribution === 'rectangle') rectangles.push({ half: one / times, times });
    else variance += (one * one) / times;
  }
  return sumOf(rectangles, Math.sqrt(variance));
}

/**
 * How sure a comparison of a reading with its target is: every contribution with its distribution, its sensitivity and its
 * share, the combined standard uncertainty, and the interval in which the true difference lies with a probability of 95 %.
 *
 * The interval is that of the distribution of the sum, because the limit of error of a gauge is a rectangle and usually the
 * largest: the rule of JCGM 100, k = 1.96 standard uncertainties, then promises too much width. It stands beside, with
 * the verdict of the validation of JCGM 101. Says nothing of evidence: see {@link judge}.
 *
 * @throws {@link Fault} as {@link judge}; for the instruments: `wrong kind`, `not a number`, `not positive`, `negative`,
 * `outside bounds`, `not one of several`, `not an accuracy class`, `above full scale`, `not a count`, `not a date`,
 * `unknown word`
 * @example
 * ```ts
 * const found = uncertainty(spec, reading, instruments);
 * if ('interval' in found) {
 *   write(found.offTarget, { step: 0.1, unit: 'bar' }); // => '-9.6 bar difference'
 *   write(found.interval.upper, { step: 0.1, unit: 'bar' }); // => '-6.2 bar difference'
 *   found.contributions[0]?.of; // => 'gauge'
 * }
 * ```
 */
export function uncertainty(
  spec: Specification,
  givenReading: Reading,
  givenInstruments: Instruments,
  trace?: Trace,
): Budget | NoBudget {
  const { reading, instruments } = checkedMeasured(spec, givenReading, givenInstruments);
  const cautions = instrumentCautions(instruments, reading);
  const because = notCovered(instruments.gauge, reading);
  if (because !== undefined) return { because, cautions };
  const { target } = subjectsOf(spec, instruments);
  const compared = compareWith(spec, reading, instruments, target, trace);
  const corrected = correctedReading(reading, instruments);
  const off_Pa = step2(trace, OFF_TARGET, 'reading', corrected.p_g_Pa, compared.p_g_Pa + compared.shift_Pa);
  return {
    corrected: gaugeOf(corrected.p_g_Pa),
    temperature: temperatureOf(corrected.T_K),
    offTarget: pressureDifferenceOf(off_Pa),
    ...statedOf(off_Pa, compared.parts, instruments.readings, reading, trace),
    notCounted: compared.notCounted,
    cautions,
  };
}

const COVERAGE = 0.95;

function statedOf(
  off_Pa: number,
  parts: readonly Part[],
  readings: number,
  { gaugeStep }: Reading,
  trace?: Trace,
): Pick<Budget, 'contributions' | 'standard' | 'interval' | 'gum'> {
  const sum = sumOfParts(parts, readings);
  const standards = parts.map((part) => standardOf(part, readings, trace));
  const combined = combinedOf(standards, 'all contributions', trace);
  const contributions = parts.map((part, i): Contribution => {
    const standard = standards[i] ?? Number.NaN;
    const { of, distribution, sensitivity, repeats } = part;
    const share = (standard * standard) / (combined * combined);
    return {
      of,
      distribution,
      size: sized(part),
      sensitivity,
      standard: pressureDifferenceOf(standard),
      share,
      repeats,
    };
  });
  const half = quantile(sum, 0.5 + COVERAGE / 2);
  const coverageFactor = quantile(sumOf([], 1), 0.5 + COVERAGE / 2);
  const expanded = step2(trace, EXPANDED, 'all contributions', coverageFactor, combined);
  const unit_Pa = pressureDifference(1, gaugeStep.unit).pascals;
  const tolerance = toleranceOf(valueIn(pressureDifferenceOf(combined), gaugeStep.unit)) * unit_Pa;
  return {
    contributions: contributions.sort((a, b) => b.share - a.share),
    standard: pressureDifferenceOf(combined),
    interval: {
      coverage: COVERAGE,
      lower: pressureDifferenceOf(step2(trace, LOWER_END, 'interval', off_Pa, half)),
      upper: pressureDifferenceOf(step2(trace, UPPER_END, 'interval', off_Pa, half)),
    },
    gum: {
      coverageFactor,
      expanded: pressureDifferenceOf(expanded),
      validation: Math.abs(expanded - half) <= tolerance ? 'passes' : 'fails',
    },
  };
}

function sized({ size, unit }: Part): Contribution['size'] {
  if (unit === '1') return size;
  return unit === 'Pa' ? pressureDifferenceOf(size) : temperatureDifferenceOf(size);
}

/**
 * Numerical tolerance of a standard uncertainty that is stated to two digits (JCGM 101, 7.9.2): half of its last place, in
 * the unit of the gauge.
 */
export function toleranceOf(standard: number): number {
  const exponent = Number(standard.toExponential(1).split('e')[1]);
  return Number(`5e${exponent - 2}`);
}

/** A reading and the instruments that it was taken with. */
export interface Measured {
  readonly reading: Reading;
  readonly instruments: Instruments;
}

/** A reading of a specification and its instruments, their parts read once and checked: what is checked is what is used. */
export function checkedMeasured(spec: Specification, reading: Reading, instruments: Instruments): Measured {
  needSpecification(spec);
  const own = {
    reading: checkedReading(reading),
    instruments: copyOfInstruments(instruments),
  };
  needInstruments(own.instruments, own.reading, has(spec.precharge, 'rows'));
  return own;
}
