import { caused, type CausedCaution } from '../basis/caused.js';
import { USUAL, type CautionCode } from '../basis/caution.js';
import { collect, fail, failIfAny, quote, type Problem } from '../basis/fault.js';
import { listed } from '../basis/listed.js';
import { duplicateName, notAList } from '../basis/problem.js';
import type { Trace } from '../basis/relation.js';
import type { Source } from '../basis/source.js';
import type { SupplyCode } from '../basis/words.js';
import { gasQuantity, type GasQuantity } from '../charge/charge.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import { amountOf, gaugeOf, wrongKind, type Amount, type GaugePressure } from '../quantity/kind.js';
import { bestOf, type Reached } from './best.js';
import { bottleNumbers, demandedOf, stateOf, type Bottle, type BottleNumbers, type BottleState } from './bottle.js';
import { checkedRig, neededDifference, type Rig } from './kit.js';
import { checkedOrder, type Objective } from './objective.js';
import { accumulatorUnfit, bottleUnfit, isFilled, told, type FillingStep, type Parts } from './result.js';
import { showPlan } from './shown.js';
import { pressureOf, sinkOf, sourceOf, stockOf, type Stock } from './stock.js';
import { checkedToFill, type ToFill } from './to-fill.js';

/** What a filling is planned for. */
export interface PlanGiven {
  /** The charge gas. */
  readonly gas: GasModel;
  /** Purity in per cent that it must have, by the maker's manual, or that none is demanded. */
  readonly leastPurityPercent: number | 'not demanded';
  readonly accumulators: readonly ToFill[];
  readonly bottles: readonly Bottle[];
  readonly rig: Rig;
  /** All objectives, the first first: {@link OBJECTIVES} is the usual order. */
  readonly objectives: readonly Objective[];
}

/** A bottle after the plan. */
export interface PlannedBottle extends BottleState {
  /** Whether it takes part, and why not: `because` of its state, and what it would do to the rig. */
  readonly use: 'used' | 'not needed' | 'left out';
  /** What its gauge shows afterwards, at the temperature read. */
  readonly after: GaugePressure;
}

/** An accumulator after the plan. */
export interface PlannedAccumulator {
  readonly name: string;
  readonly outcome: 'completed' | 'nothing to add' | 'undone';
  /** Why it is not completed, by stable codes. In words: {@link supplyText}. */
  readonly because: readonly SupplyCode[];
  /** What its gauge shows afterwards, settled, at the temperature read. */
  readonly after: GaugePressure;
  /** What it still lacks. */
  readonly missing: GasQuantity;
}

/** What gave rise to a caution of a plan. */
export type PlanCause = SupplyCode | 'the plan' | 'the work';

/** Which bottle on which accumulator in which order. */
export interface FillingPlan {
  readonly steps: readonly FillingStep[];
  readonly bottles: readonly PlannedBottle[];
  readonly accumulators: readonly PlannedAccumulator[];
  /** Names of accumulators whose pressure wanted is above every bottle: without a booster they stay undone. */
  readonly boosterNeeded: readonly string[];
  /** By each objective, in order: what is reached, and what no plan can exceed. The remainder is in mol. */
  readonly objectives: readonly Reached[];
  /** Whether no plan of such steps is better. */
  readonly optimal: 'proven' | 'not proven';
  /** All gas of the vessels that take part: `before` is `after` and `vented` together. */
  readonly gas: { readonly before: Amount; readonly after: Amount; readonly vented: GasQuantity };
  /**
   * What belongs to this plan first, then the usual cautions of the work. To be shown with it. The cause is the reason for
   * which a bottle or an accumulator is left out, where it is one.
   */
  readonly cautions: readonly CausedCaution<PlanCause>[];
  /** The `id` of the gas model. */
  readonly model: string;
  readonly sources: readonly Source[];
}

/**
 * The most bottles, and the most accumulators, that one plan takes.
 *
 * @example
 * ```ts
 * MOST_IN_PLAN; // => 1000
 * ```
 */
export const MOST_IN_PLAN = 1000;

/**
 * Which bottle to connect to which accumulator in which order.
 *
 * A step connects one bottle to one accumulator and runs to its end: to the pressure wanted, to the bottle's residual
 * pressure, or until the bottle is down to the accumulator and the difference that the regulator needs. The gas follows the
 * model on both sides; what the kit holds at the end is vented. Every vessel keeps its temperature: pressures are those
 * after settling, and warming and cooling while gas flows are not in it.
 *
 * Up to {@link MOST_PAIRS} pairs of a bottle and an accumulator the plan is the best of all such steps, by a search of all of
 * them; where it says `not proven` it is a good one, with a bound and the gap to it. An accumulator that cannot be completed
 * is left as it is, and its gas kept for others. Another bottle never makes a plan
 * worse: of up to {@link MOST_CHOSEN} wherever it stands in the list, of more at its end.
 *
 * @throws {@link Fault} with every problem found: `not a list`, `too long`, `duplicate name`, `not each once`, as
 * {@link bottleState}; `wrong kind`, `not positive`, `negative`, `outside bounds`, `outside the model`, `liquid`
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
 * const one = toFill('EV 1', spec, reading);
 * const plan = fillingPlan({
 *   gas: nitrogen,
 *   leastPurityPercent: 99.9,
 *   accumulators: 'to' in one ? [one] : [],
 *   bottles: [bottle],
 *   rig: { kit: { volume: volume(30, 'mL'), rated: gauge(300, 'bar') }, regulator: 'none' },
 *   objectives: OBJECTIVES,
 * });
 * plan.steps.map(({ bottle, accumulator, ended }) => [bottle, accumulator, ended]); // => [['N2-1', 'EV 1', 'at the pressure wanted']]
 * plan.optimal; // => 'proven'
 * ```
 */
