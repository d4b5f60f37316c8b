// What is measured: each step of the method, from a conversion to a whole round, over 1 024 different inputs.
import {
  absolute,
  band,
  check,
  cubicNitrogen,
  gauge,
  idealNitrogen,
  filling,
  judge,
  nitrogen,
  pressureDifference,
  specification,
  standardAtmosphere,
  target,
  temperature,
  volume,
  whereToStop,
} from 'isochore';
import { reportRound, RoundShape } from 'isochore/record';
import { readFileSync } from 'node:fs';

/** @import { Reading } from 'isochore' */
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
const low = gauge(110, 'bar');
const until = { stop: gauge(130, 'bar') };
const supply = { pressure: gauge(230, 'bar'), temperature: temperature(20, '°C') };
const exchange = { timeConstantMinutes: 4, movingMinutes: 4 };
const densities = pascals.map((p, i) => nitrogen['~kernel'].density(at(kelvins, i), p));
const out = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };

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
    name: 'filling, both bounds',
    call: (i) => filling(spec, { ...at(readings, i), pressure: low }, { supply, until }).adiabatic.settled.pascals,
  },
  {
    name: 'filling, in time',
    call: (i) =>
      filling(spec, { ...at(readings, i), pressure: low }, { supply, until, exchange }).adiabatic.settled.pascals,
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
];
