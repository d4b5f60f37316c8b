import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { has, optional } from '../basis/has.js';
import {
  aboveAllowable,
  nominalWithoutTable,
  notANumber,
  notPositive,
  uncheckedSpecification,
  unknownWord,
} from '../basis/problem.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  CheckedValue,
  gaugeOf,
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
import { curveOf, gaugeOnCurve, lineThrough } from './curve.js';
import { gaugeOnLine } from './line.js';
import {
  copyOfPoint,
  copyOfStated,
  isObject,
  needObject,
  needPoint,
  needStated,
  type ReferencePoint,
  type Stated,
} from './table.js';
import { needSpace } from './space.js';
import { copyOfAllowed, curvesOf, needAllowed, needSize, type Allowed, type Curves } from './tolerance.js';

/** What stands between gas and oil. */
export type Separator = 'diaphragm' | 'bladder' | 'piston';

/** What the maker's manual says of an accumulator's pre-charge. Nothing here has a default. */
export interface SpecificationGiven {
  /** The charge gas. */
  readonly gas: GasModel;
  /** The pre-charge wanted, at one point or by a table. A table is the target; the formula only checks it. */
  readonly precharge: Stated;
  /** Beside a table: the nominal pre-charge on the plate. Where its line and the table differ, that is reported. */
  readonly nominal?: ReferencePoint;
  /** Ambient pressure at which the specification's gauge pressures are meant; `standardAtmosphere` where it is silent. */
  readonly ambient: AbsolutePressure;
  /** What is allowed in service. */
  readonly tolerance: Allowed;
  /** What is allowed after charging, where the manual asks for more than in service; see {@link afterCharging}. */
  readonly toleranceAfterCharging?: Allowed;
  readonly separator: Separator;
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

/** A row of a maker's table that lies off the nominal point's line of constant density by more than the printed step. */
export interface Disagreement {
  readonly row: ReferencePoint;
  /** What the nominal point gives at the temperature of the row. */
  readonly byConstantDensity: GaugePressure;
}

/**
 * A checked specification, with its curves solved once. Only {@link specification} makes one; a copy is refused, as it is
 * for a quantity.
 */
export interface Specification extends SpecificationGiven, Checked<'specification'> {
  /** Temperature of the reference point, or the reference temperature of the table. */
  readonly referenceTemperature: Temperature;
  /** Molar density of the gas at the reference point, mol/m3: constant while the vessel stays closed. */
  readonly density_mol_m3: number | 'by table';
  /** Where a table and its nominal point disagree; empty if there is nothing to compare. */
  readonly disagreements: readonly Disagreement[];
  /** The solved curves; opaque. */
  readonly '~curves': Curves;
}

class SpecificationValue extends CheckedValue<'specification'> implements Specification {
  readonly gas: GasModel;
  readonly precharge: Stated;
  declare readonly nominal?: ReferencePoint;
  readonly ambient: AbsolutePressure;
  readonly tolerance: Allowed;
  declare readonly toleranceAfterCharging?: Allowed;
  readonly separator: Separator;
  readonly gasVolume: Volume;
  readonly allowable: GaugePressure;
  readonly settling: Specification['settling'];
  readonly referenceTemperature: Temperature;
  readonly density_mol_m3: number | 'by table';
  readonly disagreements: readonly Disagreement[];
  declare readonly '~curves': Curves;

