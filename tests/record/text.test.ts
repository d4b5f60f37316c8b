import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEEPEST, LONGEST_TEXT, reportRoundText, type RoundReport } from 'isochore/record';
import { scan } from '../../src/record/scan.js';
import { EVERY_EV, ev, fi } from '../support/corruptions.js';
import { firstRepeats } from '../support/repeated-keys.js';
import { exampleRound, expectSound, keysOf, put, refusalOf, reportRest, roundWithoutSupply } from '../support/round.js'; // prettier-ignore
import { smallRound } from '../support/small-round.js';

const text = JSON.stringify(roundWithoutSupply());
const reportText = (given: string): RoundReport => reportRoundText(given, { problems: 'report the rest' });
const said = ({ problems }: RoundReport): string[] => problems.map(({ code, path }) => `${code} ${path}`);
const lost = ({ notJudged }: RoundReport): string[] => notJudged.map(({ path }) => path);

/** The text with one place of it, which must be there, replaced. */
function edited(place: string, by: string): string {
  const i = text.indexOf(place);
  if (i === -1) throw new Error(`the round does not say ${place}`);
  return text.slice(0, i) + by + text.slice(i + place.length);
}

test('text and parsed JSON give the same report', () => {
  const whole = reportRest(exampleRound());
  expect(reportText(JSON.stringify(exampleRound()))).toStrictEqual(whole);
  expect(reportText(JSON.stringify(exampleRound(), null, '\t'))).toStrictEqual(whole);
  expect(reportRoundText(JSON.stringify(exampleRound()), { problems: 'refuse the round' })).toStrictEqual(whole);
});

test('a byte order mark is passed over, once', () => {
  expect(reportText(`\uFEFF${text}`)).toStrictEqual(reportRest(roundWithoutSupply()));
  expect(said(reportText(`\uFEFF\uFEFF${text}`))).toEqual(['not a JSON text $']);
});

describe('what is not JSON is refused', () => {
  test.each([
    ['empty', ''],
    ['blank', ' \n'],
    ['words', 'round'],
    ['cut off', text.slice(0, -1)],
    ['cut off inside a string', text.slice(0, text.indexOf('EV 1') + 2)],
    ['followed by something', `${text}]`],
    ['a trailing comma', edited('"minutesAtRest":45}', '"minutesAtRest":45,}')],
    ['NaN', edited('"value":152', '"value":NaN')],
    ['single quotes', text.replaceAll('"', "'")],
    ['a list without its brackets', '1,2'],
    ['a comment', `// round\n${text}`],
    ['only closing brackets', ']]}}'],
    ['a lone backslash at the end', '{"a\\'],
    ['a duplicate key in text that ends early', '{"a":1,"a":2'],
    ['a bad escape in a key', '{"\\x":1,"\\x":2}'],
  ])('%s', (_title, given) => {
    const report = reportText(given);
    expect(said(report)).toEqual(['not a JSON text $']);
    expect(report.complete).toBe('partial');
    expect(report.accumulators).toEqual([]);
    expectSound(report);
    expect(refusalOf(() => reportRoundText(given, { problems: 'refuse the round' }))).toEqual(report.problems);
  });

  test.each<readonly [string, unknown]>([
    ['nothing', undefined],
    ['null', null],
    ['a round that is parsed already', roundWithoutSupply()],
    ['a number', 5],
    ['bytes', Buffer.from(text)],
  ])('%s, which is no text', (_title, given) => {
    expect(said(reportText(given as string))).toEqual(['not a JSON text $']);
  });

  test('what the parser says of a long text is cut short', () => {
    for (const { found } of reportText('x'.repeat(10_000)).problems) expect(found.length).toBeLessThanOrEqual(81);
  });
});

