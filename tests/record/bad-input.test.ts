import { inWords, type Problem, type Words } from 'isochore';
import { describe, expect, test } from 'vitest';
import { reportRound, reportRoundText, RoundShape, type RoundReport, type When } from 'isochore/record';
import * as catalogue from '../../src/basis/problem.js';
import { CORRUPTIONS, ev, fi, type Corruption } from '../support/corruptions.js';
import {
  at,
  roundWithoutSupply,
  expectInShape,
  expectSound,
  jsonPath,
  keysOf,
  nodesOf,
  NOTHING,
  onOneLine,
  put,
  refusalOf,
  reportRest,
  type Keys,
} from '../support/round.js';
import { PARTS, smallRound, smallRoundFor } from '../support/small-round.js';

type Listed = RoundReport['problems'][number];

const TEXTS: Words = {
  problems: Object.fromEntries(Object.values(catalogue).map(({ code, ...text }) => [code, text])),
};

const good = reportRest(roundWithoutSupply());

function corrupted({ puts }: Corruption): unknown {
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return round;
}

const said = (problems: readonly Listed[]): Partial<Listed>[] =>
  problems.map(({ code, path, about }) => (about === undefined ? { code, path } : { code, path, about }));

/** Codes of problems that say that something is not there. */
const ABSENT = ['missing', 'basis missing', 'stated nowhere'];

describe('one thing wrong: what is said of it, and what it keeps from being judged', () => {
  test.each(CORRUPTIONS.map((row) => [row.title, row] as const))('%s', (_title, row) => {
    const round = corrupted(row);
    const report = reportRest(round);
    expect(said(report.problems)).toEqual(row.said);
    expect(report.problemsFound).toBe(row.said.length);
    expect(report.complete).toBe('partial');
    expect(report.notJudged.map(({ path }) => path)).toEqual(row.notJudged);
    expectSound(report);
    // The text of a problem can be made from its code and values, in whatever language.
    for (const problem of report.problems as Problem[])
      expect(inWords({ ...problem, wanted: '', remedy: '' }, TEXTS)).toEqual(problem);

    // Nothing else changes: the others are judged as they were.
    const paths = [1, 2, 3, 4, 5, 6, 7, 8].map(ev).concat([1, 2, 3, 4, 5, 6, 7, 8].map(fi));
    expect(report.accumulators).toStrictEqual(
      good.accumulators.filter((_, i) => !row.notJudged.includes(paths[i] ?? '')),
    );

    // What is pointed at can be found in the document; what is said to be absent would have its place there.
    for (const { code, path } of report.problems) {
      const keys = keysOf(path);
      expect(jsonPath(keys)).toBe(path);
      if (ABSENT.includes(code)) expect(at(round, keys.slice(0, -1))).toBeTypeOf('object');
      else expect(at(round, keys)).not.toBe(undefined);
    }
    expect(refusalOf(() => reportRound(corrupted(row), { problems: 'refuse the round' }))).toEqual(report.problems);

    const text = JSON.stringify(round);
    const isJson = nodesOf(round).every(({ value }) => typeof value !== 'number' || Number.isFinite(value));
    if (isJson) expect(reportRoundText(text, { problems: 'report the rest' })).toEqual(report);
  });
});

test('a decimal comma is explained', () => {
  const round = roundWithoutSupply();
  put(round, keysOf(`${ev(1)}.visit[0].pressure.value`), '141,3');
  expect(reportRest(round).problems[0]?.remedy).toContain('point');
});

describe('an unknown version: nothing is judged, nothing else is looked for', () => {
  test.each([[2], ['1'], [1.5], [null], [[1]], [Number.NaN], [NOTHING]])('%o', (version) => {
    const round = roundWithoutSupply();
    put(round, ['version'], version);
    put(round, ['groups', 0, 'name'], 5);
    const report = reportRest(round);
    expect(said(report.problems).filter(({ path }) => path !== '$.groups[0].name')).toEqual([
      { code: 'unknown version', path: '$.version' },
    ]);
    expect(report.complete).toBe('partial');
    expect(report.accumulators).toEqual([]);
    expectSound(report);
    expect(() => reportRound(round, { problems: 'refuse the round' })).toThrow(/version/);
  });
});

