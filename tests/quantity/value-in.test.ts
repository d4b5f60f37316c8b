import fc from 'fast-check';
import { absolute, gauge, mass, temperature, temperatureDifference, valueIn, volume } from 'isochore';
import { describe, expect, it } from 'vitest';
import { evenly } from '../support/evenly.js';
import { KIND_UNITS, siOf } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';

describe.each(KIND_UNITS)('valueIn for $kind in $unit', ({ kind, make, unit }) => {
  it('gives back a number of up to twelve digits', () => {
    fc.assert(
      fc.property(fc.nat(12), fc.integer({ min: 1, max: 12 }), fc.maxSafeInteger(), (places, length, seed) => {
        // The kelvins behind a temperature in °C or °F have no room for more than nine places.
        const k = kind === 'temperature' && unit !== 'K' ? Math.min(places, 9) : places;
        const value = Number(`${Math.abs(seed % 10 ** length)}e-${k}`);
        expect(valueIn(make(value, unit), unit as never)).toBe(value);
      }),
      { numRuns: 300 },
    );
  });

  it('gives any other number to within the rounding of doubles', () => {
    fc.assert(
      fc.property(evenly(1, 1000), (value) => {
        const quantity = make(value, unit);
        const again = make(valueIn(quantity, unit as never), unit);
        expect(relativeError(siOf(again), siOf(quantity))).toBeLessThan(4 * Number.EPSILON);
      }),
    );
  });
});

describe('valueIn', () => {
  it('gives small values back beside the zero of the scale', () => {
    for (const value of [0, 0.07, 0.001, -0.004, 1e-6]) {
      expect(valueIn(temperature(value, '°C'), '°C')).toBe(value);
      expect(valueIn(temperature(value, '°F'), '°F')).toBe(value);
    }
  });

  it('refuses what no double holds in the unit', () => {
    for (const unit of ['mL', 'in3', 'US gal'] as const) {
      expect(problemOf(() => valueIn(volume(1e307, 'm3'), unit))).toMatchObject({
        code: 'beyond double',
        path: 'quantity',
        found: '1e+307 in SI units',
        wanted: `a size that a double holds in ${unit}`,
      });
    }
  });

  it('changes the unit by the definitions', () => {
    expect(valueIn(gauge(137.6, 'bar'), 'MPa')).toBe(13.76);
    expect(valueIn(absolute(1, 'kgf/cm2'), 'hPa')).toBe(980.665);
    expect(valueIn(absolute(29.92, 'inHg'), 'mmHg')).toBe(759.968);
    expect(valueIn(volume(1, 'US gal'), 'in3')).toBe(231);
    expect(valueIn(mass(2.5, 'kg'), 'g')).toBe(2500);
    expect(valueIn(mass(16, 'lb'), 'kg')).toBe(7.25747792);
    expect(valueIn(temperature(-40, '°C'), '°F')).toBe(-40);
    expect(valueIn(temperatureDifference(20, 'K'), '°F')).toBe(36);
  });
});
