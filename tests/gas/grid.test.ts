import { absolute, nitrogen, stateAt, temperature, type GasState } from 'isochore';
import { describe, expect, test } from 'vitest';
import { amplification, apart, at, atDensity, OF_STATE } from '../support/gas-states.js';
import { numberRows, relativeError, type Row } from '../support/reference.js';

// Source of the files: a general-purpose reference library and a 50-digit evaluation of the equation that this model
// carries; see tests/reference/README.md. Same equation, other programs: agreement is to rounding. Seen: 4e-15 in the
// warm grid, 4e-14 in the cold states once the nearness of the critical point is allowed for.
const WARM = ['rho_mol_m3', 'Z', 'dpdT_rho_Pa_K', 'dpdrho_T_Pa_m3_mol'] as const;
const CALORIC = ['u_J_mol', 'h_J_mol', 's_J_molK', 'cv_J_molK', 'cp_J_molK', 'w_m_s'] as const;
const COLUMNS = ['T_K', 'p_Pa', ...WARM, ...CALORIC] as const;
type Column = (typeof WARM | typeof CALORIC)[number] | 'mu_JT_K_Pa';
type State = Row<(typeof COLUMNS)[number]>;

/** The rows whose value from the model lies off the reference. */
function off(
  rows: readonly Row<'T_K' | Column>[],
  column: Column,
  tolerance: (row: State) => number,
  state: (row: State) => GasState,
): unknown[] {
  return (rows as readonly (State & Row<Column>)[])
    .map((row) => ({ ...row, reference: row[column], here: OF_STATE[column](state(row)) }))
    .filter((row) => !(apart(column, row.here, row.reference, row.T_K) <= tolerance(row)))
    .map(({ T_K, p_Pa, reference, here }) => ({ T_K, p_Pa, reference, here }));
}

const byPressure = (row: State): GasState => at(row.T_K, row.p_Pa);
const byDensity = (row: State): GasState => atDensity(row.T_K, row.rho_mol_m3);

describe('437 reference states, 223 K to 423 K, 0.1 MPa to 70 MPa', () => {
  const rows = numberRows('nitrogen-grid.csv', [...COLUMNS, 'mu_JT_K_Pa']);
  const tolerance = (): number => 1e-13;

  test('there are 437 of them', () => {
    expect(rows).toHaveLength(437);
  });

  test.each([...WARM, ...CALORIC, 'mu_JT_K_Pa'] as const)('%s from temperature and pressure', (column) => {
    expect(off(rows, column, tolerance, byPressure)).toEqual([]);
  });

  test.each([...WARM, ...CALORIC, 'mu_JT_K_Pa'] as const)('%s from temperature and density', (column) => {
    expect(off(rows, column, tolerance, byDensity)).toEqual([]);
  });

  test('pressure from temperature and density', () => {
    expect(rows.filter((row) => !(relativeError(byDensity(row).pressure.pascals, row.p_Pa) <= 1e-13))).toEqual([]);
  });
});

describe('343 reference states, 64 K to 220 K: vapour up to saturation, fluid to 50 MPa', () => {
  const rows = numberRows('nitrogen-cold.csv', COLUMNS);
  const all = rows as readonly Row<'T_K' | Column>[];
  const tolerance = (row: State): number => 5e-13 * amplification(row);

  test('there are 343 of them, 175 below the critical temperature', () => {
    expect(rows).toHaveLength(343);
    expect(rows.filter((row) => row.T_K < 126.192)).toHaveLength(175);
  });

  test.each([...WARM, ...CALORIC])('%s from temperature and pressure', (column) => {
    expect(off(all, column, tolerance, byPressure)).toEqual([]);
  });

  test.each([...WARM, ...CALORIC])('%s from temperature and density', (column) => {
    expect(off(all, column, tolerance, byDensity)).toEqual([]);
  });

  test('pressure from temperature and density', () => {
    expect(rows.filter((row) => !(relativeError(byDensity(row).pressure.pascals, row.p_Pa) <= 1e-13))).toEqual([]);
  });
});

