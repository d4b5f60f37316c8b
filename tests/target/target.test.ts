import fc from 'fast-check';
import { slope, standardAtmosphere, target, temperature, write, type Specification } from 'isochore';
import { describe, expect, test } from 'vitest';
import { anyConditions, anySpec, bar, celsius, hPa, specOf, specWith, type AtAPoint } from '../support/accumulator.js';
import { alongLine } from '../support/line.js';
import { problemOf } from '../support/problem.js';
import { numberRows, relativeError } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';

/** Target in bar, at a temperature in °C under a standard atmosphere. */
function targetAt(spec: Specification, t_C: number): number {
  return target(spec, { temperature: celsius(t_C), ambient: standardAtmosphere }).pascals / 1e5;
}

// Source: tests/reference/isochore.csv, the same equation in another program; gauge pressures against 101 325 Pa.
describe('the target along published lines of constant density', () => {
  const ROWS = numberRows('isochore.csv', [
    'p_ref_gauge_bar',
    'T_ref_C',
    'T_C',
    'p_gauge_span2000_bar',
    'rho_span_mol_m3',
  ]);
  const specs = new Map(
    ROWS.map(({ p_ref_gauge_bar: p, T_ref_C: t }) => [
      `${p} ${t}`,
      specOf(p, t, {
        tolerance: { plusMinusPercentOfGauge: 2, applies: 'at the measured temperature' },
        allowable: bar(300),
      }),
    ]),
  );
  const specFor = (row: (typeof ROWS)[number]): AtAPoint => {
    const spec = specs.get(`${row.p_ref_gauge_bar} ${row.T_ref_C}`);
    if (spec === undefined) throw new Error('no specification');
    return spec;
  };

  test('1152 targets of 64 specifications, within 1e-9 bar', () => {
    expect(ROWS).toHaveLength(1152);
    expect(specs.size).toBe(64);
    const off = ROWS.filter((row) => !(Math.abs(targetAt(specFor(row), row.T_C) - row.p_gauge_span2000_bar) <= 1e-9));
    expect(off).toEqual([]);
  });

  test('the density that a specification carries', () => {
    const off = ROWS.filter((row) => !(relativeError(specFor(row).density_mol_m3, row.rho_span_mol_m3) <= 1e-12));
    expect(off).toEqual([]);
  });
});

// Source: tests/reference/README.md.
describe('140 bar at 20 °C', () => {
  const spec = specOf(140, 20);

  test.each([
    { t_C: 0, real: '127.33', ideal: '130.38' },
    { t_C: 40, real: '152.61', ideal: '149.62' },
    { t_C: 60, real: '165.17', ideal: '159.24' },
  ])('is $real bar at $t_C °C, where the ideal-gas law says $ideal', ({ t_C, real, ideal }) => {
    const at = { temperature: celsius(t_C), ambient: standardAtmosphere };
    expect(write(target(spec, at), { step: 0.01, unit: 'bar' })).toBe(`${real} bar gauge`);
    expect((((140 + 1.01325) * (t_C + 273.15)) / 293.15 - 1.01325).toFixed(2)).toBe(ideal);
  });
});

describe('the two ambients', () => {
  test('a barometer that stands 20 hPa higher today lowers what the gauge should show by 20 hPa', () => {
    const spec = specWith({ ambient: hPa(1000) });
    const at = (today: number): number => target(spec, { temperature: celsius(40), ambient: hPa(today) }).pascals;
    expect(at(1020) - at(1000)).toBeCloseTo(-2000, 6);
  });

  test('at the reference temperature the target differs from the plate by the difference of the barometers', () => {
    const spec = specWith({ ambient: hPa(1000) });
    const at = { temperature: celsius(20), ambient: hPa(980) };
    expect(target(spec, at).pascals).toBeCloseTo(14_002_000, 5);
  });

  test('a specification written under a higher ambient asks for more gas, hence for a higher target', () => {
    const at = { temperature: celsius(40), ambient: standardAtmosphere };
    const [low, high] = [specWith({ ambient: hPa(900) }), specWith({ ambient: hPa(1000) })];
    expect(high.density_mol_m3).toBeGreaterThan(low.density_mol_m3);
    // ∂target/∂(ambient of the specification) = p_ρ(T) / p_ρ(T_ref), more than 1 above the reference temperature.
    const rate = (t_K: number): number => span2000(t_K, high.density_mol_m3).dpdrho_T_Pa_m3_mol;
    const wanted = (10_000 * rate(313.15)) / rate(293.15);
    expect(relativeError(target(high, at).pascals - target(low, at).pascals, wanted)).toBeLessThan(1e-3);
    expect(wanted).toBeGreaterThan(10_000);
  });

  // Source: the term-by-term equation, tests/support/span2000.ts.
  test('both are taken into account for any specification, temperature and barometer', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const point = {
          p_g: spec.precharge.pressure.pascals,
          T: spec.precharge.temperature.kelvins,
          ambient: spec.ambient.pascals,
        };
        const wanted = alongLine(point, at.temperature.kelvins, at.ambient.pascals);
        // 1e-9 bar.
        expect(Math.abs(target(spec, at).pascals - wanted)).toBeLessThanOrEqual(1e-4);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the line of a specification', () => {
  test('rises with temperature, for neighbours and for distant temperatures', () => {
    fc.assert(
      fc.property(anySpec, anyConditions, fc.constantFrom(1e-6, 1e-3, 1, 50), (spec, at, more) => {
        const warmer = { ...at, temperature: temperature(at.temperature.kelvins + more, 'K') };
        expect(target(spec, warmer).pascals).toBeGreaterThan(target(spec, at).pascals);
      }),
    );
  });

  test('at the reference temperature and ambient gives the reference pressure back, to the last bit', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const { pressure, temperature: T } = spec.precharge;
        const back = target(spec, { temperature: T, ambient: spec.ambient });
        expect(back).toStrictEqual(pressure);
      }),
    );
  });
});

