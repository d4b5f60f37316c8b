// Values with their unit, and pressures with their basis, as JSON carries them: in a round that comes in and in a report
// that goes out.
import * as z from 'zod/mini';

/** A decimal, as a number or as text: `141.3` or `"141.3"`. Text may have more digits than a double. */
const decimal = z.union([z.number(), z.string()]);

export const pressureUnit = z.enum(['Pa', 'hPa', 'kPa', 'MPa', 'bar', 'psi', 'kgf/cm2']);
export const temperatureUnit = z.enum(['°C', 'K', '°F']);

export const gaugePressure = z.strictObject({ value: decimal, unit: pressureUnit, basis: z.literal('gauge') });
export const absolutePressure = z.strictObject({ value: decimal, unit: pressureUnit, basis: z.literal('absolute') });
export const pressureDifference = z.strictObject({
  value: decimal,
  unit: pressureUnit,
  basis: z.literal('difference'),
});
export const temperature = z.strictObject({ value: decimal, unit: temperatureUnit });
export const volume = z.strictObject({ value: decimal, unit: z.enum(['m3', 'L']) });

/** A name that people gave: of a specification, a group, an accumulator. */
export const name = z.string().check(z.minLength(1), z.maxLength(200));

/** What a reading says about itself besides its numbers. */
export const READING_EVIDENCE = {
  oilSide: z.enum(['drained, zero verified', 'not drained', 'not known']),
  systemPressure: z.optional(gaugePressure),
  gasInside: z.enum(['nitrogen', 'not known']),
  minutesAtRest: z.union([z.number(), z.literal('not known')]),
  emptyGasSide: z.optional(z.literal('investigated and cleared')),
};
