import { exp, log } from '../elementary.js';
import { T_REDUCING } from './coefficients.js';
import { collapse, sums, type Sums } from './residual.js';

/** The two phases in equilibrium, reduced by the reducing density. */
export interface Phases {
  delta_liquid: number;
  delta_vapour: number;
  /** p / (ρ_reducing R T) of both. */
  pressure: number;
}

const MOST_STEPS = 50;

/** Nearer to the critical temperature than this rounding hides the equilibrium from Newton's method, K. */
const BESIDE_CRITICAL_K = 2e-4;

/**
 * Solves for equal pressure and equal Gibbs energy of liquid and vapour below the critical temperature. With J = δ Z and
 * K = αr + δ ∂αr/∂δ + ln δ, both equal in the two phases, δ ∂J/∂δ = δ² ∂K/∂δ·… so that one Newton step needs no more than
 * the sums of both phases. False if it does not close.
 */
export function equilibrium(T_K: number, out: Phases): boolean {
  const c = collapse(0, T_REDUCING / T_K);
  if (T_REDUCING - T_K < BESIDE_CRITICAL_K) {
    besideCritical(T_REDUCING - T_K, out);
    const vapour: Sums = { value: 0, first: 0, second: 0 };
    sums(out.delta_vapour, c, vapour);
    out.pressure = out.delta_vapour * (1 + vapour.first);
    return true;
  }
  const liquid: Sums = { value: 0, first: 0, second: 0 };
  const vapour: Sums = { value: 0, first: 0, second: 0 };
  guess(T_K, out);
  let { delta_liquid: l, delta_vapour: v } = out;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    sums(l, c, liquid);
    sums(v, c, vapour);
    const J_l = l * (1 + liquid.first);
    const J_v = v * (1 + vapour.first);
    const gap_J = J_v - J_l;
    const gap_K = vapour.value + vapour.first - liquid.value - liquid.first + log(v / l);
    // dJ = zz dδ and dK = zz dδ / δ, with zz = 1 + first + second of the phase.
    const a = (gap_J / l - gap_K) / (1 / v - 1 / l);
    const change_v = a / (1 + vapour.first + vapour.second);
    const change_l = (a + gap_J) / (1 + liquid.first + liquid.second);
    v += change_v;
    l += change_l;
    if (!(l > v && v > 0)) return false;
    if (Math.abs(change_v) <= 1e-9 * v && Math.abs(change_l) <= 1e-9 * l) {
      sums(v, c, vapour);
      out.delta_liquid = l;
      out.delta_vapour = v;
      out.pressure = v * (1 + vapour.first);
      return true;
    }
  }
  return false;
}

/**
 * Both densities by an expansion at the critical point, in the square root of the distance from it as for every analytic
 * equation. Fitted to solutions of the equation itself from 0.0002 K to 0.001 K below it; where it is used it is within
 * 2e-9 of them down to 0.0001 K, and within 5e-7 down to 1e-7 K: by the printed coefficients the phases meet 4e-10 K lower.
 */
function besideCritical(below_K: number, out: Phases): void {
  const apart = Math.sqrt(below_K) * (0.726089 - below_K * (16.068 - below_K * (1348.7 - below_K * 116_000)));
  const middle = 1 - below_K * (0.091916 - below_K * (16.39 - below_K * 2622));
  out.delta_liquid = middle + apart;
  out.delta_vapour = middle - apart;
}

/**
 * First guess, fitted to solutions of the equation itself between 64 K and 126 K (within 0.02 % for the liquid, 0.14 % for
 * the vapour). The result does not depend on it.
 */
function guess(T_K: number, out: Phases): void {
  const x = exp(log(1 - T_K / T_REDUCING) / 3);
  const x2 = x * x;
  const x3 = x2 * x;
  const x6 = x3 * x3;
  out.delta_liquid = exp(1.543083 * x - 0.4737464 * x2 + 0.3328253 * x3 - 0.2789432 * x2 * x2 + 0.1462104 * x6);
  const sum = -1.53957 * x - 1.835478 * x2 - 1.317969 * x3 + 0.5773365 * x6 - 2.919466 * x6 * x6;
  out.delta_vapour = exp((sum * T_REDUCING) / T_K);
}
