// Filling, bleeding, draining, and what timed readings say.
import fc from 'fast-check';
import { call, fields, listOf, maybe, one, orNothing, plain, steps } from '../draw.mjs';
import { maybeTrace, model, read } from './gas.mjs';
import { a, pressureStep } from './quantity.mjs';
import { spec } from './target.mjs';
import { reading } from './verdict.mjs';

/** @import { Bleeding, Draining, Filling, NoTimeConstant, SettlingCurve, SettlingEvidence, StopPlan, TimeConstantFound } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

const vessel = fc.oneof(spec, fields({ gas: model, gasVolume: a('volume') }));
const minutes = plain(fc.oneof(steps(0.1, 60), fc.constantFrom(1e-9, 1e-300, 1e300)));
const exchange = fields({ timeConstantMinutes: plain(steps(1, 30)), movingMinutes: minutes });
const supply = fields({ pressure: a('gauge'), temperature: a('temperature'), volume: maybe(a('volume')) });
const until = fc.oneof(
  fields({ stop: a('gauge') }),
  fields({ settled: a('gauge') }),
  fields({ gas: call('amount', plain(steps(0.1, 30)), one('mol')) }),
);

const timed = fc.array(fc.tuple(steps(0.1, 10), steps(-3, 3)), { minLength: 1, maxLength: 8 }).chain((gaps) => {
  let [t, p] = [0, 150];
  const pairs = gaps.map(([gap, by]) => /** @type {const} */ ([(t += gap), (p += by)]));
  return fc.constant(
    /** @type {Recipe} */ ({
      t: 'list',
      of: pairs.map(([at, bar]) => ({
        t: 'fields',
        of: [
          ['minutes', { t: 'value', v: at }],
          [
            'pressure',
            {
              t: 'call',
              f: 'gauge',
              of: [
                { t: 'value', v: bar },
                { t: 'value', v: 'bar' },
              ],
            },
          ],
        ],
      })),
    }),
  );
});
const after = one('filling', 'bleeding', 'draining');

/** @param {Filling} answer */
function wrongOfFilling({ isothermal, adiabatic, inTime }) {
  for (const end of [isothermal, adiabatic, ...(inTime === undefined ? [] : [inTime])]) {
    if (end.outcome === 'reached' && !(end.gas.amount.moles >= 0)) return 'less than no gas';
    // Gas from a supply that is lower would flow back.
    if (end.outcome === 'supply too low' && typeof end.found !== 'string' && !(end.found.pascals <= end.needed.pascals))
      return 'a supply that is not too low';
  }
  return undefined;
}

/** @param {Bleeding} answer */
function wrongOfBleeding({ isothermal, adiabatic, inTime }) {
  const ends = [isothermal, adiabatic, ...(inTime === undefined ? [] : [inTime])];
  if (ends.some(({ gas }) => !(gas.amount.moles >= 0))) return 'less than no gas';
  // What is let out leaves the rest colder.
  return adiabatic.temperature.kelvins > isothermal.temperature.kelvins ? 'warmer by expanding' : undefined;
}

/** @type {readonly Subject[]} */
export const SETTLING = [
  {
    name: 'filling',
    args: fc.tuple(vessel, read, fields({ supply, until, exchange: maybe(exchange) }), maybeTrace),
    holds: (answer) => wrongOfFilling(/** @type {Filling} */ (answer)),
  },
  {
    name: 'bleeding',
    args: fc.tuple(vessel, read, fields({ until, exchange: maybe(exchange) }), maybeTrace),
    holds: (answer) => wrongOfBleeding(/** @type {Bleeding} */ (answer)),
  },
  {
    name: 'draining',
    args: fc.tuple(
      vessel,
      read,
      fields({
        systemPressure: a('gauge'),
        minutesSince: plain(steps(0, 60)),
        timeConstantMinutes: fc.oneof(one('not known'), minutes),
      }),
      maybeTrace,
    ),
    holds: (answer) =>
      /** @type {Draining} */ (answer).mostLow.pascals >= -1 ? undefined : 'a reading that is high after draining',
  },
  {
    name: 'settlingCurve',
    args: fc.tuple(
      vessel,
      read,
      fields({
        shell: a('temperature'),
        timeConstantMinutes: minutes,
        minutes: listOf(plain(steps(0, 60)), 0, 5),
        within: a('pressureDifference'),
      }),
      maybeTrace,
    ),
    holds: (answer) =>
      /** @type {SettlingCurve} */ (answer).minutesUntilWithin >= 0 ? undefined : 'settled before it stopped',
  },
  {
    name: 'settlingEvidence',
    args: fc.tuple(
      timed,
      fields({
        gaugeStep: pressureStep,
        after,
        timeConstantMinutes: maybe(minutes),
        mostByCooling: maybe(a('pressureDifference')),
      }),
    ),
    holds: (answer) => {
      const { outcome, change, notSeenBelow, overMinutes } = /** @type {SettlingEvidence} */ (answer);
      if (!(overMinutes > 0 && notSeenBelow.pascals > 0)) return 'seen in no time, or without a step';
      return outcome === 'warming' && change.pascals < -notSeenBelow.pascals ? 'warming, and falls' : undefined;
    },
  },
  {
    name: 'fitTimeConstant',
    args: fc.tuple(timed, fields({ gaugeStep: pressureStep, after })),
    holds: (answer) => {
      const found = /** @type {TimeConstantFound | NoTimeConstant} */ (answer);
      if (found.outcome !== 'levelling out') return undefined;
      const [least, most] = found.betweenMinutes;
      return least <= found.timeConstantMinutes && found.timeConstantMinutes <= most ? undefined : 'outside its bounds';
    },
  },
  {
    name: 'settlingText',
    args: fc.tuple(
      one('warming', 'levelling out', 'rises and falls', 'no single time constant'),
      orNothing(fields({ warming: one('wärmer') })),
    ),
    echoes: true,
  },
  {
    name: 'whereToStop',
    args: fc.tuple(
      spec,
      reading,
      fields({
        supply: maybe(supply),
        exchange: maybe(exchange),
        computedStop: one('not permitted', 'permitted by the specification'),
      }),
      maybeTrace,
    ),
    holds: (answer, args) => {
      const plan = /** @type {StopPlan} */ (answer);
      if (!('steps' in plan)) return undefined;
      const { allowable } = /** @type {import('isochore').Specification} */ (args[0]);
      return plan.steps.every(({ stop }) => plan.action === 'vent' || stop.pascals <= allowable.pascals)
        ? undefined
        : 'a stop above the allowable pressure';
    },
  },
];
