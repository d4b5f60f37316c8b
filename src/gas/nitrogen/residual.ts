import { exp } from '../elementary.js';
import { BELL, TERM } from './coefficients.js';

// The residual part of the Helmholtz energy. Only + − × ÷, sqrt and exp: powers differ in the last place between engines.

type Index = keyof typeof TERM;
type Weights = Readonly<Record<Index, number>>;

// @__NO_SIDE_EFFECTS__
function weights(of: (term: (typeof TERM)[Index]) => number): Weights {
  return Object.fromEntries(Object.entries(TERM).map(([i, term]) => [i, of(term)])) as Weights;
}

/** Which of α, τ ∂α/∂τ and τ² ∂²α/∂τ² the sums are for. */
export type Order = 0 | 1 | 2;

/** The coefficients n, n·t and n·t·(t−1): the same sums with other weights. */
const N = /* @__PURE__ */ weights((term) => term.n);
const N_T = /* @__PURE__ */ weights((term) => term.n * term.t);
const N_TT = /* @__PURE__ */ weights((term) => term.n * term.t * (term.t - 1));

/**
 * The terms collapsed along an isotherm: with τ fixed, all terms of one exp(−δ^l) and one power δ^d are one coefficient,
 * 22 instead of 32, and an iteration over the density needs no power of τ. Named by exponential and power: `e2d8` stands
 * before δ^8 exp(−δ²).
 */
export interface Isotherm {
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
  /** The bells' part in τ; undefined where it is too small to be seen. */
  readonly bells: Bells | undefined;
}

interface Bells {
  readonly b33: number;
  readonly b34: number;
  readonly b35: number;
  readonly b36: number;
}

/** Up to this τ (168 K) the bells add less than a double's rounding. */
const TAU_WARM = 0.75;

function bells(order: Order, tau: number): Bells | undefined {
  if (tau <= TAU_WARM) return undefined;
  return {
    b33: bell(order, tau, BELL[33]),
    b34: bell(order, tau, BELL[34]),
    b35: bell(order, tau, BELL[35]),
    b36: bell(order, tau, BELL[36]),
  };
}

/** n τ^t exp(−β (τ−γ)²) and, by order, its derivatives: with f = t − 2βτ(τ−γ) they are the same times f and f² − t − 2βτ². */
function bell(order: Order, tau: number, { n, t, beta, gamma }: (typeof BELL)[keyof typeof BELL]): number {
  const off = tau - gamma;
  const f = t - 2 * beta * tau * off;
  const factor = order === 0 ? 1 : order === 1 ? f : f * f - t - 2 * beta * tau * tau;
  let power = 1;
  for (let i = 0; i < t; i += 1) power *= tau;
  return n * power * exp(-beta * off * off) * factor;
}

/** The isotherm's coefficients for α or one of its derivatives in τ. */
export function collapse(order: Order, tau: number): Isotherm {
  const n = order === 0 ? N : order === 1 ? N_T : N_TT;
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
    bells: bells(order, tau),
  };
}

/** α, δ ∂α/∂δ and (δ ∂/∂δ)² α of an isotherm at a density, by the caller's object. */
export interface Sums {
  value: number;
  first: number;
  second: number;
}

/**
 * With P(δ) the polynomial that stands before exp(−δ^l), and D = δ ∂/∂δ:
 * D[P e] = e (DP − lδ^l P) and D²[P e] = e (D²P − 2lδ^l DP + l²(δ^2l − δ^l) P).
 * P, DP and D²P share their powers: the k-th coefficient is weighted by 1, k and k².
 */
