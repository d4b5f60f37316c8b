import { fail, quote } from '../basis/fault.js';
import { leavesModel, notMinutesAtRest, stopNotBeyond } from '../basis/problem.js';
import { step2, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { pvtAt } from '../gas/door.js';
import {
  gaugeOf,
  need,
  pressureDifferenceOf,
  temperatureOf,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
} from '../quantity/kind.js';
import { DIFFERENCE } from '../quantity/pressure.js';
import { inBar } from '../quantity/unit.js';
import type { Read } from '../verdict/compare.js';
import { cooledTo } from './cooling.js';
import { expandedIsentropically, stateWithPressure, type State } from './energy.js';
import { showExpansion } from './shown.js';
import { needMinutes, settledGauge, startOf, stateRead, type Start, type RigidVessel } from './vessel.js';

/** How the oil left, and how long ago. */
export interface DrainingGiven {
  /** Of the hydraulic system before draining, when gas and oil were at rest at the temperature of the shell. */
  readonly systemPressure: GaugePressure;
  /** Since the last of the oil left; zero or more. */
  readonly minutesSince: number;
  /** Of this vessel; without one no time takes anything off the bound. */
  readonly timeConstantMinutes: number | 'not known';
}

/** By how much a reading after draining may still be low. */
export interface Draining {
  /** Temperature that the gas has now, if none of its expansion was warmed. Nothing is colder. */
  readonly coldest: Temperature;
  /** What the gauge settles at: at least the reading itself, the oil having left so slowly that the gas stayed warm. */
  readonly settled: { readonly lowest: GaugePressure; readonly highest: GaugePressure };
  /** How far the reading may lie below what it settles at. */
  readonly mostLow: PressureDifference;
}

const FIELDS: Fields = { systemPressure: 'as it is', minutesSince: 'as it is', timeConstantMinutes: 'as it is' };

/**
 * The largest error that a reading may still have because the gas is cold from expanding while the oil left. It lies
 * between none, for oil that left slowly (isothermal), and that of gas which was warmed by nothing (isentropic) and has
 * since approached the shell with the time constant of this vessel.
 *
 * The temperature of `read` is that of the shell, at which gas and oil were at rest before draining: after long running
 * under changing pressure they were not, and this is no bound.
 *
 * @param vessel a specification, or gas and volume
 * @param read what the gas gauge shows now, the oil side drained
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `not a number`,
 * `not positive`, `not minutes at rest`, `not an ambient pressure`, `gauge below vacuum`, `empty space`,
 * `outside the model`, `liquid`, `two phases`; `stop not beyond` for a reading that is not below the system pressure,
 * `leaves the model` for an expansion that ends in liquid
 * @example
 * ```ts
 * const given = { systemPressure: gauge(200, 'bar'), minutesSince: 5, timeConstantMinutes: 4 };
 * const { mostLow } = draining(spec, reading, given);
 * write(mostLow, { step: 0.1, unit: 'bar' }); // => '7.0 bar difference'
 * ```
 */
export function draining(vessel: RigidVessel, read: Read, given: DrainingGiven, trace?: Trace): Draining {
  const now = startOf(vessel, read, trace);
  if (typeof given !== 'object' || given === null)
    wrongKind('statement of draining: systemPressure, minutesSince and timeConstantMinutes', given, 'given');
  const { systemPressure, minutesSince, timeConstantMinutes } = taken(given, FIELDS);
  need('gauge pressure', systemPressure, 'given.systemPressure');
  if (typeof minutesSince !== 'number' || !Number.isFinite(minutesSince) || minutesSince < 0)
    fail(notMinutesAtRest, 'given.minutesSince', quote(minutesSince));
  if (timeConstantMinutes !== 'not known') needMinutes(timeConstantMinutes, 'given.timeConstantMinutes');
  const reading = now.pressure.pascals;
  if (systemPressure.pascals <= reading) {
    fail(stopNotBeyond, 'given.systemPressure', `${inBar(systemPressure.pascals)} gauge`, {
      side: 'above',
      before: inBar(reading),
    });
  }
  const shell = temperatureOf(now.state.T_K);
  const before = stateRead(
    now.model,
    systemPressure,
    shell,
    now.ambient,
    'given.systemPressure',
    'before draining',
    trace,
  );
  const cold = coldestBehind(now, before, minutesSince, timeConstantMinutes);
  if (Number.isNaN(cold.rho)) {
    fail(leavesModel, 'given.systemPressure', 'an expansion without heat', {
      model: now.model.id,
      reason: now.model.validity.reason,
    });
  }
  if (trace !== undefined) showCold(trace, now, before, cold, { minutesSince, timeConstantMinutes });
  const highest = settledGauge(now, cold.rho, 'given.systemPressure', trace);
  return {
    coldest: temperatureOf(cold.T_K),
    settled: { lowest: now.pressure, highest: gaugeOf(highest) },
    mostLow: pressureDifferenceOf(step2(trace, DIFFERENCE, 'settled', highest, reading)),
  };
}

/** How the coldest gas comes about, up to the pressure that it shows now. */
function showCold(
  trace: Trace,
  now: Start,
  before: State,
  cold: State,
  { minutesSince, timeConstantMinutes }: Omit<DrainingGiven, 'systemPressure'>,
): void {
  const expanded = expandedIsentropically(now.model, before, cold.rho);
  showExpansion(trace, now.model, before, expanded, ['before draining', 'just drained']);
  if (timeConstantMinutes !== 'not known') {
    const stop: Start = { ...now, state: expanded };
    cooledTo({ stop, shell_K: now.state.T_K, timeConstantMinutes }, minutesSince, trace);
  }
  pvtAt(now.model, cold.T_K, cold.rho, 'given.systemPressure', 'coldest', trace);
}

/** The coldest gas that can be behind the reading: what expanded along its isentrope to its density, less what it has warmed. */
function coldestBehind(now: Start, before: State, minutes: number, timeConstant: number | 'not known'): State {
  const { model, state, p_Pa } = now;
  const path = (rho: number): State => {
    const expanded = expandedIsentropically(model, before, rho);
    if (timeConstant === 'not known') return expanded;
    const stop: Start = { ...now, state: expanded };
    return { T_K: cooledTo({ stop, shell_K: state.T_K, timeConstantMinutes: timeConstant }, minutes), rho };
  };
  return stateWithPressure(model, path, p_Pa, [state.rho, before.rho], 'too low');
}
