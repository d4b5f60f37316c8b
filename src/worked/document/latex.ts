// A document in LaTeX, for LuaLaTeX or XeLaTeX, because names may be written in any script; which font has it, the reader's
// own preamble decides. Formulas use what amsmath has, and nothing else.
import { expressionLatex, unitLatex } from '../formula/expression.js';
import type { Block, Column, Equation, Inline, Line, List, Signatures, Table, WorkedDocument } from './block.js';
import { neededDocument } from './door.js';
import { columnWidths, LEAST, naturalWidths, sumOf } from './columns.js';
import { pieces, printable, shown } from './given.js';
import { lineText } from './plain.js';

/**
 * A document in LaTeX, whole, with its preamble: for LuaLaTeX or XeLaTeX, with amsmath, array, longtable,
 * fontspec, geometry.
 *
 * Other people's text is escaped. Scripts that the font does not have, and those that run from right to left, need a font
 * and a package of the reader's own.
 *
 * @throws {@link Fault} `wrong kind`, `unknown word`, `cells left out`, `too deep`, `too large` for what is no document
 * @example
 * ```ts
 * const page = {
 *   language: 'en',
 *   title: 'Gauges',
 *   blocks: [{ kind: 'paragraph' as const, text: ['Read on ', { kind: 'given' as const, text: '50 % & $A' }] }],
 * };
 * documentLatex(page).includes('Read on {50 \\% \\& \\$A}'); // => true
 * ```
 */
export function documentLatex(document: WorkedDocument): string {
  const { title, blocks } = neededDocument(document);
  return [
    PREAMBLE,
    '\\begin{document}\n\\small',
    `{\\large\\bfseries\\raggedright ${lineLatex(title)}\\par}`,
    ...blocks.map(blockLatex),
    '\\end{document}',
    '',
  ].join('\n\n');
}

// As small and as close as a page to hang up may be: a card is one page.
const PREAMBLE = String.raw`\documentclass[a4paper]{article}
\usepackage[margin=14mm,footskip=7mm]{geometry}
\usepackage{amsmath}
\usepackage{array}
\usepackage{longtable}
\usepackage{fontspec}
\setlength{\parindent}{0pt}
\setlength{\parskip}{3pt}
\setlength{\LTpre}{3pt}
\setlength{\LTpost}{3pt}
\setlength{\emergencystretch}{3em}
\makeatletter
\renewcommand{\section}{\@startsection{section}{1}{0pt}{6pt}{1pt}{\normalsize\bfseries}}
\renewcommand{\subsection}{\@startsection{subsection}{2}{0pt}{6pt}{1pt}{\small\bfseries}}
\renewcommand{\subsubsection}{\@startsection{subsubsection}{3}{0pt}{6pt}{1pt}{\small\itshape}}
\makeatother`;

function blockLatex(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `\\${(['section', 'subsection', 'subsubsection'] as const)[block.level - 1] ?? 'section'}*{${lineLatex(block.text)}}`;
    case 'paragraph':
      return lineLatex(block.text);
    case 'list':
      return listLatex(block);
    case 'notice':
      return `\\fbox{\\parbox{\\dimexpr\\linewidth-2\\fboxsep-2\\fboxrule\\relax}{\\textbf{${escaped(printable(block.label))}:} ${lineLatex(block.text)}}}`;
    case 'equation':
      return equationLatex(block);
    case 'table':
      return tableLatex(block);
    case 'signatures':
      return signaturesLatex(block);
    case 'page break':
      return '\\newpage';
  }
}

function listLatex({ marks, items }: List): string {
  const name = marks === 'numbered' ? 'enumerate' : 'itemize';
  return [
    `\\begin{${name}}\\setlength{\\itemsep}{0pt}\\setlength{\\parskip}{0pt}`,
    ...items.map((item) => `\\item {}${lineLatex(item)}`),
    `\\end{${name}}`,
  ].join('\n');
}

/** A line as LaTeX outside of math mode. */
function lineLatex(line: Line): string {
  return pieces(line).map(inlineLatex).join('');
}

