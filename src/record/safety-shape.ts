// The shape of what numbers about what can hurt rest on, as a round states it, and of these numbers, as a report says them.
import * as z from 'zod/mini';
import { CAUTION_CODES } from './codes.js';
import { gas } from './gas-shape.js';
import {
  absolutePressure,
  gaugePressure,
  name,
  pressureDifference,
  remarks,
  temperature,
  temperatureDifference,
  volume,
} from './measured.js';

const place = { temperature, ambient: absolutePressure };

/** Each part may be left out, and then its numbers are. Limits have no default. */
export const SafetyShape = z.strictObject({
  /** The hottest that the gas may get, laid up or beside a running engine. */
  hottest: z.optional(z.strictObject(place)),
  /** A room into which gas may be released. */
  room: z.optional(
    z.strictObject({
      volume,
      ...place,
      /** How long the release takes. */
      minutes: z.union([z.number(), z.literal('at once')]),
      airChangesPerHour: z.union([z.number(), z.literal('none')]),
      /** Fraction of oxygen by volume. */
      oxygenBefore: z.number(),
      /** Below which nobody may be there, and the code or rule that says so. */
      limit: z.strictObject({ fraction: z.number(), source: remarks }),
    }),
  ),
  /** The gas in service, compressed by the oil. */
  inService: z.optional(z.strictObject({ systemPressure: gaugePressure, temperature })),
  /** What joins bottle and accumulator, and what each part is rated for. */
  line: z.optional(
    z.strictObject({
      bottle: z.strictObject({ rating: gaugePressure, pressure: gaugePressure }),
      regulator: z.union([
        z.strictObject({ inlet: gaugePressure, outlet: gaugePressure, setTo: gaugePressure }),
        z.literal('none'),
      ]),
      relief: z.union([z.strictObject({ opens: gaugePressure }), z.literal('none')]),
      hose: z.strictObject({ rating: gaugePressure }),
      gauge: z.strictObject({ fullScale: gaugePressure }),
    }),
  ),
  /** How it is tested for leaks, and the loss that the test is meant to show. */
  leakTest: z.optional(
    z.strictObject({
      lossPerYear: pressureDifference,
      bubble: volume,
      patienceMinutes: z.number(),
      minutesBetween: z.number(),
      gaugeStep: pressureDifference,
    }),
  ),
  /** How a gas that is not known to be nitrogen is diluted: pressures of the fillings, and fractions of the other gas. */
  purge: z.optional(
    z.strictObject({
      high: absolutePressure,
      low: absolutePressure,
      temperature,
      before: z.number(),
      inSupply: z.number(),
      wanted: z.number(),
    }),
  ),
});

const cautions = z.array(z.enum(CAUTION_CODES));

const joules = z.strictObject({ value: z.number(), unit: z.literal('J') });

const hot = z.strictObject({
  outcome: z.enum(['not above the allowable pressure', 'above the allowable pressure']),
  pressure: gaugePressure,
  allowable: gaugePressure,
  belowAllowable: pressureDifference,
  mostNow: z.strictObject({ pressure: gaugePressure, temperature }),
  cautions,
});

/** Work on the atmosphere is counted in both; the larger of both ways governs. */
const energy = z.strictObject({
  charged: joules,
  inService: z.optional(joules),
  worse: z.enum(['charged', 'in service']),
  governs: z.enum(['ASME PCC-2', 'real gas']),
  tnt: z.strictObject({ value: z.number(), unit: z.literal('kg') }),
  cautions,
});

const rating = z.strictObject({
  outcome: z.enum(['nothing found', 'problems found']),
  problems: z.array(
    z.strictObject({
      code: z.enum([
        'above its rating',
        'above its rating if the pressure is not reduced',
        'above three quarters of its scale',
        'relief valve opens below the pressure wanted',
        'regulator set below the pressure wanted',
      ]),
      part: z.enum(['bottle', 'regulator inlet', 'regulator outlet', 'hose', 'gauge', 'vessel']),
      limit: gaugePressure,
      pressure: gaugePressure,
    }),
  ),
  cautions,
});

const moles = z.strictObject({ value: z.number(), unit: z.literal('mol') });
const shown = { against: z.enum(['shows it', 'does not show it']), smallestPerYear: moles };

const leakTest = z.strictObject({
  lossPerYear: moles,
  bubbles: z.strictObject({ ...shown, minutesApart: z.union([z.number(), z.literal('none')]) }),
  gauge: z.strictObject({ ...shown, fall: pressureDifference, sameAsCoolingBy: temperatureDifference }),
  cautions,
});

const purge = z.strictObject({
  outcome: z.enum(['reached', 'not reached by any number of fillings', 'not reached by the most that are counted']),
  fillings: z.number(),
  /** Fraction left after each filling. */
  left: z.array(z.number()),
  gas,
  cautions,
});

/** For each specification that an accumulator of the round follows: of gas at its upper limit. */
const bySpecification = z.strictObject({
  specification: name,
  hot: z.optional(hot),
  energy: z.optional(energy),
  ratings: z.optional(rating),
  leakTest: z.optional(leakTest),
  purge: z.optional(purge),
});

/** Of all the gas of one accumulator, or one bottle: the largest of the round. */
const release = z.strictObject({
  of: z.enum(['accumulator', 'bottle']),
  name,
  outcome: z.enum(['below the limit', 'not below the limit by calculation']),
  room: z.enum(['larger than the gas released', 'not larger than the gas released']),
  gasVolume: volume,
  lowest: z.strictObject({
    by: z.enum(['displacement', 'well mixed']),
    ventilation: z.enum(['without ventilation', 'with ventilation']),
    fraction: z.number(),
  }),
  minutesToLimit: z.union([z.number(), z.literal('never')]),
  cautions,
});

export const safety = z.strictObject({
  specifications: z.array(bySpecification),
  releases: z.array(release),
});

export type SafetyGivenJson = z.infer<typeof SafetyShape>;
export type SafetyJson = z.infer<typeof safety>;
