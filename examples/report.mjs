// Prints the report of a round of accumulator checks, as an engineer would act on it.
//
//   node examples/report.mjs [path | -] [--json]
//
// Without a path it reads examples/round.json, with - standard input; --json prints the report as data instead.
// Exit status: 0 if all of the round was judged, 1 if something in it was wrong, 2 if it was called wrongly.
import { readFileSync } from 'node:fs';
import { gauge, pressureDifference, temperatureDifference, write } from 'isochore';
import { reportRoundText, worstFirst } from 'isochore/record';
import { filling, safety } from './charging.mjs';
import { columns, printable, tenth, wrap } from './lines.mjs';

/** @import { RoundReport } from 'isochore/record' */
/** @typedef {RoundReport['accumulators'][number]} Accumulator */
/** @typedef {Accumulator['asFound']} Judged */

/** What comes next where no quantity is given. @type {Readonly<Record<string, string>>} */
const NEXT = {
  'gas not known': 'do not add anything; find out what the gas is, or have it replaced, then read again',
  'not comparable': 'neither add nor vent; secure, isolate, drain, verify zero, wait, then read again',
  'beyond the scale': 'neither add nor vent; find out what was read, on which gauge and in which unit, then read again',
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
    ...whole(report),
    ...groups.flatMap((group) =>
      table(
        group,
        report.accumulators.filter((one) => one.group === group),
      ),
    ),
    ...work(report),
    ...filling(report),
    ...safety(report),
    ...sources(report),
  ].join('\n');
}

/** @param {RoundReport} report */
function heading({ title, complete, accumulators, notJudged, counts, rule, decisions }) {
  const found = Object.entries(counts).map(([outcome, count]) => `${count} ${outcome}`);
  const decided = Object.entries(decisions ?? {}).map(([outcome, count]) => `${count} ${outcome}`);
  const whole = complete === 'complete' ? 'The whole round was judged.' : 'PART OF THE ROUND COULD NOT BE JUDGED.';
  return [
    'CHECK OF THE NITROGEN PRE-CHARGE',
    ...(title === undefined ? [] : wrap(printable(title), '')),
    ...wrap(
      `${whole} ${accumulators.length} judged, ${notJudged.length} not. ${found.length === 0 ? '' : `As found: ${found.join(', ')}.`}`,
      '',
    ),
    ...(rule === undefined
      ? []
      : wrap(
          `With the uncertainty of the instruments, by ${rule.acceptance} (risk at most ${percent(rule.risk.below)} below, ` +
            `${percent(rule.risk.above)} above): ${decided.length === 0 ? 'nothing decided' : decided.join(', ')}.`,
          '',
        )),
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

/** What one gauge and thermometer did to all their readings. @param {RoundReport} report */
function whole({ together = [] }) {
  if (together.length === 0) return [];
  const said = together.flatMap((one) => {
    const lead = `  ${printable([one.gauge, one.thermometer].filter((name) => name !== undefined).join(', '))}: `;
    const counted = `${one.readings - one.leftOut} of ${one.readings} readings count`;
    if (one.outcome === 'too few readings')
      return wrap(`${counted}, ${one.needed} are needed to tell a common error from single ones`, lead);
    const { difference, temperature, ratio, explains, instruments } = one.shift;
    if (one.outcome === 'no common shift') return wrap(`no common shift; ${counted}`, lead);
    const slipped = one.candidates.map(({ slip }) =>
      'stated' in slip ? `${slip.stated} stated for ${slip.readAs}` : slip.code,
    );
    return [
      ...wrap(
        `READINGS ARE OFF TOGETHER by ${sized(difference.value, 0.1)}, a factor of ${ratio.value.toFixed(3)}, or as of gas ` +
          `${warmer(temperature.value)} warmer than measured; ${explains} of ${one.readings - one.leftOut} follow, and the ` +
          `stated accuracy ${instruments === 'not stated' ? 'is not known' : instruments}`,
        lead,
      ),
      ...wrap('compare gauge and thermometer with others before any single accumulator is worked on', '      → '),
      ...slipped.map((slip) => `      perhaps ${slip}`),
      ...(one.notExplained.length === 0
        ? []
        : wrap(one.notExplained.map(({ name }) => printable(name)).join(', '), '      off by themselves: ')),
    ];
  });
  return ['', 'THE ROUND AS A WHOLE, gauge by gauge', ...said];
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
    outcomeText(asFound),
    asLeft === 'not read' ? state : `${state} (as left)`,
  ]);
  const ambients = [...new Set(accumulators.map(({ asFound }) => pressureText(asFound.reading.ambient)))];
  const specifications = [...new Set(accumulators.map(({ specification }) => printable(specification)))];
  return [
    '',
    printable(`${group.toUpperCase()} – specification: ${specifications.join(', ')}; ambient ${ambients.join(', ')}`),
    ...columns([head, head2, ...rows]),
    '  off target: reading less target, a difference, in the unit of the gauge',
    ...(accumulators.some(({ asFound }) => asFound.reading.stated.temperature === 'for the group')
      ? ['  * stated once for the group, not measured at this accumulator']
      : []),
    ...(accumulators.some(({ asFound }) => asFound.decision !== undefined)
      ? ['  ± in which the true difference lies with a probability of 95 %']
      : []),
    ...(accumulators.some(({ asFound }) => asFound.uncertainty?.outcome === 'not stated')
      ? ['  † judged as read, without uncertainty: not all is stated that it rests on']
      : []),
  ];
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
    ...units
      .filter((unit) => unit.open.length > 0)
      .flatMap((unit) => [unit.head, ...unit.open.flatMap((one) => task(one, report))]),
    '',
    ...gasLine('Nitrogen to add as found', gasToAdd.asFound),
    ...gasLine('Still to add after the work', gasToAdd.stillToAdd),
    ...wrap(`Losses at hoses and checks come on top.${complete === 'partial' ? ' Of the judged part alone.' : ''}`, ''),
  ];
}

