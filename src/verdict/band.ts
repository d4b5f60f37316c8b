import { fail } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { bandReachesZero, limitsCrossed } from '../basis/problem.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import { gaugeOf, pressureDifferenceOf, type GaugePressure } from '../quantity/kind.js';
import { needDivision, roundStepBelow, valueIn, type Division } from '../quantity/step.js';
import { inBar, type PressureUnit } from '../quantity/unit.js';
import { markAt, type Marked } from '../reading/reading.js';
import type { Conditions } from '../target/conditions.js';
import { gaugeOnCurve, type Curve } from '../target/curve.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { tolerances, type Tolerance } from '../target/tolerance.js';
import { needConditions, targetAt } from '../target/target.js';

/** The gauge pressures that a specification allows at a temperature and ambient. The limits themselves are allowed. */
export interface Band {
  /** Lower limit, exact: this one decides. */
  readonly lower: GaugePressure;
  /** Upper limit, exact: this one decides. */
  readonly upper: GaugePressure;
  /**
   * The lowest and highest mark of the gauge inside the limits, as texts in the gauge's unit: for people. Rounded inwards,
   * they never allow what the exact limits forbid, and for a reading on a mark both decide alike. For a reading with a
   * correction in it they are what its gauge shows at the limits.
   */
  readonly onGauge:
    | { readonly lower: string; readonly upper: string; readonly unit: PressureUnit }
    | 'no mark of the gauge lies in the band';
}

export const LOWER = /* @__PURE__ */ relation({
  gives: 'p_lower',
  unit: 'Pa',
  from: ['p_g', 'dp'],
  formula: 'p_g - dp',
  source: 'tolerance to the lower side, by definition',
  of: (p_g, dp) => p_g - dp,
});

export const UPPER = /* @__PURE__ */ relation({
  gives: 'p_upper',
  unit: 'Pa',
  from: ['p_g', 'dp'],
  formula: 'p_g + dp',
  source: 'tolerance to the upper side, by definition',
  of: (p_g, dp) => p_g + dp,
});

/**
 * The band that a specification allows at a gas temperature, in the ambient of that hour.
 *
 * @param step the smallest division of the gauge that people will read the band on
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `unchecked copy`, `unchecked specification`;
 * `not an ambient pressure`, `outside the model`, `outside the table`, `not a step`, `step too fine`, `unknown unit`; `limits crossed` where
 * the limits do not enclose the target; `band reaches zero` at a temperature so low that the lower limit is not above zero
 * gauge
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * band(spec, at, { step: 1, unit: 'bar' }).onGauge; // => { lower: '151', upper: '154', unit: 'bar' }
 * ```
 */
export function band(spec: Specification, at: Conditions, step: Division<PressureUnit>, trace?: Trace): Band {
  needSpecification(spec);
  const here = needConditions(at);
  const division = needDivision(step, 'step');
  return bandAbout(spec, here, targetAt(spec, here, trace), { gaugeStep: division }, trace);
}

/** The band about a target that is already known, for checked input. */
export function bandAbout(spec: Specification, at: Conditions, target_Pa: number, gauge: Marked, trace?: Trace): Band {
  const { limits } = spec['~curves'];
  const { lower, upper } =
    limits === 'about the target' ? aboutTarget(spec, target_Pa, trace) : onCurves(spec, limits, at, target_Pa, trace);
  if (!(lower > 0))
    fail(bandReachesZero, 'temperature', `${at.temperature.kelvins} K, where the lower limit is ${inBar(lower)} gauge`);
  return { lower: gaugeOf(lower), upper: gaugeOf(upper), onGauge: marks(gaugeOf(lower), gaugeOf(upper), gauge) };
}

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

function aboutTarget({ tolerance }: Specification, target_Pa: number, trace?: Trace): Limits {
  const { below, above } = tolerances(tolerance as Tolerance, target_Pa, trace);
  return {
    lower: step2(trace, LOWER, 'lower limit', target_Pa, below),
    upper: step2(trace, UPPER, 'upper limit', target_Pa, above),
  };
}

function onCurves(
  { gas, tolerance, '~curves': { target }, referenceTemperature, ambient }: Specification,
  limits: { readonly lower: Curve; readonly upper: Curve },
  at: Conditions,
  target_Pa: number,
  trace?: Trace,
): Limits {
  const T = at.temperature.kelvins;
  const here = at.ambient.pascals;
  if (trace !== undefined && !has(tolerance, 'minimum')) {
    // How the points of the limits come about: solved when the specification was made, shown again here.
    const p = gaugeOnCurve(gas, target, referenceTemperature.kelvins, ambient.pascals, 'reference point', trace);
    const { below, above } = tolerances(tolerance, p, trace);
    step2(trace, LOWER, 'lower limit, as stated', p, below);
    step2(trace, UPPER, 'upper limit, as stated', p, above);
  }
  const lower = gaugeOnCurve(gas, limits.lower, T, here, 'lower limit', trace);
  const upper = gaugeOnCurve(gas, limits.upper, T, here, 'upper limit', trace);
  if (!(lower < upper && lower <= target_Pa && target_Pa <= upper)) crossed(lower, upper, at);
  return { lower, upper };
}

function crossed(lower_Pa: number, upper_Pa: number, { temperature }: Conditions): never {
  const limits = `${inBar(lower_Pa)} and ${inBar(upper_Pa)} gauge`;
  fail(limitsCrossed, 'temperature', `${temperature.kelvins} K, where the limits are ${limits}`);
}

/** The coarsest 1-2-5 step that is no wider than the band, so that a mark always lies in it. */
export function stepFor(band: Band, unit: PressureUnit): Division<PressureUnit> {
  return { step: roundStepBelow(widthOf(band, unit)), unit };
}

/** Width of a band in a unit. */
export function widthOf(band: Band, unit: PressureUnit): number {
  return valueIn(pressureDifferenceOf(band.upper.pascals - band.lower.pascals), unit);
}

function marks(lower: GaugePressure, upper: GaugePressure, gauge: Marked): Band['onGauge'] {
  const [low, high] = [markAt(lower, gauge, 'up'), markAt(upper, gauge, 'down')];
  if (low.si > high.si) return 'no mark of the gauge lies in the band';
  return { lower: low.text, upper: high.text, unit: gauge.gaugeStep.unit };
}
