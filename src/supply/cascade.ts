// Good plans, found fast. Accumulators are taken one after another in several orders, and each is filled in one of several
// ways, the usual cascade among them: first from the lowest bottle that still helps, then from fuller ones. What is left
// undone goes to the front of the order, and bottles that are not needed are left out, as long as that makes it better.
import { indexed } from '../basis/indexed.js';
import { fewestBottles, mostCompleted, type Levels, type Now } from './bound.js';
import type { Flow, Source } from './flow.js';
import { isBetter, usefulIn, type Found, type Move, type Objective } from './objective.js';
import { kitAt, pressureOf, stepOf, type Stock } from './stock.js';

type Way = 'one bottle' | 'one bottle if it can' | 'cascade';

/** How often what was left undone is put to the front, and how many numbers of full bottles are tried. */
const TURNS = 1;
const NUMBERS_OF_BOTTLES = 2;
/** In how many of the orders cascades are tried, and how many bottles raise an accumulator before one that completes it. */
const IN_CASCADE = 1;
const MOST_RAISES = 3;
/** How many bottles are tried to be spared. */
const MOST_SPARED = 4;

/** The plan of no steps. */
export function nothing(stock: Stock): Found {
  return {
    moves: [],
    score: {
      'accumulators completed': 0,
      'full bottles opened': 0,
      'bottles used': 0,
      connections: 0,
      'useful remainder': usefulIn(
        stock,
        stock.sources.map(({ n }) => n),
      ),
    },
  };
}

/**
 * A good plan that uses none but some of the bottles, of which `now` has the amounts. It depends on nothing else, and not on
 * the order in which they stand.
 */
export function cascade(
  stock: Stock,
  levels: Levels,
  order: readonly Objective[],
  now: Now,
  chosen: readonly number[],
): Found {
  const { sources } = stock;
  const all = inOrder(sources, chosen);
  const partUsed = all.filter((b) => sources[b]?.isFull === false);
  const full = all
    .filter((b) => sources[b]?.isFull === true)
    .sort((x, y) => (sources[y]?.n ?? 0) - (sources[x]?.n ?? 0));
  let best: Attempt = { ...nothing(stock), way: 'one bottle', sequence: [], allowed: [], undone: [] };
  const attempt = (allowed: readonly number[], sequence: readonly number[], way: Way): boolean => {
    const ran = run(stock, allowed, sequence, way);
    if (isBetter(order, stock, ran.score, best.score)) best = ran;
    return ran.undone.length === stock.sinks.length - most;
  };

  const most = mostCompleted(stock, levels, now);
  const least = fewestBottles(stock, levels, now, most, (b) => sources[b]?.isFull === true);
  const numbers = [0, ...indexed(NUMBERS_OF_BOTTLES, (i) => least + i), full.length];
  const sequences = ordersOf(stock);
  for (const number of new Set(numbers.filter((one) => one <= full.length))) {
    const allowed = [...partUsed, ...full.slice(0, number)];
    const areAll = sequences.map((sequence) => attempt(allowed, sequence, 'one bottle')).includes(true);
    // Where one bottle at a time is enough for all that can be, several would only take more connections.
    if (!areAll)
      for (const sequence of sequences.slice(0, IN_CASCADE))
        for (const way of ['one bottle if it can', 'cascade'] as const) attempt(allowed, sequence, way);
    if (number >= least && best.score['accumulators completed'] === most) break;
  }
  for (let turn = 0; turn < TURNS && best.undone.length > 0; turn += 1) {
    const { way, sequence, allowed, undone } = best;
    attempt(allowed, [...undone, ...sequence.filter((a) => !undone.includes(a))], way);
  }
  // Where gas is short no bottle can be spared.
  for (const b of best.undone.length > 0 ? [] : usedIn(best.moves, all).slice(0, MOST_SPARED)) {
    const { way, sequence, allowed } = best;
    const fewer = allowed.filter((other) => other !== b);
    attempt(fewer, sequence, way);
  }
  return best;
}

/** Bottles that a plan uses, the one that gives least first. */
function usedIn(moves: readonly Move[], all: readonly number[]): readonly number[] {
  const times = new Map<number, number>();
  for (const { b } of moves) times.set(b, (times.get(b) ?? 0) + 1);
  return all.filter((b) => times.has(b)).sort((x, y) => (times.get(x) ?? 0) - (times.get(y) ?? 0));
}

/** Bottles in an order of their own: those that are alike in all of this are alike. Sorting keeps the order of equals. */
function inOrder(sources: readonly Source[], chosen: readonly number[]): readonly number[] {
  const keys = (b: number): readonly number[] => {
    const { n = 0, p = 0, V = 0, T = 0, least = 0 } = sources[b] ?? {};
    return [n, p, V, T, least];
  };
  return [...chosen].sort((x, y) => {
    const [of, other] = [keys(x), keys(y)];
    const i = of.findIndex((one, k) => one !== other[k]);
    return i < 0 ? 0 : (of[i] ?? 0) - (other[i] ?? 0);
  });
}

