import {
  absolute,
  difference,
  gauge,
  normalVolume,
  amount,
  nitrogen,
  normalConditions,
  ratio,
  readmit,
  temperature,
  specification,
  temperatureDifference,
  toAbsolute,
  toGauge,
  roundTo,
  valueIn,
  write,
  pressureDifference,
  shift,
  type Step,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  absoluteOf,
  amountOf,
  gaugeOf,
  massOf,
  pressureDifferenceOf,
  temperatureDifferenceOf,
  temperatureOf,
  volumeOf,
  wrongKind,
} from '../../src/quantity/kind.js';
import { normalVolumeOf } from '../../src/quantity/normal-volume.js';
import { problemOf } from '../support/problem.js';

// A problem without its place sends the reader to the wrong argument.

describe('a copy of a normal volume that cannot be read back says which part of it is wrong', () => {
  const copy = JSON.parse(JSON.stringify(normalVolume(amount(1, 'mol'), nitrogen, normalConditions))) as {
    kind: string;
    cubicMetres: number;
    at: { pressure: unknown; temperature: unknown };
  };

  test('none is, as it stands', () => {
    expect(readmit(copy)).toMatchObject({ kind: 'normal volume', cubicMetres: copy.cubicMetres });
  });

  test.each([
    ['without a volume', { ...copy, cubicMetres: undefined }],
    ['with a volume in words', { ...copy, cubicMetres: '0.022' }],
    ['without a reference state', { ...copy, at: null }],
    ['with a reference state in words', { ...copy, at: 'normal' }],
    ['with something added', { ...copy, remark: '' }],
    ['with something added to its reference state', { ...copy, at: { ...copy.at, remark: '' } }],
  ])('%s: all of it', (_, broken) => {
    expect(problemOf(() => readmit(broken))).toMatchObject({ code: 'not a copy of a quantity', path: 'copy' });
  });

  test('and what stands there', () => {
    const at = { pressure: { ...gauge(1, 'bar') }, temperature: copy.at.temperature };
    expect(problemOf(() => readmit({ ...copy, at })).found).toBe('an object');
    expect(problemOf(() => readmit({ ...copy, at: { ...copy.at, temperature: 273.15 } })).found).toBe('273.15');
    const warmer = { ...copy.at, temperature: { kind: 'temperature difference', kelvins: 20 } };
    expect(problemOf(() => readmit({ ...copy, at: warmer })).found).toBe('an object');
    expect(problemOf(() => readmit('140 bar')).found).toBe('"140 bar"');
    expect(problemOf(() => readmit(null)).found).toBe('null');
  });

  test.each([
    ['pressure', null],
    ['pressure', { ...gauge(1, 'bar') }],
    ['pressure', { kind: 'absolute pressure', pascals: '1' }],
    ['temperature', 273.15],
    ['temperature', { ...absolute(1, 'bar') }],
    ['temperature', { kind: 'temperature', kelvins: 273.15, unit: 'K' }],
  ])('its %s is %j', (part, value) => {
    const broken = { ...copy, at: { ...copy.at, [part]: value } };
    expect(problemOf(() => readmit(broken))).toMatchObject({
      code: 'not a copy of a quantity',
      path: `copy.at.${part}`,
    });
  });
});

describe('a specification that is a copy', () => {
  const copy = { kind: 'specification' };

  // Its remedy is another one than that of a quantity: readmit knows no specifications.
  test('is called one where a specification is wanted', () => {
    expect(problemOf(() => wrongKind('specification', copy, 'spec'))).toMatchObject({
      code: 'unchecked specification',
      path: 'spec',
    });
  });

  test('is of the wrong kind elsewhere', () => {
    expect(problemOf(() => toAbsolute(copy as never, absolute(1, 'bar')))).toMatchObject({
      code: 'wrong kind',
      path: 'pressure',
    });
  });

  test('like a copy of a gas model, which is not brought back either', () => {
    expect(problemOf(() => toAbsolute({ ...nitrogen } as never, absolute(1, 'bar')))).toMatchObject({
      code: 'wrong kind',
      path: 'pressure',
      found: 'an unchecked copy of a gas model',
    });
  });

  test('and a copy of a quantity is still that where a specification is wanted', () => {
    expect(problemOf(() => wrongKind('specification', { ...temperature(1, 'K') }, 'spec'))).toMatchObject({
      code: 'unchecked copy',
      path: 'spec',
    });
  });
});

