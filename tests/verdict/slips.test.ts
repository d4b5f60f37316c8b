import { describe, expect, test } from 'vitest';
import { gauge, judge, temperature, type PressureUnit, type Reading } from 'isochore';
import { kgfOverBar, slips, slipText, type Slip } from '../../src/verdict/slips.js';
import { barOf, celsius, readingWith, reads, specOf, specWith } from '../support/accumulator.js';
import type { Instruments } from '../../src/reading/instruments.js';
import { CONTACT, dialWith, inK, INSTRUMENTS, instrumentsWith, onlyNormal } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

// Invented readings of an invented accumulator: 140 bar at 20 °C, so 152.6 bar at 40 °C, ± 2 bar.
const spec = specWith();

function stated(number: number, unit: PressureUnit, step: number, changed: Partial<Reading> = {}): Reading {
  return readingWith({ pressure: gauge(number, unit), gaugeStep: { step, unit }, ...changed });
}

const alone = (slip: Slip): unknown => expect.objectContaining({ slips: [slip] });

describe('outside facts', () => {
  test('one kgf/cm2 is 0.980665 bar exactly (NIST SP 811, B.8)', () => {
    expect(kgfOverBar()).toBe(0.980665);
  });

  test('2213 on a gauge in psi is 152.6 bar: 1 psi is 6894.757 Pa (NIST SP 811, B.8)', () => {
    const [candidate] = slips(spec, stated(2213, 'bar', 1)).candidates;
    expect(candidate?.pressure.pascals).toBeCloseTo(2213 * 6894.757, -2);
    expect(candidate?.slips).toEqual([{ code: 'unit of pressure', number: 2213, stated: 'bar', readAs: 'psi' }]);
    expect(candidate?.verdict.outcome).toBe('within');
  });

  test('104 °F is 40 °C and 313.15 K is 40 °C, by definition', () => {
    const of = (value: number): number | undefined =>
      slips(spec, reads(153, { temperature: celsius(value) })).candidates[0]?.temperature.kelvins;
    expect(of(104)).toBeCloseTo(313.15, 10);
    expect(of(313.15)).toBeCloseTo(313.15, 10);
  });
});

