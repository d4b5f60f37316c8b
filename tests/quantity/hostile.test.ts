import { gauge, read, readmit, temperature, volume, write, type Kind } from 'isochore';
import { describe, expect, it, test } from 'vitest';
import { problemOf } from '../support/problem.js';

describe('a step so fine that its marks are one double is refused at once, where the search for a mark would have no end', () => {
  test.each([
    ['of zero', () => write(volume(0, 'mL'), { step: 5e-324, unit: 'mL' })],
    ['of a value as small', () => write(volume(6.8e-315, 'L'), { step: 6e-323, unit: 'L' })],
    ['just below the finest', () => write(volume(0, 'm3'), { step: 9e-301, unit: 'm3' })],
    // Far from the zero of the unit, though at the zero of SI.
    ['of 0 K in °C', () => write(temperature(0, 'K'), { step: 1e-20, unit: '°C' })],
    ['of 0 K in °F', () => write(temperature(1e-200, 'K'), { step: 1e-200, unit: '°F' })],
    ['of a value beyond the doubles in its unit', () => write(volume(1e300, 'm3'), { step: 1, unit: 'mL' })],
  ])('%s', (_, call) => {
    expect(problemOf(call)).toMatchObject({ code: 'step too fine', path: 'step' });
  });
  it('and one that is not so fine is taken', () => {
    expect(write(volume(0, 'm3'), { step: 1e-20, unit: 'm3' })).toBe('0.00000000000000000000 m3');
    expect(write(temperature(0, 'K'), { step: 0.01, unit: '°C' })).toBe('-273.15 °C');
  });
});

test.each([[['temperature']], [null], [0], [{ toString: () => 'temperature' }], [Symbol('temperature')]])(
  'a kind that is no text is refused: case %#',
  (kind) => {
    expect(problemOf(() => read(kind as unknown as Kind, '20 °C'))).toMatchObject({
      code: 'unknown word',
      path: 'kind',
    });
  },
);

/** An object whose fields differ from one read to the next. */
function changing(fields: Readonly<Record<string, readonly unknown[]>>): object {
  const reads = new Map<string, number>();
  const target = {};
  for (const [name, values] of Object.entries(fields)) {
    Object.defineProperty(target, name, {
      enumerable: true,
      get: () => {
        const n = reads.get(name) ?? 0;
        reads.set(name, n + 1);
        return values[Math.min(n, values.length - 1)];
      },
    });
  }
  return target;
}

describe('each field is read once', () => {
  it('of a division: the unit written is the unit rounded to', () => {
    const as = changing({ step: [1], unit: ['bar', 'kPa'] }) as { step: number; unit: 'bar' };
    expect(write(gauge(140, 'bar'), as)).toBe('140 bar gauge');
  });
  it('of a copy that is to be admitted', () => {
    const copy = changing({ kind: ['temperature', 'gauge pressure'], kelvins: [293.15, Number.NaN] });
    expect(readmit(copy)).toEqual(temperature(20, '°C'));
  });
});
