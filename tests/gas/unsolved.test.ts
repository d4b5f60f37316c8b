import {
  absolute,
  amount,
  cubicNitrogen,
  idealNitrogen,
  massOfGas,
  nitrogen,
  saturationAt,
  stateAt,
  temperature,
  type GasModel,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { densityAt, saturationOf } from '../../src/gas/door.js';
import { gasModel } from '../../src/gas/model.js';
import { problemOf } from '../support/problem.js';

// What happens beside the answers: a kernel that gives none, vacuum, and models without two phases. A kernel never throws,
// so whoever calls it has to look.

const kernel = nitrogen['~kernel'];
const broken = (part: Partial<GasModel['~kernel']>): GasModel =>
  gasModel({ ...nitrogen, '~kernel': { ...kernel, ...part } });
const at = { temperature: temperature(300, 'K'), pressure: absolute(140, 'bar') };
const cold = temperature(100, 'K');

describe('a solver that does not close is reported with its numbers, and nothing is answered', () => {
  test('for a density', () => {
    const model = broken({ density: () => Number.NaN });
    expect(problemOf(() => stateAt(model, at))).toMatchObject({
      code: 'no solution',
      path: 'pressure',
      found: '14000000 Pa absolute at 300 K',
      values: { model: nitrogen.id },
    });
  });

  test('for a saturation', () => {
    const model = broken({ saturation: () => false });
    expect(problemOf(() => saturationAt(model, cold))).toMatchObject({
      code: 'no solution',
      path: 'temperature',
      found: 'saturation at 100 K',
    });
    expect(problemOf(() => stateAt(model, { temperature: cold, density_mol_m3: 5000 }))).toMatchObject({
      code: 'no solution',
      path: 'density_mol_m3',
      found: 'saturation at 100 K',
    });
    expect(problemOf(() => saturationOf(model, 100)).path).toBe('');
  });

  test('by the kernel of the equation itself, where there is no temperature', () => {
    const out = { p_Pa: 0, rho_liquid: 0, rho_vapour: 0 };
    expect(kernel.saturation(Number.NaN, out)).toBe(false);
    expect(kernel.density(Number.NaN, 1e5)).toBeNaN();
  });
});

test.each([nitrogen, cubicNitrogen, idealNitrogen])('the density of vacuum is zero: $id', (model) => {
  expect(densityAt(model, 300, 0, 'pressure', 'test')).toBe(0);
});

test.each([cubicNitrogen, idealNitrogen])('$id has no saturation, and says so in its kernel too', (model) => {
  expect(model['~kernel'].saturation(100, { p_Pa: 0, rho_liquid: 0, rho_vapour: 0 })).toBe(false);
});

test('a density that no state reaches is refused with the one that none reaches', () => {
  const { densest_mol_m3 } = kernel;
  const problem = problemOf(() =>
    stateAt(nitrogen, { temperature: at.temperature, density_mol_m3: 2 * densest_mol_m3 }),
  );
  expect(problem).toMatchObject({ code: 'outside the model', path: 'density_mol_m3' });
  expect(problem.wanted).toContain(`less than ${densest_mol_m3} mol/m3`);
});

test('what is no amount of gas is refused as that', () => {
  expect(problemOf(() => massOfGas(1 as never, nitrogen))).toMatchObject({ code: 'wrong kind', path: 'amount' });
  expect(problemOf(() => massOfGas(amount(1, 'mol'), {} as never))).toMatchObject({ path: 'model' });
});