// Source: tests/reference/isentrope.csv, 48 compressions at constant entropy by the same equation in another program.
describe('states named by pressure and entropy: 48 compressions without exchange of heat', () => {
  const rows = numberRows('isentrope.csv', [
    'T1_K',
    'p1_abs_bar',
    'p2_abs_bar',
    'rho1_mol_m3',
    's1_J_molK',
    'T2_K',
    'rho2_mol_m3',
    'rho_isothermal_mol_m3',
    'T2_K_gerg',
    'rho2_gerg_mol_m3',
  ]);
  const TOLERANCE = 1e-13;
  const compressed = (row: (typeof rows)[number]): GasState =>
    stateAt(nitrogen, { pressure: absolute(row.p2_abs_bar, 'bar'), entropy_J_molK: row.s1_J_molK });

  test('there are 48 of them', () => {
    expect(rows).toHaveLength(48);
  });

  test('density and entropy before', () => {
    for (const row of rows) {
      const before = at(row.T1_K, row.p1_abs_bar * 1e5);
      expect(relativeError(before.density_mol_m3, row.rho1_mol_m3)).toBeLessThanOrEqual(TOLERANCE);
      expect(relativeError(before.entropy_J_molK, row.s1_J_molK)).toBeLessThanOrEqual(TOLERANCE);
    }
  });

  test('temperature and density after', () => {
    for (const row of rows) {
      expect(relativeError(compressed(row).temperature.kelvins, row.T2_K)).toBeLessThanOrEqual(TOLERANCE);
      expect(relativeError(compressed(row).density_mol_m3, row.rho2_mol_m3)).toBeLessThanOrEqual(TOLERANCE);
    }
  });

  test('density after a slow compression, at constant temperature', () => {
    for (const row of rows) {
      const slow = at(row.T1_K, row.p2_abs_bar * 1e5);
      expect(relativeError(slow.density_mol_m3, row.rho_isothermal_mol_m3)).toBeLessThanOrEqual(TOLERANCE);
    }
  });

  // GERG-2008 (ISO 20765-2) is another equation: 0.192 K and 3.9e-4 are what the two were seen to differ by.
  test('temperature and density after lie close to those of GERG-2008', () => {
    for (const row of rows) {
      expect(Math.abs(compressed(row).temperature.kelvins - row.T2_K_gerg)).toBeLessThanOrEqual(0.2);
      expect(relativeError(compressed(row).density_mol_m3, row.rho2_gerg_mol_m3)).toBeLessThanOrEqual(4e-4);
    }
  });

  // Source: tests/reference/README.md.
  test('the exponent n of p ~ ρ^n is 1.55 to 2.21 from 80 bar to 200 bar, not 1.4', () => {
    const exponents = rows.map((row) => {
      const { density_mol_m3 } = compressed(row);
      return Math.log(row.p2_abs_bar / row.p1_abs_bar) / Math.log(density_mol_m3 / row.rho1_mol_m3);
    });
    expect(Math.min(...exponents).toFixed(2)).toBe('1.55');
    expect(Math.max(...exponents).toFixed(2)).toBe('2.21');
  });
});

test('mass density is the molar density times the molar mass of the model', () => {
  const rows = numberRows('nitrogen-grid.csv', ['rho_mol_m3', 'rho_kg_m3']);
  expect(
    rows.filter((row) => relativeError(row.rho_mol_m3 * nitrogen.molarMass_kg_mol, row.rho_kg_m3) > 1e-13),
  ).toEqual([]);
});

test('a state says which pressure and temperature it is of', () => {
  const state = stateAt(nitrogen, { temperature: temperature(20, '°C'), pressure: absolute(141, 'bar') });
  expect(state.model).toBe('nitrogen-span-2000');
  expect(state.temperature.kelvins).toBe(293.15);
  expect(state.pressure.pascals).toBe(14_100_000);
});
