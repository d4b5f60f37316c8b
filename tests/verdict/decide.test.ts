import { erf, evaluate } from 'mathjs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge, specification, type Reading, type Specification, type Step, type Trace } from 'isochore';
import { ACCURACY_CLASSES } from '../../src/reading/gauge.js';
import type { Instruments } from '../../src/reading/instruments.js';
import { decide, type Decided } from '../../src/verdict/decide.js';
import type { Acceptance, Rule } from '../../src/verdict/rule.js';
import { uncertainty } from '../../src/verdict/budget.js';
import { globalRisks } from '../../src/verdict/global-risk.js';
import { bar, barOf, celsius, GIVEN, pointOf, reads, readingWith, specWith, tableOf } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import {
  at20,
  CONTACT,
  DIAL,
  dialWith,
  inBar,
  inK,
  INSTRUMENTS,
  instrumentsWith,
  onlyNormal,
} from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const phi = (z: number): number => 0.5 * (1 + erf(z / Math.SQRT2));

const ruleOf = (acceptance: Acceptance, below = 0.02, above = 0.05): Rule => ({ acceptance, risk: { below, above } });

function decided(spec: Specification, reading: Reading, instruments: Instruments, rule: Rule): Decided {
  const found = decide(spec, reading, instruments, rule);
  if (found.outcome === 'no decision') throw new Error(found.because);
  return found;
}

const outcome = (p: number, acceptance: Acceptance, instruments = onlyNormal(0.5)): string =>
  decided(specWith(), at20(p), instruments, ruleOf(acceptance)).outcome;

describe('probabilities', () => {
  test('of the Zener diode of JCGM 106 (7.3, from memory): one limit, 1.4 standard uncertainties away, 92 %', () => {
    // Between −5.47 V and the limit of −5.40 V lie 0.07 V, at 0.05 V: here 1.4 of 1 bar, the other limit far away.
    const spec = specWith({ tolerance: { below: barOf(50), above: barOf(1), applies: 'at the measured temperature' } });
    const { probability } = decided(spec, at20(139.6), onlyNormal(1), ruleOf('simple acceptance'));
    expect(probability.within.toFixed(2)).toBe('0.92');
    expect(probability.within).toBeCloseTo(phi(1.4), 10);
  });

  test('are those of the normal distribution where all is normal', () => {
    for (const p of [137.2, 138, 139.1, 140, 141.7, 142.5]) {
      const { probability } = decided(specWith(), at20(p), onlyNormal(0.7), ruleOf('simple acceptance'));
      expect(probability.below).toBeCloseTo(phi((138 - p) / 0.7), 10);
      expect(probability.above).toBeCloseTo(phi((p - 142) / 0.7), 10);
      expect(probability.within).toBeCloseTo(phi((142 - p) / 0.7) - phi((138 - p) / 0.7), 10);
    }
  });

  test('are those of a rectangle where all is one: class 1 of 250 bar, ± 2.5 bar', () => {
    const instruments = { ...onlyNormal(1), gauge: { ...DIAL, temperature: celsius(20) } };
    const { probability } = decided(specWith(), at20(139), instruments, ruleOf('simple acceptance'));
    // From 136.5 to 141.5: 1.5 bar of 5 below 138, nothing above 142. The rest of the sum is 1e-6 bar wide.
    expect(probability.below).toBeCloseTo(0.3, 5);
    expect(probability.above).toBeLessThan(1e-6);
  });

  test('within is none where limits that cross within the errors leave less than nothing', () => {
    // 0.55 and 0.85 bar/K: at 40 °C the limits are 8 bar apart, and 27 K colder they cross, where the gas may well be.
    const minimum = tableOf([
      [139, 20],
      [150, 40],
    ]);
    const maximum = tableOf([
      [141, 20],
      [158, 40],
    ]);
    const spec = specification({ ...GIVEN, tolerance: { minimum, maximum } });
    const instruments = instrumentsWith({ thermometer: { ...CONTACT, shellToGas: inK(30) } });
    const { below, within, above } = decided(spec, reads(130), instruments, ruleOf('simple acceptance')).probability;
    expect(below + above).toBeGreaterThan(1 + 1e-4);
    expect(within).toBe(0);
  });

  test('at a limit are one half', () => {
    expect(decided(specWith(), at20(138), onlyNormal(0.2), ruleOf('simple acceptance')).probability.below).toBeCloseTo(
      0.5,
      10,
    );
  });
});

