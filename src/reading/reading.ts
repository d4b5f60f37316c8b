import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { notMinutesAtRest, unknownWord } from '../basis/problem.js';
import { gaugeOf, need, wrongKind, type GaugePressure, type PressureDifference } from '../quantity/kind.js';
import { belowVacuum, pressureDifference } from '../quantity/pressure.js';
import { needDivision, rounded, type Division, type Steps, type Toward } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { needAmbient, type Conditions } from '../target/conditions.js';
import { needOfInstrument, needScale } from './checks.js';

/** What is known of the oil side while the gas pressure was read. */
export type OilSide = 'drained, zero verified' | 'not drained' | 'not known';
/** What is known of the gas inside. */
export type GasInside = 'nitrogen' | 'not known';

/** A gas pressure as it was read, and the evidence that it can be compared with anything. */
export interface Reading extends Conditions {
  /** What the gas gauge showed; with the correction of its gauge in it, if `correctionIncluded` says so. */
  readonly pressure: GaugePressure;
  /** Smallest division to which the gauge is read, in the gauge's own unit; limits for people are rounded to it. */
  readonly gaugeStep: Division<PressureUnit>;
  /**
   * What was added to that which the gauge showed to come to `pressure`: the correction of a certificate, minus the error
   * of indication. Marks for people, such as where to stop, are then those that this gauge shows. For {@link assess} and
   * the like, which correct by the certificate that they are given, it is left out.
   */
  readonly correctionIncluded?: PressureDifference;
  /** End of the gauge's scale, where it is known. A reading beyond it is none. */
  readonly fullScale?: GaugePressure;
  /** Unless drained with zero verified, the gauge shows the oil's pressure through the diaphragm, not the pre-charge. */
  readonly oilSide: OilSide;
  /** Hydraulic system pressure as last seen, where it is known: a gas gauge that agrees with it reads the oil. */
  readonly systemPressure?: GaugePressure;
  readonly gasInside: GasInside;
  /** Minutes since oil or gas last moved. Just after draining the gas is cold and reads low, just after filling warm. */
  readonly minutesAtRest: number | 'not known';
  /** Stated once the causes of an empty gas side were looked into and removed; until then no quantity is given for one. */
  readonly emptyGasSide?: 'investigated and cleared';
  /**
   * Stated once number, unit and basis were looked at again on the instruments, and stand: a true reading may happen to look
   * like a slip. Until then no gas is ordered on one that does.
   */
  readonly possibleSlip?: 'read again and ruled out';
}

const OIL_SIDE: readonly OilSide[] = ['drained, zero verified', 'not drained', 'not known'];
const GAS_INSIDE: readonly GasInside[] = ['nitrogen', 'not known'];
const CLEARED = ['investigated and cleared'];
const RULED_OUT = ['read again and ruled out'];

/** A gauge as people read it: its marks, and how far the truth lies above them. */
export type Marked = Pick<Reading, 'gaugeStep' | 'correctionIncluded'>;

/** The mark of a gauge at or beside a true pressure: its text as the gauge shows it, and the true pressure there. */
export function markAt(pressure: GaugePressure, { gaugeStep, correctionIncluded }: Marked, toward: Toward): Steps {
  const { step, unit } = gaugeStep;
  return rounded(pressure, { step, unit, toward }, correctionIncluded?.pascals);
}

/** What the gauge showed. */
export function shown({ pressure, correctionIncluded }: Reading): GaugePressure {
  return correctionIncluded === undefined ? pressure : gaugeOf(pressure.pascals - correctionIncluded.pascals);
}

/** Checks a reading by itself and reports all that is wrong; whether it is evidence enough is for the verdict. */
export function needReading(reading: Reading): void {
  if (typeof reading !== 'object' || reading === null) wrongKind('reading', reading, 'reading');
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): boolean => {
    const before = problems.length;
    collect(problems, path, admit);
    return problems.length === before;
  };
  const { pressure, temperature, ambient, systemPressure, gaugeStep, correctionIncluded, fullScale } = reading;

  const sound = check('pressure', () => need('gauge pressure', pressure, ''));
  check('temperature', () => need('temperature', temperature, ''));
  const placed = check('ambient', () => needAmbient(ambient, ''));
  const aboveVacuum = (path: string, read: GaugePressure): void => {
    if (read.pascals < -ambient.pascals) check(path, () => belowVacuum(read, ambient, ''));
  };
  if (placed && sound) aboveVacuum('pressure', pressure);
  check('gaugeStep', () => needGaugeStep(gaugeStep, sound ? pressure : gaugeOf(0)));
  if (correctionIncluded !== undefined) {
    check('correctionIncluded', () => {
      need('pressure difference', correctionIncluded, '');
      needOfInstrument(correctionIncluded);
    });
  }
  if (fullScale !== undefined) check('fullScale', () => needScale(fullScale));
  check('oilSide', () => word(reading.oilSide, OIL_SIDE));
  check('gasInside', () => word(reading.gasInside, GAS_INSIDE));
  if (systemPressure !== undefined) {
    const known = check('systemPressure', () => need('gauge pressure', systemPressure, ''));
    if (known && placed) aboveVacuum('systemPressure', systemPressure);
  }
  if (reading.emptyGasSide !== undefined) check('emptyGasSide', () => word(reading.emptyGasSide, CLEARED));
  if (reading.possibleSlip !== undefined) check('possibleSlip', () => word(reading.possibleSlip, RULED_OUT));
  check('minutesAtRest', () => minutes(reading.minutesAtRest));
  failIfAny(problems);
}

/** Refuses what is no division of a gauge, or none that a pressure can be read by. */
export function needGaugeStep(gaugeStep: Reading['gaugeStep'], pressure: GaugePressure): void {
  const { step, unit } = needDivision(gaugeStep, '');
  // Rounding to the step checks it: its size, its unit, and that it suits the pressure.
  rounded(pressure, { step, unit, toward: 'down' });
  needOfInstrument(pressureDifference(step, unit));
}

function minutes(at_rest: Reading['minutesAtRest']): void {
  if (at_rest === 'not known' || (Number.isFinite(at_rest) && at_rest >= 0)) return;
  fail(notMinutesAtRest, '', quote(at_rest));
}

function word(found: unknown, words: readonly string[]): void {
  if (typeof found === 'string' && words.includes(found)) return;
  fail(unknownWord, '', quote(found), { words: words.map((w) => `'${w}'`).join(' or ') });
}
