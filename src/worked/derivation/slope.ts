// By how much the result of a step changes with what goes into it: how far the digits of a printed number reach.
import { has } from '../../basis/has.js';
import type { Arithmetic, Relation } from '../../basis/relation.js';
import { caloricOf, propertyIn, type CaloricProperty } from '../../gas/caloric.js';
import { DENSITY, PRESSURE, pvtOf, TEMPERATURE_OF } from '../../gas/door.js';
import type { GasModel } from '../../gas/model.js';

/** How a result changes with one of the values of its step. */
export function slopeOf(
  relation: Relation,
  values: readonly number[],
  i: number,
  result: number,
  model: GasModel | undefined,
): number {
  if (isClosed(relation)) {
    const value = values[i] ?? Number.NaN;
    const by = value === 0 ? 1e-6 : Math.abs(value) * 1e-6;
    const at = (x: number): number => relation.of(...values.map((one, k) => (k === i ? x : one)));
    return (at(value + by) - at(value - by)) / (2 * by);
  }
  const property = propertyIn(relation);
  if (model !== undefined && property !== undefined)
    return slopeOfProperty(model, relation, property, values, result, i);
  const state = model === undefined ? undefined : stateIn(relation, values, result);
  if (model === undefined || state === undefined) return 0;
  const { dpdT_rho, dpdrho_T } = pvtOf(model, state.T_K, state.rho);
  const [byFirst, bySecond] =
    relation === DENSITY
      ? [-dpdT_rho / dpdrho_T, 1 / dpdrho_T]
      : relation === PRESSURE
        ? [dpdT_rho, dpdrho_T]
        : [-dpdrho_T / dpdT_rho, 1 / dpdT_rho];
  return i === 0 ? byFirst : bySecond;
}

/** The same for a property of a state, and for a temperature that is found by one. */
function slopeOfProperty(
  model: GasModel,
  { gives, from }: Relation,
  property: CaloricProperty,
  values: readonly number[],
  result: number,
  i: number,
): number {
  const of = (symbol: string): number => (gives === symbol ? result : (values[from.indexOf(symbol)] ?? Number.NaN));
  const [T, rho] = [of('T'), of('rho')];
  const [by_T, by_rho] = [T * 1e-6, rho * 1e-6];
  const at = (t: number, r: number): number => caloricOf(model, property, t, r);
  const withT = (at(T + by_T, rho) - at(T - by_T, rho)) / (2 * by_T);
  const withRho = (at(T, rho + by_rho) - at(T, rho - by_rho)) / (2 * by_rho);
  if (gives !== 'T') return i === 0 ? withT : withRho;
  return i === 0 ? -withRho / withT : 1 / withT;
}

function isClosed(relation: Relation): relation is Arithmetic<readonly string[]> {
  return has(relation, 'of') && typeof relation.of === 'function';
}

interface State {
  readonly T_K: number;
  readonly rho: number;
  readonly p_Pa: number;
}

/** The state of the gas that a step is about, if it is about one. */
export function stateIn(
  relation: Relation,
  [first = 0, second = 0]: readonly number[],
  result: number,
): State | undefined {
  if (relation === DENSITY) return { T_K: first, p_Pa: second, rho: result };
  if (relation === PRESSURE) return { T_K: first, rho: second, p_Pa: result };
  return relation === TEMPERATURE_OF ? { rho: first, p_Pa: second, T_K: result } : undefined;
}
