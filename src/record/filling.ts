// Which bottle fills which accumulator of a judged round, where each filling stops, and what to order, as plain JSON data.
import { collect, under, type Problem } from '../basis/fault.js';
import type { CausedCaution } from '../basis/caused.js';
import type { CautionCode } from '../basis/caution.js';
import { has } from '../basis/has.js';
import { leavesModel } from '../basis/problem.js';
import { supplyText, type SupplyCode, type Words } from '../basis/words.js';
import { gasQuantity } from '../charge/charge.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import type { Amount, GaugePressure, Volume } from '../quantity/kind.js';
import type { PressureUnit } from '../quantity/unit.js';
import { whereToStop, type StopPlan } from '../settling/stop.js';
import { beforeCheck } from '../supply/check-loss.js';
import { bottlesToOrder, type BottleOrder } from '../supply/order.js';
import { fillingPlan, type FillingPlan, type PlanGiven } from '../supply/plan.js';
import type { FillingStep } from '../supply/result.js';
import type { ToFill } from '../supply/to-fill.js';
import { isHeldBack, type Checked, type Judged } from './accumulator.js';
import type { AdmittedBottle, AdmittedSupply } from './admit-supply.js';
import type { GasJson } from './gas-shape.js';
import { add, type Findings } from './problems.js';
import { differenceJson, gaugeJson, markJson } from './quantities.js';
import type { FillingCause, FillingJson } from './supply-shape.js';
import { gasJson } from './write.js';

/** The plan of a round, and the cautions that belong to it. */
export interface Filling {
  readonly json: FillingJson;
  readonly cautions: readonly CautionCode[];
}

/** An accumulator to be filled, by the reading that says so. */
interface Wanting {
  readonly judged: Judged;
  readonly checked: Checked;
  readonly toFill: ToFill;
  readonly unit: PressureUnit;
}

/** The plan for what is still to be filled; undefined, with its problems found, where the core refuses it. */
export function fillingOf(
  { bottles, rig, kitBefore, leastPurityPercent, objectives, stopping, size, reservePercent }: AdmittedSupply,
  judged: readonly Judged[],
  words: Words | undefined,
  findings: Findings,
): Filling | undefined {
  const problems: Problem[] = [];
  const wanting = judged.flatMap(wantingOf);
  const given = planGivenOf({ bottles, rig, leastPurityPercent, objectives }, wanting);
  const made = collect(problems, '', () => {
    const plan = fillingPlan(given);
    const order = size === undefined ? undefined : bottlesToOrder(given, size, reservePercent);
    return { plan, order };
  });
  // One that contradicts the kit costs none of the others.
  const checks =
    kitBefore &&
    judged
      // What a reading that is none would have been before is none either.
      .filter(({ asFound }) => has(asFound.check.verdict, 'offTarget'))
      .flatMap((one) => collect(problems, '', () => checkOf(one, rig.kit.volume, kitBefore)) ?? []);
  const found =
    made &&
    collect(problems, '', () => {
      const held = heldBack(judged, words);
      const stops = wanting.map((one) => stopsOf(one, made.plan.steps, bottles, stopping));
      const bleeding = judged.flatMap((one) => bleedingOf(one, stopping, problems));
      const cautions = [...made.plan.cautions, ...[...stops, ...bleeding].flatMap((one) => one?.cautions ?? [])];
      return {
        json: {
          ...fillingJson(made.plan, made.order, wanting, bottles, stops, words),
          bleeding: bleeding.map(({ json }) => json),
          ...(held.length === 0 ? {} : { heldBack: held }),
          ...(checks && { checks }),
          cautions: eachOnce(cautions),
        },
        cautions: cautions.map(({ code }) => code),
      };
    });
  add(findings, '$.supply', problems.map(inDocument));
  return found;
}

/** What the plan of a round is made from. */
export function planGivenOf(
  {
    bottles,
    rig,
    leastPurityPercent,
    objectives,
  }: Pick<AdmittedSupply, 'bottles' | 'rig' | 'leastPurityPercent' | 'objectives'>,
  wanting: readonly Wanting[],
): PlanGiven {
  return {
    gas: nitrogen, // the shape of a round knows no other gas
    leastPurityPercent,
    accumulators: wanting.map(({ toFill }) => toFill),
    bottles: bottles.map(({ bottle }) => bottle),
    rig,
    objectives,
  };
}

