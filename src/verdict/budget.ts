import type { CautionCode } from '../basis/caution.js';
import { relation, step1, step2, step3, step4, type Trace } from '../basis/relation.js';
import type { ContributionCode, NotCounted } from '../basis/words.js';
import { pvtAt } from '../gas/door.js';
import { densityUncertainty } from '../gas/state.js';
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
import {
  BY_EMISSIVITY,
  copyOfInstruments,
  gaugeLimit,
  gaugeTemperatureLimit,
  instrumentCautions,
  needInstruments,
  notCovered,
  type Certificate,
  type Instruments,
  type NotCovered,
} from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { gaugeOnCurve, slopeOfCurve, sourceOn, type Curve, type Line } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import type { ReferencePoint, Stated } from '../target/table.js';
import { OFF_TARGET } from './compare.js';
import { quantile, sumOf, type Rectangles, type Sum } from './distribution.js';
import { checkedReading } from './judge.js';

// How sure (reading − target) is, after JCGM 100 (GUM) and JCGM 101: each contribution with its distribution and its
// sensitivity, and the interval from the distribution of their sum.

/**
 * What becomes of a contribution in the mean of several readings and in a round: what differs from reading to reading is
 * lessened by their number; what one instrument does to all its readings, and what is common to everything, is not.
 */
export type Repeats = 'per reading' | 'per instrument' | 'common to all';

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

export const CORRECTED = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_read', 'dp'],
  formula: 'p_read + dp',
  source: 'correction of a calibration certificate, by definition (JCGM 200, 2.53)',
  of: (p_read, dp) => p_read + dp,
});

export const BY_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_T', 'dT'],
  formula: 'p_T * dT',
  source: 'slope of the target with temperature: of the gas at constant density, or of the table',
  of: (p_T, dT) => p_T * dT,
});

export const BY_STATED_PRESSURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_rho', 'p_rho_stated', 'dp'],
  formula: 'p_rho / p_rho_stated * dp',
  source: 'line of constant density, differentiated: an error of the pressure where it is stated',
  of: (p_rho, p_rho_stated, dp) => (p_rho / p_rho_stated) * dp,
});

export const BY_STATED_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_rho', 'p_rho_stated', 'p_T_stated', 'dT'],
  formula: '-p_T_stated * (p_rho / p_rho_stated) * dT',
  source: 'line of constant density, differentiated: an error of the temperature where it is stated',
  of: (p_rho, p_rho_stated, p_T_stated, dT) => -p_T_stated * (p_rho / p_rho_stated) * dT,
});

export const BY_DENSITY = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['rho', 'p_rho', 'e_rho'],
  formula: 'rho * p_rho * e_rho',
  source: 'line of constant density, differentiated: a relative error of the density',
  of: (rho, p_rho, e_rho) => rho * p_rho * e_rho,
});

export const BY_VESSEL = /* @__PURE__ */ relation({
  gives: 'e_rho',
  unit: '1',
  from: ['alpha', 'T', 'T_stated'],
  formula: '-3 * alpha * (T - T_stated)',
  source: 'thermal expansion of a vessel of one material, to first order',
  of: (alpha, T, T_stated) => -3 * alpha * (T - T_stated),
});

export const BY_ROW = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['T', 'T_1', 'T_2', 'dp'],
  formula: '(T_2 - T) / (T_2 - T_1) * dp',
  source: "the maker's table, linear between its rows, differentiated: an error of the row at T_1",
  of: (T, T_1, T_2, dp) => ((T_2 - T) / (T_2 - T_1)) * dp,
});

/** Variance of the difference of the relative errors at the two ends of a line: (u − u′)² + 2 (1 − r) u u′, which is never negative. */
export const EQUATION_OF_STATE = /* @__PURE__ */ relation({
  gives: 'u2_rho',
  unit: '1',
  from: ['u_rho', 'u_rho_stated', 'r_rho'],
  formula: '(u_rho - u_rho_stated) * (u_rho - u_rho_stated) + 2 * (1 - r_rho) * u_rho * u_rho_stated',
  source: 'variance of a difference of two correlated errors (JCGM 100, 5.2)',
  of: (u_rho, u_rho_stated, r_rho) =>
    (u_rho - u_rho_stated) * (u_rho - u_rho_stated) + 2 * (1 - r_rho) * u_rho * u_rho_stated,
});

