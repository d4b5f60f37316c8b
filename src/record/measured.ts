// Values with their unit, and pressures with their basis, as JSON carries them: in a round that comes in and in a report
// that goes out.
import * as z from 'zod/mini';
import { characters } from './length.js';

/** A decimal, as a number or as text: `141.3` or `"141.3"`. Text may have more digits than a double. */
const decimal = z.union([z.number(), z.string()]);

export const pressureUnit = z.enum(['Pa', 'hPa', 'kPa', 'MPa', 'bar', 'psi', 'kgf/cm2', 'mmHg', 'inHg']);
export const temperatureUnit = z.enum(['°C', 'K', '°F']);
export const volumeUnit = z.enum(['m3', 'L', 'mL', 'in3', 'US gal']);

export const gaugePressure = z.strictObject({ value: decimal, unit: pressureUnit, basis: z.literal('gauge') });
export const absolutePressure = z.strictObject({ value: decimal, unit: pressureUnit, basis: z.literal('absolute') });
export const pressureDifference = z.strictObject({
  value: decimal,
  unit: pressureUnit,
  basis: z.literal('difference'),
});
export const temperature = z.strictObject({ value: decimal, unit: temperatureUnit });
export const temperatureDifference = z.strictObject({
  value: decimal,
  unit: temperatureUnit,
  basis: z.literal('difference'),
});
/** A relative change for each kelvin. */
export const perKelvin = z.strictObject({ value: decimal, unit: z.literal('1/K') });
export const volume = z.strictObject({ value: decimal, unit: volumeUnit });

/** No half of a surrogate pair: such a text has no UTF-8, and so no canonical JSON (RFC 8785). */
export const WELL_FORMED = /^[^\uD800-\uDFFF]*$/u;
const wellFormed = z.regex(WELL_FORMED);

/** A name that people gave: of a specification, a group, an accumulator, an instrument. */
export const name = z.string().check(...characters(1, 200), wellFormed);

/** A title, which may be empty. */
export const title = z.string().check(...characters(0, 200), wellFormed);

/** A few lines of anybody's words. */
export const remarks = z.string().check(...characters(0, 2000), wellFormed);

/** What a reading says about itself besides its numbers. */
export const READING_EVIDENCE = {
  oilSide: z.enum(['drained, zero verified', 'not drained', 'not known']),
  systemPressure: z.optional(gaugePressure),
  gasInside: z.enum(['nitrogen', 'not known']),
  minutesAtRest: z.union([z.number(), z.literal('not known')]),
  emptyGasSide: z.optional(z.literal('investigated and cleared')),
  possibleSlip: z.optional(z.literal('read again and ruled out')),
  /** By what it was read: names of the instruments of the round. */
  instruments: z.optional(z.strictObject({ pressure: z.optional(name), temperature: z.optional(name) })),
};

/** What belongs to the hour of a reading and its uncertainty rests on: stated for the reading, or once for its group. */
export const OF_THE_HOUR = {
  /** Of the gauge itself. */
  gaugeTemperature: z.optional(z.union([temperature, z.literal('not known')])),
  /** How far the ambient may be wrong. */
  ambientLimit: z.optional(pressureDifference),
  /** How many readings, each taken anew, the reading is the mean of. */
  readings: z.optional(z.number()),
};
