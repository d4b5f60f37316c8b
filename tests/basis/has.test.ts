// A program may have put fields on Object.prototype. None of them makes one form of a value another.
import { readdirSync, readFileSync } from 'node:fs';
import {
  charge,
  judge,
  specification,
  target,
  temperature,
  uncertainty,
  workOrder,
  type Specification,
  type SpecificationGiven,
} from 'isochore';
import { expect, it, test } from 'vitest';
import { gives, has } from '../../src/basis/has.js';
import { GIVEN, hPa, readingWith, tableOf } from '../support/accumulator.js';
import { inheriting } from '../support/inheriting.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const SOURCES = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
/** Every field by which the sources tell one form of a value from another, and one that a fault reads of its own problems. */
const FIELDS = [
  'about',
  ...new Set(
    SOURCES.flatMap((file) => [
      ...readFileSync(`src/${file}`, 'utf8').matchAll(/\b(?:has|gives|optional)\([\w.]+, '(\w+)'\)/g),
    ]).map(([, field = '']) => field),
  ),
];

const table = tableOf([
  [140, 20],
  [152, 40],
]);
const percent = { plusMinusPercentOfGauge: 1.5, applies: 'at the measured temperature' } as const;
const reading = readingWith();

const made = (changed: Partial<SpecificationGiven> = {}): Specification => specification({ ...GIVEN, ...changed });

const CALLS: Readonly<Record<string, () => unknown>> = {
  'a target at a point': () => target(made(), reading),
  'a target by a table': () =>
    target(made({ precharge: table }), { ...reading, temperature: table.rows[1]?.temperature } as never),
  'a verdict': () => judge(made(), reading),
  'a charge in per cent': () => charge(made({ tolerance: percent }), reading),
  'an order before the visit': () =>
    workOrder(made(), { temperature: reading.temperature, ambient: hPa(1000), gaugeStep: reading.gaugeStep }),
  'an order for a reading': () => workOrder(made({ tolerance: percent }), reading),
  'a fault': () => problemOf(() => temperature(-300, '°C')),
  'an uncertainty': () => uncertainty(made(), reading, INSTRUMENTS),
};

test('the fields are found in the sources', () => {
  expect(FIELDS).toEqual(expect.arrayContaining(['rows', 'minimum', 'certificate', 'stop', 'emptyGasSide', 'nominal']));
  expect(FIELDS.length).toBeGreaterThan(30);
});

test.each(Object.entries(CALLS))('%s is the same whatever all objects inherit', (_, call) => {
  const wanted = call();
  for (const field of FIELDS) {
    for (const value of [Symbol('mine'), 1e-300, null, 'investigated and cleared'])
      expect([field, inheriting(field, value, call)]).toStrictEqual([field, wanted]);
  }
});

it('is a field of its own: what a class gives, it gives; what all objects inherit, nobody gives', () => {
  class Point {
    get pressure(): number {
      return 140;
    }
  }
  const [own, ofClass] = [{ pressure: 140 }, new Point()];
  expect([has(own, 'pressure'), gives(own, 'pressure')]).toEqual([true, true]);
  expect([has(ofClass, 'pressure'), gives(ofClass, 'pressure')]).toEqual([false, true]);
  expect(inheriting('pressure', 140, () => [has({}, 'pressure'), gives({}, 'pressure')])).toEqual([false, false]);
});

test('a manual may be an object of a class, whose fields are getters', () => {
  class Manual implements Pick<SpecificationGiven, 'settling'> {
    get settling(): SpecificationGiven['settling'] {
      return GIVEN.settling;
    }
  }
  const { gas, precharge, ambient, tolerance, separator, gasVolume, allowable } = GIVEN;
  const given = Object.assign(new Manual(), { gas, precharge, ambient, tolerance, separator, gasVolume, allowable });
  expect(Object.hasOwn(given, 'settling')).toBe(false);
  expect(specification(given).settling).toEqual(GIVEN.settling);
});
