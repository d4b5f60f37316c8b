import { assess, check, type Instruments, type Rule } from 'isochore';
import { describe, expect, test } from 'vitest';
import { readingWith, reads, specWith } from '../support/accumulator.js';
import { DIAL, inBar, INSTRUMENTS, instrumentsWith } from '../support/instruments.js';

const RULE: Rule = { acceptance: 'guarded both ways', risk: { below: 0.025, above: 0.025 } };

/** A gauge good for ± 0.1 bar, and a thermometer good for ± 0.1 K on a shell as warm as the gas. */
const FINE: Instruments = instrumentsWith({
  gauge: { ...DIAL, accuracy: { limit: inBar(0.1) } },
});

const act = (p: number, instruments = INSTRUMENTS, rule = RULE) => assess(specWith(), reads(p), instruments, rule);

// Target and limits at 40 °C: 152.612 ± 2 bar, from tests/reference/README.md.
describe('venting needs a conclusive decision', () => {
  test('155 bar on a gauge of class 1 to 250 bar may be right: nothing is vented', () => {
    const { verdict, decision, charge } = act(155);
    expect(verdict.outcome).toBe('overcharged');
    expect(decision.outcome).toBe('inconclusive');
    expect(charge).toEqual({ action: 'withheld', because: ['not conclusive'] });
    expect(check(specWith(), reads(155)).charge.action).toBe('vent');
  });

  test('165 bar on the same gauge is too much', () => {
    const { decision, charge } = act(165);
    expect(decision.outcome).toBe('overcharged');
    expect(charge).toEqual(check(specWith(), reads(165)).charge);
  });

  test('over the limit by an estimate that nothing guards is not enough', () => {
    const { decision, charge } = act(155, INSTRUMENTS, { ...RULE, acceptance: 'simple acceptance' });
    expect(decision.outcome).toBe('overcharged');
    expect(decision.outcome === 'overcharged' && decision.direction).toBe('not certain');
    expect(charge.action).toBe('withheld');
  });

  test('a finer gauge settles what a coarse one cannot', () => {
    expect([act(158).decision.outcome, act(158, FINE).decision.outcome]).toEqual(['inconclusive', 'overcharged']);
    expect([act(158).charge.action, act(158, FINE).charge.action]).toEqual(['withheld', 'vent']);
  });
});

test('gas to add is given as it is, and so is everything without evidence', () => {
  for (const reading of [reads(149), reads(20), reads(0), readingWith({ oilSide: 'not drained' }), reads(152)]) {
    const { charge, verdict, cautions } = assess(specWith(), reading, INSTRUMENTS, RULE);
    const without = check(specWith(), reading);
    expect({ charge, verdict }).toEqual({ charge: without.charge, verdict: without.verdict });
    expect(cautions.slice(-without.cautions.length)).toEqual(without.cautions);
  }
});

test('what is to be said of the instruments stands first among the cautions', () => {
  const late = instrumentsWith({
    gauge: {
      ...DIAL,
      accuracy: {
        certificate: { correction: inBar(0), expandedUncertainty: inBar(0.5), coverageFactor: 2, due: '2026-01-31' },
      },
    },
  });
  expect(act(150, late).cautions[0]?.code).toBe('certificate past due');
});