  constructor(given: SpecificationGiven, curves: Curves, disagreements: readonly Disagreement[]) {
    super('specification');
    this.gas = given.gas;
    this.precharge = given.precharge;
    if (given.nominal !== undefined) this.nominal = given.nominal;
    this.ambient = given.ambient;
    this.tolerance = given.tolerance;
    if (given.toleranceAfterCharging !== undefined) this.toleranceAfterCharging = given.toleranceAfterCharging;
    this.separator = given.separator;
    this.gasVolume = given.gasVolume;
    this.allowable = given.allowable;
    this.settling = given.settling;
    this.referenceTemperature = referenceTemperature(given.precharge);
    this.density_mol_m3 = curves.target.by === 'line' ? curves.target.rho_mol_m3 : 'by table';
    this.disagreements = Object.freeze(disagreements.map((one) => Object.freeze(one)));
    // Not enumerable: a means of the calculation, not a part of what the manual says.
    // Without a prototype: of a field `get` that all objects inherit it would make an accessor.
    const field: PropertyDescriptor = { value: curves };
    Object.setPrototypeOf(field, null);
    Object.defineProperty(this, '~curves', field);
    Object.freeze(this);
  }
}

/**
 * What the manual states, each part of it read once and nothing else taken, so that what is checked is what is used; frozen,
 * and not checked yet.
 */
function copyOfGiven(given: SpecificationGiven): SpecificationGiven {
  const { gas, precharge, ambient, tolerance, separator, gasVolume, allowable, settling } = given;
  const nominal = optional(given, 'nominal');
  const toleranceAfterCharging = optional(given, 'toleranceAfterCharging');
  return {
    gas,
    precharge: copyOfStated(precharge, 'precharge'),
    nominal: nominal === undefined ? undefined : copyOfPoint(nominal),
    ambient,
    tolerance: copyOfAllowed(tolerance, 'tolerance'),
    toleranceAfterCharging:
      toleranceAfterCharging === undefined
        ? undefined
        : copyOfAllowed(toleranceAfterCharging, 'toleranceAfterCharging'),
    separator,
    gasVolume,
    allowable,
    settling: copyOfSettling(settling),
  } as SpecificationGiven;
}

function copyOfSettling(settling: SpecificationGiven['settling']): SpecificationGiven['settling'] {
  if (!isObject(settling)) return settling;
  const { allowance, minutes } = settling;
  return Object.freeze({ allowance, minutes });
}

/**
 * Checks a specification and solves its curves: lines of constant density, and the ends of tables.
 *
 * @throws {@link Fault} with every problem found: `wrong kind`, `gauge for absolute`, `absolute for gauge`,
 * `unchecked copy`, `not a number`, `not positive`, `negative`,
 * `not a tolerance`, `not a percentage`, `band without width`, `band reaches zero`, `limits crossed`, `too few rows`,
 * `too long` (more than a thousand rows), `rows out of order`, `reference outside the table`, `outside the table` (a limit
 * of its own at the reference temperature), `nominal without a table`, `above allowable` (the reference pressure
 * above the allowable pressure),
 * `outside the model`, `liquid`, `not an ambient pressure`, `missing`, `unknown word`
 * @example
 * ```ts
 * const spec = specification({
 *   gas: nitrogen,
 *   precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
 *   ambient: standardAtmosphere,
 *   tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
 *   separator: 'diaphragm',
 *   gasVolume: volume(5, 'L'),
 *   allowable: gauge(210, 'bar'),
 *   settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
 * });
 * Number(spec.density_mol_m3).toFixed(1); // => '5693.9'
 * ```
 */
export function specification(given: SpecificationGiven): Specification {
  if (!isObject(given)) wrongKind('specification as the manual gives it', given, '');
  const own = copyOfGiven(given);
  const { gas, precharge, nominal, ambient, tolerance, toleranceAfterCharging, gasVolume, allowable, settling } = own;
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): boolean => {
    const before = problems.length;
    collect(problems, path, admit);
    return problems.length === before;
  };

  const model = check('gas', () => needModel(gas, ''));
  const charged = check('precharge', () => needStated(precharge));
  if (nominal !== undefined) check('nominal', () => needNominal(nominal, precharge));
  const placed = check('ambient', () => needAmbient(ambient, ''));
  check('tolerance', () => needAllowed(tolerance));
  if (toleranceAfterCharging !== undefined) check('toleranceAfterCharging', () => needAllowed(toleranceAfterCharging));
  check('separator', () => needSeparator(own.separator));
  check('gasVolume', () => needSpace(gasVolume));
  const limited = check('allowable', () => need('gauge pressure', allowable, ''));
  check('settling', () => needSettling(settling));

  // Each comparison of parts needs those parts sound, and no more.
  const sound = (path: string): boolean => !problems.some((p) => p.path === path || p.path.startsWith(`${path}.`));
  const target = solved(problems, model && charged && placed, () =>
    curveOf(gas, precharge, ambient.pascals, 'precharge', 'reference point'),
  );
  const reference = solved(problems, charged && (target !== undefined || !has(precharge, 'rows')), () => {
    if (!has(precharge, 'rows')) return precharge.pressure.pascals;
    const T = referenceTemperature(precharge).kelvins;
    return target === undefined ? 0 : gaugeOnCurve(gas, target, T, ambient.pascals, 'reference point');
  });
  if (reference !== undefined && limited) check('precharge', () => needBelow(reference, allowable, precharge));
  const curves = (path: 'tolerance' | 'toleranceAfterCharging', allowed: Allowed): Curves | undefined =>
    reference === undefined || !placed || !model || !soundTolerance(problems, path)
      ? undefined
      : collect(problems, path, () =>
          curvesOf(
            gas,
            allowed,
            target,
            { pressure: gaugeOf(reference), temperature: referenceTemperature(precharge) },
            ambient.pascals,
          ),
        );
  const inService = curves('tolerance', tolerance);
  if (toleranceAfterCharging !== undefined) curves('toleranceAfterCharging', toleranceAfterCharging);
  const disagreements = solved(problems, target !== undefined && sound('nominal'), () => compared(own));
  failIfAny(problems);
  // Cannot be: what is not solved has left a problem.
  if (inService === undefined || disagreements === undefined) return wrongKind('specification', own, '');
  return new SpecificationValue(own, inService, disagreements);
}

