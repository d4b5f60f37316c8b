// The packages that the lock files name: what `npm ci` installs, on any machine.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** JSON as what it is: not known. @param {string} text @returns {unknown} */
export function parsed(text) {
  return JSON.parse(text);
}

/**
 * @typedef {object} Locked
 * @property {string} version
 * @property {string} [license]
 * @property {string} [integrity]
 * @property {boolean} [dev]
 * @property {boolean} [optional]
 * @property {boolean} [hasInstallScript]
 */

/**
 * @typedef {object} Manifest
 * @property {string} name
 * @property {string} version
 * @property {unknown} [license]
 * @property {Record<string, string>} [scripts]
 * @property {Record<string, string>} [dependencies]
 * @property {Record<string, string>} [devDependencies]
 * @property {Record<string, boolean>} [allowScripts]
 * @property {readonly string[]} [files]
 */

/**
 * @typedef {object} Lock
 * @property {Record<string, Locked & { devDependencies?: unknown }>} packages
 */

/** @param {string} path of a folder, from the root */
export const manifestOf = (path) =>
  /** @type {Manifest} */ (parsed(readFileSync(`${ROOT}${path}package.json`, 'utf8')));

/** @param {string} folder from the root */
export const lockOf = (folder) =>
  /** @type {Lock} */ (parsed(readFileSync(`${ROOT}${folder}package-lock.json`, 'utf8')));

/** The folders with a lock file of their own: the root, and tools that are installed apart. */
const FOLDERS = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '*package-lock.json'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .split('\n')
  .filter((path) => existsSync(`${ROOT}${path}`) && path !== '')
  .map((path) => path.replace(/package-lock\.json$/, ''));

/**
 * Each with its path from the root, which tells it apart: a package may be there in several versions. What is locked
 * outside the root is for development, whatever its own lock file says.
 *
 * @type {readonly (readonly [string, Locked])[]}
 */
export const LOCKED = FOLDERS.flatMap((folder) =>
  Object.entries(lockOf(folder).packages)
    .filter(([path]) => path !== '')
    .map(([path, locked]) => /** @type {const} */ ([folder + path, folder === '' ? locked : { ...locked, dev: true }])),
);

/** Those that a program gets which depends on the published package. */
export const RUNTIME = LOCKED.filter(([, { dev }]) => dev !== true);
