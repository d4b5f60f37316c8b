import { relation, step2, type Trace } from '../basis/relation.js';
import { fail } from '../basis/fault.js';
import { belowVacuumGauge } from '../basis/problem.js';
import { toSI } from './decimal.js';
import {
  absoluteOf,
  gaugeOf,
  need,
  pressureDifferenceOf,
  type AbsolutePressure,
  type GaugePressure,
  type PressureDifference,
} from './kind.js';
import { inBar, PRESSURE, scaleOf, type PressureUnit } from './unit.js';

/**
 * A gauge pressure, as a pressure gauge shows it: above the ambient pressure of its place and hour.
 *
 * Any finite value; whether it lies below vacuum shows only when the ambient is known.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`
 * @example
 * ```ts
 * gauge(137.6, 'bar'); // => { kind: 'gauge pressure', pascals: 13760000 }
 * ```
 */
export function gauge(value: number, unit: PressureUnit): GaugePressure {
  return gaugeOf(toSI(value, scaleOf(PRESSURE, unit, 'unit')), 'value', value, unit);
}

/**
 * An absolute pressure, counted from vacuum: what a barometer shows. Zero or more.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`, `below vacuum`
 * @example
 * ```ts
 * absolute(1008, 'hPa'); // => { kind: 'absolute pressure', pascals: 100800 }
 * ```
 */
export function absolute(value: number, unit: PressureUnit): AbsolutePressure {
  return absoluteOf(toSI(value, scaleOf(PRESSURE, unit, 'unit')), 'value', value, unit);
}

/**
 * A difference of two pressures of one basis: a tolerance, an allowance, a margin. Signed.
 *
 * @throws {@link Fault} `not a number`, `text for a number`, `beyond double`, `unknown unit`
 * @example
 * ```ts
 * pressureDifference(2, 'bar'); // => { kind: 'pressure difference', pascals: 200000 }
 * ```
 */
export function pressureDifference(value: number, unit: PressureUnit): PressureDifference {
  return pressureDifferenceOf(toSI(value, scaleOf(PRESSURE, unit, 'unit')), 'value', value, unit);
}

/**
 * The standard atmosphere, 101 325 Pa absolute (ISO 2533; CGPM 1954): a value one may pass where an ambient is asked
 * for. It is never assumed: the barometer of the place and hour is better.
 *
 * @example
 * ```ts
 * valueIn(standardAtmosphere, 'hPa'); // => 1013.25
 * ```
 */
export const standardAtmosphere: AbsolutePressure = /* @__PURE__ */ absoluteOf(101_325);

export const TO_ABSOLUTE = /* @__PURE__ */ relation({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['p_g', 'p_amb'],
  formula: 'p_g + p_amb',
  source: 'gauge pressure, by definition (ISO 80000-4:2019)',
  of: (p_g, p_amb) => p_g + p_amb,
});

export const TO_GAUGE = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_abs', 'p_amb'],
  formula: 'p_abs - p_amb',
  source: 'gauge pressure, by definition (ISO 80000-4:2019)',
  of: (p_abs, p_amb) => p_abs - p_amb,
});

export const DIFFERENCE = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['p_high', 'p_low'],
  formula: 'p_high - p_low',
  source: 'difference of two gauge pressures, by definition',
  of: (p_high, p_low) => p_high - p_low,
});

/**
 * The absolute pressure behind a gauge pressure, in the ambient pressure of its place and hour.
 *
 * @throws {@link Fault} `wrong kind`, `absolute for gauge`, `gauge for absolute`, `unchecked copy`; `gauge below vacuum`
 * if it lies below minus the ambient
 * @example
 * ```ts
 * toAbsolute(gauge(140, 'bar'), absolute(1008, 'hPa')); // => { kind: 'absolute pressure', pascals: 14100800 }
 * ```
 */
export function toAbsolute(pressure: GaugePressure, ambient: AbsolutePressure, trace?: Trace): AbsolutePressure {
  need('gauge pressure', pressure, 'pressure');
  need('absolute pressure', ambient, 'ambient');
  const pascals = step2(trace, TO_ABSOLUTE, 'conversion', pressure.pascals, ambient.pascals);
  if (pascals < 0) belowVacuum(pressure, ambient, 'pressure');
  return absoluteOf(pascals);
}

/**
 * The gauge pressure that shows an absolute pressure, in the ambient pressure of its place and hour.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`
 * @example
 * ```ts
 * toGauge(absolute(14100800, 'Pa'), absolute(1008, 'hPa')); // => { kind: 'gauge pressure', pascals: 14000000 }
 * ```
 */
export function toGauge(pressure: AbsolutePressure, ambient: AbsolutePressure, trace?: Trace): GaugePressure {
  need('absolute pressure', pressure, 'pressure');
  need('absolute pressure', ambient, 'ambient');
  return gaugeOf(step2(trace, TO_GAUGE, 'conversion', pressure.pascals, ambient.pascals));
}

/** Reports a gauge pressure that lies below minus its ambient. */
export function belowVacuum(pressure: GaugePressure, ambient: AbsolutePressure, path: string): never {
  return fail(belowVacuumGauge, path, `${inBar(pressure.pascals)} gauge`, {
    least: inBar(-ambient.pascals),
    ambient: inBar(ambient.pascals),
  });
}
