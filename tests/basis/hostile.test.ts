import * as isochore from 'isochore';
import {
  caution,
  causeText,
  describe as sentence,
  Fault,
  inWords,
  isFault,
  supplyText,
  temperature,
  type Problem,
} from 'isochore';
import { describe, expect, it, test } from 'vitest';
import { fieldNames, problem, quote } from '../../src/basis/fault.js';
import * as catalogue from '../../src/basis/problem.js';
import { relation, step1, type Trace } from '../../src/basis/relation.js';
import { uncertaintyText } from '../../src/basis/words.js';
import { problemOf } from '../support/problem.js';

// What a program that is not typed, or that is hostile, may hand to the public functions of the basis: a fault says what is
// wrong with it, never an error of the engine's.

const NOT_AN_OBJECT = [null, 0, Number.NaN, 'text', true, Symbol('s'), () => 0];
const cold = problemOf(() => temperature(-300, '°C'));

describe('what a problem says', () => {
  const long = 'x'.repeat(1_000_000);
  const half = 'half a pair \ud83d';
  const said = (found: string, wanted: string): Problem => problem(catalogue.missing, '', found, { wanted });

  it('is bounded, whatever was found and whatever its values are', () => {
    const { found, wanted, values } = said(long, long);
    expect(found.length).toBeLessThanOrEqual(401);
    expect(wanted.length).toBeLessThanOrEqual(3501);
    expect(values['wanted']).toBe(wanted);
  });

  it('is well formed', () => {
    const { found, wanted } = said(half, half);
    expect([found, wanted]).toEqual(['half a pair \ufffd', 'half a pair \ufffd']);
    expect(said(`${'x'.repeat(399)}😀 and more`, 'a').found).toBe(`${'x'.repeat(399)}…`);
    expect(said('a 😀', 'b').found).toBe('a 😀');
    expect(said('\ud83d', 'b').found).toBe('\ufffd');
  });

  it('names the first few of many fields, each bounded', () => {
    const names = Array.from({ length: 100_000 }, (_, i) => (i === 0 ? 'plain' : `${i} ${half} ${long.slice(0, 500)}`));
    const text = fieldNames(names, ', ');
    expect(text).toMatch(/^plain, "1 half a pair \\ud83d x/);
    expect(text).toMatch(/…$/);
    expect(text.length).toBeLessThan(400);
    expect(fieldNames(['a', 'b', 'c', 'd', 'e'], ', ')).toBe('a, b, c, d, e');
    expect(fieldNames(['a', 'b', 'c', 'd', 'e', 'f'], ', ')).toBe('a, b, c, d, e, …');
    expect(fieldNames(['two words', 'x1', '1x'], ' and ')).toBe('"two words" and x1 and "1x"');
  });
});

describe('what is no problem is refused', () => {
  const without = (field: keyof Problem): unknown => ({ ...cold, [field]: undefined });
  const none = [
    ...NOT_AN_OBJECT,
    [],
    {},
    ...(['code', 'path', 'found', 'wanted', 'remedy', 'values'] as const).map(without),
    { ...cold, about: null },
    { ...cold, about: Symbol('FI 3') },
  ];
  test.each(none.map((value) => [value]))('%s', (value) => {
    const given = value as Problem;
    const refused = { code: 'wrong kind', path: 'problem', found: quote(value) };
    expect(problemOf(() => sentence(given))).toMatchObject(refused);
    expect(problemOf(() => sentence(given)).wanted).toContain('a problem');
    expect(problemOf(() => inWords(given))).toMatchObject(refused);
    expect(problemOf(() => new Fault([given]))).toMatchObject({ ...refused, path: 'problems[0]' });
  });
  it('each field of one is read once', () => {
    let reads = 0;
    const given = Object.defineProperty({ ...cold }, 'values', {
      enumerable: true,
      get: () => {
        reads += 1;
        return reads === 1 ? cold.values : null;
      },
    });
    const problems = { 'below absolute zero': { wanted: 'ein Text', remedy: 'noch einer' } };
    expect(inWords(given, { problems })).toEqual({ ...cold, ...problems['below absolute zero'] });
  });
  it('one of a class, which gives its fields by getters, is put into words too', () => {
    const ofClass = {};
    for (const [name, value] of Object.entries(cold) as [string, unknown][])
      Object.defineProperty(ofClass, name, { get: () => value });
    const given = Object.create(ofClass) as Problem;
    const problems = { 'below absolute zero': { wanted: 'ein Text', remedy: 'noch einer' } };
    expect(inWords(given, { problems })).toEqual({ ...cold, ...problems['below absolute zero'] });
  });
  it('with null for its values', () => {
    const given = { ...cold, values: null } as unknown as Problem;
    for (const call of [sentence, inWords]) expect(problemOf(() => call(given)).code).toBe('wrong kind');
  });
  it('a value in it that is no text', () => {
    const given = { ...cold, values: { least: 0 } } as unknown as Problem;
    expect(problemOf(() => sentence(given)).code).toBe('wrong kind');
  });
  test.each([...NOT_AN_OBJECT, {}, []].map((value) => [value]))('nor is a fault made of %s', (value) => {
    const made = (): Fault => new Fault(value as unknown as [Problem]);
    expect(problemOf(made)).toMatchObject({ code: 'wrong kind', path: 'problems' });
  });
});

describe('words', () => {
  const noTexts = [null, 0, '', true];
  test.each(noTexts.map((value) => [value]))('%s for words is refused', (value) => {
    const own = value as never;
    const refused = (path: string): object => ({ code: 'words not sound', path, found: quote(value) });
    expect(problemOf(() => causeText('valve not open', own))).toMatchObject(refused('words'));
    expect(problemOf(() => causeText('valve not open', { causes: own }))).toMatchObject(refused('words.causes'));
    expect(problemOf(() => caution('asphyxiation', own))).toMatchObject(refused('words'));
    expect(problemOf(() => inWords(cold, own))).toMatchObject(refused('words'));
    expect(problemOf(() => inWords(cold, { problems: own }))).toMatchObject(refused('words.problems'));
    const problems = { 'below absolute zero': own };
    expect(problemOf(() => inWords(cold, { problems }))).toMatchObject(refused('words.problems'));
    expect(problemOf(() => uncertaintyText('gauge', own))).toMatchObject(refused('own'));
    expect(problemOf(() => supplyText('no bottle to use', own))).toMatchObject(refused('own'));
  });
  test.each([[0], [Number.NaN], [null], [{}], [true]])('%s for a text is refused', (value) => {
    const own = value as never;
    const refused = (path: string): object => ({
      code: 'words not sound',
      path,
      found: quote(value),
      wanted: expect.stringMatching(/\btext\b/) as unknown,
    });
    const causes = { 'valve not open': own };
    expect(problemOf(() => causeText('valve not open', { causes }))).toMatchObject(refused('words.causes'));
    expect(problemOf(() => caution('asphyxiation', { asphyxiation: own }))).toMatchObject(refused('words'));
    for (const field of ['wanted', 'remedy']) {
      const problems = { 'below absolute zero': { wanted: 'x', remedy: 'x', [field]: own } };
      expect(problemOf(() => inWords(cold, { problems }))).toMatchObject(refused(`words.problems.${field}`));
    }
    expect(problemOf(() => uncertaintyText('gauge', { gauge: own }))).toMatchObject(refused('own'));
    expect(problemOf(() => supplyText('no bottle to use', { 'no bottle to use': own }))).toMatchObject(refused('own'));
  });
  it('with half of a problem’s texts are refused, not taken in part', () => {
    const problems = { 'below absolute zero': { wanted: 'mindestens 0 K' } } as never;
    expect(problemOf(() => inWords(cold, { problems }))).toMatchObject({
      code: 'words not sound',
      path: 'words.problems',
      found: 'nothing',
      wanted: 'a text remedy',
    });
  });
  test.each(
    [...NOT_AN_OBJECT, ['valve not open'], ['asphyxiation'], ['gauge'], ['no bottle to use'], 'toString'].map(
      (value) => [value],
    ),
  )('%s is no code', (value) => {
    const refused = (path: string): object => ({ code: 'unknown word', path, found: quote(value) });
    expect(problemOf(() => causeText(value as never))).toMatchObject(refused('cause'));
    expect(problemOf(() => caution(value as never))).toMatchObject(refused('code'));
    expect(problemOf(() => uncertaintyText(value as never))).toMatchObject(refused('code'));
    expect(problemOf(() => supplyText(value as never))).toMatchObject(refused('code'));
  });
  it.each(['gauge', 'drift since calibration', 'no evidence'] as const)('%s of an uncertainty has words', (code) => {
    expect(uncertaintyText(code)).toMatch(/^(the|how) \w+/);
    expect(uncertaintyText(code, { [code]: 'mine' })).toBe('mine');
  });
  it('that there are are named to whoever gave another', () => {
    expect(problemOf(() => causeText('x' as never)).wanted).toContain('gas valve leaks or separator torn');
    expect(problemOf(() => uncertaintyText('x' as never)).wanted).toContain('a code of an uncertainty');
  });
});

describe('a fault is told from everything else, and nothing that is asked throws', () => {
  const revoked = Proxy.revocable({}, {});
  revoked.revoke();
  const throwing = new Proxy(new Error('x'), {
    get: () => {
      throw new Error('mine');
    },
  });
  it('a proxy that is revoked, one that throws, and what is no object', () => {
    for (const value of [revoked.proxy, throwing, null, undefined, 'fault']) expect(isFault(value)).toBe(false);
  });
});

describe('a trace that is no function', () => {
  const double = relation({ gives: 'y', unit: '1', from: ['x'], formula: '2 * x', source: 'test', of: (x) => 2 * x });
  test.each([null, 0, 'text', {}, []].map((value) => [value]))('%s is refused', (value) => {
    const trace = value as unknown as Trace;
    const refused = { code: 'wrong kind', path: 'trace', found: quote(value) };
    expect(problemOf(() => step1(trace, double, 'test', 1))).toMatchObject(refused);
    const { gauge, standardAtmosphere, stateAt, nitrogen, normalConditions } = isochore;
    expect(problemOf(() => isochore.toAbsolute(gauge(1, 'bar'), standardAtmosphere, trace))).toMatchObject(refused);
    expect(problemOf(() => stateAt(nitrogen, normalConditions, trace))).toMatchObject(refused);
  });
  it('cannot change a formula that it is shown', () => {
    const seen: isochore.Step[] = [];
    isochore.stateAt(isochore.nitrogen, isochore.normalConditions, (step) => seen.push(step));
    expect(seen.length).toBeGreaterThan(1);
    for (const { relation: shown } of seen) {
      expect(Object.isFrozen(shown)).toBe(true);
      expect(Object.isFrozen(shown.from)).toBe(true);
    }
  });
});
