// Makers' tables: invented ones to draw from, and plain arithmetic to read them by.
import fc from 'fast-check';
import type { Allowed, Conditions, MakersTable, Stated } from 'isochore';
import { anyAmbient, bar, barOf, celsius, specBy, tableOf, type ByTable } from './accumulator.js';
import { evenly } from './evenly.js';
import { alongLine } from './line.js';

/** Gauge pressure of a table in Pa at a temperature within its rows, linear between them: the mean, weighed by distance. */
export function readOff({ rows }: MakersTable, T_K: number): number {
  for (const [i, high] of rows.entries()) {
    const low = rows[i - 1];
    if (low === undefined || T_K > high.temperature.kelvins || T_K < low.temperature.kelvins) continue;
    const share = (T_K - low.temperature.kelvins) / (high.temperature.kelvins - low.temperature.kelvins);
    return low.pressure.pascals * (1 - share) + high.pressure.pascals * share;
  }
  throw new Error(`${T_K} K is not in the table`);
}

/** First and last temperature of a table, K. */
export function spanOf({ rows }: MakersTable): readonly [first: number, last: number] {
  return [rows[0]?.temperature.kelvins ?? Number.NaN, rows.at(-1)?.temperature.kelvins ?? Number.NaN];
}

const tenths = (x: number): number => Math.round(x * 10) / 10;

/**
 * Tables of 2 to 6 rows, 10 to 25 K apart. Their pressures follow constant density from a nominal 50 to 250 bar at 20 °C,
 * rounded to their printed step, and are off by up to 0.3 bar, as tables of a maker's own method are.
 */
export const anyTable: fc.Arbitrary<MakersTable> = fc
  .record({
    nominal: fc.integer({ min: 50, max: 250 }),
    coldest: fc.integer({ min: -30, max: 10 }),
    gaps: fc.array(fc.integer({ min: 10, max: 25 }), { minLength: 1, maxLength: 5 }),
    off: fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 6, maxLength: 6 }),
    printedStep: fc.constantFrom(0.1, 0.2, 0.5),
    reference: fc.oneof(fc.constantFrom(0, 1), evenly(0, 1)),
    outside: fc.constantFrom<MakersTable['outside'][]>('refuse', 'follow constant density'),
  })
  .map(({ nominal, coldest, gaps, off, printedStep, reference, outside }) => {
    const temperatures = gaps.reduce((all, gap) => [...all, (all.at(-1) ?? coldest) + gap], [coldest]);
    const point = { p_g: nominal * 1e5, T: 293.15, ambient: 101_325 };
    const rows = temperatures.map((t, i): [number, number] => {
      const p_bar = alongLine(point, t + 273.15, 101_325) / 1e5 + (off[i] ?? 0) / 10;
      return [tenths(Math.round(p_bar / printedStep) * printedStep), t];
    });
    const last = temperatures.at(-1) ?? coldest;
    return tableOf(rows, {
      referenceTemperature: celsius(tenths(coldest + reference * (last - coldest))),
      printedStep: barOf(printedStep),
      outside,
    });
  });

/** A table with every pressure moved by a size in bar. */
const moved = (table: MakersTable, by: number): MakersTable => ({
  ...table,
  rows: table.rows.map(({ pressure, temperature }) => ({ pressure: bar(pressure.pascals / 1e5 + by), temperature })),
});

/** Bands in every form about a table, each wide enough that the target lies in it at any temperature. */
function anyAllowed(table: MakersTable): fc.Arbitrary<Allowed> {
  const size = fc.integer({ min: 20, max: 60 }).map((n) => n / 10);
  const applies = fc.constantFrom('at the measured temperature' as const, 'at the reference temperature' as const);
  const T = table.referenceTemperature;
  const limit = (sign: 1 | -1): fc.Arbitrary<Stated> =>
    fc
      .tuple(size, fc.boolean())
      .map(([by, asPoint]) =>
        asPoint
          ? { pressure: bar(readOff(table, T.kelvins) / 1e5 + sign * by), temperature: T }
          : moved(table, sign * by),
      );
  return fc.oneof(
    fc.record({ plusMinus: size.map(barOf), applies }),
    fc.record({ below: size.map(barOf), above: size.map(barOf), applies }),
    fc.record({ plusMinusPercentOfGauge: fc.integer({ min: 40, max: 80 }).map((n) => n / 10), applies }),
    fc.record({ minimum: limit(-1), maximum: limit(1) }),
  );
}

/** Specifications by a table, each with conditions at which it gives a target: within its rows, or well beyond them. */
export const anySpecByTable: fc.Arbitrary<{ readonly spec: ByTable; readonly at: Conditions }> = anyTable.chain(
  (table) => {
    const [first, last] = spanOf(table);
    const beyond = table.outside === 'refuse' ? 0 : 30;
    return fc
      .record({ ambient: anyAmbient, today: anyAmbient, tolerance: anyAllowed(table), share: evenly(0, 1) })
      .map(({ ambient, today, tolerance, share }) => ({
        spec: specBy(table, { ambient, tolerance, allowable: bar(600) }),
        at: {
          temperature: celsius(tenths(first - 273.15 - beyond + share * (last - first + 2 * beyond))),
          ambient: today,
        },
      }));
  },
);
