// Codes and words that a caller gives: never trusted to be what their types say.
import { fail, quote } from './fault.js';
import { gives } from './has.js';
import { unknownWord, wordsUnsound } from './problem.js';

/** Refuses what is no code of a catalogue. */
export function needCode(catalogue: object, code: string, path: string): void {
  if (typeof code === 'string' && Object.hasOwn(catalogue, code)) return;
  fail(unknownWord, path, quote(code), { words: Object.keys(catalogue).join(' or ') });
}

/** A field of words of the caller's own, or of a section of them, where there is one. */
export function ownField(words: unknown, field: string, path: string): unknown {
  if (words === undefined) return undefined;
  if (typeof words !== 'object' || words === null)
    return fail(wordsUnsound, path, quote(words), { wanted: 'an object of texts' });
  return gives(words, field) ? words[field] : undefined;
}

/** A text of the caller's own, where there is one. */
export function ownText(text: unknown, path: string): string | undefined {
  if (text === undefined || typeof text === 'string') return text;
  return fail(wordsUnsound, path, quote(text), { wanted: 'a text' });
}