describe('rules', () => {
  // A standard uncertainty of 0.5 bar: guard bands of 2.054 × 0.5 = 1.027 bar below, 1.645 × 0.5 = 0.822 bar above.
  test.each<[Acceptance, readonly (readonly [number, string])[]]>([
    [
      'simple acceptance',
      [
        [137.99, 'undercharged'],
        [138.01, 'within'],
        [141.99, 'within'],
        [142.01, 'overcharged'],
      ],
    ],
    [
      'guarded acceptance',
      [
        [137.99, 'undercharged'],
        [138.01, 'inconclusive'],
        [139.02, 'inconclusive'],
        [139.04, 'within'],
        [141.17, 'within'],
        [141.18, 'inconclusive'],
        [142.01, 'overcharged'],
      ],
    ],
    [
      'guarded rejection',
      [
        [136.96, 'undercharged'],
        [136.98, 'inconclusive'],
        [138.01, 'within'],
        [141.99, 'within'],
        [142.82, 'inconclusive'],
        [142.83, 'overcharged'],
      ],
    ],
    [
      'guarded both ways',
      [
        [136.96, 'undercharged'],
        [136.98, 'inconclusive'],
        [139.02, 'inconclusive'],
        [139.04, 'within'],
        [141.18, 'inconclusive'],
        [142.82, 'inconclusive'],
        [142.83, 'overcharged'],
      ],
    ],
  ])('%s', (acceptance, cases) => {
    for (const [p, wanted] of cases) expect([p, outcome(p, acceptance)]).toEqual([p, wanted]);
  });

  test('a reading on a limit is inside, as it is for the verdict', () => {
    for (const tolerance of [
      { plusMinus: barOf(2), applies: 'at the measured temperature' },
      { plusMinusPercentOfGauge: 3, applies: 'at the measured temperature' },
      { plusMinusPercentOfGauge: 3, applies: 'at the reference temperature' },
    ] as const) {
      const spec = specWith({ tolerance });
      for (const t of [20, 40]) {
        const at = readingWith({ temperature: celsius(t) });
        const { band } = judge(spec, at);
        for (const pressure of [band.lower, band.upper]) {
          const found = decided(spec, { ...at, pressure }, INSTRUMENTS, ruleOf('simple acceptance'));
          expect([found.outcome, found.inBand]).toEqual(['within', true]);
        }
      }
    }
  });

  test('simple acceptance decides as the verdict does', () => {
    fc.assert(
      fc.property(evenly(120, 180), evenly(0, 60), (p, t) => {
        const reading = readingWith({
          pressure: bar(p),
          temperature: celsius(t),
          gaugeStep: { step: 0.1, unit: 'bar' },
        });
        expect(decided(specWith(), reading, INSTRUMENTS, ruleOf('simple acceptance')).outcome).toBe(
          judge(specWith(), reading).outcome,
        );
      }),
      { numRuns: 100 },
    );
  });

  test('the risks of the two limits are apart', () => {
    const at = (below: number, above: number, p: number) =>
      decided(specWith(), at20(p), onlyNormal(0.5), ruleOf('guarded acceptance', below, above)).outcome;
    // 0.6 bar inside: 1.2 standard uncertainties, a risk of 0.115.
    expect([at(0.12, 0.01, 138.6), at(0.01, 0.12, 138.6)]).toEqual(['within', 'inconclusive']);
    expect([at(0.12, 0.01, 141.4), at(0.01, 0.12, 141.4)]).toEqual(['inconclusive', 'within']);
  });

  test('with a band narrower than its guards accepts nothing', () => {
    for (let p = 138; p <= 142; p += 0.25)
      expect(outcome(p, 'guarded acceptance', onlyNormal(1.5))).toBe('inconclusive');
  });

  test('a certificate moves the reading before it is judged', () => {
    const certificate = { correction: barOf(3), expandedUncertainty: barOf(0.2), coverageFactor: 2, due: '2027-01-01' };
    const low = dialWith({ accuracy: { certificate }, temperature: celsius(20) });
    const found = decided(specWith(), reads(150), low, ruleOf('simple acceptance'));
    expect([judge(specWith(), reads(150)).outcome, found.outcome]).toEqual(['undercharged', 'within']);
  });

  test('a corrected vessel moves the limits with the target', () => {
    // At 60 °C the target of 140 bar at 20 °C falls by about a quarter of a bar; the band with it.
    const vessel = { linearExpansion_per_K: 12e-6, limit_per_K: 0, treated: 'corrected' } as const;
    const spec = specWith();
    const hot = readingWith({ temperature: celsius(60) });
    const { band } = judge(spec, hot);
    const pressure = bar(band.lower.pascals / 1e5 - 0.2);
    const plain = decided(spec, { ...hot, pressure }, INSTRUMENTS, ruleOf('simple acceptance'));
    const moved = decided(spec, { ...hot, pressure }, instrumentsWith({ vessel }), ruleOf('simple acceptance'));
    expect([plain.outcome, moved.outcome]).toEqual(['undercharged', 'within']);
  });
});

