import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { canonicalJson, LIBRARY_VERSION, reportRound, reportRoundText, reverify, sha256, type RoundReport } from 'isochore/record'; // prettier-ignore
import { CORRUPTIONS } from '../support/corruptions.js';
import { problemOf } from '../support/problem.js';
import {
  at,
  exampleRound,
  jsonPath,
  keysOf,
  nodesOf,
  NOTHING,
  onePlaceOfEach,
  onOneLine,
  put,
  reportRest,
  type Keys,
} from '../support/round.js';
import { smallRound } from '../support/small-round.js';

const report = reportRest(exampleRound());
const copy = (): RoundReport => JSON.parse(JSON.stringify(report)) as RoundReport;

/** The report with some places changed, and its digest mended as a forger would. */
function forged(puts: readonly (readonly [Keys, unknown])[]): RoundReport {
  const { digest, ...rest } = copy();
  expect(digest).toHaveLength(64);
  for (const [keys, value] of puts) put(rest, keys, value);
  return { ...rest, digest: sha256(canonicalJson(rest)) };
}

test('the version of the library is that of the package', () => {
  const path = fileURLToPath(new URL('../../package.json', import.meta.url));
  const { version } = JSON.parse(readFileSync(path, 'utf8')) as { version: string };
  expect(LIBRARY_VERSION).toBe(version);
  expect(report.libraryVersion).toBe(version);
});

describe('a report carries its round', () => {
  test('as it was given', () => {
    expect(report.input).toStrictEqual(exampleRound());
    const text = JSON.stringify(exampleRound());
    expect(reportRoundText(text, { problems: 'refuse the round' }).input).toStrictEqual(exampleRound());
  });

  test('which is a copy: what happens to the round afterwards does not reach the report', () => {
    const round = exampleRound();
    const before = reportRest(round);
    for (const { keys, value } of nodesOf(round)) if (typeof value !== 'object') put(round, keys, null);
    expect(before).toStrictEqual(report);
  });

  test('keys that would set a prototype, and data that is no round, come along', () => {
    const round: unknown = JSON.parse('{"version": 1, "__proto__": {"a": [null, -0]}}');
    const odd = reportRest(round);
    expect(JSON.stringify(odd.input)).toBe('{"version":1,"__proto__":{"a":[null,0]}}');
    const member = Object.getOwnPropertyDescriptor(odd.input, '__proto__');
    expect(member).toMatchObject({ enumerable: true, configurable: true, writable: true });
    expect(reportRest(-0).input).toBe(0); // as JSON writes it
    for (const json of [null, 5, 'round', [1]]) expect(reportRest(json).input).toEqual(json);
  });

  test.each<readonly [string, unknown]>([
    ['NaN', { version: 1, specifications: [], groups: [Number.NaN] }],
    ['half a surrogate pair', { version: 1, title: '\uD83D', specifications: [], groups: [] }],
    ['half a pair in a key', { version: 1, '\uD83D': 1, specifications: [], groups: [] }],
    ['nothing', undefined],
    ['what JSON cannot write', { version: 1, specifications: [], groups: [() => 1] }],
    ['a hole in a list', { version: 1, specifications: [], groups: new Array(1) }],
    ['data nested too deep', { version: 1, specifications: [], groups: [JSON.parse('['.repeat(40) + ']'.repeat(40))] }],
  ])('but not %s: then it is partial, and says so', (_title, json) => {
    const odd = reportRest(json);
    expect(Object.hasOwn(odd, 'input')).toBe(false);
    expect(odd.complete).toBe('partial');
    expect(reverify(odd)).toMatchObject({ outcome: 'cannot be judged again', because: ['no input'] });
  });

  test('nor a text that holds a key twice, of which the data would keep one', () => {
    const text = JSON.stringify(exampleRound()).replace('"oilSide":"not drained"', '"oilSide":"not known","oilSide":"not drained"'); // prettier-ignore
    const twice = reportRoundText(text, { problems: 'report the rest' });
    expect(twice.problems).toMatchObject([{ code: 'duplicate key' }]);
    expect(Object.hasOwn(twice, 'input')).toBe(false);
  });

  test('nor more values than a document may hold, which is not read at all', { timeout: 120_000 }, () => {
    let shared: unknown = [0];
    for (let i = 0; i < 25; i += 1) shared = [shared, shared];
    const huge = reportRest({ version: 1, specifications: [], groups: [], shared });
    const values = { most: '20000000', what: 'values' };
    expect(huge.problems).toMatchObject([{ code: 'too large', path: '$', found: 'more than 20000000 values', values }]);
    expect(Object.hasOwn(huge, 'input')).toBe(false);
  });
});

