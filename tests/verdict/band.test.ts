import fc from 'fast-check';
import {
  band,
  gauge,
  judge,
  standardAtmosphere,
  type Band,
  type Division,
  type PressureUnit,
  type Step,
  type Tolerance,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  anyConditions,
  anyGaugeStep,
  anySpec,
  bar,
  barOf,
  celsius,
  hPa,
  readingWith,
  specOf,
  specWith,
} from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { alongLine } from '../support/line.js';
import { problemOf } from '../support/problem.js';

const STEP: Division<PressureUnit> = { step: 1, unit: 'bar' };

/** Marks of a gauge about a pressure, by plain arithmetic: the texts of those from `from` to `to` steps beside it. */
function marksAbout(pascals: number, { step, unit }: Division<PressureUnit>, from: number, to: number): string[] {
  const nearest = Math.round(pascals / gauge(step, unit).pascals);
  const places = String(step).split('.')[1]?.length ?? 0;
  return Array.from({ length: to - from + 1 }, (_, i) => ((nearest + from + i) * step).toFixed(places));
}

/** Whether the printed limits allow a printed reading: all three are texts of the same unit and places. */
function allowedByMarks(text: string, onGauge: Band['onGauge']): boolean {
  if (typeof onGauge === 'string') return false;
  return Number(text) >= Number(onGauge.lower) && Number(text) <= Number(onGauge.upper);
}

describe('the limits, by arithmetic of their own on the term-by-term equation', () => {
  const point = { T: 293.15, ambient: 102_000 };
  const today = 99_000;
  const line = (p_bar: number, T: number): number => alongLine({ ...point, p_g: p_bar * 1e5 }, T, today) / 1e5;

  const FORMS: readonly [string, Tolerance, below: (p: number) => number, above: (p: number) => number][] = [
    ['± 2 bar', { plusMinus: barOf(2) }, () => 2, () => 2],
    ['−1 bar, +3 bar', { below: barOf(1), above: barOf(3) }, () => 1, () => 3],
    ['± 2 % of gauge', { plusMinusPercentOfGauge: 2 }, (p) => 0.02 * p, (p) => 0.02 * p],
  ];
  const TEMPERATURES = [-10, 0, 20, 40, 60];

  describe.each(FORMS)('%s', (_, tolerance, below, above) => {
    test.each(TEMPERATURES)('at the measured temperature, %d °C: about the target there', (t) => {
      const spec = specWith({
        ambient: hPa(1020),
        tolerance: { ...tolerance, applies: 'at the measured temperature' },
      });
      const found = band(spec, { temperature: celsius(t), ambient: hPa(990) }, STEP);
      const wanted = line(140, t + 273.15);
      expect(found.lower.pascals / 1e5).toBeCloseTo(wanted - below(wanted), 9);
      expect(found.upper.pascals / 1e5).toBeCloseTo(wanted + above(wanted), 9);
    });

    test.each(TEMPERATURES)('at the reference temperature, read at %d °C: along lines of their own', (t) => {
      const spec = specWith({
        ambient: hPa(1020),
        tolerance: { ...tolerance, applies: 'at the reference temperature' },
      });
      const found = band(spec, { temperature: celsius(t), ambient: hPa(990) }, STEP);
      expect(found.lower.pascals / 1e5).toBeCloseTo(line(140 - below(140), t + 273.15), 9);
      expect(found.upper.pascals / 1e5).toBeCloseTo(line(140 + above(140), t + 273.15), 9);
    });
  });

  test.each(FORMS)(
    '%s: on the plate’s own conditions the limits are the stated ones, to the last bit',
    (_, tolerance, below, above) => {
      for (const applies of ['at the measured temperature', 'at the reference temperature'] as const) {
        const spec = specWith({ ambient: hPa(1020), tolerance: { ...tolerance, applies } });
        const found = band(spec, { temperature: celsius(20), ambient: hPa(1020) }, STEP);
        expect([found.lower, found.upper]).toStrictEqual([bar(140 - below(140)), bar(140 + above(140))]);
      }
    },
  );

  test('a band at the reference temperature is wider in a hot vessel, narrower in a cold one', () => {
    const width = (t: number, applies: 'at the measured temperature' | 'at the reference temperature'): number => {
      const spec = specWith({ tolerance: { plusMinus: barOf(2), applies } });
      const { lower, upper } = band(spec, { temperature: celsius(t), ambient: standardAtmosphere }, STEP);
      return (upper.pascals - lower.pascals) / 1e5;
    };
    expect(width(60, 'at the reference temperature')).toBeGreaterThan(4.5);
    expect(width(0, 'at the reference temperature')).toBeLessThan(3.8);
    for (const t of [0, 60]) expect(width(t, 'at the measured temperature')).toBeCloseTo(4, 9);
  });
});

