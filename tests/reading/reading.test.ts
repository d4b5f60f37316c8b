import { charge, check, gauge, judge, standardAtmosphere, temperature, type Reading } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, hPa, readingWith, specWith } from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { refusalOf } from '../support/round.js';

/** Path and code of every problem with a reading, as the verdict reports them. */
function problems(reading: unknown): string[] {
  return refusalOf(() => judge(specWith(), reading as Reading)).map(({ path, code }) => `${path}: ${code}`);
}

/** The same for a sound reading with something changed. */
const refused = (changed: Record<string, unknown>): string[] => problems({ ...readingWith(), ...changed });

/** A sound reading without one of its fields, as plain JavaScript may hand it in. */
function without(field: keyof Reading): Partial<Reading> {
  return Object.fromEntries(Object.entries(readingWith()).filter(([key]) => key !== field));
}

describe('one thing wrong with a reading', () => {
  const bar1 = { step: 1, unit: 'bar' };
  test.each<[string, Record<string, unknown>, string]>([
    ['a bare pressure', { pressure: 143 }, 'pressure: wrong kind'],
    ['an absolute pressure', { pressure: hPa(143_000) }, 'pressure: absolute for gauge'],
    ['a copied pressure', { pressure: { ...bar(143) } }, 'pressure: unchecked copy'],
    ['a copied specification as pressure', { pressure: { ...specWith() } }, 'pressure: wrong kind'],
    ['a pressure below vacuum', { pressure: gauge(neighbour(-101_325, -1), 'Pa') }, 'pressure: gauge below vacuum'],
    ['a pressure beyond the model', { pressure: bar(2000) }, 'pressure: outside the model'],
    ['a bare temperature', { temperature: 40 }, 'temperature: wrong kind'],
    ['a pressure as temperature', { temperature: bar(40) }, 'temperature: wrong kind'],
    ['a temperature outside the model', { temperature: temperature(63.9, 'K') }, 'temperature: outside the model'],
    ['a gauge pressure as ambient', { ambient: bar(1) }, 'ambient: gauge for absolute'],
    ['a barometer in the wrong unit', { ambient: hPa(10_130) }, 'ambient: not an ambient pressure'],
    ['a step of zero', { gaugeStep: { ...bar1, step: 0 } }, 'gaugeStep.step: not a step'],
    ['a negative step', { gaugeStep: { ...bar1, step: -1 } }, 'gaugeStep.step: not a step'],
    ['a step that is no number', { gaugeStep: { ...bar1, step: Number.NaN } }, 'gaugeStep.step: not a step'],
    ['a step as text', { gaugeStep: { ...bar1, step: '1' } }, 'gaugeStep.step: not a step'],
    ['an endless step', { gaugeStep: { ...bar1, step: Number.POSITIVE_INFINITY } }, 'gaugeStep.step: not a step'],
    ['a step without size', { gaugeStep: { unit: 'bar' } }, 'gaugeStep.step: not a step'],
    ['a step far too fine', { gaugeStep: { ...bar1, step: 1e-10 } }, 'gaugeStep.step: step too fine'],
    ['a step in an unknown unit', { gaugeStep: { ...bar1, unit: 'barg' } }, 'gaugeStep.unit: unknown unit'],
    ['a step in a unit of temperature', { gaugeStep: { ...bar1, unit: 'K' } }, 'gaugeStep.unit: unknown unit'],
    ['a step without unit', { gaugeStep: { step: 1 } }, 'gaugeStep.unit: unknown unit'],
    ['a bare step', { gaugeStep: 1 }, 'gaugeStep: wrong kind'],
    ['no step', { gaugeStep: null }, 'gaugeStep: wrong kind'],
    ['an oil side in other words', { oilSide: 'drained' }, 'oilSide: unknown word'],
    ['an oil side as yes or no', { oilSide: true }, 'oilSide: unknown word'],
    ['an oil side in a list', { oilSide: ['not drained'] }, 'oilSide: unknown word'],
    ['another gas', { gasInside: 'air' }, 'gasInside: unknown word'],
    ['a name that objects inherit', { gasInside: 'constructor' }, 'gasInside: unknown word'],
    ['an absolute system pressure', { systemPressure: standardAtmosphere }, 'systemPressure: absolute for gauge'],
    ['a bare system pressure', { systemPressure: 200 }, 'systemPressure: wrong kind'],
    ['a system pressure of null', { systemPressure: null }, 'systemPressure: wrong kind'],
    ['negative minutes', { minutesAtRest: -1 }, 'minutesAtRest: not minutes at rest'],
    ['minutes that are no number', { minutesAtRest: Number.NaN }, 'minutesAtRest: not minutes at rest'],
    ['endless minutes', { minutesAtRest: Number.POSITIVE_INFINITY }, 'minutesAtRest: not minutes at rest'],
    ['minutes as text', { minutesAtRest: '30' }, 'minutesAtRest: not minutes at rest'],
    ['minutes in another word', { minutesAtRest: 'unknown' }, 'minutesAtRest: not minutes at rest'],
    ['an empty gas side said to be fine', { emptyGasSide: 'fine' }, 'emptyGasSide: unknown word'],
    ['an empty gas side said by true', { emptyGasSide: true }, 'emptyGasSide: unknown word'],
  ])('%s', (_, changed, problem) => {
    expect(refused(changed)).toEqual([problem]);
  });

  test.each<[keyof Reading, string]>([
    ['pressure', 'pressure: wrong kind'],
    ['temperature', 'temperature: wrong kind'],
    ['ambient', 'ambient: wrong kind'],
    ['gaugeStep', 'gaugeStep: wrong kind'],
    ['oilSide', 'oilSide: unknown word'],
    ['gasInside', 'gasInside: unknown word'],
    ['minutesAtRest', 'minutesAtRest: not minutes at rest'],
  ])('%s left out', (field, problem) => {
    expect(problems(without(field))).toEqual([problem]);
  });

  test.each([null, undefined, 143, 'text', true])('%s is no reading', (reading) => {
    expect(problems(reading)).toEqual(['reading: wrong kind']);
  });

  test('says what was found and what is wanted', () => {
    const [vacuum] = refusalOf(() => judge(specWith(), readingWith({ pressure: bar(-2) })));
    expect(vacuum?.found).toBe('-2 bar gauge');
    expect(vacuum?.wanted).toContain('at least -1.01325 bar gauge');
    const [word] = refusalOf(() => judge(specWith(), readingWith({ oilSide: 'drained' as never })));
    expect(word?.found).toBe('"drained"');
    expect(word?.wanted).toBe("'drained, zero verified' or 'not drained' or 'not known'");
    const [minutes] = refusalOf(() => judge(specWith(), readingWith({ minutesAtRest: -1 })));
    expect(minutes?.found).toBe('-1');
    expect(minutes?.wanted).toBe("minutes, zero or more, or 'not known'");
  });
});

