// The common mistakes, each worked to the wrong answer that it gives. The relations here are wrong on purpose, and say so.
import { has } from '../../basis/has.js';
import { relation, step1, step2, step3, step4, type Trace } from '../../basis/relation.js';
import { AMOUNT } from '../../charge/charge.js';
import { massOfGas } from '../../gas/amount.js';
import type { GasModel } from '../../gas/model.js';
import { stateAt } from '../../gas/state.js';
import { absoluteOf, amountOf, gaugeOf, type GaugePressure, type Mass, type Temperature } from '../../quantity/kind.js';
import { toAbsolute, toGauge } from '../../quantity/pressure.js';
import { valueIn } from '../../quantity/step.js';
import { CONTENTS } from '../../gas/amount.js';
import { AT_THE_POINT } from '../../target/line.js';
import type { Specification } from '../../target/specification.js';
import { target } from '../../target/target.js';
import { readDensity, type Read } from '../../verdict/compare.js';
import type { Mistake } from './exercise.js';

export const CELSIUS_RATIO = /* @__PURE__ */ relation({
  gives: 'p_abs',
  unit: 'Pa',
  from: ['p_before', 'theta_1', 'theta_2'],
  formula: 'p_before * theta_2 / theta_1',
  source: 'a mistake: the law of an ideal gas at constant volume, with degrees Celsius for kelvins',
  of: (p_before, theta_1, theta_2) => (p_before * theta_2) / theta_1,
});

export const CELSIUS_AMOUNT = /* @__PURE__ */ relation({
  gives: 'n',
  unit: 'mol',
  from: ['dp', 'V', 'R', 'theta_1'],
  formula: 'dp * V / (R * theta_1)',
  source: 'a mistake: the ideal-gas law, with degrees Celsius for kelvins',
  of: (dp, V, R, theta_1) => (dp * V) / (R * theta_1),
});

/** What an exercise of arithmetic is made of. */
export interface Inputs {
  readonly spec: Specification;
  readonly reading: Read;
}

type Worked<T> = (inputs: Inputs, trace: Trace) => T;

/** The target at the temperature of the reading, by each way that people take. */
export const TARGET_BY: Readonly<Record<Mistake | 'none', Worked<GaugePressure>>> = {
  none: ({ spec, reading }, trace) => target(spec, reading, trace),
  // The specification that goes in here is one of the ideal gas.
  'ideal gas taken for real': ({ spec, reading }, trace) => target(spec, reading, trace),
  'gauge taken for absolute': ({ spec, reading }, trace) => {
    const stated = pointOf(spec);
    const { density_mol_m3 } = stateAt(spec.gas, { ...stated, pressure: absoluteOf(stated.pressure.pascals) }, trace);
    const { pressure } = stateAt(spec.gas, { temperature: reading.temperature, density_mol_m3 }, trace);
    return toGauge(pressure, reading.ambient, trace);
  },
  '°C taken for K': ({ spec, reading }, trace) => {
    const stated = pointOf(spec);
    const before = toAbsolute(stated.pressure, spec.ambient, trace);
    const [from, to] = [valueIn(stated.temperature, '°C'), valueIn(reading.temperature, '°C')];
    const after = step3(trace, CELSIUS_RATIO, 'target', before.pascals, from, to);
    return toGauge(absoluteOf(after), reading.ambient, trace);
  },
  'temperature not taken into account': ({ spec }, trace) =>
    gaugeOf(step1(trace, AT_THE_POINT, 'target', pointOf(spec).pressure.pascals)),
};

/** The mass to add up to the target. */
export const TO_ADD_BY: Readonly<Record<Mistake | 'none', Worked<Mass>>> = {
  none: (inputs, trace) => filled(inputs, TARGET_BY.none(inputs, trace), trace),
  'ideal gas taken for real': (inputs, trace) => filled(inputs, TARGET_BY.none(inputs, trace), trace),
  'gauge taken for absolute': (inputs, trace) => {
    const { spec, reading } = inputs;
    const wanted = TARGET_BY['gauge taken for absolute'](inputs, trace);
    const [high, low] = [wanted, reading.pressure].map((pressure) =>
      asAbsolute(spec.gas, pressure, reading.temperature, trace),
    );
    return massBetween(spec, high ?? Number.NaN, low ?? Number.NaN, trace);
  },
  '°C taken for K': (inputs, trace) => {
    const { spec, reading } = inputs;
    const wanted = TARGET_BY.none(inputs, trace);
    const dp = wanted.pascals - reading.pressure.pascals;
    const theta = valueIn(reading.temperature, '°C');
    const n = step4(trace, CELSIUS_AMOUNT, 'add', dp, spec.gasVolume.cubicMetres, spec.gas.gasConstant_J_molK, theta);
    return massOfGas(amountOf(n), spec.gas, trace);
  },
  'temperature not taken into account': (inputs, trace) =>
    filled(inputs, TARGET_BY['temperature not taken into account'](inputs, trace), trace),
};

/** The mass of the gas that is in the vessel. */
export const HELD_BY: Readonly<Record<Exclude<Mistake, 'temperature not taken into account'> | 'none', Worked<Mass>>> =
  {
    none: ({ spec, reading }, trace) => held(spec, readDensity(spec, reading, trace), trace),
    'ideal gas taken for real': ({ spec, reading }, trace) => held(spec, readDensity(spec, reading, trace), trace),
    'gauge taken for absolute': ({ spec, reading }, trace) =>
      held(spec, asAbsolute(spec.gas, reading.pressure, reading.temperature, trace), trace),
    '°C taken for K': ({ spec, reading }, trace) => {
      const { pascals } = toAbsolute(reading.pressure, reading.ambient, trace);
      const theta = valueIn(reading.temperature, '°C');
      const { gas, gasVolume } = spec;
      const n = step4(trace, CELSIUS_AMOUNT, 'reading', pascals, gasVolume.cubicMetres, gas.gasConstant_J_molK, theta);
      return massOfGas(amountOf(n), gas, trace);
    },
  };

function pointOf({ precharge }: Specification): {
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
} {
  if (has(precharge, 'rows')) throw new TypeError('an exercise is about a reference point');
  return { pressure: precharge.pressure, temperature: precharge.temperature };
}

/** The density of a gauge pressure that was taken for an absolute one. */
function asAbsolute(gas: GasModel, pressure: GaugePressure, temperature: Temperature, trace: Trace): number {
  return stateAt(gas, { temperature, pressure: absoluteOf(pressure.pascals) }, trace).density_mol_m3;
}

function filled({ spec, reading }: Inputs, wanted: GaugePressure, trace: Trace): Mass {
  const high = readDensity(spec, { ...reading, pressure: wanted }, trace);
  return massBetween(spec, high, readDensity(spec, reading, trace), trace);
}

function massBetween({ gas, gasVolume }: Specification, high: number, low: number, trace: Trace): Mass {
  const moles = step3(trace, AMOUNT, 'add', gasVolume.cubicMetres, high, low);
  return massOfGas(amountOf(moles), gas, trace);
}

function held({ gas, gasVolume }: Specification, rho: number, trace: Trace): Mass {
  return massOfGas(amountOf(step2(trace, CONTENTS, 'reading', gasVolume.cubicMetres, rho)), gas, trace);
}
