// How wide the columns of a table are, in letters, so that together they fit.
import { widthOf } from './width.js';

/** Widths that together fit: the widest column gives first, and no word is broken before every column has given. */
export function columnWidths(cells: readonly (readonly string[])[], room: number): readonly number[] {
  const widths = naturalWidths(cells);
  const words = widths.map((_, i) =>
    Math.max(LEAST, ...cells.flatMap((row) => (row[i] ?? '').split(' ').map(widthOf))),
  );
  for (const least of [words, words.map((one) => Math.min(one, LONG)), widths.map(() => LEAST)]) {
    let over = sumOf(widths) - room;
    while (over > 0) {
      const spare = widths.map((one, i) => (one > (least[i] ?? LEAST) ? one : 0));
      const most = Math.max(...spare);
      if (most === 0) break;
      widths[spare.indexOf(most)] = most - 1;
      over -= 1;
    }
  }
  return widths;
}

/** Widths in which no cell is broken. */
export function naturalWidths(cells: readonly (readonly string[])[]): number[] {
  return (cells.at(0) ?? []).map((_, i) => Math.max(1, ...cells.map((row) => widthOf(row[i] ?? ''))));
}

export function sumOf(widths: readonly number[]): number {
  return widths.reduce((all, one) => all + one, 0);
}

export const LEAST = 6;
/** A longer word is somebody's name: it is broken before others are. */
const LONG = 16;
