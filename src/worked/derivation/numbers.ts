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
  const [mantissa = '', exponent] = text.replaceAll('-', '−').split('e');
  const [whole = '', fraction] = mantissa.split('.');
  const parts = grouped && whole.replace('−', '').length > 4 ? inThrees(whole) : whole;
  const number = fraction === undefined ? parts : `${parts}${numbers.decimal}${fraction}`;
  const shown = form === 'with unit' && unit !== '1' && unit !== '' ? unit : undefined;
  const power = exponent === undefined ? '' : `e${exponent.replace('+', '')}`;
  return { kind: 'number', text: `${number}${power}`, ...(shown === undefined ? {} : { unit: shown }) };
}

function inThrees(whole: string): string {
  return whole.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE);
}
