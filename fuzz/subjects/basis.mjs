// Faults: told from other errors, and put in words.
import { Fault } from 'isochore';
import { CAUSES, CAUTION_CODES } from 'isochore/record';
import fc from 'fast-check';
import { anyText, fields, junk, list, maybe, one, orNothing, plain, stock } from '../draw.mjs';

/** @import { Subject } from './subject.mjs' */

const text = plain(anyText);
const problem = fields({
  code: one('negative', 'wrong kind', 'too large'),
  path: text,
  found: text,
  wanted: text,
  remedy: text,
  about: maybe(text),
});

const sentence = one('ein Text', 'at least {least}, at most {most}', '{least', '{}', '{nothing}', '$& {least}', '');
const words = fields({
  problems: maybe(fields({ negative: fields({ wanted: sentence, remedy: sentence }) })),
  causes: maybe(fields({ 'valve not open': text })),
});
const filled = fields({
  code: one('negative'),
  path: text,
  found: text,
  wanted: text,
  remedy: text,
  values: fields({ least: text, most: maybe(text) }),
});

/** @param {unknown} answer */
const isText = (answer) => (typeof answer === 'string' ? undefined : 'no text');

/** @type {readonly Subject[]} */
export const BASIS = [
  {
    name: 'isFault',
    args: fc.tuple(
      fc.oneof(junk, fc.constantFrom(stock('a Fault'), stock('a Fault of the other build'), stock('a revoked proxy'))),
    ),
    holds: (answer) => (typeof answer === 'boolean' ? undefined : 'neither true nor false'),
    // It stands in catch blocks, where a second error would hide the first.
    neverThrows: true,
  },
  {
    name: 'describe',
    args: fc.tuple(problem),
    echoes: true,
    holds: (answer) => (typeof answer === 'string' && answer !== '' ? undefined : 'no text'),
  },
  {
    name: 'Fault',
    args: fc.tuple(list(problem)),
    echoes: true,
    call: (problems) => new Fault(/** @type {[import('isochore').Problem]} */ (problems)).message,
    holds: isText,
  },
  { name: 'inWords', args: fc.tuple(fc.oneof(filled, problem), words), echoes: true },
  { name: 'causeText', args: fc.tuple(one(...CAUSES), orNothing(words)), echoes: true, holds: isText },
  {
    name: 'caution',
    args: fc.tuple(one(...CAUTION_CODES), orNothing(fields({ asphyxiation: text, 'nitrogen only': maybe(text) }))),
    echoes: true,
    holds: (answer) => isText(/** @type {import('isochore').Caution} */ (answer).text),
  },
];
