import { optional } from './has.js';
import { indexed } from './indexed.js';
import type * as catalogue from './problem.js';
import type { ProblemKind } from './problem.js';
import { wordsUnsound, wrongKind } from './problem.js';

/**
 * What is wrong with an input, as data: the same shape whether it is thrown by a call or listed for a document.
 *
 * @example
 * ```ts
 * try {
 *   temperature(-300, '°C');
 * } catch (error) {
 *   if (isFault(error)) error.problems[0].wanted; // => 'at least -273.15 °C (0 K)'
 * }
 * ```
 */
export interface Problem {
  /** Stable code; the texts beside it may be reworded. */
  readonly code: ProblemCode;
  /** Where: the argument of a call (`ambient`), or a JSON path in a document (`$.groups[0].ambient.unit`). */
  readonly path: string;
  /** What stood there, with its unit where it has one; long values are cut short. */
  readonly found: string;
  /** What is accepted there, with bounds and their unit. */
  readonly wanted: string;
  /** What to do about it. */
  readonly remedy: string;
  /** The values in the two texts by the names that they have there, for a text of one's own under the same code. */
  readonly values: Readonly<Record<string, string>>;
  /** In a document: the accumulator, group or specification concerned, by its name. */
  readonly about?: string;
}

/** Stable codes of everything that can be wrong with an input. */
export type ProblemCode = Catalogue[keyof Catalogue]['code'];

type Catalogue = typeof catalogue;

/** Names in braces that a text asks to have filled in. */
type NamesIn<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}` ? Name | NamesIn<Rest> : never;

type ValuesFor<K extends ProblemKind> = Readonly<Record<NamesIn<K['wanted'] | K['remedy']>, string>>;

type KnownKind = ProblemKind & { readonly code: ProblemCode };

/** Values for the text of a kind of problem; none where it asks for none. */
type Filling<K extends ProblemKind> = [NamesIn<K['wanted'] | K['remedy']>] extends [never]
  ? []
  : [values: ValuesFor<K>];

/**
 * A problem of a kind: where, what stood there, and the values for its text.
 *
 * @param path the argument of the call, or the path inside a document; empty for the value itself
 */
export function problem<const K extends KnownKind>(
  kind: K,
  path: string,
  found: string,
  ...[values]: Filling<K>
): Problem {
  const { code, wanted, remedy } = kind;
  const given: Record<string, string> = {};
  for (const [name, value] of Object.entries<string>(values ?? {})) given[name] = fit(value, LONGEST_VALUE);
  return {
    code,
    path,
    found: fit(found, LONGEST_FOUND),
    wanted: filled(wanted, given),
    remedy: filled(remedy, given),
    values: given,
  };
}

// What a problem says goes into logs, tables and reports, whatever was given to the call that it comes from.
const LONGEST_FOUND = 400;
/** A value may list all the codes of a catalogue. */
const LONGEST_VALUE = 3500;

/** A text that is neither too long nor holds half a surrogate pair. */
function fit(text: string, most: number): string {
  const short = cut(text, most);
  return /\p{Surrogate}/u.test(short) ? short.replace(/\p{Surrogate}/gu, '\uFFFD') : short;
}

/** A text with its names in braces filled in; asks only for those that stand in it. */
export function fill(text: string, value: (name: string) => string | undefined): string {
  return text.replace(/\{(\w+)\}/g, (brace: string, name: string) => value(name) ?? notToFill(brace, text));
}

/** A text with its names in braces filled in from what has them. */
export function filled(text: string, values: Readonly<Record<string, string>>): string {
  return fill(text, (name) => (Object.hasOwn(values, name) ? values[name] : undefined));
}

function notToFill(brace: string, text: string): never {
  fail(wordsUnsound, 'words', quote(text), {
    wanted: `none but the names in braces of the library's own, unlike ${brace}`,
  });
}

const MOST_IN_MESSAGE = 20;

/**
 * The one error this library throws: an input it cannot answer for. It lists every problem found, not only the first.
 * Engineering outcomes (undercharged, not comparable) are data and are never thrown.
 *
 * Recognise it with {@link isFault}: `instanceof` fails where a program has loaded the ESM and the CommonJS build.
 */
export class Fault extends Error {
  override readonly name = 'Fault';
  /** Every problem found; at least one. */
  readonly problems: readonly [Problem, ...Problem[]];

  /** @throws {@link Fault} `wrong kind` for anything but problems, one at least */
  constructor(problems: readonly [Problem, ...Problem[]]) {
    const own = ownProblems(problems);
    const more = own.length - MOST_IN_MESSAGE;
    const lines = own.slice(0, MOST_IN_MESSAGE).map(describe);
    super([...lines, ...(more > 0 ? [`and ${more} more`] : [])].join('\n'));
    this.problems = own;
  }

  /** Marks a fault across copies of the library. */
  get '~isochore'(): 'fault' {
    return 'fault';
  }
}

/**
 * Whether something caught is a {@link Fault}, from whichever copy of the library.
 *
 * @example
 * ```ts
 * isFault(new TypeError('something else')); // => false
 * ```
 */
