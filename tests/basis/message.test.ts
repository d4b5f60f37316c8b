import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../src/basis/caution.js';
import { cut, Fault, problem, quote, type Problem } from '../../src/basis/fault.js';
import { negative } from '../../src/basis/problem.js';

// What people see of a problem where they see no data: the message of the error, and the values quoted in it.

const problems = (count: number): [Problem, ...Problem[]] => {
  const [first, ...rest] = Array.from({ length: count }, (_, i) =>
    problem(negative, `reading ${i + 1}`, `-${i + 1} bar`),
  );
  if (first === undefined) throw new Error('no problem asked for');
  return [first, ...rest];
};

describe('the message of a fault with many problems', () => {
  // A log that swallows 250 000 lines hides the first of them; one that ends without a word hides the rest.
  it.each([1, 2, 19, 20])('has a line for each of %d problems, and none besides', (count) => {
    const lines = new Fault(problems(count)).message.split('\n');
    expect(lines).toHaveLength(count);
    expect(lines.at(-1)).toContain(`-${count} bar`);
  });

  it.each([
    [21, 'and 1 more'],
    [250, 'and 230 more'],
  ])('has the first twenty of %d and says: %s', (count, more) => {
    const fault = new Fault(problems(count));
    const lines = fault.message.split('\n');
    expect(lines).toHaveLength(21);
    expect(lines[19]).toContain('-20 bar');
    expect(lines[20]).toBe(more);
    expect(fault.problems).toHaveLength(count);
  });
});

describe('a text that is cut', () => {
  // The first and the last character beyond the basic plane: their halves are the ends of the range of high surrogates.
  it.each(['\u{10000}', '\u{10FFFF}'])('keeps no half of %s', (character) => {
    const before = 'x'.repeat(79);
    expect(cut(before + character)).toBe(`${before}…`);
  });

  // Beside that range: characters of one unit, which stay whole where they stand.
  it.each(['\uD7FF', '\uE000'])('keeps %s, the eightieth of its characters', (character) => {
    const kept = 'x'.repeat(79) + character;
    expect(cut(`${kept}x`)).toBe(`${kept}…`);
  });
});

it('a value is quoted under its type', () => {
  expect([12n, null, undefined, true, -0.5].map(quote)).toEqual(['12n', 'null', 'undefined', 'true', '-0.5']);
});

it('a caution says how much is at stake, in one of three words', () => {
  for (const [severity, text] of Object.values(CAUTION)) {
    expect(['danger', 'caution', 'note']).toContain(severity);
    expect(text).toMatch(/^[A-Z].*\.$/);
  }
});