describe('everything wrong with a reading', () => {
  test('is reported at once', () => {
    const faulty = {
      pressure: 143,
      temperature: null,
      ambient: hPa(1),
      gaugeStep: { step: 0, unit: 'bar' },
      oilSide: 'dry',
      gasInside: 'air',
      systemPressure: barOf(200),
      emptyGasSide: 'no',
      minutesAtRest: Number.NaN,
    };
    const all = [
      'pressure: wrong kind',
      'temperature: wrong kind',
      'ambient: not an ambient pressure',
      'gaugeStep.step: not a step',
      'oilSide: unknown word',
      'gasInside: unknown word',
      'systemPressure: wrong kind',
      'emptyGasSide: unknown word',
      'minutesAtRest: not minutes at rest',
    ];
    expect(problems(faulty)).toEqual(all);
    for (const call of [charge, check]) {
      const found = refusalOf(() => call(specWith(), faulty as unknown as Reading));
      expect(found.map(({ path, code }) => `${path}: ${code}`)).toEqual(all);
    }
  });

  test('of one that is empty is every field that must be stated', () => {
    expect(problems({}).map((problem) => problem.split(':')[0])).toEqual([
      'pressure',
      'temperature',
      'ambient',
      'gaugeStep',
      'oilSide',
      'gasInside',
      'minutesAtRest',
    ]);
  });
});

describe('what is just accepted', () => {
  test.each<[string, Partial<Reading>]>([
    ['a vacuum', { pressure: gauge(-101_325, 'Pa') }],
    ['no time at rest', { minutesAtRest: 0 }],
    ['half a minute', { minutesAtRest: 0.5 }],
    ['a system pressure of zero', { systemPressure: bar(0) }],
    ['an ambient of 500 hPa', { ambient: hPa(500) }],
    ['an ambient of 1200 hPa', { ambient: hPa(1200) }],
    ['a step of a pascal', { gaugeStep: { step: 1, unit: 'Pa' } }],
  ])('%s', (_, changed) => {
    expect(judge(specWith(), readingWith(changed)).target.kind).toBe('gauge pressure');
  });
});
