import { relation, step2, type Trace } from '../basis/relation.js';
import { standardOf } from './budget.js';
import { combinedOf } from './combined.js';
import { quantile, type Sum } from './distribution.js';
import { guards, type Rule } from './rule.js';
import type { Side, Sides, Sums } from './sides.js';

// What of a decision can be followed by hand. The probabilities are those of the distribution of a sum, which no hand adds
// up; but the margin in standard uncertainties, and what of it is left beyond the guard band, say the same.

export const IN_STANDARDS = /* @__PURE__ */ relation({
  gives: 'r_margin',
  unit: '1',
  from: ['dp_inside', 'u'],
  formula: 'dp_inside / u',
  source: 'a margin in standard uncertainties: a table of the normal distribution tells about how likely more is',
  of: (dp_inside, u) => dp_inside / u,
});

export const BEYOND_GUARD = /* @__PURE__ */ relation({
  gives: 'dp_beyond',
  unit: 'Pa',
  from: ['dp_inside', 'dp_guard'],
  formula: 'abs(dp_inside) - dp_guard',
  source:
    'margin beyond the guard band that the accepted risk asks for, from the distribution of the sum (JCGM 106, 8.3)',
  of: (dp_inside, dp_guard) => Math.abs(dp_inside) - dp_guard,
});

/** Shows the margin at each limit, in standard uncertainties, and beyond the guard band where the rule has one. */
export function tell({ lower, upper }: Sides, sums: Sums, readings: number, rule: Rule, trace: Trace): void {
  const { accepting, rejecting } = guards(rule);
  const side = (about: string, { inside, parts }: Side, sum: Sum, risk: number): void => {
    const u = combinedOf(
      parts.map((part) => standardOf(part, readings)),
      about,
      trace,
    );
    step2(trace, IN_STANDARDS, about, inside, u);
    if (inside < 0 ? rejecting : accepting) step2(trace, BEYOND_GUARD, about, inside, quantile(sum, 1 - risk));
  };
  side('lower limit', lower, sums.lower, rule.risk.below);
  side('upper limit', upper, sums.upper, rule.risk.above);
}
