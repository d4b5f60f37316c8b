import {
  auditTable,
  columnOf,
  nitrogen,
  specification,
  target,
  type MakersTables,
  type SpecificationGiven,
} from 'isochore';
import { describe, expect, it, test } from 'vitest';
import { bar, barOf, celsius, GIVEN, hPa, specBy, specWith, tableOf } from '../support/accumulator.js';
import { counted } from '../support/counted.js';
import { inheriting } from '../support/inheriting.js';
import { problemOf } from '../support/problem.js';

const given = (changed: object): SpecificationGiven => ({ ...GIVEN, ...changed });

/** An object with more in it than is asked for: itself. */
function cyclic<T extends object>(fields: T): T {
  const value = { ...fields, more: {} };
  value.more = value;
  return value;
}

describe('what a specification holds', () => {
  it('is what the manual states and nothing else, however deep that is', () => {
    const rows = [
      cyclic({ pressure: bar(140), temperature: celsius(20) }),
      cyclic({ pressure: bar(152), temperature: celsius(40) }),
    ];
    const spec = specification(
      given({
        precharge: cyclic({ rows, referenceTemperature: celsius(20), printedStep: barOf(0.5), outside: 'refuse' }),
        nominal: cyclic({ pressure: bar(140), temperature: celsius(20) }),
        tolerance: cyclic({ plusMinus: barOf(2), applies: 'at the measured temperature' }),
        settling: cyclic({ allowance: barOf(1.5), minutes: 5 }),
      }),
    );
    expect(Object.keys(spec.precharge)).toEqual(['rows', 'referenceTemperature', 'printedStep', 'outside']);
    expect('rows' in spec.precharge && Object.keys(spec.precharge.rows[1] ?? {})).toEqual(['pressure', 'temperature']);
    expect(Object.keys(spec.nominal ?? {})).toEqual(['pressure', 'temperature']);
    expect(Object.keys(spec.tolerance)).toEqual(['plusMinus', 'applies']);
    expect(Object.keys(spec.settling)).toEqual(['allowance', 'minutes']);
  });

  it('is frozen, its solved curves included', () => {
    const frozen = (value: unknown): boolean =>
      typeof value !== 'object' ||
      value === null ||
      (Object.isFrozen(value) && Object.values(value).every((inner) => frozen(inner)));
    const tolerance = { plusMinus: barOf(2), applies: 'at the reference temperature' } as const;
    const table = tableOf(
      [
        [140, 20],
        [152, 40],
      ],
      { outside: 'follow constant density' },
    );
    for (const spec of [specWith(), specWith({ tolerance }), specBy(table), specBy(table, { tolerance })]) {
      expect(frozen(spec)).toBe(true);
      expect(frozen(spec['~curves'])).toBe(true);
    }
  });

  it('is what was checked, though a field says something else when it is read again', () => {
    let reads = 0;
    const settling = {
      allowance: barOf(1.5),
      get minutes() {
        reads += 1;
        return reads === 1 ? 5 : Number.NaN;
      },
    };
    expect(specification(given({ settling })).settling.minutes).toBe(5);
    const temperatures = [celsius(40), null];
    let asked = 0;
    const at = {
      ambient: hPa(1013.25),
      get temperature() {
        asked += 1;
        return temperatures[Math.min(asked - 1, 1)];
      },
    };
    expect(target(specWith(), at as never)).toEqual(
      target(specWith(), { temperature: celsius(40), ambient: hPa(1013.25) }),
    );
  });

  it('a row left out of a list of rows is refused', () => {
    const rows = Object.assign([{ pressure: bar(140), temperature: celsius(20) }], { length: 2 });
    const precharge = {
      ...tableOf([
        [140, 20],
        [152, 40],
      ]),
      rows,
    };
    expect(problemOf(() => specification(given({ precharge })))).toMatchObject({
      code: 'wrong kind',
      path: 'precharge.rows[1]',
    });
  });
});

test('limits with much else are refused in few words', () => {
  const point = { pressure: bar(138), temperature: celsius(20) };
  const others = Object.fromEntries(Array.from({ length: 10_000 }, (_, i) => [`${i} ${'x'.repeat(200)}\ud83d`, i]));
  const tolerance = { minimum: point, maximum: { ...point, pressure: bar(142) }, applies: 'x', ...others };
  const { code, found } = problemOf(() => specification(given({ tolerance })));
  expect(code).toBe('not a tolerance');
  expect(found).toMatch(/^limits with /);
  expect(found.length).toBeLessThanOrEqual(450);
  expect(found).not.toMatch(/\p{Surrogate}/u);
});

describe('where all objects inherit a field', () => {
  it('get: a specification is made', () => {
    const made = inheriting('get', 'mine', () => specWith());
    expect(made['~curves'].target.by).toBe('line');
  });
  it('-1: there is no row before the first', () => {
    const table = tableOf([
      [140, 20],
      [152, 40],
    ]);
    const before = { pressure: bar(1), temperature: celsius(1) };
    const cold = inheriting('-1', before, () => {
      const spec = specBy(table);
      return problemOf(() => target(spec, { temperature: celsius(10), ambient: hPa(1013.25) }));
    });
    expect(cold.code).toBe('outside the table');
  });
});

