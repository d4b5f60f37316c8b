import { fail, under } from '../basis/fault.js';
import { indexed } from '../basis/indexed.js';
import { notPositive, rangeBackwards, rowsAlike, tooManyRows } from '../basis/problem.js';
import { show, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import {
  gaugeOf,
  need,
  temperatureOf,
  wrongKind,
  type AbsolutePressure,
  type GaugePressure,
  type Temperature,
  type TemperatureDifference,
} from '../quantity/kind.js';
import { needDivision, roundTo, rounded, write, type Division } from '../quantity/step.js';
import { inCelsius, PRESSURE, TEMPERATURE, type PressureUnit, type TemperatureUnit } from '../quantity/unit.js';
import type { Conditions } from '../target/conditions.js';
import { sourceOn, type TargetSource } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetAt, needConditions } from '../target/target.js';
import { bandAbout, type Band } from './band.js';

/** What an adjustment table should cover, and in which units and steps people will read it. */
export interface AdjustmentTableGiven {
  readonly from: Temperature;
  /** The last temperature; it is a row if the steps arrive at it. */
  readonly to: Temperature;
  /** Step from row to row; greater than zero. */
  readonly every: TemperatureDifference;
  /** How temperatures are written; the pressures hold for the temperature as written. */
  readonly temperatureStep: Division<TemperatureUnit>;
  readonly ambient: AbsolutePressure;
  /** Smallest division of the gauge: the target is rounded to its nearest mark, the limits inwards. */
  readonly gaugeStep: Division<PressureUnit>;
}

/** Target and limits at one temperature. */
export interface AdjustmentRow {
  readonly temperature: Temperature;
  readonly target: GaugePressure;
  readonly band: Band;
  readonly targetFrom: TargetSource;
  /** The same as people read it, in the table's units; rounded as the verdict rounds. */
  readonly written: {
    readonly temperature: string;
    readonly target: string;
    readonly lower: string;
    readonly upper: string;
  };
}

/** Target and limits against temperature for one specification. */
export interface AdjustmentTable {
  /** The `id` of the gas model. */
  readonly model: string;
  readonly ambient: AbsolutePressure;
  readonly temperatureUnit: TemperatureUnit;
  readonly pressureUnit: PressureUnit;
  readonly rows: readonly AdjustmentRow[];
}

/**
 * Most rows of an adjustment table.
 *
 * @example
 * ```ts
 * MOST_ROWS; // => 10000
 * ```
 */
export const MOST_ROWS = 10_000;

/** Where no mark of the gauge lies between the limits. */
const NO_MARK = 'no mark';

/**
 * The adjustment table of a specification: target and limits against temperature, in the user's units and steps, rounded
 * as the verdict rounds: the target to the nearest mark (ties to even), the limits inwards.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `unchecked specification`;
 * `not an ambient pressure`, `outside the model`, `outside the table`,
 * `band reaches zero`, `limits crossed`; `not positive` for a step from row to row, `not a step` for one to write to, that
 * is not; `range runs backwards`; `rows alike` where two rows would be written alike; `too many rows` for more than
 * 10 000; `unknown unit`
 * @example
 * ```ts
 * const table = adjustmentTable(spec, {
 *   from: temperature(20, '°C'),
 *   to: temperature(40, '°C'),
 *   every: temperatureDifference(10, 'K'),
 *   temperatureStep: { step: 1, unit: '°C' },
 *   ambient: standardAtmosphere,
 *   gaugeStep: { step: 1, unit: 'bar' },
 * });
 * table.rows.map((row) => row.written.target); // => ['140', '146', '153']
 * ```
 */
export function adjustmentTable(spec: Specification, given: AdjustmentTableGiven, trace?: Trace): AdjustmentTable {
  needSpecification(spec);
  if (typeof given !== 'object' || given === null) wrongKind('range and steps of an adjustment table', given, 'given');
  const { from, to, every, ambient } = given;
  need('temperature', from, 'from');
  need('temperature', to, 'to');
  need('temperature difference', every, 'every');
  const temperatureStep = needDivision(given.temperatureStep, 'temperatureStep');
  const gaugeStep = needDivision(given.gaugeStep, 'gaugeStep');
  const count = rowsOf(from, to, every);
  const rows = indexed(count, (i) => {
    const exact = temperatureOf(from.kelvins + i * every.kelvins);
    const temperature = under('temperatureStep', () => roundTo(exact, { ...temperatureStep, toward: 'nearest even' }));
    const shown = trace === undefined ? undefined : inRow(trace, i + 1);
    return rowAt(spec, { temperature, ambient }, temperatureStep, gaugeStep, shown);
  });
  rows.slice(1).forEach((row, i) => {
    const before = rows[i];
    if (before !== undefined && row.temperature.kelvins <= before.temperature.kelvins)
      fail(rowsAlike, 'every', `two rows written ${row.written.temperature}`);
  });
  return {
    model: spec.gas.id,
    ambient,
    temperatureUnit: temperatureStep.unit,
    pressureUnit: gaugeStep.unit,
    rows,
  };
}

/** The steps of a row say which row they are of. */
function inRow(trace: Trace, row: number): Trace {
  return (step) => show(trace, { ...step, about: `${step.about}, row ${row}` });
}

function rowAt(
  spec: Specification,
  at: Conditions,
  temperatureStep: Division<TemperatureUnit>,
  gaugeStep: Division<PressureUnit>,
  trace?: Trace,
): AdjustmentRow {
  const { temperature } = needConditions(at);
  const target_Pa = targetAt(spec, at, trace);
  const band = under('gaugeStep', () => bandAbout(spec, at, target_Pa, { gaugeStep }, trace));
  const target = gaugeOf(target_Pa);
  const onGauge = typeof band.onGauge === 'string' ? { lower: NO_MARK, upper: NO_MARK } : band.onGauge;
  return {
    temperature,
    target,
    band,
    targetFrom: sourceOn(spec['~curves'].target, temperature.kelvins),
    written: {
      temperature: rounded(temperature, { ...temperatureStep, toward: 'nearest even' }).text,
      target: rounded(target, { ...gaugeStep, toward: 'nearest even' }).text,
      lower: onGauge.lower,
      upper: onGauge.upper,
    },
  };
}

