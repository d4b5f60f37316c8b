// Makes the release twice, in two folders whose paths, times, zones and languages differ, from the files of the project
// alone. If both give the same bytes, anybody can make them again and compare.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, posix } from 'node:path';
import { linkProblems } from './links.mjs';
import { materials, materialsProblems } from './materials.mjs';
import { manifestOf, parsed, ROOT } from './locked.mjs';

const { name, version } = manifestOf('');
const RELEASE = `${ROOT}.cache/release`;
export const TARBALL = `${RELEASE}/${name}-${version}.tgz`;

/** Two makers, as unlike as one machine allows. */
const MAKERS = [
  { folder: 'a', env: { TZ: 'UTC', LANG: 'C.UTF-8' }, time: 1e9 },
  { folder: 'another folder/deeper', env: { TZ: 'Pacific/Kiritimati', LANG: 'de_DE.UTF-8' }, time: 1.5e9 },
];

/** What is no part of the project but of a machine that works on it. */
const NOT_COPIED = /^(node_modules|dist|coverage|\.cache|\.git)(\/|$)/;

/** @returns {{ problems: string[], said: string }} */
export function release() {
  // A tarball keeps the modes of its files: those that the usual mask gives, whoever makes it.
  process.umask(0o022);
  const work = mkdtempSync(`${tmpdir()}/isochore-release-`);
  try {
    const made = MAKERS.map((maker) => make(work, maker));
    const [one, other] = made;
    if (one === undefined || other === undefined) throw new Error('two are needed to compare');
    const problems = [...differences(one, other), ...contentProblems(one, [work, ROOT])];

    rmSync(RELEASE, { recursive: true, force: true });
    mkdirSync(RELEASE, { recursive: true });
    const tarball = readFileSync(one.tarball);
    const bill = materials(work, tarball);
    problems.push(...materialsProblems(bill, tarball));
    const files = [
      { file: `${name}-${version}.tgz`, bytes: tarball },
      { file: `${name}-${version}.cdx.json`, bytes: Buffer.from(bill) },
    ];
    for (const { file, bytes } of files) writeFileSync(`${RELEASE}/${file}`, bytes);
    const sums = files.map(({ file, bytes }) => `${sha256(bytes)}  ${file}\n`).join('');
    writeFileSync(`${RELEASE}/SHA256SUMS`, sums);
    return { problems, said: `made twice, ${one.files.size} files\n${sums.replaceAll(/^(?=.)/gm, '  ').trimEnd()}` };
  } finally {
    rmSync(work, { recursive: true });
  }
}

/**
 * @typedef {object} Made
 * @property {string} tarball
 * @property {ReadonlyMap<string, Buffer>} files as unpacked, by their paths
 */

/** @param {string} work @param {(typeof MAKERS)[number]} maker @returns {Made} */
function make(work, { folder, env, time }) {
  const project = `${work}/${folder}/project`;
  const unpacked = `${work}/${folder}/unpacked`;
  const run = (/** @type {string} */ command, /** @type {string[]} */ ...words) =>
    execFileSync(command, words, {
      cwd: project,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'inherit'],
      encoding: 'utf8',
    });
  for (const path of sources()) {
    mkdirSync(dirname(`${project}/${path}`), { recursive: true });
    cpSync(`${ROOT}${path}`, `${project}/${path}`);
    chmodSync(`${project}/${path}`, 0o644);
    utimesSync(`${project}/${path}`, time, time);
  }
  symlinkSync(`${ROOT}node_modules`, `${project}/node_modules`);
  run('npm', 'run', '--silent', 'build', '--', '--silent');
  run('npm', 'pack', '--silent', '--ignore-scripts');
  const tarball = `${project}/${name}-${version}.tgz`;
  mkdirSync(unpacked);
  run('tar', '-xzf', tarball, '-C', unpacked);
  return { tarball, files: filesIn(`${unpacked}/package`) };
}

/** The files of the project, as a fresh clone of the work at hand would have them. */
function sources() {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  const paths = listed.split('\0').filter((path) => path !== '' && existsSync(`${ROOT}${path}`));
  return paths.filter((path) => !NOT_COPIED.test(path));
}

/** @param {string} folder */
function filesIn(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map(({ parentPath, name }) => `${parentPath}/${name}`);
  return new Map(paths.sort().map((path) => [path.slice(folder.length + 1), readFileSync(path)]));
}

/** @param {Made} one @param {Made} other */
function differences(one, other) {
  if (readFileSync(one.tarball).equals(readFileSync(other.tarball))) return [];
  const paths = [...new Set([...one.files.keys(), ...other.files.keys()])].sort();
  const differing = paths.filter((path) => {
    const [a, b] = [one.files.get(path), other.files.get(path)];
    return a === undefined || b === undefined || !a.equals(b);
  });
  return differing.length === 0
    ? ['two packages of the same files differ: order, times or modes in the tarball']
    : differing.map((path) => `${path} differs between two builds`);
}

/** @param {Made} made @param {readonly string[]} folders no file may name them */
function contentProblems({ files }, folders) {
  const problems = linkProblems(files);
  for (const path of ['package.json', 'README.md', 'LICENSE', 'CHANGELOG.md', 'examples/round.json']) {
    if (!files.has(path)) problems.push(`${path} is not in the package`);
  }
  for (const [path, bytes] of files) {
    if (!/^(dist\/|docs\/[a-z-]+\.md$|examples\/[a-z]+\.(mjs|json)$|package\.json$|[A-Z]+(\.md)?$)/.test(path))
      problems.push(`${path} does not belong in the package`);
    const text = bytes.toString('utf8');
    for (const folder of folders) if (text.includes(folder)) problems.push(`${path} names the folder it was made in`);
    if (path.endsWith('.map')) problems.push(...mapProblems(path, text));
  }
  return problems;
}

/** @param {string} path @param {string} text */
function mapProblems(path, text) {
  const {
    sources,
    sourceRoot = '',
    sourcesContent = [],
  } = /** @type {{ sources: string[], sourceRoot?: string, sourcesContent?: (string | null)[] }} */ (parsed(text));
  const problems = [];
  if (sourceRoot !== '') problems.push(`${path}: source root ${sourceRoot}`);
  sources.forEach((source, i) => {
    const to = posix.join(posix.dirname(path), source);
    if (!to.startsWith('src/')) problems.push(`${path}: source ${source}`);
    if (typeof sourcesContent[i] !== 'string') problems.push(`${path}: without the text of ${source}`);
  });
  return problems;
}

/** @param {Buffer} bytes */
function sha256(bytes) {
  return createHash('sha256').update(bytes).digest('hex');
}
