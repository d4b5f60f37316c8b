// Numbers as they are printed. Each is printed once: where it stands again, in a later step or in another unit, its digits
// are the same, so that a reader who puts the printed numbers into the printed formula gets the printed result.
import { decimalOf, scaled, type Scale } from '../../quantity/decimal.js';
import { MASS, PRESSURE, TEMPERATURE, TEMPERATURE_DIFFERENCE, VOLUME } from '../../quantity/unit.js';
import type { MassUnit, PressureUnit, TemperatureUnit, VolumeUnit } from '../../quantity/unit.js';
import type { NamedQuantity } from './derivation.js';
import type { Meaning } from './symbol.js';

/** The units in which a reader wants to read. */
export interface ReaderUnits {
  readonly pressure: PressureUnit;
  readonly temperature: TemperatureUnit;
  readonly volume: VolumeUnit;
  readonly mass: MassUnit;
}

/** A printed number. */
export interface Figure {
  /** A decimal as JavaScript writes it: `142.013`, `1.5e-7`. */
  readonly text: string;
  readonly unit: string;
  /** Half of its last place, in its unit; 0 for what is exact as printed. */
  readonly half: number;
}

/** A dimension that has units to choose from. */
export type Dimension = keyof ReaderUnits;

export function dimensionOf(meaning: Meaning): Dimension | undefined {
  if (typeof meaning === 'object') return undefined;
  if (meaning === 'volume' || meaning === 'mass') return meaning;
  return meaning === 'temperature' || meaning === 'temperature difference' ? 'temperature' : 'pressure';
}

const SI = { pressure: 'Pa', temperature: 'K', volume: 'm3', mass: 'kg' } as const;

/** The scale of a unit; undefined for a quantity whose unit is fixed. */
export function scaleIn(units: ReaderUnits, meaning: Meaning): Scale | undefined {
  switch (dimensionOf(meaning)) {
    case 'pressure':
      return PRESSURE[units.pressure];
    case 'temperature':
      return meaning === 'temperature' ? TEMPERATURE[units.temperature] : TEMPERATURE_DIFFERENCE[units.temperature];
    case 'volume':
      return VOLUME[units.volume];
    case 'mass':
      return MASS[units.mass];
    case undefined:
      return undefined;
  }
}

export const SI_UNITS: ReaderUnits = SI;

/** Up to so many digits a decimal counts as one that somebody wrote. */
const MOST_WRITTEN = 9;
const PRECISE = 12;
/** What is left of a difference of equal numbers is rounding. */
const NOISE = 1e-9;

export class Figures {
  readonly #printed = new Map<string, Figure>();
  /** Whether a result has no digit left, because it is the small difference of rounded numbers. */
  tooCoarse = false;

  readonly units: ReaderUnits;
  /** Significant digits of what is no short decimal; `exact` for all that a double has, in SI units. */
  readonly digits: number | 'exact';

  constructor(units: ReaderUnits, digits: number | 'exact') {
    this.units = units;
    this.digits = digits;
  }

  /** A quantity that goes into a step. */
  given(named: NamedQuantity, inUnits: ReaderUnits): Figure {
    return this.#inUnits(named, inUnits, 0, true);
  }

  /**
   * The result of a step.
   *
   * @param missed by how much a reader may miss it with the printed numbers, in SI units
   * @param size of what it is a sum of: far below that it is nothing but rounding
   */
  result(named: NamedQuantity, inUnits: ReaderUnits, missed: number, size = 0): Figure {
    const figure = this.#inUnits(named, inUnits, missed, false);
    const isLost = figure.half !== 0 && Math.abs(Number(figure.text)) < 20 * figure.half;
    if (isLost && missed > 0 && Math.abs(named.value) > NOISE * size) this.tooCoarse = true;
    return figure;
  }

  /** What is printed in one unit already, in another. */
  restated(named: NamedQuantity, printed: Figure, from: ReaderUnits, to: ReaderUnits): Figure {
    const unit = unitIn(to, named);
    const key = keyOf(named, unit);
    const known = this.#printed.get(key);
    if (known !== undefined) return known;
    const { meaning } = named;
    const figure = this.#converted(named, printed, scaleIn(from, meaning), scaleIn(to, meaning), unit);
    this.#printed.set(key, figure);
    return figure;
  }

