import { describe, expect, test } from 'vitest';
import { adjustmentTable, cubicNitrogen, pressureDifference, volume } from 'isochore';
import {
  card,
  documentHtml,
  documentLatex,
  documentMarkdown,
  documentText,
  english,
  german,
  type WorkedDocument,
} from 'isochore/worked';
import { LIBRARY_VERSION } from '../../src/record/version.js';
import { bar, barOf, celsius, GIVEN, pointOf, specBy, specOf, specWith, tableOf } from '../support/accumulator.js';
import { cardGiven } from '../support/card.js';
import { problemOf } from '../support/problem.js';
import { numberRows } from '../support/reference.js';
import { tablesOfMarkdown, textOfHtml, wrongWithHtml } from '../support/renderings.js';

const given = cardGiven();
const linesOf = (page: WorkedDocument): string[] => documentText(page, { width: 1000 }).split('\n');

describe('the table of a card', () => {
  const written = adjustmentTable(specWith(), given).rows.map(({ written }) => written);

  test('is the adjustment table, cell by cell', () => {
    const [[, ...rows] = []] = tablesOfMarkdown(documentMarkdown(card(specWith(), given)));
    expect(rows).toEqual(written.map((row) => [row.temperature, row.target, row.lower, row.upper]));
  });

  test('has the same numbers in German, with a comma', () => {
    const [[head, ...rows] = []] = tablesOfMarkdown(documentMarkdown(card(specWith(), { ...given, language: german })));
    expect(head).toEqual([
      'Gastemperatur [°C]',
      'Sollwert [bar Überdruck]',
      'untere Grenze [bar Überdruck]',
      'obere Grenze [bar Überdruck]',
    ]);
    const point = (cell: string): string => cell.replace(',', '.');
    expect(rows.map((row) => row.map(point))).toEqual(
      written.map((row) => [row.temperature, row.target, row.lower, row.upper]),
    );
    expect(rows.flat().join()).not.toContain('.');
  });

  // Source: tests/reference/isochore.csv, the same equation in another program; gauge pressures against 101 325 Pa.
  test('gives what another program gives, to its marks', () => {
    const reference = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', 'p_gauge_span2000_bar'])
      .filter((row) => row.p_ref_gauge_bar === 140 && row.T_ref_C === 20 && row.T_C >= 0 && row.T_C <= 60)
      .map((row) => [row.T_C, Math.round(row.p_gauge_span2000_bar * 2) / 2]);
    const [[, ...rows] = []] = tablesOfMarkdown(documentMarkdown(card(specWith(), given)));
    const own = new Map(rows.map(([t, p]) => [Number(t), Number(p)]));
    expect(reference.length).toBeGreaterThan(5);
    expect(reference.map(([t = 0]) => [t, own.get(t)])).toEqual(reference);
  });

  test('says where no mark of the gauge lies between the limits', () => {
    const page = card(specWith({ tolerance: { plusMinus: barOf(0.1), applies: 'at the measured temperature' } }), {
      ...given,
      gaugeStep: { step: 5, unit: 'bar' },
    });
    expect(tablesOfMarkdown(documentMarkdown(page))[0]?.[3]).toEqual(['10', '135', 'no mark', 'no mark']);
  });

  test('gives no numbers where the target lies above the allowable pressure', () => {
    const page = card(specWith({ allowable: bar(150) }), given);
    const [[, ...rows] = []] = tablesOfMarkdown(documentMarkdown(page));
    expect(rows.find(([t]) => t === '35')).toEqual(['35', '149.5', '147.5', '151.0']);
    expect(rows.find(([t]) => t === '40')).toEqual(['40', 'above the allowable pressure: do not fill', '–', '–']);
    expect(linesOf(page).find((line) => line.startsWith('DANGER: '))).toContain('Do not fill.');
  });
});