function inlineLatex(piece: Inline): string {
  if (typeof piece === 'string') return escaped(printable(piece));
  if (piece.kind === 'formula') return `\\(${expressionLatex(piece.expression)}\\)`;
  if (piece.kind === 'strong') return `\\textbf{${escaped(printable(piece.text))}}`;
  return `{${escaped(shown(piece.text))}}`;
}

const SPECIAL: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
  '|': '\\textbar{}',
  '"': '\\textquotedbl{}',
  '`': '\\textasciigrave{}',
  "'": '\\textquotesingle{}',
};

/** Letters and digits as they are; what TeX reads otherwise as its command; signs that would join are kept apart. */
function escaped(text: string): string {
  return text
    .replace(/[\\~^<>|"`']/g, (found) => SPECIAL[found] ?? found)
    .replace(/\\text[a-z]+\{\}|[{}$&#_%]/g, (found) => (found.length > 1 ? found : `\\${found}`))
    .replace(/-(?=-)|[?!,](?=[`'])/g, '$&{}')
    .replace(/[[\]]/g, '{$&}')
    .replace(/[^\s\\{}]{24}(?=[^\s\\{}])/gu, '$&\\allowbreak{}');
}

function equationLatex({ sides, signs, unit, source }: Equation): string {
  const [first = '', ...rest] = sides.map((side, i) => {
    const sign = i === 0 ? '' : `&${signs?.[i - 1] === '≈' ? '\\approx' : '='} `;
    const end = i === sides.length - 1 && unit !== undefined ? `\\,${unitLatex(unit)}` : '';
    return `${sign}${expressionLatex(side)}${end}`;
  });
  const chain = [`${first} ${rest[0] ?? ''}`.trimEnd(), ...rest.slice(1)].join(' \\\\\n');
  const shown = `\\[\\begin{aligned}\n${chain}\n\\end{aligned}\\]`;
  return source === undefined ? shown : `${shown}\n\n{\\small ${lineLatex(source)}\\par}`;
}

function tableLatex({ caption, columns, rows }: Table): string {
  const row = (cells: readonly Line[]): string => `${cells.map((cell) => `{}${lineLatex(cell)}`).join(' & ')} \\\\`;
  return [
    ...(caption === undefined ? [] : [`${lineLatex(caption)}\\par`]),
    `{\\footnotesize\\begin{longtable}{${shapeOf(columns, rows)}}`,
    row(columns.map(({ heading }) => heading)),
    '\\hline\\endhead\\noalign{\\vskip 2pt}',
    ...rows.map(row),
    '\\end{longtable}}',
  ].join('\n');
}

/** Letters of the small size on a line of the page, on the safe side; between columns goes room for two. */
const LETTERS = 100;
const BETWEEN = 2;

/** Columns as wide as they are where that fits on the page, else shares of the line in which cells are broken. */
function shapeOf(columns: readonly Column[], rows: Table['rows']): string {
  const cells = [columns.map(({ heading }) => heading), ...rows].map((row) => row.map(lineText));
  const room = LETTERS - BETWEEN * columns.length;
  if (sumOf(naturalWidths(cells)) <= room) return columns.map(({ align }) => (align === 'right' ? 'r' : 'l')).join('');
  const widths = columnWidths(cells, room);
  const all = sumOf(widths) + BETWEEN * columns.length;
  return columns
    .map(({ align }, i) => {
      const share = (((widths[i] ?? LEAST) + BETWEEN) / all).toFixed(4);
      const ragged = align === 'right' ? 'raggedleft' : 'raggedright';
      return `>{\\${ragged}\\arraybackslash}p{\\dimexpr ${share}\\linewidth-2\\tabcolsep\\relax}`;
    })
    .join('');
}

function signaturesLatex({ who, fields }: Signatures): string {
  const field = (one: Line): string =>
    `\\parbox[t]{${(0.9 / fields.length).toFixed(3)}\\linewidth}{\\vspace{12mm}\\hrulefill\\\\{}${lineLatex(one)}}`;
  return who.map((one) => `${lineLatex(one)}\\par\n${fields.map(field).join('\\hfill\n')}\\par`).join('\n\n');
}
