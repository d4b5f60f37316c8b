// The bound of accumulators completed against a case where it is known: one bottle, accumulators all alike.
import { gauge, nitrogen, volume } from 'isochore';
import { expect, test } from 'vitest';
import { bestOf, mostAtStart } from '../../src/supply/best.js';
import { OBJECTIVES } from '../../src/supply/objective.js';
import { stockOf } from '../../src/supply/stock.js';

const { density } = nitrogen['~kernel'];
const T = 293.15;
const [p, p_to] = [50e5, 150e5];
const V = 0.002;
const sink = { V, T, n: V * density(T, p), p, p_to, n_to: V * density(T, p_to), rho_vented: density(T, 101_325) };
const kit = { volume: volume(30, 'mL'), rated: gauge(300, 'bar') };
const takes = sink.n_to - sink.n + 3e-5 * (density(T, p_to) - sink.rho_vented);

/** A bottle that has above the pressure wanted, which is its residual one, so many times what one accumulator takes. */
const bottleFor = (times: number) => {
  const V_b = (times * takes) / (density(T, 200e5) - density(T, p_to));
  return { V: V_b, T, n: V_b * density(T, 200e5), p: 200e5, least: V_b * density(T, p_to), isFull: false };
};

test.each([3.01, 5.001, 9.5, 20.001])('a bottle with gas for %d accumulators', (times) => {
  const count = Math.floor(times);
  const stock = stockOf(nitrogen, [bottleFor(times)], Array<typeof sink>(count + 1).fill(sink), {
    kit,
    regulator: 'none',
  });
  const best = bestOf(stock, OBJECTIVES);
  expect(best.score['accumulators completed']).toBe(count);
  // Its residual pressure is the pressure wanted, so that the bound has nothing to be generous with.
  expect(mostAtStart(stock)).toBe(count);
});

test('an accumulator of a pressure above the bottle is not counted', () => {
  const high = { ...sink, p_to: 201e5, n_to: V * density(T, 201e5) };
  const stock = stockOf(nitrogen, [bottleFor(50)], [sink, high], { kit, regulator: 'none' });
  expect(mostAtStart(stock)).toBe(1);
});
