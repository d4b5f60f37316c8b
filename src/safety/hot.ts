import { fail, quote, under } from '../basis/fault.js';
import { notTheHottest, unknownWord } from '../basis/problem.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
} from '../quantity/kind.js';
import { inCelsius } from '../quantity/unit.js';
import type { Conditions } from '../target/conditions.js';
import { densityOfLine, gaugeOnLine, type Point } from '../target/line.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { needConditions, targetAt } from '../target/target.js';
import { bandAbout } from '../verdict/band.js';
import { needRead, type Read } from '../verdict/compare.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';

/** The gas of which it is asked: as it was read, or as the specification wants or just allows it. */
export type GasWhenHot = Read | 'target' | 'upper limit';

/** What the gas of a closed vessel comes to at the hottest temperature expected. */
export interface Hot {
  readonly outcome: 'not above the allowable pressure' | 'above the allowable pressure';
  /** The gauge pressure at the hottest temperature, in the ambient given with it. */
  readonly pressure: GaugePressure;
  readonly allowable: GaugePressure;
  /** Allowable pressure less that pressure: negative where it is above. */
  readonly belowAllowable: PressureDifference;
  /** The most that the gas may have now to reach the allowable pressure, and no more, at the hottest temperature. */
  readonly mostNow: {
    readonly pressure: GaugePressure;
    /** Of the reading, or the reference temperature of the specification. */
    readonly temperature: Temperature;
  };
  readonly cautions: readonly CausedCaution<'pressure when hot'>[];
}

export const BELOW_ALLOWABLE = /* @__PURE__ */ relation({
  gives: 'dp_below',
  unit: 'Pa',
  from: ['p_allowable', 'p_g'],
  formula: 'p_allowable - p_g',
  source: 'distance of a pressure from the allowable one, by definition',
  of: (p_allowable, p_g) => p_allowable - p_g,
});

/**
 * The pressure of the gas at the hottest temperature expected, with the oil side drained, against the allowable pressure.
 * The gas keeps its density: it follows the line through the reading, or through what the specification states at its
 * reference temperature. With oil behind the separator the gas has the pressure of the system, which this does not see.
 *
 * @param gas what was read, or `target` or `upper limit` of the specification, in service
 * @param hottest the hottest temperature that the gas may reach, laid up in the sun or beside a running engine, and the
 * ambient there: for the caller to state
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`,
 * `unchecked specification`, `unknown word`; `not an ambient pressure`, `gauge below vacuum`, `outside the model`, `liquid`;
 * `not the hottest` below the temperature of the reading
 * @example
 * ```ts
 * const engineRoom = { temperature: temperature(70, '°C'), ambient: standardAtmosphere };
 * const hot = pressureWhenHot(spec, 'upper limit', engineRoom);
 * write(hot.pressure, { step: 0.1, unit: 'bar' }); // => '174.0 bar gauge'
 * hot.outcome; // => 'not above the allowable pressure'
 * ```
 */
export function pressureWhenHot(spec: Specification, gas: GasWhenHot, hottest: Conditions, trace?: Trace): Hot {
  needSpecification(spec);
  const now = under('gas', () => gasOf(spec, gas, trace));
  const { temperature, ambient } = under('hottest', () => needConditions(hottest));
  const T = temperature.kelvins;
  const T_now = now.temperature.kelvins;
  if (typeof gas !== 'string' && T < T_now)
    fail(notTheHottest, 'hottest.temperature', inCelsius(T), { from: inCelsius(T_now) });
  const { allowable } = spec;
  const rho = densityOfLine(spec.gas, pointOf(now), 'gas', 'gas', trace);
  const p = gaugeOnLine(spec.gas, pointOf(now), rho, T, ambient.pascals, 'hottest.temperature', 'hottest', trace);
  const below = step2(trace, BELOW_ALLOWABLE, 'hottest', allowable.pascals, p);
  const most = pointOf({ pressure: allowable, temperature, ambient });
  const densest = densityOfLine(spec.gas, most, 'hottest', 'allowable pressure', trace);
  const mostNow = gaugeOnLine(spec.gas, most, densest, T_now, now.ambient.pascals, 'gas', 'most now', trace);
  return {
    outcome: below < 0 ? 'above the allowable pressure' : 'not above the allowable pressure',
    pressure: gaugeOf(p),
    allowable,
    belowAllowable: pressureDifferenceOf(below),
    mostNow: { pressure: gaugeOf(mostNow), temperature: now.temperature },
    cautions: cautionsOf('pressure when hot', [
      ...(below < 0 ? (['hot gas above the allowable pressure'] as const) : []),
      'stored pressure',
    ]),
  };
}

/** The gas that is asked of, at a point of its line. */
function gasOf(spec: Specification, gas: GasWhenHot, trace?: Trace): Read {
  if (typeof gas === 'object') return needRead(gas);
  if (gas !== 'target' && gas !== 'upper limit')
    return fail(unknownWord, '', quote(gas), { words: "a reading, or 'target' or 'upper limit'" });
  const at = { temperature: spec.referenceTemperature, ambient: spec.ambient };
  const target = targetAt(spec, at, trace);
  const pressure =
    gas === 'target' ? gaugeOf(target) : bandAbout(spec, at, target, { gaugeStep: WHOLE_BAR }, trace).upper;
  return { pressure, ...at };
}

// For a band whose marks nobody reads.
const WHOLE_BAR = { step: 1, unit: 'bar' } as const;

function pointOf({ pressure, temperature, ambient }: Read): Point {
  return { p_g_Pa: pressure.pascals, T_K: temperature.kelvins, ambient_Pa: ambient.pascals };
}
