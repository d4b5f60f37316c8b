import { relation, type Trace } from '../basis/relation.js';
import { gaugeOf, need, temperatureOf, type GaugePressure, type Temperature } from '../quantity/kind.js';
import { belowVacuum } from '../quantity/pressure.js';
import type { Conditions } from '../target/conditions.js';
import { temperatureOnCurve } from '../target/curve.js';
import { densityOfLine, gaugeOnLine, type Point } from '../target/line.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { needConditions } from '../target/target.js';

/** A gauge pressure with the temperature and ambient at which it was read. */
export interface Read extends Conditions {
  readonly pressure: GaugePressure;
}

export const OFF_TARGET = /* @__PURE__ */ relation({
  gives: 'dp_off',
  unit: 'Pa',
  from: ['p_read', 'p_target'],
  formula: 'p_read - p_target',
  source: 'deviation of a reading from its target, by definition',
  of: (p_read, p_target) => p_read - p_target,
});

export const MARGIN = /* @__PURE__ */ relation({
  gives: 'dp_inside',
  unit: 'Pa',
  from: ['p_read', 'p_lower', 'p_upper'],
  formula: 'min(p_read - p_lower, p_upper - p_read)',
  source: 'distance to the nearer limit, negative outside, by definition',
  of: (p_read, p_lower, p_upper) => Math.min(p_read - p_lower, p_upper - p_read),
});

/**
 * A reading referred to the reference temperature and ambient of the specification: what the gauge would show there if
 * this were the gas inside. It compares directly with the value on the maker's plate.
 *
 * @throws {@link Fault} `wrong kind`, `absolute for gauge`, `gauge for absolute`, `unchecked copy`,
 * `unchecked specification`; `not an ambient pressure`, `gauge below vacuum`, `outside the model`, `liquid`
 * @example
 * ```ts
 * const read = { pressure: gauge(140, 'bar'), temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * write(referred(spec, read), { step: 0.01, unit: 'bar' }); // => '128.60 bar gauge'
 * ```
 */
export function referred(spec: Specification, read: Read, trace?: Trace): GaugePressure {
  needSpecification(spec);
  return referredOf(spec, needRead(read), trace);
}

/** {@link referred}, for checked input. */
export function referredOf(spec: Specification, read: Read, trace?: Trace): GaugePressure {
  const rho = readDensity(spec, read, trace);
  const T_ref = spec.referenceTemperature.kelvins;
  const ambient = spec.ambient.pascals;
  return gaugeOf(gaugeOnLine(spec.gas, readPoint(read), rho, T_ref, ambient, 'pressure', 'reading referred', trace));
}

/** Density of the gas behind a reading, mol/m3. */
export function readDensity(spec: Specification, read: Read, trace?: Trace): number {
  return densityOfLine(spec.gas, readPoint(read), 'pressure', 'reading', trace);
}

function readPoint({ pressure, temperature, ambient }: Read): Point {
  return { p_g_Pa: pressure.pascals, T_K: temperature.kelvins, ambient_Pa: ambient.pascals };
}

/**
 * The explaining temperature: the gas temperature at which this reading would be right. Close to the measured one, look
 * to the thermometer or to gas that is still warm or cold; far from it, gas is missing or too much.
 *
 * @returns `none in range` if no temperature within the validity of the gas model, or of the table, explains the reading
 * @throws {@link Fault} `wrong kind`, `absolute for gauge`, `gauge for absolute`, `unchecked copy`,
 * `unchecked specification`; `not an ambient pressure`, `gauge below vacuum`
 * @example
 * ```ts
 * const read = { pressure: gauge(152.61, 'bar'), temperature: temperature(30, '°C'), ambient: standardAtmosphere };
 * const explaining = explainingTemperature(spec, read);
 * explaining === 'none in range' ? explaining : write(explaining, { step: 0.1, unit: '°C' }); // => '40.0 °C'
 * ```
 */
export function explainingTemperature(spec: Specification, read: Read, trace?: Trace): Temperature | 'none in range' {
  needSpecification(spec);
  return explainingOf(spec, needRead(read), trace);
}

/** {@link explainingTemperature}, for checked input. */
export function explainingOf(spec: Specification, read: Read, trace?: Trace): Temperature | 'none in range' {
  const about = 'explaining temperature';
  const { target } = spec['~curves'];
  const T = temperatureOnCurve(spec.gas, target, read.pressure.pascals, read.ambient.pascals, about, trace);
  return T === undefined ? 'none in range' : temperatureOf(T);
}

/** What was read, each part of it read once and checked. */
export function needRead(read: Read): Read {
  const { temperature, ambient } = needConditions(read);
  const { pressure } = read;
  need('gauge pressure', pressure, 'pressure');
  if (pressure.pascals < -ambient.pascals) belowVacuum(pressure, ambient, 'pressure');
  return { pressure, temperature, ambient };
}
