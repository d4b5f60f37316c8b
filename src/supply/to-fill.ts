import { collect, failIfAny, type Problem } from '../basis/fault.js';
import type { Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { charge, type Charge } from '../charge/charge.js';
import { wrongKind, type GaugePressure } from '../quantity/kind.js';
import type { Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { target } from '../target/target.js';
import { checkedReading } from '../verdict/judge.js';
import { needAboveZero, needName } from './bottle.js';
import { needHeld, type Held } from './kit.js';

/** An accumulator that is to be filled. */
export interface ToFill extends Held {
  /** By which it is found; no other accumulator beside it has the same. */
  readonly name: string;
  /**
   * The pressure that it is to have at the temperature and in the ambient of its reading, after settling. Greater than zero.
   */
  readonly to: GaugePressure;
  /** Its allowable pressure, as on its name plate. */
  readonly allowable: GaugePressure;
}

const TO_FILL: Fields = {
  name: 'as it is',
  gasVolume: 'as it is',
  read: { pressure: 'as it is', temperature: 'as it is', ambient: 'as it is' },
  to: 'as it is',
  allowable: 'as it is',
};

/**
 * An accumulator as one to be filled to its target, if its reading says so. It judges the reading first: where no gas is to
 * be added the charge is given instead, which says why.
 *
 * @param name by which it is found
 * @throws {@link Fault} `not a text`; as {@link charge}
 * @example
 * ```ts
 * const one = toFill('EV 1', spec, reading);
 * if ('to' in one) write(one.to, { step: 0.1, unit: 'bar' }); // => '152.6 bar gauge'
 * ```
 */
export function toFill(name: string, spec: Specification, reading: Reading, trace?: Trace): ToFill | Charge {
  needSpecification(spec);
  const problems: Problem[] = [];
  collect(problems, 'name', () => needName(name));
  failIfAny(problems);
  const own = checkedReading(reading);
  const move = charge(spec, own, trace);
  if (move.action !== 'add') return move;
  const { pressure, temperature, ambient } = own;
  return {
    name,
    gasVolume: spec.gasVolume,
    read: { pressure, temperature, ambient },
    to: target(spec, { temperature, ambient }),
    allowable: spec.allowable,
  };
}

/** An accumulator to be filled, read once and checked. */
export function checkedToFill(one: ToFill): ToFill {
  if (typeof one !== 'object' || one === null) wrongKind('accumulator to be filled', one, '');
  const own = taken(one, TO_FILL);
  const problems: Problem[] = [];
  collect(problems, 'name', () => needName(own.name));
  collect(problems, '', () => needHeld(own));
  collect(problems, 'to', () => needAboveZero(own.to));
  collect(problems, 'allowable', () => needAboveZero(own.allowable));
  failIfAny(problems);
  return own;
}
