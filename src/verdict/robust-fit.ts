// The shift that most readings of a round follow, whatever the others do.

/** x ≈ θ g, of most of the readings. */
export interface Fit {
  readonly theta: number;
  readonly standard: number;
  readonly scatter: number;
  readonly remaining: readonly number[];
  readonly explained: readonly boolean[];
  readonly explains: number;
}

/** Scatters beyond which a reading is not explained. */
export const FAR = 3;
/** Standard deviation of a normal distribution over its median absolute deviation. */
const NORMAL_OVER_MAD = 1.4826;

/**
 * The shift x ≈ θ g that most readings follow. It begins at the line through zero with the least sum of absolute deviations,
 * a weighted median; from there the biweight of Tukey, in which a reading counts the less, the farther off it is, and
 * nothing beyond 4.685 scatters. Its uncertainty is that of an M-estimate, from the readings' own deviations (P. J. Huber,
 * Robust Statistics, Wiley 1981, chapter 6, from memory), and never smaller than what each reading has of its own gives.
 */
export function fit(x: readonly number[], g: readonly number[], least: number): Fit {
  const points = x.map((value, i) => ({ x: value, g: g[i] ?? NaN }));
  const from = (theta: number): number[] => points.map((one) => one.x - theta * one.g);
  const start = weightedMedian(points.map((one) => ({ value: one.x / one.g, weight: Math.abs(one.g) })));
  const scatter = Math.max(least, NORMAL_OVER_MAD * median(from(start).map(Math.abs)));
  const reach = BIWEIGHT * scatter;
  let theta = start;
  for (let i = 0; i < MOST_TURNS; i += 1) {
    let [gx, gg] = [0, 0];
    for (const one of points) {
      const weight = biweight((one.x - theta * one.g) / reach) * one.g;
      gx += weight * one.x;
      gg += weight * one.g;
    }
    const before = theta;
    theta = gx / gg;
    if (theta === before) break;
  }
  let [variance, bend, all] = [0, 0, 0];
  for (const one of points) {
    const rest = one.x - theta * one.g;
    const u = rest / reach;
    if (Math.abs(u) < 1) {
      const pull = biweight(u) * rest * one.g;
      variance += pull * pull;
      bend += (1 - u * u) * (1 - 5 * u * u) * one.g * one.g;
    }
    all += one.g * one.g;
  }
  const remaining = from(theta);
  const explained = remaining.map((rest) => Math.abs(rest) <= FAR * scatter);
  return {
    theta,
    // Where readings fall in two heaps the bend may vanish; a tenth of what it is in one heap makes of that a wide uncertainty.
    standard: Math.max(Math.sqrt(variance) / Math.max(bend, 0.1 * all), least / Math.sqrt(all)),
    scatter,
    remaining,
    explained,
    explains: explained.filter(Boolean).length,
  };
}

/** Where the biweight ends, in scatters: 95 % as sharp as the mean where all is normal. */
const BIWEIGHT = 4.685;
/** It settles in about ten; the last place may go to and fro. */
const MOST_TURNS = 50;

function biweight(u: number): number {
  const rest = 1 - u * u;
  return Math.abs(u) < 1 ? rest * rest : 0;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function median(values: readonly number[]): number {
  return weightedMedian(values.map((value) => ({ value, weight: 1 })));
}

/** The value below and above which lies half of the weight each; midway between two where it falls between them. */
function weightedMedian(values: readonly { readonly value: number; readonly weight: number }[]): number {
  const sorted = [...values].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let below = 0;
  for (const [i, { value, weight }] of sorted.entries()) {
    below += weight;
    if (below === half) return 0.5 * (value + (sorted[i + 1]?.value ?? value));
    if (below > half) return value;
  }
  return NaN; // of no values
}
