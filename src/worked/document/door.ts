// A document that a caller hands in: his own, or one of the library's that went through JSON.
import { fail, quote } from '../../basis/fault.js';
import { cellsLeftOut } from '../../basis/problem.js';
import { byKind, fieldsOf, listOf, oneOf, orNot, refuse, taken, text, word, type Take } from '../door.js';
import { expression, unit } from '../formula/door.js';
import { lineText } from './plain.js';
import type {
  Block,
  Column,
  Equation,
  Heading,
  Inline,
  Line,
  List,
  Notice,
  PageBreak,
  Paragraph,
  Signatures,
  Table,
  WorkedDocument,
} from './block.js';

type Piece = Exclude<Inline, string>;

// In a function, so that a bundler drops it with what uses it.
function takeDocument(): Take<WorkedDocument> {
  const piece = byKind<Piece>('a piece of a line', {
    given: fieldsOf('other people’s text', { kind: oneOf('given'), text }),
    strong: fieldsOf('text that stands out', { kind: oneOf('strong'), text }),
    formula: fieldsOf('a formula', { kind: oneOf('formula'), expression }),
  });
  const inline: Take<Inline> = (given, path, left) =>
    typeof given === 'string' ? text(given, path, left) : piece(given, path, left);
  const pieces = listOf(inline);
  const line: Take<Line> = (given, path, left) =>
    typeof given === 'string' ? text(given, path, left) : pieces(given, path, left);
  const saying: Take<Line> = (given, path, left) => {
    const own = line(given, path, left);
    return lineText(own).trim() === '' ? refuse('a line that says something', given, path) : own;
  };
  const lines = listOf(line);
  const column = fieldsOf<Column>('a column', { heading: line, align: oneOf('left', 'right') });
  const wholeTable = fieldsOf<Table>('a table', {
    kind: oneOf('table'),
    caption: orNot(line),
    columns: listOf(column),
    rows: listOf(lines),
  });
  const table: Take<Table> = (given, path, left) => {
    const own = wholeTable(given, path, left);
    const { length } = own.columns;
    if (length === 0) refuse('a table with a column', given, path);
    own.rows.forEach((row, i) => {
      if (row.length === length) return;
      fail(cellsLeftOut, `${path}.rows[${i}]`, `${row.length} cells`, { count: String(length), other: 'column' });
    });
    return own;
  };
  const sides = listOf(expression);
  const block = byKind<Block>('a block', {
    heading: fieldsOf<Heading>('a heading', { kind: oneOf('heading'), level: oneOf(1, 2, 3), text: saying }),
    paragraph: fieldsOf<Paragraph>('a paragraph', { kind: oneOf('paragraph'), text: line }),
    list: fieldsOf<List>('a list', { kind: oneOf('list'), marks: oneOf('numbered', 'plain'), items: notEmpty(lines) }),
    table,
    equation: fieldsOf<Equation>('an equation', {
      kind: oneOf('equation'),
      sides: notEmpty(sides),
      signs: orNot(listOf(oneOf('=', '≈'))),
      unit: orNot(unit),
      source: orNot(line),
    }),
    notice: fieldsOf<Notice>('a notice', {
      kind: oneOf('notice'),
      severity: oneOf('danger', 'caution', 'note'),
      label: word,
      text: line,
    }),
    signatures: fieldsOf<Signatures>('signatures', {
      kind: oneOf('signatures'),
      who: notEmpty(lines),
      fields: notEmpty(lines),
    }),
    'page break': fieldsOf<PageBreak>('a page break', { kind: oneOf('page break') }),
  });
  return fieldsOf<WorkedDocument>('a document', { language, title: saying, blocks: listOf(block) });
}

/** A list with an entry at least. */
function notEmpty<T>(take: Take<readonly T[]>): Take<readonly T[]> {
  return (given, path, left) => {
    const own = take(given, path, left);
    return own.length === 0 ? refuse('a list with an entry', given, path) : own;
  };
}

const language: Take<string> = (given, path, left) => {
  const own = text(given, path, left);
  return /^[A-Za-z]{2,8}(-[A-Za-z\d]{1,8})*$/.test(own)
    ? own
    : refuse(`a language tag (BCP 47), not ${quote(own)}`, own, path);
};

/** A document as it was handed in, read once and checked. */
export function neededDocument(document: unknown): WorkedDocument {
  return taken(takeDocument(), document, 'document');
}
