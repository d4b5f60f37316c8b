// A round with a rule: each reading is judged by `assess` where all is stated that it needs, and by `check` where not.
import {
  assess,
  check,
  gauge,
  pressureDifference,
  slips,
  slipText,
  temperature,
  together,
  uncertaintyText,
  valueIn,
  why,
  type Instruments,
  type Reading,
} from 'isochore';
import { orderFor, reportRound, reverify, UNCERTAINTY_CODES, type Round, type RoundReport } from 'isochore/record';
import { describe, expect, test } from 'vitest';
import { CONTRIBUTION } from '../../src/basis/words.js';
import { termsOf } from '../../src/record/write-certainty.js';
import { bar, INSTRUMENTS, kelvin, reads, RULE, SPEC } from '../support/exhaust-valves.js';
import { roundWithoutSupply, expectSound, keysOf, NOTHING, put, reportRest } from '../support/round.js';

type Accumulator = RoundReport['accumulators'][number];

function named(from: RoundReport, name: string): Accumulator {
  return from.accumulators.find((one) => one.name === name) ?? expect.fail(`${name} is not in the report`);
}

function changed(...puts: readonly (readonly [string, unknown])[]): RoundReport {
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  const report = reportRest(round);
  expect(report.problems).toEqual([]);
  return report;
}

const EV1 = '$.groups[0].accumulators[0].visit[0]';
const withEv1 = (p: number, ...more: readonly (readonly [string, unknown])[]): RoundReport =>
  changed([`${EV1}.pressure.value`, p], ...more);

const inBar = (value: unknown): unknown => ({ value, unit: 'bar', basis: 'difference' });

function expectAssessed(json: Accumulator['asFound'], reading: Reading, instruments = INSTRUMENTS, rule = RULE): void {
  const { verdict, charge, decision, uncertainty } = assess(SPEC, reading, instruments, rule);
  expect(json.outcome).toBe(verdict.outcome);
  expect(json.charge.action).toBe(charge.action);
  if (!('interval' in uncertainty) || json.uncertainty?.outcome !== 'stated') return expect.fail('no uncertainty');
  const { standard, interval, offTarget, corrected, contributions } = uncertainty;
  expect(json.uncertainty).toMatchObject({
    corrected: { value: valueIn(corrected, 'bar'), unit: 'bar', basis: 'gauge' },
    offTarget: inBar(valueIn(offTarget, 'bar')),
    standard: inBar(valueIn(standard, 'bar')),
    interval: {
      coverage: 0.95,
      lower: inBar(valueIn(interval.lower, 'bar')),
      upper: inBar(valueIn(interval.upper, 'bar')),
    },
    notCounted: uncertainty.notCounted,
  });
  const { largest } = json.uncertainty;
  expect(largest).toEqual(
    contributions
      .slice(0, largest.length)
      .map(({ of, share, standard: own }) => ({ code: of, share, standard: inBar(valueIn(own, 'bar')) })),
  );
  expect(contributions[largest.length]?.share).toBeLessThan(0.1);
  if (decision.outcome === 'no decision' || json.decision === undefined) return expect.fail('no decision');
  const { settling, rule: own, ...decided } = decision;
  expect(own).toEqual(rule);
  expect(json.decision).toMatchObject(decided);
  expect('settling' in json.decision).toBe(settling !== undefined);
  if (settling === undefined || !('settling' in json.decision)) return;
  const size = (one: typeof settling.gaugeLimit): unknown =>
    typeof one === 'string' ? one : inBar(valueIn(one, 'bar'));
  expect(json.decision.settling).toMatchObject({
    largest: settling.largest,
    gaugeLimit: size(settling.gaugeLimit),
    standard: typeof settling.standard === 'string' ? settling.standard : inBar(valueIn(settling.standard, 'bar')),
    accuracyClass: settling.accuracyClass,
    readings: settling.readings,
  });
}

