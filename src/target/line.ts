import { relation, step1, step2, type Trace } from '../basis/relation.js';
import { densityAt, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';

// A closed vessel keeps its amount of gas and its volume, so its gas moves along a line of constant density. The density
// of the line is fixed where the pre-charge is stated; the pressure is read off it at any other temperature.
// Left out: the vessel's own thermal expansion (about −0.12 bar over 20 K at 150 bar, for steel).

/** A point of a line of constant density: a gauge pressure at a temperature, in an ambient. */
export interface Point {
  readonly p_g_Pa: number;
  readonly T_K: number;
  readonly ambient_Pa: number;
}

export const AT_THE_POINT = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_stated'],
  formula: 'p_stated',
  source: 'at the point through which the line is drawn, the pressure stated there',
  of: (p_stated) => p_stated,
});

/** Density of the line through a point. */
export function densityOfLine(model: GasModel, point: Point, path: string, about: string, trace?: Trace): number {
  const p_abs = step2(trace, TO_ABSOLUTE, about, point.p_g_Pa, point.ambient_Pa);
  return densityAt(model, point.T_K, p_abs, path, about, trace);
}

/**
 * Gauge pressure at a temperature, in an ambient, on the line through a point, whose density is known. At the point itself
 * it is the pressure stated there, not its way through the solver and back, which may lose the last place: a reading on a
 * limit of the specification must stay on it.
 */
export function gaugeOnLine(
  model: GasModel,
  point: Point,
  rho_mol_m3: number,
  T_K: number,
  ambient_Pa: number,
  path: string,
  about: string,
  trace?: Trace,
): number {
  if (T_K === point.T_K && ambient_Pa === point.ambient_Pa) return step1(trace, AT_THE_POINT, about, point.p_g_Pa);
  const { p_Pa } = pvtAt(model, T_K, rho_mol_m3, path, about, trace);
  return step2(trace, TO_GAUGE, about, p_Pa, ambient_Pa);
}
