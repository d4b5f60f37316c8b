import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { correctedTwice, unknownWord } from '../basis/problem.js';
import type { CautionCode } from '../basis/caution.js';
import { taken, type Fields } from '../basis/taken.js';
import { wrongKind, type PressureDifference, type TemperatureDifference } from '../quantity/kind.js';
import { isObject } from '../target/table.js';
import { needDate } from './certificate.js';
import { all, needBetween, needCount, needSpan, needWord } from './checks.js';
import { needGauge, type Gauge } from './gauge.js';
import type { Reading } from './reading.js';
import { needThermometer, type Thermometer } from './thermometer.js';
import { needSize } from '../target/tolerance.js';

/**
 * What is known of everything that a comparison of a reading with its target rests on, as it was used on that day. Nothing
 * here has a default. A limit is the end of what is possible, and counts as a rectangle; zero says that there is no error.
 */
export interface Instruments {
  readonly gauge: Gauge;
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

/**
 * Most readings that a mean may be of.
 *
 * @example
 * ```ts
 * MOST_READINGS; // => 100
 * ```
 */
export const MOST_READINGS = 100;

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

/** What is to be said of instruments beside a result. */
export function instrumentCautions({ gauge, thermometer, on }: Instruments, { pressure }: Reading): CautionCode[] {
  const codes: CautionCode[] = [];
  const certificates = [gauge.accuracy, thermometer.accuracy].flatMap((accuracy) =>
    has(accuracy, 'certificate') ? [accuracy.certificate] : [],
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
  check('gauge', () => {
    needGauge(gauge);
    if (reading.correctionIncluded !== undefined && has(gauge.accuracy, 'certificate'))
      fail(correctedTwice, 'accuracy.certificate', 'a certificate, and a reading that has a correction in it');
  });
  check('thermometer', () => needThermometer(thermometer));
  check('barometer.limit', () => needSize(barometer?.limit));
  check('printed.pressure', () => needPrinted(printed?.pressure, byTable));
  check('printed.temperature', () => needSpan(printed?.temperature));
  check('printed.ambientLimit', () => needSize(printed?.ambientLimit));
  check('modelErrorCorrelation', () => needBetween(instruments.modelErrorCorrelation, -1, 1, ''));
  check('vessel', () => needVessel(vessel));
  check('readings', () => needCount(instruments.readings, 1, MOST_READINGS));
  check('on', () => needDate(instruments.on));
  failIfAny(problems);
}

export function needPrinted(pressure: Instruments['printed']['pressure'], byTable: boolean): void {
  if (byTable) return needWord(pressure, ['as the table states']);
  if (pressure === 'as the table states')
    fail(unknownWord, '', quote(pressure), { words: 'a pressure difference, because the specification has no table' });
  needSize(pressure);
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
