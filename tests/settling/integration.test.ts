// The way in time, against the Runge–Kutta solver of mathjs (a general-purpose library). There the balance is written in
// energy, with the temperature found from it by the public states; here it is written in temperature.
import fc from 'fast-check';
import { nitrogen, stateAt, temperature, type GasState } from 'isochore';
import { all, create, type FactoryFunctionMap } from 'mathjs';
import { describe, expect, test, vi } from 'vitest';
import { bottleSource, filledAdiabatically, fluidAt, steadySource, type Source } from '../../src/settling/energy.js';
import { integrate, movedInTime } from '../../src/settling/lumped.js';
import { evenly } from '../support/evenly.js';
import { relativeError } from '../support/reference.js';

vi.setConfig({ testTimeout: 60_000 });

/** Left out of its types. */
type SolveODE = (
  slope: (t: number, y: number[]) => number[],
  span: readonly [number, number],
  start: readonly number[],
  options: Readonly<Record<string, number | string>>,
) => { readonly t: number[]; readonly y: number[][] };
const { solveODE } = create(all as FactoryFunctionMap) as unknown as { readonly solveODE: SolveODE };

const T_SHELL = 313.15;
const byDensity = (T_K: number, rho: number): GasState =>
  stateAt(nitrogen, { temperature: temperature(T_K, 'K'), density_mol_m3: rho });
const dense = (T_K: number, p_bar: number): number => nitrogen['~kernel'].density(T_K, p_bar * 1e5);

/** Temperature at the end by energy, in minutes; `h_J_mol` of what comes in, or that of the gas itself. */
function byEnergy(rho_1: number, rho_2: number, minutes: number, tau: number, h_J_mol: number | 'its own'): number {
  const rate = (rho_2 - rho_1) / minutes;
  const state = (t: number, [U = 0]: number[]): GasState =>
    stateAt(nitrogen, { density_mol_m3: rho_1 + rate * t, internalEnergy_J_mol: U / (rho_1 + rate * t) });
  const slope = (t: number, y: number[]): number[] => {
    const { enthalpy_J_mol, temperature: T, cv_J_molK, density_mol_m3 } = state(t, y);
    const lost = (density_mol_m3 * cv_J_molK * (T.kelvins - T_SHELL)) / tau;
    return [(h_J_mol === 'its own' ? enthalpy_J_mol : h_J_mol) * rate - lost];
  };
  const U_1 = rho_1 * byDensity(T_SHELL, rho_1).internalEnergy_J_mol;
  const options = { method: 'RK45', tol: 1e-3, firstStep: minutes / 50, maxStep: minutes / 50 };
  const { t, y } = solveODE(slope, [0, minutes], [U_1], options);
  return state(t.at(-1) ?? 0, y.at(-1) ?? []).temperature.kelvins;
}

describe.each([
  [143, 154, 3, 4],
  [20, 150, 10, 4],
  [1, 150, 2, 12],
  [100, 101, 30, 2],
])('from %d to what %d bar holds, in %d min with a time constant of %d min', (p_1, p_2, minutes, tau) => {
  const [low, high] = [dense(T_SHELL, p_1), dense(T_SHELL, p_2)];
  const start = { T_K: T_SHELL, rho: low };

  test('filled from 200 bar', () => {
    const from = steadySource(nitrogen, { T_K: 293.15, rho: dense(293.15, 200) });
    const found = movedInTime(nitrogen, start, from, high, minutes / tau).T_K;
    expect(Math.abs(found - byEnergy(low, high, minutes, tau, from(0).h_J_mol))).toBeLessThan(1e-6);
  });

  test('let out again', () => {
    const found = movedInTime(nitrogen, { T_K: T_SHELL, rho: high }, undefined, Math.max(low, high / 4), minutes / tau);
    const reference = byEnergy(high, Math.max(low, high / 4), minutes, tau, 'its own');
    expect(Math.abs(found.T_K - reference)).toBeLessThan(1e-6);
  });
});

// Sources that feed a vessel of 1 m3. What a bottle hands over is the difference of what it held: so small a part of it that
// this has no digits left is not drawn here.
const anySource: fc.Arbitrary<Source> = fc.oneof(
  fc.tuple(evenly(200, 350), evenly(253, 333)).map(([p, T]) => steadySource(nitrogen, { T_K: T, rho: dense(T, p) })),
  fc
    .tuple(evenly(200, 350), evenly(253, 333), evenly(5, 50))
    .map(([p, T, volumes]) => bottleSource(nitrogen, { T_K: T, rho: dense(T, p) }, volumes, 1)),
);

