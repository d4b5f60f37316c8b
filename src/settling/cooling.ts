import { fail, quote, under } from '../basis/fault.js';
import { negative, notANumber, outsideBounds } from '../basis/problem.js';
import { relation, step2, step3, step4, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { pvtAt, temperatureAt, unsolved } from '../gas/door.js';
import { exp, log } from '../gas/elementary.js';
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
import { DIFFERENCE, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import type { Read } from '../verdict/compare.js';
import { needMinutes, settledGauge, startOf, type Start, type RigidVessel } from './vessel.js';

/** Gas at rest that approaches the temperature of its shell. */
export interface SettlingGiven {
  /** Temperature of the shell, which stays. */
  readonly shell: Temperature;
  /** Minutes in which the difference between gas and shell falls to 1/e of itself; greater than zero. */
  readonly timeConstantMinutes: number;
  /** When to say what the gauge shows: minutes since the gas stopped, zero or more; at most 1000 of them. */
  readonly minutes: readonly number[];
  /** How near to settled counts as settled; at least 1 Pa. */
  readonly within: PressureDifference;
}

/** What the gauge shows at a time while the gas settles. */
export interface SettlingPoint {
  readonly minutes: number;
  readonly temperature: Temperature;
  readonly pressure: GaugePressure;
  /** Above the settled pressure; negative while the gas is colder than the shell. */
  readonly offSettled: PressureDifference;
}

/** The gauge against time, and when it may be read. */
export interface SettlingCurve {
  readonly settled: GaugePressure;
  readonly points: readonly SettlingPoint[];
  /** Minutes until the gauge is within the difference that was stated; zero if it is at the start. */
  readonly minutesUntilWithin: number;
}

export const SHARE_LEFT = /* @__PURE__ */ relation({
  gives: 'x',
  unit: '1',
  from: ['t', 't_c'],
  formula: 'exp(-t / t_c)',
  source: "Newton's law of cooling: the gas of one temperature in a shell of constant temperature",
  of: (t, t_c) => exp(-t / t_c),
});

export const COOLED = /* @__PURE__ */ relation({
  gives: 'T',
  unit: 'K',
  from: ['T_shell', 'T_stop', 'x'],
  formula: 'T_shell + (T_stop - T_shell) * x',
  source: "Newton's law of cooling: the gas of one temperature in a shell of constant temperature",
  of: (T_shell, T_stop, x) => T_shell + (T_stop - T_shell) * x,
});

export const ABOVE_SETTLED = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_settled', 'dp'],
  formula: 'p_settled + dp',
  source: 'what counts as settled, above the settled pressure',
  of: (p_settled, dp) => p_settled + dp,
});

export const BELOW_SETTLED = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_settled', 'dp'],
  formula: 'p_settled - dp',
  source: 'what counts as settled, below the settled pressure',
  of: (p_settled, dp) => p_settled - dp,
});

export const MINUTES_UNTIL = /* @__PURE__ */ relation({
  gives: 't',
  unit: 'min',
  from: ['t_c', 'T_stop', 'T_shell', 'T'],
  formula: 't_c * log((T_stop - T_shell) / (T - T_shell))',
  source: "Newton's law of cooling: the gas of one temperature in a shell of constant temperature",
  of: (t_c, T_stop, T_shell, T) => t_c * log((T_stop - T_shell) / (T - T_shell)),
});

const FIELDS: Fields = {
  shell: 'as it is',
  timeConstantMinutes: 'as it is',
  minutes: ['as it is', { most: 1000, what: 'minutes' }],
  within: 'as it is',
};

/**
 * What the gauge shows while gas at rest settles at constant volume, and from when on it is near enough to be read. The gas
 * approaches the shell as exp(−t/τ); its pressure follows through the gas model.
 *
 * One time constant is a simplification: gas that was stirred by filling gives its heat faster at first than gas that has
 * come to rest, and the shell warms a little. So fit it from late readings rather than early ones, and read again.
 *
 * @param vessel a specification, or gas and volume
 * @param atStop what the gauge shows when the gas stops, with the temperature that the gas then has: that of the end of
 * {@link filling} or {@link bleeding}, or the coldest of {@link draining}
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `not a number`,
 * `not positive`, `outside bounds`, `negative`, `too long`, `not an ambient pressure`, `gauge below vacuum`, `empty space`,
 * `outside the model`, `liquid`, `two phases`
 * @example
 * ```ts
 * const atStop = { pressure: gauge(154, 'bar'), temperature: temperature(46.5, '°C'), ambient: reading.ambient };
 * const shell = { shell: temperature(40, '°C'), timeConstantMinutes: 4 };
 * const curve = settlingCurve(spec, atStop, { ...shell, minutes: [0, 5, 10], within: pressureDifference(0.5, 'bar') });
 * curve.points.map(({ pressure }) => write(pressure, { step: 0.1, unit: 'bar' })); // => ['154.0 bar gauge', '151.1 bar gauge', '150.3 bar gauge']
 * curve.minutesUntilWithin.toFixed(1); // => '8.3'
 * ```
 */
