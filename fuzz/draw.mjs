// What recipes are drawn from: words and numbers that mean something to the library, and whatever else there is.
import fc from 'fast-check';
import { HOWS } from './hostile.mjs';
import { fromJson, STOCK } from './recipe.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Recipe } from './recipe.mjs' */

/** @param {unknown} v @returns {Recipe} */
export const value = (v) => ({ t: 'value', v });
/** @param {string} name @returns {Recipe} */
export const stock = (name) => ({ t: 'stock', name });
/** One of these values. @param {readonly unknown[]} values @returns {Arbitrary<Recipe>} */
export const one = (...values) => fc.constantFrom(...values.map(value));
/** @param {Arbitrary<unknown>} arb @returns {Arbitrary<Recipe>} */
export const plain = (arb) => arb.map(value);
/** A call of a function of the library. @param {string} f @param {readonly Arbitrary<Recipe>[]} args @returns {Arbitrary<Recipe>} */
export const call = (f, ...args) => fc.tuple(...args).map((of) => ({ t: 'call', f, of }));
/** @param {readonly Arbitrary<Recipe>[]} of @returns {Arbitrary<Recipe>} */
export const list = (...of) => fc.tuple(...of).map((items) => ({ t: 'list', of: items }));
/** @param {Arbitrary<Recipe>} arb @param {number} minLength @param {number} maxLength @returns {Arbitrary<Recipe>} */
export const listOf = (arb, minLength, maxLength) =>
  fc.array(arb, { minLength, maxLength }).map((of) => ({ t: 'list', of }));

/** An argument that may be left out. @param {Arbitrary<Recipe>} arb @returns {Arbitrary<Recipe>} */
export const orNothing = (arb) => fc.oneof({ weight: 2, arbitrary: one(undefined) }, { weight: 1, arbitrary: arb });

/** A field that may be left out. @typedef {{ readonly maybe: Arbitrary<Recipe> }} Maybe */
/** @param {Arbitrary<Recipe>} arb @returns {Maybe} */
export const maybe = (arb) => ({ maybe: arb });

/** @param {Readonly<Record<string, Arbitrary<Recipe> | Maybe>>} model @returns {Arbitrary<Recipe>} */
export function fields(model) {
  const keys = Object.keys(model);
  const arbs = Object.values(model).map((arb) => ('maybe' in arb ? fc.option(arb.maybe, { nil: undefined }) : arb));
  return fc.tuple(...arbs).map((values) => ({
    t: 'fields',
    of: keys.flatMap((key, i) => {
      const own = values[i];
      return own === undefined ? [] : [/** @type {const} */ ([key, own])];
    }),
  }));
}

/** Steps of a fraction between two numbers, as people write them. @param {number} min @param {number} max @param {number} parts */
export const steps = (min, max, parts = 10) =>
  fc.integer({ min: Math.round(min * parts), max: Math.round(max * parts) }).map((n) => n / parts);

/** Names of fields that mean something somewhere, and those that mean something to the language. */
export const KEYS = [
  ...['value', 'unit', 'basis', 'kind', 'pascals', 'kelvins', 'cubicMetres', 'moles', 'kilograms', '~isochore', 'at'],
  ...['pressure', 'temperature', 'ambient', 'rows', 'referenceTemperature', 'printedStep', 'outside', 'minimum'],
  ...['maximum', 'plusMinus', 'below', 'above', 'plusMinusPercentOfGauge', 'applies', 'step', 'toward', 'gas', 'name'],
  ...['precharge', 'nominal', 'tolerance', 'toleranceAfterCharging', 'separator', 'gasVolume', 'allowable', 'settling'],
  ...[
    'allowance',
    'minutes',
    'gaugeStep',
    'oilSide',
    'gasInside',
    'minutesAtRest',
    'systemPressure',
    'emptyGasSide',
    'possibleSlip',
  ],
  ...['density_mol_m3', 'entropy_J_molK', 'internalEnergy_J_mol', 'visit', 'role', 'instruments', 'specification'],
  ...['accumulators', 'groups', 'specifications', 'tables', 'title', 'version', 'table', 'column', 'columns', 'words'],
  ...['cautions', 'problems', 'code', 'path', 'found', 'wanted', 'remedy', 'about', 'input', 'digest', 'unitServed'],
  ...['__proto__', 'constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty', 'length', 'then', 'toJSON'],
  ...['get', 'set', 'writable', 'enumerable', 'configurable', '0', '-1', '', ' ', '\u0000', '\ud800', 'é', '~curves'],
  ...['~kernel', '~standard', '_zod', 'size', 'next', 'done', 'message', 'stack', 'name with "quotes" and \\'],
];

