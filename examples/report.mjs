// Prints the report of a round of accumulator checks, as an engineer would act on it.
//
//   node examples/report.mjs [path | -] [--json]
//
// Without a path it reads examples/round.json, with - standard input; --json prints the report as data instead.
// Exit status: 0 if all of the round was judged, 1 if something in it was wrong, 2 if it was called wrongly.
import { readFileSync } from 'node:fs';
import { gauge, pressureDifference, write } from 'isochore';
import { reportRoundText, worstFirst } from 'isochore/record';

/** @import { RoundReport } from 'isochore/record' */
/** @typedef {RoundReport['accumulators'][number]} Accumulator */
/** @typedef {Accumulator['asFound']} Judged */

const WIDTH = 118;

/** What comes next where no quantity is given. @type {Readonly<Record<string, string>>} */
const NEXT = {
  'gas not known': 'do not add anything; find out what the gas is, or have it replaced, then read again',
  'not comparable': 'neither add nor vent; secure, isolate, drain, verify zero, wait, then read again',
  'gas side empty': 'do not fill; find the cause and clear it, state that it is cleared, then read again',
  'gauge too coarse': 'read again on a finer gauge',
};

const words = process.argv.slice(2);
const paths = words.filter((word) => word !== '--json');
if (paths.length > 1) {
  console.error('usage: report.mjs [path | -] [--json]');
  process.exit(2);
}
const text = readText(paths[0]);
const report = reportRoundText(text, { problems: 'report the rest' });
console.log(words.includes('--json') ? JSON.stringify(report, null, 2) : page(report));
process.exitCode = report.complete === 'complete' ? 0 : 1;

/** @param {string | undefined} path */
function readText(path) {
  const source = path === '-' ? 0 : (path ?? new URL('round.json', import.meta.url));
  try {
    return readFileSync(source, 'utf8');
  } catch (error) {
    console.error(`cannot read ${path}: ${error instanceof Error ? error.message : String(error)}`);
    process.exit(2);
  }
}

/** @param {RoundReport} report */
function page(report) {
  const groups = [...new Set(report.accumulators.map(({ group }) => group))];
  return [
    ...heading(report),
    ...problems(report),
    ...cautions(report),
    ...groups.flatMap((group) =>
      table(
        group,
        report.accumulators.filter((one) => one.group === group),
      ),
    ),
    ...work(report),
    ...sources(report),
  ].join('\n');
}

/** @param {RoundReport} report */
function heading({ title, complete, accumulators, notJudged, counts }) {
  const found = Object.entries(counts).map(([outcome, count]) => `${count} ${outcome}`);
  const whole = complete === 'complete' ? 'The whole round was judged.' : 'PART OF THE ROUND COULD NOT BE JUDGED.';
  return [
    'CHECK OF THE NITROGEN PRE-CHARGE',
    ...(title === undefined ? [] : wrap(printable(title), '')),
    ...wrap(
      `${whole} ${accumulators.length} judged, ${notJudged.length} not. ${found.length === 0 ? '' : `As found: ${found.join(', ')}.`}`,
      '',
    ),
  ];
}

/** @param {RoundReport} report */
function problems({ problems, problemsFound, notJudged }) {
  if (problemsFound === 0) return [];
  const unlisted = problemsFound - problems.length;
  return [
    '',
    `WRONG IN THE DOCUMENT (${problemsFound})`,
    ...problems.flatMap(({ path, found, wanted, remedy, about }) =>
      wrap(
        `${printable(path)}${about === undefined ? '' : ` (${printable(about)})`}: found ${printable(found)}, wanted ${wanted}; ${remedy}`,
        '  ',
      ),
    ),
    ...(unlisted > 0 ? [`  and ${unlisted} more`] : []),
    ...notJudged.map(({ name, group, path }) =>
      printable(`  NOT JUDGED: ${[group, name].filter((word) => word !== undefined).join(' / ')} (${path})`),
    ),
  ];
}

