import { CheckedValue, need, volumeOf, type AbsolutePressure, type Checked, type Temperature } from './kind.js';
import { absolute } from './pressure.js';
import { temperature } from './temperature.js';

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

/** 0 °C and 101.325 kPa absolute: the normal conditions of DIN 1343. */
export const normalConditions: GasCondition = /* @__PURE__ */ Object.freeze({
  pressure: /* @__PURE__ */ absolute(101.325, 'kPa'),
  temperature: /* @__PURE__ */ temperature(0, '°C'),
});
