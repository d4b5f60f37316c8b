import { indexed } from '../basis/indexed.js';
import type * as z from 'zod/mini';
import { problem, quote, type Problem } from '../basis/fault.js';
import {
  basisMissing,
  forbiddenKey,
  missing,
  negative,
  notADate,
  notAList,
  notANumber,
  notAnObject,
  notAText,
  notATime,
  tooLong,
  tooShort,
  unknownField,
  unknownUnit,
  unknownVersion,
  unknownWord,
  wrongBasis,
  wrongShape,
} from '../basis/problem.js';
import { wellFormed } from '../basis/well-formed.js';
import { issuesOf, type Issue } from './issues.js';

/** Most problems that a report lists; the rest are counted. */
export const MOST_LISTED = 1000;

/** A part of a document: its raw value, and the problems found in it so far, with paths relative to it. */
export interface Part {
  readonly raw: unknown;
  readonly problems: Problem[];
}

/** The problems of a document: listed up to a limit, counted beyond it. */
export interface Findings {
  readonly listed: Problem[];
  found: number;
  /** Paths of specifications, instruments, groups and accumulators that hold a key twice: what they say is not certain. */
  readonly tainted: Set<string>;
}

export function emptyFindings(): Findings {
  return { listed: [], found: 0, tainted: new Set() };
}

/** Marks the element of the document that a path lies in. */
export function taint(findings: Findings, path: string): void {
  const element =
    /^\$\.((?:tables|specifications|instruments)\[\d+\]|groups\[\d+\](\.accumulators\[\d+\])?)(?=[.[])/.exec(path);
  findings.tainted.add(element?.[0] ?? '$');
}

/** Adds problems of one element of the document, their paths put under the element's. */
export function add(findings: Findings, path: string, problems: readonly Problem[], about?: string): void {
  findings.found += problems.length;
  for (const problem of problems) {
    if (findings.listed.length >= MOST_LISTED) return;
    const at = problem.path === '' ? path : `${path}.${problem.path}`;
    const found = wellFormed(problem.found); // a parser may quote half a surrogate pair
    const own = { ...problem, path: at, found };
    findings.listed.push(about === undefined ? own : { ...own, about: wellFormed(about) });
  }
}

/** What zod says about a shape, as problems with paths relative to the value. */
export function shapeProblems(schema: z.ZodMiniType, raw: unknown): Problem[] {
  return issuesOf(schema, raw).flatMap((issue) => ofIssue(issue, raw));
}

function ofIssue(issue: Issue, raw: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknown([...issue.path, key], key));
  const value = valueAt(raw, issue.path);
  const path = pathOf(issue.path);
  const found = value === undefined ? 'nothing' : quote(value);
  const wanted = wantedBy(issue);
  switch (issue.path.at(-1)) {
    case 'version':
      return [problem(unknownVersion, path, found, { words: wanted })];
    case 'basis':
      return [problem(value === undefined ? basisMissing : wrongBasis, path, found, { words: wanted })];
    case 'unit':
      if (value !== undefined && issue.code === 'invalid_value')
        return [problem(unknownUnit, path, found, { units: issue.values.join(', ') })];
  }
  if (value === undefined) return [problem(missing, path, found, { wanted })];
  if (typeof value === 'number' && !Number.isFinite(value)) return [problem(notANumber, path, found)];
  return [ofValue(issue, path, found)];
}

/** What is wrong with a value that is there. */
function ofValue(issue: Issue, path: string, found: string): Problem {
  switch (issue.code) {
    case 'invalid_value':
      return problem(unknownWord, path, found, { words: wantedBy(issue) });
    case 'invalid_type': {
      const kind = TYPE[issue.expected];
      return kind === undefined ? wrong(issue, path, found) : problem(kind, path, found);
    }
    case 'invalid_union':
      if (issue.errors.length === 0) return problem(unknownWord, path, found, { words: wantedBy(issue) });
      return wrong(issue, path, found);
    case 'invalid_format':
      return problem(formatOf(issue), path, found);
    case 'too_small': {
      if (issue.origin === 'number') return problem(negative, path, found);
      const { minimum } = issue;
      return problem(tooShort, path, found, { least: String(minimum), what: counted(issue, Number(minimum)) });
    }
    case 'too_big': {
      const { maximum } = issue;
      return problem(tooLong, path, found, { most: String(maximum), what: counted(issue, Number(maximum)) });
    }
    default:
      return wrong(issue, path, found);
  }
}

function wrong(issue: Issue, path: string, found: string): Problem {
  return problem(wrongShape, path, found, { wanted: wantedBy(issue) });
}

/** What an issue asks for, in words. */
function wantedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE[issue.expected]?.wanted ?? issue.expected;
    case 'invalid_value':
      return issue.values.map((value) => JSON.stringify(value)).join(' or ');
    case 'invalid_union':
      return issue.errors.length === 0 ? wordsOf(issue) : [...new Set(issue.errors.flat().map(wantedBy))].join(' or ');
    case 'unrecognized_keys':
      return 'no other field';
    default:
      return 'a value within its limits';
  }
}

/** The words of which one decides what else must be there. */
function wordsOf(issue: Issue & { readonly options?: unknown }): string {
  return Array.isArray(issue.options) ? issue.options.map((word) => JSON.stringify(word)).join(' or ') : '';
}

const TYPE: Readonly<Record<string, typeof notAnObject | typeof notAList | typeof notAText | typeof notANumber>> = {
  object: notAnObject,
  record: notAnObject,
  array: notAList,
  string: notAText,
  number: notANumber,
};

/** The only pattern of our own is that of well-formed text. */
function formatOf({ format }: Issue & { code: 'invalid_format' }) {
  if (format === 'datetime') return notATime;
  return format === 'date' ? notADate : notAText;
}

function counted({ origin }: { readonly origin: string }, count: number): string {
  if (origin === 'array') return count === 1 ? 'entry' : 'entries';
  return count === 1 ? 'character' : 'characters';
}

function unknown(path: readonly PropertyKey[], key: string): Problem {
  return problem(key === '__proto__' ? forbiddenKey : unknownField, pathOf(path), quote(key));
}

/** A path inside a value, as in JSONPath (RFC 9535) without the root: `visit[0].pressure.unit`. */
export function pathOf(keys: readonly PropertyKey[]): string {
  return keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    const name = String(key);
    if (!/^[A-Za-z_]\w*$/.test(name)) return `${path}[${quote(name)}]`;
    return path === '' ? name : `${path}.${name}`;
  }, '');
}

/** The own value at a path; undefined where there is none. */
export function valueAt(raw: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce<unknown>((value, key) => {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    return (value as Record<PropertyKey, unknown>)[key];
  }, raw);
}

/** The list at a key, in a list of our own, as the methods of the caller's may be its own; empty where there is none. */
export function listAt(raw: unknown, key: string): readonly unknown[] {
  const list = valueAt(raw, [key]);
  return Array.isArray(list) ? indexed(list.length, (i): unknown => list[i]) : [];
}

/** Whether anything at, under or above a path is already a problem. */
export function isBroken(problems: readonly Problem[], path: string): boolean {
  return problems.some((problem) => problem.path === '' || isUnder(problem.path, path) || isUnder(path, problem.path));
}

/** Whether a path is another one, or lies under it. */
export function isUnder(path: string, outer: string): boolean {
  return (
    path.startsWith(outer) && (path.length === outer.length || path[outer.length] === '.' || path[outer.length] === '[')
  );
}
