// How sure a reading is: instruments of each kind, rules of decision, and what is known before reading.
import { ACCURACY_CLASSES, uncertaintyText } from 'isochore';
import fc from 'fast-check';
import { call, fields, listOf, maybe, one, orNothing, plain, steps } from '../draw.mjs';
import { isWellFormed } from '../holds.mjs';
import { maybeTrace } from './gas.mjs';
import { a, ambient, pressureStep } from './quantity.mjs';
import { spec, specAbout } from './target.mjs';
import { reading } from './verdict.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Budget, Decision, GlobalRisks, NoBudget, RoundAsWhole, Settling, Simulated, Slips, TooFew, UncertaintyCode } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Holds, Subject } from './subject.mjs' */

const bars = (/** @type {Arbitrary<number>} */ of) => call('pressureDifference', plain(of), one('bar'));
const kelvins = (/** @type {Arbitrary<number>} */ of) => call('temperatureDifference', plain(of), one('K'));
const day = one('2026-03-01', '2026-12-31', '2024-02-29');

/** @param {Arbitrary<Recipe>} correction @param {Arbitrary<Recipe>} expanded */
const certificate = (correction, expanded) =>
  fields({
    certificate: fields({
      correction,
      expandedUncertainty: expanded,
      coverageFactor: one(2, 2, 1.96, 3),
      due: day,
    }),
  });
const ofPressure = certificate(bars(steps(-2, 2)), bars(steps(0.1, 3)));
const ofTemperature = certificate(kelvins(steps(-2, 2)), kelvins(steps(0.1, 3)));

const fullScale = call('gauge', plain(fc.constantFrom(250, 400, 400, 600, 1000)), one('bar'));
const gauge = fc.oneof(
  fields({
    type: one('dial gauge'),
    fullScale,
    accuracy: fc.oneof(
      fields({ accuracyClass: one(...ACCURACY_CLASSES) }),
      fields({ limit: bars(steps(0.1, 5)) }),
      ofPressure,
    ),
    temperature: fc.oneof(a('temperature'), one('not known')),
    zero: one('with stop pin', 'without stop pin'),
  }),
  fields({
    type: one('digital gauge'),
    fullScale,
    accuracy: fc.oneof(
      fields({
        percentOfReading: plain(steps(0, 1)),
        percentOfSpan: plain(steps(0, 1)),
        digits: plain(fc.nat(5)),
      }),
      ofPressure,
    ),
    temperature: fc.oneof(
      fields({ is: a('temperature'), from: a('temperature'), percentOfSpanPerKelvin: one(0, 0.02, 0.1) }),
      one('not known'),
    ),
  }),
);

const everyThermometer = {
  accuracy: fc.oneof(fields({ limit: kelvins(steps(0.1, 4)) }), ofTemperature),
  step: kelvins(fc.constantFrom(0, 0.1, 0.5, 1)),
  shellToGas: kelvins(steps(0, 8)),
};
const thermometer = fc.oneof(
  fields({ type: one('contact thermometer'), ...everyThermometer }),
  fields({
    type: one('infrared thermometer'),
    ...everyThermometer,
    emissivity: fields({ assumed: plain(steps(0.3, 1)), limit: one(0, 0.02, 0.05, 0.15) }),
    surroundings: a('temperature'),
  }),
);

/** Instruments for a specification by a point, or by a table. @param {boolean} isTable @returns {Arbitrary<Recipe>} */
const instrumentsFor = (isTable) =>
  fields({
    gauge,
    thermometer,
    barometer: fields({ limit: bars(steps(0, 0.05, 100)) }),
    printed: fields({
      pressure: isTable ? one('as the table states') : bars(fc.constantFrom(0, 0.1, 0.5, 1, 5)),
      temperature: kelvins(fc.constantFrom(0, 0.5, 1)),
      ambientLimit: bars(steps(0, 0.05, 100)),
    }),
    modelErrorCorrelation: one(0, 0.5, 1, -1),
    vessel: fields({
      linearExpansion_per_K: one(0, 12e-6, 17e-6),
      limit_per_K: one(0, 0, 2e-6),
      treated: one('corrected', 'as uncertainty'),
    }),
    readings: one(1, 1, 2, 5, 100),
    on: day,
  });

