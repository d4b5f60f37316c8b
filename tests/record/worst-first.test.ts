import { gauge, isFault, valueIn } from 'isochore';
import { describe, expect, test } from 'vitest';
import { STAKES, worstFirst, type Ranked, type RoundReport, type UnitServed } from 'isochore/record';
import { problemOf } from '../support/problem.js';
import { roundWithoutSupply, keysOf, NOTHING, put, refusalOf, reportRest } from '../support/round.js';

const nameOf = (one: Ranked): string | undefined => ('accumulator' in one ? one.accumulator.name : one.notJudged.name);
const shown = (units: readonly UnitServed[]): string[] =>
  units.map(({ unitServed, stake, accumulators }) => `${unitServed}, ${stake}: ${accumulators.map(nameOf).join(', ')}`);

function changed(...puts: readonly (readonly [string, unknown])[]): RoundReport {
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return reportRest(round);
}
/** All accumulators in one order, whatever they serve. */
function order(report: RoundReport): string[] {
  const bare = structuredClone(report);
  for (const one of [...bare.accumulators, ...bare.notJudged]) delete one.unitServed;
  return worstFirst(bare).flatMap(({ accumulators }) => accumulators.map((one) => `${nameOf(one)} ${one.stake}`));
}

test('the round of the examples', () => {
  expect(shown(worstFirst(reportRest(roundWithoutSupply())))).toEqual([
    'cylinder 7, danger: FI 7, EV 7',
    'cylinder 8, danger: FI 8, EV 8',
    'cylinder 5, gas side empty: EV 5, FI 5',
    'cylinder 6, gas side empty: FI 6, EV 6',
    'cylinder 2, outside the band: FI 2, EV 2',
    'cylinder 3, outside the band: EV 3, FI 3',
    'cylinder 4, not known: EV 4, FI 4',
    'cylinder 1, inconclusive: FI 1, EV 1',
  ]);
});

test('every accumulator stands in it once, whether judged or not', () => {
  const report = changed(['$.groups[0].accumulators[4].visit[0].pressure.unit', 'barg'], ['$.groups[1].specification', 'x']); // prettier-ignore
  const names = worstFirst(report).flatMap(({ accumulators }) => accumulators.map(nameOf));
  expect(names).toHaveLength(16);
  expect(new Set(names).size).toBe(16);
  expect(worstFirst(report).find(({ unitServed }) => unitServed === 'cylinder 5')?.stake).toBe('not known');
});

test('a unit is as bad as its worst, and the stakes never get worse down the list', () => {
  const units = worstFirst(reportRest(roundWithoutSupply()));
  const rank = ({ stake }: { readonly stake: string }): number => (STAKES as readonly string[]).indexOf(stake);
  units.forEach((unit, i) => {
    expect(rank(unit)).toBe(Math.min(...unit.accumulators.map(rank)));
    expect(rank(unit)).toBeGreaterThanOrEqual(rank(units[i - 1] ?? unit));
  });
});

