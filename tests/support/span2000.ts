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
interface GaussianTerm {
  readonly n: number;
  readonly d: number;
  readonly t: number;
  readonly eta: number;
  readonly epsilon: number;
  readonly beta: number;
  readonly gamma: number;
}

/** α0 = ln δ + a1 + a2 τ + logTau ln τ + Σ n τ^t + n_e ln(1 − exp(−θ/T)). */
interface IdealGas {
  readonly a1: number;
  readonly a2: number;
  readonly logTau: number;
  readonly power: readonly { readonly n: number; readonly t: number }[];
  readonly planckEinstein: { readonly n: number; readonly theta_K: number };
}

/** What of nitrogen-span-2000.json the tests need. */
interface Span2000 {
  readonly gasConstant_J_molK: number;
  readonly molarMass_kg_mol: number;
  readonly reducing: { readonly T_K: number; readonly rho_mol_m3_coolprop: number };
  readonly idealGas: IdealGas;
  readonly residual: { readonly power: readonly PowerTerm[]; readonly gaussian: readonly GaussianTerm[] };
  readonly uncertainty: {
    readonly density: readonly { readonly relative: number; readonly T_K: number[]; readonly p_Pa: number[] }[];
  };
}

export const SPAN_2000_JSON = JSON.parse(referenceText('nitrogen-span-2000.json')) as Span2000;

/** All that can be mistyped: the terms of the residual part and the ideal part. */
export interface Coefficients {
  readonly power: readonly PowerTerm[];
  readonly gaussian: readonly GaussianTerm[];
  readonly idealGas: IdealGas;
}

export const PRINTED: Coefficients = { ...SPAN_2000_JSON.residual, idealGas: SPAN_2000_JSON.idealGas };

/** A term, or a sum of terms, of a Helmholtz energy over RT, and its derivatives. */
interface Derivatives {
  readonly a: number;
  /** δ ∂a/∂δ */
  readonly d: number;
  /** (δ ∂/∂δ)² a */
  readonly dd: number;
  /** τ ∂a/∂τ */
  readonly t: number;
  /** τ² ∂²a/∂τ² */
  readonly tt: number;
  /** τ ∂/∂τ (δ ∂a/∂δ) */
  readonly dt: number;
}

/** With a = n δ^d τ^t exp(−δ^l): δ ∂a/∂δ = a (d − l δ^l), and δ ∂/∂δ of that bracket is −l² δ^l. */
function powerTerm({ n, d, t, l }: PowerTerm, delta: number, tau: number): Derivatives {
  const a = n * delta ** d * tau ** t * (l === 0 ? 1 : Math.exp(-(delta ** l)));
  const bracket = d - l * delta ** l;
  return {
    a,
    d: a * bracket,
    dd: a * (bracket ** 2 - l ** 2 * delta ** l),
    t: a * t,
    tt: a * t * (t - 1),
    dt: a * bracket * t,
  };
}

/** With a the term: δ ∂a/∂δ = a (d − 2ηδ(δ − ε)), δ ∂/∂δ of that bracket is −2ηδ(2δ − ε); τ alike. */
function gaussianTerm(term: GaussianTerm, delta: number, tau: number): Derivatives {
  const { n, d, t, eta, epsilon, beta, gamma } = term;
  const a = n * delta ** d * tau ** t * Math.exp(-eta * (delta - epsilon) ** 2 - beta * (tau - gamma) ** 2);
  const byDelta = d - 2 * eta * delta * (delta - epsilon);
  const byTau = t - 2 * beta * tau * (tau - gamma);
  return {
    a,
    d: a * byDelta,
    dd: a * (byDelta ** 2 - 2 * eta * delta * (2 * delta - epsilon)),
    t: a * byTau,
    // (τ ∂/∂τ)² less τ ∂/∂τ.
    tt: a * (byTau ** 2 - 2 * beta * tau * (2 * tau - gamma) - byTau),
    dt: a * byDelta * byTau,
  };
}

