import type { Source } from '../../basis/source.js';

/** The reference equation of state of nitrogen. */
export const SPAN_2000: Source = {
  citation:
    'Span, R., Lemmon, E. W., Jacobsen, R. T, Wagner, W., Yokozeki, A.: A reference equation of state for the ' +
    'thermodynamic properties of nitrogen for temperatures from 63.151 to 1000 K and pressures to 2200 MPa. ' +
    'J. Phys. Chem. Ref. Data 29 (2000) 1361-1433',
  doi: '10.1063/1.1349047',
};

// The constants that belong to the equation; a newer value of R in an older equation would shift every density.

/** Molar gas constant of the equation, J/(mol K). */
export const R = 8.31451;
/** Molar mass, kg/mol. */
export const M = 0.02801348;
/** Reducing temperature: the critical one, K. */
export const T_REDUCING = 126.192;
/**
 * Reducing density, mol/m3. The paper prints 11.1839 mol/dm3; this is the 313.3 kg/m3 behind it, divided by M. The choice
 * moves the density by 1e-8 at 15 MPa.
 */
export const RHO_REDUCING = 11183.901464580624;

/**
 * The residual Helmholtz energy, terms 1 to 32: αr = Σ n δ^d τ^t exp(−δ^l), without the exponential where l = 0;
 * δ = ρ / ρ_reducing, τ = T_reducing / T.
 */
export const TERM = {
  1: { n: 0.924803575275, d: 1, t: 0.25, l: 0 },
  2: { n: -0.492448489428, d: 1, t: 0.875, l: 0 },
  3: { n: 0.661883336938, d: 2, t: 0.5, l: 0 },
  4: { n: -1.92902649201, d: 2, t: 0.875, l: 0 },
  5: { n: -0.0622469309629, d: 3, t: 0.375, l: 0 },
  6: { n: 0.349943957581, d: 3, t: 0.75, l: 0 },
  7: { n: 0.564857472498, d: 1, t: 0.5, l: 1 },
  8: { n: -1.61720005987, d: 1, t: 0.75, l: 1 },
  9: { n: -0.481395031883, d: 1, t: 2, l: 1 },
  10: { n: 0.421150636384, d: 3, t: 1.25, l: 1 },
  11: { n: -0.0161962230825, d: 3, t: 3.5, l: 1 },
  12: { n: 0.172100994165, d: 4, t: 1, l: 1 },
  13: { n: 0.00735448924933, d: 6, t: 0.5, l: 1 },
  14: { n: 0.0168077305479, d: 6, t: 3, l: 1 },
  15: { n: -0.00107626664179, d: 7, t: 0, l: 1 },
  16: { n: -0.0137318088513, d: 7, t: 2.75, l: 1 },
  17: { n: 0.000635466899859, d: 8, t: 0.75, l: 1 },
  18: { n: 0.00304432279419, d: 8, t: 2.5, l: 1 },
  19: { n: -0.0435762336045, d: 1, t: 4, l: 2 },
  20: { n: -0.0723174889316, d: 2, t: 6, l: 2 },
  21: { n: 0.0389644315272, d: 3, t: 6, l: 2 },
  22: { n: -0.021220136391, d: 4, t: 3, l: 2 },
  23: { n: 0.00408822981509, d: 5, t: 3, l: 2 },
  24: { n: -5.51990017984e-5, d: 8, t: 6, l: 2 },
  25: { n: -0.0462016716479, d: 4, t: 16, l: 3 },
  26: { n: -0.00300311716011, d: 5, t: 11, l: 3 },
  27: { n: 0.0368825891208, d: 5, t: 15, l: 3 },
  28: { n: -0.0025585684622, d: 8, t: 12, l: 3 },
  29: { n: 0.00896915264558, d: 3, t: 12, l: 4 },
  30: { n: -0.0044151337035, d: 5, t: 7, l: 4 },
  31: { n: 0.00133722924858, d: 6, t: 4, l: 4 },
  32: { n: 0.000264832491957, d: 9, t: 16, l: 4 },
} as const;

/**
 * Terms 33 to 36: bells about the critical point, n δ^d τ^t exp(−η (δ−ε)² − β (τ−γ)²). At 160 K they are 1e-16 of Z, and
 * from 168 K the kernel leaves them out; data above 220 K cannot see a mistake in them.
 */
export const BELL = {
  33: { n: 19.6688194015, d: 1, t: 0, eta: 20, epsilon: 1, beta: 325, gamma: 1.16 },
  34: { n: -20.911560073, d: 1, t: 1, eta: 20, epsilon: 1, beta: 325, gamma: 1.16 },
  35: { n: 0.0167788306989, d: 3, t: 2, eta: 15, epsilon: 1, beta: 300, gamma: 1.13 },
  36: { n: 2627.67566274, d: 2, t: 3, eta: 25, epsilon: 1, beta: 275, gamma: 1.25 },
} as const;

/**
 * The ideal part: α0 = ln δ + a1 + a2 τ + 2.5 ln τ + Σ n τ^t + n_e ln(1 − exp(−θ/T)). a1 and a2 set h = 8670 J/mol and
 * s = 191.5 J/(mol K) for the ideal gas at 298.15 K and 101 325 Pa.
 */
export const IDEAL = {
  a1: -12.76952708,
  a2: -0.00784163,
  lnTau: 2.5,
  power: { '-1': -0.0001934819, '-2': -1.247742e-5, '-3': 6.678326e-8 },
  n_e: 1.012941,
  theta_K: 3364.011,
} as const;