describe('a key given twice: what holds both is not judged', () => {
  const every = [...EVERY_EV, ...[1, 2, 3, 4, 5, 6, 7, 8].map(fi)];
  const cases: readonly (readonly [string, string, string, string, readonly string[]])[] = [
    ['in a reading', '"oilSide":"not drained"', '"oilSide":"drained, zero verified","oilSide":"not drained"', `${ev(4)}.visit[0].oilSide`, [ev(4)]],
    ['in a later reading', '"minutesAtRest":22', '"minutesAtRest":22,"minutesAtRest":22', `${ev(2)}.visit[2].minutesAtRest`, [ev(2)]],
    ['in a pressure', '"value":158', '"value":148,"value":158', `${ev(3)}.visit[0].pressure.value`, [ev(3)]],
    ['in an accumulator', '"name":"FI 5"', '"name":"FI 5","name":"FI 5"', `${fi(5)}.name`, [fi(5)]],
    ['a whole visit', '{"name":"FI 7",', '{"name":"FI 7","visit":[],', `${fi(7)}.visit`, [fi(7)]],
    ['in a group', '"name":"Exhaust valves"', '"name":"Exhaust valves","name":"Exhaust valves"', '$.groups[0].name', EVERY_EV],
    ['the accumulators of a group', '{"name":"Exhaust valves",', '{"name":"Exhaust valves","accumulators":[],', '$.groups[0].accumulators', EVERY_EV],
    ['in what a group states', '"ambient":{"value":1008,"unit":"hPa","basis":"absolute"},"gaugeStep"', '"ambient":{"value":1013,"value":1008,"unit":"hPa","basis":"absolute"},"gaugeStep"', '$.groups[0].ambient.value', EVERY_EV],
    ['in a specification', '"gas":"nitrogen","precharge"', '"gas":"nitrogen","gas":"nitrogen","precharge"', '$.specifications[0].gas', EVERY_EV],
    ['deep in a specification', '"value":140', '"value":160,"value":140', '$.specifications[0].precharge.pressure.value', EVERY_EV],
    ['the accumulators’ key, spelt with an escape', '"name":"EV 6"', '"name":"EV 6","na\\u006de":"EV 6"', `${ev(6)}.name`, [ev(6)]],
    ['both spelt with escapes', '"name":"EV 6"', '"\\u006eame":"EV 6","na\\u006De":"EV 6"', `${ev(6)}.name`, [ev(6)]],
    ['with the same value', '"gasInside":"not known"', '"gasInside":"not known" ,\n "gasInside" : "not known"', `${ev(6)}.visit[0].gasInside`, [ev(6)]],
  ]; // prettier-ignore

  test.each(cases)('%s', (_title, place, by, path, notJudged) => {
    const report = reportText(edited(place, by));
    expect(said(report)).toEqual([`duplicate key ${path}`]);
    expect(report.problems[0]?.found).toBe(`${path} more than once`);
    expect([report.title, Object.hasOwn(report, 'input')]).toEqual([roundWithoutSupply().title, false]);
    expect(report.complete).toBe('partial');
    expect(lost(report)).toEqual(notJudged);
    const good = reportRest(roundWithoutSupply()).accumulators;
    expect(report.accumulators).toStrictEqual(good.filter((_, i) => !notJudged.includes(every[i] ?? '')));
    expectSound(report);
    expect(refusalOf(() => reportRoundText(edited(place, by), { problems: 'refuse the round' }))).toEqual(
      report.problems,
    );
  });

  test.each([
    ['the version', '{"version":1', '{"version":1,"version":1', '$.version'],
    ['the groups', '{"version":1', '{"groups":[],"version":1', '$.groups'],
    ['the specifications', '{"version":1', '{"specifications":[],"version":1', '$.specifications'],
    ['the title', '"title":', '"title":"Quarterly","title":', '$.title'],
    [
      'under a key that looks like a path',
      '{"version":1',
      '{"$.tables[0].":{"a":1,"a":2},"version":1',
      '$["$.tables[0]."].a',
    ],
    ['inside the title', '"title":"', '"title":{"a":1,"a":2},"note":"', '$.title.a'],
  ])('in the round itself, %s: nothing is judged', (_title, place, by, path) => {
    const report = reportText(edited(place, by));
    expect(said(report)).toContain(`duplicate key ${path}`);
    expect(report.accumulators).toEqual([]);
    expect(report.complete).toBe('partial');
    expectSound(report);
  });

  test('every one is reported: three times the same key, and another', () => {
    const report = reportText(edited('"value":158', '"value":1,"value":2,"unit":"Pa","value":158'));
    const pressure = `${ev(3)}.visit[0].pressure`;
    expect(said(report)).toEqual([
      `duplicate key ${pressure}.value`,
      `duplicate key ${pressure}.value`,
      `duplicate key ${pressure}.unit`,
    ]);
  });

  test.each([
    ['tables[10]', '"columns":', '$.tables[10].columns'],
    ['specifications[10]', '"gas":', '$.specifications[10].gas'],
    ['instruments[10]', '"kind":', '$.instruments[10].kind'],
    ['groups[10]', '"specification":', '$.groups[10].specification'],
    ['groups[10].accumulators[10]', '"visit":', '$.groups[10].accumulators[10].visit'],
  ])('in the eleventh of a list, %s: of the others nothing is lost', (place, key, path) => {
    const round = roundWithoutSupply();
    const eleven = <T extends { name: string }>(one: T): T[] => Array.from({ length: 11 }, (_, i) => ({ ...one, name: `${one.name} ${i}` })); // prettier-ignore
    const [sheet] = smallRound().tables ?? [];
    const [type] = round.specifications;
    const [group] = round.groups;
    const [accumulator] = group?.accumulators ?? [];
    if (sheet === undefined || type === undefined || group === undefined || accumulator === undefined)
      throw new Error('an empty round');
    const many = {
      ...round,
      tables: eleven(sheet),
      specifications: eleven(type),
      instruments: [...(round.instruments ?? []), ...eleven({ name: 'gauge N', kind: 'pressure gauge' })],
      groups: eleven({ ...group, specification: `${type.name} 0` }).map((one, i) => ({ ...one, accumulators: i === 10 ? eleven(accumulator) : [accumulator] })), // prettier-ignore
    };
    const whole = JSON.parse(JSON.stringify(many)) as typeof many;
    const at = keysOf(`$.${place}`).reduce<unknown>((value, step) => (value as Record<string, unknown>)[step], whole);
    const once = JSON.stringify(at);
    put(whole, keysOf(`$.${place}`), 'HERE');
    const twice = once.replace(key, `${key}0,${key}`);
    const report = reportText(JSON.stringify(whole).replace('"HERE"', twice));
    expect(said(report)).toEqual([`duplicate key ${path}`]);
    const isLost = (one: string): boolean => place.startsWith('groups') && one.startsWith(`$.${place}`);
    expect(lost(report).every(isLost)).toBe(true);
    expect(lost(report)).toHaveLength(place === 'groups[10]' ? 11 : place.startsWith('groups') ? 1 : 0);
    expect(report.instruments).toHaveLength(many.instruments.length - (place.startsWith('instruments') ? 1 : 0));
  });

  test('however many there are, none of what holds them is judged', { timeout: 60_000 }, () => {
    const { groups, ...round } = roundWithoutSupply();
    const [exhaust] = groups;
    const [first] = exhaust?.accumulators ?? [];
    const accumulators = Array.from({ length: 10_500 }, (_, i) => ({ ...first, name: `A ${i}` }));
    const many = JSON.stringify({ ...round, groups: [{ ...exhaust, accumulators }] });
    const report = reportText(many.replaceAll('"role":', '"role":"as left","role":'));
    expect(report.accumulators).toHaveLength(0);
    expect(report.notJudged).toHaveLength(10_500);
    expect(report.problemsFound).toBe(10_500);
    expect(report.problems).toHaveLength(1000);
  });

  test.each([
    ['a key in one object and in another inside it', '{"a":{"a":1},"b":{"a":1}}'],
    ['the same key in the objects of an array', '[{"a":1},{"a":1}]'],
    ['a text that looks like keys', String.raw`{"a":"\"a\":1,\"a\":2","b":"{\"b\":1,\"b\":1}"}`],
    ['escaped quotes and backslashes', String.raw`{"a\"":1,"a":2,"a\\":"\\","a\\\"":"\\\\\"","b":"\\"}`],
    ['a text equal to a key', '{"a":"a","b":["a","a","b"]}'],
    ['keys that differ by case or by form', '{"a":1,"A":2,"\u00e9":1,"e\u0301":1}'],
    ['an escaped backslash before what would be an escape', String.raw`{"\\u0061":1,"a":2,"u0061":3}`],
  ])('but not %s', (_title, given) => {
    expect(() => JSON.parse(given) as unknown).not.toThrow();
    expect(firstRepeats(given)).toEqual([]);
    expect(said(reportText(given)).filter((problem) => problem.startsWith('duplicate'))).toEqual([]);
  });
});

