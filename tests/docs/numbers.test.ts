// A number in a guide's sentences must stand in one of its examples too, where it is computed and held.
import { expect, test } from 'vitest';
import { documentExamples } from './examples.js';
import { documentAt, pagesInDocs, proseOf } from './markdown.js';

// The method states limits and sources, not results; validation is generated as a whole.
const OTHERS = ['docs/method.md', 'docs/validation.md'];
const GUIDES = pagesInDocs().filter((path) => !OTHERS.includes(path));

const MEASURED =
  /(?<![\w.])([−-]?\d+(?:\.\d+)?)\s?(?:%|per cent|bar\b|hPa\b|MPa\b|°C|K\b|kelvin|kg\b|g\b|L\b|m3\b|mol\b)/g;

test.each(GUIDES)('%s: measured numbers in its sentences stand in its examples', (path) => {
  const code = documentExamples()
    .filter(({ name }) => name.startsWith(path))
    .map((example) => example.code)
    .join('\n');
  const shown = new Set([...code.matchAll(/-?\d+(?:\.\d+)?/g)].map(([number]) => number));
  const stated = [...proseOf(documentAt(path)).matchAll(MEASURED)].map(([, number = '']) => number.replace('−', '-'));
  expect(stated.filter((number) => !shown.has(number))).toEqual([]);
});

test('there are guides, and measured numbers in their sentences', () => {
  expect(GUIDES.length).toBeGreaterThanOrEqual(5);
  expect(GUIDES.flatMap((path) => [...proseOf(documentAt(path)).matchAll(MEASURED)])).not.toEqual([]);
});
