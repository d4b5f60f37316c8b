import { optional } from '../basis/has.js';
import { step2, step3, type Trace } from '../basis/relation.js';
import type { Cause, Reason } from '../basis/words.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
} from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { needDivision, type Division } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { needReading, shown, type Reading } from '../reading/reading.js';
import { sourceOn, type TargetSource } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetAt } from '../target/target.js';
import { bandAbout, stepFor, type Band } from './band.js';
import { explainingOf, MARGIN, OFF_TARGET, referredOf } from './compare.js';

/** What every verdict says. */
interface Judged {
  /** Every reason, by its stable code; the first one decided. In words, with the numbers: {@link why}. */
  readonly because: readonly [Reason, ...Reason[]];
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
  /**
   * What may be behind it, by stable codes, cheapest to check first; empty once the cause is stated as cleared. In words:
   * {@link causeText}.
   */
  readonly causes: readonly Cause[];
  readonly offTarget: PressureDifference;
  readonly insideBandBy: PressureDifference;
}

/** What a reading says against a specification. An outcome is data; only a faulty input throws. */
export type Verdict = NotComparable | Empty | TooCoarse | Compared;

/** The stable codes of the outcomes, in the order in which they are decided. */
export type Outcome = Verdict['outcome'];

// Common practice, no source.
const CAUSES_OF_EMPTY: readonly Cause[] = /* @__PURE__ */ Object.freeze([
  'valve not open',
  'gauge dead or blocked',
  'gas valve leaks',
  'separator torn',
] as const);

/**
 * Judges a reading: first whether it is evidence at all, then against the band. The exact band decides, its limits
 * included. In order: gas not known; not comparable (oil side not proved at zero, gas not at rest, the gauge reads the
 * oil, or beyond the end of its scale); gas side empty; gauge too coarse; undercharged, overcharged or within.
 *
 * @throws {@link Fault} for a faulty specification or reading, with every problem of the reading: `wrong kind`,
 * `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `unchecked specification`; `not an ambient pressure`,
 * `gauge below vacuum`, `unknown word`, `unknown unit`, `not a step`, `step too fine`, `not minutes at rest`. For a reading
 * that is sound, at a place where there is no answer: `outside the model`, `outside the table`, `liquid`, `limits crossed`,
 * `band reaches zero`
 * @example
 * ```ts
 * const verdict = judge(spec, reading);
 * verdict.outcome; // => 'undercharged'
 * verdict.because; // => ['below the lower limit']
 * ```
 */
export function judge(spec: Specification, reading: Reading, trace?: Trace): Verdict {
  needSpecification(spec);
  return judged(spec, checkedReading(reading), trace);
}

/** A reading whose parts are read once and checked: what is checked is what is used. */
export function checkedReading(reading: Reading): Reading {
  if (typeof reading !== 'object' || reading === null) wrongKind('reading', reading, 'reading');
  const { pressure, temperature, ambient, gaugeStep, oilSide, gasInside, minutesAtRest } = reading;
  // Each field has its place in the copy, so that what all objects inherit under its name stands for none.
  const own = {
    pressure,
    temperature,
    ambient,
    gaugeStep: typeof gaugeStep === 'object' && gaugeStep !== null ? needDivision(gaugeStep, '') : gaugeStep,
    oilSide,
    gasInside,
    minutesAtRest,
    correctionIncluded: optional(reading, 'correctionIncluded'),
    fullScale: optional(reading, 'fullScale'),
    systemPressure: optional(reading, 'systemPressure'),
    emptyGasSide: optional(reading, 'emptyGasSide'),
    possibleSlip: optional(reading, 'possibleSlip'),
  } as Reading;
  needReading(own);
  return own;
}

/** {@link judge}, for checked input. */
export function judged(spec: Specification, reading: Reading, trace?: Trace): Verdict {
  const target_Pa = targetAt(spec, reading, trace);
  const target = gaugeOf(target_Pa);
  const band = bandAbout(spec, reading, target_Pa, reading, trace);
  const targetFrom = sourceOn(spec['~curves'].target, reading.temperature.kelvins);
  const found = { target, targetFrom, band };

  const missing = missingEvidence(spec, reading);
  if (isSome(missing)) {
    const outcome = missing.includes('gas not known to be nitrogen') ? 'gas not known' : 'not comparable';
    return { outcome, because: missing, ...found };
  }

  const offTarget = pressureDifferenceOf(step2(trace, OFF_TARGET, 'reading', reading.pressure.pascals, target_Pa));
  const insideBandBy = pressureDifferenceOf(
    step3(trace, MARGIN, 'reading', reading.pressure.pascals, band.lower.pascals, band.upper.pascals),
  );
  const step_Pa = pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals;
  if (reading.pressure.pascals <= emptyUpTo(target_Pa, step_Pa)) {
    const cleared = reading.emptyGasSide === 'investigated and cleared';
    return {
      outcome: 'gas side empty',
      because: [cleared ? 'empty, cause cleared' : 'reads zero'],
      ...found,
      causes: cleared ? [] : CAUSES_OF_EMPTY,
      offTarget,
      insideBandBy,
    };
  }
  if (band.onGauge === 'no mark of the gauge lies in the band' && insideBandBy.pascals >= -step_Pa) {
    const stepNeeded = stepFor(band, reading.gaugeStep.unit);
    return { outcome: 'gauge too coarse', because: ['no mark of the gauge in the band'], ...found, stepNeeded };
  }

  const [outcome, reason] = compared(reading.pressure.pascals, band);
  return {
    outcome,
    because: [reason],
    ...found,
    offTarget,
    insideBandBy,
    referred: referredOf(spec, reading, trace),
    explainingTemperature: explainingOf(spec, reading, trace),
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
  if (reading.fullScale !== undefined && shown(reading).pascals > reading.fullScale.pascals)
    missing.push('beyond the scale');
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

function isSome<T>(list: readonly T[]): list is readonly [T, ...T[]] {
  return list.length > 0;
}
