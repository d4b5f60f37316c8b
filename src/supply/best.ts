// The best plan that is found, and how far it is proven.
import { indexed } from '../basis/indexed.js';
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
 * Up to so many bottles every choice of them is among the plans compared, so that it does not matter where in the list one
 * stands.
 *
 * @example
 * ```ts
 * MOST_CHOSEN; // => 6
 * ```
 */
export const MOST_CHOSEN = 6;

/**
 * The best plan found. Among those compared is every plan for a choice of the first few bottles, and for the first so many,
 * as it would be found if there were no others: so another bottle never makes the plan worse, up to that number wherever
 * it stands in the list, and beyond it at the end.
 */
export function bestOf(stock: Stock, order: readonly Objective[]): Best {
  const levels = levelsOf(stock);
  const { sources, sinks } = stock;
  let best = nothing(stock);
  const consider = (found: Found): void => {
    if (isBetter(order, stock, found.score, best.score)) best = found;
  };
  for (let count = sources.length; count > 0; count -= 1) {
    for (const chosen of choicesOf(sources.length, count)) {
      const now = startOf(stock, chosen);
      if (canBeat(stock, levels, order, now, best.score)) consider(cascade(stock, levels, order, now, chosen));
    }
  }
  // A search that looked at everything has looked at the plans for fewer bottles too.
  const most = sinks.length === 0 ? 0 : Math.min(sources.length, Math.floor(MOST_PAIRS / sinks.length));
  let proven = sinks.length === 0 || sources.length === 0;
  for (let count = most; count > 0; count -= 1) {
    const isComplete = choicesOf(sources.length, count).map((chosen) => {
      const { found, complete } = searchedIn(stock, levels, order, chosen, best);
      if (found !== undefined) consider(found);
      return complete;
    });
    if (isComplete.includes(false)) continue;
    proven = count === sources.length;
    break;
  }
  const objectives = proven
    ? order.map((objective) => ({ objective, reached: best.score[objective], bound: best.score[objective], gap: 0 }))
    : bounded(stock, levels, order, best.score);
  const optimal = objectives.every(({ gap }) => gap === 0) ? 'proven' : 'not proven';
  return { ...best, objectives, optimal };
}

/** The choices of so many bottles that are compared, of so many in all. */
function choicesOf(all: number, count: number): readonly (readonly number[])[] {
  if (count > MOST_CHOSEN) return [indexed(count, (b) => b)];
  const from = Math.min(all, MOST_CHOSEN);
  const choose = (first: number, left: number): readonly (readonly number[])[] => {
    if (left === 0) return [[]];
    if (from - first < left) return [];
    return [...choose(first + 1, left - 1).map((rest) => [first, ...rest]), ...choose(first + 1, left)];
  };
  return choose(0, count);
}

/** What a search with a choice of the bottles finds that is better than what is known. */
function searchedIn(
  stock: Stock,
  levels: Levels,
  order: readonly Objective[],
  chosen: readonly number[],
  known: Found,
): { readonly found: Found | undefined; readonly complete: boolean } {
  const isAll = chosen.length === stock.sources.length;
  const part = isAll ? stock : partOf(stock, chosen);
  // The other bottles stay as they are, and what is useful in them is left out of the scores.
  const others = usefulAtStart(stock) - usefulAtStart(part);
  const least = lessUseful(known, others);
  const { best, complete } = search(part, isAll ? levels : levelsOf(part), order, least);
  if (best === least) return { found: undefined, complete };
  const moves = best.moves.map(({ b, a }) => ({ b: chosen[b] ?? b, a }));
  return { found: lessUseful({ ...best, moves }, -others), complete };
}

function usefulAtStart(stock: Stock): number {
  return usefulIn(
    stock,
    stock.sources.map(({ n }) => n),
  );
}

function lessUseful({ moves, score }: Found, by: number): Found {
  return { moves, score: { ...score, 'useful remainder': score['useful remainder'] - by } };
}

/** A stock with some of its bottles. */
function partOf(stock: Stock, chosen: readonly number[]): Stock {
  const picked = <T>(list: readonly T[]): readonly T[] => list.filter((_, b) => chosen.includes(b));
  return { ...stock, sources: picked(stock.sources), keep: stock.keep.map(picked), useless: picked(stock.useless) };
}

/** The amounts at the start, with some of the bottles and no others. */
function startOf(stock: Stock, chosen: readonly number[]): Now {
  const bottles = stock.sources.map(({ n }, b) => (chosen.includes(b) ? n : 0));
  const accumulators = stock.sinks.map(({ n }) => n);
  return { bottles, accumulators, open: openAt(stock, { bottles, accumulators }) };
}

/** The amounts at the start, with all bottles. */
function startWithAll(stock: Stock): Now {
  return startOf(
    stock,
    stock.sources.map((_, b) => b),
  );
}

/** A bound of the accumulators that can be completed with all bottles. */
export function mostAtStart(stock: Stock): number {
  return mostCompleted(stock, levelsOf(stock), startWithAll(stock));
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
  const now = startWithAll(stock);
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