  #inUnits(named: NamedQuantity, inUnits: ReaderUnits, missed: number, isGiven: boolean): Figure {
    if (this.digits === 'exact') return { text: String(named.value), unit: named.unit, half: 0 };
    const scale = scaleIn(inUnits, named.meaning);
    const unit = unitIn(inUnits, named);
    const key = keyOf(named, unit);
    const known = this.#printed.get(key);
    if (known !== undefined) return known;
    const own = scaleIn(this.units, named.meaning);
    const figure =
      isGiven && scale !== own
        ? this.#converted(named, this.#inUnits(named, this.units, 0, true), own, scale, unit)
        : this.#rounded(named, scale, unit, missed);
    this.#printed.set(key, figure);
    return figure;
  }

  /** Of what is printed in the reader's unit already, with no digit more. */
  #converted(
    named: NamedQuantity,
    from: Figure,
    own: Scale | undefined,
    scale: Scale | undefined,
    unit: string,
  ): Figure {
    const value = inUnit(named.value, scale);
    const written = Number(value.toPrecision(PRECISE));
    if (from.half === 0) {
      if (digitsOf(written) <= PRECISE - 2 && isExactly(written, named.value, scale))
        return { text: String(written), unit, half: 0 };
      return placed(value, exponentOf(value) - 8, unit);
    }
    const half = (from.half * factorOf(own)) / factorOf(scale);
    return placed(value, exponentOf(half * 2 * ALMOST), unit);
  }

  #rounded(named: NamedQuantity, scale: Scale | undefined, unit: string, missed: number): Figure {
    const value = inUnit(named.value, scale);
    if (value === 0 && missed === 0) return { text: '0', unit, half: 0 };
    const written = Number(value.toPrecision(PRECISE));
    if (missed === 0 && digitsOf(written) <= MOST_WRITTEN && isExactly(written, named.value, scale))
      return { text: String(written), unit, half: 0 };
    const digits = this.digits as number;
    const finest = exponentOf(value) - digits + 1;
    // Beside the zero of °C or °F the kelvins behind it have no more places than elsewhere.
    const ofKind = named.meaning === 'temperature' ? Math.max(finest, 3 - digits) : finest;
    const reached = missed === 0 ? ofKind : Math.max(ofKind, -exponentOf((factorOf(scale) / missed) * ALMOST));
    return placed(value, reached, unit);
  }
}

function keyOf({ value, meaning }: NamedQuantity, unit: string): string {
  return `${value} ${typeof meaning === 'object' ? '' : meaning} ${unit}`;
}

export function unitIn(units: ReaderUnits, { meaning, unit }: NamedQuantity): string {
  const dimension = dimensionOf(meaning);
  if (dimension === undefined) return unit;
  // A difference of temperatures is said in kelvins: 2 °C might be taken for a temperature.
  if (meaning === 'temperature difference' && units.temperature === '°C') return 'K';
  return units[dimension];
}

function factorOf(scale: Scale | undefined): number {
  return scale === undefined ? 1 : scale.num / scale.den;
}

function inUnit(si: number, scale: Scale | undefined): number {
  return scale === undefined ? si : (si * scale.den) / scale.num - scale.zero / 100;
}

/** Half of a last place, in SI units. */
export function halfInSI(figure: Figure, scale: Scale | undefined): number {
  return figure.half * factorOf(scale);
}

function isExactly(decimal: number, si: number, scale: Scale | undefined): boolean {
  if (scale === undefined) return decimal === si;
  const { m, k } = decimalOf(decimal);
  return scaled(m, k, scale) === si;
}

/** Rounded to a place: −2 is a hundredth. */
function placed(value: number, exponent: number, unit: string): Figure {
  const half = Number(`5e${exponent - 1}`);
  // Far below one the places are written as a power of ten.
  if (exponent < -9) {
    const digits = Math.min(Math.max(exponentOf(value) - exponent, 0), 20);
    return { text: value.toExponential(digits), unit, half };
  }
  if (exponent <= 0) return { text: withoutMinusZero(value.toFixed(-exponent)), unit, half };
  const place = Number(`1e${exponent}`);
  return { text: withoutMinusZero(String(Math.round(value / place) * place)), unit, half };
}

function withoutMinusZero(text: string): string {
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** More than a power of ten that misses its next one by rounding has to be raised by. */
const ALMOST = 1 + 2e-9;

/** The exponent of the first digit. */
function exponentOf(x: number): number {
  return x === 0 ? 0 : Number(x.toExponential().split('e')[1]);
}

function digitsOf(x: number): number {
  return (x.toExponential().split('e')[0] ?? '').replace(/[-.]/g, '').length;
}