const WORDS = [
  ...['bar', 'Pa', 'hPa', 'kPa', 'MPa', 'psi', 'kgf/cm2', 'mmHg', 'inHg', '°C', 'K', '°F', 'm3', 'L', 'mL', 'in3'],
  ...['US gal', 'mol', 'kg', 'g', 'lb', 'gauge', 'absolute', 'difference', 'gauge pressure', 'absolute pressure'],
  ...['pressure difference', 'temperature', 'temperature difference', 'volume', 'amount of substance', 'mass'],
  ...['normal volume', 'specification', 'nearest even', 'up', 'down', 'refuse', 'follow constant density', 'nitrogen'],
  ...['at the measured temperature', 'at the reference temperature', 'drained, zero verified', 'not drained'],
  ...['not known', 'investigated and cleared', 'diaphragm', 'bladder', 'piston', 'as found', 'as left', 'settled'],
  ...['refuse the round', 'report the rest', 'Bar', 'bar gauge', 'barg', 'C', 'toString', '__proto__', 'constructor'],
  ...[
    '',
    ' ',
    '0',
    '-0',
    '1',
    '141.3',
    '1,5',
    '1e3',
    '1e999',
    '-1e999',
    '1e-999',
    '0x10',
    'NaN',
    'Infinity',
    '.5',
    '5.',
  ],
  ...['1_000', '１４１', '140 bar gauge', '1013.25 hPa absolute', '2 bar difference', '40 °C', '5 US gal', '+1e+1'],
  ...[
    '140 bar',
    'bar 140',
    '140  bar\tgauge',
    '\u00a0140 bar gauge',
    '2026-03-14T09:10:00+01:00',
    '2026-02-30T00:00:00Z',
  ],
  ...[
    '9999-12-31T23:59:60Z',
    '0000-01-01T00:00:00-23:59',
    '\u2028',
    '\ufeff',
    '\u0000',
    '\ud800',
    '\udc00x',
    'a\ud83d',
  ],
  ...['😀', '\u202e', '"', '\\', '\\ud800', '{', '}', '[]', '{{reading}}', '{reading}', '$&', '$1', '%s', '\u001b[2J'],
];

const NUMBERS = [
  ...[0, -0, 1, -1, 0.1, 0.5, 1.5, 2, 10, 100, 140, 1013.25, 273.15, -273.15, -273.16, 126.192, 126.19199, 126.1921],
  ...[64, 63.999, 1000, 1000.1, 200e6, 2e8 + 1, 5e4, 1.2e5, 101_325, 1e5, 1e7, 1e9, 1e12, 1e15, 1e21, 1e100, 1e300],
  ...[1e308, 1.7976931348623157e308, 5e-324, 1e-320, 2.2250738585072014e-308, 1e-300, 1e-100, 1e-15, 1e-9, 1e-7],
  ...[Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER + 2, Number.MIN_SAFE_INTEGER, 2 ** 31, 2 ** 32, -(2 ** 31) - 1],
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0.1 + 0.2, 1 / 3, 1e-12, 2 ** 51 + 0.5],
];

/** @type {Arbitrary<number>} */
export const anyNumber = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...NUMBERS) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 1, arbitrary: fc.integer({ min: -300, max: 300 }) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: -330, max: 308 }))
      .map(([m, e]) => Number(`${m}e${e}`)),
  },
);

/** @type {Arbitrary<string>} */
export const anyText = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...WORDS) },
  { weight: 1, arbitrary: fc.constantFrom(...KEYS) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  // Halves of surrogate pairs too, about the length at which messages are cut.
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.nat(90), fc.array(fc.constantFrom('\ud83d', '\ude00', 'a', '"', '\n'), { maxLength: 6 }))
      .map(([n, tail]) => 'x'.repeat(n) + tail.join('')),
  },
);