/** A reading somewhere about the band, where what is not certain decides. */
const near = fields({
  pressure: call('gauge', plain(steps(125, 155)), one('bar')),
  temperature: call('temperature', plain(steps(5, 35)), one('°C')),
  ambient,
  gaugeStep: pressureStep,
  oilSide: one('drained, zero verified'),
  gasInside: one('nitrogen'),
  minutesAtRest: plain(steps(60, 120)),
});

/** A specification, a reading, and instruments that go with it. @type {Arbitrary<readonly [Recipe, Recipe, Recipe]>} */
export const measured = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(specAbout(140), near, instrumentsFor(false)) },
  { weight: 1, arbitrary: fc.tuple(spec, reading, instrumentsFor(false)) },
  { weight: 1, arbitrary: fc.tuple(spec, reading, instrumentsFor(true)) },
);

/** @type {Arbitrary<Recipe>} */
export const rule = fields({
  acceptance: one('simple acceptance', 'guarded acceptance', 'guarded rejection', 'guarded both ways'),
  risk: fields({ below: one(0.02, 0.05, 1e-6, 0.499), above: one(0.05, 0.02, 1e-6, 0.499) }),
});
const prior = fields({ mean: bars(steps(-10, 10)), standard: bars(steps(0.1, 8)) });

/** Sums of ten places of a few hundred numbers. */
const ROUNDING = 1e-9;
/** @param {number} p */
const isShare = (p) => p >= 0 && p <= 1 + ROUNDING;

/** Codes in words, or what is wrong with them. @param {readonly UncertaintyCode[]} codes */
const wrongWords = (codes) =>
  codes.some((code) => {
    const text = uncertaintyText(code);
    return text === '' || text.length > 400 || !isWellFormed(text);
  })
    ? 'no words for a code'
    : undefined;

/** @param {Budget | NoBudget} budget */
export function wrongWithBudget(budget) {
  if ('because' in budget) return wrongWords([budget.because]);
  const { contributions, standard, offTarget, interval, gum } = budget;
  const shares = contributions.map(({ share }) => share);
  if (!shares.every(isShare)) return 'a share not from 0 to 1';
  if (Math.abs(shares.reduce((sum, share) => sum + share, 0) - 1) > ROUNDING) return 'shares that do not add up to 1';
  if (shares.some((share, i) => share > (shares[i - 1] ?? 1) + ROUNDING)) return 'a larger share after a smaller one';
  if (!(standard.pascals > 0)) return 'an uncertainty not above zero';
  if (contributions.some((each) => !(each.standard.pascals >= 0))) return 'a contribution below zero';
  if (!(interval.lower.pascals <= offTarget.pascals && offTarget.pascals <= interval.upper.pascals))
    return 'an interval without its middle';
  if (!(gum.expanded.pascals > 0)) return 'an expanded uncertainty not above zero';
  return wrongWords([...contributions.map(({ of }) => of), ...budget.notCounted]);
}

/** @param {Settling} settling */
function wrongWithSettling({ standard, gaugeLimit, thermometerLimit, shellToGas, readings, accuracyClass, largest }) {
  for (const size of [standard, gaugeLimit])
    if (typeof size !== 'string' && !(size.pascals >= 0)) return 'to be settled by less than nothing';
  for (const size of [thermometerLimit, shellToGas])
    if (typeof size !== 'string' && !(size.kelvins >= 0)) return 'to be settled by less than nothing';
  if (typeof readings === 'number' && !(Number.isInteger(readings) && readings >= 2 && readings <= 100))
    return 'to be settled by no count of readings';
  if (accuracyClass !== 'no class' && !ACCURACY_CLASSES.includes(accuracyClass)) return 'an accuracy class of its own';
  return wrongWords([largest]);
}

