import { fail } from '../basis/fault.js';
import { outsideBounds, pressuresCrossed } from '../basis/problem.js';
import { relation, step2, step3, step4, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { gasQuantity, type GasQuantity } from '../charge/charge.js';
import { densityAt } from '../gas/door.js';
import { needModel } from '../gas/state.js';
import { need, type AbsolutePressure, type Temperature } from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { all } from '../reading/checks.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needFraction, needGiven } from './checks.js';
import type { Vessel } from './stored-energy.js';
import { needSpace } from '../target/space.js';

/** How a gas side is purged, and what is to be left of another gas. Nothing here has a default. */
export interface Purge extends Vessel {
  /** To which it is filled each time, absolute. Within what the maker allows. */
  readonly high: AbsolutePressure;
  /** To which it is vented before each filling, absolute: the ambient pressure, or the vacuum of a pump. Below `high`. */
  readonly low: AbsolutePressure;
  /** Of the gas at both pressures, settled. */
  readonly temperature: Temperature;
  /** Fraction of the other gas by amount before the first filling: 1 where nothing is known. */
  readonly before: number;
  /** Fraction of the other gas in the gas filled, from its label or certificate; 0 only where there is none. */
  readonly inSupply: number;
  /** Fraction wanted at the most. */
  readonly wanted: number;
}

/** What is left of another gas after fillings and ventings. */
export interface Purged {
  readonly outcome: 'reached' | 'not reached by any number of fillings' | 'not reached by the most that are counted';
  /** Fillings needed; where it is not reached, those that were counted. */
  readonly fillings: number;
  /** Fraction left after each filling, the first one first. */
  readonly left: readonly number[];
  /** Amount at the lower pressure by that at the higher one: what one filling and venting leaves. */
  readonly ratio: number;
  /** Gas for these fillings. The last one stays in, and is topped up to the target. */
  readonly gas: GasQuantity;
  readonly cautions: readonly CausedCaution<'purging'>[];
}

export const LEFT_IN = /* @__PURE__ */ relation({
  gives: 'r_left',
  unit: '1',
  from: ['rho_low', 'rho_high'],
  formula: 'rho_low / rho_high',
  source: 'amounts in one volume at the two pressures, by their densities through the gas model',
  of: (rho_low, rho_high) => rho_low / rho_high,
});

export const DILUTED = /* @__PURE__ */ relation({
  gives: 'x_left',
  unit: '1',
  from: ['x_before', 'x_supply', 'r_left'],
  formula: 'x_supply + (x_before - x_supply) * r_left',
  source: 'amount balance of one filling, well mixed before it is vented',
  of: (x_before, x_supply, r_left) => x_supply + (x_before - x_supply) * r_left,
});

export const PURGE_GAS = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['count', 'V', 'rho_high', 'rho_low'],
  formula: 'count * V * (rho_high - rho_low)',
  source: 'mass balance of a vessel of constant volume, for each filling',
  of: (count, V, rho_high, rho_low) => count * V * (rho_high - rho_low),
});

const AS_IT_IS = 'as it is';
const PURGE: Fields = {
  gas: AS_IT_IS,
  gasVolume: AS_IT_IS,
  high: AS_IT_IS,
  low: AS_IT_IS,
  temperature: AS_IT_IS,
  before: AS_IT_IS,
  inSupply: AS_IT_IS,
  wanted: AS_IT_IS,
};

/** More fillings than anybody makes: with a hundred it is the pressures that are unsuitable. */
const MOST_FILLINGS = 100;

/**
 * What filling with nitrogen and venting again leaves of another gas, oxygen or one not known: after n fillings
 * x_n = y + (x_0 − y) r^n, with y its fraction in the supply and r the ratio of the amounts at the lower and the higher
 * pressure, by the real gas. Fillings are counted until the fraction wanted is reached.
 *
 * The gas side is first depressurised by the maker's method; a gas that is not known is never topped up. All gas is taken
 * to be nitrogen in its density, and to mix fully.
 *
 * @throws {@link Fault} with every problem found: `wrong kind`, `gauge for absolute`, `unchecked copy`, `not positive`,
 * `not a number`, `outside bounds` (fractions from 0 to 1; one wanted of zero), `pressures crossed`; `outside the model`,
 * `liquid`
 * @example
 * ```ts
 * const purged = purge({
 *   gas: nitrogen, gasVolume: volume(5, 'L'), temperature: temperature(20, '°C'),
 *   high: absolute(10, 'bar'), low: absolute(1.013, 'bar'), before: 0.21, inSupply: 0.00001, wanted: 0.001,
 * });
 * [purged.outcome, purged.fillings]; // => ['reached', 3]
 * purged.left.map((fraction) => fraction.toFixed(5)); // => ['0.02124', '0.00216', '0.00023']
 * ```
 */
export function purge(given: Purge, trace?: Trace): Purged {
  needGiven(given, 'purging: gas, volume, pressures and fractions');
  const own = taken(given, PURGE);
  needPurge(own);
  const { gas, gasVolume, high, low, temperature, before, inSupply, wanted } = own;
  const T = temperature.kelvins;
  const rho_high = densityAt(gas, T, high.pascals, 'high', 'filled', trace);
  const rho_low = densityAt(gas, T, low.pascals, 'low', 'vented', trace);
  const r = step2(trace, LEFT_IN, 'filling', rho_low, rho_high);
  const left: number[] = [];
  // Nothing is purged below what is filled in with it; and gas that has less of it than the supply only gains.
  const never = inSupply >= wanted && before > wanted;
  let x = before;
  while (x > wanted && left.length < (never ? 1 : MOST_FILLINGS)) {
    x = step3(trace, DILUTED, `filling ${left.length + 1}`, x, inSupply, r);
    left.push(x);
  }
  const fillings = left.length;
  const moles = step4(trace, PURGE_GAS, 'filling', fillings, gasVolume.cubicMetres, rho_high, rho_low);
  return {
    outcome:
      x <= wanted
        ? 'reached'
        : never
          ? 'not reached by any number of fillings'
          : 'not reached by the most that are counted',
    fillings,
    left,
    ratio: r,
    gas: gasQuantity(gas, moles, 'up', trace),
    cautions: cautionsOf('purging', ['gas not known', 'purged by calculation', 'asphyxiation', 'stored pressure']),
  };
}

function needPurge({ gas, gasVolume, high, low, temperature, before, inSupply, wanted }: Purge): void {
  all(
    ['gas', () => needModel(gas, '')],
    ['gasVolume', () => needSpace(gasVolume)],
    ['high', () => need('absolute pressure', high, '')],
    ['low', () => need('absolute pressure', low, '')],
    ['temperature', () => need('temperature', temperature, '')],
    ['before', () => needFraction(before)],
    ['inSupply', () => needFraction(inSupply)],
    ['wanted', () => needFraction(wanted)],
  );
  if (wanted === 0) fail(outsideBounds, 'wanted', '0', { bounds: 'more than 0: no filling purges to nothing' });
  if (low.pascals >= high.pascals)
    fail(pressuresCrossed, 'low', `${inBar(low.pascals)} absolute`, { high: inBar(high.pascals) });
}
