import fc from 'fast-check';
import {
  absolute,
  amount,
  gauge,
  idealNitrogen,
  mass,
  massOfGas,
  nitrogen,
  normalConditions,
  normalVolume,
  normalVolumeAsIdealGas,
  reference0C1bar,
  reference15C1bar,
  reference20C1atm,
  reference60F,
  reference70F,
  standardReferenceConditions,
  stateAt,
  temperature,
  valueIn,
  volume,
  type GasCondition,
  type Step,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { evenly } from '../support/evenly.js';
import { problemOf } from '../support/problem.js';
import { numberRows, relativeError } from '../support/reference.js';

const mole = amount(1, 'mol');
const poundMole = amount(453.59237, 'mol');
const litres = (at: GasCondition): number => normalVolumeAsIdealGas(mole, at).cubicMetres * 1000;
const CUBIC_FOOT = 12 ** 3; // in3
const cubicFeet = (cubicMetres: number): number => valueIn(volume(cubicMetres, 'm3'), 'in3') / CUBIC_FOOT;

/** The gas constant of the reference equation is that of 1986; CODATA 2018 is smaller by 5.7e-6. */
const OLD_R = 8.31451 / 8.31446261815324;

describe('the ideal molar volume', () => {
  // Source: CODATA 2018, both exact since the SI of 2019 and printed with these digits, cut off; from memory.
  test('at 0 °C is that of CODATA 2018, for both reference pressures', () => {
    expect(litres(normalConditions).toFixed(11)).toMatch(/^22\.41396954/);
    expect(litres(reference0C1bar).toFixed(11)).toMatch(/^22\.71095464/);
  });

  // Source: handbook values, from memory; they are printed from older gas constants too, so no digit more.
  test.each([
    ['15 °C and 101.325 kPa', standardReferenceConditions, '23.645'],
    ['20 °C and 101.325 kPa', reference20C1atm, '24.055'],
    ['15 °C and 100 kPa', reference15C1bar, '23.958'],
  ])('at %s', (_, at, printed) => {
    expect(litres(at).toFixed(3)).toBe(printed);
  });

  // Source: 379.5 and 386.8 cubic feet a pound mole, tables of the gas trade of the United States, from memory.
  test.each([
    ['60 °F and 14.696 psi', reference60F, '379.5'],
    ['70 °F and 14.696 psi', reference70F, '386.8'],
  ])('at %s, in cubic feet a pound mole', (_, at, printed) => {
    expect(cubicFeet(normalVolumeAsIdealGas(poundMole, at).cubicMetres).toFixed(1)).toBe(printed);
  });

  // R and V_m of an ideal gas, in integers: R = 8.314 462 618 153 24 exactly.
  test('is correct to the rounding of three operations', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 1, max: 1000 }),
        fc.integer({ min: 1, max: 1e8 }),
        (moles, kelvins, pascals) => {
          const at = { pressure: absolute(pascals, 'Pa'), temperature: temperature(kelvins, 'K') };
          const found = normalVolumeAsIdealGas(amount(moles, 'mol'), at).cubicMetres;
          const exact = (BigInt(moles) * 831446261815324n * BigInt(kelvins) * 10n ** 20n) / BigInt(pascals);
          expect(relativeError(found, Number(exact) / 1e34)).toBeLessThanOrEqual(4 * Number.EPSILON);
        },
      ),
    );
  });

  test('is what the ideal-gas model gives', () => {
    const at = { pressure: absolute(3, 'bar'), temperature: temperature(40, '°C') };
    const through = normalVolume(amount(7, 'mol'), idealNitrogen, at).cubicMetres;
    expect(relativeError(normalVolumeAsIdealGas(amount(7, 'mol'), at).cubicMetres, through)).toBeLessThan(1e-15);
  });

  test('says which reference state the volume is at, and keeps it', () => {
    const at = { pressure: absolute(3, 'bar'), temperature: temperature(40, '°C') };
    const v = normalVolumeAsIdealGas(mole, at);
    expect(v.kind).toBe('normal volume');
    expect(v.at).toStrictEqual(at);
    expect(Object.isFrozen(v.at)).toBe(true);
    expect(normalVolumeAsIdealGas(amount(0, 'mol'), at).cubicMetres).toBe(0);
  });

  test('shows its working, which changes nothing', () => {
    const steps: Step[] = [];
    const v = normalVolumeAsIdealGas(amount(2, 'mol'), normalConditions, (step) => steps.push(step));
    expect(v).toStrictEqual(normalVolumeAsIdealGas(amount(2, 'mol'), normalConditions));
    expect(steps.map(({ relation, about, values, result }) => [relation.formula, about, values, result])).toEqual([
      ['n * R * T_n / p_n', 'gas', [2, 8.31446261815324, 273.15, 101_325], v.cubicMetres],
    ]);
  });
});

