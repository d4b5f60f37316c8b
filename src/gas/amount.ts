import { R_CODATA_2018 as R } from './constant.js';
import { relation, step2, step4, type Trace } from '../basis/relation.js';
import { fail } from '../basis/fault.js';
import { notAReferenceState } from '../basis/problem.js';
import { massOf, need, type Amount, type Mass } from '../quantity/kind.js';
import { normalVolumeOf, type GasCondition, type NormalVolume } from '../quantity/normal-volume.js';
import { checkTemperature, densityAt } from './door.js';
import type { GasModel } from './model.js';
import { needModel } from './state.js';

/** All the gas of a vessel. */
export const CONTENTS = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['V', 'rho'],
  formula: 'V * rho',
  source: 'molar density, by definition',
  of: (V, rho) => V * rho,
});

/** What an amount takes of space. */
export const TAKES = /* @__PURE__ */ relation({
  gives: 'V_gas',
  unit: 'm3',
  from: ['n', 'rho'],
  formula: 'n / rho',
  source: 'molar density, by definition',
  of: (n, rho) => n / rho,
});

export const DENSER = /* @__PURE__ */ relation({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['rho_low', 'n', 'V'],
  formula: 'rho_low + n / V',
  source: 'mass balance of a vessel of constant volume',
  of: (rho_low, n, V) => rho_low + n / V,
});

export const THINNER = /* @__PURE__ */ relation({
  gives: 'rho',
  unit: 'mol/m3',
  from: ['rho_high', 'n', 'V'],
  formula: 'rho_high - n / V',
  source: 'mass balance of a vessel of constant volume',
  of: (rho_high, n, V) => rho_high - n / V,
});

export const MASS_OF = /* @__PURE__ */ relation({
  gives: 'm',
  unit: 'kg',
  from: ['n', 'M'],
  formula: 'n * M',
  source: 'molar mass, by definition',
  of: (n, M) => n * M,
});

export const VOLUME_AT = /* @__PURE__ */ relation({
  gives: 'V_n',
  unit: 'm3',
  from: ['n', 'rho_n'],
  formula: 'n / rho_n',
  source: 'molar density, by definition; the reference state through the gas model',
  of: (n, rho_n) => n / rho_n,
});

export const IDEAL_VOLUME_AT = /* @__PURE__ */ relation({
  gives: 'V_n',
  unit: 'm3',
  from: ['n', 'R', 'T_n', 'p_n'],
  formula: 'n * R * T_n / p_n',
  source: 'ideal-gas law, with R of CODATA 2018',
  of: (n, R, T_n, p_n) => (n * R * T_n) / p_n,
});

/**
 * The volume that an amount of gas takes at a reference state, through the model (at 0 °C and 101.325 kPa nitrogen's Z is
 * 0.99954). The state is one of the named ones, such as {@link normalConditions}, or the caller's own.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`; `outside the model`, `liquid`; `empty space`
 * below 1e-290 Pa; `not a reference state` at vacuum
 * @example
 * ```ts
 * const v = normalVolume(amount(1000, 'mol'), nitrogen, normalConditions);
 * v.cubicMetres.toFixed(3); // => '22.404'
 * ```
 */
export function normalVolume(amount: Amount, model: GasModel, at: GasCondition, trace?: Trace): NormalVolume {
  need('amount of substance', amount, 'amount');
  needModel(model, 'model');
  const { pressure, temperature } = needReferenceState(at);
  const about = 'reference state of the volume';
  checkTemperature(model, temperature.kelvins, 'at.temperature');
  const rho = densityAt(model, temperature.kelvins, pressure.pascals, 'at.pressure', about, trace);
  return normalVolumeOf(step2(trace, VOLUME_AT, 'gas', amount.moles, rho), { pressure, temperature });
}

/**
 * The volume that an amount of any gas would take at a reference state if it were ideal: amount times the ideal molar
 * volume, V_m = R T / p. For comparison with tables and orders that were made so.
 *
 * For nitrogen it is too large by what its Z is short of 1: 0.05 % at 0 °C and 101.325 kPa, where Z is 0.99954, and
 * 0.03 % at 15 °C. {@link normalVolume} takes the gas as it is. This has no limits either: no gas is too cold for it.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`; `not a reference state` at vacuum or at
 * absolute zero
 * @example
 * ```ts
 * const v = normalVolumeAsIdealGas(amount(1000, 'mol'), normalConditions);
 * v.cubicMetres.toFixed(3); // => '22.414'
 * ```
 */
export function normalVolumeAsIdealGas(amount: Amount, at: GasCondition, trace?: Trace): NormalVolume {
  need('amount of substance', amount, 'amount');
  const { pressure, temperature } = needReferenceState(at);
  if (temperature.kelvins === 0) fail(notAReferenceState, 'at.temperature', '0 K');
  const V = step4(trace, IDEAL_VOLUME_AT, 'gas', amount.moles, R, temperature.kelvins, pressure.pascals);
  return normalVolumeOf(V, { pressure, temperature });
}

/** A reference state whose parts are read once and checked. */
function needReferenceState(at: GasCondition): GasCondition {
  const { pressure, temperature } = at ?? {};
  need('absolute pressure', pressure, 'at.pressure');
  need('temperature', temperature, 'at.temperature');
  if (pressure.pascals === 0) fail(notAReferenceState, 'at.pressure', '0 Pa absolute');
  return { pressure, temperature };
}

/**
 * The mass of an amount of gas.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy`
 * @example
 * ```ts
 * massOfGas(amount(100, 'mol'), nitrogen); // => { kind: 'mass', kilograms: 2.801348 }
 * ```
 */
export function massOfGas(amount: Amount, model: GasModel, trace?: Trace): Mass {
  need('amount of substance', amount, 'amount');
  needModel(model, 'model');
  return massOf(step2(trace, MASS_OF, 'gas', amount.moles, model.molarMass_kg_mol));
}
