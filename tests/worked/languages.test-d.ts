// A language without the words of a code does not compile.
import { expectTypeOf, test } from 'vitest';
import type { Words } from 'isochore';
import { german, type EveryWord, type Language } from 'isochore/worked';

test('the words of a language are words for a report', () => {
  expectTypeOf<EveryWord>().toExtend<Words>();
  expectTypeOf(german).toExtend<Language>();
});

type Less<T, K extends keyof T> = Omit<T, K>;

test('a code without words is refused', () => {
  expectTypeOf<Less<EveryWord['reasons'], 'below the lower limit'>>().not.toExtend<EveryWord['reasons']>();
  expectTypeOf<Less<EveryWord['problems'], 'liquid'>>().not.toExtend<EveryWord['problems']>();
  expectTypeOf<Less<EveryWord['supply'], 'no bottle to use'>>().not.toExtend<EveryWord['supply']>();
  expectTypeOf<Less<Language['document'], 'separators'>>().not.toExtend<Language['document']>();
  expectTypeOf<Less<Language['document']['round'], 'partial'>>().not.toExtend<Language['document']['round']>();
});

test('so is one that there is not', () => {
  // @ts-expect-error no cause has this code
  const causes: EveryWord['causes'] = { ...german.words.causes, 'valve lost': 'das Ventil fehlt' };
  expectTypeOf(causes).not.toBeAny();
});