describe('a slip of the pressure', () => {
  test.each<[number, PressureUnit, number, PressureUnit]>([
    [15.3, 'bar', 0.1, 'MPa'],
    [2213, 'bar', 1, 'psi'],
    [15300, 'bar', 100, 'kPa'],
    [153, 'MPa', 1, 'bar'],
    [153, 'kPa', 1, 'bar'],
    [153, 'psi', 1, 'bar'],
    [2213, 'MPa', 1, 'psi'],
    [155.6, 'psi', 0.2, 'kgf/cm2'],
    [15.3, 'kPa', 0.1, 'MPa'],
  ])('%s stated in %s, on a gauge with steps of %s, is read as %s', (number, unit, step, readAs) => {
    const found = slips(spec, stated(number, unit, step));
    expect(found.outcome).toBe('slip possible');
    expect(found.candidates).toContainEqual(alone({ code: 'unit of pressure', number, stated: unit, readAs }));
    for (const { pressure, temperature: at, verdict } of found.candidates) {
      const meant = judge(spec, readingWith({ pressure, temperature: at, gaugeStep: { step: 1e-3, unit: 'bar' } }));
      expect(meant.outcome).toBe('within');
      expect(verdict.outcome).toBe('within');
    }
  });

  test('written in another unit than the gauge has starts from a mark of the gauge', () => {
    const psi = { gaugeStep: { step: 1, unit: 'psi' } } as const;
    const slip: Slip = { code: 'unit of pressure', number: 2213, stated: 'bar', readAs: 'psi' };
    expect(slips(spec, reads(2213, psi)).candidates).toContainEqual(alone(slip));
  });

  test('may lie between two marks, where eyes see halves and fifths of a division', () => {
    // 100 bar are 1450.4 psi. The gauge has marks at 1440, 1460; nothing on it is 1450 bar.
    const low = specOf(100, 20);
    const step = { gaugeStep: { step: 20, unit: 'psi' }, temperature: celsius(20) } as const;
    for (const number of [1440, 1450, 1456, 1460]) {
      const slip: Slip = { code: 'unit of pressure', number, stated: 'bar', readAs: 'psi' };
      expect(slips(low, reads(number, step)).candidates).toContainEqual(alone(slip));
    }
    // What the accumulator cannot have held was not read as it is stated, whatever the number.
    // And nobody wrote down 1478.588508817996 kgf/cm2, which 1450 bar are.
    const numbers = (stated: number, by = low, fullScale = gauge(2000, 'bar')) =>
      slips(by, reads(stated, { ...step, fullScale })).candidates.map(({ slips: [one] }) => one.number);
    expect([1450, 1453.3].map((one) => numbers(one))).toEqual([[1450], [1453.3]]);
    // Nor was what lies beyond the scale. As much as both allow can have been there, and is no number on that gauge.
    const strong = (most: number) => specOf(100, 20, { allowable: gauge(most, 'bar') });
    expect(numbers(1453.3, strong(1453.3))).toEqual([]);
    expect(numbers(1453.3, strong(1453.2))).toEqual([1453.3]);
    expect(numbers(1453.3, strong(2000), gauge(1453.3, 'bar'))).toEqual([]);
    expect(numbers(1453.3, strong(2000), gauge(1453.2, 'bar'))).toEqual([1453.3]);
  });

  test('of 2 %, which a true loss has too, is none but on such a number', () => {
    // 155.6 kgf/cm2 are 152.6 bar: written down as bar, on a gauge in kgf/cm2.
    const low = specWith({ allowable: gauge(300, 'bar') });
    const found = (number: number): unknown[] =>
      slips(low, reads(number, { gaugeStep: { step: 1, unit: 'kgf/cm2' } })).candidates.filter(
        ({ slips: [one] }) => one.code === 'unit of pressure' && one.stated === 'bar' && one.readAs === 'kgf/cm2',
      );
    for (const number of [156, 156.5, 156.4]) expect(found(number)).toHaveLength(1);
    expect(found(156.25)).toEqual([]);
    // A gauge in kgf/cm2 that shows a mark: in bar, that is no number on it.
    const { candidates } = slips(low, stated(160, 'kgf/cm2', 1));
    expect(candidates.filter(({ slips: [one] }) => 'stated' in one && one.stated === 'bar')).toEqual([]);
  });

  test('takes a step with it: a gauge read to 1 psi, not to 1 bar, has marks in a narrow band', () => {
    const narrow = specWith({ tolerance: { plusMinus: barOf(0.2), applies: 'at the measured temperature' } });
    const [candidate] = slips(narrow, stated(2213, 'bar', 1)).candidates;
    expect(candidate?.verdict.outcome).toBe('within');
    expect(candidate?.verdict.band.onGauge).toMatchObject({ unit: 'psi' });
  });

  test('is one too on a gauge so coarse that it has no mark in the band', () => {
    const { candidates } = slips(spec, stated(15.5, 'bar', 0.5)); // 150 or 155 bar on a gauge in MPa, for 150.6 to 154.6
    const slip: Slip = { code: 'unit of pressure', number: 15.5, stated: 'bar', readAs: 'MPa' };
    expect(candidates.find((one) => one.slips.length === 1)?.slips).toEqual([slip]);
    expect(candidates[0]?.verdict.outcome).toBe('gauge too coarse');
  });

  test('of the basis is the ambient of the hour', () => {
    const low = specOf(10, 20, { tolerance: { plusMinus: barOf(0.2), applies: 'at the measured temperature' } });
    const at = (value: number): Reading => stated(value, 'bar', 0.01, { temperature: celsius(20) });
    const [absolute] = slips(low, at(11.01)).candidates;
    expect(absolute?.slips).toEqual([{ code: 'absolute stated as gauge', number: 11.01, unit: 'bar' }]);
    expect(absolute?.pressure.pascals).toBeCloseTo(1101000 - 101325, 6);
    const [taken] = slips(low, at(8.98675)).candidates;
    expect(taken?.slips).toEqual([{ code: 'gauge stated as absolute', number: 10, unit: 'bar' }]);
    expect(taken?.pressure.pascals).toBe(1e6);
  });

  test('that would be below vacuum is none', () => {
    expect(slips(spec, reads(0)).candidates).toEqual([]);
    expect(slips(spec, reads(-0.5)).outcome).toBe('no slip found');
  });
});

