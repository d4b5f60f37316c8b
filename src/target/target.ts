import type { Trace } from '../basis/relation.js';
import { gaugeOf, need, type GaugePressure, type Temperature } from '../quantity/kind.js';
import { needAmbient, type Conditions } from './conditions.js';
import { gaugeOnCurve, slopeOfCurve, sourceOn, type TargetSource } from './curve.js';
import { densityOfLine } from './line.js';
import { needSpecification, type Specification } from './specification.js';

/**
 * The pre-charge that a specification asks for at a gas temperature: the gauge pressure, in the ambient of that hour, of
 * the gas that has the reference pressure at the reference temperature; or what the maker's table asks for there.
 *
 * From a reference point it follows a line of constant density (the vessel is closed and keeps its volume) through the
 * specification's gas model.
 * The ideal-gas law along the same line is 3 bar off at 140 bar and 20 K.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `unchecked specification`;
 * `not an ambient pressure`, `outside the model`, `outside the table`
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * write(target(spec, at), { step: 0.01, unit: 'bar' }); // => '152.61 bar gauge'
 * ```
 */
export function target(spec: Specification, at: Conditions, trace?: Trace): GaugePressure {
  needSpecification(spec);
  return gaugeOf(targetAt(spec, needConditions(at), trace));
}

/** Target in Pa gauge, for checked input. */
export function targetAt(spec: Specification, at: Conditions, trace?: Trace): number {
  const { kelvins } = at.temperature;
  return gaugeOnCurve(spec.gas, spec['~curves'].target, kelvins, at.ambient.pascals, 'target', trace);
}

/** Molar density of the gas at its target, mol/m3. */
export function targetDensity(spec: Specification, at: Conditions, target_Pa: number, trace?: Trace): number {
  if (spec.density_mol_m3 !== 'by table') return spec.density_mol_m3;
  const point = { p_g_Pa: target_Pa, T_K: at.temperature.kelvins, ambient_Pa: at.ambient.pascals };
  return densityOfLine(spec.gas, point, 'temperature', 'target', trace);
}

/**
 * By what the target at a gas temperature is found: constant density from the reference point, or a row of the maker's
 * table, or the two rows between which it is read.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy`, `unchecked specification`; `outside the table`, where the
 * specification refuses to go beyond its rows
 * @example
 * ```ts
 * targetSource(spec, temperature(40, '°C')).by; // => 'constant density from the reference point'
 * ```
 */
export function targetSource(spec: Specification, temperature: Temperature): TargetSource {
  needSpecification(spec);
  need('temperature', temperature, 'temperature');
  return sourceOn(spec['~curves'].target, temperature.kelvins);
}

/**
 * How fast the target rises with the gas temperature, ∂target/∂T, in Pa/K: what one kelvin of error in the thermometer
 * costs. On a table it is the slope between its rows; at a row, above it.
 *
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `unchecked specification`;
 * `not an ambient pressure`, `outside the model`, `outside the table`
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * (slope(spec, at).pascalsPerKelvin / 1e5).toFixed(2); // => '0.63'
 * ```
 */
export function slope(spec: Specification, at: Conditions): { readonly pascalsPerKelvin: number } {
  needSpecification(spec);
  const { kelvins } = needConditions(at).temperature;
  return { pascalsPerKelvin: slopeOfCurve(spec.gas, spec['~curves'].target, kelvins) };
}

/** Temperature and ambient pressure, read once and checked; conditions that are not these are refused. */
export function needConditions(at: Conditions): Conditions {
  const { temperature, ambient } = at ?? {};
  need('temperature', temperature, 'temperature');
  needAmbient(ambient, 'ambient');
  return { temperature, ambient };
}
