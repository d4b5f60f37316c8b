import { GERMAN_CAUTIONS } from './german-cautions.js';
import { GERMAN_DERIVATION } from './german-derivation.js';
import { GERMAN_EXERCISE } from './german-exercise.js';
import { GERMAN_DOCUMENTS } from './german-documents.js';
import { GERMAN_PROBLEMS } from './german-problems.js';
import { GERMAN_ABOUT, GERMAN_SOURCES } from './german-sources.js';
import { GERMAN_SETTLING, GERMAN_STEPS, GERMAN_SUPPLY } from './german-steps.js';
import {
  GERMAN_CAUSES,
  GERMAN_CORRECTED,
  GERMAN_EXPLAINED,
  GERMAN_REASONS,
  GERMAN_SETTLED,
  GERMAN_SLIPS,
  GERMAN_UNCERTAINTY,
} from './german-words.js';
import type { Language } from './language.js';

/**
 * German, complete: every code of the library, the documents, and the sources of relations. The decimal sign is a comma;
 * what a program has to spell (names of fields, words of the interface) stays as it is.
 *
 * @example
 * ```ts
 * german.words.causes['valve not open']; // => 'das Gasventil oder das Ventil der Füllvorrichtung ist nicht geöffnet'
 * german.numbers.decimal; // => ','
 * ```
 */
export const german: Language = {
  code: 'de',
  numbers: {
    decimal: ',',
    basis: { gauge: 'Überdruck', absolute: 'absolut', difference: 'Differenz' },
    atState: 'bei {temperature} und {pressure}',
  },
  words: {
    reasons: GERMAN_REASONS,
    causes: GERMAN_CAUSES,
    cautions: GERMAN_CAUTIONS,
    problems: GERMAN_PROBLEMS,
    uncertainty: GERMAN_UNCERTAINTY,
    settled: GERMAN_SETTLED,
    slips: GERMAN_SLIPS,
    supply: GERMAN_SUPPLY,
    explained: GERMAN_EXPLAINED,
    corrected: GERMAN_CORRECTED,
  },
  settling: GERMAN_SETTLING,
  steps: GERMAN_STEPS,
  severities: { danger: 'Gefahr', caution: 'Vorsicht', note: 'Hinweis' },
  document: GERMAN_DOCUMENTS,
  derivation: GERMAN_DERIVATION,
  exercise: GERMAN_EXERCISE,
  sources: GERMAN_SOURCES,
  about: GERMAN_ABOUT,
};
