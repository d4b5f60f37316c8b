// The kernel: bare SI numbers in, bare SI numbers out, through objects that the caller owns where there are several. It
// never throws; limits are checked by the doors around it, before and after, not inside.

import { propertiesFrom, pvtFrom, type Derivatives, type IdealPart } from '../helmholtz.js';
import { LIQUID, type Equilibrium, type GasKernel, type Properties, type Pvt } from '../model.js';
import { M, R, RHO_REDUCING, T_REDUCING } from './coefficients.js';
import { idealPart } from './ideal.js';
import { collapse, sums, type Sums } from './residual.js';
import { densityRoot, type Isothermal } from '../solve.js';
import { equilibrium } from './saturation.js';

/** Above every density within the pressure limit (200 MPa at 126 K is δ = 3): the upper end of the bracket. */
const DELTA_MAX = 4;

/** Derivatives of the residual part for pressure and its slopes: those of the second order in τ are left out. */
function residualPvt(T_K: number, rho_mol_m3: number, out: Derivatives): void {
  const tau = T_REDUCING / T_K;
  const delta = rho_mol_m3 / RHO_REDUCING;
  const of: Sums = { value: 0, first: 0, second: 0 };
  sums(delta, collapse(0, tau), of);
  out.a = of.value;
  out.d = of.first;
  out.dd = of.second;
  sums(delta, collapse(1, tau), of);
  out.t = of.value;
  out.td = of.first;
}

function pvt(T_K: number, rho_mol_m3: number, out: Pvt): void {
  const r: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };
  residualPvt(T_K, rho_mol_m3, r);
  pvtFrom(r, R, T_K, rho_mol_m3, out);
}

function properties(T_K: number, rho_mol_m3: number, out: Properties): void {
  const r: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };
  residualPvt(T_K, rho_mol_m3, r);
  const of: Sums = { value: 0, first: 0, second: 0 };
  sums(rho_mol_m3 / RHO_REDUCING, collapse(2, T_REDUCING / T_K), of);
  r.tt = of.value;
  const i: IdealPart = { a: 0, t: 0, tt: 0 };
  idealPart(T_K, rho_mol_m3, i);
  propertiesFrom(i, r, R, M, T_K, rho_mol_m3, out);
}

/**
 * Solves p(T, ρ) = p. At and above the critical temperature p increases with ρ throughout, below it up to the saturated
 * vapour, so there is one root between zero and there. First guess and stopping rule depend on this state alone: a column
 * of states gives the bits of single calls.
 */
function density(T_K: number, p_Pa: number): number {
  if (p_Pa === 0) return 0;
  const ideal = p_Pa / (RHO_REDUCING * R * T_K);
  const end = T_K < T_REDUCING ? vapourEnd(T_K, ideal) : DELTA_MAX;
  if (!(end > 0)) return end;
  const guess = Math.min(ideal < 1 ? ideal : Math.min(1 + 0.35 * (ideal - 1), 3), end);
  const c = collapse(0, T_REDUCING / T_K);
  const of: Sums = { value: 0, first: 0, second: 0 };
  const isotherm = (delta: number, out: Isothermal): void => {
    sums(delta, c, of);
    out.z = 1 + of.first;
    out.zz = out.z + of.second;
  };
  return densityRoot(isotherm, ideal, guess, end) * RHO_REDUCING;
}

/** Just above the saturated vapour's density; {@link LIQUID} for a pressure above saturation, NaN if that is not found. */
function vapourEnd(T_K: number, reduced_p: number): number {
  const phases = { delta_liquid: 0, delta_vapour: 0, pressure: 0 };
  if (!equilibrium(T_K, phases)) return Number.NaN;
  // A pressure that rounding put above saturation is saturated vapour.
  return reduced_p > phases.pressure * (1 + 1e-13) ? LIQUID : phases.delta_vapour * (1 + 1e-8);
}

function saturation(T_K: number, out: Equilibrium): boolean {
  const phases = { delta_liquid: 0, delta_vapour: 0, pressure: 0 };
  if (!equilibrium(T_K, phases)) return false;
  out.p_Pa = phases.pressure * RHO_REDUCING * R * T_K;
  out.rho_liquid = phases.delta_liquid * RHO_REDUCING;
  out.rho_vapour = phases.delta_vapour * RHO_REDUCING;
  return true;
}

// A product at the top of a file would stay in every bundle: bundlers cannot know that it does nothing else.
function densest(): number {
  return DELTA_MAX * RHO_REDUCING;
}

export const NITROGEN_KERNEL: GasKernel = {
  pvt,
  properties,
  density,
  saturation,
  densest_mol_m3: /* @__PURE__ */ densest(),
  criticalTemperature_K: T_REDUCING,
};
