import { cut, fail, quote } from '../basis/fault.js';
import { startSha256 } from './sha256.js';

/** Deepest nesting that canonical JSON is written of. */
const DEEPEST_WRITTEN = 500;
/** Characters written before a piece is handed on. */
const PIECE = 60_000;
/** A report has about a hundred different keys; other data may have any number. */
const MOST_KEYS = 1000;

/**
 * The canonical text of JSON data (RFC 8785, JSON Canonicalization Scheme): no spaces, members sorted by the UTF-16 code
 * units of their names, numbers and texts as ECMAScript writes them. Equal data has one canonical text.
 *
 * @param json finite numbers, well-formed texts, booleans, null, arrays and plain objects, to 500 levels; -0 is written `0`
 * @throws {@link Fault} `not JSON` for anything else in it: undefined, NaN, a text with half a surrogate pair (RFC 8785
 * asks for that), an instance; `too deep`
 * @example
 * ```ts
 * canonicalJson({ unit: 'bar', basis: 'gauge', value: 1.41e2 }); // => '{"basis":"gauge","unit":"bar","value":141}'
 * ```
 */
export function canonicalJson(json: unknown): string {
  const pieces: string[] = [];
  write(json, (piece) => pieces.push(piece));
  return pieces.join('');
}

/**
 * SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 lower-case hexadecimal digits.
 *
 * A digest shows that a text was altered by accident, or by somebody who did not mend the digest too. It is no signature:
 * anybody can compute it.
 *
 * @throws {@link Fault} `not JSON` for what is no text, or holds half a surrogate pair, which UTF-8 cannot write
 * @example
 * ```ts
 * sha256('abc'); // => 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
 * ```
 */
export function sha256(text: string): string {
  if (typeof text !== 'string' || !isWellFormed(text)) refuse(quote(text), 'a well-formed text');
  const hash = startSha256();
  hash.take(text);
  return hash.hex();
}

/** SHA-256 of the canonical text of JSON data, without ever holding all of that text. */
export function canonicalSha256(json: unknown): string {
  const hash = startSha256();
  write(json, hash.take);
  return hash.hex();
}

/** Whether every surrogate in a text has its other half. */
export function isWellFormed(text: string): boolean {
  return !/[\uD800-\uDFFF]/u.test(text);
}

/** A text with every half of a surrogate pair replaced by the replacement character. */
export function wellFormed(text: string): string {
  return text.replace(/[\uD800-\uDFFF]/gu, '\uFFFD');
}

/** Whether a value is an object as JSON has them: no instance of anything that prints in its own way. */
export function isPlain(value: object): boolean {
  return Object.prototype.toString.call(value) === '[object Object]'; // of whichever realm
}

function write(json: unknown, take: (piece: string) => void): void {
  let piece = '';
  const keys = new Map<string, string>();
  const keyOf = (key: string): string => {
    const known = keys.get(key);
    if (known !== undefined) return known;
    const written = `${textOf(key)}:`;
    if (keys.size < MOST_KEYS) keys.set(key, written);
    return written;
  };
  const add = (value: unknown, level: number): void => {
    if (typeof value === 'string') piece += textOf(value);
    else if (typeof value === 'number') piece += numberOf(value);
    else if (typeof value === 'boolean' || value === null) piece += String(value);
    else if (typeof value !== 'object') refuse(quote(value));
    else if (level === DEEPEST_WRITTEN) tooDeep();
    else if (Array.isArray(value)) addList(value, level + 1);
    else if (isPlain(value)) addMembers(value as Readonly<Record<string, unknown>>, level + 1);
    else refuse('an instance');
    if (piece.length < PIECE) return;
    take(piece);
    piece = '';
  };
  const addList = (list: readonly unknown[], level: number): void => {
    piece += '[';
    // Not forEach, which would pass over holes.
    for (let i = 0; i < list.length; i += 1) {
      if (i > 0) piece += ',';
      add(list[i], level);
    }
    piece += ']';
  };
  const addMembers = (members: Readonly<Record<string, unknown>>, level: number): void => {
    let lead = '{';
    for (const key of Object.keys(members).sort()) {
      piece += lead + keyOf(key);
      lead = ',';
      add(members[key], level);
    }
    piece += lead === '{' ? '{}' : '}';
  };
  add(json, 0);
  take(piece);
}

// RFC 8785 takes over how ECMAScript writes texts and numbers.
function textOf(text: string): string {
  const written = JSON.stringify(text);
  // It escapes half a surrogate pair: only what holds such an escape, or the same letters, needs a closer look.
  if (written.includes('\\ud') && !isWellFormed(text)) refuse(cut(wellFormed(text)));
  return written;
}

function numberOf(value: number): string {
  if (!Number.isFinite(value)) refuse(String(value));
  return String(value);
}

function refuse(found: string, wanted = 'JSON data: finite numbers, well-formed texts, true, false, null'): never {
  fail({ code: 'not JSON', path: '', found, wanted, remedy: 'give data as JSON.parse gives it' });
}

function tooDeep(): never {
  const wanted = `at most ${DEEPEST_WRITTEN} levels`;
  fail({ code: 'too deep', path: '', found: 'deeper nesting', wanted, remedy: 'check for data that contains itself' });
}
