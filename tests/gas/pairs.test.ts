import fc from 'fast-check';
import {
  absolute,
  cubicNitrogen,
  idealNitrogen,
  nitrogen,
  saturationAt,
  stateAt,
  temperature,
  type GasModel,
  type GasState,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  amplification,
  anyGas,
  anyPressure,
  anyVapour,
  apart,
  at,
  evenly,
  OF_STATE,
  T_CRITICAL,
} from '../support/gas-states.js';
import { relativeError } from '../support/reference.js';

// A state is the same state by whichever pair of its properties it is named.

const PAIRS: { pair: string; again: (model: GasModel, state: GasState) => GasState }[] = [
  { pair: '(T, p)', again: (model, { temperature, pressure }) => stateAt(model, { temperature, pressure }) },
  {
    pair: '(T, ρ)',
    again: (model, { temperature, density_mol_m3 }) => stateAt(model, { temperature, density_mol_m3 }),
  },
  { pair: '(p, s)', again: (model, { pressure, entropy_J_molK }) => stateAt(model, { pressure, entropy_J_molK }) },
  {
    pair: '(ρ, u)',
    again: (model, { density_mol_m3, internalEnergy_J_mol }) =>
      stateAt(model, { density_mol_m3, internalEnergy_J_mol }),
  },
];

// Rounding of a density or an energy may put its pressure beyond the limit, or beyond saturation.
const inside = (most: number): fc.Arbitrary<number> => anyPressure.filter((p) => p <= most * (1 - 1e-12));
const vapour = anyVapour.filter(
  ({ T, p }) => T < 125 || p < (1 - 1e-9) * saturationAt(nitrogen, temperature(T, 'K')).pressure.pascals,
);
const near = fc.record({ T: evenly(T_CRITICAL, 160), p: inside(200e6) });
const fluid = fc.record({ T: evenly(160, 1000), p: inside(200e6) });
const REGIONS = [
  { region: 'vapour up to saturation', model: nitrogen, states: vapour },
  { region: '126.192 K to 160 K', model: nitrogen, states: near },
  { region: '160 K to 1000 K', model: nitrogen, states: fluid },
  {
    region: 'its validity',
    model: cubicNitrogen,
    states: fc.record({ T: evenly(160, 1000), p: inside(100e6) }),
  },
  { region: 'its validity', model: idealNitrogen, states: fc.record({ T: evenly(64, 1000), p: inside(200e6) }) },
];

describe.each(REGIONS)('$model.id, $region', ({ model, states }) => {
  test.each(PAIRS)('by $pair the same state', ({ again }) => {
    fc.assert(
      fc.property(states, ({ T, p }) => {
        const state = at(T, p, model);
        const same = again(model, state);
        expect(same.model).toBe(model.id);
        // An entropy within 1e-13 of that of saturation counts as saturated: some 4e-13 of T.
        expect(relativeError(same.temperature.kelvins, T)).toBeLessThanOrEqual(5e-13);
        expect(relativeError(same.pressure.pascals, p)).toBeLessThanOrEqual(1e-13);
        // Rounding of T grows in the energies as cp does, rounding of p in the density.
        const allowed =
          1e-13 *
          Math.max(
            state.cp_J_molK / model.gasConstant_J_molK,
            amplification({
              p_Pa: p,
              rho_mol_m3: state.density_mol_m3,
              dpdrho_T_Pa_m3_mol: state.dpdrho_Pa_m3_mol,
            }),
          );
        for (const name of ['rho_mol_m3', 'Z', 'u_J_mol', 'h_J_mol', 's_J_molK', 'dpdT_rho_Pa_K'] as const) {
          expect(apart(name, OF_STATE[name](same), OF_STATE[name](state), T), name).toBeLessThanOrEqual(allowed);
        }
      }),
      { numRuns: 300 },
    );
  });
});

test('the property that names a state is the one that is returned', () => {
  fc.assert(
    fc.property(anyGas, ({ T, p }) => {
      const { pressure, density_mol_m3, temperature } = at(T, p);
      expect(pressure.pascals).toBe(p);
      expect(temperature.kelvins).toBe(T);
      expect(stateAt(nitrogen, { temperature, density_mol_m3 }).density_mol_m3).toBe(density_mol_m3);
    }),
  );
});

// What the pairs are for: a vessel that keeps its gas and its heat, and a fast compression.
test('compression without exchange of heat warms; expansion cools, down to saturation', () => {
  const filled = at(293.15, 10e6);
  const entropy_J_molK = filled.entropy_J_molK;
  const by = (p: number): number =>
    stateAt(nitrogen, { pressure: absolute(p, 'Pa'), entropy_J_molK }).temperature.kelvins;
  expect(by(20e6)).toBeGreaterThan(350);
  expect(by(5e6)).toBeLessThan(250);
  // Source: for an ideal gas of constant heat capacity T ~ p^(2/7); the real one is within some kelvins of it.
  expect(Math.abs(by(9e6) - 293.15 * 0.9 ** (2 / 7))).toBeLessThan(1);
});
