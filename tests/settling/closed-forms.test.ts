// What the textbooks have in closed form: for a perfect gas, and for the isentropes of an independent program.
import fc from 'fast-check';
import {
  absolute,
  bleeding,
  nitrogen,
  pressureDifference,
  settlingCurve,
  temperature,
  toGauge,
  volume,
  type GaugePressure,
  type Read,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { evenly } from '../support/evenly.js';
import { fills } from '../support/fills.js';
import { GAMMA, perfectGas, R } from '../support/perfect-gas.js';
import { numberRows, relativeError } from '../support/reference.js';

const ambient = absolute(1000, 'hPa');
const of = (p_Pa: number): GaugePressure => toGauge(absolute(p_Pa, 'Pa'), ambient);
const at = (p_Pa: number, T_K: number): Read => ({ pressure: of(p_Pa), temperature: temperature(T_K, 'K'), ambient });
const vessel = { gas: perfectGas, gasVolume: volume(5, 'L') };
const supplyAt = (p_Pa: number, T_K: number) => ({ pressure: of(p_Pa), temperature: temperature(T_K, 'K') });
const pascals = (pressure: GaugePressure): number => pressure.pascals + ambient.pascals;

describe('a perfect gas, filled without heat', () => {
  // Textbook result of the first law for a rigid evacuated vessel, e.g. Moran and Shapiro, Fundamentals of Engineering
  // Thermodynamics, transient control volumes (from memory): u2 = h_in, so T2 = γ T_in.
  test('an evacuated vessel: T2 = γ T_in', () => {
    fc.assert(
      fc.property(evenly(250, 400), evenly(250, 400), evenly(1e6, 2e7), (T_in, T_1, p_2) => {
        const { adiabatic } = fills(vessel, at(1e-4, T_1), {
          supply: supplyAt(3e7, T_in),
          until: { stop: of(p_2) },
        });
        expect(relativeError(adiabatic.temperature.kelvins, GAMMA * T_in)).toBeLessThan(1e-9);
      }),
      { numRuns: 50 },
    );
  });

  // The same balance with gas in the vessel before: p2 − p1 = γ R T_in (n2 − n1) / V, whatever T1.
  test('a vessel with gas in it: the pressure rises by γ R T_in per mol and volume', () => {
    fc.assert(
      fc.property(evenly(250, 400), evenly(250, 400), evenly(1e5, 1e7), evenly(0.1, 2), (T_in, T_1, p_1, share) => {
        const p_2 = p_1 * (1 + share);
        const { adiabatic } = fills(vessel, at(p_1, T_1), { supply: supplyAt(4e7, T_in), until: { stop: of(p_2) } });
        const dn = adiabatic.gas.amount.moles / vessel.gasVolume.cubicMetres;
        expect(relativeError(dn, (p_2 - p_1) / (GAMMA * R * T_in))).toBeLessThan(1e-10);
        const T_2 = p_2 / (R * (p_1 / (R * T_1) + dn));
        expect(relativeError(adiabatic.temperature.kelvins, T_2)).toBeLessThan(1e-10);
        expect(relativeError(pascals(adiabatic.settled), p_1 + (T_1 / (GAMMA * T_in)) * (p_2 - p_1))).toBeLessThan(
          1e-10,
        );
      }),
      { numRuns: 100 },
    );
  });

  // Two vessels without heat keep their energy, p V / (γ − 1) in all: they meet at the mean of their pressures by volume.
  test('from a bottle: both meet at the mean pressure by volume', () => {
    fc.assert(
      fc.property(evenly(1e5, 1e7), evenly(1.2e7, 3e7), evenly(0.5, 20), evenly(250, 299), (p_1, p_b, volumes, T) => {
        const mean = (p_1 + volumes * p_b) / (1 + volumes);
        const until = { stop: of(mean * (1 - 1e-9)) };
        const supply = { ...supplyAt(p_b, T), volume: volume(5 * volumes, 'L') };
        const { adiabatic } = fills(vessel, at(p_1, 300), { supply, until });
        expect(relativeError(pascals(adiabatic.supplyAfter?.pressure ?? of(1)), mean)).toBeLessThan(1e-8);
      }),
      { numRuns: 50 },
    );
  });
});

// Textbook result for what remains in a vessel that is let out without heat (from memory): it stays on its isentrope.
test('a perfect gas, let out without heat: T2/T1 = (p2/p1)^((γ − 1)/γ)', () => {
  fc.assert(
    fc.property(evenly(250, 400), evenly(1e6, 3e7), evenly(0.05, 0.99), (T_1, p_1, ratio) => {
      const { adiabatic } = bleeding(vessel, at(p_1, T_1), { until: { stop: of(p_1 * ratio) } });
      const T_2 = T_1 * ratio ** ((GAMMA - 1) / GAMMA);
      expect(relativeError(adiabatic.temperature.kelvins, T_2)).toBeLessThan(1e-10);
      expect(relativeError(pascals(adiabatic.settled), p_1 * ratio * (T_1 / T_2))).toBeLessThan(1e-10);
    }),
    { numRuns: 100 },
  );
});

// Newton's law of cooling. For a perfect gas at constant volume the pressure follows the temperature in proportion.
test('gas at rest: the difference falls to 1/e in each time constant', () => {
  fc.assert(
    fc.property(evenly(250, 400), evenly(250, 400), evenly(0.5, 30), evenly(0, 60), (T_0, T_s, tau, t) => {
      const p_0 = 1.5e7;
      const curve = settlingCurve(vessel, at(p_0, T_0), {
        shell: temperature(T_s, 'K'),
        timeConstantMinutes: tau,
        minutes: [t],
        within: pressureDifference(0.1, 'bar'),
      });
      const T = T_s + (T_0 - T_s) * Math.exp(-t / tau);
      expect(relativeError(curve.points[0]?.temperature.kelvins ?? 0, T)).toBeLessThan(1e-12);
      expect(relativeError(pascals(curve.points[0]?.pressure ?? of(1)), (p_0 * T) / T_0)).toBeLessThan(1e-12);
      const excess = Math.abs((p_0 * (T_0 - T_s)) / T_0);
      const until = excess <= 1e4 ? 0 : tau * Math.log(excess / 1e4);
      expect(Math.abs(curve.minutesUntilWithin - until)).toBeLessThan(1e-6 * tau);
    }),
    { numRuns: 100 },
  );
});

// CoolProp 6.7.0: tests/reference/isentrope.csv, compressions along isentropes; let out again they come back.
describe('nitrogen, let out along the isentropes of CoolProp', () => {
  const rows = numberRows('isentrope.csv', ['T1_K', 'p1_abs_bar', 'p2_abs_bar', 'rho1_mol_m3', 'T2_K', 'rho2_mol_m3']);

  test('there are rows', () => {
    expect(rows.length).toBeGreaterThan(10);
  });

  test.each(rows.map((row) => [`${row.p2_abs_bar} to ${row.p1_abs_bar} bar, ${row.T1_K} K`, row] as const))(
    '%s',
    (_, row) => {
      const own = { gas: nitrogen, gasVolume: volume(1, 'm3') };
      const { adiabatic } = bleeding(own, at(row.p2_abs_bar * 1e5, row.T2_K), {
        until: { stop: of(row.p1_abs_bar * 1e5) },
      });
      expect(relativeError(adiabatic.temperature.kelvins, row.T1_K)).toBeLessThan(1e-10);
      expect(relativeError(adiabatic.gas.amount.moles, row.rho2_mol_m3 - row.rho1_mol_m3)).toBeLessThan(1e-9);
    },
  );
});
