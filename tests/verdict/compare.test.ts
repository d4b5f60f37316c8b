import fc from 'fast-check';
import {
  explainingTemperature,
  gauge,
  nitrogen,
  referred,
  saturationAt,
  standardAtmosphere,
  target,
  temperature,
  write,
  type Read,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { anyConditions, anySpec, bar, celsius, hPa, specWith } from '../support/accumulator.js';
import { alongLine } from '../support/line.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';

const read = (p_bar: number, t_C: number): Read => ({
  pressure: bar(p_bar),
  temperature: celsius(t_C),
  ambient: standardAtmosphere,
});

describe('a reading referred to the plate', () => {
  test('is the reference pressure where the reading is the target', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const back = referred(spec, { ...at, pressure: target(spec, at) });
        expect(relativeError(back.pascals, spec.precharge.pressure.pascals)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  // Source: the term-by-term equation, tests/support/span2000.ts.
  test('is what the same gas shows at the reference temperature and ambient', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, fc.integer({ min: 1, max: 400 }), (spec, at, p_bar) => {
        const point = { p_g: p_bar * 1e5, T: at.temperature.kelvins, ambient: at.ambient.pascals };
        const wanted = alongLine(point, spec.precharge.temperature.kelvins, spec.ambient.pascals);
        expect(Math.abs(referred(spec, { ...at, pressure: bar(p_bar) }).pascals - wanted)).toBeLessThanOrEqual(1e-4);
      }),
      { numRuns: 300 },
    );
  });

  // Source: tests/reference/README.md: 140 bar at 20 °C is 152.61 bar at 40 °C and 127.33 bar at 0 °C.
  test.each([
    [152.61, 40],
    [127.33, 0],
    [165.17, 60],
  ])('%d bar at %d °C is 140 bar on the plate', (p, t) => {
    expect(write(referred(specWith(), read(p, t)), { step: 0.1, unit: 'bar' })).toBe('140.0 bar gauge');
  });

  test('is refused as a pressure where the gas would leave its model on the plate', () => {
    const dense = { ...read(1500, 20), temperature: temperature(150, 'K') };
    expect(problemOf(() => referred(specWith(), dense))).toMatchObject({ code: 'outside the model', path: 'pressure' });
  });

  test('takes the plate’s own ambient', () => {
    const [high, low] = [specWith({ ambient: hPa(1020) }), specWith({ ambient: hPa(1000) })];
    const [a, b] = [high, low].map((spec) => referred(spec, read(143, 40)).pascals);
    expect((b ?? 0) - (a ?? 0)).toBeCloseTo(2000, 6);
  });
});

describe('the explaining temperature', () => {
  test('is the measured one where the reading is the target', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const found = explainingTemperature(spec, { ...at, pressure: target(spec, at) });
        if (found === 'none in range') throw new Error(found);
        expect(relativeError(found.kelvins, at.temperature.kelvins)).toBeLessThanOrEqual(1e-11);
      }),
    );
  });

  test('makes the reading the target, whatever temperature was measured', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, fc.integer({ min: 80, max: 120 }), (spec, at, percent) => {
        const pressure = gauge((spec.precharge.pressure.pascals * percent) / 100, 'Pa');
        const found = explainingTemperature(spec, { ...at, pressure });
        if (found === 'none in range') throw new Error(found);
        const there = target(spec, { temperature: found, ambient: at.ambient });
        expect(relativeError(there.pascals, pressure.pascals)).toBeLessThanOrEqual(1e-11);
        const elsewhere = { ...at, temperature: celsius(33), pressure };
        expect(explainingTemperature(spec, elsewhere)).toStrictEqual(found);
      }),
    );
  });

  // Source: tests/reference/README.md.
  test.each([
    [127.33, '0.0 °C'],
    [152.61, '40.0 °C'],
    [165.17, '60.0 °C'],
  ])('of %d bar is %s', (p, wanted) => {
    const found = explainingTemperature(specWith(), read(p, 30));
    if (found === 'none in range') throw new Error(found);
    expect(write(found, { step: 0.1, unit: '°C' })).toBe(wanted);
  });

  test('is none in range where the gas would be partly liquid, or the model ends, before the reading is explained', () => {
    const spec = specWith();
    // The coldest at which the density is that of a gas: saturated vapour of it, found by halving.
    const [, dewPoint] = Array.from({ length: 60 }).reduce<[number, number]>(
      ([low, high]) => {
        const T = (low + high) / 2;
        const { vapourDensity_mol_m3 } = saturationAt(nitrogen, temperature(T, 'K'));
        return vapourDensity_mol_m3 < spec.density_mol_m3 ? [T, high] : [low, T];
      },
      [100, 126],
    );
    const ends = [dewPoint, 1000].map((T) =>
      target(spec, { temperature: temperature(T, 'K'), ambient: standardAtmosphere }),
    );
    const [coldest = bar(0), hottest = bar(0)] = ends;
    const at = (pascals: number): unknown =>
      explainingTemperature(spec, { ...read(0, 20), pressure: gauge(pascals, 'Pa') });
    expect(at(coldest.pascals - 1)).toBe('none in range');
    expect(at(hottest.pascals + 1)).toBe('none in range');
    expect(at(coldest.pascals + 1)).toMatchObject({ kind: 'temperature' });
    expect(at(hottest.pascals - 1)).toMatchObject({ kind: 'temperature' });
    expect(at(0)).toBe('none in range');
  });
});

describe('a reading that is refused, by both', () => {
  const good = read(143, 40);
  test.each<[string, unknown, string, string]>([
    ['none', undefined, 'temperature', 'wrong kind'],
    ['a bare pressure', { ...good, pressure: 143 }, 'pressure', 'wrong kind'],
    ['an absolute pressure', { ...good, pressure: hPa(143_000) }, 'pressure', 'absolute for gauge'],
    ['a bare temperature', { ...good, temperature: 40 }, 'temperature', 'wrong kind'],
    ['no ambient', { ...good, ambient: undefined }, 'ambient', 'wrong kind'],
    ['an ambient in the wrong unit', { ...good, ambient: hPa(10.13) }, 'ambient', 'not an ambient pressure'],
    ['a pressure below vacuum', { ...good, pressure: bar(-1.0133) }, 'pressure', 'gauge below vacuum'],
  ])('%s', (_, given, path, code) => {
    for (const call of [referred, explainingTemperature]) {
      expect(problemOf(() => call(specWith(), given as Read))).toMatchObject({ path, code });
    }
  });

  test('by its temperature or pressure outside the model, where its density is asked for', () => {
    const cold = (T: number): Read => ({ ...good, temperature: temperature(T, 'K') });
    expect(problemOf(() => referred(specWith(), cold(63.9)))).toMatchObject({
      path: 'pressure',
      code: 'outside the model',
    });
    expect(problemOf(() => referred(specWith(), cold(110)))).toMatchObject({ path: 'pressure', code: 'liquid' });
    expect(problemOf(() => referred(specWith(), read(2000, 40)))).toMatchObject({
      path: 'pressure',
      code: 'outside the model',
    });
  });

  test('a vacuum is read', () => {
    expect(referred(specWith(), { ...good, pressure: gauge(-101_325, 'Pa') }).pascals).toBe(-101_325);
    expect(explainingTemperature(specWith(), { ...good, pressure: gauge(-101_325, 'Pa') })).toBe('none in range');
  });
});
