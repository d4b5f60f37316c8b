// Bottles, kit, and the plan of a filling.
import fc from 'fast-check';
import { call, fields, list, listOf, maybe, one, orNothing, plain, steps, stock } from '../draw.mjs';
import { maybeTrace, model } from './gas.mjs';
import { a, ambient } from './quantity.mjs';
import { spec } from './target.mjs';
import { reading } from './verdict.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { BeforeCheck, BottleOrder, BottleState, CheckLoss, FillingPlan, Serves } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

/** @param {number} min @param {number} max */
const bars = (min, max) => call('gauge', plain(steps(min, max)), one('bar'));
/** @param {number} min @param {number} max */
const at = (min, max) => fields({ pressure: bars(min, max), temperature: a('temperature'), ambient });

/** @param {Arbitrary<Recipe>} name @returns {Arbitrary<Recipe>} */
const bottleNamed = (name) =>
  fields({
    name,
    waterVolume: a('volume'),
    label: fields({
      gas: one('nitrogen', 'nitrogen', 'nitrogen', 'argon'),
      purityPercent: one(99.99, 99.5, 'not stated'),
      filling: bars(150, 300),
      rated: bars(200, 300),
      ambient,
    }),
    read: at(0, 300),
    within: a('pressureDifference'),
    residual: bars(0, 20),
  });
const bottle = bottleNamed(one('1', 'N2-1'));

/** @param {Arbitrary<Recipe>} name @returns {Arbitrary<Recipe>} */
const toFillNamed = (name) =>
  fields({ name, gasVolume: a('volume'), read: at(0, 200), to: bars(20, 260), allowable: bars(100, 400) });

const rig = fields({
  kit: fields({ volume: call('volume', plain(steps(0, 200)), one('mL')), rated: bars(100, 400) }),
  regulator: fc.oneof(
    one('none'),
    fields({ difference: a('pressureDifference'), ratedInlet: bars(200, 400), ratedOutlet: bars(100, 400) }),
  ),
});
const purity = one(99.9, 'not demanded');

/** Some named apart. @param {(name: Arbitrary<Recipe>) => Arbitrary<Recipe>} of @param {number} most */
const some = (of, most) =>
  fc
    .integer({ min: 0, max: most })
    .chain((count) => list(...Array.from({ length: count }, (_, i) => of(one(`number ${i}`)))));

const filling = fields({
  gas: model,
  leastPurityPercent: purity,
  accumulators: some(toFillNamed, 4),
  bottles: some(bottleNamed, 3),
  rig,
  objectives: fc.oneof(
    fc.constant(stock('OBJECTIVES')),
    listOf(one('connections', 'bottles used', 'useful remainder'), 5, 5),
  ),
});

const size = fields({
  waterVolume: a('volume'),
  filling: bars(150, 300),
  labelAmbient: ambient,
  residual: bars(0, 20),
  onBoard: fields({ temperature: a('temperature'), ambient }),
});

/** @type {readonly Subject[]} */
export const SUPPLY = [
  {
    name: 'bottleState',
    args: fc.tuple(model, bottle, purity, maybeTrace),
    holds: (answer) => {
      const { contents, aboveResidual } = /** @type {BottleState} */ (answer);
      return aboveResidual.amount.moles <= contents.amount.moles ? undefined : 'more above a pressure than in all';
    },
  },
  {
    name: 'checkLoss',
    args: fc.tuple(
      model,
      fields({ gasVolume: a('volume'), read: at(0, 300) }),
      call('volume', plain(steps(0, 200)), one('mL')),
      bars(0, 20),
      maybeTrace,
    ),
    holds: (answer) => (/** @type {CheckLoss} */ (answer).gas.amount.moles >= 0 ? undefined : 'gas below zero'),
  },
  {
    name: 'beforeCheck',
    args: fc.tuple(
      model,
      fields({ gasVolume: a('volume'), read: at(0, 300) }),
      call('volume', plain(steps(0, 200)), one('mL')),
      bars(0, 20),
      maybeTrace,
    ),
    holds: (answer) => (/** @type {BeforeCheck} */ (answer).gas.amount.moles >= 0 ? undefined : 'gas below zero'),
  },
  {
    name: 'toFill',
    args: fc.tuple(one('EV 1', 'A'), spec, reading, maybeTrace),
    holds: (answer) => {
      const found = /** @type {import('isochore').ToFill | import('isochore').Charge} */ (answer);
      if ('action' in found) return found.action === 'add' ? 'gas to add, and no statement of it' : undefined;
      if (!(found.to.pascals > found.read.pressure.pascals)) return 'to fill to no more than it has';
      return found.to.pascals <= found.allowable.pascals ? undefined : 'to fill above the allowable pressure';
    },
  },
  {
    name: 'serves',
    args: fc.tuple(model, bottle, toFillNamed(one('A')), rig, maybeTrace),
    holds: (answer) => {
      const { accumulators, because } = /** @type {Serves} */ (answer);
      return accumulators > 0 === (because.length === 0) ? undefined : 'a number against its reasons';
    },
  },
  {
    name: 'fillingPlan',
    args: fc.tuple(filling, maybeTrace),
    holds: (answer) => {
      const { gas, steps: done, accumulators } = /** @type {FillingPlan} */ (answer);
      const off = gas.before.moles - gas.after.moles - gas.vented.amount.moles;
      if (Math.abs(off) > 1e-12 * gas.before.moles) return 'gas out of nothing';
      if (done.some(({ moved }) => !(moved.moles > 0))) return 'a step that moves nothing';
      return accumulators.every(({ outcome, because }) => (outcome === 'completed') === (because.length === 0))
        ? undefined
        : 'an outcome against its reasons';
    },
    weight: 0.25,
  },
  {
    name: 'bottlesToOrder',
    args: fc.tuple(filling, size, plain(steps(0, 100))),
    holds: (answer) => {
      const { needed, order } = /** @type {BottleOrder} */ (answer);
      return Number(order) >= Number(needed) || needed === 'not found' ? undefined : 'less ordered than needed';
    },
    weight: 0.1,
  },
  {
    name: 'supplyText',
    args: fc.tuple(
      one('not enough gas', 'purity too low', 'above its rating'),
      orNothing(fields({ 'not enough gas': maybe(one('ein Text', '')) })),
    ),
    holds: (answer) => (typeof answer === 'string' ? undefined : 'no text'),
    echoes: true,
  },
];
