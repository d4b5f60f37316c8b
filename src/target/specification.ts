import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  CheckedValue,
  isChecked,
  need,
  wrongKind,
  type AbsolutePressure,
  type Checked,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
  type Volume,
} from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { needAmbient } from './conditions.js';
import { densityOfLine, type Point } from './line.js';

/** The pre-charge as the maker states it: a gauge pressure at a temperature. */
export interface ReferencePoint {
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
}

/**
 * How far a pre-charge may lie off its target: the same to both sides, a size to each side, or a percentage of the gauge
 * target (of a gauge pressure, as the trade has it). Sizes are zero or more, and at least one is more than zero.
 */
export type Tolerance =
  | { readonly plusMinus: PressureDifference }
  | { readonly below: PressureDifference; readonly above: PressureDifference }
  | { readonly plusMinusPercentOfGauge: number };

/**
 * Where the tolerance holds. At the measured temperature it is laid about the target there. At the reference temperature
 * it is laid about the reference pressure, and its limits follow their own constant-density lines: in a hot vessel the
 * band is wider.
 */
export type Applies = 'at the measured temperature' | 'at the reference temperature';

/** What the maker's manual says of an accumulator's pre-charge. Nothing here has a default. */
export interface SpecificationGiven {
  /** The charge gas. */
  readonly gas: GasModel;
  readonly precharge: ReferencePoint;
  /** Ambient pressure at which the specification's gauge pressures are meant; `standardAtmosphere` where it is silent. */
  readonly ambient: AbsolutePressure;
  readonly tolerance: Tolerance & { readonly applies: Applies };
  /** Volume of the gas side with the oil side drained. Greater than zero. */
  readonly gasVolume: Volume;
  /** Allowable pressure of the accumulator, as on its name plate. */
  readonly allowable: GaugePressure;
  readonly settling: {
    /** How far above the target to stop filling, because the gas is warm from being compressed. Zero or more. */
    readonly allowance: PressureDifference;
    /** How long oil and gas must have been at rest before a reading counts. Greater than zero. */
    readonly minutes: number;
  };
}

/**
 * A checked specification, with the densities of its lines solved once. Only {@link specification} makes one; a copy is
 * refused, as it is for a quantity.
 */
export interface Specification extends SpecificationGiven, Checked<'specification'> {
  /** Molar density of the gas at the reference point, mol/m3: constant while the vessel stays closed. */
  readonly density_mol_m3: number;
  /** Molar densities of the lower and upper limit, where the tolerance applies at the reference temperature. */
  readonly limitDensities_mol_m3: { readonly lower: number; readonly upper: number } | 'limits follow the target';
}

class SpecificationValue extends CheckedValue<'specification'> implements Specification {
  readonly gas: GasModel;
  readonly precharge: ReferencePoint;
  readonly ambient: AbsolutePressure;
  readonly tolerance: Specification['tolerance'];
  readonly gasVolume: Volume;
  readonly allowable: GaugePressure;
  readonly settling: Specification['settling'];
  readonly density_mol_m3: number;
  readonly limitDensities_mol_m3: Specification['limitDensities_mol_m3'];

  constructor(given: SpecificationGiven, density: number, limits: Specification['limitDensities_mol_m3']) {
    super('specification');
    this.gas = given.gas;
    this.precharge = Object.freeze({ ...given.precharge });
    this.ambient = given.ambient;
    this.tolerance = Object.freeze({ ...given.tolerance });
    this.gasVolume = given.gasVolume;
    this.allowable = given.allowable;
    this.settling = Object.freeze({ ...given.settling });
    this.density_mol_m3 = density;
    this.limitDensities_mol_m3 = limits;
    Object.freeze(this);
  }
}

/**
 * Checks a specification and solves its constant-density line.
 *
 * @throws {@link Fault} with every problem found: `wrong kind`, `not positive`, `negative`, `band without width`,
 * `band reaches zero`, `above allowable` (the reference pressure above the allowable pressure), `outside the model`,
 * `not an ambient pressure`, `unknown word`
 * @example
 * ```ts
 * const spec = specification({
 *   gas: nitrogen,
 *   precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
 *   ambient: standardAtmosphere,
 *   tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
 *   gasVolume: volume(5, 'L'),
 *   allowable: gauge(210, 'bar'),
 *   settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
 * });
 * spec.density_mol_m3.toFixed(1); // => '5693.9'
 * ```
 */
