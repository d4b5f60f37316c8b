import {
  absolute,
  amount,
  cubicNitrogen,
  gauge,
  idealNitrogen,
  massOfGas,
  nitrogen,
  normalConditions,
  normalVolume,
  stateAt,
  temperature,
  volume,
  type AbsolutePressure,
  type GasCondition,
  type GasModel,
  type Given,
  type Temperature,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { densityAt, pvtAt } from '../../src/gas/door.js';
import { gasModel } from '../../src/gas/model.js';
import { at } from '../support/gas-states.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';
import { SPAN_2000_JSON } from '../support/span2000.js';

const room = temperature(20, '°C');
const standard = absolute(101_325, 'Pa');
const byDensity = (density_mol_m3: number, t: Temperature = room): unknown =>
  stateAt(nitrogen, { density_mol_m3, temperature: t });

describe('outside the model', () => {
  test.each([
    { T_K: 63.99, p_Pa: 1e3, path: 'temperature', found: '63.99 K', wanted: '64 K to 1000 K' },
    { T_K: 1000.01, p_Pa: 1e5, path: 'temperature', found: '1000.01 K', wanted: '64 K to 1000 K' },
    {
      T_K: 300,
      p_Pa: 200_000_001,
      path: 'pressure',
      found: '200000001 Pa absolute',
      wanted: '0 Pa to 200000000 Pa absolute',
    },
  ])('$found is refused, with the bounds and the reason for them', ({ T_K, p_Pa, path, found, wanted }) => {
    const problem = problemOf(() => at(T_K, p_Pa));
    expect(problem).toMatchObject({ code: 'outside the model', path, found });
    expect(problem.wanted).toBe(`${wanted}, where the model nitrogen-span-2000 is valid`);
    expect(problem.remedy).toContain(nitrogen.validity.reason);
  });

  test('a density at a temperature outside is refused by its temperature', () => {
    expect(problemOf(() => byDensity(100, temperature(63, 'K')))).toMatchObject({
      code: 'outside the model',
      path: 'temperature',
      found: '63 K',
    });
  });

  test('a pressure outside is refused beside an entropy too', () => {
    const pressure = absolute(300, 'MPa');
    expect(problemOf(() => stateAt(nitrogen, { pressure, entropy_J_molK: 150 }))).toMatchObject({
      code: 'outside the model',
      path: 'pressure',
      found: '300000000 Pa absolute',
    });
  });

  test.each([
    { what: 'entropy', given: { pressure: standard, entropy_J_molK: 300 } },
    { what: 'internal energy', given: { density_mol_m3: 40, internalEnergy_J_mol: 30_000 } },
  ])('an $what that no temperature in range has is refused, with its bounds', ({ given }) => {
    const problem = problemOf(() => stateAt(nitrogen, given));
    expect(problem.code).toBe('outside the model');
    const [least, most] = [...problem.wanted.matchAll(/-?\d+(\.\d+)?/g)].map(([number]) => Number(number));
    const [coldest, hottest] = [at(77.355, 101_325), at(1000, 101_325)];
    if ('pressure' in given) {
      expect(problem).toMatchObject({
        path: 'entropy_J_molK',
        found: '300 J/(mol K) at 101325 Pa absolute',
      });
      expect(Math.abs((least ?? Number.NaN) - coldest.entropy_J_molK)).toBeLessThan(0.01);
      expect(Math.abs((most ?? Number.NaN) - hottest.entropy_J_molK)).toBeLessThan(1e-9);
    } else {
      expect(problem).toMatchObject({
        path: 'internalEnergy_J_mol',
        found: '30000 J/mol at 40 mol/m3',
      });
      expect(Math.abs((most ?? Number.NaN) - 21_800)).toBeLessThan(20);
    }
  });

  // At 0.1 bar the saturated vapour is colder than 64 K: what lies below is no business of the liquid.
  test('a state colder than the model, where nothing condenses', () => {
    const pressure = absolute(1000, 'Pa');
    const { entropy_J_molK } = at(64, 1000);
    const problem = problemOf(() => stateAt(nitrogen, { pressure, entropy_J_molK: entropy_J_molK - 1 }));
    expect(problem).toMatchObject({ code: 'outside the model', path: 'entropy_J_molK' });
    expect(problem.wanted).toContain('from 64 K');
  });

  test('the door to the pressure refuses such a temperature itself, for whoever comes through it', () => {
    const problem = problemOf(() => pvtAt(nitrogen, 63.99, 100, 'somewhere', 'test'));
    expect(problem).toMatchObject({ code: 'outside the model', path: 'somewhere', found: '63.99 K' });
  });

  test('the door to the density refuses temperature and pressure itself', () => {
    expect(problemOf(() => densityAt(nitrogen, 63.99, 100, 'somewhere', 'test'))).toMatchObject({
      code: 'outside the model',
      path: 'somewhere',
      found: '63.99 K',
    });
    expect(problemOf(() => densityAt(nitrogen, 300, -1, 'somewhere', 'test'))).toMatchObject({
      code: 'outside the model',
      path: 'somewhere',
      found: '-1 Pa absolute',
    });
  });

  // 30 000 mol/m3 at 20 °C is 840 kg/m3, denser than the boiling liquid.
  test('a density whose pressure is outside is refused, with that pressure', () => {
    const problem = problemOf(() => byDensity(30_000));
    expect(problem).toMatchObject({ code: 'outside the model', path: 'density_mol_m3' });
    expect(problem.found).toMatch(/^30000 mol\/m3, which is [3-9]\d{8}(\.\d+)? Pa absolute$/);
    // With an energy that it has at some temperature in range.
    expect(problemOf(() => stateAt(nitrogen, { density_mol_m3: 30_000, internalEnergy_J_mol: 5000 }))).toMatchObject({
      code: 'outside the model',
      path: 'density_mol_m3',
    });
  });

  const energy = 5000;
  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, '40' as unknown as number])(
    'a density, entropy or energy of %j is no number',
    (x) => {
      for (const [path, call] of [
        ['density_mol_m3', () => byDensity(x)],
        ['density_mol_m3', () => stateAt(nitrogen, { density_mol_m3: x, internalEnergy_J_mol: energy })],
        ['entropy_J_molK', () => stateAt(nitrogen, { pressure: standard, entropy_J_molK: x })],
        ['internalEnergy_J_mol', () => stateAt(nitrogen, { density_mol_m3: 40, internalEnergy_J_mol: x })],
      ] as const) {
        expect(problemOf(call)).toMatchObject({ code: 'not a number', path });
      }
    },
  );

  // 1e-320 is a number of few digits (IEEE 754-2019, 3.3: subnormal), of which the ratio to the critical density is none.
  test.each([-1, -1e-300, 0, -0, 1e-320, 9.99e-291])('a density of %d is refused', (x) => {
    for (const call of [
      () => byDensity(x),
      () => stateAt(nitrogen, { density_mol_m3: x, internalEnergy_J_mol: energy }),
    ]) {
      expect(problemOf(call)).toMatchObject({ code: 'empty space', path: 'density_mol_m3', found: `${x} mol/m3` });
    }
  });

  test.each([0, 5e-324, 1e-318, 9.99e-291])('an absolute pressure of %d Pa is no state', (p_Pa) => {
    for (const call of [
      () => at(293.15, p_Pa),
      () => at(70, p_Pa),
      () => stateAt(nitrogen, { pressure: absolute(p_Pa, 'Pa'), entropy_J_molK: 150 }),
    ]) {
      expect(problemOf(call)).toMatchObject({
        code: 'empty space',
        path: 'pressure',
        found: `${p_Pa} Pa absolute`,
        wanted: 'more than zero, from 1e-290 Pa absolute on',
      });
    }
  });

  // There Z is 1, and s = s_0 - R ln(p/p_0): the ideal gas, by definition.
  test.each([nitrogen, idealNitrogen, cubicNitrogen])('from there on every property has a value: $id', (model) => {
    for (const T_K of [model.validity.temperature_K[0], 293.15, model.validity.temperature_K[1]]) {
      const thin = stateAt(model, { temperature: temperature(T_K, 'K'), pressure: absolute(1e-290, 'Pa') });
      const same = stateAt(model, { temperature: temperature(T_K, 'K'), density_mol_m3: thin.density_mol_m3 * 1e5 });
      expect(thin.compressibility).toBeCloseTo(1, 10);
      expect(thin.entropy_J_molK - same.entropy_J_molK).toBeCloseTo(model.gasConstant_J_molK * Math.log(1e5), 9);
      const numbers = Object.values(thin).filter((value) => typeof value === 'number');
      expect(numbers).toEqual(numbers.filter(Number.isFinite));
    }
  });

  test('vacuum has a density, which is none, but no pressure that is near it', () => {
    expect(densityAt(nitrogen, 293.15, 0, 'p', 'gas')).toBe(0);
    expect(problemOf(() => densityAt(nitrogen, 293.15, 5e-324, 'p', 'gas'))).toMatchObject({
      code: 'empty space',
      path: 'p',
      found: '5e-324 Pa absolute',
      wanted: 'more than zero, from 1e-290 Pa absolute on',
    });
  });

  test('a kernel’s pressure that is not a number is refused, never handed on', () => {
    const broken = gasModel({
      ...nitrogen,
      '~kernel': {
        ...nitrogen['~kernel'],
        density: () => Number.NaN,
        pvt: (_T, _rho, out) => {
          out.p_Pa = Number.NaN;
        },
      },
    });
    expect(problemOf(() => pvtAt(broken, 300, 100, 'here', 'test')).code).toBe('outside the model');
    const unsolved = problemOf(() => stateAt(broken, { temperature: room, pressure: standard }));
    expect(unsolved).toMatchObject({ code: 'no solution', path: 'pressure', found: '101325 Pa absolute at 293.15 K' });
  });
});