describe('a slip of the temperature', () => {
  test.each([
    ['104 °F typed as 104 °C', temperature(104, '°C'), { number: 104, stated: '°C', readAs: '°F' }],
    ['313 K typed as 313 °C', temperature(313, '°C'), { number: 313, stated: '°C', readAs: 'K' }],
    ['40 °C typed as 40 °F', temperature(40, '°F'), { number: 40, stated: '°F', readAs: '°C' }],
    ['40 °C typed as 40 K', temperature(40, 'K'), { number: 40, stated: 'K', readAs: '°C' }],
    ['313 K typed as 313 °F', temperature(313, '°F'), { number: 313, stated: '°F', readAs: 'K' }],
    ['104 °F typed as 104 K', temperature(104, 'K'), { number: 104, stated: 'K', readAs: '°F' }],
  ] as const)('%s', (_, at, units) => {
    const found = slips(spec, reads(153, { temperature: at }));
    expect(found.candidates).toContainEqual(alone({ code: 'unit of temperature', ...units }));
  });

  test('is asked where the reading has no answer: 40 K is liquid nitrogen, or solid', () => {
    const reading = reads(153, { temperature: temperature(40, 'K') });
    expect(problemOf(() => judge(spec, reading)).code).toBe('outside the model');
    const { outcome, asItStands } = slips(spec, reading);
    expect(outcome).toBe('slip possible');
    expect(asItStands).toMatchObject({
      outcome: 'no answer',
      problems: [{ code: 'outside the model', path: 'temperature' }],
    });
  });
});

describe('two slips', () => {
  test('are looked for where no single one lands in the band', () => {
    const { candidates } = slips(spec, stated(2213, 'bar', 1, { temperature: celsius(104) }));
    expect(candidates.map((one) => one.slips)).toContainEqual([
      { code: 'unit of pressure', number: 2213, stated: 'bar', readAs: 'psi' },
      { code: 'unit of temperature', number: 104, stated: '°C', readAs: '°F' },
    ]);
    expect(candidates.every((one) => one.slips.length === 2)).toBe(true);
  });

  test('are not, where a single one does', () => {
    const { candidates } = slips(spec, stated(15.3, 'bar', 0.1));
    expect(candidates.every((one) => one.slips.length === 1)).toBe(true);
  });
});

describe('candidates', () => {
  test('come nearest to the target first', () => {
    const wide = specWith({ tolerance: { plusMinus: barOf(60), applies: 'at the measured temperature' } });
    const found = slips(wide, stated(15.3, 'bar', 0.1)).candidates;
    const off = found.map((one) => Math.abs(one.pressure.pascals - one.verdict.target.pascals));
    expect(off).toEqual([...off].sort((a, b) => a - b));
  });

  test('come nearest first, whichever is looked at first', () => {
    // 2200 psi are 151.7 bar; and 220 bar written down as MPa are 2200 bar. One is nearer where it is cool, one where it is hot.
    const wide = specWith({ tolerance: { plusMinus: barOf(60), applies: 'at the measured temperature' } });
    const readAs = (t: number) =>
      slips(wide, stated(2200, 'bar', 10, { temperature: celsius(t) })).candidates.map(({ slips: [slip] }) =>
        slip.code === 'unit of pressure' ? slip.readAs : slip.code,
      );
    expect(readAs(80)).toEqual(['psi', 'bar']);
    expect(readAs(104)).toEqual(['bar', 'psi']);
  });

  test('are none for a true loss that no unit explains', () => {
    expect(slips(spec, reads(100))).toMatchObject({ outcome: 'no slip found', candidates: [] });
  });
});

