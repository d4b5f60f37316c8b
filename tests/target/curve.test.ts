import fc from 'fast-check';
import {
  explainingTemperature,
  gauge,
  judge,
  referred,
  slope,
  specification,
  standardAtmosphere,
  target,
  targetSource,
  temperature,
  type Conditions,
  type TargetSource,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  bar,
  barOf,
  celsius,
  GIVEN,
  hPa,
  pointOf,
  readingWith,
  specBy,
  specOf,
  tableOf,
  type ByTable,
} from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { alongLine } from '../support/line.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';
import { anySpecByTable, anyTable, readOff, spanOf } from '../support/table.js';

/** The conditions of the specification's own ambient. */
const inItsAmbient = ({ ambient }: ByTable, T_K: number): Conditions => ({
  temperature: temperature(T_K, 'K'),
  ambient,
});

const FOLLOW = { outside: 'follow constant density' } as const;
const ROWS = [
  [127.3, 0],
  [140, 20],
  [152.6, 40],
  [165.2, 60],
] as const;

describe('the target by a table', () => {
  test('is the printed value at every row, to the last bit', () => {
    fc.assert(
      fc.property(anySpecByTable, ({ spec }) => {
        const found = spec.precharge.rows.map((row) => ({ ...row, pressure: target(spec, { ...spec, ...row }) }));
        expect(found).toStrictEqual(spec.precharge.rows);
      }),
    );
  });

  test('lies on the straight line between two rows, moved by the difference of the ambients', () => {
    fc.assert(
      fc.property(anySpecByTable, evenly(0, 1), ({ spec, at }, share) => {
        const [first, last] = spanOf(spec.precharge);
        const T = first + share * (last - first);
        const wanted = readOff(spec.precharge, T);
        expect(relativeError(target(spec, inItsAmbient(spec, T)).pascals, wanted)).toBeLessThanOrEqual(1e-14);
        const today = target(spec, { ...at, temperature: temperature(T, 'K') }).pascals;
        const shifted = wanted + spec.ambient.pascals - at.ambient.pascals;
        expect(relativeError(today, shifted)).toBeLessThanOrEqual(1e-14);
      }),
      { numRuns: 300 },
    );
  });

  test('by hand: a quarter of the way from 140 to 152.6 bar', () => {
    const spec = specBy(tableOf(ROWS), { ambient: hPa(1000) });
    const at = (t: number, ambient: number): number =>
      target(spec, { temperature: celsius(t), ambient: hPa(ambient) }).pascals;
    expect(at(25, 1000)).toBeCloseTo(14_315_000, 6);
    // The barometer stands 20 hPa higher: 2000 Pa less on the gauge.
    expect(at(25, 1020)).toBeCloseTo(14_313_000, 6);
    expect(at(20, 980)).toBe(14_002_000);
  });

  test('increases with temperature, for neighbours and for distant temperatures, within the rows and beyond', () => {
    fc.assert(
      fc.property(anySpecByTable, fc.constantFrom(1e-6, 1e-3, 1, 5), ({ spec, at }, more) => {
        const [, last] = spanOf(spec.precharge);
        const warmer = temperature(at.temperature.kelvins + more, 'K');
        fc.pre(spec.precharge.outside !== 'refuse' || warmer.kelvins <= last);
        expect(target(spec, { ...at, temperature: warmer }).pascals).toBeGreaterThan(target(spec, at).pascals);
      }),
      { numRuns: 300 },
    );
  });
});

