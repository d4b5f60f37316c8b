// An instrument was found wrong: stored visits are judged again as if it had shown the right value.
import { pressureDifference, temperatureDifference } from 'isochore';
import { canonicalJson, recall, sha256, type Recalling, type Round, type RoundReport } from 'isochore/record';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { problemOf } from '../support/problem.js';
import { exampleRound, keysOf, NOTHING, put, refusalOf, reportRest } from '../support/round.js';

const DAYS = { instrument: 'gauge A', from: '2026-03-14', to: '2026-03-14' };
const bar = (value: number) => pressureDifference(value, 'bar');
const report = reportRest(exampleRound());
const stored = (from: RoundReport): RoundReport => JSON.parse(JSON.stringify(from)) as RoundReport;
/** Those that gauge A read. */
const BY_A = ['EV 1', 'EV 2', 'EV 3', 'EV 4', 'EV 5', 'EV 6', 'EV 8'];

function visits({ accumulators }: RoundReport): Map<string, unknown> {
  const of = ({ outcome, decision }: RoundReport['accumulators'][number]['asFound']): unknown =>
    decision === undefined ? { outcome } : { outcome, decision: decision.outcome };
  return new Map(
    accumulators.map(({ name, asFound, asLeft, state }) => [
      name,
      { asFound: of(asFound), asLeft: asLeft === 'not read' ? asLeft : of(asLeft), state },
    ]),
  );
}

/** The example as gauge A should have read it. */
function corrected(by: number): Round {
  const round = exampleRound();
  const [evs] = round.groups;
  for (const { name, visit } of evs?.accumulators ?? []) {
    if (!BY_A.includes(name)) continue;
    for (const reading of visit) reading.pressure.value = Number((Number(reading.pressure.value) + by).toFixed(3));
  }
  return round;
}

describe('what changes', () => {
  test('a correction of zero changes nothing', () => {
    expect(recall([stored(report)], { ...DAYS, correction: bar(0) })).toEqual({
      judgedAgain: 7,
      changes: [],
      notJudgedAgain: [],
      problems: [],
    });
  });

  test('is what a round of the corrected readings says', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(fc.integer({ min: -80, max: 80 }), (tenths) => {
        const by = tenths / 10;
        const { changes, judgedAgain, notJudgedAgain } = recall([report], { ...DAYS, correction: bar(by) });
        const [before, right] = [visits(report), reportRest(corrected(by))];
        const after = visits(right);
        expect(judgedAgain + notJudgedAgain.length).toBe(7);
        // A reading of zero becomes one below vacuum, and rest is claimed by readings that now differ.
        expect(notJudgedAgain.map(({ name }) => name)).toEqual(right.notJudged.map(({ name }) => name));
        const differing = BY_A.filter((name) => after.has(name) && JSON.stringify(before.get(name)) !== JSON.stringify(after.get(name))); // prettier-ignore
        expect(changes.map(({ name }) => name)).toEqual(differing);
        for (const change of changes) {
          expect(change).toMatchObject({ index: 0, digest: report.digest, title: report.title, group: 'Exhaust valves' });
          expect(change.before).toEqual(before.get(change.name));
          expect(change.after).toEqual(after.get(change.name));
        }
      }),
      { numRuns: 12 },
    );
  }); // prettier-ignore

  test('by hand: 2.1 bar too much shown, and what was in order is not', () => {
    const { changes } = recall([report], { ...DAYS, correction: bar(-2.1) });
    const [first] = changes;
    expect(first).toMatchObject({
      path: '$.groups[0].accumulators[0]',
      name: 'EV 1',
      before: { asFound: { outcome: 'within', decision: 'within' }, asLeft: 'not read', state: 'in order' },
      // 149.9 bar, below the limit of 150.6 bar at 40 °C.
      after: { asFound: { outcome: 'undercharged', decision: 'undercharged' }, state: 'work needed' },
    });
  });

  test('of a thermometer, of the group or of the reading, in another unit too', () => {
    const what = { ...DAYS, instrument: 'thermometer 1', correction: temperatureDifference(-3.6, '°F') };
    const { changes, judgedAgain } = recall([report], what);
    expect(judgedAgain).toBe(16);
    const round = exampleRound();
    for (const group of round.groups) {
      if (group.temperature !== undefined) group.temperature.value = Number(group.temperature.value) - 2;
      for (const { temperature } of group.accumulators.flatMap(({ visit }) => visit)) {
        // 2 K are 3.6 °F.
        if (temperature !== undefined)
          temperature.value = Number(temperature.value) - (temperature.unit === '°F' ? 3.6 : 2);
      }
    }
    const [before, after] = [visits(report), visits(reportRest(round))];
    const differing = [...before.keys()].filter(
      (name) => JSON.stringify(before.get(name)) !== JSON.stringify(after.get(name)),
    );
    expect(differing.length).toBeGreaterThan(1);
    expect(changes.map(({ name }) => name)).toEqual(differing);
    for (const { name, after: now } of changes) expect(now).toEqual(after.get(name));
  });

  test('nothing where the instrument was not used, measured something else, or on other days', () => {
    const none = { judgedAgain: 0, changes: [], notJudgedAgain: [], problems: [] };
    const off = { ...DAYS, correction: bar(-9) };
    expect(recall([report], { ...off, instrument: 'gauge Z' })).toEqual(none);
    expect(recall([report], { ...off, correction: temperatureDifference(9, 'K') })).toEqual(none);
    expect(recall([report], { ...off, from: '2026-03-15', to: '2026-12-31' })).toEqual(none);
    expect(recall([report], { ...off, from: '2026-01-01', to: '2026-03-13' })).toEqual(none);
    expect(recall([], off)).toEqual(none);
    expect(recall([report], { ...off, from: '2026-01-01', to: '2026-12-31', correction: bar(9) }).judgedAgain).toBe(7);
  });

  test('in a round without a rule nothing is decided, before and after', () => {
    const { rule, ...round } = exampleRound();
    expect(rule).toBeDefined();
    const { changes, problems } = recall([reportRest(round)], { ...DAYS, correction: bar(-2.1) });
    expect(problems).toEqual([]);
    expect(changes[0]).toMatchObject({ name: 'EV 1' });
    expect(changes[0]?.before).toEqual({ asFound: { outcome: 'within' }, asLeft: 'not read', state: 'in order' });
    expect(changes[0]?.after.asFound).toEqual({ outcome: 'undercharged' });
  });

  test('the reports are left as they were', () => {
    const before = JSON.stringify(report);
    recall([report], { ...DAYS, correction: bar(-2.1) });
    expect(JSON.stringify(report)).toBe(before);
  });
});