describe('a vessel whose expansion is corrected moves target and limits alike, at 60 °C by a quarter of a bar', () => {
  const vessel = { linearExpansion_per_K: 12e-6, limit_per_K: 0, treated: 'corrected' } as const;
  const hot = readingWith({ temperature: celsius(60), gaugeStep: { step: 1e-6, unit: 'bar' } });
  const { band, target } = judge(specWith(), hot);
  const at = (pascals: number, instruments: Instruments, rule = ruleOf('simple acceptance')) =>
    decided(specWith(), { ...hot, pressure: bar(pascals / 1e5) }, instruments, rule);
  const both = (pascals: number) => [at(pascals, fine), at(pascals, { ...fine, vessel })] as const;
  const fine = onlyNormal(0.01);

  test('the upper limit', () => {
    const [plain, corrected] = both(band.upper.pascals - 0.1e5);
    expect([plain.outcome, corrected.outcome]).toEqual(['within', 'overcharged']);
  });

  test('the target, by which it is low or high', () => {
    const [plain, corrected] = both(target.pascals - 0.12e5);
    // By a risk of nearly one half: the errors of the gas model are larger than what is asked about.
    const sides = [fine, { ...fine, vessel }].map((one) => at(target.pascals - 0.12e5, one, ruleOf('simple acceptance', 0.3, 0.3)).direction); // prettier-ignore
    expect(sides).toEqual(['low', 'high']);
    expect(plain.probability.within + corrected.probability.within).toBeGreaterThan(1.9);
  });

  test('and where the target lies between them', () => {
    const poor = onlyNormal(0.8);
    const rigid = { ...vessel, linearExpansion_per_K: 0 };
    const [plain, corrected] = [
      { ...poor, vessel: rigid },
      { ...poor, vessel },
    ].map((one) => at(target.pascals, one).adjusting.outsideAfter);
    expect(corrected).toBeCloseTo(plain ?? NaN, 4);
  });
});

test('a rule is read once: what is checked is what is used', () => {
  const rule = ruleOf('guarded acceptance', 0.02, 0.4);
  const [words, below, above] = [[rule.acceptance], [rule.risk.below], [rule.risk.above]];
  const once = {
    get acceptance() { return words.pop(); },
    risk: { get below() { return below.pop(); }, get above() { return above.pop(); } },
  }; // prettier-ignore
  const by = (given: unknown) => decide(specWith(), at20(139), onlyNormal(0.5), given as Rule);
  expect(by(once)).toEqual(by(rule));
  expect(problemOf(() => by({ ...rule, acceptance: 'as usual' })).wanted).toContain(
    "'simple acceptance' or 'guarded acceptance' or 'guarded rejection' or 'guarded both ways'",
  );
  expect(problemOf(() => by(null)).path).toBe('rule');
  expect(() => by({ acceptance: 'simple acceptance' })).toThrow(/rule\.risk\.below: found undefined/);
  expect(by({ ...rule, risk: { below: 1e-6, above: 1e-6 } })).toHaveProperty('outcome');
});

describe('direction', () => {
  const of = (p: number) =>
    decided(specWith(), at20(p), onlyNormal(1), ruleOf('simple acceptance', 0.02, 0.05)).direction;

  test('is certain against the risk of the other side', () => {
    // Low may be wrong with the risk of the upper limit, 1.645 bar; high with that of the lower, 2.054 bar.
    expect([of(138.35), of(138.36)]).toEqual(['low', 'not certain']);
    expect([of(142.05), of(142.06)]).toEqual(['not certain', 'high']);
    expect(of(140)).toBe('not certain');
  });

  test('is a question of its own: in the band, and yet certainly low', () => {
    const found = decided(specWith(), at20(138.2), onlyNormal(0.3), ruleOf('simple acceptance'));
    expect([found.outcome, found.direction]).toEqual(['within', 'low']);
  });
});

test('a reading on either limit is in the band, and one beyond either is not', () => {
  const of = (p: number): boolean => decided(specWith(), at20(p), onlyNormal(0.5), ruleOf('guarded both ways')).inBand;
  expect([137.999, 138, 140, 142, 142.001].map(of)).toEqual([false, true, true, true, false]);
});

describe('adjusting', () => {
  const of = (p: number, standard: number) =>
    decided(specWith(), at20(p), onlyNormal(standard), ruleOf('guarded acceptance')).adjusting;

  test('compares the probability of lying outside with that at the target', () => {
    const { outsideNow, outsideAfter, worth } = of(138.5, 0.8);
    expect(outsideNow).toBeCloseTo(phi(-0.5 / 0.8) + phi(-3.5 / 0.8), 10);
    expect(outsideAfter).toBeCloseTo(2 * phi(-2 / 0.8), 10);
    expect(worth).toBe(true);
  });

  test('is not worth it where the risks are kept, nor where it gains less than they are', () => {
    expect(of(139.5, 0.5).worth).toBe(false);
    // So poor a gauge that the target is hardly surer: 0.3 bar off, with a standard uncertainty of 4 bar.
    const poor = of(139.7, 4);
    expect(poor.outsideNow).toBeGreaterThan(0.5);
    expect(poor.outsideNow - poor.outsideAfter).toBeLessThan(0.02);
    expect(poor.worth).toBe(false);
  });

  test('is worth it where it gains more than the smaller of both risks', () => {
    const rule = ruleOf('guarded acceptance', 0.02, 0.4);
    const { worth, outsideNow, outsideAfter } = decided(specWith(), at20(138.5), onlyNormal(0.8), rule).adjusting;
    expect(outsideNow - outsideAfter).toBeGreaterThan(0.2);
    expect([outsideNow < 0.4, worth]).toEqual([true, true]);
  });

  test('is worth it where only the risk above is not kept', () => {
    expect(of(141.5, 0.8).worth).toBe(true);
  });

  test('is not worth it where both risks are kept, however much better the target is', () => {
    const rule = ruleOf('simple acceptance', 0.02, 0.45);
    // A third above the limit is a risk that this rule takes, and a fill to the target would leave next to nothing of it.
    const { adjusting, probability } = decided(specWith(), at20(141.8), onlyNormal(0.5), rule);
    expect(probability.above).toBeCloseTo(phi(-0.4), 10);
    expect(adjusting.outsideNow - adjusting.outsideAfter).toBeGreaterThan(0.3);
    expect(adjusting.worth).toBe(false);
  });

  test('to a target off the middle of its band may make it worse', () => {
    const spec = specWith({
      tolerance: { below: barOf(0.5), above: barOf(3), applies: 'at the measured temperature' },
    });
    const found = decided(spec, at20(141.2), onlyNormal(1), ruleOf('guarded acceptance'));
    expect(found.adjusting.outsideAfter).toBeGreaterThan(found.adjusting.outsideNow);
    expect(found.adjusting.worth).toBe(false);
  });
});

