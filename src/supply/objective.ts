import { indexed } from '../basis/indexed.js';
import { fail, quote } from '../basis/fault.js';
import { notEachOnce } from '../basis/problem.js';
import type { Stock } from './stock.js';

/** What a plan is good by. */
export type Objective =
  'accumulators completed' | 'full bottles opened' | 'bottles used' | 'connections' | 'useful remainder';

/**
 * The objectives of a plan in their usual order, each deciding only between plans that are equal in those before it: most
 * accumulators completed; fewest full bottles opened, so that none is while part-used ones suffice; fewest bottles used;
 * fewest connections; the most useful remainder, which is all the gas, in mol, that bottles hold above the highest pressure
 * wanted by any accumulator of the plan and the regulator's difference: the gas that can still complete any of them alone.
 *
 * @example
 * ```ts
 * OBJECTIVES[0]; // => 'accumulators completed'
 * ```
 */
export const OBJECTIVES: readonly Objective[] = /* @__PURE__ */ Object.freeze([
  'accumulators completed',
  'full bottles opened',
  'bottles used',
  'connections',
  'useful remainder',
] as const);

/** How a plan does by each objective. */
export type Score = Readonly<Record<Objective, number>>;

/** A step of a plan, by the numbers of bottle and accumulator in the stock. */
export interface Move {
  readonly b: number;
  readonly a: number;
}

/** A plan in numbers. */
export interface Found {
  readonly moves: readonly Move[];
  readonly score: Score;
}

/** Whether more of it is better. */
export function isMore(objective: Objective): boolean {
  return objective === 'accumulators completed' || objective === 'useful remainder';
}

/** Differences of the remainder below this part of all that the bottles hold are rounding. */
const ROUNDING = 1e-9;

/** What counts as a difference in an objective. */
export function resolution(objective: Objective, stock: Stock): number {
  if (objective !== 'useful remainder') return 0;
  return ROUNDING * stock.sources.reduce((sum, { n }) => sum + n, 0);
}

/** By how much the first is better than the second in one objective; zero for a tie. */
export function better(objective: Objective, stock: Stock, first: number, second: number): number {
  const by = isMore(objective) ? first - second : second - first;
  return Math.abs(by) <= resolution(objective, stock) ? 0 : by;
}

/** Whether the first score is better than the second, in the order given. */
export function isBetter(order: readonly Objective[], stock: Stock, first: Score, second: Score): boolean {
  for (const objective of order) {
    const by = better(objective, stock, first[objective], second[objective]);
    if (by !== 0) return by > 0;
  }
  return false;
}

/** The useful remainder of amounts in bottles. */
export function usefulIn(stock: Stock, amounts: readonly number[]): number {
  return amounts.reduce((sum, n, b) => sum + Math.max(0, n - (stock.useless[b] ?? n)), 0);
}

/** An order of objectives, read once: each of them exactly once. */
export function checkedOrder(order: readonly Objective[]): readonly Objective[] {
  // Of a list that is too long, what shows it: it may be endless.
  const own: readonly unknown[] = Array.isArray(order)
    ? indexed(Math.min(order.length, OBJECTIVES.length + 1), (i): unknown => order[i])
    : [];
  if (own.length === OBJECTIVES.length && OBJECTIVES.every((one) => own.includes(one)))
    return own as readonly Objective[];
  const found = Array.isArray(order) ? own.map(quote).join(', ') || 'an empty list' : quote(order);
  return fail(notEachOnce, '', found, { words: OBJECTIVES.map((one) => `'${one}'`).join(', ') });
}
