// The shape of how sure a reading is, what it decides and what it may have been meant as, as a report says it.
import * as z from 'zod/mini';
import { CONTRIBUTION, LACKING, NOT_COUNTED, UNDECIDED } from '../basis/words.js';
import { codesOf, OUTCOMES, SETTLED_BY, UNCERTAINTY_CODES } from './codes.js';
import {
  gaugePressure,
  name,
  pressureDifference,
  pressureUnit,
  temperature,
  temperatureDifference,
  temperatureUnit,
} from './measured.js';

const contribution = z.enum(codesOf(CONTRIBUTION));
const notCounted = z.enum(codesOf(NOT_COUNTED));
const undecided = z.enum(codesOf(UNDECIDED));

/** The texts stand once in the report, as its `terms`. */
export const uncertainty = z.union([
  z.strictObject({
    outcome: z.literal('stated'),
    /** With the corrections of the certificates. */
    corrected: gaugePressure,
    temperature,
    /** Corrected reading less target. */
    offTarget: pressureDifference,
    standard: pressureDifference,
    /** Of the difference from the target, from the distribution of the sum. */
    interval: z.strictObject({ coverage: z.number(), lower: pressureDifference, upper: pressureDifference }),
    /** The largest contribution, and every other one that has a tenth of the variance or more; the largest first. */
    largest: z.array(z.strictObject({ code: contribution, share: z.number(), standard: pressureDifference })),
    notCounted: z.array(notCounted),
  }),
  /** The accuracy of the gauge does not hold where it reads. */
  z.strictObject({ outcome: z.literal('not covered'), because: undecided }),
  /** Judged by the reading as it stands, because something is lacking. */
  z.strictObject({ outcome: z.literal('not stated'), lacking: z.array(z.enum(codesOf(LACKING))) }),
]);

const settling = z.strictObject({
  largest: contribution,
  standard: z.union([pressureDifference, z.literal('nothing')]),
  gaugeLimit: z.union([pressureDifference, z.literal('no gauge')]),
  accuracyClass: z.union([z.number(), z.literal('no class')]),
  thermometerLimit: z.union([temperatureDifference, z.literal('no thermometer')]),
  shellToGas: z.union([temperatureDifference, z.literal('no settling')]),
  readings: z.union([z.number(), z.literal('no repeats')]),
  /** The same for people: each by itself would do. */
  ways: z.array(z.strictObject({ code: z.enum(SETTLED_BY), text: z.string() })),
});

export const decisionOutcome = z.enum(['within', 'undercharged', 'overcharged', 'inconclusive', 'no decision']);

export const decision = z.union([
  z.strictObject({
    outcome: z.enum(['within', 'undercharged', 'overcharged', 'inconclusive']),
    inBand: z.boolean(),
    probability: z.strictObject({ below: z.number(), within: z.number(), above: z.number() }),
    direction: z.enum(['low', 'high', 'not certain']),
    adjusting: z.strictObject({ worth: z.boolean(), outsideNow: z.number(), outsideAfter: z.number() }),
    settling: z.optional(settling),
  }),
  z.strictObject({ outcome: z.literal('no decision'), because: undecided }),
]);

const ofPressure = { number: z.number(), stated: pressureUnit, readAs: pressureUnit };
const ofTemperature = { number: z.number(), stated: temperatureUnit, readAs: temperatureUnit };
const basis = z.enum(['absolute stated as gauge', 'gauge stated as absolute']);
const slip = z.union([
  z.strictObject({ code: z.literal('unit of pressure'), ...ofPressure, text: z.string() }),
  z.strictObject({ code: basis, number: z.number(), unit: pressureUnit, text: z.string() }),
  z.strictObject({ code: z.literal('unit of temperature'), ...ofTemperature, text: z.string() }),
]);

/** What a reading far off may have been meant as, nearest to its target first. Nothing is corrected. */
export const slipCandidate = z.strictObject({
  slips: z.array(slip),
  pressure: gaugePressure,
  temperature,
  outcome: z.enum(OUTCOMES),
});

const estimate = z.strictObject({ value: pressureDifference, standard: pressureDifference });
const slipKind = z.union([
  z.strictObject({ code: z.literal('unit of pressure'), stated: pressureUnit, readAs: pressureUnit }),
  z.strictObject({ code: basis, unit: pressureUnit }),
  z.strictObject({ code: z.literal('unit of temperature'), stated: temperatureUnit, readAs: temperatureUnit }),
]);

const readWith = {
  gauge: name,
  thermometer: z.optional(name),
  /** Readings as found that were taken with them. */
  readings: z.number(),
  /** How many of these do not count: no evidence, or no answer. */
  leftOut: z.number(),
};

/** What the readings as found that were taken with one gauge and one thermometer say together. */
export const together = z.union([
  z.strictObject({ ...readWith, outcome: z.literal('too few readings'), needed: z.number() }),
  z.strictObject({
    ...readWith,
    outcome: z.enum(['no common shift', 'common shift']),
    shift: z.strictObject({
      ratio: z.strictObject({ value: z.number(), standard: z.number() }),
      difference: estimate,
      temperature: z.strictObject({ value: temperatureDifference, standard: temperatureDifference }),
      better: z.enum(['ratio', 'difference', 'cannot be told']),
      explains: z.number(),
      instruments: z.enum(['can explain it', 'cannot explain it', 'not stated']),
    }),
    /** Slips that, made at every reading, leave little of a common shift; what leaves least comes first. */
    candidates: z.array(z.strictObject({ slip: slipKind, remaining: estimate, explains: z.number() })),
    /** Of a common shift, the accumulators that it does not explain: findings of their own. */
    notExplained: z.array(z.strictObject({ group: name, name })),
  }),
]);

/** The texts of the codes of uncertainty in a report, each once. */
export const term = z.strictObject({ code: z.enum(UNCERTAINTY_CODES), text: z.string() });

export type UncertaintyJson = z.infer<typeof uncertainty>;
export type DecisionJson = z.infer<typeof decision>;
export type SettlingJson = z.infer<typeof settling>;
export type SlipCandidateJson = z.infer<typeof slipCandidate>;
export type TogetherJson = z.infer<typeof together>;
