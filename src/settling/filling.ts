import { collect, failIfAny, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { step2, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import {
  gaugeOf,
  need,
  temperatureOf,
  wrongKind,
  type GaugePressure,
  type Temperature,
  type Volume,
} from '../quantity/kind.js';
import { TO_GAUGE } from '../quantity/pressure.js';
import type { Read } from '../verdict/compare.js';
import {
  bottleSource,
  fedTo,
  filledAdiabatically,
  filledToPressure,
  pressureOf,
  steadySource,
  type Source,
  type State,
} from './energy.js';
import { movedInTime, movedToPressure } from './lumped.js';
import { showDensity, showFed, showFilling, wayOf, type ShownFilling } from './shown.js';
import {
  EXCHANGE,
  movedTo,
  startOf,
  stateRead,
  timesOf,
  UNTIL,
  wantedOf,
  type HeatExchange,
  type AtStop,
  type Heat,
  type Start,
  type HowFar,
  type RigidVessel,
  type Wanted,
} from './vessel.js';
import { needSpace } from '../target/space.js';

/** Where the gas comes from, before any is drawn. */
export interface FillingSupply {
  /** On the gauge of the bottle or bank. */
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
  /** Of the gas space of a bottle, which then empties and cools; left out, the supply stays at its pressure and temperature. */
  readonly volume?: Volume;
}

/** The end of filling by one way of exchanging heat. */
export interface Filled extends AtStop {
  readonly outcome: 'reached';
  /** Of a bottle whose volume is given: what it shows at the stop. */
  readonly supplyAfter?: { readonly pressure: GaugePressure; readonly temperature: Temperature };
}

/** A supply that does not go so far by one way of exchanging heat. Gas flows to the lower pressure. */
export interface SupplyTooLow {
  readonly outcome: 'supply too low';
  /** Of the vessel, on its gauge, at the stop. */
  readonly needed: GaugePressure;
  /** Of the supply by then, on its gauge; or that a bottle has no such gas by then: none, or liquid too. */
  readonly found: GaugePressure | 'empties before' | 'leaves the model before';
}

/**
 * The end of filling between its two bounds, each an outcome of its own: a supply that reaches one may be too low for the
 * other.
 */
export interface Filling {
  /** All heat of compression is gone at once: slow, by a large shell. */
  readonly isothermal: Filled | SupplyTooLow;
  /** No heat is gone at the stop: quick. Nothing is warmer. */
  readonly adiabatic: Filled | SupplyTooLow;
  /** With the time constant and duration that were stated. */
  readonly inTime?: Filled | SupplyTooLow;
}

/** What filling asks for. */
export interface FillingGiven {
  readonly supply: FillingSupply;
  readonly until: HowFar;
  readonly exchange?: HeatExchange;
}

export const SUPPLY: Fields = { pressure: 'as it is', temperature: 'as it is', volume: 'as it is' };
const FIELDS: Fields = { supply: SUPPLY, until: UNTIL, exchange: EXCHANGE };

/**
 * What the gauge and the temperature of the gas are when filling stops, and where the pressure settles: by the first law
 * for a rigid vessel, with throttled inflow (its enthalpy stays) and the real gas on both sides.
 *
 * The two bounds hold whatever the heat exchange is. Between them lies what happens; with a time constant of this vessel
 * and the minutes of filling it is computed, for gas that flows at a constant rate, has one temperature throughout, and
 * gives heat to a shell of constant temperature. The settled pressure depends on the gas added alone, not on the way.
 * Gas in the vessel is taken to be at rest before, at the temperature of the shell. A bottle whose volume is given takes
 * no heat up in the adiabatic bound and in time; steel and hose then warm it, and it feeds warmer.
 *
 * @param vessel a specification, or gas and volume
 * @param before what was read before filling; the ambient is that of all gauges here
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `not a number`,
 * `not positive`, `not an ambient pressure`, `gauge below vacuum`, `empty space`, `outside the model`, `liquid`,
 * `two phases`; `not one of several` (stop, settled, gas), `stop not beyond` the pressure before,
 * `leaves the model`, `outside bounds` for times
 * @example
 * ```ts
 * const supply = { pressure: gauge(200, 'bar'), temperature: temperature(40, '°C') };
 * const { adiabatic } = filling(spec, reading, { supply, until: { stop: gauge(154, 'bar') } });
 * adiabatic.outcome; // => 'reached'
 * if (adiabatic.outcome === 'reached') write(adiabatic.settled, { step: 0.1, unit: 'bar' }); // => '150.0 bar gauge'
 * if (adiabatic.outcome === 'reached') write(adiabatic.temperature, { step: 0.1, unit: '°C' }); // => '46.5 °C'
 * ```
 */
export function filling(vessel: RigidVessel, before: Read, given: FillingGiven, trace?: Trace): Filling {
  const start = startOf(vessel, before, trace);
  if (typeof given !== 'object' || given === null) wrongKind('statement of filling: supply and until', given, 'given');
  const { supply, until, exchange } = taken(given, FIELDS);
  const from = supplyOf(start, supply, 'given.supply', trace);
  const times = exchange === undefined ? undefined : timesOf(exchange, 'given.exchange');
  const wanted = wantedOf(start, until, 'in', trace);
  const inTime = times === undefined ? undefined : fill(start, from, wanted, times, trace);
  return {
    isothermal: fill(start, from, wanted, 'isothermal', trace),
    adiabatic: fill(start, from, wanted, 'adiabatic', trace),
    ...(inTime === undefined ? {} : { inTime }),
  };
}

/** A supply, checked: its state, its size against the vessel, and the ambient of its gauge. */
export interface CheckedSupply {
  readonly state: State;
  /** Of a bottle; `steady` for a supply that stays as it is. */
  readonly volume_m3: number | 'steady';
}

/** A supply whose parts were read once, checked. */
export function supplyOf(start: Start, supply: FillingSupply | undefined, path: string, trace?: Trace): CheckedSupply {
  if (typeof supply !== 'object' || supply === null) wrongKind('supply: pressure and temperature', supply, path);
  const { pressure, temperature, volume } = supply;
  const problems: Problem[] = [];
  collect(problems, `${path}.pressure`, () => need('gauge pressure', pressure, ''));
  collect(problems, `${path}.temperature`, () => need('temperature', temperature, ''));
  if (volume !== undefined) collect(problems, `${path}.volume`, () => needSpace(volume));
  failIfAny(problems);
  return {
    state: stateRead(start.model, pressure, temperature, start.ambient, path, 'supply', trace),
    volume_m3: volume === undefined ? 'steady' : volume.cubicMetres,
  };
}

/** The end of filling by one way of exchanging heat, or what the supply is short of. */
export function fill(
  start: Start,
  supply: CheckedSupply,
  wanted: Wanted,
  heat: Heat,
  trace?: Trace,
): Filled | SupplyTooLow {
  const { model, ambient } = start;
  const { state, volume_m3 } = supply;
  const steady = volume_m3 === 'steady';
  const source = steady ? steadySource(model, state) : bottleSource(model, state, volume_m3, start.volume_m3);
  const stop_Pa = has(wanted, 'stop_Pa') ? wanted.stop_Pa : undefined;
  const supply_Pa = pressureOf(model, supply.state);
  const tooLow = (needed_Pa: number, found: number | 'empties before' | 'leaves the model before'): SupplyTooLow => ({
    outcome: 'supply too low',
    needed: gaugeOf(TO_GAUGE.of(needed_Pa, ambient.pascals)),
    found: typeof found === 'string' ? found : gaugeOf(TO_GAUGE.of(found, ambient.pascals)),
  });
  if (stop_Pa !== undefined && stop_Pa > supply_Pa) return tooLow(stop_Pa, supply_Pa);
  const end = filledBy(start, source, wanted, heat);
  const drawn = end.rho - start.state.rho;
  const after = stateAfter(supply, start.volume_m3, source, drawn, heat);
  const after_Pa = pressureOf(model, after);
  const end_Pa = stop_Pa ?? pressureOf(model, end);
  // A bottle that has not so much gas has no state afterwards, nor has the vessel: what was to be settled at stands for it.
  if (!(after_Pa > 0)) {
    const least_Pa = has(wanted, 'rho') ? pressureOf(model, { T_K: start.state.T_K, rho: wanted.rho }) : wanted.stop_Pa;
    return tooLow(least_Pa, after.rho > 0 ? 'leaves the model before' : 'empties before');
  }
  if (end_Pa > after_Pa) return tooLow(end_Pa, after_Pa);
  const by = wayOf(heat);
  if (trace !== undefined) {
    if (heat === 'adiabatic') showFilling(trace, shownOf(start, end, supply, after));
    else if (heat === 'isothermal' && stop_Pa !== undefined) showDensity(trace, `stop, ${by}`, end, stop_Pa);
  }
  const moved = { outcome: 'reached' as const, ...movedTo(start, end, wanted, 'given.until', by, trace) };
  if (steady) return moved;
  if (trace !== undefined) {
    const ends = { before: state, after, p_Pa: after_Pa };
    showFed(trace, `supply after, ${by}`, ends, moved.gas.amount.moles, volume_m3);
  }
  const pressure = step2(trace, TO_GAUGE, `supply after, ${by}`, after_Pa, ambient.pascals);
  return { ...moved, supplyAfter: { pressure: gaugeOf(pressure), temperature: temperatureOf(after.T_K) } };
}

function shownOf({ model, volume_m3, state }: Start, end: State, supply: CheckedSupply, after: State): ShownFilling {
  const of = { model, volume_m3, start: state, end, supply: supply.state };
  const { volume_m3: bottle_m3 } = supply;
  return bottle_m3 === 'steady' ? of : { ...of, bottle: { volume_m3: bottle_m3, after } };
}

/** The supply at the stop; a bottle that gave more than it had has no temperature. */
function stateAfter(
  { state, volume_m3 }: CheckedSupply,
  vessel_m3: number,
  source: Source,
  drawn: number,
  heat: Heat,
): State {
  if (volume_m3 === 'steady') return state;
  if (heat !== 'isothermal') return source(drawn).state;
  const rho = fedTo(state.rho, drawn, volume_m3, vessel_m3);
  return { T_K: rho > 0 ? state.T_K : Number.NaN, rho };
}

function filledBy(start: Start, source: Source, wanted: Wanted, heat: Heat): State {
  const { model, state } = start;
  if (has(wanted, 'rho')) {
    if (heat === 'isothermal') return { T_K: state.T_K, rho: wanted.rho };
    if (heat === 'adiabatic') return filledAdiabatically(model, state, source, wanted.rho);
    return movedInTime(model, state, source, wanted.rho, heat);
  }
  const p_Pa = wanted.stop_Pa;
  const cold = model['~kernel'].density(state.T_K, p_Pa);
  if (heat === 'isothermal') return { T_K: state.T_K, rho: cold };
  const warm = filledToPressure(model, state, source, p_Pa);
  if (heat === 'adiabatic' || Number.isNaN(warm.rho)) return warm;
  return movedToPressure(model, state, source, p_Pa, [warm.rho, cold], heat);
}
