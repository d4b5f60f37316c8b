// A test runner for Stryker that loads the tests once and then calls the same functions for every mutant, the quickest first
// and before them those that noticed the last ones: some fifty times as many mutants in an hour as with a test run each.
// Only where a mutant is executed while the modules load are they loaded anew. The functions are those of Vitest, so that
// a test means what it always means.
import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { DryRunStatus, MutantRunStatus, TestStatus } from '@stryker-mutator/api/test-runner';
import { collectTests, getFn, getHooks } from '@vitest/runner';
import { build } from 'esbuild';
import fc from 'fast-check';
import { TESTS_LEFT_OUT } from './rooms.mjs';

/**
 * @import { MutantCoverage, StrykerOptions } from '@stryker-mutator/api/core'
 * @import { DryRunResult, MutantRunOptions, MutantRunResult, TestResult, TestRunner } from '@stryker-mutator/api/test-runner'
 * @import { Task, VitestRunner } from '@vitest/runner'
 * @typedef {{ readonly id: string; readonly run: () => unknown }} Test
 * @typedef {{ readonly met: number; readonly milliseconds: number }} Work
 * @typedef {{ readonly loading: number; readonly tests: Readonly<Record<string, Work>> }} Seen
 */

const BUILT = '.mutation';
/** What the run without a mutant has shown. */
const SEEN = join(BUILT, 'seen.json');

/**
 * A test is taken for endless when it meets so many times as many mutants as without the active one, whichever they are.
 * A solver that closes by halves, where it closed in five steps, is far from that.
 */
const ENDLESS = 30;
const AT_LEAST = 1_000_000;
/** So many of the tests that noticed a mutant last are run as if they were fifty times as quick. */
const LATEST = 8;

