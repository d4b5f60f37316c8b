import fc from 'fast-check';
import {
  charge,
  check,
  gauge,
  judge,
  normalConditions,
  pressureDifference,
  standardAtmosphere,
  target,
  volume,
  type Charge,
  type Move,
  type Reading,
  type Specification,
  type Stop,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  anyConditions,
  anyGaugeStep,
  anySpec,
  bar,
  barOf,
  celsius,
  GIVEN,
  pointOf,
  readingWith,
  reads,
  specBy,
  specOf,
  specWith,
  tableOf,
} from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { densityBySpan } from '../support/line.js';
import { relativeError } from '../support/reference.js';
import { SPAN_2000_JSON } from '../support/span2000.js';
import { anySpecByTable } from '../support/table.js';

function moved(found: Charge): Move {
  if (found.action !== 'add' && found.action !== 'vent') throw new Error(JSON.stringify(found));
  return found;
}

function stopOf(found: Charge): Stop {
  const { stop } = moved(found);
  if (stop.action === 'withheld') throw new Error(stop.because.join());
  return stop;
}

/** Part of the reference pressure that is in the vessel: well outside every band of `anySpec`. */
const anyShare = fc.oneof(fc.integer({ min: 20, max: 60 }), fc.integer({ min: 140, max: 190 })).map((x) => x / 100);

const fine: Reading['gaugeStep'] = { step: 0.01, unit: 'bar' };

/** A reading of a share of the target. */
function share(spec: Specification, part: number, changed: Partial<Reading>): Reading {
  const wanted = target(spec, readingWith(changed));
  return readingWith({ gaugeStep: fine, ...changed, pressure: gauge(Math.round(wanted.pascals * part), 'Pa') });
}

