// Prints what the steps of the method cost.
//
//   node bench/run.mjs [--once]
//
// --once does each a single time, to see that all of it still runs; its numbers mean nothing, and are not printed.
import { measure } from './measure.mjs';
import { allocated, RELATIONS } from './relations.mjs';
import { SUBJECTS } from './subjects.mjs';

const words = process.argv.slice(2);
if (words.some((word) => word !== '--once')) {
  console.error('usage: run.mjs [--once]');
  process.exit(2);
}

if (words.includes('--once')) {
  for (const { name, call } of [...RELATIONS, ...SUBJECTS]) {
    if (!Number.isFinite(call(0))) throw new Error(`${name} gave no number`);
  }
  console.log(`${RELATIONS.length + SUBJECTS.length} benchmarks run`);
} else {
  const measured = [...RELATIONS, ...SUBJECTS].map((subject) => measure(subject, { turns: 41, nanoseconds: 5e6 }));
  const rows = measured.map(({ name, ratio, low, high, nanoseconds }) => [
    name,
    short(ratio),
    `${short(low)} to ${short(high)}`,
    short(nanoseconds),
  ]);
  console.log(table([['one call of', '÷ Math.exp', 'middle half', 'ns here'], ...rows]));
  console.log(`a relation without a trace allocates ${allocated().toFixed(3)} bytes`);
}

/** Three digits. @param {number} x */
function short(x) {
  return Number(x.toPrecision(3)).toString();
}

/** @param {readonly (readonly string[])[]} rows */
function table(rows) {
  const width = (/** @type {number} */ column) => Math.max(...rows.map((row) => row[column]?.length ?? 0));
  return rows
    .map((row) => row.map((cell, i) => (i === 0 ? cell.padEnd(width(i)) : cell.padStart(width(i)))).join('  '))
    .join('\n');
}
