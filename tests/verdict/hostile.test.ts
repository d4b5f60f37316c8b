import {
  adjustmentCsv,
  adjustmentTable,
  adjustmentText,
  band,
  charge,
  check,
  explainingTemperature,
  judge,
  slips,
  temperatureDifference,
  together,
  uncertainty,
  why,
  type AdjustmentTable,
  type AdjustmentTableGiven,
  type Instruments,
  type Reading,
  type RoundReading,
} from 'isochore';
import { describe, expect, it, test } from 'vitest';
import { bar, celsius, hPa, readingWith, specWith } from '../support/accumulator.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const spec = specWith();
const reading = readingWith();
const at = { temperature: celsius(40), ambient: hPa(1013.25) };
const GIVEN: AdjustmentTableGiven = {
  from: celsius(20),
  to: celsius(40),
  every: temperatureDifference(10, 'K'),
  temperatureStep: { step: 1, unit: '°C' },
  ambient: hPa(1013.25),
  gaugeStep: { step: 1, unit: 'bar' },
};

describe('a step that is left out is refused by the name of its argument', () => {
  test.each([undefined, null, 1, 'bar'].map((value) => [value]))('%s', (value) => {
    const none = value as never;
    expect(problemOf(() => band(spec, at, none))).toMatchObject({ code: 'wrong kind', path: 'step' });
    for (const path of ['gaugeStep', 'temperatureStep'] as const)
      expect(problemOf(() => adjustmentTable(spec, { ...GIVEN, [path]: none }))).toMatchObject({
        code: 'wrong kind',
        path,
      });
  });
});

describe('what is no adjustment table is not written', () => {
  const table = adjustmentTable(spec, GIVEN);
  test.each<[unknown]>([
    [null],
    [undefined],
    [0],
    [{}],
    [{ ...table, rows: null }],
    [{ ...table, rows: [null] }],
    [{ ...table, rows: [table.rows[0], null] }],
    [{ ...table, rows: [{ ...table.rows[0], written: null }] }],
    ['a table'],
    [{ ...table, rows: [{ ...table.rows[0], written: { target: '1' } }] }],
    [{ ...table, model: undefined }],
    // What a spreadsheet would take for a formula, or for more cells.
    ...['=1+1', '@SUM(A1)', '+140', '-140-1', '140,1', '140\r\n=1', '"140"', ' 140', '', 'mark', 140, ['140']].map(
      (target): [unknown] => [
        { ...table, rows: [{ ...table.rows[0], written: { ...table.rows[0]?.written, target } }] },
      ],
    ),
    [{ ...table, pressureUnit: '=bar' }],
    [{ ...table, temperatureUnit: 'toString' }],
  ])('case %#', (value) => {
    for (const write of [adjustmentText, adjustmentCsv])
      expect(problemOf(() => write(value as AdjustmentTable))).toMatchObject({
        code: 'wrong kind',
        path: 'table',
        wanted: expect.stringContaining('adjustment table') as unknown,
      });
  });
});

describe('the reasons in words', () => {
  test.each([null, undefined, 0, {}, { because: null }, { because: 'inside the limits' }].map((value) => [value]))(
    'of a result that has none are refused: case %#',
    (value) => {
      expect(problemOf(() => why(spec, reading, value as never))).toMatchObject({ code: 'wrong kind', path: 'result' });
    },
  );
  test.each([null, 0, 'toString', 'mine'].map((value) => [value]))('of a reason %s that there is not', (value) => {
    const result = { because: ['inside the limits', value] } as never;
    expect(problemOf(() => why(spec, reading, result))).toMatchObject({
      code: 'unknown word',
      path: 'result.because[1]',
    });
  });
  test('are read by index: the iterator of their list may be anything', () => {
    const because = Object.defineProperty(['inside the limits'] as const, Symbol.iterator, { value: Number.NaN });
    expect(why(spec, reading, { because })).toBe(why(spec, reading, { because: ['inside the limits'] }));
  });
  test.each<[unknown, string]>([
    [null, 'words'],
    [{ reasons: null }, 'words.reasons'],
    [{ reasons: { 'below the lower limit': Number.NaN } }, 'words.reasons'],
    [{ explained: 0 }, 'words'],
  ])('in words that are no texts are refused: case %#', (value, path) => {
    const call = (): string => why(spec, reading, judge(spec, reading), value as never);
    expect(problemOf(call)).toMatchObject({ code: 'words not sound', path });
  });
});

