import { Decimal } from 'decimal.js';
import type { Kind } from 'isochore';
import { DEFINITIONS } from './definitions.js';

/** Decimals of 400 digits: the largest double plus the smallest offset still fits, so every sum below is exact. */
export const Exact = Decimal.clone({ precision: 400, defaults: true });

/** The SI value of a decimal text in a unit, by the unit's definition; exact but for the last of 400 digits. */
export function exactSI(kind: Kind, unit: string, text: string): Decimal {
  const definition = DEFINITIONS[kind][unit];
  if (definition === undefined) throw new Error(`no definition of ${unit} for a ${kind}`);
  const { factor, zero } = definition;
  return new Exact(text)
    .plus(new Exact(zero.n.toString()).div(zero.d.toString()))
    .times(factor.n.toString())
    .div(factor.d.toString());
}

/** A double as the binary fraction that it is; toFixed writes 100 decimals exactly, enough from 1e-14 up to 1e21. */
export const binary = (x: number): Decimal => new Exact(x.toFixed(100));

/** The distance from a double to the next one further from zero. */
export function ulp(x: number): number {
  return neighbour(Math.abs(x), 1) - Math.abs(x);
}

/** The double that lies `steps` places above x, or below it if negative. */
export function neighbour(x: number, steps: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const place = mirrored(view.getBigInt64(0)) + BigInt(steps);
  view.setBigInt64(0, mirrored(place));
  return view.getFloat64(0);
}

/** The bits of negative doubles run against their order: turned round, all doubles have consecutive places. */
const mirrored = (bits: bigint): bigint => (bits < 0n ? -(2n ** 63n) - bits : bits);
