import { relation, show, type Trace } from '../basis/relation.js';

// The combined standard uncertainty, of as many errors as there are.

export const COMBINED = /* @__PURE__ */ relation({
  gives: 'u',
  unit: 'Pa',
  from: ['u_a', 'u_b'],
  formula: 'sqrt(u_a * u_a + u_b * u_b)',
  source: 'combined standard uncertainty of independent errors (JCGM 100, 5.1.2)',
  of: (u_a, u_b) => Math.sqrt(u_a * u_a + u_b * u_b),
});

/** Far more than there are contributions. */
const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** Combines standard uncertainties of independent errors, Pa, and shows it as {@link COMBINED}, with a term for each. */
export function combinedOf(standards: readonly number[], about: string, trace?: Trace): number {
  const result = Math.sqrt(standards.reduce((sum, u) => sum + u * u, 0));
  if (trace !== undefined) {
    const from = standards.map((_, i) => `u_${LETTERS[i] ?? ''}`);
    const formula = `sqrt(${from.map((symbol) => `${symbol} * ${symbol}`).join(' + ')})`;
    show(trace, { relation: { ...COMBINED, from, formula }, about, values: standards, result });
  }
  return result;
}
