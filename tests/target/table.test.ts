import {
  columnOf,
  specification,
  temperature,
  type MakersTable,
  type MakersTables,
  type SpecificationGiven,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, celsius, GIVEN, hPa, pointOf, specBy, tableOf } from '../support/accumulator.js';
import { problemOf } from '../support/problem.js';
import { refusalOf } from '../support/round.js';

const ROWS = [
  [127.3, 0],
  [140, 20],
  [152.6, 40],
  [165.2, 60],
] as const;
const TABLE = tableOf(ROWS);

/** Path and code of every problem with a specification by a table that is sound but for the changes. */
function refused(table: Record<string, unknown>, more: Record<string, unknown> = {}): string[] {
  const given = { ...GIVEN, precharge: { ...TABLE, ...table }, ...more } as unknown as SpecificationGiven;
  return refusalOf(() => specification(given)).map(({ path, code }) => `${path}: ${code}`);
}

/** The rows of the table, with some of them replaced. */
const rowsWith = (changed: Record<number, unknown>): Record<string, unknown> => ({
  rows: TABLE.rows.map((row, i) => (i in changed ? changed[i] : row)),
});

describe('a table is refused', () => {
  test.each<[string, Record<string, unknown>, string[]]>([
    ['without rows', { rows: [] }, ['precharge.rows: too few rows']],
    ['with one row', { rows: TABLE.rows.slice(0, 1) }, ['precharge.rows: too few rows']],
    ['with rows of undefined', { rows: undefined }, ['precharge.rows: too few rows']],
    ['with rows of null', { rows: null }, ['precharge.rows: too few rows']],
    [
      'with rows in an object',
      { rows: { 0: pointOf(1, 0), 1: pointOf(2, 20), length: 2 } },
      ['precharge.rows: too few rows'],
    ],
    [
      'with a temperature twice',
      rowsWith({ 1: pointOf(140, 0) }),
      ['precharge.rows[1].temperature: rows out of order'],
    ],
    [
      'with a temperature below the one before',
      rowsWith({ 2: pointOf(152.6, 10) }),
      ['precharge.rows[2].temperature: rows out of order'],
    ],
    ['with a pressure twice', rowsWith({ 2: pointOf(140, 40) }), ['precharge.rows[2].pressure: rows out of order']],
    [
      'with a pressure that falls',
      rowsWith({ 3: pointOf(152.5, 60) }),
      ['precharge.rows[3].pressure: rows out of order'],
    ],
    [
      'with rows from hot to cold',
      { rows: [...TABLE.rows].reverse() },
      [1, 2, 3].map((i) => `precharge.rows[${i}].temperature: rows out of order`),
    ],
    ['with a row of null', rowsWith({ 1: null }), ['precharge.rows[1]: wrong kind']],
    ['with a bare number for a row', rowsWith({ 1: 140 }), ['precharge.rows[1]: wrong kind']],
    [
      'with a bare pressure',
      rowsWith({ 2: { pressure: 152.6, temperature: celsius(40) } }),
      ['precharge.rows[2].pressure: wrong kind'],
    ],
    [
      'with an absolute pressure',
      rowsWith({ 0: { pressure: hPa(127_300), temperature: celsius(0) } }),
      ['precharge.rows[0].pressure: absolute for gauge'],
    ],
    [
      'with a bare temperature',
      rowsWith({ 3: { pressure: bar(165.2), temperature: 60 } }),
      ['precharge.rows[3].temperature: wrong kind'],
    ],
    [
      'with both wrong in a row',
      rowsWith({ 1: { pressure: 140, temperature: 20 } }),
      ['precharge.rows[1].pressure: wrong kind', 'precharge.rows[1].temperature: wrong kind'],
    ],
    [
      'with a reference temperature below its rows',
      { referenceTemperature: celsius(-0.01) },
      ['precharge.referenceTemperature: reference outside the table'],
    ],
    [
      'with a reference temperature above its rows',
      { referenceTemperature: celsius(60.01) },
      ['precharge.referenceTemperature: reference outside the table'],
    ],
    ['with a bare reference temperature', { referenceTemperature: 20 }, ['precharge.referenceTemperature: wrong kind']],
    [
      'without a reference temperature',
      { referenceTemperature: undefined },
      ['precharge.referenceTemperature: wrong kind'],
    ],
    ['printed to a step of zero', { printedStep: barOf(0) }, ['precharge.printedStep: not positive']],
    ['printed to a negative step', { printedStep: barOf(-0.1) }, ['precharge.printedStep: not positive']],
    ['printed to a bare step', { printedStep: 0.1 }, ['precharge.printedStep: wrong kind']],
    ['printed to a gauge pressure', { printedStep: bar(0.1) }, ['precharge.printedStep: wrong kind']],
    ['without its step', { printedStep: undefined }, ['precharge.printedStep: wrong kind']],
    ...['extrapolate', 'Refuse', 'constructor', true, undefined].map(
      (outside): [string, Record<string, unknown>, string[]] => [
        `with ${String(outside)} outside`,
        { outside },
        ['precharge.outside: unknown word'],
      ],
    ),
  ])('%s', (_, changed, problems) => {
    expect(refused(changed)).toEqual(problems);
  });

  test('with everything that is wrong at once', () => {
    const faulty = {
      rows: [
        pointOf(127.3, 0),
        pointOf(127.3, 20),
        { pressure: 152.6, temperature: celsius(40) },
        pointOf(165.2, 30),
        null,
      ],
      referenceTemperature: 20,
      printedStep: barOf(0),
      outside: 'guess',
    };
    expect(refused(faulty, { ambient: hPa(1) })).toEqual([
      'precharge.rows[2].pressure: wrong kind',
      'precharge.rows[4]: wrong kind',
      'precharge.rows[1].pressure: rows out of order',
      'precharge.referenceTemperature: wrong kind',
      'precharge.printedStep: not positive',
      'precharge.outside: unknown word',
      'ambient: not an ambient pressure',
    ]);
  });

  test('with everything that is wrong, where it has too few rows as well', () => {
    const faulty = { rows: [], referenceTemperature: 20, printedStep: 0.1, outside: 'guess' };
    expect(refused(faulty)).toEqual([
      'precharge.rows: too few rows',
      'precharge.referenceTemperature: wrong kind',
      'precharge.printedStep: wrong kind',
      'precharge.outside: unknown word',
    ]);
  });

  test('saying what was found, with its unit, and what is wanted', () => {
    const said = (table: Partial<MakersTable>): (string | undefined)[] => {
      const [problem] = refusalOf(() => specBy({ ...TABLE, ...table }));
      return [problem?.found, problem?.wanted];
    };
    expect(said({ rows: TABLE.rows.slice(0, 1) })[1]).toBe('two rows or more');
    expect(said({ rows: [pointOf(140, 20), pointOf(139, 40)] })).toEqual([
      '139 bar gauge after 140 bar gauge',
      'temperatures and pressures that both increase from row to row',
    ]);
    expect(said({ rows: [pointOf(140, 20), pointOf(150, 20)] })[0]).toBe('20 °C after 20 °C');
    expect(said({ referenceTemperature: celsius(61) })).toEqual(['61 °C', '0 °C to 60 °C, the rows of the table']);
    expect(said({ printedStep: barOf(-0.1) })[0]).toBe('-0.1 bar difference');
  });

  test('in the place where it stands', () => {
    const point = pointOf(130, 20);
    const measured = { plusMinus: barOf(2), applies: 'at the measured temperature' } as const;
    const faulty = rowsWith({ 1: pointOf(140, 0) });
    const [minimum, maximum] = [point, { ...TABLE, ...faulty }];
    expect(refused({}, { tolerance: { minimum, maximum } })).toEqual([
      'tolerance.maximum.rows[1].temperature: rows out of order',
    ]);
    expect(
      refused({}, { tolerance: measured, toleranceAfterCharging: { minimum: { ...TABLE, ...faulty }, maximum } }),
    ).toEqual([
      'toleranceAfterCharging.minimum.rows[1].temperature: rows out of order',
      'toleranceAfterCharging.maximum.rows[1].temperature: rows out of order',
    ]);
  });
});