describe('which properties name a state', () => {
  const pressure = standard;
  const t = room;
  test.each([
    { what: 'two pairs at once', given: { temperature: t, pressure, density_mol_m3: 40 } },
    {
      what: 'all of them',
      given: { temperature: t, pressure, density_mol_m3: 40, entropy_J_molK: 1, internalEnergy_J_mol: 1 },
    },
    { what: 'a pair that is none', given: { temperature: t, entropy_J_molK: 150 } },
    { what: 'another that is none', given: { pressure, density_mol_m3: 40 } },
    { what: 'one property', given: { temperature: t } },
    { what: 'a word too many', given: { temperature: t, pressure, note: 'x' } },
    { what: 'a word too many, undefined', given: { temperature: t, pressure, density_mol_m3: undefined } },
  ])('$what: refused, with the four pairs', ({ given }) => {
    const problem = problemOf(() => stateAt(nitrogen, given as unknown as Given));
    expect(problem).toMatchObject({
      code: 'not a pair of properties',
      path: 'given',
      found: Object.keys(given).join(', '),
    });
    for (const name of ['temperature', 'pressure', 'density_mol_m3', 'entropy_J_molK', 'internalEnergy_J_mol']) {
      expect(problem.wanted).toContain(name);
    }
  });

  test('nothing at all', () => {
    expect(problemOf(() => stateAt(nitrogen, {} as unknown as Given))).toMatchObject({
      code: 'not a pair of properties',
      found: 'nothing',
    });
  });

  test('the order of the two does not matter', () => {
    expect(stateAt(nitrogen, { pressure, temperature: t })).toStrictEqual(
      stateAt(nitrogen, { temperature: t, pressure }),
    );
  });
});

