import fc from 'fast-check';
import {
  band,
  causeText,
  gauge,
  judge,
  standardAtmosphere,
  why,
  type Cause,
  type Division,
  type Outcome,
  type PressureUnit,
  type Reading,
  type Verdict,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { checkedReading } from '../../src/verdict/judge.js';
import { barOf, bar, celsius, pointOf, readingWith, reads, specOf, specWith } from '../support/accumulator.js';
import { counted } from '../support/counted.js';
import { problemOf } from '../support/problem.js';

/** Limits 152.312 and 152.912 bar at 40 °C: no whole bar between them. */
const NARROW = specWith({ tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' } });

/** The verdict that has an outcome. */
type With<O extends Outcome, V extends Verdict = Verdict> = V extends Verdict
  ? O extends V['outcome']
    ? V
    : never
  : never;

function only<O extends Outcome>(verdict: Verdict, ...outcomes: O[]): With<O> {
  if (!(outcomes as Outcome[]).includes(verdict.outcome))
    throw new Error(`${verdict.outcome}: ${verdict.because.join()}`);
  return verdict as With<O>;
}

describe('the order of the outcomes', () => {
  const everythingWrong: Partial<Reading> = {
    gasInside: 'not known',
    oilSide: 'not known',
    minutesAtRest: 'not known',
    pressure: bar(0),
  };
  // Each row puts one more thing right.
  test.each<[Outcome, Partial<Reading>]>([
    ['gas not known', everythingWrong],
    ['not comparable', { ...everythingWrong, gasInside: 'nitrogen' }],
    ['not comparable', { pressure: bar(0), oilSide: 'not known' }],
    ['not comparable', { pressure: bar(0), minutesAtRest: 4 }],
    ['gas side empty', { pressure: bar(0) }],
    ['gauge too coarse', { pressure: bar(152) }],
    ['undercharged', { pressure: bar(152), gaugeStep: { step: 0.1, unit: 'bar' } }],
    ['within', { pressure: bar(152.4), gaugeStep: { step: 0.1, unit: 'bar' } }],
    ['overcharged', { pressure: bar(153), gaugeStep: { step: 0.1, unit: 'bar' } }],
  ])('%s', (outcome, changed) => {
    expect(judge(NARROW, readingWith(changed)).outcome).toBe(outcome);
  });
});

describe('evidence', () => {
  const row = (
    title: string,
    changed: Partial<Reading>,
    because: readonly string[],
    outcome: Outcome = 'not comparable',
  ) => ({ title, changed, because, outcome });

  test.each([
    row('gas not known', { gasInside: 'not known' }, ['gas not known to be nitrogen'], 'gas not known'),
    row('oil side not drained', { oilSide: 'not drained' }, ['oil side not drained']),
    row('oil side not known', { oilSide: 'not known' }, ['oil side not known']),
    row('rest not known', { minutesAtRest: 'not known' }, ['time at rest not known']),
    row('no rest', { minutesAtRest: 0 }, ['not at rest long enough']),
    row('not enough rest', { minutesAtRest: 4.99 }, ['not at rest long enough']),
    row('just enough rest', { minutesAtRest: 5 }, ['below the lower limit'], 'undercharged'),
    row(
      'oil side not drained, and the gauge agrees with the system',
      { oilSide: 'not drained', systemPressure: bar(143) },
      ['oil side not drained', 'reads like system pressure'],
    ),
    row('the gauge agrees within 2.5 %', { oilSide: 'not known', systemPressure: bar(146.66) }, [
      'oil side not known',
      'reads like system pressure',
    ]),
    row('the gauge does not agree', { oilSide: 'not known', systemPressure: bar(146.67) }, ['oil side not known']),
    row(
      'the gauge agrees within one step of it',
      { oilSide: 'not known', systemPressure: bar(148), gaugeStep: { step: 5, unit: 'bar' } },
      ['oil side not known', 'reads like system pressure'],
    ),
    row(
      'the gauge does not agree within one step of it',
      { oilSide: 'not known', systemPressure: bar(148.1), gaugeStep: { step: 5, unit: 'bar' } },
      ['oil side not known'],
    ),
    row(
      'the gauge agrees with a system at zero',
      { pressure: bar(0.5), oilSide: 'not known', systemPressure: bar(1) },
      ['oil side not known'],
    ),
    row(
      'said to be drained, above the band, and the gauge agrees with the system',
      { pressure: bar(200), systemPressure: bar(200) },
      ['reads like system pressure'],
    ),
    row(
      'said to be drained, above the band, and the system is elsewhere',
      { pressure: bar(200), systemPressure: bar(206) },
      ['above the upper limit'],
      'overcharged',
    ),
    row(
      'said to be drained, inside the band, and the gauge agrees with the system',
      { pressure: bar(153), systemPressure: bar(153) },
      ['reads like system pressure'],
    ),
    row('said to be drained, below the band, and the gauge agrees with the system', { systemPressure: bar(143) }, [
      'reads like system pressure',
    ]),
    row(
      'everything, gas first',
      { gasInside: 'not known', oilSide: 'not drained', systemPressure: bar(143), minutesAtRest: 1 },
      ['gas not known to be nitrogen', 'oil side not drained', 'reads like system pressure', 'not at rest long enough'],
      'gas not known',
    ),
  ])('$title', ({ changed, because, outcome }) => {
    const verdict = judge(specWith(), readingWith(changed));
    expect([verdict.outcome, verdict.because]).toEqual([outcome, because]);
  });

  test('that is missing keeps every comparison out of the verdict, but not the target and band', () => {
    const verdict = judge(specWith(), readingWith({ oilSide: 'not known' }));
    expect(Object.keys(verdict).sort()).toEqual(['band', 'because', 'outcome', 'target', 'targetFrom']);
    expect(verdict.target.pascals / 1e5).toBeCloseTo(152.61, 2);
    expect(verdict.band.onGauge).toEqual({ lower: '151', upper: '154', unit: 'bar' });
  });

  test('stated as investigated does not stand in for the rest of it', () => {
    const cleared = { pressure: bar(0), emptyGasSide: 'investigated and cleared' } as const;
    expect(judge(specWith(), readingWith({ ...cleared, minutesAtRest: 0 })).outcome).toBe('not comparable');
    expect(judge(specWith(), readingWith({ ...cleared, gasInside: 'not known' })).outcome).toBe('gas not known');
  });
});

describe('a reading of zero', () => {
  test.each([
    [0, 'gas side empty'],
    [-0.5, 'gas side empty'],
    [1, 'gas side empty'],
    [7.63, 'gas side empty'],
    [7.64, 'undercharged'],
  ])('%d bar on a gauge of 1 bar: %s', (p, outcome) => {
    expect(judge(specWith(), reads(p)).outcome).toBe(outcome);
  });

  // A gauge of class 2.5 (EN 837-1, from memory) with a scale of twice the target may be target / 20 off: 7.63 of 152.61
  // bar. A step that is larger counts, up to target / 10.
  test.each([
    [10, 10, 'gas side empty'],
    [10, 10.01, 'undercharged'],
    [20, 15.26, 'gas side empty'],
    [20, 15.27, 'undercharged'],
    [200, 15.27, 'gauge too coarse'],
  ])('a gauge read to %d bar shows %d bar: %s', (step, p, outcome) => {
    expect(judge(specWith(), reads(p, { gaugeStep: { step, unit: 'bar' } })).outcome).toBe(outcome);
  });

  test('has no causes left once they are said to be cleared', () => {
    const verdict = only(judge(specWith(), reads(0, { emptyGasSide: 'investigated and cleared' })), 'gas side empty');
    expect(verdict.causes).toEqual([]);
    expect(verdict.because).toEqual(['empty, cause cleared']);
  });

  // Common practice, no source: a valve, a gauge, a leak, a torn separator, the cheapest to check first.
  test('lists what may be behind it, the separator last', () => {
    const { causes } = only(judge(specWith(), reads(0)), 'gas side empty');
    expect(causes).toEqual(['valve not open', 'gauge dead or blocked', 'gas valve leaks', 'separator torn']);
    for (const cause of causes) expect(causeText(cause)).toMatch(/valve.*not open|gauge is dead|leak test|separator/);
    expect(causeText('separator torn', { causes: { 'separator torn': 'Blase gerissen' } })).toBe('Blase gerissen');
    expect(problemOf(() => causeText('constructor' as Cause)).code).toBe('unknown word');
  });

  test('says how far it lies off the target and the band', () => {
    const verdict = only(judge(specWith(), reads(0)), 'gas side empty');
    expect(verdict.offTarget.pascals).toBe(-verdict.target.pascals);
    expect(verdict.insideBandBy.pascals).toBe(-verdict.band.lower.pascals);
  });
});

describe('a gauge too coarse', () => {
  // Limits 152.312 and 152.912 bar: within one step of 1 bar are readings from 151.312 to 153.912.
  test.each<[number, Outcome]>([
    [151.31, 'undercharged'],
    [151.32, 'gauge too coarse'],
    [152, 'gauge too coarse'],
    [152.5, 'gauge too coarse'],
    [153, 'gauge too coarse'],
    [153.91, 'gauge too coarse'],
    [153.92, 'overcharged'],
  ])('no mark in the band, a reading of %d bar: %s', (p, outcome) => {
    expect(judge(NARROW, reads(p)).outcome).toBe(outcome);
  });

  test('is not blamed where one mark lies in the band', () => {
    const spec = specWith({ tolerance: { plusMinus: barOf(0.4), applies: 'at the measured temperature' } });
    expect(judge(spec, reads(153)).outcome).toBe('within');
    expect(judge(spec, reads(152)).outcome).toBe('undercharged');
  });

  const STEPS: readonly [number, string][] = [
    [0.3, '0.5 bar'],
    [0.25, '0.5 bar'],
    [0.24, '0.2 bar'],
    [0.1, '0.2 bar'],
    [0.09, '0.1 bar'],
    [0.04, '0.05 bar'],
  ];
  test.each(STEPS)('± %d bar needs a gauge read to %s', (size, wanted) => {
    // A hundredth more than the half width, so that rounding of the limits cannot make the band narrower than the step.
    const spec = specWith({ tolerance: { plusMinus: barOf(size * 1.0001), applies: 'at the measured temperature' } });
    const verdict = only(judge(spec, reads(152.5)), 'gauge too coarse');
    const { stepNeeded } = verdict;
    expect(`${stepNeeded.step} ${stepNeeded.unit}`).toBe(wanted);
    expect(why(spec, reads(152.5), verdict)).toContain(`a gauge read to ${wanted} or finer decides it`);
  });

  test('needs the coarsest step of 1, 2 or 5 that the band has room for, and is decided by it', () => {
    const seen = new Set<number>();
    const coarse = fc.constantFrom<Division<PressureUnit>>(
      { step: 20, unit: 'bar' },
      { step: 200, unit: 'psi' },
      { step: 20, unit: 'kgf/cm2' },
      { step: 2, unit: 'MPa' },
      { step: 2000, unit: 'kPa' },
    );
    const width = fc.integer({ min: 2, max: 9999 }).map((n) => n / 1000);
    fc.assert(
      fc.property(coarse, width, width, fc.integer({ min: 0, max: 60 }), (gaugeStep, below, above, t) => {
        const at = { temperature: celsius(t), ambient: standardAtmosphere };
        const spec = specWith({
          tolerance: { below: barOf(below), above: barOf(above), applies: 'at the measured temperature' },
        });
        const limits = band(spec, at, gaugeStep);
        fc.pre(limits.onGauge === 'no mark of the gauge lies in the band');
        const on = (step: Division<PressureUnit>): Verdict =>
          judge(spec, readingWith({ ...at, gaugeStep: step, pressure: limits.lower }));
        const { stepNeeded } = only(on(gaugeStep), 'gauge too coarse');
        const [digit = '', power = '0'] = stepNeeded.step.toExponential().split('e');
        seen.add(Number(digit));
        expect(['1', '2', '5']).toContain(digit);
        expect(stepNeeded.unit).toBe(gaugeStep.unit);
        const coarser = Number(`${{ 1: 2, 2: 5, 5: 10 }[digit] ?? Number.NaN}e${power}`);
        const room = limits.upper.pascals - limits.lower.pascals;
        expect(gauge(stepNeeded.step, stepNeeded.unit).pascals).toBeLessThanOrEqual(room);
        expect(gauge(coarser, stepNeeded.unit).pascals).toBeGreaterThan(room);
        expect(on(stepNeeded).outcome).toBe('within');
      }),
      { numRuns: 400 },
    );
    expect([...seen].sort()).toEqual([1, 2, 5]);
  });
});

describe('a comparison', () => {
  // Common practice, no source: the table asks for 148 bar at 40 °C, the gauge shows 137.6 bar.
  test('148 bar wanted, 137.6 bar read: undercharged by 10.4 bar', () => {
    const spec = specOf(148, 40);
    const verdict = only(judge(spec, reads(137.6, { gaugeStep: { step: 0.2, unit: 'bar' } })), 'undercharged');
    expect(verdict.offTarget.pascals).toBeCloseTo(-1_040_000, 6);
    expect(why(spec, reads(137.6, { gaugeStep: { step: 0.2, unit: 'bar' } }), verdict)).toMatch(
      /^undercharged by 10\.40 bar: 137\.60 bar gauge read, 148\.00 bar gauge wanted at 40\.0 °C/,
    );
  });

  // The plate's own conditions, where target and limits are 140, 138 and 142 bar.
  test.each<[number, Outcome, off: number, inside: number]>([
    [135, 'undercharged', -5, -3],
    [139, 'within', -1, 1],
    [140, 'within', 0, 2],
    [141.5, 'within', 1.5, 0.5],
    [150, 'overcharged', 10, -8],
  ])('%d bar: %s, %d bar off the target, %d bar inside the band', (p, outcome, off, inside) => {
    const verdict = only(
      judge(specWith(), reads(p, { temperature: celsius(20) })),
      'undercharged',
      'within',
      'overcharged',
    );
    expect(verdict.outcome).toBe(outcome);
    expect(verdict.offTarget.pascals / 1e5).toBeCloseTo(off, 9);
    expect(verdict.insideBandBy.pascals / 1e5).toBeCloseTo(inside, 9);
  });

  test('has a margin of zero on either limit, which is inside', () => {
    const fine: Partial<Reading> = { gaugeStep: { step: 0.01, unit: 'bar' } };
    const { lower, upper } = judge(specWith(), reads(150, fine)).band;
    for (const pressure of [lower, upper]) {
      const verdict = only(judge(specWith(), readingWith({ ...fine, pressure })), 'within');
      expect(verdict.insideBandBy.pascals).toBe(0);
    }
  });

  // Source: tests/reference/README.md: 140 bar at 20 °C is 152.61 bar at 40 °C, so 152.61 read there refers to 140.
  test('is also said at the reference temperature, and as the temperature that would explain it', () => {
    const verdict = only(judge(specWith(), reads(152.61, { gaugeStep: { step: 0.01, unit: 'bar' } })), 'within');
    expect(verdict.referred.pascals / 1e5).toBeCloseTo(140, 2);
    if (verdict.explainingTemperature === 'none in range') throw new Error(verdict.explainingTemperature);
    expect(verdict.explainingTemperature.kelvins).toBeCloseTo(313.15, 1);
  });
});

describe('a reading', () => {
  test('is read once in all its parts: what is checked is what is judged', () => {
    const reads = new Map<string, number>();
    const whole = readingWith({ systemPressure: bar(200), fullScale: bar(250), correctionIncluded: barOf(1) });
    const verdict = judge(specWith(), counted(whole, 'reading', reads) as Reading);
    expect(verdict).toEqual(judge(specWith(), whole));
    expect(reads.size).toBeGreaterThan(10);
    expect([...reads].filter(([, count]) => count !== 1)).toEqual([]);
  });

  test('has every part that was given, and no other', () => {
    const whole = readingWith({
      correctionIncluded: barOf(1),
      fullScale: bar(250),
      systemPressure: bar(200),
      emptyGasSide: 'investigated and cleared',
      possibleSlip: 'read again and ruled out',
    });
    for (const given of [readingWith(), whole]) {
      expect(checkedReading(given)).toEqual(given);
      // What was not given has its place, so that nothing that all objects inherit comes to stand for it.
      const stated = Object.entries(checkedReading(given)).filter(([, part]) => part !== undefined);
      expect(stated.map(([name]) => name).sort()).toEqual(Object.keys(given).sort());
    }
  });

  test.each([[null], [undefined], [150]])('that is none is refused by its name: %s', (none) => {
    const problem = problemOf(() => judge(specWith(), none as never));
    expect(problem).toMatchObject({ code: 'wrong kind', path: 'reading', values: { kind: 'a reading' } });
  });

  test('a step off a band without a mark is still what the gauge cannot tell, and beyond that it can', () => {
    const spec = specOf(151.5, 20, {
      ambient: standardAtmosphere,
      tolerance: { minimum: pointOf(151.2, 20), maximum: pointOf(151.8, 20) },
    });
    const outcome = (p: number): string =>
      judge(spec, reads(p, { temperature: celsius(20), ambient: standardAtmosphere })).outcome;
    expect(['150.2', '152.8'].map((p) => outcome(Number(p)))).toEqual(['gauge too coarse', 'gauge too coarse']);
    expect([outcome(150.19), outcome(152.81)]).toEqual(['undercharged', 'overcharged']);
  });
});
