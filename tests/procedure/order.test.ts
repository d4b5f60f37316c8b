import {
  check,
  standardAtmosphere,
  temperature,
  why,
  workOrder,
  type Reading,
  type Specification,
  type WorkOrder,
  type WorkStep,
  type WorkWords,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { BLEED_FIRST, ORDER, PROTECTIVE, REMARK, STEP } from '../../src/procedure/steps.js';
import { bar, barOf, celsius, GIVEN, readingWith, reads, specWith } from '../support/accumulator.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const spec = specWith();
const stepOf = (order: WorkOrder, code: WorkStep) => order.steps.find(({ step }) => step === code);
const statesOf = (order: WorkOrder) => Object.fromEntries(order.steps.map(({ step, state }) => [step, state]));

// The sequence of the trade: common practice, no source. Energy is shut off and proved to be off before anybody opens
// anything, and what was moved is put back before the system is tried.
const ALWAYS: readonly WorkStep[] = [
  'secure',
  'note valves',
  'isolate',
  'drain',
  'verify zero',
  'fit',
  'read',
  'compare',
  'charge',
  'settle',
  'bleed',
  're-check',
  'leak test',
  'close up',
  'restore valves',
  'try out',
];

const READINGS: [string, Reading, Specification][] = [
  ['undercharged', readingWith(), spec],
  ['overcharged', reads(160), spec],
  ['within', reads(153), spec],
  ['oil side not drained', readingWith({ oilSide: 'not drained' }), spec],
  ['gas not known', readingWith({ gasInside: 'not known' }), spec],
  ['empty gas side', reads(0), spec],
  ['target above the allowable pressure', reads(130), specWith({ allowable: bar(150) })],
  ['stop above the allowable pressure', reads(140), specWith({ allowable: bar(153.5) })],
];

describe('every order', () => {
  test.each(READINGS)('holds every step, whatever the reading says: %s', (_, reading, of) => {
    const steps = workOrder(of, reading).steps.map(({ step }) => step);
    expect([...steps].filter((step) => ALWAYS.includes(step)).sort()).toEqual([...ALWAYS].sort());
    expect(new Set(steps).size).toBe(steps.length);
  });

  test.each(READINGS)('orders what protects people, always: %s', (_, reading, of) => {
    const order = workOrder(of, reading);
    for (const code of PROTECTIVE) expect(stepOf(order, code)).toMatchObject({ state: 'to do', protects: 'people' });
  });

  test.each(READINGS)('moves gas only as the check says: %s', (_, reading, of) => {
    const { charge } = check(of, reading);
    const { charge: fill, bleed } = statesOf(workOrder(of, reading));
    const mayFill = charge.action === 'add' && charge.stop.action === 'stop';
    expect(fill === 'to do').toBe(mayFill);
    expect(bleed === 'to do').toBe(charge.action === 'vent' || charge.action === 'add');
  });

  test('puts its steps in the order of the trade, and bleeds first where gas is vented', () => {
    expect(workOrder(spec, readingWith()).steps.map(({ step }) => step)).toEqual(ALWAYS);
    const vented = workOrder(spec, reads(160)).steps.map(({ step }) => step);
    expect(vented.indexOf('bleed')).toBe(vented.indexOf('settle') - 1);
    expect([...BLEED_FIRST].sort()).toEqual([...ORDER].sort());
  });

  test('carries cautions with their causes', () => {
    const order = workOrder(spec, readingWith());
    expect(stepOf(order, 'charge')?.cautions.map(({ code, cause }) => [code, cause])).toEqual([
      ['nitrogen only', 'charge'],
      ['stored pressure', 'charge'],
    ]);
    expect(order.cautions.map(({ code }) => code)).toEqual(check(spec, readingWith()).cautions.map(({ code }) => code));
    for (const { cause, severity, text } of order.cautions) expect([cause, severity, text].every(Boolean)).toBe(true);
  });

  test('is plain data that JSON carries', () => {
    const order = workOrder(spec, readingWith());
    const { steps, numbers } = JSON.parse(JSON.stringify(order)) as WorkOrder;
    expect(steps).toEqual(order.steps);
    expect(numbers).toEqual(order.numbers);
  });
});

describe('numbers in their places', () => {
  test('of filling', () => {
    const order = workOrder(spec, readingWith());
    expect(order.numbers).toEqual({
      target: '152.6 bar gauge',
      temperature: '40.0 °C',
      lower: '151 bar gauge',
      upper: '154 bar gauge',
      allowable: '210.0 bar gauge',
      minutes: '5',
      reading: '143 bar gauge',
      stop: '154 bar gauge',
      bleed: '152 bar gauge',
      gas: '0.047 kg',
    });
    expect(stepOf(order, 'charge')?.text).toContain('to 154 bar gauge, about 0.047 kg');
    expect(stepOf(order, 'charge')?.text).toContain('210.0 bar gauge');
    expect(stepOf(order, 'settle')?.text).toContain('5 min');
    for (const { text } of order.steps) expect(text).not.toMatch(/[{}]/);
  });

  test('of venting: bleed to the stop of the check', () => {
    const order = workOrder(spec, reads(160));
    expect(stepOf(order, 'bleed')?.text).toContain('down to 152 bar gauge');
    expect(stepOf(order, 'charge')).toMatchObject({ state: 'not needed', cautions: [] });
    expect(order.numbers.stop).toBe('not given');
  });

  test('of a gauge without a mark in the band: exact ones, rounded inwards, and never above the stop', () => {
    const narrow = specWith({
      tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' },
      settling: { ...GIVEN.settling, allowance: barOf(0) },
    });
    const { numbers } = workOrder(narrow, reads(140));
    expect(numbers).toMatchObject({ lower: '152.4 bar gauge', upper: '152.9 bar gauge', stop: '152.6 bar gauge' });
  });

  test('the allowable pressure is rounded down', () => {
    expect(workOrder(specWith({ allowable: bar(199.97) }), readingWith()).numbers.allowable).toBe('199.9 bar gauge');
  });

  test('bleeding after a fill stays inside the band', () => {
    const above = specWith({
      tolerance: { below: barOf(0.2), above: barOf(3), applies: 'at the measured temperature' },
    });
    // The target is 152.61 bar: the mark below it lies below the band, the one above inside.
    expect(workOrder(above, reads(140)).numbers.bleed).toBe('153 bar gauge');
  });
});

describe('what is not done says why', () => {
  test('within: nothing is moved', () => {
    const order = workOrder(spec, reads(153));
    for (const code of ['charge', 'settle', 'bleed', 're-check'] as const)
      expect(stepOf(order, code)).toMatchObject({ state: 'not needed' });
    expect(stepOf(order, 'charge')?.text).toBe(
      `Not needed: ${why(spec, reads(153), { because: ['inside the limits'] })}.`,
    );
  });
  test('without evidence gas is neither added nor vented, and it is read again', () => {
    const reading = readingWith({ oilSide: 'not drained' });
    const order = workOrder(spec, reading);
    expect(stepOf(order, 'charge')).toMatchObject({ state: 'withheld' });
    expect(stepOf(order, 'charge')?.text).toContain('the oil side is not drained');
    expect(statesOf(order)).toMatchObject({ bleed: 'withheld', settle: 'not needed', 're-check': 'to do' });
    for (const minutesAtRest of [1, 'not known'] as const)
      expect(statesOf(workOrder(spec, readingWith({ minutesAtRest })))).toMatchObject({ charge: 'withheld', settle: 'to do' }); // prettier-ignore
  });
  test('a reading that may be a slip moves no gas, until it is said that it was read again', () => {
    // 40 °C on the thermometer, typed as 40 °F: at 4.4 °C the target is 131.1 bar.
    const typed = readingWith({ pressure: bar(152), temperature: temperature(40, '°F') });
    expect(check(spec, typed).charge.action).toBe('vent');
    const order = workOrder(spec, typed);
    expect(statesOf(order)).toMatchObject({ charge: 'withheld', settle: 'not needed', bleed: 'withheld' });
    expect(stepOf(order, 'charge')?.text).toContain('read number, unit and basis on the instruments again');
    expect(order.cautions[0]).toMatchObject({ code: 'slip possible', cause: 'the reading' });
    expect(order.numbers).toMatchObject({ gas: 'not given', stop: 'not given' });
    const stands = workOrder(spec, { ...typed, possibleSlip: 'read again and ruled out' });
    expect(stands.check).toEqual(check(spec, typed));
    expect(statesOf(stands)['bleed']).toBe('to do');
    expect(problemOf(() => workOrder(spec, { ...typed, possibleSlip: 'yes' as never })).path).toBe('possibleSlip');
  });
  test('a stop above the allowable pressure', () => {
    const order = workOrder(specWith({ allowable: bar(153.5) }), reads(140));
    expect(stepOf(order, 'charge')?.text).toMatch(/^Neither fill nor bleed: .*fill in stages/);
  });
  test('gas not known to be nitrogen: it is let out and purged, nothing is added to it', () => {
    const order = workOrder(spec, readingWith({ gasInside: 'not known' }));
    expect(statesOf(order)).toMatchObject({ depressurise: 'to do', purge: 'to do', charge: 'withheld' });
    expect(order.cautions[0]).toMatchObject({ code: 'gas not known', cause: 'the reading' });
    expect(stepOf(workOrder(spec, readingWith()), 'purge')).toBeUndefined();
  });
  test('with instruments gas is vented on a conclusive decision only', () => {
    const rule = { acceptance: 'guarded acceptance', risk: { below: 0.025, above: 0.025 } } as const;
    const reading = reads(155);
    expect(statesOf(workOrder(spec, reading))['bleed']).toBe('to do');
    const order = workOrder(spec, reading, { instruments: INSTRUMENTS, rule });
    expect(statesOf(order)['bleed']).toBe('withheld');
    expect(order.check).toHaveProperty('decision');
  });
});

describe('before a reading', () => {
  const expected = {
    temperature: celsius(40),
    ambient: standardAtmosphere,
    gaugeStep: { step: 1, unit: 'bar' },
  } as const;
  const order = workOrder(spec, expected);
  test('says what is wanted, and leaves what is done to the reading', () => {
    expect(order).toMatchObject({ basis: 'before a reading', check: 'before a reading' });
    expect(order.numbers).toMatchObject({
      target: '152.6 bar gauge',
      lower: '151 bar gauge',
      reading: 'not given',
      stop: 'not given',
      gas: 'not given',
    });
    expect(statesOf(order)).toMatchObject({ drain: 'to do', charge: 'to be decided', bleed: 'to be decided' });
    expect(order.cautions.map(({ code }) => code)).toContain('work without evidence');
    expect(order.steps.map(({ step }) => step)).toEqual(ALWAYS);
  });
  test('a reading that lost its pressure is a faulty reading, not conditions', () => {
    const lost = Object.fromEntries(Object.entries(readingWith()).filter(([field]) => field !== 'pressure'));
    expect(problemOf(() => workOrder(spec, lost as never))).toMatchObject({ code: 'wrong kind', path: 'pressure' });
  });
});

describe('words', () => {
  test('of one’s own, under the codes of steps and remarks', () => {
    const words: WorkWords = { charge: 'Bis {stop} füllen.', 'not needed': 'Entfällt: {because}' };
    expect(stepOf(workOrder(spec, readingWith(), undefined, words), 'charge')?.text).toBe('Bis 154 bar gauge füllen.');
    expect(stepOf(workOrder(spec, reads(153), undefined, words), 'charge')?.text).toMatch(/^Entfällt: 153/);
  });
  test.each([[{ charge: '{stops}' }], [{ charge: 1 }], ['text'], [null]])('%j are refused', (words) => {
    expect(problemOf(() => workOrder(spec, readingWith(), undefined, words as never)).code).toBe('words not sound');
  });
  test('of every step and remark stand as sentences', () => {
    for (const text of [...Object.values(STEP), ...Object.values(REMARK)]) expect(text).toMatch(/^[A-Z].{12,}\.$/);
    expect(Object.keys(STEP).sort()).toEqual([...ORDER].sort());
  });
});

test('what is no reading is refused', () => {
  for (const found of [null, 1, 'reading', {}])
    expect(problemOf(() => workOrder(spec, found as never)).code).toBe('wrong kind');
  expect(problemOf(() => workOrder(spec, readingWith(), 1 as never)).path).toBe('assessed');
  expect(problemOf(() => workOrder({ ...spec }, readingWith())).code).toBe('unchecked specification');
});
