// Limits that the manual states itself, tolerances about a table, and the band after charging.
import fc from 'fast-check';
import {
  afterCharging,
  band,
  gauge,
  judge,
  specification,
  standardAtmosphere,
  target,
  temperature,
  type Allowed,
  type Division,
  type PressureUnit,
  type SpecificationGiven,
  type Stated,
  type Tolerance,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  anyGaugeStep,
  bar,
  barOf,
  celsius,
  GIVEN,
  hPa,
  pointOf,
  readingWith,
  reads,
  specBy,
  specWith,
  tableOf,
} from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { alongLine } from '../support/line.js';
import { problemOf } from '../support/problem.js';
import { refusalOf } from '../support/round.js';
import { anySpecByTable, readOff } from '../support/table.js';

const STEP: Division<PressureUnit> = { step: 1, unit: 'bar' };
const MEASURED = { applies: 'at the measured temperature' } as const;
const REFERENCE = { applies: 'at the reference temperature' } as const;
const TODAY = hPa(990);

const TARGET = tableOf([
  [128, 0],
  [140, 20],
  [152, 40],
]);
const LOW = tableOf([
  [125, 0],
  [137, 20],
  [148, 40],
]);
const HIGH = tableOf([
  [131, 0],
  [142, 20],
  [157, 40],
]);

/** Lower and upper limit in bar under a barometer of 990 hPa. */
function limitsOf(given: Partial<SpecificationGiven>, t_C: number): [lower: number, upper: number] {
  const spec = specification({ ...GIVEN, ambient: hPa(1010), allowable: bar(300), ...given });
  const { lower, upper } = band(spec, { temperature: celsius(t_C), ambient: TODAY }, STEP);
  return [lower.pascals / 1e5, upper.pascals / 1e5];
}

/** Gauge pressure in bar on the line through a point stated at 1010 hPa, today. */
const line = (p_bar: number, t_stated: number, t_C: number): number =>
  alongLine({ p_g: p_bar * 1e5, T: t_stated + 273.15, ambient: 101_000 }, t_C + 273.15, 99_000) / 1e5;

/** What a table states in bar at a temperature, today. */
const read = (table: typeof TARGET, t_C: number): number => readOff(table, t_C + 273.15) / 1e5 + 0.02;

