// Changes the sources in one small place at a time and sees whether a test notices.
//
//   npm run mutation                          every room; writes summary.md and survivors.md
//   npm run mutation -- src/gas               a room, or files; writes their part of the summary
//   npm run mutation -- --since=HEAD~1        the files that differ from a commit; writes nothing
//   npm run mutation -- … --minutes=8         ends in time, and says what it did not come to
//   npm run mutation -- … --at-once=2         as many processes
//
// Fails if the score of a room, of its files that were run, lies below the threshold, if a survivor has no reason in
// accepted.json, or a reason there no survivor. For a change, of which it may not come to everything, it fails if a survivor
// has no reason in a room where all others have, or if it came to no mutant of those rooms at all. They are run first.
import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ROOMS, SETTLED, testFilesOf } from './rooms.mjs';
import { changedFiles, hashOf, readAccepted, readRows, scoreOf, writeSummary, writeSurvivors } from './tables.mjs';

/**
 * @typedef {{ line: number; column: number }} Position
 * @typedef {{ id: string; fileName: string; location: { start: Position; end: Position }; mutatorName: string; replacement: string; status: string }} Result
 * @typedef {{ file: string; place: string; line: string; from: string; to: string }} Survivor
 * @typedef {{ room: string; own: readonly string[]; results: Result[]; notRun: Map<string, string> }} Run
 */

const THRESHOLD = 90;
/** What a run needs at least: the tests without a mutant take a quarter of a minute, or half. */
const LEAST_MS = 45_000;
const ROOT = fileURLToPath(new URL('..', import.meta.url));
const SCRATCH = '.cache/mutation';
process.chdir(ROOT);

const { targets, since, minutes, atOnce } = wordsOf(process.argv.slice(2));
const files = since === undefined ? filesUnder(targets) : changedSince(since);
const rooms = ROOMS.filter((room) => files.some((file) => roomOf(file) === room));
if (rooms.length === 0) {
  console.log(since === undefined ? 'nothing there to mutate' : `nothing to mutate has changed since ${since}`);
  sayChanged(readRows());
  process.exit(since === undefined ? 2 : 0);
}

const end = Date.now() + minutes * 60_000;
/** As they are now: the run copies them, and takes its time. */
const hashes = new Map(files.map((file) => [file, hashOf(file)]));
/** @type {{ room: string; tests: readonly string[]; own: string[] }[]} */
const batches = [];
for (const room of rooms) {
  for (const file of files) {
    if (roomOf(file) !== room) continue;
    const tests = await testFilesOf(file, ROOT);
    const same = batches.find((one) => one.room === room && one.tests.join() === tests.join());
    if (same === undefined) batches.push({ room, tests, own: [file] });
    else same.own.push(file);
  }
}
if (since !== undefined) batches.sort((a, b) => Number(SETTLED.has(b.room)) - Number(SETTLED.has(a.room)));
/** @type {Map<string, Run>} */
const runs = new Map();
for (const [i, { room, tests, own }] of batches.entries()) {
  // What one leaves of its share is for those after it; a room that is not settled gets what the others leave.
  const rivals = batches.slice(i).filter((one) => since === undefined || SETTLED.has(one.room) === SETTLED.has(room));
  const left = end - Date.now();
  const share = Math.min(left, Math.max(left / rivals.length, LEAST_MS));
  const run = share < LEAST_MS / 2 ? notBegun(room, own) : await mutate(room, `${room}-${i}`, tests, own, share);
  const before = runs.get(room);
  runs.set(room, before === undefined ? run : joined(before, run));
}

const accepted = readAccepted();
let failed = false;
for (const run of runs.values()) failed = report(run) || failed;
if (since !== undefined) failed = nothingJudged([...runs.values()].filter(({ room }) => SETTLED.has(room))) || failed;

const rows = readRows();
if (since === undefined) {
  for (const { own, results, notRun } of runs.values()) {
    for (const file of own) {
      if (!notRun.has(file)) rows.set(file, { ...countsOf(resultsIn(file, results)), hash: hashes.get(file) ?? '' });
    }
  }
  writeSummary(rows, filesUnder([]), ROOMS, THRESHOLD);
  writeSurvivors(accepted, ROOMS);
}
sayChanged(rows);
process.exitCode = failed ? 1 : 0;

