// Plans against a search of every course of steps, written plainly and with an arithmetic of its own: bisection for
// equalisation, no bounds, no left-out orders but those of courses that reach the same amounts.
import { nitrogen } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bestOf, MOST_PAIRS, mostAtStart } from '../../src/supply/best.js';
import { OBJECTIVES, type Objective } from '../../src/supply/objective.js';
import { stockOf, type Stock } from '../../src/supply/stock.js';
import type { Rig } from '../../src/supply/kit.js';
import { absolute, gauge, pressureDifference, volume } from 'isochore';

const { density, pvt } = nitrogen['~kernel'];
const pressure = (T: number, rho: number): number => {
  const out = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  pvt(T, rho, out);
  return out.p_Pa;
};

/** Numbers from 0 to 1 by a linear congruence (constants of Numerical Recipes, from memory). */
function drawn(seed: number): () => number {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0) / 4_294_967_296;
}

const AMBIENT = absolute(1013.25, 'hPa').pascals;

function randomStock(seed: number): Stock {
  const next = drawn(seed * 7919 + 1);
  for (let i = 0; i < 5; i += 1) next();
  const count = (most: number): number => 1 + Math.floor(next() * most);
  const size = [0.004, 0.01, 0.03][seed % 3] ?? 0.01;
  const sources = Array.from({ length: count(3) }, () => {
    const [V, T] = [size * (0.4 + next()), 293.15 + 15 * next()];
    const isFull = next() < 0.4;
    const p = (isFull ? 200 : 80 + 115 * next()) * 1e5 + AMBIENT;
    return { V, T, n: V * density(T, p), p, least: V * density(T, 5e5 + AMBIENT), isFull };
  });
  const sinks = Array.from({ length: count(4) }, () => {
    const [V, T] = [0.001 * (1 + 6 * next()), 293.15 + 25 * next()];
    const p = (30 + 110 * next()) * 1e5 + AMBIENT;
    const p_to = p + (4 + 60 * next()) * 1e5;
    return { V, T, n: V * density(T, p), p, p_to, n_to: V * density(T, p_to), rho_vented: density(T, AMBIENT) };
  });
  const kit = { volume: volume(next() < 0.3 ? 0 : 0.03, 'L'), rated: gauge(300, 'bar') };
  const difference = pressureDifference(next() < 0.5 ? 0 : 8 * next(), 'bar');
  const rig: Rig = {
    kit,
    regulator: { difference, ratedInlet: gauge(300, 'bar'), ratedOutlet: gauge(300, 'bar') },
  };
  return stockOf(nitrogen, sources, sinks, rig);
}

/** Amounts after a step, or nothing if it does not raise the accumulator. */
function stepped(stock: Stock, b: number, a: number, n_b: number, n_a: number): readonly [number, number] | undefined {
  const [from, to] = [stock.sources[b], stock.sinks[a]];
  if (from === undefined || to === undefined || n_a >= to.n_to) return undefined;
  const left = (n: number): number => n_b - (n - n_a) - stock.kit_V * (n / to.V - to.rho_vented);
  const isAllowed = (n: number): boolean =>
    left(n) >= from.least && pressure(from.T, left(n) / from.V) - stock.difference >= pressure(to.T, n / to.V);
  if (isAllowed(to.n_to)) return [left(to.n_to), to.n_to];
  if (!isAllowed(n_a * (1 + 1e-9))) return undefined;
  let [low, high] = [n_a, to.n_to];
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (isAllowed(middle)) low = middle;
    else high = middle;
  }
  return [left(low), low];
}

const replaced = (list: readonly number[], at: number, by: number): readonly number[] =>
  list.map((one, i) => (i === at ? by : one));

type Values = readonly number[];

/** Values of all that can be reached, larger is better, in the order of OBJECTIVES. */
function everything(stock: Stock): readonly Values[] {
  const { sources, sinks } = stock;
  const highest = Math.max(...sinks.map(({ p_to }) => p_to)) + stock.difference;
  const useless = sources.map((b) => (highest > b.p ? b.n : Math.max(b.least, b.V * density(b.T, highest))));
  const found = new Map<string, Values>();
  const seen = new Set<string>();
  const visit = (bottles: readonly number[], accumulators: readonly number[], steps: number): void => {
    const key = `${bottles.map((n) => n.toPrecision(11)).join()};${accumulators.map((n) => n.toPrecision(11)).join()};${steps}`;
    if (seen.has(key)) return;
    seen.add(key);
    const used = sources.map(({ n }, b) => bottles[b] !== n);
    const values = [
      sinks.filter(({ n_to }, a) => accumulators[a] === n_to).length,
      -sources.filter(({ isFull }, b) => isFull && used[b]).length,
      -used.filter(Boolean).length,
      -steps,
      bottles.reduce((sum, n, b) => sum + Math.max(0, n - (useless[b] ?? 0)), 0),
    ];
    found.set(values.map((value) => value.toPrecision(11)).join(), values);
    sources.forEach((_, b) => {
      sinks.forEach((__, a) => {
        const next = stepped(stock, b, a, bottles[b] ?? 0, accumulators[a] ?? 0);
        if (next === undefined) return;
        visit(replaced(bottles, b, next[0]), replaced(accumulators, a, next[1]), steps + 1);
      });
    });
  };
  visit(
    sources.map(({ n }) => n),
    sinks.map(({ n }) => n),
    0,
  );
  return [...found.values()];
}

