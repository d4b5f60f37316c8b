// Data is read once, into a copy: what JSON can carry comes back as JSON would bring it back; what it cannot is named.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inheriting } from '../support/inheriting.js';
import { readData, type DataRead } from '../../src/record/json-data.js';

/** The copy, of data that is JSON's. */
function dataOf(read: DataRead): unknown {
  expect(read.read).toBe('JSON data');
  return read.read === 'JSON data' ? read.data : undefined;
}

const nested = (levels: number, innermost: unknown = 1): unknown => {
  let value = innermost;
  for (let i = 0; i < levels; i += 1) value = i % 2 === 0 ? { inner: value } : [value];
  return value;
};

describe('JSON data', () => {
  test('comes back as from its text, whatever it is, with -0 as 0', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        expect(dataOf(readData(value, 32))).toStrictEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
    expect(dataOf(readData([-0, { a: -0 }], 32))).toStrictEqual([0, { a: 0 }]);
  });

  test('is a copy: what is then done to what was given does not change it', () => {
    const given = { list: [{ a: 1 }] };
    const data = dataOf(readData(given, 32));
    given.list.push({ a: 2 });
    (given.list[0] as { a: number }).a = 3;
    expect(data).toStrictEqual({ list: [{ a: 1 }] });
  });

  test('may have a member of the name __proto__, which is no prototype', () => {
    const data = dataOf(readData(JSON.parse('{"__proto__":{"x":1}}'), 32)) as object;
    expect([Object.keys(data), Object.getPrototypeOf(data)]).toStrictEqual([['__proto__'], Object.prototype]);
  });

  test.each<PropertyDescriptor>([
    { get: () => 7, set: () => undefined },
    { get: () => 7 },
    { value: 7, writable: false },
  ])('has its own members where all objects inherit others of their names', (inherited) => {
    Object.defineProperty(Object.prototype, 'minutes', { ...inherited, configurable: true });
    try {
      const data = dataOf(readData(JSON.parse('{"minutes":45}'), 32)) as object;
      expect(Object.getOwnPropertyDescriptor(data, 'minutes')?.value).toBe(45);
    } finally {
      Reflect.deleteProperty(Object.prototype, 'minutes');
    }
  });

  test.each(['get', 'set', 'value', 'writable'])('is read where all objects inherit a field %s', (name) => {
    const data: unknown = JSON.parse(`{"${name}":45}`);
    expect(dataOf(inheriting(name, '1_000', () => readData(data, 32)))).toEqual({ [name]: 45 });
  });

  test('has no member that is undefined, and none whose key is no text', () => {
    expect(dataOf(readData({ a: undefined, [Symbol('x')]: 1, b: 2 }, 32))).toStrictEqual({ b: 2 });
  });

  test('is read once: each member, each entry, each length', () => {
    const reads: PropertyKey[] = [];
    const watched = <T extends object>(of: T): T =>
      new Proxy(of, {
        get: (own, key) => {
          if (typeof key === 'string') reads.push(key);
          return Reflect.get(own, key) as unknown;
        },
      });
    const shared = watched({ c: Array.from({ length: 2000 }, (_, i) => i) });
    const data = dataOf(readData({ a: watched([10, 11]), b: shared, again: shared }, 32));
    expect(reads).toStrictEqual(['length', '0', '1', 'c']);
    expect(data).toMatchObject({ again: { c: shared.c } });
  });
});

describe('depth', () => {
  test.each([1, 2, 7])('%i levels are read where so many may be, and no more', (levels) => {
    expect(dataOf(readData(nested(levels), levels))).toStrictEqual(nested(levels));
    expect(readData(nested(levels + 1), levels)).toMatchObject({
      read: 'nothing',
      problem: { code: 'too deep', path: '', found: 'deeper nesting', values: { most: String(levels) } },
    });
  });

  test('what no JSON can carry at the deepest level is that, and no deeper level', () => {
    for (const value of [() => 1, Symbol('x'), 1n, Number.NaN]) {
      expect(readData(nested(3, value), 3)).toMatchObject({ read: 'not all JSON data', problem: { code: 'not JSON' } });
    }
  });

  test('data that holds itself is too deep, and so is what holds something else that is wrong', () => {
    const loop: unknown[] = [Number.NaN];
    loop.push(loop, loop);
    expect(readData(loop, 32)).toMatchObject({ read: 'nothing', problem: { code: 'too deep' } });
  });

  // A large object is not read again where it is met again, one level or many further down.
  test.each([1, 999, 1000, 5000])('an object of %i values is as deep wherever it is met again', (count) => {
    const shared = { list: Array.from({ length: count }, () => 0), further: nested(3) }; // five levels
    const at = (levels: number): DataRead => readData([{ first: shared }, nested(levels, shared), 1], 10);
    expect(dataOf(at(4))).toStrictEqual([{ first: shared }, nested(4, shared), 1]);
    expect(dataOf(at(5))).toStrictEqual([{ first: shared }, nested(5, shared), 1]);
    expect(at(6)).toMatchObject({ read: 'nothing', problem: { code: 'too deep' } });
  });
});

