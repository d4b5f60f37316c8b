// Which bottle goes on which accumulator, where to stop, what stays undone, what to order: as the report has it.
import type { Division } from '../../quantity/step.js';
import type { PressureUnit } from '../../quantity/unit.js';
import type { FillingJson } from '../../record/supply-shape.js';
import type { Block, Column, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { differenceText, nameOf, stepAt, stepOf, writtenGauge, type About } from './about.js';

export function filling(about: About): readonly Block[] {
  const { filling } = about.report;
  if (filling === undefined) return [];
  const words = about.language.document.filling;
  return [
    { kind: 'heading', level: 1, text: words.heading },
    ...(filling.bottles.length === 0 ? [] : [bottles(filling, about)]),
    filling.steps.length === 0
      ? { kind: 'paragraph', text: words.nothing }
      : { kind: 'list', marks: 'numbered', items: filling.steps.map((_, i) => step(filling, i, about)) },
    { kind: 'list', marks: 'plain', items: rest(filling, about) },
  ];
}

type Step = FillingJson['steps'][number];
type Named = Pick<Step, 'group' | 'name'>;

const isSame = (one: Named, other: Named): boolean => one.group === other.group && one.name === other.name;

function bottles({ bottles }: FillingJson, { language, say, tell }: About): Block {
  const { columns, states, uses } = language.document.filling;
  return {
    kind: 'table',
    columns: Object.values(columns).map((heading): Column => ({ heading, align: 'left' })),
    rows: bottles.map(({ name, at15C, state, aboveResidual, use, after, because }) => [
      [given(name)],
      bare(writtenGauge(at15C, stepAt(at15C.unit, 1)), say),
      states[state],
      say(aboveResidual.rounded.mass),
      uses[use],
      use === 'used' ? bare(writtenGauge(after, stepAt(after.unit, 1)), say) : '–',
      because.length === 0 ? '–' : tell(because.map(({ text }) => text).join('; ')),
    ]),
  };
}

/** Under a head that says that it is gauge pressure. */
function bare(written: string, say: About['say']): string {
  return say(written.replace(/ gauge$/, ''));
}

function step({ steps, accumulators }: FillingJson, i: number, about: About): Line {
  const { language, say } = about;
  const words = language.document.filling;
  const one = steps[i];
  if (one === undefined) return '';
  const as = stepFor(one, one.accumulatorAfter.unit, about);
  const line = lineOf(words.step, {
    bottle: [given(one.bottle)],
    name: nameOf(one, about),
    pressure: say(writtenGauge(one.accumulatorAfter, as)),
    ended: words.ended[one.ended],
    moved: say(one.moved.rounded.mass),
    vented: say(one.vented.rounded.mass),
    after: say(writtenGauge(one.bottleAfter, stepAt(one.bottleAfter.unit, 1))),
  });
  // Where to stop is that of the last bottle.
  const isLast = !steps.slice(i + 1).some((later) => isSame(later, one));
  const stops = isLast ? accumulators.find((other) => isSame(other, one))?.stops : undefined;
  return stops === undefined ? line : joined([line, ...stopLines(stops, as.step, about)], ' ');
}

/** One decimal more than the gauge is read to on which the work is judged. */
function stepFor(one: Named, unit: PressureUnit, { report }: About): Division<PressureUnit> {
  const accumulator = report.accumulators.find((other) => isSame(other, one));
  if (accumulator === undefined) return stepAt(unit, 0.1);
  const { asFound, asLeft } = accumulator;
  return stepOf(asLeft === 'not read' ? asFound : asLeft);
}

type Stops = NonNullable<FillingJson['accumulators'][number]['stops']>;

function stopLines({ way, steps, reaches }: Stops, step: number, { language, say }: About): readonly Line[] {
  const words = language.document.filling;
  if (way === 'no mark of the gauge to stop at') return [words.noMark];
  const said = steps.map(({ mark, settled: { isothermal, adiabatic } }, i) => {
    // Gas that was let in cools and falls, gas that is left after bleeding warms and rises.
    const isFalling = Number(adiabatic.value) < Number(isothermal.value);
    const [least, most] = isFalling ? [adiabatic, isothermal] : [isothermal, adiabatic];
    const stop = lineOf(words.stop, {
      mark: say(`${mark.value} ${mark.unit} gauge`),
      least: say(writtenGauge(least, { step })),
      most: say(writtenGauge(most, { step })),
    });
    return i === 0 ? stop : joined([words.again, stop], ' ');
  });
  return reaches === 'neither' ? [...said, words.notInBand] : said;
}

type Bled = FillingJson['bleeding'][number];

function bled({ stops, ...one }: Bled, about: About): Line {
  const words = about.language.document.filling;
  const head = lineOf(words.bleed, { name: nameOf(one, about) });
  if (stops === 'leaves the model') return joined([head, words.noBleeding], ' ');
  const unit = stops.steps.at(0)?.from.unit ?? 'bar';
  return joined([head, ...stopLines(stops, stepFor(one, unit, about).step, about)], ' ');
}

type Checked = NonNullable<FillingJson['checks']>[number];

/** What the kit took for the reading as found, of the accumulator that lost the largest part of its pressure. */
function checked(checks: readonly Checked[], about: About): readonly Line[] {
  const { say, language } = about;
  const share = ({ fall, before }: Checked): number => Number(fall.value) / Number(before.value);
  const [most] = checks.filter(({ before }) => Number(before.value) > 0).sort((a, b) => share(b) - share(a));
  if (most === undefined) return [];
  const { before, fall, gas } = most;
  return [
    lineOf(language.document.filling.checked, {
      name: nameOf(most, about),
      gas: say(gas.rounded.mass),
      before: say(writtenGauge(before, stepAt(before.unit, 0.1))),
      fall: say(differenceText(fall, stepAt(fall.unit, 0.1), 'up')),
    }),
  ];
}

function rest(
  { accumulators, optimal, objectives, vented, order, bleeding, heldBack = [], checks = [] }: FillingJson,
  about: About,
): readonly Line[] {
  const { language, say, tell } = about;
  const words = language.document.filling;
  const open = objectives.filter(({ gap }) => gap !== 0).map(({ objective }) => words.objectives[objective]);
  return [
    ...accumulators
      .filter(({ outcome }) => outcome === 'undone')
      .map((one) =>
        lineOf(words.undone, {
          name: nameOf(one, about),
          because: tell(one.because.map(({ text }) => text).join('; ')),
          missing: say(one.missing.rounded.mass),
        }),
      ),
    ...heldBack.map((one) =>
      lineOf(words.heldBack, {
        name: nameOf(one, about),
        because: tell(one.because.map(({ text }) => text).join('; ')),
      }),
    ),
    optimal === 'proven' ? words.proven : lineOf(words.notProven, { objectives: open.join(', ') }),
    lineOf(words.vented, { vented: say(vented.rounded.mass) }),
    ...(order === undefined ? [] : [orderLine(order, about)]),
    ...bleeding.map((one) => bled(one, about)),
    ...checked(checks, about),
  ];
}

function orderLine(order: NonNullable<FillingJson['order']>, { language, tell }: About): Line {
  const words = language.document.filling;
  if (order.needed === 'not found')
    return lineOf(words.noOrder, { because: tell(order.because.map(({ text }) => text).join('; ')) });
  if (order.needed === 0) return words.orderNone;
  const line = lineOf(words.order, { order: String(order.order), needed: String(order.needed) });
  return order.fewest === 'proven' ? line : joined([line, words.fewer], ' ');
}
