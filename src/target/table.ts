import { collect, fail, failIfAny, fieldNames, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { listed, type Bound } from '../basis/listed.js';
import {
  cellsLeftOut,
  notPositive,
  referenceOutsideTable,
  rowsOutOfOrder,
  tooFewRows,
  unknownColumn,
  unknownWord,
} from '../basis/problem.js';
import { taken, type Fields } from '../basis/taken.js';
import { need, wrongKind, type GaugePressure, type PressureDifference, type Temperature } from '../quantity/kind.js';
import { inBar, inCelsius } from '../quantity/unit.js';

/** A pre-charge as the maker states it at one temperature. */
export interface ReferencePoint {
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
}

/**
 * The pre-charge as the maker's table states it: it outranks the formula. Between rows the table is linear (from −20 °C
 * up that is within 0.009 bar of constant density at 140 bar and rows of 20 K).
 */
export interface MakersTable {
  /** Two rows or more; temperatures and pressures both strictly increasing. In the ambient of the specification. */
  readonly rows: readonly ReferencePoint[];
  /** Temperature at which a tolerance holds, if it applies at the reference temperature; within the rows. */
  readonly referenceTemperature: Temperature;
  /** Step to which the pressures are printed: a formula that is further off disagrees. */
  readonly printedStep: PressureDifference;
  /** Outside the rows: no answer, or along the line of constant density through the nearest end row. */
  readonly outside: 'refuse' | 'follow constant density';
}

/** A maker's table of several columns over one column of temperatures. */
export interface MakersTables extends Omit<MakersTable, 'rows'> {
  readonly temperatures: readonly Temperature[];
  /** By name; each as long as the column of temperatures. */
  readonly columns: readonly { readonly name: string; readonly pressures: readonly GaugePressure[] }[];
}

/** What a manual states of a pressure: at one point, or by a table. */
export type Stated = ReferencePoint | MakersTable;

/**
 * One column of a table of several, as a table of its own.
 *
 * @param name of the column, exactly as given
 * @throws {@link Fault} `unknown column` for a name that no column or more than one has; `cells left out` for a column of
 * another length than the temperatures; `wrong kind`, `absolute for gauge`, `unchecked copy` for a column or a cell of the
 * one named that is none, or for the reference temperature or the printed step; `not positive` for that step; `unknown
 * word` for what holds outside; `too long` for more than a thousand rows, columns or pressures of one
 * @example
 * ```ts
 * const tables = {
 *   temperatures: [temperature(20, '°C'), temperature(40, '°C')],
 *   columns: [{ name: 'type A', pressures: [gauge(140, 'bar'), gauge(152.5, 'bar')] }],
 *   referenceTemperature: temperature(20, '°C'),
 *   printedStep: pressureDifference(0.5, 'bar'),
 *   outside: 'refuse',
 * } as const;
 * columnOf(tables, 'type A').rows.length; // => 2
 * ```
 */
export function columnOf(tables: MakersTables, name: string): MakersTable {
  if (!isObject(tables)) wrongKind('table of several columns', tables, 'tables');
  const { referenceTemperature, printedStep, outside } = tables;
  const { temperatures, columns } = taken(tables, SEVERAL);
  if (!Array.isArray(temperatures) || !Array.isArray(columns)) wrongKind('table of several columns', tables, 'tables');
  const all = (columns as readonly unknown[]).map(columnIn);
  const named = all.filter((column) => column.name === name);
  const [column] = named;
  if (column === undefined || named.length > 1) {
    const names = all.map((one) => one.name);
    return fail(unknownColumn, 'name', quote(name), { columns: fieldNames(names, ', ', quote) || 'none' });
  }
  const { pressures, at } = column;
  if (pressures.length !== temperatures.length) {
    const found = `${pressures.length} pressures in column ${quote(name)}`;
    fail(cellsLeftOut, 'columns', found, { count: String(temperatures.length), other: 'temperature' });
  }
  const problems: Problem[] = [];
  const rows = (temperatures as readonly Temperature[]).map((temperature, i) => {
    const pressure = pressures[i] as GaugePressure; // as long as the temperatures, and checked here
    collect(problems, '', () => need('temperature', temperature, `temperatures[${i}]`));
    collect(problems, '', () => need('gauge pressure', pressure, `${at}.pressures[${i}]`));
    return { pressure, temperature };
  });
  collect(problems, 'referenceTemperature', () => need('temperature', referenceTemperature, ''));
  collect(problems, 'printedStep', () => needPrintedStep(printedStep));
  collect(problems, 'outside', () => needOutside(outside));
  failIfAny(problems);
  return { rows, referenceTemperature, printedStep, outside };
}

/** No manual prints more; and the work of an audit grows with the square of it. */
const MOST_PRINTED = 1000;
export const ROWS: Bound = { most: MOST_PRINTED, what: 'rows' };
/** The cells of a table of several columns, as they are taken of whatever states it. */
export const TEMPERATURES: Fields[string] = ['as it is', ROWS];
export const COLUMNS: Fields[string] = [
  { name: 'as it is', pressures: ['as it is', { most: MOST_PRINTED, what: 'pressures' }] },
  { most: MOST_PRINTED, what: 'columns' },
];
const SEVERAL: Fields = { temperatures: TEMPERATURES, columns: COLUMNS };

/** A column of a table of several. */
function columnIn(
  column: unknown,
  k: number,
): { readonly name: string; readonly pressures: readonly unknown[]; readonly at: string } {
  const at = `columns[${k}]`;
  if (isObject(column)) {
    const { name, pressures } = column as Readonly<Record<string, unknown>>;
    if (typeof name === 'string' && Array.isArray(pressures)) return { name, pressures, at };
  }
  return wrongKind('column: name and pressures', column, at);
}

/** What a manual states, each part of it read once and nothing else taken; frozen, and not checked but for its length. */
export function copyOfStated(stated: Stated, path: string): Stated {
  if (!isObject(stated)) return stated;
  if (!has(stated, 'rows')) return copyOfPoint(stated);
  const { rows, referenceTemperature, printedStep, outside } = stated;
  const own: readonly ReferencePoint[] = Array.isArray(rows)
    ? Object.freeze(listed(rows as readonly ReferencePoint[], ROWS, `${path}.rows`, copyOfPoint))
    : rows;
  return Object.freeze({ rows: own, referenceTemperature, printedStep, outside });
}

/** The parts of a point, as {@link copyOfStated} takes them. */
export function copyOfPoint(point: ReferencePoint): ReferencePoint {
  if (!isObject(point)) return point;
  const { pressure, temperature } = point;
  return Object.freeze({ pressure, temperature });
}

/** Refuses what is neither a point nor a table, with all that is wrong with it. */
export function needStated(stated: Stated): void {
  needObject(stated, 'reference point (pressure and temperature) or a table (rows)');
  if (has(stated, 'rows')) needTable(stated);
  else needPoint(stated);
}

/** Refuses what is no reference point, with all that is wrong with it. */
export function needPoint(point: ReferencePoint): void {
  needObject(point, 'reference point: pressure and temperature');
  const problems: Problem[] = [];
  collect(problems, 'pressure', () => need('gauge pressure', point.pressure, ''));
  collect(problems, 'temperature', () => need('temperature', point.temperature, ''));
  failIfAny(problems);
}

function needTable(table: MakersTable): void {
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): boolean => {
    const before = problems.length;
    collect(problems, path, admit);
    return problems.length === before;
  };
  const rows: readonly ReferencePoint[] = Array.isArray(table.rows) ? table.rows : [];
  let ordered = false;
  if (rows.length < 2) {
    check('rows', () => tooFew(table.rows));
  } else {
    const sound = rows.map((row, i) => check(`rows[${i}]`, () => needPoint(row)));
    rows.slice(1).forEach((row, i) => {
      const before = rows[i];
      if (before === undefined || sound[i] !== true || sound[i + 1] !== true) return;
      check(`rows[${i + 1}]`, () => needHigher(row, before));
    });
    ordered = problems.length === 0;
  }
  if (check('referenceTemperature', () => need('temperature', table.referenceTemperature, '')) && ordered)
    check('referenceTemperature', () => needInside(table));
  check('printedStep', () => needPrintedStep(table.printedStep));
  check('outside', () => needOutside(table.outside));
  failIfAny(problems);
}

