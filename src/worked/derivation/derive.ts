import { fail, quote } from '../../basis/fault.js';
import { wrongKind } from '../../basis/problem.js';
import type { Relation, Step, Trace } from '../../basis/relation.js';
import { DENSITY, pvtOf } from '../../gas/door.js';
import { explained } from '../../gas/explained.js';
import type { GasModel } from '../../gas/model.js';
import {
  derivation,
  type Argument,
  type Derivation,
  type DerivedStep,
  type GasStateWorking,
  type NamedQuantity,
} from './derivation.js';
import { givenIn, type Given } from './given.js';
import { AT_LABEL, keyAbout, keyOf, LABEL, originOf, REFERENCE_STATE, referenceOrigin, type Before } from './origin.js';
import { roundingsIn } from './roundings.js';
import { slopeOf, stateIn } from './slope.js';
import { meaningOf, unitOf, type Meaning } from './symbol.js';

/**
 * How a result is got: the calculation is run with a trace, and each of its steps is told with the symbols, values, units
 * and origins of all that is in it. A state of the gas is worked again from its temperature and density, through the
 * equation of its model to p = Z ρ R T.
 *
 * @param given all that the calculation is to use, by name: `{ spec, reading }`. A number in a step that is also in here is
 * said to come from here, under its path; the gas model is found in here as well
 * @param calculate any calculation of the library that takes a trace
 * @throws {@link Fault} what the calculation throws; `wrong kind` for a `given` that is no object, for a `calculate` that is
 * no function and for a step that is none; `too deep`, `too large` for what holds more than a calculation needs
 * @example
 * ```ts
 * const derivation = derivationOf({ spec, reading }, ({ spec, reading }, trace) => target(spec, reading, trace));
 * derivation.steps.map((step) => `${step.about}: ${step.relation.formula}`); // => ['target, as stated: p_g + p_amb', 'target, as stated: p(T, rho) = p_abs', 'target: p(T, rho)', 'target: p_abs - p_amb']
 * derivation.steps[0]?.from[0]?.origin; // => { from: 'given', path: 'spec.precharge.pressure' }
 * ```
 */
export function derivationOf<const G extends object, R>(
  given: G,
  calculate: (given: G, trace: Trace) => R,
): Derivation<R> {
  if (typeof given !== 'object' || given === null)
    fail(wrongKind, 'given', quote(given), {
      kind: 'what the calculation uses, by name',
      maker: 'such as { spec, reading }',
    });
  if (typeof calculate !== 'function')
    fail(wrongKind, 'calculate', quote(calculate), {
      kind: 'a function that calculates',
      maker: 'such as ({ spec, reading }, trace) => check(spec, reading, trace)',
    });
  const steps: Step[] = [];
  const result = calculate(given, (step) => steps.push(neededStep(step)));
  const inputs = givenIn(given);
  return derivation({
    result,
    models: inputs.models.map(({ id, gas, source }) => ({ id, gas, citation: source.citation })),
    steps: derived(steps, inputs),
    roundings: roundingsIn(result),
  });
}

/** A step as it was shown, read once. A calculation of the caller's own may show steps too. */
function neededStep(step: Step): Step {
  if (typeof step === 'object' && step !== null) {
    const { relation, about, values, result } = step;
    if (typeof relation === 'object' && relation !== null && typeof about === 'string' && Array.isArray(values)) {
      const { from, gives, unit, formula, source } = relation;
      const texts: readonly unknown[] = [
        gives,
        unit,
        formula,
        source,
        ...(Array.isArray(from) ? (from as readonly unknown[]) : [undefined]),
      ];
      const numbers: readonly unknown[] = [...(values as readonly number[]), result];
      if (
        texts.every((one) => typeof one === 'string') &&
        [gives, ...from].every((one) => /^[A-Za-z]\w{0,40}$/.test(one)) &&
        numbers.every((one) => typeof one === 'number') &&
        from.length === values.length
      )
        return { relation, about, values: [...(values as readonly number[])], result };
    }
  }
  return fail(wrongKind, 'step', quote(step), { kind: 'a step of a calculation', maker: 'a relation' });
}

function derived(steps: readonly Step[], inputs: Given): DerivedStep[] {
  const before: Before = new Map();
  const states = new Map<string, GasStateWorking & { readonly number: number }>();
  const seen = new Map<Relation, Map<string, number>>();
  const all = steps.map((step, i): DerivedStep => {
    const sameAs = firstLike(step, i + 1, seen);
    const model = modelOf(step, inputs);
    const one = { ...derivedStep(step, i + 1, before, inputs, model), ...(sameAs === undefined ? {} : { sameAs }) };
    const state = model === undefined ? undefined : stateOf(step, one.number, inputs, model, states);
    return state === undefined ? one : { ...one, state };
  });
  return withTrials(all);
}

/**
 * A solver finds a state of the gas as a whole; its density then has no step before it. But a later step leads to it, or
 * shows the pressure that it gives: whoever works by hand finds it by trial.
 */