describe('what is asked', () => {
  test('is nothing of a reading in its band, nor of one that its gauge explains', () => {
    expect(slips(spec, reads(153)).outcome).toBe('no reason to ask');
    expect(slips(spec, reads(150)).outcome).toBe('no reason to ask'); // 0.6 bar below the limit: less than a step
    const cool = { temperature: celsius(20) }; // from 138 bar on
    expect(slips(spec, reads(137, cool)).outcome).toBe('no reason to ask');
    expect(slips(spec, reads(136.9, cool)).outcome).not.toBe('no reason to ask');
    expect(slips(spec, reads(149)).outcome).not.toBe('no reason to ask');
    expect(slips(spec, reads(149), INSTRUMENTS).outcome).toBe('no reason to ask'); // class 1 of 250 bar: 2.5 bar
    expect(slips(spec, reads(146), INSTRUMENTS).outcome).not.toBe('no reason to ask');
    expect(slips(spec, reads(160), INSTRUMENTS).outcome).not.toBe('no reason to ask');
  });

  test('needs evidence, whatever the unit', () => {
    for (const at of [celsius(40), temperature(40, 'K')]) {
      const reading = reads(15.3, { oilSide: 'not drained', temperature: at });
      expect(slips(spec, reading)).toMatchObject({ outcome: 'no evidence', candidates: [] });
      expect(slips(spec, reads(15.3, { gasInside: 'not known', temperature: at })).outcome).toBe('no evidence');
    }
  });

  test('is always asked beyond the end of the scale', () => {
    const found = slips(spec, stated(2213, 'bar', 1), INSTRUMENTS);
    expect(found.asItStands).toMatchObject({ outcome: 'no answer', problems: [{ code: 'outside the model' }] });
    expect(found.outcome).toBe('slip possible');
    // Inside the band, on a scale that ends below it, and with the scale stated beside the reading.
    expect(slips(spec, reads(152), dialWith({ fullScale: gauge(150, 'bar') })).outcome).not.toBe('no reason to ask');
    expect(slips(spec, reads(152, { fullScale: gauge(150, 'bar') })).outcome).not.toBe('no reason to ask');
    expect(slips(spec, reads(152, { fullScale: gauge(152, 'bar') })).outcome).toBe('no reason to ask');
  });

  test('is never whether it was meant as it was stated, though that lies in the band', () => {
    const beyond = slips(spec, reads(152, { fullScale: gauge(150, 'bar') }));
    expect(beyond.asItStands.outcome).toBe('within');
    // A bar more or less lies there as well.
    const codes = beyond.candidates.map(({ slips: [one] }) => one.code);
    expect(codes).toEqual(['gauge stated as absolute', 'absolute stated as gauge']);
  });

  test('is asked of an empty gas side, and by the step where the class does not hold', () => {
    const pinned = dialWith({ zero: 'with stop pin' });
    expect(slips(spec, stated(15.3, 'bar', 0.1), pinned).outcome).toBe('slip possible');
    expect(slips(spec, stated(1.53, 'bar', 0.01), pinned).asItStands.outcome).toBe('gas side empty');
    expect(slips(spec, reads(0), pinned).outcome).toBe('no slip found');
    // 27 bar where 28 to 32 are allowed, on a scale of 400: its class would explain 4 bar, and does not hold there.
    const low = specOf(30, 20);
    const at = { temperature: celsius(20), gaugeStep: { step: 0.1, unit: 'bar' } } as const;
    const wide = (zero: 'with stop pin' | 'without stop pin') => dialWith({ zero, fullScale: gauge(400, 'bar') });
    expect(slips(low, reads(27, at), wide('without stop pin')).outcome).toBe('no reason to ask');
    expect(slips(low, reads(27, at), wide('with stop pin')).outcome).not.toBe('no reason to ask');
  });
});