export const STANDARD_OF_RECTANGLE = /* @__PURE__ */ relation({
  gives: 'u',
  unit: 'Pa',
  from: ['dp'],
  formula: 'dp / sqrt(3)',
  source: 'standard deviation of a rectangle of half width dp (JCGM 100, 4.3.7)',
  of: (dp) => dp / Math.sqrt(3),
});

/** An error of one input, about zero, in SI: what the sum is made of. */
export interface Part {
  readonly of: ContributionCode;
  readonly distribution: Contribution['distribution'];
  readonly size: number;
  readonly unit: 'Pa' | 'K' | '1';
  /** d(reading − p) / d(input), in Pa; p is the target, or a limit. */
  readonly sensitivity: number;
  readonly repeats: Repeats;
}

/** A reading compared with the target or with a limit, and what the difference rests on. */
export interface Comparison {
  /** Gauge pressure of the curve, Pa, and by how much the expansion of the vessel lowers what it stands for. */
  readonly p_g_Pa: number;
  readonly shift_Pa: number;
  readonly parts: readonly Part[];
  readonly notCounted: readonly NotCounted[];
}

/** A curve, how much of it counts, and how the manual printed what it is drawn through. */
export interface Subject {
  readonly about: 'target' | 'lower limit' | 'upper limit';
  readonly curve: Curve;
  /** By which an error of the curve is multiplied: a limit that is a percentage of the target takes over as much of it. */
  readonly factor: number;
  readonly printedStep_Pa: number;
}

/** The target and both limits of a specification. */
export function subjectsOf(
  spec: Specification,
  { printed }: Instruments,
): { readonly target: Subject; readonly lower: Subject; readonly upper: Subject } {
  const { target, limits } = spec['~curves'];
  const { tolerance } = spec;
  const step = (stated: Stated): number =>
    'rows' in stated
      ? stated.printedStep.pascals
      : printed.pressure === 'as the table states'
        ? stepBeside(spec.precharge)
        : printed.pressure.pascals;
  const whole = { factor: 1, printedStep_Pa: step(spec.precharge) };
  const subject: Subject = { about: 'target', curve: target, ...whole };
  if ('minimum' in tolerance) {
    const curves = limits as Exclude<typeof limits, string>; // stated limits have curves of their own
    return {
      target: subject,
      lower: { ...subject, about: 'lower limit', curve: curves.lower, printedStep_Pa: step(tolerance.minimum) },
      upper: { ...subject, about: 'upper limit', curve: curves.upper, printedStep_Pa: step(tolerance.maximum) },
    };
  }
  const about = { lower: 'lower limit', upper: 'upper limit' } as const;
  const percent = 'plusMinusPercentOfGauge' in tolerance ? tolerance.plusMinusPercentOfGauge / 100 : 0;
  const [low, high] = [1 - percent, 1 + percent];
  if (limits !== 'about the target') {
    // The points of the limits have the tolerance in them already; an error of the reference pressure moves them alike, and
    // one of a percentage by a little less or more.
    const { printedStep_Pa } = whole;
    return {
      target: subject,
      lower: { ...subject, about: about.lower, curve: limits.lower, printedStep_Pa: printedStep_Pa * low },
      upper: { ...subject, about: about.upper, curve: limits.upper, printedStep_Pa: printedStep_Pa * high },
    };
  }
  return {
    target: subject,
    lower: { ...subject, about: about.lower, factor: low },
    upper: { ...subject, about: about.upper, factor: high },
  };
}

/** Limits stated at points beside a table are printed as the table is. */
function stepBeside(precharge: Stated): number {
  return 'rows' in precharge ? precharge.printedStep.pascals : 0;
}

/** The line that a curve follows at a temperature; undefined between the rows of a table. */
export function lineAt(curve: Curve, T_K: number): Line | undefined {
  if (curve.by === 'line') return curve;
  const { by, rows } = sourceOn(curve, T_K);
  if (by === 'table' || curve.ends === 'refuse') return undefined;
  return rows[0]?.temperature.kelvins === curve.ends.below.point.T_K ? curve.ends.below : curve.ends.above;
}