describe('a table by which the pressures cannot be', () => {
  test('asks for no more than the allowable pressure at its reference temperature', () => {
    expect(refused({}, { allowable: bar(139.9) })).toEqual(['precharge.rows: above allowable']);
    expect(refused({ referenceTemperature: celsius(30) }, { allowable: bar(146.2) })).toEqual([
      'precharge.rows: above allowable',
    ]);
    const [problem] = refusalOf(() => specBy({ ...TABLE, referenceTemperature: celsius(30) }, { allowable: bar(146) }));
    expect(problem?.found).toBe('146.3 bar gauge');
  });

  test.each([
    [[], '0 rows'],
    [TABLE.rows.slice(0, 1), '1 row'],
    [undefined, 'undefined'],
    ['two', '"two"'],
  ])('with too few rows says how many there are, case %#', (rows, found) => {
    const problems = refusalOf(() => specBy({ ...TABLE, rows } as MakersTable));
    expect(problems.map((problem) => problem.found)).toEqual([found]);
  });

  test('may ask for more elsewhere: that is for the day it is read on', () => {
    expect(specBy(TABLE, { allowable: bar(140) }).kind).toBe('specification');
  });

  test('follows constant density only where the model answers', () => {
    const hot = { rows: [pointOf(140, 20), { pressure: bar(300), temperature: temperature(1001, 'K') }] };
    expect(specBy({ ...TABLE, ...hot }).kind).toBe('specification');
    expect(refused({ ...hot, outside: 'follow constant density' })).toEqual(['precharge: outside the model']);
  });

  test('keeps a lower limit above zero at its reference temperature', () => {
    const tolerance = { plusMinus: barOf(140), applies: 'at the measured temperature' } as const;
    expect(refused({}, { tolerance })).toEqual(['tolerance: band reaches zero']);
  });
});

