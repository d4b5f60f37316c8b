// Calls every public function with inputs of all kinds, and looks what comes of them.
//
//   node fuzz/run.mjs --seed=<integer> --inputs=<count> [--only=<function>] [--batch=<number>]
//
// The same seed gives the same inputs. A batch of a function does not depend on what else is run: --only and --batch
// repeat one. Exit status: 0 if all held, 1 if something did not, 2 if it was called wrongly.
import { setTimeout as wait } from 'node:timers/promises';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { BATCH, runBatch, sizeOf } from './batch.mjs';
import { any } from './recipe.mjs';
import { SUBJECTS, unmatched } from './subjects/all.mjs';

/** @import { Finding } from './batch.mjs' */

/**
 * @typedef {object} Asked
 * @property {number} seed
 * @property {number} inputs
 * @property {string | undefined} only
 * @property {number | undefined} batch
 */
/** @typedef {{ readonly finding: Finding } | { readonly at: number } | { readonly done: Readonly<Record<string, number>>, readonly calls: number }} Message */

/** Milliseconds without a new input after which the one that runs counts as hanging. */
const HANGS = 120_000;

/** What the worker is at: subject, batch, input. */
const SUBJECT = 0;
const NUMBER = 1;
const INPUT = 2;

if (isMainThread) await main();
else work();

async function main() {
  const asked = parsed(process.argv.slice(2));
  const { uncovered, unknown } = unmatched();
  if (uncovered.length > 0 || unknown.length > 0) {
    if (uncovered.length > 0)
      console.error(`exported, and not fuzzed: ${uncovered.join(', ')}; give each a subject in fuzz/subjects`);
    if (unknown.length > 0) console.error(`fuzzed, and not exported: ${unknown.join(', ')}`);
    process.exit(1);
  }
  console.log(`seed ${asked.seed}, ${asked.inputs} inputs, ${SUBJECTS.length} functions`);
  const place = new Int32Array(new SharedArrayBuffer(12));
  const worker = new Worker(new URL(import.meta.url), { workerData: { asked, place } });
  /** @type {Finding[]} */
  const findings = [];
  const done = new Promise((/** @type {(done: Extract<Message, { calls: number }>) => void} */ resolve, reject) => {
    worker.on('message', (/** @type {Message} */ message) => {
      if ('calls' in message) return resolve(message);
      if ('at' in message) return console.log(`${message.at} inputs`);
      findings.push(message.finding);
      print(message.finding, asked.seed);
    });
    worker.on('error', reject);
  });
  void watch(place, asked.seed);
  const { calls, done: counts } = await done;
  const said = Object.entries(counts)
    .map(([what, n]) => `${n} ${what}`)
    .join(', ');
  console.log(`seed ${asked.seed}: ${calls} inputs; ${said}; ${findings.length} different findings`);
  process.exit(findings.length === 0 ? 0 : 1);
}

/** @param {readonly string[]} words @returns {Asked} */
function parsed(words) {
  const given = new Map(
    words.map((word) => {
      const [, key = word, value = ''] = /^--(seed|inputs|only|batch)=(.+)$/.exec(word) ?? [];
      return [key, value];
    }),
  );
  const [seed = '', only, batch] = ['seed', 'only', 'batch'].map((key) => given.get(key));
  const inputs = given.get('inputs') ?? String(BATCH);
  const sound = [seed, inputs, batch ?? '0'].every((text) => /^\d{1,9}$/.test(text));
  const known = only === undefined ? batch === undefined : SUBJECTS.some(({ name }) => name === only);
  const isAll = [...given.keys()].every((key) => ['seed', 'inputs', 'only', 'batch'].includes(key));
  if (!sound || !known || !isAll) {
    console.error('usage: run.mjs --seed=<integer> --inputs=<count> [--only=<function> [--batch=<number>]]');
    process.exit(2);
  }
  return { seed: Number(seed), inputs: Number(inputs), only, batch: batch === undefined ? undefined : Number(batch) };
}

/** @param {Finding} finding @param {number} seed */
function print({ name, batch, wrong, input }, seed) {
  console.log(
    `\n${name}: ${wrong}\n  ${input}\n  again: npm run fuzz -- --seed=${seed} --only=${name} --batch=${batch}`,
  );
}

/** Ends the run if one input never ends. @param {Int32Array} place @param {number} seed */
async function watch(place, seed) {
  for (let before = ''; ;) {
    await wait(HANGS, undefined, { ref: false });
    const now = place.join(' ');
    if (now === before) {
      const name = SUBJECTS[place[SUBJECT] ?? -1]?.name ?? '';
      console.log(`\n${name}: hangs, at input ${place[INPUT] ?? 0} of batch ${place[NUMBER] ?? 0}`);
      console.log(`  again: npm run fuzz -- --seed=${seed} --only=${name} --batch=${place[NUMBER] ?? 0}`);
      process.exit(1);
    }
    before = now;
  }
}

/** In the worker: batch after batch, of each function in turn. */
function work() {
  const { asked, place } = /** @type {{ asked: Asked, place: Int32Array }} */ (any(workerData));
  const subjects = SUBJECTS.map((subject, index) => ({ subject, index, batch: asked.batch ?? 0 })).filter(
    ({ subject }) => asked.only === undefined || subject.name === asked.only,
  );
  /** @type {Set<string>} */
  const known = new Set();
  /** @type {Record<string, number>} */
  const counts = {};
  let calls = 0;
  while (calls < asked.inputs) {
    for (const next of subjects) {
      // A function of weight two has two batches in each turn; one of a half, a batch of half the size.
      const batches = Math.max(1, next.subject.weight ?? 1);
      for (let i = 0; i < batches && calls < asked.inputs; i += 1) {
        const { subject, batch } = next;
        const size = Math.min(sizeOf(subject), asked.inputs - calls);
        place.set([next.index, batch, 0]);
        const { findings, counts: own } = runBatch(subject, { seed: asked.seed, batch, size }, known, (input) => {
          place[INPUT] = input;
        });
        for (const finding of findings) parentPort?.postMessage({ finding });
        for (const [what, n] of Object.entries(own)) counts[what] = (counts[what] ?? 0) + n;
        calls += size;
        if (Math.floor(calls / 100_000) > Math.floor((calls - size) / 100_000)) parentPort?.postMessage({ at: calls });
        next.batch += 1;
      }
    }
  }
  parentPort?.postMessage({ done: counts, calls });
}
