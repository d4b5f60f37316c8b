import {
  amount,
  idealNitrogen,
  leakTest,
  nitrogen,
  pressureDifference,
  shift,
  standardAtmosphere,
  stateAt,
  toAbsolute,
  volume,
  type LeakTest,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, celsius } from '../support/accumulator.js';
import { relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';

const YEAR_MIN = 365.25 * 24 * 60;
const R = 8.31446261815324;
const vessel = { gas: nitrogen, gasVolume: volume(5, 'L') };
const read = { pressure: bar(140), temperature: celsius(20), ambient: standardAtmosphere };
const GIVEN: LeakTest = {
  lossPerYear: barOf(5),
  bubble: volume(0.05, 'mL'),
  patienceMinutes: 5,
  minutesBetween: 1440,
  gaugeStep: { step: 1, unit: 'bar' },
};
const run = (changed: Partial<LeakTest> = {}, of = vessel) => leakTest(of, read, { ...GIVEN, ...changed });
const rhoAt = (p_Pa: number): number => {
  const fallen = shift(toAbsolute(read.pressure, standardAtmosphere), pressureDifference(p_Pa, 'Pa'));
  return stateAt(nitrogen, { pressure: fallen, temperature: celsius(20) }).density_mol_m3;
};

describe('by the ideal gas, by hand', () => {
  const ideal = run({ lossPerYear: amount(1, 'mol') }, { ...vessel, gas: idealNitrogen });
  const bubble = (101_325 * 5e-8) / (R * 293.15);
  test('minutes from bubble to bubble', () => {
    expect(relativeError(Number(ideal.bubbles.minutesApart), bubble * YEAR_MIN)).toBeLessThan(1e-13);
    expect(relativeError(ideal.bubbles.smallestPerYear.moles, (bubble * YEAR_MIN) / 5)).toBeLessThan(1e-13);
  });
  test('fall in a day, and the cooling that looks the same: dT = T dp / p', () => {
    const fall = (R * 293.15 * (1440 / YEAR_MIN)) / 0.005;
    expect(relativeError(ideal.gauge.fall.pascals, fall)).toBeLessThan(1e-6);
    const p = 140e5 + 101_325;
    expect(relativeError(ideal.gauge.sameAsCoolingBy.kelvins, (293.15 * fall) / p)).toBeLessThan(1e-6);
    const least = ((1e5 * 0.005) / (R * 293.15)) * (YEAR_MIN / 1440);
    expect(relativeError(ideal.gauge.smallestPerYear.moles, least)).toBeLessThan(1e-10);
  });
});

describe('by the real gas', () => {
  test('a loss said as a fall of pressure is the amount between two densities', () => {
    const lost = 0.005 * (rhoAt(0) - rhoAt(-5e5));
    expect(relativeError(run().lossPerYear.moles, lost)).toBeLessThan(1e-12);
  });
  test('over a year the fall is the one that was said', () => {
    const { gauge } = run({ minutesBetween: YEAR_MIN });
    expect(relativeError(gauge.fall.pascals, 5e5)).toBeLessThan(1e-9);
  });
  test('what is said to be the smallest is shown, and less is not', () => {
    const { bubbles, gauge } = run();
    const at = (moles: number) => run({ lossPerYear: amount(moles, 'mol') });
    expect(at(bubbles.smallestPerYear.moles * 1.0001).bubbles.against).toBe('shows it');
    expect(at(bubbles.smallestPerYear.moles * 0.9999).bubbles.against).toBe('does not show it');
    // A constant rate of this loss would empty the vessel within the year: it is asked of a day in which it does not.
    expect(gauge.smallestPerYear.moles).toBeGreaterThan(0.005 * rhoAt(0));
    const week = run({ minutesBetween: 60_000 });
    const least = week.gauge.smallestPerYear.moles;
    const shown = (moles: number) => run({ minutesBetween: 60_000, lossPerYear: amount(moles, 'mol') }).gauge.against;
    expect([shown(least * 1.0001), shown(least * 0.9999)]).toEqual(['shows it', 'does not show it']);
  });
  test('bubbles show what the gauge does not', () => {
    const { bubbles, gauge } = run();
    expect([bubbles.against, gauge.against]).toEqual(['shows it', 'does not show it']);
    expect(bubbles.smallestPerYear.moles).toBeLessThan(gauge.smallestPerYear.moles / 100);
  });
  test('no loss: no bubble and no fall', () => {
    const none = run({ lossPerYear: amount(0, 'mol') });
    expect(none.bubbles).toMatchObject({ minutesApart: 'none', against: 'does not show it' });
    expect(none.gauge.fall.pascals).toBe(0);
    expect(run({ lossPerYear: barOf(0) }).lossPerYear.moles).toBe(0);
  });
  test('a test that shows nothing says no more than that', () => {
    expect(run().cautions.map(({ code }) => code)).toEqual(['leak may not show', 'stored pressure', 'maker decides']);
  });
});

describe('what is refused', () => {
  test.each([
    ['more than there is', { lossPerYear: amount(100, 'mol') }, 'test.lossPerYear', 'more than there is'],
    ['a fall to vacuum', { lossPerYear: barOf(142) }, 'test.lossPerYear', 'more than there is'],
    ['a step of more than there is', { gaugeStep: { step: 200, unit: 'bar' } }, 'test.gaugeStep', 'more than there is'],
    ['a gain', { lossPerYear: barOf(-1) }, 'test.lossPerYear', 'negative'],
    ['a pressure', { lossPerYear: bar(5) }, 'test.lossPerYear', 'wrong kind'],
    ['next to nothing', { lossPerYear: amount(1e-300, 'mol') }, 'test.lossPerYear', 'outside bounds'],
    ['a bubble of nothing', { bubble: volume(0, 'mL') }, 'test.bubble', 'not positive'],
    ['a bubble of a litre', { bubble: volume(1, 'L') }, 'test.bubble', 'outside bounds'],
    ['no patience', { patienceMinutes: 0 }, 'test.patienceMinutes', 'not positive'],
    ['no time', { minutesBetween: Number.NaN }, 'test.minutesBetween', 'not a number'],
    ['no step', { gaugeStep: { step: 0, unit: 'bar' } }, 'test.gaugeStep.step', 'not a step'],
    ['another unit', { gaugeStep: { step: 1, unit: 'barg' } }, 'test.gaugeStep.unit', 'unknown unit'],
  ])('%s', (_, changed, path, code) => {
    expect(problemOf(() => run(changed as Partial<LeakTest>))).toMatchObject({ path, code });
  });
});
