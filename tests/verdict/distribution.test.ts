import fc from 'fast-check';
import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { cumulative, quantile, sumOf, type Rectangles } from '../../src/verdict/distribution.js';
import { evenly } from '../support/evenly.js';

const one = (half: number): Rectangles => ({ half, times: 1 });
const each = (halves: readonly number[]): Rectangles[] => halves.map(one);
/** Distribution function of the normal distribution, by the error function of mathjs. */
const phi = (z: number): number => 0.5 * (1 + erf(z / Math.SQRT2));

describe('the normal distribution', () => {
  const normal = sumOf([], 1);

  // mpmath 1.3.0 with 40 digits: sqrt(2) erfinv(2 p − 1).
  test.each([
    [0.9, 1.2815515655446004],
    [0.95, 1.6448536269514726],
    [0.975, 1.9599639845400543],
    [0.99, 2.326347874040841],
    [0.995, 2.575829303548901],
    [0.999, 3.0902323061678136],
  ])('has its quantile of %d to 1e-12', (p, z) => {
    expect(Math.abs(quantile(normal, p) - z)).toBeLessThan(1e-12);
    expect(Math.abs(quantile(normal, 1 - p) + z)).toBeLessThan(1e-12);
  });

  test('has the probabilities of the error function', () => {
    for (let z = -6; z <= 6; z += 0.37) expect(Math.abs(cumulative(normal, z) - phi(z))).toBeLessThan(2e-15);
  });

  test('has its median at zero, as every sum of these', () => {
    for (const sum of [normal, sumOf([one(2)], 0), sumOf(each([2, 1]), 0), sumOf(each([2, 1, 3]), 0.1), sumOf([], 0)])
      expect(Math.abs(quantile(sum, 0.5))).toBeLessThan(1e-15);
  });

  test('scales with its standard deviation', () => {
    expect(quantile(sumOf([], 12_345), 0.975) / 12_345).toBeCloseTo(1.959963984540054, 12);
  });
});