export function fillingPlan(given: PlanGiven, trace?: Trace): FillingPlan {
  const checked = checkedFilling(given);
  const { gas, bottles, accumulators, rig, order } = checked;
  const fit = bottles.filter((one) => bottleUnfit(one, rig).length === 0);
  const wanting = accumulators.filter((one) => !isFilled(one) && accumulatorUnfit(one, rig).length === 0);
  const stock = stockOf(
    gas,
    fit.map((one) => sourceOf(gas, one)),
    wanting.map((one) => sinkOf(gas, one)),
    rig,
  );
  const best = bestOf(stock, order);
  const after = told(stock, { bottles: fit, accumulators: wanting }, best.moves);
  if (trace !== undefined) showPlan(trace, gas, stock, { bottles: fit, accumulators: wanting }, best.moves);
  const isEnough = best.objectives.some(({ objective, gap }) => objective === 'accumulators completed' && gap === 0);
  const boosterNeeded = accumulators.filter((one) => !isFilled(one) && isAboveAll(one, fit, rig));
  const sum = (amounts: readonly number[]): number => amounts.reduce((total, n) => total + n, 0);
  const plannedAccumulators = accumulators.map((one): PlannedAccumulator => {
    const unfit = accumulatorUnfit(one, rig);
    const a = wanting.indexOf(one);
    const n = after.accumulators[a];
    const sink = stock.sinks[a];
    const missing = (moles: number): GasQuantity => gasQuantity(gas, moles, 'up');
    const { name, read } = one;
    if (isFilled(one) || n === undefined || sink === undefined)
      return {
        name,
        outcome: isFilled(one) ? 'nothing to add' : 'undone',
        because: isFilled(one) && unfit.length === 0 ? ['nothing to add'] : unfit,
        after: read.pressure,
        missing: missing(isFilled(one) ? 0 : lacking(gas, one)),
      };
    if (n >= sink.n_to) return { name, outcome: 'completed', because: [], after: one.to, missing: missing(0) };
    return {
      name,
      outcome: 'undone',
      because: [whyUndone(one, fit, boosterNeeded, isEnough)],
      after: n === sink.n ? read.pressure : gaugeOf(pressureOf(stock.kernel, sink, n) - read.ambient.pascals),
      missing: missing(sink.n_to - n),
    };
  });
  return {
    steps: after.steps,
    bottles: bottles.map((one) => plannedBottle(checked, one, fit.indexOf(one), stock, after)),
    accumulators: plannedAccumulators,
    boosterNeeded: boosterNeeded.map(({ name }) => name),
    objectives: best.objectives,
    optimal: best.optimal,
    gas: {
      before: amountOf(sum(stock.sources.map(({ n }) => n)) + sum(stock.sinks.map(({ n }) => n))),
      after: amountOf(sum(after.bottles) + sum(after.accumulators)),
      vented: gasQuantity(gas, Math.max(0, after.vented), 'up'),
    },
    cautions: cautionsOf(checked, boosterNeeded.length > 0),
    model: gas.id,
    sources: [gas.source],
  };
}

/** What a filling is planned for, read once and checked. */
export interface CheckedFilling extends Parts {
  readonly gas: GasModel;
  readonly rig: Rig;
  readonly order: readonly Objective[];
}

/** Reads once and checks what a filling is planned for, and lists all that is wrong. */
export function checkedFilling(given: PlanGiven): CheckedFilling {
  if (typeof given !== 'object' || given === null) wrongKind('filling to be planned', given, '');
  const { gas, leastPurityPercent, accumulators, bottles, rig, objectives } = given;
  const problems: Problem[] = [];
  const isModel = collect(problems, 'gas', () => {
    needModel(gas, '');
    return true;
  });
  const demanded = demandedOf(problems, leastPurityPercent);
  const ownRig = collect(problems, 'rig', () => checkedRig(rig));
  const order = collect(problems, 'objectives', () => checkedOrder(objectives));
  const toFill = listOf(problems, 'accumulators', accumulators, checkedToFill);
  const own = isModel === true ? listOf(problems, 'bottles', bottles, (one) => bottleNumbers(gas, one, demanded)) : [];
  named(problems, 'accumulators', toFill, (one) => one.name, 'accumulator');
  named(problems, 'bottles', own, (one) => one.given.name, 'bottle');
  // What is sound by itself may still be beyond the model.
  if (isModel === true)
    toFill.forEach((one, i) => {
      if (one !== undefined) collect(problems, `accumulators[${i}]`, () => sinkOf(gas, one));
    });
  failIfAny(problems);
  // Cannot be: what is not sound has left a problem.
  if (ownRig === undefined || order === undefined) return wrongKind('filling to be planned', given, '');
  const present = <T>(list: readonly (T | undefined)[]): readonly T[] => list.filter((one) => one !== undefined);
  return { gas, rig: ownRig, order, accumulators: present(toFill), bottles: present(own) };
}

