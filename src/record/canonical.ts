import { cut, fail, quote } from '../basis/fault.js';
import { notAText, notJson, tooDeep } from '../basis/problem.js';
import { isWellFormed, wellFormed } from '../basis/well-formed.js';
import { startSha256 } from './sha256.js';

/** Deepest nesting that canonical JSON is written of. */
const DEEPEST_WRITTEN = 500;
/** Characters that are gathered before a piece of text is put aside. */
const PIECE = 60_000;
/** Keys, orders of keys, and words that are kept: a report has some hundreds of each, other data may have any number. */
const MOST_KEPT = 1000;

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
  let piece = '';
  write(json, (text) => {
    piece += text;
    if (piece.length < PIECE) return;
    pieces.push(piece);
    piece = '';
  });
  return pieces.join('') + piece;
}

/**
 * SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 lower-case hexadecimal digits.
 *
 * A digest shows that a text was altered by accident, or by somebody who did not mend the digest too. It is no signature:
 * anybody can compute it.
 *
 * @throws {@link Fault} `not a text` for what is none, or holds half a surrogate pair, which UTF-8 cannot write
 * @example
 * ```ts
 * sha256('abc'); // => 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
 * ```
 */
export function sha256(text: string): string {
  if (typeof text !== 'string' || !isWellFormed(text)) fail(notAText, '', quote(text));
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

/** Whether a value is an object as JSON has them: no instance of anything that prints in its own way. */
export function isPlain(value: object): boolean {
  const tag = Object.prototype.toString.call(value); // of whichever realm
  // Where all objects inherit a tag, a plain one is what is tagged as those that have none of their own.
  return tag === '[object Object]' || tag === Object.prototype.toString.call({});
}

/** A member of an object: the place of its value among the values, and what is written before it. */
interface Member {
  readonly index: number;
  readonly lead: string;
}

/** Of objects whose keys began alike: the members if there are no more keys, and what may come next, by its key. */
interface Order {
  members: readonly Member[] | undefined;
  readonly next: Map<string, Order>;
}

/** Hands the canonical text on in small pieces, none of which ends between the two halves of a surrogate pair. */
function write(json: unknown, put: (piece: string) => void): void {
  const texts = new Map<string, string>();
  const start: Order = { members: undefined, next: new Map() };
  let orders = 0;
  const membersOf = (keys: readonly string[]): readonly Member[] => {
    let order = start;
    for (const key of keys) {
      let next = order.next.get(key);
      if (next === undefined) {
        if (orders === MOST_KEPT) return sorted(keys);
        orders += 1;
        next = { members: undefined, next: new Map() };
        order.next.set(key, next);
      }
      order = next;
    }
    return (order.members ??= sorted(keys));
  };
  const addText = (text: string): void => {
    const known = texts.get(text);
    const written = known ?? textOf(text);
    if (known === undefined && texts.size < MOST_KEPT) texts.set(text, written);
    put(written);
  };
  const add = (value: unknown, level: number): void => {
    if (typeof value === 'string') addText(value);
    else if (typeof value === 'number') put(numberOf(value));
    else if (typeof value === 'boolean' || value === null) put(String(value));
    else if (typeof value !== 'object') refuse(quote(value));
    else if (level === DEEPEST_WRITTEN) fail(tooDeep, '', 'deeper nesting', { most: String(DEEPEST_WRITTEN) });
    else if (Array.isArray(value)) addList(value, level + 1);
    else if (isPlain(value)) addMembers(value, level + 1);
    else refuse('an instance');
  };
  const addList = (list: readonly unknown[], level: number): void => {
    put('[');
    // Not forEach, which would pass over holes.
    for (let i = 0; i < list.length; i += 1) {
      if (i > 0) put(',');
      add(list[i], level);
    }
    put(']');
  };
  const addMembers = (object: object, level: number): void => {
    const members = membersOf(Object.keys(object));
    const values: readonly unknown[] = Object.values(object);
    for (const { index, lead } of members) {
      put(lead);
      add(values[index], level);
    }
    put(members.length === 0 ? '{}' : '}');
  };
  add(json, 0);
}

/** Members with these keys, in the order of the UTF-16 code units of the keys. */
function sorted(keys: readonly string[]): readonly Member[] {
  return keys
    .map((key, index) => ({ key, index }))
    .sort((one, other) => (one.key < other.key ? -1 : 1)) // no two are alike
    .map(({ key, index }, i) => ({ index, lead: `${i === 0 ? '{' : ','}${textOf(key)}:` }));
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

function refuse(found: string): never {
  fail(notJson, '', found);
}
