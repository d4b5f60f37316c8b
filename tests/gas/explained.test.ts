import { cubicNitrogen, idealNitrogen, nitrogen, type GasModel, type Step } from 'isochore';
import { describe, expect, test } from 'vitest';
import { explained } from '../../src/gas/explained.js';
import { gasModel } from '../../src/gas/model.js';
import { relativeError } from '../support/reference.js';
import { span2000, SPAN_2000_JSON } from '../support/span2000.js';

/** The pressure that the working comes to, and its steps. */
function worked(model: GasModel, T_K: number, rho: number): { p_Pa: number | undefined; steps: Step[] } {
  const steps: Step[] = [];
  const p_Pa = explained(model, T_K, rho, (step) => steps.push(step));
  return { p_Pa, steps };
}

function byKernel(model: GasModel, T_K: number, rho: number): number {
  const out = { p_Pa: Number.NaN, dpdrho_T: Number.NaN, dpdT_rho: Number.NaN };
  model['~kernel'].pvt(T_K, rho, out);
  return out.p_Pa;
}

const named = ({ about, relation }: Step): string => `${about}: ${relation.gives}`;

// Thin gas, a charged accumulator, and beside the critical point, where the bells weigh the most.
const STATES = [
  [250, 10],
  [293.15, 5700],
  [130, 9000],
] as const;

describe.each([nitrogen, cubicNitrogen, idealNitrogen])('$id, explained', (model) => {
  test.each(STATES)('at %d K and %d mol/m3 comes to the pressure of the model', (T, rho) => {
    const { p_Pa = Number.NaN, steps } = worked(model, T, rho);
    expect(relativeError(p_Pa, byKernel(model, T, rho))).toBeLessThanOrEqual(1e-12);
    // The last step is p = Z ρ R T, with the Z of the step before.
    const [before, last] = steps.slice(-2);
    expect([before, last].map((step) => step && named(step))).toEqual(['equation of state: Z', 'hand check: p_abs']);
    expect(last?.values).toEqual([before?.result, rho, model.gasConstant_J_molK, T]);
    expect(last?.result).toBe(p_Pa);
  });
});

describe('the reference equation, term by term', () => {
  const { reducing, residual } = SPAN_2000_JSON;

  // Source: tests/reference/nitrogen-span-2000.json.
  test.each(STATES)('at %d K and %d mol/m3 shows all 36 terms of the paper, and their sum as it grows', (T, rho) => {
    const { p_Pa = Number.NaN, steps } = worked(nitrogen, T, rho);
    const [tau, delta] = [reducing.T_K / T, rho / reducing.rho_mol_m3_coolprop];
    const terms = [
      ...residual.power.map(({ n, d, t, l }) => (l === 0 ? [n, d, t, delta, tau] : [n, d, t, l, delta, tau])),
      ...residual.gaussian.map(({ n, d, t, eta, epsilon, beta, gamma }) => [
        ...[n, d, t, eta, epsilon, beta, gamma],
        ...[delta, tau],
      ]),
    ];
    expect(steps.map(named)).toEqual([
      'equation of state: tau',
      'equation of state: delta',
      ...terms.flatMap((_, i) => [`term ${i + 1}: a_i`, `term ${i + 1}: a_d`]),
      'equation of state: Z',
      'hand check: p_abs',
    ]);
    expect(steps.filter(({ relation }) => relation.gives === 'a_i').map(({ values }) => values)).toEqual(terms);
    let sum = 0;
    terms.forEach((values, i) => {
      const [term, added] = steps.slice(2 + 2 * i, 4 + 2 * i);
      // The kind of term follows from how many numbers it has.
      expect(term?.relation.from).toHaveLength(values.length);
      expect(added?.values).toEqual([sum, term?.result]);
      sum = added?.result ?? Number.NaN;
    });
    expect(relativeError(p_Pa, span2000(T, rho).p_Pa)).toBeLessThanOrEqual(1e-12);
  });
});

test('the cubic equation shows its attraction, the ideal gas that its factor is 1', () => {
  expect(worked(cubicNitrogen, 293.15, 5700).steps.map(named)).toEqual([
    'equation of state: a_T',
    'equation of state: Z',
    'hand check: p_abs',
  ]);
  const [factor] = worked(idealNitrogen, 293.15, 5700).steps;
  expect(factor).toMatchObject({ values: [], result: 1, relation: { formula: '1' } });
});

test('a model whose equation is not told here has no working', () => {
  const other = gasModel({ ...nitrogen, id: 'another' });
  expect(worked(other, 293.15, 5700)).toEqual({ p_Pa: undefined, steps: [] });
});
