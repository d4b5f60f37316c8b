import {
  assess,
  check,
  decide,
  gauge,
  judge,
  pressureDifference,
  slips,
  together,
  uncertainty,
  why,
  workOrder,
  type Instruments,
  type PressureUnit,
  type Reading,
  type Rule,
} from 'isochore';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bar, reads, specWith } from '../support/accumulator.js';
import { CONTACT, DIAL, inBar, inK, INSTRUMENTS, instrumentsWith } from '../support/instruments.js';
import { refusalOf } from '../support/round.js';

const spec = specWith();
const RULE: Rule = { acceptance: 'guarded acceptance', risk: { below: 0.05, above: 0.05 } };

/** A gauge that shows too much by as many bar, as its certificate says: the correction is minus that. */
function showsTooMuch(by: number): Instruments {
  return instrumentsWith({
    gauge: {
      ...DIAL,
      accuracy: {
        certificate: { correction: inBar(-by), expandedUncertainty: inBar(0.2), coverageFactor: 2, due: '2030-01-01' },
      },
    },
  });
}

const corrected = (p: number, by: number, more: Partial<Reading> = {}): Reading =>
  reads(p, { correctionIncluded: inBar(-by), ...more });

// Target and limits at 40 °C: 152.612 ± 2 bar, from tests/reference/README.md. Stop when filling: 154.112 bar.
describe('marks are what the gauge shows', () => {
  const markOf = (p: number, instruments: Instruments): unknown => {
    const { charge } = assess(spec, reads(p), instruments, RULE);
    return 'stop' in charge && 'mark' in charge.stop ? charge.stop.mark : charge;
  };

  test('one that shows 2 bar too much is filled, and bled, to a mark 2 bar higher', () => {
    expect(markOf(140, showsTooMuch(0))).toEqual({ value: '154', unit: 'bar' });
    expect(markOf(142, showsTooMuch(2))).toEqual({ value: '156', unit: 'bar' });
    expect(markOf(138, showsTooMuch(-2))).toEqual({ value: '152', unit: 'bar' });
    expect(markOf(165, showsTooMuch(0))).toEqual({ value: '152', unit: 'bar' });
    expect(markOf(167, showsTooMuch(2))).toEqual({ value: '154', unit: 'bar' });
  });

  test('rounded down as the gauge shows it: never above the stop, and less than a step below', () => {
    // 154.112 true is 154.412 on a gauge that shows 0.3 too much, and 153.212 on one that shows 0.9 too little.
    expect(markOf(140, showsTooMuch(0.3))).toEqual({ value: '154', unit: 'bar' });
    expect(markOf(140, showsTooMuch(-0.9))).toEqual({ value: '153', unit: 'bar' });
    expect(markOf(140, showsTooMuch(0.95))).toEqual({ value: '155', unit: 'bar' });
  });

  test('so are the marks of the band, and of a work order', () => {
    const { verdict } = assess(spec, reads(142), showsTooMuch(2), RULE);
    expect(verdict.band.onGauge).toEqual({ lower: '153', upper: '156', unit: 'bar' });
    expect(verdict.band.lower).toEqual(judge(spec, reads(140)).band.lower);
    const { numbers } = workOrder(spec, reads(142), { instruments: showsTooMuch(2), rule: RULE });
    expect(numbers).toMatchObject({
      reading: '142 bar gauge',
      stop: '156 bar gauge',
      bleed: '154 bar gauge',
      lower: '153 bar gauge',
      upper: '156 bar gauge',
      target: '152.6 bar gauge',
    });
  });

  test('a certificate and a correction made by hand give the same', () => {
    const { verdict, charge } = assess(spec, reads(142), showsTooMuch(2), RULE);
    expect(check(spec, corrected(140, 2))).toMatchObject({ verdict, charge });
  });

  test('whatever the correction, unit and step: inside the limits, and the next mark beyond them', () => {
    const units: readonly PressureUnit[] = ['bar', 'MPa', 'psi', 'kgf/cm2', 'kPa'];
    const steps = { bar: 0.5, MPa: 0.05, psi: 5, 'kgf/cm2': 0.5, kPa: 50 } as const;
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.double({ min: -5, max: 5, noNaN: true }), (unit, by) => {
        const gaugeStep = { step: steps[unit as keyof typeof steps], unit };
        const correctionIncluded = pressureDifference(by, 'bar');
        const { band } = judge(spec, reads(152, { gaugeStep, correctionIncluded }));
        if (band.onGauge === 'no mark of the gauge lies in the band') throw new Error('a band of 4 bar holds a mark');
        const at = (text: string, steps = 0): number =>
          gauge(Number(text), unit).pascals + correctionIncluded.pascals + steps * pressureDifference(gaugeStep.step, unit).pascals; // prettier-ignore
        const { lower, upper } = band.onGauge;
        expect(at(lower)).toBeGreaterThanOrEqual(band.lower.pascals);
        expect(at(upper)).toBeLessThanOrEqual(band.upper.pascals);
        expect(at(lower, -1)).toBeLessThan(band.lower.pascals + 1e-6);
        expect(at(upper, 1)).toBeGreaterThan(band.upper.pascals - 1e-6);
        // For a reading on a mark, corrected as such a reading is, the marks decide as the limits do.
        const on = (text: string, steps = 0): string =>
          judge(spec, reads(0, { pressure: gauge(at(text, steps), 'Pa'), gaugeStep, correctionIncluded })).outcome;
        expect([on(lower), on(upper)]).toEqual(['within', 'within']);
        expect([on(lower, -1), on(upper, 1)]).toEqual(['undercharged', 'overcharged']);
      }),
    );
  });
});

