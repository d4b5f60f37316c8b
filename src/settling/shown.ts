// The working of filling and letting out, for whoever traces: the balances on both sides of a state that a solver found.
// Its density stands for what was found by trial; the steps lead to the temperature that goes with it, and the pressure
// that both give is the one wanted.
import { relation, show, step2, step3, step4, step5, type Trace } from '../basis/relation.js';
import { AMOUNT } from '../charge/charge.js';
import { CONTENTS, THINNER } from '../gas/amount.js';
import { ENERGY, ENTHALPY, ENTROPY, showRoot, shownProperty, T_BY_ENERGY, T_BY_ENTROPY } from '../gas/caloric.js';
import { DENSITY, PRESSURE } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import type { State } from './energy.js';
import type { Heat } from './vessel.js';

export const ENERGY_FILLED = /* @__PURE__ */ relation({
  gives: 'U',
  unit: 'J',
  from: ['n_1', 'u_1', 'n_in', 'h_in'],
  formula: 'n_1 * u_1 + n_in * h_in',
  source: 'first law for a rigid vessel that is filled without heat: what flows in brings its enthalpy',
  of: (n_1, u_1, n_in, h_in) => n_1 * u_1 + n_in * h_in,
});

export const ENERGY_FED = /* @__PURE__ */ relation({
  gives: 'U_in',
  unit: 'J',
  from: ['V', 'rho_high', 'u_high', 'rho_low', 'u_low'],
  formula: 'V * (rho_high * u_high - rho_low * u_low)',
  source: 'first law for a rigid vessel that feeds another without heat: what it has lost the other has',
  of: (V, rho_high, u_high, rho_low, u_low) => V * (rho_high * u_high - rho_low * u_low),
});

export const ENERGY_RECEIVED = /* @__PURE__ */ relation({
  gives: 'U',
  unit: 'J',
  from: ['n_1', 'u_1', 'U_in'],
  formula: 'n_1 * u_1 + U_in',
  source: 'first law for a rigid vessel that is filled from another without heat',
  of: (n_1, u_1, U_in) => n_1 * u_1 + U_in,
});

export const ENERGY_PER_AMOUNT = /* @__PURE__ */ relation({
  gives: 'u_mol',
  unit: 'J/mol',
  from: ['U', 'n_1', 'n_in'],
  formula: 'U / (n_1 + n_in)',
  source: 'internal energy by the amount of gas, by definition',
  of: (U, n_1, n_in) => U / (n_1 + n_in),
});

/** A way of exchanging heat, as steps name it. */
export function wayOf(heat: Heat): 'isothermal' | 'adiabatic' | 'in time' {
  return typeof heat === 'number' ? 'in time' : heat;
}

/** The density at a stop whose temperature is known. */
export function showDensity(trace: Trace, about: string, { T_K, rho }: State, p_Pa: number): void {
  show(trace, { relation: DENSITY, about, values: [T_K, p_Pa], result: rho });
}

/** An expansion along an isentrope. */
export function showExpansion(
  trace: Trace,
  model: GasModel,
  start: State,
  end: State,
  [before, after]: readonly [string, string],
): void {
  const s = shownProperty(trace, ENTROPY, before, model, start);
  showRoot(trace, T_BY_ENTROPY, after, end, s);
}

/** What a bottle shows once it has fed so much. */
export function showFed(
  trace: Trace,
  about: string,
  { before, after, p_Pa }: { readonly before: State; readonly after: State; readonly p_Pa: number },
  moles: number,
  volume_m3: number,
): void {
  step3(trace, THINNER, about, before.rho, moles, volume_m3);
  show(trace, { relation: PRESSURE, about, values: [after.T_K, after.rho], result: p_Pa });
}

/** A vessel that is filled without heat: before, at the stop, and where the gas comes from. */
export interface ShownFilling {
  readonly model: GasModel;
  readonly volume_m3: number;
  readonly start: State;
  readonly end: State;
  readonly supply: State;
  /** Of a bottle: its volume, and its gas at the stop. */
  readonly bottle?: { readonly volume_m3: number; readonly after: State };
}

const STOP = 'stop, adiabatic';
const SUPPLY_AFTER = 'supply after, adiabatic';

/** The energy balance of a filling without heat. */
export function showFilling(trace: Trace, { model, volume_m3, start, end, supply, bottle }: ShownFilling): void {
  const n_1 = step2(trace, CONTENTS, 'before', volume_m3, start.rho);
  const u_1 = shownProperty(trace, ENERGY, 'before', model, start);
  const n_in = step3(trace, AMOUNT, STOP, volume_m3, end.rho, start.rho);
  let U: number;
  if (bottle === undefined) {
    const h_in = shownProperty(trace, ENTHALPY, 'supply', model, supply);
    U = step4(trace, ENERGY_FILLED, STOP, n_1, u_1, n_in, h_in);
  } else {
    const { volume_m3: V, after } = bottle;
    step3(trace, THINNER, SUPPLY_AFTER, supply.rho, n_in, V);
    showExpansion(trace, model, supply, after, ['supply', SUPPLY_AFTER]);
    const u_high = shownProperty(trace, ENERGY, 'supply', model, supply);
    const u_low = shownProperty(trace, ENERGY, SUPPLY_AFTER, model, after);
    const U_in = step5(trace, ENERGY_FED, 'supply', V, supply.rho, u_high, after.rho, u_low);
    U = step3(trace, ENERGY_RECEIVED, STOP, n_1, u_1, U_in);
  }
  const u = step3(trace, ENERGY_PER_AMOUNT, STOP, U, n_1, n_in);
  showRoot(trace, T_BY_ENERGY, STOP, end, u);
}
