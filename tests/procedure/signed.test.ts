import {
  isFault,
  needComplete,
  workOrder,
  type Problem,
  type Signatures,
  type WorkOrder,
  type WorkStep,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { ORDER, PROTECTIVE } from '../../src/procedure/steps.js';
import { readingWith, reads, specWith } from '../support/accumulator.js';
import { inheriting } from '../support/inheriting.js';
import { problemOf } from '../support/problem.js';

const spec = specWith();
const order = workOrder(spec, readingWith());

/** All steps of an order, signed one minute after the other. */
function signed(of: WorkOrder, changed: Readonly<Record<string, unknown>> = {}): Signatures {
  const minute = (i: number): string => `2026-03-14T09:${String(10 + i)}:00+01:00`;
  const entries = of.steps
    .filter(({ state }) => state === 'to do' || state === 'to be decided')
    .map(({ step }, i) => [step, { by: 'second engineer', at: minute(i) }] as const);
  const all = Object.entries({
    ...Object.fromEntries<unknown>(entries.map(([step, entry]) => [step, entry])),
    ...changed,
  });
  return Object.fromEntries(all.filter(([, entry]) => entry !== undefined)) as unknown as Signatures;
}

function problemsOf(call: () => unknown): readonly Problem[] {
  try {
    call();
  } catch (error) {
    if (isFault(error)) return error.problems;
    throw error;
  }
  return [];
}

describe('a work that is signed through', () => {
  test('is recorded step by step', () => {
    const work = needComplete(order, signed(order));
    expect(work.steps.map(({ step }) => step)).toEqual(order.steps.map(({ step }) => step));
    expect(work.steps.every(({ state, by }) => state === 'done' && by === 'second engineer')).toBe(true);
    expect(work).toMatchObject({ leftOut: [], protectionReplaced: [] });
    expect(work.cautions.map(({ code }) => code)).toEqual(['maker decides']);
  });
  test('keeps what was not needed visible', () => {
    const within = workOrder(spec, reads(153));
    const work = needComplete(within, signed(within));
    expect(work.steps.find(({ step }) => step === 'charge')).toEqual({
      step: 'charge',
      protects: 'the result',
      state: 'not needed',
    });
  });
  test('carries notes, such as the positions of valves', () => {
    const at = '2026-03-14T09:10:30+01:00';
    const work = needComplete(order, signed(order, { 'note valves': { by: 'oiler', at, note: '3 open, 4 shut' } }));
    expect(work.steps.find(({ step }) => step === 'note valves')).toMatchObject({ note: '3 open, 4 shut' });
  });
  test('may come back through JSON first', () => {
    const stored = JSON.parse(JSON.stringify(order)) as WorkOrder;
    expect(needComplete(stored, signed(order))).toEqual(needComplete(order, signed(order)));
  });
});

describe('a step is never left out silently', () => {
  const due = order.steps.map(({ step }) => step);
  test.each(due)('%s without a signature is named', (step) => {
    const problem = problemOf(() => needComplete(order, signed(order, { [step]: undefined })));
    expect(problem).toMatchObject({ code: 'step not signed', path: `signatures.${step}` });
  });

  test('all of them at once', () => {
    const problems = problemsOf(() => needComplete(order, {} as never));
    expect(problems.map(({ path }) => path)).toEqual(due.map((step) => `signatures.${step}`));
  });

  test.each(PROTECTIVE)('%s protects people: a reason alone does not do', (step) => {
    const at = '2026-03-14T09:59:00+01:00';
    const entry = { by: 'chief', at, leftOutBecause: 'no time' };
    const found = problemsOf(() => needComplete(order, signed(order, { [step]: entry })));
    expect(found.map(({ code }) => code)).toContain('protection left out');
  });

  test('with what protected people instead it passes, and stays visible with a caution', () => {
    const at = '2026-03-14T09:22:00+01:00';
    const entry = { by: 'chief', at, leftOutBecause: 'no liquid on board', instead: 'read again next day' };
    const work = needComplete(order, signed(order, { 'leak test': entry }));
    expect(work.protectionReplaced).toEqual(['leak test']);
    expect(work.leftOut).toEqual(['leak test']);
    expect(work.steps.find(({ step }) => step === 'leak test')).toEqual({
      step: 'leak test',
      protects: 'people',
      state: 'replaced',
      ...entry,
    });
    expect(work.cautions.map(({ code }) => code)).toEqual(['protection replaced', 'maker decides']);
  });

  test('what does not protect people is left out with a reason', () => {
    const entry = { by: 'chief', at: '2026-03-14T09:25:00+01:00', leftOutBecause: 'engine not needed till Monday' };
    const work = needComplete(order, signed(order, { 'try out': entry }));
    expect(work).toMatchObject({ leftOut: ['try out'], protectionReplaced: [] });
  });

  test('an order that has lost a step, or says that it is not needed, is not believed', () => {
    for (const step of PROTECTIVE) {
      const lost = { ...order, steps: order.steps.filter((one) => one.step !== step) };
      const changed = {
        ...order,
        steps: order.steps.map((one) => (one.step === step ? { ...one, state: 'not needed' as const } : one)),
      };
      for (const of of [lost, changed])
        expect(problemOf(() => needComplete(of, signed(order, { [step]: undefined }))).path).toBe(`signatures.${step}`);
    }
    const without = { ...order, steps: [] };
    expect(problemsOf(() => needComplete(without, {} as never))).toHaveLength(ORDER.length - 2);
  });
});

test('gas that was moved although the order withheld it is seen', () => {
  const withheld = workOrder(spec, readingWith({ oilSide: 'not known' }));
  const entry = { by: 'x', at: '2026-03-14T09:17:30+01:00' };
  const work = needComplete(withheld, signed(withheld, { charge: entry }));
  expect(work.steps.find(({ step }) => step === 'charge')).toMatchObject({ state: 'done although withheld' });
  expect(work.cautions.map(({ code }) => code)).toEqual(['done although withheld', 'maker decides']);
  expect(needComplete(withheld, signed(withheld)).steps.find(({ step }) => step === 'charge')).toMatchObject({
    state: 'withheld',
  });
});

test('a step that an order has not stands in no place, whatever all objects inherit', () => {
  const record = needComplete(order, signed(order));
  expect(inheriting('-1', true, () => needComplete(order, signed(order)))).toStrictEqual(record);
});

describe('what is refused of a signature', () => {
  const at = '2026-03-14T09:13:30+01:00';
  test.each<[string, WorkStep, unknown, string, string]>([
    ['nobody', 'drain', { by: '', at }, 'missing', 'signatures.drain.by'],
    ['no time', 'drain', { by: 'x' }, 'not a time', 'signatures.drain.at'],
    ['a day that there is not', 'drain', { by: 'x', at: '2026-02-30T09:13:00Z' }, 'not a time', 'signatures.drain.at'],
    ['no offset', 'drain', { by: 'x', at: '2026-03-14T09:13:30' }, 'not a time', 'signatures.drain.at'],
    ['no object', 'drain', 'signed', 'wrong kind', 'signatures.drain'],
    [
      'nothing instead',
      'drain',
      { by: 'x', at, leftOutBecause: 'y', instead: '' },
      'missing',
      'signatures.drain.instead',
    ],
    ['a number for a note', 'drain', { by: 'x', at, note: 1 }, 'not a text', 'signatures.drain.note'],
    [
      'zero verified before it was drained',
      'verify zero',
      { by: 'x', at: '2026-03-14T09:13:00+01:30' },
      'signed out of order',
      'signatures.verify zero.at',
    ],
  ])('%s', (_, step, entry, code, path) => {
    expect(problemOf(() => needComplete(order, signed(order, { [step]: entry })))).toMatchObject({ code, path });
  });

  test('two steps in the same minute are in order', () => {
    const entry = { by: 'x', at: '2026-03-14T09:12:00+01:00' };
    expect(needComplete(order, signed(order, { drain: entry })).leftOut).toEqual([]);
  });

  test('times are compared as instants, not as texts', () => {
    const entry = { by: 'x', at: '2026-03-14T08:13:30Z' };
    expect(needComplete(order, signed(order, { drain: entry })).leftOut).toEqual([]);
  });

  test('a step that there is not', () => {
    const problem = problemOf(() => needComplete(order, signed(order, { drian: { by: 'x', at } })));
    expect(problem).toMatchObject({ code: 'unknown field', path: 'signatures', found: 'drian' });
  });

  test('no order, no signatures', () => {
    for (const given of [null, {}, { steps: 1 }])
      expect(problemOf(() => needComplete(given as never, signed(order))).path).toBe('order');
    expect(
      problemOf(() => needComplete({ steps: [{ step: 'x', state: 'to do' }] } as never, signed(order))),
    ).toMatchObject({ code: 'unknown word', path: 'order.steps[0].step' });
    expect(problemOf(() => needComplete(order, null as never)).path).toBe('signatures');
  });
});