describe('a report that was altered in its numbers', () => {
  const altered = (path: string, value: unknown, [n, reading]: readonly [number, string] = [2, 'asFound']): unknown => {
    const report = structuredClone(reportRest(roundWithoutSupply()));
    put(report, ['accumulators', n, reading, ...keysOf(`$.${path}`)], value);
    return report;
  };

  test.each<[string, unknown, string, string]>([
    ['band.lower.value', 'about 150', 'not a decimal', 'band.lower.value'],
    ['band.upper.value', 'about 150', 'not a decimal', 'band.upper.value'],
    ['target.value', 'NaN', 'not a decimal', 'target.value'],
    ['offTarget.value', '', 'not a decimal', 'offTarget.value'],
    ['band.upper.value', 1, 'limits crossed', 'band'],
  ])('%s of %j is refused where it stands', (path, value, code, at) => {
    expect(refusalOf(() => worstFirst(altered(path, value) as RoundReport))).toMatchObject([
      { code, path: `accumulators[2].asFound.${at}` },
    ]);
    // EV 2 was filled: it stands in the order by the reading as left.
    expect(refusalOf(() => worstFirst(altered(path, value, [1, 'asLeft']) as RoundReport))).toMatchObject([
      { code, path: `accumulators[1].asLeft.${at}` },
    ]);
  });

  test('limits that are crossed are said as they stand', () => {
    const report = altered('band.upper', { value: 1, unit: 'MPa', basis: 'gauge' });
    put(report, keysOf('$.accumulators[2].asFound.band.lower'), { value: 150, unit: 'bar', basis: 'gauge' });
    expect(refusalOf(() => worstFirst(report as RoundReport))[0]?.found).toBe('150 bar to 1 MPa gauge');
  });

  test('a band without width is none', () => {
    const report = altered('band.upper', { value: 150, unit: 'bar', basis: 'gauge' });
    put(report, keysOf('$.accumulators[2].asFound.band.lower'), { value: 150, unit: 'bar', basis: 'gauge' });
    expect(refusalOf(() => worstFirst(report as RoundReport))).toMatchObject([{ code: 'limits crossed' }]);
  });

  test('so far outside so narrow a band that no number says it', () => {
    const report = altered('offTarget.value', 1e303);
    const EV3 = '$.accumulators[2].asFound.band';
    for (const [limit, value] of [['lower', 0], ['upper', 1e-9]] as const) put(report, keysOf(`${EV3}.${limit}.value`), value); // prettier-ignore
    expect(refusalOf(() => worstFirst(report as RoundReport))).toMatchObject([
      { code: 'beyond double', path: 'accumulators[2].asFound.offTarget' },
    ]);
  });

  test('in another unit it is the same', () => {
    const own = reportRest(roundWithoutSupply());
    const { upper } = own.accumulators[2]?.asFound.band ?? expect.fail('no EV 3');
    const psi = valueIn(gauge(Number(upper.value), 'bar'), 'psi');
    const other = altered('band.upper', { value: psi, unit: 'psi', basis: 'gauge' }) as RoundReport;
    const outside = (report: RoundReport): number | undefined =>
      worstFirst(report)
        .flatMap(({ accumulators }) => accumulators)
        .find((one) => nameOf(one) === 'EV 3')?.outsideBy;
    expect(outside(other)).toBeCloseTo(outside(own) ?? Number.NaN, 9);
  });
});

