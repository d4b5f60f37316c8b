import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { notANumber, outsideBounds, unknownWord } from '../basis/problem.js';
import { taken } from '../basis/taken.js';
import { wrongKind } from '../quantity/kind.js';
import { isObject } from '../target/table.js';
import { cumulative } from './distribution.js';
import type { Sides, Sums } from './sides.js';

// Rules of decision after JCGM 106:2012.

/**
 * Which side carries the doubt (JCGM 106, clause 8). Simple acceptance: neither, the reading as it stands decides. Guarded
 * acceptance: it is within only if the risk of its being outside is small. Guarded rejection: it is outside only if the risk
 * of its being inside is small. Guarded both ways: either only if its risk is small. Between the two it is inconclusive.
 */
export type Acceptance = 'simple acceptance' | 'guarded acceptance' | 'guarded rejection' | 'guarded both ways';

/** A rule of decision, which is the caller's to choose. */
export interface Rule {
  readonly acceptance: Acceptance;
  /**
   * The largest risk of a wrong decision about the lower and about the upper limit: a probability from 1e-6 to below 0.5
   * each. They are apart, because too little gas tears a diaphragm and too much stores no oil.
   */
  readonly risk: { readonly below: number; readonly above: number };
}

/** Which decisions a rule guards. */
export function guards({ acceptance }: Rule): { readonly accepting: boolean; readonly rejecting: boolean } {
  return {
    accepting: acceptance === 'guarded acceptance' || acceptance === 'guarded both ways',
    rejecting: acceptance === 'guarded rejection' || acceptance === 'guarded both ways',
  };
}

/** What a rule says of a reading. */
export type RuledOutcome = 'within' | 'undercharged' | 'overcharged' | 'inconclusive';

/** What a rule says of a reading; `inconclusive` where it has no answer. */
export function outcomeOf({ lower, upper }: Sides, sums: Sums, rule: Rule): RuledOutcome {
  const { accepting, rejecting } = guards(rule);
  const { risk } = rule;
  if (lower.inside < 0)
    return rejecting && cumulative(sums.lower, lower.inside) > risk.below ? 'inconclusive' : 'undercharged';
  if (upper.inside < 0)
    return rejecting && cumulative(sums.upper, upper.inside) > risk.above ? 'inconclusive' : 'overcharged';
  if (!accepting) return 'within';
  const kept =
    cumulative(sums.lower, -lower.inside) <= risk.below && cumulative(sums.upper, -upper.inside) <= risk.above;
  return kept ? 'within' : 'inconclusive';
}

const LEAST_RISK = 1e-6;

const ACCEPTANCES: readonly Acceptance[] = [
  'simple acceptance',
  'guarded acceptance',
  'guarded rejection',
  'guarded both ways',
];

/** A rule whose parts are read once and checked: what is checked is what is used. */
export function checkedRule(given: Rule): Rule {
  if (!isObject(given)) wrongKind('rule of decision: acceptance and risk', given, 'rule');
  const rule = taken(given, {
    acceptance: 'as it is',
    risk: { below: 'as it is', above: 'as it is' },
  });
  const problems: Problem[] = [];
  collect(problems, 'rule.acceptance', () => {
    if (ACCEPTANCES.includes(rule.acceptance)) return;
    fail(unknownWord, '', quote(rule.acceptance), { words: ACCEPTANCES.map((one) => `'${one}'`).join(' or ') });
  });
  for (const side of ['below', 'above'] as const) {
    collect(problems, `rule.risk.${side}`, () => {
      const risk = rule.risk?.[side];
      if (!Number.isFinite(risk)) fail(notANumber, '', quote(risk));
      if (risk >= LEAST_RISK && risk < 0.5) return;
      fail(outsideBounds, '', String(risk), { bounds: 'a probability from 0.000001 to below 0.5' });
    });
  }
  failIfAny(problems);
  return rule;
}
