import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson, reportRound, sha256, type RoundReport } from 'isochore/record';
import { isPlain } from '../../src/record/canonical.js';
import { inheriting } from '../support/inheriting.js';
import { problemOf } from '../support/problem.js';
import { exampleRound, reportRest } from '../support/round.js';

const nodeSha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

describe('canonical JSON', () => {
  // RFC 8785, 3.2.2 to 3.2.4, from memory.
  test('the example of RFC 8785 that is worked through', () => {
    const json: unknown = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    const canonical = String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`;
    expect(canonicalJson(json)).toBe(canonical);
    const bytes =
      '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a5b3333333333333333332e333333333333332c31652b33302c342e352c302e3030322c31652d32375d2c22737472696e67223a22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f227d';
    expect(Buffer.from(canonicalJson(json), 'utf8').toString('hex')).toBe(bytes);
  });

  // RFC 8785, 3.2.3, from memory: sorted by UTF-16 code units, so that a surrogate comes before U+FB33.
  test('its example of sorting', () => {
    const json: unknown = JSON.parse(String.raw`{
      "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
    }`);
    expect([...canonicalJson(json).matchAll(/:"(.*?)"[,}]/g)].map(([, value]) => value)).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  // RFC 8785, appendix B, from memory: bits of the double, and its text.
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('the double %s is written %s', (bits, text) => {
    expect(canonicalJson([Buffer.from(bits, 'hex').readDoubleBE()])).toBe(`[${text}]`);
  });

  test('is read back as the same data, and says nothing of order and spelling', { timeout: 60_000 }, () => {
    const turned = (json: unknown): unknown =>
      Array.isArray(json)
        ? json.map(turned)
        : typeof json === 'object' && json !== null
          ? Object.fromEntries(Object.entries(json).reverse().map(([key, value]) => [key, turned(value)])) // prettier-ignore
          : json;
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (json) => {
        const text = canonicalJson(json);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(json)));
        expect(canonicalJson(turned(json))).toBe(text);
        expect(canonicalJson(JSON.parse(JSON.stringify(json, null, 2)))).toBe(text);
      }),
      { seed: 8785, numRuns: 500 },
    );
  });

  test.each([
    ['the first half of a surrogate pair', 'a\uD83D', 'a\uFFFD'],
    ['the second', { a: ['\uDE00b'] }, '\uFFFDb'],
    ['halves the wrong way round', '\uDE00\uD83D', '\uFFFD\uFFFD'],
    ['half a pair in a key', { '\uD83D': 1 }, '\uFFFD'],
    ['NaN', [Number.NaN], 'NaN'],
    ['infinity', { a: Number.NEGATIVE_INFINITY }, '-Infinity'],
    ['undefined', undefined, 'undefined'],
    ['undefined in an object', { a: undefined }, 'undefined'],
    ['a hole', new Array(1), 'undefined'],
    ['a bigint', 1n, '1n'],
    ['a function', () => 1, 'a function'],
    ['a date', new Date(0), 'an instance'],
    ['a map', new Map(), 'an instance'],
  ])('is refused of %s', (_title, json, found) => {
    expect(problemOf(() => canonicalJson(json))).toMatchObject({ code: 'not JSON', path: '', found });
  });

  test('what only looks like half a pair is written', () => {
    expect(canonicalJson('\\ud83d \u{1F600}')).toBe('"\\\\ud83d \u{1F600}"');
  });

  test('is refused of data that contains itself, or is nested beyond 500 levels', () => {
    const loop: unknown[] = [];
    loop.push(loop);
    expect(problemOf(() => canonicalJson(loop)).code).toBe('too deep');
    const list = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
    const object = (levels: number): string => `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}`;
    const [path, found, values] = ['', 'deeper nesting', { most: '500' }];
    for (const nested of [list, object]) {
      expect(canonicalJson(JSON.parse(nested(500)))).toBe(nested(500));
      const problem = problemOf(() => canonicalJson(JSON.parse(nested(501))));
      expect(problem).toMatchObject({ code: 'too deep', path, found, values });
    }
  });

  // The plain way, to compare with: every object sorted by itself.
  const plainly = (json: unknown): string => {
    if (Array.isArray(json)) return `[${json.map(plainly).join(',')}]`;
    if (typeof json !== 'object' || json === null) return JSON.stringify(json);
    const members = Object.entries(json).sort(([one], [other]) => (one < other ? -1 : 1));
    return `{${members.map(([key, value]) => `${JSON.stringify(key)}:${plainly(value)}`).join(',')}}`;
  };

  test.each<[string, unknown]>([
    ['the same keys in another order', [{ b: 1, a: 2, c: 3 }, { c: 4, a: 5, b: 6 }, { a: 7, b: 8, c: 9 }, { b: 10, a: 11, c: 12 }]], // prettier-ignore
    ['keys with which others begin', [{ b: 1, a: 2 }, { b: 3 }, { b: 4, a: 5, '0': 6 }, {}, { a: 7, b: 8 }, { b: 9, a: 10, c: 11 }]], // prettier-ignore
    ['one key within itself', { b: { b: { b: 1, a: 2 }, a: 3 }, a: { b: 4 } }],
    ['texts that look like keys', ['a', { a: 'a:', '"a"': '"a"', 'a:': 'a' }]],
    [
      'more orders of keys than are kept',
      Array.from({ length: 5000 }, (_, i) => ({ [`z${i}`]: i, a: `t${i}`, [`b${i % 7}`]: 0 })),
    ],
    ['more keys in one object than are kept', [1, 2].map(() => Object.fromEntries(Array.from({ length: 3000 }, (_, i) => [`k${i}`, `x${i}`.repeat(30)])))], // prettier-ignore
  ])('of %s is written as each object by itself would be', (_title, json) => {
    expect(canonicalJson(json)).toBe(plainly(json));
    expect(canonicalJson([json, json])).toBe(plainly([json, json]));
  });
});

describe('SHA-256', () => {
  // FIPS 180-4 and the example values published with it (NIST), from memory; node:crypto below has the last word.
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('of a published text', (text, digest) => {
    expect(sha256(text)).toBe(digest);
  }); // prettier-ignore

  test('of texts of every length about the block', () => {
    for (let length = 0; length <= 200; length += 1) {
      const text = '\u{1F600}aé€'
        .repeat(60)
        .slice(0, length)
        .replace(/[\uD800-\uDFFF]/gu, 'x');
      expect(sha256(text)).toBe(nodeSha256(text));
    }
  });

  test('of long texts, with characters of one to four bytes where blocks of it end', () => {
    for (const character of ['a', 'é', '€', '\u{1F600}']) {
      for (let before = 0; before < 9; before += 1) {
        const text = 'x'.repeat(before) + character.repeat(40_000);
        expect(sha256(text)).toBe(nodeSha256(text));
      }
    }
  });

  // UTF-8 (RFC 3629): from here on a character takes one byte more.
  test.each([0x7f, 0x80, 0x7ff, 0x800, 0xd7ff, 0xe000, 0xffff, 0x10000, 0x10ffff])('of U+%i', (point) => {
    const text = String.fromCodePoint(point);
    expect(sha256(text)).toBe(nodeSha256(text));
  });

  test('of any well-formed text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        expect(sha256(text)).toBe(nodeSha256(text));
      }),
      { seed: 180, numRuns: 2000 },
    );
  });

  test('is refused of half a surrogate pair, and of what is no text', () => {
    for (const [text, found] of [
      ['\uD83D', String.raw`"\ud83d"`],
      ['a\uDE00', String.raw`"a\ude00"`],
      [undefined, 'undefined'],
      [5, '5'],
      [Buffer.from('abc'), 'an object'],
    ]) {
      expect(problemOf(() => sha256(text as string))).toMatchObject({ code: 'not a text', path: '', found });
    }
  });
});

describe('the digest of a report', () => {
  const report = reportRest(exampleRound());

  test('is SHA-256 of its canonical JSON without it, as node:crypto finds it', () => {
    const { digest, ...rest } = report;
    expect(digest).toBe(nodeSha256(canonicalJson(rest)));
  });

  test('of a report whose text is written in several pieces too', () => {
    const round = exampleRound();
    const [group] = round.groups;
    const [first] = group?.accumulators ?? [];
    if (group === undefined || first === undefined) throw new Error('the round of the examples is empty');
    // A character of four bytes, so that a piece that ends inside one would show.
    group.accumulators = Array.from({ length: 200 }, (_, i) => ({ ...first, name: `\u{1F600} ${i}` }));
    const { digest, ...rest } = reportRest(round);
    expect(canonicalJson(rest).length).toBeGreaterThan(200_000);
    expect(digest).toBe(nodeSha256(canonicalJson(rest)));
  });

  test('is the same for the same round, and another for another', () => {
    expect(reportRound(exampleRound(), { problems: 'refuse the round' }).digest).toBe(report.digest);
    const seen = new Set([report.digest]);
    const changes: ((round: ReturnType<typeof exampleRound>) => unknown)[] = [
      (round) => (round.title = 'Another'),
      (round) => round.groups.pop(),
      (round) =>
        round.groups[0]?.accumulators[0]?.visit.splice(0, 1, ...(round.groups[0].accumulators[7]?.visit ?? [])),
    ];
    for (const change of changes) {
      const round = exampleRound();
      change(round);
      seen.add(reportRest(round).digest);
    }
    expect(seen.size).toBe(changes.length + 1);
  });

  test('stands through JSON', () => {
    const { digest, ...rest } = JSON.parse(JSON.stringify(report)) as RoundReport;
    expect(sha256(canonicalJson(rest))).toBe(digest);
  });
});

test('a tag that all objects inherit makes no instance of a plain one', () => {
  const plain = [{}, Object.create(null)] as readonly object[];
  expect(inheriting(Symbol.toStringTag, 'Round', () => plain.map(isPlain))).toEqual([true, true]);
});
