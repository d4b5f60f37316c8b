// An order for work is that of the core for the specification, the reading and the instruments that the round states.
import { workOrder, type Assessed } from 'isochore';
import { canonicalJson, orderFor, sha256, type RoundReport } from 'isochore/record';
import { describe, expect, test } from 'vitest';
import { INSTRUMENTS, reads, RULE, SPEC } from '../support/exhaust-valves.js';
import { problemOf } from '../support/problem.js';
import { keysOf, NOTHING, put, reportRest, roundWithoutSupply } from '../support/round.js';

const EV1 = { group: 'Exhaust valves', name: 'EV 1' };

function changed(...puts: readonly (readonly [string, unknown])[]): RoundReport {
  const round = roundWithoutSupply();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return reportRest(round);
}

const pressure = (bar: number) => [`$.groups[0].accumulators[0].visit[0].pressure.value`, bar] as const;

function byCore(bar: number, assessed?: Assessed): object {
  const { basis, steps, numbers, cautions } = workOrder(SPEC, reads(bar), assessed);
  return { basis, steps, numbers, cautions };
}

describe('an order for the work on an accumulator of a report', () => {
  const assessed = { instruments: INSTRUMENTS, rule: RULE };

  test.each([130, 152, 158])('%d bar: with the instruments and the rule of the round', (bar) => {
    const order = orderFor(changed(pressure(bar)), EV1);
    expect(order).toEqual(byCore(bar, assessed));
    expect(order).toEqual(JSON.parse(JSON.stringify(order)));
    expect(Object.keys(order)).toEqual(['basis', 'steps', 'numbers', 'cautions']);
  });

  // Perhaps not over its limit: by that rule nothing is vented, where the reading alone says so.
  test('without them where the round has no rule, or leaves out what it needs', () => {
    const rejecting = ['$.rule.acceptance', 'guarded rejection'] as const;
    const [sure, alone] = [
      byCore(155, { ...assessed, rule: { ...RULE, acceptance: 'guarded rejection' } }),
      byCore(155),
    ];
    expect(sure).not.toEqual(alone);
    expect(orderFor(changed(pressure(155), rejecting), EV1)).toEqual(sure);
    expect(orderFor(changed(pressure(155), ['$.rule', NOTHING]), EV1)).toEqual(alone);
    expect(orderFor(changed(pressure(155), rejecting, ['$.specifications[0].vessel', NOTHING]), EV1)).toEqual(alone);
  });

  test('with steps in words of one’s own', () => {
    const [first] = orderFor(changed(), EV1).steps;
    if (first === undefined) expect.fail('no step');
    const [own] = orderFor(changed(), EV1, { [first.step]: 'Ölseite entleeren' }).steps;
    expect([own?.step, own?.text]).toEqual([first.step, 'Ölseite entleeren']);
  });
});

describe('there is none', () => {
  const report = changed();
  const altered = structuredClone(report);
  put(altered, keysOf('$.accumulators[0].state'), 'read again');
  const { digest, input, ...rest } = structuredClone(report);
  const bare = { ...rest, digest: sha256(canonicalJson(rest)) };

  test.each<[string, unknown, string]>([
    ['of what is no report', 5, '5'],
    ['of a report that was altered', altered, 'a report that was altered, or has no round'],
    ['of one without its round', bare, 'a report that was altered, or has no round'],
  ])('%s', (_title, given, found) => {
    expect([digest.length, typeof input]).toEqual([64, 'object']);
    expect(problemOf(() => orderFor(given, EV1))).toMatchObject({ code: 'not a report', path: 'report', found });
  });

  test.each<[unknown]>([
    [{ ...EV1, name: 'EV 9' }],
    [{ ...EV1, group: 'Fuel injection' }],
    [{ name: 'EV 1' }],
    [{ group: 'Exhaust valves' }],
    [null],
    [undefined],
  ])('for one that was not judged: %j', (of) => {
    expect(problemOf(() => orderFor(report, of as never))).toMatchObject({
      code: 'unknown word',
      path: 'of',
      values: { words: 'group and name of an accumulator that was judged' },
    });
  });
});
