// Numbers and words as a language has them.
import { fail, quote } from '../../basis/fault.js';
import { unknownWord } from '../../basis/problem.js';
import { refuse, taken, text, word, type Take } from '../door.js';
import { english } from './english.js';
import type { Language } from './language.js';

/**
 * A text of the library's with its numbers and pressures as the language has them: `153.1 bar gauge` is
 * `153,1 bar Überdruck`. Only for texts that hold nothing of other people's.
 */
export function localised(written: string, { numbers }: Language): string {
  const { decimal, basis, atState } = numbers;
  return written
    .replace(STATE, (_, temperature: string, pressure: string) =>
      atState.replace('{temperature}', () => temperature).replace('{pressure}', () => pressure),
    )
    .replace(/(?<![\d.])(\d+)\.(\d+)(?!\d|\.\d)/g, `$1${decimal}$2`)
    .replace(/ (gauge|absolute|difference)\b/g, (_, word: keyof typeof basis) => ` ${basis[word]}`);
}

/** As a normal volume says its state: `at 0 °C and 101.325 kPa absolute`. */
const STATE = /at (-?[\d.]+ (?:°C|°F|K)) and ([\d.]+ \w+ absolute)/g;

/** Where a relation comes from, in the language. */
export function sourceIn(source: string, { sources }: Language): string {
  return own(sources, source) ?? source;
}

/** Whose values a step shows, in the language: `after 3 min` and `target, as stated` by their patterns. */
export function aboutIn(about: string, language: Language): string {
  const exact = own(language.about, about);
  if (exact !== undefined) return exact;
  // What stands behind the last comma says more of what stands before it: `target, as stated`, `stop, adiabatic, stage 2`.
  const [, before, last = ''] = /^(.*), ([^,]+)$/.exec(about) ?? [];
  const count = /\d+$/.exec(last)?.[0] ?? '';
  const pattern = own(language.about, `{about}, ${last.replace(/\d+$/, '{n}')}`);
  if (before !== undefined && pattern !== undefined)
    return pattern.replace('{about}', () => aboutIn(before, language)).replace('{n}', count);
  const number = /\d+(\.\d+)?/.exec(about)?.[0];
  const numbered = number === undefined ? undefined : own(language.about, about.replace(number, '{n}'));
  return numbered === undefined || number === undefined ? about : numbered.replace('{n}', localised(number, language));
}

function own(record: Readonly<Record<string, string>>, key: string): string | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}

/** A language as it was handed in, every text of it read once: what English has, and texts of sources as there are. */
export function neededLanguage(language: unknown): Language {
  // The library's own are known; whoever makes another has it checked.
  return language === english ? english : taken(takeLanguage(), language, 'language');
}

function takeLanguage(): Take<Language> {
  const all = like(english);
  return (given, path, left) => {
    const taken = all(given, path, left) as Language;
    if (taken.numbers.decimal !== '.' && taken.numbers.decimal !== ',')
      fail(unknownWord, `${path}.numbers.decimal`, quote(taken.numbers.decimal), { words: '. or ,' });
    return taken;
  };
}

/** Whatever has a text where the pattern has one. */
function like(pattern: unknown): Take<unknown> {
  if (typeof pattern === 'string') return word;
  const entries = Object.entries(pattern as Readonly<Record<string, unknown>>);
  if (Array.isArray(pattern)) {
    return (given, path, left) =>
      Array.isArray(given) && given.length === pattern.length
        ? entries.map(([i], index) => word((given as readonly unknown[])[index], `${path}[${i}]`, left))
        : refuse('a list of texts', given, path);
  }
  if (entries.length === 0) return texts;
  const takes = entries.map(([name, inner]) => [name, like(inner)] as const);
  return (given, path, left) => {
    if (typeof given !== 'object' || given === null) return refuse('words of a language', given, path);
    const own = given as Readonly<Record<string, unknown>>;
    return Object.fromEntries(takes.map(([name, take]) => [name, take(own[name], `${path}.${name}`, left)]));
  };
}

/** Texts under whatever keys there are. */
const texts: Take<unknown> = (given, path, left) => {
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    return refuse('texts by their keys', given, path);
  return Object.fromEntries(
    Object.entries(given as Readonly<Record<string, unknown>>).map(([key, value]) => [
      key,
      text(value, `${path}.${key}`, left),
    ]),
  );
};
