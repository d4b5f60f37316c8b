import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

// The order of the method: a folder imports only from itself and from those before it. Record and worked observe
// everything.
const ORDER = [
  'basis',
  'quantity',
  'gas',
  'target',
  'reading',
  'verdict',
  'charge',
  'supply',
  'settling',
  'safety',
  'procedure',
  'record',
  'worked',
];

const src = fileURLToPath(new URL('../../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts'))
  .sort();
const sources = new Map(files.map((file) => [file, readFileSync(`${src}/${file}`, 'utf8')]));

/** What a file imports: paths within src, or package names. */
function importsOf(file: string): string[] {
  const { importedFiles } = ts.preProcessFile(sources.get(file) ?? '', true, true);
  return importedFiles.map(({ fileName }) =>
    fileName.startsWith('.') ? posix.join(posix.dirname(file), fileName).replace(/\.js$/, '.ts') : fileName,
  );
}

const isFile = (path: string): boolean => path.endsWith('.ts');
const folderOf = (file: string): string => file.split('/')[0] ?? '';
const inside = files.filter((file) => file.includes('/'));

test('src holds the folders of the method, in this order, and the entries', () => {
  expect([...new Set(inside.map(folderOf))].sort()).toEqual([...ORDER].sort());
  expect(files.filter((file) => !file.includes('/'))).toEqual(['core.ts', 'index.ts']);
});

test.each(inside)('%s imports only from its own step and from earlier ones', (file) => {
  const later = importsOf(file)
    .filter(isFile)
    .filter((path) => !files.includes(path) || ORDER.indexOf(folderOf(path)) > ORDER.indexOf(folderOf(file)));
  expect(later).toEqual([]);
});

test('no two files import each other, directly or in a round', () => {
  const state = new Map<string, 'open' | 'done'>();
  const rounds: string[] = [];
  const visit = (file: string, trail: readonly string[]): void => {
    if (state.get(file) === 'open') rounds.push([...trail, file].join(' → '));
    if (state.has(file)) return;
    state.set(file, 'open');
    for (const path of importsOf(file).filter(isFile)) visit(path, [...trail, file]);
    state.set(file, 'done');
  };
  for (const file of files) visit(file, []);
  expect(rounds).toEqual([]);
});

describe('packages stand behind one door each', () => {
  const importers = (name: string): string[] =>
    files.filter((file) => importsOf(file).some((path) => path === name || path.startsWith(`${name}/`)));
  test('decimal.js is imported by the module that reads text, and by no other', () => {
    expect(importers('decimal.js')).toEqual(['quantity/text.ts']);
  });
  test('zod is imported by the record alone', () => {
    expect(new Set(importers('zod').map(folderOf))).toEqual(new Set(['record']));
  });
  test('nothing else is imported', () => {
    const packages = files.flatMap(importsOf).filter((path) => !isFile(path));
    expect(new Set(packages)).toEqual(new Set(['decimal.js', 'zod/mini']));
  });
});

test('the entries name what they export', () => {
  for (const entry of ['core.ts', 'record/index.ts', 'worked/index.ts'])
    expect(sources.get(entry)).not.toMatch(/export \*/);
  expect(sources.get('index.ts')).toBe("export * from './core.js';\nexport { read } from './quantity/text.js';\n");
});
