// Holds the answer of one engine against the expected one. What is not there does not agree.

/** @import { Answer } from './numbers/answer.mjs' */

/**
 * @typedef {object} Compared
 * @property {boolean} sameMath whether the engine's own Math.exp and Math.log, which the library does not use, round as here
 * @property {number} count how many results were compared
 * @property {string[]} problems
 */

/**
 * @param {readonly string[]} lines of an answer
 * @param {readonly string[]} expected
 * @returns {Compared}
 */
export function compared(lines, expected) {
  const isMath = (/** @type {string} */ line) => line.startsWith('Math.');
  const sameMath = lines.filter(isMath).every((line, i) => line === expected[i]);
  /** @type {string[]} */
  const problems = [];
  const results = lines.filter((line) => !isMath(line));
  const wanted = expected.filter((line) => !isMath(line));
  if (lines.length !== expected.length) problems.push(`${lines.length} lines, ${expected.length} expected`);
  results.forEach((line, i) => {
    const other = wanted[i] ?? '';
    if (line === other) return;
    const [name = '', value = ''] = line.split('\t');
    const [wantedName = '', wantedValue = ''] = other.split('\t');
    problems.push(`${name}: ${value}, expected ${wantedName}: ${wantedValue}`);
  });
  return { sameMath, count: results.length, problems };
}

/**
 * What differs in the sweeps, but for those of the engine's own functions, which may.
 *
 * @param {Answer['sweeps']} sweeps
 * @param {Answer['sweeps']} others
 */
export function sweepProblems(sweeps, others) {
  return Object.entries(others).flatMap(([name, wanted]) => {
    const values = sweeps[name] ?? [];
    const [count, other] = [wanted.length, values.filter((bits, i) => bits !== wanted[i]).length];
    if (values.length !== count) return [`sweep of ${name}: ${values.length} values, ${count} expected`];
    return other === 0 || name.startsWith('Math.') ? [] : [`sweep of ${name}: ${other} of ${count} in other bits`];
  });
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
