// What is held line by line in a file beside the tests, because only its difference can be read.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

/**
 * Holds some lines against a file of tests/record. Where they differ, what was found is left in .cache: if all of the
 * difference is meant, it takes the place of the file.
 */
export function expectHeld(lines: readonly string[], name: string): void {
  const place = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
  const held = readFileSync(place(`tests/record/${name}`), 'utf8')
    .trimEnd()
    .split('\n');
  if (held.join('\n') !== lines.join('\n')) {
    mkdirSync(place('.cache'), { recursive: true });
    writeFileSync(place(`.cache/${name}`), `${lines.join('\n')}\n`);
  }
  expect(lines).toEqual(held);
}