test('the line meets its reference pressure without a jump', () => {
  fc.assert(
    fc.property(anySpec, fc.constantFrom(-1e-9, 1e-9), (spec, by) => {
      const near = temperature(spec.precharge.temperature.kelvins + by, 'K');
      const there = target(spec, { temperature: near, ambient: spec.ambient });
      expect(relativeError(there.pascals, spec.precharge.pressure.pascals)).toBeLessThanOrEqual(1e-10);
    }),
  );
});

describe('the slope', () => {
  test('is the change of the target per kelvin', () => {
    const h = 0.01;
    fc.assert(
      fc.property(anySpec, anyConditions, (spec, at) => {
        const shifted = (by: number): number =>
          target(spec, { ...at, temperature: temperature(at.temperature.kelvins + by, 'K') }).pascals;
        const central = (shifted(h) - shifted(-h)) / (2 * h);
        expect(relativeError(slope(spec, at).pascalsPerKelvin, central)).toBeLessThanOrEqual(1e-7);
      }),
    );
  });

  test('is 0.63 bar per kelvin for 140 bar at 20 °C, read at 40 °C', () => {
    // From the two neighbours in tests/reference/isochore.csv: 5 K to either side of 40 °C.
    const rows = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', 'p_gauge_span2000_bar']);
    const of = (t_C: number): number =>
      rows.find((x) => x.p_ref_gauge_bar === 140 && x.T_ref_C === 20 && x.T_C === t_C)?.p_gauge_span2000_bar ??
      Number.NaN;
    const at = { temperature: celsius(40), ambient: standardAtmosphere };
    expect(slope(specOf(140, 20), at).pascalsPerKelvin / 1e5).toBeCloseTo((of(45) - of(35)) / 10, 4);
  });
});

describe('conditions that are refused, by target and slope alike', () => {
  const spec = specWith();
  const good = { temperature: celsius(40), ambient: standardAtmosphere };
  const bad: [string, unknown, string, string][] = [
    ['none', undefined, 'temperature', 'wrong kind'],
    ['no temperature', { ambient: standardAtmosphere }, 'temperature', 'wrong kind'],
    ['a bare temperature', { ...good, temperature: 40 }, 'temperature', 'wrong kind'],
    ['no ambient', { temperature: celsius(40) }, 'ambient', 'wrong kind'],
    ['a gauge pressure as ambient', { ...good, ambient: bar(1) }, 'ambient', 'gauge for absolute'],
    ['a barometer in the wrong unit', { ...good, ambient: hPa(10.13) }, 'ambient', 'not an ambient pressure'],
    ['a barometer below 500 hPa', { ...good, ambient: hPa(499.99) }, 'ambient', 'not an ambient pressure'],
    ['a barometer above 1200 hPa', { ...good, ambient: hPa(1200.01) }, 'ambient', 'not an ambient pressure'],
    [
      'a temperature below the model',
      { ...good, temperature: temperature(63.99, 'K') },
      'temperature',
      'outside the model',
    ],
    [
      'one at which the gas is partly liquid',
      { ...good, temperature: temperature(110, 'K') },
      'temperature',
      'two phases',
    ],
    ['a temperature above it', { ...good, temperature: temperature(1000.1, 'K') }, 'temperature', 'outside the model'],
  ];

  test.each(bad)('%s', (_, at, path, code) => {
    for (const call of [target, slope]) {
      expect(problemOf(() => call(spec, at as never))).toMatchObject({ path, code });
    }
  });

  test('a target above the pressures of the model', () => {
    const heavy = specOf(1500, 20, { allowable: bar(1600) });
    const at = { temperature: celsius(400), ambient: standardAtmosphere };
    for (const call of [target, slope]) {
      expect(problemOf(() => call(heavy, at))).toMatchObject({ path: 'temperature', code: 'outside the model' });
    }
  });

  test.each([500, 1200])('the barometer may stand at %d hPa', (ambient) => {
    expect(target(spec, { ...good, ambient: hPa(ambient) }).kind).toBe('gauge pressure');
  });

  test('an ambient problem says what was found and what is wanted, in hPa', () => {
    const { found, wanted } = problemOf(() => target(spec, { ...good, ambient: hPa(10.13) }));
    expect([found, wanted]).toEqual(['10.13 hPa absolute', '500 hPa to 1200 hPa absolute']);
  });
});
