// Nothing runs when the package is installed, and every package is held to the bytes that were first locked.
import { existsSync } from 'node:fs';
import { LOCKED, manifestOf, ROOT, RUNTIME } from './locked.mjs';

/** Those that npm runs by itself when a package is installed or packed; the last four of ours alone, but none is used. */
const BY_THEMSELVES = [
  'preinstall',
  'install',
  'postinstall',
  'preprepare',
  'prepare',
  'postprepare',
  'prepublish',
  'prepublishOnly',
  'prepack',
  'postpack',
];

/** The whole of what may be installed beside the published package. */
const DEPENDENCIES = ['decimal.js', 'zod'];

/** @returns {{ problems: string[], said: string }} */
export function installScripts() {
  const problems = [];
  const own = manifestOf('');
  for (const path of ['', ...RUNTIME.map(([path]) => `${path}/`)]) {
    const { name, scripts = {} } = manifestOf(path);
    for (const script of Object.keys(scripts).filter((script) => BY_THEMSELVES.includes(script))) {
      // What a package runs before it is published is its own affair; it is not run where it is installed.
      if (path === '' || script.endsWith('install')) problems.push(`${name}: script ${script}`);
    }
    if (existsSync(`${ROOT}${path}binding.gyp`)) problems.push(`${name}: binding.gyp, which npm would build`);
  }
  const beside = RUNTIME.map(([path]) => path.replace(/^.*node_modules\//, '')).sort();
  if (beside.join() !== DEPENDENCIES.join()) problems.push(`installed beside the package: ${beside.join(', ')}`);
  if (
    Object.keys(own.dependencies ?? {})
      .sort()
      .join() !== DEPENDENCIES.join()
  )
    problems.push(`dependencies: ${Object.keys(own.dependencies ?? {}).join(', ')}`);

  for (const [name, range] of Object.entries(own.devDependencies ?? {})) {
    if (!/^\d+\.\d+\.\d+$/.test(range)) problems.push(`${name}: ${range} is not one exact version`);
  }
  for (const [path, { hasInstallScript, integrity, dev }] of LOCKED) {
    if (!integrity?.startsWith('sha512-')) problems.push(`${path}: no SHA-512 in the lock file`);
    const name = path.replace(/^.*node_modules\//, '');
    const { allowScripts } = manifestOf(path.slice(0, path.indexOf('node_modules/')));
    if (hasInstallScript === true && (dev !== true || allowScripts?.[name] !== false))
      problems.push(`${path}: has a script for its installation, which allowScripts in package.json does not forbid`);
  }
  return { problems, said: `${RUNTIME.length} runtime dependencies, ${LOCKED.length} packages held by SHA-512` };
}
