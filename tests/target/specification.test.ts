import {
  afterCharging,
  amount,
  band,
  charge,
  check,
  explainingTemperature,
  judge,
  nitrogen,
  pressureDifference,
  referred,
  slope,
  specification,
  standardAtmosphere,
  target,
  targetSource,
  temperature,
  toAbsolute,
  volume,
  type Specification,
  type SpecificationGiven,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  bar,
  barOf,
  celsius,
  GIVEN,
  hPa,
  pointOf,
  readingWith,
  specOf,
  specWith,
  tableOf,
} from '../support/accumulator.js';
import { densityBySpan } from '../support/line.js';
import { relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';
import { refusalOf } from '../support/round.js';

const MEASURED = { applies: 'at the measured temperature' } as const;
const REFERENCE = { applies: 'at the reference temperature' } as const;

/** Path and code of every problem with a specification that is sound but for the changes, in their order. */
function refused(changed: Record<string, unknown>): string[] {
  return refusalOf(() => specification({ ...GIVEN, ...changed })).map(({ path, code }) => `${path}: ${code}`);
}

const { settling, precharge } = GIVEN;
const reference = (pressure: unknown, at: unknown = celsius(20)): unknown => ({ pressure, temperature: at });

type Row = readonly [title: string, changed: Record<string, unknown>, problem: string];

const WRONG_KINDS: readonly Row[] = [
  ['no gas', { gas: undefined }, 'gas: wrong kind'],
  ['a gas by its name', { gas: 'nitrogen' }, 'gas: wrong kind'],
  ['a gas without arithmetic', { gas: { ...nitrogen, '~kernel': {} } }, 'gas: wrong kind'],
  ['no reference point', { precharge: undefined }, 'precharge: wrong kind'],
  ['a pressure for a reference point', { precharge: null }, 'precharge: wrong kind'],
  ['a bare reference pressure', { precharge: reference(140) }, 'precharge.pressure: wrong kind'],
  ['an absolute one', { precharge: reference(hPa(140_000)) }, 'precharge.pressure: absolute for gauge'],
  ['a copied one', { precharge: reference({ ...bar(140) }) }, 'precharge.pressure: unchecked copy'],
  ['a bare reference temperature', { precharge: reference(bar(140), 20) }, 'precharge.temperature: wrong kind'],
  ['no ambient', { ambient: undefined }, 'ambient: wrong kind'],
  ['a gauge pressure as ambient', { ambient: bar(1) }, 'ambient: gauge for absolute'],
  ['no tolerance', { tolerance: undefined }, 'tolerance: wrong kind'],
  ['a bare tolerance', { tolerance: { ...MEASURED, plusMinus: 2 } }, 'tolerance.plusMinus: wrong kind'],
  [
    'a tolerance in gauge pressure',
    { tolerance: { ...MEASURED, plusMinus: bar(2) } },
    'tolerance.plusMinus: wrong kind',
  ],
  ['a bare lower side', { tolerance: { ...MEASURED, below: 1, above: barOf(3) } }, 'tolerance.below: wrong kind'],
  ['a bare upper side', { tolerance: { ...MEASURED, below: barOf(1), above: 3 } }, 'tolerance.above: wrong kind'],
  ['a bare volume', { gasVolume: 5 }, 'gasVolume: wrong kind'],
  ['an amount as volume', { gasVolume: amount(5, 'mol') }, 'gasVolume: wrong kind'],
  ['an absolute allowable pressure', { allowable: hPa(210_000) }, 'allowable: absolute for gauge'],
  ['no settling', { settling: undefined }, 'settling: wrong kind'],
  ['a bare allowance', { settling: { ...settling, allowance: 1.5 } }, 'settling.allowance: wrong kind'],
  [
    'an allowance in gauge pressure',
    { settling: { ...settling, allowance: bar(1.5) } },
    'settling.allowance: wrong kind',
  ],
];

const AMBIENTS: readonly Row[] = [
  ['1013 kPa', { ambient: hPa(10_132.5) }, 'ambient: not an ambient pressure'],
  ['1.013 hPa', { ambient: hPa(1.01325) }, 'ambient: not an ambient pressure'],
  ['29.92, a reading in inches of mercury', { ambient: hPa(29.92) }, 'ambient: not an ambient pressure'],
];

const percent = (value: unknown): Record<string, unknown> => ({
  tolerance: { ...MEASURED, plusMinusPercentOfGauge: value },
});
const NO_PERCENTAGE = 'tolerance.plusMinusPercentOfGauge: not a percentage';

const TOLERANCES: readonly Row[] = [
  ['± 0', { tolerance: { ...MEASURED, plusMinus: barOf(0) } }, 'tolerance.plusMinus: band without width'],
  ['± a negative size', { tolerance: { ...MEASURED, plusMinus: barOf(-2) } }, 'tolerance.plusMinus: negative'],
  [
    'nothing to either side',
    { tolerance: { ...MEASURED, below: barOf(0), above: barOf(0) } },
    'tolerance: band without width',
  ],
  [
    'a lower side with its sign',
    { tolerance: { ...MEASURED, below: barOf(-1), above: barOf(3) } },
    'tolerance.below: negative',
  ],
  ['sides swapped', { tolerance: { ...MEASURED, below: barOf(1), above: barOf(-3) } }, 'tolerance.above: negative'],
  ...[0, 100, 101, -2, Number.NaN, Number.POSITIVE_INFINITY, '2', undefined].map((value): Row => [
    `${String(value)} percent`,
    percent(value),
    NO_PERCENTAGE,
  ]),
  ['in no form', { tolerance: MEASURED }, 'tolerance: not a tolerance'],
  ['the lower side alone', { tolerance: { ...MEASURED, below: barOf(1) } }, 'tolerance: not a tolerance'],
  ['the upper side alone', { tolerance: { ...MEASURED, above: barOf(1) } }, 'tolerance: not a tolerance'],
  ...[
    { plusMinus: barOf(2), below: barOf(1) },
    { plusMinus: barOf(2), below: barOf(1), above: barOf(3) },
    { plusMinus: barOf(2), plusMinusPercentOfGauge: 2 },
    { below: barOf(1), above: barOf(3), plusMinusPercentOfGauge: 2 },
  ].map((forms): Row => [
    `in mixed forms: ${Object.keys(forms).join(', ')}`,
    { tolerance: { ...MEASURED, ...forms } },
    'tolerance: not a tolerance',
  ]),
  ['without saying where it applies', { tolerance: { plusMinus: barOf(2) } }, 'tolerance.applies: missing'],
  [
    'applying somewhere else',
    { tolerance: { plusMinus: barOf(2), applies: 'always' } },
    'tolerance.applies: unknown word',
  ],
  ['down to zero', { tolerance: { ...MEASURED, plusMinus: barOf(140) } }, 'tolerance: band reaches zero'],
  ['below zero', { tolerance: { ...REFERENCE, plusMinus: barOf(141) } }, 'tolerance: band reaches zero'],
  [
    'to the lower side down to zero',
    { tolerance: { ...MEASURED, below: barOf(140), above: barOf(0) } },
    'tolerance: band reaches zero',
  ],
];

const REST: readonly Row[] = [
  ...['ball', 'Diaphragm', 'constructor', true, undefined].map((separator): Row => [
    `a separator of ${String(separator)}`,
    { separator },
    'separator: unknown word',
  ]),
  ['no gas volume', { gasVolume: volume(0, 'L') }, 'gasVolume: not positive'],
  ['a gas volume of a ship', { gasVolume: volume(1000.001, 'm3') }, 'gasVolume: outside bounds'],
  [
    'an allowance of no pressure',
    { settling: { ...settling, allowance: barOf(10_000.1) } },
    'settling.allowance: outside bounds',
  ],
  ['a negative allowance', { settling: { ...settling, allowance: barOf(-0.1) } }, 'settling.allowance: negative'],
  ...[0, -5].map((minutes): Row => [
    `${minutes} minutes`,
    { settling: { ...settling, minutes } },
    'settling.minutes: not positive',
  ]),
  ...[Number.NaN, Number.POSITIVE_INFINITY, '5', undefined].map((minutes): Row => [
    `${String(minutes)} as minutes`,
    { settling: { ...settling, minutes } },
    'settling.minutes: not a number',
  ]),
  ['a reference pressure above the allowable', { allowable: bar(139.9) }, 'precharge.pressure: above allowable'],
  [
    'a reference point too cold',
    { precharge: reference(bar(140), temperature(63.9, 'K')) },
    'precharge: outside the model',
  ],
  ['a reference point of liquid', { precharge: reference(bar(140), temperature(110, 'K')) }, 'precharge: liquid'],
  [
    'a reference pressure beyond the model',
    { precharge: reference(bar(2000)), allowable: bar(3000) },
    'precharge: outside the model',
  ],
  ['a reference pressure of zero', { precharge: reference(bar(0)) }, 'tolerance: band reaches zero'],
];

describe.each([
  ['a part of another kind', WRONG_KINDS],
  ['an ambient in the wrong unit', AMBIENTS],
  ['a tolerance', TOLERANCES],
  ['numbers that cannot be', REST],
])('%s is refused', (_, rows) => {
  test.each(rows)('%s', (title, changed, problem) => {
    expect(refused(changed), title).toEqual([problem]);
  });
});

describe('a faulty specification', () => {
  test('is reported whole: one problem for every part', () => {
    const faulty = {
      gas: undefined,
      precharge: reference(140),
      ambient: hPa(1),
      tolerance: { ...MEASURED, plusMinus: barOf(0) },
      toleranceAfterCharging: { ...MEASURED, plusMinus: barOf(-1) },
      nominal: reference(bar(140), 20),
      separator: 'ball',
      gasVolume: volume(0, 'L'),
      allowable: 210,
      settling: { ...settling, minutes: Number.NaN },
    };
    expect(refused(faulty)).toEqual([
      'gas: wrong kind',
      'precharge.pressure: wrong kind',
      'nominal.temperature: wrong kind',
      'ambient: not an ambient pressure',
      'tolerance.plusMinus: band without width',
      'toleranceAfterCharging.plusMinus: negative',
      'separator: unknown word',
      'gasVolume: not positive',
      'allowable: wrong kind',
      'settling.minutes: not a number',
    ]);
  });

  test('is reported whole within its parts, too', () => {
    const faulty = {
      tolerance: { plusMinus: barOf(-2), applies: 'always' },
      settling: { allowance: barOf(-1), minutes: 0 },
    };
    expect(refused(faulty)).toEqual([
      'tolerance.plusMinus: negative',
      'tolerance.applies: unknown word',
      'settling.allowance: negative',
      'settling.minutes: not positive',
    ]);
  });

  test('has its sound parts compared with each other, whatever is wrong with the rest', () => {
    const faulty = {
      precharge: reference(bar(140), temperature(1001, 'K')),
      allowable: bar(130),
      tolerance: { ...MEASURED, plusMinus: barOf(140) },
      gasVolume: volume(0, 'L'),
    };
    expect(refused(faulty).sort()).toEqual([
      'gasVolume: not positive',
      'precharge.pressure: above allowable',
      'precharge: outside the model',
      'tolerance: band reaches zero',
    ]);
    expect(refused({ precharge: reference(bar(-2)) }).sort()).toEqual([
      'precharge: outside the model',
      'tolerance: band reaches zero',
    ]);
  });

  test.each([undefined, null, 140, 'text'])('%s is none', (given) => {
    expect(refusalOf(() => specification(given as unknown as SpecificationGiven))).toMatchObject([
      { path: '', code: 'wrong kind' },
    ]);
  });

  test('says how large the found values are and what the bounds are', () => {
    const [above] = refusalOf(() => specWith({ allowable: bar(139.9) }));
    expect(above).toMatchObject({
      found: '140 bar gauge',
      wanted: 'at most the allowable pressure, 139.9 bar gauge',
    });
    const [zero] = refusalOf(() => specWith({ tolerance: { ...MEASURED, plusMinus: barOf(141) } }));
    expect(zero?.found).toBe('a lower limit of -1 bar gauge at the reference temperature');
    const [outside] = refusalOf(() => specOf(2000, 20, { allowable: bar(3000) }));
    expect(outside?.found).toBe('200101325 Pa absolute');
    expect(outside?.wanted).toContain('0 Pa to 200000000 Pa absolute');
  });

  test.each<[string, Record<string, unknown>, string]>([
    ['no gas volume', { gasVolume: volume(0, 'L') }, '0 m3'],
    ['no minutes', { settling: { ...settling, minutes: -5 } }, '-5 min'],
    ['a negative allowance', { settling: { ...settling, allowance: barOf(-0.1) } }, '-0.1 bar difference'],
    [
      'a lower side with its sign',
      { tolerance: { ...MEASURED, below: barOf(-1), above: barOf(3) } },
      '-1 bar difference',
    ],
    ['no tolerance', { tolerance: MEASURED }, 'no tolerance'],
    [
      'two forms of a tolerance',
      { tolerance: { ...MEASURED, plusMinus: barOf(2), below: barOf(1) } },
      'plusMinus with below',
    ],
    ['a tolerance that applies nowhere', { tolerance: { plusMinus: barOf(2) } }, 'nothing'],
    [
      'limits and more',
      { tolerance: { minimum: pointOf(138, 20), maximum: pointOf(142, 20), a: 1, b: 2 } },
      'limits with a with b',
    ],
    [
      'limits without width',
      { tolerance: { minimum: pointOf(140, 20), maximum: pointOf(140, 20) } },
      'limits of 140 bar and 140 bar gauge at the reference temperature',
    ],
    [
      'limits above the target',
      { tolerance: { minimum: pointOf(141, 20), maximum: pointOf(142, 20) } },
      'limits of 141 bar and 142 bar gauge about a target of 140 bar gauge at the reference temperature',
    ],
  ])('says what it found: %s', (_, changed, found) => {
    expect(refusalOf(() => specWith(changed)).map((problem) => problem.found)).toEqual([found]);
  });

  test('says that a band reaches zero beside a word that it does not know', () => {
    expect(refused({ tolerance: { plusMinus: barOf(140), applies: 'always' } })).toEqual([
      'tolerance.applies: unknown word',
      'tolerance: band reaches zero',
    ]);
  });

  test('says of a nominal point that the model has no answer there, beside what else is wrong', () => {
    const table = tableOf([
      [127.3, 0],
      [140, 20],
    ]);
    const nominal = { pressure: bar(140), temperature: temperature(1001, 'K') };
    expect(refused({ precharge: table, nominal, separator: 'ball' })).toEqual([
      'separator: unknown word',
      'nominal: outside the model',
    ]);
  });

  test('has an upper limit beyond the model only where the limits follow their own lines', () => {
    const wide = { plusMinus: barOf(20) };
    const at = (tolerance: SpecificationGiven['tolerance']): Specification =>
      specOf(1990, 20, { allowable: bar(3000), tolerance });
    expect(refusalOf(() => at({ ...wide, ...REFERENCE }))).toMatchObject([
      { path: 'tolerance', code: 'outside the model' },
    ]);
    expect(at({ ...wide, ...MEASURED }).kind).toBe('specification');
  });
});

describe('what is just accepted', () => {
  test.each<[string, Partial<SpecificationGiven>]>([
    ['a reference pressure that is the allowable pressure', { allowable: bar(140) }],
    ...(['diaphragm', 'bladder', 'piston'] as const).map((separator): [string, Partial<SpecificationGiven>] => [
      `a ${separator}`,
      { separator },
    ]),
    ['no allowance', { settling: { ...settling, allowance: barOf(0) } }],
    ['a fraction of a minute', { settling: { ...settling, minutes: 0.5 } }],
    ['a tolerance to the upper side alone', { tolerance: { ...MEASURED, below: barOf(0), above: barOf(1) } }],
    ['a tolerance to the lower side alone', { tolerance: { ...MEASURED, below: barOf(1), above: barOf(0) } }],
    ['a lower limit of one pascal', { tolerance: { ...MEASURED, plusMinus: pressureDifference(13_999_999, 'Pa') } }],
    ['99.9 percent', { tolerance: { ...MEASURED, plusMinusPercentOfGauge: 99.9 } }],
    ['0.1 percent', { tolerance: { ...MEASURED, plusMinusPercentOfGauge: 0.1 } }],
    ['an ambient of 500 hPa', { ambient: hPa(500) }],
    ['an ambient of 1200 hPa', { ambient: hPa(1200) }],
  ])('%s', (_, changed) => {
    expect(specWith(changed)).toMatchObject(changed);
  });
});

describe('a specification', () => {
  const at = { temperature: celsius(40), ambient: standardAtmosphere };

  test('carries what was given, and the density behind its reference point', () => {
    const spec = specWith();
    expect(spec).toMatchObject(GIVEN);
    expect(relativeError(spec.density_mol_m3, densityBySpan(293.15, 14_101_325))).toBeLessThanOrEqual(1e-13);
    expect(spec.referenceTemperature).toStrictEqual(celsius(20));
    expect(spec.disagreements).toEqual([]);
  });

  // Source of the densities: the term-by-term equation, tests/support/span2000.ts.
  test.each([
    ['± 2 bar', { plusMinus: barOf(2) }, 138, 142],
    ['−1 bar, +3 bar', { below: barOf(1), above: barOf(3) }, 139, 143],
    ['± 2 %', { plusMinusPercentOfGauge: 2 }, 137.2, 142.8],
  ])('carries the densities of the limits of %s at the reference temperature', (_, tolerance, lower, upper) => {
    const spec = specWith({ tolerance: { ...tolerance, ...REFERENCE } });
    // The density from which the pressure of a limit is worked out at another temperature.
    const used = new Map<string, number>();
    band(spec, at, { step: 1, unit: 'bar' }, ({ about, relation, values }) => {
      if (relation.gives === 'p_abs' && relation.from[1] === 'rho') used.set(about, values[1] ?? Number.NaN);
    });
    const found = (about: string): number => used.get(about) ?? Number.NaN;
    const wanted = (p_bar: number): number => densityBySpan(293.15, p_bar * 1e5 + 101_325);
    expect(relativeError(found('lower limit'), wanted(lower))).toBeLessThanOrEqual(1e-13);
    expect(relativeError(found('upper limit'), wanted(upper))).toBeLessThanOrEqual(1e-13);
  });

  test('cannot be changed, nor changes with what it was made from', () => {
    const given = { ...GIVEN, precharge: { ...precharge }, settling: { ...settling } };
    const spec = specification(given);
    given.precharge.pressure = bar(10);
    given.settling.minutes = 0;
    expect(spec.precharge).toStrictEqual(precharge);
    expect(targetSource(spec, celsius(40)).rows).toStrictEqual([precharge]);
    expect(spec.settling.minutes).toBe(5);
    const parts = [spec, spec.precharge, spec.tolerance, spec.settling, spec.disagreements];
    expect(parts.filter((part) => !Object.isFrozen(part))).toEqual([]);
  });

  const read = { ...at, pressure: bar(143) };
  const uses: [string, (spec: Specification) => unknown][] = [
    ['target', (spec) => target(spec, at)],
    ['targetSource', (spec) => targetSource(spec, at.temperature)],
    ['afterCharging', (spec) => afterCharging(spec)],
    ['slope', (spec) => slope(spec, at)],
    ['band', (spec) => band(spec, at, { step: 1, unit: 'bar' })],
    ['referred', (spec) => referred(spec, read)],
    ['explainingTemperature', (spec) => explainingTemperature(spec, read)],
    ['judge', (spec) => judge(spec, readingWith())],
    ['charge', (spec) => charge(spec, readingWith())],
    ['check', (spec) => check(spec, readingWith())],
  ];
  const spec = specWith();
  const copies: [string, unknown][] = [
    ['a spread copy', { ...spec }],
    ['a spread copy with another volume', { ...spec, gasVolume: volume(50, 'L') }],
    ['a copy through JSON', JSON.parse(JSON.stringify(spec))],
    // The gas model holds functions, which structuredClone refuses to copy: without it.
    ['a structured clone', structuredClone({ ...spec, gas: 'nitrogen' })],
    ['a copy with the mark written on it', { ...spec, '~isochore': 'specification' }],
    ['what it was made from', GIVEN],
    ['a quantity', toAbsolute(bar(140), standardAtmosphere)],
    ['nothing', undefined],
  ];
  const uncheckedCopies = 5;

  test.each(uses)('is used by %s, and nothing else is', (_, use) => {
    expect(() => use(spec)).not.toThrow();
    for (const [i, [title, copy]] of copies.entries()) {
      const problems = refusalOf(() => use(copy as Specification));
      const code = i < uncheckedCopies ? 'unchecked specification' : 'wrong kind';
      expect(problems, title).toMatchObject([{ path: 'spec', code }]);
    }
  });

  test('with its gas cannot be cloned at all', () => {
    expect(() => structuredClone(spec)).toThrow(/could not be cloned/);
  });
});

test('what is no tolerance at all is told from one in no form', () => {
  const problem = problemOf(() => specWith({ tolerance: 2 as never }));
  expect(problem).toMatchObject({ code: 'wrong kind', path: 'tolerance', values: { kind: 'a tolerance' } });
});

test('the largest gas volume and the largest allowance are accepted, and the next ones refused with their bounds', () => {
  const most = { gasVolume: volume(1000, 'm3'), settling: { ...settling, allowance: barOf(10_000) } };
  expect(specWith(most)).toMatchObject(most);
  expect(problemOf(() => specWith({ gasVolume: volume(1000.5, 'm3') }))).toMatchObject({
    code: 'outside bounds',
    path: 'gasVolume',
    found: '1000.5 m3',
    wanted: 'at most 1000 m3',
  });
  expect(problemOf(() => specWith({ settling: { ...settling, allowance: barOf(10_000.5) } }))).toMatchObject({
    code: 'outside bounds',
    path: 'settling.allowance',
    found: '10000.5 bar difference',
    wanted: 'at most 10000 bar',
  });
});