function idealPart(ideal: IdealGas, delta: number, tau: number): { a: number; t: number; tt: number } {
  const { n, theta_K } = ideal.planckEinstein;
  const x = (theta_K / SPAN_2000_JSON.reducing.T_K) * tau;
  const powers = ideal.power.map((term) => ({ ...term, a: term.n * tau ** term.t }));
  return {
    a:
      Math.log(delta) +
      ideal.a1 +
      ideal.a2 * tau +
      ideal.logTau * Math.log(tau) +
      powers.reduce((total, { a }) => total + a, 0) +
      n * Math.log(1 - Math.exp(-x)),
    t: ideal.a2 * tau + ideal.logTau + powers.reduce((total, { a, t }) => total + a * t, 0) + (n * x) / Math.expm1(x),
    tt:
      -ideal.logTau +
      powers.reduce((total, { a, t }) => total + a * t * (t - 1), 0) -
      (n * x ** 2 * Math.exp(x)) / Math.expm1(x) ** 2,
  };
}

function sum(terms: readonly Derivatives[]): Derivatives {
  const of = (part: keyof Derivatives): number => terms.reduce((total, term) => total + term[part], 0);
  return { a: of('a'), d: of('d'), dd: of('dd'), t: of('t'), tt: of('tt'), dt: of('dt') };
}

/** A state by the equation, under the names that the columns of the reference files have. */
export interface EquationState {
  readonly p_Pa: number;
  readonly Z: number;
  readonly u_J_mol: number;
  readonly h_J_mol: number;
  readonly s_J_molK: number;
  readonly cv_J_molK: number;
  readonly cp_J_molK: number;
  readonly w_m_s: number;
  readonly dpdT_rho_Pa_K: number;
  readonly dpdrho_T_Pa_m3_mol: number;
  readonly mu_JT_K_Pa: number;
}

/** The equation at a temperature and a molar density. The relations are those of the paper's table of properties. */
export function span2000(T_K: number, rho_mol_m3: number, { power, gaussian, idealGas } = PRINTED): EquationState {
  const R = SPAN_2000_JSON.gasConstant_J_molK;
  const delta = rho_mol_m3 / SPAN_2000_JSON.reducing.rho_mol_m3_coolprop;
  const tau = SPAN_2000_JSON.reducing.T_K / T_K;
  const r = sum([
    ...power.map((term) => powerTerm(term, delta, tau)),
    ...gaussian.map((term) => gaussianTerm(term, delta, tau)),
  ]);
  const i = idealPart(idealGas, delta, tau);
  const Z = 1 + r.d;
  const p_Pa = rho_mol_m3 * R * T_K * Z;
  const dpdrho = R * T_K * (1 + r.d + r.dd);
  const dpdT = rho_mol_m3 * R * (1 + r.d - r.dt);
  const u = R * T_K * (i.t + r.t);
  const cv = -R * (i.tt + r.tt);
  const cp = cv + (T_K * dpdT ** 2) / (rho_mol_m3 ** 2 * dpdrho);
  return {
    p_Pa,
    Z,
    u_J_mol: u,
    h_J_mol: u + p_Pa / rho_mol_m3,
    s_J_molK: R * (i.t + r.t - i.a - r.a),
    cv_J_molK: cv,
    cp_J_molK: cp,
    w_m_s: Math.sqrt(((cp / cv) * dpdrho) / SPAN_2000_JSON.molarMass_kg_mol),
    dpdT_rho_Pa_K: dpdT,
    dpdrho_T_Pa_m3_mol: dpdrho,
    // T (∂p/∂T) / (ρ ∂p/∂ρ) − 1, without the ones that cancel: at low density they would leave no digits.
    mu_JT_K_Pa: (-(r.dt + r.dd) * R * T_K) / (dpdrho * rho_mol_m3 * cp),
  };
}
