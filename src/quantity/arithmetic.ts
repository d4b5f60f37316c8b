import { fail } from '../basis/fault.js';
import { beyondDouble, ratioToZero } from '../basis/problem.js';
import {
  article,
  isChecked,
  pressureDifferenceOf,
  temperatureDifferenceOf,
  wrongKind,
  type AbsolutePressure,
  type GaugePressure,
  type PressureDifference,
  type Quantity,
  type SeveralKinds,
  type Temperature,
  type TemperatureDifference,
} from './kind.js';
import { formOf } from './step.js';

/** Kinds with a level on a scale: two of one kind have a difference and an order. */
export type Levelled = GaugePressure | AbsolutePressure | Temperature;
/** The kind of the difference of two levels. Where they may be of several kinds: the one that all of these have, if any. */
export type DifferenceOf<L extends Levelled> = [L] extends [Temperature]
  ? TemperatureDifference
  : [L] extends [GaugePressure | AbsolutePressure]
    ? PressureDifference
    : SeveralKinds;
/** What has a difference, an order or a ratio with a level: one of the same kind. Two of a union may be of two kinds. */
export type SameKind<L extends Levelled> = [L] extends [GaugePressure] | [AbsolutePressure] | [Temperature]
  ? L
  : SeveralKinds;

/**
 * How far `a` lies above `b`, both of one kind.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`
 * @example
 * ```ts
 * difference(gauge(137.6, 'bar'), gauge(148, 'bar')); // => { kind: 'pressure difference', pascals: -1040000 }
 * ```
 */
export function difference<L extends Levelled>(a: L, b: SameKind<L>): DifferenceOf<L> {
  const by = level(a, 'a') - same(a, b);
  const made = a.kind === 'temperature' ? temperatureDifferenceOf(by) : pressureDifferenceOf(by);
  return made as DifferenceOf<L>;
}

/**
 * A level moved by a difference.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy`; `below vacuum`, `below absolute zero`, `beyond double`
 * @example
 * ```ts
 * shift(temperature(40, '°C'), temperatureDifference(-20, 'K')); // => { kind: 'temperature', kelvins: 293.15 }
 * ```
 */
export function shift<L extends Levelled>(from: L, by: DifferenceOf<L>): L {
  const wanted = from?.kind === 'temperature' ? 'temperature difference' : 'pressure difference';
  const si = level(from, 'from');
  if (!isChecked(by, wanted)) wrongKind(wanted, by, 'by');
  return formOf(from, 'from').of(si + siOf(by, 'by'));
}

/**
 * The order of two levels of one kind: −1 if `a` is lower, 1 if it is higher, 0 if they are equal.
 *
 * Lists of quantities are sorted with it. `sort()` without it is refused: JavaScript would put them in the order of their
 * texts, 100 bar before 90 bar.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`
 * @example
 * ```ts
 * compare(temperature(0, '°C'), temperature(32, '°F')); // => 0
 * const readings = [gauge(100, 'bar'), gauge(90, 'bar')];
 * readings.sort(compare).map((one) => valueIn(one, 'bar')); // => [90, 100]
 * ```
 */
export function compare<L extends Levelled>(a: L, b: SameKind<L>): -1 | 0 | 1 {
  const by = level(a, 'a') - same(a, b);
  return by < 0 ? -1 : by > 0 ? 1 : 0;
}

/**
 * The ratio a / b of two absolute pressures or two temperatures. Gauge pressures have none: their zero is the weather.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`; `ratio to zero` if `b` is zero; `beyond double`
 * @example
 * ```ts
 * ratio(absolute(3, 'bar'), absolute(2, 'bar')); // => 1.5
 * ```
 */
export function ratio<L extends AbsolutePressure | Temperature>(a: L, b: SameKind<L>): number {
  if (isChecked(a, 'gauge pressure')) wrongKind('absolute pressure', a, 'a');
  if (!isChecked(a, 'absolute pressure') && !isChecked(a, 'temperature'))
    wrongKind('absolute pressure or temperature', a, 'a');
  const over = same(a, b);
  if (over === 0) fail(ratioToZero, 'b', `${article(a.kind)} of zero`);
  const by = level(a, 'a') / over;
  return Number.isFinite(by) ? by : fail(beyondDouble, 'b', `${over} in SI units`, { unit: 'the ratio too' });
}

function level(value: unknown, path: string): number {
  if (
    !isChecked(value, 'gauge pressure') &&
    !isChecked(value, 'absolute pressure') &&
    !isChecked(value, 'temperature')
  ) {
    wrongKind('gauge pressure, absolute pressure or temperature', value, path);
  }
  return siOf(value, path);
}

function same(a: Levelled, b: unknown): number {
  level(a, 'a');
  if (!isChecked(b, a.kind)) wrongKind(a.kind, b, 'b');
  return level(b, 'b');
}

function siOf(value: unknown, path: string): number {
  const quantity = value as Quantity;
  return formOf(quantity, path).si(quantity);
}
