// What a manual states of a pressure, as JSON: at a point, or by a column of one of the document's tables.
import * as z from 'zod/mini';
import { collect, cut, failIfAny, fail, quote, type Problem } from '../basis/fault.js';
import type { AbsolutePressure, Kind, QuantityOf } from '../quantity/kind.js';
import { columnOf, needStated, type MakersTable, type MakersTables, type Stated } from '../target/table.js';
import { absolutePressure, gaugePressure, name, pressureDifference, temperature } from './measured.js';
import { isBroken, shapeProblems, valueAt, type Part } from './problems.js';
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
  columns: z.array(name).check(z.minLength(1), z.maxLength(100)),
  rows: z
    .array(z.strictObject({ temperature, pressures: z.array(gaugePressure).check(z.minLength(1), z.maxLength(100)) }))
    .check(z.minLength(2), z.maxLength(1000)),
});

/** The sound tables of a document by name; undefined where a table has the name and is not sound. */
export type Tables = ReadonlyMap<string, Table | undefined>;

/** A sound table, with the ambient at which it is meant. */
export interface Table {
  readonly tables: MakersTables;
  readonly ambient: AbsolutePressure;
}

/** A table from JSON; undefined, with its problems, if it is not sound. What its columns mean is checked where one is used. */
export function admitTable(raw: unknown): { readonly table: Table | undefined; readonly problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(TableShape, raw) };
  const rows = isBroken(part.problems, 'rows') ? [] : (valueAt(raw, ['rows']) as z.infer<typeof TableShape>['rows']);
  const columns = isBroken(part.problems, 'columns') ? [] : (valueAt(raw, ['columns']) as string[]);
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
  const all = new Map<string, Problem>();
  tables.columns.forEach(({ name: column }, k) => {
    const problems: Problem[] = [];
    collect(problems, '', () => needStated(columnOf(tables, column)));
    for (const problem of problems) {
      const path = problem.path.replace(/^(rows\[\d+\])\.pressure$/, `$1.pressures[${k}]`);
      all.set(`${problem.code} ${path}`, { ...problem, path });
    }
  });
  return [...all.values()];
}

type Rows = z.infer<typeof TableShape>['rows'];

/** Every row has a pressure for every column, and no two columns share a name. */
function columnProblems(rows: Rows, columns: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  columns.forEach((column, k) => {
    if (columns.indexOf(column) === k) return;
    problems.push({
      code: 'duplicate name',
      path: `columns[${k}]`,
      found: quote(column),
      wanted: 'a name that no other column of the table has',
      remedy: 'name each column apart',
    });
  });
  rows.forEach((row, i) => {
    if (columns.length === 0 || row.pressures.length === columns.length) return;
    problems.push({
      code: 'wrong shape',
      path: `rows[${i}].pressures`,
      found: `${row.pressures.length} pressures`,
      wanted: `${columns.length}, one for each column`,
      remedy: 'check the row for a cell left out or read twice',
    });
  });
  return problems;
}

/** A table is printed in one unit: a second one is a slip, or two tables. */
function unitProblems(rows: Rows): Problem[] {
  const [first] = rows;
  if (first === undefined) return [];
  return rows.flatMap((row, i) => [
    ...mixed(`rows[${i}].temperature.unit`, row.temperature.unit, first.temperature.unit),
    ...row.pressures.flatMap((one, k) => mixed(`rows[${i}].pressures[${k}].unit`, one.unit, first.pressures[0]?.unit)),
  ]);
}

function mixed(path: string, unit: string, first: string | undefined): Problem[] {
  if (unit === first) return [];
  return [
    {
      code: 'mixed units',
      path,
      found: quote(unit),
      wanted: `${quote(first)}, the unit of the first row`,
      remedy: 'write the table in the one unit in which it is printed',
    },
  ];
}

/**
 * What is stated at a path of a part: a point, or a column of a table. Undefined if there is nothing, or if it is not
 * sound.
 */
export function statedAt(
  part: Part,
  path: string,
  tables: Tables,
  ambient: AbsolutePressure | undefined,
): Stated | undefined {
  const json = soundAt(part, path) as z.infer<typeof StatedShape> | undefined;
  if (json === undefined) return undefined;
  const { table, column } = json;
  const form = ['pressure', 'temperature', 'table', 'column'].filter((field) => field in json).join(' ');
  if (form === 'pressure temperature') {
    const pressure = quantityAt(part, `${path}.pressure`, 'gauge pressure');
    const temperature = quantityAt(part, `${path}.temperature`, 'temperature');
    return pressure === undefined || temperature === undefined ? undefined : { pressure, temperature };
  }
  if (form !== 'table column' || table === undefined || column === undefined) {
    part.problems.push(neither(path, form));
    return undefined;
  }
  return collect(part.problems, path, () => columnAt(tables, table, column, ambient));
}

function columnAt(tables: Tables, name_: string, column: string, ambient: AbsolutePressure | undefined): MakersTable {
  const table = tables.get(name_);
  if (table === undefined) {
    return fail({
      code: 'unknown table',
      path: 'table',
      found: quote(name_),
      wanted: `the name of a sound table of this document${tables.has(name_) ? '; this one has problems of its own' : ''}`,
      remedy: tables.has(name_) ? 'mend the table' : 'check the spelling, or add the table',
    });
  }
  if (ambient !== undefined && ambient.pascals !== table.ambient.pascals) {
    return fail({
      code: 'not an ambient pressure',
      path: 'table',
      found: `${table.ambient.pascals / 100} hPa absolute with table ${cut(name_)}`,
      wanted: `${ambient.pascals / 100} hPa absolute, the ambient of the specification`,
      remedy: 'a table and the specification that uses it are meant at one ambient',
    });
  }
  const problems: Problem[] = [];
  const found = collect(problems, '', () => columnOf(table.tables, column));
  // The core calls the column's name `name`; in a document it is the field `column`.
  failIfAny(problems.map((problem) => (problem.path === 'name' ? { ...problem, path: 'column' } : problem)));
  return found as MakersTable;
}

function neither(path: string, form: string): Problem {
  return {
    code: 'wrong shape',
    path,
    found: form === '' ? 'nothing' : form.replaceAll(' ', ' with '),
    wanted: 'pressure with temperature, or table with column',
    remedy: 'state a point, or name a column of one of the tables of this document',
  };
}
