import { describe as sentence, isFault, type Words } from 'isochore';
import {
  CAUSES,
  CAUTION_CODES,
  PROBLEM_CODES,
  REASONS,
  reportRound,
  reportRoundText,
  SETTLED_BY,
  SLIP_CODES,
  SUPPLY_CODES,
  UNCERTAINTY_CODES,
  type RoundReport,
} from 'isochore/record';
import { describe, expect, test } from 'vitest';
import { CAUTION } from '../../src/basis/caution.js';
import * as catalogue from '../../src/basis/problem.js';
import { CAUSE, EXPLAINED, REASON, SETTLED, SLIP, SUPPLY, uncertaintyText } from '../../src/basis/words.js';
import { exampleRound, put, reportRest } from '../support/round.js';
import { problemOf } from '../support/problem.js';

/** Every text of the library between « and »: what a report says without them was not taken from the words given. */
const own: Words = {
  reasons: Object.fromEntries(REASONS.map((code) => [code, `«${REASON[code]}»`])),
  causes: Object.fromEntries(CAUSES.map((code) => [code, `«${CAUSE[code]}»`])),
  cautions: Object.fromEntries(CAUTION_CODES.map((code) => [code, `«${CAUTION[code][1]}»`])),
  problems: Object.fromEntries(
    Object.values(catalogue).map(({ code, wanted, remedy }) => [
      code,
      { wanted: `«${wanted}»`, remedy: `«${remedy}»` },
    ]),
  ),
  uncertainty: Object.fromEntries(UNCERTAINTY_CODES.map((code) => [code, `«${uncertaintyText(code)}»`])),
  settled: Object.fromEntries(SETTLED_BY.map((code) => [code, `«${SETTLED[code]}»`])),
  supply: Object.fromEntries(SUPPLY_CODES.map((code) => [code, `«${SUPPLY[code]}»`])),
  slips: Object.fromEntries(SLIP_CODES.map((code) => [code, `«${SLIP[code]}»`])),
  explained: `«${EXPLAINED}»`,
};

/** The example with something wrong in many places, and with every outcome that a reading may have. */
function spoilt(): ReturnType<typeof exampleRound> {
  const round = exampleRound();
  put(round, ['note'], 1);
  put(round, ['groups', 0, 'accumulators', 0, 'visit', 0, 'pressure', 'unit'], 'bars');
  put(round, ['groups', 0, 'accumulators', 1, 'visit', 0, 'temperature'], { value: -300, unit: '°C' });
  put(round, ['groups', 0, 'accumulators', 2, 'visit', 0, 'at'], 'yesterday');
  put(round, ['groups', 0, 'accumulators', 3, 'visit', 0, 'minutesAtRest'], -1);
  put(round, ['groups', 0, 'accumulators', 5, 'specification'], 'another');
  put(round, ['groups', 1, 'accumulators', 0, 'name'], '');
  return round;
}

function* texts(report: RoundReport): Generator<string> {
  for (const { asFound, asLeft } of report.accumulators) {
    for (const judged of asLeft === 'not read' ? [asFound] : [asFound, asLeft]) {
      yield* judged.why.split(/; (?=«)/);
      for (const { text } of judged.causes ?? []) yield text;
      if (judged.charge.action === 'withheld') yield* judged.charge.why.split(/; (?=«)/);
    }
  }
  for (const { text } of report.cautions) yield text;
  for (const { wanted, remedy } of report.problems) yield* [wanted, remedy];
}

const keyed = (code: string): string => (/^\w+$/.test(code) ? `.${code}` : `["${code}"]`);
const bare = (text: string): string => text.replace(/[«»]/g, '');

