import assert from 'node:assert';
import { inspect } from 'node:util';
import {
  absolute,
  amount,
  difference,
  gauge,
  mass,
  pressureDifference,
  shift,
  standardAtmosphere,
  temperature,
  temperatureDifference,
  toAbsolute,
  volume,
} from 'isochore';
import { describe, expect, it } from 'vitest';
import { KINDS, siOf } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe.each(KINDS)('a $kind', ({ kind, make, unit }) => {
  const quantity = make(300, unit);

  it('cannot be calculated with by operators', () => {
    const bare = quantity as unknown as number;
    for (const call of [() => bare + 1, () => bare - bare, () => bare < bare, () => bare * 2, () => Math.abs(bare)]) {
      const problem = problemOf(call);
      expect(problem).toMatchObject({ code: 'operator on a quantity', path: '' });
      expect(problem.found).toMatch(new RegExp(`^(a|an) ${kind} used with `));
      expect(problem.found).not.toMatch(/^a [aeiou]/);
      expect(problem.remedy).toMatch(/difference\(\).*shift\(\).*compare\(\).*ratio\(\).*valueIn/);
    }
  });

  // A text by which sort() could put a list in order would put 10 bar before 9.
  it('is no text by itself, so that no list of them is sorted by texts', () => {
    const several: unknown[] = [make(310, unit), make(309, unit)];
    const bare = quantity as unknown as string;
    for (const call of [
      () => several.sort(),
      () => several.join(),
      () => String(several[0]),
      () => `as found: ${bare}`,
      () => ({ [bare]: 1 }),
      () => JSON.parse(bare) as unknown,
    ]) {
      const problem = problemOf(call);
      expect(problem).toMatchObject({ code: 'operator on a quantity', path: '' });
      expect(problem.found).toMatch(new RegExp(`^(a|an) ${kind} made a text by sort\\(\\), join\\(\\)`));
      expect(problem.remedy).toMatch(/sort\(compare\) for a list.*write\(\) or JSON\.stringify\(\) gives a text/);
    }
  });

  it('cannot be changed', () => {
    const open = quantity as unknown as Record<string, unknown>;
    expect(Object.isFrozen(quantity)).toBe(true);
    for (const key of [...Object.keys(quantity), '~isochore', 'extra']) {
      expect(() => (open[key] = 1)).toThrow(TypeError);
    }
  });

  it('shows its kind and its number in JSON and in the console', () => {
    expect(json(quantity)).toEqual({ ...quantity });
    expect(Object.values({ ...quantity })).toEqual([kind, siOf(quantity)]);
    expect(inspect(quantity)).toContain(`kind: '${kind}'`);
    expect(inspect(quantity)).toContain(String(siOf(quantity)));
  });

  it('equals another of its kind and number, and no other number', () => {
    assert.deepStrictEqual(make(300, unit), quantity);
    expect(make(300, unit)).toStrictEqual(quantity);
    assert.notDeepStrictEqual(make(301, unit), quantity);
    expect(make(301, unit)).not.toEqual(quantity);
  });

  it('is told from its copies, which have lost the check', () => {
    for (const copy of [{ ...quantity }, json(quantity), structuredClone(quantity)]) {
      assert.notDeepStrictEqual(copy, quantity);
      expect(copy).not.toHaveProperty('~isochore');
    }
    expect(quantity['~isochore']).toBe(kind);
  });
});

describe('quantities of one dimension and one number', () => {
  it.each([
    [gauge(140, 'bar'), absolute(140, 'bar')],
    [gauge(140, 'bar'), pressureDifference(140, 'bar')],
    [absolute(140, 'bar'), pressureDifference(140, 'bar')],
    [temperature(40, 'K'), temperatureDifference(40, 'K')],
  ])('differ by their kind: %s, %s', (a, b) => {
    expect(siOf(a)).toBe(siOf(b));
    expect(a).not.toEqual(b);
    assert.notDeepStrictEqual(a, b);
    expect(JSON.stringify(a)).not.toBe(JSON.stringify(b));
  });
});