// Source of the densities: the term-by-term equation, tests/support/span2000.ts. Volume and its density balance by
// conservation of mass.
describe('the amount of gas', () => {
  test('brings what is in the vessel to what the target holds: adding and venting', () => {
    const actions = new Set<string>();
    fc.assert(
      fc.property(anySpec, anyConditions, anyShare, (spec, at, part) => {
        const reading = share(spec, part, at);
        const { action, gas } = moved(charge(spec, reading));
        actions.add(action);
        expect(action).toBe(part < 1 ? 'add' : 'vent');
        const V = spec.gasVolume.cubicMetres;
        const { pressure, temperature } = spec.precharge;
        const wanted = V * densityBySpan(temperature.kelvins, pressure.pascals + spec.ambient.pascals);
        const before = V * densityBySpan(at.temperature.kelvins, reading.pressure.pascals + at.ambient.pascals);
        const after = action === 'add' ? before + gas.amount.moles : before - gas.amount.moles;
        expect(relativeError(after, wanted)).toBeLessThanOrEqual(1e-12);
      }),
      { numRuns: 300 },
    );
    expect(actions).toEqual(new Set(['add', 'vent']));
  });

  // The table's own pressure, not the density of any reference point, says how much gas belongs in the vessel.
  test('with a table brings what is in the vessel to the density that the table’s target has', () => {
    const actions = new Set<string>();
    fc.assert(
      fc.property(anySpecByTable, anyShare, ({ spec, at }, part) => {
        const reading = share(spec, part, at);
        const { action, gas } = moved(charge(spec, reading));
        actions.add(action);
        expect(action).toBe(part < 1 ? 'add' : 'vent');
        const T = at.temperature.kelvins;
        const V = spec.gasVolume.cubicMetres;
        const wanted = V * densityBySpan(T, target(spec, at).pascals + at.ambient.pascals);
        const before = V * densityBySpan(T, reading.pressure.pascals + at.ambient.pascals);
        const after = action === 'add' ? before + gas.amount.moles : before - gas.amount.moles;
        expect(relativeError(after, wanted)).toBeLessThanOrEqual(1e-12);
      }),
      { numRuns: 200 },
    );
    expect(actions).toEqual(new Set(['add', 'vent']));
  });

  test('is in proportion to the volume', () => {
    const moles = (litres: number): number =>
      moved(charge(specWith({ gasVolume: volume(litres, 'L') }), readingWith())).gas.amount.moles;
    expect(relativeError(moles(50), 10 * moles(5))).toBeLessThanOrEqual(1e-14);
  });

  test.each([0, 0.4, -1])('fills an empty gas side, cleared, from what it shows: %d bar', (p) => {
    const spec = specWith();
    const { action, gas } = moved(charge(spec, reads(p, { emptyGasSide: 'investigated and cleared' })));
    const before = densityBySpan(313.15, p * 1e5 + 101_325);
    const wanted = 0.005 * (densityBySpan(293.15, 14_101_325) - before);
    expect(action).toBe('add');
    expect(relativeError(gas.amount.moles, wanted)).toBeLessThanOrEqual(1e-12);
  });

  // Molar mass: Span et al. (2000), as in tests/reference/nitrogen-span-2000.json.
  test('is said as mass, and as volume at 0 °C and 101.325 kPa', () => {
    fc.assert(
      fc.property(anySpec, anyShare, (spec, part) => {
        const { amount, mass, normalVolume } = moved(charge(spec, share(spec, part, {}))).gas;
        expect(relativeError(mass.kilograms, amount.moles * SPAN_2000_JSON.molarMass_kg_mol)).toBeLessThanOrEqual(
          1e-15,
        );
        const wanted = amount.moles / densityBySpan(273.15, 101_325);
        expect(relativeError(normalVolume.cubicMetres, wanted)).toBeLessThanOrEqual(1e-12);
        expect(normalVolume.at).toEqual(normalConditions);
      }),
      { numRuns: 100 },
    );
  });

  test('is rounded for people: up for gas to add, down for gas to vent, to the gram and the litre', () => {
    fc.assert(
      fc.property(anySpec, anyShare, (spec, part) => {
        const { action, gas } = moved(charge(spec, share(spec, part, {})));
        const { mass, normalVolume } = gas.rounded;
        expect(mass).toMatch(/^\d+\.\d{3} kg$/);
        expect(normalVolume).toMatch(/^\d+\.\d{3} m3 at 0 °C and 101\.325 kPa absolute$/);
        const [kg, m3] = [mass, normalVolume].map((text) => Number.parseFloat(text));
        for (const [rounded = Number.NaN, exact] of [
          [kg, gas.mass.kilograms],
          [m3, gas.normalVolume.cubicMetres],
        ] as const) {
          const up = rounded - exact;
          // A ten-millionth for the rounding of this subtraction.
          expect(action === 'add' ? up : -up).toBeGreaterThanOrEqual(-1e-10);
          expect(Math.abs(up)).toBeLessThan(0.001 + 1e-10);
        }
      }),
    );
  });
});

