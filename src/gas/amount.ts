import { relation, step2, type Trace } from '../basis/relation.js';
import { fail } from '../basis/fault.js';
import { massOf, need, type Amount, type Mass } from '../quantity/kind.js';
import { normalVolumeOf, type GasCondition, type NormalVolume } from '../quantity/normal-volume.js';
import { checkTemperature, densityAt } from './door.js';
import type { GasModel } from './model.js';
import { needModel } from './state.js';

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

/**
 * The volume that an amount of gas takes at a reference state, through the model (at 0 °C and 101.325 kPa nitrogen's Z is
 * 0.99954).
 *
 * @throws {@link Fault} `wrong kind`; `outside the model`; `not positive` for a reference state at vacuum
 * @example
 * ```ts
 * const v = normalVolume(amount(1000, 'mol'), nitrogen, normalConditions);
 * v.cubicMetres.toFixed(3); // => '22.404'
 * ```
 */
export function normalVolume(amount: Amount, model: GasModel, at: GasCondition, trace?: Trace): NormalVolume {
  need('amount of substance', amount, 'amount');
  needModel(model, 'model');
  need('absolute pressure', at?.pressure, 'at.pressure');
  need('temperature', at.temperature, 'at.temperature');
  if (at.pressure.pascals === 0) {
    fail({
      code: 'not positive',
      path: 'at.pressure',
      found: '0 Pa absolute',
      wanted: 'a reference state above vacuum',
      remedy: 'a volume at vacuum would be infinite; normalConditions is one reference state',
    });
  }
  const about = 'reference state of the volume';
  checkTemperature(model, at.temperature.kelvins, 'at.temperature');
  const rho = densityAt(model, at.temperature.kelvins, at.pressure.pascals, 'at.pressure', about, trace);
  return normalVolumeOf(step2(trace, VOLUME_AT, 'gas', amount.moles, rho), at);
}

/**
 * The mass of an amount of gas.
 *
 * @throws {@link Fault} `wrong kind`
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