describe('rectangles', () => {
  test('one and two are exact', () => {
    const rectangle = sumOf([one(2)], 0);
    expect([-2, -1, 0, 1, 2].map((x) => cumulative(rectangle, x))).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(quantile(rectangle, 0.975)).toBeCloseTo(1.9, 14);
    expect(rectangle.standard).toBeCloseTo(2 / Math.sqrt(3), 15);
    // Triangle of two equal ones; trapezoid of two others: one half, less the area beyond.
    expect(cumulative(sumOf([{ half: 1, times: 2 }], 0), 1)).toBe(1 - 1 / 8);
    expect(cumulative(sumOf(each([2, 1]), 0), 1.5)).toBeCloseTo(1 - 1.5 ** 2 / 16, 15);
    expect(cumulative(sumOf(each([1, 2]), 0), 0.5)).toBe(0.625);
    expect(cumulative(sumOf(each([1, 2]), 0), -0.5)).toBe(0.375);
    expect(cumulative(sumOf(each([2, 1]), 0), -1.5)).toBeCloseTo(1.5 ** 2 / 16, 15);
  });

  test('of no width are not there', () => {
    expect(sumOf(each([2, 0, 0, 0]), 0)).toEqual(sumOf([one(2)], 0));
    expect(cumulative(sumOf([], 0), 0)).toBe(1);
    expect(quantile(sumOf(each([0]), 0), 0.975)).toBe(0);
  });

  // The piecewise polynomial of a sum of rectangles in exact fractions, and its convolution with a normal distribution by
  // quadrature, both in mpmath 1.3.0 with 25 to 40 digits: F(0.7), F(2), F(3.1), the quantile of 0.975.
  test.each<[readonly number[], number, readonly number[], number]>([
    [[2.5, 0.5, 1], 0, [0.64, 0.8833333333333333, 0.98785], 2.8545027756320973],
    [[2.5, 0.5, 0.629, 1.258, 0.3], 0, [0.6395198450748253, 0.867536796744821, 0.9732843736316535], 3.1325589809902064],
    [[2.5, 0.5, 1.258], 0.03, [0.6399999885008466, 0.8738156862745098, 0.9794436671966091], 3.019916897181173],
    [[2.5, 0.5], 0.6, [0.6398744732917033, 0.882530859581557, 0.9866450149991378], 2.856096086617189],
    [[1, 1, 1, 1], 0, [0.7209174479166667, 0.9583333333333334, 0.99829140625], 2.239776526413213],
  ])('%j with a normal part of %d', (halves, sigma, probabilities, ninetyFive) => {
    const sum = sumOf(each(halves), sigma);
    [0.7, 2, 3.1].forEach((x, i) => {
      expect(Math.abs(cumulative(sum, x) - (probabilities[i] ?? 0))).toBeLessThan(1e-10);
    });
    expect(Math.abs(quantile(sum, 0.975) - ninetyFive)).toBeLessThan(1e-9);
  });

  test('added up several times are as many rectangles', () => {
    for (const x of [-1.5, 0.2, 1, 2.9])
      expect(cumulative(sumOf([{ half: 0.5, times: 4 }, one(1)], 0.1), x)).toBeCloseTo(
        cumulative(sumOf(each([0.5, 0.5, 1, 0.5, 0.5]), 0.1), x),
        14,
      );
  });

  // Closed form: σ / 2a · [ψ((x + a) / σ) − ψ((x − a) / σ)], ψ(z) = z Φ(z) + φ(z), the integral of the normal distribution.
  test('one with a normal part', () => {
    const psi = (z: number): number => z * phi(z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    for (const [a, sigma] of [
      [1, 0.05],
      [1, 1],
      [0.2, 1],
    ] as const) {
      const sum = sumOf([one(a)], sigma);
      for (let x = -3; x <= 3; x += 0.21) {
        const closed = (sigma / (2 * a)) * (psi((x + a) / sigma) - psi((x - a) / sigma));
        expect(Math.abs(cumulative(sum, x) - closed)).toBeLessThan(1e-13);
      }
    }
  });
});

describe('a narrow rectangle that counts as normal', () => {
  const wide = Math.sqrt(3); // of standard deviation 1
  const narrow = 0.00999;
  const exact = sumOf(each([wide, narrow]), 0);
  const joined = sumOf(each([wide, narrow]), 1e-9); // with a normal part, so that it is not taken as two rectangles
  const apart = (x: number): number => Math.abs(cumulative(joined, x) - cumulative(exact, x));

  test('moves the probabilities at the edge of a single wide one by no more than 6e-5', () => {
    let most = 0;
    for (let i = -500; i <= 500; i += 1) most = Math.max(most, apart(wide + (i / 100) * narrow));
    expect(most).toBeLessThan(6e-5);
    expect(most).toBeGreaterThan(1e-5); // it was joined
  });

  test('and not the interval', () => {
    expect(Math.abs(quantile(joined, 0.975) - quantile(exact, 0.975))).toBeLessThan(2e-4);
    expect(apart(0.9 * wide)).toBeLessThan(2e-6);
  });

  test('moves those of a smooth sum by less than 1e-9', () => {
    const alone = sumOf(each([1, 0.0057]), 0.5);
    // The same with the narrow one widened to just above the measure, and the normal part less by as much.
    const spread = Math.sqrt(0.25 + (0.0057 ** 2 - 0.0081 ** 2) / 3);
    const kept = sumOf(each([1, 0.0081]), spread);
    expect(kept.standard).toBeCloseTo(alone.standard, 12);
    for (let x = -3; x <= 3; x += 0.1) expect(Math.abs(cumulative(kept, x) - cumulative(alone, x))).toBeLessThan(1e-9);
  });
});

// Counted when it was written. Each term costs an exponential and its sines; too few are an error that no bound tells.
test.each<[readonly Rectangles[], sigma: number, terms: number]>([
  [[one(1)], 0, 0],
  [each([1, 0.5]), 0, 0],
  [[one(1)], 0.1, 45],
  [[one(1)], 1, 25],
  [each([1, 1]), 0.01, 412],
  [[{ half: 1, times: 4 }], 0, 4000],
  [[{ half: 1, times: 9 }], 0, 119],
  [each([1, 0.5, 0.25]), 0.001, 2446],
  [[{ half: 1, times: 2 }, one(0.3)], 0.05, 108],
  [[{ half: 0.05, times: 100 }], 1, 36],
])('the sum of %o and σ = %d takes so many terms as its bound needs', (rectangles, sigma, terms) => {
  expect(sumOf(rectangles, sigma).terms).toHaveLength(terms);
});

describe('laws', () => {
  const anyHalf = evenly(0.001, 5);
  const anySum = fc.record({ halves: fc.array(anyHalf, { maxLength: 7 }), sigma: evenly(0.01, 2) });

  test('it is symmetric, rises from 0 to 1, and its quantile undoes it', () => {
    fc.assert(
      fc.property(anySum, evenly(0.001, 0.999), ({ halves, sigma }, p) => {
        const sum = sumOf(each(halves), sigma);
        const x = quantile(sum, p);
        expect(Math.abs(cumulative(sum, x) - p)).toBeLessThan(1e-12);
        expect(Math.abs(cumulative(sum, x) + cumulative(sum, -x) - 1)).toBeLessThan(1e-13);
        expect(cumulative(sum, x + 0.01 * sum.standard)).toBeGreaterThanOrEqual(p);
        expect([cumulative(sum, -sum.support), cumulative(sum, sum.support)]).toEqual([0, 1]);
      }),
      { numRuns: 200 },
    );
  });

  test('it does not depend on the unit: of pascals it takes as many terms as of bar', () => {
    const halves = [2.5, 0.5, 0.01]; // the last of them narrow
    const [bar, pascals] = [1, 1e5].map((unit) => sumOf(each(halves.map((half) => half * unit)), 0.3 * unit));
    expect(pascals?.terms).toHaveLength(bar?.terms.length ?? NaN);
    expect((pascals?.support ?? NaN) / (bar?.support ?? NaN)).toBeCloseTo(1e5, 8);
  });

  test('its variance is the sum of the variances', () => {
    fc.assert(
      fc.property(anySum, ({ halves, sigma }) => {
        const sum = sumOf(each(halves), sigma);
        const variance = halves.reduce((all, half) => all + (half * half) / 3, sigma * sigma);
        expect(sum.standard).toBeCloseTo(Math.sqrt(variance), 10);
        // And that of its distribution: the integral of 4 x (1 − F(x)) over the positive side, by the rule of midpoints.
        const [n, h] = [2000, sum.support / 2000];
        let integral = 0;
        for (let i = 0; i < n; i += 1) integral += 4 * (i + 0.5) * h * (1 - cumulative(sum, (i + 0.5) * h)) * h;
        expect(integral / variance).toBeCloseTo(1, 4);
      }),
      { numRuns: 20 },
    );
  });

  test('the narrower a part, the more of it lies about zero', () => {
    fc.assert(
      fc.property(anySum, anyHalf, evenly(0, 1), evenly(0, 10), ({ halves, sigma }, half, less, x) => {
        const wider = cumulative(sumOf(each([...halves, half]), sigma), x);
        const narrower = cumulative(sumOf(each([...halves, half * less]), sigma), x);
        expect(narrower).toBeGreaterThanOrEqual(wider - 1e-8);
      }),
      { numRuns: 200 },
    );
  });
});

// JCGM 101:2008, 9.2, from memory: four inputs added up. The ends of the interval of 95 %, by the GUM and by distribution.
describe('the additive examples of JCGM 101', () => {
  test('9.2.3: four equal rectangles of standard deviation 1: ± 3.88, ± 3.92 by the GUM', () => {
    const sum = sumOf(each([1, 1, 1, 1].map((u) => u * Math.sqrt(3))), 0);
    expect(sum.standard).toBeCloseTo(2, 12);
    expect(quantile(sum, 0.975).toFixed(2)).toBe('3.88');
    expect((quantile(sumOf([], 1), 0.975) * sum.standard).toFixed(2)).toBe('3.92');
  });

  test('9.2.4: one of them ten times as wide: ± 17.0, ± 19.9 by the GUM', () => {
    const sum = sumOf(each([1, 1, 1, 10].map((u) => u * Math.sqrt(3))), 0);
    expect(sum.standard.toFixed(1)).toBe('10.1');
    expect(quantile(sum, 0.975).toFixed(1)).toBe('17.0');
    expect((quantile(sumOf([], 1), 0.975) * sum.standard).toFixed(1)).toBe('19.9');
  });
});
