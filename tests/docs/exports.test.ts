// What a program can import stands in a guide, where it is of use.
import { expect, test } from 'vitest';
import * as core from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';
import { documentAt, pagesInDocs } from './markdown.js';

const GUIDES = ['README.md', ...pagesInDocs()].map((path) => documentAt(path).text).join('\n');
const unsaid = (entry: object): string[] =>
  Object.keys(entry).filter((name) => !new RegExp(`\\b${name}\\b`).test(GUIDES));

test.each([
  ['isochore', core],
  ['isochore/record', record],
  ['isochore/worked', worked],
])('every function and constant of %s is mentioned in a guide', (_, entry) => {
  expect(Object.keys(entry).length).toBeGreaterThan(15);
  expect(unsaid(entry)).toEqual([]);
  expect(unsaid({ ...entry, ofNoGuide: undefined })).toEqual(['ofNoGuide']);
});