describe('limits stated by the manual', () => {
  // Points and tables mixed, with the value that each states at a temperature, by arithmetic of its own.
  const lowPoint = pointOf(137.5, 25);
  const highPoint = pointOf(143, 15);
  const minimums: [string, Stated, (t: number) => number][] = [
    ['a point', lowPoint, (t) => line(137.5, 25, t)],
    ['a table', LOW, (t) => read(LOW, t)],
  ];
  const maximums: [string, Stated, (t: number) => number][] = [
    ['a point', highPoint, (t) => line(143, 15, t)],
    ['a table', HIGH, (t) => read(HIGH, t)],
  ];
  const rows = [pointOf(140, 20), TARGET].flatMap((precharge) =>
    minimums.flatMap(([lowest, minimum, lower]) =>
      maximums.map(([highest, maximum, upper]) => ({
        title: `${'rows' in precharge ? 'a table' : 'a point'}, minimum by ${lowest}, maximum by ${highest}`,
        given: { precharge, tolerance: { minimum, maximum } },
        lower,
        upper,
      })),
    ),
  );

  test.each(rows)('are the band: target by $title', ({ given, lower, upper }) => {
    for (const t of [0, 7, 20, 33, 40]) {
      const found = limitsOf(given, t);
      expect(found[0]).toBeCloseTo(lower(t), 9);
      expect(found[1]).toBeCloseTo(upper(t), 9);
    }
  });

  test('are the printed ones at their rows, to the last bit', () => {
    const spec = specBy(TARGET, { tolerance: { minimum: LOW, maximum: HIGH } });
    for (const [i, { temperature: T }] of TARGET.rows.entries()) {
      const found = band(spec, { temperature: T, ambient: spec.ambient }, STEP);
      expect([found.lower, found.upper]).toStrictEqual([LOW.rows[i]?.pressure, HIGH.rows[i]?.pressure]);
    }
  });

  test('decide, and a reading on one of them is inside', () => {
    const spec = specBy(TARGET, { tolerance: { minimum: LOW, maximum: HIGH } });
    const outcome = (pascals: number): string =>
      judge(spec, reads(0, { pressure: gauge(pascals, 'Pa'), gaugeStep: { step: 0.1, unit: 'bar' } })).outcome;
    expect(
      [14_800_000, neighbour(14_800_000, -1), 15_700_000, neighbour(15_700_000, 1)].map((pascals) => outcome(pascals)),
    ).toEqual(['within', 'undercharged', 'within', 'overcharged']);
  });

  const faults = (tolerance: unknown, more: Record<string, unknown> = {}): string[] =>
    refusalOf(() => specification({ ...GIVEN, tolerance, ...more } as SpecificationGiven)).map(
      ({ path, code }) => `${path}: ${code}`,
    );
  const low = pointOf(138, 20);
  const high = pointOf(142, 20);

  test.each<[string, unknown, string[]]>([
    ['crossed', { minimum: high, maximum: low }, ['tolerance: limits crossed']],
    ['the same', { minimum: low, maximum: low }, ['tolerance: band without width']],
    ['both above the target', { minimum: pointOf(140.01, 20), maximum: high }, ['tolerance: limits crossed']],
    ['both below the target', { minimum: low, maximum: pointOf(139.99, 20) }, ['tolerance: limits crossed']],
    [
      'crossed where one is stated elsewhere',
      { minimum: pointOf(140.1, 0), maximum: high },
      ['tolerance: limits crossed'],
    ],
    ['a minimum alone', { minimum: low }, ['tolerance.maximum: wrong kind']],
    ['a maximum alone', { maximum: high }, ['tolerance.minimum: wrong kind']],
    [
      'bare numbers',
      { minimum: 138, maximum: 142 },
      ['tolerance.minimum: wrong kind', 'tolerance.maximum: wrong kind'],
    ],
    [
      'a pressure alone',
      { minimum: bar(138), maximum: high },
      ['tolerance.minimum.pressure: wrong kind', 'tolerance.minimum.temperature: wrong kind'],
    ],
    ['with a size beside them', { minimum: low, maximum: high, plusMinus: barOf(2) }, ['tolerance: not a tolerance']],
    ['with where they apply', { minimum: low, maximum: high, ...MEASURED }, ['tolerance: not a tolerance']],
    [
      'with a size and a faulty minimum',
      { minimum: null, maximum: high, plusMinus: barOf(2) },
      ['tolerance.minimum: wrong kind', 'tolerance: not a tolerance'],
    ],
    ['a minimum of zero', { minimum: pointOf(0, 20), maximum: high }, ['tolerance: band reaches zero']],
    [
      'a minimum of liquid',
      { minimum: { pressure: bar(138), temperature: temperature(100, 'K') }, maximum: high },
      ['tolerance.minimum: liquid'],
    ],
    [
      'a maximum beyond the model',
      { minimum: low, maximum: pointOf(2000, 20) },
      ['tolerance.maximum: outside the model'],
    ],
  ])('%s: refused', (_, tolerance, problems) => {
    expect(faults(tolerance)).toEqual(problems);
    const after = { toleranceAfterCharging: tolerance };
    expect(faults(GIVEN.tolerance, after)).toEqual(
      problems.map((x) => x.replace('tolerance', 'toleranceAfterCharging')),
    );
  });

  test('that do not state the reference temperature are refused where they stand', () => {
    const short = { ...LOW, rows: LOW.rows.slice(0, 2) };
    expect(faults({ minimum: short, maximum: HIGH }, { precharge: pointOf(147, 30) })).toEqual([
      'tolerance.minimum: outside the table',
    ]);
    const follows = { ...short, outside: 'follow constant density' };
    expect(
      specification({
        ...GIVEN,
        precharge: pointOf(147, 30),
        tolerance: { minimum: follows, maximum: HIGH },
      } as SpecificationGiven).kind,
    ).toBe('specification');
  });

  test('may hold the target on one of them', () => {
    for (const tolerance of [
      { minimum: pointOf(140, 20), maximum: high },
      { minimum: low, maximum: pointOf(140, 20) },
    ]) {
      const spec = specWith({ tolerance });
      expect(spec.tolerance).toEqual(tolerance);
      expect(judge(spec, reads(140, { temperature: celsius(20) })).outcome).toBe('within');
    }
  });

  test('that cross elsewhere are a fault where they do', () => {
    const minimum = tableOf([
      [125, 0],
      [138, 20],
      [156, 40],
    ]);
    const maximum = tableOf([
      [130, 0],
      [142, 20],
      [155, 40],
    ]);
    // A target between them as long as there is room.
    const between = tableOf([
      [128, 0],
      [140, 20],
      [155.5, 40],
    ]);
    const spec = specBy(between, { tolerance: { minimum, maximum } });
    // 138 + 0.9 (t − 20) meets 142 + 0.65 (t − 20) at 36 °C.
    expect(judge(spec, reads(150, { temperature: celsius(35.9) })).band.lower.pascals).toBeGreaterThan(15_000_000);
    const problem = problemOf(() => judge(spec, reads(150, { temperature: celsius(38) })));
    expect(problem).toMatchObject({
      path: 'temperature',
      code: 'limits crossed',
      found: '311.15 K, where the limits are 154.2 bar and 153.7 bar gauge',
    });
    const meeting = specBy(between, {
      tolerance: { minimum: { ...maximum, rows: [pointOf(125, 0), pointOf(138, 20), pointOf(155, 40)] }, maximum },
    });
    expect(problemOf(() => judge(meeting, reads(150))).code).toBe('limits crossed');
    // Nor is there a band where both meet on the target itself.
    const touching = specBy({ ...between, rows: [pointOf(128, 0), pointOf(140, 20), pointOf(155, 40)] }, { tolerance: meeting.tolerance }); // prettier-ignore
    expect(problemOf(() => judge(touching, reads(155))).code).toBe('limits crossed');
  });

  test('that leave the target out elsewhere give no charge away from the band', () => {
    // At 40 °C the target of 152 bar lies below the minimum of 153.
    const minimum = tableOf([
      [125, 0],
      [138, 20],
      [153, 40],
    ]);
    const spec = specBy(TARGET, { tolerance: { minimum, maximum: HIGH } });
    expect(problemOf(() => judge(spec, reads(152.5)))).toMatchObject({ path: 'temperature', code: 'limits crossed' });
    // And here above the maximum of 151.
    const maximum = tableOf([
      [129, 0],
      [142, 20],
      [151, 40],
    ]);
    const below = specBy(TARGET, { tolerance: { minimum: LOW, maximum } });
    expect(problemOf(() => judge(below, reads(150.5)))).toMatchObject({ path: 'temperature', code: 'limits crossed' });
  });

  test('are carried, unchangeable', () => {
    const minimum = { ...LOW, rows: LOW.rows.map((row) => ({ ...row })) };
    const spec = specBy(TARGET, { tolerance: { minimum, maximum: HIGH } });
    Object.assign(minimum.rows[1] ?? {}, pointOf(1, 20));
    expect(spec.tolerance).toStrictEqual({ minimum: LOW, maximum: HIGH });
    expect(Object.isFrozen(spec.tolerance)).toBe(true);
  });
});

