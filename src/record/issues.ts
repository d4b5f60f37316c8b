// What zod says of a value, in a program whose objects inherit whatever it has put on Object.prototype. zod looks for
// fields as JavaScript does, so that it would find such a field in every object of a document.
import type * as z from 'zod/mini';
import { fail, quote } from '../basis/fault.js';
import { inheritedByAll } from '../basis/problem.js';

/** What zod finds wrong with a value. */
export type Issue = z.core.$ZodIssue;

/** The names that Object.prototype has by itself (ECMA-262, 20.1.3 and B.2.2). */
const OF_THE_LANGUAGE =
  /^(__(proto|(define|lookup)[GS]etter)__|constructor|hasOwnProperty|isPrototypeOf|propertyIsEnumerable|(to|toLocale)String|valueOf)$/;

/** Names under which zod 4 takes what all objects inherit for its own, and finds less, or finds it elsewhere. */
const TAKEN_BY_ZOD: readonly PropertyKey[] = ['memo', 'coerce', 'when', 'path'];

/**
 * What zod finds wrong with JSON data. What all objects inherit is nothing that the data holds.
 *
 * @throws {@link Fault} `inherited by all objects` where a field of that kind has a name that zod's own objects use
 */
export function issuesOf(schema: z.ZodMiniType, data: unknown): readonly Issue[] {
  const inherited = inheritedFields();
  if (inherited.length === 0) return run(schema, data);
  if (inherited.some((key) => TAKEN_BY_ZOD.includes(key))) refuse(inherited);
  try {
    return run(schema, ownOf(data));
  } catch {
    return refuse(inherited); // under another name that zod uses
  }
}

/** Refuses to ask zod while all objects inherit anything that the language has not put there. */
export function needNothingInherited(): void {
  const inherited = inheritedFields();
  if (inherited.length > 0) refuse(inherited);
}

function inheritedFields(): readonly PropertyKey[] {
  return Reflect.ownKeys(Object.prototype).filter((key) => !OF_THE_LANGUAGE.test(String(key)));
}

function refuse(inherited: readonly PropertyKey[]): never {
  return fail(inheritedByAll, '', inherited.map((key) => quote(String(key))).join(', '));
}

/** Not by `safeParse`: an error of zod's is made with descriptors, which inherit too, and nothing of it is used. */
function run(schema: z.ZodMiniType, value: unknown): readonly Issue[] {
  const context: z.core.ParseContextInternal = { __proto__: null, async: false } as never;
  const payload: z.core.ParsePayload = { __proto__: null, value, issues: [] } as never;
  const { issues } = schema._zod.run(payload, context) as z.core.ParsePayload;
  return issues.map((issue) => ({ ...issue, path: Object.hasOwn(issue, 'path') ? issue.path : [] })) as Issue[];
}

/** The same data in objects that inherit nothing. */
function ownOf(data: unknown): unknown {
  if (typeof data !== 'object' || data === null) return data;
  if (Array.isArray(data)) return data.map(ownOf);
  const own = Object.create(null) as Record<string, unknown>;
  for (const [key, value] of Object.entries(data)) own[key] = ownOf(value);
  return own;
}
