// An input as a recipe: plain data from which the live input is built anew for every call. So an input that makes its
// getter throw, or whose values change between two reads, can be generated, made smaller and printed like any other.
import * as library from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';
import { createRequire } from 'node:module';
import { createContext, runInContext } from 'node:vm';
import { wrapped } from './hostile.mjs';

/**
 * @typedef {{ readonly t: 'value', readonly v: unknown }
 *   | { readonly t: 'list', readonly of: readonly Recipe[] }
 *   | { readonly t: 'fields', readonly of: readonly Field[] }
 *   | { readonly t: 'call', readonly f: string, readonly of: readonly Recipe[] }
 *   | { readonly t: 'stock', readonly name: string }
 *   | { readonly t: 'wrap', readonly how: string, readonly of: Recipe }
 *   | { readonly t: 'deep', readonly how: 'list' | 'fields', readonly n: number, readonly of: Recipe }
 *   | { readonly t: 'many', readonly n: number, readonly of: Recipe }
 *   | { readonly t: 'sparse', readonly n: number }
 *   | { readonly t: 'long', readonly n: number, readonly of: string }
 *   | { readonly t: 'text', readonly of: Recipe, readonly edits: readonly Edit[], readonly encoding?: string }} Recipe
 */
/** @typedef {readonly [key: string, value: Recipe]} Field */
/**
 * A change of a text: at a place, so many characters out, these in.
 *
 * @typedef {{ readonly at: number, readonly out: number, readonly in: string }} Edit
 */

/** What a live input has been doing. */
export class Live {
  /** What its own code has thrown. @type {Set<unknown>} */
  thrown = new Set();
  /** Whether there is a proxy in it: the engine itself throws a TypeError for one that is revoked, or that lies. */
  hasProxy = false;
  /** Whether a proxy in it says that it is a list, and has not what lists have. */
  hasLyingList = false;
  /** Whether all objects inherit a field of the caller's. */
  isPolluted = false;
  /** Whether all objects inherit a getter of the caller's. */
  hasAccessor = false;
  /** Steps that it was shown as a trace. @type {unknown[]} */
  steps = [];

  /** Throws an error of the caller's own. @returns {never} */
  fail() {
    const error = new Error("the caller's own");
    this.thrown.add(error);
    throw error;
  }
}

/** What TypeScript takes to be anything, as something to be looked at first. @param {unknown} value */
export function any(value) {
  return value;
}

/** @typedef {(...values: unknown[]) => unknown} Callable */

const OTHER = /** @type {typeof library} */ (any(createRequire(import.meta.url)('isochore')));
const realm = /** @type {object} */ (any(createContext({})));

/** Parses JSON into objects of another realm. */
export const parseElsewhere = /** @type {(text: string) => unknown} */ (any(runInContext('JSON.parse', realm)));

/** What stands before the name of a function that is not the core's own. @type {Readonly<Record<string, object>>} */
const OWNERS = { other: OTHER, record, worked };

/** The functions by name; `other.` ones are of the CommonJS build, beside the ESM one that is called. @param {string} name */
export function functionOf(name) {
  const own = OWNERS[name.replace(/\..*$/, '')] ?? library;
  return /** @type {Callable} */ (any(Reflect.get(own, name.replace(/^.*\./, ''))));
}

/** A derivation of a state. @param {import('isochore').GasModel} gas */
function derivationBy(gas) {
  const pressure = library.absolute(150, 'bar');
  const given = { gas, at: { pressure, temperature: library.temperature(40, '°C') } };
  return worked.derivationOf(given, ({ gas, at }, trace) => library.stateAt(gas, at, trace));
}

