// Three ways to ask for a field, none of which sees what a program has put on Object.prototype:
//   has       of a value of ours, which has its fields itself: which form of a union it is
//   gives     of a caller's value, which may be of a class that gives its fields by getters
//   optional  the field of either, where it may be left out; read once
// Fields that must be there are read as usual: a value's own come first, and one that is missing is refused where it is
// checked, whatever all objects inherit.

/** The members of a union that can have a field; where the type names none, the value with that field. */
type Having<T, K extends PropertyKey> = T extends unknown ? (K extends keyof T ? T : never) : never;

/**
 * Whether a value of ours has a field. Unlike `in` it does not see what a program has put on `Object.prototype`, so that no
 * such thing makes one form of a value another.
 */
export function has<T extends object, K extends PropertyKey>(
  value: T,
  key: K,
): value is [Having<T, K>] extends [never] ? T & Readonly<Record<K, unknown>> : Having<T, K> {
  return Object.hasOwn(value, key);
}

/** A field of a caller's value, where that has one of its own or of its class. */
export function optional<T extends object, K extends keyof T & string>(value: T, name: K): T[K] | undefined {
  return gives(value, name) ? value[name] : undefined;
}

/**
 * Whether a caller's value has a field: its own, or of its class. What stands on `Object.prototype` is every object's and so
 * nothing that the caller gave.
 */
export function gives<T extends object, K extends string>(
  given: T,
  name: K,
): given is T & Readonly<Record<K, unknown>> {
  // eslint-disable-next-line no-restricted-syntax -- a class gives its fields by getters that stand on its prototype
  return Object.hasOwn(given, name) || (name in given && !(name in Object.prototype));
}