/** Each caution once for each cause that it has. */
function eachOnce(cautions: readonly CausedCaution<FillingCause>[]): FillingJson['cautions'] {
  const found = new Map(cautions.map(({ code, cause }) => [`${code}: ${cause}`, { code, cause }]));
  return [...found.values()];
}

/** Those of which nothing is planned, because their readings may be slips. */
function heldBack(judged: readonly Judged[], words: Words | undefined): NonNullable<FillingJson['heldBack']> {
  const code = 'reading may be a slip';
  return judged
    .filter(({ asFound, asLeft }) => isHeldBack((asLeft ?? asFound).check))
    .map(({ whose: { group, name } }) => ({ group, name, because: [{ code, text: supplyText(code, words?.supply) }] }));
}

export function wantingOf(judged: Judged): Wanting[] {
  const checked = judged.asLeft ?? judged.asFound;
  if (checked.check.charge.action !== 'add') return [];
  const { reading, spec, check } = checked;
  const { pressure, temperature, ambient, gaugeStep } = reading;
  const toFill: ToFill = {
    // Names are unique within a group only.
    name: JSON.stringify([judged.whose.group, judged.whose.name]),
    gasVolume: spec.gasVolume,
    read: { pressure, temperature, ambient },
    to: check.verdict.target,
    allowable: spec.allowable,
  };
  return [{ judged, checked, toFill, unit: gaugeStep.unit }];
}

/** Where to stop, from the bottle that the plan connects last, as it is then. */
function stopsOf(
  { checked, toFill }: Wanting,
  steps: readonly FillingStep[],
  bottles: readonly AdmittedBottle[],
  stopping: AdmittedSupply['stopping'],
) {
  const last = steps.map(({ accumulator }) => accumulator).lastIndexOf(toFill.name);
  const named = steps[last]?.bottle;
  const from = bottles.find(({ bottle }) => bottle.name === named)?.bottle;
  if (from === undefined) return undefined;
  const before =
    steps
      .slice(0, last)
      .filter(({ bottle }) => bottle === named)
      .at(-1)?.bottleAfter ?? from.read.pressure;
  const supply = { pressure: before, temperature: from.read.temperature, volume: from.waterVolume };
  const plan = whereToStop(checked.spec, checked.reading, { ...stopping, supply });
  return has(plan, 'steps') ? plan : undefined;
}

type Stops = ReturnType<typeof stopsOf>;

/** Where to stop letting gas out of an accumulator that has too much; nothing for any other. */
function bleedingOf(
  { whose: { group, name }, asFound, asLeft }: Judged,
  stopping: AdmittedSupply['stopping'],
  problems: Problem[],
): { readonly json: FillingJson['bleeding'][number]; readonly cautions: StopPlan['cautions'] }[] {
  const { check, spec, reading } = asLeft ?? asFound;
  if (check.charge.action !== 'vent') return [];
  const own: Problem[] = [];
  const plan = collect(own, '', () => whereToStop(spec, reading, stopping));
  // Gas of a pressure that no accumulator has may condense on the way down, which is no fault of the document.
  if (plan === undefined && own.every(({ code }) => code === leavesModel.code))
    return [{ json: { group, name, stops: leavesModel.code }, cautions: [] }];
  problems.push(...own);
  if (plan === undefined || !has(plan, 'steps')) return [];
  return [{ json: { group, name, stops: stopsJson(plan, reading.gaugeStep.unit) }, cautions: plan.cautions }];
}

/** What the check itself has taken from an accumulator, by its reading as found. */
function checkOf(
  { whose: { group, name }, asFound: { spec, reading } }: Judged,
  kit: Volume,
  inKit: GaugePressure,
): NonNullable<FillingJson['checks']>[number] {
  const { pressure, temperature, ambient, gaugeStep } = reading;
  const held = { gasVolume: spec.gasVolume, read: { pressure, temperature, ambient } };
  const { pressure: before, fall, gas } = under('kit', () => beforeCheck(nitrogen, held, kit, inKit));
  const { unit } = gaugeStep;
  return { group, name, before: gaugeJson(before, unit), fall: differenceJson(fall, unit), gas: gasJson(gas) };
}

