import { fail, quote } from '../basis/fault.js';
import type { Scale } from './decimal.js';

// Every factor is exact by definition (NIST SP 811:2008, appendix B.8, and the SI brochure); the pound-force per square
// inch is 0.453 592 37 kg · 9.806 65 m/s² / (0.0254 m)², reduced to lowest terms.

/** Units of pressure. A unit says nothing of the basis: gauge, absolute or a difference. */
export type PressureUnit = 'Pa' | 'hPa' | 'kPa' | 'MPa' | 'bar' | 'psi' | 'kgf/cm2';
/** Units of temperature, and of a temperature difference (where 1 °C is 1 K and 1 °F is 5/9 K). */
export type TemperatureUnit = '°C' | 'K' | '°F';
/** Units of volume. */
export type VolumeUnit = 'm3' | 'L';
/** Units of amount of substance. */
export type AmountUnit = 'mol';
/** Units of mass. */
export type MassUnit = 'kg';

type Units<U extends string> = Readonly<Record<U, Scale>>;

export const PRESSURE: Units<PressureUnit> = {
  Pa: { num: 1, den: 1, zero: 0 },
  hPa: { num: 100, den: 1, zero: 0 },
  kPa: { num: 1000, den: 1, zero: 0 },
  MPa: { num: 1_000_000, den: 1, zero: 0 },
  bar: { num: 100_000, den: 1, zero: 0 },
  psi: { num: 8_896_443_230_521, den: 1_290_320_000, zero: 0 },
  'kgf/cm2': { num: 196_133, den: 2, zero: 0 },
};

export const TEMPERATURE: Units<TemperatureUnit> = {
  '°C': { num: 1, den: 1, zero: 27_315 },
  K: { num: 1, den: 1, zero: 0 },
  '°F': { num: 5, den: 9, zero: 45_967 },
};

export const TEMPERATURE_DIFFERENCE: Units<TemperatureUnit> = {
  '°C': { num: 1, den: 1, zero: 0 },
  K: { num: 1, den: 1, zero: 0 },
  '°F': { num: 5, den: 9, zero: 0 },
};

export const VOLUME: Units<VolumeUnit> = { m3: { num: 1, den: 1, zero: 0 }, L: { num: 1, den: 1000, zero: 0 } };
export const AMOUNT: Units<AmountUnit> = { mol: { num: 1, den: 1, zero: 0 } };
export const MASS: Units<MassUnit> = { kg: { num: 1, den: 1, zero: 0 } };

/** A pressure for a message, where its caller's unit is not known. */
export function inBar(pascals: number): string {
  return `${Number((pascals / 1e5).toPrecision(12))} bar`;
}

/** The scale of a unit, refusing every other spelling. */
export function scaleOf<U extends string>(units: Units<U>, unit: U, path: string): Scale {
  if (typeof unit === 'string' && Object.hasOwn(units, unit)) return units[unit];
  return fail({
    code: 'unknown unit',
    path,
    found: quote(unit),
    wanted: `one of ${Object.keys(units).join(', ')}`,
    remedy: 'spell the unit exactly so, without gauge or absolute in it: the basis is said separately',
  });
}