describe('nothing is dropped', () => {
  const off = { ...DAYS, correction: bar(-2.1) };

  test('a visit that was not judged, and one that the correction makes impossible', () => {
    const round = exampleRound();
    put(round, keysOf('$.groups[0].accumulators[0].visit[0].temperature.unit'), 'C');
    const { notJudgedAgain, judgedAgain, problems } = recall([reportRest(round)], off);
    expect([judgedAgain, problems]).toEqual([5, []]);
    expect(notJudgedAgain).toMatchObject([
      {
        path: '$.groups[0].accumulators[0]',
        name: 'EV 1',
        because: 'not judged in its round',
        problems: [{ code: 'unknown unit' }],
      },
      {
        path: '$.groups[0].accumulators[4]',
        name: 'EV 5',
        because: 'cannot be judged with the correction',
        problems: [{ code: 'gauge below vacuum', path: '$.groups[0].accumulators[4].visit[0].pressure' }],
      },
    ]);
    const above = recall([report], { ...DAYS, correction: bar(60) }).notJudgedAgain;
    expect(above).toMatchObject([{ name: 'EV 4', because: 'cannot be judged with the correction', problems: [] }]);
  });

  test('what is not sound in its round stays so: without a name, a time or a pressure', () => {
    const round = exampleRound();
    put(round, keysOf('$.groups[0].accumulators[0].name'), 5);
    put(round, keysOf('$.groups[0].accumulators[1].name'), NOTHING);
    put(round, keysOf('$.groups[0].accumulators[2].visit[0].pressure'), NOTHING);
    put(round, keysOf('$.groups[0].accumulators[3].visit[0].at'), 5);
    const { notJudgedAgain, judgedAgain } = recall([reportRest(round)], { ...DAYS, correction: bar(2.1) });
    expect(judgedAgain).toBe(3);
    // The reading without a time was taken on no day that is recalled.
    expect(notJudgedAgain.map(({ path }) => path)).toEqual([0, 1, 2].map((i) => `$.groups[0].accumulators[${i}]`));
    expect(notJudgedAgain.map((one) => ('name' in one ? one.name : 'no name'))).toEqual(['no name', 'no name', 'EV 3']);
  });

  test('a correction that leads below absolute zero: of each reading it is said once, and nothing else is', () => {
    const what = { ...DAYS, instrument: 'thermometer 1', correction: temperatureDifference(-400, 'K') };
    const { notJudgedAgain, judgedAgain, changes } = recall([report], what);
    expect([judgedAgain, changes]).toEqual([0, []]);
    expect(notJudgedAgain).toHaveLength(16);
    for (const { path, because, problems } of notJudgedAgain) {
      const [, g = '', a = ''] = /groups\[(\d+)\]\.accumulators\[(\d+)\]$/.exec(path) ?? [];
      const visit = exampleRound().groups[Number(g)]?.accumulators[Number(a)]?.visit ?? [];
      const each = visit.map((_, r) => `below absolute zero ${path}.visit[${r}].temperature`);
      expect(because).toBe('cannot be judged with the correction');
      expect(problems.map((problem) => `${problem.code} ${problem.path}`)).toEqual(each);
    }
  });

  test('a report that was altered, has no round, or is none', () => {
    const { input, ...without } = stored(report);
    expect(input).toBeDefined();
    const { digest, ...rest } = without;
    expect(digest).toHaveLength(64);
    const sealed = { ...rest, digest: sha256(canonicalJson(rest)) };
    const found = recall([{ ...stored(report), complete: 'partial' }, sealed, null, exampleRound(), report], off);
    expect(found.problems.map(({ index, because }) => [index, ...because])).toEqual([
      [0, 'digest does not match'],
      [1, 'no input'],
      [2, 'not a report'],
      [3, 'not a report'],
    ]);
    for (const { why } of found.problems) expect(why.length).toBeGreaterThan(20);
    expect(found.problems[0]).toMatchObject({ digest: report.digest, title: report.title });
    expect(new Set(found.changes.map(({ index }) => index))).toEqual(new Set([4]));
    // What has no UTF-8 is no JSON data either, and says what it can of itself.
    const [half] = recall([{ digest: '\ud83d', title: 'a\ud83d' }], off).problems;
    expect(half).toMatchObject({ digest: '\ufffd', title: 'a\ufffd' });
    const [odd] = recall([{ digest: 5, title: 5 }], off).problems;
    expect(Object.keys(odd ?? {})).toEqual(['index', 'because', 'why', 'problems']);
  });

  test('a report that says something else than its round gives now is judged again, and named', () => {
    const { digest, ...rest } = stored(report);
    expect(digest).toHaveLength(64);
    put(rest, keysOf('$.accumulators[0].state'), 'work needed');
    const forged = { ...rest, digest: sha256(canonicalJson(rest)) };
    const found = recall([forged], off);
    expect(found.problems).toMatchObject([{ index: 0, because: ['another result'] }]);
    expect(found.changes.map(({ name }) => name)).toEqual(recall([report], off).changes.map(({ name }) => name));
    const shorter = { ...rest, accumulators: rest.accumulators.slice(1) };
    const lacking = { ...shorter, digest: sha256(canonicalJson(shorter)) };
    expect(recall([lacking], off).problems).toMatchObject([{ because: ['another result'] }]);
    const old = { ...rest, libraryVersion: '0.0.9' };
    const older = { ...old, digest: sha256(canonicalJson(old)) };
    expect(recall([older], off).problems).toMatchObject([{ because: ['other library version'] }]);
  });
});