/** What was read, with the corrections of the certificates. */
export interface CorrectedReading {
  readonly p_g_Pa: number;
  readonly T_K: number;
  readonly ambient_Pa: number;
}

/** What was read, with the corrections of the certificates. */
export function correctedReading(
  reading: Reading,
  { gauge, thermometer }: Instruments,
  trace?: Trace,
): CorrectedReading {
  const read = reading.pressure.pascals;
  const p_g_Pa =
    'certificate' in gauge.accuracy
      ? step2(trace, CORRECTED, 'reading', read, gauge.accuracy.certificate.correction.pascals)
      : read;
  const T_K =
    reading.temperature.kelvins +
    ('certificate' in thermometer.accuracy ? thermometer.accuracy.certificate.correction.kelvins : 0);
  return { p_g_Pa, T_K, ambient_Pa: reading.ambient.pascals };
}

/** A reading compared with one subject, for checked input. */
export function compareWith(
  spec: Specification,
  reading: Reading,
  instruments: Instruments,
  subject: Subject,
  trace?: Trace,
): Comparison {
  const at = correctedReading(reading, instruments, trace);
  const onCurve = onSubject(spec, at, instruments, subject, trace);
  return {
    p_g_Pa: onCurve.p_g_Pa,
    shift_Pa: subject.factor * onCurve.shift_Pa,
    parts: [
      ...gaugeParts(reading, instruments, trace),
      ...thermometerParts(reading, instruments, onCurve, trace),
      ...onCurve.parts,
    ],
    notCounted: [...notCountedOf(instruments), ...onCurve.notCounted],
  };
}

interface OnSubject {
  readonly p_g_Pa: number;
  readonly shift_Pa: number;
  /** Of (reading − p) with the temperature, Pa/K. */
  readonly byTemperature: number;
  readonly parts: readonly Part[];
  readonly notCounted: readonly NotCounted[];
}

/** The value of a subject's curve at a temperature, and everything that it rests on but the thermometer. */
function onSubject(
  spec: Specification,
  { T_K, ambient_Pa }: CorrectedReading,
  instruments: Instruments,
  { about, curve, factor, printedStep_Pa }: Subject,
  trace?: Trace,
): OnSubject {
  const { gas } = spec;
  const { barometer, printed } = instruments;
  const p_g_Pa = gaugeOnCurve(gas, curve, T_K, ambient_Pa, about, trace);
  const line = lineAt(curve, T_K);
  const rectangle = (
    of: ContributionCode,
    size: number,
    unit: Part['unit'],
    ofTarget: number,
    repeats: Repeats = 'common to all',
  ): Part => ({ of, distribution: 'rectangle', size, unit, sensitivity: -factor * ofTarget, repeats });
  // The gauge pressure wanted falls as the ambient rises.
  const place = rectangle('barometer', barometer.limit.pascals, 'Pa', -1, 'per instrument');
  const [half_Pa, half_K] = [printedStep_Pa / 2, printed.temperature.kelvins / 2];
  const byAmbient = (sensitivity: number): Part =>
    rectangle('printed ambient', printed.ambientLimit.pascals, 'Pa', sensitivity);

  if (line === undefined) {
    const slope = step2(trace, BY_TEMPERATURE, about, slopeOfCurve(gas, curve, T_K), 1);
    const parts = rowWeights(sourceOn(curve, T_K).rows, T_K, about, trace).flatMap((weight) => [
      rectangle('printed pressure', half_Pa, 'Pa', weight),
      rectangle('printed temperature', half_K, 'K', -slope * weight),
    ]);
    return {
      p_g_Pa,
      shift_Pa: 0,
      byTemperature: -factor * slope,
      parts: [place, byAmbient(1), ...parts],
      notCounted: [],
    };
  }

  const { point, rho_mol_m3: rho } = line;
  const here = pvtAt(gas, T_K, rho, 'temperature', about);
  const there = pvtAt(gas, point.T_K, rho, 'temperature', about);
  const [p_rho, p_rho_stated] = [here.dpdrho_T, there.dpdrho_T];
  const byPressure = step3(trace, BY_STATED_PRESSURE, about, p_rho, p_rho_stated, 1);
  const byStatedTemperature = step4(trace, BY_STATED_TEMPERATURE, about, p_rho, p_rho_stated, there.dpdT_rho, 1);
  const byDensity = step3(trace, BY_DENSITY, about, rho, p_rho, 1);
  const vessel = vesselOf(instruments, T_K, point.T_K, about, trace);
  const model = equationOfState(spec, instruments, here.p_Pa, T_K, line, about, trace);
  const parts: Part[] = [
    place,
    rectangle('printed pressure', half_Pa, 'Pa', byPressure),
    rectangle('printed temperature', half_K, 'K', byStatedTemperature),
    byAmbient(byPressure),
    rectangle('vessel', vessel.limit, '1', byDensity),
  ];
  if (model !== 'not stated') {
    const sensitivity = -factor * byDensity;
    parts.push({
      of: 'equation of state',
      distribution: 'normal',
      size: model,
      unit: '1',
      sensitivity,
      repeats: 'common to all',
    });
  }
  return {
    p_g_Pa,
    shift_Pa: byDensity * vessel.correction,
    byTemperature: -factor * step2(trace, BY_TEMPERATURE, about, here.dpdT_rho, 1),
    parts,
    notCounted: model === 'not stated' ? ['uncertainty of the gas model'] : [],
  };
}

