// What to do, unit by unit, the worst first, and the gas for it.
import { has } from '../../basis/has.js';
import type { AccumulatorJson, JudgedJson, RoundReport } from '../../record/report-shape.js';
import { worstFirst } from '../../record/worst-first.js';
import type { Block, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { nameOf, percent, type About } from './about.js';

export function toDo(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  const heading: Block = { kind: 'heading', level: 1, text: words.workHeading };
  if (report.accumulators.length === 0) return [heading, { kind: 'paragraph', text: words.nothingJudged }];
  const units = worstFirst(report).map(({ unitServed, stake, accumulators }) => ({
    unitServed,
    stake,
    open: accumulators.flatMap((one) => (has(one, 'accumulator') && isOpen(one.accumulator) ? [one.accumulator] : [])),
  }));
  const due = units.filter(({ open }) => open.length > 0);
  if (due.length === 0) return [heading, { kind: 'paragraph', text: words.nothingToDo }];
  return [
    heading,
    ...due.flatMap(({ unitServed, stake, open }): readonly Block[] => [
      {
        kind: 'heading',
        level: 2,
        text: lineOf(words.unit, {
          unit: unitServed === undefined ? words.noUnit : [given(unitServed)],
          stake: language.document.stakes[stake],
        }),
      },
      ...open.flatMap((one) => task(one, about)),
    ]),
  ];
}

function isOpen({ asFound, state }: AccumulatorJson): boolean {
  return asFound.outcome !== 'within' || state !== 'in order';
}

function task(accumulator: AccumulatorJson, about: About): readonly Block[] {
  const { asFound, asLeft, state } = accumulator;
  const { language, tell } = about;
  const words = language.document.round;
  const left: readonly Line[] =
    asLeft === 'not read'
      ? []
      : [
          lineOf(words.left, { outcome: language.document.outcomes[asLeft.outcome], why: tell(asLeft.why) }),
          ...(state === 'in order' ? [] : [...doubts(asLeft, about), ...instruction(asLeft, about)]),
        ];
  const items = [...causes(asFound, about), ...doubts(asFound, about), ...instruction(asFound, about), ...left];
  return [
    { kind: 'heading', level: 3, text: nameOf(accumulator, about) },
    { kind: 'paragraph', text: sentence(tell(asFound.why)) },
    ...(items.length === 0 ? [] : [{ kind: 'list', marks: 'plain', items } as const]),
  ];
}

/** Words under a code, as a sentence of their own. */
function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}

function causes({ causes = [] }: JudgedJson, { language, tell }: About): readonly Line[] {
  return causes.map(({ text }) => lineOf(language.document.round.cause, { cause: tell(text) }));
}

/** What makes a reading doubtful: it looks like a slip, something is lacking, or the instruments leave it open. */
function doubts({ decision, slips = [], uncertainty }: JudgedJson, about: About): readonly Line[] {
  const { language, tell, report } = about;
  const words = language.document.round;
  const term = (code: string): string => report.terms?.find((one) => one.code === code)?.text ?? code;
  const meant = slips.map((one) =>
    lineOf(words.meant, {
      slips: tell(one.slips.map(({ text }) => text).join(', ')),
      outcome: language.document.outcomes[one.outcome],
    }),
  );
  const lacking =
    uncertainty?.outcome === 'not stated'
      ? [lineOf(words.lacking, { lacking: uncertainty.lacking.map(term).join('; ') })]
      : [];
  if (decision === undefined || !has(decision, 'probability') || decision.settling === undefined)
    return [...meant, ...lacking];
  const { probability, settling } = decision;
  return [
    ...meant,
    lineOf(words.inconclusive, {
      below: percent(probability.below, about),
      above: percent(probability.above, about),
      largest: term(settling.largest),
    }),
    lineOf(words.settle, { ways: tell(settling.ways.map(({ text }) => text).join('; ')) }),
  ];
}

function instruction(
  { charge, outcome, because, decision }: JudgedJson,
  { language, say, tell }: About,
): readonly Line[] {
  const words = language.document.round;
  // Said already: read again.
  if (charge.action === 'none' || decision?.outcome === 'inconclusive') return [];
  if (charge.action === 'withheld') {
    const code = because.every((one) => one === 'beyond the scale') ? 'beyond the scale' : outcome;
    return has(words.next, code) ? [words.next[code as keyof typeof words.next]] : [sentence(tell(charge.why))];
  }
  const { action, gas, stop, settleMinutes } = charge;
  const how = lineOf(words[action], { mass: say(gas.rounded.mass), volume: say(gas.rounded.normalVolume) });
  if (stop.action === 'withheld') return [how, lineOf(words.noStop, { why: tell(stop.why) })];
  if (typeof stop.mark === 'string') return [how, words.noMark];
  const mark = say(`${stop.mark.value} ${stop.mark.unit} ${stop.mark.basis}`);
  return [joined([how, lineOf(words.stop, { mark, minutes: say(String(settleMinutes)) })], ' ')];
}

/** What is to be brought. */
export function gasToAdd(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  if (report.accumulators.length === 0) return [];
  const items: Line[] = [
    sum(words.gasFound, report.gasToAdd.asFound, about),
    sum(words.gasStill, report.gasToAdd.stillToAdd, about),
    words.losses,
    ...(report.complete === 'partial' ? [words.ofThePart] : []),
  ];
  return [
    { kind: 'heading', level: 1, text: words.gasHeading },
    { kind: 'list', marks: 'plain', items },
  ];
}

function sum(what: string, { accumulators, gas }: RoundReport['gasToAdd']['asFound'], { language, say }: About): Line {
  const words = language.document.round;
  if (gas === undefined) return lineOf(words.gasNone, { what });
  const { mass, normalVolume } = gas.rounded;
  return lineOf(words.gasSum, { what, count: String(accumulators), mass: say(mass), volume: say(normalVolume) });
}
