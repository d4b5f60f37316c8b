// Lines made of a sentence of the catalogue and what is filled into it.
import { localised } from '../languages/format.js';
import type { Language } from '../languages/language.js';
import type { Inline, Line } from './block.js';
import { pieces } from './given.js';

/** A sentence with its names in braces filled in; what other people wrote stays marked as theirs. */
export function lineOf(template: string, values: Readonly<Record<string, Line>>): Line {
  const parts = template.split(/\{(\w+)\}/);
  return parts.flatMap((part, i): readonly Inline[] => {
    if (i % 2 === 1) return Object.hasOwn(values, part) ? pieces(values[part] ?? '') : [`{${part}}`];
    return part === '' ? [] : [part];
  });
}

/** Lines one after the other. */
export function joined(lines: readonly Line[], between: string): Line {
  return lines.flatMap((line, i) => [...(i === 0 ? [] : [between]), ...pieces(line)]);
}

/** A text of the library's, with numbers and words as the language has them. */
export type Say = (written: string) => string;

export function sayIn(language: Language): Say {
  return (written) => localised(written, language);
}
