import { step2, step3, type Trace } from '../basis/relation.js';
import { EXPLAINED, fill, REASON, type Reason } from '../basis/words.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
} from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { finer, roundStepBelow, valueIn, write, type Division } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { needReading, type Reading } from '../reading/reading.js';
import { sourceOn, type TargetSource } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetAt } from '../target/target.js';
import { bandAbout, type Band } from './band.js';
import { explainingOf, MARGIN, OFF_TARGET, referredOf } from './compare.js';

/** What every verdict says. */
interface Judged {
  /** Every reason, by its stable code; the first one decided. */
  readonly because: readonly [Reason, ...Reason[]];
  /** The same in words, with the numbers. */
  readonly why: string;
  /** The pre-charge wanted at the temperature and ambient of the reading. */
  readonly target: GaugePressure;
  /** By what the target was found: the reference point, or the row or rows of the maker's table. */
  readonly targetFrom: TargetSource;
  readonly band: Band;
}

/** The evidence is short of what a comparison needs; the target and band stand, the reading says nothing. */
export interface NotComparable extends Judged {
  readonly outcome: 'gas not known' | 'not comparable';
}

/** The answer depends on the gauge, not on the gas. */
export interface TooCoarse extends Judged {
  readonly outcome: 'gauge too coarse';
  /** The coarsest step of 1, 2 or 5 times a power of ten that always has a mark in the band. */
  readonly stepNeeded: Division<PressureUnit>;
}

/** A reading that can be compared with its band. */
export interface Compared extends Judged {
  readonly outcome: 'within' | 'undercharged' | 'overcharged';
  /** Reading less target: negative when gas is missing. */
  readonly offTarget: PressureDifference;
  /** Distance from the nearer limit: positive inside the band, negative outside, zero on a limit (which is inside). */
  readonly insideBandBy: PressureDifference;
  /** The reading referred to the specification's reference temperature and ambient. */
  readonly referred: GaugePressure;
  /** The gas temperature at which the reading would be right. */
  readonly explainingTemperature: Temperature | 'none in range';
}

/** A reading of zero, which may be no reading at all. */
export interface Empty extends Judged {
  readonly outcome: 'gas side empty';
  /** What may be behind it, cheapest to check first; empty once the cause is stated as cleared. */
  readonly causes: readonly string[];
  readonly offTarget: PressureDifference;
  readonly insideBandBy: PressureDifference;
}

/** What a reading says against a specification. An outcome is data; only a faulty input throws. */
export type Verdict = NotComparable | Empty | TooCoarse | Compared;

/** The stable codes of the outcomes, in the order in which they are decided. */
export type Outcome = Verdict['outcome'];

// Common practice, no source.
const CAUSES_OF_EMPTY: readonly string[] = [
  'the gas valve or the valve of the charging kit is not open',
  'the gauge is dead or its line is blocked: read with a second gauge',
  'the gas valve, its core or a seal leaks: leak test with liquid',
  'the separator (diaphragm, bladder or piston seal) is torn: gas in the oil, oil at the gas valve',
];

/**
 * Judges a reading: first whether it is evidence at all, then against the band. The exact band decides, its limits
 * included. In order: gas not known; not comparable (oil side not proved at zero, gas not at rest, or the gauge reads the
 * oil); gas side empty; gauge too coarse; undercharged, overcharged or within.
 *
 * @throws {@link Fault} for a faulty specification or reading: `wrong kind`, `not an ambient pressure`, `below vacuum`,
 * `outside the model`, `unknown word`, `not positive`, `step too fine`
 * @example
 * ```ts
 * const verdict = judge(spec, reading);
 * verdict.outcome; // => 'undercharged'
 * verdict.because; // => ['below the lower limit']
 * ```
 */
export function judge(spec: Specification, reading: Reading, trace?: Trace): Verdict {
  needSpecification(spec);
  needReading(reading);
  const target_Pa = targetAt(spec, reading, trace);
  const target = gaugeOf(target_Pa);
  const band = bandAbout(spec, reading, target_Pa, reading.gaugeStep, trace);
  const targetFrom = sourceOn(spec['~curves'].target, reading.temperature.kelvins);
  const say = speaker(spec, reading, target, band);

  const missing = missingEvidence(spec, reading);
  if (isSome(missing)) {
    const outcome = missing.includes('gas not known to be nitrogen') ? 'gas not known' : 'not comparable';
    return {
      outcome,
      because: missing,
      why: missing.map((reason) => say(reason)).join('; '),
      target,
      targetFrom,
      band,
    };
  }

  const offTarget = pressureDifferenceOf(step2(trace, OFF_TARGET, 'reading', reading.pressure.pascals, target_Pa));
  const insideBandBy = pressureDifferenceOf(
    step3(trace, MARGIN, 'reading', reading.pressure.pascals, band.lower.pascals, band.upper.pascals),
  );
  const step_Pa = pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals;
  if (reading.pressure.pascals <= emptyUpTo(target_Pa, step_Pa)) {
    const cleared = reading.emptyGasSide === 'investigated and cleared';
    const reason = cleared ? 'empty, cause cleared' : 'reads zero';
    const causes = cleared ? [] : CAUSES_OF_EMPTY;
    const why = say(reason);
    return {
      outcome: 'gas side empty',
      because: [reason],
      why,
      target,
      targetFrom,
      band,
      causes,
      offTarget,
      insideBandBy,
    };
  }
  if (band.onGauge === 'no mark of the gauge lies in the band' && insideBandBy.pascals >= -step_Pa) {
    const stepNeeded = stepFor(band, reading.gaugeStep.unit);
    const needed = stepText(stepNeeded);
    const because = ['no mark of the gauge in the band'] as const;
    return {
      outcome: 'gauge too coarse',
      because,
      why: say(because[0], { needed }),
      target,
      targetFrom,
      band,
      stepNeeded,
    };
  }

  const [outcome, reason] = compared(reading.pressure.pascals, band);
  const explaining = explainingOf(spec, reading, trace);
  const explained =
    explaining === 'none in range' ? '' : fill(EXPLAINED, () => write(explaining, { step: 0.1, unit: '°C' }));
  const off = stripBasis(write(pressureDifferenceOf(Math.abs(offTarget.pascals)), resolving(reading.gaugeStep, band)));
  return {
    outcome,
    because: [reason],
    why: say(reason, { off, explained }),
    target,
    targetFrom,
    band,
    offTarget,
    insideBandBy,
    referred: referredOf(spec, reading, trace),
    explainingTemperature: explaining,
  };
}

