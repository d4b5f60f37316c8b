// One input of one function, and what comes of it.
import fc from 'fast-check';
import { change, junk, pollution } from './draw.mjs';
import { changed, inner } from './change.mjs';
import { isOfTheEngine, nameOf, wrongWithAnswer, wrongWithFault } from './holds.mjs';
import { build, functionOf, Live, print, sizeOf } from './recipe.mjs';
import { fingerprint, same } from './unchanged.mjs';
import { isFault } from 'isochore';
import * as library from 'isochore';
import * as record from 'isochore/record';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Fault } from 'isochore' */
/** @import { Change, Pollution } from './draw.mjs' */
/** @import { Recipe } from './recipe.mjs' */
/** @import { Subject } from './subjects/subject.mjs' */

/** @typedef {{ readonly args: readonly Recipe[], readonly pollution: readonly Pollution[] }} Input */
/** What came of an input. @typedef {'answer' | 'fault' | "caller's error"} Outcome */

/** Most values and characters of an input. */
const MOST_SIZE = 1_000_000;

/** Milliseconds that an input may take, and how many more for each of its values and characters. */
const MOST_MS = 1000;
const MS_EACH = 0.02;
/** And for each character of a text: a hundred million of them are read in one to two seconds. */
const MS_PER_CHARACTER = 2e-5;

/**
 * Arguments of a subject: sound ones, sound ones with a few changes, and any at all.
 *
 * @param {Subject} subject
 * @param {boolean} isPolluted Whether all objects inherit something of the caller's while it runs.
 * @returns {Arbitrary<Input>}
 */
export function inputOf({ args }, isPolluted) {
  const polluted = isPolluted ? fc.array(pollution, { minLength: 1, maxLength: 2 }) : fc.constant([]);
  const mutated = fc.record({ args, changes: fc.array(change, { minLength: 1, maxLength: 3 }) }).map(apply);
  return fc.record({
    args: fc.oneof(
      { weight: 5, arbitrary: args },
      { weight: 12, arbitrary: mutated },
      { weight: 2, arbitrary: fc.array(junk, { maxLength: 4 }) },
    ),
    pollution: polluted,
  });
}

/** @param {{ readonly args: readonly Recipe[], readonly changes: readonly Change[] }} input @returns {readonly Recipe[]} */
function apply({ args, changes }) {
  /** @type {Recipe} */
  let now = { t: 'list', of: args };
  for (const one of changes) {
    const after = changed(now, one);
    if (sizeOf(after) <= MOST_SIZE) now = after; // a list of lists grows with their product
  }
  return now.t === 'list' ? now.of : args;
}

/** @param {Subject} subject @returns {(...args: readonly unknown[]) => unknown} */
export const callOf = (subject) => subject.call ?? functionOf(qualified(subject.name));

/** A name with the entry before it, for any but the core. @param {string} name */
function qualified(name) {
  if (name in library) return name;
  return name in record ? `record.${name}` : `worked.${name}`;
}

/**
 * Calls a function with an input.
 *
 * @param {Subject} subject
 * @param {Input} input
 * @returns {{ readonly outcome: Outcome } | { readonly wrong: string }}
 */
export function tried(subject, input) {
  const first = once(subject, input);
  if ('wrong' in first || first.ms <= allowed(input)) return first;
  // Only what is slow every time is slow: the machine may be busy.
  let ms = first.ms;
  for (let i = 0; i < 2 && ms > allowed(input); i += 1) {
    const again = once(subject, input);
    if (!('wrong' in again)) ms = Math.min(ms, again.ms);
  }
  return ms > allowed(input) ? { wrong: 'takes too long' } : first;
}

/** @param {Input} input */
const allowed = ({ args }) => MOST_MS + MS_EACH * args.reduce((sum, one) => sum + sizeOf(one), 0);

/** @param {Subject} subject @param {Input} input @returns {{ readonly outcome: Outcome, readonly ms: number } | { readonly wrong: string }} */
function once(subject, input) {
  const live = new Live();
  const args = input.args.map((one) => build(one, live));
  const fields = input.pollution
    .filter(({ key }, i, all) => !Object.hasOwn(Object.prototype, key) && all.findIndex((one) => one.key === key) === i)
    .map((one) => /** @type {const} */ ([one, build(one.value, live)]));
  const before = fingerprint(args);
  const call = callOf(subject);
  live.thrown.clear(); // what was thrown while it was built
  /** @type {unknown} */
  let answer;
  /** @type {unknown} */
  let error;
  let hasThrown = false;
  const start = performance.now();
  const cpu = process.cpuUsage();
  try {
    pollute(fields, live);
    answer = call(...args);
  } catch (caught) {
    hasThrown = true;
    error = caught;
  } finally {
    for (const [{ key }] of fields) Reflect.deleteProperty(Object.prototype, key);
  }
  // On a busy machine the clock runs on while the process waits for its turn: what it worked is what counts.
  const { user, system } = process.cpuUsage(cpu);
  const texts = args.reduce((/** @type {number} */ sum, one) => sum + (typeof one === 'string' ? one.length : 0), 0);
  const ms = Math.min(performance.now() - start, (user + system) / 1000) - MS_PER_CHARACTER * texts;
  if (!input.args.some(isChangingItself) && !same(before, fingerprint(args))) return { wrong: 'changes its input' };
  live.isPolluted = fields.length > 0;
  live.hasAccessor = fields.some(([{ as }]) => as !== 'field');
  if (hasThrown) return ofError(error, subject, live, ms);
  const wrong =
    wrongWithAnswer(answer, { owned: before, echoes: subject.echoes === true }) ??
    wrongSteps(live) ??
    asked(subject, answer, args, input);
  return wrong === undefined ? { outcome: 'answer', ms } : { wrong };
}

