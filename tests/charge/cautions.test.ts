import {
  charge,
  check,
  gauge,
  judge,
  nitrogen,
  temperature,
  type CautionCode,
  type Reading,
  type Specification,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import {
  bar,
  barOf,
  celsius,
  GIVEN,
  pointOf,
  readingWith,
  reads,
  specBy,
  specOf,
  specWith,
  tableOf,
} from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { densityBySpan } from '../support/line.js';
import { span2000 } from '../support/span2000.js';

// The cautions of the work, in the order in which it is done. Common practice, no source.
const ALWAYS: readonly CautionCode[] = [
  'secure and drain',
  'nitrogen only',
  'stored pressure',
  'asphyxiation',
  'maker decides',
];

const row = (title: string, own: CautionCode[], reading: Reading, spec: Specification = specWith()) => ({
  title,
  own,
  reading,
  spec,
});
const cleared = { emptyGasSide: 'investigated and cleared' } as const;
const narrow = specWith({
  tolerance: { plusMinus: barOf(0.3), applies: 'at the measured temperature' },
  settling: { ...GIVEN.settling, allowance: barOf(0) },
});
const low = specWith({ allowable: bar(150) });
const table = tableOf([
  [140, 20],
  [152.6, 40],
]);
// Its line gives 140.2 bar at 20 °C and 152.8 bar at 40 °C: both rows are off by more than the step of 0.1 bar.
const disputed = specBy(table, { nominal: pointOf(140.2, 20) });

const ROWS = [
  row('within', [], reads(153)),
  row('undercharged', [], readingWith()),
  row('overcharged', [], reads(160)),
  row('gauge too coarse', [], reads(152), narrow),
  row('gas not known', ['not comparable'], readingWith({ gasInside: 'not known' })),
  row('oil side not known', ['not comparable'], readingWith({ oilSide: 'not known' })),
  row('empty gas side', ['empty gas side', 'large loss'], reads(0)),
  row('empty gas side, cleared', ['large loss'], reads(0, cleared)),
  row('less than half of the gas left', ['large loss'], reads(60)),
  row('less than half of the gas left, if the gauge shows gas', ['not comparable'], reads(60, { minutesAtRest: 1 })),
  row('filling without a mark to stop at', ['no mark to stop at'], reads(130), narrow),
  row('venting without a mark to stop at', ['no mark to stop at'], reads(160), narrow),
  row('target above the allowable pressure, undercharged', ['target above the allowable pressure'], reads(130), low),
  row(
    'target above the allowable pressure, within',
    ['reading above the allowable pressure', 'target above the allowable pressure'],
    reads(153),
    low,
  ),
  row(
    'stop above the allowable pressure',
    ['stop pressure above the allowable pressure'],
    reads(130),
    specWith({ allowable: bar(153.5) }),
  ),
  row('reading above the allowable pressure', ['reading above the allowable pressure'], reads(211)),
  row(
    'reading above the allowable pressure, of oil',
    ['reading above the allowable pressure', 'not comparable'],
    reads(211, { oilSide: 'not drained' }),
  ),
  row('within, by a table', [], reads(153), specBy(table)),
  row('by a table that agrees with its nominal point', [], reads(153), specBy(table, { nominal: pointOf(140, 20) })),
  row('by a table that does not', ['table and nominal point disagree'], reads(153), disputed),
  row(
    'by a table that does not, and no evidence',
    ['not comparable', 'table and nominal point disagree'],
    reads(153, { oilSide: 'not known' }),
    disputed,
  ),
  row('less than half of the gas left, by a table', ['large loss'], reads(60), specBy(table)),
  row(
    'target above 30 MPa, where the source states no uncertainty',
    ['model uncertainty not stated'],
    reads(300),
    specOf(310, 20, { allowable: bar(400) }),
  ),
];

describe('the cautions with a check', () => {
  test.each(ROWS)('$title', ({ own, reading, spec }) => {
    const { cautions } = check(spec, reading);
    expect(cautions.map(({ code }) => code)).toEqual([...own, ...ALWAYS]);
  });

  test('all have words and a severity, and danger is called so', () => {
    const cautions = ROWS.flatMap(({ spec, reading }) => check(spec, reading).cautions);
    const severity = Object.fromEntries(cautions.map((x) => [x.code, x.severity]));
    expect(severity).toEqual({
      'reading above the allowable pressure': 'danger',
      'target above the allowable pressure': 'danger',
      'stop pressure above the allowable pressure': 'danger',
      'empty gas side': 'danger',
      'nitrogen only': 'danger',
      'stored pressure': 'danger',
      'secure and drain': 'danger',
      asphyxiation: 'danger',
      'maker decides': 'caution',
      'not comparable': 'caution',
      'no mark to stop at': 'caution',
      'large loss': 'caution',
      'table and nominal point disagree': 'caution',
      'model uncertainty not stated': 'note',
    });
    for (const { text } of cautions) expect(text).toMatch(/^[A-Z].{20,}\.$/);
  });

  // Common practice, no source: what must be said whatever the words.
  test.each<[CautionCode, RegExp]>([
    ['nitrogen only', /never with oxygen or air/],
    ['stored pressure', /pressure vessel/],
    ['secure and drain', /drain the oil side and verify that it is at zero/],
    ['asphyxiation', /Ventilate/],
    ['table and nominal point disagree', /The table is the target; ask the maker/],
    ['maker decides', /maker's manual, class rules, local codes and licensed practice decide/],
  ])('%s', (code, said) => {
    expect(check(disputed, reads(153)).cautions.find((x) => x.code === code)?.text).toMatch(said);
  });

  test('of a large loss begins where half of the gas is left, by density', () => {
    const spec = specWith();
    const half = span2000(313.15, spec.density_mol_m3 / 2).p_Pa - 101_325;
    const codes = (pascals: number): string[] =>
      check(spec, readingWith({ pressure: gauge(pascals, 'Pa') })).cautions.map(({ code }) => code);
    expect(codes(half - 0.01)).toContain('large loss');
    expect(codes(half + 0.01)).not.toContain('large loss');
  });

  test('of a large loss with a table begins where half of the gas of the table’s target is left', () => {
    const spec = specBy({ ...table, rows: [pointOf(140, 20), pointOf(180, 40)] });
    const half = span2000(313.15, densityBySpan(313.15, 18_101_325) / 2).p_Pa - 101_325;
    const codes = (pascals: number): string[] =>
      check(spec, readingWith({ pressure: gauge(pascals, 'Pa') })).cautions.map(({ code }) => code);
    expect(codes(half - 0.01)).toContain('large loss');
    expect(codes(half + 0.01)).not.toContain('large loss');
  });

  test('of the allowable pressure begin one bit above it', () => {
    const codes = (pascals: number): string[] =>
      check(specWith(), readingWith({ pressure: gauge(pascals, 'Pa') })).cautions.map(({ code }) => code);
    expect(codes(21_000_000)).not.toContain('reading above the allowable pressure');
    expect(codes(neighbour(21_000_000, 1))).toContain('reading above the allowable pressure');
  });
});

describe('a check', () => {
  test.each(ROWS)('is the verdict and the charge of the same reading: $title', ({ reading, spec }) => {
    const { verdict, charge: move } = check(spec, reading);
    expect(verdict).toStrictEqual(judge(spec, reading));
    expect(move).toStrictEqual(charge(spec, reading));
  });

  test('names its model and where that comes from', () => {
    const { model, sources } = check(specWith(), readingWith());
    expect(model).toBe(nitrogen.id);
    expect(sources).toEqual([nitrogen.source]);
  });

  // Source: Span et al. (2000), as in tests/reference/README.md: 0.01 % for 270–350 K below 12 MPa, 0.02 % for 240–523 K
  // below 30 MPa. It is the pressure of the target that counts, not that of the reading.
  test.each([
    [80, 40, 50, 1e-4],
    [80, -10, 50, 2e-4],
    [118.9, 20, 10, 1e-4],
    [119.1, 20, 10, 2e-4],
    [140, 40, 50, 2e-4],
    [140, -40, 50, 'not stated by the source'],
    [320, 20, 50, 'not stated by the source'],
  ])('a target of %d bar at 20 °C, read at %d °C as %d bar: uncertainty of density %s', (p, t, read, uncertainty) => {
    const spec = specOf(p, 20, { allowable: bar(400) });
    expect(check(spec, reads(read, { temperature: celsius(t) })).densityUncertainty).toBe(uncertainty);
  });

  test('of a hot vessel is beyond the stated uncertainty as well', () => {
    const reading = reads(50, { temperature: temperature(530, 'K') });
    expect(check(specWith({ allowable: bar(400) }), reading).densityUncertainty).toBe('not stated by the source');
  });
});
