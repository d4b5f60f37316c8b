// docs/method.md holds the one table of terms and symbols. Formulas that the library prints use its symbols and no others.
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Relation } from '../../src/basis/relation.js';
import { ROOT } from './examples.js';
import { documentAt, pagesInDocs, tableRowsOf } from './markdown.js';

const HEAD = 'symbol';
const METHOD = 'docs/method.md';

function symbolsOfTable(): Set<string> {
  const rows = tableRowsOf(documentAt(METHOD));
  const column = rows.find((row) => row.includes(HEAD))?.indexOf(HEAD) ?? -1;
  return new Set(
    rows.flatMap((row) => [...(row[column] ?? '').matchAll(/`([^`]+)`/g)].map(([, symbol = '']) => symbol)),
  );
}

function isRelation(value: unknown): value is Relation {
  return typeof value === 'object' && value !== null && 'formula' in value && 'gives' in value && 'from' in value;
}

const files = readdirSync(`${ROOT}/src`, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
const modules = await Promise.all(
  files.map((file) => import(`${ROOT}/src/${file}`) as Promise<Record<string, unknown>>),
);
const relations = modules.flatMap((exported) => Object.values(exported)).filter(isRelation);

test('every symbol of every relation stands in the table', () => {
  const table = symbolsOfTable();
  const used = new Set(relations.flatMap(({ from, gives }) => [...from, gives]));
  expect(used.size).toBeGreaterThan(20);
  expect([...used].filter((symbol) => !table.has(symbol))).toEqual([]);
});

test('every symbol of the table is used by a relation', () => {
  const used = new Set(relations.flatMap(({ from, gives }) => [...from, gives]));
  expect([...symbolsOfTable()].filter((symbol) => !used.has(symbol))).toEqual([]);
});

test('there is no second table of symbols', () => {
  const others = ['README.md', 'DEVELOPERS.md', ...pagesInDocs()].filter((path) => path !== METHOD);
  expect(others.filter((path) => tableRowsOf(documentAt(path)).some((row) => row.includes(HEAD)))).toEqual([]);
});
