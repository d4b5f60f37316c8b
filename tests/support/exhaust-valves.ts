// The specification, the instruments, the rule and the readings of the exhaust valves in examples/round.json, by hand.
import {
  absolute,
  gauge,
  nitrogen,
  pressureDifference,
  specification,
  temperature,
  temperatureDifference,
  volume,
  type Instruments,
  type Reading,
  type Rule,
  type Specification,
} from 'isochore';

export const bar = (value: number) => pressureDifference(value, 'bar');
export const kelvin = (value: number) => temperatureDifference(value, 'K');

export const SPEC: Specification = specification({
  gas: nitrogen,
  precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
  ambient: absolute(1013.25, 'hPa'),
  tolerance: { plusMinus: bar(2), applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: gauge(210, 'bar'),
  settling: { allowance: bar(1.5), minutes: 5 },
});

export const INSTRUMENTS: Instruments = {
  gauge: {
    type: 'digital gauge',
    fullScale: gauge(250, 'bar'),
    accuracy: {
      certificate: { correction: bar(0), expandedUncertainty: bar(0.4), coverageFactor: 2, due: '2026-11-30' },
    },
    temperature: { is: temperature(31, '°C'), from: temperature(20, '°C'), percentOfSpanPerKelvin: 0.005 },
  },
  thermometer: {
    type: 'contact thermometer',
    accuracy: { limit: kelvin(0.5) },
    step: kelvin(0.5),
    shellToGas: kelvin(1),
  },
  barometer: { limit: pressureDifference(2, 'hPa') },
  printed: { pressure: bar(1), temperature: kelvin(0), ambientLimit: pressureDifference(30, 'hPa') },
  modelErrorCorrelation: 0,
  vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 1e-6, treated: 'as uncertainty' },
  readings: 1,
  on: '2026-03-14',
};
export const RULE: Rule = { acceptance: 'guarded acceptance', risk: { below: 0.05, above: 0.1 } };

export function reads(p: number, T = 40): Reading {
  return {
    pressure: gauge(p, 'bar'),
    temperature: temperature(T, '°C'),
    ambient: absolute(1008, 'hPa'),
    gaugeStep: { step: 1, unit: 'bar' },
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 45,
  };
}
