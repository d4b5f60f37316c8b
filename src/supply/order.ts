import { indexed } from '../basis/indexed.js';
import { collect, fail, failIfAny, type Problem } from '../basis/fault.js';
import { negative } from '../basis/problem.js';
import { taken, type Fields } from '../basis/taken.js';
import type { SupplyCode } from '../basis/words.js';
import { densityAt, pvtAt } from '../gas/door.js';
import { need, wrongKind, type AbsolutePressure, type GaugePressure, type Volume } from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { needAmbient, type Conditions } from '../target/conditions.js';
import { needConditions } from '../target/target.js';
import { bestOf, mostAtStart, type Best } from './best.js';
import { LABEL_T_K, needAboveZero, needNumber } from './bottle.js';
import type { Source } from './flow.js';
import { OBJECTIVES } from './objective.js';
import { checkedFilling, type PlanGiven } from './plan.js';
import { accumulatorUnfit, bottleUnfit, isFilled } from './result.js';
import { sinkOf, sourceOf, stockOf, type Stock } from './stock.js';
import { needSpace } from '../target/space.js';

/** A size of bottle as it can be ordered, full. */
export interface BottleSize {
  /** Greater than zero. */
  readonly waterVolume: Volume;
  /** Pressure to which it is filled, at 15 °C in the ambient of its label. Greater than zero. */
  readonly filling: GaugePressure;
  /** Ambient of the label. */
  readonly labelAmbient: AbsolutePressure;
  /** Not to be emptied below this, on board. Zero or more. */
  readonly residual: GaugePressure;
  /** Temperature and ambient in which it will stand on board. */
  readonly onBoard: Conditions;
}

/** What to order. */
export interface BottleOrder {
  /** The fewest full bottles that a plan was found with, beside those on board, to complete all that can be filled. */
  readonly needed: number | 'not found';
  /** With the reserve, whole bottles, rounded up. */
  readonly order: number | 'not found';
  /** Whether fewer cannot be enough. */
  readonly fewest: 'proven' | 'not proven';
  /** Why none is found, by stable codes. In words: {@link supplyText}. */
  readonly because: readonly SupplyCode[];
}

const SIZE: Fields = {
  waterVolume: 'as it is',
  filling: 'as it is',
  labelAmbient: 'as it is',
  residual: 'as it is',
  onBoard: { temperature: 'as it is', ambient: 'as it is' },
};

/**
 * The most bottles that an order is looked for with.
 *
 * @example
 * ```ts
 * MOST_ORDERED; // => 100
 * ```
 */
export const MOST_ORDERED = 100;

/**
 * How many full bottles of a size to order, so that the accumulators of a filling can all be completed with them and with
 * what is on board. Accumulators that must not be filled to the pressure wanted, by their or the rig's rating, are left out.
 *
 * @param reservePercent how much more to order, in per cent of the bottles needed: 0 to 1000. For the caller to choose
 * @throws {@link Fault} as {@link fillingPlan}; `not a number`, `outside bounds` for the reserve
 * @example
 * ```ts
 * const one = toFill('EV 1', spec, reading);
 * const filling = {
 *   gas: nitrogen,
 *   leastPurityPercent: 'not demanded',
 *   accumulators: 'to' in one ? [one] : [],
 *   bottles: [],
 *   rig: { kit: { volume: volume(30, 'mL'), rated: gauge(300, 'bar') }, regulator: 'none' },
 *   objectives: OBJECTIVES,
 * } as const;
 * const size = {
 *   waterVolume: volume(50, 'L'),
 *   filling: gauge(200, 'bar'),
 *   labelAmbient: standardAtmosphere,
 *   residual: gauge(5, 'bar'),
 *   onBoard: { temperature: temperature(35, '°C'), ambient: standardAtmosphere },
 * };
 * bottlesToOrder(filling, size, 50); // => { needed: 1, order: 2, fewest: 'proven', because: [] }
 * ```
 */
