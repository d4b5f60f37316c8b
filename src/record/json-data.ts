// What of a document can be carried into its report: JSON data, read from the caller's once, so that the report is not the
// caller's and does not change with it.
import { problem, type Problem } from '../basis/fault.js';
import { notJson, tooDeep, tooMuch } from '../basis/problem.js';
import { isPlain, isWellFormed } from './canonical.js';

/**
 * Most values that one document may hold: more than a text of the longest length that is read would in any round.
 *
 * @example
 * ```ts
 * MOST_VALUES; // => 20000000
 * ```
 */
export const MOST_VALUES = 20_000_000;

type Kind = 'JSON data' | 'not JSON data' | 'too deep' | 'too many values';

/**
 * Whether a value is data that JSON can carry, nested no deeper than said. A member that is undefined counts as one that
 * is not there.
 */
export function jsonData(value: unknown, deepest: number): Kind {
  let left = MOST_VALUES;
  const look = (one: unknown, level: number): Kind => {
    left -= 1;
    if (left < 0) return 'too many values';
    if (one === null || typeof one === 'boolean') return 'JSON data';
    if (typeof one === 'number') return Number.isFinite(one) ? 'JSON data' : 'not JSON data';
    if (typeof one === 'string') return isWellFormed(one) ? 'JSON data' : 'not JSON data';
    if (typeof one !== 'object') return 'not JSON data';
    if (level === deepest) return 'too deep'; // or data that contains itself
    if (Array.isArray(one)) {
      const { length } = one;
      // Not by its iterator, which may be its own.
      for (let i = 0; i < length; i += 1) {
        const found = look(one[i], level + 1);
        if (found !== 'JSON data') return found;
      }
      return 'JSON data';
    }
    if (!isPlain(one)) return 'not JSON data';
    for (const [key, inner] of Object.entries(one)) {
      if (inner === undefined) continue;
      const found = isWellFormed(key) ? look(inner, level + 1) : 'not JSON data';
      if (found !== 'JSON data') return found;
    }
    return 'JSON data';
  };
  return look(value, 0);
}

/** What is wrong with a value of any other kind. */
export function dataProblem(kind: Exclude<Kind, 'JSON data'>, deepest: number): Problem {
  switch (kind) {
    case 'too many values':
      return problem(tooMuch, '', `more than ${MOST_VALUES} values`, { most: String(MOST_VALUES), what: 'values' });
    case 'too deep':
      return problem(tooDeep, '', 'deeper nesting', { most: String(deepest) });
    case 'not JSON data':
      return problem(notJson, '', 'what JSON cannot carry');
  }
}

/** A copy of JSON data. -0 becomes 0, which is how JSON is written; a member that is undefined is left out. */
export function copied<T>(value: T): T;
export function copied(value: unknown): unknown {
  if (typeof value === 'number') return value === 0 ? 0 : value;
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return Array.from({ length: value.length }, (_, i) => copied<unknown>(value[i]));
  const copy: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value as Readonly<Record<string, unknown>>)) {
    if (inner === undefined) continue;
    if (key === '__proto__') define(copy, key, copied(inner));
    else copy[key] = copied(inner);
  }
  return copy;
}

/** Not by assignment: that would set the prototype. */
function define(object: object, key: string, value: unknown): void {
  Object.defineProperty(object, key, { value, enumerable: true, configurable: true, writable: true });
}