describe('where all is stated, a report says what assess says', () => {
  test.each([143, 149, 150, 151, 152, 153, 154, 155, 158, 20])('%d bar', (p) => {
    expectAssessed(named(withEv1(p, [`${EV1}.possibleSlip`, 'read again and ruled out']), 'EV 1').asFound, reads(p));
  });

  test('by another rule, correlation, count, ambient limit and temperature of the gauge', () => {
    const report = withEv1(
      155,
      ['$.rule', { acceptance: 'guarded both ways', risk: { below: 0.01, above: 0.2 } }],
      ['$.modelErrorCorrelation', 0.5],
      [`${EV1}.readings`, 4],
      [`${EV1}.ambientLimit`, { value: 20, unit: 'hPa', basis: 'difference' }],
      [`${EV1}.gaugeTemperature`, 'not known'],
    );
    const { asFound } = named(report, 'EV 1');
    const instruments: Instruments = {
      ...INSTRUMENTS,
      gauge: { ...INSTRUMENTS.gauge, temperature: 'not known' },
      barometer: { limit: pressureDifference(20, 'hPa') },
      modelErrorCorrelation: 0.5,
      readings: 4,
    };
    expectAssessed(asFound, reads(155), instruments, { acceptance: 'guarded both ways', risk: { below: 0.01, above: 0.2 } });
    expect(asFound.reading).toMatchObject({ readings: 4, gaugeTemperature: 'not known' });
    expect(asFound.reading.stated).toMatchObject({ readings: 'for the reading', gaugeTemperature: 'for the reading' });
    expect(named(report, 'EV 2').asFound.reading.stated.readings).toBe('for the group');
    expect(report.rule).toEqual({ acceptance: 'guarded both ways', risk: { below: 0.01, above: 0.2 } });
  }); // prettier-ignore

  test('a dial gauge, and an infrared thermometer', () => {
    const report = withEv1(
      152,
      ['$.instruments[0].characteristics', {
        type: 'dial gauge',
        fullScale: { value: 250, unit: 'bar', basis: 'gauge' },
        accuracy: { accuracyClass: 0.6 },
        zero: 'with stop pin',
      }],
      ['$.instruments[3].characteristics', {
        type: 'infrared thermometer',
        accuracy: {
          correction: { value: -1, unit: 'K', basis: 'difference' },
          expandedUncertainty: { value: 1, unit: '°C', basis: 'difference' },
          coverageFactor: 2,
        },
        step: { value: '0.1', unit: 'K', basis: 'difference' },
        shellToGas: { value: 1.8, unit: '°F', basis: 'difference' },
        emissivity: { assumed: 0.95, limit: 0.02 },
        surroundings: { value: 35, unit: '°C' },
      }],
    ); // prettier-ignore
    expectAssessed(named(report, 'EV 1').asFound, reads(152), {
      ...INSTRUMENTS,
      gauge: {
        type: 'dial gauge',
        fullScale: gauge(250, 'bar'),
        accuracy: { accuracyClass: 0.6 },
        zero: 'with stop pin',
        temperature: temperature(31, '°C'),
      },
      thermometer: {
        type: 'infrared thermometer',
        accuracy: {
          certificate: {
            correction: kelvin(-1),
            expandedUncertainty: kelvin(1),
            coverageFactor: 2,
            due: '2026-06-30',
          },
        },
        step: kelvin(0.1),
        shellToGas: kelvin(1),
        emissivity: { assumed: 0.95, limit: 0.02 },
        surroundings: temperature(35, '°C'),
      },
    });
  });

  test('a digital gauge by its data sheet, and a dial gauge by its limit of error', () => {
    const fullScale = { value: 250, unit: 'bar', basis: 'gauge' };
    const sheet = { percentOfReading: 0.1, percentOfSpan: 0.05, digits: 2 };
    const digital = { type: 'digital gauge', fullScale, accuracy: sheet, temperatureInfluence: 'not known' };
    expectAssessed(named(withEv1(152, ['$.instruments[0].characteristics', digital]), 'EV 1').asFound, reads(152), {
      ...INSTRUMENTS,
      gauge: { type: 'digital gauge', fullScale: gauge(250, 'bar'), accuracy: sheet, temperature: 'not known' },
    });
    const limit = { value: 1, unit: 'bar', basis: 'difference' };
    const dial = { type: 'dial gauge', fullScale, accuracy: { limit }, zero: 'without stop pin' };
    expectAssessed(named(withEv1(152, ['$.instruments[0].characteristics', dial]), 'EV 1').asFound, reads(152), {
      ...INSTRUMENTS,
      gauge: {
        type: 'dial gauge',
        fullScale: gauge(250, 'bar'),
        accuracy: { limit: bar(1) },
        zero: 'without stop pin',
        temperature: temperature(31, '°C'),
      },
    });
  });

  test('counts decisions of readings as found', () => {
    const report = changed();
    const outcomes = report.accumulators.flatMap(({ asFound }) => asFound.decision?.outcome ?? []);
    expect(outcomes).toHaveLength(15);
    for (const [outcome, count] of Object.entries(report.decisions ?? {}))
      expect([outcome, outcomes.filter((one) => one === outcome).length]).toEqual([outcome, count]);
    expectSound(report);
  });
});

