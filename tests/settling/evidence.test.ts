import fc from 'fast-check';
import {
  fitTimeConstant,
  gauge,
  nitrogen,
  settlingCurve,
  settlingEvidence,
  settlingText,
  volume,
  type EvidenceGiven,
  type SettlingCode,
  type TimedReading,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { ratesWithin, settledBetween } from '../../src/settling/fit.js';
import { bar, barOf, celsius, hPa } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';

type Pairs = readonly (readonly [minutes: number, p_bar: number])[];
const timed = (pairs: Pairs): TimedReading[] => pairs.map(([minutes, p]) => ({ minutes, pressure: bar(p) }));
const step = (of: number): EvidenceGiven['gaugeStep'] => ({ step: of, unit: 'bar' });
const said = (pairs: Pairs, given: Partial<EvidenceGiven> = {}): SettlingCode =>
  settlingEvidence(timed(pairs), { gaugeStep: step(0.5), after: 'filling', ...given }).outcome;

describe('what readings say', () => {
  test.each<[string, Pairs, Partial<EvidenceGiven>, SettlingCode]>([
    ['a rise after draining', [[0, 140], [5, 141]], { after: 'draining' }, 'warming'], // prettier-ignore
    ['a rise after bleeding', [[0, 140], [5, 140.5]], { after: 'bleeding' }, 'warming'], // prettier-ignore
    ['a rise after filling', [[0, 140], [5, 141]], {}, 'rises after filling'], // prettier-ignore
    ['a fall after draining', [[0, 140], [5, 139]], { after: 'draining' }, 'falls after letting out'], // prettier-ignore
    ['less than a step', [[0, 140], [5, 139.6], [9, 139.7]], {}, 'no change seen'], // prettier-ignore
    ['less than a step up', [[0, 140], [5, 140.4]], { after: 'draining' }, 'no change seen'], // prettier-ignore
    ['both ways', [[0, 140], [5, 141], [9, 140]], {}, 'rises and falls'], // prettier-ignore
    ['a fall by two readings', [[0, 140], [5, 139]], {}, 'cooling or losing gas'], // prettier-ignore
    ['a fall that bends', [[0, 140], [4, 137.5], [8, 136.5], [20, 136]], {}, 'levelling out'], // prettier-ignore
    ['a straight fall', [[0, 140], [10, 137], [20, 134], [30, 131], [40, 128]], {}, 'not levelling out'], // prettier-ignore
    ['a straight fall that is too small to tell', [[0, 140], [10, 139.5], [20, 139]], {}, 'cooling or losing gas'], // prettier-ignore
    ['a fall that gets faster', [[0, 140], [10, 139.5], [20, 136]], {}, 'not levelling out'], // prettier-ignore
    ['a fall that bends and then gets faster', [[0, 140], [1, 137], [20, 136.5], [30, 132]], {}, 'not levelling out'], // prettier-ignore
    ['a fall slower than the time constant', [[10, 140], [20, 139], [30, 138]], { timeConstantMinutes: 4 }, 'not levelling out'], // prettier-ignore
    ['the same with a long time constant', [[10, 140], [20, 139], [30, 138]], { timeConstantMinutes: 30 }, 'cooling or losing gas'], // prettier-ignore
    ['more than cooling takes', [[0, 140], [5, 136]], { mostByCooling: barOf(3) }, 'falls further than by cooling'], // prettier-ignore
    ['as much as cooling takes', [[0, 140], [5, 137]], { mostByCooling: barOf(3) }, 'cooling or losing gas'], // prettier-ignore
    ['quick, then slow, on no one exponential', [[0, 140], [1, 136], [2, 135], [20, 131], [40, 130]], {}, 'levelling out'], // prettier-ignore
  ])('%s', (_, pairs, given, outcome) => {
    expect(said(pairs, given)).toBe(outcome);
  });

  test('a change of one step on the marks is seen, whatever the unit does to the last place', () => {
    for (let i = 0; i < 200; i += 1) {
      const readings = [i, i + 1].map((n, k) => ({ minutes: k, pressure: gauge((1400 + n) / 10, 'bar') }));
      const { outcome } = settlingEvidence(readings, { gaugeStep: step(0.1), after: 'bleeding' });
      expect(outcome).toBe('warming');
    }
  });

  test('it says by how much, in which time, and what would not have been seen', () => {
    const found = settlingEvidence(timed([[2, 140], [5, 139.4], [9, 139.6]]), { gaugeStep: step(0.5), after: 'filling' }); // prettier-ignore
    expect(found.change.pascals).toBeCloseTo(-40_000, 6);
    expect(found.overMinutes).toBe(7);
    expect(found.notSeenBelow.pascals).toBe(50_000);
    const rise = settlingEvidence(timed([[2, 140], [5, 141]]), { gaugeStep: step(0.5), after: 'draining' }); // prettier-ignore
    expect(rise.change.pascals).toBe(100_000);
  });

  test('every outcome has its words, which may be replaced', () => {
    expect(settlingText('warming', { warming: 'wird wärmer' })).toBe('wird wärmer');
    expect(settlingText('warming')).toMatch(/warm/);
  });
});

interface Decay {
  readonly tau: number;
  readonly settled: number;
  readonly excess: number;
  readonly times: readonly number[];
}
const anyDecay = (excess: fc.Arbitrary<number>): fc.Arbitrary<Decay> =>
  fc.record({
    tau: evenly(1, 20),
    settled: evenly(80, 200),
    excess,
    times: fc
      .array(evenly(0.1, 0.8), { minLength: 3, maxLength: 9 })
      .map((gaps) => gaps.reduce<number[]>((list, gap) => [...list, (list.at(-1) ?? 0) + gap], [])),
  });
const value = ({ tau, settled, excess }: Decay, t: number): number => settled + excess * Math.exp(-t / tau);

describe('a time constant that is known', () => {
  // Newton's law of cooling: a fall that bends less than this vessel cools is no cooling alone.
  test.each([0.5, 0.8, 0.95, 1.05, 1.25, 2])('against a fall of %d times as long a one', (ratio) => {
    fc.assert(
      fc.property(anyDecay(evenly(5, 15)), (decay) => {
        const readings = decay.times.map((x) => ({
          minutes: x * decay.tau,
          pressure: bar(value(decay, x * decay.tau)),
        }));
        const given = { gaugeStep: step(0.001), after: 'filling', timeConstantMinutes: decay.tau / ratio } as const;
        const { outcome } = settlingEvidence(readings, given);
        expect(outcome).toBe(ratio > 1 ? 'not levelling out' : 'levelling out');
      }),
      { numRuns: 20 },
    );
  });

  test('or else the time of watching: less than one time constant of it is no levelling out', () => {
    for (const [ratio, outcome] of [
      [0.9, 'levelling out'],
      [1.1, 'not levelling out'],
    ] as const) {
      // prettier-ignore
      const tau = 20 * ratio;
      const readings = [0, 5, 10, 15, 20].map((minutes) => ({
        minutes,
        pressure: bar(140 + 9 * Math.exp(-minutes / tau)),
      }));
      expect(settlingEvidence(readings, { gaugeStep: step(0.001), after: 'filling' }).outcome).toBe(outcome);
    }
  });
});

describe('the time constant', () => {
  test('of readings without rounding is the one that made them', () => {
    fc.assert(
      fc.property(anyDecay(evenly(5, 15)), fc.boolean(), (decay, filled) => {
        const of = { ...decay, excess: filled ? decay.excess : -decay.excess };
        const readings = of.times.map((x) => ({ minutes: x * of.tau, pressure: bar(value(of, x * of.tau)) }));
        const found = fitTimeConstant(readings, { gaugeStep: step(0.01), after: filled ? 'filling' : 'draining' });
        if (found.outcome !== 'levelling out') throw new Error(found.outcome);
        expect(Math.abs(found.timeConstantMinutes / of.tau - 1)).toBeLessThan(1e-4);
        expect(Math.abs(found.settled.pascals / 1e5 - of.settled)).toBeLessThan(1e-3);
        const last = (readings.at(-1)?.pressure.pascals ?? 0) / 1e5;
        expect(Math.abs(found.stillToCome.pascals / 1e5 - (of.settled - last))).toBeLessThan(1e-3);
        expect(found.farthest.pascals).toBeLessThan(1);
      }),
      { numRuns: 60 },
    );
  });

  test('of readings on the marks of a gauge has the true one, and the true settled pressure, between its bounds', () => {
    let determined = 0;
    fc.assert(
      fc.property(anyDecay(evenly(3, 20)), fc.constantFrom(0.05, 0.1, 0.2), fc.boolean(), (decay, mark, filled) => {
        const of = { ...decay, excess: filled ? decay.excess : -decay.excess };
        const readings = of.times.map((x) => ({
          minutes: x * of.tau,
          pressure: bar(Number((Math.round(value(of, x * of.tau) / mark) * mark).toFixed(6))),
        }));
        const found = fitTimeConstant(readings, { gaugeStep: step(mark), after: filled ? 'filling' : 'bleeding' });
        // A true exponential is never refused as none.
        expect(found.outcome).not.toBe('no single time constant');
        if (found.outcome !== 'levelling out') return;
        determined += 1;
        const [least, most] = found.betweenMinutes;
        expect(least).toBeLessThanOrEqual(of.tau);
        expect(most).toBeGreaterThanOrEqual(of.tau);
        expect(found.timeConstantMinutes).toBeGreaterThanOrEqual(least);
        expect(found.timeConstantMinutes).toBeLessThanOrEqual(most);
        const { lowest, highest } = found.settledBetween;
        expect(lowest.pascals).toBeLessThanOrEqual(of.settled * 1e5 + 1);
        expect(highest.pascals).toBeGreaterThanOrEqual(of.settled * 1e5 - 1);
        expect(found.settled.pascals).toBeGreaterThanOrEqual(lowest.pascals);
        expect(found.settled.pascals).toBeLessThanOrEqual(highest.pascals);
        expect(found.farthest.pascals).toBeLessThanOrEqual((mark / 2) * 1e5 * (1 + 1e-6));
      }),
      { numRuns: 200 },
    );
    expect(determined).toBeGreaterThan(100);
  });

  // The pressure of settling gas is no exact exponential: only its temperature is.
  test('of settling gas is that of its temperature, and 20 K about 150 bar cost 0.02 bar at most', () => {
    const vessel = { gas: nitrogen, gasVolume: volume(5, 'L') };
    const atStop = { pressure: bar(165), temperature: celsius(60), ambient: hPa(1013) };
    const minutes = [0, 1, 2, 4, 6, 8, 12];
    const curve = settlingCurve(vessel, atStop, {
      shell: celsius(40),
      timeConstantMinutes: 4,
      minutes,
      within: barOf(1),
    });
    const found = fitTimeConstant(curve.points, { gaugeStep: step(0.1), after: 'filling' });
    if (found.outcome !== 'levelling out') throw new Error(found.outcome);
    expect(Math.abs(found.timeConstantMinutes - 4)).toBeLessThan(0.02);
    expect(Math.abs(found.settled.pascals - curve.settled.pascals)).toBeLessThan(2000);
    expect(found.farthest.pascals).toBeLessThan(2000);
  });

  test.each<[string, Pairs, EvidenceGiven['after'], string]>([
    ['a straight fall', [[0, 140], [10, 137], [20, 134]], 'filling', 'not levelling out'], // prettier-ignore
    ['a fall that gets faster', [[0, 140], [10, 139], [20, 136]], 'filling', 'not levelling out'], // prettier-ignore
    ['a fall that may be straight', [[0, 140], [10, 138.4], [20, 137]], 'filling', 'not levelling out'], // prettier-ignore
    ['over before the second reading', [[0, 140], [10, 137], [20, 137]], 'filling', 'settles before it is read'], // prettier-ignore
    ['a rise after filling', [[0, 140], [10, 141], [20, 142]], 'filling', 'rises after filling'], // prettier-ignore
    ['a fall after draining', [[0, 142], [10, 141], [20, 140]], 'draining', 'falls after letting out'], // prettier-ignore
    ['too little', [[0, 140], [10, 139.8], [20, 139.7]], 'filling', 'no change seen'], // prettier-ignore
    ['two rates', [[0, 140], [1, 136], [2, 135], [20, 131], [40, 130]], 'filling', 'no single time constant'], // prettier-ignore
  ])('is not there for %s', (_, pairs, after, outcome) => {
    expect(fitTimeConstant(timed(pairs), { gaugeStep: step(0.5), after })).toEqual({ outcome });
  });
});

// The bounds against a search by hand: for a rate, whether some line in exp(−r t) passes all readings within half a step,
// tried through every pair of their ends.
describe('the rates that the readings allow', () => {
  const passes = (t: readonly number[], p: readonly number[], half: number, r: number): number[] => {
    const x = t.map((one) => Math.exp(-r * one));
    const ends = p.flatMap((one, i) => [-half, half].map((by) => [x[i] ?? 0, one + by] as const));
    return ends.flatMap(([x_1, p_1]) =>
      ends.flatMap(([x_2, p_2]) => {
        if (x_1 === x_2) return [];
        const slope = (p_2 - p_1) / (x_2 - x_1);
        const settled = p_1 - slope * x_1;
        const all = p.every((one, i) => Math.abs(settled + slope * (x[i] ?? 0) - one) <= half * (1 + 1e-9));
        return all ? [settled] : [];
      }),
    );
  };

  test('end where no curve passes any more, and give the ends of what it settles at', () => {
    let seen = 0;
    fc.assert(
      fc.property(anyDecay(evenly(3, 20)), fc.constantFrom(0.1, 0.4), (of, mark) => {
        const t = of.times.map((x) => x * of.tau);
        const p = t.map((one) => Math.round(value(of, one) / mark) * mark);
        const rates = ratesWithin({ t, p }, mark);
        if (typeof rates === 'string' || rates.low === 0 || rates.high === Infinity) return;
        seen += 1;
        expect(passes(t, p, mark / 2, rates.low * 1.0001)).not.toEqual([]);
        expect(passes(t, p, mark / 2, rates.high * 0.9999)).not.toEqual([]);
        expect(passes(t, p, mark / 2, rates.low * 0.999)).toEqual([]);
        expect(passes(t, p, mark / 2, rates.high * 1.001)).toEqual([]);
        const [least, most] = settledBetween({ t, p }, mark, rates);
        // Evenly in the logarithm of the rate, from just inside its ends.
        const [from, to] = [Math.log(rates.low * 1.0001), Math.log(rates.high * 0.9999)];
        const tried = Array.from({ length: 41 }, (_, i) => Math.exp(from + ((to - from) * i) / 40));
        const all = tried.flatMap((r) => passes(t, p, mark / 2, r));
        expect(Math.min(...all)).toBeGreaterThanOrEqual(least - 1e-6);
        expect(Math.max(...all)).toBeLessThanOrEqual(most + 1e-6);
        expect(Math.max(...all)).toBeGreaterThanOrEqual(most - 0.05 * (most - least) - 1e-6);
        expect(Math.min(...all)).toBeLessThanOrEqual(least + 0.05 * (most - least) + 1e-6);
      }),
      { numRuns: 80, endOnFailure: true },
    );
    expect(seen).toBeGreaterThan(20);
  });
});
