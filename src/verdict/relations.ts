// What a reading, its instruments and what the manual states do to the difference from a target or a limit, formula by
// formula.
import { relation } from '../basis/relation.js';

export const CORRECTED = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_read', 'dp'],
  formula: 'p_read + dp',
  source: 'correction of a calibration certificate, by definition (JCGM 200, 2.53)',
  of: (p_read, dp) => p_read + dp,
});

export const CORRECTED_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'T',
  unit: 'K',
  from: ['T_read', 'dT'],
  formula: 'T_read + dT',
  source: 'correction of a calibration certificate, by definition (JCGM 200, 2.53)',
  of: (T_read, dT) => T_read + dT,
});

export const HALF_STEP = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['dp_step'],
  formula: 'dp_step / 2',
  source: 'a number to a step may be off by half of it (JCGM 100, F.2.2.1)',
  of: (dp_step) => dp_step / 2,
});

export const HALF_STEP_OF_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dT',
  unit: 'K',
  from: ['dT_step'],
  formula: 'dT_step / 2',
  source: 'a number to a step may be off by half of it (JCGM 100, F.2.2.1)',
  of: (dT_step) => dT_step / 2,
});

export const OF_CERTIFICATE = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['dp_expanded', 'k_expanded'],
  formula: 'dp_expanded / k_expanded',
  source: 'standard uncertainty from an expanded one, by definition (JCGM 100, 2.3.5)',
  of: (dp_expanded, k_expanded) => dp_expanded / k_expanded,
});

export const OF_CERTIFICATE_OF_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dT',
  unit: 'K',
  from: ['dT_expanded', 'k_expanded'],
  formula: 'dT_expanded / k_expanded',
  source: 'standard uncertainty from an expanded one, by definition (JCGM 100, 2.3.5)',
  of: (dT_expanded, k_expanded) => dT_expanded / k_expanded,
});

export const LARGEST_EXPANSION = /* @__PURE__ */ relation({
  gives: 'alpha',
  unit: '1/K',
  from: ['alpha_stated', 'd_alpha'],
  formula: 'alpha_stated + d_alpha',
  source: 'the largest thermal expansion within its limit of error',
  of: (alpha_stated, d_alpha) => alpha_stated + d_alpha,
});

export const BY_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_T', 'dT'],
  formula: 'p_T * dT',
  source: 'slope of the target with temperature: of the gas at constant density, or of the table',
  of: (p_T, dT) => p_T * dT,
});

export const BY_STATED_PRESSURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_rho', 'p_rho_stated', 'dp'],
  formula: 'p_rho / p_rho_stated * dp',
  source: 'line of constant density, differentiated: an error of the pressure where it is stated',
  of: (p_rho, p_rho_stated, dp) => (p_rho / p_rho_stated) * dp,
});

export const BY_STATED_TEMPERATURE = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['p_rho', 'p_rho_stated', 'p_T_stated', 'dT'],
  formula: '-p_T_stated * (p_rho / p_rho_stated) * dT',
  source: 'line of constant density, differentiated: an error of the temperature where it is stated',
  of: (p_rho, p_rho_stated, p_T_stated, dT) => -p_T_stated * (p_rho / p_rho_stated) * dT,
});

export const BY_DENSITY = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['rho', 'p_rho', 'e_rho'],
  formula: 'rho * p_rho * e_rho',
  source: 'line of constant density, differentiated: a relative error of the density',
  of: (rho, p_rho, e_rho) => rho * p_rho * e_rho,
});

export const BY_VESSEL = /* @__PURE__ */ relation({
  gives: 'e_rho',
  unit: '1',
  from: ['alpha', 'T', 'T_stated'],
  formula: '-3 * alpha * (T - T_stated)',
  source: 'thermal expansion of a vessel of one material, to first order',
  of: (alpha, T, T_stated) => -3 * alpha * (T - T_stated),
});

export const BY_ROW = /* @__PURE__ */ relation({
  gives: 'dp_target',
  unit: 'Pa',
  from: ['T', 'T_1', 'T_2', 'dp'],
  formula: '(T_2 - T) / (T_2 - T_1) * dp',
  source: "the maker's table, linear between its rows, differentiated: an error of the row at T_1",
  of: (T, T_1, T_2, dp) => ((T_2 - T) / (T_2 - T_1)) * dp,
});

/** Variance of the difference of the relative errors at the two ends of a line: (u − u′)² + 2 (1 − r) u u′, which is never negative. */
export const EQUATION_OF_STATE = /* @__PURE__ */ relation({
  gives: 'u2_rho',
  unit: '1',
  from: ['u_rho', 'u_rho_stated', 'r_rho'],
  formula: '(u_rho - u_rho_stated) * (u_rho - u_rho_stated) + 2 * (1 - r_rho) * u_rho * u_rho_stated',
  source: 'variance of a difference of two correlated errors (JCGM 100, 5.2)',
  of: (u_rho, u_rho_stated, r_rho) =>
    (u_rho - u_rho_stated) * (u_rho - u_rho_stated) + 2 * (1 - r_rho) * u_rho * u_rho_stated,
});