describe('where to stop', () => {
  test('filling: the target plus the settling allowance', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const { pressure } = stopOf(charge(spec, share(spec, 0.5, at)));
        const { pascals } = target(spec, at);
        expect(pressure.pascals).toBe(pascals + 150_000);
      }),
    );
  });

  test('venting: the target, without the allowance', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const { pressure } = stopOf(charge(spec, share(spec, 1.5, at)));
        expect(pressure).toStrictEqual(target(spec, at));
      }),
    );
  });

  test('the mark is the last one below the stop pressure; for venting else the next above, in the band; or none', () => {
    const seen = { down: 0, up: 0, none: 0 };
    fc.assert(
      fc.property(anySpec, anyConditions, anyGaugeStep, anyShare, (spec, at, gaugeStep, part) => {
        const reading = share(spec, part, { ...at, gaugeStep });
        const size = gauge(gaugeStep.step, gaugeStep.unit).pascals;
        fc.pre(reading.pressure.pascals > size && judge(spec, reading).outcome !== 'gauge too coarse');
        const found = charge(spec, reading);
        const { pressure, mark } = stopOf(found);
        const { lower, upper } = judge(spec, reading).band;
        const down = Math.floor(pressure.pascals / size + 1e-9) * size;
        if (typeof mark === 'string') {
          seen.none += 1;
          // Both neighbours of the stop pressure are withheld for a reason.
          expect(down).toBeLessThan(lower.pascals);
          if (found.action === 'vent') expect(down + size).toBeGreaterThan(upper.pascals);
          return;
        }
        expect(mark.unit).toBe(gaugeStep.unit);
        const at_mark = gauge(Number(mark.value), mark.unit).pascals;
        expect(at_mark).toBeGreaterThanOrEqual(lower.pascals);
        if (at_mark <= pressure.pascals) {
          seen.down += 1;
          expect(at_mark + size).toBeGreaterThan(pressure.pascals);
        } else {
          seen.up += 1;
          expect(found.action).toBe('vent');
          expect(down).toBeLessThan(lower.pascals);
          expect(at_mark - size).toBeLessThan(pressure.pascals);
          expect(at_mark).toBeLessThanOrEqual(upper.pascals);
        }
      }),
      { numRuns: 400 },
    );
    expect(seen.down).toBeGreaterThan(100);
    expect(seen.up).toBeGreaterThan(3);
    expect(seen.none).toBeGreaterThan(10);
  });

  // At 40 °C: target 152.612 bar (tests/reference/README.md).
  test.each<[allowance: number, tolerance: number, mark: unknown]>([
    [1.5, 2, { value: '154', unit: 'bar' }],
    [0, 2, { value: '152', unit: 'bar' }],
    [0.38, 0.3, 'no mark of the gauge to stop at'],
    [0.39, 0.3, { value: '153', unit: 'bar' }],
    [0, 0.62, { value: '152', unit: 'bar' }],
    [0, 0.61, 'no mark of the gauge to stop at'],
  ])('allowance %d bar, ± %d bar: %o', (allowance, tolerance, mark) => {
    const spec = specWith({
      settling: { ...GIVEN.settling, allowance: barOf(allowance) },
      tolerance: { plusMinus: barOf(tolerance), applies: 'at the measured temperature' },
    });
    expect(stopOf(charge(spec, readingWith())).mark).toEqual(mark);
  });

  test('venting, where the mark below would leave it undercharged, stops at the one above; filling at none', () => {
    // Limits at 40 °C: 152.112 and 153.112 bar.
    const spec = specWith({
      settling: { ...GIVEN.settling, allowance: barOf(0) },
      tolerance: { below: barOf(0.5), above: barOf(0.5), applies: 'at the measured temperature' },
    });
    expect(stopOf(charge(spec, reads(160))).mark).toEqual({ value: '153', unit: 'bar' });
    expect(stopOf(charge(spec, reads(130))).mark).toBe('no mark of the gauge to stop at');
  });

  test('a mark on the lower limit itself is given, as the limit is inside', () => {
    const at = { temperature: celsius(20), ambient: standardAtmosphere };
    const specs = Array.from({ length: 100 }, (_, i) =>
      specOf(100.6 + i, 20, {
        allowable: bar(300),
        tolerance: { below: barOf(0.6), above: barOf(1), applies: 'at the measured temperature' },
        settling: { ...GIVEN.settling, allowance: barOf(0) },
      }),
    );
    // Where the limit comes out as a whole number of bars to the last bit.
    const exact = specs.filter((spec) => judge(spec, reads(50, at)).band.lower.pascals % 1e5 === 0);
    expect(exact.length).toBeGreaterThan(10);
    for (const spec of exact) {
      const { mark } = stopOf(charge(spec, reads(50, at)));
      expect(mark).toEqual({ value: String(Math.floor(spec.precharge.pressure.pascals / 1e5)), unit: 'bar' });
    }
  });
});

describe('then', () => {
  test.each([
    [5, 5],
    [4.2, 5],
    [0.5, 1],
    [30, 30],
  ])('wait: %d minutes of settling are %d whole ones, and read again', (minutes, wanted) => {
    const spec = specWith({ settling: { ...GIVEN.settling, minutes } });
    for (const p of [130, 170]) {
      expect(moved(charge(spec, reads(p)))).toMatchObject({ settleMinutes: wanted, then: 'read again' });
    }
  });

  test('inside the limits there is nothing to do', () => {
    expect(charge(specWith(), reads(153))).toEqual({ action: 'none' });
  });
});

