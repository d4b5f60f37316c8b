// The shape of a round as it comes in. Shape only: no transforms (JSON Schema cannot express them), no meaning. Meaning
// is checked by the same functions that a caller of the core uses.
import * as z from 'zod/mini';
import {
  absolutePressure,
  gaugePressure,
  name,
  pressureDifference,
  READING_EVIDENCE,
  temperature,
  volume,
} from './measured.js';

/** One column of the maker's manual: what a pre-charge should be. */
export const SpecificationShape = z.strictObject({
  name,
  gas: z.literal('nitrogen'),
  precharge: z.strictObject({ pressure: gaugePressure, temperature }),
  ambient: absolutePressure,
  tolerance: z.strictObject({
    plusMinus: z.optional(pressureDifference),
    below: z.optional(pressureDifference),
    above: z.optional(pressureDifference),
    plusMinusPercentOfGauge: z.optional(z.number()),
    applies: z.enum(['at the measured temperature', 'at the reference temperature']),
  }),
  gasVolume: volume,
  allowable: gaugePressure,
  settling: z.strictObject({ allowance: pressureDifference, minutes: z.number() }),
});

/** One timed reading of a visit. */
export const ReadingShape = z.strictObject({
  role: z.enum(['as found', 'after filling', 'after venting', 'settled', 'as left']),
  at: z.iso.datetime({ offset: true }),
  pressure: gaugePressure,
  temperature: z.optional(temperature),
  ambient: z.optional(absolutePressure),
  gaugeStep: z.optional(pressureDifference),
  ...READING_EVIDENCE,
});

/** The readings taken at one accumulator, in the order in which they were taken. */
const visitOf = <T extends z.ZodMiniType>(reading: T) => z.array(reading).check(z.minLength(1), z.maxLength(100));

const groupFields = {
  name,
  specification: name,
  temperature: z.optional(temperature),
  ambient: z.optional(absolutePressure),
  gaugeStep: z.optional(pressureDifference),
};

const roundFields = {
  version: z.literal(1),
  title: z.optional(z.string().check(z.maxLength(200))),
};

/**
 * A round of checks as it comes in, version 1, as a zod schema. Specifications and groups are referred to by name; a
 * group may state temperature, ambient and gauge step once for readings that do not state their own.
 *
 * It checks the shape alone; {@link reportRound} checks the meaning as well and reports every problem of both.
 */
export const RoundShape = z.strictObject({
  ...roundFields,
  specifications: z.array(SpecificationShape),
  groups: z.array(
    z.strictObject({ ...groupFields, accumulators: z.array(z.strictObject({ name, visit: visitOf(ReadingShape) })) }),
  ),
});

/** A round of checks as it comes in. */
export type Round = z.infer<typeof RoundShape>;

// The same, opened one level at a time, so that what is wrong inside one accumulator hides nothing of another.
export const RoundShell = z.strictObject({
  ...roundFields,
  specifications: z.array(z.unknown()),
  groups: z.array(z.unknown()),
});
export const GroupShell = z.strictObject({ ...groupFields, accumulators: z.array(z.unknown()) });
export const AccumulatorShell = z.strictObject({ name, visit: visitOf(z.unknown()) });

export type ReadingJson = z.infer<typeof ReadingShape>;
