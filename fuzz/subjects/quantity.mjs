// Quantities: made, converted, compared, rounded, written and read.
import { isFault, read, valueIn, write } from 'isochore';
import fc from 'fast-check';
import { anyNumber, call, fields, maybe, one, plain, steps, stock } from '../draw.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Holds, Subject } from './subject.mjs' */

/** Values in their units, such as occur on board. @type {Readonly<Record<string, readonly (readonly [unit: string, min: number, max: number])[]>>} */
const RANGES = {
  gauge: [
    ['bar', 20, 350],
    ['MPa', 2, 35],
    ['psi', 300, 5000],
    ['kgf/cm2', 20, 350],
    ['kPa', 2000, 35_000],
    ['Pa', 2e6, 3e7],
  ],
  absolute: [
    ['hPa', 870, 1085],
    ['kPa', 87, 108],
    ['mmHg', 660, 810],
    ['inHg', 26, 31.9],
    ['psi', 12.7, 15.7],
    ['bar', 0.87, 1.08],
    ['Pa', 87_000, 108_500],
  ],
  pressureDifference: [
    ['bar', 0.1, 5],
    ['MPa', 0.1, 0.5],
    ['psi', 1, 70],
    ['kgf/cm2', 0.1, 5],
    ['kPa', 10, 500],
  ],
  temperature: [
    ['°C', -30, 90],
    ['K', 243, 363],
    ['°F', -22, 194],
  ],
  temperatureDifference: [
    ['K', 1, 30],
    ['°C', 1, 30],
    ['°F', 1, 50],
  ],
  volume: [
    ['L', 0.2, 60],
    ['m3', 0.1, 0.5],
    ['mL', 100, 5000],
    ['in3', 10, 5000],
    ['US gal', 0.1, 15],
  ],
  amount: [['mol', 0, 300]],
  mass: [
    ['kg', 0, 20],
    ['g', 0, 20_000],
    ['lb', 0, 50],
  ],
};
const MAKERS = Object.keys(RANGES);

/** Value and unit for the function that makes a kind. @param {string} maker */
export const given = (maker) =>
  fc.constantFrom(...(RANGES[maker] ?? [])).chain(([unit, min, max]) => fc.tuple(plain(steps(min, max)), one(unit)));

/** A quantity of a kind, by the name of the function that makes it. @param {string} maker @returns {Arbitrary<Recipe>} */
export const a = (maker) =>
  fc.oneof(...(RANGES[maker] ?? []).map(([unit, min, max]) => call(maker, plain(steps(min, max)), one(unit))));

/** @type {Arbitrary<Recipe>} */
export const anyQuantity = fc.oneof(...MAKERS.map(a));
/** A quantity of any size. @type {Arbitrary<Recipe>} */
const wild = fc.oneof(
  ...MAKERS.map((maker) => call(maker, plain(anyNumber), one(...(RANGES[maker] ?? []).map(([unit]) => unit)))),
);
/** @type {Arbitrary<Recipe>} */
const quantity = fc.oneof(anyQuantity, wild);

/** @type {Arbitrary<Recipe>} */
export const ambient = a('absolute');

/** A step of a gauge. @type {Arbitrary<Recipe>} */
export const pressureStep = fields({
  step: one(5, 2, 1, 0.5, 0.2, 0.1, 0.05, 20, 50, 250),
  unit: one('bar', 'MPa', 'psi', 'kgf/cm2', 'kPa'),
});

const toward = one('nearest even', 'up', 'down');

/** @type {Arbitrary<Recipe>} */
export const condition = fc.oneof(
  fields({
    pressure: fc.oneof(ambient, call('absolute', plain(steps(0.1, 300)), one('bar'))),
    temperature: a('temperature'),
  }),
  fc.constantFrom(...['normalConditions', 'reference60F'].map(stock)),
);
/** @type {Arbitrary<Recipe>} */
export const anyNormalVolume = call(
  'normalVolume',
  a('amount'),
  fc.constantFrom(stock('nitrogen'), stock('idealNitrogen')),
  condition,
);

/** A unit, and a step in it, for each kind. @type {Arbitrary<readonly [Recipe, Recipe]>} */
const withUnit = fc
  .constantFrom(...MAKERS)
  .chain((maker) =>
    fc.tuple(
      fc.oneof(a(maker), call(maker, plain(anyNumber), one(...(RANGES[maker] ?? []).map(([unit]) => unit)))),
      one(...(RANGES[maker] ?? []).map(([unit]) => unit)),
    ),
  );
/** @param {boolean} directed @type {(directed: boolean) => Arbitrary<readonly Recipe[]>} */
const rounding = (directed) =>
  withUnit.chain(([of, unit]) =>
    fc.tuple(
      fc.constant(of),
      fields({
        step: fc.oneof(one(1, 0.1, 0.5, 0.001, 2.5), plain(anyNumber)),
        unit: fc.constant(unit),
        toward: directed ? toward : maybe(toward),
      }),
    ),
  );

/** Numbers of a quantity: what each kind allows. @type {Holds} */
const inRange = (answer) => {
  if (typeof answer !== 'object' || answer === null) return 'no quantity';
  const { kind, ...own } = /** @type {Readonly<Record<string, unknown>>} */ (answer);
  const si = Object.values(own).find((value) => typeof value === 'number');
  if (typeof si !== 'number') return 'a quantity without a number';
  const signed = kind === 'gauge pressure' || kind === 'pressure difference' || kind === 'temperature difference';
  if (Object.is(si, -0)) return 'minus zero';
  return signed || si >= 0 ? undefined : `a ${String(kind)} below zero`;
};