describe('a column of several', () => {
  const tables = (changed: object = {}): MakersTables => ({
    temperatures: [celsius(20), celsius(40)],
    columns: [
      { name: 'A', pressures: [bar(140), bar(152.5)] },
      { name: 'B', pressures: [bar(100), bar(109)] },
    ],
    referenceTemperature: celsius(20),
    printedStep: barOf(0.5),
    outside: 'refuse',
    ...changed,
  });
  test.each([
    ['no tables', null, 'tables', 'wrong kind'],
    ['a column that is null', tables({ columns: [null] }), 'columns[0]', 'wrong kind'],
    ['a column without a name', tables({ columns: [{ pressures: [] }] }), 'columns[0]', 'wrong kind'],
    ['a column without pressures', tables({ columns: [{ name: 'A' }] }), 'columns[0]', 'wrong kind'],
    [
      'a cell that is null',
      tables({ columns: [{ name: 'A', pressures: [bar(140), null] }] }),
      'columns[0].pressures[1]',
      'wrong kind',
    ],
    [
      'a hole for a cell',
      tables({ columns: [{ name: 'A', pressures: Object.assign([bar(140)], { length: 2 }) }] }),
      'columns[0].pressures[1]',
      'wrong kind',
    ],
    [
      'an absolute pressure',
      tables({ columns: [{ name: 'A', pressures: [hPa(1000), bar(1)] }] }),
      'columns[0].pressures[0]',
      'absolute for gauge',
    ],
    ['a step of numbers', tables({ printedStep: new Float64Array([1, Number.NaN]) }), 'printedStep', 'wrong kind'],
    ['a step of zero', tables({ printedStep: barOf(0) }), 'printedStep', 'not positive'],
    ['a bare reference temperature', tables({ referenceTemperature: 20 }), 'referenceTemperature', 'wrong kind'],
    ['another word for what holds outside', tables({ outside: 'nothing' }), 'outside', 'unknown word'],
    ['a temperature that is null', tables({ temperatures: [null, celsius(40)] }), 'temperatures[0]', 'wrong kind'],
  ])('%s is refused', (_, value, path, code) => {
    expect(problemOf(() => columnOf(value as MakersTables, 'A'))).toMatchObject({ path, code });
  });
  it('whose list of temperatures changes its length: the one that was read counts', () => {
    let reads = 0;
    const temperatures = new Proxy([celsius(20), celsius(40)], {
      get: (on, key) => (key === 'length' && (reads += 1) > 1 ? 0 : Reflect.get(on, key)) as unknown,
    });
    expect(columnOf(tables({ temperatures }), 'A').rows).toHaveLength(2);
  });
  it('that is not there: the names of the others, the first few of many', () => {
    expect(problemOf(() => columnOf(tables(), 'C')).values).toEqual({ columns: '"A", "B"' });
    const columns = Array.from({ length: 1000 }, (_, i) => ({ name: `${i} ${'x'.repeat(100)}`, pressures: [] }));
    expect(problemOf(() => columnOf(tables({ columns }), 'C')).wanted.length).toBeLessThan(500);
  });
});

test('a gas that only looks like one is refused', () => {
  expect(problemOf(() => specification(given({ gas: { ...nitrogen } })))).toMatchObject({
    code: 'wrong kind',
    path: 'gas',
    found: 'an unchecked copy of a gas model',
  });
});

it('a frozen copy of a specification, with its prototype, is refused', () => {
  const spec = specWith();
  const copy = Object.freeze(
    Object.assign(Object.create(Object.getPrototypeOf(spec) as object) as object, { ...spec }),
  );
  const at = { temperature: celsius(40), ambient: hPa(1013.25) };
  expect(problemOf(() => target(copy as typeof spec, at))).toMatchObject({
    code: 'unchecked specification',
    path: 'spec',
  });
});

test('every part of a printed table is read once: what is checked is what is audited', () => {
  const table = {
    temperatures: [celsius(0), celsius(20), celsius(40)],
    columns: [{ name: 'type A', pressures: [bar(127.5), bar(140), bar(152.5)] }],
    referenceTemperature: celsius(20),
    printedStep: barOf(0.5),
  };
  const rows = [
    { temperature: celsius(0), pressure: bar(127.5) },
    { temperature: celsius(20), pressure: bar(140) },
  ];
  const about = {
    models: [nitrogen],
    ambient: hPa(1013.25),
    printedIn: { pressure: 'bar', temperature: '°C' },
    temperatureStep: 'exact',
    equation: 'exact',
  };
  for (const one of [table, { rows, referenceTemperature: celsius(20), printedStep: barOf(0.5) }]) {
    const reads = new Map<string, number>();
    const audit = auditTable(counted(one, 'table', reads) as never, counted(about, 'given', reads) as never);
    expect(audit.columns[0]?.models).toEqual([nitrogen.id]);
    expect(reads.size).toBeGreaterThan(8);
    expect([...reads].filter(([, count]) => count !== 1)).toEqual([]);
  }
});
