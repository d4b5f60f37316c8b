import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import {
  amount,
  compare,
  gauge,
  read,
  roundTo,
  temperature,
  valueIn,
  volume,
  write,
  type GaugePressure,
  type PressureUnit,
  type Rounding,
  type Temperature,
  type Toward,
  type UnitOf,
} from 'isochore';
import { describe, expect, it } from 'vitest';
import { rounded } from '../../src/quantity/step.js';
import { evenly } from '../support/evenly.js';
import { binary, Exact, neighbour } from '../support/exact.js';
import { KIND_UNITS, spelled } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';

const TOWARD: readonly Toward[] = ['nearest even', 'up', 'down'];

/** A step and the number of decimals that a text on it has. */
const STEPS = [
  [10, 0],
  [5, 0],
  [1, 0],
  [0.5, 1],
  [0.25, 2],
  [0.2, 1],
  [0.1, 1],
  [0.02, 2],
  [0.001, 3],
] as const;
const PRESSURE_UNITS = ['Pa', 'hPa', 'kPa', 'MPa', 'bar', 'psi', 'kgf/cm2', 'mmHg', 'inHg'] as const;
const TEMPERATURE_UNITS = ['°C', 'K', '°F'] as const;

const anyStep = fc.constantFrom(...STEPS).map(([step]) => step);

/** n steps, as the number a person would type: 3 steps of 0.1 are 0.3. */
const times = (n: number, step: number): number => new Exact(step).times(n).toNumber();

/** A value, and the step that it is rounded to: the laws hold for all kinds alike, so two stand for them. */
interface Case<Q extends GaugePressure | Temperature> {
  readonly step: number;
  readonly n: number;
  readonly make: (value: number) => Q;
  /** A value between marks, on one, or a hair beside one. */
  readonly value: Q;
  readonly to: (toward: Toward) => Rounding<UnitOf<Q>>;
}

/** What is to be rounded, in SI: on a mark, one or two doubles beside it, halfway to the next, or anywhere near it. */
function near(mark: number, next: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc.constantFrom(-2, -1, 0, 1, 2).map((by) => neighbour(mark, by)),
    fc.constant((mark + next) / 2),
    evenly(mark, next),
  );
}

const pressureCase: fc.Arbitrary<Case<GaugePressure>> = fc
  .record({ unit: fc.constantFrom(...PRESSURE_UNITS), step: anyStep, n: fc.integer({ min: -5_000, max: 5_000 }) })
  .chain(({ unit, step, n }) => {
    const make = (value: number) => gauge(value, unit);
    const [mark, next] = [make(times(n, step)).pascals, make(times(n + 1, step)).pascals];
    return near(mark, next).map((pascals) => ({
      step,
      n,
      make,
      value: gauge(pascals, 'Pa'),
      to: (toward: Toward) => ({ step, unit, toward }),
    }));
  });

const temperatureCase: fc.Arbitrary<Case<Temperature>> = fc
  .record({ unit: fc.constantFrom(...TEMPERATURE_UNITS), step: anyStep, n: fc.integer({ min: -200, max: 200 }) })
  .filter(({ unit, step, n }) => times(n - 4, step) > { '°C': -270, '°F': -455, K: 1 }[unit])
  .chain(({ unit, step, n }) => {
    const make = (value: number) => temperature(value, unit);
    const [mark, next] = [make(times(n, step)).kelvins, make(times(n + 1, step)).kelvins];
    return near(mark, next).map((kelvins) => ({
      step,
      n,
      make,
      value: temperature(kelvins, 'K'),
      to: (toward: Toward) => ({ step, unit, toward }),
    }));
  });

describe('rounding agrees with decimal.js', () => {
  const DIRECTION = {
    'nearest even': Decimal.ROUND_HALF_EVEN,
    up: Decimal.ROUND_CEIL,
    down: Decimal.ROUND_FLOOR,
  } as const;

  // In these units every mark is a whole number of pascals, so that the double is the mark and nothing blurs it.
  it.each([
    ['bar', 1e5],
    ['MPa', 1e6],
    ['kPa', 1e3],
  ] as const)('in %s, on the value that the double exactly is', (unit, factor) => {
    const anyValue = fc.oneof(
      fc.integer({ min: -50_000_000, max: 50_000_000 }),
      fc.integer({ min: -50_000, max: 50_000 }).map((n) => n * 500),
      evenly(-5e7, 5e7),
    );
    fc.assert(
      fc.property(anyValue, anyStep, fc.constantFrom(...TOWARD), (pascals, step, toward) => {
        const size = new Exact(step).times(factor);
        const steps = binary(pascals).div(size).toDecimalPlaces(0, DIRECTION[toward]);
        const rounded = roundTo(gauge(pascals, 'Pa'), { step, unit, toward });
        expect(rounded.pascals).toBe(steps.times(size).toNumber() + 0);
      }),
      { numRuns: 500 },
    );
  });
});