describe('size', () => {
  const many = { read: 'nothing', problem: { code: 'too large', path: '', found: 'more than 20000000 values', values: { most: '20000000', what: 'values' } } }; // prettier-ignore

  /** A list of lists of zeros, of so many values in all; the last list holds what is then left. */
  const ofValues = (values: number): unknown[] => {
    const zeros = (count: number): unknown[] => Array.from({ length: count }, () => 0);
    const tenThousand = zeros(9_999); // with itself
    const lists = Math.floor((values - 2) / 10_000);
    return [...Array.from({ length: lists }, () => tenThousand), zeros(values - 2 - 10_000 * lists)];
  };

  test('twenty million values are read, and not one more', () => {
    expect(readData(ofValues(20_000_000), 32).read).toBe('JSON data');
    expect(readData(ofValues(20_000_001), 32)).toMatchObject(many);
  });

  test('few objects that stand for many values are not read for each of them', () => {
    let looks = 0;
    let shared: unknown = new Proxy([0], {
      get: (own, key) => {
        looks += 1;
        return Reflect.get(own, key) as unknown;
      },
    });
    for (let i = 0; i < 30; i += 1) shared = { one: shared, other: shared };
    expect(readData(shared, 32)).toMatchObject(many);
    expect(looks).toBeLessThan(3000);
  });

  test('a list that says it has a billion entries is not asked for them', () => {
    let looks = 0;
    const list = new Proxy([], {
      get: (own, key) => {
        looks += 1;
        return key === 'length' ? 1e9 : (Reflect.get(own, key) as unknown);
      },
    });
    expect(readData({ list }, 32)).toMatchObject(many);
    expect(looks).toBeLessThan(5);
  });
});

describe('what JSON cannot carry', () => {
  class Instance {
    [Symbol.toStringTag] = 'Instance';
    a = 1;
  }
  test.each<readonly [string, unknown, unknown]>([
    ['a number that is none', Number.NaN, Number.NaN],
    ['one that is not finite', -Infinity, -Infinity],
    ['half a surrogate pair', '\uD800', '\uD800'],
    ['undefined', undefined, undefined],
    ['a bigint', 1n, 1n],
    ['an instance', new Instance(), { a: 1 }],
    ['a date', new Date(0), {}],
  ])('%s is named by its first place, and the rest is read', (_title, value, kept) => {
    expect(readData({ a: [1, value], b: [value], c: 2 }, 32)).toStrictEqual({
      read: 'not all JSON data',
      data: { a: [1, kept], b: [kept], c: 2 },
      problem: expect.objectContaining({ code: 'not JSON', path: 'a[1]', found: 'what JSON cannot carry' }) as unknown,
    });
  });

  test('a key that is half a surrogate pair stands in the path as an escape', () => {
    expect(readData({ x: { '\uD800': 1 } }, 32)).toMatchObject({
      read: 'not all JSON data',
      data: { x: { '\uD800': 1 } },
      problem: { code: 'not JSON', path: String.raw`x["\ud800"]` },
    });
  });

  test('in more than twenty thousand places nothing is read: each would be a problem', () => {
    expect(readData({ a: Array.from({ length: 20_000 }) }, 32).read).toBe('not all JSON data');
    for (const length of [20_001, 15_000_000])
      expect(readData({ a: new Array(length) }, 32)).toMatchObject({ read: 'nothing', problem: { code: 'not JSON', path: 'a[0]' } }); // prettier-ignore
  });
});
