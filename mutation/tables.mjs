// The pages that are committed: the summary by rooms, and the survivors with their reasons.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/**
 * @typedef {{ killed: number; endless: number; survived: number; unreached: number }} Counts
 * @typedef {{ file: string; line: string; from: string; to: string }} Place
 * @typedef {{ why: string; survivors: readonly Place[] }} Accepted a reason, and the survivors that have it
 */

const path = (/** @type {string} */ name) => new URL(name, import.meta.url);
const ROW = /^\| `(src\/[^`]+)` +\| +(\d+) \| +(\d+) \| +(\d+) \| +(\d+) \| +(\d+) \|/;

/** @returns {Accepted[]} */
export function readAccepted() {
  /** @type {unknown} */
  const read = JSON.parse(readFileSync(path('accepted.json'), 'utf8'));
  return /** @type {Accepted[]} */ (read);
}

/** The rows of the summary as it stands, by files: a file that was not run keeps its own. */
export function readRows() {
  /** @type {Map<string, Counts>} */
  const rows = new Map();
  const text = existsSync(path('summary.md')) ? readFileSync(path('summary.md'), 'utf8') : '';
  for (const line of text.split('\n')) {
    const [, file, , killed, endless, survived, unreached] = ROW.exec(line) ?? [];
    if (file === undefined) continue;
    rows.set(file, {
      killed: Number(killed),
      endless: Number(endless),
      survived: Number(survived),
      unreached: Number(unreached),
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
 * @param {ReadonlyMap<string, Counts>} rows
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
  const text = `# Mutation testing

Written by \`npm run mutation\`. The sources are changed in one small place at a time, and the fast tests are run: a change
that no test notices survives. At least ${threshold} % must be noticed in every room; [survivors.md](survivors.md) has the rest
with the reasons.

${table(['room', ...head], byRoom)}

Prose is not mutated: a string of three words or more that is no code, see [prose.mjs](prose.mjs). What timed out has run
into a loop without end, which counts as noticed. Which tests judge which room, and which are left out, is in
[rooms.mjs](rooms.mjs).

## Files

${table(
  ['file', ...head],
  known.map(({ file, counts }) => row(file, counts)),
)}
${missing.length > 0 ? `\nNot yet run: ${missing.map((file) => `\`${file}\``).join(', ')}.\n` : ''}`;
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
        ({ file, line, from, to }) => `- \`${file}\`: ${code(line)}\n  - ${code(from)} → ${code(to)}\n`,
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
