import { fail, quote } from '../basis/fault.js';
import { beyondDouble, notAStep, stepTooFine, unknownWord } from '../basis/problem.js';
import { decimalOf, decimalText, scaled, times, type Scale } from './decimal.js';
import {
  absoluteOf,
  amountOf,
  gaugeOf,
  isChecked,
  massOf,
  pressureDifferenceOf,
  temperatureDifferenceOf,
  temperatureOf,
  volumeOf,
  wrongKind,
  type Checked,
  type Kind,
  type Quantity,
  type QuantityOf,
  type SeveralKinds,
} from './kind.js';
import {
  AMOUNT,
  MASS,
  PRESSURE,
  scaleOf,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  VOLUME,
  type AmountUnit,
  type MassUnit,
  type PressureUnit,
  type TemperatureUnit,
  type VolumeUnit,
} from './unit.js';

/** The units in which a kind of quantity is given and written. */
export type UnitOf<Q extends Quantity> = [Q] extends [{ readonly pascals: number }]
  ? PressureUnit
  : [Q] extends [{ readonly kelvins: number }]
    ? TemperatureUnit
    : [Q] extends [{ readonly cubicMetres: number }]
      ? VolumeUnit
      : [Q] extends [{ readonly moles: number }]
        ? AmountUnit
        : [Q] extends [{ readonly kilograms: number }]
          ? MassUnit
          : SeveralKinds & string;

/** A division of a scale to round to: the smallest one of a gauge, or the last decimal of a text. */
export interface Division<U extends string = string> {
  /** Size of the division in `unit`: 1, 0.5, 0.1. Greater than zero; the number means the decimal it prints as. */
  readonly step: number;
  readonly unit: U;
}

/** Where a value between two steps goes. There is no half-up: it would favour one side of a limit. */
export type Toward = 'nearest even' | 'up' | 'down';

/** How to round: to which step, and to which side. `up` is towards plus infinity, `down` towards minus infinity. */
export interface Rounding<U extends string = string> extends Division<U> {
  readonly toward: Toward;
}

interface Form<Q extends Quantity> {
  readonly units: Readonly<Record<UnitOf<Q>, Scale>>;
  /** The word that says the basis in a text; none where the kind has no second basis to be mistaken for. */
  readonly word: '' | 'gauge' | 'absolute' | 'difference';
  /** Name of the one field that holds the SI value. */
  readonly field: Exclude<keyof Q & string, keyof Checked<string>>;
  readonly si: (quantity: Q) => number;
  readonly of: (si: number, path?: string, given?: number, unit?: string) => Q;
}

export const FORM: { readonly [K in Kind]: Form<QuantityOf<K>> } = {
  'gauge pressure': { units: PRESSURE, word: 'gauge', field: 'pascals', si: (q) => q.pascals, of: gaugeOf },
  'absolute pressure': { units: PRESSURE, word: 'absolute', field: 'pascals', si: (q) => q.pascals, of: absoluteOf },
  'pressure difference': {
    units: PRESSURE,
    word: 'difference',
    field: 'pascals',
    si: (q) => q.pascals,
    of: pressureDifferenceOf,
  },
  temperature: { units: TEMPERATURE, word: '', field: 'kelvins', si: (q) => q.kelvins, of: temperatureOf },
  'temperature difference': {
    units: TEMPERATURE_DIFFERENCE,
    word: 'difference',
    field: 'kelvins',
    si: (q) => q.kelvins,
    of: temperatureDifferenceOf,
  },
  volume: { units: VOLUME, word: '', field: 'cubicMetres', si: (q) => q.cubicMetres, of: volumeOf },
  'amount of substance': { units: AMOUNT, word: '', field: 'moles', si: (q) => q.moles, of: amountOf },
  mass: { units: MASS, word: '', field: 'kilograms', si: (q) => q.kilograms, of: massOf },
};