describe.each([
  ['gauge pressures', pressureCase],
  // The types have the one kind stand for the other: what may be of several kinds has no unit that fits each.
  ['temperatures', temperatureCase as unknown as typeof pressureCase],
])('the laws of rounding, for %s in every unit', (_, anyCase) => {
  const law = (holds: (given: Case<GaugePressure>) => void) => {
    fc.assert(fc.property(anyCase, holds), { numRuns: 500 });
  };

  it('a value on a mark stays there, whatever the direction', () => {
    law(({ make, n, step, to }) => {
      const mark = make(times(n, step));
      for (const toward of TOWARD) expect(roundTo(mark, to(toward))).toStrictEqual(mark);
    });
  });

  it('down is not above the value and up not below, and they lie one step apart', () => {
    law(({ value, step, to }) => {
      const [down, up] = [roundTo(value, to('down')), roundTo(value, to('up'))];
      expect([compare(down, value), compare(value, up)]).not.toContain(1);
      const [low = '', high = ''] = [write(value, to('down')), write(value, to('up'))].map(
        (text) => text.split(' ')[0],
      );
      const apart = new Exact(high).minus(low).toNumber();
      expect(apart).toBe(compare(down, up) === 0 ? 0 : step);
      expect(compare(down, up)).toBe(compare(down, value) === 0 ? 0 : -1);
    });
  });

  it('nearest is the nearer of the two, and the even one halfway', () => {
    law(({ value, step, to, make }) => {
      const [low, high] = [write(value, to('down')), write(value, to('up'))].map((text) => Number.parseFloat(text));
      if (low === undefined || high === undefined || low === high) return;
      const middle = make(new Exact(low).plus(high).div(2).toNumber());
      const lowIsEven = new Exact(low).div(step).mod(2).isZero();
      const wanted = { '-1': low, '0': lowIsEven ? low : high, '1': high }[compare(value, middle)];
      expect(roundTo(value, to('nearest even'))).toStrictEqual(make(wanted));
    });
  });

  it('rounding twice is rounding once', () => {
    law(({ value, to }) => {
      for (const toward of TOWARD) {
        const once = roundTo(value, to(toward));
        for (const again of TOWARD) expect(roundTo(once, to(again))).toStrictEqual(once);
      }
    });
  });

  it('never reverses an order', () => {
    law(({ value, make, n, step, to }) => {
      const other = make(times(n + 0.4, step));
      for (const toward of TOWARD) {
        const order = compare(roundTo(value, to(toward)), roundTo(other, to(toward)));
        expect([0, compare(value, other)]).toContain(order);
      }
    });
  });

  // A band is rounded for people; whoever reads an instrument with these divisions must decide as the exact band does.
  it('a limit rounded inwards decides about every reading on the step as the limit itself does', () => {
    law(({ value: limit, make, n, step, to }) => {
      const [upper, lower] = [roundTo(limit, to('down')), roundTo(limit, to('up'))];
      for (const by of [-3, -2, -1, 0, 1, 2, 3]) {
        const reading = make(times(n + by, step));
        expect(compare(reading, upper) <= 0).toBe(compare(reading, limit) <= 0);
        expect(compare(reading, lower) >= 0).toBe(compare(reading, limit) >= 0);
      }
    });
  });
});

