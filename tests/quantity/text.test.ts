import { gauge, read, volume } from 'isochore';
import { describe, expect, it, test } from 'vitest';
import { inheriting } from '../support/inheriting.js';
import { KINDS, spelled } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';

describe.each(KINDS)('reading the text of a $kind', ({ kind, make, word, unit }) => {
  const readText = (value: string) => () => read(kind, spelled(value, unit, word));

  it.each([
    ['decimal comma', '141,3'],
    ['grouped thousands', '1,413.5'],
    ['grouped thousands', '1_413'],
    ['hexadecimal', '0x10'],
    ['binary', '0b11'],
    ['a word', 'NaN'],
    ['a word', 'Infinity'],
    ['no digit before the point', '.5'],
    ['no digit after the point', '5.'],
    ['two points', '1.2.3'],
    ['two signs', '--1'],
    ['an exponent without digits', '1e'],
    ['an exponent with a point', '1e1.5'],
    ['a typographic minus', '−1'],
    ['digits of another script', '١٢'],
    ['a suffix', '1n'],
    ['41 characters', `1.${'0'.repeat(39)}`],
    ['a very long text', '1'.repeat(100_000)],
  ])('refuses %s', (_, value) => {
    const problem = problemOf(readText(value));
    expect(problem).toMatchObject({ code: 'not a decimal', path: 'text' });
    expect(problem.found.length).toBeLessThan(100);
    expect(problem.wanted).toContain('at most 40 characters');
    expect(problem.remedy).toMatch(/not a comma.*no grouping/);
  });

  it.each(['1e999', '1e-999', `1${'0'.repeat(30)}e300`])('refuses %s, which no double holds', (value) => {
    const problem = problemOf(readText(value));
    expect(problem).toMatchObject({ code: 'beyond double', path: 'text', found: `"${value}"` });
    expect(problem.wanted).toBe('a size that a double holds in SI units');
  });

  it('takes a sign, an exponent, 40 characters, and any white space between and around', () => {
    expect(readText('+1.5e2')()).toStrictEqual(make(150, unit));
    expect(readText(`300.${'0'.repeat(36)}`)()).toStrictEqual(make(300, unit));
    expect(read(kind, ` \t300\n ${unit}   ${word} `)).toStrictEqual(make(300, unit));
  });

  it('refuses a text without one of its parts, or with one more', () => {
    expect(problemOf(() => read(kind, '')).code).toBe('not a decimal');
    expect(problemOf(() => read(kind, '   ')).code).toBe('not a decimal');
    expect(problemOf(() => read(kind, '300'))).toMatchObject({ code: 'unknown unit', path: 'text' });
    expect(problemOf(() => read(kind, `300${unit}`)).code).toBe('not a decimal');
    const longer = problemOf(() => read(kind, `${spelled(300, unit, word)} more words`));
    expect(longer.code).toBe('not a quantity');
    if (word === '') expect(longer.wanted).toMatch(/^value and unit, for an? /);
    else expect(longer.wanted).toContain(`value, unit and the word '${word}', for a`);
    expect(problemOf(() => read(kind, `${unit} 300 ${word}`)).code).toBe('not a decimal');
  });

  it('refuses the wrong basis, and a basis left out where the kind has one', () => {
    for (const wrong of ['gauge', 'absolute', 'difference', 'Gauge', 'g'].filter((each) => each !== word)) {
      expect(problemOf(() => read(kind, `300 ${unit} ${wrong}`))).toMatchObject({
        code: word === '' ? 'not a quantity' : 'wrong basis',
        path: 'text',
        found: `"300 ${unit} ${wrong}"`,
      });
    }
    if (word === '') expect(read(kind, `300 ${unit}`)).toStrictEqual(make(300, unit));
    else
      expect(problemOf(() => read(kind, `300 ${unit}`))).toMatchObject({
        code: 'basis missing',
        path: 'text',
        wanted: `'${word}' after the unit`,
      });
  });
});

describe('read', () => {
  it.each([[300], [null], [undefined], [['300 K']], [{}], [gauge(140, 'bar')]])('refuses %o for a text', (text) => {
    expect(problemOf(() => read('temperature', text as never))).toMatchObject({
      code: 'not a quantity',
      path: 'text',
      wanted: 'value and unit, for a temperature',
    });
  });

  it.each([['pressure'], ['toString'], ['__proto__'], [''], [null], [undefined], [1]])(
    'refuses %o for a kind',
    (kind) => {
      const problem = problemOf(() => read(kind as never, '300 K'));
      expect(problem).toMatchObject({ code: 'unknown word', path: 'kind' });
      expect(problem.wanted.split(', ').sort()).toEqual(KINDS.map((each) => `'${each.kind}'`).sort());
    },
  );

  it('takes the two words of the US gallon, and neither of them alone', () => {
    expect(read('volume', ' 2.5\tUS \n gal ')).toStrictEqual(volume(2.5, 'US gal'));
    expect(problemOf(() => read('volume', '2.5 US')).code).toBe('unknown unit');
    expect(problemOf(() => read('volume', '2.5 gal')).code).toBe('unknown unit');
    expect(problemOf(() => read('volume', '2.5 L gal')).code).toBe('not a quantity');
    expect(problemOf(() => read('volume', '2.5 US gal absolute')).code).toBe('not a quantity');
    expect(problemOf(() => read('volume', '2.5 US gal US gal')).code).toBe('not a quantity');
  });

  it('checks the value as its constructor does', () => {
    expect(problemOf(() => read('absolute pressure', '-1 bar absolute'))).toMatchObject({
      code: 'below vacuum',
      path: 'text',
      found: '-1 bar',
    });
    expect(problemOf(() => read('temperature', '-300 °C')).code).toBe('below absolute zero');
    expect(problemOf(() => read('volume', '-5 L')).code).toBe('negative');
  });
});

test('a number that all objects inherit under an index is no digit of a text', () => {
  const pascals = (): number => read('gauge pressure', '40.5 bar gauge').pascals;
  expect(inheriting('x', 1, pascals)).toBe(pascals());
  for (const index of ['0', '1', '7'])
    expect(() => inheriting(index, 1, pascals)).toThrow(
      `found "${index}", wanted nothing of this name on Object.prototype`,
    );
});