describe('what a decision does to the work', () => {
  const state = (p: number, ...more: readonly (readonly [string, unknown])[]): string =>
    named(withEv1(p, ...more), 'EV 1').state;

  test('inconclusive: read again, with what would settle it', () => {
    const { state, asFound } = named(withEv1(151), 'EV 1');
    expect([state, asFound.outcome, asFound.decision?.outcome]).toEqual(['read again', 'within', 'inconclusive']);
    const { decision } = asFound;
    const ways = decision !== undefined && 'settling' in decision ? (decision.settling?.ways ?? []) : [];
    expect(ways.length).toBeGreaterThan(0);
    for (const { text } of ways) expect(text).not.toMatch(/[{}]/);
  });

  test.each([
    // Shown to 0.1 bar, of a thermometer as it is, or of one that leaves the gauge the largest.
    [0.2, 0.1, [], ['better thermometer', 'more settling']],
    [1, 1, [0.1, 0.1, 0.1], ['better gauge', 'finer class']],
    [0.2, 2, [0.1, 0.1, 0.1], ['repeats']],
    [2, 2, [0.1, 0.1, 0.1], ['nothing alone']],
  ] as const)('expanded uncertainty %d bar, step %d bar: each way says its size', (U, step, sharp, codes) => {
    const felt = ['accuracy.limit.value', 'step.value', 'shellToGas.value'];
    const { asFound } = named(
      withEv1(
        151.5,
        ['$.instruments[0].characteristics.accuracy.expandedUncertainty.value', U],
        ['$.groups[0].gaugeStep.value', step],
        ...sharp.map((value, i) => [`$.instruments[3].characteristics.${felt[i] ?? ''}`, value] as const),
      ),
      'EV 1',
    );
    const { decision } = asFound;
    const settling = (decision !== undefined && 'settling' in decision ? decision.settling : undefined) ?? expect.fail('decided'); // prettier-ignore
    const { ways, gaugeLimit, accuracyClass, thermometerLimit, shellToGas, readings } = settling;
    expect(ways.map(({ code }) => code)).toEqual(codes);
    // Rounded down to what can be read: a larger limit would settle nothing.
    const down = (limit: unknown): string =>
      typeof limit === 'object' ? (Math.floor((limit as { value: number }).value * 10) / 10).toFixed(1) : '-';
    const sizes: Readonly<Record<string, string>> = {
      'better gauge': `${down(gaugeLimit)} bar or less`,
      'finer class': `class ${accuracyClass} or`,
      'better thermometer': `${down(thermometerLimit)} K or less`,
      'more settling': `within ${down(shellToGas)} K of`,
      repeats: `mean of ${readings} readings`,
      'nothing alone': 'no single change',
    };
    for (const { code, text } of ways) expect(text).toContain(sizes[code]);
  });

  test('on the limit itself nothing settles it, however sharp', () => {
    const on = (bar: number) => ({ pressure: { value: bar, unit: 'bar', basis: 'gauge' }, temperature: { value: 40, unit: '°C' } }); // prettier-ignore
    const limits = ['$.specifications[0].tolerance', { minimum: on(151), maximum: on(155) }] as const;
    const { decision } = named(withEv1(151, limits, ['$.groups[0].ambient.value', 1013.25]), 'EV 1').asFound;
    expect(decision).toMatchObject({ outcome: 'inconclusive', settling: { standard: 'nothing', gaugeLimit: 'no gauge' } }); // prettier-ignore
  });

  test('nothing is vented on a doubt, and then there is no work but reading', () => {
    const rejecting = ['$.rule.acceptance', 'guarded rejection'] as const;
    const doubtful = named(withEv1(155, rejecting), 'EV 1');
    expect(doubtful.asFound.charge).toMatchObject({ action: 'withheld', because: ['not conclusive'] });
    expect(doubtful.state).toBe('read again');
    expect(named(withEv1(155), 'EV 1').asFound.charge.action).toBe('vent');
    expect(state(158, rejecting)).toBe('work needed');
    expect(state(152)).toBe('in order');
    expect(state(143)).toBe('work needed');
  });

  test('over its limit, and yet perhaps not over its target: nothing is vented, and it is read again', () => {
    const simple = ['$.rule.acceptance', 'simple acceptance'] as const;
    const coarse = ['$.instruments[0].characteristics.accuracy.expandedUncertainty.value', 6] as const;
    const doubtful = named(withEv1(155, simple, coarse), 'EV 1');
    expect(doubtful.asFound.decision).toMatchObject({ outcome: 'overcharged', direction: 'not certain' });
    expect(doubtful.asFound.charge).toMatchObject({ action: 'withheld', because: ['not conclusive'] });
    expect(doubtful.state).toBe('read again');
    expect(state(155, simple)).toBe('work needed');
  });

  test('without evidence the verdict decides', () => {
    expect(state(0)).toBe('work needed');
    expect(state(152, [`${EV1}.oilSide`, 'not known'])).toBe('read again');
  });

  test('above the allowable pressure it is to be made safe, however well that is known', () => {
    const safe = named(withEv1(155, ['$.specifications[0].allowable.value', 154]), 'EV 1');
    expect(safe.asFound.cautions).toContain('reading above the allowable pressure');
    expect(safe.state).toBe('work needed');
    // Near its limit it would be read again.
    const near = ['$.groups[0].gaugeStep.value', 0.1] as const;
    expect(state(154.4, near)).toBe('read again');
    expect(state(154.4, near, ['$.specifications[0].allowable.value', 153])).toBe('work needed');
  });

  test('where the accuracy of the gauge does not hold nothing is decided: read again', () => {
    const { state, asFound } = named(
      withEv1(20, ['$.instruments[0].characteristics', {
        type: 'dial gauge',
        fullScale: { value: 250, unit: 'bar', basis: 'gauge' },
        accuracy: { accuracyClass: 1 },
        zero: 'with stop pin',
      }], [`${EV1}.possibleSlip`, 'read again and ruled out']), 'EV 1'); // prettier-ignore
    const because = 'reading in the first tenth of a scale with stop pin';
    expect(asFound.uncertainty).toEqual({ outcome: 'not covered', because });
    expect([asFound.decision, state]).toEqual([{ outcome: 'no decision', because }, 'read again']);
  });

  test('what is to be stopped at is what the gauge shows there', () => {
    const stop = (shown: number, correction: number): unknown => {
      const report = withEv1(shown, ['$.instruments[0].characteristics.accuracy.correction.value', correction]);
      const { charge } = named(report, 'EV 1').asFound;
      return 'stop' in charge && 'mark' in charge.stop ? charge.stop.mark : charge;
    };
    expect(stop(140, 0)).toEqual({ value: '154', unit: 'bar', basis: 'gauge' });
    expect(stop(142, -2)).toEqual({ value: '156', unit: 'bar', basis: 'gauge' });
  });

  test('a reading beyond the end of its scale is asked what it was meant as, with a rule and without', () => {
    const alone = roundWithoutSupply();
    delete alone.rule;
    put(alone, keysOf('$.groups[0].accumulators[0].visit[0].pressure.value'), 2213);
    for (const report of [withEv1(2213), reportRest(alone)]) {
      const { asFound, state } = named(report, 'EV 1');
      expect([asFound.outcome, asFound.because, state]).toEqual(['not comparable', ['beyond the scale'], 'read again']);
      expect(asFound.charge.action).toBe('withheld');
      const slip = { code: 'unit of pressure', number: 2213, stated: 'bar', readAs: 'psi' };
      expect(asFound.slips?.map(({ slips }) => slips[0])).toContainEqual(expect.objectContaining(slip));
    }
  });

  test('verdict and gas are of the reading as its certificate corrects it', () => {
    // Two bar too little shown: 150 is 152, and would be below the lower limit as it stands.
    const report = withEv1(150, ['$.instruments[0].characteristics.accuracy.correction.value', 2]);
    const { asFound, state } = named(report, 'EV 1');
    expect(state).toBe('in order');
    expect(asFound.uncertainty).toMatchObject({ corrected: { value: 152 } });
    expect(asFound.reading.pressure.value).toBe(150);
    const { verdict, charge } = check(SPEC, reads(152));
    expect([asFound.outcome, asFound.charge.action]).toEqual([verdict.outcome, charge.action]);
    const corrected = { ...reads(152), correctionIncluded: pressureDifference(2, 'bar') };
    expect(asFound.why).toBe(why(SPEC, corrected, verdict));
    expect(asFound.why).toContain('the gauge showed 150.0 bar gauge');
    expect(named(withEv1(150), 'EV 1').state).toBe('work needed');
  });
});

