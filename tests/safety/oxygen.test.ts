import {
  amount,
  nitrogen,
  oxygenAfterRelease,
  oxygenInDryAir,
  temperature,
  volume,
  type OxygenAfterRelease,
  type OxygenLeft,
  type Release,
} from 'isochore';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { celsius, hPa } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';

const GIVEN: Release = {
  room: volume(30, 'm3'),
  conditions: { temperature: celsius(35), ambient: hPa(1013.25) },
  gas: nitrogen,
  released: amount(400, 'mol'),
  minutes: 10,
  ventilation: { airChangesPerHour: 12 },
  oxygenBefore: 0.209,
  limit: { fraction: 0.195, source: 'an invented rule' },
};
const left = (changed: Partial<Release> = {}) => oxygenAfterRelease({ ...GIVEN, ...changed });
const figure = (of: OxygenAfterRelease, by: OxygenLeft['by'], ventilation: OxygenLeft['ventilation']): number =>
  of.figures.find((one) => one.by === by && one.ventilation === ventilation)?.fraction ?? Number.NaN;

// Ideal-gas law with R of CODATA; nitrogen's Z is within 0.1 % of 1 at room conditions.
const V_ideal = (400 * 8.31446261815324 * 308.15) / 101_325;

describe('closed forms', () => {
  test('the volume of the gas at the conditions of the room', () => {
    expect(relativeError(left().gasVolume.cubicMetres, V_ideal)).toBeLessThan(1e-3);
  });

  test('displacement: air is driven out by the volume of the gas', () => {
    const result = left();
    const r = result.gasVolume.cubicMetres / 30;
    expect(figure(result, 'displacement', 'without ventilation')).toBeCloseTo(0.209 * (1 - r), 14);
  });

  // Well-mixed dilution without supply of air: x = x0 exp(-q t / V), any textbook of ventilation.
  test('well mixed: exponential dilution', () => {
    const result = left();
    const r = result.gasVolume.cubicMetres / 30;
    expect(figure(result, 'well mixed', 'without ventilation')).toBeCloseTo(0.209 * Math.exp(-r), 14);
  });

  // The differential equations integrated in small steps by the classical method of Runge and Kutta, beside the closed forms.
  test.each([
    [10, 12],
    [0.5, 30],
    [120, 4],
    [30, 60],
  ])('well mixed with fresh air is the solution of V dx/dt = Q x0 - (Q + q) x: %d min, %d changes', (minutes, n) => {
    const result = left({ minutes, ventilation: { airChangesPerHour: n } });
    const q = result.gasVolume.cubicMetres / 30 / minutes;
    const Q = n / 60;
    const slope = (x: number): number => Q * 0.209 - (Q + q) * x;
    let x = 0.209;
    const steps = 20_000;
    const h = minutes / steps;
    for (let i = 0; i < steps; i += 1) {
      const a = slope(x);
      const b = slope(x + (h / 2) * a);
      const c = slope(x + (h / 2) * b);
      x += (h / 6) * (a + 2 * b + 2 * c + slope(x + h * c));
    }
    expect(figure(result, 'well mixed', 'with ventilation')).toBeCloseTo(x, 11);

    // And on, with fresh air alone, until the limit: the minutes said.
    const wait = result.minutesToLimit;
    if (wait === 'never' || wait === 0) return;
    let y = x;
    const k = wait / steps;
    const fresh = (z: number): number => Q * (0.209 - z);
    for (let i = 0; i < steps; i += 1) {
      const a = fresh(y);
      const b = fresh(y + (k / 2) * a);
      const c = fresh(y + (k / 2) * b);
      y += (k / 6) * (a + 2 * b + 2 * c + fresh(y + k * c));
    }
    expect(y).toBeCloseTo(0.195, 10);
  });

  test('displacement with fresh air ends at the mixture that comes in', () => {
    const result = left({ minutes: 600, ventilation: { airChangesPerHour: 1 } });
    const r = result.gasVolume.cubicMetres / 30;
    expect(figure(result, 'displacement', 'with ventilation')).toBeCloseTo((0.209 * 10) / (10 + r), 14);
  });

  test('at once there is no time for ventilation', () => {
    const result = left({ minutes: 'at once' });
    for (const by of ['displacement', 'well mixed'] as const)
      expect(figure(result, by, 'with ventilation')).toBeCloseTo(figure(result, by, 'without ventilation'), 15);
    expect(result.minutesToLimit).not.toBe('never');
  });
});

const anyRelease = fc.record({
  released: evenly(0, 5000).map((n) => amount(n, 'mol')),
  room: evenly(1, 500).map((v) => volume(v, 'm3')),
  minutes: fc.oneof(evenly(0.1, 500), fc.constant('at once' as const)),
  ventilation: evenly(0.1, 60).map((airChangesPerHour) => ({ airChangesPerHour })),
});