describe('the allowable pressure', () => {
  // 20 °C is the reference temperature: 140 bar. At 40 °C the row says 152.6 bar.
  test('below a row of a table: no quantity where that row is asked for, and a caution', () => {
    const table = tableOf([
      [140, 20],
      [152.6, 40],
    ]);
    const spec = specBy(table, { allowable: bar(152.5) });
    for (const p of [130, 150]) {
      const { charge: found, cautions, verdict } = check(spec, reads(p));
      expect(verdict.target).toStrictEqual(bar(152.6));
      expect(found).toMatchObject({ action: 'withheld', because: ['target above the allowable pressure'] });
      expect(cautions.map(({ code }) => code)).toContain('target above the allowable pressure');
    }
    expect(moved(charge(spec, reads(130, { temperature: celsius(20) }))).action).toBe('add');
    expect(moved(charge(specBy(table, { allowable: bar(152.6) }), reads(130))).gas.amount.moles).toBeGreaterThan(0);
  });

  const { pascals: at40 } = target(specWith(), readingWith());
  const allowing = (pascals: number): Specification => specWith({ allowable: gauge(pascals, 'Pa') });

  test('below the target at this temperature: no quantity either way, and none is needed for a reading below both', () => {
    const spec = allowing(neighbour(at40, -1));
    for (const p of [130, 160]) {
      expect(charge(spec, reads(p))).toMatchObject({
        action: 'withheld',
        because: ['target above the allowable pressure'],
      });
    }
    expect(charge(spec, reads(0, { emptyGasSide: 'investigated and cleared' })).action).toBe('withheld');
    expect(charge(spec, reads(152)).action).toBe('none');
  });

  test('at the target itself: the quantity, without a stop pressure for filling', () => {
    const spec = allowing(at40);
    const filling = moved(charge(spec, reads(130)));
    expect(filling.gas.amount.moles).toBeGreaterThan(0);
    expect(filling.stop).toMatchObject({ action: 'withheld', because: ['stop pressure above the allowable pressure'] });
    expect(stopOf(charge(spec, reads(160))).pressure.pascals).toBe(at40);
  });

  test('below a reading inside the band: make safe, which is not nothing to do', () => {
    const reading = reads(153);
    const above = charge(allowing(neighbour(15_300_000, -1)), reading);
    expect(above).toMatchObject({ action: 'withheld', because: ['reading above the allowable pressure'] });
    expect(charge(allowing(15_300_000), reading)).toEqual({ action: 'none' });
  });

  test('at the stop pressure itself it may be filled to it, one bit below not', () => {
    const stop = at40 + pressureDifference(1.5, 'bar').pascals;
    expect(stopOf(charge(allowing(stop), reads(130))).pressure.pascals).toBe(stop);
    expect(moved(charge(allowing(neighbour(stop, -1)), reads(130))).stop).toMatchObject({ action: 'withheld' });
  });
});

describe('on the limit itself', () => {
  // At the temperature and the ambient of the manual, where what it states holds to the bit.
  const at = (p_bar: number): Reading => reads(p_bar, { temperature: celsius(20), ambient: standardAtmosphere });

  test('the upper limit is in the band: venting may stop at a mark there', () => {
    const spec = specOf(151.5, 20, {
      ambient: standardAtmosphere,
      tolerance: { minimum: pointOf(151.2, 20), maximum: pointOf(152, 20) },
    });
    expect(stopOf(charge(spec, at(160))).mark).toEqual({ value: '152', unit: 'bar' });
  });

  test('a target that is allowed just so needs no caution', () => {
    const codes = (allowable: number): string[] =>
      check(specOf(140, 20, { ambient: standardAtmosphere, allowable: bar(allowable) }), at(140)).cautions.map(({ code }) => code); // prettier-ignore
    expect(codes(140)).not.toContain('target above the allowable pressure');
    expect(codes(140)).not.toContain('reading above the allowable pressure');
  });
});
