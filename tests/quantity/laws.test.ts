import fc from 'fast-check';
import {
  absolute,
  compare,
  difference,
  gauge,
  pressureDifference,
  ratio,
  shift,
  temperature,
  toAbsolute,
  toGauge,
  type AbsolutePressure,
  type GaugePressure,
  type Step,
} from 'isochore';
import { describe, expect, it } from 'vitest';
import { DIFFERENCE } from '../../src/quantity/pressure.js';
import { evenly } from '../support/evenly.js';
import { exactSI, ulp } from '../support/exact.js';
import { KIND_UNITS, KINDS, siOf } from '../support/kinds.js';
import { problemOf } from '../support/problem.js';

const anyAmbient = evenly(0, 1.2e5).map((pascals) => absolute(pascals, 'Pa'));
const anyAbsolute = evenly(0, 5e7).map((pascals) => absolute(pascals, 'Pa'));
const anyGauge = evenly(-1e5, 5e7).map((pascals) => gauge(pascals, 'Pa'));
const anyTemperature = evenly(0, 1000).map((kelvins) => temperature(kelvins, 'K'));

/**
 * Two levels of one kind, each kind in turn; the same one twice, too. The types have one kind stand for all: two of a
 * union, which could be of two kinds, do not compile.
 */
const anyPair = fc.oneof(
  fc.tuple(anyGauge, anyGauge),
  fc.tuple(anyAbsolute, anyAbsolute),
  fc.tuple(anyTemperature, anyTemperature),
  fc.oneof(anyGauge, anyAbsolute, anyTemperature).map((a) => [a, a] as const),
) as fc.Arbitrary<readonly [GaugePressure, GaugePressure]>;

describe('gauge and absolute', () => {
  it('come back from each other exactly for readings in whole pascals: all tenths of a bar, all hectopascals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 8000, max: 11_000 }), (tenths, tenthsHPa) => {
        const [pressure, ambient] = [gauge(tenths / 10, 'bar'), absolute(tenthsHPa / 10, 'hPa')];
        const under = toAbsolute(pressure, ambient);
        expect(under.pascals).toBe(tenths * 10_000 + tenthsHPa * 10);
        expect(toGauge(under, ambient)).toStrictEqual(pressure);
      }),
    );
  });

  // The sum is rounded by half a unit in the last place of the absolute pressure; taking the ambient off again rounds
  // by at most another half, since the gauge pressure is no larger in size than the larger of the two.
  it('come back from each other within one unit in the last place of the larger', () => {
    fc.assert(
      fc.property(anyGauge, anyAmbient, (pressure, ambient) => {
        fc.pre(pressure.pascals >= -ambient.pascals);
        const under = toAbsolute(pressure, ambient);
        const back = toGauge(under, ambient).pascals;
        const room = ulp(Math.max(under.pascals, ambient.pascals));
        expect(Math.abs(back - pressure.pascals)).toBeLessThanOrEqual(room);
      }),
      { numRuns: 500 },
    );
  });

  it('are the same at an ambient of vacuum', () => {
    fc.assert(
      fc.property(anyAbsolute, (pressure) => {
        const shown = toGauge(pressure, absolute(0, 'Pa'));
        expect(shown).toStrictEqual(gauge(pressure.pascals, 'Pa'));
        expect(toAbsolute(shown, absolute(0, 'Pa'))).toStrictEqual(pressure);
      }),
    );
  });

  it('show their working, which changes nothing', () => {
    const [pressure, ambient] = [gauge(140, 'bar'), absolute(1008, 'hPa')];
    const steps: Step[] = [];
    const under = toAbsolute(pressure, ambient, (step) => steps.push(step));
    const shown = toGauge(under, ambient, (step) => steps.push(step));
    expect([under, shown]).toStrictEqual([toAbsolute(pressure, ambient), toGauge(under, ambient)]);
    expect(steps.map(({ relation, values, result }) => [relation.formula, values, result])).toEqual([
      ['p_g + p_amb', [14_000_000, 100_800], 14_100_800],
      ['p_abs - p_amb', [14_100_800, 100_800], 14_000_000],
    ]);
  });
});

