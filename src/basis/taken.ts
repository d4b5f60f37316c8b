import { indexed } from './indexed.js';
import { gives } from './has.js';

/** The fields that are taken of an object, by name: a value as it is, an object with fields of its own, or a list of such. */
export interface Fields {
  readonly [name: string]: 'as it is' | Fields | readonly [Fields | 'as it is'];
}

/**
 * A copy of what a caller gives, each of these fields read once and nothing else taken, so that what is checked is what is
 * used. A value with none of the fields stays as it is: it is a quantity or a word, or is refused where it is checked.
 */
export function taken<T>(given: T, fields: Fields): T {
  return copyOf(given, fields) as T;
}

function copyOf(given: unknown, fields: Fields[string]): unknown {
  if (fields === 'as it is' || typeof given !== 'object' || given === null) return given;
  if (isListOf(fields)) {
    if (!Array.isArray(given)) return given;
    const list: readonly unknown[] = given;
    // By index: the list may be one whose iterator never ends.
    return indexed(list.length, (i) => copyOf(list[i], fields[0]));
  }
  const present = Object.entries(fields).filter(([name]) => gives(given, name));
  if (present.length === 0) return given;
  const own = given as Readonly<Record<string, unknown>>;
  // Without a prototype: what all objects inherit under the name of a field that was left out is nothing that was given.
  const copy = { __proto__: null } as unknown as Record<string, unknown>;
  for (const [name, inner] of present) copy[name] = copyOf(own[name], inner);
  return copy;
}

function isListOf(fields: Fields[string]): fields is readonly [Fields | 'as it is'] {
  return Array.isArray(fields);
}