describe('a gauge in kgf/cm2 read as bar', () => {
  const within = (plusMinus: number, unit: 'bar' | 'kgf/cm2' | 'psi', by?: typeof INSTRUMENTS): string =>
    slips(
      specWith({ tolerance: { plusMinus: barOf(plusMinus), applies: 'at the measured temperature' } }),
      readingWith({ pressure: gauge(153, 'bar'), gaugeStep: { step: 0.1, unit } }),
      by,
    ).kgfFromBar;

  test('is told only where 2 % of the pressure, 3.0 bar, is more than the band and the uncertainty', () => {
    expect(within(2, 'bar')).toBe('cannot be told from bar'); // a band of 4 bar
    expect(within(1.47, 'bar')).toBe('cannot be told from bar');
    expect(within(1.4, 'bar')).toBe('can be told'); // a band of 2.8 bar, and a step
    expect(within(1.4, 'kgf/cm2')).toBe('can be told');
    expect(within(1.5, 'kgf/cm2')).toBe('cannot be told from bar');
    expect(within(1.4, 'bar', INSTRUMENTS)).toBe('cannot be told from bar'); // class 1 of 250 bar
    expect(within(0.3, 'bar', dialWith({ accuracy: { accuracyClass: 0.1 }, temperature: celsius(20) }))).toBe(
      'can be told',
    );
  });

  test('to the hundredth of a bar, with a step of each unit', () => {
    // Lower limit less 0.980665 times the upper: 0.019335 of the target less 1.980665 of the half width.
    const target_bar = judge(spec, readingWith()).target.pascals / 1e5;
    const by = (apart: number, unit: 'bar' | 'kgf/cm2'): string => {
      const plusMinus = barOf((0.019335 * target_bar - apart) / 1.980665);
      const narrow = specWith({ tolerance: { plusMinus, applies: 'at the measured temperature' } });
      return slips(narrow, readingWith({ pressure: gauge(153, 'bar'), gaugeStep: { step: 1, unit } })).kgfFromBar;
    };
    // Said to be bar, a number is 1/0.980665 too high: the limits are apart by more than a step of 1 bar times 0.980665.
    expect([by(0.975, 'bar'), by(0.985, 'bar')]).toEqual(['cannot be told from bar', 'can be told']);
    // Said to be kgf/cm2, it is too low: by more than a step of 0.980665 bar.
    expect([by(0.975, 'kgf/cm2'), by(0.985, 'kgf/cm2')]).toEqual(['cannot be told from bar', 'can be told']);
  });

  test('to the hundredth of a bar, with an error of the gauge that 97.5 % of a normal distribution lie below', () => {
    // At 20 °C, where nothing else errs: 1.960 standard uncertainties.
    const by = (apart: number, unit: 'bar' | 'kgf/cm2'): string => {
      const plusMinus = barOf((0.019335 * 140 - apart) / 1.980665);
      const narrow = specWith({ tolerance: { plusMinus, applies: 'at the measured temperature' } });
      const reading = { pressure: gauge(140, 'bar'), temperature: celsius(20), gaugeStep: { step: 1e-6, unit } };
      return slips(narrow, readingWith(reading), onlyNormal(0.5)).kgfFromBar;
    };
    const [told, not] = ['can be told', 'cannot be told from bar'];
    expect([by(0.97 * 0.980665, 'bar'), by(0.99 * 0.980665, 'bar')]).toEqual([not, told]);
    expect([by(0.97, 'kgf/cm2'), by(0.99, 'kgf/cm2')]).toEqual([not, told]);
  });

  test('is told by the step where the class of the gauge does not hold', () => {
    // 2 % of 30 bar are 0.6 bar; class 1 of 400 bar are 4.
    const plusMinus = barOf(0.1);
    const low = specOf(30, 20, { tolerance: { plusMinus, applies: 'at the measured temperature' } });
    const at = { temperature: celsius(20), gaugeStep: { step: 0.1, unit: 'bar' } } as const;
    const wide = (zero: 'with stop pin' | 'without stop pin') => dialWith({ zero, fullScale: gauge(400, 'bar') });
    expect(slips(low, reads(30, at), wide('with stop pin')).kgfFromBar).toBe('can be told');
    expect(slips(low, reads(30, at), wide('without stop pin')).kgfFromBar).toBe('cannot be told from bar');
  });

  test('is no question for other units, nor without a band', () => {
    expect(within(1.4, 'psi')).toBe('not in question');
    expect(slips(spec, reads(153, { temperature: temperature(40, 'K') })).kgfFromBar).toBe('not in question');
  });
});