describe('values that no quantity has', () => {
  const someGauge = gauge(140, 'bar');
  const someAbsolute = absolute(1008, 'hPa');
  const someTemperature = temperature(40, '°C');

  it.each([
    ['below vacuum', () => absolute(-0.001, 'bar'), '-0.001 bar'],
    ['below absolute zero', () => temperature(-273.16, '°C'), '-273.16 °C'],
    ['below absolute zero', () => temperature(-459.68, '°F'), '-459.68 °F'],
    ['below absolute zero', () => temperature(-0.01, 'K'), '-0.01 K'],
    ['negative', () => volume(-5, 'L'), '-5 L'],
    ['negative', () => amount(-1, 'mol'), '-1 mol'],
    ['negative', () => mass(-0.1, 'kg'), '-0.1 kg'],
  ] as const)('%s: %o', (code, call, found) => {
    expect(problemOf(call)).toMatchObject({ code, path: 'value', found });
  });

  it('allow zero itself', () => {
    expect(absolute(0, 'bar').pascals).toBe(0);
    expect(temperature(-273.15, '°C').kelvins).toBe(0);
    expect(temperature(-459.67, '°F').kelvins).toBe(0);
    expect(volume(0, 'L').cubicMetres).toBe(0);
  });

  it('a gauge pressure below minus the ambient, and not at it', () => {
    expect(toAbsolute(gauge(-1008, 'hPa'), someAbsolute)).toStrictEqual(absolute(0, 'Pa'));
    const problem = problemOf(() => toAbsolute(gauge(-1008.1, 'hPa'), someAbsolute));
    expect(problem).toMatchObject({ code: 'gauge below vacuum', path: 'pressure', found: '-1.0081 bar gauge' });
    expect(problem.wanted).toContain('-1.008 bar gauge');
    expect(problem.values).toEqual({ least: '-1.008 bar', ambient: '1.008 bar' });
  });

  it('what a shift would bring below vacuum or absolute zero', () => {
    expect(problemOf(() => shift(someAbsolute, pressureDifference(-2, 'bar'))).code).toBe('below vacuum');
    expect(problemOf(() => shift(someTemperature, temperatureDifference(-314, 'K'))).code).toBe('below absolute zero');
    expect(shift(someGauge, pressureDifference(-200, 'bar'))).toStrictEqual(gauge(-60, 'bar'));
  });

  it('what is too large for a double once in pascals', () => {
    expect(problemOf(() => gauge(1e308, 'bar'))).toMatchObject({
      code: 'beyond double',
      found: '1e+308 bar',
      wanted: 'a size that a double holds in SI units',
    });
    expect(problemOf(() => difference(gauge(1e308, 'Pa'), gauge(-1e308, 'Pa'))).code).toBe('not a number');
  });
});

describe.each(KINDS)('the constructor of a $kind', ({ make, unit }) => {
  it.each([[Number.NaN], [Infinity], [-Infinity]])('refuses %d', (value) => {
    expect(problemOf(() => make(value, unit))).toMatchObject({ code: 'not a number', path: 'value' });
  });

  it.each([['1'], [''], [null], [undefined], [true], [[1]], [1n], [{ valueOf: () => 1 }]])(
    'coerces nothing: %o',
    (value) => {
      const code = typeof value === 'string' ? 'text for a number' : 'not a number';
      expect(problemOf(() => make(value as never, unit))).toMatchObject({ code, path: 'value' });
    },
  );

  it.each([
    [''],
    [` ${unit}`],
    [`${unit} `],
    [`${unit}g`],
    ['furlong'],
    ['toString'],
    ['__proto__'],
    [null],
    [undefined],
    [1],
    [[unit]],
  ])('refuses %o for a unit', (spelling) => {
    expect(problemOf(() => make(1, spelling as never))).toMatchObject({ code: 'unknown unit', path: 'unit' });
  });
});

describe('the standard atmosphere', () => {
  it('is 101 325 Pa (10th CGPM 1954; ISO 2533), absolute', () => {
    expect(standardAtmosphere).toStrictEqual(absolute(1013.25, 'hPa'));
  });
});
