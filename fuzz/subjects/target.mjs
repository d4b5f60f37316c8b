// The specification, and what it asks for at a temperature.
import fc from 'fast-check';
import { call, fields, listOf, maybe, one, plain, steps, value } from '../draw.mjs';
import { conditions, maybeTrace, model } from './gas.mjs';
import { a, ambient } from './quantity.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

/** @param {number} n @returns {Recipe} */
const bars = (n) => ({ t: 'call', f: 'gauge', of: [value(n), value('bar')] });
/** @param {number} n @returns {Recipe} */
const celsius = (n) => ({ t: 'call', f: 'temperature', of: [value(n), value('°C')] });

/** Rising temperatures, and with each a rising pressure. @type {Arbitrary<readonly (readonly [t: number, p: number])[]>} */
const rising = fc
  .tuple(
    fc.integer({ min: -20, max: 10 }),
    fc.integer({ min: 60, max: 250 }),
    fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), steps(0.5, 20)), { minLength: 1, maxLength: 6 }),
  )
  .map(([t0, p0, more]) => {
    let [t, p] = [t0, p0];
    return /** @type {const} */ ([[t, p], ...more.map(([dt, dp]) => /** @type {const} */ ([(t += dt), (p += dp)]))]);
  });

/** A point of so many bar at 20 °C. @param {number} n @returns {Recipe} */
const about20 = (n) => ({
  t: 'fields',
  of: [
    ['pressure', bars(n)],
    ['temperature', celsius(20)],
  ],
});

const printedStep = call('pressureDifference', plain(fc.constantFrom(0.1, 0.5, 1)), one('bar'));
const outside = one('refuse', 'follow constant density');

/** @type {Arbitrary<Recipe>} */
const table = fc.tuple(rising, fc.nat(5), printedStep, outside).map(([rows, at, step, beyond]) => ({
  t: 'fields',
  of: [
    [
      'rows',
      {
        t: 'list',
        of: rows.map(([t, p]) => ({
          t: 'fields',
          of: [
            ['pressure', bars(p)],
            ['temperature', celsius(t)],
          ],
        })),
      },
    ],
    ['referenceTemperature', celsius(rows[at % rows.length]?.[0] ?? 20)],
    ['printedStep', step],
    ['outside', beyond],
  ],
}));

/** A point of the pre-charge, with a temperature near those of tables. @type {Arbitrary<Recipe>} */
const point = fields({ pressure: a('gauge'), temperature: call('temperature', plain(steps(0, 40)), one('°C')) });

const small = a('pressureDifference');
const applies = one('at the measured temperature', 'at the reference temperature');
/** @type {Arbitrary<Recipe>} */
const tolerance = fc.oneof(
  fields({ plusMinus: small, applies }),
  fields({ below: small, above: small, applies }),
  fields({ plusMinusPercentOfGauge: plain(steps(0.5, 10)), applies }),
);
/** Limits of their own about a point. @type {Arbitrary<readonly [Recipe, Recipe]>} */
const limited = fc
  .tuple(fc.integer({ min: 60, max: 250 }), steps(1, 10), steps(1, 10), steps(0, 40))
  .map(([p, below, above, t]) => {
    /** @param {number} n @returns {Recipe} */
    const at = (n) => ({
      t: 'fields',
      of: [
        ['pressure', bars(n)],
        ['temperature', celsius(t)],
      ],
    });
    return [
      at(p),
      {
        t: 'fields',
        of: [
          ['minimum', at(p - below)],
          ['maximum', at(p + above)],
        ],
      },
    ];
  });
/** @type {Arbitrary<readonly [Recipe, Recipe]>} */
const stated = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(point, tolerance) },
  { weight: 3, arbitrary: fc.tuple(table, tolerance) },
  { weight: 2, arbitrary: limited },
  { weight: 1, arbitrary: fc.tuple(table, fields({ minimum: table, maximum: table })) },
);

/** What a manual gives, of what it states. @param {Arbitrary<readonly [Recipe, Recipe]>} of @returns {Arbitrary<Recipe>} */
const givenOf = (of) =>
  of.chain(([precharge, allowed]) =>
    fields({
      gas: model,
      precharge: fc.constant(precharge),
      nominal: maybe(precharge.t === 'fields' && precharge.of[0]?.[0] === 'rows' ? point : one(undefined)),
      ambient,
      tolerance: fc.constant(allowed),
      toleranceAfterCharging: maybe(tolerance),
      separator: one('diaphragm', 'bladder', 'piston'),
      gasVolume: a('volume'),
      allowable: call('gauge', plain(steps(300, 700)), one('bar')),
      settling: fields({ allowance: small, minutes: plain(steps(1, 60)) }),
    }),
  );
/** @type {Arbitrary<Recipe>} */
export const given = givenOf(stated);

/** @type {Arbitrary<Recipe>} */
export const spec = call('specification', given);

/** Specifications of so many bar at 20 °C. @param {number} n */
export const specAbout = (n) => call('specification', givenOf(fc.tuple(fc.constant(about20(n)), tolerance)));

const columns = rising.chain((rows) =>
  fields({
    temperatures: fc.constant({ t: 'list', of: rows.map(([t]) => celsius(t)) }),
    columns: listOf(
      fields({
        name: one('A', 'B', 'type C'),
        pressures: fc.constant({ t: 'list', of: rows.map(([, p]) => bars(p)) }),
      }),
      1,
      3,
    ),
    referenceTemperature: fc.constant(celsius(rows[0]?.[0] ?? 20)),
    printedStep,
    outside,
  }),
);

/** @type {readonly Subject[]} */
export const TARGET = [
  {
    name: 'specification',
    args: fc.tuple(given),
    holds: (answer) => {
      const { density_mol_m3: rho } = /** @type {import('isochore').Specification} */ (answer);
      if (!Object.isFrozen(answer)) return 'not frozen';
      return rho === 'by table' || rho > 0 ? undefined : 'a density not above zero';
    },
  },
  {
    name: 'afterCharging',
    args: fc.tuple(spec),
    holds: (answer) =>
      Object.hasOwn(/** @type {object} */ (answer), 'toleranceAfterCharging')
        ? 'a band after charging twice'
        : undefined,
  },
  {
    name: 'target',
    args: fc.tuple(spec, conditions, maybeTrace),
    holds: (answer, [, at]) => {
      const { pascals } = /** @type {import('isochore').GaugePressure} */ (answer);
      const { ambient } = /** @type {import('isochore').Conditions} */ (at);
      return pascals >= -ambient.pascals ? undefined : 'a target below vacuum';
    },
  },
  {
    name: 'targetSource',
    args: fc.tuple(spec, a('temperature')),
    holds: (answer) =>
      /** @type {import('isochore').TargetSource} */ (answer).rows.length > 0 ? undefined : 'no rows',
  },
  {
    name: 'slope',
    args: fc.tuple(spec, conditions),
    holds: (answer) =>
      /** @type {{ pascalsPerKelvin: number }} */ (answer).pascalsPerKelvin > 0 ? undefined : 'a slope not above zero',
  },
  {
    name: 'columnOf',
    args: fc.tuple(columns, one('A', 'B', 'type C')),
    holds: (answer, [of]) => {
      const { rows } = /** @type {import('isochore').MakersTable} */ (answer);
      const { temperatures } = /** @type {import('isochore').MakersTables} */ (of);
      return rows.length === temperatures.length ? undefined : 'not a row for every temperature';
    },
  },
];