describe('what would settle it', () => {
  const rule = ruleOf('guarded acceptance', 0.05, 0.05);
  const settlingOf = (reading: Reading, instruments: Instruments, by = rule) =>
    decided(specWith(), reading, instruments, by).settling;
  const fine = { ...CONTACT, accuracy: { limit: inK(0.5) }, step: inK(0.1), shellToGas: inK(0.5) };

  test('is said only where it is inconclusive', () => {
    expect(settlingOf(reads(143), INSTRUMENTS)).toBeUndefined();
  });

  test('each of its answers decides, and a little more does not', () => {
    // 153 bar at 40 °C, 0.4 bar above the target, by a gauge of class 1.
    const reading = readingWith({ pressure: bar(153), gaugeStep: { step: 0.1, unit: 'bar' } });
    const poor = instrumentsWith({
      thermometer: { ...fine, shellToGas: inK(1.5) },
      gauge: { ...DIAL, accuracy: { accuracyClass: 0.6 } },
    });
    const settling = settlingOf(reading, poor);
    if (settling === undefined) throw new Error('conclusive');
    const conclusive = (instruments: Instruments): boolean =>
      decided(specWith(), reading, instruments, rule).outcome !== 'inconclusive';
    expect(settling.largest).toBe('gauge');

    if (settling.gaugeLimit === 'no gauge') throw new Error('no gauge');
    const limit = settling.gaugeLimit.pascals / 1e5;
    const gauge = (by: number) => ({ ...poor, gauge: { ...DIAL, accuracy: { limit: barOf(limit * by) } } });
    expect([conclusive(gauge(1)), conclusive(gauge(1.01))]).toEqual([true, false]);
    // It is found to one part in 4096 of what it is now, 0.6 % of 250 bar.
    expect(conclusive(gauge(1 + (1.5 / 4096 / limit) * 1.001))).toBe(false);
    // The coarsest class of 250 bar with no more than this limit.
    const classes = [0.1, 0.25, 0.6, 1].filter((one) => one * 2.5 <= limit);
    expect(settling.accuracyClass).toBe(classes.at(-1));
    expect(classes.length).toBeGreaterThan(0);
  });

  test('time to settle, where the shell is far from its gas', () => {
    const gauge = { ...DIAL, accuracy: { accuracyClass: 0.25 } } as const;
    const reading = readingWith({ pressure: bar(152.6), gaugeStep: { step: 0.1, unit: 'bar' } });
    const withShell = (kelvins: number) =>
      instrumentsWith({ gauge, thermometer: { ...fine, shellToGas: inK(kelvins) } });
    const settling = settlingOf(reading, withShell(6));
    expect(settling?.largest).toBe('shell to gas');
    if (settling === undefined || settling.shellToGas === 'no settling') throw new Error('no settling');
    const { kelvins } = settling.shellToGas;
    const by = (factor: number) => decided(specWith(), reading, withShell(kelvins * factor), rule).outcome;
    expect([by(1), by(1.01)]).toEqual(['within', 'inconclusive']);
  });

  test('a thermometer, where it is the thermometer', () => {
    const thermometer = { ...fine, accuracy: { limit: inK(5) } };
    const gauge = { ...DIAL, accuracy: { accuracyClass: 0.1 } } as const;
    const poor = instrumentsWith({ thermometer, gauge });
    const reading = readingWith({ pressure: bar(152.6), gaugeStep: { step: 0.1, unit: 'bar' } });
    const settling = settlingOf(reading, poor);
    expect(settling?.largest).toBe('thermometer');
    if (settling === undefined || settling.thermometerLimit === 'no thermometer') throw new Error('no thermometer');
    const { kelvins } = settling.thermometerLimit;
    expect(kelvins).toBeGreaterThan(0.5);
    const by = (limit: number) =>
      decided(specWith(), reading, { ...poor, thermometer: { ...fine, accuracy: { limit: inK(limit) } } }, rule);
    expect(by(kelvins).outcome).toBe('within');
    expect(by(kelvins * 1.01).outcome).toBe('inconclusive');
    expect([settling.gaugeLimit, settling.accuracyClass, settling.readings]).toEqual([
      'no gauge',
      'no class',
      'no repeats',
    ]);
  });

  test('repeats, only if they do', () => {
    // Read to 5 bar by a fine gauge: the step is nearly everything.
    const gauge = { ...DIAL, accuracy: { accuracyClass: 0.1 } } as const;
    const coarse = instrumentsWith({ gauge, thermometer: fine });
    const reading = readingWith({ pressure: bar(152.6), gaugeStep: { step: 5, unit: 'bar' } });
    const spec = specWith({ tolerance: { plusMinus: barOf(2), applies: 'at the measured temperature' } });
    const found = decided(spec, reading, coarse, rule);
    const count = found.settling?.readings;
    if (typeof count !== 'number') throw new Error('no repeats');
    expect(count).toBeGreaterThan(1);
    const with_readings = (readings: number) => decided(spec, reading, { ...coarse, readings }, rule).outcome;
    expect([with_readings(count - 1), with_readings(count)]).toEqual(['inconclusive', 'within']);
    // By a gauge of class 1 they would not.
    expect(settlingOf(reading, instrumentsWith({ thermometer: fine }))?.readings).toBe('no repeats');
  });

  test('the standard uncertainty at which it would be decided', () => {
    // 1 bar inside the lower limit, 3 bar inside the upper: at a risk of 0.05 all normal, 1 / 1.645 bar.
    const settling = settlingOf(at20(139), onlyNormal(1));
    if (settling === undefined || settling.standard === 'nothing') throw new Error('nothing');
    expect(settling.standard.pascals / 1e5).toBeCloseTo(1 / 1.6448536, 3);
  });

  test('a class: the coarsest that does', () => {
    const by = ruleOf('guarded rejection');
    const settling = settlingOf(reads(157), INSTRUMENTS, by);
    if (settling === undefined || typeof settling.accuracyClass === 'string') throw new Error('no class');
    const { accuracyClass } = settling;
    const next = ACCURACY_CLASSES[ACCURACY_CLASSES.indexOf(accuracyClass) + 1];
    if (next === undefined) throw new Error('no coarser class');
    const outcomes = [accuracyClass, next].map(
      (one) => decided(specWith(), reads(157), dialWith({ accuracy: { accuracyClass: one } }), by).outcome,
    );
    expect(outcomes).toEqual(['overcharged', 'inconclusive']);
  });

  test('a limit for the gauge, where its error is normal: 1 bar inside, a rectangle of 1 / 0.9', () => {
    // One part in twenty of it lies beyond: (a - 1) / 2a.
    const { gaugeLimit } = settlingOf(at20(139), onlyNormal(1)) ?? {};
    if (typeof gaugeLimit !== 'object') throw new Error('no gauge');
    expect(gaugeLimit.pascals / 1e5).toBeCloseTo(1 / 0.9, 2);
  });

  test('of the limit in doubt, whose errors are those of a percentage of the target', () => {
    // Nothing but the temperature is uncertain: a kelvin moves the limits at 80 % and 120 % of the target by as much of it.
    const tolerance = { plusMinusPercentOfGauge: 20, applies: 'at the measured temperature' } as const;
    const spec = specification({ ...GIVEN, precharge: pointOf(140, 20), tolerance });
    const thermometer = {
      ...CONTACT,
      accuracy: {
        certificate: { correction: inK(0), expandedUncertainty: inK(20), coverageFactor: 2, due: '2027-01-01' },
      },
      step: inK(0),
      shellToGas: inK(0),
    };
    const instruments = { ...onlyNormal(1e-3), thermometer };
    const { band } = judge(spec, at20(140));
    const inside = (from: 'lower' | 'upper', bars: number): Reading =>
      at20(band[from].pascals / 1e5 + (from === 'lower' ? bars : -bars));
    for (const side of ['lower', 'upper'] as const) {
      const { settling } = decided(spec, inside(side, 2), instruments, rule);
      if (settling === undefined || settling.standard === 'nothing') throw new Error('nothing');
      // 95 % of a normal distribution, to the step to which it is found.
      expect(settling.standard.pascals / 1e5 / (2 / 1.6448536)).toBeCloseTo(1, 2);
    }
    // In the middle both limits are as far; the one whose risk is the smaller is in doubt.
    const middle = (below: number, above: number): number => {
      const { settling } = decided(spec, at20(140), { ...instruments, thermometer: { ...thermometer, accuracy: { certificate: { ...thermometer.accuracy.certificate, expandedUncertainty: inK(120) } } } }, ruleOf('guarded acceptance', below, above)); // prettier-ignore
      if (settling === undefined || settling.standard === 'nothing') throw new Error('nothing');
      return settling.standard.pascals / 1e5;
    };
    expect(middle(0.05, 0.4)).toBeCloseTo(28 / 1.6448536, 0);
    expect(middle(0.4, 0.05)).toBeCloseTo(28 / 1.6448536, 0);
  });

  test('nothing, so near to the limit that a four-thousandth of the error is too much', () => {
    // A risk of 5 % would need a standard uncertainty of 0.00006 bar.
    expect(settlingOf(at20(138.0001), onlyNormal(1))).toMatchObject({ standard: 'nothing', gaugeLimit: 'no gauge' });
  });

  test('the gauge before its step, where both weigh as much', () => {
    const reading = readingWith({ pressure: bar(138.4), temperature: celsius(20) }); // to a step of 1 bar
    const gauge = { ...DIAL, temperature: celsius(20), accuracy: { limit: barOf(0.5) } };
    expect(settlingOf(reading, { ...onlyNormal(1), gauge })?.largest).toBe('gauge');
  });

  test('nothing, on the limit itself', () => {
    expect(settlingOf(at20(138), onlyNormal(1))).toEqual({
      largest: 'gauge',
      standard: 'nothing',
      gaugeLimit: 'no gauge',
      accuracyClass: 'no class',
      thermometerLimit: 'no thermometer',
      shellToGas: 'no settling',
      readings: 'no repeats',
    });
  });
});

