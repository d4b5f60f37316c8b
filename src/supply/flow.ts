// The kernel of every step: gas from one bottle through the kit into one accumulator, each at its own constant temperature.
import type { GasKernel, Pvt } from '../gas/model.js';
import { increasingRoot, type Sloped } from '../gas/solve.js';

/** A bottle, in numbers. */
export interface Source {
  readonly V: number;
  readonly T: number;
  /** Amount at the start, mol. */
  readonly n: number;
  /** Absolute pressure at the start. */
  readonly p: number;
  /** Amount that stays in it at its residual pressure, mol. */
  readonly least: number;
  readonly isFull: boolean;
}

/** An accumulator to be filled, in numbers. */
export interface Sink {
  readonly V: number;
  readonly T: number;
  readonly n: number;
  readonly p: number;
  /** Absolute pressure wanted, and the amount that it takes, mol. */
  readonly p_to: number;
  readonly n_to: number;
  /** Density in the vented kit: gas at ambient pressure and the accumulator's temperature. */
  readonly rho_vented: number;
}

/** Where a step ends. */
export type Ended = 'at the pressure wanted' | 'equalised' | "at the bottle's residual pressure";

/** What a step makes of the amounts; the caller's object. */
export interface Flow {
  /** Amounts in bottle and accumulator afterwards, mol. */
  bottle: number;
  accumulator: number;
  ended: Ended;
}

/** A raise below this part of the amount is rounding, not filling. */
const LEAST_RAISE = 1e-9;

/**
 * One step, until the accumulator has the amount wanted, or the bottle is down to the pressure of the accumulator and the
 * regulator's difference, or to its residual pressure. False, and nothing moved, if that raises the accumulator by nothing:
 * the kit takes gas too.
 *
 * The kit has the accumulator's temperature and pressure, so that with the vented kit filled on top the accumulator counts
 * as one of volume V + V_kit. What is in the kit at the end is vented.
 *
 * @param keep amount that must stay in the bottle for the accumulator to have come to the pressure wanted
 * @param n_b amount in the bottle now
 * @param n_a amount in the accumulator now
 */
export function flow(
  kernel: GasKernel,
  b: Source,
  a: Sink,
  kit_V: number,
  difference: number,
  keep: number,
  n_b: number,
  n_a: number,
  out: Flow,
): boolean {
  if (n_a >= a.n_to) return false;
  const rho_to = a.n_to / a.V;
  const all = n_b - (a.n_to - n_a) - kit_V * (rho_to - a.rho_vented);
  if (all >= keep) {
    out.bottle = all;
    out.accumulator = a.n_to;
    out.ended = 'at the pressure wanted';
    return true;
  }
  const rho_a = n_a / a.V;
  const V = a.V + kit_V;
  const total = n_b + n_a + kit_V * a.rho_vented;
  const atResidual = (total - b.least) / V;
  const high = Math.min(rho_to, atResidual);
  if (!(high > rho_a * (1 + LEAST_RAISE))) return false;
  const of: Pvt = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
  // How far the bottle is short of accumulator and difference, against the accumulator's density: it increases.
  const short = (rho: number, sloped: Sloped): void => {
    kernel.pvt(a.T, rho, of);
    const [p_a, slope_a] = [of.p_Pa, of.dpdrho_T];
    kernel.pvt(b.T, (total - V * rho) / b.V, of);
    sloped.value = p_a + difference - of.p_Pa;
    sloped.slope = slope_a + (of.dpdrho_T * V) / b.V;
  };
  const end: Sloped = { value: 0, slope: 1 };
  short(high, end);
  let rho = high;
  let ended: Ended = "at the bottle's residual pressure";
  if (end.value > 0) {
    short(rho_a, end);
    if (end.value >= 0) return false;
    rho = increasingRoot(short, 0, rho_a, high);
    ended = 'equalised';
    if (!(rho > rho_a * (1 + LEAST_RAISE))) return false;
  }
  out.bottle = total - V * rho;
  out.accumulator = a.V * rho;
  out.ended = ended;
  return true;
}
