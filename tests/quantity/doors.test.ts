import {
  absolute,
  compare,
  difference,
  gauge,
  pressureDifference,
  ratio,
  roundTo,
  shift,
  temperature,
  temperatureDifference,
  toAbsolute,
  toGauge,
  valueIn,
  volume,
  write,
  type AbsolutePressure,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
  type TemperatureDifference,
} from 'isochore';
import { describe, expect, it } from 'vitest';
import { problemOf } from '../support/problem.js';

const someGauge = gauge(140, 'bar');
const someAbsolute = absolute(1008, 'hPa');
const someTemperature = temperature(40, '°C');

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** What plain JavaScript may pass for a quantity, and how the refusal names it. */
const INTRUDERS: readonly (readonly [name: string, value: unknown, found: string])[] = [
  ['a bare number', 140, 'the bare number 140'],
  ['NaN', Number.NaN, 'the bare number NaN'],
  ['a bigint', 140n, '140n'],
  ['a text', '140 bar gauge', '"140 bar gauge"'],
  ['null', null, 'null'],
  ['undefined', undefined, 'undefined'],
  ['true', true, 'true'],
  ['a symbol', Symbol('gauge'), 'a symbol'],
  ['a function', gauge, 'a function'],
  ['an array', [someGauge], 'an array'],
  ['an empty object', {}, 'an object'],
  ['a kind that is no text', { kind: 1, pascals: 1 }, 'an object'],
  ['a bare object', { kind: 'gauge pressure', pascals: 1 }, 'an unchecked copy of a gauge pressure'],
  ['a spread copy', { ...someGauge }, 'an unchecked copy of a gauge pressure'],
  ['a JSON copy', json(someGauge), 'an unchecked copy of a gauge pressure'],
  ['a structured clone', structuredClone(someAbsolute), 'an unchecked copy of an absolute pressure'],
  [
    'an object with the mark forged',
    { kind: 'absolute pressure', pascals: 1, '~isochore': 'absolute pressure' },
    'an unchecked copy of an absolute pressure',
  ],
  [
    'a frozen object with the mark forged',
    Object.freeze({ kind: 'absolute pressure', pascals: 1, '~isochore': 'absolute pressure' }),
    'an unchecked copy of an absolute pressure',
  ],
  [
    'a temperature with the mark forged',
    { ...someTemperature, '~isochore': 'temperature' },
    'an unchecked copy of a temperature',
  ],
  [
    'a frozen object that inherits from a checked one',
    Object.freeze(Object.create(someGauge)),
    'an unchecked copy of a gauge pressure',
  ],
  [
    'an object whose kind is another at each look',
    Object.defineProperty({}, 'kind', { get: () => ({ toString: undefined }) }),
    'an object',
  ],
  [
    'an object without a prototype',
    Object.assign(Object.create(null) as object, { ...someGauge, '~isochore': 'gauge pressure' }),
    'an unchecked copy of a gauge pressure',
  ],
];