describe('the edges belong to the model', () => {
  test.each([
    { T_K: 64, p_Pa: 14_602 },
    { T_K: 160, p_Pa: 1e5 },
    { T_K: 1000, p_Pa: 1e5 },
    { T_K: 300, p_Pa: 200e6 },
    { T_K: 126.192, p_Pa: 200e6 },
    { T_K: 1000, p_Pa: 1e-9 },
  ])('$T_K K and $p_Pa Pa', ({ T_K, p_Pa }) => {
    expect(at(T_K, p_Pa).pressure.pascals).toBe(p_Pa);
  });

  // The density of a pressure, put back into the equation, gives that pressure to rounding only: at the limit the
  // rounding must not decide whether the state is answered.
  test('the highest pressure is answered at every temperature', () => {
    for (let T_K = 127; T_K <= 1000; T_K += 1) expect(at(T_K, 200e6).density_mol_m3).toBeGreaterThan(10_000);
  });

  test('pressure and energy at the ends of the model find them again', () => {
    for (const T of [64, 1000]) {
      const { pressure, entropy_J_molK, density_mol_m3, internalEnergy_J_mol } = at(T, 10_000);
      for (const given of [
        { pressure, entropy_J_molK },
        { density_mol_m3, internalEnergy_J_mol },
      ]) {
        expect(relativeError(stateAt(nitrogen, given).temperature.kelvins, T)).toBeLessThanOrEqual(1e-14);
      }
    }
  });
});

