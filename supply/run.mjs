// Checks what the package is made of and what it is made into, and makes the release: the tarball, its bill of
// materials, and their sums, in .cache/release.
//
//   node supply/run.mjs
import { installScripts } from './install-scripts.mjs';
import { licences } from './licences.mjs';
import { reach } from './reach.mjs';
import { release } from './release.mjs';

/** @type {readonly [string, () => { problems: string[], said: string }][]} */
const CHECKS = [
  ['licences', licences],
  ['installation', installScripts],
  ['release', release],
  ['reach', reach],
];

/** One mistake in the build is a problem of hundreds of files. */
const MOST_SHOWN = 20;

for (const [name, check] of CHECKS) {
  const { problems, said } = check();
  console.log(`${name}: ${problems.length === 0 ? 'sound' : `${problems.length} problems`}; ${said}`);
  for (const problem of problems.slice(0, MOST_SHOWN)) console.error(`  ${problem}`);
  if (problems.length > MOST_SHOWN) console.error(`  and ${problems.length - MOST_SHOWN} more`);
  if (problems.length > 0) process.exitCode = 1;
}