describe('what is not a round at all', () => {
  test.each([[null], [undefined], [[]], ['round'], [1], [true], [Symbol('round')], [() => 1], [10n]])('%o', (json) => {
    const report = reportRest(json);
    expect(report.problems.map(({ path }) => path)).toEqual(['$']);
    expect(report.complete).toBe('partial');
    expect(report.accumulators).toEqual([]);
    expectSound(report);
  });

  test('an empty object lacks all three of its parts', () => {
    expect(reportRest({}).problems.map(({ path }) => path)).toEqual(['$.version', '$.specifications', '$.groups']);
  });
});

describe('the order and the times of a visit, where they are right', () => {
  const readings = `${ev(2)}.visit`;
  test.each([
    // Six minutes after 09:16+01:00, whatever the offset.
    ['another offset', [['[1].at', '2026-03-14T08:22:00Z']]],
    ['another day by its offset', [['[1].at', '2026-03-13T22:22:00-10:00']]],
    ['the same minute', [['[1].at', '2026-03-14T09:16:00+01:00'], ['[1].minutesAtRest', 0]]], // prettier-ignore
    ['fractions of a second', [['[1].at', '2026-03-14T09:16:00.001+01:00'], ['[1].minutesAtRest', 0]]], // prettier-ignore
    ['all the time since the reading before', [['[1].minutesAtRest', 15]]],
    ['rest not known', [['[2].minutesAtRest', 'not known']]],
    ['rest not known before', [['[1].minutesAtRest', 'not known'], ['[2].minutesAtRest', 36]]], // prettier-ignore
    [
      'rest from before the visit, where no gas was missing',
      [
        ['[0].pressure.value', 152.5],
        ['[1].role', 'settled'],
        ['[1].minutesAtRest', 'not known'],
        ['[2].minutesAtRest', 81],
      ],
    ],
    ['no reading as left', [['[2].role', 'settled']]],
  ] as const)('%s', (_title, puts) => {
    const round = roundWithoutSupply();
    for (const [place, value] of puts) put(round, keysOf(readings + place), value);
    expect(reportRest(round).problems).toEqual([]);
  });

  test('a leap day', () => {
    const round = roundWithoutSupply();
    put(round, ['groups', 0, 'drainedAt'], '2024-02-29T08:00:00Z');
    put(round, keysOf(`${readings}[0].at`), '2024-02-29T09:00:00Z');
    expect(reportRest(round).problems).toEqual([]);
  });

  test('a hundred readings are not too many', () => {
    const round = roundWithoutSupply();
    const first = at(round, keysOf(`${ev(1)}.visit[0]`));
    const later = { ...(first as object), role: 'settled' };
    put(round, keysOf(`${ev(1)}.visit`), [first, ...Array.from({ length: 99 }, () => later)]);
    expect(reportRest(round).problems).toEqual([]);
  });
});

describe('what somebody else wrote is quoted safely', () => {
  test.each([
    ['lone surrogates', '\uD800\uDC00\uD800'.repeat(3)],
    ['long', 'n'.repeat(150)],
    ['a surrogate pair where it is cut', `${'n'.repeat(78)}\u{1F600}${'n'.repeat(50)}`],
    ['the same, one on', `${'n'.repeat(79)}\u{1F600}${'n'.repeat(50)}`],
    ['control characters', '\u0000\u001b[31m\n\u0085'],
  ])('%s', (_title, name) => {
    const round = roundWithoutSupply();
    put(round, ['groups', 0, 'specification'], name);
    put(round, ['groups', 1, 'gaugeStep', 'unit'], name);
    put(round, ['groups', 1, 'accumulators', 0, 'visit', 0, 'pressure', 'value'], name);
    const report = reportRest(round);
    expect(report.problemsFound).toBe(3);
    for (const { found } of report.problems) {
      expect(found.length).toBeLessThanOrEqual(81);
      // Throws for a lone surrogate.
      expect(encodeURIComponent(found)).not.toBe('');
      // eslint-disable-next-line no-control-regex -- they are what must not be there
      expect(found).not.toMatch(/[\u0000-\u001f]/);
    }
  });
});

describe('what to do about problems must be said', () => {
  test.each<[unknown, string]>([
    [undefined, 'undefined'],
    [null, 'undefined'],
    [{}, 'undefined'],
    [{ problems: 'ignore' }, '"ignore"'],
    ['report the rest', 'undefined'],
    [{ problems: null }, 'null'],
  ])('%o', (when, found) => {
    const refused = { code: 'unknown word', path: 'when.problems', found };
    expect(refusalOf(() => reportRound(roundWithoutSupply(), when as When))).toMatchObject([refused]);
    expect(refusalOf(() => reportRoundText('', when as When))).toMatchObject([refused]);
  });
});

