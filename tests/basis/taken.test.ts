import { expect, test } from 'vitest';
import { problemOf } from '../support/problem.js';
import { taken, type Fields } from '../../src/basis/taken.js';

const FEW = { most: 3, what: 'points' };
const FIELDS: Fields = {
  name: 'as it is',
  at: { x: 'as it is', notes: ['as it is', FEW] },
  points: [{ x: 'as it is', notes: ['as it is', FEW] }, FEW],
  notes: ['as it is', FEW],
};

test('nothing is taken but the fields that are named, at every depth and in lists', () => {
  const quantity = { kind: 'made up' };
  const given = { name: quantity, at: { x: 1, y: 2 }, points: [{ x: 3, y: 4 }, { x: 5 }], notes: ['a', 'b'], more: 6 };
  const own = taken(given, FIELDS);
  expect(own).toEqual({ name: quantity, at: { x: 1 }, points: [{ x: 3 }, { x: 5 }], notes: ['a', 'b'] });
  expect(own.name).toBe(quantity);
});

test('a field that is not there stays away, and one that is undefined stays', () => {
  expect(Object.keys(taken({ at: undefined }, FIELDS))).toEqual(['at']);
});

test('every field is read once', () => {
  let reads = 0;
  const once = <T>(value: T): T => {
    reads += 1;
    return value;
  };
  const point = {
    get x() {
      return once(1);
    },
  };
  const given = {
    get at() {
      return once(point);
    },
    get points() {
      return once([point]);
    },
  };
  const own = taken(given, FIELDS);
  expect(reads).toBe(4);
  expect([own.at.x, own.points[0]?.x, own.at.x]).toEqual([1, 1, 1]);
  expect(reads).toBe(4);
});

test('what is none of it is left for its own check: no object, no list, none of the fields', () => {
  const other = { kind: 'another' };
  for (const value of [null, undefined, 1, 'text', other]) {
    expect(taken(value, FIELDS)).toBe(value);
    expect(taken({ at: value }, FIELDS)).toEqual({ at: value });
    expect(taken({ points: value }, FIELDS)).toEqual({ points: value });
  }
});

test('a list or a text that is taken as it is stays what it is', () => {
  const list = ['a', 'b'];
  expect(taken({ name: list }, FIELDS).name).toBe(list);
});

test('a list is read by its length, whatever its iterator does', () => {
  const list = [{ x: 1 }, { x: 2 }];
  Object.defineProperty(list, Symbol.iterator, {
    *value() {
      for (;;) yield { x: 0 };
    },
  });
  const { points } = taken({ points: list }, FIELDS);
  expect([points.length, points[0]?.x, points[1]?.x]).toEqual([2, 1, 2]);
});

test.each([
  ['points', { points: [1, 2, 3, 4] }],
  ['notes', { notes: new Array(4_294_967_295) }],
  ['at.notes', { at: { notes: [1, 2, 3, 4] } }],
  ['points[1].notes', { points: [{}, { notes: [1, 2, 3, 4] }] }],
])('a list that is too long is named where it stands: %s', (path, given) => {
  expect(problemOf(() => taken(given, FIELDS))).toMatchObject({ code: 'too long', path, wanted: 'at most 3 points' });
});

test('a copy inherits nothing, so that no field of all objects stands for one that was left out', () => {
  expect(Object.getPrototypeOf(taken({ a: 1 }, { a: 'as it is', b: 'as it is' }))).toBe(null);
});
