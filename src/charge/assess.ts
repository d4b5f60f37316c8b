import type { Trace } from '../basis/relation.js';
import { copyOfInstruments, type Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { uncertainty, type Budget, type NoBudget } from '../verdict/budget.js';
import { asCorrected } from '../verdict/as-corrected.js';
import { decided, type Decision } from '../verdict/decide.js';
import { checkedRule, type Rule } from '../verdict/rule.js';
import { checkedReading } from '../verdict/judge.js';
import { caution } from '../basis/caution.js';
import type { Charge } from './charge.js';
import { check, type Check } from './check.js';

/** The whole answer to one reading whose instruments are known. */
export interface Assessment extends Check {
  /** The reading as it was judged: as the certificates correct it. For {@link why}. */
  readonly reading: Reading;
  /** How sure the comparison is, and of what the doubt consists. */
  readonly uncertainty: Budget | NoBudget;
  /** What the reading decides by the rule that was chosen. */
  readonly decision: Decision;
}

/**
 * {@link check} with the instruments of the reading: how sure it is, and what it decides. Gas is vented only on a
 * conclusive decision, that the gauge is over its limit and the truth above the target: vented gas has to be bought, and
 * too little tears the diaphragm. Without one the quantity is withheld, `not conclusive`. Gas to add is given as it is: the
 * next reading will tell. As in {@link check}, the reading is taken at its word: {@link slips} asks whether it is a slip.
 *
 * Verdict and quantity are of the reading as the certificates correct it. The marks, of the band and to stop at, are what
 * this gauge shows there: one that shows 2 bar too much is filled to a mark 2 bar higher.
 *
 * @param rule how large a risk of a wrong decision may be; for the caller to choose, there is no usual one
 * @throws {@link Fault} as {@link check}, {@link uncertainty} and {@link decide}
 * @example
 * ```ts
 * const rule = { acceptance: 'guarded acceptance', risk: { below: 0.025, above: 0.025 } } as const;
 * const { decision, charge } = assess(spec, reading, instruments, rule);
 * decision.outcome; // => 'undercharged'
 * charge.action; // => 'add'
 * ```
 */
export function assess(
  spec: Specification,
  reading: Reading,
  instruments: Instruments,
  rule: Rule,
  trace?: Trace,
): Assessment {
  const own = checkedReading(reading);
  const ownInstruments = copyOfInstruments(instruments);
  const budget = uncertainty(spec, own, ownInstruments, trace);
  const corrected = asCorrected(spec, own, ownInstruments);
  const checked = check(spec, corrected, trace);
  const decision = decided(spec, own, ownInstruments, checkedRule(rule), trace);
  return {
    ...checked,
    reading: corrected,
    charge: conclusive(checked.charge, decision),
    cautions: [...budget.cautions.map((code) => caution(code)), ...checked.cautions],
    uncertainty: budget,
    decision,
  };
}

function conclusive(charge: Charge, decision: Decision): Charge {
  if (charge.action !== 'vent') return charge;
  if (decision.outcome === 'overcharged' && decision.direction === 'high') return charge;
  return { action: 'withheld', because: ['not conclusive'] };
}
