// Which exponentials a + b exp(−r t) pass every reading within half a step of the gauge, on bare numbers. A line in
// exp(−r t) passes all of them if it passes every three (Helly's theorem), and of three the middle one tells: it lies at most
// a step off the chord of the other two. The weight of the chord falls steadily with r, so that each three allow one range of
// rates, and all together one: nothing is searched on a grid, and no starting value is needed.
import { exp } from '../gas/elementary.js';

/** Times, increasing, and pressures. */
export interface Timed {
  readonly t: readonly number[];
  readonly p: readonly number[];
}

/** A range of rates, 1/min: 0 stands for a straight line, Infinity for a step at the first reading. */
export interface Rates {
  readonly low: number;
  readonly high: number;
}

/** Why no exponential passes the readings: they go faster and faster, or no single rate suits them. */
export type NoRates = 'accelerates' | 'no rate';

/** (1 − exp(−r a)) / (1 − exp(−r b)), for 0 < a < b: how far the middle of three has gone from the first to the last. */
function progress(r: number, a: number, b: number): number {
  if (r === 0) return a / b;
  // Below it both differences lose their digits, and the series has them.
  if (r * b < 1e-5) return (a / b) * (1 + (r * (b - a)) / 2);
  return (1 - exp(-r * a)) / (1 - exp(-r * b));
}

/** The rate at which the progress has a value between a/b and 1. */
function rateOf(wanted: number, a: number, b: number): number {
  let low = 0;
  let high = 1 / b;
  while (progress(high, a, b) < wanted) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step += 1) {
    const r = 0.5 * (low + high);
    if (progress(r, a, b) < wanted) low = r;
    else high = r;
  }
  return 0.5 * (low + high);
}

/** The rates at which an exponential passes all readings within half of `step`. */
export function ratesWithin({ t, p }: Timed, step: number): Rates | NoRates {
  let [low, high] = [0, Infinity];
  let suits = true;
  for (let i = 0; i < t.length; i += 1) {
    for (let k = i + 2; k < t.length; k += 1) {
      const [t_i, p_i, b] = [t[i] ?? 0, p[i] ?? 0, (t[k] ?? 0) - (t[i] ?? 0)];
      const gone = (p[k] ?? 0) - p_i;
      for (let j = i + 1; j < k; j += 1) {
        const a = (t[j] ?? 0) - t_i;
        const middle = (p[j] ?? 0) - p_i;
        if (gone === 0) {
          if (Math.abs(middle) > step) suits = false;
          continue;
        }
        // |middle − progress × gone| ≤ step
        const one = (middle - step) / gone;
        const other = (middle + step) / gone;
        const [least, most] = one < other ? [one, other] : [other, one];
        if (most < a / b) return 'accelerates';
        if (least >= 1) suits = false;
        if (!suits) continue;
        if (least > progress(low, a, b)) low = rateOf(least, a, b);
        if (most < 1 && (high === Infinity || most < progress(high, a, b))) high = rateOf(most, a, b);
        if (low > high) suits = false;
      }
    }
  }
  if (!suits) return 'no rate';
  // A bend that small is rounding.
  const straight = low * ((t.at(-1) ?? 0) - (t.at(0) ?? 0)) < 1e-6;
  return { low: straight ? 0 : low, high };
}

/** What exponentials of a rate settle at, if they pass all readings within half of `step`. Not for a rate of 0. */
export function settledWithin({ t, p }: Timed, step: number, r: number): readonly [least: number, most: number] {
  const half = step / 2;
  let [least, most] = [-Infinity, Infinity];
  for (let j = 1; j < t.length; j += 1) {
    for (let i = 0; i < j; i += 1) {
      // exp(−r t_j) / (exp(−r t_i) − exp(−r t_j)): how much of the fall between the two is still to come.
      const x = exp(-r * ((t[j] ?? 0) - (t[i] ?? 0)));
      const toCome = x / (1 - x);
      const fall = (p[i] ?? 0) - (p[j] ?? 0);
      most = Math.min(most, (p[j] ?? 0) + half - (fall - step) * toCome);
      least = Math.max(least, (p[j] ?? 0) - half - (fall + step) * toCome);
    }
  }
  return [least, most];
}

/** An exponential, and how far the reading farthest from it lies. */
export interface Fitted {
  readonly rate: number;
  readonly settled: number;
  readonly farthest: number;
}

/** The exponential whose farthest reading is nearest, for readings that lie within half of `step` of rates that have both ends. */
export function nearest(of: Timed, step: number, within: Rates): Fitted {
  let [none, some] = [0, step];
  let rates = within;
  // Down to the rounding of the readings themselves.
  const least = 1e-12 * Math.max(...of.p.map(Math.abs));
  while (some - none > Math.max(least, 1e-9 * some)) {
    const middle = 0.5 * (none + some);
    const found = ratesWithin(of, middle);
    if (typeof found === 'string') none = middle;
    else {
      some = middle;
      rates = found;
    }
  }
  const rate = 0.5 * (rates.low + rates.high);
  const [low, high] = settledWithin(of, some, rate);
  return { rate, settled: 0.5 * (low + high), farthest: some / 2 };
}

/** The least and the most that any exponential settles at which passes all readings within half of `step`. */
export function settledBetween(of: Timed, step: number, rates: Rates): readonly [least: number, most: number] {
  // Each pair of readings gives a bound that rises or falls with the rate throughout, so that the tightest has one turn.
  const ends: readonly [number, number] = [rates.low, Math.max(rates.low, Math.min(rates.high, beyondAll(of)))];
  return [turn(ends, (r) => settledWithin(of, step, r)[0]), -turn(ends, (r) => -settledWithin(of, step, r)[1])];
}

/** A rate from which on nothing changes: what is left after the shortest time between two readings is below rounding. */
function beyondAll({ t }: Timed): number {
  return 50 / Math.min(...t.slice(1).map((one, i) => one - (t[i] ?? 0)));
}

/** The least value of a function with one turn, over rates that span decades. */
function turn([low, high]: readonly [number, number], f: (r: number) => number): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 100 && b - a > 1e-12 * b; step += 1) {
    const ratio = b / a > 2 ? Math.sqrt(b / a) : 0;
    const middle = ratio > 0 ? a * ratio : 0.5 * (a + b);
    const left = ratio > 0 ? Math.sqrt(a * middle) : 0.5 * (a + middle);
    const right = ratio > 0 ? Math.sqrt(middle * b) : 0.5 * (middle + b);
    if (f(left) <= f(right)) b = right;
    else a = left;
  }
  return Math.min(f(low), f(high), f(0.5 * (a + b)));
}
