import { expect, test, vi } from 'vitest';
import { MOST_ACCUMULATORS, type Round } from 'isochore/record';
import { exampleRound, reportRest } from '../support/round.js';

type Visit = Round['groups'][number]['accumulators'][number]['visit'];

/** The first group of the round of the examples, with as many accumulators as asked for. */
function largeRound(count: number, change: (round: Round) => void = () => undefined, visit?: Visit): Round {
  const round = exampleRound();
  delete round.supply; // a plan is of what is to be filled, and these are in order
  delete round.safety;
  const [group] = round.groups;
  const [first] = group?.accumulators ?? [];
  if (group === undefined || first === undefined) throw new Error('the round of the examples is empty');
  group.accumulators = Array.from({ length: count }, (_, i) => ({ name: `EV ${i}`, visit: visit ?? first.visit }));
  round.groups = [group];
  change(round);
  return round;
}

test('a hundred thousand accumulators are all judged', { timeout: 120_000 }, () => {
  // As read: what instruments and a rule add to each is held on the round of the examples, and by the work below.
  const asRead = (round: Round): void => {
    delete round.rule;
    for (const group of round.groups) delete group.instruments;
  };
  const report = reportRest(largeRound(100_000, asRead));
  expect(report.complete).toBe('complete');
  expect(report.accumulators).toHaveLength(100_000);
  expect(report.counts).toEqual({ within: 100_000 });
  expect(report.accumulators.at(-1)).toMatchObject({ name: 'EV 99999', asFound: { outcome: 'within' } });
});

// Counted, not timed: how often own properties are looked up, paths compared and names put by.
function workFor(round: Round): number[] {
  const spies = [vi.spyOn(Object, 'hasOwn'), vi.spyOn(String.prototype, 'startsWith'), vi.spyOn(Set.prototype, 'has')];
  try {
    reportRest(round);
    return spies.map(({ mock }) => mock.calls.length);
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

test.each([
  ['sound', undefined, undefined],
  ['without readings', undefined, []],
  ['of one name', (round: Round) => round.groups[0]?.accumulators.forEach((one) => (one.name = 'EV')), undefined],
  ['of an unknown specification', (round: Round) => (round.specifications = []), undefined],
] as const)('twice as many accumulators %s take twice the work', { timeout: 60_000 }, (_title, change, visit) => {
  const of = (count: number): number[] => workFor(largeRound(count, change, visit as Visit | undefined));
  of(0); // what is made once, by the first report of a program, is no work of these
  const [none, some, more] = [of(0), of(500), of(1000)];
  none.forEach((least, i) => {
    const [once, twice] = [some[i] ?? Number.NaN, more[i] ?? Number.NaN];
    expect(twice - least).toBeLessThanOrEqual(2 * (once - least));
  });
  expect(some[0]).toBeGreaterThan(500);
});

test(
  'one accumulator more than a document may hold: it is not read, the rest is reported',
  { timeout: 120_000 },
  () => {
    expect(MOST_ACCUMULATORS).toBe(250_000);
    // The group of all but the last two has no sound specification, so that they cost little.
    const [last] = largeRound(2).groups;
    const round = largeRound(MOST_ACCUMULATORS - 1, ({ groups }) => {
      if (groups[0] !== undefined) groups[0].specification = 'unknown';
      if (last !== undefined) groups.push({ ...last, name: 'Last' });
    });
    const report = reportRest(round);
    expect(report.problems).toMatchObject([
      { code: 'unknown specification', path: '$.groups[0].specification' },
      { code: 'too large', path: '$.groups[1].accumulators[1]', about: 'Last', found: '1 more accumulators' },
    ]);
    expect(report.complete).toBe('partial');
    expect(report.accumulators.map(({ name }) => name)).toEqual(['EV 0']);
    expect(report.notJudged).toHaveLength(MOST_ACCUMULATORS - 1);
  },
);
