import fc from 'fast-check';
import {
  band,
  charge,
  check,
  explainingTemperature,
  gauge,
  judge,
  nitrogen,
  normalConditions,
  referred,
  target,
  type Check,
  type Reading,
  type Specification,
  type Step,
  type Trace,
} from 'isochore';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  anyConditions,
  anySpec,
  bar,
  barOf,
  celsius,
  hPa,
  readingWith,
  reads,
  specOf,
} from '../support/accumulator.js';
import { relativeError } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';

/** The steps that a calculation shows. */
function stepsOf(calculate: (trace: Trace) => unknown): Step[] {
  const seen: Step[] = [];
  calculate((step) => seen.push(step));
  return seen;
}

/** p(T, rho) by the term-by-term equation, for the printed equations of the gas model. */
const p = (T: number, rho: number): number => span2000(T, rho).p_Pa;

/** How far a step is from its own printed formula, relative to the larger side of it. */
function disagreement({ relation, values, result }: Step): number {
  const scope = {
    p,
    ...Object.fromEntries(relation.from.map((symbol, i) => [symbol, values[i]])),
    [relation.gives]: result,
  };
  // An equation must hold with the result in it; a formula must give the result.
  const [left = '', right = relation.gives] = relation.formula.split('=');
  const [a, b] = [left, right].map((side) => Number(evaluate(side, { ...scope })));
  const size = Math.max(...values.map(Math.abs), Math.abs(result));
  return Math.abs((a ?? Number.NaN) - (b ?? Number.NaN)) / size;
}

const anyReading: fc.Arbitrary<Reading> = fc
  .tuple(anyConditions, fc.constantFrom(0, 20, 130, 150, 250, 350), fc.boolean(), fc.boolean())
  .map(([at, p_bar, drained, cleared]) =>
    readingWith({
      ...at,
      pressure: bar(p_bar),
      gaugeStep: { step: 0.1, unit: 'bar' },
      oilSide: drained ? 'drained, zero verified' : 'not known',
      ...(cleared ? { emptyGasSide: 'investigated and cleared' } : {}),
    }),
  );

