import { fail, quote } from '../basis/fault.js';
import { notACount } from '../basis/problem.js';
import type { ContributionCode } from '../basis/words.js';
import { densityAt, pvtAt } from '../gas/door.js';
import { log } from '../gas/elementary.js';
import { pressureDifferenceOf, wrongKind, type PressureDifference } from '../quantity/kind.js';
import { notCovered, type NotCovered } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { sourceOn, type Curve, type Line } from '../target/curve.js';
import type { Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { checkedMeasured } from './budget.js';
import { compareWith, modelErrors } from './contributions.js';
import { correctedReading } from './corrected-reading.js';
import { BY_VESSEL } from './relations.js';
import { lineAt, subjectsOf } from './subject.js';

// Propagation of distributions by a Monte Carlo method (JCGM 101:2008, clause 7): every error is drawn, and the comparison
// computed anew with it, through the gas model and not through sensitivities.

/** How many draws, and from which seed. */
export interface Draws {
  /** 1000 to 1 000 000. */
  readonly draws: number;
  /** 0 to 4294967295; the same seed gives the same result. */
  readonly seed: number;
}

/** What the draws say of the true difference from the target. */
export interface Simulated extends Draws {
  readonly mean: PressureDifference;
  readonly standard: PressureDifference;
  readonly interval: {
    readonly coverage: 0.95;
    readonly lower: PressureDifference;
    readonly upper: PressureDifference;
  };
}

const COVERAGE = 0.95;
const [LEAST_DRAWS, MOST_DRAWS, MOST_SEED] = [1000, 1_000_000, 4_294_967_295];

/**
 * The uncertainty of a comparison by simulation, as a check of {@link uncertainty} that anybody can run: the same errors,
 * drawn from a seed and carried through the gas model itself, without sensitivities. Beyond the ends of a table that says
 * nothing of what lies there, its last two rows go on.
 *
 * @throws {@link Fault} as {@link uncertainty}; `not a count` for draws or seed; `outside the model` where a draw leaves it
 * @example
 * ```ts
 * const found = simulate(spec, reading, instruments, { draws: 10_000, seed: 1 });
 * if ('interval' in found) write(found.interval.upper, { step: 0.1, unit: 'bar' }); // => '-6.2 bar difference'
 * ```
 */
export function simulate(
  spec: Specification,
  givenReading: Reading,
  givenInstruments: Instruments,
  given: Draws,
): Simulated | { readonly because: NotCovered } {
  const { reading, instruments } = checkedMeasured(spec, givenReading, givenInstruments);
  if (!isObject(given)) wrongKind('number of draws and seed', given, 'given');
  const { draws, seed } = given;
  needWhole('draws', draws, LEAST_DRAWS, MOST_DRAWS);
  needWhole('seed', seed, 0, MOST_SEED);
  const because = notCovered(instruments.gauge, reading);
  if (because !== undefined) return { because };

  const draw = drawOf(spec, reading, instruments, generator(seed));
  const values = new Float64Array(draws).map(draw).sort();
  const mean = values.reduce((sum, value) => sum + value, 0) / draws;
  const variance = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / (draws - 1);
  // JCGM 101, 7.7: the ends with as many draws beyond one as beyond the other.
  const at = (p: number): number => values[Math.floor(p * draws)] ?? Number.NaN;
  return {
    draws,
    seed,
    mean: pressureDifferenceOf(mean),
    standard: pressureDifferenceOf(Math.sqrt(variance)),
    interval: {
      coverage: COVERAGE,
      lower: pressureDifferenceOf(at(0.5 - COVERAGE / 2)),
      upper: pressureDifferenceOf(at(0.5 + COVERAGE / 2)),
    },
  };
}

/** One draw of the true (pressure − target) behind a reading, Pa. */
function drawOf(spec: Specification, reading: Reading, instruments: Instruments, random: Random): () => number {
  const at = correctedReading(reading, instruments);
  const { target } = subjectsOf(spec, instruments);
  const { parts } = compareWith(spec, reading, instruments, target);
  const { curve } = target;
  const { readings } = instruments;
  /** The sum of the errors of these codes; of what differs from reading to reading, the mean of as many. */
  const errorOf = (...codes: readonly ContributionCode[]): (() => number) => {
    const chosen = parts.filter((part) => codes.includes(part.of));
    return () => {
      let sum = 0;
      for (const { distribution, size, repeats } of chosen) {
        const times = repeats === 'per reading' ? readings : 1;
        for (let i = 0; i < times; i += 1)
          sum += ((distribution === 'rectangle' ? 2 * uniform(random) - 1 : normal(random)) * size) / times;
      }
      return sum;
    };
  };
  const ofGauge = errorOf('gauge', 'gauge temperature', 'gauge step');
  const ofTemperature = errorOf('thermometer', 'thermometer step', 'shell to gas', 'emissivity');
  const ofAmbient = errorOf('barometer');
  const targetOf = targetDrawn(spec, instruments, curve, at.T_K, {
    ofAmbient: errorOf('printed ambient'),
    ofVessel: errorOf('vessel'),
    printedStep_Pa: target.printedStep_Pa,
    random,
  });
  return () => {
    const ambient_Pa = at.ambient_Pa + ofAmbient();
    return at.p_g_Pa + ofGauge() - targetOf(at.T_K + ofTemperature(), ambient_Pa);
  };
}

interface DrawnWith {
  readonly ofAmbient: () => number;
  readonly ofVessel: () => number;
  readonly printedStep_Pa: number;
  readonly random: Random;
}

/** The target at a temperature in an ambient, with errors drawn of all that the specification states, Pa gauge. */
function targetDrawn(
  spec: Specification,
  instruments: Instruments,
  curve: Curve,
  T_read: number,
  { ofAmbient, ofVessel, printedStep_Pa, random }: DrawnWith,
): (T_K: number, ambient_Pa: number) => number {
  const rounding = (step: number): number => (uniform(random) - 0.5) * step;
  const step_K = instruments.printed.temperature.kelvins;
  const line = lineAt(curve, T_read);
  if (line === undefined) {
    const rows = rowsAbout(curve, T_read);
    const ambient_Pa = spec.ambient.pascals;
    return (T_K, here_Pa) => {
      const [low, high] = rows.map(({ pressure, temperature }) => [
        temperature.kelvins + rounding(step_K),
        pressure.pascals + rounding(printedStep_Pa),
      ]) as [[number, number], [number, number]];
      const p = low[1] + ((high[1] - low[1]) * (T_K - low[0])) / (high[0] - low[0]);
      return p + ambient_Pa + ofAmbient() - here_Pa;
    };
  }
  const { point } = line;
  const model = modelDrawn(spec, instruments, line, T_read, random);
  const { linearExpansion_per_K, treated } = instruments.vessel;
  const alpha = treated === 'corrected' ? linearExpansion_per_K : 0;
  return (T_K, here_Pa) => {
    const T_stated = point.T_K + rounding(step_K);
    const p_stated = point.p_g_Pa + rounding(printedStep_Pa) + point.ambient_Pa + ofAmbient();
    const rho = densityAt(spec.gas, T_stated, p_stated, 'pressure', 'draw');
    const expanded = 1 + BY_VESSEL.of(alpha, T_K, T_stated) + ofVessel();
    return pvtAt(spec.gas, T_K, rho * model() * expanded, 'temperature', 'draw').p_Pa - here_Pa;
  };
}

/** The two rows between which a table is read; at its last row, that and the one before. */
function rowsAbout(curve: Curve, T_K: number): TwoRows {
  const all = curve.by === 'table' ? curve.rows : [];
  const [low] = sourceOn(curve, T_K).rows;
  const i = Math.min(
    all.findIndex((row) => row.temperature.kelvins === low?.temperature.kelvins),
    all.length - 2,
  );
  return all.slice(i, i + 2) as unknown as TwoRows; // a table has two rows or more
}

type TwoRows = readonly [Row, Row];
type Row = Extract<Curve, { by: 'table' }>['rows'][number];

/** (1 + error at the stated end) / (1 + error at this end) of the densities of the model, correlated as stated. */
function modelDrawn(
  spec: Specification,
  { modelErrorCorrelation: r }: Instruments,
  line: Line,
  T_K: number,
  random: Random,
): () => number {
  const { p_Pa } = pvtAt(spec.gas, T_K, line.rho_mol_m3, 'temperature', 'draw');
  const errors = T_K === line.point.T_K ? 'not stated' : modelErrors(spec, line, T_K, p_Pa);
  if (errors === 'not stated') return () => 1;
  const rest = Math.sqrt(1 - r * r);
  return () => {
    const one = normal(random);
    const other = r * one + rest * normal(random);
    return (1 + errors.stated * one) / (1 + errors.here * other);
  };
}

/** Gives 32 random bits as a whole number. */
export type Random = () => number;

/**
 * xoshiro128** of D. Blackman and S. Vigna (ACM Trans. Math. Softw. 47 (2021) 36), its state filled from the seed by the
 * mixing of SplitMix, as its authors advise; both from memory.
 */
export function generator(seed: number): Random {
  let mixed = seed >>> 0;
  const next = (): number => {
    mixed = (mixed + 0x9e3779b9) >>> 0;
    let z = mixed;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
  let [a, b, c, d] = [next(), next(), next(), next()];
  const turn = (x: number, by: number): number => (x << by) | (x >>> (32 - by));
  return () => {
    const result = Math.imul(turn(Math.imul(b, 5), 7), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = turn(d, 11);
    return result;
  };
}

/** Uniform from 0 to 1, both left out, in steps of 2^−32. */
function uniform(random: Random): number {
  return (random() + 0.5) / 4_294_967_296;
}

/** Normal about 0 with standard deviation 1, by the polar method of G. Marsaglia. No draw lies in the very middle. */
function normal(random: Random): number {
  for (;;) {
    const [x, y] = [2 * uniform(random) - 1, 2 * uniform(random) - 1];
    const s = x * x + y * y;
    if (s < 1) return x * Math.sqrt((-2 * log(s)) / s);
  }
}

/** Refuses what is no whole number within bounds. */
export function needWhole(path: string, value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  fail(notACount, path, quote(value), { least: String(least), most: String(most) });
}
