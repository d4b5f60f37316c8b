// The tree built and packed, an empty project with the tarball in it, and the tools that the checks need.
import { execFile } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const root = fileURLToPath(new URL('..', import.meta.url));
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const start = promisify(execFile);

/**
 * Runs a program to its end and gives what it printed; fails with what it printed if it fails.
 *
 * @param {string} program
 * @param {readonly string[]} words
 * @param {string} folder
 * @returns {Promise<string>}
 */
export async function run(program, words, folder) {
  try {
    const { stdout } = await start(program, words, { cwd: folder, maxBuffer: 1e9, timeout: 600_000 });
    return stdout;
  } catch (error) {
    const { stdout = '', stderr = '' } = /** @type {{ stdout?: string, stderr?: string }} */ (error);
    const said = `${stdout}\n${stderr}`.trim();
    throw new Error(`${program} ${words.join(' ')}\n${said === '' ? String(error) : said}`, { cause: error });
  }
}

/** A file of this folder. @param {string} path */
export const own = (path) => fileURLToPath(new URL(path, import.meta.url));

/** A file of the project. @param {string} path */
export const ofProject = (path) => join(root, path);

// What a package is made of.
const PAGES = ['README.md', 'DEVELOPERS.md', 'SECURITY.md', 'LICENSE', 'CHANGELOG.md'];
export const FILES = ['package.json', 'tsconfig.json', 'tsup.config.ts', ...PAGES];
export const FOLDERS = ['src', 'examples'];
export const documents = () =>
  readdirSync(ofProject('docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`);

/** @param {string} text @returns {unknown} */
export const parsed = (text) => JSON.parse(text);

/** @param {string} path */
const json = (path) => parsed(readFileSync(path, 'utf8'));

/**
 * Builds and packs a copy of the tree, so that its own dist stays as it is.
 *
 * @param {string} work a folder outside the tree
 * @returns {Promise<string>} path of the tarball
 */
async function packed(work) {
  const tree = join(work, 'tree');
  mkdirSync(tree);
  mkdirSync(join(tree, 'docs'));
  for (const name of [...FILES, ...documents()]) copyFileSync(ofProject(name), join(tree, name));
  for (const name of FOLDERS) cpSync(ofProject(name), join(tree, name), { recursive: true });
  symlinkSync(ofProject('node_modules'), join(tree, 'node_modules'));
  await run(process.execPath, [ofProject('node_modules/tsup/dist/cli-default.js'), '--silent'], tree);
  await run(npm, ['pack', '--ignore-scripts', '--pack-destination', work], tree);
  const tarball = readdirSync(work).find((name) => name.endsWith('.tgz'));
  if (tarball === undefined) throw new Error('npm pack left no tarball');
  return join(work, tarball);
}

/**
 * An empty project outside the tree with the packed tarball installed, and the checks' own files beside it. What isochore
 * depends on is taken in the versions that the tree is tested with.
 *
 * @param {string} work a folder outside the tree
 * @returns {Promise<{ readonly folder: string, readonly tarball: string }>} paths of the project and of the tarball
 */
export async function consumer(work) {
  const tarball = await packed(work);
  const folder = join(work, 'consumer');
  mkdirSync(folder);
  const { dependencies } = /** @type {{ dependencies: Record<string, string> }} */ (json(ofProject('package.json')));
  const { packages } = /** @type {{ packages: Record<string, { version: string }> }} */ (
    json(ofProject('package-lock.json'))
  );
  const overrides = Object.fromEntries(
    Object.keys(dependencies).map((name) => [name, packages[`node_modules/${name}`]?.version]),
  );
  const manifest = { name: 'consumer', private: true, dependencies: { isochore: `file:${tarball}` }, overrides };
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest, null, 2));
  await run(npm, ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--prefer-offline'], folder);
  for (const part of ['consumer', 'documents', 'numbers', 'types']) cpSync(own(part), folder, { recursive: true });
  const round = readFileSync(ofProject('examples/round.json'), 'utf8');
  writeFileSync(join(folder, 'round.json'), round);
  writeFileSync(join(folder, 'large-round.json'), JSON.stringify(enlarged(round)));
  return { folder, tarball };
}

/**
 * The groups of a round 32 times over, with other pressures each time, so that many different numbers stand in its report.
 *
 * @param {string} text
 */
function enlarged(text) {
  /** @typedef {{ visit: { pressure: { value: number | string } }[] }} Accumulator */
  const round = /** @type {{ groups: { name: string, accumulators: Accumulator[] }[] }} */ (parsed(text));
  const copy = (/** @type {number} */ n) =>
    structuredClone(round.groups).map((group) => {
      for (const { visit } of group.accumulators) {
        for (const { pressure } of visit) {
          pressure.value = Number((Number(pressure.value) * (1 + n / 1000)).toPrecision(5));
        }
      }
      return { ...group, name: `${group.name} ${n}` };
    });
  return { ...round, groups: Array.from({ length: 32 }, (_, n) => copy(n)).flat() };
}

/**
 * The folder of installed packages of a set of tools; installed first, in the versions of its lock file, if it is not.
 * Install scripts do not run: each binary is in its package.
 *
 * @param {'bun' | 'engines' | 'browsers' | 'types'} name
 */
export async function tools(name) {
  const folder = own(`tools/${name}`);
  const installed = join(folder, 'node_modules', '.package-lock.json');
  // npm writes it last.
  const due =
    !existsSync(installed) || statSync(installed).mtimeMs < statSync(join(folder, 'package-lock.json')).mtimeMs;
  if (due) {
    console.log(`installing the ${name} of everywhere/tools/${name}`);
    await run(npm, ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--prefer-offline'], folder);
  }
  return join(folder, 'node_modules');
}
