// Invented instruments, to be varied in one place at a time.
import {
  gauge,
  pressureDifference,
  temperature,
  temperatureDifference,
  type PressureDifference,
  type TemperatureDifference,
} from 'isochore';
import type { DialGauge } from '../../src/reading/gauge.js';
import type { Instruments } from '../../src/reading/instruments.js';
import type { Thermometer } from '../../src/reading/thermometer.js';

export const inBar = (value: number): PressureDifference => pressureDifference(value, 'bar');
export const inK = (value: number): TemperatureDifference => temperatureDifference(value, 'K');

/** 0 to 250 bar, class 1, at 30 °C. */
export const DIAL: DialGauge = {
  type: 'dial gauge',
  fullScale: gauge(250, 'bar'),
  accuracy: { accuracyClass: 1 },
  temperature: temperature(30, '°C'),
  zero: 'without stop pin',
};

/** On the shell: ± 1 K, read to 1 K; the gas within 2 K of it. */
export const CONTACT: Thermometer = {
  type: 'contact thermometer',
  accuracy: { limit: inK(1) },
  step: inK(1),
  shellToGas: inK(2),
};

export const INSTRUMENTS: Instruments = {
  gauge: DIAL,
  thermometer: CONTACT,
  barometer: { limit: pressureDifference(2, 'hPa') },
  printed: { pressure: inBar(1), temperature: inK(0), ambientLimit: pressureDifference(30, 'hPa') },
  modelErrorCorrelation: 0,
  vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 0, treated: 'as uncertainty' },
  readings: 1,
  on: '2026-03-14',
};

export function instrumentsWith(changed: Partial<Instruments> = {}): Instruments {
  return { ...INSTRUMENTS, ...changed };
}

export const dialWith = (changed: Partial<DialGauge>): Instruments =>
  instrumentsWith({ gauge: { ...DIAL, ...changed } });