describe('a field that is there but undefined, as JavaScript may leave it, is a field that is not there', () => {
  test.each([
    [`${fi(1)}.visit[0].temperature`],
    [`${ev(1)}.visit[0].ambient`],
    [`${ev(1)}.visit[0].gaugeStep`],
    [`${ev(1)}.visit[0].systemPressure`],
    [`${ev(1)}.visit[0].emptyGasSide`],
    ['$.groups[0].temperature'],
    ['$.specifications[0].tolerance.below'],
    ['$.title'],
  ])('%s', (path) => {
    const without = roundWithoutSupply();
    put(without, keysOf(path), NOTHING);
    const round = roundWithoutSupply();
    put(round, keysOf(path), undefined);
    const report = reportRest(round);
    expectSound(report);
    expect(report).toStrictEqual(reportRest(without));
  });
});

describe('more problems than are listed', () => {
  function withProblems(count: number): unknown {
    const { version, instruments, specifications, groups } = roundWithoutSupply();
    const accumulators = Array.from({ length: count }, (_, i) => ({ name: `A ${i}`, visit: [] }));
    return { version, instruments, specifications, groups: [...groups, { ...groups[0], name: 'More', accumulators }] };
  }

  test('the list ends at a thousand, the count does not, and what was sound is judged', () => {
    const report = reportRest(withProblems(1500));
    expect(report.problems).toHaveLength(1000);
    expect(report.problemsFound).toBe(1500);
    expect(report.complete).toBe('partial');
    expect(report.accumulators).toHaveLength(16);
    expect(report.notJudged).toHaveLength(1500);
    expectSound(report);
  });

  test('a refusal says how many there are, last', () => {
    const problems = refusalOf(() => reportRound(withProblems(1001), { problems: 'refuse the round' }));
    expect(problems).toHaveLength(1001);
    expect(problems.at(-1)).toMatchObject({ code: 'more problems', path: '$', found: '1001 problems' });
  });

  test('a thousand are all listed, and nothing is added', () => {
    const problems = refusalOf(() => reportRound(withProblems(1000), { problems: 'refuse the round' }));
    expect(problems).toHaveLength(1000);
    expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['too short']));
  });
});

/** What a change in one place of a document may break in another. */
const ELSEWHERE = [
  'unknown specification',
  'duplicate name',
  'stated nowhere',
  'order of readings',
  'times run backwards',
  'rest contradicts readings',
  'band reaches zero',
  'above allowable',
  'unknown instrument',
  'unknown table',
  'unknown column',
  'other ambient',
  'pressures crossed',
  'outside the table',
  'limits crossed',
];

/** Every place of the small round, with the part of it that is looked at. */
const PLACES = PARTS.flatMap((part) => {
  const { round, fields } = smallRoundFor(part);
  return nodesOf(round)
    .filter(({ keys }) => fields.includes(String(keys[0])))
    .map(({ keys }) => ({ part, keys }));
});

test('the parts of the small round are sound, and have all its places', () => {
  expect(reportRest(smallRound()).complete).toBe('complete');
  for (const part of PARTS) expect(reportRest(smallRoundFor(part).round).problems).toEqual([]);
  const fieldsOf = (all: readonly Keys[]) => new Set(all.map((keys) => keys.filter((key) => typeof key === 'string').join('.'))); // prettier-ignore
  const whole = fieldsOf(nodesOf(smallRound()).map(({ keys }) => keys));
  expect(new Set(['', ...fieldsOf(PLACES.map(({ keys }) => keys))])).toEqual(whole);
});

/** Limits that are held against another value: what is wrong with that is said of the limit. */
const LIMITS = [
  ['.linearExpansion.value', '.vessel.limit.value'],
  ['.room.oxygenBefore', '.room.limit.fraction'],
] as const;

function saidOfLimit(path: string, where: string): boolean {
  return LIMITS.some(([value, limit]) => path.endsWith(value) && where.endsWith(limit));
}

