// The words of every contribution to the uncertainty of a comparison, whatever is stated.
import { idealNitrogen, specification, type Specification } from 'isochore';
import { describe, expect, test } from 'vitest';
import { NOT_COUNTED } from '../../src/basis/words.js';
import type { Instruments } from '../../src/reading/instruments.js';
import { uncertainty } from '../../src/verdict/budget.js';
import { compareWith, type Part } from '../../src/verdict/contributions.js';
import { subjectsOf } from '../../src/verdict/subject.js';
import { bar, barOf, celsius, GIVEN, pointOf, readingWith, specBy, specWith, tableOf } from '../support/accumulator.js';
import { CONTACT, dialWith, inBar, inK, INSTRUMENTS, instrumentsWith } from '../support/instruments.js';

/** What each is measured in, and in what it is the same: JCGM 100, F.1 has the reasons. */
const WORDS: Readonly<Record<string, Pick<Part, 'unit' | 'repeats'>>> = {
  gauge: { unit: 'Pa', repeats: 'per instrument' },
  'gauge temperature': { unit: 'Pa', repeats: 'per instrument' },
  'gauge step': { unit: 'Pa', repeats: 'per reading' },
  thermometer: { unit: 'K', repeats: 'per instrument' },
  'thermometer step': { unit: 'K', repeats: 'per reading' },
  'shell to gas': { unit: 'K', repeats: 'common to all' },
  emissivity: { unit: 'K', repeats: 'per instrument' },
  barometer: { unit: 'Pa', repeats: 'per instrument' },
  'printed pressure': { unit: 'Pa', repeats: 'common to all' },
  'printed temperature': { unit: 'K', repeats: 'common to all' },
  'printed ambient': { unit: 'Pa', repeats: 'common to all' },
  vessel: { unit: '1', repeats: 'common to all' },
  'equation of state': { unit: '1', repeats: 'common to all' },
};

const TABLE = tableOf([[127, 0], [140, 20], [152.5, 40], [165, 60]], { printedStep: barOf(1), outside: 'follow constant density' }); // prettier-ignore
const shiftedBy = (dp: number) => ({ ...TABLE, rows: TABLE.rows.map(({ pressure, temperature }) => ({ pressure: bar(pressure.pascals / 1e5 + dp), temperature })), printedStep: barOf(0.5) }); // prettier-ignore
const STATED = { minimum: shiftedBy(-2), maximum: shiftedBy(3) };

const certificate = { expandedUncertainty: barOf(0.6), coverageFactor: 2, due: '2027-01-01' };
const byTable = { ...INSTRUMENTS.printed, pressure: 'as the table states' } as const;
const infrared = { ...CONTACT, type: 'infrared thermometer', emissivity: { assumed: 0.95, limit: 0.05 }, surroundings: celsius(15) } as const; // prettier-ignore

const SPECS: readonly (readonly [string, Specification, Partial<Instruments>])[] = [
  ['a point', specWith(), {}],
  ['limits at the reference temperature', specWith({ tolerance: { plusMinus: barOf(2), applies: 'at the reference temperature' } }), {}], // prettier-ignore
  ['limits in per cent', specWith({ tolerance: { plusMinusPercentOfGauge: 2, applies: 'at the measured temperature' } }), {}], // prettier-ignore
  ['a gas without a stated uncertainty', specWith({ gas: idealNitrogen }), {}],
  ['a table', specBy(TABLE), { printed: byTable }],
  ['a table with tables of limits', specBy(TABLE, { tolerance: STATED }), { printed: byTable }],
];
const BY_CERTIFICATES = { gauge: { ...dialWith({}).gauge, accuracy: { certificate: { ...certificate, correction: barOf(0.3) } } }, thermometer: { ...CONTACT, accuracy: { certificate: { ...certificate, correction: inK(0.3), expandedUncertainty: inK(0.6) } } } } satisfies Partial<Instruments>; // prettier-ignore
const KITS: readonly (readonly [string, Partial<Instruments>])[] = [
  ['by class and limit', {}],
  ['by certificates', BY_CERTIFICATES],
  ['by light', { thermometer: infrared }],
];
const CASES = SPECS.flatMap(([what, spec, printed]) =>
  KITS.map(([how, kit]) => [what, how, spec, instrumentsWith({ ...printed, ...kit })] as const),
);