export function specification(given: SpecificationGiven): Specification {
  if (!isObject(given)) wrongKind('specification as the manual gives it', given, '');
  const { gas, precharge, ambient, tolerance, gasVolume, allowable, settling } = given;
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): boolean => {
    const before = problems.length;
    collect(problems, path, admit);
    return problems.length === before;
  };

  const model = check('gas', () => needModel(gas, ''));
  const stated = check('precharge', () => needPoint(precharge));
  const placed = check('ambient', () => needAmbient(ambient, ''));
  const sized = check('tolerance', () => needTolerance(tolerance));
  check('tolerance', () => needApplies(tolerance));
  check('gasVolume', () => {
    need('volume', gasVolume, '');
    if (gasVolume.cubicMetres === 0) notPositive('0 m3', 'the volume of the gas side stands on the name plate');
  });
  const limited = check('allowable', () => need('gauge pressure', allowable, ''));
  check('settling', () => needSettling(settling));

  // Each comparison of two parts needs those two sound, and no more.
  if (stated && limited) check('precharge.pressure', () => needAllowed(precharge.pressure, allowable));
  if (stated && sized) check('tolerance', () => needBand(precharge.pressure, tolerance));
  const density = (p_g: number, about: string): number =>
    densityOfLine(gas, referencePoint({ precharge, ambient }, p_g), 'precharge', about);
  const p = stated ? precharge.pressure.pascals : 0;
  const rho = model && stated && placed ? collect(problems, '', () => density(p, 'reference point')) : undefined;
  failIfAny(problems);
  if (rho === undefined) return wrongKind('specification', given, ''); // cannot be: a problem would have been thrown

  const { below, above } = tolerances(tolerance, p);
  const limits =
    tolerance.applies === 'at the reference temperature'
      ? Object.freeze({ lower: density(p - below, 'lower limit'), upper: density(p + above, 'upper limit') })
      : 'limits follow the target';
  return new SpecificationValue(given, rho, limits);
}

function needPoint(point: ReferencePoint): void {
  needObject(point, 'reference point: pressure and temperature');
  const problems: Problem[] = [];
  collect(problems, 'pressure', () => need('gauge pressure', point.pressure, ''));
  collect(problems, 'temperature', () => need('temperature', point.temperature, ''));
  failIfAny(problems);
}

function needAllowed(pressure: GaugePressure, allowable: GaugePressure): void {
  if (pressure.pascals <= allowable.pascals) return;
  fail({
    code: 'above allowable',
    path: '',
    found: `${inBar(pressure.pascals)} gauge`,
    wanted: `at most the allowable pressure, ${inBar(allowable.pascals)} gauge`,
    remedy: 'check both against the manual and the name plate; do not fill before they agree',
  });
}

function needBand(pressure: GaugePressure, tolerance: Tolerance): void {
  const { below, above } = tolerances(tolerance, pressure.pascals);
  const lower = pressure.pascals - below;
  if (!(lower < pressure.pascals + above)) noWidth('a tolerance too small to tell its limits apart', '');
  if (lower > 0) return;
  fail({
    code: 'band reaches zero',
    path: '',
    found: `a lower limit of ${inBar(lower)} gauge at the reference temperature`,
    wanted: 'a lower limit above zero gauge',
    remedy: 'check the unit of the tolerance: an empty accumulator must never count as charged',
  });
}

function needSettling(settling: SpecificationGiven['settling']): void {
  needObject(settling, 'settling: allowance and minutes');
  const problems: Problem[] = [];
  collect(problems, 'allowance', () => {
    need('pressure difference', settling.allowance, '');
    if (settling.allowance.pascals < 0) negative(settling.allowance, '');
  });
  collect(problems, 'minutes', () => {
    if (Number.isFinite(settling.minutes) && settling.minutes > 0) return;
    notPositive(quote(settling.minutes), 'give the time that the manual asks to wait, in minutes');
  });
  failIfAny(problems);
}

/** A point at the reference temperature and ambient of a specification, at the reference pressure or at a limit. */
export function referencePoint(
  { precharge, ambient }: Pick<SpecificationGiven, 'precharge' | 'ambient'>,
  p_g_Pa: number,
): Point {
  return { p_g_Pa, T_K: precharge.temperature.kelvins, ambient_Pa: ambient.pascals };
}

