// How much room text takes in columns of a terminal, and how it is broken to fit.

/** Columns that a text takes: none for marks that combine with the letter before, two for wide East Asian letters (UAX 11). */
export function widthOf(text: string): number {
  let width = 0;
  for (const letter of text) width += /[\p{Mn}\p{Me}\p{Cf}]/u.test(letter) ? 0 : WIDE.test(letter) ? 2 : 1;
  return width;
}

const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;

/** A text filled up to a width. */
export function padded(text: string, width: number, align: 'left' | 'right'): string {
  const fill = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'left' ? text + fill : fill + text;
}

/** Lines of at most that width, broken between words, and within a word that is longer than a line. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((one) => broken(one, width))) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

function broken(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of word) {
    if (part !== '' && widthOf(part) + widthOf(letter) > width) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  return [...parts, part];
}
