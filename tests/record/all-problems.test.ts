import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reportRound } from 'isochore/record';
import { isUnder, pathOf } from '../../src/record/problems.js';
import { CORRUPTIONS, EVERY_EV, EVERY_FI, ev, fi, type Corruption, type Said } from '../support/corruptions.js';
import { expectHeld } from '../support/held.js';
import {
  exampleRound,
  expectSound,
  keysOf,
  NOTHING,
  put,
  refusalOf,
  reportRest,
  roundWithoutSupply,
} from '../support/round.js';

const codesAt = (puts: readonly (readonly [string, unknown])[]): string[] => {
  const round = exampleRound();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return reportRest(round).problems.map(({ code, path }) => `${code} ${path}`);
};

describe('one problem does not hide another', () => {
  test('a bad unit, a swapped band in the same specification, and a problem elsewhere', () => {
    expect(
      codesAt([
        ['$.specifications[1].precharge.pressure.unit', 'Mpa'],
        ['$.specifications[1].tolerance.below.value', '-0.15'],
        [`${fi(3)}.visit[0].pressure.value`, '10,2'],
      ]),
    ).toEqual([
      'unknown unit $.specifications[1].precharge.pressure.unit',
      'negative $.specifications[1].tolerance.below',
      `not a decimal ${fi(3)}.visit[0].pressure.value`,
    ]);
  });

  test('a division too fine for the pressures: at each reading that it does not suit, or where it is stated', () => {
    // 140 bar is more steps than are counted; of no pressure at all there is none, but its target is 140 bar.
    const visits = exampleRound().groups[0]?.accumulators.map(({ visit }) => visit) ?? [];
    const empty = visits.findIndex(([first]) => first?.pressure.value === 0);
    expect(empty).toBeGreaterThan(0);
    const said = codesAt([['$.groups[0].gaugeStep.value', 1e-13]]);
    const [before, after] = [`${ev(1)}.visit[0]`, `${ev(empty + 1)}.visit[0]`];
    expect(said).toContain(`step too fine ${before}.pressure`);
    expect(said).toContain(`step too fine ${after}.pressure`);
    expect(said.filter((one) => !one.endsWith('.pressure'))).toEqual([]);
    const own = { value: 1e-13, unit: 'bar', basis: 'difference' };
    for (const reading of [before, after])
      expect(codesAt([[`${reading}.gaugeStep`, own]])).toEqual([`step too fine ${reading}.gaugeStep.value`]);
  });

  test('the reference of a temperature influence that is no temperature is said once', () => {
    const from = '$.instruments[0].characteristics.temperatureInfluence.from';
    expect(codesAt([[`${from}.value`, 1e7]])).toEqual([`outside bounds ${from}`]);
  });

  test('in one reading: shape, value, meaning and order', () => {
    expect(
      codesAt([
        [`${ev(2)}.visit[1].oilSide`, 'drained'],
        [`${ev(2)}.visit[1].temperature.value`, -300],
        [`${ev(2)}.visit[1].minutesAtRest`, -1],
        [`${ev(2)}.visit[1].role`, 'as found'],
        [`${ev(2)}.visit[1].pressure`, NOTHING],
        [`${ev(2)}.visit[1].colour`, 'red'],
      ]).sort(),
    ).toEqual(
      [
        `unknown word ${ev(2)}.visit[1].oilSide`,
        `below absolute zero ${ev(2)}.visit[1].temperature.value`,
        `not minutes at rest ${ev(2)}.visit[1].minutesAtRest`,
        `order of readings ${ev(2)}.visit[1].role`,
        `missing ${ev(2)}.visit[1].pressure`,
        `unknown field ${ev(2)}.visit[1].colour`,
      ].sort(),
    );
  });

  test('what is wrong of an accumulator is found even where its specification is not sound', () => {
    expect(
      codesAt([
        ['$.specifications[0].gasVolume.value', 0],
        [`${ev(1)}.visit[0].pressure.value`, -2],
      ]),
    ).toEqual(['not positive $.specifications[0].gasVolume', `gauge below vacuum ${ev(1)}.visit[0].pressure`]);
  });

  test('a reading that is none, and another one with a problem of its own', () => {
    expect(
      codesAt([
        [`${ev(2)}.visit[0]`, 5],
        [`${ev(2)}.visit[1].pressure.value`, -2],
      ]),
    ).toEqual([`not an object ${ev(2)}.visit[0]`, `gauge below vacuum ${ev(2)}.visit[1].pressure`]);
  });

  test('where one of several readings takes something unsound from its group, none of them is judged', () => {
    const round = roundWithoutSupply();
    put(round, keysOf('$.groups[0].ambient.unit'), 'mbar');
    put(round, keysOf(`${ev(2)}.visit[0].ambient`), { value: 1008, unit: 'hPa', basis: 'absolute' });
    const { problems, notJudged } = reportRest(round);
    expect(problems.map(({ path }) => path)).toEqual(['$.groups[0].ambient.unit']);
    expect(notJudged.map(({ path }) => path)).toContain(ev(2));
  });

  test('a specification that is no text is that, and not an unknown one', () => {
    expect(codesAt([[`${ev(1)}.specification`, 5]])).toEqual([`not a text ${ev(1)}.specification`]);
    expect(codesAt([['$.groups[0].specification', 5]])).toEqual(['not a text $.groups[0].specification']);
  });

  test('a group that states one thing wrongly keeps its readings’ other problems in sight', () => {
    expect(
      codesAt([
        ['$.groups[1].temperature.unit', 'C'],
        [`${fi(1)}.visit[0].pressure.value`, -2],
        [`${fi(2)}.visit[0].gasInside`, 'air'],
      ]),
    ).toEqual([
      'unknown unit $.groups[1].temperature.unit',
      `gauge below vacuum ${fi(1)}.visit[0].pressure`,
      `unknown word ${fi(2)}.visit[0].gasInside`,
    ]);
  });
});