const LEVELS = ['gauge', 'absolute', 'temperature'];
/** Two levels of one kind. @type {Arbitrary<readonly Recipe[]>} */
const twoLevels = fc.constantFrom(...LEVELS).chain((maker) => fc.tuple(a(maker), a(maker)));
const moved = fc
  .constantFrom(
    ['gauge', 'pressureDifference'],
    ['absolute', 'pressureDifference'],
    ['temperature', 'temperatureDifference'],
  )
  .chain(([level = '', by = '']) => fc.tuple(a(level), a(by)));
const twoOfOne = fc.constantFrom('absolute', 'temperature').chain((maker) => fc.tuple(a(maker), a(maker)));

/** @type {Arbitrary<readonly Recipe[]>} */
const copies = fc.oneof(
  fc
    .tuple(
      fc.constantFrom('spread', 'JSON', 'structuredClone', 'of another realm', 'null prototype'),
      fc.oneof(quantity, anyNormalVolume),
    )
    .map(([how, of]) => [/** @type {Recipe} */ ({ t: 'wrap', how, of })]),
);

/** Texts as `write` makes them, and a kind for each. @type {Arbitrary<readonly Recipe[]>} */
const texts = fc
  .tuple(
    fc.constantFrom(
      ['gauge pressure', 'gauge', ' gauge'],
      ['absolute pressure', 'absolute', ' absolute'],
      ['pressure difference', 'pressureDifference', ' difference'],
      ['temperature', 'temperature', ''],
      ['temperature difference', 'temperatureDifference', ' difference'],
      ['volume', 'volume', ''],
      ['amount of substance', 'amount', ''],
      ['mass', 'mass', ''],
    ),
    fc.oneof(
      steps(-100, 400, 1000).map(String),
      anyNumber.map(String),
      fc.stringMatching(/^[+-]?\d{1,38}(\.\d{1,30})?([eE][+-]?\d{1,3})?$/),
    ),
    fc.nat(8),
  )
  .map(([[kind = '', maker = '', word = ''], number, n]) => {
    const units = RANGES[maker] ?? [];
    return [
      { t: 'value', v: kind },
      { t: 'value', v: `${number} ${units[n % units.length]?.[0] ?? ''}${word}` },
    ];
  });

/** @type {Holds} */
const readsBack = (answer, [of, as]) => {
  if (typeof answer !== 'string' || answer === '') return 'no text';
  try {
    const q = /** @type {import('isochore').GaugePressure} */ (of);
    const { step, unit } = /** @type {{ step: number, unit: 'bar' }} */ (as);
    if (answer.split(' ', 1)[0] !== undefined && answer.length > 40) return undefined; // more digits than a text may have
    const again = write(read(q.kind, answer), { step, unit });
    return again === answer ? undefined : `${answer} is read as ${again}`;
  } catch (error) {
    // A value so fine, or a unit so large, that no double has that many digits.
    return isFault(error) ? undefined : 'a text that cannot be read';
  }
};

/** @type {readonly Subject[]} */
export const QUANTITY = [
  ...MAKERS.map((name) => ({
    name,
    args: fc.oneof(given(name), fc.tuple(plain(anyNumber), one(...(RANGES[name] ?? []).map(([unit]) => unit)))),
    holds: inRange,
  })),
  {
    name: 'toAbsolute',
    args: fc.tuple(a('gauge'), ambient, fc.constantFrom(stock('a trace'), { t: 'value', v: undefined })),
    holds: inRange,
  },
  { name: 'toGauge', args: fc.tuple(a('absolute'), ambient), holds: inRange },
  { name: 'difference', args: twoLevels, holds: inRange },
  { name: 'shift', args: moved, holds: inRange },
  {
    name: 'compare',
    args: twoLevels,
    holds: (answer) => ([-1, 0, 1].some((n) => Object.is(n, answer)) ? undefined : 'no order'),
  },
  {
    name: 'ratio',
    args: twoOfOne,
    holds: (answer) => (typeof answer === 'number' && answer >= 0 ? undefined : 'no ratio'),
  },
  { name: 'roundTo', args: rounding(true), holds: inRange },
  { name: 'write', args: rounding(false), holds: readsBack },
  {
    name: 'valueIn',
    args: withUnit,
    holds: (answer, [of, unit]) => {
      const q = /** @type {import('isochore').GaugePressure} */ (of);
      return typeof answer === 'number' && answer === valueIn(q, /** @type {'bar'} */ (unit))
        ? undefined
        : 'another number the second time';
    },
  },
  { name: 'readmit', args: copies, holds: inRange },
  { name: 'read', args: texts, holds: inRange },
  {
    name: 'writeNormalVolume',
    args: fc.tuple(
      anyNormalVolume,
      fields({ step: one(0.001, 0.01, 1), unit: one('m3', 'L', 'US gal'), toward: maybe(toward) }),
    ),
    holds: (answer) => (typeof answer === 'string' && answer.includes(' at ') ? undefined : 'no text'),
  },
];