describe('examples of rounding', () => {
  const bar = (value: number, step: number, toward: Toward) =>
    write(gauge(value, 'bar'), { step, unit: 'bar', toward }).replace(' bar gauge', '');

  it.each([
    [0.5, 1, '0'],
    [1.5, 1, '2'],
    [2.5, 1, '2'],
    [-0.5, 1, '0'],
    [-1.5, 1, '-2'],
    [-2.5, 1, '-2'],
    [0.25, 0.5, '0.0'],
    [0.75, 0.5, '1.0'],
    [147.25, 0.1, '147.2'],
    [147.35, 0.1, '147.4'],
  ])('halfway, %d bar goes to the even multiple of %d: %s', (value, step, text) => {
    expect(bar(value, step, 'nearest even')).toBe(text);
  });

  it.each([
    [-147.3, 'up', '-147.0'],
    [-147.3, 'down', '-147.5'],
    [-0.3, 'up', '0.0'],
    [-0.3, 'down', '-0.5'],
    [147.3, 'up', '147.5'],
    [147.3, 'down', '147.0'],
  ] as const)('%d bar %s to a half bar is %s: up is towards plus infinity', (value, toward, text) => {
    expect(bar(value, 0.5, toward)).toBe(text);
  });

  it('needs no step that divides the unit', () => {
    expect(bar(100, 0.3, 'down')).toBe('99.9');
    expect(bar(100, 7, 'up')).toBe('105');
    expect(bar(123_456, 1e3, 'down')).toBe('123000');
    expect(bar(0.123_456, 1e-7, 'down')).toBe('0.1234560');
  });

  it('keeps every digit of a step with many (decimal.js)', () => {
    const longStep = fc.integer({ min: 100_000_000, max: 999_999_999 }).map((n) => n / 1e8);
    fc.assert(
      fc.property(longStep, evenly(1e8, 1e9), (step, value) => {
        const text = bar(value, step, 'down');
        expect(new Exact(text).mod(step).toNumber()).toBe(0);
        expect(new Exact(value).minus(text).div(step).floor().toNumber()).toBe(0);
      }),
    );
  });

  it('leaves no value beside a mark unnoticed, however small', () => {
    const hair = gauge(-Number.MIN_VALUE, 'Pa');
    expect(roundTo(hair, { step: 10, unit: 'bar', toward: 'down' })).toStrictEqual(gauge(-10, 'bar'));
    expect(roundTo(hair, { step: 10, unit: 'bar', toward: 'up' })).toStrictEqual(gauge(0, 'bar'));
  });

  it('refuses a mark that no quantity of the kind can have', () => {
    expect(problemOf(() => roundTo(temperature(0, 'K'), { step: 1, unit: '°C', toward: 'down' })).code).toBe(
      'below absolute zero',
    );
  });
});

// A gauge that reads low by a correction shows a mark where the truth lies above it by so much.
describe('rounding to the marks of a gauge with a correction', () => {
  it('gives the truth at the mark below, above or nearest, and the text of the mark', () => {
    fc.assert(
      fc.property(
        evenly(0, 4e7),
        evenly(-5e5, 5e5),
        anyStep,
        fc.constantFrom(...TOWARD),
        (pascals, by, step, toward) => {
          const { si, text } = rounded(gauge(pascals, 'Pa'), { step, unit: 'bar', toward }, by);
          expect(si).toBe(gauge(Number(text), 'bar').pascals + by);
          const off = (si - pascals) / (step * 1e5);
          const room = 1e-9;
          expect(off).toBeLessThan(toward === 'down' ? room : toward === 'up' ? 1 : 0.5 + room);
          expect(off).toBeGreaterThan(toward === 'up' ? -room : toward === 'down' ? -1 : -0.5 - room);
        },
      ),
    );
  });
});

