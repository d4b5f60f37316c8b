// What a maintenance system or a surveyor wants in the record and no calculation needs: carried from the round into the
// report as it was given. The terms of the trade; every field may be left out. The time of draining alone is also held
// against the readings.
import * as z from 'zod/mini';
import { entries } from './length.js';
import { name, remarks } from './measured.js';

const time = z.iso.datetime({ offset: true });

/** The circumstances of a visit: stated for the accumulator, or once for its group. */
const VISIT_FIELDS = {
  /** Unit that the accumulators serve, such as a cylinder. */
  unitServed: z.optional(name),
  /** Such as `stopped and secured`. */
  engineState: z.optional(name),
  /** When the engine was stopped. */
  stoppedAt: z.optional(time),
  /** When the oil side was drained: a reading after it cannot claim more rest than the time since. */
  drainedAt: z.optional(time),
  readBy: z.optional(name),
  verifiedBy: z.optional(name),
  /** Where the temperature was taken, such as `shell, gas end, in the shade`. */
  temperaturePlace: z.optional(name),
};

export const GROUP_FIELDS = { ...VISIT_FIELDS, remarks: z.optional(remarks) };

export const ACCUMULATOR_FIELDS = {
  ...VISIT_FIELDS,
  /** Code of the component in the maintenance system. */
  componentCode: z.optional(name),
  position: z.optional(name),
  serial: z.optional(name),
  /** Since it was new, or since its last overhaul, as the maintenance system counts. */
  runningHours: z.optional(z.number().check(z.nonnegative())),
  partsRenewed: z.optional(z.array(name).check(...entries(0, 100))),
  remarks: z.optional(remarks),
  /** The permit under which it runs outside its limits, by its reference. */
  deviationPermit: z.optional(name),
};

/** What a group states for its accumulators, unless they state their own. */
export const FOR_THE_GROUP: readonly string[] = /* @__PURE__ */ Object.keys(VISIT_FIELDS);
