// A document as one HTML file: no scripts, nothing loaded from anywhere, and one small style sheet that prints well.
import { expressionHtml } from '../formula/expression.js';
import type { Block, Equation, Inline, Line, Signatures, Table, WorkedDocument } from './block.js';
import { neededDocument } from './door.js';
import { pieces, printable, shown } from './given.js';
import { STYLE } from './style.js';
import { lineText } from './plain.js';

/**
 * A document as one HTML file, to be shown or printed: no scripts, nothing loaded from anywhere, one small style sheet.
 *
 * Other people's text is escaped and keeps its direction to itself (`bdi`).
 *
 * @throws {@link Fault} `wrong kind`, `unknown word`, `cells left out`, `too deep`, `too large` for what is no document
 * @example
 * ```ts
 * const page = {
 *   language: 'en',
 *   title: 'Gauges',
 *   blocks: [{ kind: 'paragraph' as const, text: ['Read on ', { kind: 'given' as const, text: '<b>A</b>' }] }],
 * };
 * documentHtml(page).includes('<p>Read on <bdi>&lt;b&gt;A&lt;/b&gt;</bdi></p>'); // => true
 * ```
 */
export function documentHtml(document: WorkedDocument): string {
  const { language, title, blocks } = neededDocument(document);
  return [
    '<!DOCTYPE html>',
    `<html lang="${escaped(language)}">`,
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${entities(lineText(title))}</title>`,
    `<style>\n${STYLE}</style>`,
    '</head>',
    '<body>',
    '<main>',
    `<h1>${lineHtml(title)}</h1>`,
    ...blocks.map(blockHtml),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level + 1}>${lineHtml(block.text)}</h${block.level + 1}>`;
    case 'paragraph':
      return `<p>${lineHtml(block.text)}</p>`;
    case 'list': {
      const name = block.marks === 'numbered' ? 'ol' : 'ul';
      return `<${name}>\n${block.items.map((item) => `<li>${lineHtml(item)}</li>\n`).join('')}</${name}>`;
    }
    case 'notice':
      return `<p class="${block.severity}"><strong>${escaped(block.label)}:</strong> ${lineHtml(block.text)}</p>`;
    case 'equation':
      return equationHtml(block);
    case 'table':
      return tableHtml(block);
    case 'signatures':
      return signaturesHtml(block);
    case 'page break':
      return '<hr class="page">';
  }
}

function lineHtml(line: Line): string {
  return pieces(line).map(inlineHtml).join('');
}

function inlineHtml(piece: Inline): string {
  if (typeof piece === 'string') return escaped(piece);
  if (piece.kind === 'formula') return expressionHtml(piece.expression);
  if (piece.kind === 'strong') return `<strong>${escaped(piece.text)}</strong>`;
  return `<bdi>${escaped(shown(piece.text))}</bdi>`;
}

const ENTITY: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return entities(printable(text));
}

function entities(text: string): string {
  return text.replace(/[&<>"']/g, (found) => ENTITY[found] ?? found);
}

function equationHtml({ sides, signs, unit, source }: Equation): string {
  const lines = sides.map((side, i) => {
    const end = i === sides.length - 1 && unit !== undefined ? `\u00A0${escaped(unit)}` : '';
    return `${i === 0 ? '' : `${signs?.[i - 1] ?? '='} `}${expressionHtml(side)}${end}`;
  });
  const [first = '', second = '', ...rest] = lines;
  const chain = [`${first} ${second}`.trimEnd(), ...rest].join('<br>\n');
  const from = source === undefined ? '' : `<br>\n<small>${lineHtml(source)}</small>`;
  return `<p class="equation">${chain}${from}</p>`;
}

function tableHtml({ caption, columns, rows }: Table): string {
  const side = (i: number): string => (columns[i]?.align === 'right' ? ' class="number"' : '');
  return [
    '<table>',
    ...(caption === undefined ? [] : [`<caption>${lineHtml(caption)}</caption>`]),
    `<thead>\n<tr>${columns.map(({ heading }, i) => `<th scope="col"${side(i)}>${lineHtml(heading)}</th>`).join('')}</tr>\n</thead>`,
    '<tbody>',
    ...rows.map((row) => `<tr>${row.map((cell, i) => `<td${side(i)}>${lineHtml(cell)}</td>`).join('')}</tr>`),
    '</tbody>',
    '</table>',
  ].join('\n');
}

function signaturesHtml({ who, fields }: Signatures): string {
  return who
    .map((one) => {
      const lines = fields.map((field) => `<span>${lineHtml(field)}</span>`).join('');
      return `<p class="signs">${lineHtml(one)}</p>\n<p class="signature">${lines}</p>`;
    })
    .join('\n');
}
