import { describe, expect, test } from 'vitest';
import { reportRoundText, type RoundReport } from 'isochore/record';
import { NOTHING, roundWithoutSupply, put, keysOf, reportRest } from '../support/round.js';

const report = reportRest(roundWithoutSupply());

type Accumulator = RoundReport['accumulators'][number];

function named(from: RoundReport, name: string): Accumulator {
  return from.accumulators.find((one) => one.name === name) ?? expect.fail(`${name} is not in the report`);
}

function changed(...puts: readonly (readonly [string, unknown])[]): RoundReport {
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return reportRest(round);
}

/** Every field that is carried of an accumulator, with a value that no other has. */
const EVERY_FIELD = {
  unitServed: 'cylinder 1',
  componentCode: 'code',
  position: 'position',
  serial: 'serial',
  runningHours: 0.1,
  partsRenewed: ['valve', 'valve', ''.padEnd(200, 'v')],
  remarks: 'first line\nsecond line \u{1F600}',
  deviationPermit: 'permit',
  engineState: 'stopped',
  stoppedAt: '2026-03-14T07:30:00.5-10:00',
  drainedAt: '2026-03-13T23:59:59Z',
  readBy: 'one',
  verifiedBy: 'other',
  temperaturePlace: 'shell',
};

describe('what an accumulator carries', () => {
  test('comes out as it went in, and changes no verdict', () => {
    const puts = Object.entries(EVERY_FIELD).map(([field, value]) => [`$.groups[0].accumulators[0].${field}`, value] as const);
    const { asFound, ...carried } = named(changed(...puts), 'EV 1');
    expect(carried).toEqual({
      group: 'Exhaust valves',
      name: 'EV 1',
      specification: 'exhaust valve drive',
      state: 'in order',
      asLeft: 'not read',
      ...EVERY_FIELD,
    });
    expect(asFound).toEqual(named(report, 'EV 1').asFound);
  }); // prettier-ignore

  test('is its own before its group’s; remarks are never its group’s', () => {
    expect(named(report, 'FI 6')).toMatchObject({ readBy: 'third engineer', verifiedBy: 'second engineer' });
    expect(named(report, 'FI 1')).toMatchObject({
      verifiedBy: 'chief engineer',
      drainedAt: '2026-03-14T08:20:00+01:00',
    });
    expect(Object.hasOwn(named(report, 'EV 1'), 'remarks')).toBe(false);
    const served = changed(['$.groups[0].unitServed', 'port side']);
    expect(named(served, 'EV 1').unitServed).toBe('cylinder 1');
  });

  test('is not there where nothing is said', () => {
    const bare = roundWithoutSupply();
    delete bare.rule;
    bare.groups = bare.groups.map(({ name, specification, temperature, ambient, gaugeStep, accumulators }) => ({
      ...{ name, specification, ambient, gaugeStep },
      ...(temperature && { temperature }),
      accumulators: accumulators.map((one) => ({ name: one.name, visit: one.visit })),
    }));
    for (const reading of bare.groups.flatMap((group) => group.accumulators.flatMap(({ visit }) => visit))) {
      delete reading.instruments;
    }
    delete bare.instruments;
    const said = reportRest(bare);
    expect(said).toMatchObject({ complete: 'complete', instruments: [] });
    expect(Object.keys(named(said, 'EV 2')).sort()).toEqual(['asFound', 'asLeft', 'group', 'name', 'specification', 'state']); // prettier-ignore
    expect(Object.hasOwn(named(said, 'EV 2').asFound.reading, 'instruments')).toBe(false);
  });

  test('unit served is said even of one that could not be judged', () => {
    const lost = changed(['$.groups[0].accumulators[0].visit[0].pressure.unit', 'barg'], ['$.groups[0].accumulators[1].unitServed', 5]); // prettier-ignore
    expect(lost.notJudged).toEqual([
      { path: '$.groups[0].accumulators[0]', group: 'Exhaust valves', name: 'EV 1', unitServed: 'cylinder 1' },
      { path: '$.groups[0].accumulators[1]', group: 'Exhaust valves', name: 'EV 2' },
    ]);
  });
});

