import { fail, quote } from '../basis/fault.js';
import { notANumber, textForANumber } from '../basis/problem.js';

/**
 * The one numeric door: a decimal in a unit becomes a double in SI, correctly rounded.
 *
 * A number means the decimal it prints as: 141.3 is 1413/10, not the binary fraction nearest to it. So the number 141.3,
 * the text '141.3' and a cell of a column give the same bits, and 141.3 bar is exactly 14 130 000 Pa, where
 * `141.3 * 1e5` is not for every sixth reading in tenths of a bar.
 */

/** How a unit stands to its SI unit: SI = (value + zero / 100) · num / den, all integers, so exact. */
export interface Scale {
  readonly num: number;
  readonly den: number;
  /** Where the unit's zero lies, in hundredths of the unit: 27315 for °C. */
  readonly zero: number;
}

/** An exact decimal, m / 10^k. */
export interface Decimal {
  readonly m: number | bigint;
  readonly k: number;
}

const EXACT = Number.MAX_SAFE_INTEGER;

/** The decimal that a finite number prints as. */
export function decimalOf(x: number): Decimal {
  // Readings have few digits. Of up to fifteen, only one decimal can lie nearest to this double, so it is the printed one.
  let power = 1;
  for (let k = 0; k <= 9; k += 1) {
    const m = Math.round(x * power);
    if (m / power === x && Math.abs(m) < 1e15) return { m, k };
    power *= 10;
  }
  const [digits = '', exponent = '0'] = String(x).split('e');
  const [whole = '', fraction = ''] = digits.split('.');
  const k = fraction.length - Number(exponent);
  const m = BigInt(whole + fraction);
  return k < 0 ? { m: m * tens(-k), k: 0 } : { m, k };
}

/** A number in a unit, as the nearest double in SI. Anything but a finite number is refused; nothing is coerced. */
export function toSI(x: number, scale: Scale, path = 'value'): number {
  if (!Number.isFinite(x)) fail(typeof x === 'string' ? textForANumber : notANumber, path, quote(x));
  const { m, k } = decimalOf(x);
  return scaled(m, k, scale);
}

/** The decimal m / 10^k in a unit, as the nearest double in SI. */
export function scaled(m: number | bigint, k: number, { num, den, zero }: Scale): number {
  if (typeof m === 'number') {
    // With product and divisor exact, the quotient is rounded once.
    const shifted = zero === 0 ? m : m * 100 + zero * powerOfTen(k);
    const product = shifted * num;
    const divisor = den * powerOfTen(zero === 0 ? k : k + 2);
    if (Math.abs(product) <= EXACT && divisor <= EXACT) return product / divisor;
  }
  const ten_k = tens(k);
  return quotient((BigInt(m) * 100n + BigInt(zero) * ten_k) * BigInt(num), BigInt(den) * ten_k * 100n);
}

function tens(k: number): bigint {
  return BigInt(`1${'0'.repeat(k)}`);
}

function powerOfTen(k: number): number {
  let power = 1;
  for (let i = 0; i < k; i += 1) power *= 10;
  return power;
}

/** n / d as the nearest double (ties to even); exact outside the subnormal range. */
function quotient(n: bigint, d: bigint): number {
  if (n < 0n) return -quotient(-n, d);
  // 62 bits or more of quotient, and the last one stands for "and something more": Number() then rounds correctly.
  const shift = Math.max(0, 66 + bits(d) - bits(n));
  const q = (n << BigInt(shift)) / d;
  const more = q * d === n << BigInt(shift) ? 0n : 1n;
  let result = Number(q | more);
  for (let left = shift; left > 0; left -= 1000) result /= Number(1n << BigInt(Math.min(left, 1000)));
  return result;
}

function bits(n: bigint): number {
  return n.toString(16).length * 4;
}

/** Product of two integers, exact. */
export function times(a: number | bigint, b: number | bigint): number | bigint {
  if (typeof a === 'number' && typeof b === 'number' && Math.abs(a * b) <= EXACT) return a * b;
  return BigInt(a) * BigInt(b);
}

/** m / 10^k as text with exactly k decimals. */
export function decimalText(m: number | bigint, k: number): string {
  const digits = String(m < 0 ? -m : m).padStart(k + 1, '0');
  const text = k === 0 ? digits : `${digits.slice(0, -k)}.${digits.slice(-k)}`;
  return m < 0 ? `-${text}` : text;
}
