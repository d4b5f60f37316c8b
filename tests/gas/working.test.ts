import {
  amount,
  massOfGas,
  nitrogen,
  normalConditions,
  normalVolume,
  saturationAt,
  stateAt,
  temperature,
  type Step,
} from 'isochore';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { at } from '../support/gas-states.js';
import { relativeError } from '../support/reference.js';

/** The steps that a calculation shows. */
function steps(calculate: (trace: (step: Step) => void) => unknown): Step[] {
  const seen: Step[] = [];
  calculate((step) => seen.push(step));
  return seen;
}

/** The printed formula of a step, evaluated by a general-purpose expression evaluator with the values shown. */
function byFormula({ relation, values }: Step): unknown {
  return evaluate(relation.formula, Object.fromEntries(relation.from.map((symbol, i) => [symbol, values[i]])));
}

const R = nitrogen.gasConstant_J_molK;

describe('the working of the gas room', () => {
  test('a state from pressure: the density as a root, then Z', () => {
    const state = at(293.15, 14e6);
    const shown = steps((trace) =>
      stateAt(nitrogen, { temperature: state.temperature, pressure: state.pressure }, trace),
    );
    expect(shown.map(({ relation, about, values, result }) => [relation.gives, about, values, result])).toStrictEqual([
      ['rho', 'state', [293.15, 14e6], state.density_mol_m3],
      ['Z', 'state', [14e6, state.density_mol_m3, R, 293.15], state.compressibility],
    ]);
  });

  test('a state from density: the pressure, then Z', () => {
    const given = { temperature: temperature(300, 'K'), density_mol_m3: 5000 };
    const state = stateAt(nitrogen, given);
    const shown = steps((trace) => stateAt(nitrogen, given, trace));
    expect(shown.map(({ relation, values, result }) => [relation.gives, values, result])).toStrictEqual([
      ['p_abs', [300, 5000], state.pressure.pascals],
      ['Z', [state.pressure.pascals, 5000, R, 300], state.compressibility],
    ]);
  });

  test('a state from pressure and entropy: the temperature as a root beside its density, then as from pressure', () => {
    const { pressure, entropy_J_molK: s } = at(293.15, 14e6);
    const state = stateAt(nitrogen, { pressure, entropy_J_molK: s });
    const [T, rho] = [state.temperature.kelvins, state.density_mol_m3];
    const shown = steps((trace) => stateAt(nitrogen, { pressure, entropy_J_molK: s }, trace));
    expect(shown.map(({ relation, about, values, result }) => [relation.formula, about, values, result])).toStrictEqual(
      [
        ['s(T, rho) = s_mol', 'state', [rho, s], T],
        ['p(T, rho) = p_abs', 'state', [T, 14e6], rho],
        ['p_abs / (rho * R * T)', 'state', [14e6, rho, R, T], state.compressibility],
      ],
    );
  });

  test('a state from density and energy: the temperature as a root, then as from density', () => {
    const given = { density_mol_m3: 5000, internalEnergy_J_mol: 5500 };
    const state = stateAt(nitrogen, given);
    const [T, p] = [state.temperature.kelvins, state.pressure.pascals];
    const shown = steps((trace) => stateAt(nitrogen, given, trace));
    expect(shown.map(({ relation, about, values, result }) => [relation.formula, about, values, result])).toStrictEqual(
      [
        ['u(T, rho) = u_mol', 'state', [5000, 5500], T],
        ['p(T, rho)', 'state', [T, 5000], p],
        ['p_abs / (rho * R * T)', 'state', [p, 5000, R, T], state.compressibility],
      ],
    );
  });

  test('a saturation: the pressure of its vapour', () => {
    const { pressure, vapourDensity_mol_m3 } = saturationAt(nitrogen, temperature(80, 'K'));
    const shown = steps((trace) => saturationAt(nitrogen, temperature(80, 'K'), trace));
    expect(shown.map(({ relation, about, values, result }) => [relation.formula, about, values, result])).toStrictEqual(
      [['p(T, rho)', 'saturated vapour', [80, vapourDensity_mol_m3], pressure.pascals]],
    );
  });

  test('a normal volume: the density at its reference state, then the quotient', () => {
    const volume = normalVolume(amount(1000, 'mol'), nitrogen, normalConditions);
    const shown = steps((trace) => normalVolume(amount(1000, 'mol'), nitrogen, normalConditions, trace));
    expect(shown.map(({ relation, about }) => [relation.gives, about])).toStrictEqual([
      ['rho', 'reference state of the volume'],
      ['V_n', 'gas'],
    ]);
    expect(shown[1]?.values).toStrictEqual([1000, shown[0]?.result]);
    expect(shown[1]?.result).toBe(volume.cubicMetres);
  });

  test('a temperature from density and pressure', () => {
    const T = temperatureAt(nitrogen, 5000, 14e6, 'settled');
    const shown = steps((trace) => temperatureAt(nitrogen, 5000, 14e6, 'settled', trace));
    expect(shown.map(({ relation, about, values, result }) => [relation.gives, about, values, result])).toStrictEqual([
      ['T', 'settled', [5000, 14e6], T],
    ]);
  });

  test('every closed formula gives the result shown beside it', () => {
    const shown = [
      ...steps((trace) => stateAt(nitrogen, normalConditions, trace)),
      ...steps((trace) => normalVolume(amount(1000, 'mol'), nitrogen, normalConditions, trace)),
      ...steps((trace) => massOfGas(amount(1000, 'mol'), nitrogen, trace)),
    ].filter((step) => step.relation.gives !== 'rho');
    expect(shown.map((step) => step.relation.gives)).toStrictEqual(['Z', 'V_n', 'm']);
    for (const step of shown) expect(relativeError(Number(byFormula(step)), step.result)).toBeLessThanOrEqual(1e-15);
  });
});
