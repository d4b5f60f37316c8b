// What can hurt, in numbers; and the work as data.
import fc from 'fast-check';
import { call, fields, maybe, one, orNothing, plain, steps } from '../draw.mjs';
import { conditions, maybeTrace, model, read } from './gas.mjs';
import { a, ambient, pressureStep } from './quantity.mjs';
import { spec } from './target.mjs';
import { measured, rule } from './uncertainty.mjs';
import { reading } from './verdict.mjs';

/** @import { EnergyOfGas, Expansion, Hot, LeakShown, OxygenAfterRelease, Purged, Ratings, SignedWork, StoredEnergy, WorkOrder } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

const fraction = plain(steps(0, 1, 1000));
const vessel = fc.oneof(spec, fields({ gas: model, gasVolume: a('volume') }));

const release = fields({
  room: call('volume', plain(steps(1, 500)), one('m3')),
  conditions,
  gas: model,
  released: a('amount'),
  minutes: fc.oneof(plain(steps(0.1, 600)), one('at once')),
  ventilation: fc.oneof(fields({ airChangesPerHour: plain(steps(0.1, 60)) }), one('none')),
  oxygenBefore: one(0.209476, 0.21, 0.2),
  limit: fields({ fraction: one(0.18, 0.19, 0.195), source: one('a rule') }),
});

const part = (/** @type {readonly string[]} */ ...names) =>
  fields(Object.fromEntries(names.map((name) => [name, a('gauge')])));
const line = fields({
  bottle: part('rating', 'pressure'),
  regulator: fc.oneof(part('inlet', 'outlet', 'setTo'), one('none')),
  relief: fc.oneof(part('opens'), one('none')),
  hose: part('rating'),
  gauge: part('fullScale'),
  vessel: part('allowable', 'pressure'),
});

const purging = fields({
  gas: model,
  gasVolume: a('volume'),
  high: call('absolute', plain(steps(1.5, 200)), one('bar')),
  low: fc.oneof(ambient, call('absolute', plain(steps(0, 1.4, 100)), one('bar'))),
  temperature: a('temperature'),
  before: fraction,
  inSupply: one(0, 0.00001, 0.001),
  wanted: one(0.0001, 0.001, 0.02),
});

const test = fields({
  lossPerYear: fc.oneof(a('pressureDifference'), call('amount', plain(steps(0, 5)), one('mol'))),
  bubble: call('volume', plain(steps(0.01, 1, 100)), one('mL')),
  patienceMinutes: plain(steps(0.1, 60)),
  minutesBetween: plain(steps(1, 10_000)),
  gaugeStep: pressureStep,
});

const expected = fields({ temperature: a('temperature'), ambient, gaugeStep: pressureStep });
const ownWords = fields({
  charge: maybe(one('{stop} und {gas}', 'ein Text', '{nothing}')),
  'not needed': maybe(one('{because}', '{stop}')),
});
const order = call('workOrder', spec, fc.oneof(reading, expected));
const minute = plain(fc.integer({ min: 10, max: 59 }).map((n) => `2026-03-14T09:${n}:00Z`));
const done = fields({
  by: one('somebody', 'somebody else'),
  at: one('2026-03-14T09:10:00Z'),
  note: maybe(one('as it was')),
});
const signature = fc.oneof(
  { weight: 60, arbitrary: done },
  {
    weight: 1,
    arbitrary: fields({
      by: one('x'),
      at: minute,
      leftOutBecause: maybe(one('no time')),
      instead: maybe(one('other')),
    }),
  },
);
const STEPS = [
  ...['secure', 'note valves', 'isolate', 'drain', 'verify zero', 'fit', 'read', 'compare', 'depressurise', 'purge'],
  ...['charge', 'settle', 'bleed', 're-check', 'leak test', 'close up', 'restore valves', 'try out'],
];
const signatures = fields(Object.fromEntries(STEPS.map((step) => [step, signature])));

/** @param {EnergyOfGas | 'not asked'} of */
function wrongWithEnergy(of) {
  if (of === 'not asked') return undefined;
  const { pcc2_J, realGas, energy_J } = of;
  if (energy_J !== Math.max(pcc2_J, realGas.energy_J)) return 'not the larger energy';
  const { vapourFraction } = realGas.ends;
  return vapourFraction > 0 && vapourFraction <= 1 ? undefined : 'a share of vapour that is none';
}

/** @param {readonly { readonly code: string }[]} cautions */
const wrongWithCautions = (cautions) =>
  cautions.at(-1)?.code === 'maker decides' ? undefined : 'without the word that codes decide';

