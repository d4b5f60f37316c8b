// The reference equation of state of nitrogen as the paper prints it: Span et al., J. Phys. Chem. Ref. Data 29 (2000)
// 1361, all 36 terms, one after another, from the coefficients in tests/reference/nitrogen-span-2000.json. It is slow and
// plain on purpose: something to hold the collapsed sums of the library against, term by term.

import { referenceText } from './reference.js';

/** n δ^d τ^t exp(−δ^l), without the exponential where l = 0. */
interface PowerTerm {
  readonly n: number;
  readonly d: number;
  readonly t: number;
  readonly l: number;
}

/** n δ^d τ^t exp(−η (δ − ε)² − β (τ − γ)²). */
export interface GaussianTerm {
  readonly n: number;
  readonly d: number;
  readonly t: number;
  readonly eta: number;
  readonly epsilon: number;
  readonly beta: number;
  readonly gamma: number;
}

/** What of nitrogen-span-2000.json the pressure needs. */
interface Span2000 {
  readonly gasConstant_J_molK: number;
  readonly molarMass_kg_mol: number;
  readonly reducing: { readonly T_K: number; readonly rho_mol_m3_coolprop: number };
  readonly residual: { readonly power: readonly PowerTerm[]; readonly gaussian: readonly GaussianTerm[] };
  readonly uncertainty: {
    readonly density: readonly { readonly relative: number; readonly T_K: number[]; readonly p_Pa: number[] }[];
  };
}

export const SPAN_2000_JSON = JSON.parse(referenceText('nitrogen-span-2000.json')) as Span2000;

/** Three derivatives of one term or of a sum of terms; α is the residual Helmholtz energy over RT. */
export interface Derivatives {
  /** δ ∂α/∂δ */
  readonly d: number;
  /** (δ ∂/∂δ)² α */
  readonly dd: number;
  /** τ ∂/∂τ (δ ∂α/∂δ) */
  readonly dt: number;
}

/** With a = n δ^d τ^t exp(−δ^l): δ ∂a/∂δ = a (d − l δ^l), and δ ∂/∂δ of that bracket is −l² δ^l. */
function powerTerm({ n, d, t, l }: PowerTerm, delta: number, tau: number): Derivatives {
  const a = n * delta ** d * tau ** t * (l === 0 ? 1 : Math.exp(-(delta ** l)));
  const bracket = d - l * delta ** l;
  return { d: a * bracket, dd: a * (bracket ** 2 - l ** 2 * delta ** l), dt: a * bracket * t };
}

/** With a the term: δ ∂a/∂δ = a (d − 2ηδ(δ − ε)), δ ∂/∂δ of that bracket is −2ηδ(2δ − ε); τ alike. */
export function gaussianTerm(term: GaussianTerm, delta: number, tau: number): Derivatives {
  const { n, d, t, eta, epsilon, beta, gamma } = term;
  const a = n * delta ** d * tau ** t * Math.exp(-eta * (delta - epsilon) ** 2 - beta * (tau - gamma) ** 2);
  const bracket = d - 2 * eta * delta * (delta - epsilon);
  return {
    d: a * bracket,
    dd: a * (bracket ** 2 - 2 * eta * delta * (2 * delta - epsilon)),
    dt: a * bracket * (t - 2 * beta * tau * (tau - gamma)),
  };
}

function sum(terms: readonly Derivatives[]): Derivatives {
  return {
    d: terms.reduce((total, term) => total + term.d, 0),
    dd: terms.reduce((total, term) => total + term.dd, 0),
    dt: terms.reduce((total, term) => total + term.dt, 0),
  };
}

export interface EquationState {
  /** Compression factor, 1 + δ ∂α/∂δ. */
  readonly Z: number;
  readonly p_Pa: number;
  readonly dpdrho_T: number;
  readonly dpdT_rho: number;
}

/** Pressure and its slopes at a temperature and a molar density, by any selection of the terms; all 36 unless told. */
export function span2000(
  T_K: number,
  rho_mol_m3: number,
  { power, gaussian } = SPAN_2000_JSON.residual,
): EquationState {
  const R = SPAN_2000_JSON.gasConstant_J_molK;
  const delta = rho_mol_m3 / SPAN_2000_JSON.reducing.rho_mol_m3_coolprop;
  const tau = SPAN_2000_JSON.reducing.T_K / T_K;
  const alpha = sum([
    ...power.map((term) => powerTerm(term, delta, tau)),
    ...gaussian.map((term) => gaussianTerm(term, delta, tau)),
  ]);
  const Z = 1 + alpha.d;
  return {
    Z,
    p_Pa: rho_mol_m3 * R * T_K * Z,
    // p = ρ R T (1 + δ ∂α/∂δ), differentiated by ρ and by T (where τ ∂/∂τ = −T ∂/∂T).
    dpdrho_T: R * T_K * (1 + alpha.d + alpha.dd),
    dpdT_rho: rho_mol_m3 * R * (1 + alpha.d - alpha.dt),
  };
}