describe('text', () => {
  it.each(STEPS)(
    'on a step of %d has %d decimals, and the minus sign only where there is something to it',
    (step, k) => {
      const form = k === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${k}}$`);
      fc.assert(
        fc.property(evenly(-500, 500), (value) => {
          const [text = '', ...rest] = write(gauge(value, 'bar'), { step, unit: 'bar' }).split(' ');
          expect(rest).toEqual(['bar', 'gauge']);
          expect(text).toMatch(form);
          expect(Object.is(Number(text), -0)).toBe(false);
        }),
      );
    },
  );

  it('is nearest even unless told otherwise', () => {
    expect(write(gauge(147.25, 'bar'), { step: 0.1, unit: 'bar' })).toBe('147.2 bar gauge');
    expect(write(gauge(147.25, 'bar'), { step: 0.1, unit: 'bar', toward: 'up' })).toBe('147.3 bar gauge');
  });

  it.each(KIND_UNITS)('of a $kind in $unit is read back as the rounded quantity', (each) => {
    const { kind, make, word, signed, unit } = each;
    fc.assert(
      fc.property(evenly(signed ? -1000 : 0, 1000), anyStep, (value, step) => {
        const quantity = make(value, unit);
        const as = { step, unit: unit as never };
        const text = write(quantity, as);
        expect(read(kind, text)).toStrictEqual(roundTo(quantity, { ...as, toward: 'nearest even' }));
        expect(text.endsWith(spelled('', unit, word))).toBe(true);
      }),
    );
  });
});

describe('what is refused', () => {
  const pressure = gauge(140, 'bar');
  const round = (step: unknown, unit: unknown, toward: unknown) =>
    problemOf(() => roundTo(pressure, { step, unit, toward } as Rounding<PressureUnit>));

  it.each([[0], [-0], [-1], [Number.NaN], [Infinity], ['0.5'], [null], [undefined], [10n]])('a step of %s', (step) => {
    expect(round(step, 'bar', 'down')).toMatchObject({ code: 'not a step', path: 'step' });
  });

  it.each([[1e-10], [1e-300], [5e-324]])('a step so fine, %d bar, that the value has no such digits', (step) => {
    expect(round(step, 'bar', 'down')).toMatchObject({ code: 'step too fine', path: 'step', found: String(step) });
  });

  // 0 °C is 273.15 K, and one double there spans 5e-14 K: it cannot tell marks that lie closer.
  it('a step too fine for the kelvins behind a temperature near 0 °C or 0 °F', () => {
    for (const unit of ['°C', '°F'] as const) {
      const as = { step: 1e-15, unit, toward: 'down' } as const;
      expect(problemOf(() => roundTo(temperature(0, unit), as)).code).toBe('step too fine');
    }
  });

  it('a value of 10^12 steps, counted from 0 °C and from 0 K, and none below', () => {
    const rounding = (kelvins: number, step: number) => () =>
      roundTo(temperature(kelvins, 'K'), { step, unit: '°C', toward: 'down' });
    // The one is 200 K below 0 °C to the bit, the other 200 K above 0 K.
    for (const refused of [rounding(273.15 - 200, 2e-10), rounding(200, 2e-10)]) {
      expect(problemOf(refused)).toMatchObject({ code: 'step too fine', wanted: 'a value of fewer than 10^12 steps' });
    }
    for (const taken of [rounding(273.15 - 200, 2.01e-10), rounding(200, 2.01e-10)]) expect(taken).not.toThrow();
    // 255.372 K are 4.6e12 steps of a ten-thousand-millionth of a °F.
    const besideZero = { step: 1e-10, unit: '°F', toward: 'down' } as const;
    expect(problemOf(() => roundTo(temperature(0, '°F'), besideZero)).code).toBe('step too fine');
  });

  it('a step that is too small for doubles in SI, and none above', () => {
    const none = amount(0, 'mol');
    expect(write(none, { step: 1e-300, unit: 'mol' })).toMatch(/^0\.0{300} mol$/);
    expect(problemOf(() => write(none, { step: 9e-301, unit: 'mol' })).code).toBe('step too fine');
    expect(problemOf(() => write(volume(0, 'L'), { step: 9e-298, unit: 'L' })).code).toBe('step too fine');
  });

  it('what is no step at all, by what is wanted', () => {
    const problem = problemOf(() => write(pressure, 0.5 as never));
    expect(problem).toMatchObject({ code: 'wrong kind', path: 'as', found: 'the bare number 0.5' });
    expect(problem.wanted).toBe('a division of a scale: step and unit');
  });

  it.each([['half up'], ['UP'], [''], [null], [undefined], [1], [1n], [{}]])('a direction of %s', (toward) => {
    expect(round(1, 'bar', toward)).toMatchObject({
      code: 'unknown word',
      path: 'toward',
      found: expect.any(String) as string,
      wanted: "'nearest even', 'up' or 'down'",
    });
  });

  it.each([['Bar'], ['bar gauge'], ['L'], ['°C'], [''], [null], [undefined], ['toString'], ['__proto__']])(
    'a unit of %s',
    (unit) => {
      const problem = round(1, unit, 'down');
      expect(problem).toMatchObject({ code: 'unknown unit', path: 'unit' });
      expect(problem.wanted.replace('one of ', '').split(', ').sort()).toEqual([...PRESSURE_UNITS].sort());
      expect(problemOf(() => valueIn(pressure, unit as PressureUnit)).code).toBe('unknown unit');
      expect(problemOf(() => write(pressure, { step: 1, unit: unit as PressureUnit })).code).toBe('unknown unit');
    },
  );
});
