import { absolute, cubicNitrogen, nitrogen, saturationAt, stateAt, temperature } from 'isochore';
import { describe, expect, test } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { problemOf } from '../support/problem.js';

// Places where the last digit, or the last 0.0001 K, could decide between an answer and a refusal.

describe('the last 0.0001 K below the critical temperature', () => {
  const T = temperature(126.19199, 'K');
  test.each([1e3, 1e5, 3.39e6])('gas at %d Pa is answered', (p) => {
    const state = stateAt(nitrogen, { temperature: T, pressure: absolute(p, 'Pa') });
    const beside = stateAt(nitrogen, { temperature: temperature(126.1925, 'K'), pressure: absolute(p, 'Pa') });
    expect(state.density_mol_m3 / beside.density_mol_m3).toBeCloseTo(1, 2);
    expect(
      stateAt(nitrogen, { temperature: T, density_mol_m3: state.density_mol_m3 }).pressure.pascals / p,
    ).toBeCloseTo(1, 12);
  });
  test('liquid is refused by name', () => {
    expect(problemOf(() => stateAt(nitrogen, { temperature: T, pressure: absolute(50, 'MPa') })).code).toBe('liquid');
  });
  test('a state at the critical temperature is found again by pressure and entropy', () => {
    const state = stateAt(nitrogen, { temperature: temperature(126.192, 'K'), pressure: absolute(1, 'Pa') });
    const again = stateAt(nitrogen, { pressure: state.pressure, entropy_J_molK: state.entropy_J_molK });
    expect(again.temperature.kelvins).toBeCloseTo(126.192, 9);
  });
});

test('saturated vapour has a temperature, at every whole kelvin and between', () => {
  for (let T = 64; T < 126; T += 0.35) {
    const { pressure, vapourDensity_mol_m3 } = saturationAt(nitrogen, temperature(T, 'K'));
    expect(temperatureAt(nitrogen, vapourDensity_mol_m3, pressure.pascals, 'test')).toBeCloseTo(T, 8);
  }
});

test('a state at the highest pressure is found again by its density', () => {
  for (const T of [126.192, 200, 300, 812.5]) {
    const state = stateAt(nitrogen, { temperature: temperature(T, 'K'), pressure: absolute(200, 'MPa') });
    const again = stateAt(nitrogen, { temperature: state.temperature, density_mol_m3: state.density_mol_m3 });
    expect(again.pressure.pascals / 200e6).toBeCloseTo(1, 12);
  }
});

test('the cubic refuses densities beyond its pole', () => {
  for (const rho of [1e5, 1e6, 1e9]) {
    const at = { temperature: temperature(300, 'K'), density_mol_m3: rho };
    expect(problemOf(() => stateAt(cubicNitrogen, at))).toMatchObject({ code: 'outside the model' });
  }
});
