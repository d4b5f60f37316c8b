// Text that the library did not write. It may be hostile, or simply not Latin.
import type { Inline, Line } from './block.js';

/** Marks text as other people's. */
export function given(text: string): Inline {
  return { kind: 'given', text };
}

/** The pieces of a line. */
export function pieces(line: Line): readonly Inline[] {
  return typeof line === 'string' ? [line] : line;
}

/**
 * Text without anything that steers: white space of any kind becomes one space; control characters, overrides and isolates
 * of direction, halves of a surrogate pair and other invisible characters become U+FFFD. The joiners that scripts need
 * (U+200C, U+200D) and the marks of direction that cannot open anything (U+200E, U+200F, U+061C) stay.
 */
export function printable(text: string): string {
  return text
    .replace(/[\s\u0085]+/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, (found) => (KEPT.includes(found) ? found : '\uFFFD'));
}

const KEPT = '\u200C\u200D\u200E\u200F\u061C';

/** Whether a text has characters that run from right to left: the ranges that Unicode keeps for such scripts (UAX 9). */
export function runsLeft(text: string): boolean {
  return /[\u0590-\u08FF\u200F\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u.test(text);
}

/** Other people's text as it is shown: a dash for one that says nothing, so that its place is not empty. */
export function shown(text: string): string {
  const clean = printable(text);
  return clean.trim() === '' ? '–' : clean;
}

/** The same as it goes into plain text and Markdown: isolated by U+2068 and U+2069, if it runs left. */
export function isolated(text: string): string {
  const clean = shown(text);
  return runsLeft(clean) ? `\u2068${clean}\u2069` : clean;
}