describe('difference and shift', () => {
  it('a difference of two readings on the divisions of a gauge is the difference of the numbers', () => {
    expect(difference(gauge(137.6, 'bar'), gauge(148, 'bar'))).toStrictEqual(pressureDifference(-10.4, 'bar'));
    expect(difference(temperature(40, '°C'), temperature(-5, '°C')).kelvins).toBeCloseTo(45, 12);
  });

  // Both the difference and the sum are rounded once; neither is larger than twice the larger of the two.
  it('shifting by the difference leads back, within two units in the last place of the larger', () => {
    fc.assert(
      fc.property(anyPair, ([a, b]) => {
        const back = siOf(shift(b, difference(a, b)));
        const room = 2 * ulp(Math.max(Math.abs(siOf(a)), Math.abs(siOf(b))));
        expect(Math.abs(back - siOf(a))).toBeLessThanOrEqual(room);
      }),
      { numRuns: 500 },
    );
  });

  it('turn their sign round with their arguments', () => {
    fc.assert(
      fc.property(anyPair, ([a, b]) => {
        expect(siOf(difference(a, b)) + siOf(difference(b, a))).toBe(0);
      }),
    );
  });

  it('the difference of two gauge pressures is the one that a working shows', () => {
    fc.assert(
      fc.property(anyGauge, anyGauge, (high, low) => {
        expect(DIFFERENCE.of(high.pascals, low.pascals)).toBe(difference(high, low).pascals);
      }),
    );
  });

  it('keep the kind', () => {
    const by = pressureDifference(2, 'bar');
    expect(shift(gauge(140, 'bar'), by)).toStrictEqual(gauge(142, 'bar'));
    expect(shift(absolute(140, 'bar'), by)).toStrictEqual(absolute(142, 'bar'));
    expect(difference(absolute(3, 'bar'), absolute(1, 'bar'))).toStrictEqual(by);
  });
});

describe('compare', () => {
  it('is antisymmetric, and has the sign of the difference', () => {
    fc.assert(
      fc.property(anyPair, ([a, b]) => {
        const order = compare(a, b);
        expect(order + compare(b, a)).toBe(0);
        expect(order).toBe(Math.sign(siOf(difference(a, b))));
      }),
      { numRuns: 500 },
    );
  });

  const levels = KINDS.filter(({ kind }) => ['gauge pressure', 'absolute pressure', 'temperature'].includes(kind));

  // Two unlike decimals may share a double, but never change places (decimal.js, 400 digits).
  it.each(levels)('never reverses the order of a $kind, whatever the units', ({ kind, make }) => {
    const units = KIND_UNITS.filter((each) => each.kind === kind).map(({ unit }) => unit);
    const anyUnit = fc.constantFrom(...units);
    const anyValue = fc.integer({ min: 0, max: 100_000 }).map((n) => n / 100);
    fc.assert(
      fc.property(anyUnit, anyUnit, anyValue, anyValue, (unitA, unitB, x, y) => {
        const exactOrder = exactSI(kind, unitA, String(x)).cmp(exactSI(kind, unitB, String(y)));
        expect([0, exactOrder]).toContain(compare(make(x, unitA) as GaugePressure, make(y, unitB) as GaugePressure));
      }),
      { numRuns: 500 },
    );
  });

  it('finds spellings of one level equal', () => {
    expect(compare(temperature(0, '°C'), temperature(32, '°F'))).toBe(0);
    expect(compare(gauge(10, 'bar'), gauge(1, 'MPa'))).toBe(0);
    expect(compare(absolute(1, 'kgf/cm2'), absolute(980.665, 'hPa'))).toBe(0);
    expect(compare(absolute(1, 'inHg'), absolute(25.4, 'mmHg'))).toBe(0);
  });
});

describe('ratio', () => {
  it('is of the absolute values, whatever the units', () => {
    expect(ratio(absolute(3, 'bar'), absolute(200, 'kPa'))).toBe(1.5);
    expect(ratio(temperature(600, 'K'), temperature(26.85, '°C'))).toBe(2);
    // Twice the degrees are not twice the temperature.
    expect(ratio(temperature(20, '°C'), temperature(10, '°C'))).toBe(293.15 / 283.15);
  });

  it('turned round is its reciprocal, within the rounding of two divisions', () => {
    const positive = fc.oneof(
      fc.tuple(evenly(1, 5e7), evenly(1, 5e7)).map(([a, b]) => [absolute(a, 'Pa'), absolute(b, 'Pa')] as const),
      fc.tuple(evenly(1, 1e3), evenly(1, 1e3)).map(([a, b]) => [temperature(a, 'K'), temperature(b, 'K')] as const),
    ) as fc.Arbitrary<readonly [AbsolutePressure, AbsolutePressure]>;
    fc.assert(
      fc.property(positive, ([a, b]) => {
        expect(Math.abs(ratio(a, b) * ratio(b, a) - 1)).toBeLessThanOrEqual(2 * Number.EPSILON);
        expect(Math.sign(ratio(a, b) - 1)).toBe(compare(a, b));
      }),
    );
  });

  it('to zero is refused, of zero is zero', () => {
    const [zero, one] = [absolute(0, 'bar'), absolute(1, 'bar')];
    expect(ratio(zero, one)).toBe(0);
    expect(problemOf(() => ratio(one, zero))).toMatchObject({ code: 'ratio to zero', path: 'b' });
    expect(problemOf(() => ratio(one, absolute(1e-320, 'Pa')))).toMatchObject({
      code: 'beyond double',
      path: 'b',
      found: '1e-320 in SI units',
    });
    expect(problemOf(() => ratio(temperature(1, 'K'), temperature(0, 'K'))).found).toContain('temperature');
  });
});