/** How much of an error of each row a value between rows takes over; at the last row, all of it. */
function rowWeights(rows: readonly ReferencePoint[], T_K: number, about: string, trace?: Trace): number[] {
  const [low, high] = rows;
  if (low === undefined || high === undefined) return [1];
  const [T_1, T_2] = [low.temperature.kelvins, high.temperature.kelvins];
  return [step4(trace, BY_ROW, about, T_K, T_1, T_2, 1), step4(trace, BY_ROW, about, T_K, T_2, T_1, 1)];
}

/** What the expansion of the vessel does to the density: corrected, and left as a limit. */
function vesselOf(
  { vessel }: Instruments,
  T_K: number,
  T_stated: number,
  about: string,
  trace?: Trace,
): { readonly correction: number; readonly limit: number } {
  const { linearExpansion_per_K: alpha, limit_per_K, treated } = vessel;
  if (treated === 'corrected') {
    const correction = step3(trace, BY_VESSEL, about, alpha, T_K, T_stated);
    return { correction, limit: Math.abs(BY_VESSEL.of(limit_per_K, T_K, T_stated)) };
  }
  return { correction: 0, limit: Math.abs(step3(trace, BY_VESSEL, about, alpha + limit_per_K, T_K, T_stated)) };
}

/** Relative standard uncertainty of density from the model at the two ends of a line, as its source states them. */
export function modelErrors(
  { gas }: Specification,
  { point }: Line,
  T_K: number,
  p_abs_Pa: number,
): { readonly here: number; readonly stated: number } | 'not stated' {
  const here = densityUncertainty(gas, T_K, p_abs_Pa);
  const stated = densityUncertainty(gas, point.T_K, point.p_g_Pa + point.ambient_Pa);
  if (typeof here === 'string' || typeof stated === 'string') return 'not stated';
  // The papers give an uncertainty and no coverage factor: taken as expanded with k = 2, which is what they mean by it.
  return { here: here / 2, stated: stated / 2 };
}

/** Relative standard uncertainty of density that the model leaves to a line; none where both its ends are one state. */
function equationOfState(
  spec: Specification,
  { modelErrorCorrelation }: Instruments,
  p_abs_Pa: number,
  T_K: number,
  line: Line,
  about: string,
  trace?: Trace,
): number | 'not stated' {
  if (T_K === line.point.T_K) return 0;
  const errors = modelErrors(spec, line, T_K, p_abs_Pa);
  if (errors === 'not stated') return errors;
  return Math.sqrt(step3(trace, EQUATION_OF_STATE, about, errors.here, errors.stated, modelErrorCorrelation));
}

function ofCertificate({
  expandedUncertainty,
  coverageFactor,
}: Certificate<PressureDifference | TemperatureDifference>): number {
  const size = 'pascals' in expandedUncertainty ? expandedUncertainty.pascals : expandedUncertainty.kelvins;
  return size / coverageFactor;
}

