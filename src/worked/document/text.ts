// A document in plain text: for a terminal, a log, a mail. Every line has its end within the width.
import { indexed } from '../../basis/indexed.js';
import { fail, quote } from '../../basis/fault.js';
import { outsideBounds } from '../../basis/problem.js';
import { refuse } from '../door.js';
import { neededDocument } from './door.js';
import type { Block, Column, Signatures, Table, WorkedDocument } from './block.js';
import { printable } from './given.js';
import { equationLines, lineText } from './plain.js';
import { columnWidths, LEAST } from './columns.js';
import { padded, widthOf, wrapped } from './width.js';

/** How wide plain text is, in columns of a terminal. */
export interface TextOptions {
  /** From 40 to 1000. */
  readonly width: number;
}

/**
 * A document as plain text, for a terminal, a log or a mail: every line within the width, tables in columns.
 *
 * Other people's text is shown without what would steer a terminal, and set apart by U+2068 and U+2069 where it runs from
 * right to left; a longer word than fits is broken.
 *
 * @throws {@link Fault} `wrong kind`, `unknown word`, `cells left out`, `too deep`, `too large` for what is no document; `outside
 * bounds` for a width
 * @example
 * ```ts
 * const page = {
 *   language: 'en',
 *   title: 'Gauges',
 *   blocks: [{ kind: 'paragraph' as const, text: ['Read on ', { kind: 'given' as const, text: 'gauge \u001b[31mA' }] }],
 * };
 * documentText(page, { width: 60 }); // => 'Gauges\n======\n\nRead on gauge \uFFFD[31mA\n'
 * ```
 */
export function documentText(document: WorkedDocument, options: TextOptions): string {
  const { title: heading, blocks } = neededDocument(document);
  const width = neededWidth(options);
  const title = lineText(heading);
  const parts = [underlined(title, '=', width), ...blocks.map((block) => blockText(block, width).join('\n'))];
  return `${parts.join('\n\n')}\n`;
}

function neededWidth(options: TextOptions): number {
  if (typeof options !== 'object' || options === null) return refuse('options: a width', options, 'options');
  const { width } = options;
  if (Number.isInteger(width) && width >= NARROWEST && width <= WIDEST) return width;
  const bounds = `a whole number from ${NARROWEST} to ${WIDEST}`;
  return fail(outsideBounds, 'options.width', quote(width), { bounds });
}

const NARROWEST = 40;
const WIDEST = 1000;

function blockText(block: Block, width: number): readonly string[] {
  switch (block.kind) {
    case 'heading':
      return block.level === 3
        ? wrapped(lineText(block.text), width)
        : [underlined(lineText(block.text), block.level === 1 ? '=' : '-', width)];
    case 'paragraph':
      return wrapped(lineText(block.text), width);
    case 'list':
      return block.items.flatMap((item, i) =>
        hanging(block.marks === 'numbered' ? `${i + 1}. ` : '- ', lineText(item), width),
      );
    case 'notice':
      return hanging(`${printable(block.label).toUpperCase()}: `, lineText(block.text), width);
    case 'equation':
      return equationLines(block).flatMap((one) => {
        const lead = /^ */.exec(one)?.[0] ?? '';
        return hanging(`    ${lead}`, one.slice(lead.length), width);
      });
    case 'table':
      return tableText(block, width);
    case 'signatures':
      return signaturesText(block, width);
    case 'page break':
      return ['', '* * *'.padStart(Math.floor(width / 2) + 2), ''];
  }
}

function underlined(text: string, by: string, width: number): string {
  const lines = wrapped(text, width);
  return [...lines, by.repeat(Math.max(1, ...lines.map(widthOf)))].join('\n');
}

function hanging(lead: string, text: string, width: number): readonly string[] {
  const indent = ' '.repeat(widthOf(lead));
  return wrapped(text, width - indent.length).map((one, i) => `${i === 0 ? lead : indent}${one}`);
}

const GAP = '  ';

function tableText({ caption, columns, rows }: Table, width: number): readonly string[] {
  const cells = [columns.map(({ heading }) => lineText(heading)), ...rows.map((row) => row.map(lineText))];
  const widths = columnWidths(cells, width - GAP.length * (columns.length - 1));
  const [head = [], ...body] = cells.map((row) => rowText(row, columns, widths));
  const rule = widths.map((one) => '-'.repeat(one)).join(GAP);
  const above = caption === undefined ? [] : [...wrapped(lineText(caption), width), ''];
  return [...above, ...head, rule, ...body.flat()];
}

function rowText(row: readonly string[], columns: readonly Column[], widths: readonly number[]): readonly string[] {
  const cells = row.map((cell, i) => wrapped(cell, widths[i] ?? LEAST));
  const height = Math.max(...cells.map((lines) => lines.length));
  return indexed(height, (line) =>
    cells
      .map((lines, i) => padded(lines[line] ?? '', widths[i] ?? LEAST, columns[i]?.align ?? 'left'))
      .join(GAP)
      .trimEnd(),
  );
}

function signaturesText({ who, fields }: Signatures, width: number): readonly string[] {
  const rule = '_'.repeat(Math.min(width - 8, 40));
  return who.flatMap((one) => [
    ...wrapped(lineText(one), width),
    ...fields.flatMap((field) => ['', `    ${rule}`, ...hanging('    ', lineText(field), width)]),
    '',
  ]);
}
