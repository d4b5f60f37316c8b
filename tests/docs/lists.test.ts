// An item of a list that has run into the paragraph above it is shown as part of a sentence.
import { expect, test } from 'vitest';
import { documentAt, nodesOf, pagesInDocs } from './markdown.js';

const PATHS = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'SECURITY.md', ...pagesInDocs()];
const MARKER = /[.:;] (?:\d+\.|[-*]) \S/;

test.each(PATHS)('%s: no item of a list stands inside a paragraph', (path) => {
  const document = documentAt(path);
  const paragraphs = nodesOf(document.tree).filter((node) => node.type === 'paragraph');
  expect(paragraphs.length).toBeGreaterThan(0);
  const texts = paragraphs.map(({ position: at }) => document.text.slice(at?.start.offset, at?.end.offset));
  expect(texts.filter((text) => MARKER.test(text))).toEqual([]);
});
