// The working of a plan, for whoever traces: the mass balance of each of its steps, from the state of its bottle and its
// accumulator before it. Where a step ends by equalisation the density is found by trial; the pressures on both sides, and
// their difference, are shown for it.
import { inPart, step2, step3, type Trace } from '../basis/relation.js';
import { AMOUNT } from '../charge/charge.js';
import { THINNER } from '../gas/amount.js';
import { densityAt, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { DIFFERENCE, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import type { Read } from '../verdict/compare.js';
import type { Flow } from './flow.js';
import type { Move } from './objective.js';
import { WITH_THE_KIT } from './relations.js';
import type { Parts } from './result.js';
import { stepOf, type Stock } from './stock.js';

/** Shows each step of a course. */
export function showPlan(trace: Trace, gas: GasModel, stock: Stock, parts: Parts, moves: readonly Move[]): void {
  const held: Held = { gas, bottles: new Map(), accumulators: new Map() };
  const amounts = { bottles: stock.sources.map(({ n }) => n), accumulators: stock.sinks.map(({ n }) => n) };
  const out: Flow = { bottle: 0, accumulator: 0, ended: 'equalised' };
  let count = 0;
  for (const move of moves) {
    const { b, a } = move;
    if (!stepOf(stock, b, a, amounts.bottles[b] ?? 0, amounts.accumulators[a] ?? 0, out)) continue;
    amounts.bottles[b] = out.bottle;
    amounts.accumulators[a] = out.accumulator;
    count += 1;
    showStep(inPart(trace, `step ${count}`), held, stock, parts, move, out);
  }
}

/** Densities of the vessels, once they have been shown. */
interface Held {
  readonly gas: GasModel;
  readonly bottles: Map<number, number>;
  readonly accumulators: Map<number, number>;
}

function showStep(
  trace: Trace,
  { gas, bottles, accumulators }: Held,
  { kit_V }: Stock,
  parts: Parts,
  { b, a }: Move,
  out: Flow,
): void {
  const [from, to] = [parts.bottles[b], parts.accumulators[a]];
  if (from === undefined || to === undefined) return;
  const rho_b = bottles.get(b) ?? densityRead(trace, gas, from.given.read, 'bottle');
  const rho_a = accumulators.get(a) ?? densityRead(trace, gas, to.read, 'accumulator');
  const V = to.gasVolume.cubicMetres;
  const T = to.read.temperature.kelvins;
  const ambient = to.read.ambient.pascals;
  const isWanted = out.ended === 'at the pressure wanted';
  const rho = isWanted
    ? densityRead(trace, gas, { ...to.read, pressure: to.to }, 'pressure wanted')
    : out.accumulator / V;
  const n_in = step3(trace, AMOUNT, 'accumulator', V, rho, rho_a);
  const vented = densityAt(gas, T, ambient, 'read', 'kit', trace);
  const n_kit = step3(trace, AMOUNT, 'kit', kit_V, rho, vented);
  const n = step2(trace, WITH_THE_KIT, 'accumulator and kit', n_in, n_kit);
  const left = step3(trace, THINNER, 'bottle afterwards', rho_b, n, from.V);
  const p_b = pvtAt(gas, from.T, left, 'bottle', 'bottle afterwards', trace).p_Pa;
  const bottle = step2(trace, TO_GAUGE, 'bottle afterwards', p_b, from.ambient);
  if (!isWanted) {
    const p_a = pvtAt(gas, T, rho, 'accumulator', 'accumulator afterwards', trace).p_Pa;
    const gauge = step2(trace, TO_GAUGE, 'accumulator afterwards', p_a, ambient);
    step2(trace, DIFFERENCE, 'bottle less accumulator', bottle, gauge);
  }
  bottles.set(b, left);
  accumulators.set(a, rho);
}

function densityRead(trace: Trace, gas: GasModel, { pressure, temperature, ambient }: Read, about: string): number {
  const p = step2(trace, TO_ABSOLUTE, about, pressure.pascals, ambient.pascals);
  return densityAt(gas, temperature.kelvins, p, 'read', about, trace);
}
