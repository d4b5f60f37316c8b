// Lists that callers give: as long as they say, once.
import { describe, expect, test } from 'vitest';
import {
  adjustmentTable,
  adjustmentText,
  auditTable,
  columnOf,
  Fault,
  judge,
  settlingCurve,
  settlingEvidence,
  specification,
  temperatureDifference,
  together,
  why,
  type Problem,
} from 'isochore';
import { recall } from 'isochore/record';
import { listed } from '../../src/basis/listed.js';
import { GIVEN, readingWith, specWith, tableOf } from '../support/accumulator.js';
import { problemOf } from '../support/problem.js';

const FEW = { most: 3, what: 'points' };
const same = <T>(one: T): T => one;

test('each item is read once, in order, with its place', () => {
  const reads: string[] = [];
  const list = new Proxy(['a', 'b'], {
    get: (on, key) => {
      reads.push(String(key));
      return Reflect.get(on, key) as unknown;
    },
  });
  expect(listed(list, FEW, 'list', (item, i) => `${item}${i}`)).toEqual(['a0', 'b1']);
  expect(reads).toEqual(['length', '0', '1']);
});

test('as many as may be, and one more', () => {
  expect(listed([1, 2, 3], FEW, 'list', same)).toEqual([1, 2, 3]);
  expect(problemOf(() => listed([1, 2, 3, 4], FEW, 'list', same))).toMatchObject({
    code: 'too long',
    path: 'list',
    found: '4 points',
    wanted: 'at most 3 points',
  });
});

test.each([Number.NaN, '2', Symbol('two'), null, undefined, {}])('a length that is %s is none', (length) => {
  const list = new Proxy([1, 2], { get: (on, key) => (key === 'length' ? length : Reflect.get(on, key)) as unknown });
  expect(problemOf(() => listed(list, FEW, 'list', same)).code).toBe('too long');
});

describe('as long as the language allows', () => {
  const endless = new Array<never>(4_294_967_295);
  const { precharge, ambient } = GIVEN;
  const table = tableOf([
    [140, 20],
    [152, 40],
  ]);
  const timed = { gaugeStep: { step: 1, unit: 'bar' }, after: 'filling' } as const;
  const settling = { shell: precharge.temperature, timeConstantMinutes: 4, within: GIVEN.settling.allowance };
  const audit = {
    models: [],
    ambient,
    printedIn: { pressure: 'bar', temperature: '°C' },
    temperatureStep: 'exact',
    equation: 'exact',
  } as const;
  const card = adjustmentTable(specWith(), {
    from: precharge.temperature,
    to: precharge.temperature,
    every: temperatureDifference(5, 'K'),
    temperatureStep: { step: 1, unit: '°C' },
    gaugeStep: timed.gaugeStep,
    ambient,
  });
  const days = { instrument: 'gauge A', from: '2026-01-01', to: '2026-03-31', correction: GIVEN.settling.allowance };

  test.each<[path: string, what: string, call: () => unknown]>([
    ['checks', 'checks', () => together(endless)],
    ['readings', 'readings', () => settlingEvidence(endless, timed)],
    [
      'given.minutes',
      'minutes',
      () => settlingCurve(specWith(), { ...precharge, ambient }, { ...settling, minutes: endless }),
    ],
    ['precharge.rows', 'rows', () => specification({ ...GIVEN, precharge: { ...table, rows: endless } })],
    [
      'tolerance.maximum.rows',
      'rows',
      () => specification({ ...GIVEN, tolerance: { minimum: table, maximum: { ...table, rows: endless } } }),
    ],
    [
      'toleranceAfterCharging.minimum.rows',
      'rows',
      () =>
        specification({ ...GIVEN, toleranceAfterCharging: { minimum: { ...table, rows: endless }, maximum: table } }),
    ],
    ['temperatures', 'rows', () => columnOf({ ...table, temperatures: endless, columns: [] }, 'A')],
    ['columns', 'columns', () => columnOf({ ...table, temperatures: [], columns: endless }, 'A')],
    [
      'columns[0].pressures',
      'pressures',
      () => columnOf({ ...table, temperatures: [], columns: [{ name: 'A', pressures: endless }] }, 'A'),
    ],
    ['rows', 'rows', () => auditTable({ ...table, rows: endless }, audit)],
    [
      'columns[0].pressures',
      'pressures',
      () => auditTable({ ...table, temperatures: [], columns: [{ name: 'A', pressures: endless }] }, audit),
    ],
    ['models', 'gas models', () => auditTable(table, { ...audit, models: endless })],
    [
      'result.because',
      'reasons',
      () => why(specWith(), readingWith(), { ...judge(specWith(), readingWith()), because: endless }),
    ],
    ['table.rows', 'rows', () => adjustmentText({ ...card, rows: endless })],
    ['reports', 'reports', () => recall(endless, days)],
  ])('%s', (path, what, call) => {
    expect(problemOf(call)).toMatchObject({
      code: 'too long',
      path,
      found: `4294967295 ${what}`,
    });
  });

  test('problems of a fault: what the first is decides', () => {
    const list = endless as readonly unknown[] as [Problem, ...Problem[]];
    expect(problemOf(() => new Fault(list))).toMatchObject({ code: 'wrong kind', path: 'problems[0]' });
  });
});
