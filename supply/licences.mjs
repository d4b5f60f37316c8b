// Every package stands under a licence of the list; one that is new to it is read by a person, and then added or left.
import { existsSync, readdirSync } from 'node:fs';
import { LOCKED, manifestOf, ROOT, RUNTIME } from './locked.mjs';

/** What a program carries along that depends on the published package: licences that ask for their notice alone. */
const RUNTIME_LICENCES = ['MIT'];

/** What only builds and tests. MPL-2.0 asks for the source of its own changed files; none of them is published. */
const LICENCES = [
  ...RUNTIME_LICENCES,
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC-BY-4.0', // a table of what browsers can do, which the mutation tool's compiler reads
  'ISC',
  'MPL-2.0',
  'Python-2.0',
];

/** Packages that do not say it in their data, but in a text with them, which was read: by path and version. */
const READ = new Map([['everywhere/tools/engines/node_modules/node-oldest@20.19.0', 'MIT']]);

/** @returns {{ problems: string[], said: string }} */
export function licences() {
  const problems = [];
  for (const [path, locked] of LOCKED) {
    const allowed = locked.dev === true ? LICENCES : RUNTIME_LICENCES;
    const licence = locked.license ?? READ.get(`${path}@${locked.version}`) ?? 'no licence';
    if (!allowed.includes(licence)) problems.push(`${path}: ${licence} is not on the list`);
    // A package for another kind of machine is locked and not installed.
    if (!existsSync(`${ROOT}${path}`)) continue;
    const { license } = manifestOf(`${path}/`);
    if (license !== locked.license)
      problems.push(`${path}: ${JSON.stringify(license)} installed, ${licence} in the lock file`);
  }
  for (const [path] of RUNTIME) {
    const hasText = readdirSync(`${ROOT}${path}`).some((file) => /^licen[cs]e/i.test(file));
    if (!hasText) problems.push(`${path}: without the text of its licence`);
  }
  return { problems, said: `${LOCKED.length} packages, ${RUNTIME.length} of them with the published one` };
}