function listOf<T, Own>(
  problems: Problem[],
  path: string,
  list: readonly T[],
  admit: (one: T) => Own,
): readonly (Own | undefined)[] {
  if (!Array.isArray(list)) {
    collect(problems, path, () => fail(notAList, '', quote(list)));
    return [];
  }
  const items: readonly T[] = list;
  const all = (): (Own | undefined)[] =>
    listed(items, { most: MOST_IN_PLAN, what: path }, path, (item, i) =>
      collect(problems, `${path}[${i}]`, () => admit(item)),
    );
  return collect(problems, '', all) ?? [];
}

/** Reports every name that is given twice, at each place where it stands. */
function named<T>(
  problems: Problem[],
  path: string,
  list: readonly (T | undefined)[],
  nameOf: (one: T) => string,
  what: string,
): void {
  const names = list.map((one) => (one === undefined ? undefined : nameOf(one)));
  names.forEach((name, i) => {
    if (name === undefined || (names.indexOf(name) === i && names.lastIndexOf(name) === i)) return;
    collect(problems, `${path}[${i}].name`, () => fail(duplicateName, '', quote(name), { what }));
  });
}

function lacking(gas: GasModel, one: ToFill): number {
  const { n, n_to } = sinkOf(gas, one);
  return n_to - n;
}

/** Whether the pressure wanted, with the regulator's difference, is above every bottle. */
export function isAboveAll({ to, read }: ToFill, bottles: readonly BottleNumbers[], rig: Rig): boolean {
  const p = to.pascals + read.ambient.pascals + neededDifference(rig);
  return bottles.length > 0 && bottles.every((one) => one.p < p);
}

function whyUndone(
  one: ToFill,
  bottles: readonly BottleNumbers[],
  boosterNeeded: readonly ToFill[],
  isEnough: boolean,
): SupplyCode {
  if (bottles.length === 0) return 'no bottle to use';
  if (boosterNeeded.includes(one)) return 'target above every bottle';
  return isEnough ? 'not enough gas' : 'no plan found';
}

function plannedBottle(
  { gas, rig }: CheckedFilling,
  one: BottleNumbers,
  b: number,
  stock: Stock,
  after: { readonly steps: readonly FillingStep[]; readonly bottles: readonly number[] },
): PlannedBottle {
  const state = stateOf(gas, one);
  const source = stock.sources[b];
  const { name, read } = one.given;
  const isUsed = after.steps.some(({ bottle }) => bottle === name);
  if (source === undefined) return { ...state, because: bottleUnfit(one, rig), use: 'left out', after: read.pressure };
  if (!isUsed) return { ...state, use: 'not needed', after: read.pressure };
  return {
    ...state,
    use: 'used',
    after: gaugeOf(pressureOf(stock.kernel, source, after.bottles[b] ?? 0) - one.ambient),
  };
}

const CAUTION_OF: Readonly<Partial<Record<SupplyCode, CautionCode>>> = {
  'above its rating': 'bottle above its rating',
  'another gas on the label': 'bottle of another gas',
  'bottle above the rating of the kit': 'above the rating of kit or regulator',
  'bottle above the rating of the regulator': 'above the rating of kit or regulator',
  'target above the rating of the kit': 'above the rating of kit or regulator',
  'target above the rating of the regulator': 'above the rating of kit or regulator',
  'target above its allowable pressure': 'target above the allowable pressure',
};

function cautionsOf(
  { bottles, accumulators, rig }: CheckedFilling,
  isBoosterNeeded: boolean,
): CausedCaution<PlanCause>[] {
  const reasons = new Set([
    ...bottles.flatMap((one) => bottleUnfit(one, rig)),
    ...accumulators.flatMap((one) => accumulatorUnfit(one, rig)),
  ]);
  const own = [...reasons].flatMap((reason) => {
    const code = CAUTION_OF[reason];
    return code === undefined ? [] : [caused<PlanCause>(code, reason)];
  });
  return [
    ...own,
    ...(isBoosterNeeded ? [caused<PlanCause>('booster needed', 'target above every bottle')] : []),
    caused<PlanCause>('settled pressures', 'the plan'),
    ...USUAL.map((code) => caused<PlanCause>(code, 'the work')),
  ];
}
