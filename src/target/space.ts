import { fail } from '../basis/fault.js';
import { notPositive, outsideBounds } from '../basis/problem.js';
import { need, type Volume } from '../quantity/kind.js';

/** More than any vessel of gas about an engine holds, in m3: what is vastly more can no longer be written to the gram. */
const MOST_M3 = 1000;

/** Refuses what is no space for gas. */
export function needSpace(space: Volume): void {
  need('volume', space, '');
  const { cubicMetres } = space;
  if (cubicMetres === 0) fail(notPositive, '', '0 m3');
  if (cubicMetres > MOST_M3) fail(outsideBounds, '', `${cubicMetres} m3`, { bounds: `at most ${MOST_M3} m3` });
}
