// Ways to hand over a value that is not what it seems: copies, proxies, getters, other realms.
import { canonicalJson, reportRound, sha256 } from 'isochore/record';
import { any, define, parseElsewhere } from './recipe.mjs';

/** @import { Live } from './recipe.mjs' */

/** @param {unknown} value @returns {value is object} */
const isObject = (value) => typeof value === 'object' && value !== null;

/** Own enumerable fields, each through a getter. @param {object} value @param {(key: string, value: unknown) => unknown} get */
function byGetters(value, get) {
  const copy = Array.isArray(value) ? [] : {};
  for (const [key, own] of Object.entries(value)) {
    const field = { __proto__: null, get: () => get(key, own), enumerable: true, configurable: true };
    Object.defineProperty(copy, key, /** @type {PropertyDescriptor} */ (/** @type {unknown} */ (field)));
  }
  return copy;
}

/** Something else after the n-th read of a key. @param {number} n @param {unknown} other */
function changing(n, other) {
  /** @type {Map<PropertyKey, number>} */
  const reads = new Map();
  return (/** @type {PropertyKey} */ key, /** @type {unknown} */ value) => {
    const before = reads.get(key) ?? 0;
    reads.set(key, before + 1);
    return before < n ? value : other;
  };
}

/** @param {object} value @param {Live} live @param {ProxyHandler<object>} handler */
function proxied(value, live, handler) {
  live.hasProxy = true;
  if (Array.isArray(value) && 'get' in handler) live.hasLyingList = true;
  // Without a prototype: what all objects inherit while a call runs would be traps of it.
  return new Proxy(value, Object.assign(inheriting(null), handler));
}

/** @param {object | null} prototype */
const inheriting = (prototype) => /** @type {object} */ (any(Object.create(prototype)));
/** @param {object} value */
const prototypeOf = (value) => /** @type {object | null} */ (any(Object.getPrototypeOf(value)));

/** A target of the same form that a proxy is free to lie about. @param {object} value @returns {object} */
const free = (value) =>
  Array.isArray(value)
    ? Array.from(/** @type {readonly unknown[]} */ (any(value)))
    : Object.assign(inheriting(prototypeOf(value)), value);

const TRAPS = /** @type {const} */ ([
  'get',
  'has',
  'ownKeys',
  'getOwnPropertyDescriptor',
  'getPrototypeOf',
  'isExtensible',
  'set',
  'defineProperty',
  'deleteProperty',
  'preventExtensions',
]);

/** A class of the caller's own. */
class Own {
  own = 1;
}

/** A report with the digest that belongs to it as it is now. @param {object} report */
function sealed(report) {
  const rest = Object.fromEntries(Object.entries(report).filter(([key]) => key !== 'digest'));
  return { ...rest, digest: sha256(canonicalJson(rest)) };
}