export function bottlesToOrder(filling: PlanGiven, size: BottleSize, reservePercent: number): BottleOrder {
  const { gas, bottles, accumulators, rig } = checkedFilling(filling);
  const problems: Problem[] = [];
  const own = taken(size, SIZE);
  collect(problems, 'size', () => needBottleSize(own));
  collect(problems, 'reservePercent', () => needNumber(reservePercent, 0, 1000, '0 to 1000, in per cent'));
  failIfAny(problems);
  const { onBoard, labelAmbient, residual } = own;
  const [T, ambient, V] = [onBoard.temperature.kelvins, onBoard.ambient.pascals, own.waterVolume.cubicMetres];
  const rho = densityAt(gas, LABEL_T_K, own.filling.pascals + labelAmbient.pascals, 'size.filling', 'new bottle');
  const p = pvtAt(gas, T, rho, 'size.onBoard', 'new bottle').p_Pa;
  const least = V * densityAt(gas, T, residual.pascals + ambient, 'size.residual', 'new bottle');
  const made: Source = { V, T, n: V * rho, p, least, isFull: true };
  const regulator = rig.regulator;
  if (regulator === 'none' && p - ambient > rig.kit.rated.pascals)
    return notFound('bottle above the rating of the kit');
  if (regulator !== 'none' && p - ambient > regulator.ratedInlet.pascals)
    return notFound('bottle above the rating of the regulator');

  const fit = bottles.filter((one) => bottleUnfit(one, rig).length === 0).map((one) => sourceOf(gas, one));
  const sinks = accumulators
    .filter((one) => !isFilled(one) && accumulatorUnfit(one, rig).length === 0)
    .map((one) => sinkOf(gas, one));
  const withMore = (count: number): Stock => stockOf(gas, [...fit, ...indexed(count, () => made)], sinks, rig);
  const { difference } = withMore(0);
  if (sinks.some(({ p_to }) => [...fit, made].every((one) => one.p < p_to + difference)))
    return notFound('target above every bottle');
  // One more at the end of the list never makes a plan worse, so that the fewest are found by halving.
  const best = (count: number): Best => bestOf(withMore(count), OBJECTIVES);
  const areEnough = (count: number): boolean =>
    mostAtStart(withMore(count)) >= sinks.length && best(count).score['accumulators completed'] === sinks.length;
  let [tooFew, needed] = [-1, 0];
  while (!areEnough(needed)) {
    if (needed === MOST_ORDERED) return notFound('no plan found');
    tooFew = needed;
    needed = Math.min(MOST_ORDERED, Math.max(1, 2 * needed));
  }
  while (needed - tooFew > 1) {
    const middle = Math.floor((tooFew + needed) / 2);
    if (areEnough(middle)) needed = middle;
    else tooFew = middle;
  }
  return {
    needed,
    order: Math.ceil((needed * (100 + reservePercent)) / 100),
    fewest: tooFew < 0 || isTooFew(best(tooFew), sinks.length) ? 'proven' : 'not proven',
    because: [],
  };
}

/** Whether it is proven that no plan completes so many. */
function isTooFew({ objectives }: Best, count: number): boolean {
  return objectives.some(
    ({ objective, bound }) => objective === 'accumulators completed' && typeof bound === 'number' && bound < count,
  );
}

function notFound(because: SupplyCode): BottleOrder {
  return { needed: 'not found', order: 'not found', fewest: 'not proven', because: [because] };
}

function needBottleSize(size: BottleSize): void {
  if (typeof size !== 'object' || size === null) wrongKind('size of a bottle', size, '');
  const problems: Problem[] = [];
  collect(problems, 'waterVolume', () => needSpace(size.waterVolume));
  collect(problems, 'filling', () => needAboveZero(size.filling));
  collect(problems, 'labelAmbient', () => needAmbient(size.labelAmbient, ''));
  collect(problems, 'residual', () => {
    need('gauge pressure', size.residual, '');
    if (size.residual.pascals < 0) fail(negative, '', `${inBar(size.residual.pascals)} gauge`);
  });
  collect(problems, 'onBoard', () => needConditions(size.onBoard));
  failIfAny(problems);
}