describe('a report that was not touched', () => {
  test('is the same, through JSON and back', () => {
    expect(reverify(copy())).toEqual({ outcome: 'same', because: [], why: '', changesFound: 0, changes: [], problems: [] });
  }); // prettier-ignore

  test('so is a partial one, whatever is wrong with its round', () => {
    let same = 0;
    const codes = new Set<string>();
    for (const { puts, said } of CORRUPTIONS) {
      // One of each code, written as JSON and read back; bad-input.test.ts has all of them as they are.
      const [{ code } = { code: '' }] = said;
      if (codes.has(code)) continue;
      codes.add(code);
      const round = exampleRound();
      delete round.supply;
      for (const [path, value] of puts) put(round, keysOf(path), value);
      const partial = reportRest(round);
      if (!Object.hasOwn(partial, 'input')) continue;
      expect(reverify(JSON.parse(JSON.stringify(partial))).outcome).toBe('same');
      same += 1;
    }
    expect(same).toBeGreaterThan(30);
  });
});

describe('a report that was altered', () => {
  test('in any one place: its digest does not match, and if it is still a report, the place is named', { timeout: 240_000 }, () => {
    const small = smallRound();
    delete small.supply?.exchange; // its times take most of a report, and are read as the rest is
    const whole = JSON.stringify(reportRest(small));
    const places = onePlaceOfEach(JSON.parse(whole)).filter(({ value }) => typeof value !== 'object');
    expect(places.length).toBeGreaterThan(300);
    for (const { keys, value } of places) {
      const altered: unknown = JSON.parse(whole);
      put(altered, keys, typeof value === 'number' ? value + 1 : `${String(value)}x`);
      const { outcome, because, changes, problems } = reverify(altered);
      expect([jsonPath(keys), because.includes('digest does not match')]).toEqual([jsonPath(keys), true]);
      if (outcome === 'not a report') {
        expect(problems.some(({ path }) => onOneLine(path, jsonPath(keys)))).toBe(true);
        continue;
      }
      expect(outcome).toBe('changed');
      const isText = ['why', 'text', 'citation'].includes(String(keys.at(-1)));
      // The version and the digest are no results.
      const isResult = !isText && keys[0] !== 'libraryVersion' && keys[0] !== 'digest';
      if (keys[0] !== 'input') expect(changes.map(({ path }) => path)).toEqual(isResult ? [jsonPath(keys)] : []);
    }
  }); // prettier-ignore

  test('says what stood there, and what its input gives', () => {
    const altered = copy();
    put(altered, keysOf('$.accumulators[1].asFound.outcome'), 'within');
    expect(reverify(altered)).toMatchObject({
      outcome: 'changed',
      because: ['digest does not match'],
      changesFound: 1,
      changes: [{ path: '$.accumulators[1].asFound.outcome', from: '"within"', to: '"undercharged"' }],
      problems: [],
    });
  });

  test('where a part was taken out or put in', () => {
    const altered = copy();
    put(altered, ['accumulators'], altered.accumulators.slice(0, -1));
    put(altered, ['accumulators', 0, 'serial'], 'N 1');
    put(altered, ['accumulators', 1, 'remarks'], NOTHING);
    expect(reverify(altered).changes).toEqual([
      { path: '$.accumulators[0].serial', from: '"N 1"', to: 'nothing' },
      { path: '$.accumulators[1].remarks', from: 'nothing', to: expect.stringContaining('Gas valve') as string },
      { path: '$.accumulators[15]', from: 'nothing', to: 'an object' },
    ]);
  });

  test('the digest alone', () => {
    expect(reverify({ ...copy(), digest: '0'.repeat(64) })).toMatchObject({
      outcome: 'changed',
      because: ['digest does not match'],
      changes: [],
    });
  });

  test('and its input taken out', () => {
    const altered = copy();
    delete altered.input;
    const { outcome, because, why } = reverify(altered);
    expect([outcome, because]).toEqual(['changed', ['no input', 'digest does not match']]);
    const sentences = why.split('; ');
    expect(sentences).toHaveLength(2);
    expect(sentences[0]).toContain('does not carry its round');
    expect(sentences[1]).toContain('digest does not match');
  });

  test('in very many places: a hundred are listed, all are counted', () => {
    const altered = copy();
    for (const { keys, value } of nodesOf(altered.accumulators)) {
      if (typeof value === 'number') put(altered.accumulators, keys, value + 1);
    }
    const { changes, changesFound } = reverify(altered);
    expect(changes).toHaveLength(100);
    expect(changesFound).toBe(nodesOf(report.accumulators).filter(({ value }) => typeof value === 'number').length);
  });
});

