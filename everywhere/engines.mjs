// Engines that run on a server: each runs the ES modules and the CommonJS modules of the tarball.
import { join } from 'node:path';
import { parsed, run, tools } from './project.mjs';

/** @import { Answer } from './numbers/answer.mjs' */

/**
 * @typedef {object} Engine
 * @property {string} name
 * @property {'engines' | 'bun'} tools the set that has it
 * @property {(packages: string) => string} program
 * @property {readonly string[]} version words that make it say its version
 * @property {readonly string[]} words before the file to run
 */

/** @param {string} release @returns {Engine} */
const node = (release) => ({
  name: `node-${release}`,
  tools: 'engines',
  program: (packages) => join(packages, `node-${release}`, 'bin', 'node'),
  version: ['--version'],
  words: [],
});

/** The first is the oldest that package.json allows. */
const ENGINES = /** @type {readonly Engine[]} */ ([
  node('oldest'),
  node('22'),
  node('24'),
  node('newest'),
  {
    name: 'bun',
    tools: 'bun',
    program: (/** @type {string} */ packages) => join(packages, '@oven', 'bun-linux-x64', 'bin', 'bun'),
    version: ['--version'],
    words: ['run', '--no-install'],
  },
  {
    name: 'deno',
    tools: 'engines',
    program: (/** @type {string} */ packages) => join(packages, '@deno', 'linux-x64-glibc', 'deno'),
    version: ['eval', 'console.log(`${Deno.version.deno}, V8 ${Deno.version.v8}`)'],
    // Of all that Deno guards, reading the files named is all it needs.
    words: ['run', '--no-prompt', '--no-remote', '--node-modules-dir=manual', '--allow-read=.'],
  },
]);

export const ENGINE_NAMES = ENGINES.map(({ name }) => name);

/** @param {string} printed */
const answerIn = (printed) => /** @type {Answer} */ (parsed(printed));

/** What the engine that runs this says about a round. @param {string} folder the consumer's @param {string} round its file */
export async function answerHere(folder, round) {
  return answerIn(await run(process.execPath, ['run.mjs', round], folder));
}

/**
 * @param {string} name of the engine; `node` is the one that runs this
 * @param {string} folder the consumer's
 * @returns {Promise<{ readonly version: string, readonly answers: Readonly<Record<string, Answer>> }>}
 */
export async function answersOf(name, folder) {
  const engine = ENGINES.find((one) => one.name === name);
  if (name !== 'node' && engine === undefined) throw new Error(`no engine ${name}`);
  if (engine !== undefined && (process.platform !== 'linux' || process.arch !== 'x64')) {
    throw new Error(
      `everywhere/tools/${engine.tools} is for Linux on x64; this is ${process.platform} on ${process.arch}`,
    );
  }
  const program = engine === undefined ? process.execPath : engine.program(await tools(engine.tools));
  const words = engine?.words ?? [];
  const version = (await run(program, engine?.version ?? ['--version'], folder)).trim();
  /** @type {Record<string, Answer>} */
  const answers = {};
  for (const [kind, file] of Object.entries({ ESM: 'run.mjs', CommonJS: 'run.cjs' })) {
    answers[kind] = answerIn(await run(program, [...words, file, 'round.json', 'report.json'], folder));
  }
  return { version, answers };
}
