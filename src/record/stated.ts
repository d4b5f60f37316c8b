// What a manual states of a pressure, as JSON: at a point, or by a column of one of the document's tables.
import * as z from 'zod/mini';
import { collect, cut, failIfAny, fail, problem, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import {
  cellsLeftOut,
  duplicateName,
  mixedUnits,
  notAStatement,
  otherAmbient,
  unknownTable,
} from '../basis/problem.js';
import type { AbsolutePressure, GaugePressure, Kind, QuantityOf } from '../quantity/kind.js';
import { columnOf, needStated, type MakersTable, type MakersTables, type Stated } from '../target/table.js';
import { entries } from './length.js';
import { absolutePressure, gaugePressure, name, pressureDifference, temperature } from './measured.js';
import { isBroken, listAt, shapeProblems, type Part } from './problems.js';
import { quantity, quantityAt, soundAt, type Measured } from './quantities.js';

/** A pressure as stated: at a temperature, or by a column of a table, each referred to by its name. */
export const StatedShape = z.strictObject({
  pressure: z.optional(gaugePressure),
  temperature: z.optional(temperature),
  table: z.optional(name),
  column: z.optional(name),
});

/** A maker's table: one column of temperatures, one or several of pressures, all in one unit each. */
export const TableShape = z.strictObject({
  name,
  ambient: absolutePressure,
  referenceTemperature: temperature,
  printedStep: pressureDifference,
  outside: z.enum(['refuse', 'follow constant density']),
  columns: z.array(name).check(...entries(1, 100)),
  rows: z
    .array(z.strictObject({ temperature, pressures: z.array(gaugePressure).check(...entries(1, 100)) }))
    .check(...entries(2, 1000)),
});

/**
 * The sound tables of a document by name; undefined where a table has the name and is not sound. `not sound`: so is the
 * whole list, and nothing can be said of any name.
 */
export type Tables = ReadonlyMap<string, Table | undefined> | 'not sound';

/** A sound table, with the ambient at which it is meant. */
export interface Table {
  readonly tables: MakersTables;
  readonly ambient: AbsolutePressure;
}

/** A table from JSON; undefined, with its problems, if it is not sound. What its columns mean is checked here too. */
export function admitTable(raw: unknown): { readonly table: Table | undefined; readonly problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(TableShape, raw) };
  const rows = isBroken(part.problems, 'rows') ? [] : (listAt(raw, 'rows') as Rows);
  const columns = isBroken(part.problems, 'columns') ? [] : (listAt(raw, 'columns') as readonly string[]);
  const ambient = quantityAt(part, 'ambient', 'absolute pressure');
  const referenceTemperature = quantityAt(part, 'referenceTemperature', 'temperature');
  const printedStep = quantityAt(part, 'printedStep', 'pressure difference');
  const cell = <K extends Kind>(path: string, kind: K, json: Measured): QuantityOf<K> | undefined =>
    collect(part.problems, path, () => quantity(kind, json));
  const temperatures = rows.map((row, i) => cell(`rows[${i}].temperature`, 'temperature', row.temperature));
  const pressures = rows.map((row, i) =>
    row.pressures.map((one, k) => cell(`rows[${i}].pressures[${k}]`, 'gauge pressure', one)),
  );
  part.problems.push(...columnProblems(rows, columns), ...unitProblems(rows));
  if (
    part.problems.length > 0 ||
    ambient === undefined ||
    referenceTemperature === undefined ||
    printedStep === undefined
  )
    return unsound(part);
  const outside = soundAt(part, 'outside') as MakersTables['outside'];
  const tables: MakersTables = {
    temperatures: temperatures.flatMap((one) => (one === undefined ? [] : [one])),
    columns: columns.map((column, k) => ({
      name: column,
      pressures: pressures.flatMap((row) => (row[k] === undefined ? [] : [row[k]])),
    })),
    referenceTemperature,
    printedStep,
    outside,
  };
  part.problems.push(...tableProblems(tables));
  return part.problems.length === 0 ? { table: { tables, ambient }, problems: [] } : unsound(part);
}

function unsound({ problems }: Part): { readonly table: undefined; readonly problems: readonly Problem[] } {
  return { table: undefined, problems };
}

