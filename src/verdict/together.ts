import { collect, failIfAny, type Problem } from '../basis/fault.js';
import { has, optional } from '../basis/has.js';
import { listed, type Bound } from '../basis/listed.js';
import {
  pressureDifferenceOf,
  temperatureDifferenceOf,
  wrongKind,
  type PressureDifference,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { slopeOfCurve } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { targetAt } from '../target/target.js';
import { asCorrected } from './as-corrected.js';
import { checkedMeasured, sumOfParts } from './budget.js';
import { compareWith, type Part } from './contributions.js';
import { correctedReading } from './corrected-reading.js';
import { quantile } from './distribution.js';
import { checkedReading, judged } from './judge.js';
import { FAR, fit, mean, type Fit } from './robust-fit.js';
import { pressureSlips, temperatureSlips, type Slip, type SlipKind, type Slipped } from './slips.js';
import { subjectsOf } from './subject.js';

// The round as a whole. One gauge and one thermometer read all of it: what they do to one reading they do to all. The mean of
// sixteen is four times as sharp as a single one, and sixteen leaks of one size are less likely than one wrong gauge.

/** A reading of a round, with its specification. */
export interface RoundReading {
  readonly spec: Specification;
  readonly reading: Reading;
  readonly instruments?: Instruments;
}

/** An amount with its standard uncertainty. */
export interface Estimate<T> {
  readonly value: T;
  readonly standard: T;
}

/** By how much a round is off as a whole, told in three ways; each by itself. */
export interface Shift {
  /** Readings over targets. */
  readonly ratio: Estimate<number>;
  /** Readings less targets. */
  readonly difference: Estimate<PressureDifference>;
  /** By how much the gas would have to be warmer than was measured. */
  readonly temperature: Estimate<TemperatureDifference>;
  /** Which of ratio and difference the readings follow. Where their targets are alike it cannot be told. */
  readonly better: 'ratio' | 'difference' | 'cannot be told';
  /** How many readings it explains: those from which no more remains than their scatter. */
  readonly explains: number;
  /**
   * Whether errors of gauge, thermometer, barometer and manual within their stated limits can make it; of the instruments
   * of the first reading that counts.
   */
  readonly instruments: 'can explain it' | 'cannot explain it' | 'not stated';
}

/** A slip that, made at every reading, explains the shift. */
export interface CommonSlip {
  readonly slip: SlipKind;
  /** What of the shift remains without it. */
  readonly remaining: Estimate<PressureDifference>;
  readonly explains: number;
}

/** A reading and what remains of it without the shift. */
export interface Remainder {
  /** Place in the list that was given. */
  readonly index: number;
  /** Reading, as corrected, less target. */
  readonly offTarget: PressureDifference;
  /** Without the common shift; the same where there is none. */
  readonly remaining: PressureDifference;
  /** Whether what remains is no more than the scatter. What is not explained is a finding of its own. */
  readonly explained: boolean;
}

/** A reading that does not count, and why. */
export interface LeftOut {
  readonly index: number;
  readonly because: 'no evidence' | 'no answer';
  /** Of a reading without an answer, such as one outside the gas model: {@link slips} asks what it may be. */
  readonly problems: readonly Problem[];
}

/** Too few readings count to say anything of the round. */
export interface TooFew {
  readonly outcome: 'too few readings';
  readonly needed: number;
  readonly leftOut: readonly LeftOut[];
}

/** What the readings of a round say together. */
export interface RoundAsWhole {
  readonly outcome: 'no common shift' | 'common shift';
  readonly shift: Shift;
  /** Only for a common shift; what leaves least comes first. */
  readonly candidates: readonly CommonSlip[];
  readonly readings: readonly Remainder[];
  readonly leftOut: readonly LeftOut[];
}

const FEWEST = 8;
/** As many as a document may hold. */
const MOST_CHECKS: Bound = { most: 250_000, what: 'checks' };
/** Share of the readings that a shift must explain: what half of them follow is two rounds in one. */
const MOST = 2 / 3;
/** A reading that counts, in SI. */
interface Counted {
  readonly index: number;
  readonly check: RoundReading;
  readonly off_Pa: number;
  readonly target_Pa: number;
  /** ∂target/∂T, Pa/K. */
  readonly slope: number;
  /** Standard uncertainty of what differs from reading to reading. */
  readonly own_Pa: number;
}

/**
 * Looks at a round as a whole before any single reading is worked on. One gauge reads all accumulators: where all are off
 * together, suspect the gauge, its unit or the thermometer before as many leaks. A common shift is known far better than
 * any one reading, which makes this the practical way to find a gauge in kgf/cm2 that is read as bar, 2 % off.
 *
 * The shift is that of most readings: those far from it, such as true leaks, neither hide nor make it, up to a fifth of
 * them. Its uncertainty is of what differs from reading to reading, their steps and their scatter; it counts as common only
 * where a round without one shows as much in less than one of a hundred. A charge that was set high or lost alike everywhere is a common shift too, and so is the
 * error that a sound gauge may have: `instruments` says whether that would do.
 *
 * @param checks readings taken with one gauge and one thermometer, one of each accumulator; eight that count, or more
 * @throws {@link Fault} as {@link slips}, for every reading; `wrong kind` for what is no list of them; `too long` for more
 * than 250 000
 * @example
 * ```ts
 * // Seven read 2 % too high, and one leaks.
 * const shown = [155, 156, 155, 156, 156, 140, 155, 156];
 * const checks = shown.map((value) => ({ spec, reading: { ...reading, pressure: gauge(value, 'bar') } }));
 * const found = together(checks);
 * found.outcome; // => 'common shift'
 * if (found.outcome === 'common shift') {
 *   found.shift.ratio.value.toFixed(3); // => '1.019'
 *   found.candidates[0]?.slip; // => { code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' }
 *   found.readings.filter(({ explained }) => !explained).map(({ index }) => index); // => [5]
 * }
 * ```
 */
export function together(checks: readonly RoundReading[]): TooFew | RoundAsWhole {
  const own = needChecks(checks);
  const { counted, leftOut } = countedOf(own);
  const [first] = counted;
  if (first === undefined || counted.length < FEWEST) return { outcome: 'too few readings', needed: FEWEST, leftOut };

  const off = counted.map(({ off_Pa }) => off_Pa);
  const least = Math.sqrt(mean(counted.map(({ own_Pa }) => own_Pa * own_Pa)));
  const difference = fit(
    off,
    counted.map(() => 1),
    least,
  );
  const ratio = fit(
    off,
    counted.map(({ target_Pa }) => target_Pa),
    least,
  );
  const warmer = fit(
    off,
    counted.map(({ slope }) => slope),
    least,
  );
  const better = betterOf(ratio, difference);
  const best = better === 'ratio' ? ratio : difference;
  const isCommon =
    Math.abs(best.theta) >= sureAt(counted.length) * best.standard && best.explains >= MOST * counted.length;
  const common = commonOf(first);
  const size_Pa = Math.abs(best === ratio ? best.theta * first.target_Pa : best.theta);
  const shift: Shift = {
    ratio: { value: 1 + ratio.theta, standard: ratio.standard },
    difference: estimate(difference),
    temperature: {
      value: temperatureDifferenceOf(warmer.theta),
      standard: temperatureDifferenceOf(warmer.standard),
    },
    better,
    explains: best.explains,
    instruments: common === undefined ? 'not stated' : size_Pa <= common ? 'can explain it' : 'cannot explain it',
  };
  return {
    outcome: isCommon ? 'common shift' : 'no common shift',
    shift,
    candidates: isCommon ? candidatesOf(counted, difference, least, common ?? 0) : [],
    readings: counted.map(({ index, off_Pa }, i) => {
      // Without a common shift nothing is taken off, and what is explained is what scatters about zero.
      const remaining = isCommon ? (best.remaining[i] ?? 0) : off_Pa;
      const explained = isCommon ? best.explained[i] === true : Math.abs(off_Pa) <= FAR * best.scatter;
      return { index, offTarget: pressureDifferenceOf(off_Pa), remaining: pressureDifferenceOf(remaining), explained };
    }),
    leftOut,
  };
}

function needChecks(checks: readonly RoundReading[]): RoundReading[] {
  if (!Array.isArray(checks)) wrongKind('list of checks: spec, reading and perhaps instruments', checks, 'checks');
  const problems: Problem[] = [];
  const own = listed(checks as readonly RoundReading[], MOST_CHECKS, 'checks', (check, i) =>
    collect(problems, `checks[${i}]`, (): RoundReading => {
      if (!isObject(check)) wrongKind('check: spec, reading and perhaps instruments', check, '');
      const { spec } = check;
      const instruments = optional(check, 'instruments');
      needSpecification(spec);
      const reading = checkedReading(check.reading);
      // With their place where there are none, so that none that all objects inherit come to stand for them.
      const own = instruments === undefined ? undefined : checkedMeasured(spec, reading, instruments).instruments;
      return { spec, reading, instruments: own } as RoundReading;
    }),
  );
  failIfAny(problems);
  return own.filter((one) => one !== undefined);
}

function countedOf(checks: readonly RoundReading[]): { readonly counted: Counted[]; readonly leftOut: LeftOut[] } {
  const counted: Counted[] = [];
  const leftOut: LeftOut[] = [];
  for (const [index, check] of checks.entries()) {
    const problems: Problem[] = [];
    const found = collect(problems, '', () => counts(index, check));
    if (found === 'no evidence') leftOut.push({ index, because: found, problems });
    else if (found === undefined) leftOut.push({ index, because: 'no answer', problems });
    else counted.push(found);
  }
  return { counted, leftOut };
}

function counts(index: number, check: RoundReading): Counted | 'no evidence' {
  const { spec, reading, instruments } = check;
  const { outcome } = judged(spec, instruments === undefined ? reading : asCorrected(spec, reading, instruments));
  if (outcome === 'gas not known' || outcome === 'not comparable') return 'no evidence';
  const { target } = spec['~curves'];
  if (instruments === undefined) {
    const target_Pa = targetAt(spec, reading);
    const off_Pa = reading.pressure.pascals - target_Pa;
    const slope = slopeOfCurve(spec.gas, target, reading.temperature.kelvins);
    // Half a step is the limit of what was read, a rectangle.
    const own_Pa = pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals / Math.sqrt(12);
    return { index, check, off_Pa, target_Pa, slope, own_Pa };
  }
  const at = correctedReading(reading, instruments);
  const compared = compareWith(spec, reading, instruments, subjectsOf(spec, instruments).target);
  const target_Pa = compared.p_g_Pa + compared.shift_Pa;
  return {
    index,
    check,
    off_Pa: at.p_g_Pa - target_Pa,
    target_Pa,
    slope: slopeOfCurve(spec.gas, target, at.T_K),
    own_Pa: sumOfParts(compared.parts.filter(differs), instruments.readings).standard,
  };
}

function differs({ repeats }: Part): boolean {
  return repeats === 'per reading';
}

/** How far the instruments of a reading can be off alike for all, Pa to either side; undefined if they are not stated. */
function commonOf({ check: { spec, reading, instruments } }: Counted): number | undefined {
  if (instruments === undefined) return undefined;
  const { parts } = compareWith(spec, reading, instruments, subjectsOf(spec, instruments).target);
  return quantile(
    sumOfParts(
      parts.filter((part) => !differs(part)),
      instruments.readings,
    ),
    0.975,
  );
}

/**
 * Standard uncertainties from zero at which a shift of so many readings counts. Found by simulation: on rounds without a
 * shift, up to a fifth of them leaking, it is passed in at most one of a hundred, and in about half as many.
 */
function sureAt(count: number): number {
  return 2.9 * (1 + 4.2 / (count - 5));
}

/** Which of two fits the readings follow: by the sum of squares, in which no reading counts for more than a far one. */
function betterOf(ratio: Fit, difference: Fit): Shift['better'] {
  const unit = Math.min(ratio.scatter, difference.scatter);
  const cost = ({ remaining }: Fit): number =>
    remaining.reduce((sum, rest) => sum + Math.min(FAR * FAR, (rest / unit) * (rest / unit)), 0);
  const gain = cost(difference) - cost(ratio);
  // Nine is three standard deviations, as of a likelihood.
  if (Math.abs(gain) < 9) return 'cannot be told';
  return gain > 0 ? 'ratio' : 'difference';
}

/** The slips that, made at every reading, leave no more than the uncertainty of the shift and of the instruments. */
function candidatesOf(counted: readonly Counted[], shift: Fit, least: number, common_Pa: number): CommonSlip[] {
  const all = new Map<string, { slip: CommonSlip['slip']; off: number[] }>();
  for (const { check } of counted) {
    const { spec, reading } = check;
    // What lies beyond the scale is no evidence, and does not count.
    for (const slipped of [...pressureSlips(reading, spec.allowable), ...temperatureSlips(reading)]) {
      const off = collect([], '', () => offOf(check, slipped)); // no answer explains nothing
      if (off === undefined) continue;
      const slip = kindOf(slipped.slip);
      const name = JSON.stringify(slip);
      const known = all.get(name) ?? { slip, off: [] };
      known.off.push(off);
      all.set(name, known);
    }
  }
  const found = [...all.values()].flatMap(({ slip, off }): (CommonSlip & { readonly size: number })[] => {
    const rest = fit(
      off,
      off.map(() => 1),
      least,
    );
    const size = Math.abs(rest.theta);
    const isLess = size <= 0.5 * Math.abs(shift.theta) && size <= FAR * rest.standard + common_Pa;
    if (!isLess || rest.explains < MOST * counted.length) return [];
    return [{ slip, remaining: estimate(rest), explains: rest.explains, size }];
  });
  return found.sort((a, b) => a.size - b.size).map(({ slip, remaining, explains }) => ({ slip, remaining, explains }));
}

/** A slip without its number, which differs from reading to reading. */
function kindOf(slip: Slip): SlipKind {
  if (has(slip, 'unit')) return { code: slip.code, unit: slip.unit };
  const { code, stated, readAs } = slip;
  return { code, stated, readAs } as SlipKind; // both units are of the one quantity, as they were
}

/** Reading less target, Pa, had the slip been made. */
function offOf({ spec, instruments }: RoundReading, { reading }: Slipped): number {
  if (instruments === undefined) return reading.pressure.pascals - targetAt(spec, reading);
  const at = correctedReading(reading, instruments);
  const { p_g_Pa, shift_Pa } = compareWith(spec, reading, instruments, subjectsOf(spec, instruments).target);
  return at.p_g_Pa - p_g_Pa - shift_Pa;
}

function estimate({ theta, standard }: Fit): Estimate<PressureDifference> {
  return { value: pressureDifferenceOf(theta), standard: pressureDifferenceOf(standard) };
}
