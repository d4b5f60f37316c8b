import fc from 'fast-check';
import { absolute, amount, gauge, pressureDifference, roundTo, temperature, valueIn, volume, write } from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { finer, roundStepBelow, sayable } from '../../src/quantity/step.js';

// Steps that are chosen for a reader, and steps at the ends of what a step may be.

describe('the largest round step that is not above a width', () => {
  // A gauge is named that decides; one with a step above the width decides nothing, one far below it is not to be had.
  test.each([
    [1, 1],
    [1.999, 1],
    [2, 2],
    [4.999, 2],
    [5, 5],
    [9.999, 5],
    [10, 10],
    [0.2, 0.2],
    [0.05, 0.05],
    [0.0499, 0.02],
    [300, 200],
    [7e-9, 5e-9],
  ])('of %d: %d', (width, step) => {
    expect(roundStepBelow(width)).toBe(step);
  });

  test('is 1, 2 or 5 times a power of ten, and at least two fifths of the width', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), (width) => {
        const step = roundStepBelow(width);
        expect(['1', '2', '5']).toContain(step.toExponential().split('e')[0]);
        expect(step).toBeLessThanOrEqual(width);
        expect(step).toBeGreaterThan(width * 0.399);
      }),
    );
  });
});

describe('the step of numbers in sentences', () => {
  test.each([
    [1, 0.1],
    [2, 0.1],
    [5, 0.1],
    [10, 1],
    [0.5, 0.01],
    [0.1, 0.01],
    [0.02, 0.001],
  ])('for a step of %d is %d, a tenth of its decade, in the same unit', (step, wanted) => {
    expect(finer({ step, unit: 'psi' })).toStrictEqual({ step: wanted, unit: 'psi' });
  });
});

// The whole number of steps, times the digits of the step, may have more digits than a double holds.
describe('a step of many digits', () => {
  test('of a size beside nothing is exact', () => {
    const as = { step: 1e-20, unit: 'mol' } as const;
    expect(write(amount(2.5e-19, 'mol'), as)).toBe('0.00000000000000000025 mol');
    expect(write(amount(2.56e-19, 'mol'), as)).toBe('0.00000000000000000026 mol');
    expect(valueIn(roundTo(amount(2.56e-19, 'mol'), { ...as, toward: 'down' }), 'mol')).toBe(2.5e-19);
  });

  // 1 234 567 890 times 0.123456789 is 152 415 787.50…, and the middle to the next mark lies at 152 415 787.56.
  test('of nine digits, a milliard times', () => {
    const as = { step: 0.123456789, unit: 'mol' } as const;
    const exactly = (count: bigint): string => {
      const digits = `${count * 123_456_789n}`;
      return `${digits.slice(0, -9)}.${digits.slice(-9)} mol`;
    };
    const marked = roundTo(amount(152_415_787.51, 'mol'), { ...as, toward: 'nearest even' });
    expect(write(marked, as)).toBe(exactly(1_234_567_890n));
    expect(write(amount(152_415_787.57, 'mol'), { ...as, toward: 'nearest even' })).toBe(exactly(1_234_567_891n));
    expect(write(amount(152_415_787.57, 'mol'), { ...as, toward: 'down' })).toBe(exactly(1_234_567_890n));
  });
});

// The way by big integers gives the same, so that a mistake on the quick way is seen by nothing but the work.
test('a reading of usual digits is made without big integers', () => {
  const big = vi.spyOn(globalThis, 'BigInt');
  try {
    gauge(141.3, 'bar');
    gauge(-0.5, 'bar');
    absolute(1013.25, 'hPa');
    temperature(36.65, '°C');
    temperature(104.5, '°F');
    volume(0.125, 'L');
    expect(big.mock.calls).toEqual([]);
    gauge(Math.PI, 'bar');
    expect(big.mock.calls).not.toEqual([]);
  } finally {
    big.mockRestore();
  }
});

describe('the step for a number in a sentence', () => {
  test.each([
    [143, 0.5, 0.5],
    [-143, 0.5, 0.5],
    [0, 1e-9, 1e-9],
    [9, 1e-10, 1e-10],
    [9.9e11, 1, 1], // twelve digits before the point
    [6e10, 0.5, 0.5],
    [1e12, 1, 10], // of thirteen digits the last is left out
    [-1e21, 1, 1e10],
    [143, 1e-9, 1e-9], // twelve in all
    [143, 1e-10, 1e-9],
    [143, 1e-320, 1e-9],
    [1e-320, 1, 1],
  ])('%d bar in steps of %d bar is said in steps of %d', (value, step, wanted) => {
    const of = pressureDifference(value, 'bar');
    expect(sayable(of, { step, unit: 'bar' })).toStrictEqual({ step: wanted, unit: 'bar' });
  });

  test('is one that every value can be written with', () => {
    const size = fc.double({ min: 1e-300, max: 1e300, noNaN: true });
    fc.assert(
      fc.property(size, size, (value, step) => {
        const of = pressureDifference(value, 'bar');
        expect(write(of, sayable(of, { step, unit: 'bar' }))).toMatch(/^\d+(\.\d+)? bar difference$/);
      }),
    );
  });
});