describe('a corrected reading in words', () => {
  test('says what is judged and what the gauge showed', () => {
    const { reading, verdict } = assess(spec, reads(142), showsTooMuch(2), RULE);
    expect(why(spec, reading, verdict)).toContain(
      ': 140.0 bar gauge (corrected; the gauge showed 142.0 bar gauge) read,',
    );
  });

  test('in words of one’s own, and without a correction as ever', () => {
    const { reading, verdict } = assess(spec, reads(142), showsTooMuch(2), RULE);
    expect(why(spec, reading, verdict, { corrected: '{corrected} [{shown}]' })).toContain(': 140.0 bar gauge [142.0 bar gauge] read,'); // prettier-ignore
    const plain = assess(spec, reads(140), showsTooMuch(0), RULE);
    expect(why(spec, plain.reading, plain.verdict)).toContain(': 140.0 bar gauge read,');
  });
});

describe('a gas side that is empty only as corrected', () => {
  test('is no evidence for a decision either', () => {
    const instruments = showsTooMuch(5);
    const { verdict, decision } = assess(spec, reads(10), instruments, RULE);
    expect(verdict.outcome).toBe('gas side empty');
    expect(decision).toEqual({ outcome: 'no decision', because: 'no evidence' });
    expect(decide(spec, reads(15), instruments, RULE).outcome).toBe('undercharged');
  });

  test('is not lost where the correction leads below vacuum', () => {
    const { verdict, decision, charge, reading } = assess(spec, reads(0), showsTooMuch(2), RULE);
    expect([verdict.outcome, decision.outcome, charge.action]).toEqual(['gas side empty', 'no decision', 'withheld']);
    expect(reading.pressure.pascals).toBe(0);
    // Just to vacuum the correction still holds: 1013.25 hPa are the ambient.
    const atVacuum = assess(spec, reads(0), showsTooMuch(1.01325), RULE);
    expect([atVacuum.verdict.outcome, atVacuum.reading.pressure.pascals]).toEqual(['gas side empty', -101_325]);
    // A gauge that is off by more than what counts as empty tells nothing of it.
    expect(refusalOf(() => assess(spec, reads(9), showsTooMuch(11), RULE))).toMatchObject([{ code: 'gauge below vacuum' }]); // prettier-ignore
  });
});

