// Every kind of document, in both languages, as the parser or renderer of each format sees it.
import type { Nodes } from 'mdast';
import { toString } from 'mdast-util-to-string';
import { describe, expect, test } from 'vitest';
import {
  documentHtml,
  documentLatex,
  documentMarkdown,
  documentText,
  english,
  german,
  type Block,
  type Line,
  type WorkedDocument,
} from 'isochore/worked';
import { equationLines, lineText } from '../../src/worked/document/plain.js';
import { everyDocument } from '../support/every-document.js';
import {
  formulasOf,
  nodesOf,
  nodesOfLatex,
  renderedFormula,
  tablesOfMarkdown,
  treeOfMarkdown,
  wrongWithHtml,
} from '../support/renderings.js';

const ALL = [english, german].flatMap((language) =>
  everyDocument(language).map(([name, make]) => [`${name}, in ${language.code}`, make] as const),
);
const textOf = (line: Line): string => lineText(line).trim();

/** What each block is meant to be in Markdown, in order. */
function meant(block: Block): string[] {
  switch (block.kind) {
    case 'heading':
      return [`heading ${block.level + 1}: ${textOf(block.text)}`];
    case 'paragraph':
      return [`paragraph: ${textOf(block.text)}`];
    case 'list':
      return [`${block.marks} list: ${block.items.map(textOf).join(' | ')}`];
    case 'notice':
      return [`blockquote: ${block.label}: ${textOf(block.text)}`];
    case 'equation':
      return [`code: ${equationLines(block).join('\n')}`];
    case 'table':
      return [
        ...(block.caption === undefined ? [] : [`paragraph: ${textOf(block.caption)}`]),
        `table of ${block.columns.length}: ${block.rows.length + 1}`,
      ];
    case 'signatures':
      return [`table of ${block.fields.length + 1}: ${block.who.length + 1}`];
    case 'page break':
      return ['thematicBreak'];
  }
}

function seen(node: Nodes): string {
  switch (node.type) {
    case 'heading':
      return `heading ${node.depth}: ${toString(node)}`;
    case 'list':
      return `${node.ordered === true ? 'numbered' : 'plain'} list: ${node.children.map((item) => toString(item)).join(' | ')}`;
    case 'table':
      return `table of ${node.children[0]?.children.length ?? 0}: ${node.children.length}`;
    case 'code':
      return `code: ${node.value}`;
    case 'thematicBreak':
      return node.type;
    default:
      return `${node.type}: ${toString(node)}`;
  }
}

describe.each(ALL)('%s', (_, make) => {
  const page: WorkedDocument = make();

  test('is valid HTML without scripts', async () => {
    const html = documentHtml(page);
    expect(await wrongWithHtml(html)).toEqual([]);
    expect(html).not.toMatch(/<script|<[^>]*\s(on\w+|href|src)\s*=/i);
  });

  test('is in Markdown what is meant, block by block and cell by cell', () => {
    const markdown = documentMarkdown(page);
    const tree = treeOfMarkdown(markdown);
    expect(tree.children.map(seen)).toEqual([`heading 1: ${textOf(page.title)}`, ...page.blocks.flatMap(meant)]);
    expect(nodesOf(tree).filter(({ type }) => ['html', 'link', 'image', 'emphasis'].includes(type))).toEqual([]);
    const tables = page.blocks.flatMap((block) =>
      block.kind === 'table' ? [[block.columns.map(({ heading }) => heading), ...block.rows]] : [],
    );
    const found = tablesOfMarkdown(markdown);
    for (const table of tables) expect(found).toContainEqual(table.map((row) => row.map(textOf)));
  });

  test('is LaTeX: formulas that KaTeX takes in strict mode, environments that end as they begin', () => {
    const latex = documentLatex(page);
    for (const formula of new Set(formulasOf(latex))) expect(renderedFormula(formula)).toContain('katex');
    const open: string[] = [];
    for (const [, which, name = ''] of latex.matchAll(/\\(begin|end)\{(\w+)\}/g))
      if (which === 'begin') open.push(name);
      else expect(open.pop()).toBe(name);
    expect(open).toEqual([]);
    // Outside of formulas nothing that the fonts of LaTeX do not have: they leave it out without a word.
    const outside = latex.replace(/\\\[[^]*?\\\]|\\\([^]*?\\\)/g, '');
    expect(outside.match(/[^\n -ÿ‐-―‘-”„†…−≈]/gu) ?? []).toEqual([]);
    if (latex.length < 60_000) expect(nodesOfLatex(latex).filter(({ type }) => type === 'comment')).toEqual([]);
  });

  test('has nothing left to be filled in, in plain text', () => {
    const text = documentText(page, { width: 100 });
    expect(text).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
    expect(text.split('\n').filter((line) => line.length > 110)).toEqual([]);
  });
});

describe('in German', () => {
  const CITED = /63\.151|isochore \d[\d.]*|doi:\S+|\d{4}-\d\d-\d\d|\(JCGM [^)]*\)/g;
  test.each(everyDocument(german))('%s has the numbers of the language', (_, make) => {
    const text = documentText(make(), { width: 1000 }).replace(CITED, '');
    expect(text.match(/.{0,30}\d\.\d.{0,10}/g) ?? []).toEqual([]);
    expect(text.match(/\d (gauge|absolute|difference)\b/g) ?? []).toEqual([]);
  });
});