describe('properties', () => {
  test('the lowest leads, displacement is never above well mixed, ventilation never lowers', () => {
    fc.assert(
      fc.property(anyRelease, (changed) => {
        const result = left(changed);
        const all = result.figures.map(({ fraction }) => fraction);
        expect(result.lowest.fraction).toBe(Math.min(...all));
        for (const fraction of all) {
          expect(fraction).toBeGreaterThanOrEqual(0);
          expect(fraction).toBeLessThanOrEqual(0.209);
        }
        const [displaced = 0, mixed = 0, displacedFresh = 0, mixedFresh = 0] = all;
        const slack = 1e-12;
        expect(displaced).toBeLessThanOrEqual(mixed + slack);
        expect(displacedFresh).toBeLessThanOrEqual(mixedFresh + slack);
        expect(displaced).toBeLessThanOrEqual(displacedFresh + slack);
        expect(mixed).toBeLessThanOrEqual(mixedFresh + slack);
      }),
      { numRuns: 300 },
    );
  });

  test('more gas leaves less oxygen', () => {
    const all = [0, 1, 100, 400, 1000].map((n) => left({ released: amount(n, 'mol') }).lowest.fraction);
    expect([...all].sort((a, b) => b - a)).toEqual(all);
    expect(all[0]).toBe(0.209);
  });
});

describe('what it says', () => {
  test('never that a space is safe: measure, whatever the number', () => {
    for (const released of [0, 400]) {
      const { cautions, outcome, minutesToLimit } = left({ released: amount(released, 'mol') });
      expect(minutesToLimit === 0).toBe(released === 0);
      expect(cautions.map(({ code }) => code)).toEqual([
        ...(released === 0 ? [] : ['oxygen below the limit']),
        'measure oxygen',
        'asphyxiation',
        'maker decides',
      ]);
      expect(outcome).toBe(released === 0 ? 'not below the limit by calculation' : 'below the limit');
    }
  });

  test('the limit itself is not below it', () => {
    const { lowest } = left();
    const limit = (fraction: number) => left({ limit: { fraction, source: 'x' } }).outcome;
    expect(limit(lowest.fraction)).toBe('not below the limit by calculation');
    expect(limit(lowest.fraction + 1e-15)).toBe('below the limit');
  });

  test('a room smaller than the gas has no air left by displacement, and says so', () => {
    const result = left({ room: volume(8, 'm3'), ventilation: 'none' });
    expect(result.room).toBe('not larger than the gas released');
    expect(result.lowest).toMatchObject({ by: 'displacement', fraction: 0, against: 'below the limit' });
    expect(result.figures).toHaveLength(2);
    expect(result.minutesToLimit).toBe('never');
  });

  test('oxygen in dry air is that of ISO 2533, from memory: 20.9476 %', () => {
    expect(oxygenInDryAir).toBe(0.209476);
  });
});

describe('what is refused', () => {
  test.each([
    ['a gas volume without size', { room: volume(0, 'm3') }, 'room', 'not positive'],
    ['no barometer', { conditions: { temperature: celsius(20) } }, 'conditions.ambient', 'wrong kind'],
    ['no time', { minutes: 0 }, 'minutes', 'not positive'],
    ['a word', { minutes: 'soon' }, 'minutes', 'not a number'],
    ['no air', { ventilation: { airChangesPerHour: 0 } }, 'ventilation.airChangesPerHour', 'not positive'],
    ['no statement', { ventilation: undefined }, 'ventilation', 'wrong kind'],
    ['per cent', { oxygenBefore: 20.9 }, 'oxygenBefore', 'outside bounds'],
    ['a limit without source', { limit: { fraction: 0.195 } }, 'limit.source', 'missing'],
    ['an empty source', { limit: { fraction: 0.195, source: ' ' } }, 'limit.source', 'missing'],
    ['a limit above the air', { limit: { fraction: 0.209, source: 'x' } }, 'limit.fraction', 'outside bounds'],
    ['no limit', { limit: undefined }, 'limit', 'wrong kind'],
    [
      'the cold of space',
      { conditions: { ...GIVEN.conditions, temperature: temperature(3, 'K') } },
      'conditions.temperature',
      'outside the model',
    ],
  ])('%s', (_, changed, path, code) => {
    expect(problemOf(() => left(changed as Partial<Release>))).toMatchObject({ path, code });
  });

  test('everything that is wrong, at once', () => {
    const given = { ...GIVEN, room: 30, oxygenBefore: -1, limit: { fraction: 0.1, source: '' } };
    let codes: string[] = [];
    try {
      oxygenAfterRelease(given as never);
    } catch (error) {
      codes = (error as { problems: { path: string }[] }).problems.map(({ path }) => path);
    }
    expect(codes).toEqual(['room', 'oxygenBefore', 'limit.source']);
  });
});
