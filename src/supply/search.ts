// Exact search by branch and bound.
//
// A step is monotone: with more gas in its bottle or its accumulator it leaves no less in either, and where it moves nothing
// the accumulator already has what the step would give it. So of two courses that differ in one step into an accumulator
// that is never completed, the one without it completes as many, opens and uses no more bottles, connects less and leaves no
// less: plans with such steps need not be looked at, and one under way counts only if all that it touched is completed.
// And a pair of bottle and accumulator that is equalised stays so, because a bottle only falls and an accumulator only
// rises: no pair is connected twice, and the search is finite.
//
// Steps that share neither bottle nor accumulator give the same in either order, and so do two of one bottle that complete
// their accumulators both ways. And of two accumulators that are alike in everything, or two bottles, it does not matter
// which is which. Of all courses that are the same so, the one that is lowest step by step (by accumulator, then by bottle)
// has no two neighbours that could be exchanged for a lower one, and takes no twin before a lower one that is untouched. So
// courses that do are left out, and none is lost.
import { fewestBottles, mostCompleted, mostUseful, openAt, type Levels } from './bound.js';
import type { Flow } from './flow.js';
import { better, isBetter, usefulIn, type Found, type Move, type Objective, type Score } from './objective.js';
import { stepOf, type Stock } from './stock.js';

/** Beyond so many states the search is given up; it is then a heuristic like the other. */
export const MOST_STATES = 100_000;

/** What a search found, and whether it looked at everything that could be better. */
export interface Searched {
  readonly best: Found;
  readonly complete: boolean;
}

/** Looks for the best plan, beginning with one that is known. */
export function search(stock: Stock, levels: Levels, order: readonly Objective[], known: Found): Searched {
  const { sources, sinks } = stock;
  const bottles = sources.map(({ n }) => n);
  const accumulators = sinks.map(({ n }) => n);
  const connected = sources.map(() => 0);
  const sinkTwins = twins(sinks);
  const sourceTwins = twins(sources);
  const moves: Move[] = [];
  const out: Flow = { bottle: 0, accumulator: 0, ended: 'equalised' };
  let best = known;
  let states = 0;
  let [done, touched, used, opened] = [0, 0, 0, 0];

  const isTouched = (a: number): boolean => accumulators[a] !== sinks[a]?.n;
  const unusedFull = (b: number): boolean => connected[b] === 0 && sources[b]?.isFull === true;
  const unused = (b: number): boolean => connected[b] === 0;
  const isUsed = (b: number): boolean => connected[b] !== 0;
  const isCompleted = (a: number): boolean => accumulators[a] === sinks[a]?.n_to;

  /** Whether nothing that follows can be better than the best: in each objective by a bound of its own. */
  const isHopeless = (): boolean => {
    const now = { bottles, accumulators, open: openAt(stock, { bottles, accumulators }) };
    if (now.open.filter(isTouched).length < touched) return true;
    const more = mostCompleted(stock, levels, now);
    if (touched > more) return true;
    // What is equal in the accumulators completed has completed exactly as many.
    let count = touched;
    const bound: Readonly<Record<Objective, () => number>> = {
      'accumulators completed': () => done + more,
      'full bottles opened': () => opened + fewestBottles(stock, levels, now, count, unusedFull),
      'bottles used': () => used + fewestBottles(stock, levels, now, count, unused),
      connections: () => moves.length + count,
      'useful remainder': () => mostUseful(stock, levels, now, usefulIn(stock, bottles), count),
    };
    for (const objective of order) {
      const by = better(objective, stock, bound[objective](), best.score[objective]);
      if (by !== 0) return by < 0;
      if (objective === 'accumulators completed') count = Math.max(count, best.score[objective] - done);
    }
    return true;
  };

  const look = (last: Move | undefined): void => {
    states += 1;
    if (states > MOST_STATES) return;
    if (touched === 0) {
      const score: Score = {
        'accumulators completed': done,
        'full bottles opened': opened,
        'bottles used': used,
        connections: moves.length,
        'useful remainder': usefulIn(stock, bottles),
      };
      if (isBetter(order, stock, score, best.score)) best = { moves: [...moves], score };
    }
    if (isHopeless()) return;
    for (let a = 0; a < sinks.length; a += 1) {
      for (let b = 0; b < sources.length; b += 1) {
        if (last !== undefined && last.a > a && last.b !== b) continue;
        if (hasTwinBefore(sinkTwins[a], isTouched) || hasTwinBefore(sourceTwins[b], isUsed)) continue;
        step(b, a, last);
      }
    }
  };

  const step = (b: number, a: number, last: Move | undefined): void => {
    const [n_b = 0, n_a = 0] = [bottles[b], accumulators[a]];
    if (!stepOf(stock, b, a, n_b, n_a, out)) return;
    if (last?.b === b && last.a > a && isCompleted(last.a) && out.ended === 'at the pressure wanted') {
      if (out.bottle >= (stock.keep[last.a]?.[b] ?? 0)) return; // the other way round it is the same
    }
    const before = [done, touched, used, opened] as const;
    const wasTouched = isTouched(a);
    const isDone = out.ended === 'at the pressure wanted';
    if (isDone) done += 1;
    if (isDone && wasTouched) touched -= 1;
    if (!isDone && !wasTouched) touched += 1;
    if (connected[b] === 0) {
      used += 1;
      if (sources[b]?.isFull === true) opened += 1;
    }
    connected[b] = (connected[b] ?? 0) + 1;
    bottles[b] = out.bottle;
    accumulators[a] = out.accumulator;
    const move = { b, a };
    moves.push(move);
    look(move);
    moves.pop();
    bottles[b] = n_b;
    accumulators[a] = n_a;
    connected[b] -= 1;
    [done, touched, used, opened] = before;
  };

  look(undefined);
  return { best, complete: states <= MOST_STATES };
}

/** For each of a list those before it that are alike in everything. */
function twins(list: readonly object[]): readonly (readonly number[])[] {
  const texts = list.map((one) => JSON.stringify(one));
  return texts.map((text, i) => texts.flatMap((other, j) => (j < i && other === text ? [j] : [])));
}

function hasTwinBefore(before: readonly number[] = [], isTaken: (i: number) => boolean): boolean {
  return before.some((i) => !isTaken(i));
}