/** Every door, what it wants there, and an argument by argument call. */
const LEVEL = 'a gauge pressure, absolute pressure or temperature';
const DOORS: readonly (readonly [door: string, path: string, wanted: string, call: (value: never) => unknown])[] = [
  ['toAbsolute', 'pressure', 'a gauge pressure', (value: GaugePressure) => toAbsolute(value, someAbsolute)],
  ['toAbsolute', 'ambient', 'an absolute pressure', (value: AbsolutePressure) => toAbsolute(someGauge, value)],
  ['toGauge', 'pressure', 'an absolute pressure', (value: AbsolutePressure) => toGauge(value, someAbsolute)],
  ['toGauge', 'ambient', 'an absolute pressure', (value: AbsolutePressure) => toGauge(someAbsolute, value)],
  ['difference', 'a', LEVEL, (value: GaugePressure) => difference(value, someGauge)],
  ['difference', 'b', 'a gauge pressure', (value: GaugePressure) => difference(someGauge, value)],
  ['difference', 'b', 'a temperature', (value: Temperature) => difference(someTemperature, value)],
  ['compare', 'a', LEVEL, (value: GaugePressure) => compare(value, someGauge)],
  ['compare', 'b', 'an absolute pressure', (value: AbsolutePressure) => compare(someAbsolute, value)],
  ['shift', 'from', LEVEL, (value: GaugePressure) => shift(value, pressureDifference(1, 'bar'))],
  ['shift', 'by', 'a pressure difference', (value: PressureDifference) => shift(someGauge, value)],
  ['shift', 'by', 'a temperature difference', (value: TemperatureDifference) => shift(someTemperature, value)],
  ['ratio', 'b', 'an absolute pressure', (value: AbsolutePressure) => ratio(someAbsolute, value)],
  ['ratio', 'b', 'a temperature', (value: Temperature) => ratio(someTemperature, value)],
  [
    'roundTo',
    'quantity',
    'a quantity',
    (value: GaugePressure) => roundTo(value, { step: 1, unit: 'bar', toward: 'up' }),
  ],
  ['write', 'quantity', 'a quantity', (value: GaugePressure) => write(value, { step: 1, unit: 'bar' })],
  ['valueIn', 'quantity', 'a quantity', (value: GaugePressure) => valueIn(value, 'bar')],
];

describe.each(DOORS)('%s, for its %s, wants %s', (_, path, wanted, call) => {
  it.each(INTRUDERS)('and refuses %s', (_name, value, found) => {
    const problem = problemOf(() => call(value as never));
    const copy = found.startsWith('an unchecked copy');
    expect(problem).toMatchObject({ code: copy ? 'unchecked copy' : 'wrong kind', path, found, wanted });
    expect(problem.remedy).toMatch(copy ? /readmit\(copy\)/ : /^use .*\w\(value, unit\)/);
  });
});

// Apart: which levels have a ratio is for ratio itself to say.
describe('ratio, for its a', () => {
  it.each(INTRUDERS)('refuses %s', (_name, value, found) => {
    expect(problemOf(() => ratio(value as AbsolutePressure, someAbsolute))).toMatchObject({
      code: found.startsWith('an unchecked copy') ? 'unchecked copy' : 'wrong kind',
      path: 'a',
      found,
    });
  });

  it('does not offer a gauge pressure, which it would refuse in turn', () => {
    const { wanted } = problemOf(() => ratio<AbsolutePressure>(5 as never, someAbsolute));
    expect(wanted).toContain('absolute pressure');
    expect(wanted).not.toContain('gauge');
  });
});