describe('faults', () => {
  test('of the call are thrown: what is no reading, no specification, no instruments', () => {
    expect(problemOf(() => slips(spec, reads(153, { oilSide: 'dry' as never }))).path).toBe('oilSide');
    expect(problemOf(() => slips({ ...spec }, reads(153))).code).toBe('unchecked specification');
    expect(problemOf(() => slips(spec, reads(153), { ...INSTRUMENTS, readings: 0 })).path).toBe('instruments.readings');
  });
});

test('every slip has words', () => {
  expect(slipText({ code: 'absolute stated as gauge', number: 11.01, unit: 'bar' })).toMatch(
    /^the number 11.01 bar was/,
  );
  expect(slipText({ code: 'gauge stated as absolute', number: 10, unit: 'bar' })).toMatch(/^the number 10 bar may be/);
  expect(slipText({ code: 'unit of temperature', number: 104, stated: '°C', readAs: '°F' })).toBe(
    'the number 104 was stated in °C; the thermometer may show °F',
  );
  expect(problemOf(() => slipText(null as never))).toMatchObject({ code: 'wrong kind', path: 'slip' });
  expect(problemOf(() => slipText({ code: 'toString' } as never))).toMatchObject({
    code: 'unknown word',
    path: 'slip.code',
  });
  const own = (words: unknown) =>
    problemOf(() => slipText({ code: 'absolute stated as gauge', number: 1, unit: 'bar' }, words as never));
  for (const words of [5, { 'absolute stated as gauge': 5 }])
    expect(own(words)).toMatchObject({ code: 'words not sound', path: 'own' });
  const noText = { code: 'unit of pressure', number: {}, stated: 'bar', readAs: 'MPa' };
  expect(problemOf(() => slipText(noText as never))).toMatchObject({ code: 'wrong kind', path: 'slip' });
});

test('a reading with no reason to ask has no candidates, though another unit would do as well', () => {
  expect(slips(spec, reads(152.5))).toMatchObject({ outcome: 'no reason to ask', candidates: [] });
});

test('where a certificate corrects the temperature out of the gas model, kgf/cm2 is not in question', () => {
  const corrected = (by: number): Instruments => {
    const certificate = { correction: inK(by), expandedUncertainty: inK(1), coverageFactor: 2, due: '2027-01-01' };
    return instrumentsWith({ thermometer: { ...CONTACT, accuracy: { certificate } } });
  };
  const found = slips(spec, reads(153), corrected(-280));
  expect([found.asItStands.outcome, found.kgfFromBar]).toEqual(['within', 'not in question']);
  expect(slips(spec, reads(153), corrected(-2)).kgfFromBar).toBe('cannot be told from bar');
});

test('what is no slip is refused by its name', () => {
  expect(problemOf(() => slipText(null as never))).toMatchObject({
    code: 'wrong kind',
    path: 'slip',
    values: { kind: 'a slip' },
  });
});
