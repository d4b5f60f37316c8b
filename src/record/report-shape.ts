// The shape of a report as it goes out: plain JSON data, every pressure with value, unit and basis.
import * as z from 'zod/mini';
import { ACCUMULATOR_FIELDS, GROUP_FIELDS } from './carried.js';
import { InstrumentShape } from './characteristics.js';
import { decision, decisionOutcome, slipCandidate, term, together, uncertainty } from './certainty-shape.js';
import { gas, mark } from './gas-shape.js';
import { CAUSES, CAUTION_CODES, OUTCOMES, PROBLEM_CODES, REASONS } from './codes.js';
import {
  absolutePressure,
  gaugePressure,
  name,
  OF_THE_HOUR,
  pressureDifference,
  READING_EVIDENCE,
  temperature,
} from './measured.js';
import { safety } from './safety-shape.js';
import { RuleShape } from './shape.js';
import { filling } from './supply-shape.js';

const reason = z.enum(REASONS);
const cautionCode = z.enum(CAUTION_CODES);
const outcome = z.enum(OUTCOMES);

const stated = z.enum(['for the reading', 'for the group']);

const gasSum = z.strictObject({ accumulators: z.number(), gas: z.optional(gas) });

const withheld = z.strictObject({ action: z.literal('withheld'), because: z.array(reason), why: z.string() });

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
    ...OF_THE_HOUR,
    stated: z.strictObject({
      temperature: stated,
      ambient: stated,
      gaugeStep: stated,
      gaugeTemperature: z.optional(stated),
      ambientLimit: z.optional(stated),
      readings: z.optional(stated),
    }),
    ...READING_EVIDENCE,
  }),
  outcome,
  because: z.array(reason),
  why: z.string(),
  target: gaugePressure,
  /** By what the target was found: the reference point, or the row or rows of the maker's table. */
  targetFrom: z.strictObject({
    by: z.enum(['constant density from the reference point', 'table', 'constant density from the nearest row']),
    rows: z.array(z.strictObject({ temperature, pressure: gaugePressure })),
  }),
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
  causes: z.optional(z.array(z.strictObject({ code: z.enum(CAUSES), text: z.string() }))),
  stepNeeded: z.optional(pressureDifference),
  /** How sure the comparison is: only where the round has a rule. */
  uncertainty: z.optional(uncertainty),
  /** What the reading decides by the rule: only where all is stated that the uncertainty rests on. */
  decision: z.optional(decision),
  /** Only where a slip is possible, and not stated as ruled out: then the charge is withheld. */
  slips: z.optional(z.array(slipCandidate)),
  charge,
  cautions: z.array(cautionCode),
});

/**
 * A report on a round of checks, version 1, as a zod schema: plain JSON data. Pressures are in the unit of the gauge they
 * were read on; values are exact, `onGauge`, `mark` and `rounded` are for people. It is a Standard Schema too (its
 * `~standard`), and {@link reportJsonSchema} gives the same as JSON Schema.
 *
 * @example
 * ```ts
 * RoundReportShape.safeParse(reportRound(round, { problems: 'refuse the round' })).success; // => true
 * ```
 */
export const RoundReportShape = z.strictObject({
  /** Of the schema of round and report. */
  version: z.literal(1),
  /** Version of isochore that judged. */
  libraryVersion: z.string(),
  title: z.optional(z.string()),
  /** `partial`: something in the document was wrong, and what depends on it is not judged. Never to be shown as whole. */
  complete: z.enum(['complete', 'partial']),
  /** How many problems were found; `problems` lists up to a thousand of them. */
  problemsFound: z.number(),
  problems: z.array(
    z.strictObject({
      code: z.enum(PROBLEM_CODES),
      path: z.string(),
      found: z.string(),
      wanted: z.string(),
      remedy: z.string(),
      /** The values in the two texts by the names that they have there. */
      values: z.record(z.string(), z.string()),
      about: z.optional(z.string()),
    }),
  ),
  /** The usual cautions of the work, and those of any check below; each check names its own by code. */
  cautions: z.array(
    z.strictObject({ code: cautionCode, severity: z.enum(['danger', 'caution', 'note']), text: z.string() }),
  ),
  models: z.array(z.strictObject({ id: z.string(), citation: z.string(), doi: z.optional(z.string()) })),
  /** How many accumulators were found in each outcome. */
  counts: z.partialRecord(outcome, z.number()),
  /** The rule by which readings decide, as the round has it. */
  rule: z.optional(RuleShape),
  /** How many readings as found came to each decision, where their instruments are stated. */
  decisions: z.optional(z.partialRecord(decisionOutcome, z.number())),
  /** The round as a whole, gauge by gauge: to be looked at before any single accumulator. */
  together: z.optional(z.array(together)),
  /** What the codes of uncertainty below mean, each once. */
  terms: z.optional(z.array(term)),
  /**
   * Gas to add, summed over the accumulators for which a quantity is given, and rounded up for the order: as found, and
   * what is still to add after the work. Of the judged part alone, where the report is partial.
   */
  gasToAdd: z.strictObject({ asFound: gasSum, stillToAdd: gasSum }),
  /** Which bottle fills what, where the round states its supply and that is sound. Of the judged part alone. */
  filling: z.optional(filling),
  /** Numbers about what can hurt, for which the round states what they rest on. They clear nothing. */
  safety: z.optional(safety),
  /** As listed in the round. */
  instruments: z.array(InstrumentShape),
  /** What the groups say of themselves. */
  groups: z.array(z.strictObject({ name, specification: name, ...GROUP_FIELDS })),
  accumulators: z.array(
    z.strictObject({
      group: name,
      name,
      specification: name,
      /** As the round says; what it does not say of the accumulator but of its group is taken from there. */
      ...ACCUMULATOR_FIELDS,
      /**
       * By the reading as left; by the one as found, if nothing was read after it. `read again` where readings after the
       * work end without one as left, where a decision is inconclusive, where it differs from the outcome, or where the reading
       * may be a slip (but above the allowable pressure it is to be made safe, and `work needed`); `work needed` where an empty gas side was filled without its cause being cleared.
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
  notJudged: z.array(
    z.strictObject({
      path: z.string(),
      group: z.optional(z.string()),
      name: z.optional(z.string()),
      unitServed: z.optional(name),
    }),
  ),
  /**
   * The round as it was given, so that {@link reverify} can judge it again. Left out of a partial report where the document
   * was no JSON data or held a key twice.
   */
  input: z.optional(z.unknown()),
  /** SHA-256 of the canonical JSON (RFC 8785) of this report without this field, in hexadecimal digits. No signature. */
  digest: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
});

/** A report on a round of checks. */
export interface RoundReport extends z.infer<typeof RoundReportShape> {}
/** An accumulator of a report: as the round names it, its state, and its readings as found and as left as they were judged. */
export type AccumulatorJson = RoundReport['accumulators'][number];
export type JudgedJson = z.infer<typeof judged>;
export type ChargeJson = z.infer<typeof charge>;