/**
 * The specification with the band that its manual asks for after charging. Where the manual has none of its own, the band
 * in service holds, and this is the same specification.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked specification`
 * @example
 * ```ts
 * afterCharging(spec) === spec; // => true
 * ```
 */
export function afterCharging(spec: Specification): Specification {
  needSpecification(spec);
  const { toleranceAfterCharging, ...given } = { toleranceAfterCharging: undefined, ...spec };
  return toleranceAfterCharging === undefined ? spec : specification({ ...given, tolerance: toleranceAfterCharging });
}

/** Runs a step that only sound parts allow. */
function solved<T>(problems: Problem[], ready: boolean, solve: () => T): T | undefined {
  return ready ? collect(problems, '', solve) : undefined;
}

function soundTolerance(problems: readonly Problem[], path: string): boolean {
  return !problems.some((problem) => problem.path !== `${path}.applies` && `${problem.path}.`.startsWith(`${path}.`));
}

/** The reference temperature of what a manual states. */
function referenceTemperature(stated: Stated): Temperature {
  return has(stated, 'rows') ? stated.referenceTemperature : stated.temperature;
}

/** The rows of a table that lie off the nominal point's line by more than they are rounded. */
function compared({ gas, precharge, nominal, ambient }: SpecificationGiven): Disagreement[] {
  if (nominal === undefined || !has(precharge, 'rows')) return [];
  const line = lineThrough(gas, nominal, ambient.pascals, 'nominal', 'nominal point');
  return precharge.rows.flatMap((row) => {
    const p = gaugeOnLine(
      gas,
      line.point,
      line.rho_mol_m3,
      row.temperature.kelvins,
      ambient.pascals,
      'nominal',
      'nominal point',
    );
    const off = Math.abs(p - row.pressure.pascals);
    return off > precharge.printedStep.pascals ? [{ row, byConstantDensity: gaugeOf(p) }] : [];
  });
}

function needNominal(nominal: ReferencePoint, precharge: Stated): void {
  needPoint(nominal);
  if (!isObject(precharge) || has(precharge, 'rows')) return; // what it stands beside has problems of its own, or is a table
  fail(nominalWithoutTable, '', 'a nominal point beside a reference point');
}

function needSeparator(separator: Separator): void {
  if (separator === 'diaphragm' || separator === 'bladder' || separator === 'piston') return;
  fail(unknownWord, '', quote(separator), { words: "'diaphragm', 'bladder' or 'piston'" });
}

function needBelow(reference_Pa: number, allowable: GaugePressure, precharge: Stated): void {
  if (reference_Pa <= allowable.pascals) return;
  const path = has(precharge, 'rows') ? 'rows' : 'pressure';
  fail(aboveAllowable, path, `${inBar(reference_Pa)} gauge`, { allowable: inBar(allowable.pascals) });
}

function needSettling(settling: SpecificationGiven['settling']): void {
  needObject(settling, 'settling: allowance and minutes');
  const problems: Problem[] = [];
  collect(problems, 'allowance', () => needSize(settling.allowance));
  collect(problems, 'minutes', () => needMinutes(settling.minutes));
  failIfAny(problems);
}

function needMinutes(minutes: number): void {
  if (!Number.isFinite(minutes)) fail(notANumber, '', quote(minutes));
  if (!(minutes > 0)) fail(notPositive, '', `${minutes} min`);
}

/** Refuses everything but a specification that {@link specification} made. */
export function needSpecification(spec: Specification): void {
  if (!isChecked(spec, 'specification')) wrongKind('specification', spec, 'spec');
  // A frozen copy that was given the prototype has the mark, and not what only `specification` puts there.
  if (!Object.hasOwn(spec, '~curves')) fail(uncheckedSpecification, 'spec', 'an unchecked copy of a specification');
}