describe('a tolerance about a table', () => {
  const FORMS: readonly [string, Tolerance, below: (p: number) => number, above: (p: number) => number][] = [
    ['± 2 bar', { plusMinus: barOf(2) }, () => 2, () => 2],
    ['−1 bar, +3 bar', { below: barOf(1), above: barOf(3) }, () => 1, () => 3],
    ['± 2 % of gauge', { plusMinusPercentOfGauge: 2 }, (p) => 0.02 * p, (p) => 0.02 * p],
  ];

  describe.each(FORMS)('%s', (_, tolerance, below, above) => {
    test.each([0, 13, 20, 40])('at the measured temperature, %d °C: about what the table states there', (t) => {
      const found = limitsOf({ precharge: TARGET, tolerance: { ...tolerance, ...MEASURED } }, t);
      const wanted = read(TARGET, t);
      expect(found[0]).toBeCloseTo(wanted - below(wanted), 9);
      expect(found[1]).toBeCloseTo(wanted + above(wanted), 9);
    });

    // At 25 °C the table states 143 bar, in the ambient of the specification.
    test.each([0, 13, 25, 40])(
      'at the reference temperature between two rows, read at %d °C: along constant density from what the table states there',
      (t) => {
        const precharge = { ...TARGET, referenceTemperature: celsius(25) };
        const found = limitsOf({ precharge, tolerance: { ...tolerance, ...REFERENCE } }, t);
        expect(found[0]).toBeCloseTo(line(143 - below(143), 25, t), 9);
        expect(found[1]).toBeCloseTo(line(143 + above(143), 25, t), 9);
      },
    );
  });

  test('on the table’s own conditions: the stated sizes, to the last bit', () => {
    for (const applies of [MEASURED, REFERENCE]) {
      const spec = specBy(TARGET, { tolerance: { plusMinus: barOf(2), ...applies } });
      const found = band(spec, { temperature: celsius(20), ambient: standardAtmosphere }, STEP);
      expect([found.lower, found.upper]).toStrictEqual([bar(138), bar(142)]);
    }
  });

  test('that leaves the table’s own target outside it elsewhere gives no charge away from the band', () => {
    // Constant density from 140 ± 1 bar at 20 °C is 151.5 to 153.7 bar at 40 °C, where this table says 148.
    const spec = specBy(
      tableOf([
        [140, 20],
        [148, 40],
      ]),
      { tolerance: { plusMinus: barOf(1), ...REFERENCE } },
    );
    expect(problemOf(() => judge(spec, reads(150)))).toMatchObject({ path: 'temperature', code: 'limits crossed' });
  });
});

