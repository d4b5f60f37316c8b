// The shape of what gas is on board and how it is filled, as a round states it, and of the plan, as a report says it.
import * as z from 'zod/mini';
import { OBJECTIVES } from '../supply/objective.js';
import { CAUTION_CODES, SUPPLY_CODES } from './codes.js';
import { gas, mark } from './gas-shape.js';
import { absolutePressure, gaugePressure, name, pressureDifference, temperature, volume } from './measured.js';

const objective = z.enum(OBJECTIVES);
const reason = z.strictObject({ code: z.enum(SUPPLY_CODES), text: z.string() });

const cause = z.union([z.enum(SUPPLY_CODES), z.enum(['the plan', 'the stop', 'the work'])]);

/** A bottle as it stands on board: what its label says, and what was read of it. */
export const BottleShape = z.strictObject({
  name,
  waterVolume: volume,
  label: z.strictObject({
    gas: name,
    purityPercent: z.union([z.number(), z.literal('not stated')]),
    /** Filling pressure and rating are meant at 15 °C, in this ambient. */
    filling: gaugePressure,
    rated: gaugePressure,
    ambient: absolutePressure,
  }),
  pressure: gaugePressure,
  temperature,
  ambient: absolutePressure,
  /** How far its pressure at 15 °C may be off for the error of gauge and thermometer. */
  within: pressureDifference,
  /** Not to be emptied below this. */
  residual: gaugePressure,
});

const supplyFields = {
  leastPurityPercent: z.union([z.number(), z.literal('not demanded')]),
  /** With the pressure in it before each connection, where it is known: of a vented one zero. */
  kit: z.strictObject({ volume, rated: gaugePressure, before: z.optional(gaugePressure) }),
  regulator: z.union([
    z.strictObject({ difference: pressureDifference, ratedInlet: gaugePressure, ratedOutlet: gaugePressure }),
    z.literal('none'),
  ]),
  /** All of them, the first first. */
  objectives: z.array(objective),
  /** Whether the manual permits to stop beyond its own allowance, at a computed pressure. */
  computedStop: z.enum(['permitted by the specification', 'not permitted']),
  /** As it was watched on such a vessel; without it both bounds are given. */
  exchange: z.optional(z.strictObject({ timeConstantMinutes: z.number(), movingMinutes: z.number() })),
  /** Full bottles that can be ordered. */
  order: z.optional(
    z.strictObject({
      waterVolume: volume,
      filling: gaugePressure,
      labelAmbient: absolutePressure,
      residual: gaugePressure,
      temperature,
      ambient: absolutePressure,
      reservePercent: z.number(),
    }),
  ),
};

/** Gas on board, and with what it is filled. */
export const SupplyShape = z.strictObject({ ...supplyFields, bottles: z.array(BottleShape) });
export const SupplyShell = z.strictObject({ ...supplyFields, bottles: z.array(z.unknown()) });

const named = { group: name, name };

const settled = z.strictObject({
  isothermal: gaugePressure,
  adiabatic: gaugePressure,
  inTime: z.optional(gaugePressure),
});

/** Where to stop, each wait and reading between two steps included. */
const stops = z.strictObject({
  way: z.enum(['stop of the specification', 'computed stop', 'in stages', 'no mark of the gauge to stop at']),
  steps: z.array(z.strictObject({ from: gaugePressure, stop: gaugePressure, mark, settled })),
  reaches: z.enum(['the target', 'the band', 'neither']),
});

/** Which bottle fills which accumulator in which order, where to stop filling and bleeding, what stays undone and what to order. */
export const filling = z.strictObject({
  bottles: z.array(
    z.strictObject({
      name,
      at15C: gaugePressure,
      state: z.enum(['full', 'part used']),
      contents: gas,
      aboveResidual: gas,
      use: z.enum(['used', 'not needed', 'left out']),
      because: z.array(reason),
      after: gaugePressure,
    }),
  ),
  steps: z.array(
    z.strictObject({
      bottle: name,
      ...named,
      moved: gas,
      vented: gas,
      ended: z.enum(['at the pressure wanted', 'equalised', "at the bottle's residual pressure"]),
      bottleAfter: gaugePressure,
      accumulatorAfter: gaugePressure,
    }),
  ),
  accumulators: z.array(
    z.strictObject({
      ...named,
      outcome: z.enum(['completed', 'nothing to add', 'undone']),
      because: z.array(reason),
      after: gaugePressure,
      missing: gas,
      /** From the bottle that the plan connects last. */
      stops: z.optional(stops),
    }),
  ),
  /** Nothing is planned for these, filled or bled, before their readings are looked at again. Only where there are any. */
  heldBack: z.optional(z.array(z.strictObject({ ...named, because: z.array(reason) }))),
  /** Where gas is to be let out: where to stop, and what it settles at. */
  bleeding: z.array(z.strictObject({ ...named, stops: z.union([stops, z.literal('leaves the model')]) })),
  /** What each accumulator held before the kit was connected for the reading as found, and what that has taken. */
  checks: z.optional(z.array(z.strictObject({ ...named, before: gaugePressure, fall: pressureDifference, gas }))),
  /** Their pressure wanted is above every bottle. */
  boosterNeeded: z.array(z.strictObject(named)),
  /** What is reached, what no plan can exceed, and the gap: connections and bottles as counts, the remainder in mol. */
  objectives: z.array(
    z.strictObject({
      objective,
      reached: z.number(),
      bound: z.union([z.number(), z.literal('not given')]),
      gap: z.union([z.number(), z.literal('not given')]),
    }),
  ),
  optimal: z.enum(['proven', 'not proven']),
  /** What the kit vents at all disconnections. */
  vented: gas,
  order: z.optional(
    z.strictObject({
      needed: z.union([z.number(), z.literal('not found')]),
      order: z.union([z.number(), z.literal('not found')]),
      fewest: z.enum(['proven', 'not proven']),
      because: z.array(reason),
    }),
  ),
  /** By their codes, with what gave rise to each; their texts are among the cautions of the report. */
  cautions: z.array(z.strictObject({ code: z.enum(CAUTION_CODES), cause })),
});

export type FillingCause = z.infer<typeof cause>;
export type BottleJson = z.infer<typeof BottleShape>;
export type SupplyJson = z.infer<typeof SupplyShape>;
export type FillingJson = z.infer<typeof filling>;
