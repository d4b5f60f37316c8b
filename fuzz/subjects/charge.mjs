// Gas to add or to vent, and the whole check.
import fc from 'fast-check';
import { maybeTrace } from './gas.mjs';
import { spec } from './target.mjs';
import { measured, rule, wrongWithBudget, wrongWithDecision } from './uncertainty.mjs';
import { reading, verdictHolds } from './verdict.mjs';

/** @import { Assessment, Charge, Check } from 'isochore' */
/** @import { Holds, Subject } from './subject.mjs' */

/** @param {Charge} charge */
function wrongWithCharge(charge) {
  if (charge.action === 'withheld') return charge.because.length > 0 ? undefined : 'withheld for no reason';
  if (charge.action === 'none') return undefined;
  const { gas, settleMinutes } = charge;
  if (!(gas.amount.moles >= 0 && gas.mass.kilograms >= 0 && gas.normalVolume.cubicMetres >= 0)) return 'gas below zero';
  return settleMinutes > 0 ? undefined : 'no time to settle';
}

/** @type {Holds} */
const checkHolds = (answer, args) => {
  const { verdict, charge, cautions } = /** @type {Check} */ (answer);
  if (cautions.length < 5) return 'without the usual cautions';
  const withheld =
    verdict.outcome === 'not comparable' ||
    verdict.outcome === 'gas not known' ||
    verdict.outcome === 'gauge too coarse';
  if (withheld && charge.action !== 'withheld') return 'a charge without evidence';
  return verdictHolds(verdict, args) ?? wrongWithCharge(charge);
};

/** @type {readonly Subject[]} */
export const CHARGE = [
  {
    name: 'charge',
    args: fc.tuple(spec, reading, maybeTrace),
    holds: (answer) => wrongWithCharge(/** @type {Charge} */ (answer)),
    weight: 2,
  },
  { name: 'check', args: fc.tuple(spec, reading, maybeTrace), holds: checkHolds, weight: 2 },
  {
    name: 'assess',
    args: fc.tuple(measured, rule, maybeTrace).map(([of, by, trace]) => [...of, by, trace]),
    holds: (answer, args) => {
      const { charge, uncertainty, decision } = /** @type {Assessment} */ (answer);
      if (charge.action === 'vent' && decision.outcome !== 'overcharged') return 'gas vented in doubt';
      return checkHolds(answer, args) ?? wrongWithBudget(uncertainty) ?? wrongWithDecision(decision);
    },
  },
];
