import fc from 'fast-check';
import { gauge, pressureDifference, read, temperature, volume } from 'isochore';
import { describe, expect, it } from 'vitest';
import { evenly } from '../support/evenly.js';
import { exactSI } from '../support/exact.js';
import { KIND_UNITS, siOf, spelled } from '../support/kinds.js';

/** Numbers as they come: readings with few decimals, whole numbers, and doubles of every magnitude. */
const anyNumber = fc.oneof(
  fc.tuple(fc.integer({ min: -4_000_000, max: 4_000_000 }), fc.nat(12)).map(([n, k]) => Number(`${n}e-${k}`)),
  fc.maxSafeInteger(),
  evenly(-1000, 1000),
  evenly(-1e15, 1e15),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

// Below it doubles get coarser step by step, and the door promises nothing: 2e-308 Pa is no pressure.
const SMALLEST_NORMAL = 2 ** -1022;

describe.each(KIND_UNITS)('the numeric door for $kind in $unit', ({ kind, make, word, signed, unit }) => {
  const accepted = anyNumber
    .map((x) => (signed || !exactSI(kind, unit, String(x)).isNegative() ? x : Math.abs(x)))
    .filter((x) => {
      const size = exactSI(kind, unit, String(x)).abs();
      return size.isZero() || (size.gte(SMALLEST_NORMAL) && size.lte(Number.MAX_VALUE));
    });

  it('gives the double nearest to the decimal that the number prints as (decimal.js, 400 digits)', () => {
    fc.assert(
      fc.property(accepted, (x) => {
        const nearest = exactSI(kind, unit, String(x)).toNumber();
        expect(siOf(make(x, unit))).toBe(nearest + 0);
      }),
    );
  });

  it('gives the same bits from the text of the number', () => {
    fc.assert(
      fc.property(accepted, (x) => {
        expect(read(kind, spelled(String(x), unit, word))).toStrictEqual(make(x, unit));
      }),
    );
  });

  it('makes zero of minus zero', () => {
    const zero = make(0, unit);
    expect(make(-0, unit)).toStrictEqual(zero);
    expect(read(kind, spelled('-0', unit, word))).toStrictEqual(zero);
  });
});

describe('readings of 0 to 400 bar', () => {
  const tenths = Array.from({ length: 4001 }, (_, n) => [n / 10, n * 10_000] as const);
  const hundredths = Array.from({ length: 40_001 }, (_, n) => [n / 100, n * 1_000] as const);

  it('are exact in tenths and hundredths', () => {
    expect(gauge(141.3, 'bar').pascals).toBe(14_130_000);
    const wrong = [...tenths, ...hundredths].filter(([bar, pascals]) => gauge(bar, 'bar').pascals !== pascals);
    expect(wrong).toEqual([]);
  });

  it('would not be by a plain product: that is why there is a door', () => {
    expect(141.3 * 1e5).not.toBe(14_130_000);
    const missed = tenths.filter(([bar, pascals]) => bar * 1e5 !== pascals);
    expect(missed.length / tenths.length).toBeCloseTo(1 / 6, 1);
  });
});

describe('a text with more digits than a double holds', () => {
  // The engine's own reading of a decimal literal is correctly rounded, and a power of ten only moves the point.
  const digits = fc.tuple(fc.bigInt(-(10n ** 15n), 10n ** 15n), fc.bigInt(0n, 10n ** 20n - 1n));
  const text = digits.map(([whole, places]) => `${whole}.${String(places).padStart(20, '0')}`);

  it.each([
    ['Pa', 0],
    ['hPa', 2],
    ['kPa', 3],
    ['bar', 5],
    ['MPa', 6],
  ])('is rounded once, in %s', (unit, power) => {
    fc.assert(
      fc.property(text, (t) => {
        expect(read('pressure difference', `${t} ${unit} difference`).pascals).toBe(Number(`${t}e${power}`));
      }),
    );
  });

  it('is rounded once in psi, inHg and °F too (decimal.js, 400 digits)', () => {
    fc.assert(
      fc.property(text, fc.constantFrom('psi', 'inHg'), (t, unit) => {
        const pascals = read('pressure difference', `${t} ${unit} difference`).pascals;
        expect(pascals).toBe(exactSI('pressure difference', unit, t).toNumber());
        const fahrenheit = read('temperature difference', `${t} °F difference`).kelvins;
        expect(fahrenheit).toBe(exactSI('temperature difference', '°F', t).toNumber());
      }),
    );
  });

  it('shows it where rounding to a double first would give another value', () => {
    // 2^53 + 1 lies halfway between two doubles: a tie, and then a hair above it.
    expect(read('gauge pressure', '9007199254740993 Pa gauge').pascals).toBe(9_007_199_254_740_992);
    expect(read('gauge pressure', '9007199254740993.00000000000000000001 Pa gauge').pascals).toBe(
      9_007_199_254_740_994,
    );
    const long = '141.30000000000000952 bar gauge';
    expect(read('gauge pressure', long).pascals).not.toBe(gauge(Number.parseFloat(long), 'bar').pascals);
  });
});

describe('readings in psi that lie a hair above the middle of two doubles', () => {
  // All their binary digits beyond the middle are zeros for a long way: what comes after them must not be lost.
  it.each([1.49, 23.84, 47.68])('%d psi goes up (decimal.js, 400 digits)', (psi) => {
    expect(gauge(psi, 'psi').pascals).toBe(exactSI('gauge pressure', 'psi', String(psi)).toNumber());
  });
});

describe('the ends of the range of doubles', () => {
  it('keeps the largest and the smallest normal double', () => {
    expect(pressureDifference(-Number.MAX_VALUE, 'Pa').pascals).toBe(-Number.MAX_VALUE);
    expect(pressureDifference(SMALLEST_NORMAL, 'Pa').pascals).toBe(SMALLEST_NORMAL);
    expect(volume(1e-300, 'L').cubicMetres).toBe(1e-303);
  });

  it('adds the zero of the scale to a value far smaller or larger', () => {
    expect(temperature(1e-300, '°C').kelvins).toBe(273.15);
    expect(temperature(1e300, '°C').kelvins).toBe(1e300);
  });
});