describe('no decision', () => {
  test.each<[string, Partial<Reading>]>([
    ['oil side not drained', { oilSide: 'not drained' }],
    ['gas not known', { gasInside: 'not known' }],
    ['not at rest', { minutesAtRest: 1 }],
    ['reads zero', { pressure: bar(0) }],
  ])('without evidence: %s', (_, changed) => {
    expect(decide(specWith(), readingWith(changed), INSTRUMENTS, ruleOf('simple acceptance'))).toEqual({
      outcome: 'no decision',
      because: 'no evidence',
    });
  });

  test('in the first tenth of a scale with stop pin', () => {
    const stop = dialWith({ zero: 'with stop pin', fullScale: bar(250) });
    const low = (p: number) => decide(specWith(), reads(p), stop, ruleOf('simple acceptance')).outcome;
    expect([low(24.9), low(25)]).toEqual(['no decision', 'undercharged']);
    expect(decide(specWith(), reads(24.9), INSTRUMENTS, ruleOf('simple acceptance')).outcome).toBe('undercharged');
  });
});

describe('a rule that is none', () => {
  const refused = (rule: object) => problemOf(() => decide(specWith(), readingWith(), INSTRUMENTS, rule as Rule));

  test.each([0, -0.1, 0.5, 1, 1e-7])('a risk of %d', (risk) => {
    const { code, path } = refused({ acceptance: 'guarded acceptance', risk: { below: 0.05, above: risk } });
    expect([code, path]).toEqual(['outside bounds', 'rule.risk.above']);
  });

  test('a risk that is no number, a word that is none, or nothing', () => {
    const risk = { below: 0.05, above: 0.05 };
    expect(refused({ acceptance: 'simple acceptance', risk: { ...risk, below: Number.NaN } }).code).toBe(
      'not a number',
    );
    expect(refused({ acceptance: 'simple acceptance', risk: { below: 0.05 } }).path).toBe('rule.risk.above');
    expect(refused({ acceptance: 'simple', risk }).path).toBe('rule.acceptance');
    expect(problemOf(() => decide(specWith(), readingWith(), INSTRUMENTS, null as unknown as Rule)).code).toBe(
      'wrong kind',
    );
  });
});

