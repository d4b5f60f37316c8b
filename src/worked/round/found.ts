// What was found, group by group, and what the readings rest on.
import { pressureDifference } from '../../quantity/pressure.js';
import { write } from '../../quantity/step.js';
import type { AccumulatorJson, JudgedJson } from '../../record/report-shape.js';
import type { Block, Column, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { differenceText, gaugeText, nameOf, percent, stepOf, type About } from './about.js';

export function found(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  if (report.accumulators.length === 0) return [];
  const groups = [...new Set(report.accumulators.map(({ group }) => group))];
  return [
    { kind: 'heading', level: 1, text: words.tableHeading },
    ...groups.map((group) =>
      tableOf(
        group,
        report.accumulators.filter((one) => one.group === group),
        about,
      ),
    ),
    { kind: 'list', marks: 'plain', items: notes(about) },
  ];
}

const RIGHT = ['read', 'temperature', 'target', 'off'] as const;

function tableOf(group: string, all: readonly AccumulatorJson[], about: About): Block {
  const { language, say } = about;
  const words = language.document.round;
  const columns = Object.entries(words.columns).map(([key, heading]): Column => ({
    heading,
    align: (RIGHT as readonly string[]).includes(key) ? 'right' : 'left',
  }));
  const each = (values: readonly string[], between: string): Line =>
    joined(
      [...new Set(values)].map((one) => [given(one)]),
      between,
    );
  return {
    kind: 'table',
    caption: lineOf(words.tableOf, {
      group: [given(group)],
      specifications: each(
        all.map(({ specification }) => specification),
        ', ',
      ),
      ambients: [...new Set(all.map(({ asFound }) => ambientText(asFound, about)))].join(', '),
    }),
    columns,
    rows: all.map(({ name, unitServed, asFound, asLeft, state }) => [
      [given(name)],
      unitServed === undefined ? '–' : [given(unitServed)],
      say(`${asFound.reading.pressure.value} ${asFound.reading.pressure.unit}`),
      say(`${asFound.reading.temperature.value} ${asFound.reading.temperature.unit}${isForGroup(asFound) ? ' *' : ''}`),
      say(gaugeText(asFound.target, stepOf(asFound))),
      allowed(asFound, about),
      offText(asFound, about),
      outcomeText(asFound, about),
      asLeft === 'not read'
        ? language.document.states[state]
        : lineOf(words.asLeft, { state: language.document.states[state] }),
    ]),
  };
}

function notes(about: About): readonly Line[] {
  const words = about.language.document.round;
  const all = about.report.accumulators.map(({ asFound }) => asFound);
  const stated = all.flatMap(({ uncertainty }) =>
    uncertainty?.outcome === 'stated' ? [uncertainty.interval.coverage] : [],
  );
  return [
    words.offNote,
    ...[...new Set(stated)].map((coverage) => lineOf(words.intervalNote, { coverage: percent(coverage, about) })),
    ...(all.some(isForGroup) ? [words.groupTemperature] : []),
    ...(all.some(({ uncertainty }) => uncertainty?.outcome === 'not stated') ? [words.uncertaintyNote] : []),
  ];
}

function isForGroup({ reading }: JudgedJson): boolean {
  return reading.stated.temperature === 'for the group';
}

function ambientText({ reading: { ambient } }: JudgedJson, { say }: About): string {
  return say(`${ambient.value} ${ambient.unit} ${ambient.basis}`);
}

function allowed({ band: { onGauge } }: JudgedJson, { language, say }: About): Line {
  const { round } = language.document;
  if (typeof onGauge === 'string') return language.document.card.noMark;
  const { lower, upper } = onGauge;
  return lineOf(round.to, { lower: say(lower.value), upper: say(upper.value), unit: upper.unit });
}

/** The difference from the target, and what is not known of it, which is rounded up. */
function offText(judged: JudgedJson, { say }: About): string {
  const { offTarget, outcome, uncertainty } = judged;
  if (offTarget === undefined || outcome === 'gas side empty') return '–';
  const as = stepOf(judged);
  const { unit } = offTarget;
  const text = differenceText(offTarget, as);
  const off = Number(offTarget.value) > 0 && !text.startsWith('0 ') ? `+${text}` : text;
  if (uncertainty?.outcome !== 'stated') return say(off);
  const { lower, upper } = uncertainty.interval;
  const half = pressureDifference((Number(upper.value) - Number(lower.value)) / 2, unit);
  const around = write(half, { ...as, unit, toward: 'up' }).replace(/ difference$/, '');
  return say(`${off.replace(` ${unit}`, '')} ± ${around}`);
}

function outcomeText({ outcome, decision, uncertainty }: JudgedJson, { language }: About): string {
  const { outcomes, decisions } = language.document;
  if (decision?.outcome === 'inconclusive') return decisions.inconclusive;
  return uncertainty?.outcome === 'not stated' ? `${outcomes[outcome]} †` : outcomes[outcome];
}

/** When each was read, by whom, with what, and on what evidence. */
export function readings(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  if (report.accumulators.length === 0) return [];
  const stated = (text: string | undefined): Line => (text === undefined ? '–' : [given(text)]);
  return [
    { kind: 'heading', level: 1, text: words.readingsHeading },
    {
      kind: 'table',
      columns: Object.values(words.readings).map((heading): Column => ({ heading, align: 'left' })),
      rows: report.accumulators.map((one) => [
        nameOf(one, about),
        [given(timeText(one.asFound.at))],
        evidence(one.asFound, about),
        instrumentsOf(one.asFound),
        one.asLeft === 'not read' ? words.notRead : [given(timeText(one.asLeft.at))],
        stated(one.readBy),
        stated(one.verifiedBy),
      ]),
    },
  ];
}

/** A time of RFC 3339 with spaces, as people read it, and without its seconds where there are none: `2026-03-14 09:10 +01:00`. */
function timeText(at: string): string {
  return at.replace(/^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)(?::00)?(:\d\d\S*?)?(Z|[+-]\d\d:\d\d)$/, '$1 $2$3 $4');
}

function evidence({ reading }: JudgedJson, { language, say }: About): string {
  const { oilSide, gasInside, rest, restNotKnown, ruledOut } = language.document.round;
  const { minutesAtRest } = reading;
  const rested =
    minutesAtRest === 'not known' ? restNotKnown : rest.replace('{minutes}', () => say(String(minutesAtRest)));
  const stands = reading.possibleSlip === undefined ? '' : `; ${ruledOut}`;
  return `${oilSide[reading.oilSide]}; ${gasInside[reading.gasInside]}; ${rested}${stands}`;
}

function instrumentsOf({ reading: { instruments } }: JudgedJson): Line {
  const names = [instruments?.pressure, instruments?.temperature].flatMap((name) =>
    name === undefined ? [] : [[given(name)]],
  );
  return names.length === 0 ? '–' : joined(names, ', ');
}