describe('the time of draining, and the rest that readings claim', () => {
  // EV 1 is read at 09:10+01:00, drained and 45 minutes at rest; EV 4 at 09:24+01:00, not drained.
  const contradicts = (...puts: readonly (readonly [string, unknown])[]): string[] =>
    changed(...puts).problems.map(({ code, path, wanted }) => `${code} ${path}: ${wanted}`);
  const of = (n: number): string => `$.groups[0].accumulators[${n - 1}]`;
  const most = (n: number, minutes: string): unknown =>
    expect.stringMatching(
      `^rest contradicts readings \\$\\.groups\\[0\\]\\.accumulators\\[${n - 1}\\]\\.visit\\[0\\]\\.minutesAtRest: at most ${minutes} min`,
    );

  test('as long as since draining, by whatever offset, and no longer', () => {
    expect(contradicts([`${of(1)}.drainedAt`, '2026-03-14T08:25:00+01:00'])).toEqual([]);
    expect(contradicts([`${of(1)}.drainedAt`, '2026-03-14T07:25:30Z'])).toEqual([most(1, '44.5')]);
  });

  test('of the group it holds for each that does not state its own', () => {
    const group = ['$.groups[0].drainedAt', '2026-03-14T08:26:00+01:00'] as const;
    expect(contradicts(group)).toEqual([most(1, '44')]);
    expect(changed(group).notJudged.map(({ name }) => name)).toEqual(['EV 1']);
    expect(contradicts(group, [`${of(1)}.drainedAt`, '2026-03-14T08:20:00+01:00'])).toEqual([]);
  });

  test('stated wrongly, it is not taken from the group instead', () => {
    const said = changed(['$.groups[0].drainedAt', '2026-03-14T08:26:00+01:00'], [`${of(1)}.drainedAt`, '08:26']);
    expect(said.problems).toMatchObject([{ code: 'not a time', path: `${of(1)}.drainedAt` }]);
  });

  test('before it nothing has rested that says it is drained; of one that does not, nothing is said', () => {
    expect(contradicts([`${of(1)}.drainedAt`, '2026-03-14T09:11:00+01:00'])).toEqual([most(1, '0')]);
    expect(contradicts([`${of(4)}.drainedAt`, '2026-03-14T09:25:00+01:00'])).toEqual([]);
  });

  test('one after it has rested no longer, whatever it says of its oil side', () => {
    const rested = (at: string, minutes: number) =>
      contradicts([`${of(4)}.drainedAt`, at], [`${of(4)}.visit[0].minutesAtRest`, minutes]);
    expect(rested('2026-03-14T09:20:00+01:00', 4)).toEqual([]);
    expect(rested('2026-03-14T09:20:00+01:00', 4.5)).toEqual([most(4, '4')]);
    // In the minute itself.
    expect(rested('2026-03-14T09:24:00+01:00', 0)).toEqual([]);
    expect(rested('2026-03-14T09:24:00+01:00', 1)).toEqual([most(4, '0')]);
  });

  test('a reading without a sound time, without a known rest or of an unknown drainage hides no later one', () => {
    const [first, second, third] = [0, 1, 2].map((i) => `${of(2)}.visit[${i}]`);
    const settled = [
      [`${first}.pressure.value`, 152.5],
      [`${second}.role`, 'settled'],
      ['$.groups[0].drainedAt', NOTHING],
      [`${third}.minutesAtRest`, 82],
    ] as const;
    const codes = (...puts: readonly (readonly [string, unknown])[]): string[] =>
      changed(...settled, ...puts).problems.map(({ code, path }) => `${code} ${path}`);
    // 36 minutes after one that had rested 45.
    const said = `rest contradicts readings ${third}.minutesAtRest`;
    expect(codes([`${second}.minutesAtRest`, 'not known'])).toEqual([said]);
    expect(codes([`${second}.minutesAtRest`, 60], [`${third}.minutesAtRest`, 81])).toEqual([]);
    expect(codes([`${second}.at`, '9:31'])).toEqual([`not a time ${second}.at`, said]);
    expect(codes([`${first}.minutesAtRest`, 'not known'], [`${second}.minutesAtRest`, 60])).toEqual([said]);
  });

  test('of several readings, the later may have rested as much longer', () => {
    const rest = (minutes: number) => [`${of(2)}.visit[2].minutesAtRest`, minutes] as const;
    const puts = [
      [`${of(2)}.drainedAt`, '2026-03-14T08:31:00+01:00'],
      [`${of(2)}.visit[0].pressure.value`, 152.5],
      [`${of(2)}.visit[1].role`, 'settled'],
      [`${of(2)}.visit[1].minutesAtRest`, 60],
    ] as const;
    expect(contradicts(...puts, rest(81))).toEqual([]);
    expect(contradicts(...puts, rest(81.5))).toHaveLength(1);
  });
});