function needPrintedStep(step: PressureDifference): void {
  need('pressure difference', step, '');
  if (!(step.pascals > 0)) fail(notPositive, '', `${inBar(step.pascals)} difference`);
}

function needOutside(outside: MakersTable['outside']): void {
  if (outside === 'refuse' || outside === 'follow constant density') return;
  fail(unknownWord, '', quote(outside), { words: "'refuse' or 'follow constant density'" });
}

function tooFew(rows: unknown): never {
  const count = Array.isArray(rows) ? rows.length : undefined;
  fail(tooFewRows, '', count === undefined ? quote(rows) : `${count} ${count === 1 ? 'row' : 'rows'}`);
}

function needHigher(row: ReferencePoint, before: ReferencePoint): void {
  const [T, T_before] = [row.temperature.kelvins, before.temperature.kelvins];
  if (!(T > T_before)) fail(rowsOutOfOrder, 'temperature', `${inCelsius(T)} after ${inCelsius(T_before)}`);
  const [p, p_before] = [row.pressure.pascals, before.pressure.pascals];
  if (p > p_before) return;
  fail(rowsOutOfOrder, 'pressure', `${inBar(p)} gauge after ${inBar(p_before)} gauge`);
}

function needInside({ rows, referenceTemperature }: MakersTable): void {
  const T = referenceTemperature.kelvins;
  const [first, last] = [rows.at(0)?.temperature.kelvins, rows.at(-1)?.temperature.kelvins];
  if (first !== undefined && last !== undefined && T >= first && T <= last) return;
  fail(referenceOutsideTable, '', inCelsius(T), { first: inCelsius(first ?? NaN), last: inCelsius(last ?? NaN) });
}

/** Refuses what is not even an object. */
export function needObject(value: object, wanted: string): void {
  if (!isObject(value)) wrongKind(wanted, value, '');
}

/** Whether a value has fields at all. */
export function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