// With ρ constant, linear interpolation over h is off by at most h² max|∂²p/∂T²| / 8 (the remainder of a first-degree
// interpolation). By the term-by-term equation at 140 bar and 20 °C that is 0.0094 bar with the curvature at −20 °C, where
// it is largest, and 0.0087 bar where the first interval is furthest off, at its middle; further down it is more.
describe('a table printed from constant density, 140 bar at 20 °C, rows of 20 K from −20 to 60 °C', () => {
  const point = { p_g: 14_000_000, T: 293.15, ambient: 101_325 };
  const line = (t_C: number): number => alongLine(point, t_C + 273.15, 101_325) / 1e5;
  const temperatures = [-20, 0, 20, 40, 60];

  test('is within 0.009 bar of the line, beside what its printing rounds off, and comes close to that', () => {
    const worst = [0.1, 0.5, 1e-4].map((step) => {
      const rows = temperatures.map((t): [number, number] => [Math.round(line(t) / step) * step, t]);
      const spec = specBy(tableOf(rows, { printedStep: barOf(step) }));
      const off = Array.from({ length: 801 }, (_, i) => {
        const at = { temperature: celsius(-20 + i / 10), ambient: standardAtmosphere };
        return Math.abs(target(spec, at).pascals / 1e5 - line(-20 + i / 10));
      });
      expect(Math.max(...off)).toBeLessThanOrEqual(0.009 + step / 2);
      return Math.max(...off);
    });
    expect(worst[2]).toBeGreaterThan(0.0086);
  });

  test('has the curvature that the bound is worked out from', () => {
    const rho = specOf(140, 20).density_mol_m3;
    const slopeAt = (t: number): number => span2000(t + 273.15, rho).dpdT_rho_Pa_K;
    const bound = (t: number): number => (20 ** 2 * Math.abs(slopeAt(t + 0.5) - slopeAt(t - 0.5))) / 8 / 1e5;
    expect(bound(-20)).toBeCloseTo(0.0094, 4);
    expect(bound(-10)).toBeCloseTo(0.0087, 4);
  });
});

