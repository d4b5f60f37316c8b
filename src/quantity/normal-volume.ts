import { CheckedValue, need, volumeOf, type AbsolutePressure, type Checked, type Temperature } from './kind.js';
import { absolute } from './pressure.js';
import { valueIn, write, type Division, type Toward, type UnitOf } from './step.js';
import { temperature } from './temperature.js';
import type { PressureUnit, TemperatureUnit, VolumeUnit } from './unit.js';

/** A state of a gas, named by its pressure and temperature. */
export interface GasCondition {
  readonly pressure: AbsolutePressure;
  readonly temperature: Temperature;
}

/**
 * Volume that an amount of gas takes at a stated reference state. A kind of its own: 1 m3 of gas at 0 °C is not 1 m3 at
 * 15 °C, and neither is the volume of a vessel.
 */
export interface NormalVolume extends Checked<'normal volume'> {
  readonly cubicMetres: number;
  /** The reference state. */
  readonly at: GasCondition;
}

class NormalVolumeValue extends CheckedValue<'normal volume'> implements NormalVolume {
  readonly cubicMetres: number;
  readonly at: GasCondition;
  constructor(cubicMetres: number, at: GasCondition) {
    super('normal volume');
    this.cubicMetres = cubicMetres;
    this.at = Object.freeze({ pressure: at.pressure, temperature: at.temperature });
    Object.freeze(this);
  }
}

/** The door to a normal volume, as {@link volumeOf} is to a volume. */
export function normalVolumeOf(cubicMetres: number, at: GasCondition): NormalVolume {
  need('absolute pressure', at.pressure, 'at.pressure');
  need('temperature', at.temperature, 'at.temperature');
  return new NormalVolumeValue(volumeOf(cubicMetres, 'cubicMetres').cubicMetres, at);
}

// A factory, so that one annotation makes each constant below droppable by a bundler.
function referenceState(
  pressure: number,
  pressureUnit: PressureUnit,
  degrees: number,
  temperatureUnit: TemperatureUnit,
): GasCondition {
  return Object.freeze({
    pressure: absolute(pressure, pressureUnit),
    temperature: temperature(degrees, temperatureUnit),
  });
}

/**
 * 0 °C and 101.325 kPa absolute: the normal conditions of DIN 1343.
 *
 * @example
 * ```ts
 * valueIn(normalConditions.temperature, 'K'); // => 273.15
 * ```
 */
export const normalConditions: GasCondition = /* @__PURE__ */ referenceState(101.325, 'kPa', 0, '°C');

/**
 * 15 °C and 101.325 kPa absolute: the standard reference conditions of ISO 13443 (natural gas) and ISO 5024 (petroleum),
 * and sea level in the standard atmosphere of ISO 2533.
 *
 * @example
 * ```ts
 * valueIn(standardReferenceConditions.temperature, 'K'); // => 288.15
 * ```
 */
export const standardReferenceConditions: GasCondition = /* @__PURE__ */ referenceState(101.325, 'kPa', 15, '°C');

/**
 * 20 °C and 101.325 kPa absolute: one of the metering reference states of ISO 6976; the trade has no one name for it.
 *
 * @example
 * ```ts
 * valueIn(reference20C1atm.temperature, '°F'); // => 68
 * ```
 */
export const reference20C1atm: GasCondition = /* @__PURE__ */ referenceState(101.325, 'kPa', 20, '°C');

/**
 * 0 °C and 100 kPa absolute: the standard conditions for gases that IUPAC recommends since 1982 (Compendium of Chemical
 * Terminology). Before, the same name meant 101.325 kPa, the {@link normalConditions}: 1.3 % less gas in a cubic metre now.
 *
 * @example
 * ```ts
 * valueIn(reference0C1bar.pressure, 'bar'); // => 1
 * ```
 */
export const reference0C1bar: GasCondition = /* @__PURE__ */ referenceState(100, 'kPa', 0, '°C');

/**
 * 15 °C and 100 kPa absolute: in which bottled gas is sold in much of Europe (common practice, no source).
 *
 * @example
 * ```ts
 * valueIn(reference15C1bar.pressure, 'kPa'); // => 100
 * ```
 */
export const reference15C1bar: GasCondition = /* @__PURE__ */ referenceState(100, 'kPa', 15, '°C');

/**
 * 60 °F and 14.696 psi absolute: base conditions of the oil and gas trade of the United States (common practice, no
 * source). Contracts there also name 14.73 psi and others: the contract decides.
 *
 * @example
 * ```ts
 * valueIn(reference60F.pressure, 'psi'); // => 14.696
 * ```
 */
export const reference60F: GasCondition = /* @__PURE__ */ referenceState(14.696, 'psi', 60, '°F');

/**
 * 70 °F and 14.696 psi absolute: in which bottled gas is sold in the United States (common practice, no source).
 *
 * @example
 * ```ts
 * valueIn(reference70F.temperature, '°F'); // => 70
 * ```
 */
export const reference70F: GasCondition = /* @__PURE__ */ referenceState(14.696, 'psi', 70, '°F');

// In these units reference states are stated. Bar is not among them: standards write 100 kPa.
const TEMPERATURE_SPELLINGS: readonly TemperatureUnit[] = ['°C', '°F', 'K'];
const PRESSURE_SPELLINGS: readonly PressureUnit[] = ['kPa', 'psi', 'mmHg', 'inHg', 'kgf/cm2'];

/**
 * The text of a gas volume, with its reference state: without it the number says nothing. The volume is rounded as by
 * {@link write}. The reference state is not rounded, and stands in the unit that takes the fewest digits: so 60 °F stays
 * 60 °F, and 0 °C stays 0 °C.
 *
 * @throws {@link Fault} `wrong kind`; otherwise as {@link write}
 * @example
 * ```ts
 * const [n, as] = [amount(1.65, 'mol'), { step: 0.001, unit: 'm3' }] as const;
 * writeNormalVolume(normalVolume(n, nitrogen, normalConditions), as); // => '0.037 m3 at 0 °C and 101.325 kPa absolute'
 * writeNormalVolume(normalVolume(n, nitrogen, reference60F), as); // => '0.039 m3 at 60 °F and 14.696 psi absolute'
 * ```
 */
export function writeNormalVolume(
  volume: NormalVolume,
  as: Division<VolumeUnit> & { readonly toward?: Toward },
): string {
  need('normal volume', volume, 'volume');
  const { pressure, temperature } = volume.at;
  const state = `${shortest(temperature, TEMPERATURE_SPELLINGS)} and ${shortest(pressure, PRESSURE_SPELLINGS)} absolute`;
  return `${write(volumeOf(volume.cubicMetres), as)} at ${state}`;
}

/** A level in the unit that takes the fewest digits; the earlier one of two that take as many. */
function shortest<Q extends AbsolutePressure | Temperature>(level: Q, units: readonly UnitOf<Q>[]): string {
  const texts = units.map((unit) => `${valueIn(level, unit)} ${unit}`);
  const digits = (text: string): number => text.indexOf(' ');
  return texts.reduce((best, text) => (digits(text) < digits(best) ? text : best));
}
