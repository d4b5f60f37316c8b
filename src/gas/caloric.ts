// Energy, enthalpy and entropy of a state, and temperatures that are found by them, as steps for whoever traces. They are
// per amount, on the zero of the model. Nothing is computed without a trace.
import { show, type Relation, type Trace } from '../basis/relation.js';
import { implicit } from './door.js';
import type { GasModel, Properties } from './model.js';

export const ENERGY = /* @__PURE__ */ implicit({
  gives: 'u_mol',
  unit: 'J/mol',
  from: ['T', 'rho'],
  formula: 'u(T, rho)',
  source: 'the gas model',
});

export const ENTHALPY = /* @__PURE__ */ implicit({
  gives: 'h_mol',
  unit: 'J/mol',
  from: ['T', 'rho'],
  formula: 'h(T, rho)',
  source: 'the gas model',
});

export const ENTROPY = /* @__PURE__ */ implicit({
  gives: 's_mol',
  unit: 'J/(mol K)',
  from: ['T', 'rho'],
  formula: 's(T, rho)',
  source: 'the gas model',
});

/** The temperature at which a density has an energy: a root. */
export const T_BY_ENERGY = /* @__PURE__ */ implicit({
  gives: 'T',
  unit: 'K',
  from: ['rho', 'u_mol'],
  formula: 'u(T, rho) = u_mol',
  source: 'the gas model',
});

/** The temperature at which a density has an entropy: a root. */
export const T_BY_ENTROPY = /* @__PURE__ */ implicit({
  gives: 'T',
  unit: 'K',
  from: ['rho', 's_mol'],
  formula: 's(T, rho) = s_mol',
  source: 'the gas model',
});

/** A property that a relation speaks of. */
export type CaloricProperty = 'u_J_mol' | 'h_J_mol' | 's_J_molK';

type Property = Relation<readonly ['T', 'rho']>;

/** Which property a relation speaks of; undefined for one that speaks of none. */
export function propertyIn(relation: Relation): CaloricProperty | undefined {
  if (relation === ENERGY || relation === T_BY_ENERGY) return 'u_J_mol';
  if (relation === ENTHALPY) return 'h_J_mol';
  return relation === ENTROPY || relation === T_BY_ENTROPY ? 's_J_molK' : undefined;
}

/** A property of a state that is known to lie inside the model. */
export function caloricOf(model: GasModel, property: CaloricProperty, T_K: number, rho: number): number {
  const of: Properties = { u_J_mol: 0, h_J_mol: 0, s_J_molK: 0, cv_J_molK: 0, cp_J_molK: 0, w_m_s: 0, jt_K_Pa: 0 };
  model['~kernel'].properties(T_K, rho, of);
  return of[property];
}

/** A property of a state, shown. */
export function shownProperty(
  trace: Trace,
  relation: Property,
  about: string,
  model: GasModel,
  { T_K, rho }: { readonly T_K: number; readonly rho: number },
): number {
  const result = caloricOf(model, propertyIn(relation) ?? 'u_J_mol', T_K, rho);
  show(trace, { relation, about, values: [T_K, rho], result });
  return result;
}

/** Shows the temperature at which a density has an energy or an entropy. */
export function showRoot(
  trace: Trace,
  relation: typeof T_BY_ENERGY | typeof T_BY_ENTROPY,
  about: string,
  { T_K, rho }: { readonly T_K: number; readonly rho: number },
  property: number,
): void {
  show(trace, { relation, about, values: [rho, property], result: T_K });
}
