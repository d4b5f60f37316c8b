// The best plan that is found, and how far it is proven.
import { fewestBottles, levelsOf, mostCompleted, mostUseful, openAt, type Levels, type Now } from './bound.js';
import { cascade, nothing } from './cascade.js';
import { better, isBetter, usefulIn, type Found, type Objective, type Score } from './objective.js';
import { search } from './search.js';
import type { Stock } from './stock.js';

/**
 * Up to so many pairs of a bottle and an accumulator a plan is searched for exactly.
 *
 * @example
 * ```ts
 * MOST_PAIRS; // => 12
 * ```
 */
export const MOST_PAIRS = 12;

/** How a plan does by one objective, and what no plan can exceed that is as good in those before it. */
export interface Reached {
  readonly objective: Objective;
  readonly reached: number;
  /** `not given` after an objective with a gap, on which it would depend. */
  readonly bound: number | 'not given';
  readonly gap: number | 'not given';
}

/** A plan, and what is known of its being the best one. */
export interface Best extends Found {
  readonly objectives: readonly Reached[];
  readonly optimal: 'proven' | 'not proven';
}

/**
 * The best plan found. Every plan for the first so many bottles is among those compared, as it would be found if there were
 * no others: so a bottle that is put at the end of the list never makes the plan worse, exact or not.
 */
export function bestOf(stock: Stock, order: readonly Objective[]): Best {
  const levels = levelsOf(stock);
  const { sources, sinks } = stock;
  let best = nothing(stock);
  const consider = (found: Found): void => {
    if (isBetter(order, stock, found.score, best.score)) best = found;
  };
  for (let count = sources.length; count > 0; count -= 1) {
    const now = startOf(stock, count);
    if (canBeat(stock, levels, order, now, best.score)) consider(cascade(stock, levels, order, now, count));
  }
  // A search that looked at everything has looked at the plans for fewer bottles too.
  const most = sinks.length === 0 ? 0 : Math.min(sources.length, Math.floor(MOST_PAIRS / sinks.length));
  let proven = sinks.length === 0 || sources.length === 0;
  for (let count = most; count > 0; count -= 1) {
    const part = count === sources.length ? stock : firstOf(stock, count);
    // The bottles beyond it stay as they are, and what is useful in them is left out of its scores.
    const beyond =
      usefulIn(
        stock,
        sources.map(({ n }) => n),
      ) -
      usefulIn(
        part,
        part.sources.map(({ n }) => n),
      );
    const searched = search(part, count === sources.length ? levels : levelsOf(part), order, lessUseful(best, beyond));
    consider(lessUseful(searched.best, -beyond));
    if (!searched.complete) continue;
    proven = count === sources.length;
    break;
  }
  const objectives = proven
    ? order.map((objective) => ({ objective, reached: best.score[objective], bound: best.score[objective], gap: 0 }))
    : bounded(stock, levels, order, best.score);
  const optimal = objectives.every(({ gap }) => gap === 0) ? 'proven' : 'not proven';
  return { ...best, objectives, optimal };
}

function lessUseful({ moves, score }: Found, by: number): Found {
  return { moves, score: { ...score, 'useful remainder': score['useful remainder'] - by } };
}

/** A stock with the first so many of its bottles. */
function firstOf(stock: Stock, count: number): Stock {
  return {
    ...stock,
    sources: stock.sources.slice(0, count),
    keep: stock.keep.map((row) => row.slice(0, count)),
    useless: stock.useless.slice(0, count),
  };
}

/** The amounts at the start, with the first so many bottles and no others. */
function startOf(stock: Stock, count: number): Now {
  const bottles = stock.sources.map(({ n }, b) => (b < count ? n : 0));
  const accumulators = stock.sinks.map(({ n }) => n);
  return { bottles, accumulators, open: openAt(stock, { bottles, accumulators }) };
}

/** A bound of the accumulators that can be completed with all bottles. */
export function mostAtStart(stock: Stock): number {
  return mostCompleted(stock, levelsOf(stock), startOf(stock, stock.sources.length));
}

/** Bounds of a score from the start, by objective, when at least so many accumulators are completed. */
function boundAt(stock: Stock, levels: Levels, now: Now, objective: Objective, count: number): number {
  const isFull = (b: number): boolean => stock.sources[b]?.isFull === true;
  switch (objective) {
    case 'accumulators completed':
      return mostCompleted(stock, levels, now);
    case 'full bottles opened':
      return fewestBottles(stock, levels, now, count, isFull);
    case 'bottles used':
      return fewestBottles(stock, levels, now, count, () => true);
    case 'connections':
      return count;
    case 'useful remainder':
      return mostUseful(
        stock,
        levels,
        now,
        usefulIn(
          stock,
          stock.sources.map(({ n }) => n),
        ),
        count,
      );
  }
}

/** Whether a plan from a start can be better than a score, by its bounds. */
function canBeat(stock: Stock, levels: Levels, order: readonly Objective[], now: Now, score: Score): boolean {
  let count = 0;
  for (const objective of order) {
    const by = better(objective, stock, boundAt(stock, levels, now, objective, count), score[objective]);
    if (by !== 0) return by > 0;
    if (objective === 'accumulators completed') count = score[objective];
  }
  return false;
}

function bounded(stock: Stock, levels: Levels, order: readonly Objective[], score: Score): readonly Reached[] {
  const now = startOf(stock, stock.sources.length);
  // Before the accumulators completed are known to be as many as can be, none need be.
  let count = 0;
  let isOpen = false;
  return order.map((objective) => {
    const reached = score[objective];
    if (isOpen) return { objective, reached, bound: 'not given', gap: 'not given' };
    const limit = boundAt(stock, levels, now, objective, count);
    const gap = Math.max(0, better(objective, stock, limit, reached));
    isOpen = gap > 0;
    if (objective === 'accumulators completed') count = reached;
    return { objective, reached, bound: limit, gap };
  });
}