describe('a report whose digest was mended', () => {
  test('gives another result', () => {
    const { outcome, because, changes } = reverify(forged([[keysOf('$.accumulators[1].state'), 'work needed']]));
    expect([outcome, because]).toEqual(['changed', ['another result']]);
    expect(changes).toEqual([{ path: '$.accumulators[1].state', from: '"work needed"', to: '"in order"' }]);
  });

  test('by another version of the library, with the same result: the same', () => {
    expect(reverify(forged([[['libraryVersion'], '0.0.9']]))).toMatchObject({ outcome: 'same', because: [] });
  });

  test('by another version that words everything otherwise: the same', () => {
    const round = exampleRound();
    put(round, ['note'], 1);
    put(round, ['title'], 'x'.repeat(201));
    put(round, keysOf('$.groups[0].accumulators[0].name'), NOTHING);
    const { digest, ...partial } = reportRest(round);
    expect(digest).toHaveLength(64);
    const reworded: unknown = JSON.parse(JSON.stringify({ ...partial, libraryVersion: '0.0.9' }));
    const texts = nodesOf(reworded).filter(({ keys, value }) => {
      const [key, above] = [String(keys.at(-1)), String(keys.at(-2))];
      const said = ['why', 'text', 'found', 'wanted', 'remedy', 'citation'].includes(key) || above === 'values';
      return keys[0] !== 'input' && typeof value === 'string' && said;
    });
    expect(texts.length).toBeGreaterThan(40);
    for (const { keys, value } of texts) put(reworded, keys, `${String(value)}, in other words`);
    const stored = { ...(reworded as object), digest: sha256(canonicalJson(reworded)) };
    expect(reverify(stored)).toMatchObject({ outcome: 'same', because: [], changesFound: 0 });
    // The codes beside the texts are compared.
    for (const [path, code] of [
      ['$.problems[0].code', 'too short'],
      ['$.accumulators[0].asFound.because[0]', 'oil side not drained'],
      ['$.cautions[0].code', 'asphyxiation'],
    ] as const) {
      const other: unknown = structuredClone(reworded);
      put(other, keysOf(path), code);
      const forgery = { ...(other as object), digest: sha256(canonicalJson(other)) };
      expect(reverify(forgery).changes.map((change) => change.path)).toEqual([path]);
    }
  });

  test('by another version, with another result', () => {
    const other = forged([
      [['libraryVersion'], '0.0.9'],
      [keysOf('$.accumulators[1].asFound.target.value'), 152],
    ]);
    expect(reverify(other)).toMatchObject({ outcome: 'changed', because: ['other library version'], changesFound: 1 });
  });

  test('with another model', () => {
    const other = forged([[keysOf('$.models[0].id'), 'ideal gas']]);
    expect(reverify(other)).toMatchObject({ outcome: 'changed', because: ['other model'], changesFound: 1 });
  });

  test('of another schema version', () => {
    const { outcome, because, problems } = reverify(forged([[['version'], 2]]));
    expect([outcome, because]).toEqual(['not a report', ['not a report', 'other schema version']]);
    expect(problems).toMatchObject([{ code: 'unknown version', path: '$.version', values: { words: '1' } }]);
  });
});

