// Invented instruments, to be varied in one place at a time.
import {
  gauge,
  pressureDifference,
  temperature,
  temperatureDifference,
  type PressureDifference,
  type Reading,
  type TemperatureDifference,
} from 'isochore';
import type { DialGauge } from '../../src/reading/gauge.js';
import type { Instruments } from '../../src/reading/instruments.js';
import type { Thermometer } from '../../src/reading/thermometer.js';
import { bar, celsius, readingWith } from './accumulator.js';

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

/** Nothing but a normal error of the gauge, of a standard uncertainty in bar: at 20 °C, where the line is drawn. */
export const onlyNormal = (standard: number): Instruments => ({
  ...INSTRUMENTS,
  gauge: {
    ...DIAL,
    temperature: celsius(20),
    accuracy: {
      certificate: {
        correction: inBar(0),
        expandedUncertainty: inBar(2 * standard),
        coverageFactor: 2,
        due: '2027-01-01',
      },
    },
  },
  thermometer: { ...CONTACT, accuracy: { limit: inK(1e-9) }, step: inK(0), shellToGas: inK(0) },
  barometer: { limit: inBar(0) },
  printed: { pressure: inBar(0), temperature: inK(0), ambientLimit: inBar(0) },
});

export const at20 = (p_bar: number): Reading =>
  readingWith({ pressure: bar(p_bar), temperature: celsius(20), gaugeStep: { step: 1e-6, unit: 'bar' } });
