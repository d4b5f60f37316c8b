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
  pointOf,
  readingWith,
  reads,
  specBy,
  specOf,
  tableOf,
} from '../support/accumulator.js';
import { relativeError } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';
import { anySpecByTable } from '../support/table.js';

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

/** A specification with a reading of it, by a point or by a table. */
const anyCase: fc.Arbitrary<{ readonly spec: Specification; readonly reading: Reading }> = fc.oneof(
  fc.record({ spec: anySpec, reading: anyReading }),
  fc.tuple(anySpecByTable, anyReading).map(([{ spec, at }, reading]) => ({ spec, reading: { ...reading, ...at } })),
);

test('every step names what it gives, in its unit, and the source of its formula', () => {
  const table = tableOf([
    [127.3, 0],
    [140, 20],
    [152.6, 40],
  ]);
  const tolerance = { plusMinusPercentOfGauge: 2, applies: 'at the measured temperature' } as const;
  const own = { plusMinus: barOf(2), applies: 'at the reference temperature' } as const;
  const specs = [specBy(table, { tolerance }), specOf(140, 20, { tolerance: own })];
  const steps = specs.flatMap((spec) => [
    ...stepsOf((trace) => check(spec, reads(148, { temperature: celsius(30) }), trace)),
    ...stepsOf((trace) => check(spec, reads(148, { temperature: spec.referenceTemperature }), trace)),
  ]);
  const units: Readonly<Record<string, string>> = {
    p: 'Pa',
    dp: 'Pa',
    T: 'K',
    rho: 'mol/m3',
    n: 'mol',
    dn: 'mol',
    m: 'kg',
    V: 'm3',
  };
  for (const { relation } of steps) {
    const [quantity = ''] = relation.gives.split('_');
    expect(relation.unit, relation.gives).toBe(units[quantity]);
    expect(relation.source.length).toBeGreaterThan(10);
  }
});