// A result that cannot be has no argument to blame, and no unit that a caller chose.
describe('a number that comes of a calculation and is no quantity is named in the SI unit, and no argument is blamed', () => {
  test.each([
    [gaugeOf, 'Pa'],
    [absoluteOf, 'Pa'],
    [pressureDifferenceOf, 'Pa'],
    [temperatureOf, 'K'],
    [temperatureDifferenceOf, 'K'],
    [volumeOf, 'm3'],
    [amountOf, 'mol'],
    [massOf, 'kg'],
  ])('%o: %s', (door, unit) => {
    expect(problemOf(() => door(Number.NaN))).toMatchObject({ path: '', found: `NaN ${unit}` });
  });

  test.each([
    [() => shift(absolute(1, 'bar'), pressureDifference(-2, 'bar')), 'below vacuum', '-100000 Pa'],
    [() => shift(temperature(1, 'K'), temperatureDifference(-2, 'K')), 'below absolute zero', '-1 K'],
  ] as const)('%s: %s', (call, code, found) => {
    expect(problemOf(call)).toMatchObject({ code, path: '', found });
  });
});

// In JavaScript the list ['volume'] finds the entry of volume wherever it is used as a name.
describe('a kind that only reads like one is none', () => {
  test('in a copy', () => {
    const copy = { kind: ['volume'], cubicMetres: 1 };
    expect(problemOf(() => readmit(copy))).toMatchObject({ code: 'not a copy of a quantity', path: 'copy' });
  });

  test('where a quantity is wanted', () => {
    const problem = problemOf(() => toGauge({ kind: ['mass'] } as never, absolute(1, 'bar')));
    expect(problem).toMatchObject({ code: 'wrong kind', path: 'pressure', found: 'an object' });
  });
});

describe('what is checked and has another kind', () => {
  // Only a gauge pressure is made of an absolute one by naming the ambient.
  test('an absolute pressure for a temperature is no gauge pressure in disguise', () => {
    const problem = problemOf(() => difference(temperature(1, 'K'), absolute(1, 'bar') as never));
    expect(problem).toMatchObject({ code: 'wrong kind', path: 'b', wanted: 'a temperature' });
  });

  test('a gauge pressure has no ratio, on either side', () => {
    const [one, other] = [absolute(1, 'bar'), gauge(1, 'bar')];
    expect(problemOf(() => ratio(other as never, one as never))).toMatchObject({
      code: 'gauge for absolute',
      path: 'a',
    });
    expect(problemOf(() => ratio(one, other as never))).toMatchObject({ code: 'gauge for absolute', path: 'b' });
  });

  test('a specification and a normal volume have no bare number in a unit', () => {
    const spec = specification({
      gas: nitrogen,
      separator: 'diaphragm',
      gasVolume: volumeOf(0.005),
      precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
      ambient: absolute(1013.25, 'hPa'),
      tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
      allowable: gauge(210, 'bar'),
      settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
    });
    const one = normalVolume(amount(1, 'mol'), nitrogen, normalConditions);
    for (const value of [spec, one]) {
      expect(problemOf(() => valueIn(value as never, 'bar'))).toMatchObject({
        code: 'wrong kind',
        path: 'quantity',
        wanted: 'a quantity',
      });
    }
  });
});

test('the working of a conversion says that it is one', () => {
  const steps: Step[] = [];
  const trace = (step: Step): unknown => steps.push(step);
  toGauge(toAbsolute(gauge(140, 'bar'), absolute(1008, 'hPa'), trace), absolute(1008, 'hPa'), trace);
  expect(steps.map(({ about, relation: { gives, unit, from } }) => [about, gives, unit, ...from])).toEqual([
    ['conversion', 'p_abs', 'Pa', 'p_g', 'p_amb'],
    ['conversion', 'p_g', 'Pa', 'p_abs', 'p_amb'],
  ]);
});

describe('an argument is named as it is in the call', () => {
  const one = gauge(1, 'bar');
  test.each([
    ['value', () => gauge(Number.MAX_VALUE, 'bar')],
    ['value', () => pressureDifference(Number.MAX_VALUE, 'bar')],
    ['as', () => write(one, null as never)],
    ['rounding', () => roundTo(one, null as never)],
    ['quantity', () => roundTo(1 as never, { step: 1, unit: 'bar', toward: 'up' } as never)],
    ['unit', () => valueIn(one, 'barg' as never)],
    ['at.pressure', () => normalVolumeOf(1, { ...normalConditions, pressure: one as never })],
    ['at.temperature', () => normalVolumeOf(1, { ...normalConditions, temperature: one as never })],
    ['cubicMetres', () => normalVolumeOf(-1, normalConditions)],
  ])('%s', (path, call) => {
    expect(problemOf(call).path).toBe(path);
  });
});

// Whoever passes a bare number is told what makes the quantity that is wanted.
test.each([
  ['volume', 'volume(value, unit)'],
  ['amount of substance', 'amount(value, unit)'],
  ['mass', 'mass(value, unit)'],
  ['specification', 'specification(given)'],
])('the way to a %s is %s', (kind, maker) => {
  expect(problemOf(() => wrongKind(kind, 1, 'it')).remedy).toContain(maker);
});