export const PERCENTAGE = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['percent', 'p_g'],
  formula: 'percent / 100 * p_g',
  source: 'tolerance as a percentage of the gauge pressure (common practice, no source)',
  of: (percent, p_g) => (percent / 100) * p_g,
});

/** The sizes of a tolerance about a gauge pressure, in Pa. */
export function tolerances(tolerance: Tolerance, p_g_Pa: number, trace?: Trace): { below: number; above: number } {
  if ('plusMinus' in tolerance) return { below: tolerance.plusMinus.pascals, above: tolerance.plusMinus.pascals };
  if ('below' in tolerance) return { below: tolerance.below.pascals, above: tolerance.above.pascals };
  const size = step2(trace, PERCENTAGE, 'tolerance', tolerance.plusMinusPercentOfGauge, p_g_Pa);
  return { below: size, above: size };
}

/** Refuses everything but a specification that {@link specification} made. */
export function needSpecification(spec: Specification): void {
  if (!isChecked(spec, 'specification')) wrongKind('specification', spec, 'spec');
}

const FORMS = ['plusMinus', 'below', 'above', 'plusMinusPercentOfGauge'] as const;

function needApplies(tolerance: SpecificationGiven['tolerance']): void {
  if (!isObject(tolerance)) return; // said already
  const { applies } = tolerance;
  if (applies === 'at the measured temperature' || applies === 'at the reference temperature') return;
  fail({
    code: 'unknown word',
    path: 'applies',
    found: quote(applies),
    wanted: "'at the measured temperature' or 'at the reference temperature'",
    remedy: 'see the manual: is the band given for the corrected reading, or about the value in its table?',
  });
}

function needTolerance(tolerance: Tolerance): void {
  needObject(tolerance, 'tolerance');
  const form = FORMS.filter((key) => key in tolerance).join(' ');
  if (form === 'plusMinus' && 'plusMinus' in tolerance) return needWidth([tolerance.plusMinus], ['plusMinus']);
  if (form === 'below above' && 'below' in tolerance)
    return needWidth([tolerance.below, tolerance.above], ['below', 'above']);
  if (form === 'plusMinusPercentOfGauge' && 'plusMinusPercentOfGauge' in tolerance) {
    const percent = tolerance.plusMinusPercentOfGauge;
    if (Number.isFinite(percent) && percent > 0 && percent < 100) return;
    return fail({
      code: 'band without width',
      path: 'plusMinusPercentOfGauge',
      found: quote(percent),
      wanted: 'a percentage above 0 and below 100',
      remedy: 'give the percentage itself: 2 for ± 2 %',
    });
  }
  return fail({
    code: 'wrong shape',
    path: '',
    found: form === '' ? 'no tolerance' : form.replaceAll(' ', ' with '),
    wanted: 'plusMinus, or below and above, or plusMinusPercentOfGauge',
    remedy: 'state the band in exactly one of the three ways',
  });
}

function needWidth(sizes: readonly PressureDifference[], paths: readonly string[]): void {
  const problems: Problem[] = [];
  sizes.forEach((size, i) => {
    collect(problems, paths[i] ?? '', () => {
      need('pressure difference', size, '');
      if (size.pascals < 0) negative(size, '');
    });
  });
  failIfAny(problems);
  if (sizes.some((size) => size.pascals > 0)) return;
  noWidth('0 bar difference', paths.length === 1 ? (paths[0] ?? '') : '');
}

function noWidth(found: string, path: string): never {
  fail({
    code: 'band without width',
    path,
    found,
    wanted: 'a tolerance of more than zero to at least one side',
    remedy: 'give the tolerance of the manual; no gauge can meet a band without width',
  });
}

function negative(size: PressureDifference, path: string): never {
  fail({
    code: 'negative',
    path,
    found: `${inBar(size.pascals)} difference`,
    wanted: 'zero or more',
    remedy: 'give sizes, not signed limits: below and above are both counted away from the target',
  });
}

function notPositive(found: string, remedy: string): never {
  fail({ code: 'not positive', path: '', found, wanted: 'more than zero', remedy });
}

function needObject(value: object, wanted: string): void {
  if (!isObject(value)) wrongKind(wanted, value, '');
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
