// The only module that imports decimal.js: text from outside may carry more digits than a double holds.
import { Decimal } from 'decimal.js';
import { fail, quote } from '../basis/fault.js';
import {
  basisMissing,
  beyondDouble,
  inheritedByAll,
  notADecimal,
  notAQuantity,
  unknownWord,
  wrongBasis,
} from '../basis/problem.js';
import type { Scale } from './decimal.js';
import { article, type Kind, type QuantityOf } from './kind.js';
import { FORM } from './step.js';
import { scaleOf } from './unit.js';

// A constructor of our own: decimal.js keeps its settings on the constructor, and the program may use it too.
// 80 digits hold any accepted text times any factor, so that the one rounding that counts is the last, to a double.
const Exact = /* @__PURE__ */ Decimal.clone({ precision: 80, defaults: true });

/** Longest accepted decimal text, in characters. */
export const LONGEST_DECIMAL = 40;

const DECIMAL = /^[+-]?\d+(\.\d+)?([eE][+-]?\d{1,3})?$/;

/** The SI value of a decimal text in a unit, correctly rounded: the same bits as the number it spells. */
export function textToSI(text: string, scale: Scale, path: string): number {
  if (text.length > LONGEST_DECIMAL || !DECIMAL.test(text)) refuse(text, path);
  // decimal.js keeps digits in lists and reads beyond their ends: a number that all objects inherit there would be digits.
  const [first] = Reflect.ownKeys(Object.prototype);
  if (/^\d/.test(String(first))) fail(inheritedByAll, path, quote(String(first)));
  const value = new Exact(text);
  const exact = value.plus(new Exact(scale.zero).div(100)).times(scale.num).div(scale.den);
  const si = Number(exact.valueOf()); // by its text, as toNumber() reads it
  // A double of infinity, or of zero for a value that is not zero, would be another value than the text says.
  if (!Number.isFinite(si) || (Number(text) === 0 && !value.isZero()))
    fail(beyondDouble, path, quote(text), { unit: 'SI units' });
  return si;
}

function refuse(text: string, path: string): never {
  fail(notADecimal, path, quote(text), { most: String(LONGEST_DECIMAL) });
}

/**
 * A quantity from a text with value, unit and basis, as {@link write} makes it: `141.3 bar gauge`, `1008 hPa absolute`,
 * `2 bar difference`, `40 °C`, `5 L`. Nothing is guessed: a pressure without its basis is refused.
 *
 * The value is rounded once, to the nearest double in SI, however many digits it has.
 *
 * @throws {@link Fault} `unknown word` for the kind; `not a quantity`, `not a decimal`, `beyond double`, `unknown unit`,
 * `basis missing`, `wrong basis`; otherwise as the function that makes the kind
 * @example
 * ```ts
 * read('gauge pressure', '141.3 bar gauge'); // => { kind: 'gauge pressure', pascals: 14130000 }
 * ```
 */
export function read<K extends Kind>(kind: K, text: string): QuantityOf<K> {
  if (typeof kind !== 'string' || !Object.hasOwn(FORM, kind))
    fail(unknownWord, 'kind', quote(kind), { words: wordsOf(FORM) });
  const { units, word, of } = FORM[kind];
  const [value = '', ...words] = typeof text === 'string' ? text.trim().split(/\s+/) : [];
  // One unit is spelled with a space: US gal.
  const length = Object.hasOwn(units, words.slice(0, 2).join(' ')) ? 2 : 1;
  const unit = words.slice(0, length).join(' ');
  const [basis = '', ...more] = words.slice(length);
  if (typeof text !== 'string' || more.length > 0) notOfForm(kind, word, text);
  if (!DECIMAL.test(value)) refuse(value, 'text');
  const si = textToSI(value, scaleOf<string>(units, unit, 'text'), 'text');
  if (basis !== word) notOfBasis(kind, word, basis, text);
  return of(si, 'text', Number(value), unit);
}

function wordsOf(table: object): string {
  return Object.keys(table)
    .map((word) => `'${word}'`)
    .join(', ');
}

function notOfForm(kind: Kind, word: string, text: unknown): never {
  const form = word === '' ? 'value and unit' : `value, unit and the word '${word}'`;
  fail(notAQuantity, 'text', quote(text), { form, kind: article(kind) });
}

function notOfBasis(kind: Kind, word: string, basis: string, text: string): never {
  if (word === '') notOfForm(kind, word, text);
  fail(basis === '' ? basisMissing : wrongBasis, 'text', quote(text), { words: `'${word}' after the unit` });
}
