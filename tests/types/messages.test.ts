import { describe, expect, test } from 'vitest';
import { refusals } from './compile.js';
import { GIVEN, UNDEFINED, WRONG } from './programs.js';

const [given, absent, ...found] = refusals([
  GIVEN,
  GIVEN + UNDEFINED,
  ...WRONG.map(({ program }) => `${GIVEN}${program}\n`),
]);
const linesOf = (text: string): number => text.split('\n').length - 1;
const all = WRONG.map((wrong, i) => ({ ...wrong, refused: found[i] ?? [] }));

test('what the programs build on compiles', () => {
  expect(given).toEqual([]);
});

test('an optional part that is undefined compiles under strict alone', () => {
  expect(absent).toEqual([]);
});

describe.each(all)('$title', ({ program, says, refused }) => {
  test('does not compile, and what is wrong is its last line', () => {
    const last = linesOf(GIVEN) + linesOf(program) + 1;
    expect([...new Set(refused.map(({ line }) => line))]).toEqual([last]);
  });

  test('is refused in words that name what is wrong', () => {
    for (const words of says) expect(refused[0]?.text).toMatch(words);
  });

  test('is refused in few words', () => {
    const text = refused[0]?.text ?? '';
    expect(linesOf(text) + 1).toBeLessThanOrEqual(8);
    expect(text.length).toBeLessThanOrEqual(1500);
  });
});

test('the words of the compiler are those on file', async () => {
  const page = all.map(({ title, program, refused }) => {
    const words = refused.map(({ text }) => text.replaceAll(/^/gm, '  ')).join('\n');
    return `${title}\n\n    ${program.replaceAll('\n', '\n    ')}\n\n${words}\n`;
  });
  await expect(page.join('\n\n')).toMatchFileSnapshot('messages.txt');
});
