// Which bottle goes on which accumulator, where to stop, what stays undone, what to order: as the report has it.
import type { FillingJson } from '../../record/supply-shape.js';
import type { Block, Column, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { nameOf, stepAt, stepOf, writtenGauge, type About } from './about.js';

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
  const { language, say, report } = about;
  const words = language.document.filling;
  const one = steps[i];
  if (one === undefined) return '';
  const accumulator = report.accumulators.find((other) => isSame(other, one));
  const as = accumulator === undefined ? stepAt(one.accumulatorAfter.unit, 0.1) : stepOf(accumulator.asFound);
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

type Stops = NonNullable<FillingJson['accumulators'][number]['stops']>;

function stopLines({ way, steps, reaches }: Stops, step: number, { language, say }: About): readonly Line[] {
  const words = language.document.filling;
  if (way === 'no mark of the gauge to stop at') return [words.noMark];
  const said = steps.map(({ mark, settled: { isothermal, adiabatic } }, i) => {
    // Gas that was let out settles above its stop, gas that was filled below.
    const [least, most] =
      Number(adiabatic.value) < Number(isothermal.value) ? [adiabatic, isothermal] : [isothermal, adiabatic];
    const stop = lineOf(words.stop, {
      mark: say(`${mark.value} ${mark.unit} gauge`),
      least: say(writtenGauge(least, { step })),
      most: say(writtenGauge(most, { step })),
    });
    return i === 0 ? stop : joined([words.again, stop], ' ');
  });
  return reaches === 'neither' ? [...said, words.notInBand] : said;
}

function bled({ stops, ...whose }: FillingJson['bleeding'][number], about: About): Line {
  const words = about.language.document.filling;
  const name = nameOf(whose, about);
  if (stops === 'leaves the model') return lineOf(words.condenses, { name });
  const found = about.report.accumulators.find((other) => isSame(other, whose));
  const step = found === undefined ? 0.1 : stepOf(found.asLeft === 'not read' ? found.asFound : found.asLeft).step;
  return joined([lineOf(words.bleed, { name }), ...stopLines(stops, step, about)], ' ');
}

/** What the check has cost, by the accumulator that felt it most. */
function checkLine(checks: NonNullable<FillingJson['checks']>, about: About): readonly Line[] {
  const share = ({ fall, before }: (typeof checks)[number]): number => Number(fall.value) / Number(before.value);
  const [most] = [...checks].sort((one, other) => share(other) - share(one));
  if (most === undefined) return [];
  const { before, gas } = most;
  const values = {
    name: nameOf(most, about),
    before: about.say(writtenGauge(before, stepAt(before.unit, 0.1))),
    gas: about.say(gas.rounded.mass),
  };
  return [lineOf(about.language.document.filling.check, values)];
}

function rest(
  { accumulators, bleeding, checks, optimal, objectives, vented, order }: FillingJson,
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
    optimal === 'proven' ? words.proven : lineOf(words.notProven, { objectives: open.join(', ') }),
    lineOf(words.vented, { vented: say(vented.rounded.mass) }),
    ...(order === undefined ? [] : [orderLine(order, about)]),
    ...bleeding.map((one) => bled(one, about)),
    ...checkLine(checks ?? [], about),
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