/** @type {Arbitrary<Recipe>} */
const bare = fc.oneof(
  { weight: 4, arbitrary: plain(anyNumber) },
  { weight: 4, arbitrary: plain(anyText) },
  { weight: 2, arbitrary: one(undefined, null, true, false) },
  // JSON may bring these, and no operator can make a number or a text of the first.
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      fromJson({ toString: 1, valueOf: 1 }),
      fromJson({ length: { toString: 1, valueOf: 1 } }),
      fromJson({ length: 1e9, size: 1, 0: 1 }),
    ),
  },
  { weight: 3, arbitrary: fc.constantFrom(...Object.keys(STOCK).map(stock)) },
);

const DEEP = [31, 32, 33, 34, 100, 499, 500, 501, 5000];

/** Large and deep ones, each of which takes as long as thousands of others. @type {Arbitrary<Recipe>} */
const large = fc.oneof(
  fc.record({
    t: fc.constant(/** @type {const} */ ('deep')),
    how: fc.constantFrom('list', 'fields'),
    n: fc.constantFrom(...DEEP, 50_000),
    of: bare,
  }),
  fc.record({ t: fc.constant(/** @type {const} */ ('many')), n: fc.constantFrom(101, 1001, 20_000), of: bare }),
  fc.record({ t: fc.constant(/** @type {const} */ ('sparse')), n: fc.constantFrom(101, 100_000, 30_000_000) }),
  fc.record({
    t: fc.constant(/** @type {const} */ ('long')),
    n: fc.constantFrom(1000, 100_000),
    of: fc.constantFrom('a', '1', '\\', '"', ' ', '\ud800', '😀', '{"a":'),
  }),
);

/** @type {Arbitrary<string>} */
const anyKey = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom(...KEYS) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 5 }) },
);

/** Anything at all. @type {Arbitrary<Recipe>} */
export const junk = fc.oneof(
  { weight: 300, arbitrary: bare },
  { weight: 30, arbitrary: fc.array(bare, { maxLength: 4 }).map((of) => /** @type {Recipe} */ ({ t: 'list', of })) },
  {
    weight: 40,
    arbitrary: fc
      .uniqueArray(fc.tuple(anyKey, bare), { maxLength: 5, selector: ([key]) => key })
      .map((of) => /** @type {Recipe} */ ({ t: 'fields', of })),
  },
  { weight: 1, arbitrary: large },
);

/** @type {Arbitrary<string>} */
const how = fc.constantFrom(...HOWS);

/**
 * One change of an input, at any place of it.
 *
 * @typedef {{ readonly at: number, readonly op: 'put' | 'drop' | 'wrap' | 'twice' | 'tweak' | 'add' | 'swap' | 'rename' | 'other build',
 *   readonly n: number, readonly how: string, readonly key: string, readonly junk: Recipe }} Change
 */
/** @type {Arbitrary<Change>} */
export const change = fc.record({
  at: fc.nat(100_000),
  op: fc.constantFrom(
    'put',
    'put',
    'put',
    'drop',
    'wrap',
    'wrap',
    'twice',
    'tweak',
    'tweak',
    'add',
    'swap',
    'rename',
    'other build',
  ),
  n: fc.nat(100_000),
  how,
  key: anyKey,
  junk,
});

// Not those under which texts look for their own methods, such as Symbol.replace: that replaces the language itself.
const SYMBOLS = [Symbol.iterator, Symbol.toPrimitive, Symbol.toStringTag, Symbol.isConcatSpreadable, Symbol('one')];

/**
 * A field that all objects have while a call runs.
 *
 * @typedef {{ readonly key: PropertyKey, readonly as: 'field' | 'getter' | 'throwing getter', readonly value: Recipe }} Pollution
 */
/** @type {Arbitrary<Pollution>} */
export const pollution = fc.record({
  key: fc.oneof(
    { weight: 9, arbitrary: fc.constantFrom(...KEYS.filter((key) => key !== '__proto__' && key !== 'constructor')) },
    { weight: 1, arbitrary: fc.constantFrom(...SYMBOLS) },
  ),
  as: fc.constantFrom('field', 'field', 'field', 'getter', 'throwing getter'),
  value: bare,
});
