// Limits of length that look at what has one. zod's own look at the `length` of anything, and a document may hold an
// object with a field of that name, which cannot even be compared with a number.
import * as z from 'zod/mini';

/** From so many characters (Unicode code points) to so many, for a text. */
export function characters(least: number, most: number): readonly Limit[] {
  return limits((value) => typeof value === 'string', least, most);
}

/** From so many entries to so many, for a list. */
export function entries(least: number, most: number): readonly Limit[] {
  return limits((value) => Array.isArray(value), least, most);
}

type Limit = ReturnType<typeof z.minLength> | ReturnType<typeof z.maxLength>;

function limits(has: (value: unknown) => boolean, least: number, most: number): readonly Limit[] {
  const checks = [...(least > 0 ? [z.minLength(least)] : []), z.maxLength(most)];
  for (const { _zod: check } of checks) check.def.when = ({ value }) => has(value);
  return checks;
}