describe('of the wrong kind', () => {
  test('a gauge pressure is refused, with the way across', () => {
    const wrong = gauge(140, 'bar') as unknown as AbsolutePressure;
    expect(problemOf(() => stateAt(nitrogen, { temperature: room, pressure: wrong }))).toStrictEqual({
      code: 'gauge for absolute',
      path: 'pressure',
      found: 'a gauge pressure',
      wanted: 'an absolute pressure',
      remedy: 'toAbsolute(pressure, ambient) converts it',
      values: {},
    });
    // 0 bar gauge is no vacuum: the kind is looked at before the number.
    const zero = gauge(0, 'bar') as unknown as AbsolutePressure;
    expect(
      problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, { temperature: room, pressure: zero })),
    ).toMatchObject({ code: 'gauge for absolute', path: 'at.pressure' });
  });

  const bare = 293.15 as unknown as Temperature;
  const other = {} as GasModel;
  const hollow = { ...nitrogen, '~kernel': undefined } as unknown as GasModel;
  const nothing = null as unknown as GasCondition;
  const litres = volume(5, 'L') as unknown as ReturnType<typeof amount>;
  test.each([
    {
      what: 'a bare temperature',
      path: 'temperature',
      call: () => stateAt(nitrogen, { temperature: bare, pressure: standard }),
    },
    { what: 'no state', path: 'given', call: () => stateAt(nitrogen, nothing) },
    { what: 'another object for a model', path: 'model', call: () => stateAt(other, normalConditions) },
    {
      what: 'a model without its arithmetic',
      path: 'model',
      call: () => stateAt(hollow, normalConditions),
    },
    { what: 'no model', path: 'model', call: () => massOfGas(amount(1, 'mol'), null as unknown as GasModel) },
    { what: 'a volume for an amount', path: 'amount', call: () => massOfGas(litres, nitrogen) },
    { what: 'a volume for an amount', path: 'amount', call: () => normalVolume(litres, nitrogen, normalConditions) },
    {
      what: 'another object for a model',
      path: 'model',
      call: () => normalVolume(amount(1, 'mol'), other, normalConditions),
    },
    {
      what: 'a bare temperature',
      path: 'at.temperature',
      call: () => normalVolume(amount(1, 'mol'), nitrogen, { temperature: bare, pressure: standard }),
    },
  ])('$what is refused at $path', ({ path, call }) => {
    expect(problemOf(call)).toMatchObject({ code: 'wrong kind', path });
  });
});

// Source: the abstract of Span et al. (2000), carried in tests/reference/nitrogen-span-2000.json.
describe('uncertainty of density', () => {
  test('the regions are those that the paper states, tightest first', () => {
    expect(nitrogen.uncertainty).toStrictEqual(
      SPAN_2000_JSON.uncertainty.density.map(({ relative, T_K, p_Pa }) => ({
        temperature_K: T_K,
        pressure_Pa: p_Pa,
        density: relative,
      })),
    );
  });

  const NONE = 'not stated by the source';
  test.each([
    { T_K: 300, p_Pa: 1e-6, stated: 1e-4 },
    { T_K: 270, p_Pa: 12e6, stated: 1e-4 },
    { T_K: 350, p_Pa: 12e6, stated: 1e-4 },
    { T_K: 269.99, p_Pa: 12e6, stated: 2e-4 },
    { T_K: 350.01, p_Pa: 12e6, stated: 2e-4 },
    { T_K: 300, p_Pa: 12_000_001, stated: 2e-4 },
    { T_K: 240, p_Pa: 30e6, stated: 2e-4 },
    { T_K: 523, p_Pa: 30e6, stated: 2e-4 },
    { T_K: 239.99, p_Pa: 1e5, stated: NONE },
    { T_K: 523.01, p_Pa: 1e5, stated: NONE },
    { T_K: 300, p_Pa: 30_000_001, stated: NONE },
  ])('$T_K K, $p_Pa Pa: $stated', ({ T_K, p_Pa, stated }) => {
    expect(at(T_K, p_Pa).densityUncertainty).toBe(stated);
  });

  test('for a state named by its density, the pressure that it has decides', () => {
    const rho = at(300, 20e6).density_mol_m3;
    expect(stateAt(nitrogen, { density_mol_m3: rho, temperature: temperature(300, 'K') }).densityUncertainty).toBe(
      2e-4,
    );
  });
});