function rowsOf(from: Temperature, to: Temperature, every: TemperatureDifference): number {
  if (!(every.kelvins > 0)) fail(notPositive, 'every', `${every.kelvins} K`);
  const range = to.kelvins - from.kelvins;
  if (range < 0) fail(rangeBackwards, 'to', inCelsius(to.kelvins), { from: inCelsius(from.kelvins) });
  // The last step may miss the end by the rounding of a few additions.
  const count = Math.floor(range / every.kelvins + 1e-9) + 1;
  if (count <= MOST_ROWS) return count;
  return fail(tooManyRows, 'every', `${count} rows`, { most: String(MOST_ROWS) });
}

type Written = Pick<AdjustmentTable, 'model' | 'temperatureUnit' | 'pressureUnit' | 'ambient'> & {
  readonly rows: readonly Pick<AdjustmentRow, 'written'>[];
};

const WRITTEN: Fields = {
  model: 'as it is',
  temperatureUnit: 'as it is',
  pressureUnit: 'as it is',
  ambient: 'as it is',
  rows: [
    { written: { temperature: 'as it is', target: 'as it is', lower: 'as it is', upper: 'as it is' } },
    { most: MOST_ROWS, what: 'rows' },
  ],
};

/** What is written of an adjustment table, each part of it read once. Refuses what is none. */
function writtenOf(given: AdjustmentTable): Written {
  const table: Written = under('table', () => taken(given, WRITTEN));
  if (typeof table === 'object' && table !== null) {
    const { model, temperatureUnit, pressureUnit, rows } = table;
    const isNamed =
      typeof model === 'string' && Object.hasOwn(TEMPERATURE, temperatureUnit) && Object.hasOwn(PRESSURE, pressureUnit);
    if (isNamed && Array.isArray(rows) && rows.every(isRow)) return table;
  }
  return wrongKind('adjustment table', given, 'table');
}

/** Cells are numbers and nothing else: a spreadsheet takes what begins with = or @ for a formula. */
function isCell(text: unknown): boolean {
  return typeof text === 'string' && (text === NO_MARK || /^-?\d+(\.\d+)?$/.test(text));
}

function isRow(row: Partial<AdjustmentRow> | null): boolean {
  const written: Partial<AdjustmentRow['written']> | null | undefined = row?.written;
  if (typeof written !== 'object' || written === null) return false;
  const { temperature, target, lower, upper } = written;
  return [temperature, target, lower, upper].every(isCell);
}

/** The heads of the columns, with unit and basis. */
function heads({ temperatureUnit, pressureUnit }: Written): readonly string[] {
  const gauge = `[${pressureUnit} gauge]`;
  return [`temperature [${temperatureUnit}]`, `target ${gauge}`, `lower limit ${gauge}`, `upper limit ${gauge}`];
}

function cells({ written }: Pick<AdjustmentRow, 'written'>): readonly string[] {
  return [written.temperature, written.target, written.lower, written.upper];
}

/**
 * An adjustment table as aligned text, with its ambient and gas model above it.
 *
 * @throws {@link Fault} `wrong kind` for anything but a table that {@link adjustmentTable} made,
 * `too long` for more rows than that makes
 * @example
 * ```ts
 * const table = adjustmentTable(spec, {
 *   from: temperature(20, '°C'),
 *   to: temperature(20, '°C'),
 *   every: temperatureDifference(10, 'K'),
 *   temperatureStep: { step: 1, unit: '°C' },
 *   ambient: standardAtmosphere,
 *   gaugeStep: { step: 1, unit: 'bar' },
 * });
 * adjustmentText(table).split('\n').at(-1); // => '              20                 140                      138                      142'
 * ```
 */
export function adjustmentText(given: AdjustmentTable): string {
  const table = writtenOf(given);
  const lines = [heads(table), ...table.rows.map(cells)];
  const widths = heads(table).map((_, i) => Math.max(...lines.map((line) => line[i]?.length ?? 0)));
  const aligned = lines.map((line) => line.map((cell, i) => cell.padStart(widths[i] ?? 0)).join('  '));
  const ambient = write(table.ambient, { step: 0.1, unit: 'hPa' });
  return [`At an ambient of ${ambient}, by ${table.model}:`, ...aligned].join('\n');
}

/**
 * An adjustment table as CSV (RFC 4180: commas, CRLF, a header line). The decimal sign is a point; every cell is a number
 * or `no mark`.
 *
 * @throws {@link Fault} `wrong kind` for anything but a table that {@link adjustmentTable} made,
 * `too long` for more rows than that makes
 * @example
 * ```ts
 * const table = adjustmentTable(spec, {
 *   from: temperature(20, '°C'),
 *   to: temperature(20, '°C'),
 *   every: temperatureDifference(10, 'K'),
 *   temperatureStep: { step: 1, unit: '°C' },
 *   ambient: standardAtmosphere,
 *   gaugeStep: { step: 1, unit: 'bar' },
 * });
 * adjustmentCsv(table).split('\r\n')[1]; // => '20,140,138,142'
 * ```
 */
export function adjustmentCsv(given: AdjustmentTable): string {
  const table = writtenOf(given);
  return [heads(table), ...table.rows.map(cells)].map((line) => `${line.join(',')}\r\n`).join('');
}
