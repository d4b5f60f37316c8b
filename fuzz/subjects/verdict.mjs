// Band and verdict, and the adjustment table.
import { REASONS } from 'isochore/record';
import fc from 'fast-check';
import { call, fields, listOf, maybe, one, orNothing, plain, steps } from '../draw.mjs';
import { conditions, maybeTrace, read } from './gas.mjs';
import { a, ambient, pressureStep } from './quantity.mjs';
import { spec } from './target.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Band, Verdict } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Holds, Subject } from './subject.mjs' */

/** @type {Arbitrary<Recipe>} */
export const reading = fields({
  pressure: fc.oneof(
    { weight: 9, arbitrary: a('gauge') },
    { weight: 1, arbitrary: call('gauge', plain(steps(-0.5, 10)), one('bar')) },
  ),
  temperature: a('temperature'),
  ambient,
  gaugeStep: pressureStep,
  oilSide: one(
    'drained, zero verified',
    'drained, zero verified',
    'drained, zero verified',
    'not drained',
    'not known',
  ),
  systemPressure: maybe(a('gauge')),
  fullScale: maybe(a('gauge')),
  correctionIncluded: maybe(a('pressureDifference')),
  gasInside: one('nitrogen', 'nitrogen', 'nitrogen', 'not known'),
  minutesAtRest: fc.oneof(one('not known'), plain(steps(0, 120)), one(1000)),
  emptyGasSide: maybe(one('investigated and cleared')),
  possibleSlip: maybe(one('read again and ruled out')),
});

/** @param {Band} band */
export function wrongWithBand({ lower, upper, onGauge }) {
  if (!(lower.pascals > 0)) return 'a lower limit not above zero';
  if (!(lower.pascals <= upper.pascals)) return 'limits crossed';
  return typeof onGauge === 'string' || Number(onGauge.lower) <= Number(onGauge.upper) ? undefined : 'marks crossed';
}

/** @type {Holds} */
export const verdictHolds = (answer) => {
  const verdict = /** @type {Verdict} */ (answer);
  if (verdict.because.length === 0) return 'no reason';
  const { lower, upper } = verdict.band;
  if (verdict.target.pascals < lower.pascals || verdict.target.pascals > upper.pascals)
    return 'a target outside its band';
  if ('insideBandBy' in verdict && verdict.outcome !== 'gas side empty') {
    if ((verdict.outcome === 'within') !== verdict.insideBandBy.pascals >= 0) return 'an outcome against its margin';
  }
  return wrongWithBand(verdict.band);
};

const tableGiven = fields({
  from: call('temperature', plain(steps(-20, 20, 1)), one('°C')),
  to: call('temperature', plain(steps(20, 60, 1)), one('°C')),
  every: call('temperatureDifference', plain(steps(2, 30)), one('K', '°F')),
  temperatureStep: fields({ step: one(1, 0.1, 0.5), unit: one('°C', 'K', '°F') }),
  ambient,
  gaugeStep: pressureStep,
});
const adjustment = call('adjustmentTable', spec, tableGiven);

const sentence = one(
  'ein Text',
  '{reading} statt {target}',
  '{off} zu wenig',
  '{{reading}}',
  '{reading',
  '{nothing}',
  '$& $1',
);
const ownWords = fields({
  reasons: maybe(fields({ 'below the lower limit': sentence, 'inside the limits': maybe(sentence) })),
  explained: maybe(sentence),
});

/** @type {readonly Subject[]} */
export const VERDICT = [
  {
    name: 'band',
    args: fc.tuple(spec, conditions, pressureStep, maybeTrace),
    holds: (answer) => wrongWithBand(/** @type {Band} */ (answer)),
  },
  { name: 'judge', args: fc.tuple(spec, reading, maybeTrace), holds: verdictHolds, weight: 2 },
  {
    name: 'why',
    args: fc.tuple(spec, reading, fields({ because: listOf(one(...REASONS), 1, 3) }), orNothing(ownWords)),
    holds: (answer) =>
      typeof answer === 'string' && !/NaN|undefined|\[object/.test(answer) ? undefined : 'no reason in words',
    echoes: true,
  },
  {
    name: 'referred',
    args: fc.tuple(spec, read, maybeTrace),
    holds: (answer, [of]) => {
      const { ambient } = /** @type {import('isochore').Specification} */ (of);
      const { pascals } = /** @type {import('isochore').GaugePressure} */ (answer);
      return pascals >= -ambient.pascals ? undefined : 'referred below vacuum';
    },
  },
  {
    name: 'explainingTemperature',
    args: fc.tuple(spec, read, maybeTrace),
    holds: (answer) => {
      const found = /** @type {import('isochore').Temperature | string} */ (answer);
      return typeof found === 'string' || (found.kelvins > 0 && found.kelvins <= 1000) ? undefined : 'beyond the model';
    },
  },
  {
    name: 'adjustmentTable',
    args: fc.tuple(spec, tableGiven),
    holds: (answer) =>
      /** @type {import('isochore').AdjustmentTable} */ (answer).rows
        .map((row) => wrongWithBand(row.band))
        .find((wrong) => wrong !== undefined),
  },
  { name: 'adjustmentText', args: fc.tuple(adjustment), holds: isText },
  { name: 'adjustmentCsv', args: fc.tuple(adjustment), holds: isText },
];

/** @param {unknown} answer */
function isText(answer) {
  return typeof answer === 'string' && answer !== '' && !/NaN|undefined|Infinity/.test(answer) ? undefined : 'no table';
}