export function isFault(error: unknown): error is Fault {
  try {
    // By its problems too, which each has of its own: a mark alone may be one that all objects inherit.
    return (
      error instanceof Error && Object.hasOwn(error, 'problems') && (error as Partial<Fault>)['~isochore'] === 'fault'
    );
  } catch {
    return false; // a proxy that is revoked, or that throws: whatever it is, no fault
  }
}

/**
 * One problem as a sentence: where, what was found, what is wanted, what to do.
 *
 * @throws {@link Fault} `wrong kind` for anything but a problem
 * @example
 * ```ts
 * try {
 *   temperature(-300, '°C');
 * } catch (error) {
 *   if (isFault(error)) describe(error.problems[0]);
 *   // => 'value: found -300 °C, wanted at least -273.15 °C (0 K); check the sign and the unit: °C, K or °F'
 * }
 * ```
 */
export function describe(problem: Problem): string {
  needProblem(problem, 'problem');
  const where = problem.path === '' ? '' : `${problem.path}: `;
  return `${where}found ${problem.found}, wanted ${problem.wanted}; ${problem.remedy}`;
}

/** Refuses everything but a problem: its texts, and the values in them. */
export function needProblem(problem: Problem, path: string): void {
  if (isProblem(problem)) return;
  fail(wrongKind, path, quote(problem), { kind: 'a problem', maker: 'one of the problems of a fault or of a report' });
}

/** Problems in a list of its own, whose length is looked at once; at the first that is none it ends. */
function ownProblems(problems: readonly Problem[]): [Problem, ...Problem[]] {
  const isList = Array.isArray(problems);
  const own = indexed(isList ? problems.length : 0, (i) => {
    const one = problems[i] as Problem;
    needProblem(one, `problems[${i}]`);
    return one;
  });
  if (own.length > 0) return own as [Problem, ...Problem[]];
  const found = isList ? 'an empty array' : quote(problems);
  return fail(wrongKind, 'problems', found, {
    kind: 'a list of problems',
    maker: 'the problems of a fault or of a report',
  });
}

function isProblem(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const given = value as Readonly<Partial<Record<keyof Problem, unknown>>>;
  const { code, path, found, wanted, remedy, values } = given;
  if (![code, path, found, wanted, remedy].every((text) => typeof text === 'string')) return false;
  const about = optional(given, 'about');
  if (about !== undefined && typeof about !== 'string') return false;
  if (typeof values !== 'object' || values === null) return false;
  return Object.values(values).every((text) => typeof text === 'string');
}

/** Throws one problem of a kind. */
export function fail<const K extends KnownKind>(kind: K, path: string, found: string, ...filling: Filling<K>): never {
  throw new Fault([problem(kind, path, found, ...filling)]);
}

/** Throws if there is anything to throw. */
export function failIfAny(problems: readonly Problem[]): void {
  const [first, ...rest] = problems;
  if (first !== undefined) throw new Fault([first, ...rest]);
}

/**
 * Runs one admission and keeps its problems instead of throwing them, each path put under `path`.
 * Anything that is not a {@link Fault} is a defect of ours and passes through.
 */
export function collect<T>(problems: Problem[], path: string, admit: () => T): T | undefined {
  try {
    return admit();
  } catch (error) {
    if (!isFault(error)) throw error;
    for (const problem of error.problems) problems.push({ ...problem, path: join(path, problem.path) });
    return undefined;
  }
}

function join(outer: string, inner: string): string {
  if (outer === '' || inner === '') return outer + inner;
  return inner.startsWith('[') ? outer + inner : `${outer}.${inner}`;
}

const SHOWN = 80;
const MOST_NAMES = 5;

/** Names of somebody else's: the first few, of fields each as it stands if it is a plain word. */
export function fieldNames(names: readonly string[], between: string, shownAs = plainOrQuoted): string {
  const shown = names.slice(0, MOST_NAMES).map(shownAs);
  return [...shown, ...(names.length > MOST_NAMES ? ['…'] : [])].join(between);
}

/** Somebody else's value, made safe to quote in a message: named by type, control characters escaped, cut short. */
export function quote(value: unknown): string {
  // No more of it than is shown: a text may be of any length, and the digits of a bigint take more time than they have places.
  if (typeof value === 'string') return cut(JSON.stringify(value.slice(0, SHOWN)));
  if (typeof value === 'bigint') return BigInt.asIntN(200, value) === value ? `${value}n` : 'a large bigint';
  if (typeof value === 'number' || typeof value === 'boolean' || value === null || value === undefined)
    return String(value);
  if (Array.isArray(value)) return 'an array';
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

function plainOrQuoted(name: string): string {
  return /^[A-Za-z_]\w{0,60}$/.test(name) ? name : quote(name);
}

/** Cuts a text that is too long to quote, never through the middle of a surrogate pair. */
export function cut(text: string, most = SHOWN): string {
  if (text.length <= most) return text;
  const last = text.charCodeAt(most - 1);
  return `${text.slice(0, last >= 0xd800 && last <= 0xdbff ? most - 1 : most)}…`;
}

/** Runs one admission whose problems belong under `path`. */
export function under<T>(path: string, admit: () => T): T {
  const problems: Problem[] = [];
  const value = collect(problems, path, admit);
  failIfAny(problems);
  return value as T;
}
