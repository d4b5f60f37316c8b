// Filling and bleeding in time. One temperature for all of the gas, a shell of constant temperature, and one time constant:
//
//   dU/dt = h dn/dt − n cv (T − T_shell) / τ
//
// so that gas at rest approaches the shell as exp(−t/τ), whatever its pressure. Gas flows at a constant molar rate. The
// variable is the share of the gas that has moved, so that time enters by the ratio of the two times alone.
import { exp, log } from '../gas/elementary.js';
import type { GasModel } from '../gas/model.js';
import { fluidAt, stateWithPressure, type Source, type State } from './energy.js';

/** A slope at a place; writes the slopes of all variables. */
type Slopes = (x: number, y: readonly [number, number], out: [number, number]) => void;

// Dormand and Prince, J. Comput. Appl. Math. 6 (1980) 19, RK5(4)7M; the coefficients as in Hairer, Nørsett, Wanner, Solving
// Ordinary Differential Equations I, table II.5.2 (from memory, held by the tests of order).
const NODES = /* @__PURE__ */ nodes();
const STAGES = /* @__PURE__ */ stages();
/** Fifth order less fourth: what a step may be wrong by. */
const ERROR = /* @__PURE__ */ error();

// By calls, which a bundler may leave out: it cannot know that a division has no effects.
function nodes(): readonly number[] {
  return [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
}

function stages(): readonly (readonly number[])[] {
  return [
    [],
    [1 / 5],
    [3 / 40, 9 / 40],
    [44 / 45, -56 / 15, 32 / 9],
    [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
    [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
    [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
  ];
}

function error(): readonly number[] {
  return [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];
}

const TOLERANCE = 1e-11;
const MOST_STEPS = 20_000;

/** Two variables from x = 0 to x = 1; NaN where the slopes have no value. `size` is the scale of each variable. */
export function integrate(
  slopes: Slopes,
  start: readonly [number, number],
  size: readonly [number, number],
): [number, number] {
  let x = 0;
  let h = 0.01;
  const y: [number, number] = [start[0], start[1]];
  const at: [number, number] = [0, 0];
  const k = NODES.map((): [number, number] => [0, 0]);
  const [first, ends] = [k[0], k.at(-1)];
  if (first === undefined || ends === undefined) return at;
  slopes(0, y, first);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const last = h >= 1 - x;
    if (last) h = 1 - x;
    for (let i = 1; i < k.length; i += 1) {
      at[0] = y[0] + h * weighted(STAGES[i], k, 0);
      at[1] = y[1] + h * weighted(STAGES[i], k, 1);
      slopes(x + (NODES[i] ?? 0) * h, at, k[i] ?? first);
    }
    const wrong = Math.max(
      Math.abs(h * weighted(ERROR, k, 0)) / (TOLERANCE * size[0]),
      Math.abs(h * weighted(ERROR, k, 1)) / (TOLERANCE * size[1]),
    );
    if (wrong <= 1) {
      // The last stage stands at the end of the step: what it holds is the answer there, and its slope the first one next.
      [y[0], y[1]] = at;
      [first[0], first[1]] = ends;
      if (last) return y;
      x += h;
    }
    // A step that ran outside the model is tried again, shorter.
    const factor = Number.isFinite(wrong) ? (wrong === 0 ? 5 : 0.9 * exp(-log(wrong) / 5)) : 0.1;
    h *= Math.min(5, Math.max(0.1, factor));
    if (h < 1e-13) break;
  }
  return [Number.NaN, Number.NaN];
}

function weighted(weights: readonly number[] | undefined, k: readonly [number, number][], i: 0 | 1): number {
  let sum = 0;
  if (weights === undefined) return sum;
  for (let j = 0; j < weights.length; j += 1) sum += (weights[j] ?? 0) * (k[j]?.[i] ?? 0);
  return sum;
}

/** Where the gas is once it has moved, and what heat it gave the shell on the way, J/m3 of the vessel. */
export interface LumpedEnd extends State {
  readonly heat: number;
}

/**
 * The gas of a vessel whose density went to `rho` at a constant rate, in `times` time constants. Gas comes from a source,
 * or where there is none leaves with its own enthalpy.
 */
export function movedInTime(
  model: GasModel,
  start: State,
  from: Source | undefined,
  rho: number,
  times: number,
): LumpedEnd {
  const span = rho - start.rho;
  const of = fluidAt(model, start);
  const energy = Math.max(start.rho, rho) * of.cv_J_molK * start.T_K;
  const slopes: Slopes = (x, [T_K], out) => {
    const here = start.rho + x * span;
    fluidAt(model, { T_K, rho: here }, of);
    const h = from === undefined ? of.h_J_mol : from(x * span).h_J_mol;
    const capacity = here * of.cv_J_molK;
    const lost = times * (T_K - start.T_K);
    // d(ρu) at constant T is u + (p − T ∂p/∂T) / ρ for each mol.
    out[0] = (span * (h - of.u_J_mol - (of.p_Pa - T_K * of.dpdT_rho) / here)) / capacity - lost;
    out[1] = capacity * lost;
  };
  const [T_K, heat] = span === 0 ? [start.T_K, 0] : integrate(slopes, [start.T_K, 0], [start.T_K, energy]);
  return { T_K, rho, heat };
}

/** The same up to an absolute pressure, which lies between what the two densities give. */
export function movedToPressure(
  model: GasModel,
  start: State,
  from: Source | undefined,
  p_Pa: number,
  between: readonly [number, number],
  times: number,
): State {
  const path = (rho: number): State => movedInTime(model, start, from, rho, times);
  const [first, second] = between;
  return stateWithPressure(model, path, p_Pa, first < second ? [first, second] : [second, first], 'too high');
}
