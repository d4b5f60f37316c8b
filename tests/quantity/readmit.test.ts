import { inspect } from 'node:util';
import { gauge, readmit, write } from 'isochore';
import { describe, expect, it } from 'vitest';
import { KINDS, spelled } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe.each(KINDS)('a copy of a $kind', ({ kind, make, unit, word }) => {
  const quantity = make(300, unit);

  it('is readmitted from every sort of copy, and from itself', () => {
    for (const copy of [{ ...quantity }, json(quantity), structuredClone(quantity), quantity]) {
      const back = readmit(copy);
      expect(back).toStrictEqual(quantity);
      expect(write(back as typeof quantity, { step: 1, unit: unit as never })).toBe(spelled(300, unit, word));
    }
  });

  it('is not readmitted with its number missing, renamed, spelled out, doubled or impossible', () => {
    const [, field = ''] = Object.keys(quantity);
    const bad: Record<string, unknown>[] = [
      { kind },
      { kind, value: 300 },
      { kind, [field]: '300' },
      { kind, [field]: null },
      { kind, [field]: 300n },
      { ...quantity, more: 1 },
      { ...quantity, '~isochore': kind },
      { kind: `${kind}s`, [field]: 300 },
    ];
    for (const copy of bad) {
      expect(
        problemOf(() => readmit(copy)),
        inspect(copy),
      ).toMatchObject({ code: 'not a copy of a quantity', path: 'copy' });
    }
    expect(problemOf(() => readmit({ kind, [field]: Number.NaN })).code).toBe('not a number');
    expect(problemOf(() => readmit({ kind, [field]: Infinity })).code).toBe('not a number');
  });
});

describe('readmit', () => {
  it.each([
    ['a bare number', 140],
    ['a text', '140 bar gauge'],
    ['null', null],
    ['undefined', undefined],
    ['an array', ['gauge pressure', 1]],
    ['an empty object', {}],
    ['a name of every object for a kind', { kind: 'toString', undefined: 1 }],
    ['the prototype for a kind', { kind: '__proto__', undefined: 1 }],
    ['an inherited kind', Object.create({ kind: 'gauge pressure', pascals: 1 })],
    ['another dimension', { kind: 'temperature', pascals: 300 }],
  ])('refuses %s', (_, copy) => {
    expect(problemOf(() => readmit(copy))).toMatchObject({ code: 'not a copy of a quantity', path: 'copy' });
  });

  it('does not advise for its own refusal what was just tried', () => {
    expect(problemOf(() => readmit({ ...gauge(140, 'bar'), more: 1 })).remedy).not.toContain('readmit');
  });

  it.each([
    [{ kind: 'absolute pressure', pascals: -1 }, 'below vacuum'],
    [{ kind: 'temperature', kelvins: -1 }, 'below absolute zero'],
    [{ kind: 'volume', cubicMetres: -1 }, 'negative'],
    [{ kind: 'amount of substance', moles: -1 }, 'negative'],
    [{ kind: 'mass', kilograms: -1 }, 'negative'],
  ])('checks the value of %o as if it were made anew', (copy, code) => {
    expect(problemOf(() => readmit(copy)).code).toBe(code);
  });

  it('makes zero of minus zero', () => {
    expect(readmit({ kind: 'gauge pressure', pascals: -0 })).toStrictEqual(gauge(0, 'bar'));
  });
});

describe('a normal volume whose reference state holds itself', () => {
  it('is refused by name, not by a stack overflow', () => {
    const at: Record<string, unknown> = { temperature: { kind: 'temperature', kelvins: 273.15 } };
    const copy = { kind: 'normal volume', cubicMetres: 1, at };
    at['pressure'] = copy;
    expect(problemOf(() => readmit(copy))).toMatchObject({
      code: 'not a copy of a quantity',
      path: 'copy.at.pressure',
    });
  });
});
