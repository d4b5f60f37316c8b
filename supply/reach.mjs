// What the package as released can reach: numbers and text. No file, no network, no clock, no environment, no code from
// text. Each of its files is read, and all that they load, the dependencies as well, in both builds.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Linter } from 'eslint';
import ts from 'typescript';
import { TARBALL } from './release.mjs';

/** Of the language, but not for the package itself: what compiles text, or reaches what is not named. */
const NOT_OURS = ['eval', 'Function', 'globalThis', 'Intl', 'SharedArrayBuffer', 'Atomics'];

/** Reads the clock or the zone of the machine, unless it parses a text. */
const CLOCK = 'Date, for more than Date.parse';

/**
 * What the dependencies name beyond the language. decimal.js: random numbers, if it is told to make secure ones, and ways
 * to be loaded without modules. zod: kinds of value that no round holds, and the browser, to know whether it may compile.
 *
 * @type {Readonly<Record<string, readonly string[]>>}
 */
const THEIRS = {
  'decimal.js': [CLOCK, 'crypto', 'define', 'self', 'window'],
  zod: [CLOCK, 'File', 'URL', 'atob', 'btoa', 'navigator'],
};

/** @type {readonly { extension: string, globals: string[], find: (name: string) => string }[]} */
const BUILDS = [
  { extension: '.js', globals: [], find: (name) => fileURLToPath(import.meta.resolve(name)) },
  { extension: '.cjs', globals: ['require', 'module', 'exports'], find: createRequire(import.meta.url).resolve },
];

/** @returns {{ problems: string[], said: string }} */
export function reach() {
  const folder = mkdtempSync(`${tmpdir()}/isochore-reach-`);
  try {
    execFileSync('tar', ['-xzf', TARBALL, '-C', folder]);
    return reachOf(`${folder}/package/`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** @param {string} folder @returns {{ problems: string[], said: string }} */
function reachOf(folder) {
  /** @type {Set<string>} */
  const problems = new Set();
  const own = readdirSync(`${folder}dist`, { recursive: true, encoding: 'utf8' });
  let files = 0;
  for (const { extension, globals, find } of BUILDS) {
    const built = own.filter((path) => path.endsWith(extension)).map((path) => `${folder}dist/${path}`);
    const seen = new Set(built);
    for (const path of seen) {
      files += 1;
      const text = readFileSync(path, 'utf8');
      const owner = /node_modules\/([^/]+)\//.exec(path)?.[1];
      const who = owner ?? path.slice(folder.length);
      for (const name of importsOf(text)) {
        if (/^\.{1,2}\//.test(name)) seen.add(resolve(dirname(path), name));
        else if (Object.keys(THEIRS).includes(name.replace(/\/.*$/, ''))) seen.add(find(name));
        else problems.add(`${who} imports ${name}`);
      }
      for (const name of globalsOf(text, path)) {
        const allowed = owner === undefined ? globals : [...globals, ...NOT_OURS, ...(THEIRS[owner] ?? [])];
        if (!allowed.includes(name)) problems.add(`${who} names ${name}`);
      }
    }
    if (built.length === 0) problems.add(`no ${extension} in dist`);
  }
  return { problems: [...problems].sort(), said: `${files} files of the package and its dependencies read` };
}

/** @param {string} text */
function importsOf(text) {
  return ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName);
}

const linter = new Linter();

/** Names that no scope of a file declares, and those of the language that the package is not to use. @param {string} text @param {string} path */
function globalsOf(text, path) {
  const isModule = !path.endsWith('.cjs');
  const found = linter.verify(
    text,
    {
      files: ['**/*'],
      languageOptions: {
        ecmaVersion: 2022,
        sourceType: isModule ? 'module' : 'commonjs',
        globals: { require: 'off', exports: 'off', module: 'off' },
      },
      linterOptions: { noInlineConfig: true },
      rules: {
        'no-undef': ['error', { typeof: true }],
        'no-restricted-globals': ['error', ...NOT_OURS],
        // What is loaded must be named: otherwise it is not read here.
        'no-restricted-syntax': [
          'error',
          { selector: 'ImportExpression', message: "'import()'" },
          {
            selector: "CallExpression[callee.name='require']:not([arguments.0.type='Literal'])",
            message: "'require() of what is not named'",
          },
          {
            selector:
              "Identifier[name='Date']:not(MemberExpression[object.name='Date'][property.name='parse'] > Identifier)",
            message: `'${CLOCK}'`,
          },
          { selector: 'MetaProperty[meta.name=import]', message: "'import.meta'" },
        ],
      },
    },
    { filename: 'built.js' },
  );
  return new Set(found.map(({ message }) => /'(.*?)'/.exec(message)?.[1] ?? message));
}
