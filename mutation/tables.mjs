// The pages that are committed: the summary by rooms, and the survivors with their reasons.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/**
 * @typedef {{ killed: number; endless: number; survived: number; unreached: number }} Counts
 * @typedef {Counts & { hash: string }} Row of the file as it was when it was run
 * @typedef {{ file: string; line: string; from: string; to: string; times?: number }} Place the same may stand there several times
 * @typedef {{ why: string; survivors: readonly Place[] }} Accepted a reason, and the survivors that have it
 */

const path = (/** @type {string} */ name) => new URL(name, import.meta.url);
const ROW = /^\| `(src\/[^`]+)` +\| +\d+ \| +(\d+) \| +(\d+) \| +(\d+) \| +(\d+) \|[^|]*\| ([0-9a-f]{8}) \|$/;

/** Tells a file from what it was: enough of its SHA-256. @param {string} file */
export function hashOf(file) {
  return createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 8);
}

/** The files whose row tells of another text than they have now. @param {ReadonlyMap<string, Row>} rows */
export function changedFiles(rows) {
  return [...rows].filter(([file, { hash }]) => existsSync(file) && hashOf(file) !== hash).map(([file]) => file);
}

/** @returns {Accepted[]} */
export function readAccepted() {
  /** @type {unknown} */
  const read = JSON.parse(readFileSync(path('accepted.json'), 'utf8'));
  return /** @type {Accepted[]} */ (read);
}

/** The rows of the summary as it stands, by files: a file that was not run keeps its own. */
export function readRows() {
  /** @type {Map<string, Row>} */
  const rows = new Map();
  const text = existsSync(path('summary.md')) ? readFileSync(path('summary.md'), 'utf8') : '';
  for (const line of text.split('\n')) {
    const [, file, killed, endless, survived, unreached, hash] = ROW.exec(line) ?? [];
    if (file === undefined || hash === undefined) continue;
    rows.set(file, {
      killed: Number(killed),
      endless: Number(endless),
      survived: Number(survived),
      unreached: Number(unreached),
      hash,
    });
  }
  return rows;
}

/** @param {Iterable<Counts>} rows @returns {Counts} */
export function totalOf(rows) {
  const total = { killed: 0, endless: 0, survived: 0, unreached: 0 };
  for (const { killed, endless, survived, unreached } of rows) {
    total.killed += killed;
    total.endless += endless;
    total.survived += survived;
    total.unreached += unreached;
  }
  return total;
}

/** The share that was noticed, in per cent; NaN where there was nothing to notice. @param {Counts} counts */
export function scoreOf({ killed, endless, survived, unreached }) {
  return (100 * (killed + endless)) / (killed + endless + survived + unreached);
}

/** @param {string} name @param {Counts} counts */
function row(name, counts) {
  const { killed, endless, survived, unreached } = counts;
  const all = killed + endless + survived + unreached;
  const score = all === 0 ? '' : `${scoreOf(counts).toFixed(1)} %`;
  return [`\`${name}\``, ...[all, killed, endless, survived, unreached].map(String), score];
}

/**
 * @param {ReadonlyMap<string, Row>} rows
 * @param {readonly string[]} files
 * @param {readonly string[]} rooms
 * @param {number} threshold
 */
export function writeSummary(rows, files, rooms, threshold) {
  const head = ['mutants', 'killed', 'timed out', 'survived', 'not reached', 'score'];
  const known = files.flatMap((file) => {
    const counts = rows.get(file);
    return counts === undefined ? [] : [{ file, counts }];
  });
  const ofRoom = (/** @type {string} */ room) => known.filter(({ file }) => file.startsWith(`src/${room}/`));
  const byRoom = rooms.flatMap((room) => {
    const own = ofRoom(room);
    return own.length === 0 ? [] : [row(room, totalOf(own.map(({ counts }) => counts)))];
  });
  const missing = files.filter((file) => !rows.has(file));
  const changed = changedFiles(rows);
  const list = (/** @type {readonly string[]} */ names) => names.map((name) => `\`${name}\``).join(', ');
  const text = `# Mutation testing

Written by \`npm run mutation\`. The sources are changed in one small place at a time, and the fast tests are run: a change
that no test notices survives. At least ${threshold} % must be noticed in each room that is run, which is those of this table;
[survivors.md](survivors.md) has the rest with the reasons.

${table(['room', ...head], byRoom)}

Prose is not mutated: a string of three words or more that is no code, see [prose.mjs](prose.mjs). What timed out has run
into a loop without end, which counts as noticed. Which tests judge which room, and which are left out, is in
[rooms.mjs](rooms.mjs).

## Files

The last column is the beginning of the SHA-256 of the file as it was run.
${changed.length > 0 ? `\n**Changed since they were run, ${changed.length} of ${known.length}**: ${list(changed)}.\n` : ''}
${table(
  ['file', ...head, 'SHA-256'],
  known.map(({ file, counts }) => [...row(file, counts), counts.hash]),
)}
${missing.length > 0 ? `\nNot yet run: ${list(missing)}.\n` : ''}`;
  writeFileSync(path('summary.md'), text);
}

/**
 * @param {readonly Accepted[]} accepted
 * @param {readonly string[]} rooms
 */
export function writeSurvivors(accepted, rooms) {
  const sections = rooms.flatMap((room) => {
    const reasons = accepted.flatMap(({ why, survivors }) => {
      const own = survivors.filter(({ file }) => file.startsWith(`src/${room}/`));
      if (own.length === 0) return [];
      const items = own.map(
        ({ file, line, from, to, times = 1 }) =>
          `- \`${file}\`: ${code(line)}\n  - ${code(from)} → ${code(to)}${times > 1 ? `, ${times} times` : ''}\n`,
      );
      return [`${why}\n\n${items.join('')}`];
    });
    return reasons.length === 0 ? [] : [`## ${room}\n\n${reasons.join('\n')}`];
  });
  const text = `# Survivors

Written by \`npm run mutation\` from [accepted.json](accepted.json): by rooms and reasons, each change that no test notices,
and where it stands.

${sections.join('\n')}`;
  writeFileSync(path('survivors.md'), text);
}

/** Text as code, whatever is in it. @param {string} text */
function code(text) {
  if (text === '') return 'nothing';
  const runs = new Set(text.match(/`+/g)?.map(({ length }) => length));
  const fence = '`'.repeat([1, 2, 3].find((length) => !runs.has(length)) ?? 4);
  const room = text.startsWith('`') || text.endsWith('`') ? ' ' : '';
  return fence + room + text + room + fence;
}

/**
 * @param {readonly string[]} head
 * @param {readonly (readonly string[])[]} body
 */
function table(head, body) {
  const rows = [head, ...body];
  const widths = head.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  const line = (/** @type {readonly string[]} */ row) =>
    `| ${row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join(' | ')} |`;
  const rule = `| ${widths.map((width, i) => (i === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [line(head), rule, ...body.map(line)].join('\n');
}
