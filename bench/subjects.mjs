// What is measured: each step of the method, from a conversion to a whole round, over 1 024 different inputs.
import {
  absolute,
  assess,
  auditTable,
  band,
  check,
  cubicNitrogen,
  decide,
  fillingPlan,
  MOST_CHOSEN,
  gauge,
  idealNitrogen,
  filling,
  judge,
  nitrogen,
  OBJECTIVES,
  pressureDifference,
  slips,
  specification,
  standardAtmosphere,
  storedEnergy,
  target,
  temperature,
  temperatureDifference,
  together,
  uncertainty,
  volume,
  whereToStop,
  workOrder,
} from 'isochore';
import { reportRound, RoundShape } from 'isochore/record';
import { readFileSync } from 'node:fs';

/** @import { Instruments, PrintedTable, Reading, Rule, TableAuditGiven } from 'isochore' */
/** @import { Subject } from './measure.mjs' */

const SIZE = 1024;
/** @template T @param {(i: number) => T} of */
const inputs = (of) => Array.from({ length: SIZE }, (_, i) => of(i));
/** The input of a call; there are as many as calls. @template T @param {readonly T[]} list @param {number} i */
const at = (list, i) => /** @type {T} */ (list[i]);

// Readings as people write them, in tenths of a bar and whole psi, about 130 bar to 170 bar; shells from 0 °C to 60 °C.
const bars = inputs((i) => (1300 + ((i * 37) % 400)) / 10);
const psis = inputs((i) => 1885 + ((i * 37) % 580));
const kelvins = inputs((i) => 273.15 + ((i * 53) % 600) / 10);
const pascals = bars.map((bar) => bar * 1e5 + 101_325);

const spec = specification({
  gas: nitrogen,
  precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: gauge(210, 'bar'),
  settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
});
const gaugeStep = /** @type {const} */ ({ step: 1, unit: 'bar' });
const out = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
const conditions = kelvins.map((T) => ({ temperature: temperature(T, 'K'), ambient: absolute(1008, 'hPa') }));
/** @type {readonly Reading[]} */
const readings = conditions.map((one, i) => ({
  ...one,
  pressure: gauge(at(bars, i), 'bar'),
  gaugeStep,
  oilSide: 'drained, zero verified',
  gasInside: 'nitrogen',
  minutesAtRest: 30,
}));
/** @type {Instruments} */
const instruments = {
  gauge: {
    type: 'dial gauge',
    fullScale: gauge(250, 'bar'),
    accuracy: { accuracyClass: 1 },
    temperature: temperature(30, '°C'),
    zero: 'without stop pin',
  },
  thermometer: {
    type: 'contact thermometer',
    accuracy: { limit: temperatureDifference(1, 'K') },
    step: temperatureDifference(1, 'K'),
    shellToGas: temperatureDifference(2, 'K'),
  },
  barometer: { limit: pressureDifference(2, 'hPa') },
  printed: {
    pressure: pressureDifference(1, 'bar'),
    temperature: temperatureDifference(0, 'K'),
    ambientLimit: pressureDifference(30, 'hPa'),
  },
  modelErrorCorrelation: 0,
  vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 0, treated: 'as uncertainty' },
  readings: 1,
  on: '2026-03-14',
};
/** @type {Rule} */
const rule = { acceptance: 'guarded acceptance', risk: { below: 0.025, above: 0.025 } };
/** Sixteen neighbouring readings, as of one round. */
const rounds = inputs((i) =>
  Array.from({ length: 16 }, (_, k) => ({ spec, reading: at(readings, (i + k) % SIZE), instruments })),
);
/** Tables of 9 rows from −20 °C to 60 °C to half a bar, along lines of constant density. @type {readonly PrintedTable[]} */
const tables = inputs((i) => ({
  rows: Array.from({ length: 9 }, (_, row) => {
    const T_K = 253.15 + 10 * row;
    const rho = nitrogen['~kernel'].density(293.15, 10e6 + 1e4 * i);
    nitrogen['~kernel'].pvt(T_K, rho, out);
    return {
      temperature: temperature(-20 + 10 * row, '°C'),
      pressure: gauge(Math.round((out.p_Pa - 101_325) / 5e4) / 2, 'bar'),
    };
  }),
  referenceTemperature: temperature(20, '°C'),
  printedStep: pressureDifference(0.5, 'bar'),
}));
/** @type {TableAuditGiven} */
const auditGiven = {
  models: [nitrogen, idealNitrogen],
  ambient: standardAtmosphere,
  printedIn: { pressure: 'bar', temperature: '°C' },
  temperatureStep: 'exact',
  equation: 'exact',
};
const low = gauge(110, 'bar');
const until = { stop: gauge(130, 'bar') };
const supply = { pressure: gauge(230, 'bar'), temperature: temperature(20, '°C') };
const exchange = { timeConstantMinutes: 4, movingMinutes: 4 };
const densities = pascals.map((p, i) => nitrogen['~kernel'].density(at(kelvins, i), p));

/** The round of the examples, with its groups many times over. */
function largeRound() {
  const text = readFileSync(new URL('../examples/round.json', import.meta.url), 'utf8');
  const round = RoundShape.parse(JSON.parse(text));
  const groups = Array.from({ length: 16 }, (_, n) =>
    round.groups.map((group) => ({ ...group, name: `${group.name} ${n}` })),
  ).flat();
  const count = groups.reduce((sum, { accumulators }) => sum + accumulators.length, 0);
  return { round: { ...round, groups }, count };
}
const large = largeRound();

/** @param {ReturnType<typeof filling>} ends */
function settledBy({ adiabatic }) {
  return adiabatic.outcome === 'reached' ? adiabatic.settled.pascals : Number.NaN;
}