/** What the core says of each column as a table, with the paths of the document; said once for all columns where it can be. */
function tableProblems(tables: MakersTables): Problem[] {
  const { temperatures, columns, referenceTemperature, printedStep, outside } = tables;
  const all = new Map<string, Problem>();
  columns.forEach(({ pressures }, k) => {
    // As many as there are temperatures, which is checked before.
    const rows = temperatures.map((temperature, i) => ({ temperature, pressure: pressures[i] as GaugePressure }));
    const problems: Problem[] = [];
    collect(problems, '', () => needStated({ rows, referenceTemperature, printedStep, outside }));
    for (const one of problems) {
      const path = one.path.replace(/^(rows\[\d+\])\.pressure$/, `$1.pressures[${k}]`);
      all.set(`${one.code} ${path}`, { ...one, path });
    }
  });
  return [...all.values()];
}

type Rows = readonly z.infer<typeof TableShape>['rows'][number][];

/** Every row has a pressure for every column, and no two columns share a name. */
function columnProblems(rows: Rows, columns: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  columns.forEach((column, k) => {
    if (columns.indexOf(column) === k) return;
    problems.push(problem(duplicateName, `columns[${k}]`, quote(column), { what: 'column' }));
  });
  rows.forEach((row, i) => {
    if (columns.length === 0 || row.pressures.length === columns.length) return;
    const wanted = { count: String(columns.length), other: 'column' };
    problems.push(problem(cellsLeftOut, `rows[${i}].pressures`, `${row.pressures.length} pressures`, wanted));
  });
  return problems;
}

/** A table is printed in one unit: a second one is a slip, or two tables. */
function unitProblems(rows: Rows): Problem[] {
  const [first] = rows;
  if (first === undefined) return [];
  return rows.flatMap((row, i) => [
    ...mixed(`rows[${i}].temperature.unit`, row.temperature.unit, first.temperature.unit),
    ...row.pressures.flatMap((one, k) =>
      mixed(`rows[${i}].pressures[${k}].unit`, one.unit, first.pressures.at(0)?.unit),
    ),
  ]);
}

function mixed(path: string, unit: string, first: string | undefined): Problem[] {
  return unit === first ? [] : [problem(mixedUnits, path, quote(unit), { first: quote(first) })];
}

/**
 * What is stated at a path of a part: a point, or a column of a table. Undefined if there is nothing, or if it is not
 * sound, with the problems of it added to the part; `not sound` if it is its table that is not: the table has the problems.
 */
export function statedAt(
  part: Part,
  path: string,
  tables: Tables,
  ambient: AbsolutePressure | undefined,
): Stated | 'not sound' | undefined {
  const json = soundAt(part, path) as z.infer<typeof StatedShape> | undefined;
  if (json === undefined) return undefined;
  const { table, column } = json;
  const form = ['pressure', 'temperature', 'table', 'column'].filter((field) => has(json, field)).join(' ');
  if (form === 'pressure temperature') {
    const pressure = quantityAt(part, `${path}.pressure`, 'gauge pressure');
    const temperature = quantityAt(part, `${path}.temperature`, 'temperature');
    return pressure === undefined || temperature === undefined ? undefined : { pressure, temperature };
  }
  if (form !== 'table column' || table === undefined || column === undefined) {
    const found = form === '' ? 'nothing' : form.replaceAll(' ', ' with ');
    part.problems.push(problem(notAStatement, path, found));
    return undefined;
  }
  if (tables === 'not sound') return 'not sound';
  if (!tables.has(table)) {
    part.problems.push(problem(unknownTable, `${path}.table`, quote(table)));
    return undefined;
  }
  const sound = tables.get(table);
  if (sound === undefined) return 'not sound';
  return collect(part.problems, path, () => columnAt(sound, table, column, ambient));
}

function columnAt(
  { tables, ambient }: Table,
  table: string,
  column: string,
  wanted: AbsolutePressure | undefined,
): MakersTable {
  if (wanted !== undefined && wanted.pascals !== ambient.pascals) {
    const found = `${ambient.pascals / 100} hPa absolute with table ${cut(table)}`;
    return fail(otherAmbient, 'table', found, { ambient: String(wanted.pascals / 100) });
  }
  const problems: Problem[] = [];
  const found = collect(problems, '', () => columnOf(tables, column));
  // The table is sound, so that it is the column's name; in a document that is the field `column`.
  failIfAny(problems.map((one) => ({ ...one, path: 'column' })));
  return found as MakersTable;
}