/** The form of a checked quantity's kind; anything else is refused. */
export function formOf<Q extends Quantity>(quantity: Q, path: string): Form<Q> {
  const kind: unknown = quantity?.kind;
  if (typeof kind !== 'string' || !Object.hasOwn(FORM, kind) || !isChecked(quantity, kind)) {
    return wrongKind('quantity', quantity, path);
  }
  return FORM[kind as keyof typeof FORM] as unknown as Form<Q>;
}

/** A whole number of steps, as a value and as its text. */
export interface Steps {
  /** SI value of the step's multiple, through the numeric door: the bits that a reading on this mark has. */
  readonly si: number;
  /** The multiple in the step's unit, with the step's decimals: `147.5`. */
  readonly text: string;
}

/** Far below any scale, and far above the smallest doubles, which are no longer close together. */
const FINEST_SI = 1e-300;

/**
 * Rounds an SI value to a multiple of a step, exactly: each candidate goes through the numeric door, which never
 * reverses an order, and is compared with the value as it stands. So a value that lies on a mark stays there whatever
 * the direction, and a limit rounded to marks decides about a reading on a mark just as the limit itself does.
 */
export function roundSI(si: number, step: number, scale: Scale, toward: Toward, offset = 0): Steps {
  checkStep(step);
  const { m, k } = decimalOf(step);
  const mark = (n: number): number => scaled(times(n, m), k, scale) + offset;
  const value = ((si - offset) * scale.den) / scale.num - scale.zero / 100;
  const step_SI = (step * scale.num) / scale.den;
  // In SI terms too, so that the step is seen to be too fine beside 0 °C as well: there the kelvins have no room for it.
  // And below the finest step two marks would be one double, and the search for the nearest would have no end.
  if (!(Math.abs(value) < 1e12 * step && Math.abs(si) < 1e12 * step_SI && step_SI >= FINEST_SI))
    fail(stepTooFine, 'step', String(step));
  let low = Math.floor(value / step);
  while (mark(low) > si) low -= 1;
  while (mark(low + 1) <= si) low += 1;
  const chosen = mark(low) === si || !goesUp() ? low : low + 1;
  return { si: mark(chosen), text: decimalText(times(chosen, m), k) };

  function goesUp(): boolean {
    if (toward !== 'nearest even') return toward === 'up';
    const middle = scaled(times(times(2 * low + 1, m), 5), k + 1, scale) + offset;
    return si === middle ? low % 2 !== 0 : si > middle;
  }
}

/**
 * The parts of a division, each read once; they are checked where they are used. What is not even an object is refused.
 */
export function needDivision<U extends string>(division: Division<U>, path: string): Division<U> {
  if (typeof division !== 'object' || division === null)
    wrongKind('division of a scale: step and unit', division, path);
  const { step, unit } = division;
  return { step, unit };
}

/** Refuses a step that is not a size. */
export function checkStep(step: number, path = 'step'): void {
  if (Number.isFinite(step) && step > 0) return;
  fail(notAStep, path, quote(step));
}

/**
 * A quantity rounded to a step, exactly, with the direction said: limits inwards, what is to be ordered up, what is to be
 * vented down.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy`, `unknown unit`, `not a step`, `step too fine`; `unknown word` for the direction
 * @example
 * ```ts
 * roundTo(gauge(152.61, 'bar'), { step: 0.5, unit: 'bar', toward: 'down' }); // => { kind: 'gauge pressure', pascals: 15250000 }
 * ```
 */
export function roundTo<Q extends Quantity>(quantity: Q, rounding: Rounding<UnitOf<Q>>): Q {
  const form = formOf(quantity, 'quantity');
  return form.of(rounded(quantity, rounding).si);
}

/**
 * A quantity as text: value, unit and basis. The basis is never left out. Rounds to the nearest step, ties to even,
 * unless another direction is asked for.
 *
 * @throws {@link Fault} as {@link roundTo}
 * @example
 * ```ts
 * write(gauge(152.608, 'bar'), { step: 0.1, unit: 'bar' }); // => '152.6 bar gauge'
 * write(temperature(313.15, 'K'), { step: 1, unit: '°C' }); // => '40 °C'
 * ```
 */
