// Whether the package that is tried out here is the one that would be published.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { documents, FILES, FOLDERS, ofProject } from './project.mjs';

/**
 * Holds a tarball against the release of `npm run supply`, where that was made after the last change of what it is made of.
 *
 * @param {string} tarball
 * @returns {{ readonly said: string, readonly held: boolean, readonly problem?: string }}
 */
export function comparedWithRelease(tarball) {
  const release = ofProject(`.cache/release/${basename(tarball)}`);
  const own = sha256(tarball);
  const makes = 'npm run supply makes it';
  const alone = (/** @type {string} */ why) => ({ said: `${own}; ${why}: ${makes}`, held: false });
  if (!existsSync(release)) return alone('there is no release to compare it with');
  if (statSync(release).mtimeMs < lastChange()) return alone('the release is older than the tree, and not compared');
  const other = sha256(release);
  if (own === other) return { said: `${own}, as the release`, held: true };
  return { said: own, held: true, problem: `the release made of the same tree has other bytes: ${other}` };
}

/** @param {string} path */
function sha256(path) {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

/** When something last changed of what a package is made of. A folder changes when a file comes or goes. */
function lastChange() {
  const inFolders = FOLDERS.flatMap((name) => [
    name,
    ...readdirSync(ofProject(name), { recursive: true, encoding: 'utf8' }).map((one) => `${name}/${one}`),
  ]);
  const paths = [...FILES, 'package-lock.json', ...inFolders, ...documents()];
  return Math.max(...paths.map((path) => statSync(ofProject(path)).mtimeMs));
}
