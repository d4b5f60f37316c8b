import { fail, quote } from '../../basis/fault.js';
import { unknownWord, wrongKind } from '../../basis/problem.js';
import type { Block, Line, WorkedDocument } from '../document/block.js';
import { lineOf } from '../document/line.js';
import { answersOf } from './answers.js';
import { answerTable, roundingTable, stepBlocks, type Pen } from './blocks.js';
import { needDerivation, type Derivation, type DerivedStep } from './derivation.js';
import { SI_UNITS } from './figures.js';
import { neededReader, type Detail, type Reader } from './reader.js';
import { written } from './written.js';

/**
 * A derivation as blocks of a document, for a reader. Their headings are of the levels 2 and 3, to stand under one of level 1.
 *
 * At `answer` what the calculation gives, as far as it was worked in steps, and every rounding. At `steps` each step with its formula, the
 * numbers in it, its result, and where each number comes from; a state of the gas ends with its working by hand. Numbers are
 * rounded so that the printed numbers, put into the printed formula, give the printed result within what their rounding
 * allows. At `everything` the reduced variables and each term of the equation of state besides, and every number to its last
 * digit, in SI units.
 *
 * @throws {@link Fault} `wrong kind` for a derivation that {@link derivationOf} did not make; `unknown unit`, `unknown word`,
 * `outside bounds`, `wrong kind` for the reader
 * @example
 * ```ts
 * const derivation = derivationOf({ spec, reading }, ({ spec, reading }, trace) => target(spec, reading, trace));
 * const blocks = derivationBlocks(derivation, {
 *   language: english,
 *   units: { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' },
 *   detail: 'steps',
 * });
 * const page = documentText({ language: 'en', title: 'Target', blocks }, { width: 100 });
 * page.includes('p_abs = p_g + p_amb'); // => true
 * ```
 */
export function derivationBlocks(derivation: Derivation, reader: Reader): readonly Block[] {
  const own = neededReader(reader);
  needDerivation(derivation, 'derivation');
  const { language, units, detail, digits } = own;
  const words = language.derivation;
  const exact = detail === 'everything';
  const all = written(derivation.steps, exact ? SI_UNITS : units, exact ? 'exact' : digits);
  const pen: Pen = { reader: own, figures: all.figures };
  const { result, roundings, models } = derivation;
  const isTold = detail !== 'answer' && derivation.steps.length > 0;
  const table = answerTable(answersOf(all, result), pen);
  return [
    ...(isTold ? [heading(words.stepsHeading), ...stepBlocks(all, pen)] : []),
    heading(words.resultHeading),
    table.rows.length === 0 ? { kind: 'paragraph', text: words.noSteps } : table,
    ...(roundings.length === 0 ? [] : [heading(words.roundingsHeading), roundingTable(roundings, pen)]),
    ...models.map((model): Block => ({
      kind: 'paragraph',
      text: lineOf(words.model, {
        model: [{ kind: 'given', text: model.id }],
        citation: [{ kind: 'given', text: model.citation }],
      }),
    })),
    {
      kind: 'paragraph',
      text: exact ? words.exactDigits : lineOf(words.digits, { digits: String(all.figures.digits) }),
    },
  ];
}

function heading(text: Line): Block {
  return { kind: 'heading', level: 2, text };
}

/**
 * A derivation as a document of its own.
 *
 * @param title other people's text: shown as it is, never as markup
 * @throws {@link Fault} as {@link derivationBlocks}
 * @example
 * ```ts
 * const derivation = derivationOf({ spec, reading }, ({ spec, reading }, trace) => check(spec, reading, trace));
 * const document = derivationDocument(derivation, 'Accumulator 3', {
 *   language: german,
 *   units: { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' },
 *   detail: 'answer',
 * });
 * document.language; // => 'de'
 * ```
 */
export function derivationDocument(derivation: Derivation, title: string, reader: Reader): WorkedDocument {
  const own = neededReader(reader);
  return titled(title, derivationBlocks(derivation, own).map(raised), own);
}

/**
 * Chosen steps of a derivation as a document of its own, each with its number in the whole: for a page that shows how one
 * value comes about, where the rest would only be in the way. Choose by what a step is about and what it gives; its number
 * moves when a release shows a step more.
 *
 * @param chosen whether a step is told; states of the gas in it come with their working
 * @param title other people's text: shown as it is, never as markup
 * @throws {@link Fault} as {@link derivationDocument}; `unknown word` for the detail `answer`, which has no steps; what
 * `chosen` throws
 * @example
 * ```ts
 * const derivation = derivationOf({ spec, reading }, ({ spec, reading }, trace) => target(spec, reading, trace));
 * const excerpt = derivationExcerpt(
 *   derivation,
 *   ({ about, relation }) => about === 'target' && relation.gives === 'p_g',
 *   'What the gauge should show',
 *   { language: english, units: { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' }, detail: 'steps' },
 * );
 * documentText(excerpt, { width: 80 }).includes('4. target: gauge pressure'); // => true
 * ```
 */
export function derivationExcerpt(
  derivation: Derivation,
  chosen: (step: DerivedStep) => boolean,
  title: string,
  reader: Reader & { readonly detail: Exclude<Detail, 'answer'> },
): WorkedDocument {
  const own = neededReader(reader);
  if (own.detail === 'answer') fail(unknownWord, 'reader.detail', quote(own.detail), { words: 'steps or everything' });
  if (typeof chosen !== 'function')
    fail(wrongKind, 'chosen', quote(chosen), {
      kind: 'a function that chooses steps',
      maker: "a function such as (step) => step.about === 'target'",
    });
  return titled(title, toldSteps(derivation, own, chosen).map(raised).map(raised), own);
}

function titled(title: string, blocks: readonly Block[], { language }: Required<Reader>): WorkedDocument {
  if (typeof title !== 'string') fail(wrongKind, 'title', quote(title), { kind: 'a text', maker: 'a title' });
  return { language: language.code, title: [{ kind: 'given', text: title }], blocks };
}

/** A heading one level higher: below a title no level is left out. */
export function raised(block: Block): Block {
  return block.kind === 'heading' && block.level !== 1 ? { ...block, level: block.level === 3 ? 2 : 1 } : block;
}

/** The steps of a derivation alone, without what stands around them: all, or those chosen. */
export function toldSteps(
  derivation: Derivation,
  reader: Required<Reader>,
  chosen: (step: DerivedStep) => boolean = () => true,
): readonly Block[] {
  needDerivation(derivation, 'derivation');
  const exact = reader.detail === 'everything';
  const all = written(derivation.steps, exact ? SI_UNITS : reader.units, exact ? 'exact' : reader.digits);
  const told = { ...all, steps: all.steps.filter(({ written }) => chosen(written.step)) };
  return stepBlocks(told, { reader, figures: all.figures });
}