/**
 * The highest reading that may be no gas at all. A gauge of class 2.5 (EN 837-1) with a scale of twice the target may be
 * 5 % of the target off; a coarse one cannot show less than its step, which counts up to a tenth of the target: beyond
 * that it is the gauge that is unfit.
 */
function emptyUpTo(target_Pa: number, step_Pa: number): number {
  return Math.max(target_Pa / 20, Math.min(step_Pa, target_Pa / 10));
}

/** What is missing before a reading can be compared. That the oil side is drained does not stand against a gauge that reads the oil. */
function missingEvidence(spec: Specification, reading: Reading): Reason[] {
  const missing: Reason[] = [];
  if (reading.gasInside === 'not known') missing.push('gas not known to be nitrogen');
  if (reading.oilSide === 'not drained') missing.push('oil side not drained');
  if (reading.oilSide === 'not known') missing.push('oil side not known');
  if (likeSystem(reading)) missing.push('reads like system pressure');
  if (reading.minutesAtRest === 'not known') missing.push('time at rest not known');
  else if (reading.minutesAtRest < spec.settling.minutes) missing.push('not at rest long enough');
  return missing;
}

/**
 * Whether the gas gauge agrees with a system pressure above zero, as well as two gauges agree: within a step of this one
 * or 2.5 % (class 2.5 of EN 837-1). The pre-charge of an accumulator lies well below the pressure of its system, so
 * agreement is the oil even where somebody drained and verified zero.
 */
function likeSystem({ pressure, systemPressure, gaugeStep }: Reading): boolean {
  if (systemPressure === undefined) return false;
  const system = systemPressure.pascals;
  const step = pressureDifference(gaugeStep.step, gaugeStep.unit).pascals;
  return system > step && Math.abs(pressure.pascals - system) <= Math.max(step, system / 40);
}

function compared(pressure_Pa: number, band: Band): [Compared['outcome'], Reason] {
  if (pressure_Pa < band.lower.pascals) return ['undercharged', 'below the lower limit'];
  if (pressure_Pa > band.upper.pascals) return ['overcharged', 'above the upper limit'];
  return ['within', 'inside the limits'];
}

/** The coarsest 1-2-5 step that is no wider than the band, so that a mark always lies in it. */
function stepFor(band: Band, unit: PressureUnit): Division<PressureUnit> {
  return { step: roundStepBelow(widthOf(band, unit)), unit };
}

function widthOf(band: Band, unit: PressureUnit): number {
  return valueIn(pressureDifferenceOf(band.upper.pascals - band.lower.pascals), unit);
}

function stepText({ step, unit }: Division<PressureUnit>): string {
  return `${step} ${unit}`;
}

function stripBasis(text: string): string {
  return text.replace(/ difference$/, '');
}

/** A step for the numbers in sentences: finer than the gauge's, and fine enough to tell the limits apart. */
function resolving(gaugeStep: Division<PressureUnit>, band: Band): Division<PressureUnit> {
  const { unit } = gaugeStep;
  const width = { step: widthOf(band, unit), unit };
  const [one, other] = [finer(gaugeStep), finer(width)];
  return one.step < other.step ? one : other;
}

/** Says a reason with the numbers of this reading, in the unit of its gauge. */
function speaker(
  spec: Specification,
  reading: Reading,
  target: GaugePressure,
  band: Band,
): (reason: Reason, more?: Readonly<Record<string, string>>) => string {
  const as = resolving(reading.gaugeStep, band);
  const values: Readonly<Record<string, () => string>> = {
    reading: () => write(reading.pressure, as),
    target: () => write(target, as),
    lower: () => write(band.lower, { ...as, toward: 'up' }),
    upper: () => write(band.upper, { ...as, toward: 'down' }),
    temperature: () => write(reading.temperature, { step: 0.1, unit: '°C' }),
    system: () => (reading.systemPressure === undefined ? 'not known' : write(reading.systemPressure, as)),
    rested: () => String(reading.minutesAtRest),
    needed: () => String(spec.settling.minutes),
    step: () => stepText(reading.gaugeStep),
  };
  return (reason, more = {}) => fill(REASON[reason], (name) => more[name] ?? values[name]?.());
}

function isSome<T>(list: readonly T[]): list is readonly [T, ...T[]] {
  return list.length > 0;
}
