import { caution, type Caution, type CautionCode } from './caution.js';

/** Stable codes of what gave rise to a caution, among the numbers about what can hurt. */
export type SafetyCause =
  'pressure when hot' | 'release into a room' | 'stored energy' | 'ratings' | 'purging' | 'leak test';

/** A caution with what gave rise to it. */
export interface CausedCaution<Cause extends string = string> extends Caution {
  readonly cause: Cause;
}

/** A caution by its code, with what gave rise to it. */
export function caused<Cause extends string>(code: CautionCode, cause: Cause): CausedCaution<Cause> {
  return { ...caution(code), cause };
}

/**
 * The cautions of a result. The last one is always that the maker's manual, local codes and licensed practice decide: a
 * number about safety never stands without it.
 */
export function cautionsOf<Cause extends string>(
  cause: Cause,
  codes: readonly CautionCode[],
): readonly CausedCaution<Cause>[] {
  return [...codes, 'maker decides' as const].map((code) => caused(code, cause));
}