describe('a gas side that reads empty', () => {
  test('is judged as corrected where the correction holds', () => {
    const of = (by: number) => assess(spec, reads(0), showsTooMuch(by), RULE);
    const few = of(-0.5);
    expect([few.verdict.outcome, few.reading.pressure.pascals]).toEqual(['gas side empty', 50_000]);
    expect(few.reading.correctionIncluded?.pascals).toBe(50_000);
    // Gauges that show 20 bar too little are bad, not empty.
    expect(of(-20).verdict.outcome).toBe('undercharged');
  });
});

test('a certificate that leads below absolute zero is refused, as a temperature of the reading', () => {
  const certificate = { correction: inK(-314), expandedUncertainty: inK(1), coverageFactor: 2, due: '2030-01-01' };
  const instruments = instrumentsWith({ thermometer: { ...CONTACT, accuracy: { certificate } } });
  expect(refusalOf(() => decide(spec, reads(140), instruments, RULE))).toMatchObject([
    { code: 'below absolute zero', path: 'reading.temperature' },
  ]);
});

describe('a reading beyond the end of the scale', () => {
  const beyond = reads(251);
  test('is no evidence, and gives no quantity', () => {
    const { verdict, charge, decision, uncertainty: budget } = assess(spec, beyond, INSTRUMENTS, RULE);
    expect(verdict).toMatchObject({ outcome: 'not comparable', because: ['beyond the scale'] });
    expect(charge.action).toBe('withheld');
    expect(decision.outcome).toBe('no decision');
    expect(budget).toMatchObject({ because: 'reading above full scale' });
    expect(uncertainty(spec, reads(250), INSTRUMENTS)).not.toHaveProperty('because');
  });

  test('is asked of what the gauge showed, not of what it is corrected to', () => {
    const outcome = (p: number, by: number): string => assess(spec, reads(p), showsTooMuch(by), RULE).verdict.outcome;
    expect([outcome(251, 2), outcome(249, -2)]).toEqual(['not comparable', 'overcharged']);
  });

  test('without instruments where the scale is stated beside it', () => {
    expect(judge(spec, reads(251, { fullScale: bar(250) })).because).toEqual(['beyond the scale']);
    expect(judge(spec, reads(250, { fullScale: bar(250) })).outcome).toBe('overcharged');
    expect(refusalOf(() => judge(spec, reads(1, { fullScale: bar(0) })))).toMatchObject([
      { code: 'not positive', path: 'fullScale' },
    ]);
  });
});

test('a slip is sought in what the gauge showed', () => {
  // 15.3 shown in MPa, said to be bar, and corrected by hand.
  const found = slips(spec, reads(15.2, { correctionIncluded: inBar(-0.1), gaugeStep: { step: 0.1, unit: 'bar' } }));
  const [first] = found.candidates;
  expect(first?.slips[0]).toMatchObject({ code: 'unit of pressure', number: 15.3, readAs: 'MPa' });
  expect(first?.pressure).toEqual(gauge(15.3, 'MPa'));
});

test('a reading that is corrected is not corrected again', () => {
  const twice = corrected(140, 2);
  const calls = [
    () => assess(spec, twice, showsTooMuch(2), RULE),
    () => decide(spec, twice, showsTooMuch(2), RULE),
    () => uncertainty(spec, twice, showsTooMuch(2)),
    () => slips(spec, twice, showsTooMuch(2)),
    () => together([{ spec, reading: twice, instruments: showsTooMuch(2) }]),
  ];
  for (const call of calls) expect(refusalOf(call)).toMatchObject([{ code: 'corrected twice' }]);
  expect(assess(spec, twice, INSTRUMENTS, RULE).verdict.outcome).toBe('undercharged');
});
