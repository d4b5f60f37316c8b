import { relation } from '../basis/relation.js';

/** What one accumulator takes from a bottle. */
export const WITH_THE_KIT = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['n_in', 'n_kit'],
  formula: 'n_in + n_kit',
  source: 'amount that the accumulator gains, and amount that the kit takes and loses',
  of: (n_in, n_kit) => n_in + n_kit,
});

/** The pressure above which a bottle must stay. */
export const NEEDED = /* @__PURE__ */ relation({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['p_before', 'dp'],
  formula: 'p_before + dp',
  source: 'pressure wanted, and the difference that the regulator needs',
  of: (p_before, dp) => p_before + dp,
});

/** What a bottle can give. */
export const USABLE = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['V', 'rho_high', 'rho_low', 'rho_residual'],
  formula: 'V * max(rho_high - max(rho_low, rho_residual), 0)',
  source: 'mass balance of a vessel of constant volume, down to the higher of two pressures',
  of: (V, rho_high, rho_low, rho_residual) => V * Math.max(rho_high - Math.max(rho_low, rho_residual), 0),
});

/** How many accumulators that is enough for. */
export const SERVED = /* @__PURE__ */ relation({
  gives: 'count',
  unit: '1',
  from: ['n_usable', 'n_each', 'count_most'],
  formula: 'min(floor(n_usable / n_each), count_most)',
  source: 'whole accumulators, as many as are counted at the most',
  of: (n_usable, n_each, count_most) => Math.min(Math.floor(n_usable / n_each), count_most),
});

/** The density in a bottle that has served so many. */
export const AFTER_SERVING = /* @__PURE__ */ relation({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['rho_high', 'count', 'n_each', 'V'],
  formula: 'rho_high - count * n_each / V',
  source: 'mass balance of a vessel of constant volume',
  of: (rho_high, count, n_each, V) => rho_high - (count * n_each) / V,
});

/** The density when a vessel and the space of a charging kit, both at its temperature, have become one. */
export const WITH_KIT = /* @__PURE__ */ relation({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['V', 'rho_high', 'V_kit', 'rho_kit'],
  formula: '(V * rho_high + V_kit * rho_kit) / (V + V_kit)',
  source: 'mass balance of two vessels that become one, at one temperature',
  of: (V, rho_high, V_kit, rho_kit) => (V * rho_high + V_kit * rho_kit) / (V + V_kit),
});

/** The density in a vessel before a kit, at its temperature, became one with it. */
export const BEFORE_KIT = /* @__PURE__ */ relation({
  gives: 'rho_high',
  unit: 'mol/m3',
  from: ['V', 'rho', 'V_kit', 'rho_kit'],
  formula: 'rho + V_kit * (rho - rho_kit) / V',
  source: 'mass balance of two vessels that have become one, at one temperature',
  of: (V, rho, V_kit, rho_kit) => rho + (V_kit * (rho - rho_kit)) / V,
});