describe('every value of a round, replaced', { timeout: 240_000 }, () => {
  const wrong = [null, [], {}, '', 'text', 0, -1, true, Number.NaN, [null], '9'.repeat(400)];

  test.each(
    wrong.map(
      (value, k) => [typeof value === 'string' && value.length > 10 ? 'a long text' : value, value, k] as const,
    ),
  )('by %o', (_title, value, k) => {
    let partial = 0;
    for (const [i, { part, keys }] of PLACES.entries()) {
      const path = jsonPath(keys);
      const { round } = smallRoundFor(part);
      put(round, keys, structuredClone(value));
      const report = reportRest(round);
      // Once for each place, by one value or the other, it is judged again, and refused.
      const again = i % wrong.length === k;
      if (again) expectSound(report);
      else expectInShape(report);
      // Decimals are text of any spelling to the shape.
      const isDecimal = keys.at(-1) === 'value' && typeof value === 'string';
      const fits = RoundShape.safeParse(round).success && !isDecimal;
      if (report.complete === 'complete') {
        expect([path, fits]).toEqual([path, true]);
        continue;
      }
      partial += 1;
      const explains = ({ code, path: where }: Listed): boolean =>
        onOneLine(where, path) || (fits && ELSEWHERE.includes(code)) || saidOfLimit(path, where);
      expect([path, report.problems.some(explains)]).toEqual([path, true]);
      if (again) expect(refusalOf(() => reportRound(round, { problems: 'refuse the round' }))).toEqual(report.problems);
    }
    expect(partial).toBeGreaterThan(PLACES.length / 2);
  });

  test.each([[null], [[]], [{}], ['text'], [0]])('by %o as a whole', (value) => {
    const report = reportRest(value);
    expectSound(report);
    expect(report.complete).toBe('partial');
  });
});

describe('every field of a round, left out', () => {
  const OPTIONAL = [
    ...[
      'title',
      'systemPressure',
      'emptyGasSide',
      'possibleSlip',
      'due',
      'certificate',
      'unitServed',
      'engineState',
      'stoppedAt',
    ],
    ...['drainedAt', 'readBy', 'verifiedBy', 'temperaturePlace', 'remarks', 'componentCode', 'position', 'serial'],
    ...['runningHours', 'partsRenewed', 'deviationPermit', 'rule', 'modelErrorCorrelation', 'characteristics'],
    ...['printed', 'vessel', 'gaugeTemperature', 'ambientLimit', 'readings', 'supply', 'safety', 'order', 'exchange'],
    ...['hottest', 'room', 'inService', 'line', 'nominal', 'toleranceAfterCharging', 'leakTest', 'purge'],
  ];
  const FOR_THE_GROUP = ['temperature', 'ambient', 'gaugeStep'];
  const fields = PLACES.filter(({ keys }) => typeof keys.at(-1) === 'string');

  test.each(fields.map(({ part, keys }) => [jsonPath(keys), part, keys] as const))('%s', (path, part, keys) => {
    const { round } = smallRoundFor(part);
    put(round, keys, NOTHING);
    const report = reportRest(round);
    expectSound(report);
    const field = String(keys.at(-1));
    const ofReading = keys.at(-3) === 'visit';
    const groupStates = at(round, [...keys.slice(0, 2), field]) !== undefined;
    const isInstrument = keys[0] === 'groups' && (keys.at(-2) === 'instruments' || field === 'instruments');
    // An accuracy as a certificate has it needs the due date of that; the printed ambient limit is no group's.
    const isNeeded =
      /^\$\.instruments\[[05]\]\.due$/.test(path) ||
      path.endsWith('.printed.ambientLimit') ||
      path.endsWith('.safety.inService.systemPressure');
    // It then follows that of its group.
    const ofGroup = field === 'specification' && path.includes('.accumulators');
    const isOptional =
      ofGroup ||
      path.endsWith('.kit.before') ||
      (OPTIONAL.includes(field) && !isNeeded) ||
      isInstrument ||
      (ofReading && FOR_THE_GROUP.includes(field) && groupStates);
    expect(report.complete).toBe(isOptional ? 'complete' : 'partial');
    const statedNowhere = keys[0] === 'groups' && keys.length === 3 && FOR_THE_GROUP.includes(field);
    for (const { code, path: where } of report.problems) {
      if (statedNowhere) expect(code).toBe('stated nowhere');
      else if (code === 'unknown instrument') expect(path).toMatch(/^\$\.instruments(\[\d\]\.name)?$/);
      else if (code === 'unknown specification') expect(path).toMatch(/^\$\.specifications(\[\d\]\.name)?$/);
      else if (code === 'unknown table') expect(path).toMatch(/^\$\.tables(\[\d\]\.name)?$/);
      // Printed as its table states, which no other has.
      else if (code === 'unknown word' && where.endsWith('.printed.pressure'))
        expect(path).toMatch(/\.(precharge(\.table)?|printed(\.pressure)?)$/);
      else expect([where, onOneLine(where, path)]).toEqual([where, true]);
    }
  });
});
