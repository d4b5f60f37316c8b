import {
  absolute,
  amount,
  gauge,
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
  type Temperature,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { pvtAt } from '../../src/gas/door.js';
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
    { T_K: 159.99, p_Pa: 1e5, path: 'temperature', found: '159.99 K', wanted: '160 K to 1000 K' },
    { T_K: 1000.01, p_Pa: 1e5, path: 'temperature', found: '1000.01 K', wanted: '160 K to 1000 K' },
    { T_K: 77, p_Pa: 0, path: 'temperature', found: '77 K', wanted: '160 K to 1000 K' },
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
    expect(problemOf(() => byDensity(100, temperature(150, 'K')))).toMatchObject({
      code: 'outside the model',
      path: 'temperature',
      found: '150 K',
    });
  });

  test('the door to the pressure refuses such a temperature itself, for whoever comes through it', () => {
    const problem = problemOf(() => pvtAt(nitrogen, 159.99, 100, 'somewhere', 'test'));
    expect(problem).toMatchObject({ code: 'outside the model', path: 'somewhere', found: '159.99 K' });
  });

  // 30 000 mol/m3 at 20 °C is 840 kg/m3, denser than the boiling liquid.
  test('a density whose pressure is outside is refused, with that pressure', () => {
    const problem = problemOf(() => byDensity(30_000));
    expect(problem).toMatchObject({ code: 'outside the model', path: 'density_mol_m3' });
    expect(problem.found).toMatch(/^30000 mol\/m3, which is [3-9]\d{8}(\.\d+)? Pa absolute$/);
  });

  test.each([-1, -1e-300, Number.NaN, Number.POSITIVE_INFINITY])('a density of %d is refused', (rho) => {
    expect(problemOf(() => byDensity(rho))).toMatchObject({
      code: 'not a number',
      path: 'density_mol_m3',
      found: String(rho),
    });
  });

  test('a kernel’s pressure that is not a number is refused, never handed on', () => {
    const broken: GasModel = {
      ...nitrogen,
      '~kernel': {
        density: () => Number.NaN,
        pvt: (_T, _rho, out) => {
          out.p_Pa = Number.NaN;
        },
      },
    };
    expect(problemOf(() => pvtAt(broken, 300, 100, 'here', 'test')).code).toBe('outside the model');
    const unsolved = problemOf(() => stateAt(broken, { temperature: room, pressure: standard }));
    expect(unsolved).toMatchObject({ code: 'no solution', path: 'pressure', found: '101325 Pa absolute at 293.15 K' });
  });
});

describe('the edges belong to the model', () => {
  test.each([
    { T_K: 160, p_Pa: 1e5 },
    { T_K: 1000, p_Pa: 1e5 },
    { T_K: 300, p_Pa: 200e6 },
    { T_K: 160, p_Pa: 200e6 },
    { T_K: 1000, p_Pa: 0 },
  ])('$T_K K and $p_Pa Pa', ({ T_K, p_Pa }) => {
    expect(at(T_K, p_Pa).pressure.pascals).toBe(p_Pa);
  });

  // The density of a pressure, put back into the equation, gives that pressure to rounding only: at the limit the
  // rounding must not decide whether the state is answered.
  test('the highest pressure is answered at every temperature', () => {
    for (let T_K = 160; T_K <= 1000; T_K += 1) expect(at(T_K, 200e6).density_mol_m3).toBeGreaterThan(10_000);
  });

  test('vacuum has no density, a Z of 1, and the slopes of an ideal gas', () => {
    for (const state of [at(293.15, 0), stateAt(nitrogen, { density_mol_m3: 0, temperature: room })]) {
      expect(state.pressure.pascals).toBe(0);
      expect(state.density_mol_m3).toBe(0);
      expect(state.compressibility).toBe(1);
      expect(state.dpdT_Pa_K).toBe(0);
      expect(state.dpdrho_Pa_m3_mol).toBe(nitrogen.gasConstant_J_molK * 293.15);
    }
  });
});

describe('of the wrong kind', () => {
  test('a gauge pressure is refused, with the way across', () => {
    const wrong = gauge(140, 'bar') as unknown as AbsolutePressure;
    expect(problemOf(() => stateAt(nitrogen, { temperature: room, pressure: wrong }))).toStrictEqual({
      code: 'wrong kind',
      path: 'pressure',
      found: 'a gauge pressure',
      wanted: 'an absolute pressure',
      remedy: 'toAbsolute(pressure, ambient) converts it',
    });
    // 0 bar gauge is no vacuum: the kind is looked at before the number.
    const zero = gauge(0, 'bar') as unknown as AbsolutePressure;
    expect(
      problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, { temperature: room, pressure: zero })),
    ).toMatchObject({ code: 'wrong kind', path: 'at.pressure' });
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
    { what: 'no state', path: 'at', call: () => stateAt(nitrogen, nothing) },
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
    { T_K: 300, p_Pa: 0, stated: 1e-4 },
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
    const tooCold = { temperature: temperature(-150, '°C'), pressure: standard };
    expect(problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, inVacuum))).toMatchObject({
      code: 'not positive',
      path: 'at.pressure',
    });
    expect(problemOf(() => normalVolume(amount(1, 'mol'), nitrogen, tooCold))).toMatchObject({
      code: 'outside the model',
      found: '123.15 K',
    });
  });
});
