import { fail, quote } from '../basis/fault.js';

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

export abstract class CheckedValue<K extends string> {
  readonly kind: K;

  constructor(kind: K) {
    this.kind = kind;
  }

  get '~isochore'(): K {
    return this.kind;
  }

  [Symbol.toPrimitive](hint: string): string {
    if (hint === 'string') return JSON.stringify(this);
    return fail({
      code: 'wrong kind',
      path: '',
      found: `a ${this.kind} used with + - * / < or >`,
      wanted: 'a function that knows the kind',
      remedy: 'use difference(), shift(), compare() or ratio(); valueIn(quantity, unit) gives a bare number',
    });
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
  return new Pressure('absolute pressure', notBelowZero(pascals, 'below vacuum', path, given, unit));
}
export function pressureDifferenceOf(pascals: number, path = '', given = pascals, unit = 'Pa'): PressureDifference {
  return new Pressure('pressure difference', finite(pascals, path, given, unit));
}
export function temperatureOf(kelvins: number, path = '', given = kelvins, unit = 'K'): Temperature {
  return new Kelvins('temperature', notBelowZero(kelvins, 'below absolute zero', path, given, unit));
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
  return new CubicMetres('volume', notBelowZero(cubicMetres, 'negative', path, given, unit));
}
export function amountOf(moles: number, path = '', given = moles, unit = 'mol'): Amount {
  return new Moles('amount of substance', notBelowZero(moles, 'negative', path, given, unit));
}
export function massOf(kilograms: number, path = '', given = kilograms, unit = 'kg'): Mass {
  return new Kilograms('mass', notBelowZero(kilograms, 'negative', path, given, unit));
}

function finite(si: number, path: string, given: number, unit: string): number {
  if (Number.isFinite(si)) return si + 0; // −0 becomes 0
  return fail({
    code: 'not a number',
    path,
    found: `${given} ${unit}`,
    wanted: 'a finite value',
    remedy: 'give the value as read; if there is none, leave the reading out',
  });
}

const FLOOR = {
  'below vacuum': {
    wanted: 'at least 0 Pa absolute',
    remedy: 'an absolute pressure counts from vacuum; if this is a gauge pressure, say so',
  },
  'below absolute zero': { wanted: 'at least -273.15 °C (0 K)', remedy: 'check the sign and the unit: °C, K or °F' },
  negative: { wanted: 'zero or more', remedy: 'check the sign' },
} as const;

function notBelowZero(si: number, code: keyof typeof FLOOR, path: string, given: number, unit: string): number {
  const value = finite(si, path, given, unit);
  if (value >= 0) return value;
  return fail({ code, path, found: `${given} ${unit}`, ...FLOOR[code] });
}

/** Refuses everything but a checked quantity of the kind wanted; the message names both kinds and the way across. */
export function need<K extends string>(kind: K, value: Checked<K>, path: string): void {
  if (isChecked(value, kind)) return;
  wrongKind(kind, value, path);
}

/**
 * Whether a value is a checked one of this kind: by the getter on its prototype, which no copy and no JSON carries, and
 * by being frozen, which an object that hostile JSON gave such a prototype is not.
 */
export function isChecked(value: unknown, kind: string): boolean {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.isFrozen(value) &&
    !Object.hasOwn(value, '~isochore') &&
    (value as Partial<Checked<string>>)['~isochore'] === kind
  );
}

/** Reports a value of another kind than wanted. */
export function wrongKind(wanted: string, value: unknown, path: string): never {
  return fail({
    code: 'wrong kind',
    path,
    found: named(value),
    wanted: article(wanted),
    remedy: remedyFor(wanted, value),
  });
}

/** What kind of thing a value is, in words. */
function named(value: unknown): string {
  if (typeof value !== 'object' || value === null)
    return typeof value === 'number' ? `the bare number ${value}` : quote(value);
  const kind = 'kind' in value && typeof value.kind === 'string' ? value.kind : '';
  if (isChecked(value, kind)) return article(kind);
  return Object.hasOwn(MAKER, kind) ? `an unchecked copy of ${article(kind)}` : quote(value);
}

function article(noun: string): string {
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
  'division of a scale: step and unit': "an object such as { step: 1, unit: 'bar' }",
};

function remedyFor(wanted: string, value: unknown): string {
  const maker = Object.hasOwn(MAKER, wanted) ? MAKER[wanted] : undefined;
  const make = maker === undefined ? 'see the documentation of this argument' : `make one with ${maker}`;
  if (typeof value !== 'object' || value === null || !('kind' in value) || typeof value.kind !== 'string') return make;
  if (!isChecked(value, value.kind)) {
    return wanted === 'specification'
      ? 'a copy has lost its check: make it again with specification(given)'
      : 'a copy by spread, JSON or structuredClone has lost its check: readmit(copy) brings it back';
  }
  if (wanted === 'absolute pressure' && value.kind === 'gauge pressure')
    return 'toAbsolute(pressure, ambient) converts it';
  if (wanted === 'gauge pressure' && value.kind === 'absolute pressure')
    return 'toGauge(pressure, ambient) converts it';
  return make;
}