function fillingJson(
  plan: FillingPlan,
  order: BottleOrder | undefined,
  wanting: readonly Wanting[],
  bottles: readonly AdmittedBottle[],
  stops: readonly Stops[],
  words: Words | undefined,
): Omit<FillingJson, 'heldBack' | 'bleeding' | 'checks' | 'cautions'> {
  const reasons = (because: readonly SupplyCode[]): FillingJson['bottles'][number]['because'] =>
    because.map((code) => ({ code, text: supplyText(code, words?.supply) }));
  const called = (name: string): { group: string; name: string; unit: PressureUnit } => {
    const one = wanting.find(({ toFill }) => toFill.name === name);
    return { group: one?.judged.whose.group ?? '', name: one?.judged.whose.name ?? '', unit: one?.unit ?? 'bar' };
  };
  const unitOf = (bottle: string): PressureUnit => bottles.find((one) => one.bottle.name === bottle)?.unit ?? 'bar';
  const amountJson = (amount: Amount): GasJson => gasJson(gasQuantity(nitrogen, amount.moles, 'up'));
  return {
    bottles: plan.bottles.map(({ name, at15C, state, contents, aboveResidual, use, because, after }) => ({
      name,
      at15C: gaugeJson(at15C, unitOf(name)),
      state,
      contents: gasJson(contents),
      aboveResidual: gasJson(aboveResidual),
      use,
      because: reasons(because),
      after: gaugeJson(after, unitOf(name)),
    })),
    steps: plan.steps.map(({ bottle, accumulator, moved, vented, ended, bottleAfter, accumulatorAfter }) => {
      const { unit, ...named } = called(accumulator);
      return {
        bottle,
        ...named,
        moved: amountJson(moved),
        vented: amountJson(vented),
        ended,
        bottleAfter: gaugeJson(bottleAfter, unitOf(bottle)),
        accumulatorAfter: gaugeJson(accumulatorAfter, unit),
      };
    }),
    accumulators: plan.accumulators.map(({ name, outcome, because, after, missing }, i) => {
      const { unit, ...named } = called(name);
      const own = stops[i];
      return {
        ...named,
        outcome,
        because: reasons(because),
        after: gaugeJson(after, unit),
        missing: gasJson(missing),
        ...(own === undefined ? {} : { stops: stopsJson(own, unit) }),
      };
    }),
    boosterNeeded: plan.boosterNeeded.map((name) => {
      const { group, name: own } = called(name);
      return { group, name: own };
    }),
    objectives: plan.objectives.map((one) => ({ ...one })),
    optimal: plan.optimal,
    vented: gasJson(plan.gas.vented),
    ...(order === undefined ? {} : { order: { ...order, because: reasons(order.because) } }),
  };
}

function stopsJson(
  { way, steps, reaches }: NonNullable<Stops>,
  unit: PressureUnit,
): NonNullable<FillingJson['accumulators'][number]['stops']> {
  const json = (pressure: GaugePressure) => gaugeJson(pressure, unit);
  return {
    way,
    steps: steps.map(({ from, stop, mark, settled: { isothermal, adiabatic, inTime } }) => ({
      from: json(from),
      stop: json(stop),
      mark: markJson(mark.value, mark.unit),
      settled: {
        isothermal: json(isothermal),
        adiabatic: json(adiabatic),
        ...(inTime === undefined ? {} : { inTime: json(inTime) }),
      },
    })),
    reaches,
  };
}

/** What the core says of a filling, under the path that it has in the document. */
function inDocument(one: Problem): Problem {
  const path = one.path
    .replace(/^rig\./, '')
    .replace(/^size\.onBoard\b/, 'order')
    .replace(/^size\b/, 'order')
    .replace(/^reservePercent/, 'order.reservePercent')
    .replace(/^given\.exchange/, 'exchange')
    .replace(/\.read\b/, '');
  return { ...one, path };
}
