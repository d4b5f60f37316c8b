// A batch: so many inputs of one function, drawn from a seed of its own, so that it can be run again by itself.
import fc from 'fast-check';
import { createHash } from 'node:crypto';
import { inputOf, shown, tried } from './input.mjs';
import { difference, shared } from './unchanged.mjs';

/** @import { Outcome, Input } from './input.mjs' */
/** @import { Subject } from './subjects/subject.mjs' */

/** Inputs of a batch. */
export const BATCH = 200;
/** Inputs of a batch of a function: fewer, where one takes long. @param {Subject} subject */
export const sizeOf = ({ weight = 1 }) => Math.ceil(BATCH * Math.min(1, weight));
/** One batch of so many is polluted. By batches, because the engine forgets all that it has optimised. */
const POLLUTED = 16;
/** Tries to make a failing input smaller, and milliseconds for all of them. */
const MOST_TRIES = 3000;
const MOST_SHRINKING_MS = 5000;

/**
 * Something wrong, with the smallest input that was found for it.
 *
 * @typedef {object} Finding
 * @property {string} name Of the function.
 * @property {number} batch
 * @property {string} wrong
 * @property {string} input
 */
/** @typedef {Readonly<Record<Outcome, number>>} Counts */

/** Seed of a batch: of the run's seed, the function and the number of the batch alone. @param {number} seed @param {string} name @param {number} batch */
function seedOf(seed, name, batch) {
  return createHash('sha256').update(`${seed} ${name} ${batch}`).digest().readInt32LE();
}

/** Whether all objects inherit something in a batch; by its own seed, so that short runs have such batches too. @param {number} seed */
const isPolluted = (seed) => seed % POLLUTED === 0;

/**
 * Runs a batch until nothing new is wrong in it.
 *
 * @param {Subject} subject
 * @param {{ readonly seed: number, readonly batch: number, readonly size: number }} of
 * @param {Set<string>} known What is known to be wrong, by function and words; what is new is added.
 * @param {(input: number) => void} beat Called before each input, with its number in the batch.
 */
export function runBatch(subject, { seed, batch, size }, known, beat) {
  /** @type {Finding[]} */
  const findings = [];
  const before = shared();
  for (;;) {
    const counts = { answer: 0, fault: 0, "caller's error": 0, wrong: 0 };
    /** @type {string | undefined} */
    let failing;
    let tries = 0;
    let until = Number.POSITIVE_INFINITY;
    let at = 0;
    const holds = (/** @type {Input} */ input) => {
      if (failing !== undefined) {
        tries += 1;
        if (tries > MOST_TRIES || performance.now() > until) return true;
      } else beat((at += 1));
      const came = tried(subject, input);
      if (!('wrong' in came)) {
        if (failing === undefined) counts[came.outcome] += 1;
        return true;
      }
      const id = `${subject.name}: ${came.wrong}`;
      if (failing === undefined) counts.wrong += 1;
      if (failing === undefined ? known.has(id) : failing !== id) return true;
      if (failing === undefined) until = performance.now() + MOST_SHRINKING_MS;
      failing = id;
      return false;
    };
    const run = fc.check(fc.property(inputOf(subject, isPolluted(seedOf(seed, subject.name, batch))), holds), {
      seed: seedOf(seed, subject.name, batch),
      numRuns: size,
    });
    const [input] = run.counterexample ?? [];
    if (failing === undefined || input === undefined) {
      const changed = difference(before, shared());
      if (changed !== undefined) findings.push(whoChanges(subject, { seed, batch, size }, changed));
      return { findings, counts };
    }
    known.add(failing);
    findings.push({
      name: subject.name,
      batch,
      wrong: failing.slice(subject.name.length + 2),
      input: shown(subject, input, 4000),
    });
  }
}

/** Runs a batch again, looking after each input, to find the one that changes what is shared. @param {Subject} subject @param {{ readonly seed: number, readonly batch: number, readonly size: number }} of @param {string} changed @returns {Finding} */
function whoChanges(subject, { seed, batch, size }, changed) {
  let before = shared();
  const run = fc.check(
    fc.property(inputOf(subject, isPolluted(seedOf(seed, subject.name, batch))), (input) => {
      tried(subject, input);
      const after = shared();
      const quiet = difference(before, after) === undefined;
      before = after;
      return quiet;
    }),
    { seed: seedOf(seed, subject.name, batch), numRuns: size, endOnFailure: true },
  );
  const [input] = run.counterexample ?? [];
  const by = input === undefined ? 'one of the batch, the first time only' : shown(subject, input, 4000);
  return { name: subject.name, batch, wrong: `changes ${changed}, which all programs share`, input: by };
}
