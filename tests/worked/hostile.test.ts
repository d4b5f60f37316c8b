// Names, notes and titles are other people's text: in no format does any of it become markup, and all of it can be read.
import fc from 'fast-check';
import { toString } from 'mdast-util-to-string';
import { describe, expect, test } from 'vitest';
import { documentHtml, documentLatex, documentMarkdown, documentText, type WorkedDocument } from 'isochore/worked';
import { given, isolated, printable, shown } from '../../src/worked/document/given.js';
import { widthOf } from '../../src/worked/document/width.js';
import {
  anyHostile,
  nodesOf,
  nodesOfLatex,
  tablesOfMarkdown,
  tagsOf,
  textOfHtml,
  treeOfMarkdown,
  wrongWithHtml,
} from '../support/renderings.js';

/** A document with a text in every place that has one. */
const pageOf = (text: string): WorkedDocument => ({
  language: 'en',
  title: ['Round of ', given(text)],
  blocks: [
    { kind: 'heading', level: 1, text: [given(text)] },
    { kind: 'paragraph', text: [given(text)] },
    { kind: 'paragraph', text: ['before ', given(text), ' after ', { kind: 'strong', text }] },
    { kind: 'list', marks: 'numbered', items: [[given(text)], ['second ', given(text)]] },
    { kind: 'list', marks: 'plain', items: [[given(text)]] },
    {
      kind: 'table',
      caption: [given(text)],
      columns: [
        { heading: 'name', align: 'left' },
        { heading: [given(text)], align: 'right' },
      ],
      rows: [
        [[given(text)], '1'],
        ['2', [given(text), ' bar']],
      ],
    },
    { kind: 'notice', severity: 'danger', label: 'Danger', text: [given(text)] },
    { kind: 'signatures', who: [['Read by: ', given(text)]], fields: ['name', [given(text)]] },
    { kind: 'page break' },
  ],
});

/** As a reader of a format sees it that takes white space at the ends away. */
const seen = (text: string): string => isolated(text).trim();

describe('HTML', () => {
  const PLAIN = new Set(tagsOf(documentHtml(pageOf('plain'))));

  test('is valid, without scripts and with no other elements than for plain text, whatever is in it', async () => {
    expect(PLAIN).not.toContain('script');
    await fc.assert(
      fc.asyncProperty(anyHostile, async (text) => {
        const html = documentHtml(pageOf(text));
        expect(await wrongWithHtml(html)).toEqual([]);
        expect(new Set(tagsOf(html))).toEqual(PLAIN);
        expect(html).not.toMatch(/<[^>]*\s(on\w+|href|src)\s*=/i);
      }),
      { numRuns: 100 },
    );
  });

  test('shows all of it', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        expect(textOfHtml(documentHtml(pageOf(text)))).toContain(`before ${shown(text)} after `);
      }),
    );
  });

  test('keeps its direction to itself', () => {
    expect(documentHtml(pageOf('מנוע'))).toContain('<p><bdi>מנוע</bdi></p>');
  });
});

describe('Markdown', () => {
  const shapeOf = (text: string): string[] =>
    nodesOf(treeOfMarkdown(documentMarkdown(pageOf(text)))).map(({ type }) => type);
  const PLAIN = new Set(shapeOf('plain'));

  test('has the parts that are meant and no others: no HTML, links, pictures, code, or emphasis', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        const blank = printable(text).trim() === ''; // then nothing stands out
        const types = new Set(shapeOf(text));
        expect([...types].filter((type) => !PLAIN.has(type))).toEqual([]);
        if (!blank) expect(types).toEqual(PLAIN);
      }),
      { numRuns: 300 },
    );
  });

  test('shows all of it, cell by cell', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        const [table, signatures] = tablesOfMarkdown(documentMarkdown(pageOf(text)));
        expect(table).toEqual([
          ['name', seen(text)],
          [seen(text), '1'],
          ['2', `${isolated(text)} bar`.trim()],
        ]);
        expect(signatures?.[1]?.[0]).toBe(`Read by: ${isolated(text)}`.trim());
      }),
      { numRuns: 300 },
    );
  });

  test('shows all of it in headings, paragraphs and lists', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        const tree = treeOfMarkdown(documentMarkdown(pageOf(text)));
        const all = nodesOf(tree).filter(({ type }) => type === 'paragraph' || type === 'heading');
        const texts = all.map((node) => toString(node));
        expect(texts.filter((one) => one === seen(text)).length).toBeGreaterThanOrEqual(4);
        expect(texts).toContain(`second ${isolated(text)}`.trim());
        expect(texts).toContain(`before ${isolated(text)} after ${printable(text).trim()}`.trim());
        expect(texts[0]).toBe(`Round of ${isolated(text)}`.trim());
      }),
      { numRuns: 300 },
    );
  });
});