/** Values that no notation of data has. @type {Readonly<Record<string, (live: Live) => unknown>>} */
export const STOCK = {
  'Symbol()': () => Symbol('one'),
  'Symbol.iterator': () => Symbol.iterator,
  '1n': () => 1n,
  '10n ** 400n': () => 10n ** 400n,
  '() => 1': () => () => 1,
  'a class': () => Live,
  'new Date(0)': () => new Date(0),
  'new Date(NaN)': () => new Date(Number.NaN),
  '/a/': () => /a/,
  'new Map()': () => new Map([['value', 1]]),
  'new Set()': () => new Set(['value']),
  'new WeakMap()': () => new WeakMap(),
  'Promise.resolve()': () => Promise.resolve(1),
  'new Error()': () => new Error('an error'),
  'new Number(1)': () => any(Object(1)),
  "new String('bar')": () => any(Object('bar')),
  'Object(1n)': () => any(Object(1n)),
  'Object(Symbol())': () => any(Object(Symbol('one'))),
  'new Float64Array([1, NaN])': () => new Float64Array([1, Number.NaN]),
  'new Uint8Array(3)': () => new Uint8Array(3),
  'new ArrayBuffer(8)': () => new ArrayBuffer(8),
  'new DataView()': () => new DataView(new ArrayBuffer(8)),
  'Object.create(null)': () => any(Object.create(null)),
  'Array(3)': () => any(Array(3)),
  arguments: () =>
    (function () {
      return arguments;
    })(),
  'an array of another realm': () => parseElsewhere('[1, {"value": 1}]'),
  'an object of another realm': () => parseElsewhere('{"value": 140, "unit": "bar", "basis": "gauge"}'),
  'a Date of another realm': () => any(runInContext('new Date(0)', realm)),
  'a function of another realm': () => any(runInContext('(() => 1)', realm)),
  'an error of another realm': () => any(runInContext('new Error("x")', realm)),
  globalThis: () => any(Object.create(globalThis)),
  Math: () => Math,
  Object: () => Object,
  'Object.prototype': () => Object.prototype,
  'a generator': () =>
    (function* () {
      yield 1;
    })(),
  'an object whose toString throws': (live) => ({ toString: () => live.fail(), valueOf: () => live.fail() }),
  'an object whose toJSON throws': (live) => ({ toJSON: () => live.fail() }),
  'an object whose toPrimitive throws': (live) => ({ [Symbol.toPrimitive]: () => live.fail() }),
  'an object whose toStringTag throws': (live) => ({
    get [Symbol.toStringTag]() {
      return live.fail();
    },
  }),
  'an object tagged Object': () => ({ [Symbol.toStringTag]: 'Object', value: 1 }),
  'an array whose iterator throws': (live) => Object.assign([1, 2], { [Symbol.iterator]: () => live.fail() }),
  'an array whose iterator is endless': () =>
    Object.assign([1, 2], { [Symbol.iterator]: () => ({ next: () => ({ done: false, value: 1 }) }) }),
  'an array whose map lies': () => Object.assign([1, 2], { map: () => 'mapped', forEach: () => 1, length: 2 }),
  'an array with fields': () => Object.assign([1, 2], { value: 1, unit: 'bar' }),
  'a revoked proxy': (live) => {
    live.hasProxy = true;
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    return proxy;
  },
  'a revoked proxy of an array': (live) => {
    live.hasProxy = true;
    const { proxy, revoke } = Proxy.revocable([], {});
    revoke();
    return proxy;
  },
  'a trace': (live) => (/** @type {unknown} */ step) => {
    live.steps.push(step);
  },
  'a trace that throws': (live) => () => live.fail(),
  nitrogen: () => library.nitrogen,
  idealNitrogen: () => library.idealNitrogen,
  cubicNitrogen: () => library.cubicNitrogen,
  'nitrogen of the other build': () => OTHER.nitrogen,
  standardAtmosphere: () => library.standardAtmosphere,
  english: () => worked.english,
  german: () => worked.german,
  'a check to be derived':
    () =>
    (
      /** @type {{ spec: import('isochore').Specification; reading: import('isochore').Reading }} */ given,
      /** @type {import('isochore').Trace | undefined} */ trace,
    ) =>
      library.check(given.spec, given.reading, trace),
  'a choice of steps':
    () =>
    (/** @type {import('isochore/worked').DerivedStep} */ { about }) =>
      about === 'target',
  'a derivation': () => derivationBy(library.nitrogen),
  'a derivation by the ideal gas': () => derivationBy(library.idealNitrogen),
  normalConditions: () => library.normalConditions,
  OBJECTIVES: () => library.OBJECTIVES,
  reference60F: () => library.reference60F,
  'a Fault': () => {
    try {
      return library.gauge(Number.NaN, 'bar');
    } catch (error) {
      return error;
    }
  },
  'a Fault of the other build': () => {
    try {
      return OTHER.gauge(Number.NaN, 'bar');
    } catch (error) {
      return error;
    }
  },
};

/** The live value of a recipe. @param {Recipe} recipe @param {Live} live @returns {unknown} */
export function build(recipe, live) {
  switch (recipe.t) {
    case 'value':
      return recipe.v;
    case 'list':
      return recipe.of.map((one) => build(one, live));
    case 'fields': {
      /** @type {object} */
      const object = {};
      for (const [key, value] of recipe.of) define(object, key, build(value, live));
      return object;
    }
    case 'call':
      try {
        return functionOf(recipe.f)(...recipe.of.map((one) => build(one, live)));
      } catch {
        return undefined; // changed so that there is no such quantity
      }
    case 'stock':
      return STOCK[recipe.name]?.(live);
    case 'wrap':
      return wrapped(recipe.how, build(recipe.of, live), live);
    case 'deep': {
      let inner = build(recipe.of, live);
      for (let i = 0; i < recipe.n; i += 1) inner = recipe.how === 'list' ? [inner] : { value: inner };
      return inner;
    }
    case 'many':
      return Array.from({ length: recipe.n }, () => build(recipe.of, live));
    case 'sparse':
      return any(Array(recipe.n));
    case 'long':
      return recipe.of.repeat(recipe.n);
    case 'text':
      return encoded(edited(textOf(build(recipe.of, live)), recipe.edits), recipe.encoding);
  }
}