export function write<Q extends Quantity>(quantity: Q, as: Division<UnitOf<Q>> & { readonly toward?: Toward }): string {
  const { word } = formOf(quantity, 'quantity');
  const { step, unit } = needDivision(as, 'as');
  const { text } = rounded(quantity, { step, unit, toward: as.toward ?? 'nearest even' });
  return word === '' ? `${text} ${unit}` : `${text} ${unit} ${word}`;
}

/**
 * A quantity on the marks of a step.
 *
 * @param offset_SI by how much the truth lies above what the marks say, as with a gauge that has a correction; the result
 * then has the truth at the mark, and the text of the mark
 */
export function rounded<Q extends Quantity>(quantity: Q, rounding: Rounding<UnitOf<Q>>, offset_SI = 0): Steps {
  const form = formOf(quantity, 'quantity');
  needDivision(rounding, 'rounding');
  const { step, unit, toward } = rounding;
  if (toward !== 'nearest even' && toward !== 'up' && toward !== 'down') {
    fail(unknownWord, 'toward', quote(toward), { words: "'nearest even', 'up' or 'down'" });
  }
  return roundSI(form.si(quantity), step, scaleOf(form.units, unit, 'unit'), toward, offset_SI);
}

/**
 * The bare number of a quantity in a unit, for charts and tables. A quantity made from a number of up to twelve
 * digits gives that number back. For people use {@link write}, which says unit and basis.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy`, `unknown unit`; `beyond double` for what no double holds in that unit
 * @example
 * ```ts
 * valueIn(gauge(2000, 'psi'), 'psi'); // => 2000
 * valueIn(gauge(137.6, 'bar'), 'MPa'); // => 13.76
 * ```
 */
export function valueIn<Q extends Quantity>(quantity: Q, unit: UnitOf<Q>): number {
  const form = formOf(quantity, 'quantity');
  const scale = scaleOf(form.units, unit, 'unit');
  const si = form.si(quantity);
  const near = (si * scale.den) / scale.num - scale.zero / 100;
  if (!Number.isFinite(near)) fail(beyondDouble, 'quantity', `${si} in SI units`, { unit });
  // The short decimal that the door brings to the same bits is what was meant; else the double as computed. Beside the
  // zero of °C or °F the kelvins behind it have no room for twelve digits, but always for ten decimals.
  const besideZero = scale.zero !== 0 && Math.abs(near) < 100;
  const short = Number(besideZero ? near.toFixed(10) : near.toPrecision(12)) + 0;
  const { m, k } = decimalOf(short);
  return scaled(m, k, scale) === si ? short : near;
}

/** The exponent of the largest power of ten that is not above x. */
function exponentOf(x: number): number {
  return Number(x.toExponential().split('e')[1]);
}

/** The largest step of 1, 2 or 5 times a power of ten that is not above x, which is more than zero. */
export function roundStepBelow(x: number): number {
  const exponent = exponentOf(x);
  const [five, two] = [Number(`5e${exponent}`), Number(`2e${exponent}`)];
  return five <= x ? five : two <= x ? two : Number(`1e${exponent}`);
}

/** A step for a number in a sentence: as given, or coarser where the number would have more than twelve digits. */
export function sayable<Q extends Quantity>(quantity: Q, { step, unit }: Division<UnitOf<Q>>): Division<UnitOf<Q>> {
  const size = Math.abs(valueIn(quantity, unit));
  return { step: Math.max(step, Number(`1e${exponentOf(size) - 11}`)), unit };
}

/** A step for numbers in sentences: a tenth of the decade of the given step. */
export function finer<U extends string>({ step, unit }: Division<U>): Division<U> {
  return { step: Number(`1e${exponentOf(step) - 1}`), unit };
}
