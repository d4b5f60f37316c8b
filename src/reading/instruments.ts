import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import {
  aboveFullScale,
  notACount,
  notADate,
  notAnAccuracyClass,
  notANumber,
  notOneOf,
  notPositive,
  outsideBounds,
  unknownWord,
} from '../basis/problem.js';
import type { CautionCode } from '../basis/caution.js';
import { relation, step2, step4, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import type { Undecided } from '../basis/words.js';
import {
  need,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { pressureDifference } from '../quantity/pressure.js';
import { inBar } from '../quantity/unit.js';
import { isObject } from '../target/table.js';
import { needSize } from '../target/tolerance.js';
import type { Reading } from './reading.js';

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

/** What a calibration certificate states of an instrument at, or near, the value that was read. */
export interface Certificate<Difference> {
  /** To be added to what the instrument shows; minus the error of indication. */
  readonly correction: Difference;
  /** As printed, with its coverage factor. More than zero. */
  readonly expandedUncertainty: Difference;
  /** The k beside the expanded uncertainty, usually 2. More than zero. */
  readonly coverageFactor: number;
  /** Last day on which the certificate holds, as an RFC 3339 date. Past it there is a caution. */
  readonly due: string;
}

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

/** What every thermometer states. */
interface AnyThermometer {
  /** Limit of its error, or what its certificate says: exactly one. */
  readonly accuracy:
    { readonly limit: TemperatureDifference } | { readonly certificate: Certificate<TemperatureDifference> };
  /** Smallest division to which it is read. Zero or more. */
  readonly step: TemperatureDifference;
  /** Largest difference between the shell, which is measured, and the gas inside, which is meant. Zero or more. */
  readonly shellToGas: TemperatureDifference;
}

/** A thermometer pressed on the shell. */
export interface ContactThermometer extends AnyThermometer {
  readonly type: 'contact thermometer';
}

/** A thermometer that reads the radiation of the shell. */
export interface InfraredThermometer extends AnyThermometer {
  readonly type: 'infrared thermometer';
  readonly emissivity: {
    /** To which the thermometer is set: 0.05 to 1. */
    readonly assumed: number;
    /** By how much that of the paint may differ from it. Zero or more, at most half of the one assumed. */
    readonly limit: number;
  };
  /** Temperature of what the shell mirrors: walls, engine, sky. */
  readonly surroundings: Temperature;
}

/** A thermometer on the shell of an accumulator. */
export type Thermometer = ContactThermometer | InfraredThermometer;

/**
 * What is known of everything that a comparison of a reading with its target rests on, as it was used on that day. Nothing
 * here has a default. A limit is the end of what is possible, and counts as a rectangle; zero says that there is no error.
 */
export interface Instruments {
  readonly gauge: DialGauge | DigitalGauge;
  readonly thermometer: Thermometer;
  readonly barometer: {
    /** How far the ambient pressure of the reading may be wrong. Zero or more. */
    readonly limit: PressureDifference;
  };
  /** How the manual prints its values. */
  readonly printed: {
    /** Step of the reference pressure: half of it is its limit of error. A table has stated its own, as `printedStep`. */
    readonly pressure: PressureDifference | 'as the table states';
    /** Step of the reference temperature, or of those of the rows; zero where a round value is meant exactly. */
    readonly temperature: TemperatureDifference;
    /** How far the ambient that the manual means may lie from the one stated in the specification. Zero or more. */
    readonly ambientLimit: PressureDifference;
  };
  /**
   * Correlation between the errors of the equation of state at the two ends of a line of constant density, −1 to 1: a
   * smooth equation errs alike at both, and at 1 they cancel; 0 is careful.
   */
  readonly modelErrorCorrelation: number;
  /** Thermal expansion of the vessel, which lowers the pressure of a hot one: about −0.12 bar over 20 K for steel. */
  readonly vessel: {
    /** Linear, per kelvin: about 12e-6 for carbon steel (handbook value, from memory). Zero or more, at most 1e-4. */
    readonly linearExpansion_per_K: number;
    /** Half width of what the coefficient may be. Zero or more, at most the coefficient. */
    readonly limit_per_K: number;
    /** Its effect corrected, or left out of the target and its whole size counted as a limit to both sides. */
    readonly treated: 'corrected' | 'as uncertainty';
  };
  /**
   * How many readings, each taken anew with gauge tapped and thermometer lifted, the reading is the mean of; 1 to 100.
   * They lessen the rounding to the steps, and only if they differ by a step or more: equal readings share their rounding.
   * Their scatter itself is not counted.
   */
  readonly readings: number;
  /** Day of the reading, as an RFC 3339 date: certificates past due on it carry a caution. */
  readonly on: string;
}

/** Why the uncertainty of a reading cannot be stated: the accuracy of the gauge does not hold there. */
export type NotCovered = Exclude<Undecided, 'no evidence'>;

// EN 837-1, from memory.
const PERCENT_OF_SPAN_PER_KELVIN = 0.04;
const REFERENCE_K = 293.15;
/**
 * Most readings that a mean may be of.
 *
 * @example
 * ```ts
 * MOST_READINGS; // => 100
 * ```
 */
export const MOST_READINGS = 100;

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

export const BY_EMISSIVITY = /* @__PURE__ */ relation({
  gives: 'dT',
  unit: 'K',
  from: ['T', 'T_surroundings', 'emissivity', 'd_emissivity'],
  formula:
    '(T * T * T * T - T_surroundings * T_surroundings * T_surroundings * T_surroundings) / (4 * T * T * T) * (d_emissivity / emissivity)',
  source: 'Stefan–Boltzmann law for a grey shell that mirrors its surroundings; differentiated',
  of: (T, T_surroundings, emissivity, d_emissivity) =>
    ((T * T * T * T - T_surroundings * T_surroundings * T_surroundings * T_surroundings) / (4 * T * T * T)) *
    (d_emissivity / emissivity),
});

const AS_IT_IS = 'as it is';
const CERTIFICATE: Fields = {
  correction: AS_IT_IS,
  expandedUncertainty: AS_IT_IS,
  coverageFactor: AS_IT_IS,
  due: AS_IT_IS,
};
const INSTRUMENTS: Fields = {
  gauge: {
    type: AS_IT_IS,
    fullScale: AS_IT_IS,
    accuracy: {
      accuracyClass: AS_IT_IS,
      limit: AS_IT_IS,
      percentOfReading: AS_IT_IS,
      percentOfSpan: AS_IT_IS,
      digits: AS_IT_IS,
      certificate: CERTIFICATE,
    },
    temperature: {
      is: AS_IT_IS,
      from: AS_IT_IS,
      percentOfSpanPerKelvin: AS_IT_IS,
    },
    zero: AS_IT_IS,
  },
  thermometer: {
    type: AS_IT_IS,
    accuracy: { limit: AS_IT_IS, certificate: CERTIFICATE },
    step: AS_IT_IS,
    shellToGas: AS_IT_IS,
    emissivity: { assumed: AS_IT_IS, limit: AS_IT_IS },
    surroundings: AS_IT_IS,
  },
  barometer: { limit: AS_IT_IS },
  printed: {
    pressure: AS_IT_IS,
    temperature: AS_IT_IS,
    ambientLimit: AS_IT_IS,
  },
  modelErrorCorrelation: AS_IT_IS,
  vessel: {
    linearExpansion_per_K: AS_IT_IS,
    limit_per_K: AS_IT_IS,
    treated: AS_IT_IS,
  },
  readings: AS_IT_IS,
  on: AS_IT_IS,
};

/** A set of instruments whose parts are read once; they are not checked yet. */
export function copyOfInstruments(instruments: Instruments): Instruments {
  return taken(instruments, INSTRUMENTS);
}

/** Limit of error of a gauge at a reading, in Pa; undefined where a certificate speaks instead. */
export function gaugeLimit(
  { gauge }: Instruments,
  { pressure, gaugeStep }: Reading,
  trace?: Trace,
): number | undefined {
  const { accuracy, fullScale } = gauge;
  const span = fullScale.pascals;
  if ('certificate' in accuracy) return undefined;
  if ('limit' in accuracy) return accuracy.limit.pascals;
  if ('accuracyClass' in accuracy) return step2(trace, OF_SPAN, 'gauge', accuracy.accuracyClass, span);
  const { percentOfReading, percentOfSpan, digits } = accuracy;
  const ofReading = step2(trace, OF_READING, 'gauge', percentOfReading, pressure.pascals);
  const ofSpan = step2(trace, OF_SPAN, 'gauge', percentOfSpan, span);
  const digit = pressureDifference(gaugeStep.step, gaugeStep.unit).pascals;
  return step4(trace, DIGITAL, 'gauge', ofReading, ofSpan, digits, digit);
}

/** Limit of what the temperature of a gauge itself does to it, in Pa. */
export function gaugeTemperatureLimit({ gauge }: Instruments, trace?: Trace): number | 'not known' {
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

/** Whether a reading lies where the accuracy of its gauge holds. */
export function notCovered({ gauge }: Instruments, { pressure }: Reading): NotCovered | undefined {
  if (pressure.pascals < 0) return 'reading below zero';
  if (gauge.type === 'digital gauge' || gauge.zero === 'without stop pin') return undefined;
  return pressure.pascals < gauge.fullScale.pascals / 10
    ? 'reading in the first tenth of a scale with stop pin'
    : undefined;
}

/** What is to be said of instruments beside a result. */
export function instrumentCautions({ gauge, thermometer, on }: Instruments, { pressure }: Reading): CautionCode[] {
  const codes: CautionCode[] = [];
  const certificates = [gauge.accuracy, thermometer.accuracy].flatMap((accuracy) =>
    'certificate' in accuracy ? [accuracy.certificate] : [],
  );
  // Dates of RFC 3339 stand in the order of their texts.
  if (certificates.some(({ due }) => due < on)) codes.push('certificate past due');
  // EN 837-2, from memory: three quarters of the scale under steady pressure. It is about gauges with a Bourdon tube.
  if (gauge.type === 'dial gauge' && pressure.pascals > 0.75 * gauge.fullScale.pascals)
    codes.push('reading high on the scale');
  return codes;
}

type Check = (path: string, admit: () => void) => void;

/** Checks what is stated of instruments, by itself and for a reading, and reports all that is wrong. */
export function needInstruments(instruments: Instruments, reading: Reading, byTable: boolean): void {
  if (!isObject(instruments)) wrongKind('set of instruments: gauge, thermometer and more', instruments, 'instruments');
  const problems: Problem[] = [];
  const check: Check = (path, admit) => {
    collect(problems, `instruments.${path}`, admit);
  };
  const { gauge, thermometer, barometer, printed, vessel } = instruments;
  check('gauge', () => needGauge(gauge, reading));
  check('thermometer', () => needThermometer(thermometer));
  check('barometer.limit', () => needLimit(barometer?.limit));
  check('printed.pressure', () => needPrinted(printed?.pressure, byTable));
  check('printed.temperature', () => needSpan(printed?.temperature));
  check('printed.ambientLimit', () => needLimit(printed?.ambientLimit));
  check('modelErrorCorrelation', () => needBetween(instruments.modelErrorCorrelation, -1, 1, ''));
  check('vessel', () => needVessel(vessel));
  check('readings', () => needCount(instruments.readings, 1, MOST_READINGS));
  check('on', () => needDate(instruments.on));
  failIfAny(problems);
}

/** Runs every check of a part, and throws all its problems together. */
function all(...checks: (readonly [path: string, admit: () => void])[]): void {
  const problems: Problem[] = [];
  for (const [path, admit] of checks) collect(problems, path, admit);
  failIfAny(problems);
}

export function needGauge(gauge: DialGauge | DigitalGauge, { pressure }: Pick<Reading, 'pressure'>): void {
  if (!isObject(gauge)) wrongKind('gauge, a dial gauge or a digital gauge', gauge, '');
  const { fullScale } = gauge;
  all(
    ['type', () => needWord(gauge.type, ['dial gauge', 'digital gauge'])],
    ['fullScale', () => needScale(fullScale, pressure)],
    ['accuracy', () => (gauge.type === 'digital gauge' ? needDigital(gauge) : needDial(gauge))],
    ['temperature', () => needGaugeTemperature(gauge)],
    ['zero', () => gauge.type !== 'digital gauge' && needWord(gauge.zero, ['with stop pin', 'without stop pin'])],
  );
}

/** Refuses a full scale that is none, and a reading beyond it. */
export function needScale(fullScale: GaugePressure, pressure: GaugePressure): void {
  need('gauge pressure', fullScale, '');
  if (!(fullScale.pascals > 0)) fail(notPositive, '', `${inBar(fullScale.pascals)} gauge`);
  if (fullScale.pascals > MOST_PA)
    fail(outsideBounds, '', `${inBar(fullScale.pascals)} gauge`, {
      bounds: AT_MOST_BAR,
    });
  if (pressure.pascals > fullScale.pascals)
    fail(aboveFullScale, '', `a reading of ${inBar(pressure.pascals)} gauge`, { most: inBar(fullScale.pascals) });
}

function needDial({ accuracy }: DialGauge): void {
  const one = oneOf(accuracy, ['accuracyClass', 'limit', 'certificate']);
  if (one === 'certificate' && 'certificate' in accuracy)
    all(['certificate', () => needCertificate(accuracy.certificate, 'pressure difference')]);
  if (one === 'limit' && 'limit' in accuracy) all(['limit', () => needPositive('pressure difference', accuracy.limit)]);
  if (one === 'accuracyClass' && 'accuracyClass' in accuracy && !ACCURACY_CLASSES.includes(accuracy.accuracyClass))
    fail(notAnAccuracyClass, one, quote(accuracy.accuracyClass), { classes: ACCURACY_CLASSES.join(', ') });
}

function needDigital({ accuracy }: DigitalGauge): void {
  if (isObject(accuracy) && 'certificate' in accuracy) {
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

function needGaugeTemperature(gauge: DialGauge | DigitalGauge): void {
  const { temperature } = gauge;
  if (temperature === 'not known') return;
  if (gauge.type !== 'digital gauge') return needTemperature(temperature as Temperature);
  if (!isObject(temperature) || !('is' in temperature))
    wrongKind("influence of temperature: is, from and percentOfSpanPerKelvin, or 'not known'", temperature, '');
  all(
    ['is', () => needTemperature(temperature.is)],
    ['from', () => needTemperature(temperature.from)],
    ['percentOfSpanPerKelvin', () => needBetween(temperature.percentOfSpanPerKelvin, 0, 1, '%/K')],
  );
}

export function needThermometer(thermometer: Thermometer): void {
  if (!isObject(thermometer)) wrongKind('contact or infrared thermometer', thermometer, '');
  const { type, accuracy, step, shellToGas } = thermometer;
  all(
    ['type', () => needWord(type, ['contact thermometer', 'infrared thermometer'])],
    ['accuracy', () => needThermometerAccuracy(accuracy)],
    ['step', () => needSpan(step)],
    ['shellToGas', () => needSpan(shellToGas)],
    ['', () => thermometer.type === 'infrared thermometer' && needInfrared(thermometer)],
  );
}

function needThermometerAccuracy(accuracy: Thermometer['accuracy']): void {
  const one = oneOf(accuracy, ['limit', 'certificate']);
  if (one === 'certificate' && 'certificate' in accuracy)
    all(['certificate', () => needCertificate(accuracy.certificate, 'temperature difference')]);
  if (one === 'limit' && 'limit' in accuracy)
    all(['limit', () => needPositive('temperature difference', accuracy.limit)]);
}

function needInfrared({ emissivity, surroundings }: InfraredThermometer): void {
  const assumed: unknown = emissivity?.assumed;
  all(
    ['emissivity.assumed', () => needBetween(emissivity?.assumed, 0.05, 1, '')],
    [
      'emissivity.limit',
      () => typeof assumed === 'number' && needBetween(emissivity?.limit, 0, Math.min(assumed, 1) / 2, ''),
    ],
    ['surroundings', () => needTemperature(surroundings)],
  );
}

export function needPrinted(pressure: Instruments['printed']['pressure'], byTable: boolean): void {
  if (byTable) return needWord(pressure, ['as the table states']);
  if (pressure === 'as the table states')
    fail(unknownWord, '', quote(pressure), { words: 'a pressure difference, because the specification has no table' });
  needLimit(pressure);
}

export function needVessel(vessel: Instruments['vessel']): void {
  if (!isObject(vessel)) wrongKind('vessel: linearExpansion_per_K, limit_per_K and treated', vessel, '');
  const { linearExpansion_per_K, limit_per_K, treated } = vessel;
  all(
    ['linearExpansion_per_K', () => needBetween(linearExpansion_per_K, 0, 1e-4, 'per K')],
    [
      'limit_per_K',
      () => Number.isFinite(linearExpansion_per_K) && needBetween(limit_per_K, 0, linearExpansion_per_K, 'per K'),
    ],
    ['treated', () => needWord(treated, ['corrected', 'as uncertainty'])],
  );
}

type Difference = PressureDifference | TemperatureDifference;

function needCertificate(certificate: Certificate<Difference>, kind: Difference['kind']): void {
  if (!isObject(certificate))
    wrongKind('certificate: correction, expandedUncertainty, coverageFactor and due', certificate, '');
  const { correction, expandedUncertainty, coverageFactor, due } = certificate;
  all(
    [
      'correction',
      () => {
        need<string>(kind, correction, '');
        needOfInstrument(correction);
      },
    ],
    ['expandedUncertainty', () => needPositive(kind, expandedUncertainty)],
    [
      'coverageFactor',
      () => {
        if (!Number.isFinite(coverageFactor)) fail(notANumber, '', quote(coverageFactor));
        if (!(coverageFactor > 0)) fail(notPositive, '', String(coverageFactor));
        needBetween(coverageFactor, LEAST_FACTOR, MOST_FACTOR, '');
      },
    ],
    ['due', () => needDate(due)],
  );
}

function needPositive(kind: Difference['kind'], value: Difference): void {
  need<string>(kind, value, '');
  const size = 'pascals' in value ? value.pascals : value.kelvins;
  if (!(size > 0)) fail(notPositive, '', 'pascals' in value ? `${inBar(size)} difference` : `${size} K`);
  needOfInstrument(value);
}

// No instrument on board has, or errs by, as much; the square of what is vastly more is no number.
const [MOST_PA, MOST_K] = [1e9, 1000];
const [LEAST_FACTOR, MOST_FACTOR] = [0.1, 100];
const AT_MOST_BAR = `at most ${inBar(MOST_PA)}`;

/** Refuses a difference that no instrument has. */
function needOfInstrument(value: Difference): void {
  const [size, most] = 'pascals' in value ? [value.pascals, MOST_PA] : [value.kelvins, MOST_K];
  if (Math.abs(size) <= most) return;
  const isPressure = 'pascals' in value;
  const found = isPressure ? `${inBar(size)} difference` : `${size} K`;
  fail(outsideBounds, '', found, {
    bounds: isPressure ? AT_MOST_BAR : `at most ${MOST_K} K`,
  });
}

export function needLimit(size: PressureDifference): void {
  needSize(size);
  needOfInstrument(size);
}

/** Refuses a temperature that no gauge, and nothing about an accumulator, has. */
export function needTemperature(value: Temperature): void {
  need('temperature', value, '');
  if (value.kelvins > 2 * MOST_K)
    fail(outsideBounds, '', `${value.kelvins} K`, {
      bounds: `at most ${2 * MOST_K} K`,
    });
}

/** Refuses what is no temperature difference of zero or more. */
export function needSpan(size: TemperatureDifference): void {
  need('temperature difference', size, '');
  if (size.kelvins < 0) fail(outsideBounds, '', `${size.kelvins} K`, { bounds: 'zero or more' });
  needOfInstrument(size);
}

export function needBetween(value: number, least: number, most: number, unit: string): void {
  if (!Number.isFinite(value)) fail(notANumber, '', quote(value));
  if (value >= least && value <= most) return;
  const of = unit === '' ? '' : ` ${unit}`;
  fail(outsideBounds, '', `${value}${of}`, { bounds: `${least} to ${most}${of}` });
}

export function needCount(value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  fail(notACount, '', quote(value), { least: String(least), most: String(most) });
}

function needWord(found: unknown, words: readonly string[]): void {
  if (typeof found === 'string' && words.includes(found)) return;
  fail(unknownWord, '', quote(found), { words: words.map((word) => `'${word}'`).join(' or ') });
}

function oneOf(given: object, keys: readonly string[]): string {
  const found = isObject(given) ? keys.filter((key) => key in given) : [];
  const [one] = found;
  if (one !== undefined && found.length === 1) return one;
  return fail(notOneOf, '', found.join(' with ') || 'none of them', { words: keys.join(', ') });
}

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Refuses what is no day of the calendar, written as RFC 3339 has it. */
export function needDate(date: string): void {
  const parts = typeof date === 'string' ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) : null;
  const [year, month, day] = [Number(parts?.[1]), Number(parts?.[2]), Number(parts?.[3])];
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 1 : 0;
  if (parts !== null && day >= 1 && day <= (DAYS[month - 1] ?? 0) + leap) return;
  fail(notADate, '', quote(date));
}
