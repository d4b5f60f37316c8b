// The kernel: bare SI numbers in, bare SI numbers out through an object that the caller owns. It never throws and never
// allocates more than the isotherm; limits are checked by the doors around it, before and after, not inside.
//
// Only + - × ÷, sqrt and exp: powers differ in the last place between engines, and even between versions of one.

import type { GasKernel, Pvt } from '../model.js';
import { R, RHO_REDUCING, T_REDUCING, TERM } from './coefficients.js';

type Index = keyof typeof TERM;
type Weights = Readonly<Record<Index, number>>;

// @__NO_SIDE_EFFECTS__
function weights(of: (term: (typeof TERM)[Index]) => number): Weights {
  return Object.fromEntries(Object.entries(TERM).map(([i, term]) => [i, of(term)])) as Weights;
}

/** The coefficients n, for α itself, and n·t, for τ ∂α/∂τ: the same sums with other weights. */
const N = /* @__PURE__ */ weights((term) => term.n);
const N_T = /* @__PURE__ */ weights((term) => term.n * term.t);

/**
 * The terms collapsed along an isotherm: with τ fixed, all terms of one exp(−δ^l) and one power δ^d are one coefficient,
 * 22 instead of 32, and an iteration over the density needs no power of τ. Named by exponential and power: `e2d8` stands
 * before δ^8 exp(−δ²).
 */
interface Isotherm {
  readonly e0d1: number;
  readonly e0d2: number;
  readonly e0d3: number;
  readonly e1d1: number;
  readonly e1d3: number;
  readonly e1d4: number;
  readonly e1d6: number;
  readonly e1d7: number;
  readonly e1d8: number;
  readonly e2d1: number;
  readonly e2d2: number;
  readonly e2d3: number;
  readonly e2d4: number;
  readonly e2d5: number;
  readonly e2d8: number;
  readonly e3d4: number;
  readonly e3d5: number;
  readonly e3d8: number;
  readonly e4d3: number;
  readonly e4d5: number;
  readonly e4d6: number;
  readonly e4d9: number;
}

function collapse(n: Weights, tau: number): Isotherm {
  // Every exponent of τ is a multiple of 1/8: three square roots and products.
  const t0500 = Math.sqrt(tau);
  const t0250 = Math.sqrt(t0500);
  const t0375 = t0250 * Math.sqrt(t0250);
  const t0750 = t0500 * t0250;
  const t0875 = t0500 * t0375;
  const t1250 = tau * t0250;
  const t2 = tau * tau;
  const t2500 = t2 * t0500;
  const t2750 = t2 * t0750;
  const t3 = t2 * tau;
  const t3500 = t3 * t0500;
  const t4 = t2 * t2;
  const t6 = t3 * t3;
  const t7 = t6 * tau;
  const t11 = t7 * t4;
  const t12 = t6 * t6;
  const t15 = t12 * t3;
  const t16 = t12 * t4;
  return {
    e0d1: n[1] * t0250 + n[2] * t0875,
    e0d2: n[3] * t0500 + n[4] * t0875,
    e0d3: n[5] * t0375 + n[6] * t0750,
    e1d1: n[7] * t0500 + n[8] * t0750 + n[9] * t2,
    e1d3: n[10] * t1250 + n[11] * t3500,
    e1d4: n[12] * tau,
    e1d6: n[13] * t0500 + n[14] * t3,
    e1d7: n[15] + n[16] * t2750,
    e1d8: n[17] * t0750 + n[18] * t2500,
    e2d1: n[19] * t4,
    e2d2: n[20] * t6,
    e2d3: n[21] * t6,
    e2d4: n[22] * t3,
    e2d5: n[23] * t3,
    e2d8: n[24] * t6,
    e3d4: n[25] * t16,
    e3d5: n[26] * t11 + n[27] * t15,
    e3d8: n[28] * t12,
    e4d3: n[29] * t12,
    e4d5: n[30] * t7,
    e4d6: n[31] * t4,
    e4d9: n[32] * t16,
  };
}

/** δ ∂α/∂δ and (δ ∂/∂δ)² α, by the caller's object. */
interface Slopes {
  first: number;
  second: number;
}

/**
 * With P(δ) the polynomial that stands before exp(−δ^l), and D = δ ∂/∂δ:
 * D[P e] = e (DP − lδ^l P) and D²[P e] = e (D²P − 2lδ^l DP + l²(δ^2l − δ^l) P).
 * P, DP and D²P share their powers: the k-th coefficient is weighted by 1, k and k².
 */