describe('words of one’s own', () => {
  const report = reportRound(spoilt(), { problems: 'report the rest', words: own });

  test('stand in every place of a report', () => {
    const all = [...texts(report)];
    expect(all.length).toBeGreaterThan(40);
    for (const text of all) expect(text).toMatch(/^«[^«»]+»$/);
  });

  test('change nothing but words', () => {
    const english = reportRest(spoilt());
    expect(new Set(english.problems.map(({ code }) => code)).size).toBeGreaterThan(5);
    const back: unknown = JSON.parse(bare(JSON.stringify({ ...report, digest: english.digest })));
    expect(back).toEqual(JSON.parse(JSON.stringify(english)));
  });

  test('stand in the fault of a round that is refused', () => {
    try {
      reportRoundText('{"version": 1, "version": 1}', { problems: 'refuse the round', words: own });
      expect.fail('not refused');
    } catch (error) {
      if (!isFault(error)) throw error;
      for (const problem of error.problems) expect(sentence(problem)).toMatch(/wanted «.+»; «.+»$/);
      expect(error.message).toMatch(/wanted «.+»; «.+»$/m);
    }
  });

  test.each([
    ['reasons', 'below the lower limit', '{of}', '{off}'],
    ['causes', 'separator torn', '{off}', 'no name in braces'],
    ['cautions', 'stored pressure', '{off}', 'no name in braces'],
  ])('of %s have no other names in braces than the library’s', (kind, code, text, wanted) => {
    const words = { [kind]: { [code]: text } };
    const problem = problemOf(() => reportRound({}, { problems: 'report the rest', words }));
    expect(problem.code).toBe('words not sound');
    expect(problem.path).toBe(`when.words.${kind}["${code}"]`);
    expect(problem.found).toBe(JSON.stringify(text));
    expect(problem.wanted).toContain(wanted);
  });

  const problemWith = (words: unknown) =>
    problemOf(() => reportRound({}, { problems: 'report the rest', words: words as Words }));

  test.each([
    ...Object.entries(own).flatMap(([kind, texts]) =>
      kind === 'explained' || kind === 'problems' ? [] : Object.keys(texts as object).map((code) => [kind, code]),
    ),
  ] as [string, string][])('of %s, %s, take no name in braces that the library has no value for', (kind, code) => {
    const problem = problemWith({ [kind]: { [code]: 'x {nothing}' } });
    expect([problem.code, problem.path]).toEqual(['words not sound', `when.words.${kind}${keyed(code)}`]);
    expect(problem.wanted).toContain('no name in braces');
  });

  test('of a problem, in either of its texts; and of what explains', () => {
    for (const code of PROBLEM_CODES) {
      for (const [wanted, remedy, text] of [['{no}', 'x', 'wanted'], ['x', '{no}', 'remedy']]) {
        const { path } = problemWith({ problems: { [code]: { wanted, remedy } } });
        expect(path).toBe(`when.words.problems${keyed(code)}.${text}`);
      }
    }
    expect(problemWith({ explained: '{no}' }).path).toBe('when.words.explained');
  }); // prettier-ignore

  test('are texts, of a length that can be shown, and that UTF-8 can write', () => {
    const asphyxiation = (text: unknown) => ({ cautions: { asphyxiation: text } });
    for (const text of ['', 'x'.repeat(2001), '\uD83D', 'a\uDE00', 5, null, ['x']]) {
      const problem = problemWith(asphyxiation(text));
      expect([problem.code, problem.path]).toEqual(['words not sound', 'when.words.cautions.asphyxiation']);
    }
    for (const text of ['x', 'x'.repeat(2000), '\u{1F600}'.repeat(2000)]) {
      const words = asphyxiation(text) as Words;
      const { cautions } = reportRound(exampleRound(), { problems: 'refuse the round', words });
      expect(cautions.find(({ code }) => code === 'asphyxiation')?.text).toBe(text);
    }
    for (const words of [5, 'x', [], null]) expect(problemWith(words)).toMatchObject({ code: 'words not sound', path: 'when.words' }); // prettier-ignore
    for (const of of [5, 'x', [], null, () => 1]) {
      expect(problemWith({ cautions: of })).toMatchObject({ code: 'words not sound', path: 'when.words.cautions' });
    }
    expect(problemWith({ problems: { missing: { wanted: 'x' } } }).path).toBe('when.words.problems.missing.remedy');
    const loop: Record<string, unknown> = {};
    loop['wanted'] = loop;
    expect(problemWith({ cautions: { asphyxiation: loop } }).code).toBe('words not sound');
    expect(problemWith({ problems: { missing: { wanted: loop, remedy: 'x' } } }).code).toBe('words not sound');
    expect(problemWith({ others: {} }).path).toBe('when.words.others');
  });

  test('are each read once', () => {
    let reads = 0;
    const cautions = { get asphyxiation() { return (reads += 1) === 1 ? 'once' : '{twice}'; } }; // prettier-ignore
    const report = reportRound(exampleRound(), { problems: 'refuse the round', words: { cautions } });
    expect([reads, report.cautions.find(({ code }) => code === 'asphyxiation')?.text]).toEqual([1, 'once']);
  });

  test('of a corrected reading', () => {
    const round = exampleRound();
    put(round, ['instruments', 0, 'characteristics', 'accuracy', 'correction', 'value'], 0.5);
    const said = (corrected: string): string | undefined =>
      reportRound(round, { problems: 'report the rest', words: { corrected } }).accumulators[0]?.asFound.why;
    expect(said('{corrected} statt {shown}')).toContain('152.5 bar gauge statt 152.0 bar gauge read');
    expect(problemOf(() => said('{read}')).path).toBe('when.words.corrected');
  });

  test('of a problem may use the names of either of its texts', () => {
    const words = (wanted: string): Words => ({ problems: { 'outside the model': { wanted, remedy: 'x' } } });
    const go = (wanted: string) => reportRound({}, { problems: 'report the rest', words: words(wanted) });
    expect(go('{range} ({reason})').complete).toBe('partial');
    const unknown = problemOf(() => go('{ranges}'));
    expect(unknown.path).toBe('when.words.problems["outside the model"].wanted');
    expect(unknown.values).toEqual({ wanted: 'no name in braces but {range}, {model}, {reason}' });
    expect(problemWith({ causes: { 'separator torn': '{off}' } }).values).toEqual({ wanted: 'no name in braces' });
  });

  test('are none under a code that there is not', () => {
    const words = { problems: { constructor: { wanted: 'x', remedy: 'x' } } };
    expect(problemOf(() => reportRound({}, { problems: 'report the rest', words: words as never })).code).toBe(
      'words not sound',
    );
  });
});

test('one code has one text, and every text says what to do', () => {
  const all = Object.values(catalogue);
  expect(new Set(all.map(({ code }) => code)).size).toBe(all.length);
  expect(all.map(({ code }) => code).sort()).toEqual([...PROBLEM_CODES].sort());
  for (const { wanted, remedy } of all) {
    expect(wanted).not.toBe('');
    expect(remedy).toMatch(/^[^A-Z].{8,}[^.]$/);
  }
});