test('a correction that leads below vacuum is said of the reading that it corrects', () => {
  const round = roundWithoutSupply();
  put(round, keysOf('$.instruments[0].characteristics.accuracy.correction.value'), -40);
  put(round, keysOf(`${EV1}.pressure.value`), 30);
  const { problems, notJudged } = reportRest(round);
  const path = `${EV1}.pressure`;
  expect(problems).toMatchObject([{ code: 'gauge below vacuum', path, about: 'EV 1' }]);
  expect(notJudged).toMatchObject([{ name: 'EV 1' }]);
});

test('one that leads below absolute zero is said of the temperature that it corrects, though no uncertainty can be stated', () => {
  const round = roundWithoutSupply();
  const kelvins = (value: number) => ({ value, unit: 'K', basis: 'difference' });
  const certificate = { correction: kelvins(-400), expandedUncertainty: kelvins(1), coverageFactor: 2 };
  const fullScale = { value: 250, unit: 'bar', basis: 'gauge' };
  const pinned = { type: 'dial gauge', fullScale, accuracy: { accuracyClass: 1 }, zero: 'with stop pin' };
  put(round, keysOf('$.instruments[0].characteristics'), pinned);
  put(round, keysOf('$.instruments[3].characteristics.accuracy'), certificate);
  put(round, keysOf(`${EV1}.pressure.value`), 20);
  const [first] = reportRest(round).problems;
  expect(first).toMatchObject({ code: 'below absolute zero', path: `${EV1}.temperature`, about: 'EV 1' });
});

