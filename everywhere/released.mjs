// Whether the package that is tried out here is the one that would be published.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { documents, FILES, FOLDERS, ofProject } from './project.mjs';

/**
 * Holds a tarball against the release of `npm run supply`, where that was made after the last change of what it is made of.
 *
 * @param {string} tarball
 * @returns {{ readonly said: string, readonly problem?: string }}
 */
export function comparedWithRelease(tarball) {
  const release = ofProject(`.cache/release/${basename(tarball)}`);
  const own = sha256(tarball);
  if (!existsSync(release)) return { said: `${own}; no release to compare it with: npm run supply makes one` };
  if (statSync(release).mtimeMs < lastChange()) {
    return {
      said: `${own}; not compared with the release, which is older than the tree: npm run supply makes it anew`,
    };
  }
  const other = sha256(release);
  if (own === other) return { said: `${own}, as the release` };
  return { said: own, problem: `the release of npm run supply, made of the same tree, has other bytes: ${other}` };
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