test('the smallest tables are accepted: two rows, the reference temperature on either', () => {
  for (const t of [20, 40]) {
    const spec = specBy(
      tableOf(
        [
          [140, 20],
          [152.6, 40],
        ],
        { referenceTemperature: celsius(t) },
      ),
    );
    expect(spec.referenceTemperature).toStrictEqual(celsius(t));
    expect(spec.density_mol_m3).toBe('by table');
  }
});

describe('a specification by a table', () => {
  test('carries the table as given, and cannot be changed through what it was made from', () => {
    const rows = TABLE.rows.map((row) => ({ ...row }));
    const spec = specBy({ ...TABLE, rows });
    rows.push(pointOf(300, 80));
    Object.assign(rows[1] ?? {}, pointOf(1, 20));
    expect(spec.precharge).toStrictEqual(TABLE);
    const parts = [spec.precharge, spec.precharge.rows, ...spec.precharge.rows];
    expect(parts.filter((part) => !Object.isFrozen(part))).toEqual([]);
  });

  test('nor through a table whose outside alone is frozen', () => {
    const rows = TABLE.rows.map((row) => ({ ...row }));
    const spec = specBy(Object.freeze({ ...TABLE, rows }));
    Object.assign(rows[1] ?? {}, pointOf(1, 20));
    expect(spec.precharge).toStrictEqual(TABLE);
  });
});

describe('one column of several', () => {
  const TABLES: MakersTables = {
    temperatures: [celsius(0), celsius(20), celsius(40)],
    columns: [
      { name: 'type A', pressures: [bar(127.3), bar(140), bar(152.6)] },
      { name: 'type B', pressures: [bar(91), bar(100), bar(109)] },
      { name: 'short', pressures: [bar(91), bar(100)] },
      { name: 'long', pressures: [bar(91), bar(100), bar(109), bar(118)] },
      { name: 'twice', pressures: [bar(91), bar(100), bar(109)] },
      { name: 'twice', pressures: [bar(92), bar(101), bar(110)] },
    ],
    referenceTemperature: celsius(20),
    printedStep: barOf(0.1),
    outside: 'follow constant density',
  };

  test('is a table of its own', () => {
    expect(columnOf(TABLES, 'type B')).toStrictEqual({
      rows: [pointOf(91, 0), pointOf(100, 20), pointOf(109, 40)],
      referenceTemperature: celsius(20),
      printedStep: barOf(0.1),
      outside: 'follow constant density',
    });
    expect(specBy(columnOf(TABLES, 'type A')).precharge.rows[2]).toStrictEqual(pointOf(152.6, 40));
  });

  test.each([
    ['that there is none of', 'type C', 'name', 'unknown column', '"type C"'],
    ['in other letters', 'Type A', 'name', 'unknown column', '"Type A"'],
    ['that stands there twice', 'twice', 'name', 'unknown column', '"twice"'],
    ['with a cell left out', 'short', 'columns', 'cells left out', '2 pressures in column "short"'],
    ['with a cell too many', 'long', 'columns', 'cells left out', '4 pressures in column "long"'],
  ])('%s is refused', (_, name, path, code, found) => {
    expect(problemOf(() => columnOf(TABLES, name))).toMatchObject({ path, code, found });
  });

  test('that is unknown: the known ones are named', () => {
    expect(problemOf(() => columnOf(TABLES, 'x')).wanted).toContain('"type A", "type B", "short"');
    expect(problemOf(() => columnOf({ ...TABLES, columns: [] }, 'x')).wanted).toMatch(/\bnone\b/);
  });

  test('with a cell left out: what it needs one for, and how many', () => {
    const { wanted } = problemOf(() => columnOf(TABLES, 'short'));
    expect(wanted).toMatch(/\btemperature\b/);
    expect(wanted).toContain('3');
  });

  test.each(['temperatures', 'columns'])('of tables without %s is refused', (field) => {
    const none = { ...TABLES, [field]: undefined };
    expect(problemOf(() => columnOf(none, 'type A'))).toMatchObject({ code: 'wrong kind', path: 'tables' });
  });
});
