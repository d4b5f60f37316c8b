import { collect, failIfAny, type Problem } from '../basis/fault.js';
import { taken, type Fields } from '../basis/taken.js';
import { need, wrongKind, type GaugePressure, type PressureDifference, type Volume } from '../quantity/kind.js';
import { needSize } from '../target/tolerance.js';
import type { Read } from '../verdict/compare.js';
import { needAboveZero, needRead } from './bottle.js';
import { needSpace } from '../target/space.js';

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

const RIG: Fields = {
  kit: { volume: 'as it is', rated: 'as it is' },
  regulator: { difference: 'as it is', ratedInlet: 'as it is', ratedOutlet: 'as it is' },
};

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
