import { fail } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { outsideTable } from '../basis/problem.js';
import { relation, step1, step2, step3, step5, type Trace } from '../basis/relation.js';
import { pvtAt, temperatureAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { TO_ABSOLUTE } from '../quantity/pressure.js';
import { AT_THE_POINT, densityOfLine, gaugeOnLine, type Point } from './line.js';
import type { ReferencePoint, Stated } from './table.js';

// A curve of gauge pressure against temperature, solved: the line of constant density through a point, or a table with the
// lines that go on from its ends.

/** A line of constant density: the point through which it is drawn, and its density. */
export interface Line {
  readonly by: 'line';
  readonly stated: ReferencePoint;
  readonly point: Point;
  readonly rho_mol_m3: number;
}

/** A table, linear between its rows, with the lines through its end rows, if it goes on there. */
export interface TableCurve {
  readonly by: 'table';
  readonly rows: readonly ReferencePoint[];
  readonly ambient_Pa: number;
  readonly ends: { readonly below: Line; readonly above: Line } | 'refuse';
}

/** Pressure against temperature as a manual states it. */
export type Curve = Line | TableCurve;

/** By what a target was found, and the stated points that went into it. */
export interface TargetSource {
  readonly by: 'constant density from the reference point' | 'table' | 'constant density from the nearest row';
  /** The reference point, the row, or the two rows between which the table was read. */
  readonly rows: readonly ReferencePoint[];
}

export const INTERPOLATED = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_1', 'p_2', 'T_1', 'T_2', 'T'],
  formula: 'p_1 + (p_2 - p_1) * (T - T_1) / (T_2 - T_1)',
  source: "the maker's table, linear between its rows",
  of: (p_1, p_2, T_1, T_2, T) => p_1 + ((p_2 - p_1) * (T - T_1)) / (T_2 - T_1),
});

export const IN_THE_AMBIENT = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_stated', 'p_amb_stated', 'p_amb'],
  formula: 'p_stated + (p_amb_stated - p_amb)',
  source: 'gauge pressure, by definition (ISO 80000-4:2019)',
  of: (p_stated, p_amb_stated, p_amb) => p_stated + (p_amb_stated - p_amb),
});

/** The line through a point that a manual states in an ambient. */
export function lineThrough(
  model: GasModel,
  stated: ReferencePoint,
  ambient_Pa: number,
  path: string,
  about: string,
): Line {
  const point = { p_g_Pa: stated.pressure.pascals, T_K: stated.temperature.kelvins, ambient_Pa };
  const { pressure, temperature } = stated;
  return Object.freeze({
    by: 'line',
    stated: Object.freeze({ pressure, temperature }),
    point: Object.freeze(point),
    rho_mol_m3: densityOfLine(model, point, path, about),
  });
}

/** The curve of what a manual states, checked before. */
export function curveOf(model: GasModel, stated: Stated, ambient_Pa: number, path: string, about: string): Curve {
  if (!has(stated, 'rows')) return lineThrough(model, stated, ambient_Pa, path, about);
  const rows = Object.freeze(stated.rows.map(({ pressure, temperature }) => Object.freeze({ pressure, temperature })));
  const [first, last] = [rows[0], rows.at(-1)];
  if (stated.outside === 'refuse' || first === undefined || last === undefined) {
    return Object.freeze({ by: 'table', rows, ambient_Pa, ends: 'refuse' });
  }
  const below = lineThrough(model, first, ambient_Pa, path, about);
  const above = lineThrough(model, last, ambient_Pa, path, about);
  return Object.freeze({ by: 'table', rows, ambient_Pa, ends: Object.freeze({ below, above }) });
}

/** Gauge pressure of a curve at a temperature, in an ambient. */
export function gaugeOnCurve(
  model: GasModel,
  curve: Curve,
  T_K: number,
  ambient_Pa: number,
  about: string,
  trace?: Trace,
): number {
  const place = placeOn(curve, T_K);
  if (has(place, 'line')) {
    const { point, rho_mol_m3 } = place.line;
    // Solved when the specification was made; shown again for whoever follows the working.
    if (trace !== undefined) densityOfLine(model, point, 'temperature', `${about}, as stated`, trace);
    return gaugeOnLine(model, point, rho_mol_m3, T_K, ambient_Pa, 'temperature', about, trace);
  }
  return step3(trace, IN_THE_AMBIENT, about, printed(place, T_K, about, trace), place.ambient_Pa, ambient_Pa);
}

function printed({ low, high }: Rows, T_K: number, about: string, trace?: Trace): number {
  const p_1 = low.pressure.pascals;
  if (high === undefined) return step1(trace, AT_THE_POINT, about, p_1);
  const [T_1, T_2] = [low.temperature.kelvins, high.temperature.kelvins];
  return step5(trace, INTERPOLATED, about, p_1, high.pressure.pascals, T_1, T_2, T_K);
}