describe('the marks of the gauge', () => {
  const at40 = { temperature: celsius(40), ambient: standardAtmosphere };

  // Exact limits at 40 °C, from the target of 152.612 in tests/reference/README.md: 150.612 and 154.612 bar.
  test.each<[Division<PressureUnit>, string, string]>([
    [{ step: 1, unit: 'bar' }, '151', '154'],
    [{ step: 0.5, unit: 'bar' }, '151.0', '154.5'],
    [{ step: 0.1, unit: 'bar' }, '150.7', '154.6'],
    [{ step: 2, unit: 'bar' }, '152', '154'],
    [{ step: 0.1, unit: 'MPa' }, '15.1', '15.4'],
    [{ step: 20, unit: 'psi' }, '2200', '2240'], // 2184.4 to 2242.5 psi
    [{ step: 1, unit: 'kgf/cm2' }, '154', '157'], // 153.58 to 157.66 kgf/cm2
  ])('%o lie inwards of the limits: %s to %s', (step, lower, upper) => {
    expect(band(specWith(), at40, step).onGauge).toEqual({ lower, upper, unit: step.unit });
  });

  test('there is none where a whole step of the gauge spans the band', () => {
    const narrow = specWith({ tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' } });
    expect(band(narrow, at40, STEP).onGauge).toBe('no mark of the gauge lies in the band');
    expect(band(narrow, at40, { step: 0.1, unit: 'bar' }).onGauge).toEqual({
      lower: '152.4',
      upper: '152.9',
      unit: 'bar',
    });
  });

  test('there is one where the band holds just one', () => {
    const one = specWith({ tolerance: { plusMinus: barOf(0.5), applies: 'at the measured temperature' } });
    expect(band(one, at40, STEP).onGauge).toEqual({ lower: '153', upper: '153', unit: 'bar' });
  });

  test('decide about a reading on a mark exactly as the limits do, in every unit', () => {
    let onALimit = 0;
    fc.assert(
      fc.property(anySpec, anyConditions, anyGaugeStep, fc.boolean(), (spec, conditions, step, asOnThePlate) => {
        // On the plate's own conditions the target is a round number, and limits fall on marks or an ulp beside them.
        const at = asOnThePlate ? { temperature: spec.precharge.temperature, ambient: spec.ambient } : conditions;
        const { lower, upper, onGauge } = band(spec, at, step);
        for (const limit of [lower, upper]) {
          for (const text of marksAbout(limit.pascals, step, -3, 3)) {
            const { pascals } = gauge(Number(text), step.unit);
            const exactly = pascals >= lower.pascals && pascals <= upper.pascals;
            expect(allowedByMarks(text, onGauge), `${text} ${step.unit}`).toBe(exactly);
            if (Math.abs(pascals - limit.pascals) < 1e-7) onALimit += 1;
          }
        }
      }),
      { numRuns: 1000 },
    );
    expect(onALimit).toBeGreaterThan(100);
  });

  test('never allow what the verdict does not, nor the reverse', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, anyGaugeStep, fc.integer({ min: -4, max: 4 }), (spec, at, gaugeStep, n) => {
        const { lower, onGauge } = band(spec, at, gaugeStep);
        const [text = ''] = marksAbout(lower.pascals, gaugeStep, n, n);
        const pressure = gauge(Number(text), gaugeStep.unit);
        // One step above zero or less is an empty gas side, whatever the band.
        fc.pre(pressure.pascals > gauge(gaugeStep.step, gaugeStep.unit).pascals);
        const verdict = judge(spec, readingWith({ ...at, gaugeStep, pressure }));
        expect(verdict.outcome === 'within').toBe(allowedByMarks(text, onGauge));
        expect(verdict.band.onGauge).toEqual(onGauge);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the limits themselves', () => {
  test('are inside, and one bit beyond them is outside', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const gaugeStep: Division<PressureUnit> = { step: 0.01, unit: 'bar' };
        const { lower, upper } = band(spec, at, gaugeStep);
        const outcome = (pascals: number): string =>
          judge(spec, readingWith({ ...at, gaugeStep, pressure: gauge(pascals, 'Pa') })).outcome;
        expect(outcome(lower.pascals)).toBe('within');
        expect(outcome(neighbour(lower.pascals, -1))).toBe('undercharged');
        expect(outcome(upper.pascals)).toBe('within');
        expect(outcome(neighbour(upper.pascals, 1))).toBe('overcharged');
      }),
      { numRuns: 300 },
    );
  });
});

describe('a band is refused', () => {
  const at = { temperature: celsius(40), ambient: standardAtmosphere };
  test.each<[string, unknown, unknown, string, string]>([
    ['a bare temperature', { ...at, temperature: 40 }, STEP, 'temperature', 'wrong kind'],
    ['a gauge pressure as ambient', { ...at, ambient: bar(1) }, STEP, 'ambient', 'gauge for absolute'],
    ['an ambient in the wrong unit', { ...at, ambient: hPa(1.013) }, STEP, 'ambient', 'not an ambient pressure'],
    ['a step of zero', at, { step: 0, unit: 'bar' }, 'step', 'not a step'],
    ['a step in an unknown unit', at, { step: 1, unit: 'barg' }, 'unit', 'unknown unit'],
  ])('for %s', (_, conditions, step, path, code) => {
    expect(problemOf(() => band(specWith(), conditions as never, step as never))).toMatchObject({ path, code });
  });

  test('for a limit beyond the model, though the target lies inside', () => {
    const spec = specOf(1000, 20, {
      allowable: bar(3000),
      tolerance: { plusMinus: barOf(300), applies: 'at the reference temperature' },
    });
    const hot = { temperature: celsius(150), ambient: standardAtmosphere };
    expect(problemOf(() => band(spec, hot, STEP))).toMatchObject({ path: 'temperature', code: 'outside the model' });
  });
});

test('the working of a percentage says that it is the tolerance', () => {
  const steps: Step[] = [];
  const spec = specWith({ tolerance: { plusMinusPercentOfGauge: 2, applies: 'at the measured temperature' } });
  judge(spec, readingWith(), (step) => steps.push(step));
  const percent = steps.filter(({ relation }) => relation.formula.startsWith('percent'));
  expect(percent.map(({ about }) => about)).toEqual(['tolerance']);
});
