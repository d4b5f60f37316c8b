import { describe, expect, test } from 'vitest';
import { DEEPEST, orderFor, readReport, reverify, type Named } from 'isochore/record';
import { exampleRound, keysOf, put, refusalOf, reportRest } from '../support/round.js';

const report = reportRest(exampleRound());

test('a stored report comes back as it was made, and as a copy of its own', () => {
  const stored = JSON.parse(JSON.stringify(report)) as { complete: string; accumulators: unknown[] };
  const back = readReport(stored);
  expect(back).toEqual(report);
  expect(reverify(back).outcome).toBe('same');
  stored.complete = 'partial';
  stored.accumulators.length = 0;
  expect(back).toEqual(report);
});

describe('what is checked is what is given, also where a value changes between two reads', () => {
  const changing = (first: unknown, then: unknown): unknown => {
    let reads = 0;
    const input = Object.defineProperty({}, 'note', { enumerable: true, get: () => (reads++ === 0 ? first : then) });
    return { ...report, input };
  };
  test('a report', () => {
    expect(readReport(changing('a', NaN)).input).toEqual({ note: 'a' });
    expect(refusalOf(() => readReport(changing(NaN, 1)))).toMatchObject([{ code: 'not JSON', path: 'input.note' }]);
  });

  // A list that grows while it is read, or has no length the second time, ends nothing.
  test.each([1, 2 ** 31, -1, Number.NaN])('a list that has %s entries when its length is asked again', (then) => {
    let asked = 0;
    const growing = (list: readonly unknown[]): unknown =>
      new Proxy(list, {
        get: (own, key) => {
          if (key === 'length') asked += 1;
          return key === 'length' && asked > 1 ? then : (Reflect.get(own, key) as unknown);
        },
      });
    const { accumulators } = report;
    const changed = (): unknown => ({ ...report, accumulators: growing(accumulators) });
    expect(readReport(changed())).toEqual(report);
    asked = 0;
    expect(reverify(changed()).outcome).toBe('same');
    asked = 0;
    const [first] = accumulators;
    expect(orderFor(changed(), first as Named)).toEqual(orderFor(report, first as Named));
  });
});

test('a report is read one level deeper than a round, which stands in it', () => {
  const nested = (levels: number): unknown => JSON.parse('{"a":'.repeat(levels) + '1' + '}'.repeat(levels));
  expect(readReport({ ...report, input: nested(DEEPEST) }).input).toEqual(nested(DEEPEST));
  const problems = refusalOf(() => readReport({ ...report, input: nested(DEEPEST + 1) }));
  expect(problems.map(({ code }) => code)).toEqual(['too deep']);
});

test('an altered report is read: that it was altered is for reverify', () => {
  const altered = { ...report, complete: 'partial' };
  expect(readReport(altered).complete).toBe('partial');
  expect(reverify(altered).because).toEqual(['digest does not match']);
});

describe('what is no report is refused, with every problem and its path', () => {
  const { digest, ...unsealed } = report;
  test.each<[string, unknown, string[]]>([
    ['a text', JSON.stringify(report), ['not an object at ']],
    ['nothing', undefined, ['not JSON at ']],
    ['a date in it', { ...report, title: new Date(0) }, ['not JSON at title']],
    ['two fields wrong', { ...unsealed, complete: 'whole' }, ['unknown word at complete', 'missing at digest']],
    ['another version', { ...report, version: 2 }, ['unknown version at version']],
  ])('%s', (_, given, wanted) => {
    expect(digest).toHaveLength(64);
    expect(refusalOf(() => readReport(given)).map(({ code, path }) => `${code} at ${path}`)).toEqual(wanted);
  });
});

const UNITS = 'Pa, hPa, kPa, MPa, bar, psi, kgf/cm2, mmHg, inHg';
const TYPES = '"dial gauge" or "digital gauge" or "contact thermometer" or "infrared thermometer"';
test.each<[string, unknown, string, Readonly<Record<string, string>>]>([
  ['accumulators[0].asFound.target', 5, 'not an object', {}],
  ['accumulators[0].asFound.target.unit', 'x', 'unknown unit', { units: UNITS }],
  ['accumulators[0].asFound.target.unit', 5, 'unknown unit', { units: UNITS }],
  ['accumulators[0].asFound.target.basis', 'absolute', 'wrong basis', { words: '"gauge"' }],
  ['accumulators[0].asFound.target.basis', undefined, 'basis missing', { words: '"gauge"' }],
  ['accumulators[0].asFound.reading.minutesAtRest', 'x', 'wrong shape', { wanted: 'a finite number or "not known"' }],
  ['accumulators[0].asLeft', 5, 'wrong shape', { wanted: 'an object or "not read"' }],
  ['accumulators[0].stoppedAt', 'noon', 'not a time', {}],
  ['accumulators[0].runningHours', -1, 'negative', {}],
  ['accumulators[0].partsRenewed', Array.from({ length: 101 }, () => 'x'), 'too long', { most: '100', what: 'entries' }],
  ['instruments[0].due', 'spring', 'not a date', {}],
  ['instruments[0].characteristics.type', 'x', 'unknown word', { words: TYPES }],
  ['counts', { fine: 1 }, 'unknown field', {}],
  ['groups[0].name', '', 'too short', { least: '1', what: 'character' }],
  ['groups[0].remarks', 'x'.repeat(2001), 'too long', { most: '2000', what: 'characters' }],
  ['rule.risk.below', undefined, 'missing', { wanted: 'a finite number' }],
  ['models', {}, 'not a list', {}],
])('%s cannot be %j: %s', (path, value, code, values) => {
  const changed = structuredClone(report);
  put(changed, keysOf(`$.${path}`), value);
  const at = path === 'counts' ? 'counts.fine' : path;
  expect(refusalOf(() => readReport(changed))).toMatchObject([{ code, path: at, values }]);
}); // prettier-ignore

test('where one of several shapes is wanted, what each of them wants is said', () => {
  const changed = structuredClone(report);
  put(changed, keysOf('$.accumulators[0].asFound.decision.inBand'), 'x');
  put(changed, keysOf('$.together[0].gauge'), '');
  put(changed, keysOf('$.together[0].outcome'), 'x');
  const [together, decision] = refusalOf(() => readReport(changed));
  expect(decision).toMatchObject({ code: 'wrong shape', path: 'accumulators[0].asFound.decision' });
  expect(decision?.wanted.split(' or ')).toEqual(
    expect.arrayContaining(['boolean', '"no decision"', 'no other field']),
  );
  expect(together).toMatchObject({ code: 'wrong shape', path: 'together[0]' });
  expect(together?.wanted.split(' or ')).toEqual(
    expect.arrayContaining(['"too few readings"', 'a value within its limits']),
  );
});