// An instrumented source counts mutants that are met, and asks which is active. Both are done here in fewer steps: a state
// of the gas meets hundreds.
const COUNTED = /(?<=stryCov_\w+\()"\d+"(?:, "\d+")*(?=\))/g;
const COUNTS = /function stryCov_\w+\(\) \{/;
const ASKS = /stryMutAct_\w+\("(\d+)"\)/g;
const SWITCHES = `const switches$ = globalThis.${INSTRUMENTER_CONSTANTS.NAMESPACE};\n`;
const COUNT = '$& for (let i = 0; i < arguments.length; i += 1) switches$.counts[arguments[i]] += 1; return;';
const WATCH = '$& if (++switches$.met > switches$.mostMet) throw new Error("as good as endless"); return;';
/** More mutants than a room has. */
const MOST_MUTANTS = 100_000;
const NONE = -1;

/**
 * The instrumented sources look here for the mutant that is active, and count here.
 *
 * @type {{ active: number; counts: Uint32Array; met: number; mostMet: number }}
 */
const switches = {
  active: NONE,
  counts: new Uint32Array(MOST_MUTANTS),
  met: 0,
  mostMet: Number.POSITIVE_INFINITY,
};
Reflect.set(globalThis, INSTRUMENTER_CONSTANTS.NAMESPACE, switches);

/**
 * The tests below a task, each under the path of its titles.
 *
 * @param {Task} task
 * @param {string} path
 * @returns {Test[]}
 */
function testsOf(task, path) {
  if (task.type === 'suite' && Object.values(getHooks(task)).some(({ length }) => length > 0)) {
    throw new Error(`${path}: no hook is called here, a test has to put right by itself what it changes`);
  }
  if (task.type === 'suite') return task.tasks.flatMap((inner) => testsOf(inner, `${path} > ${inner.name}`));
  return task.mode === 'run' ? [{ id: path, run: getFn(task) }] : [];
}

/** Only what the collecting of tests asks for. @type {VitestRunner} */
const collector = {
  pool: 'mutation',
  config: {
    root: process.cwd(),
    setupFiles: [],
    name: undefined,
    passWithNoTests: false,
    testNamePattern: undefined,
    allowOnly: false,
    sequence: { seed: 0, hooks: 'stack', setupFiles: 'list' },
    chaiConfig: undefined,
    maxConcurrency: 1,
    // Stryker watches the time.
    testTimeout: 0,
    hookTimeout: 0,
    retry: 0,
    includeTaskLocation: false,
    tags: [],
    tagsFilter: undefined,
    strictTags: false,
  },
  importFile: (path) => import(pathToFileURL(path).href),
};

/** @implements {TestRunner} */
class CallingRunner {
  /** The setup file, then the test files. */
  #files;
  /** @type {readonly Test[] | undefined} */
  #tests;
  /** The mutant that was active while the modules were loaded. */
  #loadedWith = NONE;
  #loads = 0;
  /** Whether the modules that are built count. @type {boolean | undefined} */
  #counting;
  /** @type {Seen | undefined} */
  #seen;
  /** The tests that have noticed mutants, the latest last: neighbours are often noticed by the same. @type {Set<string>} */
  #latest = new Set();

  /** @param {StrykerOptions} options */
  constructor(options) {
    this.#files = ['tests/setup.ts', .../** @type {string[]} */ (options['tests'])];
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  /**
   * Bundles the tests with the sources, once for the run that counts which test meets which mutant and once for all
   * others, which need not count and are the faster for it.
   *
   * @param {boolean} counting
   */
  async #build(counting) {
    if (this.#counting === counting) return;
    this.#counting = counting;
    await build({
      absWorkingDir: process.cwd(),
      entryPoints: this.#files,
      bundle: true,
      splitting: true,
      outbase: '.',
      outdir: this.#folder('built'),
      outExtension: { '.js': '.mjs' },
      platform: 'node',
      format: 'esm',
      target: 'node20',
      packages: 'external',
      alias: {
        'isochore/record': resolve('src/record/index.ts'),
        'isochore/worked': resolve('src/worked/index.ts'),
        isochore: resolve('src/index.ts'),
      },
      plugins: [
        {
          name: 'tests and instrumented sources',
          setup(context) {
            // Tests read the files that lie beside them.
            context.onLoad({ filter: /[\\/]tests[\\/].*\.ts$/ }, async ({ path }) => {
              const text = await readFile(path, 'utf8');
              const place = JSON.stringify(pathToFileURL(path).href);
              return { contents: text.replaceAll('import.meta.url', place), loader: 'ts' };
            });
            context.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, async ({ path }) => {
              const text = await readFile(path, 'utf8');
              const asked = SWITCHES + text.replaceAll(ASKS, '(switches$.active === $1)');
              const contents = counting
                ? asked.replaceAll(COUNTED, (ids) => ids.replaceAll('"', '')).replace(COUNTS, COUNT)
                : asked.replace(COUNTS, WATCH);
              return { contents, loader: 'ts' };
            });
          },
        },
      ],
      logLevel: 'error',
    });
  }

  /** @param {string} name */
  #folder(name) {
    return join(BUILT, `${process.pid}`, name);
  }

  /**
   * Loads all modules anew, under an active mutant or none, and gives what went wrong, if anything did.
   *
   * @param {number} mutant
   * @returns {Promise<string | undefined>}
   */
  async #load(mutant) {
    this.#loads += 1;
    this.#loadedWith = mutant;
    this.#tests = undefined;
    // From another folder, because a module is loaded once from each place.
    const folder = this.#folder(`${this.#loads}`);
    await cp(this.#folder('built'), folder, { recursive: true });
    const [setup = '', ...files] = this.#files.map((file) => resolve(folder, file.replace(/\.ts$/, '.mjs')));
    switches.active = mutant;
    try {
      await import(pathToFileURL(setup).href);
      // The first counterexample is enough, it need not be the smallest.
      fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });
      const collected = await collectTests(files, collector);
      const failed = collected.find(({ result }) => result?.state === 'fail');
      if (failed !== undefined) return failed.result?.errors?.[0]?.message ?? 'a test file did not load';
      const tests = collected.flatMap((file, i) => testsOf(file, this.#files[i + 1] ?? ''));
      this.#tests = tests.filter(({ id }) => !TESTS_LEFT_OUT.some((part) => id.includes(part)));
      return undefined;
    } catch (error) {
      return String(error);
    }
  }

  /**
   * @param {Test} test
   * @returns {Promise<TestResult>}
   */
  async #run({ id, run }) {
    const start = performance.now();
    const result = () => ({ id, name: id, timeSpentMs: performance.now() - start });
    try {
      await run();
      return { ...result(), status: TestStatus.Success };
    } catch (error) {
      return { ...result(), status: TestStatus.Failed, failureMessage: String(error) };
    }
  }

  /** @returns {Promise<DryRunResult>} */
  async dryRun() {
    await this.#build(true);
    switches.counts.fill(0);
    const failed = await this.#load(NONE);
    if (failed !== undefined) return { status: DryRunStatus.Error, errorMessage: failed };
    /** @type {MutantCoverage} */
    const mutantCoverage = { static: counted(), perTest: {} };
    /** @type {TestResult[]} */
    const tests = [];
    for (const test of this.#tests ?? []) {
      switches.counts.fill(0);
      tests.push(await this.#run(test));
      mutantCoverage.perTest[test.id] = counted();
    }
    /** @type {Record<string, Work>} */
    const work = {};
    for (const { id, timeSpentMs } of tests) {
      work[id] = { met: sumOf(mutantCoverage.perTest[id] ?? {}), milliseconds: timeSpentMs };
    }
    /** @type {Seen} */
    const seen = { loading: sumOf(mutantCoverage.static), tests: work };
    await mkdir(BUILT, { recursive: true });
    await writeFile(SEEN, JSON.stringify(seen));
    return { status: DryRunStatus.Complete, tests, mutantCoverage };
  }

  /**
   * @param {MutantRunOptions} options
   * @returns {Promise<MutantRunResult>}
   */
  async mutantRun({ activeMutant: { id }, mutantActivation, testFilter }) {
    const seen = (this.#seen ??= await readSeen());
    const active = Number(id);
    const whileLoading = mutantActivation === 'static' ? active : NONE;
    limit(seen.loading);
    const counting = this.#counting;
    await this.#build(false);
    if (counting !== false || whileLoading !== NONE || this.#loadedWith !== NONE) {
      const failed = await this.#load(whileLoading);
      if (failed !== undefined && isEndless()) return { status: MutantRunStatus.Timeout, reason: failed };
      if (failed !== undefined) {
        return { status: MutantRunStatus.Killed, killedBy: ['loading'], failureMessage: failed, nrOfTests: 1 };
      }
    }
    switches.active = active;
    const wanted = testFilter && new Set(testFilter);
    const first = [...this.#latest].slice(-LATEST);
    // One of seconds is no good beginning, however much it notices.
    const place = (/** @type {Test} */ { id }) => (seen.tests[id]?.milliseconds ?? 0) * (first.includes(id) ? 0.02 : 1);
    const tests = (this.#tests ?? [])
      .filter((test) => wanted?.has(test.id) ?? true)
      .sort((a, b) => place(a) - place(b));
    for (const [i, test] of tests.entries()) {
      limit(seen.tests[test.id]?.met ?? 0);
      const result = await this.#run(test);
      if (isEndless()) return { status: MutantRunStatus.Timeout, reason: `endless: ${test.id}` };
      if (result.status !== TestStatus.Failed) continue;
      this.#latest.delete(test.id);
      this.#latest.add(test.id);
      const { failureMessage } = result;
      return { status: MutantRunStatus.Killed, killedBy: [test.id], failureMessage, nrOfTests: i + 1 };
    }
    return { status: MutantRunStatus.Survived, nrOfTests: tests.length };
  }
}

/** How often each mutant was met. @returns {Record<string, number>} */
function counted() {
  /** @type {Record<string, number>} */
  const met = {};
  switches.counts.forEach((count, id) => {
    if (count > 0) met[id] = count;
  });
  return met;
}

/** @param {number} met */
function limit(met) {
  switches.met = 0;
  switches.mostMet = ENDLESS * met + AT_LEAST;
}

function isEndless() {
  return switches.met > switches.mostMet;
}

/** @param {Readonly<Record<string, number>>} counts */
function sumOf(counts) {
  return Object.values(counts).reduce((sum, count) => sum + count, 0);
}

async function readSeen() {
  /** @type {unknown} */
  const read = JSON.parse(await readFile(SEEN, 'utf8'));
  return /** @type {Seen} */ (read);
}

/** @param {StrykerOptions} options */
function create(options) {
  return new CallingRunner(options);
}
create.inject = tokens(commonTokens.options);

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'calling', create)];
