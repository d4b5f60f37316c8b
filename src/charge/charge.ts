import { relation, step2, step3, type Trace } from '../basis/relation.js';
import type { Reason } from '../basis/words.js';
import { massOfGas, normalVolume } from '../gas/amount.js';
import type { GasModel } from '../gas/model.js';
import { amountOf, gaugeOf, type Amount, type GaugePressure, type Mass } from '../quantity/kind.js';
import { normalConditions, writeNormalVolume, type NormalVolume } from '../quantity/normal-volume.js';
import { write, type Toward } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { markAt, type Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetDensity } from '../target/target.js';
import type { Band } from '../verdict/band.js';
import { readDensity } from '../verdict/compare.js';
import { checkedReading, judged, type Verdict } from '../verdict/judge.js';

/** An amount of gas in the three ways it is weighed, metered and ordered. */
export interface GasQuantity {
  readonly amount: Amount;
  readonly mass: Mass;
  /** At 0 °C and 101.325 kPa, through the gas model. */
  readonly normalVolume: NormalVolume;
  /** For people: mass to the gram and volume to the litre, rounded up for gas to add and down for gas to vent. */
  readonly rounded: { readonly mass: string; readonly normalVolume: string };
}

/** Where to stop filling or venting. */
export interface Stop {
  readonly action: 'stop';
  /** Exact: the target, and when filling the settling allowance on top of it. */
  readonly pressure: GaugePressure;
  /** The mark of the gauge to stop at, as that gauge shows it: rounded down, but never below the lower limit. */
  readonly mark: { readonly value: string; readonly unit: PressureUnit } | 'no mark of the gauge to stop at';
}

/** Gas to add or to vent, then wait, then read again. */
export interface Move {
  readonly action: 'add' | 'vent';
  /** Between the reading and the target: not what a stop above the target takes for a moment. */
  readonly gas: GasQuantity;
  /** Withheld where the stop pressure would be above the allowable pressure. */
  readonly stop: Stop | Withheld;
  /** Whole minutes, rounded up, to wait with the valves closed before the next reading. */
  readonly settleMinutes: number;
  readonly then: 'read again';
}

/** No gas to move: the reading lies inside the limits. */
export interface NoMove {
  readonly action: 'none';
}

/** Why nothing is given here: as a charge neither quantity nor stop pressure, as a stop no pressure. */
export interface Withheld {
  readonly action: 'withheld';
  /** By stable codes; in words, with the numbers: {@link why}. */
  readonly because: readonly Reason[];
}

/** What to do about a reading. */
export type Charge = Move | NoMove | Withheld;

export const AMOUNT = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['V', 'rho_high', 'rho_low'],
  formula: 'V * (rho_high - rho_low)',
  source: 'mass balance of a vessel of constant volume',
  of: (V, rho_high, rho_low) => V * (rho_high - rho_low),
});

export const STOP = /* @__PURE__ */ relation({
  gives: 'p_stop',
  unit: 'Pa',
  from: ['p_target', 'dp_allowance'],
  formula: 'p_target + dp_allowance',
  source: "the specification's settling allowance: gas is warm from being compressed and settles lower",
  of: (p_target, dp_allowance) => p_target + dp_allowance,
});

/**
 * The gas to add or to vent so that a reading comes to its target, and where to stop. It judges the reading first, so that
 * no quantity exists without full evidence: short of it the answer is `withheld`.
 *
 * Filling stops at the target plus the specification's settling allowance. Venting stops at the target: venting cools the
 * gas, which then settles higher, not lower.
 *
 * @throws {@link Fault} as {@link judge}
 * @example
 * ```ts
 * const move = charge(spec, reading);
 * if (move.action === 'add') move.gas.rounded; // => { mass: '0.047 kg', normalVolume: '0.037 m3 at 0 °C and 101.325 kPa absolute' }
 * ```
 */
export function charge(spec: Specification, reading: Reading, trace?: Trace): Charge {
  needSpecification(spec);
  const own = checkedReading(reading);
  return chargeFor(spec, own, judged(spec, own, trace), trace);
}

/** The charge for a verdict on the same specification and reading, both checked. */
export function chargeFor(spec: Specification, reading: Reading, verdict: Verdict, trace?: Trace): Charge {
  switch (verdict.outcome) {
    case 'gas not known':
    case 'not comparable':
    case 'gauge too coarse':
      return { action: 'withheld', because: verdict.because };
    case 'gas side empty':
      if (reading.emptyGasSide === 'investigated and cleared') return move('add', spec, reading, verdict, trace);
      return { action: 'withheld', because: ['reads zero', 'not investigated'] };
    case 'within':
      if (reading.pressure.pascals <= spec.allowable.pascals) return { action: 'none' };
      return withheld('reading above the allowable pressure');
    case 'undercharged':
      return move('add', spec, reading, verdict, trace);
    case 'overcharged':
      return move('vent', spec, reading, verdict, trace);
  }
}

function move(action: Move['action'], spec: Specification, reading: Reading, verdict: Verdict, trace?: Trace): Charge {
  const target = verdict.target.pascals;
  if (target > spec.allowable.pascals) return withheld('target above the allowable pressure');
  const filling = action === 'add';
  const rho = readDensity(spec, reading, trace);
  const { cubicMetres } = spec.gasVolume;
  const wanted = targetDensity(spec, reading, target, trace);
  const [high, low] = filling ? [wanted, rho] : [rho, wanted];
  const moles = step3(trace, AMOUNT, action, cubicMetres, high, low);
  const stop = gaugeOf(filling ? step2(trace, STOP, action, target, spec.settling.allowance.pascals) : target);
  return {
    action,
    gas: gasQuantity(spec.gas, moles, filling ? 'up' : 'down', trace),
    stop:
      stop.pascals > spec.allowable.pascals
        ? withheld('stop pressure above the allowable pressure')
        : { action: 'stop', pressure: stop, mark: markFor(action, stop, reading, verdict.band) },
    settleMinutes: Math.ceil(spec.settling.minutes),
    then: 'read again',
  };
}

/** An amount of gas in the three ways, with the rounding for people. */
export function gasQuantity(gas: GasModel, moles: number, toward: Toward, trace?: Trace): GasQuantity {
  const amount = amountOf(moles);
  const mass = massOfGas(amount, gas, trace);
  const volume = normalVolume(amount, gas, normalConditions, trace);
  return {
    amount,
    mass,
    normalVolume: volume,
    rounded: {
      mass: write(mass, { step: 0.001, unit: 'kg', toward }),
      normalVolume: writeNormalVolume(volume, { step: 0.001, unit: 'm3', toward }),
    },
  };
}

/**
 * The mark at or next below the stop. One below the lower limit would leave it undercharged by instruction: venting then
 * stops at the mark above, if the band holds one; filling never goes above its stop.
 */
function markFor(action: Move['action'], stop: GaugePressure, reading: Reading, band: Band): Stop['mark'] {
  const { unit } = reading.gaugeStep;
  const down = markAt(stop, reading, 'down');
  if (down.si >= band.lower.pascals) return { value: down.text, unit };
  const up = markAt(stop, reading, 'up');
  return action === 'vent' && up.si <= band.upper.pascals
    ? { value: up.text, unit }
    : 'no mark of the gauge to stop at';
}

function withheld(reason: Reason): Withheld {
  return { action: 'withheld', because: [reason] };
}
