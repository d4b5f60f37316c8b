// A state of a gas, explained: what a solver found, held against the equation of the model and against p = Z ρ R T.
import { relation, show, step4, type Trace } from '../basis/relation.js';
import type { GasModel } from './model.js';
import { factorByCubic } from './nitrogen/cubic-working.js';
import { cubicNitrogen } from './nitrogen/cubic.js';
import { idealNitrogen } from './nitrogen/ideal-gas.js';
import { nitrogen } from './nitrogen/nitrogen.js';
import { factorTermByTerm } from './nitrogen/working.js';

export const IDEAL_FACTOR = /* @__PURE__ */ relation({
  gives: 'Z',
  unit: '1',
  from: [],
  formula: '1',
  source: 'compression factor of an ideal gas, by definition',
  of: () => 1,
});

export const BY_FACTOR = /* @__PURE__ */ relation({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['Z', 'rho', 'R', 'T'],
  formula: 'Z * rho * R * T',
  source: 'pressure of a gas, by definition of its compression factor',
  of: (Z, rho, R, T) => Z * rho * R * T,
});

/**
 * The pressure of a gas from its temperature and molar density, with the equation of the model shown: reduced variables and
 * terms, the compression factor, and p = Z ρ R T with it. The solver had no part in it.
 *
 * @returns absolute pressure in Pa; undefined for a model whose equation is not told here
 */
export function explained(model: GasModel, T_K: number, rho: number, trace: Trace): number | undefined {
  const Z = factorOf(model, T_K, rho, trace);
  return Z === undefined ? undefined : step4(trace, BY_FACTOR, 'hand check', Z, rho, model.gasConstant_J_molK, T_K);
}

function factorOf(model: GasModel, T_K: number, rho: number, trace: Trace): number | undefined {
  switch (model.id) {
    case nitrogen.id:
      return factorTermByTerm(T_K, rho, trace);
    case cubicNitrogen.id:
      return factorByCubic(T_K, rho, trace);
    case idealNitrogen.id:
      show(trace, { relation: IDEAL_FACTOR, about: 'equation of state', values: [], result: 1 });
      return 1;
    default:
      return undefined;
  }
}