describe('the order', () => {
  const pressure = (n: number, value: number) => [`$.groups[0].accumulators[${n - 1}].visit[0].pressure.value`, value] as const; // prettier-ignore

  test('above the allowable pressure before an empty gas side before what is far outside', () => {
    const list = order(changed(pressure(1, 211), pressure(3, 100)));
    expect(list[0]).toBe('EV 1 danger');
    expect(list.indexOf('EV 1 danger')).toBeLessThan(list.indexOf('EV 5 gas side empty'));
    expect(list.indexOf('EV 5 gas side empty')).toBeLessThan(list.indexOf('EV 3 outside the band'));
  });

  test('by widths of the band, not by bar: 4 bar wide and 0.4 MPa wide', () => {
    const by = (report: RoundReport) =>
      new Map(
        worstFirst(report).flatMap(({ accumulators }) => accumulators.map((one) => [nameOf(one), one.outsideBy])),
      );
    const found = by(reportRest(roundWithoutSupply()));
    // EV 3: 158 bar read at 39 °C; target and band of 4 bar from the report.
    const { target, band } = reportRest(roundWithoutSupply()).accumulators[2]?.asFound ?? expect.fail('no EV 3');
    expect(Number(band.upper.value) - Number(band.lower.value)).toBeCloseTo(4, 9);
    expect(found.get('EV 3')).toBeCloseTo((158 - Number(target.value) - 2) / 4, 9);
    expect(found.get('EV 1')).toBe(0);
    // Where more is allowed below than above, what lies above is nearer to the middle of the band than it seems.
    const less = changed(
      ['$.specifications[0].tolerance.plusMinus', NOTHING],
      ['$.specifications[0].tolerance.below', { value: 3, unit: 'bar', basis: 'difference' }],
      ['$.specifications[0].tolerance.above', { value: 1, unit: 'bar', basis: 'difference' }],
    );
    expect(by(less).get('EV 3')).toBeCloseTo((158 - Number(target.value) - 1) / 4, 9);
    // Further out by bar, less far by widths.
    const wide = changed(['$.specifications[0].tolerance.plusMinus.value', 4], pressure(3, 162));
    expect(order(wide).indexOf('FI 2 outside the band')).toBeLessThan(order(wide).indexOf('EV 3 outside the band'));
  });

  test('too little and too much gas weigh alike', () => {
    const low = changed(pressure(1, 140), pressure(3, 163));
    const high = changed(pressure(1, 144), pressure(3, 168));
    expect(order(low).filter((one) => /^EV [13] /.test(one))).toEqual(['EV 1 outside the band', 'EV 3 outside the band']);
    expect(order(high).filter((one) => /^EV [13] /.test(one))).toEqual(['EV 3 outside the band', 'EV 1 outside the band']);
  }); // prettier-ignore

  test('of those inconclusive, those first that more probably lie outside', () => {
    const near = (one: number, three: number): Ranked[] =>
      worstFirst(changed(pressure(1, one), pressure(3, three)))
        .flatMap(({ accumulators }) => accumulators)
        .filter(({ stake }) => stake === 'inconclusive');
    for (const [first, second, list] of [
      ['EV 1', 'EV 3', near(150.8, 150.6)],
      ['EV 3', 'EV 1', near(151.6, 150.4)],
    ] as const) {
      const found = list.filter((one) => nameOf(one) === first || nameOf(one) === second);
      expect(found.map(nameOf)).toEqual([first, second]);
      const [one, other] = found.map(({ probabilityOutside }) => probabilityOutside);
      expect(one).toBeGreaterThan(other ?? expect.fail('no probability'));
    }
  });

  test('the probability is that of the decision, and there is none without one', () => {
    const all = worstFirst(reportRest(roundWithoutSupply())).flatMap(({ accumulators }) => accumulators);
    for (const one of all) {
      if ('notJudged' in one) expect.fail('all are judged');
      const { asFound, asLeft } = one.accumulator;
      const { decision } = asLeft === 'not read' ? asFound : asLeft;
      const outside = decision !== undefined && 'adjusting' in decision ? decision.adjusting.outsideNow : 'none';
      expect('probabilityOutside' in one ? one.probabilityOutside : 'none').toBe(outside);
    }
  });

  test('the reading as left counts: filled and right is in order, filled and wrong is not', () => {
    expect(order(reportRest(roundWithoutSupply()))).toContain('EV 2 in order');
    expect(order(changed(['$.groups[0].accumulators[1].visit[2].pressure.value', 120]))).toContain(
      'EV 2 outside the band',
    );
  });

  test('worked on and not read as left is not known, however good it was found', () => {
    const report = changed(pressure(2, 152.5), ['$.groups[0].accumulators[1].visit[2].role', 'settled']);
    expect(order(report)).toContain('EV 2 not known');
  });

  test('an empty gas side that was filled stays one until its cause is stated as cleared', () => {
    const empty = pressure(2, 0);
    const cleared = ['$.groups[0].accumulators[1].visit[2].emptyGasSide', 'investigated and cleared'] as const;
    expect(order(changed(empty))).toContain('EV 2 gas side empty');
    expect(order(changed(empty, cleared))).toContain('EV 2 in order');
  });

  test('between equals, the order of the round; those not judged after those judged', () => {
    const list = order(changed(['$.groups[0].accumulators[0].visit[0].pressure.unit', 'barg']));
    expect(list.filter((one) => one.endsWith('not known'))).toEqual([
      'EV 4 not known',
      'EV 6 not known',
      'EV 8 not known',
      'FI 4 not known',
      'EV 1 not known',
    ]);
  });
});

test('those of which no unit served is said stand together, without one', () => {
  const report = changed(...[0, 4].map((i) => [`$.groups[0].accumulators[${i}].unitServed`, NOTHING] as const));
  const units = worstFirst(report).filter((unit) => !Object.hasOwn(unit, 'unitServed'));
  expect(units.map(({ accumulators }) => accumulators.map(nameOf))).toEqual([['EV 5', 'EV 1']]);
});

test('the report is left as it was; none, and no report', () => {
  const report = reportRest(roundWithoutSupply());
  worstFirst(report);
  expect(report).toStrictEqual(reportRest(roundWithoutSupply()));
  expect(worstFirst(reportRest({ version: 1, specifications: [], groups: [] }))).toEqual([]);
  expect(problemOf(() => worstFirst(null as never)).code).toBe('not an object');
  expect(refusalOf(() => worstFirst({} as never)).map(({ path }) => path)).toContain('accumulators');
});

test.each([Number.NaN, -1, 2 ** 32, '2'])('a list that says it is %s long is read or refused', (length) => {
  const { accumulators, ...rest } = reportRest(roundWithoutSupply());
  const lying = new Proxy(accumulators, {
    get: (list, key) => (key === 'length' ? length : Reflect.get(list, key)) as unknown,
  });
  let found: unknown;
  try {
    found = worstFirst({ ...rest, accumulators: lying });
  } catch (error) {
    found = error;
  }
  expect(Array.isArray(found) || isFault(found)).toBe(true);
});
