import { expect, test } from 'vitest';
import { cautionsOf } from '../../src/basis/caused.js';

// A number about safety never stands without it, and it has the last word.
test('whatever the cautions of a result are, the last one is that the maker decides', () => {
  for (const codes of [[], ['asphyxiation'], ['asphyxiation', 'measure oxygen']] as const) {
    const cautions = cautionsOf('purging', codes);
    expect(cautions.map(({ code }) => code)).toEqual([...codes, 'maker decides']);
    expect(new Set(cautions.map(({ cause }) => cause))).toEqual(new Set(['purging']));
    for (const { text } of cautions) expect(text).toMatch(/^[A-Z].*\.$/s);
  }
});
