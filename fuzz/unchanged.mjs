// What a call must leave as it was: its input, and everything that programs share.
import * as library from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';
import { types } from 'node:util';

const MOST = 20_000;

/** @param {unknown} value @returns {value is object} */
const hasFields = (value) => (typeof value === 'object' && value !== null) || typeof value === 'function';

/**
 * A field as it is, without running its getter.
 *
 * @typedef {{ readonly value?: unknown, readonly get?: unknown, readonly set?: unknown, readonly writable?: boolean,
 *   readonly enumerable?: boolean, readonly configurable?: boolean }} Field
 */
/** @param {object} object @param {PropertyKey} key */
const fieldOf = (object, key) => /** @type {Field | undefined} */ (Object.getOwnPropertyDescriptor(object, key));
/** @param {object} object */
const prototypeOf = (object) => /** @type {unknown} */ (Object.getPrototypeOf(object));

/**
 * Everything that can be seen of an input without running any of its code, in one list. Proxies count as one.
 *
 * @param {readonly unknown[]} values
 */
export function fingerprint(values) {
  /** @type {unknown[]} */
  const print = [];
  const seen = new Set();
  const open = [...values];
  while (open.length > 0 && print.length < MOST) {
    const value = open.pop();
    print.push(value);
    if (!hasFields(value) || seen.has(value) || types.isProxy(value) || isSettled(value)) continue;
    seen.add(value);
    print.push(prototypeOf(value), Object.isExtensible(value));
    if (Array.isArray(value) && value.length > MOST) continue;
    for (const key of Reflect.ownKeys(value)) {
      const own = fieldOf(value, key);
      print.push(key, own?.get, own?.set, own?.writable, own?.configurable);
      open.push(own?.value);
    }
  }
  return print;
}

/** @param {readonly unknown[]} a @param {readonly unknown[]} b */
export function same(a, b) {
  return a.length === b.length && a.every((one, i) => Object.is(one, b[i]));
}

/** What nobody can change, a quantity or a specification, and what is looked after as shared. @param {object} value */
function isSettled(value) {
  if (typeof value === 'function' || value === globalThis || value === Math || Object.hasOwn(value, '~kernel'))
    return true;
  return Object.isFrozen(value) && (Object.hasOwn(value, 'kind') || Object.hasOwn(value, 'message'));
}

/** @typedef {Map<object, Map<PropertyKey, Field>>} Shared */

// Everything that can be reached from the global object and from what the library exports, by own fields and prototypes.
const ROOTS = [
  globalThis,
  library,
  record,
  worked,
  Object.getPrototypeOf([][Symbol.iterator]()),
  Object.getPrototypeOf(''[Symbol.iterator]()),
  Object.getPrototypeOf(new Map().entries()),
  Object.getPrototypeOf(new Set().values()),
  Object.getPrototypeOf(/a/[Symbol.matchAll]('')),
  Object.getPrototypeOf(function* () {
    yield 1;
  }),
  Object.getPrototypeOf(async () => {
    await Promise.resolve();
  }),
];

// What changes by itself: Node makes some of its globals when they are first read, and the engine notes the last match.
const APART = new Set([
  'process',
  'performance',
  'console',
  'crypto',
  'navigator',
  'localStorage',
  'sessionStorage',
  'webkitStorageInfo',
]);

/** What the programs of this process share, as it is now. @returns {Shared} */
export function shared() {
  /** @type {Shared} */
  const found = new Map();
  /** @type {[value: unknown, depth: number][]} */
  const open = ROOTS.map((root) => [root, 0]);
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [value, depth] = next;
    if (!hasFields(value) || found.has(value) || types.isProxy(value)) continue;
    if (Object.hasOwn(value, '_zod')) continue; // schemas of zod work out some of their fields when they are first used
    /** @type {Map<PropertyKey, Field>} */
    const own = new Map();
    found.set(value, own);
    for (const key of Reflect.ownKeys(value)) {
      if (value === globalThis && APART.has(String(key))) continue;
      const descriptor = fieldOf(value, key);
      if (descriptor === undefined || (value === RegExp && descriptor.get !== undefined)) continue;
      own.set(key, descriptor);
      if (depth < 4) open.push([descriptor.value, depth + 1], [descriptor.get, depth + 1]);
    }
    if (depth < 4) open.push([prototypeOf(value), depth + 1]);
    own.set('(prototype)', { value: prototypeOf(value) });
    own.set('(extensible)', { value: Object.isExtensible(value) });
  }
  return found;
}

/** Where two states differ, in words; undefined where they do not. @param {Shared} before @param {Shared} after */
export function difference(before, after) {
  for (const [object, own] of before) {
    const now = after.get(object);
    if (now === undefined) continue; // no longer reachable: said by the field that led there
    for (const key of new Set([...own.keys(), ...now.keys()])) {
      const [one, other] = [own.get(key), now.get(key)];
      if (one !== undefined && other !== undefined && sameField(one, other)) continue;
      return `${String(key)} of ${nameOf(object)}`;
    }
  }
  return undefined;
}

/** @param {Field} a @param {Field} b */
function sameField(a, b) {
  return (
    Object.is(a.value, b.value) &&
    a.get === b.get &&
    a.set === b.set &&
    a.writable === b.writable &&
    a.enumerable === b.enumerable &&
    a.configurable === b.configurable
  );
}

/** @param {object} object */
function nameOf(object) {
  if (object === globalThis) return 'globalThis';
  const name = typeof object === 'function' ? object.name : object.constructor.name;
  return `${typeof object === 'function' ? 'the function' : 'an object of'} ${name}`;
}
