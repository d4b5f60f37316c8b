import { fail, quote } from '../../basis/fault.js';
import { wrongKind } from '../../basis/problem.js';
import type { Block, Line, Table, WorkedDocument } from '../document/block.js';
import { lineOf } from '../document/line.js';
import { answersOf } from './answers.js';
import { readerLine, whatOf, type Pen } from './blocks.js';
import { needDerivation, type Derivation, type NamedQuantity } from './derivation.js';
import { dimensionOf, halfInSI, scaleIn, SI_UNITS, type Figures } from './figures.js';
import { neededReader, type Reader } from './reader.js';
import type { Meaning } from './symbol.js';
import { written } from './written.js';
import type { WrittenStep } from './written-step.js';

/**
 * Two derivations side by side, as blocks: what would the ideal-gas law have cost?
 *
 * Run the same calculation twice, with another gas model or another input in the second. At `answer` the results stand side
 * by side, at `steps` every step that comes out otherwise, at `everything` every step, to the last digit and in SI units.
 * The difference is the second less the first.
 *
 * @throws {@link Fault} as {@link derivationBlocks}
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * const ideal = specification({ ...spec, gas: idealNitrogen });
 * const one = derivationOf({ spec, at }, ({ spec, at }, trace) => target(spec, at, trace));
 * const other = derivationOf({ spec: ideal, at }, ({ spec, at }, trace) => target(spec, at, trace));
 * const units = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
 * const blocks = comparisonBlocks(one, other, { language: english, units, detail: 'answer' });
 * const page = documentText({ language: 'en', title: 'Target', blocks }, { width: 120 });
 * page.includes('−2.991 bar'); // => true
 * ```
 */
export function comparisonBlocks(one: Derivation, other: Derivation, reader: Reader): readonly Block[] {
  const own = neededReader(reader);
  needDerivation(one, 'one');
  needDerivation(other, 'other');
  const { language, units, detail, digits } = own;
  const words = language.derivation;
  const exact = detail === 'everything';
  const inUnits = exact ? SI_UNITS : units;
  let [first, second] = [one, other].map(({ steps }) => written(steps, inUnits, exact ? 'exact' : digits));
  if (first === undefined || second === undefined) return [];
  // Both with the digits of the one that needs more.
  const most = Math.max(...[first, second].map(({ figures }) => (figures.digits === 'exact' ? 0 : figures.digits)));
  if (!exact) [first, second] = [written(one.steps, units, most), written(other.steps, units, most)];
  const pens = [first, second].map(({ figures }): Pen => ({ reader: own, figures }));
  const [penOne, penOther] = pens;
  if (penOne === undefined || penOther === undefined) return [];
  const all =
    detail === 'answer'
      ? [answersOf(first, one.result), answersOf(second, other.result)]
      : [stepsOf(first), stepsOf(second)];
  const pairs = paired(all.at(0) ?? [], all.at(1) ?? []).filter(
    ({ one: a, other: b }) => detail !== 'steps' || a?.result.named.value !== b?.result.named.value,
  );
  const names = [one, other].map(({ models }): Line => [
    { kind: 'given', text: models.map(({ id }) => id).join(', ') || '–' },
  ]);
  const column = (i: number): Line => lineOf(words.by, { model: names[i] ?? '' });
  const table: Table = {
    kind: 'table',
    columns: [
      { heading: words.quantity, align: 'left' },
      { heading: column(0), align: 'right' },
      { heading: column(1), align: 'right' },
      { heading: words.difference, align: 'right' },
    ],
    rows: pairs.map(({ one: a, other: b }): readonly Line[] => {
      const step = a ?? b;
      return [
        step === undefined ? '' : whatOf(step.step, penOne),
        a === undefined ? words.onlyIn : readerLine(a.result, penOne),
        b === undefined ? words.onlyIn : readerLine(b.result, penOther),
        a === undefined || b === undefined ? '–' : differenceLine(a, b, penOne),
      ];
    }),
  };
  return [
    { kind: 'paragraph', text: lineOf(words.comparisonIntro, { one: names.at(0) ?? '', other: names.at(1) ?? '' }) },
    table.rows.length === 0 ? { kind: 'paragraph', text: words.allAlike } : table,
    {
      kind: 'paragraph',
      text: exact ? words.exactDigits : lineOf(words.comparedDigits, { digits: String(most) }),
    },
  ];
}

/**
 * Two derivations side by side, as a document of its own.
 *
 * @param title other people's text: shown as it is, never as markup
 * @throws {@link Fault} as {@link comparisonBlocks}
 * @example
 * ```ts
 * const at = { temperature: temperature(40, '°C'), ambient: standardAtmosphere };
 * const one = derivationOf({ spec, at }, ({ spec, at }, trace) => target(spec, at, trace));
 * const other = derivationOf({ spec, reading }, ({ spec, reading }, trace) => target(spec, reading, trace));
 * const units = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
 * comparisonDocument(one, other, 'Two days', { language: english, units, detail: 'answer' }).language; // => 'en'
 * ```
 */
export function comparisonDocument(one: Derivation, other: Derivation, title: string, reader: Reader): WorkedDocument {
  if (typeof title !== 'string') fail(wrongKind, 'title', quote(title), { kind: 'a text', maker: 'a title' });
  const own = neededReader(reader);
  const blocks = comparisonBlocks(one, other, own);
  return { language: own.language.code, title: [{ kind: 'given', text: title }], blocks };
}

function stepsOf({ steps }: ReturnType<typeof written>): readonly WrittenStep[] {
  return steps.map((one) => one.written);
}

interface Pair {
  readonly one: WrittenStep | undefined;
  readonly other: WrittenStep | undefined;
}

/** Steps about the same thing that give the same quantity, the n-th beside the n-th. */
function paired(one: readonly WrittenStep[], other: readonly WrittenStep[]): readonly Pair[] {
  const left = new Map<string, WrittenStep[]>();
  for (const step of other) {
    const key = keyOf(step);
    left.set(key, [...(left.get(key) ?? []), step]);
  }
  const pairs = one.map((step): Pair => ({ one: step, other: left.get(keyOf(step))?.shift() }));
  return [...pairs, ...[...left.values()].flat().map((step): Pair => ({ one: undefined, other: step }))];
}

function keyOf({ step }: WrittenStep): string {
  return `${step.about}: ${step.relation.gives}`;
}

/** The second less the first, as far as the printed numbers tell it. */
function differenceLine(one: WrittenStep, other: WrittenStep, pen: Pen): Line {
  const { named } = one.result;
  const difference: NamedQuantity = {
    ...named,
    value: other.result.named.value - named.value,
    meaning: differenceOf(named.meaning),
  };
  const units = pen.figures.digits === 'exact' ? SI_UNITS : pen.figures.units;
  const missed = [one, other].reduce((sum, { result }) => sum + missedBy(result, pen.figures, units), 0);
  const inFormula = pen.figures.result(difference, units, missed);
  return readerLine({ named: difference, inFormula, forReader: undefined }, pen);
}

function missedBy(
  { named, inFormula, forReader }: WrittenStep['result'],
  figures: Figures,
  units: Figures['units'],
): number {
  return forReader === undefined
    ? halfInSI(inFormula, scaleIn(dimensionOf(named.meaning) === undefined ? SI_UNITS : units, named.meaning))
    : halfInSI(forReader, scaleIn(figures.units, named.meaning));
}

function differenceOf(meaning: Meaning): Meaning {
  if (meaning === 'gauge pressure' || meaning === 'absolute pressure') return 'pressure difference';
  return meaning === 'temperature' ? 'temperature difference' : meaning;
}
