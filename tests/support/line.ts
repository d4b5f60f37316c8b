// Lines of constant density by the term-by-term equation of tests/support/span2000.ts, apart from the library's solver.
import { span2000, SPAN_2000_JSON } from './span2000.js';

/** Molar density at a temperature and an absolute pressure: Newton's method from the ideal gas. */
export function densityBySpan(T_K: number, p_Pa: number): number {
  let rho = p_Pa / (SPAN_2000_JSON.gasConstant_J_molK * T_K);
  for (let i = 0; i < 50; i += 1) {
    const state = span2000(T_K, rho);
    const change = (p_Pa - state.p_Pa) / state.dpdrho_T_Pa_m3_mol;
    rho += change;
    if (Math.abs(change) <= 1e-15 * rho) return rho;
  }
  throw new Error(`no density at ${T_K} K and ${p_Pa} Pa`);
}

/** A gauge pressure, the temperature and the ambient pressure with it, in SI units. */
export interface Point {
  readonly p_g: number;
  readonly T: number;
  readonly ambient: number;
}

/** Density behind a gauge pressure. */
export const densityOfPoint = ({ p_g, T, ambient }: Point): number => densityBySpan(T, p_g + ambient);

/** Gauge pressure at another temperature and ambient of the gas that has the point's. */
export function alongLine(point: Point, T: number, ambient: number): number {
  return span2000(T, densityOfPoint(point)).p_Pa - ambient;
}