/** @param {RoundReport} report */
function cautions({ cautions, accumulators }) {
  const severities = ['danger', 'caution', 'note'];
  const worstFirst = [...cautions].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
  return [
    '',
    'CAUTIONS',
    ...worstFirst.flatMap(({ code, severity, text }) => {
      const whose = accumulators.filter(({ asFound, asLeft }) =>
        [asFound, asLeft].some((judged) => judged !== 'not read' && judged.cautions.includes(code)),
      );
      const names = whose.map(({ name }) => printable(name)).join(', ');
      return wrap(`${names === '' ? '' : `${names}: `}${text}`, `  ${severity.toUpperCase().padEnd(9)}`);
    }),
  ];
}

/**
 * @param {string} group
 * @param {readonly Accumulator[]} accumulators
 */
function table(group, accumulators) {
  const head = ['', 'unit', 'gauge pressure', 'at gas', 'gauge pressure', 'allowed on', 'off', '', ''];
  const head2 = [
    '',
    'served',
    'read',
    'temperature',
    'wanted there',
    'this gauge',
    'target',
    'outcome as found',
    'state',
  ];
  const rows = accumulators.map(({ name, unitServed, asFound, asLeft, state }) => [
    printable(name),
    printable(unitServed ?? '–'),
    `${asFound.reading.pressure.value} ${asFound.reading.pressure.unit}`,
    `${asFound.reading.temperature.value} ${asFound.reading.temperature.unit}${asFound.reading.stated.temperature === 'for the group' ? ' *' : ''}`,
    gaugeText(asFound.target, asFound),
    allowed(asFound),
    asFound.offTarget === undefined || asFound.outcome === 'gas side empty' ? '–' : offText(asFound),
    asFound.outcome,
    asLeft === 'not read' ? state : `${state} (as left)`,
  ]);
  const ambients = [...new Set(accumulators.map(({ asFound }) => pressureText(asFound.reading.ambient)))];
  const specifications = [...new Set(accumulators.map(({ specification }) => printable(specification)))];
  return [
    '',
    printable(`${group.toUpperCase()} – specification: ${specifications.join(', ')}; ambient ${ambients.join(', ')}`),
    ...columns([head, head2, ...rows]),
    ...(accumulators.some(({ asFound }) => asFound.reading.stated.temperature === 'for the group')
      ? ['  * stated once for the group, not measured at this accumulator']
      : []),
  ];
}

/** @param {readonly (readonly string[])[]} rows */
function columns(rows) {
  const widths = rows[0]?.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0))) ?? [];
  return rows.map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')}`.trimEnd());
}

/** @param {RoundReport} report */
function work(report) {
  const { accumulators, gasToAdd, complete } = report;
  const units = worstFirst(report).map(({ unitServed, stake, accumulators: ranked }) => ({
    head: `  ${printable(unitServed ?? 'unit served not stated')}: ${stake}`,
    open: ranked
      .flatMap((one) => ('accumulator' in one ? [one.accumulator] : []))
      .filter(({ asFound, state }) => asFound.outcome !== 'within' || state !== 'in order'),
  }));
  const open = units.flatMap((unit) => unit.open);
  if (accumulators.length === 0) return [];
  if (open.length === 0) return ['', 'WHAT TO DO', '  Nothing: every accumulator judged is in order.'];
  return [
    '',
    'WHAT TO DO, the worst first',
    ...units.filter((unit) => unit.open.length > 0).flatMap((unit) => [unit.head, ...unit.open.flatMap(task)]),
    '',
    ...gasLine('Nitrogen to add as found', gasToAdd.asFound),
    ...gasLine('Still to add after the work', gasToAdd.stillToAdd),
    ...wrap(`Losses at hoses and checks come on top.${complete === 'partial' ? ' Of the judged part alone.' : ''}`, ''),
  ];
}

