import { toSI } from './decimal.js';
import { amountOf, massOf, volumeOf, type Amount, type Mass, type Volume } from './kind.js';
import { AMOUNT, MASS, scaleOf, VOLUME, type AmountUnit, type MassUnit, type VolumeUnit } from './unit.js';

/**
 * A volume: of a space, not of gas at a reference state (that is {@link NormalVolume}). Zero or more.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`, `negative`
 * @example
 * ```ts
 * volume(5, 'L'); // => { kind: 'volume', cubicMetres: 0.005 }
 * ```
 */
export function volume(value: number, unit: VolumeUnit): Volume {
  return volumeOf(toSI(value, scaleOf(VOLUME, unit, 'unit')), 'value', value, unit);
}

/**
 * An amount of substance. Zero or more.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`, `negative`
 * @example
 * ```ts
 * amount(2.5, 'mol'); // => { kind: 'amount of substance', moles: 2.5 }
 * ```
 */
export function amount(value: number, unit: AmountUnit): Amount {
  return amountOf(toSI(value, scaleOf(AMOUNT, unit, 'unit')), 'value', value, unit);
}

/**
 * A mass. Zero or more.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`, `negative`
 * @example
 * ```ts
 * mass(0.35, 'kg'); // => { kind: 'mass', kilograms: 0.35 }
 * ```
 */
export function mass(value: number, unit: MassUnit): Mass {
  return massOf(toSI(value, scaleOf(MASS, unit, 'unit')), 'value', value, unit);
}