describe('nor does it hide what shows only in comparison, where that does not depend on it', () => {
  test.each([
    ['a group’s temperature', '$.groups[0].temperature', { value: 20, unit: 'C' }],
    ['the reading’s own pressure', `${ev(2)}.visit[1].pressure.unit`, 'barg'],
  ])('a bad unit of %s, and times that run backwards', (_title, path, value) => {
    expect(
      codesAt([
        [path, value],
        [`${ev(2)}.visit[1].temperature`, NOTHING],
        [`${ev(2)}.visit[1].at`, '2026-03-14T09:00:00+01:00'],
      ]),
    ).toContain(`times run backwards ${ev(2)}.visit[1].at`);
  });

  test('a bad unit of the settling allowance, and a reference pressure above the allowable', () => {
    expect(
      codesAt([
        ['$.specifications[0].settling.allowance.unit', 'Bar'],
        ['$.specifications[0].allowable.value', 100],
      ]),
    ).toEqual([
      'unknown unit $.specifications[0].settling.allowance.unit',
      'above allowable $.specifications[0].precharge.pressure',
    ]);
  });

  test('an unknown place of the band, and a swapped band', () => {
    expect(
      codesAt([
        ['$.specifications[1].tolerance.applies', 'always'],
        ['$.specifications[1].tolerance.below.value', '-0.15'],
      ]),
    ).toEqual(['unknown word $.specifications[1].tolerance.applies', 'negative $.specifications[1].tolerance.below']);
  });
});

test('a group of an unknown specification, or without a sound name, is none of the groups of the report', () => {
  for (const [path, value] of [
    ['$.groups[1].specification', 'x'],
    ['$.groups[1].specification', 5],
    ['$.groups[1].name', ''],
    ['$.groups[1].name', NOTHING],
  ] as const) {
    const round = roundWithoutSupply();
    put(round, keysOf(path), value);
    const report = reportRest(round);
    expect(report.groups.map(({ name }) => name)).toEqual(['Exhaust valves']);
    expect(report.problems).toHaveLength(1);
    expect([report.accumulators.length, report.notJudged.length]).toEqual([8, 8]);
  }
});

test.each([
  ['$.rule', 5, 'not an object'],
  ['$.rule.acceptance', 'strict', 'unknown word'],
  ['$.rule.risk.below', 0.7, 'outside bounds'],
  ['$.modelErrorCorrelation', 1.01, 'outside bounds'],
  ['$.modelErrorCorrelation', 'none', 'not a number'],
])('by a rule that is not sound nothing is judged: %s is %o', (path, value, code) => {
  const round = roundWithoutSupply();
  put(round, keysOf(path), value);
  const { problems, accumulators, notJudged } = reportRest(round);
  expect(problems).toMatchObject([{ code, path }]);
  expect([accumulators.length, notJudged.length]).toEqual([0, 16]);
});

test('a path lies under another one if it begins with all of its keys', () => {
  const keys = fc.array(fc.oneof(fc.constantFrom('a', 'ab', 'b', '$', 'a.b', 'a[0]', ''), fc.integer({ min: 0, max: 12 })), { maxLength: 3 }); // prettier-ignore
  fc.assert(
    fc.property(keys, keys, (path, outer) => {
      fc.pre(outer.length > 0);
      expect(isUnder(pathOf(path), pathOf(outer))).toBe(outer.every((key, i) => path[i] === key));
    }),
    { numRuns: 2000 },
  );
});