/** @param {Accumulator} accumulator */
function task({ name, asFound, asLeft, state }) {
  return [
    ...wrap(asFound.why, `    ${printable(name)}: `),
    ...(asFound.causes ?? []).map(({ text }, i) => `        ${i + 1}. ${text}`),
    ...instruction(asFound).flatMap((line) => wrap(line, asLeft === 'not read' ? '      → ' : '      as found → ')),
    ...(asLeft === 'not read' ? [] : wrap(`${asLeft.outcome}: ${asLeft.why}`, '      as left    ')),
    ...(asLeft === 'not read' || state === 'in order'
      ? []
      : instruction(asLeft).flatMap((line) => wrap(line, '      → '))),
  ];
}

/**
 * @param {string} what
 * @param {RoundReport['gasToAdd']['asFound']} sum
 */
function gasLine(what, { accumulators, gas }) {
  if (gas === undefined) return [`${what}: none.`];
  const at = `${accumulators} ${accumulators === 1 ? 'accumulator' : 'accumulators'}`;
  return wrap(`${what}, at ${at}: ${gas.rounded.mass}, ${gas.rounded.normalVolume}.`, '');
}

/** @param {Judged} judged */
function instruction({ charge, outcome }) {
  if (charge.action === 'none') return [];
  if (charge.action === 'withheld') return [NEXT[outcome] ?? charge.why];
  const { action, gas, stop, settleMinutes } = charge;
  const how = `${action} ${gas.rounded.mass} of nitrogen (${gas.rounded.normalVolume})`;
  if (stop.action === 'withheld') return [how, `no stop pressure: ${stop.why}`];
  const mark =
    typeof stop.mark === 'string' ? stop.mark : `stop at ${stop.mark.value} ${stop.mark.unit} ${stop.mark.basis}`;
  return [`${how}: ${mark}, close, wait ${settleMinutes} min, read again`];
}

/** @param {RoundReport} report */
function sources({ models, libraryVersion, version, digest }) {
  return [
    '',
    ...models.flatMap(({ id, citation, doi }) => wrap(`Gas model ${id}: ${citation}; doi:${doi}`, '')),
    `isochore ${libraryVersion}, report version ${version}, SHA-256 ${digest}`,
  ];
}

/**
 * @param {Judged['target']} pressure
 * @param {Judged} judged
 */
function gaugeText({ value, unit }, { reading }) {
  return write(gauge(Number(value), unit), { step: tenth(reading.gaugeStep.value), unit }).replace(' gauge', '');
}

/** @param {Judged} judged */
function offText({ offTarget, reading }) {
  if (offTarget === undefined) return '';
  const { value, unit } = offTarget;
  const off = write(pressureDifference(Number(value), unit), { step: tenth(reading.gaugeStep.value), unit });
  return `${Number(value) > 0 ? '+' : ''}${off.replace(' difference', '')}`;
}

/** @param {Judged} judged */
function allowed({ band }) {
  if (typeof band.onGauge === 'string') return 'no mark';
  return `${band.onGauge.lower.value} to ${band.onGauge.upper.value} ${band.onGauge.upper.unit}`;
}

/** @param {Judged['reading']['ambient']} pressure */
function pressureText({ value, unit, basis }) {
  return `${value} ${unit} ${basis}`;
}

/** One decimal more than the gauge is read to. @param {number | string} step */
function tenth(step) {
  const decade = 10 ** Math.floor(Math.log10(Number(step)));
  return Number((decade / 10).toPrecision(1));
}

/** Other people's text, without characters that would steer the terminal. @param {string} text */
function printable(text) {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '�');
}

/**
 * @param {string} text
 * @param {string} lead
 */
function wrap(text, lead) {
  const indent = ' '.repeat(lead.length);
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    if (line !== '' && lead.length + line.length + 1 + word.length > WIDTH) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines.map((line, i) => (i === 0 ? lead : indent) + line);
}