describe('volume and mass of an amount', () => {
  // Source: Z = 0.99954 at 0 °C and 101.325 kPa, tests/reference/README.md.
  test('Z at the normal conditions of DIN 1343', () => {
    expect(normalConditions.temperature.kelvins).toBe(273.15);
    expect(normalConditions.pressure.pascals).toBe(101_325);
    expect(stateAt(nitrogen, normalConditions).compressibility.toFixed(5)).toBe('0.99954');
  });

  // Source: molar volume of an ideal gas at 273.15 K and 101.325 kPa, 22.413 969 54 L/mol (CODATA 2018), from memory. The
  // equation belongs to an older gas constant, 6e-6 larger; Z is rounded to 5e-6.
  test('a mole takes the ideal molar volume times Z', () => {
    const v = normalVolume(amount(1, 'mol'), nitrogen, normalConditions);
    expect(v.kind).toBe('normal volume');
    expect(relativeError(v.cubicMetres, 22.41396954e-3 * 0.99954)).toBeLessThanOrEqual(1.2e-5);
    expect(normalVolume(amount(0, 'mol'), nitrogen, normalConditions).cubicMetres).toBe(0);
  });

  test('the volume says which reference state it is at, and keeps it', () => {
    const iso = { temperature: temperature(15, '°C'), pressure: standard };
    const v = normalVolume(amount(1000, 'mol'), nitrogen, iso);
    expect(v.at).toStrictEqual(iso);
    expect(Object.isFrozen(v)).toBe(true);
    expect(Object.isFrozen(v.at)).toBe(true);
    // A cubic metre at 0 °C is larger at 15 °C: by 15/273.15 for an ideal gas.
    const cold = normalVolume(amount(1000, 'mol'), nitrogen, normalConditions);
    expect(relativeError(v.cubicMetres / cold.cubicMetres, 288.15 / 273.15)).toBeLessThanOrEqual(1e-3);
  });

  // Source: nitrogen at 0 °C and 1 atm weighs 1.2504 kg/m3, a handbook value from memory (some print 1.2506).
  test('a kilogram of nitrogen takes 1/1.2504 m3 at 0 °C and 1 atm', () => {
    const n = amount(100, 'mol');
    const density = massOfGas(n, nitrogen).kilograms / normalVolume(n, nitrogen, normalConditions).cubicMetres;
    expect(density.toFixed(4)).toBe('1.2504');
  });

  // Source: conventional atomic weight of nitrogen, 14.007 (IUPAC), from memory; half a unit in its last digit is 3.6e-5.
  test('a mole weighs twice the atomic weight in grams', () => {
    expect(relativeError(massOfGas(amount(1, 'mol'), nitrogen).kilograms, 2 * 14.007e-3)).toBeLessThanOrEqual(3.6e-5);
  });

  test('a reference state at vacuum or outside the model is refused', () => {
    const inVacuum = { temperature: room, pressure: absolute(0, 'Pa') };
    const tooCold = { temperature: temperature(-210, '°C'), pressure: standard };
    expect(problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, inVacuum))).toMatchObject({
      code: 'not a reference state',
      path: 'at.pressure',
    });
    expect(problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, tooCold))).toMatchObject({
      code: 'outside the model',
      found: '63.15 K',
    });
  });
});
