import { relation } from '../basis/relation.js';

/** All the gas of a vessel. */
export const CONTENTS = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['V', 'rho'],
  formula: 'V * rho',
  source: 'molar density, by definition',
  of: (V, rho) => V * rho,
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