describe('nitrogen at the reference states', () => {
  // Source: tests/reference/nitrogen-grid.csv (CoolProp 6.7.0).
  const rows = numberRows('nitrogen-grid.csv', ['T_K', 'p_Pa', 'rho_mol_m3']);
  test.each([
    ['0 °C and 101.325 kPa', normalConditions],
    ['15 °C and 101.325 kPa', standardReferenceConditions],
    ['20 °C and 101.325 kPa', reference20C1atm],
    ['0 °C and 100 kPa', reference0C1bar],
    ['15 °C and 100 kPa', reference15C1bar],
  ])('at %s has the molar volume of the reference data', (_, at) => {
    const { kelvins } = at.temperature;
    const row = rows.find(({ T_K, p_Pa }) => Math.abs(T_K - kelvins) < 1e-9 && p_Pa === at.pressure.pascals);
    const { rho_mol_m3 } = row ?? expect.fail(`no row of ${kelvins} K`);
    expect(relativeError(normalVolume(mole, nitrogen, at).cubicMetres, 1 / rho_mol_m3)).toBeLessThanOrEqual(1e-12);
  });

  // Source: Z of nitrogen at 101.325 kPa, ISO 6976 (1995), table 2, four decimals, from memory.
  test.each([
    ['0 °C', normalConditions, '0.9995'],
    ['15 °C', standardReferenceConditions, '0.9997'],
  ])('at %s and 101.325 kPa Z is the quotient of the real and the ideal volume', (_, at, printed) => {
    const z = normalVolume(mole, nitrogen, at).cubicMetres / normalVolumeAsIdealGas(mole, at).cubicMetres;
    expect(z.toFixed(4)).toBe(printed);
    expect(relativeError(z, stateAt(nitrogen, at).compressibility * OLD_R)).toBeLessThan(1e-14);
  });

  // Source: 22.413 969 54 L/mol (CODATA 2018, from memory) times Z = 0.999 54 (tests/reference/README.md), which is
  // rounded to 5e-6; the older gas constant of the equation adds 5.7e-6.
  test('takes 22.404 L a mole at 0 °C and 101.325 kPa', () => {
    const found = normalVolume(mole, nitrogen, normalConditions).cubicMetres * 1000;
    expect(relativeError(found, 22.41396954 * 0.99954)).toBeLessThanOrEqual(1.1e-5);
  });

  // Source: 13.80 cubic feet a pound at 70 °F and 14.696 psi, conversion tables of bottled gas, from memory.
  test('a pound takes 13.80 cubic feet at 70 °F and 14.696 psi', () => {
    const perMole = massOfGas(mole, nitrogen).kilograms;
    const n = amount(mass(1, 'lb').kilograms / perMole, 'mol');
    expect(cubicFeet(normalVolume(n, nitrogen, reference70F).cubicMetres).toFixed(2)).toBe('13.80');
  });

  // Source: density of nitrogen at 15 °C and 1 bar, 1.17 kg/m3, conversion tables of bottled gas, from memory.
  test('a cubic metre weighs 1.17 kg at 15 °C and 100 kPa', () => {
    const n = amount(1000, 'mol');
    const density = massOfGas(n, nitrogen).kilograms / normalVolume(n, nitrogen, reference15C1bar).cubicMetres;
    expect(density.toFixed(2)).toBe('1.17');
  });

  // The docstring says how far off the ideal molar volume is.
  test('the ideal volume is too large by 0.05 % at 0 °C and by 0.03 % at 15 °C', () => {
    const excess = (at: GasCondition): string =>
      ((normalVolumeAsIdealGas(mole, at).cubicMetres / normalVolume(mole, nitrogen, at).cubicMetres - 1) * 100).toFixed(
        2,
      );
    expect([excess(normalConditions), excess(standardReferenceConditions)]).toEqual(['0.05', '0.03']);
  });

  test('one amount, at every reference state, is the same amount: volumes go with T / p', () => {
    fc.assert(
      fc.property(evenly(250, 350), evenly(50_000, 200_000), (kelvins, pascals) => {
        const at = { pressure: absolute(pascals, 'Pa'), temperature: temperature(kelvins, 'K') };
        const [there, here] = [at, normalConditions].map((each) => normalVolume(mole, nitrogen, each).cubicMetres);
        const ideal = (kelvins / 273.15) * (101_325 / pascals);
        // Z of nitrogen stays within 0.2 % of 1 there.
        expect(relativeError((there ?? 0) / (here ?? 0), ideal)).toBeLessThan(2e-3);
      }),
    );
  });
});