/** @type {readonly Subject[]} */
export const SAFETY = [
  {
    name: 'isentropicExpansion',
    args: fc.tuple(
      model,
      fields({ pressure: call('absolute', plain(steps(1, 600)), one('bar')), temperature: a('temperature') }),
      a('absolute'),
      maybeTrace,
    ),
    holds: (answer) => {
      const { vapourFraction, phase } = /** @type {Expansion} */ (answer);
      if (!(vapourFraction > 0 && vapourFraction <= 1)) return 'a share of vapour that is none';
      return phase === 'gas' && vapourFraction !== 1 ? 'gas that is not all vapour' : undefined;
    },
  },
  {
    name: 'pressureWhenHot',
    args: fc.tuple(spec, fc.oneof(read, one('target', 'upper limit')), conditions, maybeTrace),
    holds: (answer) => {
      const { outcome, belowAllowable, cautions } = /** @type {Hot} */ (answer);
      if ((outcome === 'above the allowable pressure') !== belowAllowable.pascals < 0)
        return 'an outcome against its margin';
      return wrongWithCautions(cautions);
    },
  },
  {
    name: 'oxygenAfterRelease',
    args: fc.tuple(release, maybeTrace),
    holds: (answer) => {
      const { figures, lowest, cautions } = /** @type {OxygenAfterRelease} */ (answer);
      if (figures.some((one) => !(one.fraction >= lowest.fraction && one.fraction <= 1))) return 'not the lowest';
      if (lowest.fraction < 0) return 'less than no oxygen';
      if (!cautions.some(({ code }) => code === 'measure oxygen')) return 'no word of measuring';
      return wrongWithCautions(cautions);
    },
  },
  {
    name: 'storedEnergy',
    args: fc.tuple(
      vessel,
      read,
      orNothing(fields({ systemPressure: a('gauge'), temperature: a('temperature') })),
      maybeTrace,
    ),
    holds: (answer) => {
      const { charged, inService, cautions } = /** @type {StoredEnergy} */ (answer);
      return wrongWithEnergy(charged) ?? wrongWithEnergy(inService) ?? wrongWithCautions(cautions);
    },
  },
  {
    name: 'ratings',
    args: fc.tuple(line, maybeTrace),
    holds: (answer) => {
      const { outcome, problems, cautions } = /** @type {Ratings} */ (answer);
      if ((outcome === 'nothing found') !== (problems.length === 0)) return 'an outcome against its problems';
      return wrongWithCautions(cautions);
    },
  },
  {
    name: 'purge',
    args: fc.tuple(purging, maybeTrace),
    holds: (answer) => {
      const { fillings, left, ratio, cautions } = /** @type {Purged} */ (answer);
      if (fillings !== left.length) return 'fillings that are not counted';
      if (!(ratio >= 0 && ratio <= 1) || left.some((x) => !(x >= 0 && x <= 1))) return 'a fraction that is none';
      return wrongWithCautions(cautions);
    },
  },
  {
    name: 'leakTest',
    args: fc.tuple(vessel, read, test, maybeTrace),
    holds: (answer) => {
      const { gauge, cautions } = /** @type {LeakShown} */ (answer);
      return gauge.fall.pascals < 0 ? 'a leak that raises the pressure' : wrongWithCautions(cautions);
    },
  },
  {
    name: 'workOrder',
    args: fc.oneof(
      fc.tuple(spec, fc.oneof(reading, expected), one(undefined), orNothing(ownWords)),
      fc.tuple(measured, rule).map(([[of, found, instruments], by]) => [
        /** @type {Recipe} */ (of),
        /** @type {Recipe} */ (found),
        /** @type {Recipe} */ ({
          t: 'fields',
          of: [
            ['instruments', instruments],
            ['rule', by],
          ],
        }),
      ]),
    ),
    holds: (answer) => {
      const { steps: all } = /** @type {WorkOrder} */ (answer);
      const people = all.filter(({ protects, state }) => protects === 'people' && state === 'to do');
      return people.length === 9 ? undefined : 'a step that protects people is left out';
    },
    echoes: true,
  },
  {
    name: 'needComplete',
    args: fc.tuple(order, signatures),
    holds: (answer) => {
      const { steps: all, protectionReplaced, cautions } = /** @type {SignedWork} */ (answer);
      const people = all.filter(({ protects, by }) => protects === 'people' && by !== undefined);
      if (people.length !== 9) return 'a step that protects people without a signature';
      if (protectionReplaced.length > 0 !== cautions.some(({ code }) => code === 'protection replaced'))
        return 'no word of what was replaced';
      return wrongWithCautions(cautions);
    },
    echoes: true,
  },
];
