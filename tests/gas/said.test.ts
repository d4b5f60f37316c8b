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
  normalVolumeAsIdealGas,
  saturationAt,
  stateAt,
  temperature,
  toAbsolute,
  type Step,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { temperatureAt } from '../../src/gas/door.js';
import { problemOf } from '../support/problem.js';

// What is said beside the numbers: units, symbols and places. A right number under a wrong unit is a wrong number.

const at = { temperature: temperature(300, 'K'), pressure: absolute(140, 'bar') };

describe('a state that there is not is refused with what was asked for, and with the unit of the bounds', () => {
  test('entropy', () => {
    const problem = problemOf(() => stateAt(nitrogen, { pressure: at.pressure, entropy_J_molK: 1000 }));
    expect(problem).toMatchObject({ path: 'entropy_J_molK', found: '1000 J/(mol K) at 14000000 Pa absolute' });
    expect(problem.wanted).toMatch(/^\S+ J\/\(mol K\) to \S+ J\/\(mol K\), /);
  });

  test('energy', () => {
    const given = { density_mol_m3: 5000, internalEnergy_J_mol: 1e6 };
    const problem = problemOf(() => stateAt(nitrogen, given));
    expect(problem).toMatchObject({ path: 'internalEnergy_J_mol', found: '1000000 J/mol at 5000 mol/m3' });
    expect(problem.wanted).toMatch(/^\S+ J\/mol to \S+ J\/mol, /);
  });

  test('a density beyond every one, with an energy', () => {
    const given = { density_mol_m3: 60_000, internalEnergy_J_mol: 5000 };
    expect(problemOf(() => stateAt(nitrogen, given))).toMatchObject({
      code: 'outside the model',
      path: 'density_mol_m3',
      found: '60000 mol/m3',
    });
  });

  test('saturation of a model that has none, by the name of the model', () => {
    const problem = problemOf(() => saturationAt(idealNitrogen, temperature(80, 'K')));
    expect(`${problem.found} ${problem.wanted}`).toContain(idealNitrogen.id);
  });

  test('what is no gas model', () => {
    expect(problemOf(() => stateAt({} as never, at))).toMatchObject({ path: 'model', wanted: 'a gas model' });
    expect(problemOf(() => saturationAt({} as never, at.temperature))).toMatchObject({ path: 'model' });
  });

  // A text has names of members too, those of its letters.
  test.each(['a state', 300, undefined])('what is no state: %j', (given) => {
    expect(problemOf(() => stateAt(nitrogen, given as never))).toMatchObject({ code: 'wrong kind', path: 'given' });
  });
});

function workingOf(calculate: (trace: (step: Step) => void) => unknown): readonly string[] {
  const shown: string[] = [];
  calculate(({ about, relation: { gives, unit, from } }) =>
    shown.push(`${about}: ${gives} [${unit}] of ${from.join(' ')}`),
  );
  return shown;
}

// Symbols and units are those of docs/method.md.
describe('the working names what each number is, in which unit, and of what', () => {
  const one = amount(1000, 'mol');
  test.each([
    ['a mass', (trace) => massOfGas(one, nitrogen, trace), ['gas: m [kg] of n M']],
    [
      'a normal volume',
      (trace) => normalVolume(one, nitrogen, normalConditions, trace),
      ['reference state of the volume: rho [mol/m3] of T p_abs', 'gas: V_n [m3] of n rho_n'],
    ],
    [
      'a normal volume as of an ideal gas',
      (trace) => normalVolumeAsIdealGas(one, normalConditions, trace),
      ['gas: V_n [m3] of n R T_n p_n'],
    ],
    [
      'a state by pressure',
      (trace) => stateAt(nitrogen, at, trace),
      ['state: rho [mol/m3] of T p_abs', 'state: Z [1] of p_abs rho R T'],
    ],
    [
      'a state by density',
      (trace) => stateAt(nitrogen, { temperature: at.temperature, density_mol_m3: 5000 }, trace),
      ['state: p_abs [Pa] of T rho', 'state: Z [1] of p_abs rho R T'],
    ],
    [
      'the temperature of a density',
      (trace) => temperatureAt(nitrogen, 5000, 14e6, 'reading', trace),
      ['reading: T [K] of rho p_abs'],
    ],
    [
      'an absolute pressure',
      (trace) => toAbsolute(gauge(1, 'bar'), at.pressure, trace),
      ['conversion: p_abs [Pa] of p_g p_amb'],
    ],
  ] as [string, (trace: (step: Step) => void) => unknown, string[]][])('of %s', (_, calculate, wanted) => {
    expect(workingOf(calculate)).toEqual(wanted);
  });
});

// A label and an order name the gas, a report names the source.
test.each([
  [nitrogen, '10.1063/1.1349047', 'Span, R.'],
  [cubicNitrogen, '10.1021/i160057a011', 'Peng, D.-Y.'],
  [idealNitrogen, undefined, 'CODATA 2018'],
])('$id says which gas it is, and by whom', ({ gas, source }, doi, words) => {
  expect(gas).toBe('nitrogen');
  expect(source.doi).toBe(doi);
  expect(source.citation).toContain(words);
});
