import { gauge, nitrogen, standardAtmosphere, stateAt, temperature, toAbsolute, toGauge, valueIn } from 'isochore';
import { describe, expect, test } from 'vitest';
import { numberRows, relativeError } from '../support/reference.js';

// A closed vessel of gas: its pressure at another temperature follows a line of constant density. Source of the lines:
// tests/reference/isochore.csv; gauge pressures against the standard atmosphere, 101 325 Pa.
const LINES = numberRows('isochore.csv', [
  'p_ref_gauge_bar',
  'T_ref_C',
  'T_C',
  'p_gauge_span2000_bar',
  'p_gauge_ideal_bar',
  'p_gauge_gerg2008_bar',
  'rho_span_mol_m3',
]);

function densityOf(p_gauge_bar: number, t_C: number): number {
  const pressure = toAbsolute(gauge(p_gauge_bar, 'bar'), standardAtmosphere);
  return stateAt(nitrogen, { pressure, temperature: temperature(t_C, '°C') }).density_mol_m3;
}

/** Gauge pressure in bar at T_C of gas that was filled to p_ref at T_ref. */
function along(p_ref_gauge_bar: number, T_ref_C: number, T_C: number): number {
  const state = stateAt(nitrogen, {
    density_mol_m3: densityOf(p_ref_gauge_bar, T_ref_C),
    temperature: temperature(T_C, '°C'),
  });
  return valueIn(toGauge(state.pressure, standardAtmosphere), 'bar');
}

describe('constant-density lines from 16 pre-charges and 4 reference temperatures', () => {
  test('there are 1152 points', () => {
    expect(LINES).toHaveLength(1152);
  });

  test('density at the reference temperature', () => {
    expect(
      LINES.filter((x) => !(relativeError(densityOf(x.p_ref_gauge_bar, x.T_ref_C), x.rho_span_mol_m3) <= 1e-12)),
    ).toEqual([]);
  });

  test('pressure at the other temperature, within 1e-9 bar of the same equation in another program', () => {
    expect(
      LINES.filter((x) => !(Math.abs(along(x.p_ref_gauge_bar, x.T_ref_C, x.T_C) - x.p_gauge_span2000_bar) <= 1e-9)),
    ).toEqual([]);
  });

  test('pressure up to 200 bar within 0.009 bar of another equation, GERG-2008 (ISO 20765-2)', () => {
    const upTo200 = LINES.filter((x) => x.p_ref_gauge_bar <= 200);
    expect(
      upTo200.filter((x) => !(Math.abs(along(x.p_ref_gauge_bar, x.T_ref_C, x.T_C) - x.p_gauge_gerg2008_bar) <= 0.009)),
    ).toEqual([]);
  });
});

// Filled to 140 bar at 20 °C. The ideal-gas law, p/T constant in absolute terms, is what tables of the trade often use.
// Source: tests/reference/README.md.
describe('what the ideal-gas law costs: 140 bar at 20 °C', () => {
  test.each([
    { T_C: 0, real: '127.33', ideal: '130.38' },
    { T_C: 40, real: '152.61', ideal: '149.62' },
    { T_C: 60, real: '165.17', ideal: '159.24' },
  ])('at $T_C °C $real bar, where the law says $ideal bar', ({ T_C, real, ideal }) => {
    const byLaw = ((140 + 1.01325) * (T_C + 273.15)) / 293.15 - 1.01325;
    expect(along(140, 20, T_C).toFixed(2)).toBe(real);
    expect(byLaw.toFixed(2)).toBe(ideal);
  });

  test('the law is 3 bar off for 20 K, on the side of the zero: too little compensation', () => {
    const rows = LINES.filter((x) => x.p_ref_gauge_bar === 140 && x.T_ref_C === 20 && Math.abs(x.T_C - 20) === 20);
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      const real = along(140, 20, row.T_C);
      expect(Math.abs(row.p_gauge_ideal_bar - real)).toBeCloseTo(3, 0);
      expect(Math.abs(row.p_gauge_ideal_bar - 140)).toBeLessThan(Math.abs(real - 140));
    }
  });
});
