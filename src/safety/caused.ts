import { caution, type Caution, type CautionCode } from '../basis/caution.js';

/** Stable codes of what gave rise to a caution, among the numbers of this room. */
export type SafetyCause =
  'pressure when hot' | 'release into a room' | 'stored energy' | 'ratings' | 'purging' | 'leak test';

/** A caution with what gave rise to it. */
export interface CausedCaution<Cause extends string = string> extends Caution {
  readonly cause: Cause;
}

/**
 * The cautions of a result. The last one is always that the maker's manual, local codes and licensed practice decide: a
 * number about safety never stands without it.
 */
export function cautionsOf<Cause extends string>(
  cause: Cause,
  codes: readonly CautionCode[],
): readonly CausedCaution<Cause>[] {
  return [...codes, 'maker decides' as const].map((code) => ({ ...caution(code), cause }));
}
