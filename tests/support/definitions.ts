import type { Kind } from 'isochore';

// The units by their definitions, as exact fractions of integers. The definitions are exact by convention; they are
// brought from memory of NIST SP 811:2008, appendices B.8 and B.9 (bar, inch, pound avoirdupois, standard acceleration
// of free fall, kilogram-force, conventional millimetre of mercury, litre, US gallon, degree Celsius, degree Fahrenheit).

/** An exact fraction. */
interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

/** How a unit is defined: SI value = (value + zero) · factor. */
interface Definition {
  readonly factor: Fraction;
  readonly zero: Fraction;
}

/** The fraction that a decimal text spells. */
function decimal(text: string): Fraction {
  const [whole = '', places = ''] = text.split('.');
  return { n: BigInt(whole + places), d: 10n ** BigInt(places.length) };
}
const times = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.n, d: a.d * b.d });
const over = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.d, d: a.d * b.n });
const scale = (factor: Fraction, zero = '0'): Definition => ({ factor, zero: decimal(zero) });

const one = decimal('1');
const inch = decimal('0.0254'); // m
const centimetre = decimal('0.01'); // m
const pound = decimal('0.45359237'); // kg
const gravity = decimal('9.80665'); // m/s2
const mercury = decimal('13595.1'); // kg/m3, conventional, at 0 °C
const millimetre = decimal('0.001'); // m
const cubicInch = times(inch, times(inch, inch));

const PRESSURE = {
  Pa: scale(one),
  hPa: scale(decimal('100')),
  kPa: scale(decimal('1000')),
  MPa: scale(decimal('1000000')),
  bar: scale(decimal('100000')),
  psi: scale(over(times(pound, gravity), times(inch, inch))),
  'kgf/cm2': scale(over(gravity, times(centimetre, centimetre))),
  mmHg: scale(times(times(mercury, gravity), millimetre)),
  inHg: scale(times(times(mercury, gravity), inch)),
};
const perKelvin = decimal('1.8'); // degrees Fahrenheit in one kelvin

/** Every unit of every kind, by its definition. */
export const DEFINITIONS: Readonly<Record<Kind, Readonly<Record<string, Definition>>>> = {
  'gauge pressure': PRESSURE,
  'absolute pressure': PRESSURE,
  'pressure difference': PRESSURE,
  temperature: { '°C': scale(one, '273.15'), K: scale(one), '°F': scale(over(one, perKelvin), '459.67') },
  'temperature difference': { '°C': scale(one), K: scale(one), '°F': scale(over(one, perKelvin)) },
  volume: {
    m3: scale(one),
    L: scale(decimal('0.001')),
    mL: scale(decimal('0.000001')),
    in3: scale(cubicInch),
    'US gal': scale(times(decimal('231'), cubicInch)),
  },
  'amount of substance': { mol: scale(one) },
  mass: { kg: scale(one), g: scale(decimal('0.001')), lb: scale(pound) },
};
