import type { Properties, Pvt } from './model.js';

/**
 * A reduced Helmholtz energy, a / (R T), and its derivatives, in the variables ln ρ and τ ~ 1/T:
 * d stands for ρ ∂/∂ρ, t for τ ∂/∂τ, dd for d twice, td for d of t; tt is τ² ∂²/∂τ².
 */
export interface Derivatives {
  a: number;
  d: number;
  dd: number;
  t: number;
  td: number;
  tt: number;
}

/** The ideal part of it, which d makes 1 and dd makes 0. */
export interface IdealPart {
  a: number;
  t: number;
  tt: number;
}

/** Pressure and slopes from the residual part. Textbook relations, e.g. Span et al. (2000), table 23. */
export function pvtFrom(r: Derivatives, R: number, T_K: number, rho: number, out: Pvt): void {
  out.p_Pa = rho * R * T_K * (1 + r.d);
  out.dpdrho_T = R * T_K * (1 + r.d + r.dd);
  out.dpdT_rho = rho * R * (1 + r.d - r.td);
}

/** Caloric properties from both parts. */
export function propertiesFrom(
  i: IdealPart,
  r: Derivatives,
  R: number,
  M: number,
  T_K: number,
  rho: number,
  out: Properties,
): void {
  const z = 1 + r.d;
  const zz = z + r.dd;
  const zt = z - r.td;
  const cv = -R * (i.tt + r.tt);
  const cp = cv + (R * zt * zt) / zz;
  const ut = i.t + r.t;
  out.u_J_mol = R * T_K * ut;
  out.h_J_mol = R * T_K * (ut + z);
  out.s_J_molK = R * (ut - i.a - r.a);
  out.cv_J_molK = cv;
  out.cp_J_molK = cp;
  out.w_m_s = Math.sqrt(((cp / cv) * R * T_K * zz) / M);
  // T (∂p/∂T) / (ρ ∂p/∂ρ) − 1 is (zt − zz) / zz; taking the difference of the parts keeps its digits at low density.
  out.jt_K_Pa = -(r.td + r.dd) / (zz * rho * cp);
}
