import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import {
  leavesModel,
  moreThanThereIs,
  notANumber,
  notOneOf,
  notPositive,
  outsideBounds,
  stopNotBeyond,
} from '../basis/problem.js';
import { step2, step3, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { AMOUNT, gasQuantity, type GasQuantity } from '../charge/charge.js';
import { DENSER, THINNER } from '../gas/amount.js';
import { densityAt, notEmpty, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  gaugeOf,
  need,
  temperatureOf,
  wrongKind,
  type AbsolutePressure,
  type Amount,
  type GaugePressure,
  type Temperature,
  type Volume,
} from '../quantity/kind.js';
import { belowVacuum, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import { inBar } from '../quantity/unit.js';
import { needAmbient } from '../target/conditions.js';
import { needSpace } from '../target/space.js';
import type { Read } from '../verdict/compare.js';
import type { State } from './energy.js';

/** A closed vessel of constant volume: an accumulator with its oil side drained, or a bottle. A specification is one. */
export interface RigidVessel {
  readonly gas: GasModel;
  /** Greater than zero. */
  readonly gasVolume: Volume;
}

/** How far gas is moved, in exactly one of three ways. */
export type HowFar =
  | {
      /** What the gauge shows at the moment at which the gas stops. */
      readonly stop: GaugePressure;
    }
  | {
      /** What it is to show once the gas has the temperature of the shell again. */
      readonly settled: GaugePressure;
    }
  | {
      /** The gas added or taken out; greater than zero. */
      readonly gas: Amount;
    };

/** How gas and shell exchange heat. Nobody but who has watched this vessel settle can know it. */
export interface HeatExchange {
  /** Minutes in which the difference between gas and shell falls to 1/e of itself, the gas at rest; greater than zero. */
  readonly timeConstantMinutes: number;
  /** Minutes for which the gas flows, at a constant rate; greater than zero, at most 100 time constants. */
  readonly movingMinutes: number;
}

/** The gas at the moment at which it stops, and what becomes of it. */
export interface AtStop {
  /** Of the gas, at the stop. */
  readonly temperature: Temperature;
  /** On the gauge, at the stop. */
  readonly pressure: GaugePressure;
  /** On the gauge, once the gas has the temperature of the shell again. */
  readonly settled: GaugePressure;
  /** The gas added or taken out. */
  readonly gas: GasQuantity;
}

/** A vessel whose gas is at rest, checked: the state of the gas, and the barometer. */
export interface Start {
  readonly model: GasModel;
  readonly volume_m3: number;
  readonly state: State;
  /** As read. */
  readonly pressure: GaugePressure;
  /** The same, absolute. */
  readonly p_Pa: number;
  readonly ambient: AbsolutePressure;
}

/** How heat is exchanged while gas moves: the two bounds, or so many time constants. */
export type Heat = 'isothermal' | 'adiabatic' | number;

/** {@link HowFar} for the arithmetic: an absolute pressure at the stop, or the density reached. */
export type Wanted = { readonly stop: GaugePressure; readonly stop_Pa: number } | { readonly rho: number };

export const READ: Fields = { pressure: 'as it is', temperature: 'as it is', ambient: 'as it is' };
export const UNTIL: Fields = { stop: 'as it is', settled: 'as it is', gas: 'as it is' };
export const EXCHANGE: Fields = { timeConstantMinutes: 'as it is', movingMinutes: 'as it is' };
const VESSEL: Fields = { gas: 'as it is', gasVolume: 'as it is' };

/** Beyond it the gas is at the temperature of the shell for every purpose, and following it in time costs more than it tells. */
const MOST_TIMES = 100;

/** A vessel with gas at rest in it, each part read once and checked. */
export function startOf(vessel: RigidVessel, before: Read, trace?: Trace): Start {
  if (typeof vessel !== 'object' || vessel === null) wrongKind('vessel: gas and gasVolume', vessel, 'vessel');
  if (typeof before !== 'object' || before === null)
    wrongKind('reading: pressure, temperature and ambient', before, 'before');
  const { gas, gasVolume } = taken(vessel, VESSEL);
  const own = taken(before, READ);
  const problems: Problem[] = [];
  collect(problems, 'vessel.gas', () => needModel(gas, ''));
  collect(problems, 'vessel.gasVolume', () => needSpace(gasVolume));
  collect(problems, 'before.pressure', () => need('gauge pressure', own.pressure, ''));
  collect(problems, 'before.temperature', () => need('temperature', own.temperature, ''));
  collect(problems, 'before.ambient', () => needAmbient(own.ambient, ''));
  failIfAny(problems);
  const state = stateRead(gas, own.pressure, own.temperature, own.ambient, 'before', 'before', trace);
  return {
    model: gas,
    volume_m3: gasVolume.cubicMetres,
    state,
    pressure: own.pressure,
    p_Pa: TO_ABSOLUTE.of(own.pressure.pascals, own.ambient.pascals),
    ambient: own.ambient,
  };
}

/** The state of gas whose gauge and temperature are known; refused where there is no gas, or none that the model knows. */
export function stateRead(
  model: GasModel,
  pressure: GaugePressure,
  temperature: Temperature,
  ambient: AbsolutePressure,
  path: string,
  about: string,
  trace?: Trace,
): State {
  const p_Pa = step2(trace, TO_ABSOLUTE, about, pressure.pascals, ambient.pascals);
  const where = `${path}.pressure`;
  if (p_Pa < 0) belowVacuum(pressure, ambient, where);
  notEmpty(p_Pa, where, 'Pa absolute');
  return { T_K: temperature.kelvins, rho: densityAt(model, temperature.kelvins, p_Pa, where, about, trace) };
}

/** How far gas is moved, checked: more than nothing, and in the direction in which it goes. */
export function wantedOf(start: Start, given: HowFar, direction: 'in' | 'out', trace?: Trace): Wanted {
  if (typeof given !== 'object' || given === null) wrongKind('limit: stop, settled or gas', given, 'given.until');
  const { stop, settled, gas } = given as Readonly<Partial<Record<'stop' | 'settled' | 'gas', unknown>>>;
  const stated = Object.entries({ stop, settled, gas }).filter(([, value]) => value !== undefined);
  if (stated.length !== 1) {
    fail(notOneOf, 'given.until', stated.map(([name]) => name).join(' and ') || 'none', {
      words: 'stop, settled, gas',
    });
  }
  if (gas !== undefined) {
    need('amount of substance', gas as Amount, 'given.until.gas');
    const { moles } = gas as Amount;
    if (moles === 0) fail(notPositive, 'given.until.gas', '0 mol');
    const inside = start.state.rho * start.volume_m3;
    if (direction === 'out' && moles >= inside)
      fail(moreThanThereIs, 'given.until.gas', `${moles} mol`, { contents: `${inside} mol` });
    const rho = step3(trace, direction === 'in' ? DENSER : THINNER, 'settled', start.state.rho, moles, start.volume_m3);
    pvtAt(start.model, start.state.T_K, rho, 'given.until.gas', 'settled', trace);
    return { rho };
  }
  const path = stop === undefined ? 'given.until.settled' : 'given.until.stop';
  const pressure = (stop ?? settled) as GaugePressure;
  need('gauge pressure', pressure, path);
  if (pressure.pascals < -start.ambient.pascals) belowVacuum(pressure, start.ambient, path);
  const about = stop === undefined ? 'settled' : 'stop';
  const p_Pa = step2(trace, TO_ABSOLUTE, about, pressure.pascals, start.ambient.pascals);
  notEmpty(p_Pa, path, 'Pa absolute');
  if (direction === 'in' ? p_Pa <= start.p_Pa : p_Pa >= start.p_Pa) {
    fail(stopNotBeyond, path, `${inBar(pressure.pascals)} gauge`, {
      side: direction === 'in' ? 'above' : 'below',
      before: inBar(start.pressure.pascals),
    });
  }
  if (stop !== undefined) {
    densityAt(start.model, start.state.T_K, p_Pa, path, 'stop');
    return { stop: pressure, stop_Pa: p_Pa };
  }
  return { rho: densityAt(start.model, start.state.T_K, p_Pa, path, 'settled', trace) };
}

/** Refuses times that nothing takes, and more of them than can be followed. */
export function timesOf(exchange: HeatExchange, path: string): number {
  if (typeof exchange !== 'object' || exchange === null)
    wrongKind('heat exchange: timeConstantMinutes and movingMinutes', exchange, path);
  const { timeConstantMinutes, movingMinutes } = exchange;
  const problems: Problem[] = [];
  collect(problems, `${path}.timeConstantMinutes`, () => needMinutes(timeConstantMinutes));
  collect(problems, `${path}.movingMinutes`, () => needMinutes(movingMinutes));
  failIfAny(problems);
  const times = movingMinutes / timeConstantMinutes;
  if (times > MOST_TIMES) {
    fail(outsideBounds, `${path}.movingMinutes`, `${movingMinutes} min`, {
      bounds: `at most ${MOST_TIMES} time constants; gas that moves more slowly stays at the temperature of the shell`,
    });
  }
  return times;
}

/** Refuses what is no length of time. */
export function needMinutes(minutes: number, path = ''): void {
  if (typeof minutes !== 'number' || !Number.isFinite(minutes)) fail(notANumber, path, quote(minutes));
  if (!(minutes > 0)) fail(notPositive, path, `${minutes} min`);
}

/**
 * A state at the end of a move as quantities; refused by name where the gas is not gas, or outside the model.
 *
 * @param by the way of exchanging heat, as steps name it
 */
export function movedTo(start: Start, end: State, wanted: Wanted, path: string, by: string, trace?: Trace): AtStop {
  const { model, volume_m3, state, ambient } = start;
  if (Number.isNaN(end.T_K))
    fail(leavesModel, path, 'a change without heat', { model: model.id, reason: model.validity.reason });
  const adding = end.rho > state.rho;
  const at = pvtAt(model, end.T_K, end.rho, path, `stop, ${by}`, trace);
  const [high, low] = adding ? [end.rho, state.rho] : [state.rho, end.rho];
  const moles = step3(trace, AMOUNT, `${adding ? 'add' : 'vent'}, ${by}`, volume_m3, high, low);
  return {
    temperature: temperatureOf(end.T_K),
    // A stop that was given is shown as given.
    pressure: has(wanted, 'stop')
      ? wanted.stop
      : gaugeOf(step2(trace, TO_GAUGE, `stop, ${by}`, at.p_Pa, ambient.pascals)),
    settled: gaugeOf(settledGauge(start, end.rho, path, trace, `settled, ${by}`)),
    gas: gasQuantity(model, moles, adding ? 'up' : 'down', trace),
  };
}

/** What the gauge shows at a density once the gas has the temperature of the shell. */
export function settledGauge(start: Start, rho: number, path: string, trace?: Trace, about = 'settled'): number {
  const { p_Pa } = pvtAt(start.model, start.state.T_K, rho, path, about, trace);
  return step2(trace, TO_GAUGE, about, p_Pa, start.ambient.pascals);
}