/** @param {Decision} decision */
export function wrongWithDecision(decision) {
  if (decision.outcome === 'no decision') return wrongWords([decision.because]);
  const { below, within, above } = decision.probability;
  if (![below, within, above].every(isShare)) return 'a probability not from 0 to 1';
  if (Math.abs(below + within + above - 1) > ROUNDING) return 'probabilities that do not add up to 1';
  if (decision.outcome === 'within' && !decision.inBand) return 'within, and outside the band';
  if ((decision.outcome === 'undercharged' || decision.outcome === 'overcharged') && decision.inBand)
    return 'outside, and inside the band';
  const { outsideNow, outsideAfter } = decision.adjusting;
  if (!isShare(outsideNow) || !isShare(outsideAfter)) return 'a probability not from 0 to 1 of lying outside';
  if (decision.adjusting.worth && outsideAfter >= outsideNow) return 'worth adjusting for the worse';
  if ((decision.outcome === 'inconclusive') !== (decision.settling !== undefined))
    return 'settled in spite of a decision, or not without one';
  return decision.settling === undefined ? undefined : wrongWithSettling(decision.settling);
}

/** @type {Holds} */
const risksHold = (answer, args) => {
  const risks = /** @type {GlobalRisks | { because: 'reading below zero' }} */ (answer);
  if ('because' in risks) return wrongWords([risks.because]);
  const { conforming, falselyAccepted, falselyRejected, accepted, rejected, inconclusive } = risks;
  const { below, above } = falselyAccepted;
  const all = [conforming, below, above, falselyRejected, accepted, rejected, inconclusive];
  if (!all.every(isShare)) return 'a share not from 0 to 1';
  if (Math.abs(accepted + rejected + inconclusive - 1) > ROUNDING) return 'shares that do not add up to 1';
  if (below + above > accepted + ROUNDING) return 'more accepted wrongly than accepted';
  if (falselyRejected > rejected + ROUNDING) return 'more rejected wrongly than rejected';
  if (falselyRejected > conforming + ROUNDING) return 'more rejected wrongly than there are inside';
  if (below + above > 1 - conforming + ROUNDING) return 'more accepted wrongly than there are outside';
  const { acceptance } = /** @type {import('isochore').Rule} */ (args[3]);
  return acceptance === 'simple acceptance' && inconclusive > ROUNDING
    ? 'simple acceptance that leaves some without a decision'
    : undefined;
};

/** @type {Holds} */
const simulatedHolds = (answer) => {
  const found = /** @type {Simulated | { because: 'reading below zero' }} */ (answer);
  if ('because' in found) return wrongWords([found.because]);
  const { mean, standard, interval } = found;
  if (!(standard.pascals >= 0)) return 'an uncertainty below zero';
  const [lower, upper] = [interval.lower.pascals, interval.upper.pascals];
  if (!(lower <= upper)) return 'an interval upside down';
  // Nineteen draws in twenty lie in it, and no mean is further from them than the spread of the rest carries it.
  const reach = 6 * standard.pascals;
  return mean.pascals >= lower - reach && mean.pascals <= upper + reach ? undefined : 'a mean far from its interval';
};

/** @param {unknown} answer */
const slipsHold = (answer) => {
  const { outcome, candidates } = /** @type {Slips} */ (answer);
  if ((outcome === 'slip possible') !== candidates.length > 0)
    return `${outcome}, with ${candidates.length} candidates`;
  for (const { pressure, temperature, verdict } of candidates) {
    if (verdict.outcome !== 'within' && verdict.outcome !== 'gauge too coarse')
      return `a slip that leads to ${verdict.outcome}`;
    if (!(pressure.pascals > 0 && temperature.kelvins > 0)) return 'a reading that no instrument shows';
  }
  return undefined;
};

/** @type {Holds} */
const togetherHolds = (answer, [checks]) => {
  const found = /** @type {TooFew | RoundAsWhole} */ (answer);
  const given = /** @type {readonly unknown[]} */ (checks).length;
  if (found.outcome === 'too few readings')
    return found.leftOut.length <= given && given - found.leftOut.length < found.needed ? undefined : 'enough of them';
  const { outcome, shift, candidates, readings, leftOut } = found;
  const indices = new Set([...readings, ...leftOut].map(({ index }) => index));
  if (indices.size !== given || readings.length + leftOut.length !== given) return 'not each reading once';
  if (outcome === 'no common shift' && candidates.length > 0) return 'a slip that explains no shift';
  if (!(shift.ratio.standard > 0 && shift.difference.standard.pascals > 0)) return 'a shift without uncertainty';
  return shift.explains <= readings.length ? undefined : 'more explained than read';
};