/** @param {readonly string[]} words */
function wordsOf(words) {
  const usage =
    'usage: npm run mutation -- [src/<room> | file]… [--since=<commit>] [--minutes=<number>] [--at-once=<number>]';
  /** @param {string} name */
  const option = (name) => words.find((word) => word.startsWith(`--${name}=`))?.slice(name.length + 3);
  /** @param {string} name @param {number} otherwise */
  const number = (name, otherwise) => {
    const given = Number(option(name) ?? otherwise);
    return given > 0 ? given : stop(usage);
  };
  const unknown = words.filter((word) => word.startsWith('-') && !/^--(since|minutes|at-once)=./.test(word));
  if (unknown.length > 0) stop(usage);
  return {
    targets: words.filter((word) => !word.startsWith('-')),
    since: option('since'),
    minutes: number('minutes', Number.MAX_SAFE_INTEGER),
    atOnce: number('at-once', 1),
  };
}

/** @param {string} message @returns {never} */
function stop(message) {
  console.error(message);
  process.exit(2);
}

/** @param {string} file */
function roomOf(file) {
  return file.split('/')[1];
}

/** The sources below some paths, or below all rooms. @param {readonly string[]} paths */
function filesUnder(paths) {
  const all = ROOMS.flatMap((room) =>
    readdirSync(join('src', room), { recursive: true, encoding: 'utf8' }).map((name) => `src/${room}/${name}`),
  ).filter((file) => file.endsWith('.ts'));
  if (paths.length === 0) return all;
  return paths.flatMap((path) => {
    const wanted = relative(ROOT, join(ROOT, path));
    const found = all.filter((file) => file === wanted || file.startsWith(`${wanted}/`));
    return found.length > 0 ? found : stop(`nothing to mutate in ${path}`);
  });
}

/** @param {string} commit */
function changedSince(commit) {
  const git = (/** @type {string[]} */ ...args) => execFileSync('git', args, { encoding: 'utf8' }).split('\n');
  const changed = [
    ...git('diff', '--name-only', '--diff-filter=d', commit, '--', 'src'),
    ...git('ls-files', '--others', '--exclude-standard', '--', 'src'),
  ];
  const known = new Set(filesUnder([]));
  return changed.filter((file) => known.has(file));
}

/**
 * Runs Stryker on files of one room that the same tests judge, for so long at most.
 *
 * @param {string} room
 * @param {string} name of the files that are left
 * @param {readonly string[]} tests
 * @param {readonly string[]} own
 * @param {number} milliseconds
 * @returns {Promise<Run>}
 */
async function mutate(room, name, tests, own, milliseconds) {
  mkdirSync(SCRATCH, { recursive: true });
  const lines = join(ROOT, SCRATCH, `${name}.jsonl`);
  const config = join(SCRATCH, `${name}.json`);
  const sandboxes = join(SCRATCH, `${name}-sandboxes`); // its own, so that rooms may be run beside each other
  rmSync(lines, { force: true });
  writeFileSync(
    config,
    JSON.stringify({
      mutate: own,
      testRunner: 'calling',
      coverageAnalysis: 'perTest',
      plugins: ['./mutation/runner.mjs', './mutation/prose.mjs', './mutation/results.mjs'],
      ignorers: ['prose'],
      reporters: ['results'],
      concurrency: atOnce,
      tempDirName: sandboxes,
      ignorePatterns: ['.cache', '.git', 'dist', 'docs', 'bench', 'coverage'],
      // Only for loops that meet no mutant: the runner sees the others. The first run counts, and is the slower for it.
      timeoutFactor: 4,
      timeoutMS: 30_000,
      dryRunTimeoutMinutes: 60,
      logLevel: 'error',
      allowConsoleColors: false,
      warnings: false,
      tests,
      results: lines,
    }),
  );
  console.log(`== ${room}: ${own.length === 1 ? own[0] : `${own.length} files`}`);
  const ended = await run(
    ['node_modules/@stryker-mutator/core/bin/stryker.js', 'run', config],
    milliseconds,
    sandboxes,
  );
  const read = existsSync(lines) ? linesOf(lines) : [];
  const results = read.flatMap((line) => ('planned' in line ? [] : [line]));
  const done = new Set(results.map(({ id }) => id));
  /** @type {Map<string, number>} */
  const left = new Map();
  for (const line of read) {
    if (!('planned' in line) || done.has(line.planned)) continue;
    const file = relative(ROOT, line.fileName);
    left.set(file, (left.get(file) ?? 0) + 1);
  }
  const notRun = new Map([...left].map(([file, count]) => [file, `${count} mutants not run`]));
  // For a change it counts where rooms are settled: tests that cannot judge mutants yet hold nothing up elsewhere.
  if (ended !== 0 && ended !== 'out of time') {
    if (since === undefined || SETTLED.has(room)) stop(`Stryker ended with ${ended}`);
    console.log(`${room}: Stryker ended with ${ended}`);
  }
  if (ended !== 0 && !read.some((line) => 'planned' in line)) {
    // Not the same as a file without mutants, of which Stryker says that it has none, and ends well.
    const seconds = Math.round(milliseconds / 1000);
    const why = ended === 'out of time' ? `the tests alone took the ${seconds} s that it had` : 'Stryker failed';
    for (const file of own) notRun.set(file, `no mutant run, ${why}`);
  }
  return { room, own, results, notRun };
}

