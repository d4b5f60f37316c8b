// Numbers for cases by the thousand: the same in every run.

export interface Random {
  /** Evenly distributed, with so many decimals. */
  readonly between: (low: number, high: number, decimals?: number) => number;
  readonly pick: <T>(...of: readonly T[]) => T;
}

/** A generator by a seed (mulberry32, public domain). */
export function randomBy(seed: number): Random {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number, decimals = 1): number =>
    Number((low + (high - low) * next()).toFixed(decimals));
  return {
    between,
    pick: (...of) => {
      const one = of[Math.floor(next() * of.length)];
      if (one === undefined) throw new Error('nothing to pick from');
      return one;
    },
  };
}