/**
 * @param {Accumulator} accumulator
 * @param {RoundReport} report
 */
function task({ name, asFound, asLeft, state }, report) {
  return [
    ...wrap(asFound.why, `    ${printable(name)}: `),
    ...(asFound.causes ?? []).map(({ text }, i) => `        ${i + 1}. ${text}`),
    ...doubts(asFound, report),
    ...instruction(asFound).flatMap((line) => wrap(line, asLeft === 'not read' ? '      → ' : '      as found → ')),
    ...(asLeft === 'not read' ? [] : wrap(`${asLeft.outcome}: ${asLeft.why}`, '      as left    ')),
    ...(asLeft === 'not read' || state === 'in order'
      ? []
      : [...doubts(asLeft, report), ...instruction(asLeft)].flatMap((line) => wrap(line, '      → '))),
  ];
}

/**
 * What makes a reading doubtful: the instruments leave it open, or it looks like a slip.
 * @param {Judged} judged
 * @param {RoundReport} report
 */
function doubts({ decision, slips = [], uncertainty }, { terms = [] }) {
  /** @param {string} code */
  const term = (code) => terms.find((one) => one.code === code)?.text ?? code;
  const meant = slips.flatMap((one) =>
    wrap(
      `${one.slips.map(({ text }) => text).join(', and ')}: the reading would then be right`,
      '      look at the instrument again: ',
    ),
  );
  const lacking =
    uncertainty?.outcome === 'not stated' ? wrap(uncertainty.lacking.map(term).join('; '), '      † ') : [];
  if (decision === undefined || !('probability' in decision) || decision.settling === undefined)
    return [...meant, ...lacking];
  const { probability, settling } = decision;
  return [
    ...meant,
    ...wrap(
      `INCONCLUSIVE: too little gas with a probability of ${percent(probability.below)}, too much with ` +
        `${percent(probability.above)}; most of the doubt is ${term(settling.largest)}`,
      '      ',
    ),
    ...wrap('neither add nor vent; read again, and one of these would settle the same reading:', '      → '),
    ...settling.ways.flatMap(({ text }) => wrap(text, '          – ')),
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
function instruction({ charge, outcome, because, decision }) {
  // Said already: read again.
  if (charge.action === 'none' || decision?.outcome === 'inconclusive') return [];
  if (charge.action === 'withheld' && charge.because.includes('slip possible'))
    return ['neither add nor vent; read number, unit and basis again, on gauge and thermometer'];
  if (charge.action === 'withheld')
    return [NEXT[because.every((code) => code === 'beyond the scale') ? 'beyond the scale' : outcome] ?? charge.why];
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
function offText({ offTarget, reading, uncertainty }) {
  if (offTarget === undefined) return '';
  const step = tenth(reading.gaugeStep.value);
  const { unit } = offTarget;
  const bare = (/** @type {string} */ text) => text.replace(` ${unit}`, '').replace(' difference', '');
  const off = `${Number(offTarget.value) > 0 ? '+' : ''}${bare(sized(offTarget, step))}`;
  if (uncertainty?.outcome !== 'stated') return off;
  const { lower, upper } = uncertainty.interval;
  const half = pressureDifference((Number(upper.value) - Number(lower.value)) / 2, unit);
  return `${off} ± ${bare(write(half, { step, unit, toward: 'up' }))}`;
}

/** @param {Judged} judged */
function outcomeText({ outcome, decision, uncertainty }) {
  if (decision?.outcome === 'inconclusive') return decision.outcome;
  return uncertainty?.outcome === 'not stated' ? `${outcome} †` : outcome;
}

/**
 * @param {NonNullable<Judged['offTarget']>} difference
 * @param {number} step
 */
function sized({ value, unit }, step) {
  return write(pressureDifference(Number(value), unit), { step, unit }).replace(' difference', '');
}

/** @param {{ value: number | string, unit: Judged['reading']['temperature']['unit'] }} difference */
function warmer({ value, unit }) {
  return write(temperatureDifference(Number(value), unit), { step: 0.1, unit }).replace(' difference', '');
}

/** @param {number} probability */
function percent(probability) {
  const value = 100 * probability;
  return value > 0 && value < 1 ? 'less than 1 %' : `${Math.round(value)} %`;
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