/**
 * What results.mjs has written.
 *
 * @typedef {({ planned: string; fileName: string } | Result)[]} Lines
 * @param {string} path
 * @returns {Lines}
 */
function linesOf(path) {
  const text = readFileSync(path, 'utf8').trimEnd();
  /** @type {unknown} */
  const read = JSON.parse(`[${text.replaceAll('\n', ',')}]`);
  return /** @type {Lines} */ (read);
}

/**
 * @param {readonly string[]} args
 * @param {number} milliseconds
 * @param {string} sandboxes removed at the end
 * @returns {Promise<number | null | 'out of time'>}
 */
function run(args, milliseconds, sandboxes) {
  return new Promise((resolve) => {
    // A group of its own, so that its own processes end with it.
    const child = spawn(process.execPath, args, { stdio: 'inherit', detached: true });
    let late = false;
    const limit = Math.min(Math.max(milliseconds, 0), 2 ** 31 - 1);
    const timer = setTimeout(() => {
      late = true;
      kill();
    }, limit);
    function kill() {
      if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, 'SIGKILL');
    }
    process.once('SIGINT', kill);
    process.once('SIGTERM', kill);
    child.once('close', (code) => {
      clearTimeout(timer);
      process.off('SIGINT', kill);
      process.off('SIGTERM', kill);
      rmSync(sandboxes, { recursive: true, force: true });
      resolve(late ? 'out of time' : code);
    });
  });
}

/** @param {string} room @param {readonly string[]} own @returns {Run} */
function notBegun(room, own) {
  return { room, own, results: [], notRun: new Map(own.map((file) => [file, 'no mutant run, the time was over'])) };
}

/** Two runs in one room. @param {Run} one @param {Run} other @returns {Run} */
function joined(one, other) {
  return {
    room: one.room,
    own: [...one.own, ...other.own],
    results: [...one.results, ...other.results],
    notRun: new Map([...one.notRun, ...other.notRun]),
  };
}

/** @param {readonly Result[]} results */
function countsOf(results) {
  /** @param {string} status */
  const count = (status) => results.filter((result) => result.status === status).length;
  const [killed, endless, survived, unreached] = ['Killed', 'Timeout', 'Survived', 'NoCoverage'].map(count);
  return { killed: killed ?? 0, endless: endless ?? 0, survived: survived ?? 0, unreached: unreached ?? 0 };
}

/** @param {string} file @param {readonly Result[]} results */
function resultsIn(file, results) {
  return results.filter(({ fileName }) => relative(ROOT, fileName) === file);
}

