import fc from 'fast-check';

/** Numbers spread evenly over a range; fc.double spreads over the bits, so that nearly all of its numbers are tiny. */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.nat(Number.MAX_SAFE_INTEGER).map((n) => min + (max - min) * (n / Number.MAX_SAFE_INTEGER));
