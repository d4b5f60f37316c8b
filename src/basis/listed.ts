import { fail, quote } from './fault.js';
import { indexed } from './indexed.js';
import { tooLong } from './problem.js';

/** How many a list may hold, and of what, for the sentence that refuses a longer one. */
export interface Bound {
  readonly most: number;
  readonly what: string;
}

/**
 * A list that a caller gives, made one of our own. Its length is looked at once, before anything in it is, and each item is
 * read once, by index: a list may say that it is as long as the language allows, say something else the next time it is
 * asked, or have an iterator that never ends.
 *
 * @param path of the list, for the fault
 * @throws {@link Fault} `too long`
 */
export function listed<T, Own>(
  list: readonly T[],
  { most, what }: Bound,
  path: string,
  own: (item: T, i: number) => Own,
): Own[] {
  const length: unknown = list.length;
  if (typeof length !== 'number' || !(length <= most))
    fail(tooLong, path, `${quote(length)} ${what}`, { most: String(most), what });
  return indexed(length, (i) => own(list[i] as T, i));
}