describe('a calculation that is watched', () => {
  test('gives the same to the last bit', () => {
    fc.assert(
      fc.property(anySpec, anyReading, (spec, reading) => {
        const calls: ((trace?: Trace) => unknown)[] = [
          (trace) => target(spec, reading, trace),
          (trace) => band(spec, reading, reading.gaugeStep, trace),
          (trace) => referred(spec, reading, trace),
          (trace) => explainingTemperature(spec, reading, trace),
          (trace) => judge(spec, reading, trace),
          (trace) => charge(spec, reading, trace),
          (trace) => check(spec, reading, trace),
        ];
        for (const call of calls) {
          const seen: Step[] = [];
          expect(call((step) => seen.push(step))).toStrictEqual(call());
          expect(seen.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('shows steps that compute again, each by its printed formula', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(anySpec, anyReading, fc.boolean(), (spec, read, onThePlate) => {
        const { ambient, precharge } = spec;
        const reading = onThePlate ? { ...read, ambient, temperature: precharge.temperature } : read;
        for (const step of stepsOf((trace) => check(spec, reading, trace))) {
          seen.add(`${step.relation.gives} by ${step.relation.formula}`);
          expect(disagreement(step), `${step.about}: ${step.relation.formula}`).toBeLessThanOrEqual(1e-12);
        }
      }),
      { numRuns: 100 },
    );
    // The three of the gas model among them.
    for (const implicit of ['rho by p(T, rho) = p_abs', 'p_abs by p(T, rho)', 'T by p(T, rho) = p_abs']) {
      expect([...seen]).toContain(implicit);
    }
    // And of a closed formula each that a check uses.
    expect(seen.size).toBe(15);
  });
});

/** Numbers that nobody could mistake for each other. */
const at = { temperature: celsius(37), ambient: hPa(998) };
const specFor = (tolerance: Specification['tolerance']): Specification =>
  specOf(141, 19, { ambient: hPa(1017), tolerance });
const TOLERANCES: readonly [string, Specification['tolerance']][] = [
  ['± at the measured temperature', { plusMinus: barOf(2.1), applies: 'at the measured temperature' }],
  ['two sides', { below: barOf(1.3), above: barOf(2.7), applies: 'at the measured temperature' }],
  ['a percentage', { plusMinusPercentOfGauge: 1.7, applies: 'at the measured temperature' }],
  ['± at the reference temperature', { plusMinus: barOf(2.1), applies: 'at the reference temperature' }],
];

/** Every number that a caller gave, or that the model or the reference state fixes. */
function inputsOf(spec: Specification, reading: Reading): Set<number> {
  const { tolerance, limitDensities_mol_m3: limits } = spec;
  const sizes = Object.values<unknown>(tolerance).flatMap((x) =>
    typeof x === 'object' && x !== null && 'pascals' in x ? [Number(x.pascals)] : typeof x === 'number' ? [x] : [],
  );
  return new Set([
    spec.precharge.pressure.pascals,
    spec.precharge.temperature.kelvins,
    spec.ambient.pascals,
    ...sizes,
    spec.gasVolume.cubicMetres,
    spec.settling.allowance.pascals,
    reading.pressure.pascals,
    reading.temperature.kelvins,
    reading.ambient.pascals,
    nitrogen.molarMass_kg_mol,
    normalConditions.pressure.pascals,
    normalConditions.temperature.kelvins,
    // The densities of the limits' lines are solved once, when the specification is made, and carried in it.
    ...(limits === 'limits follow the target' ? [] : [limits.lower, limits.upper]),
  ]);
}

describe.each(TOLERANCES)('the working of a check, %s', (_, tolerance) => {
  const spec = specFor(tolerance);

  test.each([
    ['filling', 120],
    ['venting', 171],
    ['within', 152],
    ['cleared and empty', 0.3],
  ])('uses nothing but what was given and what was worked out before: %s', (_, p_bar) => {
    const reading = reads(p_bar, { ...at, emptyGasSide: 'investigated and cleared' });
    const known = inputsOf(spec, reading);
    const strangers: string[] = [];
    for (const { about, relation, values, result } of stepsOf((trace) => check(spec, reading, trace))) {
      for (const [i, value] of values.entries()) {
        if (!known.has(value)) strangers.push(`${about}: ${relation.from[i] ?? ''} ${value}`);
      }
      known.add(result);
    }
    expect(strangers).toEqual([]);
  });

  test('ends in the numbers of the result', () => {
    const reading = reads(120, at);
    let result: Check | undefined;
    const steps = stepsOf((trace) => (result = check(spec, reading, trace)));
    const { verdict, charge: move } = result ?? check(spec, reading);
    if (verdict.outcome !== 'undercharged' || move.action !== 'add') throw new Error(verdict.why);
    const last = (about: string, gives: string): number | undefined =>
      steps.filter((step) => step.about === about && step.relation.gives === gives).at(-1)?.result;
    expect(last('reference point', 'rho')).toBe(spec.density_mol_m3);
    expect(last('target', 'p_g')).toBe(verdict.target.pascals);
    const isAlongLines = tolerance.applies === 'at the reference temperature';
    expect(last('lower limit', isAlongLines ? 'p_g' : 'p_lower')).toBe(verdict.band.lower.pascals);
    expect(last('upper limit', isAlongLines ? 'p_g' : 'p_upper')).toBe(verdict.band.upper.pascals);
    expect(last('reading', 'dp_off')).toBe(verdict.offTarget.pascals);
    expect(last('reading', 'dp_inside')).toBe(verdict.insideBandBy.pascals);
    expect(last('reading referred', 'p_g')).toBe(verdict.referred.pascals);
    expect({ kind: 'temperature', kelvins: last('explaining temperature', 'T') }).toEqual({
      ...(verdict.explainingTemperature as object),
    });
    expect(last('add', 'n')).toBe(move.gas.amount.moles);
    expect(last('add', 'p_stop')).toBe('pressure' in move.stop ? move.stop.pressure.pascals : Number.NaN);
    expect(last('gas', 'm')).toBe(move.gas.mass.kilograms);
    expect(last('gas', 'V_n')).toBe(move.gas.normalVolume.cubicMetres);
  });
});

test('the working of a target: absolute, density, pressure on the line, gauge in today’s ambient', () => {
  const spec = specFor({ plusMinus: barOf(2), applies: 'at the measured temperature' });
  const steps = stepsOf((trace) => target(spec, at, trace));
  expect(steps.map(({ about, relation }) => `${about}: ${relation.gives}`)).toEqual([
    'reference point: p_abs',
    'reference point: rho',
    'target: p_abs',
    'target: p_g',
  ]);
  expect(steps[0]?.values).toEqual([14_100_000, 101_700]);
  expect(steps[3]?.values[1]).toBe(99_800);
  expect(relativeError(steps[3]?.result ?? Number.NaN, target(spec, at).pascals)).toBe(0);
});

test('a vent shows no stop pressure beyond the target', () => {
  const spec = specFor({ plusMinus: barOf(2), applies: 'at the measured temperature' });
  const steps = stepsOf((trace) => charge(spec, readingWith({ ...at, pressure: gauge(171, 'bar') }), trace));
  expect(steps.filter(({ relation }) => relation.gives === 'p_stop')).toEqual([]);
  expect(steps.find(({ relation }) => relation.gives === 'n')?.about).toBe('vent');
});
