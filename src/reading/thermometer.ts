import { has } from '../basis/has.js';
import { relation } from '../basis/relation.js';
import { wrongKind, type Temperature, type TemperatureDifference } from '../quantity/kind.js';
import { isObject } from '../target/table.js';
import { needCertificate, type Certificate } from './certificate.js';
import { all, needBetween, needPositive, needSpan, needTemperature, needWord, oneOf } from './checks.js';

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
  if (one === 'certificate' && has(accuracy, 'certificate'))
    all(['certificate', () => needCertificate(accuracy.certificate, 'temperature difference')]);
  if (one === 'limit' && has(accuracy, 'limit'))
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
