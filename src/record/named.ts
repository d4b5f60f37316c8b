// Elements of a document that are known by their names: which names stand where, and which stand more than once.
import { cut, problem, quote, type Problem } from '../basis/fault.js';
import { duplicateName } from '../basis/problem.js';
import { wellFormed } from '../basis/well-formed.js';
import { valueAt } from './problems.js';

/** The name of an element as its problems quote it; what compares names uses the whole of it. */
export function shownName(name: string): string;
export function shownName(name: string | undefined): string | undefined;
export function shownName(name: string | undefined): string | undefined {
  return name === undefined ? undefined : wellFormed(cut(name));
}

export function nameOf(raw: unknown): string | undefined {
  const name = valueAt(raw, ['name']);
  return typeof name === 'string' ? name : undefined;
}

/** Names that stand more than once: none of their bearers can be told from the others. */
export function repeatedNames(list: readonly unknown[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const raw of list) {
    const name = nameOf(raw);
    if (name === undefined) continue;
    if (seen.has(name)) repeated.add(name);
    seen.add(name);
  }
  return repeated;
}

export function duplicate(what: string, name: string): Problem {
  return problem(duplicateName, 'name', quote(name), { what });
}
