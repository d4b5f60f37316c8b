// What callers hand in as plain data is read once, part by part, and is never trusted to be what its type says: what is
// checked is what is used.
import { indexed } from '../basis/indexed.js';
import { fail, quote } from '../basis/fault.js';
import { tooDeep, tooMuch, unknownWord, wrongKind } from '../basis/problem.js';

/** Reads one part of what is given; `left` is counted down with every part. */
export type Take<T> = (given: unknown, path: string, left: Left) => T;

/** How much may still be read, and how deep it is. */
export interface Left {
  parts: number;
  depth: number;
}

/** More parts than any round makes; a list that says to be endless ends here. */
const MOST_PARTS = 5_000_000;
const DEEPEST = 100;

/** Reads all of it. */
export function taken<T>(take: Take<T>, given: unknown, path: string): T {
  return take(given, path, { parts: MOST_PARTS, depth: DEEPEST });
}

export function refuse(kind: string, given: unknown, path: string): never {
  return fail(wrongKind, path, quote(given), { kind, maker: 'what the functions of isochore/worked give' });
}

export const text: Take<string> = (given, path, left) => {
  count(left, path);
  return typeof given === 'string' ? given : refuse('a text', given, path);
};

/** A text that says something. */
export const word: Take<string> = (given, path, left) => {
  const own = text(given, path, left);
  return own === '' ? refuse('a text that is not empty', given, path) : own;
};

export function oneOf<const T extends string | number>(...words: readonly T[]): Take<T> {
  return (given, path, left) => {
    count(left, path);
    return words.find((one) => one === given) ?? fail(unknownWord, path, quote(given), { words: words.join(' or ') });
  };
}

export function listOf<T>(take: Take<T>): Take<readonly T[]> {
  return (given, path, left) => {
    if (!Array.isArray(given)) return refuse('a list', given, path);
    const list: readonly unknown[] = given;
    const { length } = list;
    if (length > left.parts) fail(tooMuch, path, `${length} entries`, { most: String(MOST_PARTS), what: 'parts' });
    // By index: the list may be one whose iterator never ends.
    return indexed(length, (i) => deeper(take, list[i], `${path}[${i}]`, left));
  };
}

type Takes<T> = { readonly [K in keyof T]-?: Take<T[K]> };

/** An object with these fields; one that may be left out, and is, stays out. */
export function fieldsOf<T extends object>(kind: string, takes: Takes<T>): Take<T> {
  return (given, path, left) => {
    if (typeof given !== 'object' || given === null || Array.isArray(given)) return refuse(kind, given, path);
    const own = given as Readonly<Record<string, unknown>>;
    const fields = Object.entries<Take<unknown>>(takes).map(
      ([name, take]) => [name, deeper(take, own[name], path === '' ? name : `${path}.${name}`, left)] as const,
    );
    return Object.fromEntries(fields.filter(([, value]) => value !== undefined)) as T;
  };
}

/** What may be left out. */
export function orNot<T>(take: Take<T>): Take<T | undefined> {
  return (given, path, left) => (given === undefined ? undefined : take(given, path, left));
}

/** By the word in its field `kind`. */
export function byKind<T extends { readonly kind: string }>(
  what: string,
  takes: { readonly [K in T['kind']]: Take<Extract<T, { readonly kind: K }>> },
): Take<T> {
  return (given, path, left) => {
    if (typeof given !== 'object' || given === null) return refuse(what, given, path);
    const { kind, ...rest } = given as Readonly<Record<string, unknown>>;
    const take = typeof kind === 'string' && Object.hasOwn(takes, kind) ? takes[kind as T['kind']] : undefined;
    if (take === undefined)
      return fail(unknownWord, `${path}.kind`, quote(kind), { words: Object.keys(takes).join(' or ') });
    return (take as Take<T>)({ ...rest, kind }, path, left);
  };
}

function deeper<T>(take: Take<T>, given: unknown, path: string, left: Left): T {
  count(left, path);
  if (left.depth === 0) return fail(tooDeep, path, 'deeper nesting', { most: String(DEEPEST) });
  left.depth -= 1;
  const value = take(given, path, left);
  left.depth += 1;
  return value;
}

function count(left: Left, path: string): void {
  left.parts -= 1;
  if (left.parts < 0) fail(tooMuch, path, 'more parts', { most: String(MOST_PARTS), what: 'parts' });
}