/** 200 accumulators and 40 bottles, some of them full: gas for nearly all. */
const planGiven = {
  gas: nitrogen,
  leastPurityPercent: /** @type {const} */ ('not demanded'),
  accumulators: inputs((i) => ({
    name: `accumulator ${i}`,
    gasVolume: volume(1 + (i % 9), 'L'),
    read: { ...at(conditions, i), pressure: gauge(at(bars, i) - 60, 'bar') },
    to: gauge(at(bars, i) - 40 + (i % 30), 'bar'),
    allowable: gauge(250, 'bar'),
  })).slice(0, 200),
  bottles: inputs((i) => ({
    name: `bottle ${i}`,
    waterVolume: volume(i % 3 === 0 ? 50 : 20, 'L'),
    label: {
      gas: 'nitrogen',
      purityPercent: 99.99,
      filling: gauge(200, 'bar'),
      rated: gauge(230, 'bar'),
      ambient: standardAtmosphere,
    },
    read: {
      pressure: gauge(i % 4 === 0 ? 205 : 80 + ((i * 37) % 110), 'bar'),
      temperature: temperature(25, '°C'),
      ambient: standardAtmosphere,
    },
    within: pressureDifference(4, 'bar'),
    residual: gauge(5, 'bar'),
  })).slice(0, 40),
  rig: /** @type {const} */ ({
    kit: { volume: volume(30, 'mL'), rated: gauge(300, 'bar') },
    regulator: 'none',
  }),
  objectives: OBJECTIVES,
};

/** The same with a third of the gas: most accumulators stay undone, and every way is tried. */
const shortGiven = {
  ...planGiven,
  bottles: planGiven.bottles.map((one) => ({ ...one, waterVolume: volume(one.waterVolume.cubicMetres / 3, 'm3') })),
};

/** Where what is equal in everything but its name leaves every order to be tried. */
const alikeGiven = {
  ...planGiven,
  accumulators: planGiven.accumulators.map(({ name }) => ({
    .../** @type {typeof planGiven.accumulators[0]} */ (planGiven.accumulators[0]),
    name,
  })),
};

/** As many bottles as have all their choices compared. */
const fewGiven = { ...shortGiven, bottles: shortGiven.bottles.slice(0, MOST_CHOSEN) };

/** @type {readonly Subject[]} */
export const SUBJECTS = [
  { name: 'gauge, in bar', call: (i) => gauge(at(bars, i), 'bar').pascals },
  { name: 'gauge, in psi', call: (i) => gauge(at(psis, i), 'psi').pascals },
  { name: 'density, ideal gas', call: (i) => idealNitrogen['~kernel'].density(at(kelvins, i), at(pascals, i)) },
  { name: 'density, cubic', call: (i) => cubicNitrogen['~kernel'].density(at(kelvins, i), at(pascals, i)) },
  { name: 'density, reference', call: (i) => nitrogen['~kernel'].density(at(kelvins, i), at(pascals, i)) },
  {
    name: 'pressure and slopes, reference',
    call: (i) => {
      nitrogen['~kernel'].pvt(at(kelvins, i), at(densities, i), out);
      return out.p_Pa;
    },
  },
  { name: 'target', call: (i) => target(spec, at(conditions, i)).pascals },
  { name: 'band', call: (i) => band(spec, at(conditions, i), gaugeStep).lower.pascals },
  { name: 'judge', call: (i) => judge(spec, at(readings, i)).target.pascals },
  { name: 'check', call: (i) => check(spec, at(readings, i)).verdict.target.pascals },
  {
    name: 'uncertainty',
    call: (i) => {
      const found = uncertainty(spec, at(readings, i), instruments);
      return 'standard' in found ? found.standard.pascals : Number.NaN;
    },
  },
  {
    name: 'decide',
    call: (i) => {
      const found = decide(spec, at(readings, i), instruments, rule);
      return 'probability' in found ? found.probability.within : Number.NaN;
    },
  },
  { name: 'assess', call: (i) => assess(spec, at(readings, i), instruments, rule).verdict.target.pascals },
  { name: 'storedEnergy', call: (i) => storedEnergy(spec, at(readings, i)).energy_J },
  { name: 'workOrder', call: (i) => workOrder(spec, at(readings, i)).steps.length },
  { name: 'slips', call: (i) => slips(spec, at(readings, i), instruments).candidates.length },
  {
    name: 'together, a reading of sixteen',
    call: (i) => ('readings' in together(at(rounds, i)) ? 16 : Number.NaN),
    each: 16,
  },
  { name: 'auditTable, of nine rows', call: (i) => auditTable(at(tables, i), auditGiven).columns.length },
  {
    name: 'filling, both bounds',
    call: (i) => settledBy(filling(spec, { ...at(readings, i), pressure: low }, { supply, until })),
  },
  {
    name: 'filling, in time',
    call: (i) => settledBy(filling(spec, { ...at(readings, i), pressure: low }, { supply, until, exchange })),
  },
  {
    name: 'where to stop',
    call: (i) => {
      const plan = whereToStop(spec, at(readings, i), { supply, computedStop: 'not permitted' });
      return 'steps' in plan ? plan.steps.length : 0;
    },
  },
  {
    name: 'reportRound, an accumulator',
    call: () => reportRound(large.round, { problems: 'refuse the round' }).accumulators.length,
    each: large.count,
  },
  {
    name: 'fillingPlan, 200 accumulators and 40 bottles',
    call: () => fillingPlan(planGiven).steps.length,
  },
  { name: 'the same with gas for few of them', call: () => fillingPlan(shortGiven).steps.length },
  { name: 'the same, all accumulators alike', call: () => fillingPlan(alikeGiven).steps.length },
  { name: 'the same with few bottles', call: () => fillingPlan(fewGiven).steps.length },
];
