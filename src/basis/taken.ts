import { under } from './fault.js';
import { gives } from './has.js';
import { listed, type Bound } from './listed.js';

/**
 * The fields that are taken of an object, by name: a value as it is, an object with fields of its own, or a list of such
 * with the most that it may hold.
 */
export interface Fields {
  readonly [name: string]: Field;
}

type Field = 'as it is' | Fields | ListOf;
type ListOf = readonly [of: 'as it is' | Fields, bound: Bound];

/**
 * A copy of what a caller gives, each of these fields read once and nothing else taken, so that what is checked is what is
 * used. A value with none of the fields stays as it is: it is a quantity or a word, or is refused where it is checked.
 *
 * @throws {@link Fault} `too long`, at the path of the list in what is given
 */
export function taken<T>(given: T, fields: Fields): T {
  return copyOf(given, fields) as T;
}

function copyOf(given: unknown, fields: Field): unknown {
  if (fields === 'as it is' || typeof given !== 'object' || given === null) return given;
  if (isListOf(fields)) {
    const [of, bound] = fields;
    return Array.isArray(given)
      ? listed(given, bound, '', (item, i) => under(`[${i}]`, () => copyOf(item, of)))
      : given;
  }
  const present = Object.entries(fields).filter(([name]) => gives(given, name));
  if (present.length === 0) return given;
  const own = given as Readonly<Record<string, unknown>>;
  // Without a prototype: what all objects inherit under the name of a field that was left out is nothing that was given.
  const copy = { __proto__: null } as unknown as Record<string, unknown>;
  for (const [name, inner] of present)
    copy[name] = inner === 'as it is' ? own[name] : under(name, () => copyOf(own[name], inner));
  return copy;
}

function isListOf(fields: Field): fields is ListOf {
  return Array.isArray(fields);
}