test('beyond a million keys given twice the rest is not looked for, and nothing of the document is certain', () => {
  const twice = (times: number): string => `{${'"a":1,'.repeat(times)}"a":1}`;
  expect(scan(twice(1_000_000), DEEPEST).duplicates.includes('$')).toBe(false);
  const { isTooDeep, duplicates } = scan(twice(1_000_002), DEEPEST);
  expect([isTooDeep, duplicates.length, duplicates.at(-2), duplicates.at(-1)]).toEqual([false, 1_000_001, '$.a', '$']);
});

describe('the keys given twice in any JSON text', () => {
  const key = fc.constantFrom(
    'a',
    'b',
    'c_1',
    '',
    '1',
    'a.b',
    '[0]',
    'na"me',
    '\\',
    '\\"',
    'ä',
    '\u{1F600}',
    '__proto__',
    '{',
    ',',
  );
  const space = fc.constantFrom('', ' ', '\n\t', ' \r\n ');
  /** A JSON string of a text, any of its characters spelt with an escape. */
  const spelt = (of: fc.Arbitrary<string>): fc.Arbitrary<string> =>
    fc.tuple(of, fc.infiniteStream(fc.integer({ min: 0, max: 5 }))).map(([chars, dice]) => {
      const spell = (unit: string): string =>
        dice.next().value === 0
          ? `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`
          : JSON.stringify(unit).slice(1, -1);
      return `"${chars.split('').map(spell).join('')}"`;
    });
  const leaf = fc.oneof(
    fc.constantFrom('1', '-0.5e3', 'true', 'null', '[]', '{}'),
    spelt(fc.oneof(key, fc.constantFrom('"a":1,"a":2', '{"a":1}', '\\\\"', ',"b":'))),
  );
  const { json } = fc.letrec<{ json: string }>((tie) => ({
    json: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      leaf,
      fc
        .tuple(space, fc.array(fc.tuple(tie('json'), space), { maxLength: 4 }))
        .map(([s, list]) => `[${s}${list.map(([value, after]) => value + after).join(`,${s}`)}]`),
      fc
        .tuple(space, fc.array(fc.tuple(spelt(key), space, tie('json')), { maxLength: 5 }))
        .map(
          ([s, list]) =>
            `{${s}${list.map(([name, between, value]) => `${name}${between}:${s}${value}`).join(`${s},${s}`)}${s}}`,
        ),
    ),
  }));

  test('are those that a parser by recursive descent finds', { timeout: 60_000 }, () => {
    let repeats = 0;
    fc.assert(
      fc.property(json, (given) => {
        const found = reportText(given).problems.filter(({ code }) => code === 'duplicate key');
        const wanted = firstRepeats(given);
        repeats += wanted.length;
        expect(found.map(({ path }) => path)).toEqual(wanted);
      }),
      { numRuns: 3000 },
    );
    expect(repeats).toBeGreaterThan(500);
  });
});