describe('another kind than wanted', () => {
  const tolerance = pressureDifference(2, 'bar');
  const swing = temperatureDifference(20, 'K');
  const litres = volume(5, 'L');

  it.each([
    ['toAbsolute(absolute)', () => toAbsolute(someAbsolute as never, someAbsolute), 'absolute', 'gauge', 'toGauge('],
    ['toAbsolute(_, gauge)', () => toAbsolute(someGauge, someGauge as never), 'gauge', 'absolute', 'toAbsolute('],
    ['toAbsolute(difference)', () => toAbsolute(tolerance as never, someAbsolute), 'difference', 'gauge', 'gauge('],
    [
      'toAbsolute(_, temperature)',
      () => toAbsolute(someGauge, someTemperature as never),
      'temperature',
      'absolute',
      'absolute(',
    ],
    ['toGauge(gauge)', () => toGauge(someGauge as never, someAbsolute), 'gauge', 'absolute', 'toAbsolute('],
    ['toGauge(_, gauge)', () => toGauge(someAbsolute, someGauge as never), 'gauge', 'absolute', 'toAbsolute('],
    [
      'difference(gauge, absolute)',
      () => difference(someGauge, someAbsolute as never),
      'absolute',
      'gauge',
      'toGauge(',
    ],
    [
      'difference(difference)',
      () => difference(tolerance as never, tolerance as never),
      'pressure difference',
      LEVEL,
      '',
    ],
    ['compare(absolute, gauge)', () => compare(someAbsolute, someGauge as never), 'gauge', 'absolute', 'toAbsolute('],
    [
      'compare(temperature, gauge)',
      () => compare(someTemperature, someGauge as never),
      'gauge',
      'temperature',
      'temperature(',
    ],
    ['compare(volume)', () => compare(litres as never, litres as never), 'volume', LEVEL, ''],
    [
      'shift(gauge, gauge)',
      () => shift(someGauge, someGauge as never),
      'gauge',
      'pressure difference',
      'pressureDifference(',
    ],
    [
      'shift(gauge, kelvins)',
      () => shift(someGauge, swing as never),
      'temperature difference',
      'pressure difference',
      'pressureDifference(',
    ],
    [
      'shift(temperature, pascals)',
      () => shift(someTemperature, tolerance as never),
      'pressure difference',
      'temperature difference',
      'temperatureDifference(',
    ],
    [
      'shift(temperature, temperature)',
      () => shift(someTemperature, someTemperature as never),
      'a temperature',
      'temperature difference',
      'temperatureDifference(',
    ],
    ['ratio(gauge, gauge)', () => ratio(someGauge as never, someGauge as never), 'gauge', 'absolute', 'toAbsolute('],
    ['ratio(absolute, gauge)', () => ratio(someAbsolute, someGauge as never), 'gauge', 'absolute', 'toAbsolute('],
    ['ratio(volume, volume)', () => ratio(litres as never, litres as never), 'volume', 'absolute', ''],
  ] as const)('%s is refused by both names, with the way across', (_, call, found, wanted, remedy) => {
    const problem = problemOf(call);
    const across = { 'toAbsolute(': 'gauge for absolute', 'toGauge(': 'absolute for gauge' };
    expect(problem.code).toBe(Object.hasOwn(across, remedy) ? across[remedy as keyof typeof across] : 'wrong kind');
    expect(problem.found).toContain(found);
    expect(problem.wanted).toContain(wanted);
    expect(problem.remedy).toContain(remedy);
  });

  it('is refused where the unit is one of another dimension', () => {
    expect(problemOf(() => write(someGauge, { step: 1, unit: 'L' as never })).code).toBe('unknown unit');
    expect(problemOf(() => valueIn(litres, 'bar' as never)).code).toBe('unknown unit');
  });
});

describe('a forged quantity', () => {
  const forged = {
    'an object whose prototype came from JSON': () =>
      Object.assign(
        {},
        JSON.parse('{"__proto__":{"~isochore":"gauge pressure"},"kind":"gauge pressure","pascals":7}') as object,
      ),
    'an object created from a quantity': () => Object.create(gauge(1, 'bar'), { pascals: { value: 7 } }) as object,
  };
  it.each(Object.entries(forged))('%s is refused', (_name, make) => {
    expect(problemOf(() => toAbsolute(make() as never, someAbsolute)).code).toBe('unchecked copy');
  });
  it('does not get its kind into the message unescaped', () => {
    const problem = problemOf(() => toAbsolute({ kind: 'evil\n\u001b[31m' } as never, someAbsolute));
    expect(problem).toMatchObject({ code: 'wrong kind', found: 'an object' });
    // eslint-disable-next-line no-control-regex -- control characters are what must not be there
    expect(JSON.stringify(problem)).not.toMatch(/evil|\u001b/);
  });
});

describe('a door without its second argument', () => {
  it.each([
    ['roundTo', () => roundTo(gauge(1, 'bar'), undefined as never)],
    ['write', () => write(gauge(1, 'bar'), undefined as never)],
  ])('%s says what it needs', (_name, call) => {
    expect(problemOf(call)).toMatchObject({ code: 'wrong kind', found: 'undefined' });
  });
});
