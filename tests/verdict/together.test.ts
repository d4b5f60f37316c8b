import { describe, expect, test } from 'vitest';
import { gauge, target, temperature, uncertainty, type Reading, type Specification } from 'isochore';
import { together, type RoundReading, type RoundAsWhole } from '../../src/verdict/together.js';
import { celsius, reads, specOf, specWith } from '../support/accumulator.js';
import { dialWith, inBar, INSTRUMENTS, instrumentsWith, onlyNormal } from '../support/instruments.js';
import { inheriting } from '../support/inheriting.js';
import { problemOf } from '../support/problem.js';

/** Park and Miller's generator with the multiplier 48271: the same rounds every time. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/** A normal deviate, by Box and Muller. */
const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

const spec = specWith();

interface Made {
  /** What the gauge makes of a true pressure, in bar. */
  readonly shows?: (bar: number) => number;
  /** True losses of the first ones, in bar. */
  readonly lost?: readonly number[];
  readonly scatter?: number;
  readonly count?: number;
  /** Different pre-charges, in turn. */
  readonly specs?: readonly Specification[];
  readonly instruments?: typeof INSTRUMENTS;
  readonly random: () => number;
}

/** A round of accumulators about their targets, 36 to 44 °C warm, read to a step of 1 bar. */
function roundOf(made: Made): RoundReading[] {
  const { shows = (p: number) => p, lost = [], scatter = 1, count = 16, specs = [spec], instruments, random } = made;
  return Array.from({ length: count }, (_, i) => {
    const of = specs[i % specs.length] ?? spec;
    const at = reads(1, { temperature: celsius(Math.round(36 + 8 * random())) });
    const right = target(of, at).pascals / 1e5;
    const truth = right - (lost[i] ?? 0) + scatter * normal(random);
    const reading: Reading = { ...at, pressure: gauge(Math.round(shows(truth)), 'bar') };
    return instruments === undefined ? { spec: of, reading } : { spec: of, reading, instruments };
  });
}

const KGF = 0.980665; // bar, exactly (NIST SP 811, B.8)
const asBar = (p: number): number => p / KGF;

function look(checks: readonly RoundReading[]): RoundAsWhole {
  const found = together(checks);
  if (found.outcome === 'too few readings') throw new Error(found.outcome);
  return found;
}

/** How many of a thousand rounds are found to have a common shift. */
function found(made: Omit<Made, 'random'>, seed: number): number {
  const random = seeded(seed);
  let count = 0;
  for (let i = 0; i < 1000; i += 1) count += look(roundOf({ ...made, random })).outcome === 'common shift' ? 1 : 0;
  return count;
}

// Scatter and step of the gauge are 1 bar, as good as no help: 2 % of 150 bar is three of them.
describe('a thousand rounds of 16', () => {
  test.each([
    ['without leaks', []],
    ['with 3 true leaks', [30, 12, 6]],
    ['with 3 overcharged', [-8, -5, -20]],
  ])(
    'show a gauge in kgf/cm2 read as bar in 99 %% of them: %s',
    (_, lost) => {
      expect(found({ shows: asBar, lost }, 11)).toBeGreaterThanOrEqual(990);
    },
    60_000,
  );

  test('show it in 97 % beside 3 leaks of the size of the slip, which hide among the scatter', () => {
    expect(found({ shows: asBar, lost: [4, 3, 3] }, 11)).toBeGreaterThanOrEqual(970);
  }, 60_000);

  test.each([
    ['without leaks', []],
    ['with 3 true leaks', [30, 12, 6]],
    ['with 3 small ones', [4, 3, 3]],
    ['with 3 alike', [10, 10, 10]],
  ])(
    'show a shift that is not there in no more than 1 %%: %s',
    (_, lost) => {
      expect(found({ lost }, 12)).toBeLessThanOrEqual(10);
    },
    60_000,
  );

  test('have few false ones in a smaller round and at other scatters, the temperature rounded to 1 °C', () => {
    for (const count of [8, 11, 16]) {
      for (const scatter of [0.3, 2]) expect(found({ count, scatter }, 5)).toBeLessThanOrEqual(10);
    }
  }, 60_000);
});