export function sums(delta: number, c: Isotherm, out: Sums): void {
  const d2 = delta * delta;
  const d3 = d2 * delta;
  const d4 = d2 * d2;
  const d5 = d4 * delta;
  const d6 = d3 * d3;
  const d8 = d4 * d4;

  const a1 = c.e0d1 * delta;
  const a2 = c.e0d2 * d2;
  const a3 = c.e0d3 * d3;
  let value = a1 + a2 + a3;
  let first = a1 + 2 * a2 + 3 * a3;
  let second = a1 + 4 * a2 + 9 * a3;

  const b1 = c.e1d1 * delta;
  const b3 = c.e1d3 * d3;
  const b4 = c.e1d4 * d4;
  const b6 = c.e1d6 * d6;
  const b7 = c.e1d7 * d6 * delta;
  const b8 = c.e1d8 * d8;
  let e = exp(-delta);
  let p = b1 + b3 + b4 + b6 + b7 + b8;
  let dp = b1 + 3 * b3 + 4 * b4 + 6 * b6 + 7 * b7 + 8 * b8;
  let ddp = b1 + 9 * b3 + 16 * b4 + 36 * b6 + 49 * b7 + 64 * b8;
  value += e * p;
  first += e * (dp - delta * p);
  second += e * (ddp - 2 * delta * dp + (d2 - delta) * p);

  const c1 = c.e2d1 * delta;
  const c2 = c.e2d2 * d2;
  const c3 = c.e2d3 * d3;
  const c4 = c.e2d4 * d4;
  const c5 = c.e2d5 * d5;
  const c8 = c.e2d8 * d8;
  e = exp(-d2);
  p = c1 + c2 + c3 + c4 + c5 + c8;
  dp = c1 + 2 * c2 + 3 * c3 + 4 * c4 + 5 * c5 + 8 * c8;
  ddp = c1 + 4 * c2 + 9 * c3 + 16 * c4 + 25 * c5 + 64 * c8;
  value += e * p;
  first += e * (dp - 2 * d2 * p);
  second += e * (ddp - 4 * d2 * dp + 4 * (d4 - d2) * p);

  const f4 = c.e3d4 * d4;
  const f5 = c.e3d5 * d5;
  const f8 = c.e3d8 * d8;
  e = exp(-d3);
  p = f4 + f5 + f8;
  dp = 4 * f4 + 5 * f5 + 8 * f8;
  ddp = 16 * f4 + 25 * f5 + 64 * f8;
  value += e * p;
  first += e * (dp - 3 * d3 * p);
  second += e * (ddp - 6 * d3 * dp + 9 * (d6 - d3) * p);

  const g3 = c.e4d3 * d3;
  const g5 = c.e4d5 * d5;
  const g6 = c.e4d6 * d6;
  const g9 = c.e4d9 * d8 * delta;
  e = exp(-d4);
  p = g3 + g5 + g6 + g9;
  dp = 3 * g3 + 5 * g5 + 6 * g6 + 9 * g9;
  ddp = 9 * g3 + 25 * g5 + 36 * g6 + 81 * g9;
  value += e * p;
  first += e * (dp - 4 * d4 * p);
  second += e * (ddp - 8 * d4 * dp + 16 * (d8 - d4) * p);

  if (c.bells !== undefined) {
    // D[δ^d exp(−η (δ−ε)²)] is the same times k = d − 2ηδ(δ−ε), and D of it times k² − 2ηδ(2δ−ε).
    const off = delta - 1; // ε is 1 in all four
    const twice = 2 * delta - 1;
    const near20 = exp(-20 * off * off) * (c.bells.b33 + c.bells.b34) * delta;
    const near15 = exp(-15 * off * off) * c.bells.b35 * d3;
    const near25 = exp(-25 * off * off) * c.bells.b36 * d2;
    const k20 = 1 - 40 * delta * off;
    const k15 = 3 - 30 * delta * off;
    const k25 = 2 - 50 * delta * off;
    value += near20 + near15 + near25;
    first += near20 * k20 + near15 * k15 + near25 * k25;
    second +=
      near20 * (k20 * k20 - 40 * delta * twice) +
      near15 * (k15 * k15 - 30 * delta * twice) +
      near25 * (k25 * k25 - 50 * delta * twice);
  }

  out.value = value;
  out.first = first;
  out.second = second;
}
