// Proves the packed tarball wherever it may run, and holds its numbers against one another.
//
//   node everywhere/run.mjs [--quick] [--only=node,bun,…] [--update]
//
// --quick   the Node that runs this, Bun, and the types with the oldest and the current compiler
// --only=   the parts named, of those listed by a wrong one
// --update  writes everywhere/numbers/expected.txt anew, by the Node that runs this
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BROWSER_NAMES, browserOf, CONTROL, hasRecord, PAGE_NAMES, pagesOf } from './browsers.mjs';
import { compared, otherBits, sweepProblems } from './compare.mjs';
import { answerHere, answersOf, ENGINE_NAMES } from './engines.mjs';
import { laidOut } from './layout.mjs';
import { consumer, own } from './project.mjs';
import { comparedWithRelease } from './released.mjs';
import { AIM_MS, startsOf } from './start.mjs';
import { typesIn } from './types.mjs';

/** @import { Answer } from './numbers/answer.mjs' */

const EXPECTED = own('numbers/expected.txt');
const PARTS = ['node', ...ENGINE_NAMES, ...BROWSER_NAMES, 'layout', 'types', 'start'];
/** Two families of engines, and the types. */
const QUICK = ['node', 'bun', 'types'];

const words = process.argv.slice(2);
const only = words.filter((word) => word.startsWith('--only=')).flatMap((word) => word.slice(7).split(','));
const [quick, update] = [words.includes('--quick'), words.includes('--update')];
const others = words.filter((word) => word !== '--quick' && word !== '--update' && !word.startsWith('--only='));
const strangers = only.filter((part) => !PARTS.includes(part));
if (others.length > 0 || strangers.length > 0 || (quick && only.length > 0)) {
  console.error(`usage: run.mjs [--quick | --only=PART,…] [--update]; parts: ${PARTS.join(', ')}`);
  process.exit(2);
}
const parts = only.length > 0 ? only : quick ? QUICK : PARTS;

let failures = 0;
/** @param {string} text */
const say = (text) => console.log(`   ${text}`);
/** @param {string} text */
function fail(text) {
  failures += 1;
  console.log(`   FAILED ${text.split('\n').slice(0, 30).join('\n          ')}`);
}

/** Runs a step, and says how long it took. @param {string} title @param {() => void | Promise<void>} work */
async function step(title, work) {
  console.log(`== ${title}`);
  const start = performance.now();
  try {
    await work();
  } catch (error) {
    fail(error instanceof Error ? error.message : String(error));
  }
  say(`${((performance.now() - start) / 1000).toFixed(1)} s`);
}

/**
 * @param {string} name
 * @param {Partial<Answer>} answer
 * @param {boolean} withRecord whether the record was asked too
 * @param {readonly string[]} expected
 * @param {Answer} here
 */
function hold(name, { lines = [], sweeps = {}, judgedAgain = '' }, withRecord, expected, here) {
  const { sameMath, count, problems } = compared(lines, withRecord ? expected : expected.slice(0, here.ofCore));
  problems.push(...sweepProblems(sweeps, here.sweeps));
  say(`${name}: ${count} results, ${problems.length} not the same to the bit`);
  if (!sameMath) say(`  its own Math rounds otherwise; in other bits than here: ${otherBits(sweeps, here.sweeps)}`);
  if (judgedAgain !== '') say(`  a large report made here, judged again there: ${judgedAgain}`);
  if (withRecord && !judgedAgain.startsWith('same')) fail(`${name}: the large report is not the same`);
  if (problems.length > 0) fail(`${name}: ${problems.length} problems\n${problems.slice(0, 20).join('\n')}`);
}

/** @param {string} folder @param {Answer} here */
async function all(folder, here) {
  const expected = readFileSync(EXPECTED, 'utf8').trimEnd().split('\n').slice(1);
  // A result that went missing is no result that agrees.
  if (here.lines.length !== expected.length) fail(`${here.lines.length} lines here, ${expected.length} expected`);

  for (const engine of ['node', ...ENGINE_NAMES].filter((name) => parts.includes(name))) {
    await step(engine, async () => {
      const { version, answers } = await answersOf(engine, folder);
      say(version);
      for (const [kind, answer] of Object.entries(answers)) {
        hold(kind, answer, true, expected, here);
      }
    });
  }

  for (const browser of BROWSER_NAMES.filter((name) => parts.includes(name))) {
    await step(browser, async () => {
      const { version, pages } = await pagesOf(browser, folder);
      say(version);
      for (const page of PAGE_NAMES) {
        const { error, violations, ...answer } = pages.get(page) ?? { error: 'no answer', violations: [] };
        if (page === CONTROL) {
          if (violations.length === 0) fail('the control page: what its policy forbids is not told of');
          continue;
        }
        if (violations.length > 0) fail(`${page} violates its policy: ${violations.join('; ')}`);
        if (error === undefined) hold(`${page}, its policy kept`, answer, hasRecord(page), expected, here);
        else fail(`${page}: ${error}`);
      }
    });
  }

  if (parts.includes('layout')) {
    await step('layout', async () => {
      const { problems, count, cards, version } = await laidOut(folder);
      say(`${version}: ${count} documents on four screens and on paper, ${cards} of them cards of one page each`);
      for (const problem of problems) fail(problem);
    });
  }

  if (parts.includes('types')) {
    await step('types', async () => {
      const { problems, count } = await typesIn(folder, quick);
      say(`${count} consumers compiled`);
      for (const problem of problems) fail(problem);
    });
  }

  if (parts.includes('start')) {
    await step('start', () => {
      for (const { name, median, low, high, files } of startsOf(folder)) {
        const range = `middle half ${low.toFixed(1)} to ${high.toFixed(1)}`;
        say(`${name}: ${median.toFixed(1)} ms more than an empty module (${range}), ${files} files of dist`);
        if (name === "import 'isochore'" && median > AIM_MS) say(`  WARNING more than the ${AIM_MS} ms aimed at`);
      }
    });
  }
}

// What is not there is said before minutes go by.
for (const browser of BROWSER_NAMES.filter(
  (name) => parts.includes(name) || (name === 'chromium' && parts.includes('layout')),
)) {
  try {
    browserOf(browser);
  } catch (error) {
    fail(String(error));
  }
}
if (failures > 0) process.exit(1);

const work = mkdtempSync(join(tmpdir(), 'isochore-everywhere-'));
try {
  /** @type {{ folder: string, here: Answer } | undefined} */
  let ready;
  await step('build, pack and install', async () => {
    const { folder, tarball } = await consumer(work);
    const { problem, said } = comparedWithRelease(tarball);
    say(said);
    if (problem !== undefined) fail(problem);
    const here = await answerHere(folder, 'round.json');
    const { report } = await answerHere(folder, 'large-round.json');
    writeFileSync(join(folder, 'report.json'), report);
    ready = { folder, here };
  });
  if (ready !== undefined && update) {
    const about = `written by everywhere/run.mjs --update; a number is the bits of its double, and the same in decimal`;
    writeFileSync(EXPECTED, `${[about, ...ready.here.lines].join('\n')}\n`);
    say(`${ready.here.lines.length} lines written; read the difference before it is committed`);
  }
  if (ready !== undefined) await all(ready.folder, ready.here);
} finally {
  rmSync(work, { recursive: true, force: true });
}
console.log(failures === 0 ? `everywhere: ${parts.join(', ')} passed` : `everywhere: ${failures} failed`);
process.exitCode = failures === 0 ? 0 : 1;