describe('a calculation that is watched', () => {
  test('gives the same to the last bit', () => {
    fc.assert(
      fc.property(anyCase, ({ spec, reading }) => {
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
      fc.property(anyCase, fc.boolean(), ({ spec, reading: read }, onThePlate) => {
        const { ambient, referenceTemperature } = spec;
        const reading = onThePlate ? { ...read, ambient, temperature: referenceTemperature } : read;
        for (const step of stepsOf((trace) => check(spec, reading, trace))) {
          seen.add(`${step.relation.gives} by ${step.relation.formula}`);
          expect(disagreement(step), `${step.about}: ${step.relation.formula}`).toBeLessThanOrEqual(1e-12);
        }
      }),
      { numRuns: 150 },
    );
    // The three of the gas model among them, and those of a table.
    for (const wanted of [
      'rho by p(T, rho) = p_abs',
      'p_abs by p(T, rho)',
      'T by p(T, rho) = p_abs',
      'p_g by p_1 + (p_2 - p_1) * (T - T_1) / (T_2 - T_1)',
      'T by T_1 + (T_2 - T_1) * (p_g - p_1) / (p_2 - p_1)',
      'p_g by p_stated + (p_amb_stated - p_amb)',
    ]) {
      expect([...seen]).toContain(wanted);
    }
    // And of a closed formula each that a check uses.
    expect(seen.size).toBe(18);
  });
});

/** Numbers that nobody could mistake for each other. */
const at = { temperature: celsius(37), ambient: hPa(998) };
const MEASURED = { applies: 'at the measured temperature' } as const;
const REFERENCE = { applies: 'at the reference temperature' } as const;
const specFor = (tolerance: Specification['tolerance']): Specification =>
  specOf(141, 19, { ambient: hPa(1017), tolerance });
const TABLE = tableOf(
  [
    [127.1, 1],
    [140.2, 21],
    [153.3, 42],
  ],
  { referenceTemperature: celsius(24), outside: 'follow constant density' },
);
/** It ends below 37 °C. */
const SHORT = { ...TABLE, rows: TABLE.rows.slice(0, 2), referenceTemperature: celsius(13) };
const specByTable = (tolerance: Specification['tolerance'], table = TABLE): Specification =>
  specBy(table, { ambient: hPa(1017), tolerance });
const LIMITS = {
  minimum: pointOf(136.7, 18),
  maximum: tableOf([
    [131.4, 2],
    [143.6, 22],
    [157.8, 44],
  ]),
};

const SPECS: readonly [string, Specification][] = [
  ['± at the measured temperature', specFor({ plusMinus: barOf(2.1), ...MEASURED })],
  ['two sides', specFor({ below: barOf(1.3), above: barOf(2.7), ...MEASURED })],
  ['a percentage', specFor({ plusMinusPercentOfGauge: 1.7, ...MEASURED })],
  ['± at the reference temperature', specFor({ plusMinus: barOf(2.1), ...REFERENCE })],
  ['a percentage at the reference temperature', specFor({ plusMinusPercentOfGauge: 1.7, ...REFERENCE })],
  ['stated limits', specFor(LIMITS)],
  ['a table, ±', specByTable({ plusMinus: barOf(2.1), ...MEASURED })],
  ['a table, a percentage', specByTable({ plusMinusPercentOfGauge: 1.7, ...MEASURED })],
  [
    'a table, two sides at its reference temperature',
    specByTable({ below: barOf(1.3), above: barOf(2.7), ...REFERENCE }),
  ],
  ['a table, stated limits', specByTable(LIMITS)],
  ['beyond a table', specByTable({ plusMinus: barOf(2.1), ...MEASURED }, SHORT)],
  ['beyond a table, ± at its reference temperature', specByTable({ plusMinus: barOf(2.1), ...REFERENCE }, SHORT)],
  [
    'beyond a table, stated limits',
    specByTable(
      {
        minimum: LIMITS.minimum,
        maximum: { ...LIMITS.maximum, rows: LIMITS.maximum.rows.slice(0, 2), outside: 'follow constant density' },
      },
      SHORT,
    ),
  ],
];

/** Every number in some data. */
const numbersIn = (data: unknown): number[] =>
  typeof data === 'number'
    ? [data]
    : typeof data === 'object' && data !== null
      ? Object.values(data as Record<string, unknown>).flatMap(numbersIn)
      : [];

/** Every number that a caller gave, or that the model or the reference state fixes. */
function inputsOf(
  { precharge, ambient, tolerance, gasVolume, settling }: Specification,
  reading: Reading,
): Set<number> {
  const { pressure, temperature, ambient: today } = reading;
  const given = { precharge, ambient, tolerance, gasVolume, settling, pressure, temperature, today };
  return new Set(numbersIn([given, nitrogen.molarMass_kg_mol, normalConditions]));
}

/** The values in steps that were neither given nor worked out before. */
function strangersIn(steps: readonly Step[], given: ReadonlySet<number>): string[] {
  const known = new Set(given);
  return steps.flatMap(({ about, relation, values, result }) => {
    const unknown = values.flatMap((x, i) => (known.has(x) ? [] : [`${about}: ${relation.from[i] ?? ''} ${x}`]));
    known.add(result);
    return unknown;
  });
}

describe.each(SPECS)('the working of a check, %s', (_, spec) => {
  test.each([
    ['filling', 120],
    ['venting', 171],
    ['within', 152],
    ['cleared and empty', 0.3],
  ])('uses nothing but what was given and what was worked out before: %s', (_, p_bar) => {
    const reading = reads(p_bar, { ...at, emptyGasSide: 'investigated and cleared' });
    expect(
      strangersIn(
        stepsOf((trace) => check(spec, reading, trace)),
        inputsOf(spec, reading),
      ),
    ).toEqual([]);
  });

  test('ends in the numbers of the result', () => {
    const reading = reads(120, at);
    let result: Check | undefined;
    const steps = stepsOf((trace) => (result = check(spec, reading, trace)));
    const { verdict, charge: move } = result ?? check(spec, reading);
    if (verdict.outcome !== 'undercharged' || move.action !== 'add') throw new Error(verdict.outcome);
    const last = (about: string, gives: string): number | undefined =>
      steps.filter((step) => step.about === about && step.relation.gives === gives).at(-1)?.result;
    const [filled, read] = steps.find(({ relation }) => relation.gives === 'n')?.values.slice(1) ?? [];
    if (typeof spec.density_mol_m3 === 'number') expect(last('target, as stated', 'rho')).toBe(spec.density_mol_m3);
    expect(last(typeof spec.density_mol_m3 === 'number' ? 'target, as stated' : 'target', 'rho')).toBe(filled);
    expect(last('reading', 'rho')).toBe(read);
    expect(last('target', 'p_g')).toBe(verdict.target.pascals);
    const isAboutTarget = 'applies' in spec.tolerance && spec.tolerance.applies === 'at the measured temperature';
    expect(last('lower limit', isAboutTarget ? 'p_lower' : 'p_g')).toBe(verdict.band.lower.pascals);
    expect(last('upper limit', isAboutTarget ? 'p_upper' : 'p_g')).toBe(verdict.band.upper.pascals);
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

test('the working of every calculation by itself uses nothing but what was given and worked out before', () => {
  fc.assert(
    fc.property(anyCase, ({ spec, reading }) => {
      const calls: [string, (trace: Trace) => unknown][] = [
        ['target', (trace) => target(spec, reading, trace)],
        ['band', (trace) => band(spec, reading, reading.gaugeStep, trace)],
        ['referred', (trace) => referred(spec, reading, trace)],
        ['explaining temperature', (trace) => explainingTemperature(spec, reading, trace)],
        ['check', (trace) => check(spec, reading, trace)],
      ];
      // The density is carried by the specification, for all to see.
      const given = new Set([...inputsOf(spec, reading), ...numbersIn(spec.density_mol_m3)]);
      for (const [title, call] of calls) expect(strangersIn(stepsOf(call), given), title).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('the working of a target: absolute, density, pressure on the line, gauge in today’s ambient', () => {
  const spec = specFor({ plusMinus: barOf(2), applies: 'at the measured temperature' });
  const steps = stepsOf((trace) => target(spec, at, trace));
  expect(steps.map(({ about, relation }) => `${about}: ${relation.gives}`)).toEqual([
    'target, as stated: p_abs',
    'target, as stated: rho',
    'target: p_abs',
    'target: p_g',
  ]);
  expect(steps[0]?.values).toEqual([14_100_000, 101_700]);
  expect(steps[3]?.values[1]).toBe(99_800);
  expect(relativeError(steps[3]?.result ?? Number.NaN, target(spec, at).pascals)).toBe(0);
});

test('the working of a target by a table: between its rows, then in today’s ambient', () => {
  const spec = specByTable({ plusMinus: barOf(2), ...MEASURED });
  const steps = stepsOf((trace) => target(spec, at, trace));
  expect(steps.map(({ about, relation }) => `${about}: ${relation.gives}`)).toEqual(['target: p_g', 'target: p_g']);
  expect(steps[0]?.values).toEqual([14_020_000, 15_330_000, 294.15, 315.15, 310.15]);
  expect(steps[1]?.values).toEqual([steps[0]?.result, 101_700, 99_800]);
  expect(steps[1]?.result).toBe(target(spec, at).pascals);
  const onARow = stepsOf((trace) => target(spec, { ...at, temperature: celsius(42) }, trace));
  expect(onARow.map(({ values }) => values)).toEqual([[15_330_000], [15_330_000, 101_700, 99_800]]);
});

test('the working of a limit at the reference temperature: target there, size, limit there, its line', () => {
  const spec = specByTable({ below: barOf(1.3), above: barOf(2.7), ...REFERENCE });
  const steps = stepsOf((trace) => band(spec, at, { step: 1, unit: 'bar' }, trace));
  // 24 °C is a seventh of the way from 21 to 42 °C.
  const reference = steps.find(({ about }) => about === 'reference point')?.result ?? Number.NaN;
  expect(relativeError(reference, 14_020_000 + 1_310_000 / 7)).toBeLessThan(1e-14);
  for (const [about, by] of [
    ['lower limit', -130_000],
    ['upper limit', 270_000],
  ] as const) {
    const [size, toAbsolute, density] = steps.filter((step) => step.about === `${about}, as stated`);
    expect(size?.result).toBe(reference + by);
    expect(toAbsolute?.values).toEqual([size?.result, 101_700]);
    expect(density?.values).toEqual([297.15, toAbsolute?.result]);
    const [pressure, limit] = steps.filter((step) => step.about === about).slice(-2);
    expect(pressure?.values).toEqual([310.15, density?.result]);
    expect(limit?.values).toEqual([pressure?.result, 99_800]);
  }
});

test('a vent shows no stop pressure beyond the target', () => {
  const spec = specFor({ plusMinus: barOf(2), applies: 'at the measured temperature' });
  const steps = stepsOf((trace) => charge(spec, readingWith({ ...at, pressure: gauge(171, 'bar') }), trace));
  expect(steps.filter(({ relation }) => relation.gives === 'p_stop')).toEqual([]);
  expect(steps.find(({ relation }) => relation.gives === 'n')?.about).toBe('vent');
});
