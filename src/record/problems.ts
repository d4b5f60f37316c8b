import type * as z from 'zod/mini';
import { quote, type Problem, type ProblemCode } from '../basis/fault.js';
import { wellFormed } from './canonical.js';

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
    const at = problem.path === '' ? path : path === '' ? problem.path : `${path}.${problem.path}`;
    const found = wellFormed(problem.found); // a parser may quote half a surrogate pair
    const own = { ...problem, path: at, found };
    findings.listed.push(about === undefined ? own : { ...own, about: wellFormed(about) });
  }
}

/** What zod says about a shape, as problems with paths relative to the value. */
export function shapeProblems(schema: z.ZodMiniType, raw: unknown): Problem[] {
  const parsed = schema.safeParse(raw);
  return parsed.success ? [] : parsed.error.issues.flatMap((issue) => ofIssue(issue, raw));
}

type Issue = z.core.$ZodIssue;

function ofIssue(issue: Issue, raw: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownField([...issue.path, key], key));
  const found = valueAt(raw, issue.path);
  const field = String(issue.path.at(-1) ?? '');
  const code = codeOf(issue, field, found);
  return [
    {
      code,
      path: pathOf(issue.path),
      found: found === undefined ? 'nothing' : quote(found),
      wanted: wanted(issue),
      remedy: REMEDY[code] ?? GENERAL,
    },
  ];
}

function codeOf(issue: Issue, field: string, found: unknown): ProblemCode {
  if (field === 'version') return 'unknown version';
  if (found === undefined) return field === 'basis' ? 'basis missing' : 'missing';
  if (field === 'basis') return 'wrong kind';
  if (field === 'unit') return 'unknown unit';
  if (typeof found === 'number' && !Number.isFinite(found)) return 'not a number';
  if (issue.code === 'invalid_value') return 'unknown word';
  if (issue.code === 'too_big') return 'too large';
  if (issue.code === 'too_small' && issue.origin === 'number') return 'negative';
  return 'wrong shape';
}

const GENERAL = 'see A round as JSON in the README';

const REMEDY: Partial<Record<ProblemCode, string>> = {
  'unknown version': 'this library reads version 1',
  'basis missing': 'say the basis that the instrument or the manual states; it is never assumed',
  'wrong kind': 'this place takes that basis only: a reading is gauge, an ambient absolute, a tolerance a difference',
  'unknown unit': 'spell the unit exactly so; the basis is said beside it, not in it',
  'not a number': 'give the value as read; if there is none, leave the reading out',
  missing: 'state it; nothing is assumed in its place',
  'unknown word': 'use exactly one of these words',
};

function wanted(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.map((value) => JSON.stringify(value)).join(' or ');
    case 'invalid_union':
      return issue.errors.flat().map(wanted).join(' or ');
    case 'invalid_format':
      return FORMAT[issue.format] ?? issue.message;
    case 'too_small':
      if (issue.origin === 'number') return 'zero or more';
      return `at least ${issue.minimum} ${issue.origin === 'array' ? 'entry' : 'character'}`;
    case 'too_big':
      return `at most ${issue.maximum} ${issue.origin === 'array' ? 'entries' : 'characters'}`;
    default:
      return issue.message;
  }
}

const TYPE: Readonly<Record<string, string>> = {
  object: 'an object',
  array: 'an array',
  string: 'a text',
  number: 'a finite number',
};

const FORMAT: Readonly<Record<string, string>> = {
  datetime: 'a date and time with seconds and offset, such as 2026-03-14T09:40:00+02:00 (RFC 3339)',
  date: 'a date, such as 2026-03-14 (RFC 3339)',
  regex: 'a text without half a surrogate pair',
};

function unknownField(path: readonly PropertyKey[], key: string): Problem {
  return {
    code: key === '__proto__' ? 'forbidden key' : 'unknown field',
    path: pathOf(path),
    found: quote(key),
    wanted: 'no field of this name here',
    remedy: 'check its spelling and place; nothing is read past a field that is not understood',
  };
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

/** Whether anything at, under or above a path is already a problem. */
export function isBroken(problems: readonly Problem[], path: string): boolean {
  return problems.some((problem) => problem.path === '' || isUnder(problem.path, path) || isUnder(path, problem.path));
}

function isUnder(path: string, outer: string): boolean {
  return (
    path.startsWith(outer) && (path.length === outer.length || path[outer.length] === '.' || path[outer.length] === '[')
  );
}