/** The mean of a function from 0 to 1 by Gauss and Legendre, 10 points; any textbook of numerical analysis. */
function mean(of: (x: number) => number): number {
  const points = 10;
  let sum = 0;
  for (let i = 0; i < points; i += 1) {
    // A zero of the Legendre polynomial, by Newton from where it is nearly.
    let x = Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step += 1) {
      let [p, before] = [1, 0];
      for (let n = 1; n <= points; n += 1) [p, before] = [((2 * n - 1) * x * p - (n - 1) * before) / n, p];
      slope = (points * (x * p - before)) / (x * x - 1);
      x -= p / slope;
    }
    sum += of((1 + x) / 2) / ((1 - x * x) * slope * slope);
  }
  return sum;
}

describe('the energy balance closes', () => {
  const energy = (state: { T_K: number; rho: number }): number => state.rho * fluidAt(nitrogen, state).u_J_mol;

  test('filled, with heat to the shell', () => {
    fc.assert(
      fc.property(anySource, evenly(10, 150), evenly(1.05, 1.8), evenly(0, 5), (from, p_1, share, times) => {
        const start = { T_K: T_SHELL, rho: dense(T_SHELL, p_1) };
        const end = movedInTime(nitrogen, start, from, start.rho * share, times);
        const brought = from(end.rho - start.rho).energy;
        const off = energy(end) - energy(start) - brought + end.heat;
        expect(Math.abs(off)).toBeLessThan(1e-10 * Math.abs(brought));
      }),
      { numRuns: 15 },
    );
  });

  test('let out: what left took its enthalpy, integrated apart', () => {
    fc.assert(
      fc.property(evenly(50, 250), evenly(0.5, 0.95), evenly(0, 2), (p_1, share, times) => {
        const start = { T_K: T_SHELL, rho: dense(T_SHELL, p_1) };
        const end = movedInTime(nitrogen, start, undefined, start.rho * share, times);
        // Over the states on the way, each of them computed by itself: the rate is the same for all.
        const span = end.rho - start.rho;
        const left = mean((x) => {
          const here = movedInTime(nitrogen, start, undefined, start.rho + x * span, times * x);
          return fluidAt(nitrogen, here).h_J_mol * span;
        });
        const off = energy(end) - energy(start) - left + end.heat;
        expect(Math.abs(off)).toBeLessThan(1e-10 * Math.abs(left));
      }),
      { numRuns: 4 },
    );
  });

  test('without heat: the integral is the algebra', () => {
    fc.assert(
      fc.property(anySource, evenly(10, 150), evenly(1.05, 1.8), (from, p_1, share) => {
        const start = { T_K: T_SHELL, rho: dense(T_SHELL, p_1) };
        const end = movedInTime(nitrogen, start, from, start.rho * share, 0);
        const wanted = filledAdiabatically(nitrogen, start, from, end.rho);
        expect(relativeError(end.T_K, wanted.T_K)).toBeLessThan(1e-11);
        expect(end.heat).toBe(0);
      }),
      { numRuns: 15 },
    );
  });
});

describe('the solver by itself', () => {
  // y1' = y2, y2' = −y1: a circle. Textbook.
  test('goes round a circle', () => {
    const [a, b] = integrate(
      (_, [y_1, y_2], out) => {
        out[0] = 2 * Math.PI * y_2;
        out[1] = -2 * Math.PI * y_1;
      },
      [0, 1],
      [1, 1],
    );
    expect(Math.abs(a)).toBeLessThan(1e-10);
    expect(Math.abs(b - 1)).toBeLessThan(1e-10);
  });

  test('takes polynomials of the fourth degree as they are, with few steps', () => {
    let calls = 0;
    const [a] = integrate(
      (x, _, out) => {
        calls += 1;
        out[0] = 5 * x * x * x * x;
        out[1] = 0;
      },
      [0, 0],
      [1, 1],
    );
    expect(Math.abs(a - 1)).toBeLessThan(1e-12);
    expect(calls).toBeLessThan(2000);
  });

  test('has no answer where a slope has none', () => {
    const [a] = integrate(
      (_, __, out) => {
        out[0] = Number.NaN;
      },
      [0, 0],
      [1, 1],
    );
    expect(a).toBeNaN();
  });
});
