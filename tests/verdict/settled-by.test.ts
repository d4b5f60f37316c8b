// What would settle a reading, in words: the numbers of the sentences are tried, as whoever buys an instrument by them would.
import { decide, read, settledBy, type Instruments, type Settling } from 'isochore';
import { describe, expect, test } from 'vitest';
import { SETTLED } from '../../src/basis/words.js';
import { bar, readingWith, specWith } from '../support/accumulator.js';
import { CONTACT, DIAL, inK, instrumentsWith } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const RULE = { acceptance: 'guarded acceptance', risk: { below: 0.05, above: 0.05 } } as const;
const NONE: Settling = {
  largest: 'gauge',
  standard: 'nothing',
  gaugeLimit: 'no gauge',
  accuracyClass: 'no class',
  thermometerLimit: 'no thermometer',
  shellToGas: 'no settling',
  readings: 'no repeats',
};
const finest = { ...CONTACT, accuracy: { limit: inK(0.5) }, step: inK(0.1), shellToGas: inK(0.5) };
const spec = specWith();

function settlingFor(instruments: Instruments, unit: 'bar' | 'psi') {
  const reading = readingWith({ pressure: bar(153), gaugeStep: { step: unit === 'bar' ? 0.1 : 1, unit } });
  const decision = decide(spec, reading, instruments, RULE);
  if (decision.outcome === 'no decision' || decision.settling === undefined) throw new Error(decision.outcome);
  const ways = settledBy(decision.settling, reading.gaugeStep);
  const conclusive = (changed: Instruments): boolean => decide(spec, reading, changed, RULE).outcome !== 'inconclusive';
  return { ways, text: (code: string) => ways.find((one) => one.code === code)?.text ?? '', conclusive };
}

describe('a sentence holds what it promises', () => {
  test.each(['bar', 'psi'] as const)('of the gauge, in %s', (unit) => {
    const poor = instrumentsWith({ thermometer: finest, gauge: { ...DIAL, accuracy: { accuracyClass: 0.6 } } });
    const { text, conclusive } = settlingFor(poor, unit);
    const [, said = ''] = /limit of error of (\S+ \w+) or less$/.exec(text('better gauge')) ?? [];
    expect(said).toMatch(new RegExp(` ${unit}$`));
    const limit = read('pressure difference', `${said} difference`);
    expect(conclusive({ ...poor, gauge: { ...DIAL, accuracy: { limit } } })).toBe(true);
    const [, accuracyClass] = /accuracy class (\S+) or finer/.exec(text('finer class')) ?? [];
    const gauge = { ...DIAL, accuracy: { accuracyClass: Number(accuracyClass) as 0.25 } };
    expect(conclusive({ ...poor, gauge })).toBe(true);
  });

  test('of the thermometer and of what lies between shell and gas', () => {
    const gauge = { ...DIAL, accuracy: { accuracyClass: 0.1 } } as const;
    const hot = { ...finest, accuracy: { limit: inK(3) }, shellToGas: inK(1) };
    const withThermometer = settlingFor(instrumentsWith({ gauge, thermometer: hot }), 'bar');
    const far = { ...finest, shellToGas: inK(4) };
    const withShell = settlingFor(instrumentsWith({ gauge, thermometer: far }), 'bar');
    const kelvins = (text: string): number => Number(/([\d.]+) K/.exec(text)?.[1]);
    const limit = inK(kelvins(withThermometer.text('better thermometer')));
    expect(withThermometer.conclusive(instrumentsWith({ gauge, thermometer: { ...hot, accuracy: { limit } } }))).toBe(
      true,
    );
    const shellToGas = inK(kelvins(withShell.text('more settling')));
    expect(withShell.conclusive(instrumentsWith({ gauge, thermometer: { ...far, shellToGas } }))).toBe(true);
  });
});

test('each way has its code, in order, and where there is none it says so', () => {
  expect(settledBy(NONE, { step: 1, unit: 'bar' })).toEqual([
    { code: 'nothing alone', text: SETTLED['nothing alone'] },
  ]);
  const every = { ...NONE, accuracyClass: 0.25, readings: 4, thermometerLimit: inK(0.55), shellToGas: inK(1) } as const;
  expect(settledBy(every, { step: 1, unit: 'bar' }).map(({ code }) => code)).toEqual([
    'finer class',
    'better thermometer',
    'more settling',
    'repeats',
  ]);
  const own = { 'better thermometer': 'Thermometer bis {limit}' };
  expect(settledBy(every, { step: 1, unit: 'bar' }, own)[1]?.text).toBe('Thermometer bis 0.5 K');
});

test('what is no such thing is refused by name', () => {
  const step = { step: 1, unit: 'bar' } as const;
  expect(problemOf(() => settledBy(undefined as never, step)).path).toBe('settling');
  expect(problemOf(() => settledBy({ ...NONE, gaugeLimit: {} as never }, step)).code).toBe('wrong kind');
  expect(problemOf(() => settledBy(NONE, 1 as never)).path).toBe('gaugeStep');
  expect(problemOf(() => settledBy(NONE, { ...step, step: 0 })).path).toBe('gaugeStep.step');
  expect(problemOf(() => settledBy(NONE, step, { 'nothing alone': '{limit}' })).code).toBe('words not sound');
  expect(problemOf(() => settledBy(NONE, step, { 'nothing alone': 3 as never })).path).toBe('own');
  expect(problemOf(() => settledBy(NONE, step, 3 as never)).path).toBe('own');
});
