// Lines and equations as plain text.
import { expressionText } from '../formula/expression.js';
import type { Equation, Inline, Line } from './block.js';
import { isolated, pieces, printable } from './given.js';
import { widthOf } from './width.js';

/** A line as plain text. */
export function lineText(line: Line): string {
  return pieces(line).map(inlineText).join('');
}

function inlineText(piece: Inline): string {
  if (typeof piece === 'string') return printable(piece);
  if (piece.kind === 'formula') return expressionText(piece.expression);
  return piece.kind === 'given' ? isolated(piece.text) : printable(piece.text);
}

/** The lines of an equation, one a side but for the first two, which stand together. */
export function equationLines({ sides, signs, unit, source }: Equation): readonly string[] {
  const [first = '', second, ...rest] = sides.map((side, i) => {
    const end = i === sides.length - 1 && unit !== undefined ? ` ${unit}` : '';
    return `${i === 0 ? '' : `${signs?.[i - 1] ?? '='} `}${expressionText(side)}${end}`;
  });
  const indent = ' '.repeat(widthOf(first) + 1);
  const lines = [second === undefined ? first : `${first} ${second}`, ...rest.map((one) => `${indent}${one}`)];
  return source === undefined ? lines : [...lines, `[${lineText(source)}]`];
}
