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
  /** In a document: the accumulator, group or specification concerned, by its name. */
  readonly about?: string;
}

/** Stable codes of everything that can be wrong with an input. */
export type ProblemCode =
  | 'wrong kind'
  | 'not a number'
  | 'not a decimal'
  | 'unknown unit'
  | 'basis missing'
  | 'below absolute zero'
  | 'below vacuum'
  | 'not positive'
  | 'negative'
  | 'outside the model'
  | 'no solution'
  | 'liquid'
  | 'two phases'
  | 'not an ambient pressure'
  | 'above allowable'
  | 'band without width'
  | 'band reaches zero'
  | 'limits crossed'
  | 'rows out of order'
  | 'outside the table'
  | 'step too fine'
  | 'unknown word'
  | 'wrong shape'
  | 'unknown field'
  | 'missing'
  | 'unknown version'
  | 'duplicate name'
  | 'duplicate key'
  | 'forbidden key'
  | 'unknown specification'
  | 'unknown table'
  | 'mixed units'
  | 'stated nowhere'
  | 'order of readings'
  | 'rest contradicts readings'
  | 'not JSON'
  | 'too deep'
  | 'too large';

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

  constructor(problems: readonly [Problem, ...Problem[]]) {
    const more = problems.length - MOST_IN_MESSAGE;
    const lines = problems.slice(0, MOST_IN_MESSAGE).map(describe);
    super([...lines, ...(more > 0 ? [`and ${more} more`] : [])].join('\n'));
    this.problems = problems;
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
  return error instanceof Error && '~isochore' in error && error['~isochore'] === 'fault';
}

/**
 * One problem as a sentence: where, what was found, what is wanted, what to do.
 *
 * @example
 * ```ts
 * describe({ code: 'negative', path: 'overfill', found: '-1 bar', wanted: 'zero or more', remedy: 'state it as a size' });
 * // => 'overfill: found -1 bar, wanted zero or more; state it as a size'
 * ```
 */
export function describe(problem: Problem): string {
  const where = problem.path === '' ? '' : `${problem.path}: `;
  return `${where}found ${problem.found}, wanted ${problem.wanted}; ${problem.remedy}`;
}

/** Throws one problem. */
export function fail(problem: Problem): never {
  throw new Fault([problem]);
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

/** Somebody else's value, made safe to quote in a message: named by type, control characters escaped, cut short. */
export function quote(value: unknown): string {
  if (typeof value === 'string') return cut(JSON.stringify(value));
  if (typeof value === 'bigint') return cut(`${value}n`);
  if (typeof value === 'number' || typeof value === 'boolean' || value === null || value === undefined)
    return String(value);
  if (Array.isArray(value)) return 'an array';
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

/** Cuts a text that is too long to quote, never through the middle of a surrogate pair. */
export function cut(text: string): string {
  if (text.length <= SHOWN) return text;
  const end = text.charCodeAt(SHOWN - 1) >= 0xd800 && text.charCodeAt(SHOWN - 1) <= 0xdbff ? SHOWN - 1 : SHOWN;
  return `${text.slice(0, end)}…`;
}

/** Runs one admission whose problems belong under `path`. */
export function under<T>(path: string, admit: () => T): T {
  const problems: Problem[] = [];
  const value = collect(problems, path, admit);
  failIfAny(problems);
  return value as T;
}