export function settlingCurve(vessel: RigidVessel, atStop: Read, given: SettlingGiven, trace?: Trace): SettlingCurve {
  const stop = startOf(vessel, atStop, trace);
  if (typeof given !== 'object' || given === null)
    wrongKind('statement of settling: shell, timeConstantMinutes, minutes and within', given, 'given');
  const { shell, timeConstantMinutes, minutes, within } = under('given', () => taken(given, FIELDS));
  need('temperature', shell, 'given.shell');
  needMinutes(timeConstantMinutes, 'given.timeConstantMinutes');
  needTimes(minutes);
  need('pressure difference', within, 'given.within');
  // Below it, rounding of the temperature tells when.
  if (!(within.pascals >= 1)) fail(outsideBounds, 'given.within', `${within.pascals} Pa`, { bounds: 'at least 1 Pa' });

  const rest: Start = { ...stop, state: { T_K: shell.kelvins, rho: stop.state.rho } };
  const settled = settledGauge(rest, rest.state.rho, 'given.shell', trace);
  const cooling = { stop, shell_K: shell.kelvins, timeConstantMinutes };
  return {
    settled: gaugeOf(settled),
    points: minutes.map((t) => {
      const T_K = cooledTo(cooling, t, trace);
      const { p_Pa } = pvtAt(stop.model, T_K, stop.state.rho, 'given.minutes', `after ${t} min`, trace);
      const pressure = step2(trace, TO_GAUGE, `after ${t} min`, p_Pa, stop.ambient.pascals);
      return {
        minutes: t + 0,
        temperature: temperatureOf(T_K),
        pressure: gaugeOf(pressure),
        offSettled: pressureDifferenceOf(step2(trace, DIFFERENCE, `after ${t} min`, pressure, settled)),
      };
    }),
    minutesUntilWithin: minutesUntil(cooling, settled, within.pascals, trace),
  };
}

interface Cooling {
  readonly stop: Start;
  readonly shell_K: number;
  readonly timeConstantMinutes: number;
}

/** Temperature of gas that has been at rest for so many minutes. */
export function cooledTo({ stop, shell_K, timeConstantMinutes }: Cooling, minutes: number, trace?: Trace): number {
  const about = `after ${minutes} min`;
  const x = step2(trace, SHARE_LEFT, about, minutes, timeConstantMinutes);
  return step3(trace, COOLED, about, shell_K, stop.state.T_K, x);
}

/** Pressure increases with temperature at constant density, so that there is one moment. */
function minutesUntil(
  { stop, shell_K, timeConstantMinutes }: Cooling,
  settled: number,
  within: number,
  trace?: Trace,
): number {
  const { model, state, ambient } = stop;
  const now = stop.pressure.pascals;
  if (Math.abs(now - settled) <= within) return 0;
  const edge_g = step2(trace, now > settled ? ABOVE_SETTLED : BELOW_SETTLED, 'near enough', settled, within);
  const edge = step2(trace, TO_ABSOLUTE, 'near enough', edge_g, ambient.pascals);
  const T_K = temperatureAt(model, state.rho, edge, 'near enough', trace);
  if (T_K === undefined) return unsolved(model, `${edge} Pa absolute at ${state.rho} mol/m3`, 'given.within');
  return step4(trace, MINUTES_UNTIL, 'near enough', timeConstantMinutes, state.T_K, shell_K, T_K);
}

function needTimes(minutes: readonly number[]): void {
  if (!Array.isArray(minutes)) wrongKind('list of minutes', minutes, 'given.minutes');
  for (const [i, t] of minutes.entries()) {
    if (typeof t !== 'number' || !Number.isFinite(t)) fail(notANumber, `given.minutes[${i}]`, quote(t));
    if (t < 0) fail(negative, `given.minutes[${i}]`, `${t} min`);
  }
}