describe('global risks', () => {
  // JCGM 106:2012, 9.5.5, from memory: resistors of 1500 Ω ± 0.2 Ω, made with a standard deviation of 0.12 Ω, measured with
  // 0.04 Ω, accepted from 1499.82 Ω to 1500.18 Ω: falsely accepted 1 %, falsely rejected 7 %. Here ten times, in bar.
  const prior = { mean: inBar(0), standard: inBar(1.2) };

  test('of the resistors of JCGM 106', () => {
    // A guard of 0.2 is half a standard uncertainty.
    const risk = 1 - phi(0.5);
    const found = globalRisks(specWith(), at20(140), onlyNormal(0.4), ruleOf('guarded acceptance', risk, risk), prior);
    if (!('accepted' in found)) throw new Error(found.because);
    const { falselyAccepted, accepted, conforming } = found;
    const consumer = falselyAccepted.below + falselyAccepted.above;
    // Not accepted though conforming, whether rejected or left inconclusive.
    const producer = conforming - (accepted - consumer);
    expect([consumer.toFixed(2), producer.toFixed(2)]).toEqual(['0.01', '0.07']);
    // By scipy 1.17.1 (integrate.quad, stats.norm).
    expect(consumer).toBeCloseTo(0.009878291521772305, 8);
    expect(producer).toBeCloseTo(0.0690265104615214, 8);
  });

  test('by simple acceptance', () => {
    const found = globalRisks(specWith(), at20(140), onlyNormal(0.4), ruleOf('simple acceptance'), prior);
    if (!('accepted' in found)) throw new Error(found.because);
    expect(found.falselyAccepted.below + found.falselyAccepted.above).toBeCloseTo(0.01894220671702914, 8);
    expect(found.falselyRejected).toBeCloseTo(0.03720780017805778, 8);
    expect(found.inconclusive).toBeLessThan(1e-9);
    expect(found.conforming).toBeCloseTo(1 - 2 * phi(-2 / 1.2), 10);
  });

  test('accept nothing where the guards leave nothing', () => {
    const found = globalRisks(specWith(), at20(140), onlyNormal(1.5), ruleOf('guarded acceptance'), prior);
    if (!('accepted' in found)) throw new Error(found.because);
    expect([found.accepted, found.falselyAccepted]).toEqual([0, { below: 0, above: 0 }]);
    expect(found.inconclusive + found.rejected).toBeCloseTo(1, 12);
  });

  test('accept nothing where the guards leave nothing, though the errors at the two limits differ', () => {
    // Nothing but the temperature is uncertain, which moves the upper limit at 110 % more than the lower one at 90 %.
    const tolerance = { plusMinusPercentOfGauge: 10, applies: 'at the measured temperature' } as const;
    const thermometer = { ...CONTACT, accuracy: { limit: inK(26) }, step: inK(0), shellToGas: inK(0) };
    const instruments = { ...onlyNormal(1e-3), thermometer };
    const found = globalRisks(specWith({ tolerance }), at20(140), instruments, ruleOf('guarded acceptance'), {
      ...prior,
      standard: inBar(60),
    });
    if (!('accepted' in found)) throw new Error(found.because);
    expect(found.accepted).toBe(0);
  });

  // Truth and error are normal here, and so is their sum, whose standard deviation is the root of the sum of squares.
  test('in all, those of a normal sum: off the middle, guarded both ways, its risks apart', () => {
    const [mean, sum] = [-0.7, Math.hypot(1.2, 0.4)];
    const rule = ruleOf('guarded both ways', 0.02, 0.05);
    const found = globalRisks(specWith(), at20(140), onlyNormal(0.4), rule, {
      mean: inBar(mean),
      standard: inBar(1.2),
    });
    if (!('accepted' in found)) throw new Error(found.because);
    const [low, high] = [0.4 * 2.0537489106318, 0.4 * 1.6448536269515]; // 98 % and 95 % of the normal distribution
    const below = (x: number): number => phi((x - mean) / sum);
    expect(found.accepted).toBeCloseTo(below(2 - high) - below(-2 + low), 9);
    expect(found.rejected).toBeCloseTo(below(-2 - low) + 1 - below(2 + high), 9);
    expect(found.inconclusive).toBeCloseTo(1 - found.accepted - found.rejected, 12);
    expect(found.conforming).toBeCloseTo(phi((2 - mean) / 1.2) - phi((-2 - mean) / 1.2), 9);
  });

  test('change sides with the prior and the rule', () => {
    const of = (mean: number, below: number, above: number) => {
      const rule = ruleOf('guarded rejection', below, above);
      const found = globalRisks(specWith(), at20(140), onlyNormal(0.4), rule, { ...prior, mean: inBar(mean) });
      if (!('accepted' in found)) throw new Error(found.because);
      return found;
    };
    const [one, other] = [of(-0.7, 0.02, 0.1), of(0.7, 0.1, 0.02)];
    expect(one.falselyAccepted.below).toBeCloseTo(other.falselyAccepted.above, 9);
    expect(one.falselyAccepted.above).toBeCloseTo(other.falselyAccepted.below, 9);
    expect(one.falselyAccepted.below).toBeGreaterThan(2 * one.falselyAccepted.above);
    expect(one.falselyRejected).toBeCloseTo(other.falselyRejected, 9);
  });

  test('of a gauge so fine that it errs only about the limits: by its mean error there, and the density of the prior', () => {
    const found = globalRisks(specWith(), at20(140), onlyNormal(0.002), ruleOf('simple acceptance'), { ...prior, mean: inBar(-0.7) }); // prettier-ignore
    if (!('accepted' in found)) throw new Error(found.because);
    const density = (x: number): number => Math.exp(-0.5 * ((x + 0.7) / 1.2) ** 2) / (1.2 * Math.sqrt(2 * Math.PI));
    // Half of the mean of |error|, of a normal distribution: its standard deviation over the root of 2 pi.
    const half = 0.002 / Math.sqrt(2 * Math.PI);
    expect(found.falselyAccepted.below / (density(-2) * half)).toBeCloseTo(1, 2);
    expect(found.falselyAccepted.above / (density(2) * half)).toBeCloseTo(1, 2);
    expect(found.falselyRejected / ((density(-2) + density(2)) * half)).toBeCloseTo(1, 2);
  });

  test('name what is wrong with a prior, and read it once', () => {
    const with_prior = (given: unknown) =>
      globalRisks(specWith(), at20(140), onlyNormal(0.4), ruleOf('simple acceptance'), given as typeof prior);
    expect(problemOf(() => with_prior(null))).toMatchObject({ code: 'wrong kind', path: 'prior' });
    expect(problemOf(() => with_prior({ ...prior, mean: 0 })).path).toBe('prior.mean');
    expect(problemOf(() => with_prior({ ...prior, standard: inBar(-1) }))).toMatchObject({
      path: 'prior.standard',
      found: '-1 bar difference',
    });
    const [means, standards] = [[prior.mean], [prior.standard]];
    const once = { get mean() { return means.pop(); }, get standard() { return standards.pop(); } }; // prettier-ignore
    expect(with_prior(once)).toEqual(with_prior(prior));
  });

  test('need a prior', () => {
    const refused = (given: object) =>
      problemOf(() =>
        globalRisks(specWith(), at20(140), INSTRUMENTS, ruleOf('simple acceptance'), given as typeof prior),
      );
    expect(refused({ mean: inBar(0), standard: inBar(0) }).code).toBe('not positive');
    expect(refused({ mean: inBar(0) }).path).toBe('prior.standard');
    expect(refused({ mean: 0, standard: inBar(1) }).code).toBe('wrong kind');
  });

  test('are not there where the gauge is not accurate', () => {
    const stop = dialWith({ zero: 'with stop pin' });
    expect(globalRisks(specWith(), reads(3), stop, ruleOf('simple acceptance'), prior)).toHaveProperty('because');
  });
});

