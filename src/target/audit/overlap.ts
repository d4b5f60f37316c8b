// Every printed cell admits an interval of density. A table agrees with itself if all of them have a density in common; a
// cell that is wrong has none in common with the others. All of it is comparing ends of intervals: exact, no statistics.

/** A closed interval of numbers. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** An interval that all cells have in common but those named. */
export interface Overlap extends Interval {
  /** Indices of the cells that have nothing of it, in order. */
  readonly without: readonly number[];
}

/** How the intervals of a table agree. */
export type Agreement =
  | { readonly by: 'every cell'; readonly overlap: Overlap }
  | { readonly by: 'all but misprints'; readonly overlap: Overlap }
  /** One overlap for each cell that can be the wrong one. */
  | { readonly by: 'one cell in doubt'; readonly overlaps: readonly Overlap[] }
  | { readonly by: 'no density' };

/** Rows from which on a wrong cell can be doubted: with two, each contradicts the other, and either alone fits. */
export const ROWS_TO_DOUBT = 3;

/** Rows from which on a wrong cell can be named: the first number of which {@link mostMisprints} allows one. */
export const ROWS_TO_NAME = 6;

/** How many cells of a table may be called misprints. More of them are no slips but another formula. */
export function mostMisprints(rows: number): number {
  return Math.floor((rows - 2) / 4);
}

/** How the intervals of cells agree that stand at temperatures. */
export function agreementOf(intervals: readonly Interval[], T_K: readonly number[]): Agreement {
  const { most, starts } = deepest(intervals);
  const wrong = intervals.length - most;
  const overlaps = starts.map((start) => overlapAt(intervals, start));
  const [overlap] = overlaps;
  if (overlap === undefined) return { by: 'no density' }; // of no cells
  if (wrong === 0) return { by: 'every cell', overlap };
  if (wrong <= mostMisprints(intervals.length) && overlaps.length === 1 && standAlone(overlap, intervals, T_K)) {
    return { by: 'all but misprints', overlap };
  }
  if (wrong === 1 && intervals.length >= ROWS_TO_DOUBT) return { by: 'one cell in doubt', overlaps };
  return { by: 'no density' };
}

/** Where the most intervals overlap: how many, and the lower ends of the stretches in which they do. */
function deepest(intervals: readonly Interval[]): { readonly most: number; readonly starts: readonly number[] } {
  const ascending = (a: number, b: number): number => a - b;
  const lowers = intervals.map(({ lower }) => lower).sort(ascending);
  const uppers = intervals.map(({ upper }) => upper).sort(ascending);
  let [most, ended] = [0, 0];
  let starts: number[] = [];
  lowers.forEach((lower, i) => {
    if (lowers[i + 1] === lower) return; // counted with the last of its equals
    while ((uppers[ended] ?? Infinity) < lower) ended += 1;
    const depth = i + 1 - ended;
    if (depth > most) starts = [];
    if (depth >= most) starts.push(lower);
    most = Math.max(most, depth);
  });
  return { most, starts };
}

function overlapAt(intervals: readonly Interval[], start: number): Overlap {
  const has = ({ lower, upper }: Interval): boolean => lower <= start && start <= upper;
  const without = intervals.flatMap((interval, i) => (has(interval) ? [] : [i]));
  return { lower: start, upper: Math.min(...intervals.filter(has).map(({ upper }) => upper)), without };
}

/** The middle of an interval: of all its numbers the one from which the farthest is nearest. */
export function middleOf({ lower, upper }: Interval): number {
  return lower + 0.5 * (upper - lower);
}

/** A slip of two steps leaves a cell 3 to 5 half steps off, one of a single step 1 to 3. */
const HALF_STEPS_OFF = 2.5;

/**
 * Whether the cells outside an overlap stand out, as slips do. Another formula drifts away: its residuals go on from row
 * to row. Rows that agree within ± half a step leave room for a drift of one step over their span; with as much again
 * for its curvature it brings a row that is a distance d beyond them to 1 + 4 d / span half steps. What is further off
 * than that, and than two and a half of them anywhere, stands out; neighbours that are off to the same side never do.
 */
function standAlone({ without, ...overlap }: Overlap, intervals: readonly Interval[], T_K: readonly number[]): boolean {
  const best = middleOf(overlap);
  const kept = T_K.filter((_, i) => !without.includes(i));
  const [coldest, hottest] = [Math.min(...kept), Math.max(...kept)];
  let before: { readonly i: number; readonly side: number } | undefined;
  return without.every((i) => {
    const [interval, T] = [intervals[i], T_K[i]];
    if (interval === undefined || T === undefined) return false;
    const off = middleOf(interval) - best;
    const beyond = Math.max(0, coldest - T, T - hottest) / (hottest - coldest);
    const half = 0.5 * (interval.upper - interval.lower);
    const continues = before?.i === i - 1 && before.side === Math.sign(off);
    before = { i, side: Math.sign(off) };
    return !continues && Math.abs(off) > Math.max(HALF_STEPS_OFF, 1 + 4 * beyond) * half;
  });
}
