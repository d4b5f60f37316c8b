import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { need, wrongKind, type GaugePressure, type PressureDifference, type Temperature } from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';

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
 * @throws {@link Fault} `unknown word` for a name that no column or more than one has; `wrong shape` for a column of
 * another length than the temperatures
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
  if (!isList(tables?.temperatures) || !isList(tables?.columns))
    wrongKind('table of several columns', tables, 'tables');
  const columns = tables.columns.filter((column) => column.name === name);
  const [column] = columns;
  if (column === undefined || columns.length > 1) {
    return fail({
      code: 'unknown word',
      path: 'name',
      found: quote(name),
      wanted: `one of the columns ${tables.columns.map((one) => quote(one.name)).join(', ')}, each named once`,
      remedy: 'name the column exactly as the table does',
    });
  }
  if (column.pressures.length !== tables.temperatures.length) {
    fail({
      code: 'wrong shape',
      path: 'columns',
      found: `${column.pressures.length} pressures in column ${quote(name)}`,
      wanted: `${tables.temperatures.length}, one for each temperature`,
      remedy: 'check the table for a cell left out or read twice',
    });
  }
  const { referenceTemperature, printedStep, outside } = tables;
  const rows = tables.temperatures.flatMap((temperature, i) => {
    const pressure = column.pressures[i];
    return pressure === undefined ? [] : [{ pressure, temperature }];
  });
  return { rows, referenceTemperature, printedStep, outside };
}

/** Refuses what is neither a point nor a table, with all that is wrong with it. */
export function needStated(stated: Stated): void {
  needObject(stated, 'reference point (pressure and temperature) or a table (rows)');
  if ('rows' in stated) needTable(stated);
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
    rows.forEach((row, i) => {
      const before = rows[i - 1];
      if (before === undefined || sound[i] !== true || sound[i - 1] !== true) return;
      check(`rows[${i}]`, () => needHigher(row, before));
    });
    ordered = problems.length === 0;
  }
  if (check('referenceTemperature', () => need('temperature', table.referenceTemperature, '')) && ordered)
    check('referenceTemperature', () => needInside(table));
  check('printedStep', () => {
    need('pressure difference', table.printedStep, '');
    if (table.printedStep.pascals > 0) return;
    fail({
      code: 'not positive',
      path: '',
      found: `${inBar(table.printedStep.pascals)} difference`,
      wanted: 'more than zero',
      remedy: 'give the step to which the table is printed: 1, 0.5 or 0.1 bar',
    });
  });
  check('outside', () => {
    if (table.outside === 'refuse' || table.outside === 'follow constant density') return;
    fail({
      code: 'unknown word',
      path: '',
      found: quote(table.outside),
      wanted: "'refuse' or 'follow constant density'",
      remedy: "decide what holds beyond the table's rows; where the manual is silent, refuse",
    });
  });
  failIfAny(problems);
}

function tooFew(rows: unknown): never {
  fail({
    code: 'wrong shape',
    path: '',
    found: Array.isArray(rows) ? `${rows.length} rows` : quote(rows),
    wanted: 'two rows or more',
    remedy: 'one row is a reference point, not a table',
  });
}

function needHigher(row: ReferencePoint, before: ReferencePoint): void {
  const [T, T_before] = [row.temperature.kelvins, before.temperature.kelvins];
  if (!(T > T_before)) {
    fail({
      code: 'rows out of order',
      path: 'temperature',
      found: `${T} K after ${T_before} K`,
      wanted: 'temperatures that increase from row to row',
      remedy: 'sort the rows; a temperature given twice has to be decided',
    });
  }
  const [p, p_before] = [row.pressure.pascals, before.pressure.pascals];
  if (p > p_before) return;
  fail({
    code: 'rows out of order',
    path: 'pressure',
    found: `${inBar(p)} gauge after ${inBar(p_before)} gauge`,
    wanted: 'pressures that increase with temperature',
    remedy: 'check the row and the one before it for a misprint',
  });
}

function needInside({ rows, referenceTemperature }: MakersTable): void {
  const T = referenceTemperature.kelvins;
  const [first, last] = [rows[0]?.temperature.kelvins, rows.at(-1)?.temperature.kelvins];
  if (first !== undefined && last !== undefined && T >= first && T <= last) return;
  fail({
    code: 'outside the table',
    path: '',
    found: `${T} K`,
    wanted: `${first} K to ${last} K, the rows of the table`,
    remedy: 'the reference temperature is one at which the table states a pressure',
  });
}

/** Refuses what is not even an object. */
export function needObject(value: object, wanted: string): void {
  if (!isObject(value)) wrongKind(wanted, value, '');
}

/** Whether a value has fields at all. */
export function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function isList(value: unknown): boolean {
  return Array.isArray(value);
}