test('limits on lines of their own have errors of their own', () => {
  // ± 20 bar at 20 °C, read at 90 °C: the lower limit feels a kelvin a sixth less than the target does.
  const applies = 'at the reference temperature';
  const spec = specification({ ...GIVEN, precharge: pointOf(140, 20), tolerance: { plusMinus: barOf(20), applies } });
  const hot = readingWith({ temperature: celsius(90) });
  const { band, target } = judge(spec, hot);
  const instruments = { ...onlyNormal(0.001), thermometer: { ...CONTACT, accuracy: { limit: inK(3) } } };
  const found = uncertainty(spec, hot, instruments);
  if (!('interval' in found)) throw new Error(found.because);
  const thermal = found.contributions.find(({ of }) => of === 'thermometer')?.sensitivity ?? 0;
  // 2 bar inside either limit.
  const below = decided(
    spec,
    { ...hot, pressure: bar(band.lower.pascals / 1e5 + 2) },
    instruments,
    ruleOf('simple acceptance'),
  );
  const above = decided(
    spec,
    { ...hot, pressure: bar(band.upper.pascals / 1e5 - 2) },
    instruments,
    ruleOf('simple acceptance'),
  );
  expect(target.pascals).toBeLessThan(band.upper.pascals);
  expect(thermal).toBeLessThan(0);
  expect(above.probability.above).toBeGreaterThan(1.2 * below.probability.below);
});

