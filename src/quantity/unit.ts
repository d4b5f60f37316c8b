import { fail, quote } from '../basis/fault.js';
import { unknownUnit } from '../basis/problem.js';
import type { Scale } from './decimal.js';

// Every factor is exact by definition (NIST SP 811:2008, appendix B.8, and the SI brochure), reduced to lowest terms:
// psi     0.453 592 37 kg · 9.806 65 m/s² / (0.0254 m)²
// mmHg    13 595.1 kg/m³ · 9.806 65 m/s² · 0.001 m = 133.322 387 415 Pa; inHg is 25.4 of it
// in3     (0.0254 m)³; the US gallon is 231 of it

/**
 * Units of pressure. A unit says nothing of the basis: gauge, absolute or a difference.
 *
 * mmHg and inHg are the conventional ones, of mercury at 0 °C under standard gravity: the reading of a mercury column
 * is corrected for its temperature and for local gravity first.
 */
export type PressureUnit = 'Pa' | 'hPa' | 'kPa' | 'MPa' | 'bar' | 'psi' | 'kgf/cm2' | 'mmHg' | 'inHg';
/** Units of temperature, and of a temperature difference (where 1 °C is 1 K and 1 °F is 5/9 K). */
export type TemperatureUnit = '°C' | 'K' | '°F';
/** Units of volume. The gallon is that of the United States, 231 in3; the imperial one is a fifth larger. */
export type VolumeUnit = 'm3' | 'L' | 'mL' | 'in3' | 'US gal';
/** Units of amount of substance. */
export type AmountUnit = 'mol';
/** Units of mass; the pound is the avoirdupois one. */
export type MassUnit = 'kg' | 'g' | 'lb';

type Units<U extends string> = Readonly<Record<U, Scale>>;

export const PRESSURE: Units<PressureUnit> = {
  Pa: { num: 1, den: 1, zero: 0 },
  hPa: { num: 100, den: 1, zero: 0 },
  kPa: { num: 1000, den: 1, zero: 0 },
  MPa: { num: 1_000_000, den: 1, zero: 0 },
  bar: { num: 100_000, den: 1, zero: 0 },
  psi: { num: 8_896_443_230_521, den: 1_290_320_000, zero: 0 },
  'kgf/cm2': { num: 196_133, den: 2, zero: 0 },
  mmHg: { num: 26_664_477_483, den: 200_000_000, zero: 0 },
  inHg: { num: 3_386_388_640_341, den: 1_000_000_000, zero: 0 },
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

export const VOLUME: Units<VolumeUnit> = {
  m3: { num: 1, den: 1, zero: 0 },
  L: { num: 1, den: 1000, zero: 0 },
  mL: { num: 1, den: 1_000_000, zero: 0 },
  in3: { num: 2_048_383, den: 125_000_000_000, zero: 0 },
  'US gal': { num: 473_176_473, den: 125_000_000_000, zero: 0 },
};
export const AMOUNT: Units<AmountUnit> = { mol: { num: 1, den: 1, zero: 0 } };
export const MASS: Units<MassUnit> = {
  kg: { num: 1, den: 1, zero: 0 },
  g: { num: 1, den: 1000, zero: 0 },
  lb: { num: 45_359_237, den: 100_000_000, zero: 0 },
};

/** A pressure for a message, where its caller's unit is not known. */
export function inBar(pascals: number): string {
  return `${Number((pascals / 1e5).toPrecision(12))} bar`;
}

/** A temperature for a message: as it is read at a shell, whatever its caller's unit. */
export function inCelsius(kelvins: number): string {
  return `${Number((kelvins - 273.15).toFixed(9))} °C`;
}

/** The scale of a unit, refusing every other spelling. */
export function scaleOf<U extends string>(units: Units<U>, unit: U, path: string): Scale {
  if (typeof unit === 'string' && Object.hasOwn(units, unit)) return units[unit];
  return fail(unknownUnit, path, quote(unit), { units: Object.keys(units).join(', ') });
}
