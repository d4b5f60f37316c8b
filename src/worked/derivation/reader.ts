// For whom a derivation is written: language, units, how much of it.
import { fail, quote } from '../../basis/fault.js';
import { outsideBounds, unknownWord, wrongKind } from '../../basis/problem.js';
import { MASS, PRESSURE, scaleOf, TEMPERATURE, VOLUME } from '../../quantity/unit.js';
import { neededLanguage } from '../languages/format.js';
import type { Language } from '../languages/language.js';
import type { ReaderUnits } from './figures.js';

/** How much is told: the result; each step with its numbers; every term of the equation and every digit. */
export type Detail = 'answer' | 'steps' | 'everything';

/** For whom a derivation is written. */
export interface Reader {
  readonly language: Language;
  /** Units to read in. Where a formula holds in SI units alone, it is shown in them, and the conversion beside it. */
  readonly units: ReaderUnits;
  readonly detail: Detail;
  /** Significant digits of results at `answer` and `steps`: a whole number from 4 to 12; 6 unless said otherwise. */
  readonly digits?: number;
}

/** A reader as handed in, read once. */
export function neededReader(reader: Reader): Required<Reader> {
  if (typeof reader !== 'object' || reader === null)
    fail(wrongKind, 'reader', quote(reader), { kind: 'language, units and detail', maker: 'an object of them' });
  const { language, units, detail, digits = 6 } = reader;
  if (typeof units !== 'object' || units === null)
    fail(wrongKind, 'reader.units', quote(units), { kind: 'units to read in', maker: 'an object of them' });
  const { pressure, temperature, volume, mass } = units;
  scaleOf(PRESSURE, pressure, 'reader.units.pressure');
  scaleOf(TEMPERATURE, temperature, 'reader.units.temperature');
  scaleOf(VOLUME, volume, 'reader.units.volume');
  scaleOf(MASS, mass, 'reader.units.mass');
  if (detail !== 'answer' && detail !== 'steps' && detail !== 'everything')
    fail(unknownWord, 'reader.detail', quote(detail), { words: 'answer, steps or everything' });
  if (!(Number.isInteger(digits) && digits >= 4 && digits <= 12))
    fail(outsideBounds, 'reader.digits', quote(digits), { bounds: 'a whole number from 4 to 12' });
  return { language: neededLanguage(language), units: { pressure, temperature, volume, mass }, detail, digits };
}
