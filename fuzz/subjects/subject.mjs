// What is fuzzed: a function of the library by its exported name, sound arguments of it, and what holds of its answer.

/** @import { Arbitrary } from 'fast-check' */
/** @import { Recipe } from '../recipe.mjs' */

/**
 * Says in words what is wrong with an answer; undefined if it is sound.
 *
 * @typedef {(answer: unknown, args: readonly unknown[], isPolluted?: boolean) => string | undefined} Holds
 */
/**
 * @typedef {object} Subject
 * @property {string} name As exported.
 * @property {Arbitrary<readonly Recipe[]>} args Sound arguments, and some near the ends of what is sound.
 * @property {Holds} [holds] What holds of every answer, beyond that it is finite and well-formed.
 * @property {(...args: readonly unknown[]) => unknown} [call] Where it is not a plain call.
 * @property {(path: string) => boolean} [blames] Whether its faults may stand at a path.
 * @property {boolean} [neverThrows] Whether not even an error of the caller's own may pass through.
 * @property {boolean} [echoes] Whether its answer holds texts of the caller's as they are.
 * @property {number} [weight] How many inputs it has for one of the others, if it is not as many.
 */
export {};
