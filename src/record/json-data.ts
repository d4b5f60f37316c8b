// What is handed in as JSON data, read from the caller's once: what is checked is then what is used, and a report is not the
// caller's and does not change with it.
import { problem, type Problem } from '../basis/fault.js';
import { notJson, tooDeep, tooMuch } from '../basis/problem.js';
import { isWellFormed } from '../basis/well-formed.js';
import { isPlain } from './canonical.js';
import { pathOf } from './problems.js';

/**
 * Most values that one document may hold: more than a text of the longest length that is read would in any round.
 *
 * @example
 * ```ts
 * MOST_VALUES; // => 20000000
 * ```
 */
export const MOST_VALUES = 20_000_000;

/** Most of them that JSON cannot carry: a list of a million holes is made in a moment, and each would be a problem. */
const MOST_FOREIGN = 20_000;
/** From so many values on, an object is known again: one that stands in twenty places of another may stand for millions. */
const WORTH_KNOWING = 1000;

/** An object that was read before. */
interface Known {
  readonly copy: object;
  readonly values: number;
  /** Levels from it to the deepest in it. */
  readonly levels: number;
}

/** What was read, and why not all of it is JSON data. The path of the problem is that of its first place, `''` for all. */
export type DataRead =
  | { readonly read: 'JSON data'; readonly data: unknown }
  /** Members and entries that JSON cannot carry stand in it as they were given; instances as plain objects. */
  | { readonly read: 'not all JSON data'; readonly data: unknown; readonly problem: Problem }
  /** More than is read. */
  | { readonly read: 'nothing'; readonly problem: Problem };

/**
 * Reads data that JSON can carry, nested no deeper than said, into a copy: each member and each length once, as another
 * look may find something else. As JSON.stringify has it, a member that is undefined or whose key is no text counts as one
 * that is not there, and -0 as 0.
 */
export function readData(given: unknown, deepest: number): DataRead {
  const keys: PropertyKey[] = [];
  const known = new Map<object, Known>();
  let valuesLeft = MOST_VALUES;
  let foreignLeft = MOST_FOREIGN;
  let reached = 0;
  let refused: Problem | undefined;
  let isBeyond = false;

  const beyond = (found: Problem): void => {
    isBeyond = true;
    refused = found;
  };
  const count = (values: number): void => {
    valuesLeft -= values;
    if (valuesLeft < 0) beyond(tooManyValues());
  };
  const descend = (levels: number): void => {
    reached = Math.max(reached, keys.length + levels);
    if (reached > deepest) beyond(problem(tooDeep, '', 'deeper nesting', { most: String(deepest) })); // or it holds itself
  };
  const foreign = (value: unknown): unknown => {
    refused ??= problem(notJson, pathOf(keys), 'what JSON cannot carry');
    foreignLeft -= 1;
    if (foreignLeft < 0) beyond(refused);
    return value;
  };

  const read = (value: unknown): unknown => {
    if (typeof value === 'object' && value !== null) return readAgain(value) ?? readFirst(value);
    count(1);
    if (value === null || typeof value === 'boolean') return value;
    if (typeof value === 'number') return Number.isFinite(value) ? value + 0 : foreign(value);
    return typeof value === 'string' && isWellFormed(value) ? value : foreign(value);
  };
  const readAgain = (object: object): object | undefined => {
    const before = known.get(object);
    if (before === undefined) return undefined;
    count(before.values);
    descend(before.levels);
    return before.copy;
  };
  const readFirst = (object: object): object => {
    const [leftBefore, reachedBefore] = [valuesLeft, reached];
    reached = 0;
    count(1);
    descend(1);
    const copy = Array.isArray(object) ? readList(object) : readMembers(object);
    const values = leftBefore - valuesLeft;
    if (values >= WORTH_KNOWING) known.set(object, { copy, values, levels: reached - keys.length });
    reached = Math.max(reached, reachedBefore);
    return copy;
  };
  const readList = (list: readonly unknown[]): unknown[] => {
    const copy: unknown[] = [];
    const { length } = list;
    if (length > valuesLeft) count(length);
    // Not by its iterator, which may be its own.
    for (let i = 0; i < length && !isBeyond; i += 1) {
      keys.push(i);
      copy.push(read(list[i]));
      keys.pop();
    }
    return copy;
  };
  const readMembers = (object: object): object => {
    const copy: Record<string, unknown> = {};
    if (!isPlain(object)) foreign(object);
    for (const [key, value] of Object.entries(object) as [string, unknown][]) {
      if (isBeyond) break;
      if (value === undefined) continue;
      keys.push(key);
      if (!isWellFormed(key)) foreign(key);
      const own = read(value);
      // eslint-disable-next-line no-restricted-syntax -- what the copy inherits is what is asked here
      if (key in copy) define(copy, key, own);
      else copy[key] = own;
      keys.pop();
    }
    return copy;
  };

  const data = read(given);
  if (refused === undefined) return { read: 'JSON data', data };
  return isBeyond ? { read: 'nothing', problem: refused } : { read: 'not all JSON data', data, problem: refused };
}

/** What is wrong with data that holds more values than are read. */
function tooManyValues(): Problem {
  return problem(tooMuch, '', `more than ${MOST_VALUES} values`, { most: String(MOST_VALUES), what: 'values' });
}

/** Not by assignment, which would go to what the object inherits under that name: its prototype, or a program's accessor. */
function define(object: object, key: string, value: unknown): void {
  // Without a prototype, or what all objects inherit would be a part of how it is defined.
  const member = { __proto__: null, value, enumerable: true, configurable: true, writable: true };
  Object.defineProperty(object, key, member as PropertyDescriptor);
}
