import { has } from '../basis/has.js';
import type { Trace } from '../basis/relation.js';
import { wrongKind } from '../quantity/kind.js';
import { taken, type Fields } from '../basis/taken.js';
import type { Read } from '../verdict/compare.js';
import { expandedIsentropically, expandedToPressure, type State } from './energy.js';
import { showDensity, showExpansion, wayOf } from './shown.js';
import type { Heat } from './vessel.js';
import { movedInTime, movedToPressure } from './lumped.js';
import {
  EXCHANGE,
  movedTo,
  startOf,
  timesOf,
  UNTIL,
  wantedOf,
  type HeatExchange,
  type AtStop,
  type Start,
  type HowFar,
  type RigidVessel,
  type Wanted,
} from './vessel.js';

/** The end of letting gas out, between its two bounds. */
export interface Bleeding {
  /** The shell keeps the gas at its temperature: slow. */
  readonly isothermal: AtStop;
  /** No heat reaches the gas until the stop: what remains has expanded along its isentrope. Nothing is colder. */
  readonly adiabatic: AtStop;
  /** With the time constant and duration that were stated. */
  readonly inTime?: AtStop;
}

/** What letting gas out asks for. */
export interface BleedingGiven {
  readonly until: HowFar;
  readonly exchange?: HeatExchange;
}

const FIELDS: Fields = { until: UNTIL, exchange: EXCHANGE };

/**
 * What the gauge and the temperature of the gas are when bleeding stops, and to where the pressure recovers. The gas that
 * remains is colder at the stop, by more the quicker it went, and then warms to the shell.
 *
 * It holds for a bottle that feeds as well: `{ gas, gasVolume }` of the bottle, until the gas that was drawn. It shows less
 * while it is cold than once it has settled.
 *
 * @param vessel a specification, or gas and volume
 * @param before what was read before; the gas at rest, at the temperature of the shell
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `not a number`,
 * `not positive`, `not an ambient pressure`, `gauge below vacuum`, `empty space`, `outside the model`, `liquid`,
 * `two phases`; `not one of several` (stop, settled, gas), `stop not beyond` the pressure before, `more than there is`,
 * `leaves the model`, `outside bounds` for times
 * @example
 * ```ts
 * const before = { ...reading, pressure: gauge(170, 'bar') };
 * const { adiabatic } = bleeding(spec, before, { until: { stop: gauge(152, 'bar') } });
 * write(adiabatic.settled, { step: 0.1, unit: 'bar' }); // => '158.6 bar gauge'
 * ```
 */
export function bleeding(vessel: RigidVessel, before: Read, given: BleedingGiven, trace?: Trace): Bleeding {
  const start = startOf(vessel, before, trace);
  if (typeof given !== 'object' || given === null) wrongKind('statement of bleeding: until', given, 'given');
  const { until, exchange } = taken(given, FIELDS);
  const times = exchange === undefined ? undefined : timesOf(exchange, 'given.exchange');
  const wanted = wantedOf(start, until, 'out', trace);
  const inTime = times === undefined ? undefined : bleed(start, wanted, times, trace);
  return {
    isothermal: bleed(start, wanted, 'isothermal', trace),
    adiabatic: bleed(start, wanted, 'adiabatic', trace),
    ...(inTime === undefined ? {} : { inTime }),
  };
}

/** The end of letting gas out by one way of exchanging heat. */
export function bleed(start: Start, wanted: Wanted, heat: Heat, trace?: Trace): AtStop {
  const end = bledBy(start, wanted, heat);
  const by = wayOf(heat);
  if (trace !== undefined && !Number.isNaN(end.T_K)) {
    if (heat === 'adiabatic') showExpansion(trace, start.model, start.state, end, ['before', `stop, ${by}`]);
    else if (heat === 'isothermal' && has(wanted, 'stop')) showDensity(trace, `stop, ${by}`, end, wanted.stop_Pa);
  }
  return movedTo(start, end, wanted, 'given.until', by, trace);
}

function bledBy({ model, state }: Start, wanted: Wanted, heat: Heat): State {
  if (has(wanted, 'rho')) {
    if (heat === 'isothermal') return { T_K: state.T_K, rho: wanted.rho };
    if (heat === 'adiabatic') return expandedIsentropically(model, state, wanted.rho);
    return movedInTime(model, state, undefined, wanted.rho, heat);
  }
  const p_Pa = wanted.stop_Pa;
  const warm = model['~kernel'].density(state.T_K, p_Pa);
  if (heat === 'isothermal') return { T_K: state.T_K, rho: warm };
  const cold = expandedToPressure(model, state, p_Pa);
  if (heat === 'adiabatic' || Number.isNaN(cold.rho)) return cold;
  return movedToPressure(model, state, undefined, p_Pa, [warm, cold.rho], heat);
}
