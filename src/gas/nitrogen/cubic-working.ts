// The cubic equation as the paper has it, in the molar density, for whoever follows the working by hand.
import { relation, step4, step5, type Trace } from '../../basis/relation.js';
import { R_CODATA_2018 as R } from '../constant.js';
import { a_c, b, kappa, T_c } from './cubic.js';

const PAPER = 'Peng and Robinson (1976), Ind. Eng. Chem. Fundam. 15, 59';

export const ATTRACTION = /* @__PURE__ */ relation({
  gives: 'a_T',
  unit: 'Pa m6/mol2',
  from: ['a_c', 'kappa', 'T', 'T_reducing'],
  formula: 'a_c * (1 + kappa * (1 - sqrt(T / T_reducing)))^2',
  source: `attraction at a temperature: ${PAPER}`,
  of: (attraction, slope, T, T_reducing) => {
    const root = 1 + slope * (1 - Math.sqrt(T / T_reducing));
    return attraction * (root * root);
  },
});

export const CUBIC_FACTOR = /* @__PURE__ */ relation({
  gives: 'Z',
  unit: '1',
  from: ['rho', 'b', 'a_T', 'R', 'T'],
  formula: '1 / (1 - b * rho) - a_T * rho / (R * T * (1 + 2 * b * rho - b * rho * (b * rho)))',
  source: `compression factor: ${PAPER}`,
  of: (rho, size, a_T, gasConstant, T) =>
    1 / (1 - size * rho) - (a_T * rho) / (gasConstant * T * (1 + 2 * size * rho - size * rho * (size * rho))),
});

/** The compression factor at a temperature and a molar density, shown. */
export function factorByCubic(T_K: number, rho: number, trace: Trace): number {
  const about = 'equation of state';
  const a_T = step4(trace, ATTRACTION, about, a_c, kappa, T_K, T_c);
  return step5(trace, CUBIC_FACTOR, about, rho, b, a_T, R, T_K);
}