describe('a faulty call', () => {
  const off = { ...DAYS, correction: bar(-2.1) };
  test.each<readonly [string, unknown, string, string]>([
    ['no recall', undefined, 'wrong kind', 'recalling'],
    ['no name', { ...off, instrument: 5 }, 'not a text', 'recalling.instrument'],
    ['a day that is none', { ...off, from: '2026-02-30' }, 'not a date', 'recalling.from'],
    ['a time in place of a day', { ...off, to: '2026-03-14T00:00:00Z' }, 'not a date', 'recalling.to'],
    ['days that run backwards', { ...off, from: '2026-03-15' }, 'days run backwards', 'recalling.to'],
    ['a number as correction', { ...off, correction: -2.1 }, 'wrong kind', 'recalling.correction'],
    ['a copy of a correction', { ...off, correction: { ...bar(1) } }, 'unchecked copy', 'recalling.correction'],
  ])('%s', (_title, what, code, path) => {
    expect(problemOf(() => recall([report], what as Recalling))).toMatchObject({ code, path });
  });

  test('what a correction has to be is named, and what is checked is what is used', () => {
    const { values } = problemOf(() => recall([report], { ...off, correction: -2.1 } as never));
    expect(Object.values(values).join()).toContain('pressure difference');
    let reads = 0;
    const changing = { ...off, get instrument() { return (reads += 1) === 1 ? 'gauge A' : 'gauge Z'; } }; // prettier-ignore
    expect(recall([report], changing).judgedAgain).toBe(6);
  });

  test('reports that are no list, all that is wrong at once, and words that are not sound', () => {
    expect(problemOf(() => recall(report as never, off))).toMatchObject({ code: 'wrong kind', path: 'reports' });
    const bad = { instrument: null, from: 'y', to: 'x', correction: null };
    expect(refusalOf(() => recall([], bad as never))).toHaveLength(4);
    expect(problemOf(() => recall([], off, { slips: { x: 'y' } } as never)).path).toBe('words.slips.x');
  });

  test('words of one’s own stand in its problems', () => {
    const round = exampleRound();
    put(round, keysOf('$.groups[0].accumulators[0].visit[0].at'), '2026-03-14T09:10:00+01:00');
    put(round, keysOf('$.groups[0].accumulators[0].visit[0].gasInside'), NOTHING);
    const words = { problems: { missing: { wanted: '{wanted}', remedy: 'nachtragen' } } };
    const [first] = recall([reportRest(round)], off, words).notJudgedAgain;
    expect(first?.problems[0]?.remedy).toBe('nachtragen');
  });
});