describe('many things wrong at once: all of them are listed', () => {
  /** The part of the document that a corruption lies in: two in one part may bear on each other. */
  const partOf = (path: string): string =>
    /^\$\.(specifications\[\d+\]|groups\[\d+\]\.accumulators\[\d+\])/.exec(path)?.[0] ??
    /^\$(\.groups\[\d+\])?\.\w+/.exec(path)?.[0] ??
    path;
  // Found by comparing sound parts: a reading with its specification, its ambient, or the reading before.
  const COMPARED = ['outside the model', 'liquid', 'gauge below vacuum', 'rest contradicts readings'];
  const byComparing = ({ code, path }: Said): boolean => COMPARED.includes(code) || path.endsWith('].at');
  const alone = ({ said }: Corruption): boolean => said.some(byComparing);
  // Where the specifications are no list nothing inside them is read.
  const combined = CORRUPTIONS.filter((row) => !alone(row) && row.puts.every(([path]) => path !== '$.specifications'));

  function compatible(rows: readonly Corruption[]): Corruption[] {
    const taken = new Set<string>();
    // What is named cannot be said of an instrument that is not sound.
    const unsound = rows.some(({ puts }) => puts.some(([path]) => path.startsWith('$.instruments')));
    const byName = ({ said }: Corruption): boolean => said.some(({ path }) => path.includes('.instruments.'));
    return rows.filter((row) => {
      const { puts, said } = row;
      if (unsound && byName(row)) return false;
      const parts = new Set([...puts, ...said.map(({ path }) => [path])].map(([path = '']) => partOf(path)));
      if ([...parts].some((part) => taken.has(part))) return false;
      for (const part of parts) taken.add(part);
      return true;
    });
  }

  /** Rows that bear on nothing of each other, as many as there are, until none is left. */
  function together(rows: readonly Corruption[]): Corruption[][] {
    if (rows.length === 0) return [];
    const found = compatible(rows);
    const some = found.length > 0 ? found : rows.slice(0, 1);
    return [some, ...together(rows.filter((row) => !some.includes(row)))];
  }

  test('each of them, beside as many others as there can be', () => {
    // Under another name it is another that the problems are about.
    const some = combined.filter(({ puts }) => puts.every(([path]) => !path.endsWith('.name')));
    const rounds = [...together(some), ...CORRUPTIONS.filter((row) => !some.includes(row)).map((row) => [row])];
    expect(rounds.flat()).toHaveLength(CORRUPTIONS.length);
    const whole: string[] = [];
    for (const rows of rounds) {
      const round = roundWithoutSupply();
      for (const [path, value] of rows.flatMap(({ puts }) => puts)) put(round, keysOf(path), value);
      const { problems, problemsFound, notJudged } = reportRest(round);
      const listed = problems.map(({ code, path, about = '' }) => `${code} ${path} ${about}`);
      const wanted = rows.flatMap(({ said }) => said.map(({ code, path, about = '' }) => `${code} ${path} ${about}`));
      expect(listed.sort()).toEqual(wanted.sort());
      expect(problemsFound).toBe(wanted.length);
      const lost = new Set(rows.flatMap((row) => row.notJudged));
      expect(notJudged.map(({ path }) => path).sort()).toEqual([...lost].sort());
      whole.push(
        ...problems.map(({ code, path, found, values }) => `${code} ${path}: ${found} ${JSON.stringify(values)}`),
      );
    }
    // What was found and the values of what is wanted, by which people know what to do. The words stand elsewhere.
    expectHeld([...new Set(whole)].sort(), 'said.txt');
  });

  test('whichever', { timeout: 60_000 }, () => {
    const order = [...EVERY_EV, ...EVERY_FI];
    let most = 0;
    fc.assert(
      fc.property(fc.shuffledSubarray(combined, { minLength: 2 }), (some) => {
        const rows = compatible(some);
        most = Math.max(most, rows.length);
        const round = exampleRound();
        for (const [path, value] of rows.flatMap(({ puts }) => puts)) put(round, keysOf(path), value);
        const report = reportRest(round);
        expectSound(report);
        const listed = report.problems.map(({ code, path }) => `${code} ${path}`).sort();
        const wanted = rows.flatMap(({ said }) => said.map(({ code, path }) => `${code} ${path}`)).sort();
        expect(listed).toEqual(wanted);
        const lost = new Set(rows.flatMap(({ notJudged }) => notJudged));
        expect(report.notJudged.map(({ path }) => path)).toEqual(order.filter((path) => lost.has(path)));
        expect(refusalOf(() => reportRound(round, { problems: 'refuse the round' }))).toEqual(report.problems);
      }),
      { numRuns: 150 },
    );
    expect(most).toBeGreaterThan(10);
  });
});