/** @type {Readonly<Record<string, (value: object, live: Live) => unknown>>} */
const WRAPS = {
  sealed,
  spread: (value) => ({ ...value }),
  'spread and frozen': (value) => Object.freeze({ ...value }),
  JSON: (value) => /** @type {unknown} */ (JSON.parse(JSON.stringify(value))),
  structuredClone: (value) => structuredClone(value),
  'null prototype': (value) => Object.assign(inheriting(null), value),
  inherited: (value) => inheriting(value),
  'inherited and frozen': (value) => Object.freeze(inheriting(value)),
  frozen: (value) => Object.freeze(free(value)),
  'of another realm': (value) => parseElsewhere(JSON.stringify(value)),
  'as fields of an array': (value) => Object.assign([], value),
  'as fields of a function': (value) => Object.assign(() => 1, value),
  'as fields of a Date': (value) => Object.assign(new Date(0), value),
  'as fields of a class': (value) => Object.assign(new Own(), value),
  'with itself in it': (value) => {
    const copy = free(value);
    define(copy, Array.isArray(value) ? String(value.length) : 'itself', copy);
    return copy;
  },
  'with a symbol as key': (value) => Object.assign(free(value), { [Symbol('key')]: Number.NaN }),
  'in a list': (value) => [value],
  'getters that give it': (value) => byGetters(value, (_, own) => own),
  'getters that throw': (value, live) => byGetters(value, () => live.fail()),
  'getters that change to undefined': (value) => byGetters(value, changing(1, undefined)),
  'getters that change to NaN': (value) => byGetters(value, changing(1, Number.NaN)),
  'getters that change to null, late': (value) => byGetters(value, changing(2, null)),
  'getters that change to a text, later': (value) => byGetters(value, changing(3, 'x')),
  'getters that change to an object': (value) => byGetters(value, changing(1, {})),
  'getters that throw the second time': (value, live) => {
    const second = changing(1, live);
    return byGetters(value, (key, own) => (second(key, own) === live ? live.fail() : own));
  },
  'getters that change a field beside them': (value) => {
    const copy = byGetters(value, (key, own) => {
      const other = Object.keys(value).find((one) => one !== key);
      if (other !== undefined) define(copy, other, Number.NaN);
      return own;
    });
    return copy;
  },
  'getters that lengthen the list': (value) => {
    const copy = byGetters(value, (_, own) => {
      if (Array.isArray(copy) && copy.length < 1000) copy.push(own);
      return own;
    });
    return copy;
  },
  'as long as a list may be': (value) => {
    const copy = free(value);
    if (Array.isArray(copy)) copy.length = 4_294_967_295;
    return copy;
  },
  'getters that call the library': (value) =>
    byGetters(value, (_, own) => {
      canonicalJson({ own: 1 });
      reportRound({ version: 1 }, { problems: 'report the rest' });
      return own;
    }),
  proxy: (value, live) => proxied(value, live, {}),
  'proxy that throws': (value, live) =>
    proxied(value, live, Object.fromEntries(TRAPS.map((trap) => [trap, () => live.fail()]))),
  'proxy that throws when listed': (value, live) => proxied(value, live, { ownKeys: () => live.fail() }),
  'proxy that throws when its prototype is asked': (value, live) =>
    proxied(value, live, { getPrototypeOf: () => live.fail() }),
  'proxy that gives undefined': (value, live) => proxied(free(value), live, { get: () => undefined }),
  'proxy that gives NaN': (value, live) => proxied(free(value), live, { get: () => Number.NaN }),
  'proxy that gives itself': (value, live) =>
    proxied(free(value), live, {
      get: (_, key, self) => (typeof key === 'string' ? /** @type {unknown} */ (self) : undefined),
    }),
  'proxy that has everything': (value, live) => proxied(free(value), live, { has: () => true }),
  'proxy that has nothing': (value, live) => proxied(free(value), live, { has: () => false, ownKeys: () => [] }),
  'proxy that changes': (value, live) => {
    const change = changing(1, 'x');
    return proxied(free(value), live, { get: (on, key) => change(key, Reflect.get(on, key)) });
  },
  'proxy that says it is endless': (value, live) =>
    proxied(free(value), live, {
      get: (on, key) => /** @type {unknown} */ (key === 'length' ? 4_294_967_295 : Reflect.get(on, key)),
    }),
  'revoked proxy': (value, live) => {
    live.hasProxy = true;
    const { proxy, revoke } = Proxy.revocable(value, {});
    revoke();
    return proxy;
  },
};

/** @type {readonly string[]} */
export const HOWS = Object.keys(WRAPS);

/** A value wrapped in one of these ways; a bare one, or one that cannot be wrapped so, as it is. @param {string} how @param {unknown} value @param {Live} live */
export function wrapped(how, value, live) {
  if (!isObject(value) || (Array.isArray(value) && value.length > 100_000)) return value;
  try {
    return WRAPS[how]?.(value, live);
  } catch {
    return value;
  }
}
