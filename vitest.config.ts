import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Files that put other modules in the place of ours, or watch or repeat their loading: each in a process of its own. */
const ALONE = ['tests/basis/fault.test.ts', 'tests/docs/policy.test.ts', 'tests/gas/frozen.test.ts'];

const source = (path: string): string => fileURLToPath(new URL(`./src/${path}`, import.meta.url));

export default defineConfig({
  resolve: {
    // Tests and the examples in the documents import the package by its name. Longest name first.
    alias: [
      { find: /^isochore\/record$/, replacement: source('record/index.ts') },
      { find: /^isochore\/worked$/, replacement: source('worked/index.ts') },
      { find: /^isochore$/, replacement: source('index.ts') },
    ],
  },
  test: {
    setupFiles: ['tests/setup.ts'],
    // Nothing here asserts a time, and the machine may be busy.
    testTimeout: 60_000,
    // Left alone it keeps a core free, which of two is half.
    maxWorkers: '100%',
    // Young objects in plenty: with the usual room for them a quarter of the time goes into sweeping it.
    execArgv: ['--max-semi-space-size=64'],
    projects: [
      {
        extends: true,
        test: {
          name: 'sources loaded once',
          include: ['tests/**/*.test.ts'],
          exclude: ALONE,
          // Loading the sources anew for each file would take a fifth of the time.
          isolate: false,
          typecheck: { enabled: true, tsconfig: 'tests/tsconfig.json', include: ['tests/**/*.test-d.ts'] },
        },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
  },
});
