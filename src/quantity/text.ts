// The only module that imports decimal.js: text from outside may carry more digits than a double holds.
import { Decimal } from 'decimal.js';
import { fail, quote } from '../basis/fault.js';
import type { Scale } from './decimal.js';
import type { Kind, QuantityOf } from './kind.js';
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
  if (typeof text !== 'string' || text.length > LONGEST_DECIMAL || !DECIMAL.test(text)) notADecimal(text, path);
  const value = new Exact(text);
  const si = value.plus(new Exact(scale.zero).div(100)).times(scale.num).div(scale.den).toNumber();
  // A double of infinity, or of zero for a value that is not zero, would be another value than the text says.
  if (!Number.isFinite(si) || (Number(text) === 0 && !value.isZero())) notADecimal(text, path);
  return si;
}

function notADecimal(text: string, path: string): never {
  fail({
    code: 'not a decimal',
    path,
    found: quote(text),
    wanted: `a decimal number such as 141.3, of at most ${LONGEST_DECIMAL} characters`,
    remedy:
      typeof text === 'string' && text.includes(',')
        ? 'write the decimal sign as a point; thousands are not grouped'
        : 'digits, optionally a sign, a decimal point with digits on both sides, and an exponent',
  });
}

/**
 * A quantity from a text with value, unit and basis, as {@link write} makes it: `141.3 bar gauge`, `1008 hPa absolute`,
 * `2 bar difference`, `40 °C`, `5 L`. Nothing is guessed: a pressure without its basis is refused.
 *
 * The value is rounded once, to the nearest double in SI, however many digits it has.
 *
 * @throws {@link Fault} `not a decimal`, `unknown unit`, `basis missing`, `wrong kind`; otherwise as the function that
 * makes the kind
 * @example
 * ```ts
 * read('gauge pressure', '141.3 bar gauge'); // => { kind: 'gauge pressure', pascals: 14130000 }
 * ```
 */
export function read<K extends Kind>(kind: K, text: string): QuantityOf<K> {
  if (!Object.hasOwn(FORM, kind)) unknownKind(kind);
  const { units, word, of } = FORM[kind];
  const [value = '', ...words] = typeof text === 'string' ? text.trim().split(/\s+/) : [];
  // One unit is spelled with a space: US gal.
  const length = Object.hasOwn(units, words.slice(0, 2).join(' ')) ? 2 : 1;
  const unit = words.slice(0, length).join(' ');
  const [basis = '', ...more] = words.slice(length);
  if (typeof text !== 'string' || more.length > 0) notReadable(kind, word, text);
  if (!DECIMAL.test(value)) notADecimal(value, 'text');
  const si = textToSI(value, scaleOf<string>(units, unit, 'text'), 'text');
  if (basis !== word) wrongBasis(kind, word, basis, text);
  return of(si, 'text', Number(value), unit);
}

function unknownKind(kind: string): never {
  fail({
    code: 'unknown word',
    path: 'kind',
    found: quote(kind),
    wanted: `one of ${Object.keys(FORM).join(', ')}`,
    remedy: 'name the kind of quantity that the text should hold',
  });
}

function notReadable(kind: string, word: string, text: unknown): never {
  fail({
    code: 'not a decimal',
    path: 'text',
    found: quote(text),
    wanted: `value, unit${word === '' ? '' : ` and the word '${word}'`}, for a ${kind}`,
    remedy: 'separate them by spaces',
  });
}

function wrongBasis(kind: string, word: string, basis: string, text: string): never {
  fail({
    code: basis === '' ? 'basis missing' : 'wrong kind',
    path: 'text',
    found: quote(text),
    wanted: word === '' ? `nothing after the unit, for a ${kind}` : `the word '${word}' after the unit, for a ${kind}`,
    remedy: 'say the basis that the instrument or the document states; it is never assumed',
  });
}