const CODES = [
  ...['gauge', 'gauge temperature', 'gauge step', 'thermometer', 'thermometer step', 'emissivity', 'shell to gas'],
  ...['barometer', 'printed pressure', 'printed temperature', 'printed ambient', 'equation of state', 'vessel'],
  ...['temperature of the gauge', 'uncertainty of the gas model', 'drift since calibration', 'reading below zero'],
  ...['reading in the first tenth of a scale with stop pin', 'no evidence'],
];
const ownWords = fields({ gauge: maybe(one('ein Text', '')), vessel: maybe(one('{nothing}', '$&')) });

/** @type {readonly Subject[]} */
export const UNCERTAINTY = [
  {
    name: 'uncertainty',
    args: fc.tuple(measured, maybeTrace).map(([of, trace]) => [...of, trace]),
    holds: (answer) => wrongWithBudget(/** @type {Budget | NoBudget} */ (answer)),
  },
  {
    name: 'decide',
    args: fc.tuple(measured, rule, maybeTrace).map(([of, by, trace]) => [...of, by, trace]),
    holds: (answer) => wrongWithDecision(/** @type {Decision} */ (answer)),
  },
  {
    name: 'globalRisks',
    args: fc.tuple(measured, rule, prior).map(([of, by, known]) => [...of, by, known]),
    holds: risksHold,
    weight: 0.5,
  },
  {
    name: 'simulate',
    args: fc
      .tuple(measured, fields({ draws: one(1000, 1000, 2000), seed: one(0, 1, 4294967295) }))
      .map(([of, draws]) => [...of, draws]),
    holds: simulatedHolds,
    weight: 0.25,
  },
  {
    name: 'slips',
    args: fc.tuple(measured, fc.boolean()).map(([of, all]) => (all ? of : of.slice(0, 2))),
    holds: slipsHold,
  },
  {
    name: 'slipText',
    args: fc.tuple(
      fc.oneof(
        fields({ code: one('unit of pressure'), number: one(14, 1e9), stated: one('bar'), readAs: one('MPa', 'psi') }),
        fields({
          code: one('absolute stated as gauge', 'gauge stated as absolute'),
          number: one(14),
          unit: one('bar'),
        }),
        fields({ code: one('unit of temperature'), number: one(40), stated: one('°C'), readAs: one('°F') }),
      ),
    ),
    holds: (answer) => (typeof answer === 'string' && answer !== '' ? undefined : 'no text'),
    echoes: true,
  },
  {
    name: 'settledBy',
    args: fc.tuple(
      fields({
        largest: one('gauge'),
        standard: one('nothing'),
        gaugeLimit: fc.oneof(one('no gauge', 'x'), bars(steps(0.1, 5))),
        accuracyClass: one('no class', 1, 0.25),
        thermometerLimit: fc.oneof(one('no thermometer'), kelvins(steps(0.1, 5))),
        shellToGas: fc.oneof(one('no settling'), kelvins(steps(0.1, 5))),
        readings: one('no repeats', 4),
      }),
      fields({ step: one(1, 0.5, 1e-300), unit: one('bar', 'psi') }),
    ),
    holds: (answer) => (Array.isArray(answer) && answer.length > 0 ? undefined : 'no way'),
    echoes: true,
  },
  {
    name: 'together',
    args: fc.tuple(
      listOf(
        measured.chain(([spec, reading, instruments]) =>
          fields({
            spec: fc.constant(/** @type {Recipe} */ (spec)),
            reading: fc.constant(/** @type {Recipe} */ (reading)),
            instruments: maybe(fc.constant(/** @type {Recipe} */ (instruments))),
          }),
        ),
        0,
        10,
      ),
    ),
    holds: togetherHolds,
    weight: 0.25,
  },
  {
    name: 'uncertaintyText',
    args: fc.tuple(one(...CODES), orNothing(ownWords)),
    holds: (answer) => (typeof answer === 'string' && answer.length < 10_000_000 ? undefined : 'no text'),
    echoes: true,
  },
];
