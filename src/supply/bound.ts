// What no plan can exceed. Gas flows into an accumulator at a pressure only from a bottle that is, at the end of the step,
// above that pressure by the regulator's difference. So for every pressure level: the gas that completed accumulators take
// above the level, with what the kit takes above it at their last step, is at most what bottles hold above the level and
// the difference. Each level by itself bounds the number of accumulators, from those that need least; the least of these
// bounds holds.
import { indexed } from '../basis/indexed.js';
import { amountAt, kitAt, type Stock } from './stock.js';

/** Amounts at one pressure level, mol. */
interface Level {
  /** By bottle: what it holds there, or at its residual pressure. */
  readonly floor: readonly number[];
  /** By accumulator: what it holds there; what it needs is counted from here. */
  readonly base: readonly number[];
  /** By accumulator: what the kit takes from there to the pressure wanted. */
  readonly kit: readonly number[];
}

export type Levels = readonly Level[];

/** Amounts in bottles and accumulators as they are now, mol. */
export interface Amounts {
  readonly bottles: readonly number[];
  readonly accumulators: readonly number[];
}

/** These amounts, and the accumulators that {@link openAt} gives for them. */
export interface Now extends Amounts {
  readonly open: readonly number[];
}

const MOST_LEVELS = 16;
/** Supplies count a little too high, so that rounding never makes a bound too tight. */
const SLACK = 1 + 1e-11;

/** Levels at which pressures of accumulators begin or end, thinned evenly if there are many; the lowest is the first. */
export function levelsOf(stock: Stock): Levels {
  const { sinks, sources, kernel, kit_V, difference } = stock;
  const all = [...new Set(sinks.flatMap(({ p, p_to }) => [p, p_to]))].sort((x, y) => x - y).slice(0, -1);
  const every = Math.max(1, all.length / MOST_LEVELS);
  const chosen = new Set(indexed(Math.min(all.length, MOST_LEVELS), (i) => all[Math.floor(i * every)]));
  return [...chosen].map((p = 0) => {
    const rhos = sinks.map((a) => (p >= a.p_to ? a.n_to / a.V : kernel.density(a.T, p)));
    return {
      floor: sources.map((b) => amountAt(kernel, b, p + difference)),
      base: sinks.map((a, i) => a.V * (rhos[i] ?? 0)),
      kit: sinks.map((a, i) => kit_V * Math.max(0, a.n_to / a.V - Math.max(rhos[i] ?? 0, a.rho_vented))),
    };
  });
}

/** Accumulators that are not completed and can still be: some bottle can end their last step. */
export function openAt(stock: Stock, { bottles, accumulators }: Amounts): readonly number[] {
  const open: number[] = [];
  stock.sinks.forEach((sink, a) => {
    if ((accumulators[a] ?? 0) >= sink.n_to) return;
    const kit = kitAt(stock, sink);
    const keep = stock.keep[a] ?? [];
    if (bottles.some((n, b) => n * SLACK >= (keep[b] ?? 0) + kit)) open.push(a);
  });
  return open;
}

/** What open accumulators need above a level, the least first. */
function needs(stock: Stock, { base, kit }: Level, { accumulators, open }: Now): number[] {
  return open
    .map((a) => {
      const n_to = stock.sinks[a]?.n_to ?? 0;
      return Math.max(0, n_to - Math.max(accumulators[a] ?? 0, base[a] ?? 0)) + (kit[a] ?? 0);
    })
    .sort((x, y) => x - y);
}

function supply({ floor }: Level, now: Now, b: number): number {
  return Math.max(0, (now.bottles[b] ?? 0) - (floor[b] ?? 0));
}

/** The most accumulators that can still be completed. */
export function mostCompleted(stock: Stock, levels: Levels, now: Now): number {
  let most = now.open.length;
  for (const level of levels) {
    let left = now.bottles.reduce((sum, _, b) => sum + supply(level, now, b), 0) * SLACK;
    let count = 0;
    for (const need of needs(stock, level, now)) {
      left -= need;
      if (left < 0) break;
      count += 1;
    }
    most = Math.min(most, count);
  }
  return most;
}

/** The fewest bottles of those that count which it takes, beside all the others, to complete so many more accumulators. */
export function fewestBottles(
  stock: Stock,
  levels: Levels,
  now: Now,
  count: number,
  counts: (b: number) => boolean,
): number {
  let fewest = 0;
  for (const level of levels) {
    let missing = needs(stock, level, now)
      .slice(0, count)
      .reduce((sum, need) => sum + need, 0);
    const costly: number[] = [];
    now.bottles.forEach((_, b) => {
      const n = supply(level, now, b) * SLACK;
      if (counts(b)) costly.push(n);
      else missing -= n;
    });
    costly.sort((x, y) => y - x);
    let taken = 0;
    while (missing > 0 && taken < costly.length) {
      missing -= costly[taken] ?? 0;
      taken += 1;
    }
    fewest = Math.max(fewest, taken);
  }
  return fewest;
}

/** The most that can remain useful when so many more accumulators are completed: useless gas serves first. */
export function mostUseful(stock: Stock, levels: Levels, now: Now, useful: number, count: number): number {
  const [lowest] = levels;
  if (lowest === undefined || count === 0) return useful;
  const needed = needs(stock, lowest, now)
    .slice(0, count)
    .reduce((sum, need) => sum + need, 0);
  const useless = now.bottles.reduce(
    (sum, n, b) => sum + Math.max(0, Math.min(n, stock.useless[b] ?? 0) - (lowest.floor[b] ?? 0)),
    0,
  );
  return useful - Math.max(0, needed - useless * SLACK);
}