describe('a reference state that is none', () => {
  const cold = temperature(80, 'K');
  const room = temperature(15, '°C');
  const atmosphere = absolute(101_325, 'Pa');
  const vacuum = absolute(0, 'Pa');

  // Nitrogen boils at 77.36 K under one atmosphere, and at 80 K under 137 kPa (Span et al., 2000, from memory).
  test('is refused where nitrogen is liquid, and not a little warmer or thinner', () => {
    const problem = problemOf(() =>
      normalVolume(mole, nitrogen, { temperature: cold, pressure: absolute(138, 'kPa') }),
    );
    expect(problem).toMatchObject({ code: 'liquid', path: 'at.pressure' });
    const gas = normalVolume(mole, nitrogen, { temperature: cold, pressure: absolute(136, 'kPa') });
    expect(gas.cubicMetres).toBeGreaterThan(0);
    const at = (kelvins: number) => ({ temperature: temperature(kelvins, 'K'), pressure: atmosphere });
    expect(problemOf(() => normalVolume(mole, nitrogen, at(77.3))).code).toBe('liquid');
    expect(normalVolume(mole, nitrogen, at(77.4)).cubicMetres).toBeGreaterThan(0);
  });

  test('is refused outside the model, with the place named', () => {
    const hot = { temperature: temperature(1001, 'K'), pressure: atmosphere };
    expect(problemOf(() => normalVolume(mole, nitrogen, hot))).toMatchObject({
      code: 'outside the model',
      path: 'at.temperature',
      found: '1001 K',
    });
    const dense = { temperature: room, pressure: absolute(201, 'MPa') };
    expect(problemOf(() => normalVolume(mole, nitrogen, dense))).toMatchObject({
      code: 'outside the model',
      path: 'at.pressure',
    });
  });

  test.each([
    ['through the model', (at: GasCondition) => normalVolume(mole, nitrogen, at)],
    ['as an ideal gas', (at: GasCondition) => normalVolumeAsIdealGas(mole, at)],
  ])('is refused %s: vacuum, a gauge pressure, a copy, nothing', (_, call) => {
    expect(problemOf(() => call({ temperature: room, pressure: vacuum }))).toMatchObject({
      code: 'not a reference state',
      path: 'at.pressure',
      found: '0 Pa absolute',
    });
    expect(problemOf(() => call({ temperature: room, pressure: gauge(1, 'bar') as never }))).toMatchObject({
      code: 'gauge for absolute',
      path: 'at.pressure',
      found: 'a gauge pressure',
    });
    expect(problemOf(() => call({ temperature: { ...room }, pressure: atmosphere }))).toMatchObject({
      code: 'unchecked copy',
      path: 'at.temperature',
    });
    expect(problemOf(() => call(undefined as never))).toMatchObject({ code: 'wrong kind', path: 'at.pressure' });
  });

  test('is refused as an ideal gas at absolute zero, and an amount that is none too', () => {
    const at = { temperature: temperature(0, 'K'), pressure: atmosphere };
    expect(problemOf(() => normalVolumeAsIdealGas(mole, at))).toMatchObject({
      code: 'not a reference state',
      path: 'at.temperature',
      found: '0 K',
    });
    expect(problemOf(() => normalVolumeAsIdealGas(volume(1, 'L') as never, normalConditions))).toMatchObject({
      code: 'wrong kind',
      path: 'amount',
      found: 'a volume',
    });
  });

  test('gives no volume beyond the doubles', () => {
    const thin = { temperature: room, pressure: absolute(1e-300, 'Pa') };
    expect(problemOf(() => normalVolumeAsIdealGas(amount(1e20, 'mol'), thin)).code).toBe('not a number');
  });
});
