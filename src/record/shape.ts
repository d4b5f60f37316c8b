// The shape of a round as it comes in. Shape only: no transforms (JSON Schema cannot express them), no meaning. Meaning
// is checked by the same functions that a caller of the core uses.
import * as z from 'zod/mini';
import { ACCUMULATOR_FIELDS, GROUP_FIELDS } from './carried.js';
import { InstrumentShape } from './characteristics.js';
import { entries } from './length.js';
import {
  absolutePressure,
  gaugePressure,
  name,
  OF_THE_HOUR,
  perKelvin,
  pressureDifference,
  READING_EVIDENCE,
  temperature,
  temperatureDifference,
  title,
  volume,
} from './measured.js';
import { SafetyShape } from './safety-shape.js';
import { StatedShape, TableShape } from './stated.js';
import { SupplyShape } from './supply-shape.js';

/** What is allowed: a tolerance about the target, in one of three ways, or limits of their own. */
const allowed = z.strictObject({
  plusMinus: z.optional(pressureDifference),
  below: z.optional(pressureDifference),
  above: z.optional(pressureDifference),
  plusMinusPercentOfGauge: z.optional(z.number()),
  applies: z.optional(z.enum(['at the measured temperature', 'at the reference temperature'])),
  minimum: z.optional(StatedShape),
  maximum: z.optional(StatedShape),
});

/** What the maker's manual says of one kind of accumulator. */
export const SpecificationShape = z.strictObject({
  name,
  gas: z.literal('nitrogen'),
  precharge: StatedShape,
  nominal: z.optional(StatedShape),
  ambient: absolutePressure,
  tolerance: allowed,
  toleranceAfterCharging: z.optional(allowed),
  separator: z.enum(['diaphragm', 'bladder', 'piston']),
  gasVolume: volume,
  allowable: gaugePressure,
  settling: z.strictObject({ allowance: pressureDifference, minutes: z.number() }),
  /** The steps to which the manual prints, and how far its ambient may lie from the one stated: for an uncertainty. */
  printed: z.optional(
    z.strictObject({
      pressure: z.union([pressureDifference, z.literal('as the table states')]),
      temperature: temperatureDifference,
      ambientLimit: pressureDifference,
    }),
  ),
  /** Thermal expansion of the vessel, for an uncertainty. */
  vessel: z.optional(
    z.strictObject({
      linearExpansion: perKelvin,
      limit: perKelvin,
      treated: z.enum(['corrected', 'as uncertainty']),
    }),
  ),
});

/** The rule by which readings decide (JCGM 106), with the largest risks of a wrong decision. */
export const RuleShape = z.strictObject({
  acceptance: z.enum(['simple acceptance', 'guarded acceptance', 'guarded rejection', 'guarded both ways']),
  risk: z.strictObject({ below: z.number(), above: z.number() }),
});

/** One timed reading of a visit. */
export const ReadingShape = z.strictObject({
  role: z.enum(['as found', 'after filling', 'after venting', 'settled', 'as left']),
  at: z.iso.datetime({ offset: true }),
  pressure: gaugePressure,
  temperature: z.optional(temperature),
  ambient: z.optional(absolutePressure),
  gaugeStep: z.optional(pressureDifference),
  ...OF_THE_HOUR,
  ...READING_EVIDENCE,
});

/** The readings taken at one accumulator, in the order in which they were taken. */
const visitOf = <T extends z.ZodMiniType>(reading: T) => z.array(reading).check(...entries(1, 100));

const groupFields = {
  name,
  specification: name,
  temperature: z.optional(temperature),
  ambient: z.optional(absolutePressure),
  gaugeStep: z.optional(pressureDifference),
  ...OF_THE_HOUR,
  instruments: READING_EVIDENCE.instruments,
  ...GROUP_FIELDS,
};

/** An accumulator may follow another specification than its group. */
const accumulatorFields = { name, specification: z.optional(name), ...ACCUMULATOR_FIELDS };

const roundFields = {
  version: z.literal(1),
  title: z.optional(title),
  rule: z.optional(RuleShape),
  modelErrorCorrelation: z.optional(z.number()),
};

/**
 * A round of checks as it comes in, version 1, as a zod schema. Specifications and instruments are referred to by name; a
 * group may state temperature, ambient, gauge step and instruments once for readings that do not state their own, and unit
 * served and circumstances of the visit for its accumulators. With a rule, readings whose instruments are stated are judged
 * with their uncertainty: of the instrument itself it stands with the instrument, of the hour with the reading or its
 * group, of the manual with the specification, and what is a choice with the round.
 *
 * It checks the shape alone; {@link reportRound} checks the meaning as well and reports every problem of both. It is a
 * Standard Schema too (its `~standard`), and {@link roundJsonSchema} gives the same as JSON Schema.
 *
 * @example
 * ```ts
 * RoundShape.safeParse(round).success; // => true
 * RoundShape.safeParse({ version: 2 }).success; // => false
 * ```
 */
export const RoundShape = z.strictObject({
  ...roundFields,
  instruments: z.optional(z.array(InstrumentShape)),
  tables: z.optional(z.array(TableShape)),
  supply: z.optional(SupplyShape),
  safety: z.optional(SafetyShape),
  specifications: z.array(SpecificationShape),
  groups: z.array(
    z.strictObject({
      ...groupFields,
      accumulators: z.array(z.strictObject({ ...accumulatorFields, visit: visitOf(ReadingShape) })),
    }),
  ),
});

/** A round of checks as it comes in. */
export interface Round extends z.infer<typeof RoundShape> {}

// The same, opened one level at a time, so that what is wrong inside one accumulator hides nothing of another.
export const RoundShell = z.strictObject({
  ...roundFields,
  instruments: z.optional(z.array(z.unknown())),
  tables: z.optional(z.array(z.unknown())),
  supply: z.optional(z.unknown()),
  safety: z.optional(z.unknown()),
  specifications: z.array(z.unknown()),
  groups: z.array(z.unknown()),
});
export const GroupShell = z.strictObject({ ...groupFields, accumulators: z.array(z.unknown()) });
export const AccumulatorShell = z.strictObject({ ...accumulatorFields, visit: visitOf(z.unknown()) });

export type RuleJson = z.infer<typeof RuleShape>;