describe('where something is lacking', () => {
  test.each([
    ['$.groups[0].instruments.pressure', 'gauge not named'],
    ['$.instruments[0].characteristics', 'gauge not characterised'],
    ['$.groups[0].gaugeTemperature', 'gauge temperature not stated'],
    ['$.groups[0].instruments.temperature', 'thermometer not named'],
    ['$.instruments[3].characteristics', 'thermometer not characterised'],
    ['$.groups[0].ambientLimit', 'limit of the ambient not stated'],
    ['$.specifications[0].printed', 'printed steps not stated'],
    ['$.specifications[0].vessel', 'vessel not stated'],
    ['$.modelErrorCorrelation', 'model error correlation not stated'],
    ['$.groups[0].readings', 'number of readings not stated'],
  ] as const)('%s: that is said, and the reading judged as it stands', (path, code) => {
    const report = changed([path, NOTHING]);
    const { asFound } = named(report, 'EV 1');
    expect(asFound.uncertainty).toEqual({ outcome: 'not stated', lacking: [code] });
    expect('decision' in asFound).toBe(false);
    expect(asFound.outcome).toBe(check(SPEC, reads(152)).verdict.outcome);
    expect(report.terms).toContainEqual({ code, text: uncertaintyText(code) });
    expectSound(report);
  });

  test('says where what it does take was stated, and nothing of what was not', () => {
    const stated = (report: RoundReport): object => named(report, 'EV 1').asFound.reading.stated;
    const whole = { temperature: 'for the reading', ambient: 'for the group', gaugeStep: 'for the group' };
    const hour = { gaugeTemperature: 'for the group', ambientLimit: 'for the group', readings: 'for the group' };
    expect(stated(changed())).toEqual({ ...whole, ...hour });
    const nothing = (['gaugeTemperature', 'ambientLimit', 'readings'] as const).map((field) => [`$.groups[0].${field}`, NOTHING] as const); // prettier-ignore
    expect(stated(changed(...nothing))).toEqual(whole);
    const own = { ambientLimit: 'for the reading', readings: 'for the reading' };
    const limit = { value: 5, unit: 'hPa', basis: 'difference' };
    expect(stated(changed([`${EV1}.ambientLimit`, limit], [`${EV1}.readings`, 2]))).toEqual({
      ...whole,
      ...hour,
      ...own,
    });
  });

  test.each([
    ['gaugeTemperature', { value: 31, unit: 'bar' }],
    ['gaugeTemperature', { value: 2001, unit: 'K' }],
    ['ambientLimit', { value: -1, unit: 'hPa', basis: 'difference' }],
    ['readings', 0],
  ])('but not where it is stated wrongly for the group: %s, %j', (field, value) => {
    const round = roundWithoutSupply();
    put(round, keysOf(`$.groups[0].${field}`), value);
    const { problems, notJudged } = reportRest(round);
    expect(problems.map(({ path }) => path)).toEqual([`$.groups[0].${field}`]);
    expect(notJudged.map(({ group }) => group)).toEqual(Array.from({ length: 8 }, () => 'Exhaust valves'));
  });

  test('a digital gauge of whose temperature nothing is known needs none', () => {
    const influence = ['$.instruments[0].characteristics.temperatureInfluence', 'not known'] as const;
    const { asFound } = named(changed(influence, ['$.groups[0].gaugeTemperature', NOTHING]), 'EV 1');
    expect(asFound.uncertainty).toMatchObject({ outcome: 'stated', notCounted: ['temperature of the gauge', 'drift since calibration'] }); // prettier-ignore
  });

  test('without a rule there is nothing of it', () => {
    const report = changed(['$.rule', NOTHING]);
    for (const field of ['rule', 'decisions', 'terms']) expect(Object.hasOwn(report, field)).toBe(false);
    for (const { asFound } of report.accumulators) {
      expect(Object.hasOwn(asFound, 'uncertainty')).toBe(false);
      expect(Object.hasOwn(asFound, 'decision')).toBe(false);
    }
  });
});