describe.each(CASES)('compared with %s, read %s', (what, how, spec, instruments) => {
  const subjects = subjectsOf(spec, instruments);

  test.each([30, 75])('at %i °C every contribution says what it is', (t_C) => {
    const reading = readingWith({ temperature: celsius(t_C) });
    for (const subject of Object.values(subjects)) {
      const { parts, notCounted } = compareWith(spec, reading, instruments, subject);
      for (const { of, unit, repeats, distribution } of parts) {
        expect({ of, unit, repeats }).toEqual({ of, ...WORDS[of] });
        const isNormal = of === 'equation of state' || (how === 'by certificates' && WORDS[of] !== undefined && ['gauge', 'thermometer'].includes(of)); // prettier-ignore
        expect([of, distribution]).toEqual([of, isNormal ? 'normal' : 'rectangle']);
      }
      for (const code of notCounted) expect(Object.keys(NOT_COUNTED)).toContain(code);
      expect(notCounted.includes('drift since calibration')).toBe(how === 'by certificates');
      expect(parts.some(({ of }) => of === 'emissivity')).toBe(how === 'by light');
    }
    expect(what).toBeDefined();
  });
});

test('drift since calibration is named where only one of gauge and thermometer has a certificate', () => {
  const { gauge, thermometer } = BY_CERTIFICATES;
  const spec = specWith();
  for (const kit of [{ gauge }, { thermometer }] as Partial<Instruments>[]) {
    const instruments = instrumentsWith(kit);
    const { notCounted } = compareWith(spec, readingWith(), instruments, subjectsOf(spec, instruments).target);
    expect(notCounted).toEqual(['drift since calibration']);
  }
});

test('what is compared is named', () => {
  for (const [, spec, printed] of SPECS) {
    const subjects = Object.values(subjectsOf(spec, instrumentsWith(printed)));
    expect(subjects.map(({ about }) => about)).toEqual(['target', 'lower limit', 'upper limit']);
  }
});

test('tables of limits are printed as each states, and limits beside a table as the table', () => {
  const stepOf = (spec: Specification, printed: Instruments['printed']): number[] =>
    Object.values(subjectsOf(spec, instrumentsWith({ printed }))).map(({ printedStep_Pa }) => printedStep_Pa);
  expect(stepOf(specBy(TABLE, { tolerance: STATED }), byTable)).toEqual([1e5, 5e4, 5e4]);
  const points = { minimum: pointOf(138, 20), maximum: pointOf(143, 20) };
  expect(stepOf(specBy(TABLE, { tolerance: points }), byTable)).toEqual([1e5, 1e5, 1e5]);
  expect(stepOf(specWith({ tolerance: points }), { ...INSTRUMENTS.printed, pressure: inBar(2) })).toEqual([2e5, 2e5, 2e5]); // prettier-ignore
});

test('the expansion of a vessel and how well it is known count together where nothing is corrected', () => {
  const vessel = { linearExpansion_per_K: 12e-6, limit_per_K: 4e-6, treated: 'as uncertainty' } as const;
  const { parts } = compareWith(specWith(), readingWith(), instrumentsWith({ vessel }), subjectsOf(specWith(), INSTRUMENTS).target); // prettier-ignore
  // Three times the linear expansion, over 20 K.
  expect(parts.find(({ of }) => of === 'vessel')?.size).toBeCloseTo(3 * 16e-6 * 20, 12);
});

test('the uncertainty of the equation is asked for at the absolute pressure of the stated point', () => {
  // 119.5 bar gauge is 120.5 bar absolute: above 12 MPa it is 0.02 % of density, below 0.01 % (Span et al. 2000).
  const sizeOf = (p_bar: number): unknown => {
    const spec = specification({ ...GIVEN, precharge: pointOf(p_bar, 40) });
    const found = uncertainty(spec, readingWith({ pressure: bar(110), temperature: celsius(20) }), INSTRUMENTS);
    return 'contributions' in found && found.contributions.find(({ of }) => of === 'equation of state')?.size;
  };
  expect(sizeOf(119.5)).toBeCloseTo(Math.hypot(1e-4, 0.5e-4), 12);
  expect(sizeOf(118.5)).toBeCloseTo(Math.hypot(0.5e-4, 0.5e-4), 12);
});