describe('what a group carries', () => {
  test('stands with the groups of the report', () => {
    const { groups } = roundWithoutSupply();
    expect(report.groups).toHaveLength(2);
    report.groups.forEach((group, i) => expect(groups[i]).toMatchObject(group));
    expect(report.groups[0]).toMatchObject({ remarks: 'Engine room warm, ventilation running.', readBy: 'second engineer' }); // prettier-ignore
  });

  test('but for what is wrong of it', () => {
    const other = changed(['$.groups[0].readBy', 5]);
    expect(other.problems).toMatchObject([{ path: '$.groups[0].readBy' }]);
    expect(Object.hasOwn(other.groups[0] ?? {}, 'readBy')).toBe(false);
    expect(Object.hasOwn(named(other, 'EV 1'), 'readBy')).toBe(false);
    expect(other.accumulators).toHaveLength(16);
  });
});

describe('instruments', () => {
  test('are listed as in the round', () => {
    expect(report.instruments).toEqual(roundWithoutSupply().instruments);
  });

  test('are named by the reading, or else by its group', () => {
    expect(named(report, 'EV 1').asFound.reading.instruments).toEqual({ pressure: 'gauge A', temperature: 'thermometer 1' }); // prettier-ignore
    expect(named(report, 'EV 7').asFound.reading.instruments).toEqual({ pressure: 'gauge C', temperature: 'thermometer 1' }); // prettier-ignore
  });

  test('past due on the day of a reading, that reading carries a caution, and nothing else changes', () => {
    const codes = (from: RoundReport, name: string): readonly string[] => named(from, name).asFound.cautions;
    // The readings are of 14 March.
    const late = changed(['$.instruments[0].due', '2026-03-13'], ['$.instruments[2].due', '2026-03-13']);
    expect(late.complete).toBe('complete');
    expect(late.instruments[0]?.due).toBe('2026-03-13');
    const of = 'certificate past due';
    // Of gauge C nothing but its name is known.
    expect(['EV 1', 'EV 7', 'FI 1'].map((name) => codes(late, name).filter((code) => code === of).length)).toEqual([1, 1, 0]); // prettier-ignore
    expect(late.cautions.filter(({ code }) => code === of)).toHaveLength(1);
    expect(codes(changed(['$.instruments[3].due', '2026-03-13']), 'FI 1')).toContain(of);
    expect(codes(changed(['$.instruments[0].due', '2026-03-14']), 'EV 1')).not.toContain(of);
    const without = (from: RoundReport): unknown =>
      from.accumulators.map((one) => ({ ...one, asFound: { ...one.asFound, cautions: [] }, asLeft: null }));
    expect(without(late)).toEqual(without(report));
  });

  test('one that is not listed, or not soundly, is not in the report', () => {
    const other = changed(['$.instruments[2].due', 'soon']);
    expect(other.instruments.map(({ name }) => name)).toEqual(['gauge A', 'gauge B', 'thermometer 1']);
    expect(other.notJudged.map(({ name }) => name)).toEqual(['EV 7']);
  });

  test('in a text with a key of one twice, that one alone is uncertain', () => {
    const text = JSON.stringify(roundWithoutSupply()).replace(
      '{"name":"gauge C"',
      '{"name":"gauge C","name":"gauge C"',
    );
    const twice = reportRoundText(text, { problems: 'report the rest' });
    expect(twice.problems).toMatchObject([{ code: 'duplicate key', path: '$.instruments[2].name' }]);
    expect(twice.notJudged.map(({ name }) => name)).toEqual(['EV 7']);
  });
});
