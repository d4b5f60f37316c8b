import { toSI } from './decimal.js';
import { temperatureDifferenceOf, temperatureOf, type Temperature, type TemperatureDifference } from './kind.js';
import { scaleOf, TEMPERATURE, TEMPERATURE_DIFFERENCE, type TemperatureUnit } from './unit.js';

/**
 * A temperature. °C, °F and K are spellings of one thing; none below 0 K.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`, `below absolute zero`
 * @example
 * ```ts
 * temperature(40, '°C'); // => { kind: 'temperature', kelvins: 313.15 }
 * ```
 */
export function temperature(value: number, unit: TemperatureUnit): Temperature {
  return temperatureOf(toSI(value, scaleOf(TEMPERATURE, unit, 'unit')), 'value', value, unit);
}

/**
 * A difference of two temperatures. Signed; 1 °C is 1 K and 1 °F is 5/9 K.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`
 * @example
 * ```ts
 * temperatureDifference(20, 'K'); // => { kind: 'temperature difference', kelvins: 20 }
 * ```
 */
export function temperatureDifference(value: number, unit: TemperatureUnit): TemperatureDifference {
  return temperatureDifferenceOf(toSI(value, scaleOf(TEMPERATURE_DIFFERENCE, unit, 'unit')), 'value', value, unit);
}
