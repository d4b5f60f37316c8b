// The distribution of a sum of independent errors, each a rectangle or a normal distribution about zero. It is symmetric
// about zero, and has no closed form from three rectangles on. Its density vanishes beyond the sum of the half widths and
// nine standard deviations of the normal part (beyond which lies 2e-19), so that it has a Fourier series on that period,
// whose coefficients are values of its characteristic function (the product of those of the parts):
//
//   F(x) = 1/2 + x / 2L + Σ φ(π k / L) sin(π k x / L) / (π k),   φ(t) = exp(−σ² t² / 2) Π sin(a t) / (a t)
//
// E. Lukacs, Characteristic Functions, 2nd ed. (Griffin, London 1970), from memory.

import { exp, sin } from '../gas/elementary.js';

/** Rectangles about zero, all of one half width, that are added up. */
export interface Rectangles {
  readonly half: number;
  readonly times: number;
}

/** The distribution of a sum: opaque but for its standard deviation. All in one unit. */
export interface Sum {
  readonly standard: number;
  /** No error is larger. */
  readonly support: number;
  /** Exact for one rectangle or two: their half widths, the larger first. */
  readonly exact: readonly [number, number] | undefined;
  /** φ(π k / support) / (π k) for k = 1, 2, … */
  readonly terms: readonly number[];
}

const SIGMAS = 9;
/** Terms end where all that follow add up to less. */
const LEFT_OUT = 1e-16;
/**
 * Or here, which only sums of few rectangles and hardly any normal part reach: what is left out is then below 1e-7 if two
 * rectangles or more are not narrow, and below 3e-5 beside a single one.
 */
const MOST_TERMS = 4000;
/**
 * A rectangle narrower than this many standard deviations of the sum counts as a normal distribution of its variance. In a
 * smooth sum that moves no probability by 1e-9; beside a single wide rectangle by up to 6e-5, within a few of its own half
 * widths of the edge of the wide one, and nowhere else.
 */
const NARROW = 0.01;

/** The distribution of the sum of rectangles and of a normal distribution of standard deviation `sigma`, all about zero. */
export function sumOf(rectangles: readonly Rectangles[], sigma: number): Sum {
  const wide = rectangles.filter(({ half }) => half > 0);
  const variance = wide.reduce((sum, { half, times }) => sum + (times * half * half) / 3, sigma * sigma);
  const standard = Math.sqrt(variance);
  const halves = wide.flatMap(({ half, times }) => Array<number>(times).fill(half));
  if (sigma === 0 && halves.length <= 2) {
    const [one = 0, other = 0] = halves;
    const exact = [Math.max(one, other), Math.min(one, other)] as const;
    return { standard, support: one + other, exact, terms: [] };
  }
  const isNarrow = ({ half }: Rectangles): boolean => half < NARROW * standard;
  const kept = wide.filter((one) => !isNarrow(one));
  const joined = wide.filter(isNarrow).reduce((sum, { half, times }) => sum + (times * half * half) / 3, sigma * sigma);
  const support = kept.reduce((sum, { half, times }) => sum + times * half, SIGMAS * Math.sqrt(joined));
  return { standard, support, exact: undefined, terms: termsOf(kept, joined, support) };
}

function termsOf(rectangles: readonly Rectangles[], variance: number, support: number): number[] {
  const terms: number[] = [];
  for (let k = 1; k <= MOST_TERMS; k += 1) {
    const t = (Math.PI * k) / support;
    const damped = exp(-0.5 * variance * t * t);
    let phi = damped;
    let bound = damped; // on the size of φ here and beyond
    let order = variance * t * t; // φ falls at least as fast as t to the power of −order
    for (const { half, times } of rectangles) {
      const at = half * t;
      const factor = sin(at) / at;
      const most = Math.min(1, 1 / at);
      if (at > 1) order += times;
      for (let i = 0; i < times; i += 1) {
        phi *= factor;
        bound *= most;
      }
    }
    terms.push(phi / (Math.PI * k));
    if (bound / (Math.PI * order) < LEFT_OUT) return terms;
  }
  return terms;
}

/** The probability that the sum is at most x. */
export function cumulative(sum: Sum, x: number): number {
  if (x >= sum.support) return 1;
  if (x <= -sum.support) return 0;
  if (sum.exact !== undefined) return x < 0 ? beyond(sum.exact, -x) : 1 - beyond(sum.exact, x);
  const angle = (Math.PI * x) / sum.support;
  // sin and cos of multiples of the angle, by turning on from one to the next.
  const [s1, c1] = [sin(angle), sin(angle + 0.5 * Math.PI)];
  let [s, c] = [s1, c1];
  let total = 0.5 + (0.5 * x) / sum.support;
  for (const term of sum.terms) {
    total += term * s;
    [s, c] = [s * c1 + c * s1, c * c1 - s * s1];
  }
  return Math.min(1, Math.max(0, total)); // the last place may be beyond a probability
}

/** The probability that the sum of one or two rectangles is above x, which is zero or more. */
function beyond([a, b]: readonly [number, number], x: number): number {
  if (x <= a - b) return (a - x) / (2 * a);
  const rest = a + b - x;
  return (rest * rest) / (8 * a * b);
}

/** The x that the sum is at most with a probability p, 0 < p < 1. */
export function quantile(sum: Sum, p: number): number {
  if (p < 0.5) return -quantile(sum, 1 - p);
  let low = 0;
  let high = sum.support;
  // By halves: it cannot fail, and a density that jumps does not matter.
  for (;;) {
    const x = 0.5 * (low + high);
    if (x <= low || x >= high) return x;
    if (cumulative(sum, x) < p) low = x;
    else high = x;
  }
}