/** Each of the objectives first in turn, the others after it in their order. */
const ORDERS = OBJECTIVES.map((first) => [first, ...OBJECTIVES.filter((other) => other !== first)]);

const isMore = (objective: Objective): boolean =>
  objective === 'accumulators completed' || objective === 'useful remainder';

test('plans of up to 3 bottles and 4 accumulators are as good as any course of steps, by each objective in turn', () => {
  let several = 0;
  let short = 0;
  for (let seed = 0; seed < 90; seed += 1) {
    const stock = randomStock(seed);
    const all = everything(stock);
    const tolerance = 2e-9 * stock.sources.reduce((sum, { n }) => sum + n, 0);
    expect(mostAtStart(stock)).toBeGreaterThanOrEqual(Math.max(...all.map(([completed = 0]) => completed)));
    for (const order of ORDERS) {
      const best = bestOf(stock, order);
      expect(best.optimal, `seed ${seed}`).toBe('proven');
      let left = all;
      for (const objective of order) {
        const i = OBJECTIVES.indexOf(objective);
        const most = Math.max(...left.map((values) => values[i] ?? 0));
        const reached = (isMore(objective) ? 1 : -1) * best.score[objective];
        expect(Math.abs(reached - most), `seed ${seed}, ${objective} of ${order.join(', ')}`).toBeLessThanOrEqual(
          tolerance,
        );
        left = left.filter((values) => (values[i] ?? 0) >= most - tolerance);
      }
      if (order === ORDERS[0] && best.score.connections > best.score['accumulators completed']) several += 1;
      if (order === ORDERS[0] && best.score['accumulators completed'] < stock.sinks.length) short += 1;
    }
  }
  // The cases are not all easy: some need a cascade, and some have too little gas.
  expect(several).toBeGreaterThan(5);
  expect(short).toBeGreaterThan(10);
}, 120_000);

/** A stock with other bottles. */
function withBottles({ sinks, kit_V, difference }: Stock, sources: Stock['sources']): Stock {
  return stockOf(nitrogen, sources, sinks, {
    kit: { volume: volume(kit_V, 'm3'), rated: gauge(300, 'bar') },
    regulator: {
      difference: pressureDifference(difference, 'Pa'),
      ratedInlet: gauge(300, 'bar'),
      ratedOutlet: gauge(300, 'bar'),
    },
  });
}

function heldNoWorse(fewer: Stock, more: Stock, order: readonly Objective[], where: string): void {
  const [before, after] = [bestOf(fewer, order).score, bestOf(more, order).score];
  const tolerance = 2e-9 * more.sources.reduce((sum, { n }) => sum + n, 0);
  for (const objective of order) {
    const by = (after[objective] - before[objective]) * (isMore(objective) ? 1 : -1);
    expect(by, `${where}, ${objective}`).toBeGreaterThanOrEqual(-tolerance);
    if (by > tolerance) return;
  }
}

/** Of many accumulators, which are those of several small stocks: more than are searched exactly. */
function largeStock(seed: number): Stock {
  const parts = [0, 1, 2, 3].map((i) => randomStock(4 * seed + i));
  const [first] = parts;
  if (first === undefined) throw new Error('no stock');
  const sinks = parts.flatMap((one) => one.sinks);
  return withBottles({ ...first, sinks }, parts.flatMap(({ sources }) => sources).slice(0, 5));
}

describe('another bottle never makes the plan worse, by each objective first', () => {
  const another = (seed: number) => randomStock(seed + 1000).sources[0] ?? expect.fail('no bottle');
  const inserted = (stock: Stock, at: number, seed: number): Stock =>
    withBottles(stock, [...stock.sources.slice(0, at), another(seed), ...stock.sources.slice(at)]);

  test('where plans are proven, wherever it stands', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const stock = randomStock(seed);
      const at = seed % (stock.sources.length + 1);
      for (const order of ORDERS) heldNoWorse(stock, inserted(stock, at, seed), order, `seed ${seed}`);
    }
  });

  test('of a few bottles and many accumulators, wherever it stands', () => {
    let large = 0;
    for (let seed = 0; seed < 12; seed += 1) {
      const stock = largeStock(seed);
      const at = seed % (stock.sources.length + 1);
      const order = ORDERS[seed % ORDERS.length] ?? OBJECTIVES;
      heldNoWorse(stock, inserted(stock, at, seed), order, `seed ${seed}`);
      if (stock.sources.length * stock.sinks.length > MOST_PAIRS) large += 1;
    }
    expect(large).toBeGreaterThan(8);
  });

  test('of more, at the end of the list', () => {
    for (let seed = 0; seed < 8; seed += 1) {
      const [stock, other] = [largeStock(seed), largeStock(seed + 50)];
      const many = withBottles(stock, [...stock.sources, ...other.sources]);
      heldNoWorse(many, inserted(many, many.sources.length, seed), OBJECTIVES, `seed ${seed}`);
    }
  });

  test('and of a few the order in the list is all the same', () => {
    for (let seed = 0; seed < 12; seed += 1) {
      const stock = largeStock(seed);
      const turned = withBottles(stock, [...stock.sources].reverse());
      const [one, other] = [bestOf(stock, OBJECTIVES).score, bestOf(turned, OBJECTIVES).score];
      const { 'useful remainder': left, ...counts } = one;
      expect(other).toMatchObject(counts);
      expect(Math.abs(other['useful remainder'] - left)).toBeLessThan(1e-6);
    }
  });
}, 120_000);
