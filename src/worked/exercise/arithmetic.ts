// Exercises of arithmetic: the numbers, the right answer, and the wrong ones to which the common mistakes lead.
import type { GasModel } from '../../gas/model.js';
import { stateAt } from '../../gas/state.js';
import { idealNitrogen } from '../../gas/nitrogen/ideal-gas.js';
import type { GaugePressure, Mass } from '../../quantity/kind.js';
import { absolute, gauge, pressureDifference, toAbsolute } from '../../quantity/pressure.js';
import { temperature } from '../../quantity/temperature.js';
import { volume } from '../../quantity/contents.js';
import { specification, type Specification, type SpecificationGiven } from '../../target/specification.js';
import { target } from '../../target/target.js';
import type { Read } from '../../verdict/compare.js';
import { valueIn } from '../../quantity/step.js';
import { derivationOf } from '../derivation/derive.js';
import type { Draw } from './draw.js';
import type { Arithmetic, ArithmeticExercise, Choice, Fact, FactCode, Mistake } from './exercise.js';
import { HELD_BY, TARGET_BY, TO_ADD_BY, type Inputs } from './mistakes.js';
import { has } from '../../basis/has.js';
import type { Trace } from '../../basis/relation.js';

/** An invented accumulator of the sizes that ships have. */
export function drawnGiven(gas: GasModel, draw: Draw): SpecificationGiven {
  return {
    gas,
    precharge: {
      pressure: gauge(draw.number(90, 180, 5), 'bar'),
      temperature: temperature(draw.one([15, 20, 25]), '°C'),
    },
    ambient: absolute(draw.number(0.99, 1.03, 0.01), 'bar'),
    tolerance: { plusMinus: pressureDifference(draw.one([2, 3]), 'bar'), applies: 'at the measured temperature' },
    separator: 'diaphragm',
    gasVolume: volume(draw.number(2, 20, 0.5), 'L'),
    allowable: gauge(330, 'bar'),
    settling: { allowance: pressureDifference(2, 'bar'), minutes: 10 },
  };
}

/** A gas temperature well away from that of the reference point, so that it matters. */
export function drawnAt({ ambient }: Specification, draw: Draw): Pick<Read, 'temperature' | 'ambient'> {
  return { temperature: temperature(draw.one([draw.number(5, 10, 1), draw.number(32, 48, 1)]), '°C'), ambient };
}

/** Answers nearer to each other than this cannot be told apart as they are written. */
const APART: Readonly<Record<Arithmetic, number>> = { target: 0.3e5, 'gas to add': 0.002, 'gas held': 0.002 };

const BY = { target: TARGET_BY, 'gas to add': TO_ADD_BY, 'gas held': HELD_BY } as const;

export function arithmeticExercise(topic: Arithmetic, gas: GasModel, draw: Draw): ArithmeticExercise {
  for (;;) {
    const given = drawnGiven(gas, draw);
    const spec = specification(given);
    const at = drawnAt(spec, draw);
    const wanted = valueIn(target(spec, at), 'bar');
    const pressure = gauge(Math.round(wanted * draw.number(0.75, 0.9, 0.01)), 'bar');
    const choices = choicesOf(topic, { spec, reading: { ...at, pressure } }, given);
    // Two mistakes may come out alike; then other numbers are drawn.
    if (!areApart(choices, APART[topic])) continue;
    const shuffled = draw.shuffled(choices);
    const answer = shuffled.findIndex(({ mistake }) => mistake === 'none');
    return { topic, facts: factsOf(topic, spec, { ...at, pressure }), choices: shuffled, answer };
  }
}

function choicesOf(topic: Arithmetic, inputs: Inputs, given: SpecificationGiven): Choice[] {
  const ways: Partial<Readonly<Record<Mistake | 'none', (inputs: Inputs, trace: Trace) => GaugePressure | Mass>>> =
    BY[topic];
  const ideal = { ...inputs, spec: specification({ ...given, gas: idealNitrogen }) };
  // By an ideal gas that is no mistake.
  const isIdeal = inputs.spec.gas.id === idealNitrogen.id;
  const names = Object.entries(ways).filter(([name]) => !(isIdeal && name === 'ideal gas taken for real'));
  return names.map(([name, way]) => {
    const mistake = name as Mistake | 'none';
    const derivation = derivationOf(mistake === 'ideal gas taken for real' ? ideal : inputs, way);
    return { mistake, quantity: derivation.result, derivation };
  });
}

function siOf(quantity: GaugePressure | Mass): number {
  return quantity.kind === 'mass' ? quantity.kilograms : quantity.pascals;
}

function areApart(choices: readonly Choice[], least: number): boolean {
  const values = choices.map(({ quantity }) => siOf(quantity)).sort((a, b) => a - b);
  return values.every((value, i) => value > 0 && (i === 0 || value - (values[i - 1] ?? 0) >= least));
}

function factsOf(topic: Arithmetic, spec: Specification, reading: Read): Fact[] {
  const stated: Fact = { code: 'stated', values: statedValues(spec) };
  const ambient: Fact = { code: 'ambient', values: { ambient: reading.ambient } };
  const gasTemperature: Fact = { code: 'gas temperature', values: { temperature: reading.temperature } };
  const gasVolume: Fact = { code: 'gas volume', values: { volume: spec.gasVolume } };
  const read: Fact = { code: 'reading', values: { pressure: reading.pressure } };
  const nitrogen: Fact = { code: 'nitrogen', values: {} };
  const asRead = factor('factor as read', spec.gas, reading);
  if (topic === 'gas held') return [ambient, gasVolume, gasTemperature, read, nitrogen, asRead];
  const atTarget = factor('factor at the target', spec.gas, { ...reading, pressure: target(spec, reading) });
  return topic === 'target'
    ? [stated, ambient, gasTemperature, nitrogen, ...factorStated(spec), atTarget]
    : [stated, ambient, gasVolume, gasTemperature, read, nitrogen, ...factorStated(spec), atTarget, asRead];
}

/** Places of a compression factor as tables have it: a target by it is good to a hundredth of a bar or two. */
const PLACES = 4;

/**
 * The compression factor, for who works by hand and has no table of it. It does not give the answer away: whoever takes
 * nitrogen for an ideal gas does without it.
 */
function factor(code: FactCode, gas: GasModel, { pressure, temperature, ambient }: Read): Fact {
  const { compressibility } = stateAt(gas, { temperature, pressure: toAbsolute(pressure, ambient) });
  return { code, values: { factor: Number(compressibility.toFixed(PLACES)) } };
}

function factorStated({ gas, precharge, ambient }: Specification): readonly Fact[] {
  return has(precharge, 'rows') ? [] : [factor('factor as stated', gas, { ...precharge, ambient })];
}

export function statedValues({ precharge }: Specification): Fact['values'] {
  if (has(precharge, 'rows')) return {};
  return { pressure: precharge.pressure, temperature: precharge.temperature };
}
