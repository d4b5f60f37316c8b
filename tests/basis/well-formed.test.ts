// Against the engine's encoder of UTF-8, which replaces each half of a surrogate pair (WHATWG Encoding, 4.3: U+FFFD).
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isWellFormed, wellFormed } from '../../src/basis/well-formed.js';

const throughUtf8 = (text: string): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(new TextEncoder().encode(text)); // prettier-ignore

/** Halves of pairs among whole ones, in any order. */
const anyText = fc.string({ unit: fc.constantFrom('a', '', '\u{1f600}', '\ud83d', '\ude00', '\ufffd', '\ufeff') });

test('a text is well formed if it comes back from UTF-8 as it was', () => {
  fc.assert(fc.property(anyText, (text) => isWellFormed(text) === (throughUtf8(text) === text)));
});

test('what is not comes to be as UTF-8 has it', () => {
  fc.assert(fc.property(anyText, (text) => wellFormed(text) === throughUtf8(text)));
  expect(wellFormed('a\ud83d')).toBe('a\ufffd');
});