/** @param {unknown} error @param {Subject} subject @param {Live} live @param {number} ms */
function ofError(error, subject, live, ms) {
  if (subject.neverThrows !== true) {
    if (live.thrown.has(error)) return { outcome: /** @type {const} */ ("caller's error"), ms };
    if (safely(() => isFault(error)) === true) {
      const wrong = wrongWithFault(error) ?? misplaced(error, subject);
      return wrong === undefined ? { outcome: /** @type {const} */ ('fault'), ms } : { wrong };
    }
    if (isOfTheEngine(error, live)) return { outcome: /** @type {const} */ ("caller's error"), ms };
  }
  return { wrong: nameOf(error) };
}

/** A problem that stands where nothing of the input can. @param {unknown} error @param {Subject} subject */
function misplaced(error, { blames }) {
  const { problems } = /** @type {Fault} */ (error);
  // What all objects inherit stands nowhere in an input.
  const placed = problems.filter(({ code, path }) => code !== 'inherited by all objects' || path !== '');
  const stray = blames === undefined ? undefined : placed.find(({ path }) => !blames(path));
  return stray === undefined ? undefined : `a fault (${stray.code}) at ${stray.path || 'no path'}`;
}

/** What an answer must hold beyond being finite. Nothing can be compared with an input that lies. @param {Subject} subject @param {unknown} answer @param {readonly unknown[]} args @param {Input} input */
function asked({ holds }, answer, args, input) {
  if (holds === undefined || (holds.length > 1 && input.args.some(isLiar))) return undefined;
  try {
    return holds(answer, args, input.pollution.length > 0);
  } catch (error) {
    return `an answer that cannot be looked at: ${nameOf(error)}`;
  }
}

/** Whether reading it twice may give two values. @param {Recipe} recipe @returns {boolean} */
function isLiar(recipe) {
  if (recipe.t === 'stock') return /throws|lies|endless|proxy/.test(recipe.name);
  if (recipe.t === 'wrap' && /getters|proxy/.test(recipe.how)) return true;
  return inner(recipe).some(isLiar);
}

/** Whether a getter of its own changes it. @param {Recipe} recipe @returns {boolean} */
function isChangingItself(recipe) {
  if (recipe.t === 'wrap' && /change a field|lengthen/.test(recipe.how)) return true;
  return inner(recipe).some(isChangingItself);
}

/** @param {Live} live */
function wrongSteps({ steps }) {
  return steps.map(wrongWithStep).find((wrong) => wrong !== undefined);
}

/** @param {unknown} step */
function wrongWithStep(step) {
  const { values, result, relation } = /** @type {import('isochore').Step} */ (step);
  return [...values, result].every(Number.isFinite)
    ? undefined
    : `a step of the trace that is not finite: ${relation.gives}`;
}

/** @template T @param {() => T} ask */
function safely(ask) {
  try {
    return ask();
  } catch {
    return undefined;
  }
}

/** @param {readonly (readonly [Pollution, unknown])[]} fields @param {Live} live */
function pollute(fields, live) {
  for (const [{ key, as }, value] of fields) {
    /** @type {PropertyDescriptor} */
    const field = { enumerable: true, configurable: true };
    Object.setPrototypeOf(field, null); // or it would inherit what stands there already
    if (as === 'field') Object.assign(field, { value, writable: true });
    else Object.assign(field, { get: as === 'getter' ? () => value : () => live.fail() });
    Object.defineProperty(Object.prototype, key, field);
  }
}

/** An input as its user would write it, cut to a length. @param {Subject} subject @param {Input} input @param {number} most */
export function shown(subject, { args, pollution }, most) {
  const call = `${subject.name}(${args.map(print).join(', ')})`;
  const before = pollution.map(
    ({ key, as, value }) =>
      `Object.prototype[${typeof key === 'symbol' ? String(key) : JSON.stringify(key)}] = ${as === 'field' ? '' : `«${as}» `}${print(value)}; `,
  );
  const text = before.join('') + call;
  return text.length > most ? `${text.slice(0, most)}… (${text.length} characters in all)` : text;
}
