import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { belowVacuumGauge, negative, notANumber, notAText, notPositive, outsideBounds } from '../basis/problem.js';
import { step2, step3, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import type { SupplyCode } from '../basis/words.js';
import { isWellFormed } from '../basis/well-formed.js';
import { AMOUNT, gasQuantity, type GasQuantity } from '../charge/charge.js';
import { CONTENTS } from '../gas/amount.js';
import { densityAt, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  gaugeOf,
  need,
  wrongKind,
  type AbsolutePressure,
  type GaugePressure,
  type PressureDifference,
  type Volume,
} from '../quantity/kind.js';
import { belowVacuum, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import { inBar } from '../quantity/unit.js';
import { needAmbient } from '../target/conditions.js';
import { needConditions } from '../target/target.js';
import { needSize } from '../target/tolerance.js';
import type { Read } from '../verdict/compare.js';
import { needSpace } from '../target/space.js';

/** A gas bottle as it stands on board: what is stamped and labelled on it, and what was read of it. */
export interface Bottle {
  /** By which it is found; no other bottle beside it has the same. */
  readonly name: string;
  /** Water volume, as stamped. Greater than zero. */
  readonly waterVolume: Volume;
  /** What label and stamp say. Their pressures are meant at 15 °C. */
  readonly label: {
    /** The gas, as the model names it: `nitrogen`. */
    readonly gas: string;
    /** Purity in per cent, above 0 to 100, as labelled. */
    readonly purityPercent: number | 'not stated';
    /** Pressure to which it is filled, at 15 °C. Greater than zero. */
    readonly filling: GaugePressure;
    /** Pressure that it may hold, at 15 °C. Greater than zero. */
    readonly rated: GaugePressure;
    /** Ambient at which these are meant; `standardAtmosphere` where the label is silent. */
    readonly ambient: AbsolutePressure;
  };
  /** Its gauge, the temperature of its shell, and the barometer. */
  readonly read: Read;
  /**
   * How far its pressure at 15 °C may be off for the error of gauge and thermometer: so far below the filling pressure it
   * still counts as full, so far above the rated one not yet as too high. Zero or more.
   */
  readonly within: PressureDifference;
  /** Not to be emptied below this, in the ambient of the reading: so that nothing flows back into it. Zero or more. */
  readonly residual: GaugePressure;
}

/** What is in a bottle, and whether it may be used. */
export interface BottleState {
  readonly name: string;
  /** What its gauge would show at 15 °C in the ambient of the label: by this it is judged, not by the reading. */
  readonly at15C: GaugePressure;
  /** `full` within the stated difference of its filling pressure, and `part used` below. */
  readonly state: 'full' | 'part used';
  /** All that is in it. */
  readonly contents: GasQuantity;
  /** Of that, what lies above the residual pressure, at the temperature read; nothing if it lies below. */
  readonly aboveResidual: GasQuantity;
  /** Why it is not to be used, by stable codes; empty for a sound one. In words: {@link supplyText}. */
  readonly because: readonly SupplyCode[];
}

/** The temperature at which bottles are filled and rated: 15 °C (ISO 13769 and EN 1089 speak of it so; from memory). */
export const LABEL_T_K = 288.15;

const READ: Fields = { pressure: 'as it is', temperature: 'as it is', ambient: 'as it is' };
const BOTTLE: Fields = {
  name: 'as it is',
  waterVolume: 'as it is',
  label: { gas: 'as it is', purityPercent: 'as it is', filling: 'as it is', rated: 'as it is', ambient: 'as it is' },
  read: READ,
  within: 'as it is',
  residual: 'as it is',
};

/** A bottle read once, checked, with its numbers in SI units. */
export interface BottleNumbers {
  readonly given: Bottle;
  readonly V: number;
  readonly T: number;
  readonly ambient: number;
  /** Absolute, as read. */
  readonly p: number;
  readonly rho: number;
  /** Absolute. */
  readonly residual: number;
  /** Gauge, at 15 °C in the ambient of the label. */
  readonly at15C: number;
  readonly isFull: boolean;
  readonly because: readonly SupplyCode[];
}

/**
 * What a bottle holds and whether it may be used, judged by its pressure at 15 °C: filled to 200 bar it shows about 220 bar
 * at 35 °C, so that 200 bar on the gauge of a hot engine room is a part-used bottle.
 *
 * @param gas the charge gas
 * @param leastPurityPercent what the specification of the charge gas demands, or that it demands nothing
 * @throws {@link Fault} with every problem found: `wrong kind`, `gauge for absolute`, `absolute for gauge`,
 * `unchecked copy`, `not a number`, `not a text`, `not positive`, `negative`, `outside bounds`, `not an ambient pressure`,
 * `gauge below vacuum`, `outside the model`, `liquid`
 * @example
 * ```ts
 * const bottle = {
 *   name: 'N2-1',
 *   waterVolume: volume(50, 'L'),
 *   label: {
 *     gas: 'nitrogen',
 *     purityPercent: 99.99,
 *     filling: gauge(200, 'bar'),
 *     rated: gauge(200, 'bar'),
 *     ambient: standardAtmosphere,
 *   },
 *   read: { pressure: gauge(200, 'bar'), temperature: temperature(35, '°C'), ambient: standardAtmosphere },
 *   within: pressureDifference(4, 'bar'),
 *   residual: gauge(5, 'bar'),
 * };
 * const { at15C, state } = bottleState(nitrogen, bottle, 99.9);
 * write(at15C, { step: 0.1, unit: 'bar' }); // => '182.2 bar gauge'
 * state; // => 'part used'
 * ```
 */
export function bottleState(
  gas: GasModel,
  bottle: Bottle,
  leastPurityPercent: number | 'not demanded',
  trace?: Trace,
): BottleState {
  needModel(gas, 'gas');
  const problems: Problem[] = [];
  const demanded = demandedOf(problems, leastPurityPercent);
  const own = collect(problems, 'bottle', () => bottleNumbers(gas, bottle, demanded, trace));
  failIfAny(problems);
  return own === undefined ? wrongKind('bottle', bottle, 'bottle') : stateOf(gas, own, trace);
}

export function stateOf(gas: GasModel, of: BottleNumbers, trace?: Trace): BottleState {
  const all = step2(trace, CONTENTS, 'bottle', of.V, of.rho);
  const rest = aboveResidual(gas, of, trace);
  return {
    name: of.given.name,
    at15C: gaugeOf(of.at15C),
    state: of.isFull ? 'full' : 'part used',
    contents: gasQuantity(gas, all, 'down', trace),
    aboveResidual: gasQuantity(gas, rest, 'down', trace),
    because: of.because,
  };
}

/** What a bottle holds above its residual pressure, mol. */
function aboveResidual(
  gas: GasModel,
  { given, V, T, ambient, p, rho, residual }: BottleNumbers,
  trace?: Trace,
): number {
  if (residual >= p) return 0;
  step2(trace, TO_ABSOLUTE, 'residual pressure', given.residual.pascals, ambient);
  const least = densityAt(gas, T, residual, 'residual', 'residual pressure', trace);
  return Math.max(step3(trace, AMOUNT, 'above the residual pressure', V, rho, least), 0);
}

/** Reads a bottle once, checks it, and refers it to 15 °C. */
export function bottleNumbers(
  gas: GasModel,
  bottle: Bottle,
  leastPurity: number | 'not demanded',
  trace?: Trace,
): BottleNumbers {
  if (typeof bottle !== 'object' || bottle === null) wrongKind('bottle', bottle, '');
  const given = taken(bottle, BOTTLE);
  needBottle(given);
  const { label, read, within, waterVolume, residual } = given;
  const [V, T, ambient] = [waterVolume.cubicMetres, read.temperature.kelvins, read.ambient.pascals];
  const p = step2(trace, TO_ABSOLUTE, 'bottle', read.pressure.pascals, ambient);
  if (p < 0) belowVacuum(read.pressure, read.ambient, 'read.pressure');
  const rho = densityAt(gas, T, p, 'read', 'bottle', trace);
  const p15 = rho === 0 ? 0 : pvtAt(gas, LABEL_T_K, rho, 'read', 'bottle at 15 °C', trace).p_Pa;
  const at15C = step2(trace, TO_GAUGE, 'bottle at 15 °C', p15, label.ambient.pascals);
  const because: SupplyCode[] = [];
  if (label.gas !== gas.gas) because.push('another gas on the label');
  if (leastPurity !== 'not demanded') {
    if (label.purityPercent === 'not stated') because.push('purity not stated');
    else if (label.purityPercent < leastPurity) because.push('purity too low');
  }
  if (at15C > label.rated.pascals + within.pascals) because.push('above its rating');
  if (read.pressure.pascals <= residual.pascals) because.push('not above its residual pressure');
  return {
    given,
    V,
    T,
    ambient,
    p,
    rho,
    residual: residual.pascals + ambient,
    at15C,
    isFull: at15C >= label.filling.pascals - within.pascals,
    because,
  };
}

function needBottle({ name, waterVolume, label, read, within, residual }: Bottle): void {
  const problems: Problem[] = [];
  const check = (path: string, admit: () => void): void => {
    collect(problems, path, admit);
  };
  check('name', () => needName(name));
  check('waterVolume', () => needSpace(waterVolume));
  check('label', () => needLabel(label));
  check('read', () => needRead(read));
  check('within', () => needSize(within));
  check('residual', () => {
    need('gauge pressure', residual, '');
    if (residual.pascals < 0) fail(negative, '', `${inBar(residual.pascals)} gauge`);
  });
  failIfAny(problems);
}

function needLabel(label: Bottle['label']): void {
  if (typeof label !== 'object' || label === null) wrongKind('label of a bottle', label, '');
  const problems: Problem[] = [];
  collect(problems, 'gas', () => needName(label.gas));
  collect(problems, 'purityPercent', () => needPurity(label.purityPercent, 'not stated'));
  collect(problems, 'filling', () => needAboveZero(label.filling));
  collect(problems, 'rated', () => needAboveZero(label.rated));
  collect(problems, 'ambient', () => needAmbient(label.ambient, ''));
  failIfAny(problems);
}

/** Refuses what is no reading of a pressure with its temperature and ambient. */
export function needRead(read: Read): void {
  if (typeof read !== 'object' || read === null) wrongKind('reading: pressure, temperature and ambient', read, '');
  const problems: Problem[] = [];
  collect(problems, 'pressure', () => need('gauge pressure', read.pressure, ''));
  collect(problems, '', () => needConditions(read));
  failIfAny(problems);
  const least = -read.ambient.pascals;
  if (read.pressure.pascals < least)
    fail(belowVacuumGauge, 'pressure', `${inBar(read.pressure.pascals)} gauge`, {
      least: inBar(least),
      ambient: inBar(-least),
    });
}

/** The purity that is demanded; what is none is a problem, and bottles are then looked at without it. */
export function demandedOf(problems: Problem[], least: number | 'not demanded'): number | 'not demanded' {
  const sound = collect(problems, 'leastPurityPercent', () => {
    needPurity(least, 'not demanded');
    return least;
  });
  return sound ?? 'not demanded';
}

/** Refuses a purity that is none: a percentage above 0 to 100, or the word that says why there is none. */
function needPurity(purity: number | string, word: string): void {
  if (purity === word || (typeof purity === 'number' && purity > 0 && purity <= 100)) return;
  fail(outsideBounds, '', quote(purity), { bounds: `more than 0 to 100, in per cent, or '${word}'` });
}

export function needName(name: string): void {
  if (typeof name === 'string' && name !== '' && isWellFormed(name)) return;
  fail(notAText, '', quote(name));
}

export function needAboveZero(pressure: GaugePressure): void {
  need('gauge pressure', pressure, '');
  if (pressure.pascals <= 0) fail(notPositive, '', `${inBar(pressure.pascals)} gauge`);
}

/** Refuses a number that is none, or lies outside of two bounds. */
export function needNumber(value: number, least: number, most: number, bounds: string): void {
  if (!Number.isFinite(value)) fail(notANumber, '', quote(value));
  if (value < least || value > most) fail(outsideBounds, '', String(value), { bounds });
}
