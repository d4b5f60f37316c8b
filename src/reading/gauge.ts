import { fail, quote } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { notAnAccuracyClass, notPositive } from '../basis/problem.js';
import { relation, step2, step4, type Trace } from '../basis/relation.js';
import type { Undecided } from '../basis/words.js';
import { wrongKind, type GaugePressure, type PressureDifference, type Temperature } from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { isObject } from '../target/table.js';
import { needCertificate, type Certificate } from './certificate.js';
import { all, needBetween, needCount, needPositive, needScale, needTemperature, needWord, oneOf } from './checks.js';
import { shown, type Reading } from './reading.js';

/** Accuracy class of a dial gauge after EN 837-1: the limit of its error as a percentage of its span. */
export type AccuracyClass = 0.1 | 0.25 | 0.6 | 1 | 1.6 | 2.5 | 4;

/**
 * The accuracy classes of EN 837-1, from memory, finest first: limits of error as percentages of span.
 *
 * @example
 * ```ts
 * ACCURACY_CLASSES.includes(1.6); // => true
 * ```
 */
export const ACCURACY_CLASSES: readonly AccuracyClass[] = [0.1, 0.25, 0.6, 1, 1.6, 2.5, 4];

/** A pressure gauge with a pointer. Its scale begins at zero. */
export interface DialGauge {
  readonly type: 'dial gauge';
  /** End of its scale. More than zero. */
  readonly fullScale: GaugePressure;
  /** Its class after EN 837-1, or a limit of error of its own, or what its certificate says: exactly one. */
  readonly accuracy:
    | { readonly accuracyClass: AccuracyClass }
    | { readonly limit: PressureDifference }
    | { readonly certificate: Certificate<PressureDifference> };
  /** Of the gauge itself: 0.04 % of span for every kelvin from 20 °C (EN 837-1). Not known, it is not counted. */
  readonly temperature: Temperature | 'not known';
  /** With a stop pin the pointer rests off zero, and the class does not cover the first tenth of the scale. */
  readonly zero: 'with stop pin' | 'without stop pin';
}

/** A pressure gauge with digits. The last one counts as the smallest division of the reading, its `gaugeStep`. */
export interface DigitalGauge {
  readonly type: 'digital gauge';
  /** End of its range. More than zero. */
  readonly fullScale: GaugePressure;
  /** Of its data sheet: the sum of percent of reading, percent of span and counts of the last digit. Or a certificate. */
  readonly accuracy:
    | { readonly percentOfReading: number; readonly percentOfSpan: number; readonly digits: number }
    | { readonly certificate: Certificate<PressureDifference> };
  /** What its data sheet says of temperature: per cent of span for every kelvin from a reference. Not known, not counted. */
  readonly temperature:
    { readonly is: Temperature; readonly from: Temperature; readonly percentOfSpanPerKelvin: number } | 'not known';
}

/** A gauge on the gas side of an accumulator. */
export type Gauge = DialGauge | DigitalGauge;

/** Why the uncertainty of a reading cannot be stated: the accuracy of the gauge does not hold there. */
export type NotCovered = Exclude<Undecided, 'no evidence'>;

// EN 837-1, from memory.
const PERCENT_OF_SPAN_PER_KELVIN = 0.04;
const REFERENCE_K = 293.15;

export const OF_SPAN = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['percent', 'p_span'],
  formula: 'percent / 100 * p_span',
  source: 'accuracy class: limit of error as a percentage of span (EN 837-1, from memory)',
  of: (percent, p_span) => (percent / 100) * p_span,
});

export const BY_GAUGE_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['percent_K', 'p_span', 'T_gauge', 'T_gauge_ref'],
  formula: 'percent_K / 100 * p_span * abs(T_gauge - T_gauge_ref)',
  source: 'influence of temperature on a gauge: 0.04 % of span per kelvin from 20 °C (EN 837-1, from memory)',
  of: (percent_K, p_span, T_gauge, T_gauge_ref) => (percent_K / 100) * p_span * Math.abs(T_gauge - T_gauge_ref),
});

export const OF_READING = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['percent', 'p_read'],
  formula: 'percent / 100 * p_read',
  source: 'limit of error as a percentage of reading, as data sheets state it (common practice, no source)',
  of: (percent, p_read) => (percent / 100) * p_read,
});

export const DIGITAL = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['dp_reading', 'dp_span', 'digits', 'dp_step'],
  formula: 'dp_reading + dp_span + digits * dp_step',
  source: 'limit of error of a digital gauge, as its data sheet adds it up (common practice, no source)',
  of: (dp_reading, dp_span, digits, dp_step) => dp_reading + dp_span + digits * dp_step,
});

/** An accuracy that is stated as a limit of error; else a certificate speaks. */
type Limited = Exclude<Gauge['accuracy'], { readonly certificate: unknown }>;

