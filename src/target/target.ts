import type { Trace } from '../basis/relation.js';
import { pvtAt } from '../gas/door.js';
import { gaugeOf, need, type GaugePressure } from '../quantity/kind.js';
import { needAmbient, type Conditions } from './conditions.js';
import { densityOfLine, gaugeOnLine } from './line.js';
import { needSpecification, referencePoint, type Specification } from './specification.js';

/**
 * The pre-charge that a specification asks for at a gas temperature: the gauge pressure, in the ambient of that hour, of
 * the gas that has the reference pressure at the reference temperature.
 *
 * Follows a line of constant density (the vessel is closed and keeps its volume) through the specification's gas model.
 * The ideal-gas law along the same line is 3 bar off at 140 bar and 20 K.
 *
 * @throws {@link Fault} `wrong kind`, `not an ambient pressure`, `outside the model`
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * write(target(spec, at), { step: 0.01, unit: 'bar' }); // => '152.61 bar gauge'
 * ```
 */
export function target(spec: Specification, at: Conditions, trace?: Trace): GaugePressure {
  needSpecification(spec);
  needConditions(at);
  return gaugeOf(targetAt(spec, at, trace));
}

/** Target in Pa gauge, for checked input. */
export function targetAt(spec: Specification, at: Conditions, trace?: Trace): number {
  const { kelvins } = at.temperature;
  if (trace !== undefined) showLine(spec, trace);
  const point = referencePoint(spec, spec.precharge.pressure.pascals);
  const { pascals } = at.ambient;
  return gaugeOnLine(spec.gas, point, spec.density_mol_m3, kelvins, pascals, 'temperature', 'target', trace);
}

/** Shows how the density of the line, solved when the specification was made, comes about. */
function showLine(spec: Specification, trace: Trace): void {
  densityOfLine(spec.gas, referencePoint(spec, spec.precharge.pressure.pascals), 'precharge', 'reference point', trace);
}

/**
 * How fast the target rises with the gas temperature, ∂target/∂T, in Pa/K: what one kelvin of error in the thermometer
 * costs.
 *
 * @throws {@link Fault} `wrong kind`, `not an ambient pressure`, `outside the model`
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * (slope(spec, at).pascalsPerKelvin / 1e5).toFixed(2); // => '0.63'
 * ```
 */
export function slope(spec: Specification, at: Conditions): { readonly pascalsPerKelvin: number } {
  needSpecification(spec);
  needConditions(at);
  const { dpdT_rho } = pvtAt(spec.gas, at.temperature.kelvins, spec.density_mol_m3, 'temperature', 'target');
  return { pascalsPerKelvin: dpdT_rho };
}

/** Refuses conditions that are not a temperature and an ambient pressure. */
export function needConditions(at: Conditions): void {
  need('temperature', at?.temperature, 'temperature');
  needAmbient(at.ambient, 'ambient');
}