/** A field of its own, whatever its name: assignment of `__proto__` would set the prototype. @param {object} object @param {string} key @param {unknown} value */
export function define(object, key, value) {
  // Without a prototype: what all objects inherit would be part of it.
  const field = { __proto__: null, value, enumerable: true, configurable: true, writable: true };
  Object.defineProperty(object, key, /** @type {PropertyDescriptor} */ (/** @type {unknown} */ (field)));
}

/** @param {unknown} value */
function textOf(value) {
  try {
    return JSON.stringify([value]).slice(1, -1); // undefined becomes null
  } catch {
    return '';
  }
}

/** @param {string} text @param {readonly Edit[]} edits */
function edited(text, edits) {
  return edits.reduce((now, edit) => {
    const at = edit.at % (now.length + 1);
    return now.slice(0, at) + edit.in + now.slice(at + edit.out);
  }, text);
}

/** What a program makes of a text whose bytes it reads in another encoding than they are written in. @type {Readonly<Record<string, (text: string) => string>>} */
const ENCODINGS = {
  'UTF-8 read as Latin-1': (text) => Buffer.from(text, 'utf8').toString('latin1'),
  'UTF-16 read as UTF-8': (text) => Buffer.from(text, 'utf16le').toString('utf8'),
  'UTF-8 read as UTF-16': (text) => Buffer.from(text, 'utf8').toString('utf16le'),
  'Latin-1 read as UTF-8': (text) => Buffer.from(text, 'latin1').toString('utf8'),
  'a byte order mark before it': (text) => `\ufeff${text}`,
  'two byte order marks before it': (text) => `\ufeff\ufeff${text}`,
  'a byte order mark read as Latin-1': (text) => `\u00ef\u00bb\u00bf${text}`,
};

/** @type {readonly string[]} */
export const ENCODED = Object.keys(ENCODINGS);

/** @param {string} text @param {string | undefined} encoding */
function encoded(text, encoding) {
  return encoding === undefined ? text : (ENCODINGS[encoding]?.(text) ?? text);
}

/** Recipe of some JSON data. @param {unknown} json @returns {Recipe} */
export function fromJson(json) {
  if (Array.isArray(json)) return { t: 'list', of: json.map(fromJson) };
  if (typeof json !== 'object' || json === null) return { t: 'value', v: json };
  return { t: 'fields', of: Object.entries(json).map(([key, value]) => [key, fromJson(value)]) };
}

/** How many values and characters an input has: what its time may grow with. @param {Recipe} recipe @returns {number} */
export function sizeOf(recipe) {
  switch (recipe.t) {
    case 'value':
      return typeof recipe.v === 'string' ? 1 + recipe.v.length : 1;
    case 'list':
    case 'call':
      return recipe.of.reduce((sum, one) => sum + sizeOf(one), 1);
    case 'fields':
      return recipe.of.reduce((sum, [key, one]) => sum + key.length + sizeOf(one), 1);
    case 'deep':
      return recipe.n + sizeOf(recipe.of);
    case 'many':
      return 1 + recipe.n * sizeOf(recipe.of);
    case 'long':
      return 1 + recipe.n * recipe.of.length;
    case 'wrap':
      return sizeOf(recipe.of);
    case 'text':
      return recipe.edits.reduce((sum, edit) => sum + edit.in.length, sizeOf(recipe.of));
    case 'sparse': // a length costs its caller nothing
    case 'stock':
      return 1;
  }
}

/** A recipe as its user would write it. @param {Recipe} recipe @returns {string} */
export function print(recipe) {
  switch (recipe.t) {
    case 'value':
      return printed(recipe.v);
    case 'list':
      return `[${recipe.of.map(print).join(', ')}]`;
    case 'fields':
      return recipe.of.length === 0
        ? '{}'
        : `{ ${recipe.of.map(([k, v]) => `${printKey(k)}: ${print(v)}`).join(', ')} }`;
    case 'call':
      return `${recipe.f}(${recipe.of.map(print).join(', ')})`;
    case 'stock':
      return `«${recipe.name}»`;
    case 'wrap':
      return `«${recipe.how}»(${print(recipe.of)})`;
    case 'deep':
      return `«${recipe.n} levels of ${recipe.how} around»(${print(recipe.of)})`;
    case 'many':
      return `«list of ${recipe.n}»(${print(recipe.of)})`;
    case 'sparse':
      return `Array(${recipe.n})`;
    case 'long':
      return `${printed(recipe.of)}.repeat(${recipe.n})`;
    case 'text': {
      const edits = recipe.edits.map((edit) => `at ${edit.at}: ${edit.out} out, ${printed(edit.in)} in`).join('; ');
      const how = [edits, recipe.encoding ?? ''].filter((one) => one !== '').join('; ');
      return `«JSON text, ${how === '' ? 'as written' : how}»(${print(recipe.of)})`;
    }
  }
}

/** @param {unknown} value */
function printed(value) {
  if (Object.is(value, -0)) return '-0';
  return typeof value === 'string' ? JSON.stringify(value) : String(value);
}

/** @param {string} key */
function printKey(key) {
  return /^[A-Za-z_]\w*$/.test(key) ? key : JSON.stringify(key);
}
