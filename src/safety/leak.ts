import { fail, under } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { moreThanThereIs, outsideBounds } from '../basis/problem.js';
import { relation, step2, step3, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { AMOUNT } from '../charge/charge.js';
import { CONTENTS, THINNER } from '../gas/amount.js';
import { densityAt, pvtAt } from '../gas/door.js';
import {
  amountOf,
  isChecked,
  pressureDifferenceOf,
  temperatureDifferenceOf,
  wrongKind,
  type Amount,
  type PressureDifference,
  type TemperatureDifference,
  type Volume,
} from '../quantity/kind.js';
import { pressureDifference, TO_ABSOLUTE } from '../quantity/pressure.js';
import { checkStep, needDivision, rounded, type Division } from '../quantity/step.js';
import { inBar, type PressureUnit } from '../quantity/unit.js';
import { all } from '../reading/checks.js';
import { needSize } from '../target/tolerance.js';
import { needRead, type Read } from '../verdict/compare.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needGiven, needNumber, needPressure } from './checks.js';
import { needVessel, type Vessel } from './stored-energy.js';
import { needSpace } from '../target/space.js';

/** A leak test, and the loss that it is meant to show. Nothing here has a default. */
export interface LeakTest {
  /** Gas lost in a year: as an amount, or as the fall of pressure that it makes at the temperature of the reading. */
  readonly lossPerYear: Amount | PressureDifference;
  /** Volume of one bubble as it leaves, at the ambient pressure and the temperature of the reading. More than zero. */
  readonly bubble: Volume;
  /** Minutes that somebody watches for a bubble. More than zero. */
  readonly patienceMinutes: number;
  /** Minutes between the two readings of the gauge. More than zero. */
  readonly minutesBetween: number;
  /** The smallest fall that the gauge shows. */
  readonly gaugeStep: Division<PressureUnit>;
}

/** What one way of testing shows of a loss. */
interface Shown {
  readonly against: 'shows it' | 'does not show it';
  /** The smallest loss per year that it shows: as an amount. */
  readonly smallestPerYear: Amount;
}

/** A loss per year as a bubble now and then, and as a fall of the gauge. */
export interface LeakShown {
  readonly lossPerYear: Amount;
  readonly bubbles: Shown & {
    /** Minutes from one bubble to the next; `none` without a loss. */
    readonly minutesApart: number | 'none';
  };
  readonly gauge: Shown & {
    /** Fall of pressure between the two readings, at constant temperature. */
    readonly fall: PressureDifference;
    /** How much colder gas without a leak would show the same fall: warmer gas hides it. */
    readonly sameAsCoolingBy: TemperatureDifference;
  };
  readonly cautions: readonly CausedCaution<'leak test'>[];
}

/** A year of 365.25 days, in minutes. */
const MINUTES_PER_YEAR = 525_960;
/** Less than any test can show, in mol: a bubble of it would take ages of the earth. */
const LEAST_LOSS = 1e-15;
/** Whatever is larger is no bubble, in m3. */
const LARGEST_BUBBLE = 1e-4;
const LEAST_MINUTES = 1e-3;

export const LOWERED = /* @__PURE__ */ relation({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['p_before', 'dp'],
  formula: 'p_before - dp',
  source: 'difference of two absolute pressures, by definition',
  of: (p_before, dp) => p_before - dp,
});

export const FALLEN = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['p_before', 'p_after'],
  formula: 'p_before - p_after',
  source: 'difference of two absolute pressures, by definition',
  of: (p_before, p_after) => p_before - p_after,
});

export const COOLING = /* @__PURE__ */ relation({
  gives: 'dT',
  unit: 'K',
  from: ['dp', 'p_T'],
  formula: 'dp / p_T',
  source: 'slope of pressure with temperature at constant density',
  of: (dp, p_T) => dp / p_T,
});

export const MINUTES_APART = /* @__PURE__ */ relation({
  gives: 't_bubble',
  unit: 'min',
  from: ['n_bubble', 'n_year', 't_year'],
  formula: 'n_bubble / n_year * t_year',
  source: 'amount of one bubble by the amount lost in a time, at a constant rate',
  of: (n_bubble, n_year, t_year) => (n_bubble / n_year) * t_year,
});

