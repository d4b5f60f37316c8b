// Gas held back on a reading that may be a slip: what people follow, an order or a report, must not tell them to fill an
// accumulator to a target that was found with a number of another unit.
import { caution } from '../basis/caution.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { slips, type SlipCandidate } from '../verdict/slips.js';
import type { Charge } from './charge.js';
import type { Check } from './check.js';

/** A check, and what its reading may have been meant as. */
export interface Held<C extends Check> {
  readonly check: C;
  /** None where a slip was ruled out. */
  readonly slips: readonly SlipCandidate[];
}

/**
 * A check, with its gas withheld where the reading may be a slip and nobody stated that this was ruled out. Every candidate
 * holds it back, also one that is `gauge too coarse`: the step was stated for the unit that was stated, and in another one it
 * says little.
 *
 * @param reading as it was given, not as a certificate corrects it: what is asked is what the gauge showed
 */
export function held<C extends Check>(
  spec: Specification,
  reading: Reading,
  check: C,
  instruments: Instruments | undefined,
): Held<C> {
  if (reading.possibleSlip !== undefined || !isAsked(check)) return { check, slips: [] };
  const { candidates } = slips(spec, reading, instruments);
  if (candidates.length === 0) return { check, slips: [] };
  const charge: Charge = { action: 'withheld', because: [...becauseOf(check.charge), 'slip possible'] };
  return {
    check: { ...check, charge, cautions: [caution('slip possible'), ...check.cautions] },
    slips: candidates,
  };
}

/** Asked only where a reading is off: most of a round is not, and each slip is a judgement of its own. */
function isAsked({ verdict }: Check): boolean {
  return OFF.includes(verdict.outcome) || verdict.because.includes('beyond the scale');
}

const OFF: readonly Check['verdict']['outcome'][] = ['undercharged', 'overcharged', 'gas side empty'];

/** What is withheld for another reason stays so. */
function becauseOf(charge: Charge) {
  return charge.action === 'withheld' ? charge.because : [];
}
