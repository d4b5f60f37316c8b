import { temperature } from 'isochore';
import { describe, expect, it } from 'vitest';
import { FORM } from '../../src/quantity/step.js';
import { inCelsius } from '../../src/quantity/unit.js';
import { pressureUnit, temperatureUnit, volumeUnit } from '../../src/record/measured.js';
import { DEFINITIONS } from '../support/definitions.js';
import { KIND_UNITS, KINDS, siOf } from '../support/kinds.js';
import { referenceText, relativeError } from '../support/reference.js';

describe.each(KINDS)('the units of $kind', ({ kind }) => {
  it('are those that have a definition, no more and no fewer', () => {
    expect(Object.keys(FORM[kind].units)).toEqual(Object.keys(DEFINITIONS[kind]));
  });

  it('have the factor and the zero of their definition (NIST SP 811:2008), exactly', () => {
    for (const [unit, { num, den, zero }] of Object.entries(FORM[kind].units)) {
      const { factor, zero: offset } = DEFINITIONS[kind][unit] ?? expect.fail(`${unit} has no definition`);
      expect(BigInt(num) * factor.d, unit).toBe(factor.n * BigInt(den));
      expect(BigInt(zero) * offset.d, unit).toBe(100n * offset.n);
    }
  });
});

describe('a temperature in a message', () => {
  it('is in °C, with the digits that it was given with', () => {
    for (const given of [-209.15, -10.1, 0, 0.001, 36.6, 400]) {
      expect(inCelsius(temperature(given, '°C').kelvins)).toBe(`${given} °C`);
    }
    expect(inCelsius(temperature(68, '°F').kelvins)).toBe('20 °C');
  });
});

describe('JSON takes the units that the core takes', () => {
  it.each([
    ['absolute pressure', pressureUnit],
    ['temperature', temperatureUnit],
    ['volume', volumeUnit],
  ] as const)('for a %s', (kind, { options }) => {
    expect(options).toEqual(Object.keys(FORM[kind].units));
  });
});

describe('GNU units 2.22 agrees', () => {
  const [, ...rows] = referenceText('units-gnu.csv')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));

  it('on every unit of every kind that it was asked about', () => {
    const asked = new Set(rows.map(([, , unit]) => unit));
    expect(asked).toEqual(new Set(KIND_UNITS.map(({ unit }) => unit)));
  });

  it.each(rows)('%s: %s %s (there %s in %s) is %s', (kind, value, unit, _expression, _wanted, result) => {
    const { make } = KINDS.find((each) => each.kind === kind) ?? expect.fail(`no kind ${kind}`);
    const si = siOf(make(Number(value), unit));
    // Its own rounding, a few units in the last place of its binary arithmetic, is all that may differ.
    expect(relativeError(si, Number(result))).toBeLessThan(5e-16);
  });
});

describe('fixed points', () => {
  // Exact by definition: NIST SP 811:2008, B.8 and B.9, from memory; the atmosphere: CGPM 1954, ISO 2533.
  it.each([
    ['temperature', 0, '°C', 273.15],
    ['temperature', -273.15, '°C', 0],
    ['temperature', -459.67, '°F', 0],
    ['temperature', 32, '°F', 273.15],
    ['temperature', 212, '°F', 373.15],
    ['temperature', -40, '°F', 233.15],
    ['temperature', -40, '°C', 233.15],
    ['temperature difference', -40, '°C', -40],
    ['temperature difference', 9, '°F', 5],
    ['absolute pressure', 1, 'kgf/cm2', 98066.5],
    ['absolute pressure', 1013.25, 'hPa', 101325],
    ['volume', 5, 'L', 0.005],
    ['volume', 5000, 'mL', 0.005],
    ['absolute pressure', 1, 'mmHg', 133.322387415],
    ['absolute pressure', 5, 'inHg', 16931.943201705],
    ['volume', 1, 'in3', 0.000016387064],
    ['volume', 231, 'in3', 0.003785411784],
    ['volume', 1, 'US gal', 0.003785411784],
    ['mass', 350, 'g', 0.35],
    ['mass', 1, 'lb', 0.45359237],
  ] as const)('%s: %d %s is %d in SI', (kind, value, unit, si) => {
    const { make } = KINDS.find((each) => each.kind === kind) ?? expect.fail(kind);
    expect(siOf(make(value, unit))).toBe(si);
  });

  // The factors as NIST SP 811:2008, B.8, prints them, rounded to seven digits; from memory.
  it.each([
    ['absolute pressure', 'mmHg', '133.3224'],
    ['absolute pressure', 'inHg', '3386.389'],
    ['absolute pressure', 'psi', '6894.757'],
    ['volume', 'in3', '0.00001638706'],
    ['volume', 'US gal', '0.003785412'],
    ['mass', 'lb', '0.4535924'],
  ] as const)('%s: 1 %s is printed as %s', (kind, unit, printed) => {
    const { make } = KINDS.find((each) => each.kind === kind) ?? expect.fail(kind);
    expect(Number(siOf(make(1, unit)).toPrecision(7))).toBe(Number(printed));
  });
});