/** A round without scatter but that of its steps of 1 bar. */
const still = (made: Omit<Made, 'random' | 'scatter'>): RoundReading[] =>
  roundOf({ ...made, scatter: 0, random: seeded(3) });

test('a check without instruments has none, whatever all objects inherit', () => {
  const round = roundOf({ random: seeded(7) });
  expect(inheriting('instruments', 1, () => together(round))).toEqual(together(round));
});

describe('a common shift', () => {
  test('of a gauge in kgf/cm2 is a ratio of 1/0.980665, leaves nothing, and shows the leaks that it hid', () => {
    const { shift, candidates, readings, outcome } = look(still({ shows: asBar, lost: [0, 9, 0, 3] }));
    expect(outcome).toBe('common shift');
    expect(Math.abs(shift.ratio.value - 1 / KGF)).toBeLessThan(3 * shift.ratio.standard);
    expect(candidates[0]?.slip).toEqual({ code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' });
    expect(Math.abs(candidates[0]?.remaining.value.pascals ?? NaN)).toBeLessThan(0.3e5);
    // 3 bar of loss under 3 bar of slip looked like nothing.
    expect(readings.filter(({ explained }) => !explained).map(({ index }) => index)).toEqual([1, 3]);
    expect(readings[3]?.remaining.pascals).toBeCloseTo(-3e5, -5);
    expect(Math.abs(readings[3]?.offTarget.pascals ?? NaN)).toBeLessThan(1e5);
    expect(shift.explains).toBe(14);
  });

  test('of a gauge in absolute pressure is a difference of the ambient', () => {
    const specs = [20, 60, 140].map((p) => specOf(p, 20));
    const { shift, candidates } = look(still({ shows: (p) => p + 1.01325, specs, count: 48 }));
    expect(Math.abs(shift.difference.value.pascals - 101325)).toBeLessThan(3 * shift.difference.standard.pascals);
    expect(candidates[0]?.slip).toEqual({ code: 'absolute stated as gauge', unit: 'bar' });
  });

  test('is told as ratio or difference by targets that differ, and not by targets alike', () => {
    const specs = [30, 90, 180].map((p) => specOf(p, 20));
    expect(look(still({ shows: (p) => 1.04 * p, specs })).shift.better).toBe('ratio');
    expect(look(still({ shows: (p) => p + 4, specs })).shift.better).toBe('difference');
    expect(look(still({ shows: (p) => p + 4 })).shift.better).toBe('cannot be told');
    // Leaks where the pressure is low are nearer to a ratio, and do not count for more than any other that is off.
    expect(look(still({ shows: (p) => p + 4, specs, lost: [25, 0, 0, 25] })).shift.better).toBe('difference');
  });

  test('follows the better fit: how much it explains, and what the instruments can do to it', () => {
    const specs = [30, 90, 180].map((p) => specOf(p, 20));
    const fine = dialWith({ accuracy: { accuracyClass: 0.25 }, temperature: celsius(20) });
    const ratio = look(still({ shows: (p) => 1.04 * p, specs, instruments: fine }));
    expect([ratio.outcome, ratio.shift.explains]).toEqual(['common shift', 16]);
    const most = ({ readings }: RoundAsWhole): number => Math.max(...readings.map(({ remaining }) => Math.abs(remaining.pascals))); // prettier-ignore
    expect(most(ratio)).toBeLessThan(1e5);
    // Of the first of them: 1.3 bar, where a class of 0.25 allows 0.6.
    expect(ratio.shift.instruments).toBe('cannot explain it');
    const less = look(still({ shows: (p) => 1.015 * p, specs, instruments: fine }));
    expect(less.shift.better).toBe('ratio');
    expect(less.shift.instruments).toBe('can explain it');
    const difference = look(still({ shows: (p) => p + 4, specs }));
    expect([difference.outcome, difference.shift.explains]).toEqual(['common shift', 16]);
    expect(most(difference)).toBeLessThan(1e5);
  });

  test('that a third of the readings does not show is none, however sure the rest are', () => {
    const lost = (count: number): number[] => Array.from({ length: count }, (_, i) => 8 + 5 * i);
    const of = (count: number): RoundAsWhole => look(still({ shows: (p) => p + 4, lost: lost(count), count: 18 }));
    expect([of(5).outcome, of(5).shift.explains]).toEqual(['common shift', 13]);
    expect([of(6).outcome, of(6).shift.explains]).toEqual(['common shift', 12]);
    expect([of(7).outcome, of(7).shift.explains]).toEqual(['no common shift', 11]);
  });

  test('of a thermometer is the temperature that it left out', () => {
    const checks = still({}).map(({ spec: of, reading }) => {
      const cold = { temperature: temperature(reading.temperature.kelvins - 5, 'K') };
      return { spec: of, reading: { ...reading, ...cold } };
    });
    const { outcome, shift } = look(checks);
    expect(outcome).toBe('common shift');
    expect(Math.abs(shift.temperature.value.kelvins - 5)).toBeLessThan(3 * shift.temperature.standard.kelvins);
  });

  test('of temperatures in °F typed as °C has that candidate', () => {
    const checks = still({}).map(({ spec: of, reading }) => {
      const typed = (reading.temperature.kelvins - 273.15) * 1.8 + 32;
      return { spec: of, reading: { ...reading, temperature: celsius(typed) } };
    });
    expect(look(checks).candidates[0]?.slip).toEqual({ code: 'unit of temperature', stated: '°C', readAs: '°F' });
  });

  test('of readings that all look empty: 153 bar stated as 153 kPa', () => {
    const checks = still({}).map(({ spec: of, reading }) => ({
      spec: of,
      reading: {
        ...reading,
        pressure: gauge(reading.pressure.pascals / 1e7, 'bar'),
        gaugeStep: { step: 0.01, unit: 'bar' },
      },
    })) satisfies RoundReading[];
    const { outcome, candidates, shift } = look(checks);
    expect(outcome).toBe('common shift');
    expect(shift.ratio.value).toBeCloseTo(0.01, 3);
    expect(candidates.map(({ slip }) => slip)).toEqual([{ code: 'unit of pressure', stated: 'kPa', readAs: 'bar' }]);
  });

  test('is what more than two thirds of the readings show: half of a round is no shift', () => {
    const lost = Array.from({ length: 8 }, () => 6);
    expect(look(still({ lost })).outcome).toBe('no common shift');
  });

  test('that instruments within their limits make is said to be theirs', () => {
    const by = (shows: Made['shows'], instruments?: typeof INSTRUMENTS): string =>
      look(still({ ...(shows && { shows }), ...(instruments && { instruments }) })).shift.instruments;
    expect(by((p) => p + 2, INSTRUMENTS)).toBe('can explain it'); // class 1 of 250 bar: 2.5 bar
    expect(by((p) => p + 6, INSTRUMENTS)).toBe('cannot explain it');
    expect(by((p) => p - 6, INSTRUMENTS)).toBe('cannot explain it');
    const fine = dialWith({ accuracy: { accuracyClass: 0.1 }, temperature: celsius(20) });
    expect(by((p) => p + 4, fine)).toBe('cannot explain it');
    expect(by(undefined)).toBe('not stated');
  });

  test('is measured by what the instruments do to all alike, not by the steps to which they are read', () => {
    const fine = onlyNormal(0.05); // and a gauge read to 1 bar, which is half a bar to either side
    const checks = still({ instruments: fine }).map(({ spec: of, reading }) => ({
      spec: of,
      reading: { ...reading, pressure: gauge(target(of, reading).pascals + 0.4e5, 'Pa') },
      instruments: fine,
    }));
    expect(look(checks).shift.instruments).toBe('cannot explain it');
  });

  test('is as sharp as its readings, whatever the instruments do to all alike', () => {
    const { standard } = look(still({ instruments: INSTRUMENTS })).shift.difference;
    expect(standard.pascals).toBeLessThan(0.2e5); // steps of 1 bar and 1 K are 0.34 bar, over the root of 16
  });

  test('has the candidate first that leaves least', () => {
    // At 60 bar the ambient is 1.0 bar, and 2 % are 1.2.
    const absolute = { code: 'absolute stated as gauge', unit: 'bar' };
    const kgf = { code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' };
    const listed = (shows: Made['shows']): unknown[] =>
      look(still({ ...(shows && { shows }), specs: [specOf(55, 20)], count: 64 })).candidates.map(({ slip }) => slip);
    expect(listed((p) => p + 1)).toEqual([absolute, kgf]);
    expect(listed(asBar)).toEqual([kgf, absolute]);
  });

  test('has no candidate that leaves half of it, nor one that leaves more than the instruments and the scatter', () => {
    const hasKgf = (shows: Made['shows'], instruments?: typeof INSTRUMENTS): boolean =>
      look(still({ ...(shows && { shows }), ...(instruments && { instruments }) })).candidates.some(
        ({ slip }) => 'readAs' in slip && slip.readAs === 'kgf/cm2',
      );
    // In kgf/cm2 it would be 3 bar.
    expect(hasKgf((p) => p + 1.5, INSTRUMENTS)).toBe(false);
    expect(hasKgf((p) => p + 5)).toBe(false);
    expect(hasKgf((p) => p + 5, INSTRUMENTS)).toBe(true);
  });

  test('takes the correction of a certificate off first', () => {
    const accuracy = {
      certificate: {
        correction: inBar(-4),
        expandedUncertainty: inBar(0.2),
        coverageFactor: 2,
        due: '2027-01-01',
      },
    };
    const checks = still({ shows: (p) => p + 4, instruments: dialWith({ accuracy }) });
    expect(look(checks).outcome).toBe('no common shift');
    const both = still({ shows: (p) => asBar(p) + 4, instruments: dialWith({ accuracy }) });
    const remaining = look(both).candidates[0]?.remaining.value.pascals ?? NaN;
    expect(Math.abs(remaining)).toBeLessThan(0.3e5);
    expect(look(checks.map(({ spec: of, reading }) => ({ spec: of, reading }))).outcome).toBe('common shift');
  });
});

describe('a vessel whose expansion is corrected', () => {
  const vessel = { linearExpansion_per_K: 16e-6, limit_per_K: 0, treated: 'corrected' } as const;
  const instruments = instrumentsWith({ vessel });
  /** A reading that is right for the vessel as it is warm, and what a gauge makes of it. */
  const right = ({ spec: of, reading }: RoundReading, shows = (p: number) => p): RoundReading => {
    const found = uncertainty(of, reading, instruments);
    if (!('offTarget' in found)) throw new Error(found.because);
    const truth = (reading.pressure.pascals - found.offTarget.pascals) / 1e5;
    return { spec: of, reading: { ...reading, pressure: gauge(shows(truth), 'bar') }, instruments };
  };

  test('moves the target of each, as it does for the uncertainty', () => {
    const checks = still({ instruments, lost: [5] });
    for (const { index, offTarget } of look(checks).readings) {
      const { spec: of, reading } = checks[index] as RoundReading;
      expect(uncertainty(of, reading, instruments)).toMatchObject({ offTarget });
    }
  });

  test('and what a slip leaves', () => {
    const { candidates } = look(still({ instruments }).map((one) => right(one, asBar)));
    expect(candidates[0]?.slip).toEqual({ code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' });
    expect(Math.abs(candidates[0]?.remaining.value.pascals ?? NaN)).toBeLessThan(1);
  });
});

describe('a slip of the round', () => {
  test('is one that two thirds of its readings can have made', () => {
    // Numbers on a gauge in kgf/cm2, written down as bar; the rest was converted, and lies on none of its marks.
    const round = (marks: number): unknown[] => {
      const checks = Array.from({ length: 18 }, (_, i): RoundReading => {
        const at = reads(1, { temperature: celsius(36 + (i % 9)), gaugeStep: { step: 1, unit: 'kgf/cm2' } });
        const kgf = target(spec, at).pascals / 1e5 / KGF;
        const number = i < marks ? Math.round(kgf) : Math.floor(kgf) + 0.53 + 0.01 * (i % 3);
        return { spec, reading: { ...at, pressure: gauge(number, 'bar') } };
      });
      const { outcome, candidates } = look(checks);
      expect(outcome).toBe('common shift');
      return candidates.map(({ slip }) => slip);
    };
    const slip = { code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' };
    expect(round(12)).toContainEqual(slip);
    expect(round(11)).not.toContainEqual(slip);
  });

  test('may have no answer for some of them', () => {
    // Kelvins typed as °C, and one true 50 °C: 50 K is no gas at that pressure.
    const checks = still({}).map(({ spec: of, reading }, i): RoundReading => {
      const typed = i === 3 ? 50 : reading.temperature.kelvins;
      return { spec: of, reading: { ...reading, temperature: celsius(typed) } };
    });
    const [first] = look(checks).candidates;
    expect(first).toMatchObject({ slip: { code: 'unit of temperature', stated: '°C', readAs: 'K' }, explains: 15 });
  });
});

describe('a round without a common shift', () => {
  test('leaves every reading as it is, and shows those that are off', () => {
    const { outcome, candidates, readings } = look(still({ lost: [0, 9] }));
    expect(outcome).toBe('no common shift');
    expect(candidates).toEqual([]);
    expect(readings.every((one) => one.remaining.pascals === one.offTarget.pascals)).toBe(true);
    expect(readings.filter(({ explained }) => !explained).map(({ index }) => index)).toEqual([1]);
  });
});

test('readings without scatter still have half a step each: 1 bar / √12, over the root of 16', () => {
  const checks = still({}).map(({ spec: of, reading }) => ({
    spec: of,
    reading: { ...reading, pressure: target(of, reading) },
  }));
  const { outcome, shift } = look(checks);
  expect(outcome).toBe('no common shift');
  expect(shift.difference.value.pascals).toBe(0);
  expect(shift.difference.standard.pascals).toBeCloseTo(1e5 / Math.sqrt(12) / 4, 6);
});

describe('readings that do not count', () => {
  test('are named with why, in their places, and are not part of the round', () => {
    const checks = still({ shows: asBar });
    const [first, second] = checks as [RoundReading, RoundReading];
    checks[0] = { ...first, reading: { ...first.reading, oilSide: 'not drained' } };
    checks[1] = { ...second, reading: { ...second.reading, temperature: temperature(40, 'K') } };
    const { leftOut, readings, outcome } = look(checks);
    expect(leftOut).toMatchObject([
      { index: 0, because: 'no evidence', problems: [] },
      { index: 1, because: 'no answer', problems: [{ code: 'outside the model', path: 'temperature' }] },
    ]);
    expect(readings.map(({ index }) => index)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
    expect(outcome).toBe('common shift');
  });

  test('are those of another gas, and those beyond the scale of the gauge', () => {
    const checks = still({ instruments: INSTRUMENTS });
    const [first, second] = checks as [RoundReading, RoundReading];
    checks[0] = { ...first, reading: { ...first.reading, gasInside: 'not known' } };
    checks[1] = { ...second, reading: { ...second.reading, pressure: gauge(251, 'bar') } };
    expect(look(checks).leftOut).toEqual([0, 1].map((index) => ({ index, because: 'no evidence', problems: [] })));
  });

  test('leave too few below eight', () => {
    expect(together(still({ count: 7 }))).toEqual({ outcome: 'too few readings', needed: 8, leftOut: [] });
    expect(together(still({ count: 8 })).outcome).toBe('no common shift');
    expect(together([]).outcome).toBe('too few readings');
  });
});

test('faults of the call are thrown together, each with its place', () => {
  const checks = still({ count: 8 }) as [RoundReading, RoundReading, ...RoundReading[]];
  checks[1] = { ...checks[1], reading: { ...checks[1].reading, oilSide: 'dry' as never } };
  expect(problemOf(() => together(checks)).path).toBe('checks[1].oilSide');
  expect(problemOf(() => together(null as never))).toMatchObject({ code: 'wrong kind', path: 'checks' });
  expect(problemOf(() => together([null as never])).path).toBe('checks[0]');
});