describe('what a card holds for', () => {
  test('is all that the specification states', () => {
    const lines = linesOf(card(specWith(), given));
    expect(lines).toEqual(
      expect.arrayContaining([
        '- Pre-charge: 140.00 bar gauge at 20.0 °C',
        '- Ambient pressure that the specification means: 1013.25 hPa absolute',
        '- Allowed: 2.00 bar below and 2.00 bar above the target, at the measured temperature',
        '- Separator: diaphragm',
        '- Gas volume, oil side drained: 5.0 L',
        '- Allowable pressure: 210.00 bar gauge',
        '- Stop filling at most 1.50 bar above the target; wait 5 min, read again',
      ]),
    );
  });

  test('never allows more than the specification: sizes are rounded down', () => {
    const tolerance = { below: pressureDifference(29, 'psi'), above: pressureDifference(15, 'psi') };
    const spec = specWith({ tolerance: { ...tolerance, applies: 'at the reference temperature' } });
    // 29 psi is 1.9995 bar, 15 psi is 1.0342 bar.
    expect(linesOf(card(spec, given))).toContain(
      '- Allowed: 1.99 bar below and 1.03 bar above the target, at the reference temperature',
    );
  });

  test('is told for a percentage, and for limits of their own', () => {
    const percent = specWith({ tolerance: { plusMinusPercentOfGauge: 1.5, applies: 'at the measured temperature' } });
    expect(linesOf(card(percent, { ...given, language: german }))).toContain(
      '- Erlaubt: 1,5 % des Überdrucks unter und über dem Sollwert, bei der gemessenen Temperatur',
    );
    const limits = specWith({ tolerance: { minimum: pointOf(138, 20), maximum: pointOf(143, 20) } });
    expect(linesOf(card(limits, given))).toContain(
      '- Allowed: from the minimum to the maximum that the specification states',
    );
  });

  test('is told for a table, with the rows beyond it and those that the nominal point disagrees with', () => {
    const table = tableOf(
      [
        [133, 10],
        [140, 20],
        [156, 40],
      ],
      { outside: 'follow constant density' },
    );
    const page = card(specBy(table, { nominal: pointOf(140, 20) }), given);
    const lines = linesOf(page);
    expect(lines).toContain(
      '- Pre-charge: by the maker’s table, from 10.0 °C to 40.0 °C, its reference temperature 20.0 °C',
    );
    expect(lines).toContain(
      'Beyond the rows of the maker’s table, by constant density from its nearest row: 0; 5; 45; 50; 55; 60.',
    );
    expect(lines.join('\n')).toMatch(/differ by more than the printed step at: .*40\.0 °C/);
    expect(lines.join('\n')).toContain('CAUTION: The maker');
  });

  test('is the model with its limits, its source and the version', () => {
    const lines = linesOf(card(specWith({ gas: cubicNitrogen }), given));
    expect(
      lines.some((line) => line.startsWith(`- Gas model ${cubicNitrogen.id}: ${cubicNitrogen.source.citation}`)),
    ).toBe(true);
    expect(lines).toContain(`- isochore ${LIBRARY_VERSION}`);
    expect(lines).toContain('- Specification: instruction book, chapter 7');
    expect(lines.some((line) => line.startsWith('NOTE: The source of the gas model states no uncertainty'))).toBe(true);
    expect(linesOf(card(specWith(), given)).some((line) => line.startsWith('NOTE: '))).toBe(false);
    expect(
      linesOf(card(specWith(), { ...given, manual: '' })).some((line) => line.startsWith('- Specification:')),
    ).toBe(false);
  });
});

test('a card says the usual cautions, the dangers first', () => {
  const marked = linesOf(card(specWith(), given)).filter((line) => /^[A-Z]+: /.test(line));
  expect(marked.map((line) => line.split(':')[0])).toEqual(['DANGER', 'DANGER', 'DANGER', 'DANGER', 'CAUTION']);
});

describe('a card in every format', () => {
  test.each([english, german])('is whole, in $code', async (language) => {
    const page = card(specOf(95, 20), { ...given, language });
    const html = documentHtml(page);
    expect(await wrongWithHtml(html)).toEqual([]);
    expect(html).toContain(`<html lang="${language.code}">`);
    for (const text of [
      textOfHtml(html),
      documentMarkdown(page),
      documentLatex(page),
      documentText(page, { width: 80 }),
    ]) {
      for (const word of ['exhaust valve drive', '95', 'instruction book, chapter 7']) expect(text).toContain(word);
    }
  });

  test('is the same document in JSON and back', () => {
    const page = card(specWith(), given);
    expect(documentHtml(JSON.parse(JSON.stringify(page)) as WorkedDocument)).toBe(documentHtml(page));
  });
});

describe('a card is refused', () => {
  test('for what adjustmentTable refuses, under the same paths', () => {
    expect(problemOf(() => card(specWith(), { ...given, to: celsius(-10) }))).toMatchObject({
      code: 'range runs backwards',
      path: 'to',
    });
    expect(problemOf(() => card({ ...GIVEN } as never, given)).path).toBe('spec');
  });

  test('without a name, a manual, a step for the volume, or a language', () => {
    expect(problemOf(() => card(specWith(), { ...given, name: '' })).path).toBe('given.name');
    expect(problemOf(() => card(specWith(), { ...given, manual: 7 as never })).path).toBe('given.manual');
    expect(problemOf(() => card(specWith(), { ...given, volumeStep: { step: 0, unit: 'L' } })).code).toBe('not a step');
    expect(problemOf(() => card(specWith(), { ...given, language: 'de' as never })).path).toBe('language');
    const { settling, ...half } = german;
    expect(
      problemOf(() => card(specWith({ gasVolume: volume(1, 'L') }), { ...given, language: half as never })).path,
    ).toBe('language.settling');
    expect(Object.keys(settling).length).toBeGreaterThan(0);
  });
});
