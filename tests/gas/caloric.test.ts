import { nitrogen } from 'isochore';
import { expect, test } from 'vitest';
import {
  caloricOf,
  ENERGY,
  ENTHALPY,
  ENTROPY,
  propertyIn,
  shownProperty,
  T_BY_ENERGY,
  T_BY_ENTROPY,
} from '../../src/gas/caloric.js';
import { DENSITY } from '../../src/gas/door.js';
import { relativeError } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';

// A working that names one property and shows the number of another misleads whoever follows it.
test.each([
  ['u(T, rho)', ENERGY, 'u_J_mol'],
  ['h(T, rho)', ENTHALPY, 'h_J_mol'],
  ['s(T, rho)', ENTROPY, 's_J_molK'],
  ['u(T, rho) = u_mol', T_BY_ENERGY, 'u_J_mol'],
  ['s(T, rho) = s_mol', T_BY_ENTROPY, 's_J_molK'],
  ['p(T, rho) = p_abs', DENSITY, undefined],
] as const)('%s speaks of its own property', (formula, relation, property) => {
  expect(relation.formula).toBe(formula);
  expect(propertyIn(relation)).toBe(property);
});

test.each([
  [ENERGY, 'u_J_mol'],
  [ENTHALPY, 'h_J_mol'],
  [ENTROPY, 's_J_molK'],
] as const)('what is shown of a state is that property by the equation, term by term: %#', (relation, property) => {
  const [T_K, rho] = [293.15, 5700];
  const shown: unknown[] = [];
  const result = shownProperty((step) => shown.push(step), relation, 'gas', nitrogen, { T_K, rho });
  expect(shown).toEqual([{ relation, about: 'gas', values: [T_K, rho], result }]);
  expect(result).toBe(caloricOf(nitrogen, property, T_K, rho));
  expect(relativeError(result, span2000(T_K, rho)[property])).toBeLessThan(1e-12);
});