describe('text that is too deep', () => {
  const nested = (depth: number, open = '[', close = ']'): string => open.repeat(depth) + close.repeat(depth);

  test('is refused at one level more than are read', () => {
    expect(said(reportText(nested(DEEPEST + 1)))).toEqual(['too deep $']);
    const values = { most: String(DEEPEST) };
    expect(reportText(nested(DEEPEST + 1)).problems).toMatchObject([{ found: 'deeper nesting', values }]);
    expect(said(reportText(nested(DEEPEST)))).toEqual(['not an object $']);
    expect(said(reportText(`[${nested(DEEPEST - 1)},${nested(DEEPEST)}]`))).toEqual(['too deep $']);
    expect(said(reportText(`[${nested(DEEPEST - 1)},${nested(DEEPEST - 1)}]`))).toEqual(['not an object $']);
  });

  test.each([
    ['arrays', nested(1e5)],
    ['objects', nested(1e5, '{"a":', '}')],
    ['open arrays', '['.repeat(1e5)],
    ['both', nested(1e5, '[{"a":', '}]')],
  ])('is refused however deep: %s', (_title, given) => {
    expect(said(reportText(given))).toEqual(['too deep $']);
  });

  test('brackets inside a text are no levels', () => {
    expect(reportText(edited('"title":"', `"title":"${'[{'.repeat(50)}`)).complete).toBe('complete');
  });
});

describe('text that is too long', () => {
  test('is refused unread', () => {
    expect(LONGEST_TEXT).toBe(200_000_000);
    const report = reportText(' '.repeat(LONGEST_TEXT + 1));
    expect(said(report)).toEqual(['too large $']);
    const values = { most: '200000000', what: 'characters' };
    expect(report.problems).toMatchObject([{ found: '200000001 characters', values }]);
    // At the longest it is read, and refused for what it is.
    expect(said(reportText('['.repeat(DEEPEST + 1) + ' '.repeat(LONGEST_TEXT - DEEPEST - 1)))).toEqual(['too deep $']);
  });
});
