// The shape of a report as it goes out: plain JSON data, every pressure with value, unit and basis.
import * as z from 'zod/mini';
import {
  absolutePressure,
  gaugePressure,
  name,
  pressureDifference,
  pressureUnit,
  READING_EVIDENCE,
  temperature,
} from './measured.js';

const stated = z.enum(['for the reading', 'for the group']);

const gas = z.strictObject({
  amount: z.strictObject({ value: z.number(), unit: z.literal('mol') }),
  mass: z.strictObject({ value: z.number(), unit: z.literal('kg') }),
  normalVolume: z.strictObject({
    value: z.number(),
    unit: z.literal('m3'),
    at: z.strictObject({ pressure: absolutePressure, temperature }),
  }),
  rounded: z.strictObject({ mass: z.string(), normalVolume: z.string() }),
});

const gasSum = z.strictObject({ accumulators: z.number(), gas: z.optional(gas) });

const mark = z.strictObject({ value: z.string(), unit: pressureUnit, basis: z.literal('gauge') });

const withheld = z.strictObject({ action: z.literal('withheld'), because: z.array(z.string()), why: z.string() });

const charge = z.union([
  z.strictObject({ action: z.literal('none') }),
  withheld,
  z.strictObject({
    action: z.enum(['add', 'vent']),
    gas,
    stop: z.union([
      z.strictObject({
        action: z.literal('stop'),
        pressure: gaugePressure,
        mark: z.union([mark, z.literal('no mark of the gauge to stop at')]),
      }),
      withheld,
    ]),
    settleMinutes: z.number(),
    then: z.literal('read again'),
  }),
]);

const judged = z.strictObject({
  at: z.string(),
  reading: z.strictObject({
    pressure: gaugePressure,
    temperature,
    ambient: absolutePressure,
    gaugeStep: pressureDifference,
    stated: z.strictObject({ temperature: stated, ambient: stated, gaugeStep: stated }),
    ...READING_EVIDENCE,
  }),
  outcome: z.enum([
    'gas not known',
    'not comparable',
    'gas side empty',
    'gauge too coarse',
    'undercharged',
    'overcharged',
    'within',
  ]),
  because: z.array(z.string()),
  why: z.string(),
  target: gaugePressure,
  band: z.strictObject({
    lower: gaugePressure,
    upper: gaugePressure,
    onGauge: z.union([
      z.strictObject({ lower: mark, upper: mark }),
      z.literal('no mark of the gauge lies in the band'),
    ]),
  }),
  offTarget: z.optional(pressureDifference),
  insideBandBy: z.optional(pressureDifference),
  referred: z.optional(gaugePressure),
  explainingTemperature: z.optional(z.union([temperature, z.literal('none in range')])),
  causes: z.optional(z.array(z.string())),
  stepNeeded: z.optional(pressureDifference),
  charge,
  cautions: z.array(z.string()),
});

/**
 * A report on a round of checks, version 1, as a zod schema: plain JSON data. Pressures are in the unit of the gauge they
 * were read on; values are exact, `onGauge`, `mark` and `rounded` are for people.
 */
export const RoundReportShape = z.strictObject({
  version: z.literal(1),
  title: z.optional(z.string()),
  /** `partial`: something in the document was wrong, and what depends on it is not judged. Never to be shown as whole. */
  complete: z.enum(['complete', 'partial']),
  /** How many problems were found; `problems` lists up to a thousand of them. */
  problemsFound: z.number(),
  problems: z.array(
    z.strictObject({
      code: z.string(),
      path: z.string(),
      found: z.string(),
      wanted: z.string(),
      remedy: z.string(),
      about: z.optional(z.string()),
    }),
  ),
  /** The usual cautions of the work, and those of any check below; each check names its own by code. */
  cautions: z.array(
    z.strictObject({ code: z.string(), severity: z.enum(['danger', 'caution', 'note']), text: z.string() }),
  ),
  models: z.array(z.strictObject({ id: z.string(), citation: z.string(), doi: z.optional(z.string()) })),
  /** How many accumulators were found in each outcome. */
  counts: z.record(z.string(), z.number()),
  /**
   * Gas to add, summed over the accumulators for which a quantity is given, and rounded up for the order: as found, and
   * what is still to add after the work. Of the judged part alone, where the report is partial.
   */
  gasToAdd: z.strictObject({ asFound: gasSum, stillToAdd: gasSum }),
  accumulators: z.array(
    z.strictObject({
      group: name,
      name,
      specification: name,
      /**
       * By the reading as left; by the one as found, if nothing was read after it. `read again` where readings after the
       * work end without one as left; `work needed` where an empty gas side was filled without its cause being cleared.
       */
      state: z.enum(['in order', 'work needed', 'read again']),
      /** The work needed is judged on this reading. */
      asFound: judged,
      /** The work done is judged on this reading. */
      asLeft: z.union([judged, z.literal('not read')]),
    }),
  ),
  /**
   * Accumulators that could not be judged, by path; their problems, or those of their group or specification, say why.
   * Those that were not even read, in an unreadable document or beyond its limit, are not listed.
   */
  notJudged: z.array(z.strictObject({ path: z.string(), group: z.optional(z.string()), name: z.optional(z.string()) })),
});

/** A report on a round of checks. */
export type RoundReport = z.infer<typeof RoundReportShape>;
export type JudgedJson = z.infer<typeof judged>;
export type GasJson = z.infer<typeof gas>;
export type ChargeJson = z.infer<typeof charge>;
