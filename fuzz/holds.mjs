// What may come of a call, whatever its input: an answer in range, a fault that says what is wrong, or an error of the
// caller's own that passed through as it was.
import { isFault } from 'isochore';
import { PROBLEM_CODES } from 'isochore/record';
import { types } from 'node:util';

/** @import { Live } from './recipe.mjs' */

/** @type {ReadonlySet<string>} */
const CODES = new Set(PROBLEM_CODES);

/** Most characters of each text of a problem. A path goes through 32 levels, each of whose names is cut to 80; what is wanted may be one of all codes. */
export const LONGEST = { path: 3000, found: 400, wanted: 4000, remedy: 400, about: 200 };
/** A fault lists this many of its problems in its message. */
const LONGEST_MESSAGE = 20 * 5000;

/** @param {string} text */
export const isWellFormed = (text) => !/[\uD800-\uDFFF]/u.test(text);

/** What is wrong with a fault, in words; undefined if it is sound. @param {unknown} fault */
export function wrongWithFault(fault) {
  if (!isFault(fault)) return 'no fault';
  const { problems, message } = fault;
  if (!Array.isArray(problems) || problems.length === 0) return 'a fault without problems';
  if (message === '' || message.length > LONGEST_MESSAGE)
    return `a fault with a message of ${message.length} characters`;
  if (!isWellFormed(message)) return 'a fault whose message holds half a surrogate pair';
  // All of a thousand problems look alike.
  return problems
    .slice(0, 50)
    .map(wrongWithProblem)
    .find((wrong) => wrong !== undefined);
}

/** @param {unknown} problem */
export function wrongWithProblem(problem) {
  if (typeof problem !== 'object' || problem === null) return 'a problem that is no object';
  const { code, ...texts } = /** @type {Readonly<Record<string, unknown>>} */ (problem);
  if (typeof code !== 'string' || !CODES.has(code)) return `a problem with the code ${String(code)}`;
  for (const field of ['path', 'found', 'wanted', 'remedy']) {
    if (typeof texts[field] !== 'string') return `a problem (${code}) whose ${field} is ${typeof texts[field]}`;
  }
  for (const [field, text] of Object.entries(texts)) {
    if (typeof text !== 'string') continue;
    const most = /** @type {Readonly<Record<string, number>>} */ (LONGEST)[field] ?? 400;
    if (text.length > most) return `a problem (${code}) whose ${field} has more than ${most} characters`;
    if (!isWellFormed(text)) return `a problem (${code}) whose ${field} holds half a surrogate pair`;
    if (text === '' && (field === 'wanted' || field === 'remedy' || field === 'found'))
      return `a problem (${code}) with an empty ${field}`;
    const own = text.replaceAll(/"(?:[^"\\]|\\.)*"/g, ''); // without what it quotes, which may be any name
    const [lost] = /undefined|\[object|NaN/.exec(own) ?? [];
    if (lost !== undefined && field !== 'about' && field !== 'path' && field !== 'found')
      return `a problem (${code}) whose ${field} says ${lost}`;
  }
  return undefined;
}

/** @param {object} value */
function isFrozen(value) {
  try {
    return Object.isFrozen(value);
  } catch {
    return false;
  }
}

/**
 * What an answer holds that none may hold, in words. A proxy around a checked quantity is one, and comes back as it was
 * given: its target is frozen, so that it cannot lie.
 *
 * @param {unknown} answer
 * @param {{ readonly owned: readonly unknown[], readonly echoes: boolean }} about The caller's values, and whether its texts come back.
 */
export function wrongWithAnswer(answer, { owned, echoes }) {
  const seen = new Set();
  /** @type {[value: unknown, path: string][]} */
  const open = [[answer, '']];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [value, path] = next;
    if (typeof value === 'number' && !Number.isFinite(value)) return `${String(value)} in the answer at ${path}`;
    if (!echoes && typeof value === 'string' && !isWellFormed(value))
      return `half a surrogate pair in the answer at ${path}`;
    if (typeof value === 'bigint' || typeof value === 'symbol') return `a ${typeof value} in the answer at ${path}`;
    if (typeof value !== 'object' || value === null || seen.has(value)) continue;
    if (types.isProxy(value)) {
      if (owned.includes(value) || isFrozen(value)) continue;
      return `a proxy in the answer at ${path}`;
    }
    seen.add(value);
    if (Object.hasOwn(value, '~kernel')) continue; // a gas model of the library
    for (const [key, own] of Object.entries(Object.getOwnPropertyDescriptors(value))) {
      if ((own.get !== undefined || own.set !== undefined) && !owned.includes(value))
        return `a getter in the answer at ${path}.${key}`;
      open.push([own.value, path.length < 200 ? `${path}.${Array.isArray(value) ? 'n' : key}` : path]);
    }
  }
  return undefined;
}

/**
 * Whether an error is the engine's own word about what the caller made: a proxy that is revoked, or that says of its target
 * what cannot be, or that it is a list while it has not the methods of one; a class given for a function; a getter that all objects inherit, where a field is set.
 *
 * @param {unknown} error
 * @param {Live} live
 */
export function isOfTheEngine(error, live) {
  if (!(error instanceof TypeError)) return false;
  const { message } = error;
  if (live.hasProxy && /\bproxy\b|\btrap\b/i.test(message)) return true;
  if (live.hasLyingList && OF_A_LIST.test(message)) return true;
  if (/^Class constructor \w* ?cannot be invoked/.test(message)) return true; // a class for a trace is a function, and refuses
  if (live.hasAccessor && message.includes('which has only a getter')) return true;
  return false;
}

/** What a list that has not what lists have is said to lack: one of their methods, or an iterator. */
const OF_A_LIST =
  /\.(?:map|forEach|filter|find|findIndex|some|every|flatMap|reduce|slice|join|includes|entries|at|indexOf|sort|push) is not a function|is not iterable|to primitive value/;

/** An error in a few words: enough to tell one defect from another. @param {unknown} error */
export function nameOf(error) {
  if (!(error instanceof Error)) return `a thrown ${typeof error}`;
  const overflow = error instanceof RangeError && /call stack/i.test(error.message);
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at .*(dist|zod)\//.test(line));
  const where = frames
    .slice(0, overflow ? 1 : 2)
    .map((line) => /at (?:async )?([\w.$<>[\] ]+) \(/.exec(line)?.[1] ?? 'an anonymous function');
  const said = error.message.replace(/"[^"]*"|'[^']*'/g, '…').slice(0, 90);
  return `${error.name}: ${said} (in ${where.join(' < ') || 'the engine'})`;
}
