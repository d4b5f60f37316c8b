import {
  adjustmentCsv,
  adjustmentTable,
  adjustmentText,
  band,
  gauge,
  roundTo,
  standardAtmosphere,
  target,
  targetSource,
  temperature,
  temperatureDifference,
  valueIn,
  write,
  type AdjustmentTable,
  type AdjustmentTableGiven,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { specWith } from '../support/accumulator.js';
import { counted } from '../support/counted.js';
import { problemOf } from '../support/problem.js';

const spec = specWith();
const given: AdjustmentTableGiven = {
  from: temperature(0, '°C'),
  to: temperature(60, '°C'),
  every: temperatureDifference(5, 'K'),
  temperatureStep: { step: 1, unit: '°C' },
  ambient: standardAtmosphere,
  gaugeStep: { step: 0.5, unit: 'bar' },
};
const table = adjustmentTable(spec, given);

describe('an adjustment table', () => {
  test('has a row for every step, the last one included', () => {
    expect(table.rows.map(({ written }) => written.temperature)).toEqual(
      Array.from({ length: 13 }, (_, i) => String(5 * i)),
    );
  });

  test('says in each row what target, band and targetSource say at the temperature as written', () => {
    for (const row of table.rows) {
      const at = { temperature: temperature(Number(row.written.temperature), '°C'), ambient: standardAtmosphere };
      expect(row.temperature).toEqual(at.temperature);
      expect(row.target).toEqual(target(spec, at));
      expect(row.band).toEqual(band(spec, at, given.gaugeStep));
      expect(row.targetFrom).toEqual(targetSource(spec, at.temperature));
    }
  });

  test('rounds as the verdict does: target to the nearest mark, limits inwards', () => {
    for (const { written, target: exact, band: limits } of table.rows) {
      const nearest = roundTo(exact, { ...given.gaugeStep, toward: 'nearest even' });
      expect(Number(written.target)).toBe(valueIn(nearest, 'bar'));
      expect(limits.onGauge).toEqual({ lower: written.lower, upper: written.upper, unit: 'bar' });
      expect(gauge(Number(written.lower), 'bar').pascals).toBeGreaterThanOrEqual(limits.lower.pascals);
      expect(gauge(Number(written.upper), 'bar').pascals).toBeLessThanOrEqual(limits.upper.pascals);
    }
  });

  test('holds for the temperature as written, also where the steps fall between', () => {
    const odd = adjustmentTable(spec, {
      ...given,
      from: temperature(68, '°F'),
      to: temperature(70, '°F'),
      every: temperatureDifference(0.5, 'K'),
      temperatureStep: { step: 0.1, unit: '°F' },
      gaugeStep: { step: 1, unit: 'psi' },
    });
    expect(odd.rows.map(({ written }) => written.temperature)).toEqual(['68.0', '68.9', '69.8']);
    for (const row of odd.rows)
      expect(write(row.temperature, { step: 0.1, unit: '°F' })).toBe(`${row.written.temperature} °F`);
  });

  test('shows its working row by row', () => {
    const about: string[] = [];
    const seen = adjustmentTable(spec, { ...given, to: temperature(10, '°C') }, (step) => about.push(step.about));
    const rows = about.map((text) => / row (\d+)$/.exec(text)?.[1]);
    expect([...new Set(rows)]).toEqual(['1', '2', '3']);
    expect(about).toContain('target, row 2');
    expect(seen.rows).toEqual(table.rows.slice(0, 3));
  });

  test('may have one row, and as many as the most', () => {
    const alone = adjustmentTable(spec, { ...given, to: given.from });
    expect(alone.rows.map(({ written }) => written.target)).toEqual(['127.5']);
    const wide = { ...given, to: temperature(99.99, '°C'), every: temperatureDifference(0.01, 'K'), temperatureStep: { step: 0.01, unit: '°C' } } as const; // prettier-ignore
    expect(adjustmentTable(spec, wide).rows).toHaveLength(10_000);
    expect(problemOf(() => adjustmentTable(spec, { ...wide, to: temperature(100, '°C') })).code).toBe('too many rows');
  });

  test('says where no mark lies in the band', () => {
    const coarse = adjustmentTable(spec, { ...given, gaugeStep: { step: 50, unit: 'bar' } });
    expect(coarse.rows.at(0)?.written).toMatchObject({ lower: 'no mark', upper: 'no mark' });
    expect(adjustmentCsv(coarse).split('\r\n')[1]).toBe('0,150,no mark,no mark');
  });
});

describe('as text and as CSV', () => {
  test('the text names ambient, model, units and basis, and is aligned', () => {
    const [first, head, ...rows] = adjustmentText(table).split('\n');
    expect(first).toBe('At an ambient of 1013.2 hPa absolute, by nitrogen-span-2000:');
    expect(head).toBe('temperature [°C]  target [bar gauge]  lower limit [bar gauge]  upper limit [bar gauge]');
    expect(rows).toHaveLength(13);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([head?.length]));
  });

  test('numbers have as many places as the steps, and a sign where it is cold', () => {
    const fine = adjustmentTable(spec, {
      ...given,
      from: temperature(-7.25, '°C'),
      to: temperature(-7.25, '°C'),
      temperatureStep: { step: 0.25, unit: '°C' },
      gaugeStep: { step: 0.05, unit: 'bar' },
    });
    expect(adjustmentCsv(fine).split('\r\n')[1]).toMatch(/^-7\.25(,\d{3}\.\d[05]){3}$/);
    expect(adjustmentText(fine)).toContain('-7.25  ');
  });

  test('the CSV follows RFC 4180 and holds the written cells', () => {
    const lines = adjustmentCsv(table).split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(lines[0]).toBe('temperature [°C],target [bar gauge],lower limit [bar gauge],upper limit [bar gauge]');
    expect(lines.slice(1, -1)).toEqual(
      table.rows.map(({ written: w }) => [w.temperature, w.target, w.lower, w.upper].join(',')),
    );
  });
});

