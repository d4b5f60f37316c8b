import { exp, log } from '../elementary.js';
import type { IdealPart } from '../helmholtz.js';
import { IDEAL, RHO_REDUCING, T_REDUCING } from './coefficients.js';

/**
 * The ideal part of nitrogen's Helmholtz energy. Every model of nitrogen here has the same one, as a/(RT), so that
 * they differ by their residual parts and, in the sixth digit, by their gas constants.
 */
export function idealPart(T_K: number, rho_mol_m3: number, out: IdealPart): void {
  const { a1, a2, lnTau, power, n_e, theta_K } = IDEAL;
  const tau = T_REDUCING / T_K;
  const p1 = power['-1'] / tau;
  const p2 = power['-2'] / (tau * tau);
  const p3 = power['-3'] / (tau * tau * tau);
  const x = theta_K / T_K;
  const e = exp(-x);
  const weight = e / (1 - e);
  out.a = log(rho_mol_m3 / RHO_REDUCING) + a1 + a2 * tau + lnTau * log(tau) + p1 + p2 + p3 + n_e * log(1 - e);
  out.t = a2 * tau + lnTau - p1 - 2 * p2 - 3 * p3 + n_e * x * weight;
  out.tt = -lnTau + 2 * p1 + 6 * p2 + 12 * p3 - n_e * x * x * weight * (1 + weight);
}
