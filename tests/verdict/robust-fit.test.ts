import { describe, expect, test } from 'vitest';
import { fit } from '../../src/verdict/robust-fit.js';

// P. J. Huber, Robust Statistics, Wiley 1981, chapter 6, and the biweight of J. W. Tukey, both from memory: written plainly
// here, and held against the fit. The scatter is 1.4826 median absolute deviations (of a normal distribution, from memory).
const biweight = (u: number): number => (Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0);
const REACH = 4.685;

/** Where the sum of absolute deviations is least: at one of the quotients, or anywhere between two. */
function leastAbsolute(x: readonly number[], g: readonly number[]): number {
  const sum = (theta: number): number => x.reduce((all, one, i) => all + Math.abs(one - theta * (g[i] ?? 1)), 0);
  const found = x.map((one, i) => one / (g[i] ?? 1)).sort((a, b) => sum(a) - sum(b) || a - b);
  const least = found.filter((one) => Math.abs(sum(one) - sum(found[0] ?? 0)) < 1e-12);
  return (Math.min(...least) + Math.max(...least)) / 2;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? NaN) + (sorted[Math.floor(half)] ?? NaN)) / 2;
}

const ROUNDS: readonly (readonly [title: string, x: readonly number[], g: readonly number[]])[] = [
  ['all alike', [0.4, 3.1, 2.2, 2.9, 1.7, 2.5, 9], [1, 1, 1, 1, 1, 1, 1]],
  ['an even number of them', [7, 0, 4, 6], [1, 1, 1, 1]],
  ['another even number', [20, 2, 0, 6], [1, 1, 1, 1]],
  ['targets that differ', [0.7, 1.75, 3.7, 0.5, 1.9, 3.5, 60, -40], [30, 90, 180, 30, 90, 180, 90, 180]],
  ['targets that differ, and few', [1, -3, 8, 2], [0.5, 2, 3, 1]],
  ['one far below', [2, 2.5, -30, 1.5, 2.2, 1.8, 2.1], [1, 1.1, 1, 0.9, 1, 1, 1.2]],
];

describe.each(ROUNDS)('the shift that most follow: %s', (_title, x, g) => {
  const found = fit(x, g, 1e-3);
  const rest = x.map((one, i) => one - found.theta * (g[i] ?? 1));
  const start = leastAbsolute(x, g);
  const scatter = 1.4826 * median(x.map((one, i) => Math.abs(one - start * (g[i] ?? 1))));
  const u = rest.map((one) => one / (REACH * scatter));

  test('its scatter is about the line of least absolute deviations', () => {
    expect(found.scatter).toBeCloseTo(scatter, 12);
  });

  test('the weighted deviations from it balance', () => {
    const sum = rest.reduce((all, one, i) => all + biweight(u[i] ?? 0) * one * (g[i] ?? 1), 0);
    const size = rest.reduce((all, one, i) => all + Math.abs(biweight(u[i] ?? 0) * one * (g[i] ?? 1)), 0);
    expect(Math.abs(sum)).toBeLessThan(1e-9 * size);
  });

  test('its uncertainty is that of an M-estimate', () => {
    const pull = rest.map((one, i) => biweight(u[i] ?? 0) * one * (g[i] ?? 1));
    // The derivative of u (1 − u²)² is (1 − u²)(1 − 5 u²).
    const bend = u.map((one, i) => (Math.abs(one) < 1 ? (1 - one ** 2) * (1 - 5 * one ** 2) * (g[i] ?? 1) ** 2 : 0));
    const [variance, slope] = [pull.map((one) => one ** 2), bend].map((all) => all.reduce((a, b) => a + b, 0));
    const all = g.reduce((sum, one) => sum + one ** 2, 0);
    const wanted = Math.sqrt(variance ?? NaN) / Math.max(slope ?? NaN, 0.1 * all);
    expect(found.standard).toBeCloseTo(wanted, 12);
  });

  test('what lies within three scatters is explained', () => {
    expect(found.remaining).toEqual(rest);
    expect(found.explained).toEqual(rest.map((one) => Math.abs(one) <= 3 * scatter));
    expect(found.explains).toBe(found.explained.filter(Boolean).length);
  });
});

test('a shift of all alike is found exactly, with the least uncertainty that each reading has of its own', () => {
  const g = [30, 90, 180, 60];
  const found = fit(
    g.map((one) => 0.02 * one),
    g,
    0.5,
  );
  expect(found.theta).toBeCloseTo(0.02, 14);
  expect([found.scatter, found.explains]).toEqual([0.5, 4]);
  expect(found.standard).toBeCloseTo(0.5 / Math.hypot(...g), 14);
});

test('two heaps have no sharp middle: the uncertainty is of the size of what is between them', () => {
  const found = fit([-10, -10, -10, -10, 10, 10, 10, 10.001], [1, 1, 1, 1, 1, 1, 1, 1], 0.1);
  expect(found.standard).toBeGreaterThan(1);
});

test('it does not depend on the order, nor on the unit', () => {
  const [, x, g] = ROUNDS[3] ?? ROUNDS[0] ?? ['', [], []];
  const found = fit(x, g, 1e-3);
  const turned = fit([...x].reverse(), [...g].reverse(), 1e-3);
  expect(turned.theta).toBeCloseTo(found.theta, 12);
  const scaled = fit(
    x.map((one) => 1000 * one),
    g,
    1,
  );
  expect(scaled.theta).toBeCloseTo(1000 * found.theta, 9);
  expect(scaled.standard).toBeCloseTo(1000 * found.standard, 9);
});