function gaugeParts(reading: Reading, instruments: Instruments, trace?: Trace): Part[] {
  const { accuracy } = instruments.gauge;
  const limit = gaugeLimit(instruments, reading, trace);
  const own: Pick<Part, 'distribution' | 'size'> =
    limit === undefined && 'certificate' in accuracy
      ? { distribution: 'normal', size: ofCertificate(accuracy.certificate) }
      : { distribution: 'rectangle', size: limit ?? 0 };
  const warm = gaugeTemperatureLimit(instruments, trace);
  const step = pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals;
  const of = (of: ContributionCode, size: number, repeats: Repeats): Part => ({
    of,
    distribution: 'rectangle',
    size,
    unit: 'Pa',
    sensitivity: 1,
    repeats,
  });
  return [
    { ...of('gauge', 0, 'per instrument'), ...own },
    ...(warm === 'not known' ? [] : [of('gauge temperature', warm, 'per instrument')]),
    of('gauge step', step / 2, 'per reading'),
  ];
}

function thermometerParts(
  reading: Reading,
  { thermometer }: Instruments,
  { byTemperature }: OnSubject,
  trace?: Trace,
): Part[] {
  const { accuracy, step, shellToGas } = thermometer;
  const own: Pick<Part, 'distribution' | 'size'> =
    'certificate' in accuracy
      ? { distribution: 'normal', size: ofCertificate(accuracy.certificate) }
      : { distribution: 'rectangle', size: accuracy.limit.kelvins };
  const of = (of: ContributionCode, size: number, repeats: Repeats): Part => ({
    of,
    distribution: 'rectangle',
    size,
    unit: 'K',
    sensitivity: byTemperature,
    repeats,
  });
  const parts = [
    { ...of('thermometer', 0, 'per instrument'), ...own },
    of('thermometer step', step.kelvins / 2, 'per reading'),
    of('shell to gas', shellToGas.kelvins, 'common to all'),
  ];
  if (thermometer.type === 'contact thermometer') return parts;
  const { emissivity, surroundings } = thermometer;
  const T = reading.temperature.kelvins;
  const off = step4(trace, BY_EMISSIVITY, 'emissivity', T, surroundings.kelvins, emissivity.assumed, emissivity.limit);
  return [...parts, of('emissivity', Math.abs(off), 'per instrument')];
}

function notCountedOf(instruments: Instruments): NotCounted[] {
  const { gauge, thermometer } = instruments;
  const codes: NotCounted[] = [];
  if (gaugeTemperatureLimit(instruments) === 'not known') codes.push('temperature of the gauge');
  if ('certificate' in gauge.accuracy || 'certificate' in thermometer.accuracy) codes.push('drift since calibration');
  return codes;
}

/** Standard uncertainty of a part in the mean of several readings, Pa. */
export function standardOf({ distribution, size, sensitivity, repeats }: Part, readings: number): number {
  const one = Math.abs(sensitivity) * size;
  const standard = distribution === 'normal' ? one : STANDARD_OF_RECTANGLE.of(one);
  return repeats === 'per reading' ? standard / Math.sqrt(readings) : standard;
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
  const because = notCovered(instruments, reading);
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
  const contributions = parts.map((part): Contribution => {
    const standard = standardOf(part, readings);
    const { of, distribution, sensitivity, repeats } = part;
    if (trace !== undefined && distribution === 'rectangle')
      step1(trace, STANDARD_OF_RECTANGLE, of, Math.abs(sensitivity) * part.size);
    const share = (standard * standard) / (sum.standard * sum.standard);
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
  const expanded = coverageFactor * sum.standard;
  const unit_Pa = pressureDifference(1, gaugeStep.unit).pascals;
  const tolerance = toleranceOf(valueIn(pressureDifferenceOf(sum.standard), gaugeStep.unit)) * unit_Pa;
  return {
    contributions: contributions.sort((a, b) => b.share - a.share),
    standard: pressureDifferenceOf(sum.standard),
    interval: {
      coverage: COVERAGE,
      lower: pressureDifferenceOf(off_Pa - half),
      upper: pressureDifferenceOf(off_Pa + half),
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
  needInstruments(own.instruments, own.reading, 'rows' in spec.precharge);
  return own;
}
