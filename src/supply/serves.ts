import { collect, failIfAny, type Problem } from '../basis/fault.js';
import type { SupplyCode } from '../basis/words.js';
import { gasQuantity, type GasQuantity } from '../charge/charge.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import { gaugeOf, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { bottleNumbers, type Bottle } from './bottle.js';
import type { Flow } from './flow.js';
import { checkedRig, type Rig } from './kit.js';
import { accumulatorUnfit, bottleUnfit, isFilled } from './result.js';
import { kitAt, pressureOf, sinkOf, sourceOf, stepOf, stockOf } from './stock.js';
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
export function serves(gas: GasModel, bottle: Bottle, accumulator: ToFill, rig: Rig): Serves {
  needModel(gas, 'gas');
  const problems: Problem[] = [];
  const from = collect(problems, 'bottle', () => bottleNumbers(gas, bottle, 'not demanded'));
  const to = collect(problems, 'accumulator', () => checkedToFill(accumulator));
  const own = collect(problems, 'rig', () => checkedRig(rig));
  const sink = to && collect(problems, 'accumulator', () => sinkOf(gas, to));
  failIfAny(problems);
  // Cannot be: what is not sound has left a problem.
  if (from === undefined || to === undefined || own === undefined || sink === undefined)
    return wrongKind('bottle', bottle, 'bottle');
  const source = sourceOf(gas, from);
  const stock = stockOf(gas, [source], [sink], own);
  const isFull = isFilled(to);
  const keep = stock.keep[0]?.[0] ?? source.n;
  const isBelow = source.p < sink.p_to + stock.difference;
  const because = [
    ...bottleUnfit(from, own),
    ...accumulatorUnfit(to, own),
    ...(isFull ? (['nothing to add'] as const) : isBelow ? (['target above every bottle'] as const) : []),
  ];
  let n = source.n;
  let count = 0;
  const out: Flow = { bottle: 0, accumulator: 0, ended: 'equalised' };
  while (because.length === 0 && count < MOST_SERVED && stepOf(stock, 0, 0, n, sink.n, out)) {
    if (out.ended !== 'at the pressure wanted') break;
    n = out.bottle;
    count += 1;
  }
  const kit = Math.max(0, kitAt(stock, sink));
  return {
    usable: gasQuantity(gas, Math.max(0, source.n - keep), 'down'),
    each: gasQuantity(gas, isFull ? 0 : sink.n_to - sink.n + kit, 'up'),
    accumulators: count,
    after: count === 0 ? from.given.read.pressure : gaugeOf(pressureOf(stock.kernel, source, n) - from.ambient),
    booster: isBelow ? 'needed' : 'not needed',
    because: because.length === 0 && count === 0 ? ['not enough gas'] : because,
  };
}