test('each code of uncertainty that a reading names has its words in the report, and no other', () => {
  const pinned = {
    type: 'dial gauge',
    fullScale: { value: 250, unit: 'bar', basis: 'gauge' },
    accuracy: { accuracyClass: 1 },
    zero: 'with stop pin',
  };
  const lost = ['$.specifications[1].vessel', NOTHING] as const;
  for (const report of [withEv1(151), withEv1(20, ['$.instruments[0].characteristics', pinned]), withEv1(0, lost)]) {
    const readings = report.accumulators.flatMap(({ asFound, asLeft }) => (asLeft === 'not read' ? [asFound] : [asFound, asLeft])); // prettier-ignore
    const codes = readings.flatMap(({ uncertainty, decision }) => [
      ...(uncertainty?.outcome === 'stated' ? [...uncertainty.largest.map(({ code }) => code), ...uncertainty.notCounted] : []), // prettier-ignore
      ...(uncertainty?.outcome === 'not covered' ? [uncertainty.because] : []),
      ...(uncertainty?.outcome === 'not stated' ? uncertainty.lacking : []),
      ...(decision !== undefined && 'because' in decision ? [decision.because] : []),
      ...(decision !== undefined && 'settling' in decision ? [decision.settling?.largest] : []),
    ]);
    expect(new Set(report.terms?.map(({ code }) => code))).toEqual(new Set(codes));
    expect(report.terms).toHaveLength(new Set(codes).size);
  }
});