describe('what is no report', () => {
  const loop: Record<string, unknown> = {};
  loop['loop'] = loop;
  test.each<readonly [string, unknown]>([
    ['null', null],
    ['a text', JSON.stringify(report)],
    ['a number', 1],
    ['a list', [report]],
    ['a round', exampleRound()],
    ['an empty object', {}],
    ['a report with NaN', { ...report, problemsFound: Number.NaN }],
    ['a report with half a surrogate pair', { ...report, title: '\uD83D' }],
    ['data that contains itself', loop],
    [
      'a report whose lists are walked by nobody',
      { ...report, groups: Object.assign([...report.groups], { [Symbol.iterator]: 5, 0: 5 }) },
    ],
    [
      'what a text may hold in place of a length',
      JSON.parse('{"version":1,"title":{"length":{"toString":1,"valueOf":1}}}'),
    ],
    ['a date', new Date(0)],
    ['a report around undefined', { ...report, problems: [undefined] }],
  ])('%s: said, not thrown', (_title, json) => {
    const { outcome, because, problems, changes } = reverify(json);
    expect([outcome, changes]).toEqual(['not a report', []]);
    expect(because[0]).toBe('not a report');
    expect(problems.length).toBeGreaterThan(0);
    for (const { path } of problems) expect(path).toMatch(/^\$(\.\w|\[|$)/);
  });

  test('what has neither version nor digest has none that differs', () => {
    for (const json of [{}, 'report', 5, null, [], { version: 'x', libraryVersion: 1 }]) {
      expect(reverify(json).because).toEqual(['not a report']);
    }
  });

  test('of what is wrong, a thousand at most is listed, each under the root', () => {
    const { problems } = reverify({ ...report, 'a field': 1, accumulators: Array.from({ length: 600 }, () => ({})) });
    expect(problems).toHaveLength(1000);
    expect(reverify({ ...report, 'a field': 1 }).problems.map(({ path }) => path)).toEqual(['$["a field"]']);
    expect(reverify('report').problems.map(({ path }) => path)).toEqual(['$']);
  });

  test('too deep, or too large: that is what is said', { timeout: 120_000 }, () => {
    const deep: unknown = JSON.parse('['.repeat(40) + ']'.repeat(40));
    let shared: unknown = [0];
    for (let i = 0; i < 25; i += 1) shared = [shared, shared];
    const codes = (json: unknown) => reverify(json).problems.map(({ code, path }) => `${code} ${path}`);
    expect(codes({ ...report, input: deep })).toEqual(['too deep $']);
    expect(codes(loop)).toEqual(['too deep $']);
    expect(codes({ ...report, input: shared })).toEqual(['too large $']);
  });

  test.each([[undefined], [() => report], [Symbol('report')], [1n]])('%o is a wrong call', (json) => {
    expect(problemOf(() => reverify(json))).toMatchObject({ code: 'not a report', path: 'report' });
  });
});

describe('words of the caller’s own', () => {
  const words = { cautions: { asphyxiation: 'Stickstoff verdrängt die Luft.' } };
  const german = reportRound(exampleRound(), { problems: 'refuse the round', words });

  test('stand in the report under their codes; the others stay', () => {
    const texts = (from: RoundReport) => new Map(from.cautions.map(({ code, text }) => [code, text]));
    const [own, usual] = [texts(german), texts(report)];
    expect([...own.keys()]).toEqual([...usual.keys()]);
    for (const [code, text] of own) {
      expect(text).toBe(code === 'asphyxiation' ? words.cautions.asphyxiation : usual.get(code));
    }
    expect(german.cautions.map(({ severity }) => severity)).toEqual(report.cautions.map(({ severity }) => severity));
  });

  test('are not needed to verify it', () => {
    expect(reverify(german)).toMatchObject({ outcome: 'same', because: [] });
  });

  test.each<readonly [string, unknown, string]>([
    ['empty', { cautions: { asphyxiation: '' } }, '.cautions.asphyxiation'],
    ['too long', { cautions: { asphyxiation: 'x'.repeat(2001) } }, '.cautions.asphyxiation'],
    ['half a surrogate pair', { cautions: { asphyxiation: '\uD83D' } }, '.cautions.asphyxiation'],
    ['no text', { cautions: { asphyxiation: null } }, '.cautions.asphyxiation'],
    ['an unknown code', { cautions: { suffocation: 'x' } }, '.cautions.suffocation'],
    ['an unknown catalogue', { outcomes: {} }, '.outcomes'],
    ['null', null, ''],
    ['a text', 'de', ''],
  ])('that are not sound are refused: %s', (_title, bad, path) => {
    const refused = problemOf(() => reportRound({}, { problems: 'report the rest', words: bad as never }));
    expect(refused.path).toBe(`when.words${path}`);
  });
});

test('places that a report names can be found in it', () => {
  expect(at(report, keysOf('$.accumulators[1].remarks'))).toContain('Gas valve');
});