function withTrials(steps: readonly DerivedStep[]): DerivedStep[] {
  const next = new Map<string, number>();
  const confirmed = new Map<string, number>();
  for (const step of [...steps].reverse()) {
    for (const one of step.from) {
      const number = next.get(keyOf(one));
      if (one.origin.from === 'calculation' && number !== undefined) confirmed.set(keyOf(one), number);
    }
    if (step.state === undefined) continue;
    for (const one of [...step.from, step.result]) next.set(keyOf(one), step.number);
  }
  const tried = new Map<string, number>();
  const from = (one: Argument, number: number): Argument => {
    const key = keyOf(one);
    const step = one.origin.from === 'calculation' ? confirmed.get(key) : undefined;
    if (step === undefined) return one;
    const before = tried.get(key);
    if (before === undefined) tried.set(key, number);
    return { ...one, origin: before === undefined ? { from: 'trial', step } : { from: 'tried', step: before } };
  };
  return steps.map((step) => ({ ...step, from: step.from.map((one) => from(one, step.number)) }));
}

/** The model of a state: the one whose equation it fulfils, if several were handed in. */
function modelOf({ relation, values, result }: Step, { models }: Given): GasModel | undefined {
  const state = stateIn(relation, values, result);
  if (state === undefined || models.length < 2) return models[0];
  return models.find((model) => Math.abs(pvtOf(model, state.T_K, state.rho).p_Pa - state.p_Pa) <= 1e-9 * state.p_Pa);
}

/** The first step with the same relation and values; undefined if this is the first. */
function firstLike(step: Step, number: number, seen: Map<Relation, Map<string, number>>): number | undefined {
  const byValues = seen.get(step.relation) ?? new Map<string, number>();
  seen.set(step.relation, byValues);
  const key = step.values.join(' ');
  const first = byValues.get(key);
  if (first === undefined) byValues.set(key, number);
  return first;
}

function derivedStep(
  { relation, about, values, result }: Step,
  number: number,
  before: Before,
  inputs: Given,
  model: GasModel | undefined,
): DerivedStep {
  const isStated = /as stated|reference point|tolerance/.test(about);
  const from = relation.from.map((symbol, i): Argument => {
    const value = values[i] ?? Number.NaN;
    const named = namedOf(symbol, value, relation, about);
    const origin =
      about === REFERENCE_STATE && relation === DENSITY
        ? referenceOrigin(named, values, inputs)
        : about === AT_LABEL && symbol === 'T'
          ? ({ from: 'published', source: LABEL } as const)
          : originOf(named, isStated || symbol.endsWith('_stated'), relation, about, before, inputs, model);
    return { ...named, origin, slope: slopeOf(relation, values, i, result, model) };
  });
  const gives = namedOf(relation.gives, result, relation, about);
  before.set(keyOf(gives), number);
  before.set(keyAbout(gives, about), number);
  return { number, about, relation, from, result: gives };
}

function namedOf(symbol: string, value: number, relation: Relation, about: string): NamedQuantity {
  const meaning = propertyOf(symbol, about) ?? meaningOf(symbol, symbol === relation.gives ? relation.unit : '');
  return { symbol, value, unit: unitOf(meaning), meaning };
}

/** A property of both phases has the unit of what the step is about. */
function propertyOf(symbol: string, about: string): Meaning | undefined {
  if (!/^y(_|$)/.test(symbol)) return undefined;
  return {
    unit: about.startsWith('volume') ? 'm3/mol' : 'J/mol',
    ...(symbol === 'y' ? {} : { from: 'model' as const }),
  };
}

/** Whether a step is one of a term of an equation of state, or of the sum up to it. */
function isTerm({ about }: Step): boolean {
  return about.startsWith('term ');
}

function stateOf(
  { relation, values, result }: Step,
  number: number,
  inputs: Given,
  model: GasModel,
  states: Map<string, GasStateWorking & { readonly number: number }>,
): GasStateWorking | undefined {
  const state = stateIn(relation, values, result);
  // At vacuum there is nothing to be worked by hand.
  if (state === undefined || !(state.rho > 0)) return undefined;
  const key = `${model.id} ${state.T_K} ${state.rho}`;
  const seen = states.get(key);
  if (seen !== undefined) {
    const { number: asIn, ...same } = seen;
    return { ...same, residual_Pa: same.pressure_Pa - state.p_Pa, asIn };
  }
  const shown: Step[] = [];
  const p_Pa = explained(model, state.T_K, state.rho, (step) => shown.push(step));
  if (p_Pa === undefined) return undefined;
  const before: Before = new Map();
  const working: GasStateWorking = {
    model: model.id,
    steps: shown.filter((step) => !isTerm(step)).map((step, i) => derivedStep(step, i + 1, before, inputs, model)),
    terms: shown.filter(isTerm),
    temperature_K: state.T_K,
    density_mol_m3: state.rho,
    compressibility: shown.at(-1)?.values[0] ?? Number.NaN,
    pressure_Pa: p_Pa,
    residual_Pa: p_Pa - state.p_Pa,
  };
  states.set(key, { ...working, number });
  return working;
}
