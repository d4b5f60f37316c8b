// Holds the answer of one engine against the expected one.

/** @import { Answer } from './numbers/answer.mjs' */

/**
 * @typedef {object} Compared
 * @property {boolean} passed
 * @property {boolean} sameMath whether the engine's own Math.exp and Math.log, which the library does not use, round as here
 * @property {number} count how many results were compared
 * @property {readonly string[]} problems
 */

/**
 * @param {readonly string[]} lines of an answer
 * @param {readonly string[]} expected of which the lines may be the first part
 * @returns {Compared}
 */
export function compared(lines, expected) {
  const isMath = (/** @type {string} */ line) => line.startsWith('Math.');
  const sameMath = lines.filter(isMath).every((line, i) => line === expected[i]);
  /** @type {string[]} */
  const problems = [];
  const results = lines.filter((line) => !isMath(line));
  const wanted = expected.filter((line) => !isMath(line));
  if (results.length === 0) problems.push('no results');
  results.forEach((line, i) => {
    const other = wanted[i] ?? '';
    if (line === other) return;
    const [name = '', value = ''] = line.split('\t');
    const [wantedName = '', wantedValue = ''] = other.split('\t');
    problems.push(`${name}: ${value}, expected ${wantedName}: ${wantedValue}`);
  });
  return { passed: problems.length === 0, sameMath, count: results.length, problems };
}

/**
 * How many values of each sweep have other bits.
 *
 * @param {Answer['sweeps']} sweeps
 * @param {Answer['sweeps']} others
 */
export function otherBits(sweeps, others) {
  return Object.entries(sweeps)
    .map(([name, values]) => {
      const count = values.filter((bits, i) => bits !== others[name]?.[i]).length;
      return `${name} ${count} of ${values.length}`;
    })
    .join(', ');
}