export const IN_A_TIME = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['n_year', 't_test', 't_year'],
  formula: 'n_year * t_test / t_year',
  source: 'loss at a constant rate',
  of: (n_year, t_test, t_year) => (n_year * t_test) / t_year,
});

export const IN_A_YEAR = /* @__PURE__ */ relation({
  gives: 'n_year',
  unit: 'mol',
  from: ['n', 't_test', 't_year'],
  formula: 'n * t_year / t_test',
  source: 'loss at a constant rate',
  of: (n, t_test, t_year) => (n * t_year) / t_test,
});

const AS_IT_IS = 'as it is';
const TEST: Fields = {
  lossPerYear: AS_IT_IS,
  bubble: AS_IT_IS,
  patienceMinutes: AS_IT_IS,
  minutesBetween: AS_IT_IS,
  gaugeStep: { step: AS_IT_IS, unit: AS_IT_IS },
};

/**
 * What a loss of gas looks like in a leak test: minutes between bubbles, and fall of the gauge over a time; and the smallest
 * loss that each would show, one bubble within the patience and one step of the gauge. A bubble shows in minutes what a
 * gauge shows in weeks, and the gauge shows the weather of the engine room first.
 *
 * @param vessel the gas and its volume: a specification, or a bottle
 * @param read pressure, temperature and ambient at the start of the test
 * @throws {@link Fault} with every problem found: `wrong kind`, `absolute for gauge`, `gauge for absolute`,
 * `unchecked copy`, `not a number`, `not positive`, `outside bounds`, `not a step`, `step too fine`, `unknown unit`,
 * `not an ambient pressure`; `more than there is` for a loss of more than the contents; `outside the model`, `liquid`
 * @example
 * ```ts
 * const read = { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C'), ambient: standardAtmosphere };
 * const shown = leakTest(spec, read, {
 *   lossPerYear: pressureDifference(5, 'bar'), bubble: volume(0.05, 'mL'), patienceMinutes: 5,
 *   minutesBetween: 1440, gaugeStep: { step: 1, unit: 'bar' },
 * });
 * [shown.bubbles.against, Math.round(60 * Number(shown.bubbles.minutesApart))]; // => ['shows it', 69]
 * [shown.gauge.against, write(shown.gauge.fall, { step: 0.001, unit: 'bar' })]; // => ['does not show it', '0.014 bar difference']
 * ```
 */
