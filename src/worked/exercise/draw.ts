// What is drawn for an exercise: numbers such as people would write, the same for the same seed everywhere.
import type { Random } from '../../verdict/monte-carlo.js';

export interface Draw {
  /** A whole multiple of a step, from low to high. */
  readonly number: (low: number, high: number, step: number) => number;
  readonly one: <T>(of: readonly [T, ...T[]]) => T;
  /** The same in another order. */
  readonly shuffled: <T>(of: readonly T[]) => T[];
}

export function drawBy(random: Random): Draw {
  const below = (count: number): number => Math.floor((random() / 4_294_967_296) * count);
  return {
    number: (low, high, step) => {
      // Steps are halves and tenths: counted in whole numbers, so that 0.3 is 0.3.
      const count = Math.round((high - low) / step) + 1;
      return Number((low + below(count) * step).toFixed(6));
    },
    one: (of) => of[below(of.length)] ?? of[0],
    shuffled: (of) => {
      const left = [...of];
      const order: (typeof left)[number][] = [];
      while (left.length > 0) order.push(...left.splice(below(left.length), 1));
      return order;
    },
  };
}
