import { expect, test } from 'vitest';
import { reportJsonSchema, roundJsonSchema, RoundShape } from 'isochore/record';
import { expectHeld } from '../support/held.js';
import { exampleRound, keysOf, put } from '../support/round.js';

// What other software reads by these shapes is stored for years, so that a field, a word or a limit that is lost, added or
// renamed has to be meant: it shows here as a line.
test('every field of a round and a report, what it takes, and whether it may be left out', () => {
  const seen = new Map<string, string>();
  const lines = [...linesOf(roundJsonSchema(), 'round', seen), ...linesOf(reportJsonSchema(), 'report', seen)];
  expectHeld(lines, 'shapes.txt');
});

test.each([
  ['$.groups[0].name', 1, 200],
  ['$.title', 0, 200],
  ['$.groups[0].remarks', 0, 2000],
])('%s has %i to %i characters', (path, least, most) => {
  const fits = (length: number): boolean => {
    const round = exampleRound();
    put(round, keysOf(path), 'é'.repeat(length));
    return RoundShape.safeParse(round).success;
  };
  expect([least, most].map(fits)).toEqual([true, true]);
  expect(fits(most + 1)).toBe(false);
  if (least > 0) expect(fits(least - 1)).toBe(false);
});

/** A schema line by line: its own members in one, then the schemas within it. What was said before is not said again. */
function linesOf(schema: unknown, path: string, seen: Map<string, string>): string[] {
  const text = JSON.stringify(schema);
  const before = seen.get(text);
  if (before !== undefined && before.length < text.length) return [`${path} as ${before}`];
  seen.set(text, path);
  const own: Record<string, unknown> = {};
  const inner: string[] = [];
  for (const [key, value] of Object.entries(schema as object)) {
    if (key === 'properties') {
      own[key] = Object.keys(value as object).length;
      for (const [field, of] of Object.entries(value as object)) inner.push(...linesOf(of, `${path}.${field}`, seen));
    } else if (key === 'anyOf' || key === 'oneOf') {
      own[key] = (value as unknown[]).length;
      (value as unknown[]).forEach((one, i) => inner.push(...linesOf(one, `${path}|${i}`, seen)));
    } else if (key === 'items') inner.push(...linesOf(value, `${path}[]`, seen));
    else own[key] = value;
  }
  return [`${path} ${JSON.stringify(own)}`, ...inner];
}