test('the causes of an empty gas side are nobody’s to change', () => {
  const verdict = judge(spec, readingWith({ pressure: bar(0) }));
  expect(verdict.outcome).toBe('gas side empty');
  if ('causes' in verdict) expect(Object.isFrozen(verdict.causes)).toBe(true);
});

describe('a reading is read once: what is checked is what is used', () => {
  const changing = (field: keyof Reading, later: unknown): Reading => {
    let reads = 0;
    return Object.defineProperty({ ...reading }, field, {
      enumerable: true,
      get: () => {
        reads += 1;
        return reads === 1 ? reading[field] : later;
      },
    });
  };
  const fields = ['pressure', 'temperature', 'ambient', 'gaugeStep', 'oilSide', 'gasInside', 'minutesAtRest'] as const;
  it.each(fields)('%s', (field) => {
    for (const call of [judge, charge, check, explainingTemperature] as const)
      expect(call(spec, changing(field, null))).toStrictEqual(call(spec, reading));
    const result = judge(spec, reading);
    expect(why(spec, changing(field, null), result)).toBe(why(spec, reading, result));
  });
});

test('a division that no gauge has is refused before its square is no number', () => {
  const huge = readingWith({ gaugeStep: { step: 1e299, unit: 'MPa' } });
  expect(problemOf(() => uncertainty(spec, huge, INSTRUMENTS))).toMatchObject({
    code: 'outside bounds',
    path: 'gaugeStep',
    wanted: expect.stringContaining('at most 10000 bar') as unknown,
  });
});

test('the division of a gauge is taken as it was when asked, and refused in its place', () => {
  let left = 1;
  const running = { unit: 'bar', get step() { return left--; } } as const; // prettier-ignore
  expect(judge(specWith(), readingWith({ gaugeStep: running }))).toEqual(judge(specWith(), readingWith()));
  for (const gaugeStep of [null, 3, 'bar']) {
    const refused = (): unknown => judge(specWith(), readingWith({ gaugeStep, minutesAtRest: -1 } as never));
    expect(refused).toThrow(expect.objectContaining({ problems: [expect.objectContaining({ path: 'gaugeStep' }), expect.objectContaining({ path: 'minutesAtRest' })] })); // prettier-ignore
  }
});

describe('instruments are read once: what is checked is what is used', () => {
  const changing = (): Instruments => {
    let reads = 0;
    return Object.defineProperty({ ...INSTRUMENTS }, 'gauge', {
      enumerable: true,
      get: () => {
        reads += 1;
        return reads === 1 ? INSTRUMENTS.gauge : null;
      },
    });
  };
  const leaking = readingWith({ pressure: bar(120) });
  test('uncertainty', () => {
    expect(uncertainty(spec, reading, changing())).toStrictEqual(uncertainty(spec, reading, INSTRUMENTS));
  });
  test('slips', () => {
    expect(slips(spec, leaking, changing())).toStrictEqual(slips(spec, leaking, INSTRUMENTS));
  });
  test('together', () => {
    const round = (instruments: () => Instruments): RoundReading[] =>
      Array.from({ length: 9 }, () => ({ spec, reading: leaking, instruments: instruments() }));
    expect(together(round(changing))).toStrictEqual(together(round(() => INSTRUMENTS)));
  });
});

describe('a reading that is none', () => {
  test.each([null, 0, 'text'].map((value) => [value]))('%s', (value) => {
    for (const call of [judge, charge, check] as const)
      expect(problemOf(() => call(spec, value as never))).toMatchObject({ code: 'wrong kind', path: 'reading' });
  });
});
