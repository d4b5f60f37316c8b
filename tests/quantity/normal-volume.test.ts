import {
  absolute,
  amount,
  normalConditions,
  normalVolumeAsIdealGas,
  readmit,
  reference0C1bar,
  reference15C1bar,
  reference20C1atm,
  reference60F,
  reference70F,
  standardReferenceConditions,
  temperature,
  volume,
  write,
  writeNormalVolume,
  type GasCondition,
  type NormalVolume,
} from 'isochore';
import { describe, expect, it } from 'vitest';
import { normalVolumeOf } from '../../src/quantity/normal-volume.js';
import { problemOf } from '../support/problem.js';

const STATES = {
  normalConditions,
  standardReferenceConditions,
  reference20C1atm,
  reference0C1bar,
  reference15C1bar,
  reference60F,
  reference70F,
};

describe('the named reference states', () => {
  // DIN 1343; ISO 13443 and ISO 2533; ISO 6976; IUPAC; common practice: all from memory. The kelvins and pascals are
  // worked out by hand; 14.696 psi by 6894.757 293 168 361 Pa.
  it.each([
    ['normalConditions', 273.15, 101_325],
    ['standardReferenceConditions', 288.15, 101_325],
    ['reference20C1atm', 293.15, 101_325],
    ['reference0C1bar', 273.15, 100_000],
    ['reference15C1bar', 288.15, 100_000],
    ['reference60F', 288.705_555_555_555_6, 101_325.353_180_402_2],
    ['reference70F', 294.261_111_111_111_1, 101_325.353_180_402_2],
  ] as const)('%s is %d K and %d Pa absolute, and cannot be changed', (name, kelvins, pascals) => {
    const { pressure, temperature: of } = STATES[name];
    expect(pressure.kind).toBe('absolute pressure');
    expect(of.kelvins).toBeCloseTo(kelvins, 11);
    expect(pressure.pascals).toBeCloseTo(pascals, 8);
    expect(Object.isFrozen(STATES[name])).toBe(true);
  });
});

describe('the text of a gas volume', () => {
  const cubicMetre = (at: GasCondition) => writeNormalVolume(normalVolumeOf(1, at), { step: 1, unit: 'm3' });

  it.each([
    ['normalConditions', '0 °C and 101.325 kPa'],
    ['standardReferenceConditions', '15 °C and 101.325 kPa'],
    ['reference20C1atm', '20 °C and 101.325 kPa'],
    ['reference0C1bar', '0 °C and 100 kPa'],
    ['reference15C1bar', '15 °C and 100 kPa'],
    ['reference60F', '60 °F and 14.696 psi'],
    ['reference70F', '70 °F and 14.696 psi'],
  ] as const)('at %s says %s absolute', (name, state) => {
    expect(cubicMetre(STATES[name])).toBe(`1 m3 at ${state} absolute`);
  });

  it.each([
    [25, '°C', 1, 'bar', '25 °C and 100 kPa'],
    [25.5, '°C', 1.013, 'bar', '25.5 °C and 101.3 kPa'],
    [300, 'K', 1, 'kgf/cm2', '300 K and 1 kgf/cm2'],
    [60, '°F', 14.73, 'psi', '60 °F and 14.73 psi'],
    [68, '°F', 29.92, 'inHg', '20 °C and 29.92 inHg'],
    [-5, '°C', 760, 'mmHg', '-5 °C and 760 mmHg'],
    [100, '°F', 0.5, 'kPa', '100 °F and 0.5 kPa'],
  ] as const)('at %d %s and %d %s is stated as it was given: %s', (degrees, tUnit, value, pUnit, state) => {
    const at = { temperature: temperature(degrees, tUnit), pressure: absolute(value, pUnit) };
    expect(cubicMetre(at)).toBe(`1 m3 at ${state} absolute`);
  });

  it('does not round the reference state away', () => {
    const at = { temperature: temperature(15.56, '°C'), pressure: absolute(101.3253, 'kPa') };
    expect(cubicMetre(at)).toBe('1 m3 at 15.56 °C and 101.3253 kPa absolute');
  });

  it('rounds the volume as write does, in any unit and direction', () => {
    const gas = normalVolumeOf(0.036_61, normalConditions);
    for (const toward of ['nearest even', 'up', 'down'] as const) {
      for (const as of [
        { step: 0.001, unit: 'm3', toward } as const,
        { step: 0.5, unit: 'L', toward } as const,
        { step: 0.01, unit: 'US gal', toward } as const,
      ]) {
        const [number = '', rest] = writeNormalVolume(gas, as).split(' at ');
        expect(number).toBe(write(volume(36.61, 'L'), as));
        expect(rest).toBe('0 °C and 101.325 kPa absolute');
      }
    }
    expect(writeNormalVolume(gas, { step: 0.001, unit: 'm3', toward: 'up' })).toMatch(/^0\.037 m3/);
    expect(writeNormalVolume(gas, { step: 0.001, unit: 'm3', toward: 'down' })).toMatch(/^0\.036 m3/);
  });

  it('is the same for a volume that came back from a copy', () => {
    const gas = normalVolumeAsIdealGas(amount(3, 'mol'), reference60F);
    const back = readmit(JSON.parse(JSON.stringify(gas)));
    expect(back).toStrictEqual(gas);
    const as = { step: 1, unit: 'in3' } as const;
    expect(writeNormalVolume(back as NormalVolume, as)).toBe(writeNormalVolume(gas, as));
  });

  it.each([
    ['the volume of a space', volume(1, 'm3'), 'a volume', 'wrong kind', /normalVolume\(amount, model, at\)/],
    ['a bare number', 1, 'the bare number 1', 'wrong kind', /normalVolume\(amount, model, at\)/],
    [
      'a copy',
      { ...normalVolumeOf(1, normalConditions) },
      'an unchecked copy of a normal volume',
      'unchecked copy',
      /readmit\(copy\)/,
    ],
  ])('is refused for %s', (_, value, found, code, remedy) => {
    const problem = problemOf(() => writeNormalVolume(value as never, { step: 1, unit: 'm3' }));
    expect(problem).toMatchObject({ code, path: 'volume', found, wanted: 'a normal volume' });
    expect(problem.remedy).toMatch(remedy);
  });

  it('is refused without a step, or in a unit of mass', () => {
    const gas = normalVolumeOf(1, normalConditions);
    expect(problemOf(() => writeNormalVolume(gas, undefined as never)).code).toBe('wrong kind');
    expect(problemOf(() => writeNormalVolume(gas, { step: 1, unit: 'kg' as never })).code).toBe('unknown unit');
  });
});
