import { fail, quote } from '../basis/fault.js';
import { gives } from '../basis/has.js';
import {
  absoluteForGauge,
  belowAbsoluteZero,
  belowVacuumAbsolute,
  beyondDouble,
  gaugeForAbsolute,
  negative,
  notANumber,
  operatorOnQuantity,
  uncheckedCopy,
  uncheckedSpecification,
  wrongKind as ofWrongKind,
} from '../basis/problem.js';

/**
 * What every quantity has. `~isochore` is a getter on a shared prototype: it proves at every door that a value was
 * checked when it was made. A copy by spread, JSON, structuredClone or postMessage loses it and is refused until
 * {@link readmit} has checked it again. It is a string key so that the ESM and CommonJS types unify.
 */
export interface Checked<K extends string> {
  readonly kind: K;
  readonly '~isochore': K;
}

/** Pressure above the ambient pressure of its place and hour: what a gauge shows. A point on a scale: it has no ratio. */
export interface GaugePressure extends Checked<'gauge pressure'> {
  readonly pascals: number;
}
/** Pressure above vacuum. Never negative. */
export interface AbsolutePressure extends Checked<'absolute pressure'> {
  readonly pascals: number;
}
/** Difference of two pressures of one basis: a tolerance, a margin, an allowance. Signed. */
export interface PressureDifference extends Checked<'pressure difference'> {
  readonly pascals: number;
}
/** Thermodynamic temperature; °C, °F and K are three spellings of it. Never below 0 K. */
export interface Temperature extends Checked<'temperature'> {
  readonly kelvins: number;
}
/** Difference of two temperatures. Signed. */
export interface TemperatureDifference extends Checked<'temperature difference'> {
  readonly kelvins: number;
}
/** Volume of a space. Never negative. */
export interface Volume extends Checked<'volume'> {
  readonly cubicMetres: number;
}
/** Amount of substance. Never negative. */
export interface Amount extends Checked<'amount of substance'> {
  readonly moles: number;
}
/** Mass. Never negative. */
export interface Mass extends Checked<'mass'> {
  readonly kilograms: number;
}

/** Every kind of quantity that has a unit of its own. */
export type Quantity =
  GaugePressure | AbsolutePressure | PressureDifference | Temperature | TemperatureDifference | Volume | Amount | Mass;
/** The name of a kind: `gauge pressure`, `temperature`, … */
export type Kind = Quantity['kind'];
/** The quantity of a kind. */
export type QuantityOf<K extends Kind> = Extract<Quantity, { kind: K }>;

/**
 * What the compiler names where a quantity may be of several kinds, and what is asked of it is different in each, or
 * refused: no value is of this type. The way on is to narrow by `kind`.
 */
export interface SeveralKinds {
  readonly 'one kind alone: narrow by kind first': never;
}

export abstract class CheckedValue<K extends string> {
  readonly kind: K;

  constructor(kind: K) {
    this.kind = kind;
  }

  get '~isochore'(): K {
    return this.kind;
  }

  // Not even a text: sort() without compare puts a list in the order of its texts, 10 bar before 9, and nothing would
  // show. The engine asks for that text as it asks for the one in a template.
  [Symbol.toPrimitive](hint: string): never {
    const use = hint === 'string' ? 'made a text by sort(), join(), String() or `${}`' : 'used with + - * / < or >';
    return fail(operatorOnQuantity, '', `${article(this.kind)} ${use}`);
  }
}

// One small class a dimension: a read site then sees few shapes, and the console prints a telling name.
class Pressure<K extends string> extends CheckedValue<K> {
  readonly pascals: number;
  constructor(kind: K, pascals: number) {
    super(kind);
    this.pascals = pascals;
    Object.freeze(this);
  }
}
class Kelvins<K extends string> extends CheckedValue<K> {
  readonly kelvins: number;
  constructor(kind: K, kelvins: number) {
    super(kind);
    this.kelvins = kelvins;
    Object.freeze(this);
  }
}
class CubicMetres<K extends string> extends CheckedValue<K> {
  readonly cubicMetres: number;
  constructor(kind: K, cubicMetres: number) {
    super(kind);
    this.cubicMetres = cubicMetres;
    Object.freeze(this);
  }
}
class Moles<K extends string> extends CheckedValue<K> {
  readonly moles: number;
  constructor(kind: K, moles: number) {
    super(kind);
    this.moles = moles;
    Object.freeze(this);
  }
}
class Kilograms<K extends string> extends CheckedValue<K> {
  readonly kilograms: number;
  constructor(kind: K, kilograms: number) {
    super(kind);
    this.kilograms = kilograms;
    Object.freeze(this);
  }
}

// The doors from a bare SI number to a quantity: every quantity in a program has passed through one of them.
// `given` and `unit` are for the message only: the value as its caller wrote it.

