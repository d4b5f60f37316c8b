import { absolute, nitrogen, stateAt, temperature, type GasState } from 'isochore';
import { describe, expect, test } from 'vitest';
import { at } from '../support/gas-states.js';
import { numberRows, relativeError, type Row } from '../support/reference.js';

// Source of the grids: a general-purpose reference library and a 50-digit evaluation of the equation that this model
// carries; see tests/reference/README.md. Same equation, other programs: agreement is to rounding (worst row 3e-15).
const TOLERANCE = 1e-13;

const COLUMNS = ['T_K', 'p_Pa', 'rho_mol_m3', 'Z', 'dpdT_rho_Pa_K', 'dpdrho_T_Pa_m3_mol'] as const;
type State = Row<(typeof COLUMNS)[number]>;

const GRIDS = [
  { name: '223 K to 423 K, 0.1 MPa to 70 MPa', states: 437, rows: numberRows('nitrogen-grid.csv', COLUMNS) },
  // Below 160 K the model does not answer: the four Gaussian terms count there.
  {
    name: '160 K to 220 K, up to 50 MPa',
    states: 70,
    rows: numberRows('nitrogen-cold.csv', COLUMNS).filter((row) => row.T_K >= 160),
  },
];

/** The rows whose value from the model lies off the reference. */
function off(rows: readonly State[], column: (typeof COLUMNS)[number], value: (row: State) => number): unknown[] {
  return rows
    .map((row) => ({ T_K: row.T_K, p_Pa: row.p_Pa, reference: row[column], here: value(row) }))
    .filter(({ reference, here }) => !(relativeError(here, reference) <= TOLERANCE));
}

function byDensity(row: State): GasState {
  return stateAt(nitrogen, { temperature: temperature(row.T_K, 'K'), density_mol_m3: row.rho_mol_m3 });
}

describe.each(GRIDS)('reference states, $name', ({ states, rows }) => {
  test(`there are ${states} of them`, () => {
    expect(rows).toHaveLength(states);
  });

  test('density from temperature and pressure', () => {
    expect(off(rows, 'rho_mol_m3', (row) => at(row.T_K, row.p_Pa).density_mol_m3)).toEqual([]);
  });

  test('compression factor', () => {
    expect(off(rows, 'Z', (row) => at(row.T_K, row.p_Pa).compressibility)).toEqual([]);
    expect(off(rows, 'Z', (row) => byDensity(row).compressibility)).toEqual([]);
  });

  test('(∂p/∂T) at constant density', () => {
    expect(off(rows, 'dpdT_rho_Pa_K', (row) => at(row.T_K, row.p_Pa).dpdT_Pa_K)).toEqual([]);
    expect(off(rows, 'dpdT_rho_Pa_K', (row) => byDensity(row).dpdT_Pa_K)).toEqual([]);
  });

  test('(∂p/∂ρ) at constant temperature', () => {
    expect(off(rows, 'dpdrho_T_Pa_m3_mol', (row) => at(row.T_K, row.p_Pa).dpdrho_Pa_m3_mol)).toEqual([]);
    expect(off(rows, 'dpdrho_T_Pa_m3_mol', (row) => byDensity(row).dpdrho_Pa_m3_mol)).toEqual([]);
  });

  test('pressure from temperature and density', () => {
    expect(off(rows, 'p_Pa', (row) => byDensity(row).pressure.pascals)).toEqual([]);
  });
});

test('mass density is the molar density times the molar mass of the model', () => {
  const rows = numberRows('nitrogen-grid.csv', ['rho_mol_m3', 'rho_kg_m3']);
  expect(
    rows.filter((row) => relativeError(row.rho_mol_m3 * nitrogen.molarMass_kg_mol, row.rho_kg_m3) > TOLERANCE),
  ).toEqual([]);
});

test('a state says which pressure and temperature it is of', () => {
  const state = stateAt(nitrogen, { temperature: temperature(20, '°C'), pressure: absolute(141, 'bar') });
  expect(state.model).toBe('nitrogen-span-2000');
  expect(state.temperature.kelvins).toBe(293.15);
  expect(state.pressure.pascals).toBe(14_100_000);
});