/** Says how a run ended; whether it fails. @param {Run} run */
function report({ room, own, results, notRun }) {
  const survivors = results.filter(({ status }) => status === 'Survived' || status === 'NoCoverage').map(survivorOf);
  const reasons = accepted.flatMap((one) => one.survivors).filter(({ file }) => own.includes(file));
  /** @param {Omit<Survivor, 'place'>} a @param {Omit<Survivor, 'place'>} b */
  const same = (a, b) => a.file === b.file && a.line === b.line && a.from === b.from && a.to === b.to;
  /** @param {Omit<Survivor, 'place'>} one */
  const times = (one) => survivors.filter((other) => same(one, other)).length;
  const unexplained = survivors.filter((one) => !reasons.some((reason) => same(one, reason)));
  // A reason looks at what stands in a line, and the same may stand in others, of which it is not true.
  const more = reasons.filter((reason) => times(reason) > (reason.times ?? 1));
  const stale = reasons.filter((reason) => !notRun.has(reason.file) && times(reason) < (reason.times ?? 1));
  const counts = countsOf(results);
  const score = scoreOf(counts);
  const { killed, endless, survived, unreached } = counts;
  console.log(`\n${room}: ${killed} killed, ${endless} timed out, ${survived} survived, ${unreached} not reached`);
  for (const one of unexplained) {
    console.log(`\n  ${one.place}, survived without a reason\n    ${one.line}\n    ${one.from}  →  ${one.to}`);
    console.log(`    ${JSON.stringify({ ...one, place: undefined })}`);
  }
  for (const reason of more) {
    const places = survivors.filter((one) => same(one, reason)).map(({ place }) => place);
    console.log(`\n  survived ${places.length} times, with a reason for ${reason.times ?? 1}: ${places.join(', ')}`);
    console.log(`    ${reason.line}\n    ${reason.from}  →  ${reason.to}`);
  }
  for (const reason of stale) {
    const { file, line, from, to } = reason;
    const now = times(reason) === 0 ? 'no longer a survivor' : `a survivor ${times(reason)} times, not ${reason.times}`;
    console.log(`\n  ${file}, ${now}: ${line}: ${from} → ${to}`);
  }
  for (const [file, what] of notRun) console.log(`  ${file}: ${what}`);
  // Nothing to judge is sound; that nothing was judged of what was asked for is not.
  if (Number.isNaN(score)) return since === undefined && notRun.size > 0;
  console.log(
    `  score ${score.toFixed(1)} %${notRun.size > 0 ? ' of those that were run' : ''}, ${THRESHOLD} % wanted`,
  );
  if (since !== undefined) return SETTLED.has(room) && unexplained.length + more.length > 0;
  return score < THRESHOLD || unexplained.length + more.length + stale.length > 0;
}

/** Says which scores are those of other sources. @param {ReturnType<typeof readRows>} rows */
function sayChanged(rows) {
  const changed = changedFiles(rows);
  if (changed.length === 0) return;
  console.log(`\nmutation/summary.md: ${changed.length} of ${rows.size} files have changed since they were run`);
  for (const file of changed) console.log(`  ${file}`);
}

/** Says where a change in a settled room met no judge; whether that is so in all of them. @param {readonly Run[]} settled */
function nothingJudged(settled) {
  const judged = settled.filter(({ results }) => !Number.isNaN(scoreOf(countsOf(results))));
  const unseen = settled.filter((run) => !judged.includes(run) && run.notRun.size > 0);
  for (const { room } of unseen) console.log(`\nWARNING ${room} has changed, and none of its mutants was judged`);
  if (unseen.length === 0 || judged.length > 0) return false;
  console.log('\nFAILED no mutant of any room that is settled was judged: give --minutes= more');
  return true;
}

/** A survivor by what stands there, so that lines may move. @param {Result} result @returns {Survivor} */
function survivorOf({ fileName, location: { start, end: last }, replacement }) {
  const lines = readFileSync(fileName, 'utf8').split('\n');
  const text = lines.slice(start.line - 1, last.line);
  text[text.length - 1] = (text.at(-1) ?? '').slice(0, last.column - 1);
  text[0] = (text[0] ?? '').slice(start.column - 1);
  const file = relative(ROOT, fileName);
  return {
    file,
    place: `${file}:${start.line}:${start.column}`,
    line: short(lines[start.line - 1] ?? ''),
    from: short(text.join(' ')),
    to: short(replacement),
  };
}

/** @param {string} text */
function short(text) {
  const one = text.trim().replace(/\s+/g, ' ');
  return one.length > 140 ? `${one.slice(0, 139)}…` : one;
}
