import { collect, failIfAny, type Problem } from '../basis/fault.js';
import { step2, step3, step4, type Trace } from '../basis/relation.js';
import type { SupplyCode } from '../basis/words.js';
import { AMOUNT, gasQuantity, type GasQuantity } from '../charge/charge.js';
import { densityAt, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import { gaugeOf, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import { bottleNumbers, type Bottle, type BottleNumbers } from './bottle.js';
import { checkedRig, neededDifference, type Rig } from './kit.js';
import { AFTER_SERVING, NEEDED, SERVED, USABLE, WITH_THE_KIT } from './relations.js';
import { accumulatorUnfit, bottleUnfit, isFilled } from './result.js';
import { checkedToFill, type ToFill } from './to-fill.js';

/** What one bottle is worth for accumulators of one kind. */
export interface Serves {
  /** What it can give while it stays above the pressure wanted, the regulator's difference and its residual pressure. */
  readonly usable: GasQuantity;
  /** What one accumulator takes, with what the kit takes and loses. */
  readonly each: GasQuantity;
  /** How many it completes by itself, one after another. At most {@link MOST_SERVED}. */
  readonly accumulators: number;
  /** What its gauge shows after that, at the temperature read. */
  readonly after: GaugePressure;
  /** Whether the pressure wanted, with the regulator's difference, is above the bottle. */
  readonly booster: 'needed' | 'not needed';
  /** Why it serves none, by stable codes. In words: {@link supplyText}. */
  readonly because: readonly SupplyCode[];
}

/**
 * The most accumulators that are counted for one bottle.
 *
 * @example
 * ```ts
 * MOST_SERVED; // => 10000
 * ```
 */
export const MOST_SERVED = 10_000;

/**
 * How many accumulators like this one a bottle completes by itself, connection after connection, and how much of its gas
 * is of use for that. Every vessel keeps its temperature, as in {@link fillingPlan}.
 *
 * @throws {@link Fault} as {@link fillingPlan}
 * @example
 * ```ts
 * const bottle = {
 *   name: 'N2-1',
 *   waterVolume: volume(50, 'L'),
 *   label: {
 *     gas: 'nitrogen',
 *     purityPercent: 'not stated',
 *     filling: gauge(200, 'bar'),
 *     rated: gauge(200, 'bar'),
 *     ambient: standardAtmosphere,
 *   },
 *   read: { pressure: gauge(200, 'bar'), temperature: temperature(35, '°C'), ambient: standardAtmosphere },
 *   within: pressureDifference(4, 'bar'),
 *   residual: gauge(5, 'bar'),
 * } as const;
 * const one = toFill('EV 1', spec, reading);
 * const rig = { kit: { volume: volume(30, 'mL'), rated: gauge(300, 'bar') }, regulator: 'none' } as const;
 * if ('to' in one) serves(nitrogen, bottle, one, rig).accumulators; // => 43
 * ```
 */
export function serves(gas: GasModel, bottle: Bottle, accumulator: ToFill, rig: Rig, trace?: Trace): Serves {
  needModel(gas, 'gas');
  const problems: Problem[] = [];
  const from = collect(problems, 'bottle', () => bottleNumbers(gas, bottle, 'not demanded', trace));
  const to = collect(problems, 'accumulator', () => checkedToFill(accumulator));
  const own = collect(problems, 'rig', () => checkedRig(rig));
  const takes = to && collect(problems, 'accumulator', () => takenBy(gas, to, own?.kit.volume.cubicMetres ?? 0, trace));
  failIfAny(problems);
  // Cannot be: what is not sound has left a problem.
  if (from === undefined || to === undefined || own === undefined || takes === undefined)
    return wrongKind('bottle', bottle, 'bottle');
  const { p_to } = takes;
  const needed = own.regulator === 'none' ? p_to : step2(trace, NEEDED, 'regulator', p_to, neededDifference(own));
  const isBelow = from.p < needed;
  const usable = isBelow ? 0 : usableIn(gas, from, needed, trace);
  const because = [
    ...bottleUnfit(from, own),
    ...accumulatorUnfit(to, own),
    ...(isFilled(to) ? (['nothing to add'] as const) : isBelow ? (['target above every bottle'] as const) : []),
  ];
  const count = because.length > 0 ? 0 : step3(trace, SERVED, 'bottle', usable, takes.each, MOST_SERVED);
  return {
    usable: gasQuantity(gas, usable, 'down', trace),
    each: gasQuantity(gas, takes.each, 'up', trace),
    accumulators: count,
    after: count === 0 ? from.given.read.pressure : gaugeOf(gaugeAfter(gas, from, count, takes.each, trace)),
    booster: isBelow ? 'needed' : 'not needed',
    because: because.length === 0 && count === 0 ? ['not enough gas'] : because,
  };
}

/** What one accumulator takes, mol, and the absolute pressure wanted in it. */
function takenBy(gas: GasModel, to: ToFill, kit_m3: number, trace?: Trace): { each: number; p_to: number } {
  const { temperature, ambient, pressure } = to.read;
  const T = temperature.kelvins;
  const p = step2(trace, TO_ABSOLUTE, 'accumulator', pressure.pascals, ambient.pascals);
  const p_to = step2(trace, TO_ABSOLUTE, 'pressure wanted', to.to.pascals, ambient.pascals);
  const rho = densityAt(gas, T, p, 'read', 'accumulator', trace);
  const rho_to = densityAt(gas, T, p_to, 'to', 'pressure wanted', trace);
  const vented = densityAt(gas, T, ambient.pascals, 'read', 'kit', trace);
  if (isFilled(to)) return { each: 0, p_to };
  const n_in = step3(trace, AMOUNT, 'accumulator', to.gasVolume.cubicMetres, rho_to, rho);
  // A kit may hold more before than after, where the pressure wanted is next to none; it takes nothing then.
  const n_kit = rho_to > vented ? step3(trace, AMOUNT, 'kit', kit_m3, rho_to, vented) : 0;
  return { each: step2(trace, WITH_THE_KIT, 'accumulator and kit', n_in, n_kit), p_to };
}

/** What a bottle can give down to a pressure that it has, or to its residual one, mol. */
function usableIn(gas: GasModel, bottle: BottleNumbers, needed: number, trace?: Trace): number {
  const { V, T, rho, ambient, given } = bottle;
  const residual = step2(trace, TO_ABSOLUTE, 'residual pressure', given.residual.pascals, ambient);
  const rho_needed = densityAt(gas, T, needed, 'rig.regulator', 'bottle', trace);
  const rho_residual = densityAt(gas, T, residual, 'bottle.residual', 'residual pressure', trace);
  return step4(trace, USABLE, 'bottle', V, rho, rho_needed, rho_residual);
}

/** What the gauge of a bottle shows once it has served so many. */
function gaugeAfter(
  gas: GasModel,
  { V, T, rho, ambient }: BottleNumbers,
  count: number,
  each: number,
  trace?: Trace,
): number {
  const left = step4(trace, AFTER_SERVING, 'bottle afterwards', rho, count, each, V);
  const { p_Pa } = pvtAt(gas, T, left, 'bottle', 'bottle afterwards', trace);
  return step2(trace, TO_GAUGE, 'bottle afterwards', p_Pa, ambient);
}
