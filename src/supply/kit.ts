import { collect, failIfAny, type Problem } from '../basis/fault.js';
import { step2, step3, step4, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { AMOUNT, gasQuantity, type GasQuantity } from '../charge/charge.js';
import { densityAt, pvtAt } from '../gas/door.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  gaugeOf,
  need,
  pressureDifferenceOf,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
  type Volume,
} from '../quantity/kind.js';
import { belowVacuum, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import { needSize } from '../target/tolerance.js';
import type { Read } from '../verdict/compare.js';
import { needAboveZero, needRead, needSpace } from './bottle.js';
import { WITH_KIT } from './relations.js';

/** The charging kit: hose, fittings and gauge, from regulator or bottle valve to the gas valve of the accumulator. */
export interface Kit {
  /** Its inner space, whose gas is vented at each disconnection. Zero or more. */
  readonly volume: Volume;
  /** The most that it may hold, gauge. Greater than zero. */
  readonly rated: GaugePressure;
}

/** A pressure regulator between bottle and kit. */
export interface Regulator {
  /** How far the bottle must stay above the accumulator for gas to flow. Zero or more. */
  readonly difference: PressureDifference;
  /** The most that its inlet may hold, gauge. Greater than zero. */
  readonly ratedInlet: GaugePressure;
  /** The most that its outlet may hold, gauge. Greater than zero. */
  readonly ratedOutlet: GaugePressure;
}

/** What stands between bottle and accumulator. Without a regulator the kit holds the pressure of the bottle. */
export interface Rig {
  readonly kit: Kit;
  readonly regulator: Regulator | 'none';
}

/** A vessel of gas and what was read of it. */
export interface Held {
  /** Volume of the gas side with the oil side drained. Greater than zero. */
  readonly gasVolume: Volume;
  readonly read: Read;
}

/** What one check takes from an accumulator. */
export interface CheckLoss {
  /** What flows into the kit, and is vented from it when it is taken off. */
  readonly gas: GasQuantity;
  /** What the gauge of the kit shows, and what is left in the accumulator, when the gas has its temperature again. */
  readonly after: GaugePressure;
  /** By how much the pressure in the accumulator has fallen. */
  readonly fall: PressureDifference;
}

const RIG: Fields = {
  kit: { volume: 'as it is', rated: 'as it is' },
  regulator: { difference: 'as it is', ratedInlet: 'as it is', ratedOutlet: 'as it is' },
};
const READ: Fields = { pressure: 'as it is', temperature: 'as it is', ambient: 'as it is' };
const CHECKED: Fields = { gasVolume: 'as it is', read: READ };

/**
 * What it costs to connect a kit to an accumulator and take it off again: gas as an amount, and the fall of the pressure.
 * Gas flows until kit and accumulator have one pressure, and what is then in the kit is lost. Filled beforehand to near the
 * pressure of the accumulator, the kit takes next to nothing.
 *
 * At one temperature, that of the accumulator: the kit is small and of metal.
 *
 * @param accumulator what it held before the kit was connected
 * @param kitVolume inner space of the kit; zero or more
 * @param before gauge pressure in the kit before its connection: zero for one that was vented. At most that of the
 * accumulator for a loss; from a higher one the accumulator gains, and `fall` is negative and `gas` nothing
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`, `not positive`,
 * `not an ambient pressure`, `gauge below vacuum`, `outside the model`, `liquid`
 * @example
 * ```ts
 * const read = { pressure: gauge(148, 'bar'), temperature: temperature(20, '°C'), ambient: standardAtmosphere };
 * const loss = checkLoss(nitrogen, { gasVolume: volume(1, 'L'), read }, volume(30, 'mL'), gauge(0, 'bar'));
 * write(loss.fall, { step: 0.01, unit: 'bar' }); // => '4.64 bar difference'
 * ```
 */
export function checkLoss(
  gas: GasModel,
  accumulator: Held,
  kitVolume: Volume,
  before: GaugePressure,
  trace?: Trace,
): CheckLoss {
  needModel(gas, 'gas');
  const problems: Problem[] = [];
  const own = taken(accumulator, CHECKED);
  collect(problems, 'accumulator', () => needHeld(own));
  collect(problems, 'kitVolume', () => need('volume', kitVolume, ''));
  collect(problems, 'before', () => need('gauge pressure', before, ''));
  failIfAny(problems);
  const { pressure, temperature, ambient } = own.read;
  const T = temperature.kelvins;
  const V = own.gasVolume.cubicMetres;
  const p = step2(trace, TO_ABSOLUTE, 'accumulator', pressure.pascals, ambient.pascals);
  const p_kit = step2(trace, TO_ABSOLUTE, 'kit', before.pascals, ambient.pascals);
  if (p_kit < 0) belowVacuum(before, ambient, 'before');
  const rho = densityAt(gas, T, p, 'accumulator.read', 'accumulator', trace);
  const rho_kit = densityAt(gas, T, p_kit, 'before', 'kit', trace);
  const rho_after = step4(trace, WITH_KIT, 'accumulator and kit', V, rho, kitVolume.cubicMetres, rho_kit);
  const p_after = pvtAt(gas, T, rho_after, 'accumulator.read', 'accumulator and kit', trace).p_Pa;
  const after = step2(trace, TO_GAUGE, 'accumulator and kit', p_after, ambient.pascals);
  const lost = rho > rho_after ? step3(trace, AMOUNT, 'loss', V, rho, rho_after) : 0;
  return {
    gas: gasQuantity(gas, lost, 'up', trace),
    after: gaugeOf(after),
    fall: pressureDifferenceOf(pressure.pascals - after),
  };
}

/** Refuses what is no vessel of gas with its reading. */
export function needHeld(held: Held): void {
  if (typeof held !== 'object' || held === null) wrongKind('accumulator: gas volume and reading', held, '');
  const problems: Problem[] = [];
  collect(problems, 'gasVolume', () => needSpace(held.gasVolume));
  collect(problems, 'read', () => needRead(held.read));
  failIfAny(problems);
}

/** A rig read once and checked. */
export function checkedRig(rig: Rig): Rig {
  if (typeof rig !== 'object' || rig === null) wrongKind('rig: kit and regulator', rig, '');
  const own = taken(rig, RIG);
  const { kit, regulator } = own;
  const problems: Problem[] = [];
  collect(problems, 'kit', () => {
    if (typeof kit !== 'object' || kit === null) wrongKind('kit: volume and rating', kit, '');
  });
  failIfAny(problems);
  collect(problems, 'kit.volume', () => need('volume', kit.volume, ''));
  collect(problems, 'kit.rated', () => needAboveZero(kit.rated));
  if (regulator !== 'none') {
    collect(problems, 'regulator', () => {
      if (typeof regulator !== 'object' || regulator === null) wrongKind("regulator, or 'none'", regulator, '');
      const inner: Problem[] = [];
      collect(inner, 'difference', () => needSize(regulator.difference));
      collect(inner, 'ratedInlet', () => needAboveZero(regulator.ratedInlet));
      collect(inner, 'ratedOutlet', () => needAboveZero(regulator.ratedOutlet));
      failIfAny(inner);
    });
  }
  failIfAny(problems);
  return own;
}

/** What the regulator needs between bottle and accumulator, Pa. */
export function neededDifference({ regulator }: Rig): number {
  return regulator === 'none' ? 0 : regulator.difference.pascals;
}