function slopes(delta: number, c: Isotherm, out: Slopes): void {
  const d2 = delta * delta;
  const d3 = d2 * delta;
  const d4 = d2 * d2;
  const d5 = d4 * delta;
  const d6 = d3 * d3;
  const d8 = d4 * d4;

  const a1 = c.e0d1 * delta;
  const a2 = c.e0d2 * d2;
  const a3 = c.e0d3 * d3;
  let first = a1 + 2 * a2 + 3 * a3;
  let second = a1 + 4 * a2 + 9 * a3;

  const b1 = c.e1d1 * delta;
  const b3 = c.e1d3 * d3;
  const b4 = c.e1d4 * d4;
  const b6 = c.e1d6 * d6;
  const b7 = c.e1d7 * d6 * delta;
  const b8 = c.e1d8 * d8;
  let e = Math.exp(-delta);
  let p = b1 + b3 + b4 + b6 + b7 + b8;
  let dp = b1 + 3 * b3 + 4 * b4 + 6 * b6 + 7 * b7 + 8 * b8;
  let ddp = b1 + 9 * b3 + 16 * b4 + 36 * b6 + 49 * b7 + 64 * b8;
  first += e * (dp - delta * p);
  second += e * (ddp - 2 * delta * dp + (d2 - delta) * p);

  const c1 = c.e2d1 * delta;
  const c2 = c.e2d2 * d2;
  const c3 = c.e2d3 * d3;
  const c4 = c.e2d4 * d4;
  const c5 = c.e2d5 * d5;
  const c8 = c.e2d8 * d8;
  e = Math.exp(-d2);
  p = c1 + c2 + c3 + c4 + c5 + c8;
  dp = c1 + 2 * c2 + 3 * c3 + 4 * c4 + 5 * c5 + 8 * c8;
  ddp = c1 + 4 * c2 + 9 * c3 + 16 * c4 + 25 * c5 + 64 * c8;
  first += e * (dp - 2 * d2 * p);
  second += e * (ddp - 4 * d2 * dp + 4 * (d4 - d2) * p);

  const f4 = c.e3d4 * d4;
  const f5 = c.e3d5 * d5;
  const f8 = c.e3d8 * d8;
  e = Math.exp(-d3);
  p = f4 + f5 + f8;
  dp = 4 * f4 + 5 * f5 + 8 * f8;
  ddp = 16 * f4 + 25 * f5 + 64 * f8;
  first += e * (dp - 3 * d3 * p);
  second += e * (ddp - 6 * d3 * dp + 9 * (d6 - d3) * p);

  const g3 = c.e4d3 * d3;
  const g5 = c.e4d5 * d5;
  const g6 = c.e4d6 * d6;
  const g9 = c.e4d9 * d8 * delta;
  e = Math.exp(-d4);
  p = g3 + g5 + g6 + g9;
  dp = 3 * g3 + 5 * g5 + 6 * g6 + 9 * g9;
  ddp = 9 * g3 + 25 * g5 + 36 * g6 + 81 * g9;
  first += e * (dp - 4 * d4 * p);
  second += e * (ddp - 8 * d4 * dp + 16 * (d8 - d4) * p);

  out.first = first;
  out.second = second;
}

/** Above every density within the pressure limit (200 MPa at 160 K is δ = 2.9): the upper end of the bracket. */
const DELTA_MAX = 4;
const MOST_STEPS = 100;

function pvt(T_K: number, rho_mol_m3: number, out: Pvt): void {
  const tau = T_REDUCING / T_K;
  const delta = rho_mol_m3 / RHO_REDUCING;
  const of: Slopes = { first: 0, second: 0 };
  slopes(delta, collapse(N, tau), of);
  const z = 1 + of.first;
  const zz = z + of.second;
  slopes(delta, collapse(N_T, tau), of);
  out.p_Pa = rho_mol_m3 * R * T_K * z;
  out.dpdrho_T = R * T_K * zz;
  out.dpdT_rho = rho_mol_m3 * R * (z - of.first);
}

/**
 * Solves p(T, ρ) = p by Newton's method in ln p against ln ρ, where an isotherm is nearly straight, inside a bracket that
 * every evaluation narrows. Above 160 K p increases with ρ, so there is one root and the bracket always closes on it.
 * The first guess and the stopping rule depend on this state alone: a column of states gives the bits of single calls.
 */
function density(T_K: number, p_Pa: number): number {
  if (p_Pa === 0) return 0;
  const c = collapse(N, T_REDUCING / T_K);
  const of: Slopes = { first: 0, second: 0 };
  const ideal = p_Pa / (RHO_REDUCING * R * T_K);
  let low = 0;
  let high = DELTA_MAX;
  let delta = ideal < 1 ? ideal : 1 + 0.35 * (ideal - 1);
  if (delta > 3) delta = 3;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    slopes(delta, c, of);
    const z = 1 + of.first;
    const power = (z + of.second) / z; // d ln p / d ln ρ
    const x = ideal / (delta * z); // p wanted over p here
    if (x > 1) low = delta;
    else high = delta;
    // x^(1/power) by its [1/1] Padé approximant: exact to third order, and no logarithm.
    const m = 1 / power;
    const next = (delta * (1 + 0.5 * (1 + m) * (x - 1))) / (1 + 0.5 * (1 - m) * (x - 1));
    const inside = next >= low && next <= high;
    const change = inside ? next - delta : 0.5 * (low + high) - delta;
    delta += change;
    // Convergence is at least quadratic, so the change after one below 1e-9 is below the rounding of a double.
    if (inside && Math.abs(change) <= 1e-9 * delta) return delta * RHO_REDUCING;
  }
  return Number.NaN;
}

export const NITROGEN_KERNEL: GasKernel = { pvt, density };
