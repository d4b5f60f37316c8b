// Printed numbers in a language's format, as expressions.
import type { Expression } from '../formula/expression.js';
import type { Language } from '../languages/language.js';
import type { Figure } from './figures.js';

/** Between each three digits of a whole part of five and more. */
const NARROW_SPACE = '\u202F';

/** A number of a step; one that is written out for a machine keeps its digits together. */
export function numberOf(
  { text, unit }: Figure,
  { numbers }: Language,
  form: 'with unit' | 'bare',
  grouped = true,
): Expression {
  const [mantissa = '', exponent] = text.replace('-', '−').split('e');
  const [whole = '', fraction] = mantissa.split('.');
  const parts = grouped && whole.replace('−', '').length > 4 ? inThrees(whole) : whole;
  const number = fraction === undefined ? parts : `${parts}${numbers.decimal}${fraction}`;
  const shown = form === 'with unit' && unit !== '1' && unit !== '' ? unit : undefined;
  if (exponent === undefined) return { kind: 'number', text: number, ...(shown === undefined ? {} : { unit: shown }) };
  const power = exponent.replace('+', '').replace('-', '−');
  if (number.startsWith('−')) return { kind: 'minus', of: timesTen(number.slice(1), power) };
  return timesTen(number, power);
}

function timesTen(number: string, power: string): Expression {
  return {
    kind: 'operation',
    operator: '×',
    left: { kind: 'number', text: number },
    right: {
      kind: 'operation',
      operator: 'power',
      left: { kind: 'number', text: '10' },
      right: { kind: 'number', text: power },
    },
  };
}

function inThrees(whole: string): string {
  return whole.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE);
}
