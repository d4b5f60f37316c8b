// What a course of steps comes to, in quantities.
import type { SupplyCode } from '../basis/words.js';
import { amountOf, gaugeOf, type Amount, type GaugePressure } from '../quantity/kind.js';
import type { BottleNumbers } from './bottle.js';
import type { Ended, Flow } from './flow.js';
import type { Move } from './objective.js';
import type { Rig } from './kit.js';
import { pressureOf, stepOf, type Stock } from './stock.js';
import type { ToFill } from './to-fill.js';

/** One bottle connected to one accumulator, and taken off again. */
export interface FillingStep {
  /** By their names. */
  readonly bottle: string;
  readonly accumulator: string;
  /** What the accumulator gains. */
  readonly moved: Amount;
  /** What the kit took from the bottle as well, and is vented from it. */
  readonly vented: Amount;
  readonly ended: Ended;
  /** What gauges show afterwards, when all the gas has the temperature of its vessel again. */
  readonly bottleAfter: GaugePressure;
  readonly accumulatorAfter: GaugePressure;
}

/** The steps of a course, and the amounts in all vessels after them, mol. */
export interface Told {
  readonly steps: readonly FillingStep[];
  readonly bottles: readonly number[];
  readonly accumulators: readonly number[];
  readonly vented: number;
}

/** A bottle and an accumulator that take part, as they were given. */
export interface Parts {
  readonly bottles: readonly BottleNumbers[];
  readonly accumulators: readonly ToFill[];
}

/** Goes through a course step by step. A step that moves nothing is left out. */
export function told(stock: Stock, { bottles: given, accumulators: wanted }: Parts, moves: readonly Move[]): Told {
  const bottles = stock.sources.map(({ n }) => n);
  const accumulators = stock.sinks.map(({ n }) => n);
  const out: Flow = { bottle: 0, accumulator: 0, ended: 'equalised' };
  let vented = 0;
  const steps = moves.flatMap(({ b, a }): readonly FillingStep[] => {
    const [source, sink, from, to] = [stock.sources[b], stock.sinks[a], given[b], wanted[a]];
    const [n_b = 0, n_a = 0] = [bottles[b], accumulators[a]];
    if (source === undefined || sink === undefined || from === undefined || to === undefined) return [];
    if (!stepOf(stock, b, a, n_b, n_a, out)) return [];
    const kit = stock.kit_V * (out.accumulator / sink.V - sink.rho_vented);
    vented += kit;
    bottles[b] = out.bottle;
    accumulators[a] = out.accumulator;
    return [
      {
        bottle: from.given.name,
        accumulator: to.name,
        moved: amountOf(out.accumulator - n_a),
        vented: amountOf(Math.max(0, kit)),
        ended: out.ended,
        bottleAfter: gaugeOf(pressureOf(stock.kernel, source, out.bottle) - from.ambient),
        accumulatorAfter:
          out.ended === 'at the pressure wanted'
            ? to.to
            : gaugeOf(pressureOf(stock.kernel, sink, out.accumulator) - to.read.ambient.pascals),
      },
    ];
  });
  return { steps, bottles, accumulators, vented };
}

/** Why a bottle takes no part: what is wrong with it, and what it would do to the rig. */
export function bottleUnfit(of: BottleNumbers, rig: Rig): readonly SupplyCode[] {
  const p = of.given.read.pressure.pascals;
  const { kit, regulator } = rig;
  const codes = [...of.because];
  if (regulator === 'none') {
    if (p > kit.rated.pascals) codes.push('bottle above the rating of the kit');
  } else if (p > regulator.ratedInlet.pascals) codes.push('bottle above the rating of the regulator');
  return codes;
}

/** Why an accumulator is not to be filled to the pressure wanted, whatever gas there is. */
export function accumulatorUnfit({ to, allowable }: ToFill, { kit, regulator }: Rig): readonly SupplyCode[] {
  const codes: SupplyCode[] = [];
  if (to.pascals > allowable.pascals) codes.push('target above its allowable pressure');
  if (to.pascals > kit.rated.pascals) codes.push('target above the rating of the kit');
  if (regulator !== 'none' && to.pascals > regulator.ratedOutlet.pascals)
    codes.push('target above the rating of the regulator');
  return codes;
}

/** Whether there is nothing to add. */
export function isFilled({ read, to }: ToFill): boolean {
  return read.pressure.pascals >= to.pascals;
}
