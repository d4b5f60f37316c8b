import { caused, type CausedCaution } from '../basis/caused.js';
import { USUAL, type CautionCode } from '../basis/caution.js';
import { fail, quote } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { unknownWord } from '../basis/problem.js';
import { inPart, step2, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { chargeFor, type Move, type NoMove, type Withheld } from '../charge/charge.js';
import { gaugeOf, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { gauge, pressureDifference, TO_ABSOLUTE } from '../quantity/pressure.js';
import type { PressureUnit } from '../quantity/unit.js';
import { markAt, type Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetDensity } from '../target/target.js';
import type { Band } from '../verdict/band.js';
import { checkedReading, judged } from '../verdict/judge.js';
import { bleed } from './bleeding.js';
import { fill, SUPPLY, supplyOf, type CheckedSupply, type FillingSupply, type SupplyTooLow } from './filling.js';
import {
  EXCHANGE,
  startOf,
  timesOf,
  type AtStop,
  type Heat,
  type HeatExchange,
  type Start,
  type Wanted,
} from './vessel.js';

/** Whether the specification permits to stop beyond its own allowance, at a pressure that was computed. */
export type StopPermission = 'permitted by the specification' | 'not permitted';

/** A stop on a mark of the gauge, and where it settles: between its bounds, and with a time constant if one was stated. */
export interface StopStep {
  readonly from: GaugePressure;
  readonly stop: GaugePressure;
  /** What the gauge shows at the stop. */
  readonly mark: { readonly value: string; readonly unit: PressureUnit };
  readonly settled: {
    readonly isothermal: GaugePressure;
    readonly adiabatic: GaugePressure;
    readonly inTime?: GaugePressure;
  };
}

/** The stops that would settle on the target, exact; where the supply does not go so far, that. */
export interface ExactStops {
  readonly isothermal: GaugePressure | 'supply too low';
  readonly adiabatic: GaugePressure | 'supply too low';
  readonly inTime?: GaugePressure | 'supply too low';
}

/** Where to stop, each wait and reading between two steps included. */
export interface StopPlan {
  readonly action: 'add' | 'vent';
  /** What {@link charge} says: the gas, and the stop with the allowance of the specification. */
  readonly charge: Move;
  readonly toSettleOnTarget: ExactStops;
  readonly way: 'stop of the specification' | 'computed stop' | 'in stages' | 'no mark of the gauge to stop at';
  /** In order. After each: valves closed, wait, read; the next begins where the one before settles. */
  readonly steps: readonly StopStep[];
  /** What the last step settles at: with the time constant, or without one at the adiabatic bound. */
  readonly reaches: 'the target' | 'the band' | 'neither';
  /** What belongs to this plan first, then the usual cautions of the work. To be shown with it. */
  readonly cautions: readonly CausedCaution<'the stop' | 'the work'>[];
}

/** What is stated of the work. */
export interface WhereToStopGiven {
  /** Where the gas comes from; needed where gas is to be added. */
  readonly supply?: FillingSupply;
  readonly exchange?: HeatExchange;
  readonly computedStop: StopPermission;
}

const FIELDS: Fields = { supply: SUPPLY, exchange: EXCHANGE, computedStop: 'as it is' };
const PERMISSIONS: readonly StopPermission[] = ['permitted by the specification', 'not permitted'];

/** Each stage leaves about a third of what the one before left, so that more than these go nowhere. */
const MOST_STAGES = 12;

/**
 * Where to stop filling or bleeding so that the gas settles on target. The stop that {@link charge} gives, by the allowance
 * of the specification, is held against the first law: where it settles if the gas has exchanged all its heat by then, and
 * if it has exchanged none.
 *
 * The usual "1 to 2 bar over, wait 5 minutes, bleed down" covers a rise of about 3.5 bar at the adiabatic bound; after one
 * of 10 bar the gas settles 2 to 3 bar low. Then it is filled in stages, each to the stop of the specification or the
 * allowable pressure, whichever is lower, with a wait and a reading between, until it settles at the target, as near as the gauge is read. A computed
 * stop takes their place only where the specification is stated to permit one, and not above the allowable pressure: that
 * of the time constant if one was stated, else the adiabatic one, after which gas that settles high is bled down.
 *
 * Gas that remains after bleeding is cold, and recovers by about a third of the fall: it is bled to the target in stages,
 * until it settles in the band.
 *
 * @returns what {@link charge} says where no gas is to be moved
 * @throws {@link Fault} as {@link charge}, {@link filling} and {@link bleeding}; `unknown word` for the permission
 * @example
 * ```ts
 * const supply = { pressure: gauge(200, 'bar'), temperature: temperature(40, '°C') };
 * const plan = whereToStop(spec, reading, { supply, computedStop: 'not permitted' });
 * if (plan.action === 'add') plan.way; // => 'in stages'
 * const settled = 'steps' in plan ? plan.steps.map((step) => write(step.settled.adiabatic, { step: 0.1, unit: 'bar' })) : [];
 * settled; // => ['150.0 bar gauge', '152.5 bar gauge']
 * ```
 */
export function whereToStop(
  spec: Specification,
  reading: Reading,
  given: WhereToStopGiven,
  trace?: Trace,
): StopPlan | NoMove | Withheld {
  needSpecification(spec);
  const own = checkedReading(reading);
  if (typeof given !== 'object' || given === null)
    wrongKind('statement of the work: computedStop and supply', given, 'given');
  const { supply, exchange, computedStop } = taken(given, FIELDS);
  if (!PERMISSIONS.includes(computedStop)) {
    const words = PERMISSIONS.map((word) => `'${word}'`).join(' or ');
    fail(unknownWord, 'given.computedStop', quote(computedStop), { words });
  }
  const times = exchange === undefined ? undefined : timesOf(exchange, 'given.exchange');
  const verdict = judged(spec, own, trace);
  const move = chargeFor(spec, own, verdict, trace);
  if (move.action === 'none' || move.action === 'withheld') return move;
  const start = startOf(spec, own, trace);
  const from = move.action === 'add' ? supplyOf(start, supply, 'given.supply', trace) : undefined;
  return planned(
    { spec, reading: own, band: verdict.band, target: verdict.target, move, start, from, times, trace },
    computedStop,
  );
}

/** A reading that calls for gas to be moved, and what is stated of the work, checked. */
interface Work {
  readonly spec: Specification;
  readonly reading: Reading;
  readonly band: Band;
  readonly target: GaugePressure;
  readonly move: Move;
  readonly start: Start;
  /** No supply: gas is let out. */
  readonly from: CheckedSupply | undefined;
  readonly times: number | undefined;
  readonly trace: Trace | undefined;
}

/** The trace of one part of the work, which its steps name. */
function said(trace: Trace | undefined, part: string): Trace | undefined {
  return trace && inPart(trace, part);
}

function planned(work: Work, permission: StopPermission): StopPlan {
  const { move, times } = work;
  const deciding: Heat = times ?? 'adiabatic';
  const toSettleOnTarget = exactStops(work);
  const usual = usualStop(work);
  const staged = usual === undefined ? [] : stages(work, usual);
  const [first] = staged;
  const covered = first !== undefined && move.stop.action === 'stop' && isReached(work, settledBy(first, deciding));
  const computed =
    covered || permission === 'not permitted' ? undefined : computedStep(work, usual, toSettleOnTarget, deciding);
  const steps = computed === undefined ? staged : [computed];
  const last = steps.at(-1);
  return {
    action: move.action,
    charge: move,
    toSettleOnTarget,
    way:
      computed !== undefined
        ? 'computed stop'
        : usual === undefined
          ? 'no mark of the gauge to stop at'
          : covered
            ? 'stop of the specification'
            : 'in stages',
    steps,
    reaches: last === undefined ? 'neither' : reached(work, settledBy(last, deciding)),
    cautions: [
      ...ownCautions(work, computed !== undefined, last).map((code) => caused(code, 'the stop' as const)),
      ...USUAL.map((code) => caused(code, 'the work' as const)),
    ],
  };
}

/** The end of one move by one way of exchanging heat. */
function moved(
  { from, start }: Work,
  at: Start,
  wanted: Wanted,
  heat: Heat,
  trace: Trace | undefined,
): AtStop | SupplyTooLow {
  if (from === undefined) return bleed(at, wanted, heat, trace);
  const { state, volume_m3 } = from;
  if (volume_m3 === 'steady' || at === start) return fill(at, from, wanted, heat, trace);
  // A bottle that has fed the stages before, and has settled between them.
  const moles = start.volume_m3 * (at.state.rho - start.state.rho);
  const rho = state.rho - moles / volume_m3;
  return fill(at, { state: { T_K: state.T_K, rho }, volume_m3 }, wanted, heat, trace);
}

function isTooLow(end: AtStop | SupplyTooLow): end is SupplyTooLow {
  return has(end, 'outcome') && end.outcome === 'supply too low';
}

function exactStops(work: Work): ExactStops {
  const { spec, reading, target, start, times, trace } = work;
  const shown = said(trace, 'to settle on the target');
  const rho = targetDensity(spec, reading, target.pascals, shown);
  const stop = (heat: Heat): GaugePressure | 'supply too low' => {
    const end = moved(work, start, { rho }, heat, shown);
    return isTooLow(end) ? 'supply too low' : end.pressure;
  };
  return {
    isothermal: stop('isothermal'),
    adiabatic: stop('adiabatic'),
    ...(times === undefined ? {} : { inTime: stop(times) }),
  };
}

/** The mark at which {@link charge} stops; where that is above the allowable pressure, the last mark that is not. */
function usualStop({ spec, reading, move }: Work): GaugePressure | undefined {
  const { stop } = move;
  if (stop.action === 'withheld') return onMark(spec.allowable.pascals, reading, 'down');
  if (stop.mark === 'no mark of the gauge to stop at') return undefined;
  const { pascals } = gauge(Number(stop.mark.value), stop.mark.unit);
  return gaugeOf(pascals + (reading.correctionIncluded?.pascals ?? 0));
}

/** The true pressure at the mark. */
function onMark(p_Pa: number, reading: Reading, toward: 'up' | 'down'): GaugePressure {
  return gaugeOf(markAt(gaugeOf(p_Pa), reading, toward).si);
}

/** One stop after the other at the same mark, each from where the one before settles, until that is enough or nothing is left to move. */
function stages(work: Work, stop: GaugePressure): StopStep[] {
  const { start, times, move } = work;
  const half = halfStep(work);
  const deciding: Heat = times ?? 'adiabatic';
  const steps: StopStep[] = [];
  let at = start;
  while (steps.length < MOST_STAGES) {
    const toGo = stop.pascals - at.pressure.pascals;
    if ((move.action === 'add' ? toGo : -toGo) < half) break;
    const found = stepTo(work, at, stop, deciding, `stage ${steps.length + 1}`);
    if (found === undefined) break;
    steps.push(found.step);
    const settled = settledBy(found.step, deciding);
    if (isReached(work, settled)) break;
    at = {
      ...start,
      state: { T_K: start.state.T_K, rho: found.rho },
      pressure: settled,
      p_Pa: TO_ABSOLUTE.of(settled.pascals, start.ambient.pascals),
    };
  }
  return steps;
}

/** A step to a stop, and the density behind it; undefined where the supply does not go so far by any one of the ways. */
function stepTo(
  work: Work,
  at: Start,
  stop: GaugePressure,
  deciding: Heat,
  stage: string,
): { readonly step: StopStep; readonly rho: number } | undefined {
  const trace = said(work.trace, stage);
  const wanted = { stop, stop_Pa: step2(trace, TO_ABSOLUTE, 'stop', stop.pascals, at.ambient.pascals) };
  const isothermal = moved(work, at, wanted, 'isothermal', trace);
  const adiabatic = moved(work, at, wanted, 'adiabatic', trace);
  const inTime = work.times === undefined ? undefined : moved(work, at, wanted, work.times, trace);
  if (isTooLow(isothermal) || isTooLow(adiabatic) || (inTime !== undefined && isTooLow(inTime))) return undefined;
  const { gas } = deciding === 'adiabatic' || inTime === undefined ? adiabatic : inTime;
  const by = gas.amount.moles / at.volume_m3;
  return {
    step: {
      from: at.pressure,
      stop,
      mark: { value: markAt(stop, work.reading, 'nearest even').text, unit: work.reading.gaugeStep.unit },
      settled: {
        isothermal: isothermal.settled,
        adiabatic: adiabatic.settled,
        ...(inTime === undefined ? {} : { inTime: inTime.settled }),
      },
    },
    rho: at.state.rho + (work.move.action === 'add' ? by : -by),
  };
}

/** The computed stop on a mark, where it goes beyond the usual one and may be used. */
function computedStep(
  work: Work,
  usual: GaugePressure | undefined,
  { adiabatic, inTime }: ExactStops,
  deciding: Heat,
): StopStep | undefined {
  const exact = deciding === 'adiabatic' ? adiabatic : inTime;
  if (exact === undefined || exact === 'supply too low' || exact.pascals > work.spec.allowable.pascals)
    return undefined;
  const adding = work.move.action === 'add';
  const stop = onMark(exact.pascals, work.reading, adding ? 'down' : 'up');
  if (usual !== undefined && (adding ? stop.pascals <= usual.pascals : stop.pascals >= usual.pascals)) return undefined;
  return stepTo(work, work.start, stop, deciding, 'computed stop')?.step;
}

function settledBy({ settled }: StopStep, deciding: Heat): GaugePressure {
  return deciding === 'adiabatic' ? settled.adiabatic : (settled.inTime ?? settled.adiabatic);
}

/** Filling goes on to the target, from where gas can be bled; bleeding to the band, from where none need be bought. */
function isReached(work: Work, settled: GaugePressure): boolean {
  const found = reached(work, settled);
  return found === 'the target' || (work.move.action === 'vent' && found === 'the band');
}

/** At the target as near as the gauge is read: half a step short of it is the same mark. */
function reached(work: Work, settled: GaugePressure): StopPlan['reaches'] {
  const { move, target, band } = work;
  const adding = move.action === 'add';
  const beyond = adding ? settled.pascals - target.pascals : target.pascals - settled.pascals;
  if (beyond >= -halfStep(work)) return 'the target';
  return (adding ? settled.pascals >= band.lower.pascals : settled.pascals <= band.upper.pascals)
    ? 'the band'
    : 'neither';
}

function halfStep({ reading }: Work): number {
  return pressureDifference(reading.gaugeStep.step, reading.gaugeStep.unit).pascals / 2;
}

function ownCautions({ band }: Work, computed: boolean, last: StopStep | undefined): CautionCode[] {
  const codes: CautionCode[] = [];
  if (computed) codes.push('computed stop');
  if (last === undefined) return ['no mark to stop at', ...codes];
  const ends = [last.settled.isothermal.pascals, last.settled.adiabatic.pascals];
  if (Math.max(...ends) > band.upper.pascals) codes.push('stop may settle high');
  if (Math.min(...ends) < band.lower.pascals) codes.push('stop may settle low');
  return codes;
}
