import { collect, fail, failIfAny, quote, type Problem } from '../../basis/fault.js';
import { gives, has } from '../../basis/has.js';
import {
  cellsLeftOut,
  duplicateName,
  notAText,
  notPositive,
  referenceOutsideTable,
  tooFewRowsToAudit,
  tooShort,
  unknownWord,
} from '../../basis/problem.js';
import { taken, type Fields } from '../../basis/taken.js';
import { isWellFormed } from '../../basis/well-formed.js';
import type { GasModel } from '../../gas/model.js';
import { needModel } from '../../gas/state.js';
import {
  isChecked,
  need,
  wrongKind,
  type AbsolutePressure,
  type GaugePressure,
  type Temperature,
  type TemperatureDifference,
} from '../../quantity/kind.js';
import { belowVacuum } from '../../quantity/pressure.js';
import {
  inBar,
  inCelsius,
  PRESSURE,
  scaleOf,
  TEMPERATURE,
  type PressureUnit,
  type TemperatureUnit,
} from '../../quantity/unit.js';
import { needAmbient } from '../conditions.js';
import {
  COLUMNS,
  isObject,
  needPoint,
  ROWS,
  TEMPERATURES,
  type MakersTable,
  type MakersTables,
  type ReferencePoint,
} from '../table.js';
import type { Equation } from './fit.js';

/**
 * A maker's table of one column or of several, to be audited. The rows may stand in any order, and the pressures may fall:
 * a misprint does that. What holds outside the rows does not matter here.
 */
export type PrintedTable = OneColumn | SeveralColumns;

type OneColumn = Omit<MakersTable, 'outside'> & Partial<Pick<MakersTable, 'outside'>>;
type SeveralColumns = Omit<MakersTables, 'outside'> & Partial<Pick<MakersTables, 'outside'>>;

/** Against what a table is held, and how it is printed. Nothing here has a default. */
export interface TableAuditGiven {
  /** The gas models that may have made the table, such as `nitrogen` and `idealNitrogen`; each once. */
  readonly models: readonly GasModel[];
  /** Ambient pressure at which the table's gauge pressures are meant; `standardAtmosphere` where it is silent. */
  readonly ambient: AbsolutePressure;
  /** The units in which the table prints its numbers. Its `printedStep` is a step in that unit of pressure. */
  readonly printedIn: { readonly pressure: PressureUnit; readonly temperature: TemperatureUnit };
  /** Step to which the temperatures are rounded, or that they are the exact ones at which the pressures hold. */
  readonly temperatureStep: TemperatureDifference | 'exact';
  /**
   * Whether the equation of a model is the maker's own, or the maker may have used another that agrees with it within the
   * uncertainty of density that its source states: a table printed to a tenth of a bar shows the difference.
   */
  readonly equation: Equation;
}

/** One column of a table, with its temperatures. */
export interface Column {
  readonly name: string | undefined;
  readonly temperatures: readonly Temperature[];
  readonly pressures: readonly GaugePressure[];
}

const AS_IT_IS = 'as it is';
const ONE_COLUMN: Fields = {
  referenceTemperature: AS_IT_IS,
  printedStep: AS_IT_IS,
  rows: [{ pressure: AS_IT_IS, temperature: AS_IT_IS }, ROWS],
};
const SEVERAL_COLUMNS: Fields = {
  referenceTemperature: AS_IT_IS,
  printedStep: AS_IT_IS,
  temperatures: TEMPERATURES,
  columns: COLUMNS,
};
const GIVEN: Fields = {
  models: [AS_IT_IS, { most: 100, what: 'gas models' }],
  ambient: AS_IT_IS,
  printedIn: { pressure: AS_IT_IS, temperature: AS_IT_IS },
  temperatureStep: AS_IT_IS,
  equation: AS_IT_IS,
};

/** What is admitted: the columns of a table, and the parts of it and of the audit that were checked. */
export interface AdmittedTable {
  readonly columns: readonly Column[];
  readonly table: PrintedTable;
  readonly given: TableAuditGiven;
}

/** The columns of a table; it and everything about the audit read once and checked. */
export function admitted(givenTable: PrintedTable, about: TableAuditGiven): AdmittedTable {
  if (!isObject(givenTable)) wrongKind("maker's table: rows, or temperatures and columns", givenTable, 'table');
  if (!isObject(about)) wrongKind('models and printing of a table', about, 'given');
  const table = taken(givenTable, gives(givenTable, 'columns') ? SEVERAL_COLUMNS : ONE_COLUMN);
  const given = taken(about, GIVEN);
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): boolean => {
    const before = problems.length;
    collect(problems, path, admit);
    return problems.length === before;
  };
  const placed = check('ambient', () => needAmbient(given.ambient, ''));
  const columns = has(table, 'columns') ? severalColumns(table, check) : oneColumn(table, check);
  if (placed) {
    for (const { pressures, paths } of columns) {
      pressures.forEach((pressure, i) => {
        if (problems.length > 0 || pressure.pascals + given.ambient.pascals >= 0) return;
        check(paths(i), () => belowVacuum(pressure, given.ambient, ''));
      });
    }
  }
  check('referenceTemperature', () => {
    need('temperature', table.referenceTemperature, '');
    for (const { temperatures } of columns.slice(0, 1)) needInside(table.referenceTemperature, temperatures);
  });
  check('printedStep', () => {
    need('pressure difference', table.printedStep, '');
    if (!(table.printedStep.pascals > 0)) fail(notPositive, '', `${inBar(table.printedStep.pascals)} difference`);
  });
  check('models', () => needModels(given.models));
  if (check('printedIn', () => needUnits(given.printedIn))) {
    check('printedIn.pressure', () => scaleOf(PRESSURE, given.printedIn.pressure, ''));
    check('printedIn.temperature', () => scaleOf(TEMPERATURE, given.printedIn.temperature, ''));
  }
  check('temperatureStep', () => needTemperatureStep(given.temperatureStep));
  check('equation', () => {
    if (given.equation === 'exact' || given.equation === 'within its stated uncertainty') return;
    fail(unknownWord, '', quote(given.equation), { words: "'exact' or 'within its stated uncertainty'" });
  });
  failIfAny(problems);
  return { columns, table, given };
}

