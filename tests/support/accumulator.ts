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
  type MakersTable,
  type PressureDifference,
  type PressureUnit,
  type Reading,
  type ReferencePoint,
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

/** A specification that states its pre-charge at one point. */
export type AtAPoint = Specification & { readonly precharge: ReferencePoint; readonly density_mol_m3: number };

/** A specification that states its pre-charge by a table. */
export type ByTable = Specification & { readonly precharge: MakersTable; readonly density_mol_m3: 'by table' };

/** 140 bar at 20 °C ± 2 bar, 5 L. */
export const GIVEN: SpecificationGiven & { readonly precharge: ReferencePoint } = {
  gas: nitrogen,
  precharge: { pressure: bar(140), temperature: celsius(20) },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: barOf(2), applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: bar(210),
  settling: { allowance: barOf(1.5), minutes: 5 },
};

/** What may be changed without changing what is stated of the pre-charge. */
export type Changed = Partial<Omit<SpecificationGiven, 'precharge'>>;

const isAtAPoint = (spec: Specification): spec is AtAPoint =>
  !('rows' in spec.precharge) && typeof spec.density_mol_m3 === 'number';

const isByTable = (spec: Specification): spec is ByTable =>
  'rows' in spec.precharge && spec.density_mol_m3 === 'by table';

function atAPoint(given: SpecificationGiven): AtAPoint {
  const spec = specification(given);
  if (!isAtAPoint(spec)) throw new Error('not a specification at a point');
  return spec;
}

export const specWith = (changed: Changed = {}): AtAPoint => atAPoint({ ...GIVEN, ...changed });

/** The specification with another reference point. */
export const specOf = (p_bar: number, t_C: number, changed: Changed = {}): AtAPoint =>
  atAPoint({ ...GIVEN, precharge: pointOf(p_bar, t_C), ...changed });

export const pointOf = (p_bar: number, t_C: number): ReferencePoint => ({
  pressure: bar(p_bar),
  temperature: celsius(t_C),
});

/** Rows of pressure in bar and temperature in °C, as makers print them: read at 20 °C, printed to 0.1 bar. */
export const tableOf = (
  rows: readonly (readonly [p_bar: number, t_C: number])[],
  changed: Partial<Omit<MakersTable, 'rows'>> = {},
): MakersTable => ({
  rows: rows.map(([p, t]) => pointOf(p, t)),
  referenceTemperature: celsius(20),
  printedStep: barOf(0.1),
  outside: 'refuse',
  ...changed,
});

/** The specification with a table for its reference point. */
export function specBy(table: MakersTable, changed: Changed = {}): ByTable {
  const spec = specification({ ...GIVEN, precharge: table, ...changed });
  if (!isByTable(spec)) throw new Error('not a specification by a table');
  return spec;
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
export const anySpec: fc.Arbitrary<AtAPoint> = fc
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