test('what settles a reading may rest on a contribution that is not among its largest: that has its words too', () => {
  const { asFound } = named(withEv1(151), 'EV 1');
  const { uncertainty, decision } = asFound;
  if (uncertainty?.outcome !== 'stated' || decision === undefined || !('settling' in decision)) expect.fail('settled');
  const listed = uncertainty.largest.map(({ code }) => code);
  const largest = UNCERTAINTY_CODES.find((code) => Object.hasOwn(CONTRIBUTION, code) && !listed.includes(code as never));
  const settling = { ...decision.settling, largest };
  const codes = termsOf({ ...asFound, decision: { ...decision, settling } } as typeof asFound);
  expect(codes).toEqual([...listed, ...uncertainty.notCounted, largest]);
}); // prettier-ignore

describe('slips', () => {
  test('a temperature in °F said to be in °C is listed, and not corrected', () => {
    const report = withEv1(152, [`${EV1}.temperature.value`, 104]);
    const { asFound } = named(report, 'EV 1');
    const { candidates } = slips(SPEC, reads(152, 104), INSTRUMENTS);
    expect(candidates.length).toBeGreaterThan(0);
    expect(asFound.slips).toEqual(
      candidates.map((one) => ({
        slips: one.slips.map((slip) => ({ ...slip, text: slipText(slip) })),
        pressure: { value: valueIn(one.pressure, 'bar'), unit: 'bar', basis: 'gauge' },
        temperature: { value: valueIn(one.temperature, '°C'), unit: '°C' },
        outcome: one.verdict.outcome,
      })),
    );
    expect([asFound.outcome, asFound.reading.temperature.value]).toEqual(['undercharged', 104]);
    expectSound(report);
  });

  test('hold all gas back until the reading states that they were ruled out', () => {
    const typed = [`${EV1}.temperature.value`, 104] as const;
    const report = withEv1(152, typed);
    const { state, asFound } = named(report, 'EV 1');
    expect(state).toBe('read again');
    expect(asFound.charge).toMatchObject({ action: 'withheld', because: ['slip possible'] });
    expect(asFound.cautions[0]).toBe('slip possible');
    expect(report.cautions.map(({ code }) => code)).toContain('slip possible');
    const order = orderFor(report, { group: 'Exhaust valves', name: 'EV 1' });
    expect(order.steps.find(({ step }) => step === 'charge')?.state).toBe('withheld');
    expect(order.cautions.map(({ code }) => code)).toContain('slip possible');
    const stands = withEv1(152, typed, [`${EV1}.possibleSlip`, 'read again and ruled out']);
    const believed = named(stands, 'EV 1');
    expect(believed).toMatchObject({ state: 'work needed', asFound: { charge: { action: 'add' } } });
    expect(believed.asFound.reading.possibleSlip).toBe('read again and ruled out');
    expect(believed.asFound.slips).toBeUndefined();
    expect(stands.gasToAdd.asFound.accumulators).toBe(report.gasToAdd.asFound.accumulators + 1);
    expectSound(report);
    expectSound(stands);
  });

  test('are asked of a reading over its band too: a temperature in °C said to be in °F', () => {
    const { asFound } = named(changed([`${EV1}.temperature`, { value: 40, unit: '°F' }]), 'EV 1');
    expect(asFound.outcome).toBe('overcharged');
    const slip = { code: 'unit of temperature', number: 40, stated: '°F', readAs: '°C' };
    expect(asFound.slips?.map(({ slips }) => slips[0])).toContainEqual(expect.objectContaining(slip));
  });

  test('are asked of one that reads empty: bars said to be kilopascals', () => {
    const kPa = (value: number, basis: string) => ({ value, unit: 'kPa', basis });
    const { asFound } = named(changed([`${EV1}.pressure`, kPa(152.6, 'gauge')], [`${EV1}.gaugeStep`, kPa(1, 'difference')]), 'EV 1'); // prettier-ignore
    expect(asFound.outcome).toBe('gas side empty');
    const slip = { code: 'unit of pressure', number: 152.6, stated: 'kPa', readAs: 'bar' };
    expect(asFound.slips?.map(({ slips }) => slips[0])).toContainEqual(expect.objectContaining(slip));
  });

  test('are not asked of a reading in its band', () => {
    expect(Object.hasOwn(named(changed(), 'EV 1').asFound, 'slips')).toBe(false);
  });
});

