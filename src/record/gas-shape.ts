// An amount of gas and a mark of a gauge, as a report says them.
import * as z from 'zod/mini';
import { absolutePressure, pressureUnit, temperature } from './measured.js';

export const gas = z.strictObject({
  amount: z.strictObject({ value: z.number(), unit: z.literal('mol') }),
  mass: z.strictObject({ value: z.number(), unit: z.literal('kg') }),
  normalVolume: z.strictObject({
    value: z.number(),
    unit: z.literal('m3'),
    at: z.strictObject({ pressure: absolutePressure, temperature }),
  }),
  rounded: z.strictObject({ mass: z.string(), normalVolume: z.string() }),
});

export const mark = z.strictObject({ value: z.string(), unit: pressureUnit, basis: z.literal('gauge') });

export type GasJson = z.infer<typeof gas>;