test('the working shows what is left beyond a guard band at each limit where the rule has one', () => {
  const told = (p: number, acceptance: Rule['acceptance']): string[] => {
    const steps: Step[] = [];
    decide(specWith(), reads(p), INSTRUMENTS, { acceptance, risk: { below: 0.02, above: 0.05 } }, (step) =>
      steps.push(step),
    );
    return steps.filter(({ relation }) => relation.gives === 'dp_beyond').map(({ about }) => about);
  };
  const both = ['lower limit', 'upper limit'];
  expect(told(152.6, 'simple acceptance')).toEqual([]);
  expect(told(152.6, 'guarded acceptance')).toEqual(both);
  expect(told(152.6, 'guarded rejection')).toEqual([]);
  // Below the lower limit it is a rejection that would be guarded there, and still an acceptance at the upper.
  expect(told(149, 'guarded acceptance')).toEqual(['upper limit']);
  expect(told(149, 'guarded rejection')).toEqual(['lower limit']);
  expect(told(156, 'guarded rejection')).toEqual(['upper limit']);
  expect(told(149, 'guarded both ways')).toEqual(both);
});

test('the working of a decision tells first what each contribution is, as that of the uncertainty does', () => {
  const told = (call: (trace: Trace) => unknown): Step[] => {
    const steps: Step[] = [];
    call((step) => steps.push(step));
    return steps;
  };
  const [spec, reading] = [specWith(), reads(153)];
  const contributions = told((trace) => uncertainty(spec, reading, INSTRUMENTS, trace));
  const steps = told((trace) => decide(spec, reading, INSTRUMENTS, ruleOf('guarded both ways'), trace));
  expect(contributions.length).toBeGreaterThan(10);
  expect(steps.slice(0, contributions.length)).toEqual(contributions);
});

test('each sum of errors is printed with a term for each of them, as mathjs adds it up', () => {
  const sums: Step[] = [];
  decide(specWith(), reads(153), INSTRUMENTS, ruleOf('simple acceptance'), (step) => {
    if (step.relation.formula.startsWith('sqrt(u_a')) sums.push(step);
  });
  expect(sums.map(({ about }) => about)).toEqual(['all contributions', 'lower limit', 'upper limit']);
  for (const { relation, values, result } of sums) {
    expect(values.length).toBeGreaterThan(5);
    const scope = Object.fromEntries(relation.from.map((symbol, i) => [symbol, values[i]]));
    expect(Number(evaluate(relation.formula, scope)) / result).toBeCloseTo(1, 14);
  }
});

test('the margins of a vessel that is not corrected for have no shift of it in their working', () => {
  const formulas = (treated: 'corrected' | 'as uncertainty'): string[] => {
    const steps: Step[] = [];
    const vessel = { ...INSTRUMENTS.vessel, treated };
    decide(specWith(), reads(152.6), instrumentsWith({ vessel }), ruleOf('simple acceptance'), (step) =>
      steps.push(step),
    );
    return steps.filter(({ relation }) => relation.gives === 'dp_inside').map(({ relation }) => relation.formula);
  };
  expect(formulas('as uncertainty')).toEqual(['p_read - p_lower', 'p_upper - p_read']);
  expect(formulas('corrected')).toEqual(['p_read - p_lower - dp_vessel', 'p_upper + dp_vessel - p_read']);
});