type Check = (path: string, admit: () => void) => boolean;

interface Placed extends Column {
  /** Where the pressure of a row stands in what was given. */
  readonly paths: (row: number) => string;
}

function oneColumn(table: OneColumn, check: Check): Placed[] {
  const rows: readonly ReferencePoint[] = Array.isArray(table.rows) ? table.rows : [];
  if (!check('rows', () => needRows(table.rows))) return [];
  const sound = rows.map((row, i) => check(`rows[${i}]`, () => needPoint(row))).every(Boolean);
  if (!sound) return [];
  const [temperatures, pressures] = [rows.map((row) => row.temperature), rows.map((row) => row.pressure)];
  return [{ name: undefined, temperatures, pressures, paths: (row) => `rows[${row}].pressure` }];
}

function severalColumns(table: SeveralColumns, check: Check): Placed[] {
  const { temperatures, columns } = table;
  const listed = check('columns', () => {
    if (!Array.isArray(columns)) wrongKind('list of columns', columns, '');
    if (columns.length === 0) fail(tooShort, '', 'no columns', { least: '1', what: 'column' });
  });
  if (!check('temperatures', () => needRows(temperatures)) || !listed) return [];
  temperatures.forEach((one, i) => check(`temperatures[${i}]`, () => need('temperature', one, '')));
  return columns.flatMap((column, c) => {
    const path = `columns[${c}]`;
    const sound = check(path, () => needColumn(column, temperatures.length));
    if (!sound) return [];
    const { name, pressures } = column;
    const first = columns.findIndex((other) => other?.name === name);
    if (first < c) check(`${path}.name`, () => fail(duplicateName, '', quote(name), { what: 'column' }));
    const paths = (row: number): string => `${path}.pressures[${row}]`;
    pressures.forEach((one, i) => check(paths(i), () => need('gauge pressure', one, '')));
    return [{ name, temperatures, pressures, paths }];
  });
}

function needRows(rows: unknown): void {
  if (!Array.isArray(rows)) wrongKind('list of rows', rows, '');
  else if (rows.length < 2) fail(tooFewRowsToAudit, '', rows.length === 1 ? '1 row' : 'no rows');
}

function needColumn(column: SeveralColumns['columns'][number], rows: number): void {
  if (!isObject(column)) wrongKind('column: name and pressures', column, '');
  if (typeof column.name !== 'string' || !isWellFormed(column.name)) fail(notAText, 'name', quote(column.name));
  if (!Array.isArray(column.pressures)) wrongKind('list of gauge pressures', column.pressures, 'pressures');
  if (column.pressures.length === rows) return;
  const found = `${column.pressures.length} pressures in column ${quote(column.name)}`;
  fail(cellsLeftOut, 'pressures', found, { count: String(rows), other: 'temperature' });
}

function needInside({ kelvins }: Temperature, temperatures: readonly Temperature[]): void {
  // Where a temperature is none, that is said of it alone.
  if (!temperatures.every((one) => isChecked(one, 'temperature'))) return;
  const all = temperatures.map((one) => one.kelvins);
  const [first, last] = [Math.min(...all), Math.max(...all)];
  if (kelvins >= first && kelvins <= last) return;
  fail(referenceOutsideTable, '', inCelsius(kelvins), { first: inCelsius(first), last: inCelsius(last) });
}

function needModels(models: readonly GasModel[]): void {
  if (!Array.isArray(models)) wrongKind('list of gas models', models, '');
  if (models.length === 0) fail(tooShort, '', 'no models', { least: '1', what: 'gas model' });
  models.forEach((model: GasModel, i) => {
    needModel(model, `[${i}]`);
    if (models.findIndex((other: GasModel) => other?.id === model.id) < i)
      fail(duplicateName, `[${i}]`, quote(model.id), { what: 'gas model' });
  });
}

function needUnits(units: TableAuditGiven['printedIn']): void {
  if (!isObject(units)) wrongKind('units of the table: pressure and temperature', units, '');
}

function needTemperatureStep(step: TableAuditGiven['temperatureStep']): void {
  if (step === 'exact') return;
  need('temperature difference', step, '');
  if (!(step.kelvins > 0)) fail(notPositive, '', `${step.kelvins} K difference`);
}