export function gaugeOf(pascals: number, path = '', given = pascals, unit = 'Pa'): GaugePressure {
  return new Pressure('gauge pressure', finite(pascals, path, given, unit));
}
export function absoluteOf(pascals: number, path = '', given = pascals, unit = 'Pa'): AbsolutePressure {
  return new Pressure('absolute pressure', notBelowZero(pascals, belowVacuumAbsolute, path, given, unit));
}
export function pressureDifferenceOf(pascals: number, path = '', given = pascals, unit = 'Pa'): PressureDifference {
  return new Pressure('pressure difference', finite(pascals, path, given, unit));
}
export function temperatureOf(kelvins: number, path = '', given = kelvins, unit = 'K'): Temperature {
  return new Kelvins('temperature', notBelowZero(kelvins, belowAbsoluteZero, path, given, unit));
}
export function temperatureDifferenceOf(
  kelvins: number,
  path = '',
  given = kelvins,
  unit = 'K',
): TemperatureDifference {
  return new Kelvins('temperature difference', finite(kelvins, path, given, unit));
}
export function volumeOf(cubicMetres: number, path = '', given = cubicMetres, unit = 'm3'): Volume {
  return new CubicMetres('volume', notBelowZero(cubicMetres, negative, path, given, unit));
}
export function amountOf(moles: number, path = '', given = moles, unit = 'mol'): Amount {
  return new Moles('amount of substance', notBelowZero(moles, negative, path, given, unit));
}
export function massOf(kilograms: number, path = '', given = kilograms, unit = 'kg'): Mass {
  return new Kilograms('mass', notBelowZero(kilograms, negative, path, given, unit));
}

function finite(si: number, path: string, given: number, unit: string): number {
  if (Number.isFinite(si)) return si + 0; // −0 becomes 0
  const found = `${given} ${unit}`;
  return Number.isFinite(given) ? fail(beyondDouble, path, found, { unit: 'SI units' }) : fail(notANumber, path, found);
}

type Floor = typeof belowVacuumAbsolute | typeof belowAbsoluteZero | typeof negative;

function notBelowZero(si: number, floor: Floor, path: string, given: number, unit: string): number {
  const value = finite(si, path, given, unit);
  return value >= 0 ? value : fail(floor, path, `${given} ${unit}`);
}

/** Refuses everything but a checked quantity of the kind wanted; the message names both kinds and the way across. */
export function need<K extends string>(kind: K, value: Checked<K>, path: string): void {
  if (isChecked(value, kind)) return;
  wrongKind(kind, value, path);
}

/**
 * Whether a value is a checked one of this kind: by the getter on its prototype, which no copy and no JSON carries; by
 * being frozen, which an object that hostile JSON gave such a prototype is not; and by a kind of its own, which an object
 * that only inherits from a checked one has not, nor the size that it would show.
 */
export function isChecked(value: unknown, kind: string): boolean {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.isFrozen(value) &&
    Object.hasOwn(value, 'kind') &&
    !Object.hasOwn(value, '~isochore') &&
    (value as Partial<Checked<string>>)['~isochore'] === kind
  );
}

/** Reports a value of another kind than wanted: by what it is, and by the way from there to what is wanted. */
export function wrongKind(wanted: string, value: unknown, path: string): never {
  const found = named(value);
  const kind = kindOf(value);
  if (kind !== undefined && !isChecked(value, kind)) {
    if (wanted === kind && kind === 'specification') fail(uncheckedSpecification, path, found);
    if (!NOT_READMITTED.includes(kind)) fail(uncheckedCopy, path, found, { kind: article(wanted) });
  }
  if (wanted === 'absolute pressure' && kind === 'gauge pressure') fail(gaugeForAbsolute, path, found);
  if (wanted === 'gauge pressure' && kind === 'absolute pressure') fail(absoluteForGauge, path, found);
  return fail(ofWrongKind, path, found, { kind: article(wanted), maker: makerOf(wanted) });
}

/** Kinds of which no copy is brought back: a specification is made again, and the models are the library's. */
const NOT_READMITTED: readonly string[] = ['specification', 'gas model'];

/** What kind of thing a value is, in words. */
function named(value: unknown): string {
  if (typeof value === 'number') return `the bare number ${value}`;
  const kind = kindOf(value);
  if (kind === undefined) return quote(value);
  return isChecked(value, kind) ? article(kind) : `an unchecked copy of ${article(kind)}`;
}

/** The kind that a value is of, or says to be: one of those that carry it. */
function kindOf(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null || !gives(value, 'kind')) return undefined;
  const { kind } = value; // once, as it may be another the next time
  if (typeof kind !== 'string') return undefined;
  return Object.hasOwn(MAKER, kind) || isChecked(value, kind) ? kind : undefined;
}

/** A kind with its article. */
export function article(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

const MAKER: Readonly<Record<string, string>> = {
  'gauge pressure': 'gauge(value, unit)',
  'absolute pressure': 'absolute(value, unit)',
  'pressure difference': 'pressureDifference(value, unit)',
  temperature: 'temperature(value, unit)',
  'temperature difference': 'temperatureDifference(value, unit)',
  volume: 'volume(value, unit)',
  'amount of substance': 'amount(value, unit)',
  mass: 'mass(value, unit)',
  'normal volume': 'normalVolume(amount, model, at)',
  specification: 'specification(given)',
  'gas model': 'nitrogen, or another model of this library: itself, not a copy',
};

/** What gives a thing that is no quantity, or one of several kinds. */
const GIVER: Readonly<Record<string, string>> = {
  quantity: 'the function of its kind, such as gauge(value, unit)',
  'gauge pressure, absolute pressure or temperature':
    'gauge(value, unit), absolute(value, unit) or temperature(value, unit)',
  'absolute pressure or temperature': 'absolute(value, unit) or temperature(value, unit)',
  'division of a scale: step and unit': "an object such as { step: 1, unit: 'bar' }",
};

function makerOf(wanted: string): string {
  for (const known of [MAKER, GIVER]) {
    const maker = Object.hasOwn(known, wanted) ? known[wanted] : undefined;
    if (maker !== undefined) return maker;
  }
  return 'what the documentation of this argument names';
}
