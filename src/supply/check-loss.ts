// What a check costs: gas that flows into the kit and is vented with it.
import { collect, fail, failIfAny, type Problem } from '../basis/fault.js';
import { outsideBounds } from '../basis/problem.js';
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
  type GaugePressure,
  type PressureDifference,
  type Volume,
} from '../quantity/kind.js';
import { belowVacuum, DIFFERENCE, TO_ABSOLUTE, TO_GAUGE } from '../quantity/pressure.js';
import { inBar } from '../quantity/unit.js';
import { needHeld, type Held } from './kit.js';
import { BEFORE_KIT, WITH_KIT } from './relations.js';

/** What one check takes from an accumulator. */
export interface CheckLoss {
  /** What flows into the kit, and is vented from it when it is taken off. */
  readonly gas: GasQuantity;
  /** What the gauge of the kit shows, and what is left in the accumulator, when the gas has its temperature again. */
  readonly after: GaugePressure;
  /** By how much the pressure in the accumulator has fallen. */
  readonly fall: PressureDifference;
}

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
  const { V, V_kit, T, ambient, rho, rho_kit, pressure } = connected(gas, accumulator, kitVolume, before, trace);
  const rho_after = step4(trace, WITH_KIT, 'accumulator and kit', V, rho, V_kit, rho_kit);
  const p_after = pvtAt(gas, T, rho_after, 'accumulator.read', 'accumulator and kit', trace).p_Pa;
  const after = step2(trace, TO_GAUGE, 'accumulator and kit', p_after, ambient);
  const lost = rho > rho_after ? step3(trace, AMOUNT, 'loss', V, rho, rho_after) : 0;
  return {
    gas: gasQuantity(gas, lost, 'up', trace),
    after: gaugeOf(after),
    fall: pressureDifferenceOf(step2(trace, DIFFERENCE, 'fall', pressure.pascals, after)),
  };
}

/** An accumulator before a check, from what the gauge of the kit showed during it. */
export interface BeforeCheck {
  /** What it held before the kit was connected. */
  readonly pressure: GaugePressure;
  /** By how much the check has let it fall; negative where the kit had more. */
  readonly fall: PressureDifference;
  /** What the check takes from it: the gas that is vented with the kit. */
  readonly gas: GasQuantity;
}

/**
 * What an accumulator held before a kit was connected to it, from the reading on the gauge of the kit: {@link checkLoss}
 * backwards. An accumulator that lacks no more than this has lost it to the check, and not to a leak.
 *
 * At one temperature, that of the reading: the kit is small and of metal.
 *
 * @param accumulator what was read of it, kit and accumulator being one
 * @param kitVolume inner space of the kit; zero or more
 * @param before gauge pressure in the kit before its connection: zero for one that was vented
 * @throws {@link Fault} as {@link checkLoss}; `outside bounds` for a kit that would have had more gas than both have now
 * @example
 * ```ts
 * const read = { pressure: gauge(143.36, 'bar'), temperature: temperature(20, '°C'), ambient: standardAtmosphere };
 * const found = beforeCheck(nitrogen, { gasVolume: volume(1, 'L'), read }, volume(30, 'mL'), gauge(0, 'bar'));
 * write(found.pressure, { step: 0.1, unit: 'bar' }); // => '148.0 bar gauge'
 * write(found.fall, { step: 0.01, unit: 'bar' }); // => '4.64 bar difference'
 * ```
 */
export function beforeCheck(
  gas: GasModel,
  accumulator: Held,
  kitVolume: Volume,
  before: GaugePressure,
  trace?: Trace,
): BeforeCheck {
  const { V, V_kit, T, ambient, rho, rho_kit, pressure } = connected(gas, accumulator, kitVolume, before, trace);
  const rho_before = step4(trace, BEFORE_KIT, 'before the kit', V, rho, V_kit, rho_kit);
  if (rho_before < 0) {
    const most = pvtAt(gas, T, ((V + V_kit) * rho) / V_kit, 'before', 'kit').p_Pa - ambient;
    fail(outsideBounds, 'before', `${inBar(before.pascals)} gauge`, {
      bounds: `at most ${inBar(most)} gauge: the kit would have had more gas than kit and accumulator have now`,
    });
  }
  const p_before = rho_before === rho ? undefined : pvtAt(gas, T, rho_before, 'before', 'before the kit', trace).p_Pa;
  const was = p_before === undefined ? pressure.pascals : step2(trace, TO_GAUGE, 'before the kit', p_before, ambient);
  const lost = rho_before > rho ? step3(trace, AMOUNT, 'loss', V, rho_before, rho) : 0;
  return {
    pressure: gaugeOf(was),
    fall: pressureDifferenceOf(step2(trace, DIFFERENCE, 'fall', was, pressure.pascals)),
    gas: gasQuantity(gas, lost, 'up', trace),
  };
}

/** An accumulator and a kit at its temperature, checked, with the densities that they have. */
function connected(gas: GasModel, accumulator: Held, kitVolume: Volume, before: GaugePressure, trace?: Trace) {
  needModel(gas, 'gas');
  const problems: Problem[] = [];
  const own = taken(accumulator, CHECKED);
  collect(problems, 'accumulator', () => needHeld(own));
  collect(problems, 'kitVolume', () => need('volume', kitVolume, ''));
  collect(problems, 'before', () => need('gauge pressure', before, ''));
  failIfAny(problems);
  const { pressure, temperature, ambient } = own.read;
  const T = temperature.kelvins;
  const p = step2(trace, TO_ABSOLUTE, 'accumulator', pressure.pascals, ambient.pascals);
  const p_kit = step2(trace, TO_ABSOLUTE, 'kit', before.pascals, ambient.pascals);
  if (p_kit < 0) belowVacuum(before, ambient, 'before');
  return {
    V: own.gasVolume.cubicMetres,
    V_kit: kitVolume.cubicMetres,
    T,
    ambient: ambient.pascals,
    pressure,
    rho: densityAt(gas, T, p, 'accumulator.read', 'accumulator', trace),
    rho_kit: densityAt(gas, T, p_kit, 'before', 'kit', trace),
  };
}
