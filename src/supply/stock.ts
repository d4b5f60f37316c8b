// What a plan is made for, in numbers: bottles and accumulators that can take part, and what each pair of them needs.
import { densityAt } from '../gas/door.js';
import type { GasKernel, GasModel, Pvt } from '../gas/model.js';
import type { BottleNumbers } from './bottle.js';
import { flow, type Flow, type Sink, type Source } from './flow.js';
import { neededDifference, type Rig } from './kit.js';
import type { ToFill } from './to-fill.js';

/** Everything that a plan depends on. */
export interface Stock {
  readonly kernel: GasKernel;
  readonly sources: readonly Source[];
  readonly sinks: readonly Sink[];
  readonly kit_V: number;
  readonly difference: number;
  /** By accumulator and bottle: what the bottle must keep for the accumulator to have come to the pressure wanted, mol. */
  readonly keep: readonly (readonly number[])[];
  /** By bottle: what of it is no useful remainder, mol. */
  readonly useless: readonly number[];
}

export function sourceOf(gas: GasModel, of: BottleNumbers): Source {
  const least = of.V * densityAt(gas, of.T, of.residual, 'residual', 'residual');
  return { V: of.V, T: of.T, n: of.V * of.rho, p: of.p, least, isFull: of.isFull };
}

export function sinkOf(gas: GasModel, { gasVolume, read, to }: ToFill): Sink {
  const V = gasVolume.cubicMetres;
  const T = read.temperature.kelvins;
  const p = read.pressure.pascals + read.ambient.pascals;
  const p_to = to.pascals + read.ambient.pascals;
  const n = V * densityAt(gas, T, p, 'read', 'accumulator');
  return {
    V,
    T,
    n,
    p,
    p_to,
    // The very amount read, where it is wanted: density and back may lose the last place.
    n_to: p_to === p ? n : V * densityAt(gas, T, p_to, 'to', 'accumulator'),
    rho_vented: densityAt(gas, T, read.ambient.pascals, 'read', 'kit'),
  };
}

export function stockOf(gas: GasModel, sources: readonly Source[], sinks: readonly Sink[], rig: Rig): Stock {
  const difference = neededDifference(rig);
  const highest = sinks.reduce((most, { p_to }) => Math.max(most, p_to), 0);
  return {
    kernel: gas['~kernel'],
    sources,
    sinks,
    kit_V: rig.kit.volume.cubicMetres,
    difference,
    keep: sinks.map(({ p_to }) => sources.map((b) => amountAt(gas['~kernel'], b, p_to + difference))),
    useless: sources.map((b) => Math.min(b.n, amountAt(gas['~kernel'], b, highest + difference))),
  };
}

/** What a bottle holds at a pressure, or at its residual one if that is higher; infinite above what it has. */
export function amountAt(kernel: GasKernel, b: Source, p_Pa: number): number {
  if (p_Pa > b.p) return Number.POSITIVE_INFINITY;
  return Math.max(b.least, b.V * kernel.density(b.T, p_Pa));
}

/** One step between a bottle and an accumulator of the stock, by their numbers in it. */
export function stepOf(stock: Stock, b: number, a: number, n_b: number, n_a: number, out: Flow): boolean {
  const [source, sink, keep] = [stock.sources[b], stock.sinks[a], stock.keep[a]?.[b]];
  if (source === undefined || sink === undefined || keep === undefined) return false;
  return flow(stock.kernel, source, sink, stock.kit_V, stock.difference, keep, n_b, n_a, out);
}

/** What the kit takes at an accumulator's pressure wanted, mol. */
export function kitAt({ kit_V }: Stock, { n_to, V, rho_vented }: Sink): number {
  return kit_V * (n_to / V - rho_vented);
}

/** Absolute pressure of an amount in a vessel. */
export function pressureOf(kernel: GasKernel, { V, T }: { readonly V: number; readonly T: number }, n: number): number {
  const out: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  kernel.pvt(T, n / V, out);
  return out.p_Pa;
}
