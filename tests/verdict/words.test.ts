import { assess, check, gauge, judge, why, workOrder, type Reading, type Reason, type Specification } from 'isochore';
import { describe, expect, test } from 'vitest';
import { REASON } from '../../src/basis/words.js';
import { bar, barOf, celsius, readingWith, reads, specWith } from '../support/accumulator.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

interface Case {
  readonly reason: Reason;
  readonly spec?: Specification;
  readonly reading: Reading;
  /** What the words must contain. Targets and limits at 40 °C: 152.612 ± 2 bar, from tests/reference/README.md. */
  readonly says: readonly string[];
}

const narrow = specWith({ tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' } });

const RULE = { acceptance: 'guarded both ways', risk: { below: 0.025, above: 0.025 } } as const;

const CASES: readonly Case[] = [
  {
    reason: 'gas not known to be nitrogen',
    reading: readingWith({ gasInside: 'not known' }),
    says: ['not known to be nitrogen'],
  },
  {
    reason: 'oil side not drained',
    reading: readingWith({ oilSide: 'not drained' }),
    says: ['oil side is not drained'],
  },
  {
    reason: 'oil side not known',
    reading: readingWith({ oilSide: 'not known' }),
    says: ['oil side is drained and at zero'],
  },
  {
    reason: 'reads like system pressure',
    reading: reads(200, { systemPressure: bar(200.5) }),
    says: ['the reading of 200.0 bar gauge agrees with the system pressure of 200.5 bar gauge'],
  },
  {
    reason: 'time at rest not known',
    reading: readingWith({ minutesAtRest: 'not known' }),
    says: ['5 min are needed'],
  },
  {
    reason: 'not at rest long enough',
    reading: readingWith({ minutesAtRest: 3 }),
    says: ['oil or gas moved 3 min ago and 5 min at rest are needed'],
  },
  { reason: 'reads zero', reading: reads(0.5), says: ['the gas side reads 0.5 bar gauge', '(152.6 bar gauge wanted)'] },
  {
    reason: 'empty, cause cleared',
    reading: reads(0.5, { emptyGasSide: 'investigated and cleared' }),
    says: ['the gas side reads 0.5 bar gauge, 152.6 bar gauge wanted at 40.0 °C; its cause is stated as investigated'],
  },
  {
    reason: 'reading above the allowable pressure',
    spec: specWith({ allowable: bar(152.9) }),
    reading: reads(153),
    says: ['the reading of 153.0 bar gauge is above the allowable pressure of 152.9 bar gauge'],
  },
  { reason: 'not investigated', reading: reads(0.5), says: ['not been stated as investigated and cleared'] },
  {
    reason: 'no mark of the gauge in the band',
    spec: narrow,
    reading: reads(152),
    says: [
      'a gauge read to 1 bar lies between 152.32 bar gauge and 152.91 bar gauge',
      'the reading of 152.00 bar gauge',
      'a gauge read to 0.5 bar or finer',
    ],
  },
  {
    reason: 'below the lower limit',
    reading: readingWith(),
    says: [
      'undercharged by 9.6 bar: 143.0 bar gauge read, 152.6 bar gauge wanted at 40.0 °C, lower limit 150.7 bar gauge',
      '; the reading would be right at a gas temperature of 24.7 °C',
    ],
  },
  {
    reason: 'above the upper limit',
    reading: reads(165, { gaugeStep: { step: 0.1, unit: 'bar' } }),
    says: [
      'overcharged by 12.39 bar: 165.00 bar gauge read, 152.61 bar gauge wanted at 40.0 °C, upper limit 154.61 bar gauge',
      '; the reading would be right at a gas temperature of 59.7 °C',
    ],
  },
  {
    reason: 'inside the limits',
    reading: reads(153),
    says: ['153.0 bar gauge read, 152.6 bar gauge wanted at 40.0 °C, limits 150.7 bar gauge and 154.6 bar gauge'],
  },
  {
    reason: 'not conclusive',
    reading: reads(155),
    says: [
      'whether 155.0 bar gauge is too much, with 152.6 bar gauge wanted at 40.0 °C and an upper limit of 154.6 bar',
    ],
  },
  {
    reason: 'slip possible',
    reading: reads(152, { temperature: celsius(104) }),
    says: ['in another unit or basis the reading of 152.0 bar gauge at 104.0 °C would be right'],
  },
  {
    reason: 'beyond the scale',
    reading: readingWith({ pressure: bar(1500), fullScale: bar(250) }),
    says: ['the reading of 1500.0 bar gauge lies beyond the end of the scale of its gauge, 250.0 bar gauge'],
  },
  {
    reason: 'target above the allowable pressure',
    spec: specWith({ allowable: bar(150) }),
    reading: readingWith(),
    says: ['at 40.0 °C the target of 152.6 bar gauge is above the allowable pressure of 150.0 bar gauge'],
  },
  {
    reason: 'stop pressure above the allowable pressure',
    spec: specWith({ allowable: bar(153.5) }),
    reading: readingWith(),
    says: ['together, 154.1 bar gauge, are above the allowable pressure of 153.5 bar gauge'],
  },
];

/** Every reason that a check gives, with its words: of the verdict, of the charge, of the stop pressure. */
function reasons(spec: Specification, reading: Reading): [readonly Reason[], string][] {
  const { verdict, charge } = check(spec, reading);
  const sure = assess(spec, reading, INSTRUMENTS, RULE).charge;
  const order = workOrder(spec, reading).check;
  const held = order === 'before a reading' ? charge : order.charge;
  const results: object[] = [verdict, charge, sure, held, ...('stop' in charge ? [charge.stop] : [])];
  return results.flatMap((result): [readonly Reason[], string][] =>
    hasReasons(result) ? [[result.because, why(spec, reading, result)]] : [],
  );
}

function hasReasons(result: object): result is { because: readonly Reason[] } {
  return 'because' in result;
}

/** What a check of a reading says. */
function said(reading: Reading, spec = specWith()): string {
  return why(spec, reading, judge(spec, reading));
}

describe('the words of every reason', () => {
  test.each(CASES)('$reason', ({ reason, spec = specWith(), reading, says }) => {
    const words = reasons(spec, reading)
      .filter(([because]) => because.includes(reason))
      .map(([, why]) => why);
    for (const part of says) expect(words.join('\n')).toContain(part);
    for (const [, why] of reasons(spec, reading)) expect(why).not.toMatch(/[{}]|undefined|NaN|not known min/);
  });

  test('are all tried here', () => {
    expect(CASES.map(({ reason }) => reason).sort()).toEqual(Object.keys(REASON).sort());
  });

  test('are in the unit of the gauge', () => {
    // 152.612 bar is 2213.45 psi, 143 bar 2074.04 psi; 1 psi is 6894.757 Pa (NIST SP 811:2008, B.8).
    const reading = readingWith({ gaugeStep: { step: 20, unit: 'psi' }, pressure: gauge(2080, 'psi') });
    const text = said(reading);
    expect(text).toContain('undercharged by 133 psi: 2080 psi gauge read, 2213 psi gauge wanted at 40.0 °C');
    expect(text).toContain('lower limit 2185 psi gauge');
  });

  test.each([0.3, 0.04, 0.004, 0.0004])('tell the limits of a band of ± %d bar apart', (size) => {
    const spec = specWith({ tolerance: { plusMinus: barOf(size), applies: 'at the measured temperature' } });
    const [, lower, upper] =
      /lies between ([\d.]+) bar gauge and ([\d.]+) bar gauge/.exec(said(reads(152.6), spec)) ?? [];
    expect(Number(lower)).toBeLessThan(Number(upper));
  });

  test('leave the explaining temperature out where there is none', () => {
    expect(said(reads(10))).toMatch(/^undercharged by 142\.6 bar: 10\.0 bar gauge read.*lower limit 150\.7 bar gauge$/);
  });

  test('of several missing pieces of evidence stand beside each other', () => {
    const reading = readingWith({ oilSide: 'not drained', minutesAtRest: 3 });
    const texts = [CASES[1], CASES[5]].map((x) => x?.says[0] ?? '');
    expect(said(reading).split('; ')).toHaveLength(2);
    for (const text of texts) expect(said(reading)).toContain(text);
    const { verdict, charge } = check(specWith(), reading);
    expect(charge).toEqual({ action: 'withheld', because: verdict.because });
  });

  test('say the temperature in °C to a tenth, whatever it was given in', () => {
    expect(said(readingWith({ temperature: celsius(-3.14) }))).toContain('wanted at -3.1 °C');
  });

  test("can be one's own, reason by reason, with the same numbers", () => {
    const words = {
      reasons: { 'below the lower limit': '{off} zu wenig' },
      explained: 'stimmt bei {explaining}',
    } as const;
    const [spec, reading] = [specWith(), readingWith()];
    expect(why(spec, reading, judge(spec, reading), words)).toBe('9.6 bar zu wenig; stimmt bei 24.7 °C');
    const high = reads(165);
    expect(why(spec, high, judge(spec, high), words)).toMatch(/^overcharged by .*; stimmt bei 59\.7 °C$/);
  });

  test('say so where a number that is asked for is not known', () => {
    const text = 'scale {fullScale}, system {system}, right at {explaining}';
    const [spec, reading] = [specWith(), reads(10)];
    const words = { reasons: { 'below the lower limit': text } };
    const verdict = judge(spec, reading);
    expect(why(spec, reading, verdict, words)).toBe('scale not known, system not known, right at none in range');
    const known = { ...reads(143), fullScale: bar(250), systemPressure: bar(180) };
    expect(why(spec, known, verdict, words)).toMatch(
      /^scale 250\.0 bar gauge, system 180\.0 bar gauge, right at 24\.7 °C;/,
    );
  });

  test('of no reason are none, and among several of a band the temperature that explains it is named once', () => {
    const [spec, reading] = [specWith(), readingWith()];
    expect(why(spec, reading, { because: [] })).toBe('');
    const said = why(spec, reading, { because: ['below the lower limit', 'slip possible'] });
    expect(said.match(/right at a gas temperature of 24\.7 °C/g)).toHaveLength(1);
  });

  test('that are no texts are refused where they stand', () => {
    const spec = specWith();
    const reading = readingWith({ correctionIncluded: barOf(1) });
    const by = (words: unknown) => problemOf(() => why(spec, reading, judge(spec, reading), words as never));
    expect(by({ corrected: 5 })).toMatchObject({ code: 'words not sound', path: 'words' });
    expect(by({ explained: 5 })).toMatchObject({ code: 'words not sound', path: 'words' });
    expect(by({ reasons: { 'below the lower limit': 5 } })).toMatchObject({ path: 'words.reasons' });
  });

  test('refuse a name in braces that has no number', () => {
    const [spec, reading] = [specWith(), readingWith()];
    const words = { reasons: { 'below the lower limit': '{missing} zu wenig, {constructor}' } } as const;
    const { code, found, wanted } = problemOf(() => why(spec, reading, judge(spec, reading), words));
    expect([code, found]).toEqual(['words not sound', '"{missing} zu wenig, {constructor}"']);
    expect(wanted).toContain('{missing}');
  });
});

test('a number has twelve digits at most, whatever the gauge: no sentence fails for a step that is too fine', () => {
  const fine = readingWith({ gaugeStep: { step: 1e-9, unit: 'bar' } });
  expect(why(specWith(), fine, judge(specWith(), fine))).toMatch(
    /^undercharged by 9\.6\d{9} bar: 143\.0{9} bar gauge read, 152\.61\d{7} bar gauge wanted/,
  );
});

test('limits are rounded inwards: what reads like a limit lies inside it', () => {
  // 152.612 ± 2.05 at 40 °C: 150.562 and 154.662.
  const wide = specWith({ tolerance: { plusMinus: barOf(2.05), applies: 'at the measured temperature' } });
  expect(why(wide, reads(153), judge(wide, reads(153)))).toContain('limits 150.6 bar gauge and 154.6 bar gauge');
});