function ordersOf({ sinks }: Stock): readonly (readonly number[])[] {
  const by = (key: (a: number) => number): readonly number[] =>
    sinks.map((_, a) => a).sort((x, y) => key(x) - key(y) || x - y);
  const need = (a: number): number => (sinks[a]?.n_to ?? 0) - (sinks[a]?.n ?? 0);
  const to = (a: number): number => sinks[a]?.p_to ?? 0;
  const from = (a: number): number => sinks[a]?.p ?? 0;
  return [by(need), by((a) => -to(a)), by((a) => -need(a)), by(to), by(from), by((a) => -from(a))];
}

/** A plan, and how it was made. */
interface Attempt extends Found {
  readonly way: Way;
  readonly sequence: readonly number[];
  readonly allowed: readonly number[];
  /** Accumulators that were not completed, in the order tried. */
  readonly undone: readonly number[];
}

function run(stock: Stock, allowed: readonly number[], sequence: readonly number[], way: Way): Attempt {
  const { sources, sinks } = stock;
  const held: Held = { amounts: sources.map(({ n }) => n), pressures: sources.map(({ p }) => p) };
  const moves: Move[] = [];
  const undone: number[] = [];
  const isUsed = sources.map(() => false);
  for (const a of sequence) {
    const steps = filled(stock, allowed, held, a, way);
    if (steps === undefined) undone.push(a);
    else {
      moves.push(...steps);
      for (const { b } of steps) isUsed[b] = true;
    }
  }
  const count = (which: (b: number) => boolean): number => sources.filter((_, b) => isUsed[b] && which(b)).length;
  const score = {
    'accumulators completed': sinks.length - undone.length,
    'full bottles opened': count((b) => sources[b]?.isFull === true),
    'bottles used': count(() => true),
    connections: moves.length,
    'useful remainder': usefulIn(stock, held.amounts),
  };
  return { moves, score, way, sequence, allowed, undone };
}

/** What is in the bottles at a moment of a run, mol and Pa absolute. */
interface Held {
  readonly amounts: number[];
  readonly pressures: number[];
}

/** The steps that complete one accumulator, and what is in the bottles after them; nothing, and no change, if it fails. */
function filled(
  stock: Stock,
  allowed: readonly number[],
  { amounts, pressures }: Held,
  a: number,
  way: Way,
): readonly Move[] | undefined {
  const sink = stock.sinks[a];
  const keep = stock.keep[a];
  if (sink === undefined || keep === undefined) return undefined;
  const kit = kitAt(stock, sink);
  let n_a = sink.n;
  /** The bottle that just completes it: the least left above what it must keep. */
  const justEnough = (): number | undefined => {
    let [best, least]: [number | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
    const takes = sink.n_to - n_a + kit;
    for (const b of allowed) {
      // Compared as a part of its volume: a pressure, and not the size of the bottle, makes it of use elsewhere.
      const left = ((amounts[b] ?? 0) - takes - (keep[b] ?? 0)) / (stock.sources[b]?.V ?? 1);
      if (left >= 0 && left < least) [best, least] = [b, left];
    }
    return best;
  };
  if (allowed.every((b) => (amounts[b] ?? 0) < (keep[b] ?? 0) + kit)) return undefined;
  const out: Flow = { bottle: 0, accumulator: 0, ended: 'equalised' };
  const before: { readonly b: number; readonly n: number; readonly p: number }[] = [];
  const moves: Move[] = [];
  /** Whether a step from a bottle completes it. */
  const completes = (b: number): boolean => {
    const [n = 0, p = 0] = [amounts[b], pressures[b]];
    const source = stock.sources[b];
    if (source === undefined || !stepOf(stock, b, a, n, n_a, out)) return false;
    before.push({ b, n, p });
    amounts[b] = out.bottle;
    pressures[b] = pressureOf(stock.kernel, source, out.bottle);
    n_a = out.accumulator;
    moves.push({ b, a });
    return out.ended === 'at the pressure wanted';
  };
  const alone = way === 'cascade' ? undefined : justEnough();
  if (alone !== undefined && completes(alone)) return moves;
  if (way !== 'one bottle') {
    let p_a = sink.p;
    const lowestFirst = [...allowed].sort((x, y) => (pressures[x] ?? 0) - (pressures[y] ?? 0));
    for (const b of lowestFirst) {
      if ((pressures[b] ?? 0) <= p_a + stock.difference) continue;
      if (moves.length > MOST_RAISES) break;
      if (completes((way === 'cascade' ? undefined : justEnough()) ?? b)) return moves;
      p_a = pressureOf(stock.kernel, sink, n_a);
    }
  }
  for (const { b, n, p } of before) [amounts[b], pressures[b]] = [n, p];
  return undefined;
}