/** ∂p/∂T of a curve at a temperature; at a row of a table, that of the rows above it, or of its last two. */
export function slopeOfCurve(model: GasModel, curve: Curve, T_K: number): number {
  const place = placeOn(curve, T_K);
  if (has(place, 'line')) return pvtAt(model, T_K, place.line.rho_mol_m3, 'temperature', 'slope').dpdT_rho;
  const { low, high, before } = place;
  const [one, other] = high === undefined ? [before ?? low, low] : [low, high];
  const rise = other.pressure.pascals - one.pressure.pascals;
  return rise / (other.temperature.kelvins - one.temperature.kelvins);
}

/** The temperature at which a curve has a gauge pressure, in an ambient; undefined if it has it nowhere. */
export function temperatureOnCurve(
  model: GasModel,
  curve: Curve,
  p_g_Pa: number,
  ambient_Pa: number,
  about: string,
  trace?: Trace,
): number | undefined {
  if (curve.by === 'line') return temperatureOnLine(model, curve, p_g_Pa, ambient_Pa, about, trace);
  const p = step3(trace, IN_THE_AMBIENT, about, p_g_Pa, ambient_Pa, curve.ambient_Pa);
  const { rows, ends } = curve;
  const above = rows.findIndex((row) => row.pressure.pascals > p);
  const [low, high] = above === -1 ? [rows.at(-1), undefined] : [rowAt(rows, above - 1), rows[above]];
  if (low !== undefined && high !== undefined) {
    const [T_1, T_2] = [low.temperature.kelvins, high.temperature.kelvins];
    return step5(trace, INTERPOLATED_T, about, T_1, T_2, low.pressure.pascals, high.pressure.pascals, p);
  }
  if (low?.pressure.pascals === p) return low.temperature.kelvins;
  if (ends === 'refuse') return undefined;
  return temperatureOnLine(model, low === undefined ? ends.below : ends.above, p_g_Pa, ambient_Pa, about, trace);
}

export const INTERPOLATED_T = /* @__PURE__ */ relation({
  gives: 'T',
  unit: 'K',
  from: ['T_1', 'T_2', 'p_1', 'p_2', 'p_g'],
  formula: 'T_1 + (T_2 - T_1) * (p_g - p_1) / (p_2 - p_1)',
  source: "the maker's table, linear between its rows",
  of: (T_1, T_2, p_1, p_2, p_g) => T_1 + ((T_2 - T_1) * (p_g - p_1)) / (p_2 - p_1),
});

function temperatureOnLine(
  model: GasModel,
  line: Line,
  p_g_Pa: number,
  ambient_Pa: number,
  about: string,
  trace?: Trace,
): number | undefined {
  if (trace !== undefined) densityOfLine(model, line.point, 'temperature', `${about}, as stated`, trace);
  const p_abs = step2(trace, TO_ABSOLUTE, about, p_g_Pa, ambient_Pa);
  return temperatureAt(model, line.rho_mol_m3, p_abs, about, trace);
}

/** By what a curve gives its pressure at a temperature. */
export function sourceOn(curve: Curve, T_K: number): TargetSource {
  const place = placeOn(curve, T_K);
  if (!has(place, 'line')) {
    const { low, high } = place;
    return { by: 'table', rows: high === undefined || low.temperature.kelvins === T_K ? [low] : [low, high] };
  }
  const by =
    curve.by === 'line' ? 'constant density from the reference point' : 'constant density from the nearest row';
  return { by, rows: [place.line.stated] };
}

/** Between two rows of a table; at its last row there is none higher. */
interface Rows {
  readonly before: ReferencePoint | undefined;
  readonly low: ReferencePoint;
  readonly high: ReferencePoint | undefined;
  readonly ambient_Pa: number;
}

/** A row, and none before the first: all objects may inherit a field -1. */
function rowAt(rows: readonly ReferencePoint[], i: number): ReferencePoint | undefined {
  return i < 0 ? undefined : rows[i];
}

function placeOn(curve: Curve, T_K: number): { readonly line: Line } | Rows {
  if (curve.by === 'line') return { line: curve };
  const { rows, ends, ambient_Pa } = curve;
  const next = rows.findIndex((row) => row.temperature.kelvins > T_K);
  const i = next === -1 ? rows.length - 1 : next - 1;
  const low = rowAt(rows, i);
  const beyond = next === -1 && low !== undefined && T_K > low.temperature.kelvins;
  if (low !== undefined && !beyond) return { before: rowAt(rows, i - 1), low, high: rows[i + 1], ambient_Pa };
  if (ends !== 'refuse') return { line: beyond ? ends.above : ends.below };
  const [first, last] = [`${rows[0]?.temperature.kelvins}`, `${rows.at(-1)?.temperature.kelvins}`];
  return fail(outsideTable, 'temperature', `${T_K} K`, { first, last });
}