describe('beyond the rows', () => {
  test('a table refuses, with its bounds, where it is to', () => {
    const spec = specBy(tableOf(ROWS));
    const read = { ...readingWith(), pressure: bar(150) };
    const calls: ((at: Conditions) => unknown)[] = [
      (at) => target(spec, at),
      (at) => slope(spec, at),
      (at) => targetSource(spec, at.temperature),
      (at) => judge(spec, { ...read, ...at }),
    ];
    for (const T of [273.14, 333.16]) {
      for (const call of calls) {
        expect(problemOf(() => call(inItsAmbient(spec, T)))).toMatchObject({
          code: 'outside the table',
          path: 'temperature',
          found: T === 273.14 ? '-0.01 °C' : '60.01 °C',
          wanted: '0 °C to 60 °C, the rows of the table',
        });
      }
    }
    for (const t of [0, 60])
      expect(target(spec, { temperature: celsius(t), ambient: hPa(1000) }).kind).toBe('gauge pressure');
  });

  // Source: the term-by-term equation, tests/support/span2000.ts.
  test('the target follows constant density through the nearest end row, where it is to', () => {
    fc.assert(
      fc.property(
        anyTable,
        evenly(0, 40),
        fc.boolean(),
        fc.integer({ min: 870, max: 1085 }),
        (table, by, above, today) => {
          const spec = specBy({ ...table, ...FOLLOW }, { ambient: hPa(1017), allowable: bar(600) });
          const end = above ? table.rows.at(-1) : table.rows[0];
          if (end === undefined) throw new Error('no row');
          const T = end.temperature.kelvins + (above ? by : -by);
          const point = { p_g: end.pressure.pascals, T: end.temperature.kelvins, ambient: 101_700 };
          const found = target(spec, { temperature: temperature(T, 'K'), ambient: hPa(today) }).pascals;
          // 1e-9 bar.
          expect(Math.abs(found - alongLine(point, T, today * 100))).toBeLessThanOrEqual(1e-4);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('the target meets the end rows without a jump', () => {
    fc.assert(
      fc.property(anySpecByTable, fc.constantFrom(-1e-9, 1e-9), ({ spec, at }, by) => {
        fc.pre(spec.precharge.outside !== 'refuse');
        for (const T of spanOf(spec.precharge)) {
          const on = target(spec, { ...at, temperature: temperature(T, 'K') }).pascals;
          const near = target(spec, { ...at, temperature: temperature(T + by, 'K') }).pascals;
          expect(relativeError(near, on)).toBeLessThanOrEqual(1e-10);
        }
      }),
    );
  });
});

describe('where a target comes from', () => {
  const spec = specBy(tableOf(ROWS, FOLLOW));
  const row = (i: number): unknown => ({ pressure: bar(ROWS[i]?.[0] ?? 0), temperature: celsius(ROWS[i]?.[1] ?? 0) });

  test.each<[string, number, TargetSource['by'], number[]]>([
    ['the first row', 0, 'table', [0]],
    ['a row', 20, 'table', [1]],
    ['the last row', 60, 'table', [3]],
    ['two rows', 20.001, 'table', [1, 2]],
    ['the last two rows', 59.999, 'table', [2, 3]],
    ['the end row below', -0.001, 'constant density from the nearest row', [0]],
    ['the end row above', 60.001, 'constant density from the nearest row', [3]],
  ])('%s: %d °C', (_, t, by, rows) => {
    const wanted = { by, rows: rows.map(row) };
    expect(targetSource(spec, celsius(t))).toEqual(wanted);
    for (const reading of [
      readingWith({ temperature: celsius(t) }),
      readingWith({ temperature: celsius(t), oilSide: 'not known' }),
    ]) {
      expect(judge(spec, reading).targetFrom).toEqual(wanted);
    }
  });

  test('the reference point, at whatever temperature', () => {
    for (const t of [-40, 20, 40]) {
      const wanted = { by: 'constant density from the reference point', rows: [pointOf(140, 20)] };
      expect(targetSource(specOf(140, 20), celsius(t))).toEqual(wanted);
      expect(judge(specOf(140, 20), readingWith({ temperature: celsius(t) })).targetFrom).toEqual(wanted);
    }
  });

  test('is asked at a temperature, nothing else', () => {
    expect(problemOf(() => targetSource(spec, 20 as never))).toMatchObject({ path: 'temperature', code: 'wrong kind' });
    expect(problemOf(() => targetSource(spec, bar(20) as never))).toMatchObject({
      path: 'temperature',
      code: 'wrong kind',
    });
  });

  test('the rows named are those that the pressure lies between', () => {
    fc.assert(
      fc.property(anySpecByTable, ({ spec: any, at }) => {
        const here = { ...at, ambient: any.ambient };
        const { by, rows } = targetSource(any, here.temperature);
        const { pascals } = target(any, here);
        expect(rows.length).toBe(
          by === 'table' && !any.precharge.rows.some((x) => x.temperature.kelvins === here.temperature.kelvins) ? 2 : 1,
        );
        if (by === 'table') {
          expect(rows[0]?.pressure.pascals).toBeLessThanOrEqual(pascals);
          expect(rows.at(-1)?.pressure.pascals).toBeGreaterThanOrEqual(pascals);
        } else {
          const [first, last] = spanOf(any.precharge);
          expect(rows[0]?.temperature.kelvins).toBe(here.temperature.kelvins < first ? first : last);
        }
      }),
    );
  });
});

describe('the slope of a table', () => {
  const spec = specBy(
    tableOf(
      [
        [130, 0],
        [140, 20],
        [156, 40],
      ],
      FOLLOW,
    ),
  );
  const at = (t: number): number => slope(spec, { temperature: celsius(t), ambient: hPa(1000) }).pascalsPerKelvin / 1e5;

  test.each([
    ['between the first rows', 10, 0.5],
    ['at the first row', 0, 0.5],
    ['between the last rows', 33, 0.8],
    ['at a row, that above it', 20, 0.8],
    ['at the last row, that below it', 40, 0.8],
  ])('%s, %d °C: %d bar/K', (_, t, wanted) => {
    expect(at(t)).toBeCloseTo(wanted, 12);
  });

  // Source: the term-by-term equation, tests/support/span2000.ts.
  test('beyond the rows is that of constant density through the end row', () => {
    for (const [t, p_g, T] of [
      [-15, 13_000_000, 273.15],
      [55, 15_600_000, 313.15],
    ] as const) {
      const line = (by: number): number => alongLine({ p_g, T, ambient: 101_325 }, t + by + 273.15, 100_000) / 1e5;
      expect(at(t)).toBeCloseTo((line(0.01) - line(-0.01)) / 0.02, 7);
    }
  });

  test('is the change of the target per kelvin', () => {
    const h = 1e-3;
    fc.assert(
      fc.property(anySpecByTable, ({ spec: any, at: here }) => {
        const T = here.temperature.kelvins;
        const [first, last] = spanOf(any.precharge);
        fc.pre(any.precharge.rows.every((x) => Math.abs(x.temperature.kelvins - T) > h));
        fc.pre(any.precharge.outside !== 'refuse' || (T > first && T < last));
        const shifted = (by: number): number => target(any, { ...here, temperature: temperature(T + by, 'K') }).pascals;
        const central = (shifted(h) - shifted(-h)) / (2 * h);
        expect(relativeError(slope(any, here).pascalsPerKelvin, central)).toBeLessThanOrEqual(1e-6);
      }),
    );
  });
});

describe('the explaining temperature by a table', () => {
  test('is the measured one where the reading is the target, within 1e-9 K', () => {
    fc.assert(
      fc.property(anySpecByTable, ({ spec, at }) => {
        const found = explainingTemperature(spec, { ...at, pressure: target(spec, at) });
        if (found === 'none in range') {
          // The target at an end, in today's ambient, may round to a pascal's fraction beyond it.
          expect(spec.precharge.outside).toBe('refuse');
          expect(spanOf(spec.precharge)).toContain(at.temperature.kelvins);
          return;
        }
        expect(Math.abs(found.kelvins - at.temperature.kelvins)).toBeLessThanOrEqual(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  test('is the temperature of a row, to the last bit, where the reading is its printed value', () => {
    fc.assert(
      fc.property(anySpecByTable, ({ spec }) => {
        for (const row of spec.precharge.rows) {
          expect(explainingTemperature(spec, { ...spec, ...row })).toStrictEqual(row.temperature);
        }
      }),
    );
  });

  const read = (p_bar: number): Conditions & { pressure: ReturnType<typeof gauge> } => ({
    pressure: bar(p_bar),
    temperature: celsius(33),
    ambient: hPa(1000),
  });

  test('by hand: halfway from 140 to 152.6 bar, in either ambient', () => {
    const spec = specBy(tableOf(ROWS), { ambient: hPa(1020) });
    const found = explainingTemperature(spec, { ...read(0), pressure: gauge(14_632_000, 'Pa') });
    expect(found).toMatchObject({ kind: 'temperature' });
    if (found !== 'none in range') expect(found.kelvins).toBeCloseTo(303.15, 9);
  });

  test('is none in range beyond the rows where the table refuses, and follows the end rows where it does not', () => {
    const [refusing, following] = [
      specBy(tableOf(ROWS), { ambient: hPa(1000) }),
      specBy(tableOf(ROWS, FOLLOW), { ambient: hPa(1000) }),
    ];
    for (const [p, T_end] of [
      [127.29, 273.15],
      [165.21, 333.15],
    ] as const) {
      expect(explainingTemperature(refusing, read(p))).toBe('none in range');
      const found = explainingTemperature(following, read(p));
      if (found === 'none in range') throw new Error(found);
      // A hundredth of a bar is 0.016 K or so.
      expect(Math.abs(found.kelvins - T_end)).toBeLessThan(0.02);
      expect(Math.sign(found.kelvins - T_end)).toBe(Math.sign(p - 140));
      const there = target(following, { temperature: found, ambient: hPa(1000) });
      expect(relativeError(there.pascals, p * 1e5)).toBeLessThanOrEqual(1e-11);
    }
    expect(explainingTemperature(refusing, read(0))).toBe('none in range');
    expect(explainingTemperature(following, read(0))).toBe('none in range');
  });
});

describe('a reading referred, with a table', () => {
  // The gas inside follows constant density, whatever the maker's table does. Source: the term-by-term equation.
  test('is what the same gas shows at the reference temperature of the table', () => {
    fc.assert(
      fc.property(anySpecByTable, fc.integer({ min: 20, max: 300 }), ({ spec, at }, p_bar) => {
        const point = { p_g: p_bar * 1e5, T: at.temperature.kelvins, ambient: at.ambient.pascals };
        const wanted = alongLine(point, spec.precharge.referenceTemperature.kelvins, spec.ambient.pascals);
        expect(Math.abs(referred(spec, { ...at, pressure: bar(p_bar) }).pascals - wanted)).toBeLessThanOrEqual(1e-4);
      }),
    );
  });
});

describe('a nominal point beside a table', () => {
  // Source: the term-by-term equation, tests/support/span2000.ts.
  test('disagrees with the rows that lie off its line by more than the printed step, and with no others', () => {
    const count = { agreeing: 0, off: 0 };
    fc.assert(
      fc.property(anyTable, fc.integer({ min: -5, max: 5 }), fc.constantFrom(0, 20), (table, off, t) => {
        const nominal = {
          pressure: bar(Math.round((table.rows[0]?.pressure.pascals ?? 0) / 1e4) / 10 + off / 10),
          temperature: table.rows[0]?.temperature ?? celsius(t),
        };
        const spec = specBy(table, { nominal, allowable: bar(600), ambient: hPa(1003) });
        const point = { p_g: nominal.pressure.pascals, T: nominal.temperature.kelvins, ambient: 100_300 };
        const byLine = (T: number): number => alongLine(point, T, 100_300);
        const excess = table.rows.map(
          ({ pressure, temperature: T }) => Math.abs(byLine(T.kelvins) - pressure.pascals) - table.printedStep.pascals,
        );
        // A row exactly a step off is decided by the last bit.
        fc.pre(excess.every((x) => Math.abs(x) > 1e-3));
        const wanted = table.rows.filter((_, i) => (excess[i] ?? 0) > 0);
        expect(spec.disagreements.map(({ row }) => row)).toStrictEqual(wanted);
        for (const { row, byConstantDensity } of spec.disagreements) {
          expect(Math.abs(byConstantDensity.pascals - byLine(row.temperature.kelvins))).toBeLessThanOrEqual(1e-4);
        }
        count.off += wanted.length;
        count.agreeing += table.rows.length - wanted.length;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(count.off, count.agreeing)).toBeGreaterThan(100);
  });

  test('a row off by exactly the printed step agrees', () => {
    const table = tableOf(
      [
        [141, 20],
        [152.6, 40],
      ],
      { printedStep: barOf(1) },
    );
    const off = (p: number): number[] =>
      specBy(table, { nominal: pointOf(p, 20) }).disagreements.map(({ row }) => row.pressure.pascals / 1e5);
    expect(off(140)).toEqual([]);
    expect(off(139.999)).toEqual([141]);
  });

  test('does not change the target', () => {
    const [plain, beside] = [{}, { nominal: pointOf(150, 20) }].map((more) => specBy(tableOf(ROWS), more));
    if (plain === undefined || beside === undefined) throw new Error('two specifications');
    expect(beside.disagreements).toHaveLength(4);
    expect(beside.nominal).toStrictEqual(pointOf(150, 20));
    expect('nominal' in plain).toBe(false);
    for (const t of [0, 13, 20, 60]) {
      const at = { temperature: celsius(t), ambient: hPa(990) };
      expect(target(beside, at)).toStrictEqual(target(plain, at));
    }
  });

  test('is carried with what disagrees, unchangeable', () => {
    const rows = tableOf(ROWS).rows.map((row) => ({ ...row }));
    const nominal = { ...pointOf(150, 20) };
    const spec = specBy({ ...tableOf(ROWS), rows }, { nominal });
    Object.assign(rows[0] ?? {}, pointOf(1, 0));
    Object.assign(nominal, pointOf(1, 20));
    expect(spec.nominal).toStrictEqual(pointOf(150, 20));
    expect(spec.disagreements[0]?.row).toStrictEqual(pointOf(127.3, 0));
    const parts = [spec.disagreements, ...spec.disagreements, ...spec.disagreements.map(({ row }) => row)];
    expect(parts.filter((part) => !Object.isFrozen(part))).toEqual([]);
  });

  test.each<[string, unknown, string, string]>([
    ['a bare number', 140, 'nominal', 'wrong kind'],
    ['null', null, 'nominal', 'wrong kind'],
    ['a bare pressure', { pressure: 140, temperature: celsius(20) }, 'nominal.pressure', 'wrong kind'],
    ['no temperature', { pressure: bar(140) }, 'nominal.temperature', 'wrong kind'],
    ['a point beyond the model', pointOf(2000, 20), 'nominal', 'outside the model'],
    ['a point of liquid', { pressure: bar(140), temperature: temperature(100, 'K') }, 'nominal', 'liquid'],
  ])('is refused as %s', (_, nominal, path, code) => {
    expect(problemOf(() => specBy(tableOf(ROWS), { nominal: nominal as never }))).toMatchObject({ path, code });
  });

  test('is refused where its line does not reach a row', () => {
    const table = tableOf([
      [140, 20],
      [300, 800],
    ]);
    const problem = problemOf(() => specBy(table, { nominal: pointOf(140, 20) }));
    expect(problem).toMatchObject({ path: 'nominal', code: 'outside the model' });
  });

  test('is refused beside a reference point', () => {
    expect(problemOf(() => specOf(140, 20, { nominal: pointOf(140, 20) }))).toMatchObject({
      path: 'nominal',
      code: 'nominal without a table',
      found: 'a nominal point beside a reference point',
    });
  });

  test('is not blamed for what is wrong with what it stands beside', () => {
    const given = { ...GIVEN, nominal: pointOf(140, 20), precharge: undefined as never };
    expect(problemOf(() => specification(given))).toMatchObject({ path: 'precharge', code: 'wrong kind' });
  });
});
