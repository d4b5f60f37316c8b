// What importing costs a program that starts: starts of a process with an import and without, in turns.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const TURNS = 41;
/** What importing the core may add to an empty module, in milliseconds. An aim: no test asserts a time. */
export const AIM_MS = 5;

const PROGRAMS = {
  empty: { file: 'start-empty.mjs', text: 'export {};\n' },
  "import 'isochore'": { file: 'start-core.mjs', text: "import 'isochore';\n" },
  "require('isochore')": { file: 'start-core.cjs', text: "require('isochore');\n" },
  "import 'isochore/record'": { file: 'start-record.mjs', text: "import 'isochore/record';\n" },
  "import 'isochore/worked'": { file: 'start-worked.mjs', text: "import 'isochore/worked';\n" },
};

/** @param {readonly number[]} values @param {number} share */
function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}

/** Milliseconds from the start of a process to its end. @param {string} file @param {string} folder */
function timed(file, folder) {
  const before = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, [file], { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${file}: ${stderr}`);
  return Number(process.hrtime.bigint() - before) / 1e6;
}

/**
 * Files of dist that an entry loads. @param {string} entry @returns {ReadonlySet<string>}
 */
function filesOf(entry) {
  const files = new Set([entry]);
  for (const file of files) {
    // As the build writes them, each on a line of its own.
    const imports = readFileSync(file, 'utf8').matchAll(
      /^(?:\}|import|export)[^"'\n]*["'](\.{1,2}\/[^"'\n]+\.js)["'];$/gm,
    );
    for (const [, path] of imports) {
      files.add(join(dirname(file), path ?? ''));
    }
  }
  return files;
}

/**
 * @param {string} folder the consumer's
 * @returns {readonly { readonly name: string, readonly median: number, readonly low: number, readonly high: number, readonly files: number }[]}
 * milliseconds more than the empty module, with the middle half of the turns
 */
export function startsOf(folder) {
  for (const { file, text } of Object.values(PROGRAMS)) writeFileSync(join(folder, file), text);
  /** @type {Record<string, number[]>} */
  const more = {};
  for (let turn = 0; turn < TURNS; turn += 1) {
    const empty = timed(PROGRAMS.empty.file, folder);
    for (const [name, { file }] of Object.entries(PROGRAMS)) {
      if (file === PROGRAMS.empty.file) continue;
      // Each within its turn, so that a slow minute slows both.
      (more[name] ??= []).push(timed(file, folder) - empty);
    }
  }
  const dist = join(folder, 'node_modules', 'isochore', 'dist');
  return Object.entries(more).map(([name, values]) => ({
    name,
    median: quantile(values, 0.5),
    low: quantile(values, 0.25),
    high: quantile(values, 0.75),
    files: filesOf(join(dist, `${/isochore\/(\w+)/.exec(name)?.[1] ?? '.'}/index.js`)).size,
  }));
}