describe('LaTeX', () => {
  const wordsOf = (text: string, type: string): unknown[] =>
    nodesOfLatex(documentLatex(pageOf(text))).flatMap((node) =>
      node.type === type ? [type === 'macro' ? node.content : (node.env ?? node.content)] : [],
    );
  // For the letters that are something else to TeX.
  const LETTERS = [
    ...['textbackslash', 'textasciitilde', 'textasciicircum', 'textless', 'textgreater', 'textbar', 'textquotedbl'],
    ...['textasciigrave', 'textquotesingle', 'allowbreak', '{', '}', '$', '&', '#', '_', '%'],
  ];
  // Long text makes columns in which cells are broken.
  const MACROS = new Set([...wordsOf('x'.repeat(200), 'macro'), ...wordsOf('plain', 'macro'), ...LETTERS]);
  const ENVIRONMENTS = wordsOf('plain', 'environment');

  test('has the commands that are meant and no others: no file is read, nothing is defined or run', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        expect(wordsOf(text, 'macro').filter((name) => !MACROS.has(name))).toEqual([]);
        expect(wordsOf(text, 'environment')).toEqual(ENVIRONMENTS);
        for (const type of ['comment', 'inlinemath', 'displaymath', 'verb', 'verbatim'])
          expect(wordsOf(text, type)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test('closes every group that it opens, in the order in which it opens them', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        const bare = documentLatex(pageOf(text)).replace(/\\[^a-zA-Z]/g, '');
        let depth = 0;
        let least = 0;
        for (const letter of bare) {
          depth += letter === '{' ? 1 : letter === '}' ? -1 : 0;
          least = Math.min(least, depth);
        }
        expect({ depth, least }).toEqual({ depth: 0, least: 0 });
      }),
      { numRuns: 100 },
    );
  });

  test('has no ligatures of dashes or quotes that would alter a code', () => {
    expect(documentLatex(pageOf("A--B ``C''"))).toContain(
      'A-{}-B \\textasciigrave{}\\textasciigrave{}C\\textquotesingle{}\\textquotesingle{}',
    );
  });
});

describe('plain text', () => {
  test('stays within its width, whatever is in it', () => {
    fc.assert(
      fc.property(anyHostile, fc.integer({ min: 40, max: 160 }), (text, width) => {
        for (const line of documentText(pageOf(text), { width }).split('\n'))
          expect(widthOf(line)).toBeLessThanOrEqual(width);
      }),
    );
  });

  test('holds nothing that would steer a terminal, nor overrides the direction of a line', () => {
    fc.assert(
      fc.property(anyHostile, (text) => {
        const written = documentText(pageOf(text), { width: 80 }).replaceAll('\n', '');
        expect(written).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\u202A-\u202E\u2066\u2067]/u);
      }),
    );
  });

  test('sets apart what runs from right to left, and only that', () => {
    const lineOf = (text: string): string | undefined => documentText(pageOf(text), { width: 80 }).split('\n')[8];
    expect(lineOf('מנוע 3')).toBe('before \u2068מנוע 3\u2069 after מנוע 3');
    expect(lineOf('engine 3')).toBe('before engine 3 after engine 3');
  });
});

describe('text without what steers', () => {
  test('keeps letters of every script, and the joiners that they need', () => {
    for (const text of ['Zylinder ß', 'مضخة', 'می‌خواهم', '圧力計', '👩‍🔧', 'e\u0301'])
      expect(printable(text)).toBe(text);
  });

  test('shows what is taken out, and makes one space of any white space', () => {
    expect(printable('a\u202Eb\u0000c\uFEFFd')).toBe('a\uFFFDb\uFFFDc d');
    expect(printable('a\t\r\n\u2028 b')).toBe('a b');
  });
});