/** Limit of error of a gauge at a reading, in Pa. */
export function gaugeLimit(
  { fullScale }: Gauge,
  accuracy: Limited,
  { pressure, gaugeStep }: Reading,
  trace?: Trace,
): number {
  const span = fullScale.pascals;
  if (has(accuracy, 'limit')) return accuracy.limit.pascals;
  if (has(accuracy, 'accuracyClass')) return step2(trace, OF_SPAN, 'gauge', accuracy.accuracyClass, span);
  const { percentOfReading, percentOfSpan, digits } = accuracy;
  const ofReading = step2(trace, OF_READING, 'gauge', percentOfReading, pressure.pascals);
  const ofSpan = step2(trace, OF_SPAN, 'gauge', percentOfSpan, span);
  const digit = pressureDifference(gaugeStep.step, gaugeStep.unit).pascals;
  return step4(trace, DIGITAL, 'gauge', ofReading, ofSpan, digits, digit);
}

/** Limit of what the temperature of a gauge itself does to it, in Pa. */
export function gaugeTemperatureLimit(gauge: Gauge, trace?: Trace): number | 'not known' {
  if (gauge.temperature === 'not known') return 'not known';
  const span = gauge.fullScale.pascals;
  const about = 'gauge temperature';
  if (gauge.type === 'dial gauge')
    return step4(
      trace,
      BY_GAUGE_TEMPERATURE,
      about,
      PERCENT_OF_SPAN_PER_KELVIN,
      span,
      gauge.temperature.kelvins,
      REFERENCE_K,
    );
  const { is, from, percentOfSpanPerKelvin } = gauge.temperature;
  return step4(trace, BY_GAUGE_TEMPERATURE, about, percentOfSpanPerKelvin, span, is.kelvins, from.kelvins);
}

/** Whether a reading, as the gauge showed it, lies where the accuracy of its gauge holds. */
export function notCovered(gauge: Gauge, reading: Reading): NotCovered | undefined {
  const pressure = shown(reading);
  if (pressure.pascals < 0) return 'reading below zero';
  if (pressure.pascals > gauge.fullScale.pascals) return 'reading above full scale';
  if (gauge.type === 'digital gauge' || gauge.zero === 'without stop pin') return undefined;
  return pressure.pascals < gauge.fullScale.pascals / 10
    ? 'reading in the first tenth of a scale with stop pin'
    : undefined;
}

export function needGauge(gauge: Gauge): void {
  if (!isObject(gauge)) wrongKind('gauge, a dial gauge or a digital gauge', gauge, '');
  const { fullScale } = gauge;
  all(
    ['type', () => needWord(gauge.type, ['dial gauge', 'digital gauge'])],
    ['fullScale', () => needScale(fullScale)],
    ['accuracy', () => (gauge.type === 'digital gauge' ? needDigital(gauge) : needDial(gauge))],
    ['temperature', () => needGaugeTemperature(gauge)],
    ['zero', () => gauge.type !== 'digital gauge' && needWord(gauge.zero, ['with stop pin', 'without stop pin'])],
  );
}

function needDial({ accuracy }: DialGauge): void {
  const one = oneOf(accuracy, ['accuracyClass', 'limit', 'certificate']);
  if (one === 'certificate' && has(accuracy, 'certificate'))
    all(['certificate', () => needCertificate(accuracy.certificate, 'pressure difference')]);
  if (one === 'limit' && has(accuracy, 'limit'))
    all(['limit', () => needPositive('pressure difference', accuracy.limit)]);
  if (one === 'accuracyClass' && has(accuracy, 'accuracyClass') && !ACCURACY_CLASSES.includes(accuracy.accuracyClass))
    fail(notAnAccuracyClass, one, quote(accuracy.accuracyClass), { classes: ACCURACY_CLASSES.join(', ') });
}

function needDigital({ accuracy }: DigitalGauge): void {
  if (isObject(accuracy) && has(accuracy, 'certificate')) {
    oneOf(accuracy, ['certificate', 'percentOfReading', 'percentOfSpan', 'digits']);
    return all(['certificate', () => needCertificate(accuracy.certificate, 'pressure difference')]);
  }
  if (!isObject(accuracy)) return wrongKind('accuracy: percentOfReading, percentOfSpan and digits', accuracy, '');
  const { percentOfReading, percentOfSpan, digits } = accuracy;
  all(
    ['percentOfReading', () => needBetween(percentOfReading, 0, 100, '%')],
    ['percentOfSpan', () => needBetween(percentOfSpan, 0, 100, '%')],
    ['digits', () => needCount(digits, 0, 1000)],
  );
  // No gauge is exact; this one would leave its largest error out.
  if (percentOfReading + percentOfSpan + digits === 0) fail(notPositive, '', 'an accuracy of 0 %, 0 % and 0 digits');
}

function needGaugeTemperature(gauge: Gauge): void {
  const { temperature } = gauge;
  if (temperature === 'not known') return;
  if (gauge.type !== 'digital gauge') return needTemperature(temperature as Temperature);
  if (!isObject(temperature) || !has(temperature, 'is'))
    wrongKind("influence of temperature: is, from and percentOfSpanPerKelvin, or 'not known'", temperature, '');
  all(
    ['is', () => needTemperature(temperature.is)],
    ['from', () => needTemperature(temperature.from)],
    ['percentOfSpanPerKelvin', () => needBetween(temperature.percentOfSpanPerKelvin, 0, 1, '%/K')],
  );
}
