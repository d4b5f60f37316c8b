// A document in Markdown: CommonMark, with the tables of GitHub's extension. No HTML in it, and no text of others that a
// renderer could take for markup.
import { expressionText } from '../formula/expression.js';
import type { Block, Inline, Line, Table, WorkedDocument } from './block.js';
import { neededDocument } from './door.js';
import { isolated, pieces, printable } from './given.js';
import { equationLines } from './plain.js';

/**
 * A document in Markdown: CommonMark, with the tables of GitHub's extension, and no HTML in it.
 *
 * Nothing in other people's text opens markup. Some renderers make links of bare addresses on their own; no text changes
 * by that.
 *
 * @throws {@link Fault} `wrong kind`, `unknown word`, `cells left out`, `too deep`, `too large` for what is no document
 * @example
 * ```ts
 * const page = {
 *   language: 'en',
 *   title: 'Gauges',
 *   blocks: [{ kind: 'paragraph' as const, text: ['Read on ', { kind: 'given' as const, text: '*A* <b>' }] }],
 * };
 * documentMarkdown(page); // => '# Gauges\n\nRead on \\*A\\* \\<b\\>\n'
 * ```
 */
export function documentMarkdown(document: WorkedDocument): string {
  const { title, blocks } = neededDocument(document);
  return `${[`# ${startSafe(lineMarkdown(title))}`, ...blocks.map(blockMarkdown)].join('\n\n')}\n`;
}

function blockMarkdown(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level + 1)} ${startSafe(lineMarkdown(block.text))}`;
    case 'paragraph':
      return startSafe(lineMarkdown(block.text));
    case 'list':
      return block.items
        .map((item, i) => `${block.marks === 'numbered' ? `${i + 1}.` : '-'} ${startSafe(lineMarkdown(item))}`)
        .join('\n');
    case 'notice':
      return `> **${escaped(printable(block.label))}:** ${lineMarkdown(block.text)}`;
    case 'equation':
      return fenced(equationLines(block));
    case 'table':
      return tableMarkdown(block);
    case 'signatures':
      return tableMarkdown({
        kind: 'table',
        columns: ['', ...block.fields].map((heading) => ({ heading, align: 'left' })),
        rows: block.who.map((one) => [one, ...block.fields.map(() => '')]),
      });
    case 'page break':
      return '---';
  }
}

function lineMarkdown(line: Line): string {
  return pieces(line).map(inlineMarkdown).join('').trim();
}

function inlineMarkdown(piece: Inline): string {
  if (typeof piece === 'string') return escaped(printable(piece));
  if (piece.kind === 'given') return escaped(isolated(piece.text));
  if (piece.kind === 'formula') return escaped(expressionText(piece.expression));
  const text = printable(piece.text).trim();
  return text === '' ? '' : `**${escaped(text)}**`;
}

/** Punctuation that could open something inside a line; the pipe, because of tables; the dollar, because of formulas. */
function escaped(text: string): string {
  return text.replace(/[\\`*_[\]{}<>&|~$]/g, '\\$&');
}

/** What opens a block at the start of a line only: a heading, a list, a rule, an underline. */
function startSafe(text: string): string {
  return text.replace(/^([#+=-]|\d+(?=[.)]))/, (found) => (/\d/.test(found) ? `${found}\\` : `\\${found}`));
}

function tableMarkdown({ caption, columns, rows }: Table): string {
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const lines = [
    row(columns.map(({ heading }) => lineMarkdown(heading))),
    row(columns.map(({ align }) => (align === 'right' ? '--:' : ':--'))),
    ...rows.map((cells) => row(cells.map(lineMarkdown))),
  ];
  return [...(caption === undefined ? [] : [startSafe(lineMarkdown(caption)), '']), ...lines].join('\n');
}

/** Lines as they are, in a fence that none of them can close. */
function fenced(lines: readonly string[]): string {
  const longest = Math.max(2, ...lines.flatMap((line) => (line.match(/`+/g) ?? []).map((run) => run.length)));
  const fence = '`'.repeat(longest + 1);
  return [`${fence}text`, ...lines, fence].join('\n');
}