describe('the band by a table, in whatever form', () => {
  test('its marks decide about a reading on a mark exactly as its limits do', () => {
    fc.assert(
      fc.property(anySpecByTable, anyGaugeStep, fc.integer({ min: -3, max: 3 }), ({ spec, at }, gaugeStep, n) => {
        const { lower, upper, onGauge } = band(spec, at, gaugeStep);
        const size = gauge(gaugeStep.step, gaugeStep.unit).pascals;
        const places = String(gaugeStep.step).split('.')[1]?.length ?? 0;
        for (const limit of [lower, upper]) {
          const text = ((Math.round(limit.pascals / size) + n) * gaugeStep.step).toFixed(places);
          const pressure = gauge(Number(text), gaugeStep.unit);
          const exactly = pressure.pascals >= lower.pascals && pressure.pascals <= upper.pascals;
          const marked =
            typeof onGauge !== 'string' &&
            Number(text) >= Number(onGauge.lower) &&
            Number(text) <= Number(onGauge.upper);
          expect(marked, `${text} ${gaugeStep.unit}`).toBe(exactly);
          fc.pre(pressure.pascals > spec.allowable.pascals / 20);
          expect(judge(spec, readingWith({ ...at, gaugeStep, pressure })).outcome === 'within').toBe(marked);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('its limits are inside, and one bit beyond them is outside', () => {
    fc.assert(
      fc.property(anySpecByTable, ({ spec, at }) => {
        const gaugeStep: Division<PressureUnit> = { step: 0.01, unit: 'bar' };
        const { lower, upper } = band(spec, at, gaugeStep);
        const outcome = (pascals: number): string =>
          judge(spec, readingWith({ ...at, gaugeStep, pressure: gauge(pascals, 'Pa') })).outcome;
        expect(
          [lower.pascals, neighbour(lower.pascals, -1), upper.pascals, neighbour(upper.pascals, 1)].map(outcome),
        ).toEqual(['within', 'undercharged', 'within', 'overcharged']);
        const { pascals } = target(spec, at);
        expect(outcome(pascals)).toBe('within');
      }),
    );
  });
});

describe('the band after charging', () => {
  const at = { temperature: celsius(40), ambient: standardAtmosphere };
  const width = (spec: ReturnType<typeof specWith>): number => {
    const { lower, upper } = band(spec, at, STEP);
    return (upper.pascals - lower.pascals) / 1e5;
  };

  test('is the band in service where the manual has none of its own', () => {
    const spec = specWith();
    expect(afterCharging(spec)).toBe(spec);
    expect('toleranceAfterCharging' in spec).toBe(false);
  });

  test.each<[string, Allowed, number]>([
    ['a size', { plusMinus: barOf(0.5), ...MEASURED }, 1],
    ['sides', { below: barOf(0), above: barOf(1.5), ...MEASURED }, 1.5],
    ['a percentage', { plusMinusPercentOfGauge: 1, ...MEASURED }, 2 * 1.52612],
    [
      'limits',
      {
        minimum: tableOf([
          [139, 20],
          [151, 40],
        ]),
        maximum: tableOf([
          [141, 20],
          [154, 40],
        ]),
      },
      3,
    ],
  ])('is its own where the manual has one: %s', (_, toleranceAfterCharging, wanted) => {
    const spec = specWith({ toleranceAfterCharging });
    const after = afterCharging(spec);
    expect(width(spec as never)).toBeCloseTo(4, 9);
    expect(width(after as never)).toBeCloseTo(wanted, 4);
    // Everything else stays.
    expect(target(after, at)).toStrictEqual(target(spec, at));
    const { tolerance, toleranceAfterCharging: own, ...rest } = spec;
    expect(after).toMatchObject(rest);
    expect([tolerance, after.tolerance]).toEqual([GIVEN.tolerance, own]);
    expect(afterCharging(after)).toBe(after);
  });

  test('holds what the band in service holds', () => {
    const tolerance: Allowed = { below: barOf(3), above: barOf(0.5), ...MEASURED };
    const spec = specWith({ toleranceAfterCharging: { plusMinus: barOf(0.5), ...MEASURED }, tolerance });
    expect(judge(spec, reads(151)).outcome).toBe('within');
    expect(judge(afterCharging(spec), reads(151)).outcome).toBe('undercharged');
  });

  test('stands beside a table and its nominal point', () => {
    const spec = specBy(TARGET, {
      nominal: pointOf(139, 20),
      toleranceAfterCharging: { plusMinus: barOf(1), ...REFERENCE },
    });
    const after = afterCharging(spec);
    expect(after.disagreements).toEqual(spec.disagreements);
    expect(spec.disagreements).toHaveLength(3);
    const { lower, upper } = band(after, { temperature: celsius(20), ambient: standardAtmosphere }, STEP);
    expect([lower, upper]).toStrictEqual([bar(139), bar(141)]);
  });

  test.each<[string, unknown, string[]]>([
    ['a bare size', { plusMinus: 1, ...MEASURED }, ['toleranceAfterCharging.plusMinus: wrong kind']],
    ['null', null, ['toleranceAfterCharging: wrong kind']],
    ['no form', MEASURED, ['toleranceAfterCharging: not a tolerance']],
    ['another word', { plusMinus: barOf(1), applies: 'always' }, ['toleranceAfterCharging.applies: unknown word']],
    ['down to zero', { plusMinus: barOf(140), ...MEASURED }, ['toleranceAfterCharging: band reaches zero']],
    [
      'limits without the target',
      { minimum: pointOf(141, 20), maximum: pointOf(142, 20) },
      ['toleranceAfterCharging: limits crossed'],
    ],
  ])('is checked when the specification is made: %s', (_, toleranceAfterCharging, problems) => {
    const given = { ...GIVEN, toleranceAfterCharging } as SpecificationGiven;
    expect(refusalOf(() => specification(given)).map(({ path, code }) => `${path}: ${code}`)).toEqual(problems);
  });
});