test('every part of a table is read once: what is checked is what is written', () => {
  const { model, ambient, temperatureUnit, pressureUnit, rows } = table;
  const written = {
    model,
    ambient,
    temperatureUnit,
    pressureUnit,
    rows: rows.map((row) => ({ written: row.written })),
  };
  for (const by of [adjustmentText, adjustmentCsv]) {
    const reads = new Map<string, number>();
    expect(by(counted(written, 'table', reads) as AdjustmentTable)).toBe(by(table));
    expect(reads.size).toBe(5 + 5 * rows.length);
    expect([...reads].filter(([, count]) => count !== 1)).toEqual([]);
  }
});

describe('is refused', () => {
  test.each([
    ['a step of zero', { every: temperatureDifference(0, 'K') }, 'not positive', 'every'],
    ['a step downwards', { every: temperatureDifference(-5, 'K') }, 'not positive', 'every'],
    ['a range downwards', { to: temperature(-5, '°C') }, 'range runs backwards', 'to'],
    ['rows that would be written alike', { every: temperatureDifference(0.25, 'K') }, 'rows alike', 'every'],
    ['too many rows', { every: temperatureDifference(0.001, 'K') }, 'too many rows', 'every'],
    [
      'a range beyond the model',
      { to: temperature(2000, '°C'), every: temperatureDifference(500, 'K') },
      'outside the model',
      'temperature',
    ],
    [
      'an unknown temperature unit',
      { temperatureStep: { step: 1, unit: 'C' as never } },
      'unknown unit',
      'temperatureStep.unit',
    ],
    ['a gauge step of zero', { gaugeStep: { step: 0, unit: 'bar' as const } }, 'not a step', 'gaugeStep.step'],
    ['a number for a temperature', { from: 0 as never }, 'wrong kind', 'from'],
  ])('%s', (_title, changed, code, path) => {
    expect(problemOf(() => adjustmentTable(spec, { ...given, ...changed }))).toMatchObject({ code, path });
  });
  test.each<[string, object, string]>([
    ['a step downwards', { every: temperatureDifference(-5, 'K') }, '-5 K'],
    ['a range downwards', { from: temperature(300, 'K'), to: temperature(299, 'K') }, '25.85 °C'],
    [
      'rows that would be written alike',
      { every: temperatureDifference(0.5, 'K'), temperatureStep: { step: 2, unit: 'K' } },
      'two rows written 274',
    ],
    [
      'too many rows',
      { from: temperature(300, 'K'), to: temperature(301, 'K'), every: temperatureDifference(1 / 16384, 'K') },
      '16385 rows',
    ],
  ])('%s, with what was found', (_title, changed, found) => {
    expect(problemOf(() => adjustmentTable(spec, { ...given, ...changed })).found).toBe(found);
  });
  test.each([
    ['to', { to: 60 }],
    ['every', { every: 5 }],
    ['given', null],
    ['given', 5],
  ])('what is no quantity, or nothing, by its place: %s, %j', (path, wrong) => {
    const all = typeof wrong === 'object' && wrong !== null ? { ...given, ...wrong } : wrong;
    expect(problemOf(() => adjustmentTable(spec, all as never))).toMatchObject({ code: 'wrong kind', path });
  });

  test('nothing at all', () => {
    expect(problemOf(() => adjustmentTable(spec, undefined as never))).toMatchObject({
      code: 'wrong kind',
      path: 'given',
    });
  });
});
