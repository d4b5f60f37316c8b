import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { RoundReportShape, RoundShape } from 'isochore/record';
import {
  complaints,
  docstringExamples,
  documentExamples,
  moduleOf,
  ROOT,
  shownValues,
  type Example,
} from './examples.js';

const folder = `${ROOT}/.cache/examples`;
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const documents = documentExamples();
const docstrings = docstringExamples();
const isCode = ({ language }: Example): boolean => ['ts', 'js', 'typescript', 'javascript'].includes(language);
const programs = [...documents, ...docstrings].filter(isCode);
const modules = new Map(
  programs.map((example) => [`${folder}/${example.name.replaceAll(/\W+/g, '-')}.ts`, moduleOf(example)]),
);
for (const [path, text] of modules) writeFileSync(path, text);

test('there are examples to run, in the README and in the docstrings', () => {
  expect(documents.filter((one) => isCode(one) && one.name.startsWith('README.md')).length).toBeGreaterThan(1);
  expect(docstrings.length).toBeGreaterThan(20);
});

test('every example compiles under the strictest options', { timeout: 60_000 }, () => {
  expect(complaints(modules)).toEqual([]);
});

describe('every example runs, and shows the values that it says', () => {
  test.each([...modules.keys()].map((path, i) => [programs[i]?.name ?? '', path]))('%s', async (_name, path) => {
    await import(/* @vite-ignore */ path);
  });
});

describe('every docstring example shows a value', () => {
  test.each(docstrings.map((example) => [example.name, example] as const))('%s', (_name, example) => {
    expect(shownValues(example)).toBeGreaterThan(0);
  });
});

describe('every JSON block is a round or a report', () => {
  const blocks = documents.filter(({ language }) => language === 'json');
  test('there is one in the README', () => {
    expect(blocks.some(({ name }) => name.startsWith('README.md'))).toBe(true);
  });
  test.each(blocks.map(({ name, code }) => [name, code]))('%s', (_name, code) => {
    const json: unknown = JSON.parse(code);
    const schema = typeof json === 'object' && json !== null && 'groups' in json ? RoundShape : RoundReportShape;
    expect(schema.safeParse(json).error?.issues ?? []).toEqual([]);
  });
});
