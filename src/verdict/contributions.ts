import { has } from '../basis/has.js';
import { step1, step2, step3, step4, type Trace } from '../basis/relation.js';
import type { ContributionCode, NotCounted } from '../basis/words.js';
import { pvtAt } from '../gas/door.js';
import { densityUncertainty } from '../gas/state.js';
import type { PressureDifference, TemperatureDifference } from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import type { Certificate } from '../reading/certificate.js';
import { gaugeLimit, gaugeTemperatureLimit } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { BY_EMISSIVITY } from '../reading/thermometer.js';
import { gaugeOnCurve, slopeOfCurve, sourceOn, type Line } from '../target/curve.js';
import type { Specification } from '../target/specification.js';
import type { ReferencePoint } from '../target/table.js';
import { correctedReading, type CorrectedReading } from './corrected-reading.js';
import {
  BY_DENSITY,
  BY_ROW,
  BY_STATED_PRESSURE,
  BY_STATED_TEMPERATURE,
  BY_TEMPERATURE,
  BY_VESSEL,
  EQUATION_OF_STATE,
  HALF_STEP,
  HALF_STEP_OF_TEMPERATURE,
  LARGEST_EXPANSION,
  OF_CERTIFICATE,
  OF_CERTIFICATE_OF_TEMPERATURE,
} from './relations.js';
import { lineAt, type Subject } from './subject.js';

// Every error on which the difference of a reading from the target, or from a limit, rests: how large it may be, and by how
// much the difference changes with it.

/**
 * What becomes of a contribution in the mean of several readings and in a round: what differs from reading to reading is
 * lessened by their number; what one instrument does to all its readings, and what is common to everything, is not.
 */
export type Repeats = 'per reading' | 'per instrument' | 'common to all';

/** An error of one input, about zero, in SI: what the sum is made of. */
export interface Part {
  readonly of: ContributionCode;
  readonly distribution: 'rectangle' | 'normal';
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
  const half_Pa = step1(trace, HALF_STEP, 'printed pressure', printedStep_Pa);
  const half_K = step1(trace, HALF_STEP_OF_TEMPERATURE, 'printed temperature', printed.temperature.kelvins);
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
  const most = limit_per_K === 0 ? alpha : step2(trace, LARGEST_EXPANSION, about, alpha, limit_per_K);
  return { correction: 0, limit: Math.abs(step3(trace, BY_VESSEL, about, most, T_K, T_stated)) };
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

function ofCertificate(
  { expandedUncertainty, coverageFactor }: Certificate<PressureDifference | TemperatureDifference>,
  about: ContributionCode,
  trace?: Trace,
): number {
  return has(expandedUncertainty, 'pascals')
    ? step2(trace, OF_CERTIFICATE, about, expandedUncertainty.pascals, coverageFactor)
    : step2(trace, OF_CERTIFICATE_OF_TEMPERATURE, about, expandedUncertainty.kelvins, coverageFactor);
}

function gaugeParts(reading: Reading, instruments: Instruments, trace?: Trace): Part[] {
  const { accuracy } = instruments.gauge;
  const own: Pick<Part, 'distribution' | 'size'> = has(accuracy, 'certificate')
    ? { distribution: 'normal', size: ofCertificate(accuracy.certificate, 'gauge', trace) }
    : { distribution: 'rectangle', size: gaugeLimit(instruments.gauge, accuracy, reading, trace) };
  const warm = gaugeTemperatureLimit(instruments.gauge, trace);
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
    of('gauge step', step1(trace, HALF_STEP, 'gauge step', step), 'per reading'),
  ];
}

function thermometerParts(
  reading: Reading,
  { thermometer }: Instruments,
  { byTemperature }: OnSubject,
  trace?: Trace,
): Part[] {
  const { accuracy, step, shellToGas } = thermometer;
  const own: Pick<Part, 'distribution' | 'size'> = has(accuracy, 'certificate')
    ? { distribution: 'normal', size: ofCertificate(accuracy.certificate, 'thermometer', trace) }
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
    of('thermometer step', step1(trace, HALF_STEP_OF_TEMPERATURE, 'thermometer step', step.kelvins), 'per reading'),
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
  if (gaugeTemperatureLimit(gauge) === 'not known') codes.push('temperature of the gauge');
  if (has(gauge.accuracy, 'certificate') || has(thermometer.accuracy, 'certificate'))
    codes.push('drift since calibration');
  return codes;
}
