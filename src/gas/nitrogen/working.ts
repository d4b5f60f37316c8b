// The reference equation term by term, as the paper prints it, for whoever follows the working by hand. The kernel computes
// the same collapsed along the isotherm; nothing is computed from what stands here.
import { relation, show, step1, step2, type Arithmetic, type Trace } from '../../basis/relation.js';
import { exp, log } from '../elementary.js';
import { BELL, RHO_REDUCING, T_REDUCING, TERM } from './coefficients.js';

const PAPER = 'Span et al. (2000), J. Phys. Chem. Ref. Data 29, 1361';

export const TAU = /* @__PURE__ */ relation({
  gives: 'tau',
  unit: '1',
  from: ['T_reducing', 'T'],
  formula: 'T_reducing / T',
  source: `inverse reduced temperature: ${PAPER}`,
  of: (T_reducing, T) => T_reducing / T,
});

export const DELTA = /* @__PURE__ */ relation({
  gives: 'delta',
  unit: '1',
  from: ['rho', 'rho_reducing'],
  formula: 'rho / rho_reducing',
  source: `reduced density: ${PAPER}`,
  of: (rho, rho_reducing) => rho / rho_reducing,
});

// Each term is that of δ ∂αr/∂δ: n δ^d τ^t for the first six, with exp(−δ^l) up to the 32nd, with bells for the last four.

export const POLYNOMIAL_TERM = /* @__PURE__ */ relation({
  gives: 'a_i',
  unit: '1',
  from: ['n_i', 'd_i', 't_i', 'delta', 'tau'],
  formula: 'n_i * d_i * delta^d_i * tau^t_i',
  source: `a term of the residual Helmholtz energy, differentiated by the logarithm of the reduced density: ${PAPER}`,
  of: (n, d, t, delta, tau) => n * d * power(delta, d) * power(tau, t),
});

export const EXPONENTIAL_TERM = /* @__PURE__ */ relation({
  gives: 'a_i',
  unit: '1',
  from: ['n_i', 'd_i', 't_i', 'l_i', 'delta', 'tau'],
  formula: 'n_i * delta^d_i * tau^t_i * exp(-delta^l_i) * (d_i - l_i * delta^l_i)',
  source: `a term of the residual Helmholtz energy, differentiated by the logarithm of the reduced density: ${PAPER}`,
  of: (n, d, t, l, delta, tau) => {
    const delta_l = power(delta, l);
    return n * power(delta, d) * power(tau, t) * exp(-delta_l) * (d - l * delta_l);
  },
});

export const BELL_TERM = /* @__PURE__ */ relation({
  gives: 'a_i',
  unit: '1',
  from: ['n_i', 'd_i', 't_i', 'eta_i', 'epsilon_i', 'beta_i', 'gamma_i', 'delta', 'tau'],
  formula:
    'n_i * delta^d_i * tau^t_i * exp(-eta_i * (delta - epsilon_i)^2 - beta_i * (tau - gamma_i)^2) * ' +
    '(d_i - 2 * eta_i * delta * (delta - epsilon_i))',
  source: `a term of the residual Helmholtz energy, differentiated by the logarithm of the reduced density: ${PAPER}`,
  of: (n, d, t, eta, epsilon, beta, gamma, delta, tau) => {
    const [off, by] = [delta - epsilon, tau - gamma];
    const bell = exp(-eta * (off * off) - beta * (by * by));
    return n * power(delta, d) * power(tau, t) * bell * (d - 2 * eta * delta * off);
  },
});

export const ADDED_TERM = /* @__PURE__ */ relation({
  gives: 'a_d',
  unit: '1',
  from: ['a_before', 'a_i'],
  formula: 'a_before + a_i',
  source: `sum of the terms: ${PAPER}`,
  of: (before, term) => before + term,
});

export const FACTOR_OF_TERMS = /* @__PURE__ */ relation({
  gives: 'Z',
  unit: '1',
  from: ['a_d'],
  formula: '1 + a_d',
  source: `compression factor, one more than the derivative of the residual Helmholtz energy: ${PAPER}`,
  of: (a_d) => 1 + a_d,
});

/** Both are of numbers above zero. */
function power(x: number, y: number): number {
  return exp(y * log(x));
}

/** The compression factor at a temperature and a molar density, with every term shown. */
export function factorTermByTerm(T_K: number, rho: number, trace: Trace): number {
  const tau = step2(trace, TAU, ABOUT, T_REDUCING, T_K);
  const delta = step2(trace, DELTA, ABOUT, rho, RHO_REDUCING);
  let sum = 0;
  for (const [i, { n, d, t, l }] of Object.entries(TERM)) {
    const values = l === 0 ? [n, d, t, delta, tau] : [n, d, t, l, delta, tau];
    sum = added(i, l === 0 ? POLYNOMIAL_TERM : EXPONENTIAL_TERM, values, sum, trace);
  }
  for (const [i, { n, t, beta, gamma, ...bell }] of Object.entries(BELL))
    sum = added(i, BELL_TERM, [n, bell.d, t, bell.eta, bell.epsilon, beta, gamma, delta, tau], sum, trace);
  return step1(trace, FACTOR_OF_TERMS, ABOUT, sum);
}

const ABOUT = 'equation of state';

function added(
  i: string,
  r: Arithmetic<readonly string[]>,
  values: readonly number[],
  before: number,
  trace: Trace,
): number {
  const result = r.of(...values);
  show(trace, { relation: r, about: `term ${i}`, values, result });
  return step2(trace, ADDED_TERM, `term ${i}`, before, result);
}
