// Every code of the library has its words in every language, with the same names to be filled in, and nothing is left over.
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check, judge, why, type Reading, type Step } from 'isochore';
import { reportRound } from 'isochore/record';
import { english, german, type Language } from 'isochore/worked';
import type { Relation } from '../../src/basis/relation.js';
import { aboutIn, localised, sourceIn } from '../../src/worked/languages/format.js';
import { ROOT } from '../docs/examples.js';
import { bar, specWith, readingWith } from '../support/accumulator.js';
import { randomBy } from '../support/random.js';
import { exampleRound } from '../support/round.js';
import { CASES } from './derivation-cases.js';

/** Every text of a language, by its path. */
function textsOf(value: unknown, path = ''): Map<string, string> {
  if (typeof value === 'string') return new Map([[path, value]]);
  return new Map(Object.entries(value as object).flatMap(([key, inner]) => [...textsOf(inner, `${path}/${key}`)]));
}

const bracesOf = (text: string): string[] => (text.match(/\{\w+\}/g) ?? []).sort();
/** Without what stands under keys of its own: the sources of relations, and what a step is about. */
const coded = (language: Language): unknown => ({ ...language, sources: {}, about: {} });

const ENGLISH = textsOf(coded(english));
const GERMAN = textsOf(coded(german));

describe('German', () => {
  test('has the texts of English, each under its code, and no others', () => {
    expect([...GERMAN.keys()].sort()).toEqual([...ENGLISH.keys()].sort());
    expect(ENGLISH.size).toBeGreaterThan(400);
  });

  test.each([...ENGLISH])('%s has the same names to be filled in', (path, text) => {
    expect(bracesOf(GERMAN.get(path) ?? '')).toEqual(bracesOf(text));
  });

  test('is not English that was left as it was', () => {
    // Filled in as it is, or the same word in both.
    const SAME = [/^(\{\w+\}|\W)+$/, /^isochore \{version\}$/, /^\{what\}/];
    const same = [...GERMAN].filter(
      ([path, text]) => ENGLISH.get(path) === text && !SAME.some((one) => one.test(text)),
    );
    expect(same.map(([path]) => path)).toEqual([]);
  });

  test('ends where English ends: with a full stop, or without', () => {
    const differ = [...GERMAN].filter(([path, text]) => text.endsWith('.') !== (ENGLISH.get(path) ?? '').endsWith('.'));
    expect(differ).toEqual([['/numbers/decimal', ',']]);
  });

  test('stands in the report that is made with its words', () => {
    const report = reportRound(exampleRound(), { problems: 'report the rest', words: german.words });
    expect(report.accumulators[1]?.asFound.why).toMatch(/^um 9\.6 bar zu wenig: 143\.0 bar gauge abgelesen, Sollwert/);
    expect(report.cautions.every(({ code, text }) => text === german.words.cautions[code])).toBe(true);
  });
});

describe('sources of relations', () => {
  const files = readdirSync(`${ROOT}/src`, {
    recursive: true,
    encoding: 'utf8',
  });
  const isRelation = (value: unknown): value is Relation =>
    typeof value === 'object' && value !== null && 'formula' in value && 'gives' in value && 'from' in value;

  test('stand in German, all of them, and none that there is not', async () => {
    const modules = await Promise.all(
      files
        .filter((name) => name.endsWith('.ts'))
        .map((file) => import(`${ROOT}/src/${file}`) as Promise<Record<string, unknown>>),
    );
    const relations = modules.flatMap((exported) => Object.values(exported)).filter(isRelation);
    const sources = new Set(relations.map(({ source }) => source));
    expect(sources.size).toBeGreaterThan(40);
    expect(Object.keys(german.sources).sort()).toEqual([...sources].sort());
  });

  test('are said as they stand where a language has none', () => {
    expect(sourceIn('the gas model', english)).toBe('the gas model');
    expect(sourceIn('the gas model', german)).toBe('das Gasmodell');
    expect(sourceIn('toString', german)).toBe('toString');
  });
});

describe('what a step is about', () => {
  test('stands in German, for every step of a check', () => {
    const abouts = new Set<string>();
    for (const pressure of [143, 152, 170]) {
      const reading: Reading = readingWith({ pressure: bar(pressure) });
      check(specWith(), reading, (step: Step) => abouts.add(step.about));
    }
    expect(abouts.size).toBeGreaterThan(5);
    expect([...abouts].filter((about) => aboutIn(about, german) === about)).toEqual([]);
  });

  test.each(CASES)('stands in German, for every step of %s', (_, derive) => {
    const random = randomBy(8);
    const abouts = new Set<string>();
    for (let i = 0; i < 12; i += 1) for (const { about } of derive(random).steps) abouts.add(about);
    expect(abouts.size).toBeGreaterThan(0);
    expect([...abouts].filter((about) => aboutIn(about, german) === about)).toEqual([]);
  });

  test('is found by its pattern', () => {
    expect(aboutIn('target, as stated', german)).toBe('Sollwert, wie angegeben');
    expect(aboutIn('after 3 min', german)).toBe('nach 3 min');
    expect(aboutIn('after 2.5 min', german)).toBe('nach 2,5 min');
    expect(aboutIn('filling 2', german)).toBe('Füllung 2');
    expect(aboutIn('something else, as stated', german)).toBe('something else, wie angegeben');
    expect(aboutIn('something else', german)).toBe('something else');
    expect(aboutIn('after 3 min', english)).toBe('after 3 min');
  });
});

describe('numbers', () => {
  test.each([
    ['153.1 bar gauge', '153,1 bar Überdruck'],
    ['1013.25 hPa absolute', '1013,25 hPa absolut'],
    ['-0.5 bar difference', '-0,5 bar Differenz'],
    ['143 bar', '143 bar'],
    ['0.045 m3 at 0 °C and 101.325 kPa absolute', '0,045 m3 bei 0 °C und 101,325 kPa absolut'],
    ['version 1.2.3', 'version 1.2.3'],
    ['by 9.6. Then', 'by 9,6. Then'],
  ])('%s is %s in German, and stays as it is in English', (written, inGerman) => {
    expect(localised(written, german)).toBe(inGerman);
    expect(localised(written, english)).toBe(written);
  });

  test('a sentence of a verdict has them throughout', () => {
    const spec = specWith();
    const reading = readingWith({ pressure: bar(143) });
    const said = localised(why(spec, reading, judge(spec, reading), german.words), german);
    expect(said).toMatch(/^um 9,6 bar zu wenig: 143,0 bar Überdruck abgelesen/);
    expect(said).not.toMatch(/\d\.\d|gauge/);
  });
});