describe('the round as a whole', () => {
  /** Ten accumulators, read 2 % too high: by a gauge in kgf/cm2 that was taken for one in bar. One of them leaks. */
  function shifted(rule = true): Round {
    const round = roundWithoutSupply();
    const [group] = round.groups;
    const [first] = group?.accumulators ?? [];
    if (group === undefined || first === undefined) throw new Error('the example is empty');
    group.accumulators = [155, 156, 155, 156, 156, 140, 155, 156, 155, 156].map((p, i) => ({
      name: `EV ${i}`,
      visit: first.visit.map((one) => ({ ...one, pressure: { ...one.pressure, value: p } })),
    }));
    round.groups = [group];
    if (!rule) delete round.rule;
    return round;
  }
  const PRESSURES = [155, 156, 155, 156, 156, 140, 155, 156, 155, 156];

  test.each([
    ['with instruments', true],
    ['as read', false],
  ])('one gauge reads all of it off: that is said before any single leak (%s)', (_title, rule) => {
    const report = reportRest(shifted(rule));
    const found = together(
      PRESSURES.map((p) => ({ spec: SPEC, reading: reads(p), ...(rule ? { instruments: INSTRUMENTS } : {}) })),
    );
    if (found.outcome !== 'common shift') expect.fail(found.outcome);
    const [whole, ...others] = report.together ?? [];
    expect(others).toEqual([]);
    expect(whole).toMatchObject({
      gauge: 'gauge A',
      thermometer: 'thermometer 1',
      readings: 10,
      leftOut: 0,
      outcome: 'common shift',
      shift: { ratio: found.shift.ratio, better: found.shift.better, instruments: found.shift.instruments },
      candidates: found.candidates.map(({ slip, explains }) => ({ slip, explains })),
      notExplained: [{ group: 'Exhaust valves', name: 'EV 5' }],
    });
    expect(found.candidates.map(({ slip }) => slip)).toContainEqual({ code: 'unit of pressure', stated: 'bar', readAs: 'kgf/cm2' }); // prettier-ignore
    expect(report.cautions.map(({ code }) => code)).toContain('common shift');
    expectSound(report);
  });

  test('where nothing is common to them, none is said to be left unexplained', () => {
    const round = shifted();
    const off = [2, -2, 3, -3, 1, -1, 2, -2, 0, -12];
    round.groups[0]?.accumulators.forEach(({ visit: [first] }, i) => {
      if (first !== undefined) put(first, ['pressure', 'value'], 152 + (off[i] ?? 0));
    });
    const [whole] = reportRest(round).together ?? [];
    expect(whole).toMatchObject({ outcome: 'no common shift', readings: 10, candidates: [], notExplained: [] });
  });

  test('by each gauge and thermometer; of those without evidence nothing counts', () => {
    const report = changed();
    const given = report.together?.map(({ gauge: name, readings, leftOut, outcome }) => [
      name,
      readings,
      leftOut,
      outcome,
    ]);
    expect(given).toEqual([
      ['gauge A', 7, 3, 'too few readings'],
      ['gauge C', 1, 0, 'too few readings'],
      ['gauge B', 8, 1, 'too few readings'],
    ]);
    expect(report.cautions.map(({ code }) => code)).not.toContain('common shift');
    expect(changed(['$.groups[0].instruments', NOTHING]).together?.map(({ gauge: name }) => name)).toEqual(['gauge C', 'gauge B']); // prettier-ignore
  });
});

test('words of one’s own stand for all of it, and change nothing but words', () => {
  const puts = [
    [`${EV1}.pressure.value`, 151],
    ['$.groups[0].accumulators[2].visit[0].temperature.value', 104],
    ['$.groups[0].accumulators[2].visit[0].pressure.value', 152],
  ] as const;
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  const words = {
    uncertainty: { 'gauge not characterised': '«unbekannt»', gauge: '«Genauigkeit»' },
    settled: { 'better gauge': '«höchstens {limit}»' },
    slips: { 'unit of temperature': '«{number} {stated}, nicht {readAs}»' },
  };
  const own = reportRound(round, { problems: 'refuse the round', words });
  const text = JSON.stringify({ ...own, input: null });
  for (const said of ['«unbekannt»', '«Genauigkeit»', '«höchstens ', '«104 °C, nicht °F»'])
    expect(text).toContain(said);
  expect(reverify(own).outcome).toBe('same');
});
