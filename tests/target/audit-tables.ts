// Tables for the audit: drawn evenly with a fixed seed, computed by the term-by-term equation of tests/support/span2000.ts
// or by a formula, apart from the library, and rounded to the printed step.
import {
  gauge,
  idealNitrogen,
  nitrogen,
  pressureDifference,
  standardAtmosphere,
  temperature,
  temperatureDifference,
  type GasModel,
} from 'isochore';
import { auditTable, type ColumnAudit, type ModelFit } from '../../src/target/audit.js';
import type { PrintedTable, TableAuditGiven } from '../../src/target/audit/admit.js';
import { densityOfPoint } from '../support/line.js';
import { span2000 } from '../support/span2000.js';

export const AMBIENT_bar = 1.01325;

export const GIVEN: TableAuditGiven = {
  models: [nitrogen, idealNitrogen],
  ambient: standardAtmosphere,
  printedIn: { pressure: 'bar', temperature: '°C' },
  temperatureStep: 'exact',
  equation: 'exact',
};

/** A table in bar and °C, as printed. */
export interface Drawn {
  readonly t_C: readonly number[];
  readonly p_bar: readonly number[];
  readonly step: number;
  /** Reference temperature as printed; 20 if not said. */
  readonly reference?: number;
}

export const tableOf = ({ t_C, p_bar, step, reference }: Drawn): PrintedTable & { readonly rows: unknown } => ({
  rows: t_C.map((t, i) => ({ temperature: temperature(t, '°C'), pressure: gauge(p_bar[i] ?? Number.NaN, 'bar') })),
  referenceTemperature: temperature(reference ?? 20, '°C'),
  printedStep: pressureDifference(step, 'bar'),
});

/** The audit of the one column of a table. */
export function auditOf(drawn: Drawn, changed: Partial<TableAuditGiven> = {}): ColumnAudit {
  const [column] = auditTable(tableOf(drawn), { ...GIVEN, ...changed }).columns;
  if (column === undefined) throw new Error('no column');
  return column;
}

/** The fits that have an outcome. */
type FitWith<O> = ModelFit extends infer F
  ? F extends { outcome: infer Has }
    ? O extends Has
      ? F
      : never
    : never
  : never;

/** How one model fits. */
export function fitBy<O extends ModelFit['outcome']>(column: ColumnAudit, model: GasModel, outcome: O): FitWith<O> {
  const fit = column.fits.find((one) => one.model === model.id);
  if (fit?.outcome !== outcome) throw new Error(`${model.id}: ${fit?.outcome ?? 'missing'}, not ${outcome}`);
  return fit as FitWith<O>;
}

/** To the nearest printed step; no value that is drawn here lies in the middle between two. */
export const printed = (p_bar: number, step: number): number => Number((Math.round(p_bar / step) * step).toFixed(9));

/** Even numbers from 0 to 1 with a fixed seed (mulberry32, by its author in the public domain; from memory). */
export function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Gauge pressure in bar at a temperature in °C. */
export type Formula = (t_C: number) => number;

/** Constant density through a pressure at 20 °C, by the term-by-term equation. */
export function byNitrogen(p_bar: number, t0_C = 20): Formula {
  const rho = densityOfPoint({ p_g: p_bar * 1e5, T: t0_C + 273.15, ambient: 101_325 });
  return (t) => span2000(t + 273.15, rho).p_Pa / 1e5 - AMBIENT_bar;
}

/** The ideal-gas law: absolute pressure in proportion to temperature. */
export function byIdeal(p_bar: number): Formula {
  return (t) => ((p_bar + AMBIENT_bar) * (t + 273.15)) / 293.15 - AMBIENT_bar;
}

export interface Layout {
  readonly t_C: readonly number[];
  readonly step: number;
  /** Pressure at 20 °C, bar gauge. */
  readonly p_bar: number;
}

/** A whole number from a to b, both included. */
export const whole = (even: () => number, a: number, b: number): number => a + Math.floor(even() * (b - a + 1));

/** Evenly spaced rows over 40 to 90 K, 20 to 300 bar, printed to 0.5 or 1 bar. */
export function layout(even: () => number, fewest: number, most: number): Layout {
  const rows = whole(even, fewest, most);
  const [coldest, span] = [whole(even, -20, 10), whole(even, 40, 90)];
  return {
    t_C: Array.from({ length: rows }, (_, i) => Math.round((coldest + (span * i) / (rows - 1)) * 10) / 10),
    step: even() < 0.5 ? 0.5 : 1,
    p_bar: 20 + 280 * even(),
  };
}

/** A table of a formula. */
export const drawnBy = (formula: Formula, { t_C, step }: Layout): Drawn => ({
  t_C,
  p_bar: t_C.map((t) => printed(formula(t), step)),
  step,
});

/** A table with one cell moved by some steps. */
export const misprinted = (drawn: Drawn, row: number, steps: number): Drawn => ({
  ...drawn,
  p_bar: drawn.p_bar.map((p, i) => (i === row ? Number((p + steps * drawn.step).toFixed(9)) : p)),
});

export const kelvin = (size: number): TableAuditGiven['temperatureStep'] => temperatureDifference(size, 'K');