export function leakTest(vessel: Vessel, read: Read, test: LeakTest, trace?: Trace): LeakShown {
  const { gas, gasVolume } = under('vessel', () => needVessel(vessel));
  const at = under('read', () => {
    const one = needRead(read);
    all(['pressure', () => needPressure(one.pressure)]);
    return one;
  });
  const own = under('test', () => needTest(test));
  const T = at.temperature.kelvins;
  const V = gasVolume.cubicMetres;
  const p = step2(trace, TO_ABSOLUTE, 'reading', at.pressure.pascals, at.ambient.pascals);
  const rho = densityAt(gas, T, p, 'read.pressure', 'reading', trace);
  const contents = step2(trace, CONTENTS, 'reading', V, rho);
  /** What has left when the pressure has fallen. */
  const lostBy = (fall_Pa: number, path: string): number => {
    if (fall_Pa >= p) more(`${inBar(fall_Pa)} difference`, `${inBar(p)} absolute`, path);
    const low = step2(trace, LOWERED, 'after the fall', p, fall_Pa);
    const lost = step3(trace, AMOUNT, 'lost', V, rho, densityAt(gas, T, low, path, 'after the fall', trace));
    return lost > 0 ? lost : 0; // the last place of a solver must not make a gain of a fall of next to nothing
  };
  const { lossPerYear: loss } = own;
  const n_year = has(loss, 'moles') ? loss.moles : lostBy(loss.pascals, 'test.lossPerYear');
  if (n_year >= contents) more(`${n_year} mol`, `${contents} mol`, 'test.lossPerYear');
  if (n_year > 0 && n_year < LEAST_LOSS)
    fail(outsideBounds, 'test.lossPerYear', `${n_year} mol`, { bounds: `0 mol, or at least ${LEAST_LOSS} mol` });

  const rho_bubble = densityAt(gas, T, at.ambient.pascals, 'read.ambient', 'bubble', trace);
  const n_bubble = step2(trace, CONTENTS, 'bubble', own.bubble.cubicMetres, rho_bubble);
  const apart = n_year > 0 ? step3(trace, MINUTES_APART, 'bubble', n_bubble, n_year, MINUTES_PER_YEAR) : 'none';
  const leastByBubble = step3(trace, IN_A_YEAR, 'bubble', n_bubble, own.patienceMinutes, MINUTES_PER_YEAR);

  const lost = step3(trace, IN_A_TIME, 'gauge', n_year, own.minutesBetween, MINUTES_PER_YEAR);
  const before = pvtAt(gas, T, rho, 'read', 'reading', trace);
  const rho_after = step3(trace, THINNER, 'after the time', rho, lost, V);
  const { p_Pa } = pvtAt(gas, T, rho_after, 'read', 'after the time', trace);
  const fall = step2(trace, FALLEN, 'gauge', before.p_Pa, p_Pa);
  const step_Pa = pressureDifference(own.gaugeStep.step, own.gaugeStep.unit).pascals;
  const inTheTime = lostBy(step_Pa, 'test.gaugeStep');
  const leastByGauge = step3(trace, IN_A_YEAR, 'gauge', inTheTime, own.minutesBetween, MINUTES_PER_YEAR);
  return {
    lossPerYear: amountOf(n_year),
    bubbles: {
      minutesApart: apart,
      against: apart !== 'none' && apart <= own.patienceMinutes ? 'shows it' : 'does not show it',
      smallestPerYear: amountOf(leastByBubble),
    },
    gauge: {
      fall: pressureDifferenceOf(fall),
      sameAsCoolingBy: temperatureDifferenceOf(step2(trace, COOLING, 'gauge', fall, before.dpdT_rho)),
      against: fall >= step_Pa ? 'shows it' : 'does not show it',
      smallestPerYear: amountOf(leastByGauge),
    },
    cautions: cautionsOf('leak test', ['leak may not show', 'stored pressure']),
  };
}

function more(found: string, contents: string, path: string): never {
  fail(moreThanThereIs, path, found, { contents });
}

/** A leak test, each part of it read once and checked. */
function needTest(test: LeakTest): LeakTest {
  needGiven(test, 'leak test');
  const own = taken(test, TEST);
  const { lossPerYear, bubble, patienceMinutes, minutesBetween, gaugeStep } = own;
  all(
    ['lossPerYear', () => needLoss(lossPerYear)],
    ['bubble', () => needBubble(bubble)],
    ['patienceMinutes', () => needNumber(patienceMinutes, 'min', LEAST_MINUTES, MINUTES_PER_YEAR)],
    ['minutesBetween', () => needNumber(minutesBetween, 'min', LEAST_MINUTES, MINUTES_PER_YEAR)],
    ['gaugeStep', () => needStep(gaugeStep)],
  );
  return own;
}

function needLoss(loss: Amount | PressureDifference): void {
  if (isChecked(loss, 'amount of substance')) return;
  if (!isChecked(loss, 'pressure difference')) wrongKind('amount of substance', loss, '');
  needSize(loss as PressureDifference);
}

function needBubble(bubble: Volume): void {
  needSpace(bubble);
  if (bubble.cubicMetres > LARGEST_BUBBLE)
    fail(outsideBounds, '', `${bubble.cubicMetres} m3`, { bounds: `at most ${LARGEST_BUBBLE} m3` });
}

function needStep(gaugeStep: Division<PressureUnit>): void {
  const { step, unit } = needDivision(gaugeStep, '');
  checkStep(step);
  // Rounding checks the unit.
  rounded(pressureDifferenceOf(0), { step, unit, toward: 'down' });
}
