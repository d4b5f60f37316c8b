// An invented accumulator and a sound reading of it, to be varied in one place at a time.
import fc from 'fast-check';
import {
  absolute,
  gauge,
  nitrogen,
  pressureDifference,
  specification,
  standardAtmosphere,
  temperature,
  volume,
  type AbsolutePressure,
  type Conditions,
  type Division,
  type GaugePressure,
  type PressureDifference,
  type PressureUnit,
  type Reading,
  type Specification,
  type SpecificationGiven,
  type Temperature,
  type Tolerance,
} from 'isochore';
import { evenly } from './evenly.js';

export const bar = (value: number): GaugePressure => gauge(value, 'bar');
export const barOf = (value: number): PressureDifference => pressureDifference(value, 'bar');
export const celsius = (value: number): Temperature => temperature(value, '°C');
export const hPa = (value: number): AbsolutePressure => absolute(value, 'hPa');

/** 140 bar at 20 °C ± 2 bar, 5 L. */
export const GIVEN: SpecificationGiven = {
  gas: nitrogen,
  precharge: { pressure: bar(140), temperature: celsius(20) },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: barOf(2), applies: 'at the measured temperature' },
  gasVolume: volume(5, 'L'),
  allowable: bar(210),
  settling: { allowance: barOf(1.5), minutes: 5 },
};

export function specWith(changed: Partial<SpecificationGiven> = {}): Specification {
  return specification({ ...GIVEN, ...changed });
}

/** The specification with another reference point. */
export function specOf(p_bar: number, t_C: number, changed: Partial<SpecificationGiven> = {}): Specification {
  return specWith({ precharge: { pressure: bar(p_bar), temperature: celsius(t_C) }, ...changed });
}

/** Undercharged at 40 °C, on full evidence. */
const READING: Reading = {
  pressure: bar(143),
  temperature: celsius(40),
  ambient: standardAtmosphere,
  gaugeStep: { step: 1, unit: 'bar' },
  oilSide: 'drained, zero verified',
  gasInside: 'nitrogen',
  minutesAtRest: 30,
};

export function readingWith(changed: Partial<Reading> = {}): Reading {
  return { ...READING, ...changed };
}

/** The same conditions as of the reading, with another pressure. */
export const reads = (p_bar: number, changed: Partial<Reading> = {}): Reading =>
  readingWith({ pressure: bar(p_bar), ...changed });

/** Rounds a drawn number to a tenth, as people write numbers. */
const tenths = (x: number): number => Math.round(x * 10) / 10;

/** Ambient pressures of places of work. */
export const anyAmbient: fc.Arbitrary<AbsolutePressure> = evenly(870, 1085).map((x) => hPa(tenths(x)));

/** Gas temperatures that occur on board and well beyond. */
export const anyConditions: fc.Arbitrary<Conditions> = fc.record({
  temperature: evenly(-30, 90).map((x) => celsius(tenths(x))),
  ambient: anyAmbient,
});

/** Tolerances in the three forms; none reaches down to zero for pre-charges from 20 bar on. */
export const anyTolerance: fc.Arbitrary<Tolerance> = fc.oneof(
  fc.integer({ min: 1, max: 60 }).map((n) => ({ plusMinus: barOf(n / 10) })),
  fc
    .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 60 }))
    .map(([below, above]) => ({ below: barOf(below / 10), above: barOf(above / 10) })),
  fc.integer({ min: 1, max: 80 }).map((n) => ({ plusMinusPercentOfGauge: n / 10 })),
);

/** Specifications from 20 to 300 bar. Half of the pre-charges are whole bars, so that limits fall on marks. */
export const anySpec: fc.Arbitrary<Specification> = fc
  .record({
    pressure: fc.oneof(
      fc.integer({ min: 20, max: 300 }),
      evenly(20, 300).map((x) => tenths(x)),
    ),
    temperature: fc.constantFrom(0, 15, 20, 25, 40),
    ambient: anyAmbient,
    tolerance: anyTolerance,
    applies: fc.constantFrom('at the measured temperature' as const, 'at the reference temperature' as const),
    litres: fc.integer({ min: 1, max: 500 }),
  })
  .map((x) =>
    specOf(x.pressure, x.temperature, {
      ambient: x.ambient,
      tolerance: { ...x.tolerance, applies: x.applies },
      gasVolume: volume(x.litres / 10, 'L'),
      allowable: bar(600),
    }),
  );

/** Divisions of gauges, in every unit that gauges have. */
export const anyGaugeStep: fc.Arbitrary<Division<PressureUnit>> = fc.constantFrom<Division<PressureUnit>>(
  { step: 5, unit: 'bar' },
  { step: 1, unit: 'bar' },
  { step: 0.5, unit: 'bar' },
  { step: 0.2, unit: 'bar' },
  { step: 0.1, unit: 'bar' },
  { step: 50, unit: 'psi' },
  { step: 20, unit: 'psi' },
  { step: 1, unit: 'psi' },
  { step: 2, unit: 'kgf/cm2' },
  { step: 0.5, unit: 'kgf/cm2' },
  { step: 0.5, unit: 'MPa' },
  { step: 0.02, unit: 'MPa' },
  { step: 0.01, unit: 'MPa' },
  { step: 250, unit: 'kPa' },
  { step: 10, unit: 'kPa' },
);
