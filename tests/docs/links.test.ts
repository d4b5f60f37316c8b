import { existsSync } from 'node:fs';
import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from './examples.js';
import { anchorsOf, documentAt, pagesInDocs, targetsOf } from './markdown.js';

const PATHS = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'SECURITY.md',
  'tests/reference/README.md',
  ...pagesInDocs(),
];
const isOutside = (target: string): boolean => /^[a-z]+:/.test(target);

/** What is wrong with a link that stands in a document; undefined if it leads somewhere. */
function broken(path: string, target: string): string | undefined {
  const [file = '', anchor] = target.split('#');
  const to = file === '' ? path : posix.join(posix.dirname(path), file);
  if (!existsSync(`${ROOT}/${to}`)) return `${target}: no file ${to}`;
  if (anchor === undefined || anchorsOf(documentAt(to)).has(anchor)) return undefined;
  return `${target}: no heading #${anchor} in ${to}`;
}

test.each(PATHS)('%s: every relative link leads to a file, and every anchor to a heading', (path) => {
  const inside = targetsOf(documentAt(path)).filter((target) => !isOutside(target));
  expect(inside.map((target) => broken(path, target)).filter((one) => one !== undefined)).toEqual([]);
});

test('links are found, relative ones and anchors among them', () => {
  const targets = PATHS.flatMap((path) => targetsOf(documentAt(path)));
  expect(targets.some((target) => target.startsWith('docs/'))).toBe(true);
  expect(targets.some((target) => target.includes('#') && !isOutside(target))).toBe(true);
});

test('every page in docs is reached from the README or from a page that it leads to', () => {
  const reached = new Set<string>();
  const visit = (path: string): void => {
    if (reached.has(path) || !PATHS.includes(path)) return;
    reached.add(path);
    for (const target of targetsOf(documentAt(path)).filter((one) => !isOutside(one))) {
      visit(posix.join(posix.dirname(path), target.split('#')[0] ?? ''));
    }
  };
  visit('README.md');
  expect(pagesInDocs().filter((path) => !reached.has(path))).toEqual([]);
});
