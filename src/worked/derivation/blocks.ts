import { has } from '../../basis/has.js';
import type { Step } from '../../basis/relation.js';
import type { Block, Equation, Inline, Line, Table } from '../document/block.js';
import { joined, lineOf } from '../document/line.js';
import type { Expression } from '../formula/expression.js';
import { parsed } from '../formula/parse.js';
import { aboutIn, localised, sourceIn } from '../languages/format.js';
import type { Language } from '../languages/language.js';
import { LABEL, NORMAL } from './origin.js';
import type { Argument, DerivedStep, GasStateWorking, NamedQuantity, Origin, RoundedQuantity } from './derivation.js';
import { SI_UNITS, type Figure, type Figures } from './figures.js';
import { numberOf } from './numbers.js';
import type { Reader } from './reader.js';
import { withNumbers, type WrittenQuantity, type WrittenStep } from './written-step.js';
import type { Written, WrittenWorking } from './written.js';

// The blocks of a derivation: each step with where its values come from, its formula, the numbers in it, and the result.

/** The words and the number format for a reader. */
export interface Pen {
  readonly reader: Required<Reader>;
  readonly figures: Figures;
}

const symbolOf = (name: string): Expression => ({ kind: 'symbol', name });
const formulaOf = (expression: Expression): Inline => ({ kind: 'formula', expression });

function numberIn(figure: Figure, pen: Pen, form: 'with unit' | 'bare' = 'with unit'): Expression {
  return numberOf(figure, pen.reader.language, form, pen.figures.digits !== 'exact');
}

/** What a symbol stands for, in words. */
export function termOf(symbol: string, { reader }: Pen): string {
  const { terms } = reader.language.derivation;
  return Object.hasOwn(terms, symbol) ? (terms[symbol] ?? symbol) : symbol;
}

/** The basis of a pressure, in words, with a space before it. */
function basisOf({ meaning }: NamedQuantity, { reader }: Pen): string {
  if (meaning === 'gauge pressure') return ` ${reader.language.numbers.basis.gauge}`;
  return meaning === 'absolute pressure' ? ` ${reader.language.numbers.basis.absolute}` : '';
}

/** A value with unit and basis: `142.013 bar absolute = 14 201 300 Pa`. */
function valueLine({ named, inFormula, forReader }: WrittenQuantity, pen: Pen): Line {
  const first = forReader ?? inFormula;
  const rest = forReader === undefined ? [] : [' = ', formulaOf(numberIn(inFormula, pen))];
  return [formulaOf(numberIn(first, pen)), basisOf(named, pen), ...rest];
}

/** All steps, with their working by hand. */
export function stepBlocks({ steps }: Written, pen: Pen): readonly Block[] {
  return steps.flatMap((one) => workingBlocks(one, pen));
}

function workingBlocks({ written, byHand }: WrittenWorking, pen: Pen): readonly Block[] {
  const { step, from } = written;
  const words = pen.reader.language.derivation;
  const heading = lineOf(words.stepHeading, { number: String(step.number), what: whatOf(step, pen) });
  if (step.sameAs !== undefined) {
    const same = lineOf(words.sameStep, {
      step: String(step.sameAs),
      symbol: [formulaOf(symbolOf(step.relation.gives))],
      value: readerLine(written.result, pen),
    });
    return [
      { kind: 'heading', level: 3, text: heading },
      { kind: 'paragraph', text: same },
    ];
  }
  const origins = from.map((one) => originLine(one, pen));
  return [
    { kind: 'heading', level: 3, text: heading },
    ...(origins.length === 0 ? [] : [{ kind: 'list', marks: 'plain', items: origins } as const]),
    ...equations(written, pen),
    ...stateBlocks(step, byHand, pen),
  ];
}

/** Whose value, and what it is: `target, as stated: molar density`. */
export function whatOf({ about, relation }: DerivedStep, pen: Pen): string {
  const [whose, term] = [aboutIn(about, pen.reader.language), termOf(relation.gives, pen)];
  return whose === term ? whose : `${whose}: ${term}`;
}

function originLine(quantity: WrittenQuantity, pen: Pen): Line {
  const { origin } = quantity.named as Argument;
  return joined(
    [[formulaOf(symbolOf(quantity.named.symbol)), ' = '], valueLine(quantity, pen), ': ', originText(origin, pen)],
    '',
  );
}

function originText(origin: Origin, { reader }: Pen): Line {
  const { derivation } = reader.language;
  const template = derivation.origins[origin.from];
  return lineOf(template, {
    step: has(origin, 'step') ? String(origin.step) : '',
    path: has(origin, 'path') ? [{ kind: 'given', text: origin.path }] : '',
    row: has(origin, 'row') ? String(origin.row) : '',
    model: has(origin, 'model') ? [{ kind: 'given', text: origin.model }] : '',
    source: has(origin, 'source') ? publishedBy(origin.source, reader.language) : '',
  });
}

function publishedBy(source: string, language: Language): string {
  if (source === LABEL) return language.derivation.labelTemperature;
  return source === NORMAL ? language.derivation.normalConditions : sourceIn(source, language);
}

/** The formula, the numbers in it, and what it gives. */
function equations(written: WrittenStep, pen: Pen): readonly Equation[] {
  const { step, formula, result } = written;
  const source = sourceIn(step.relation.source, pen.reader.language);
  const [left, right] = formula;
  const root = symbolOf(step.relation.gives);
  if (left === undefined) return [];
  const shown = (figure: Figure): Expression => numberIn(figure, pen);
  const [numbers, other] = withNumbers(written, shown);
  if (right === undefined || numbers === undefined || other === undefined) {
    // A copy has no substitution, and a number of its own is the result.
    const sides =
      left.kind === 'number' ? [root] : left.kind === 'symbol' || !numbers ? [root, left] : [root, left, numbers];
    return [chain(sides, result, pen, source)];
  }
  return [
    { kind: 'equation', sides: [left, right], source },
    { kind: 'equation', sides: [numbers, other] },
    chain([root], result, pen, undefined),
  ];
}

/** Sides that end in a result, in the unit of the formula and then in the reader's. */
function chain(
  sides: readonly Expression[],
  { inFormula, forReader }: WrittenQuantity,
  pen: Pen,
  source: Line | undefined,
): Equation {
  const last = forReader ?? inFormula;
  const before = forReader === undefined ? [] : [numberIn(inFormula, pen)];
  const unit = last.unit === '1' || last.unit === '' ? {} : { unit: last.unit };
  return {
    kind: 'equation',
    sides: [...sides, ...before, numberIn(last, pen, 'bare')],
    ...unit,
    ...(source === undefined ? {} : { source }),
  };
}

/** A state of the gas by hand. */
function stateBlocks({ state }: DerivedStep, byHand: readonly WrittenStep[], pen: Pen): readonly Block[] {
  if (state === undefined) return [];
  const { reader } = pen;
  const words = reader.language.derivation;
  if (state.asIn !== undefined)
    return [{ kind: 'paragraph', text: lineOf(words.byHandAgain, { step: String(state.asIn) }) }];
  const residual = numberOf({ text: residualText(state.residual_Pa), unit: 'Pa', half: 0 }, reader.language, 'bare');
  return [
    { kind: 'paragraph', text: lineOf(words.byHand, { model: [{ kind: 'given', text: state.model }] }) },
    ...handBlocks(byHand, state, pen),
    { kind: 'paragraph', text: lineOf(words.residual, { residual: [formulaOf(residual)] }) },
  ];
}

/** A residual is of the size of the last places: two digits of it say enough. */
function residualText(residual_Pa: number): string {
  return residual_Pa === 0 ? '0' : residual_Pa.toExponential(1);
}

function handBlocks(byHand: readonly WrittenStep[], { terms }: GasStateWorking, pen: Pen): readonly Block[] {
  const words = pen.reader.language.derivation;
  return [
    ...byHand.slice(0, -2).flatMap((one) => equations(one, pen)),
    ...(terms.length === 0 ? [] : pen.reader.detail === 'everything' ? termBlocks(terms, pen) : [told()]),
    ...byHand.slice(-2).flatMap((one) => equations(one, pen)),
  ];

  function told(): Block {
    const count = String(terms.length / 2);
    return { kind: 'paragraph', text: lineOf(words.sumOfTerms, { count, symbol: [formulaOf(symbolOf('a_d'))] }) };
  }
}

/** Each kind of term as a formula, then all of them in a table. */
function termBlocks(terms: readonly Step[], pen: Pen): readonly Block[] {
  const relations = [...new Set(terms.map(({ relation }) => relation))];
  return [
    ...relations.map(({ gives, formula, source }): Equation => ({
      kind: 'equation',
      sides: [symbolOf(gives), ...parsed(formula)],
      source: sourceIn(source, pen.reader.language),
    })),
    termTable(terms, pen),
  ];
}

/** Each term and the sum up to it on one row: they come in pairs. */
function termTable(terms: readonly Step[], pen: Pen): Table {
  const words = pen.reader.language.derivation;
  const right = 'right' as const;
  const number = (value: number): Inline =>
    formulaOf(numberIn({ text: String(value), unit: '1', half: 0 }, pen, 'bare'));
  const rows = terms.flatMap(({ about, relation, values, result }, i): readonly (readonly Line[])[] => {
    const sum = terms[i + 1];
    if (i % 2 === 1 || sum === undefined) return [];
    // Reduced variables are the same in every term, and stand above.
    const own = relation.from.flatMap((symbol, k): Line[] =>
      symbol.endsWith('_i') ? [[formulaOf(symbolOf(symbol)), ' = ', number(values[k] ?? Number.NaN)]] : [],
    );
    return [[about.replace('term ', ''), joined(own, ', '), [number(result)], [number(sum.result)]]];
  });
  return {
    kind: 'table',
    caption: words.termsCaption,
    columns: [
      { heading: words.term, align: right },
      { heading: words.coefficients, align: 'left' },
      { heading: [words.termValue, ' ', formulaOf(symbolOf('a_i'))], align: right },
      { heading: [words.sumSoFar, ' ', formulaOf(symbolOf('a_d'))], align: right },
    ],
    rows,
  };
}

/** What came of it. */
export function answerTable(answers: readonly WrittenStep[], pen: Pen): Table {
  const words = pen.reader.language.derivation;
  return {
    kind: 'table',
    columns: [
      { heading: words.quantity, align: 'left' },
      { heading: words.symbol, align: 'left' },
      { heading: words.value, align: 'right' },
    ],
    rows: answers.map(({ step, result }): readonly Line[] => [
      whatOf(step, pen),
      [formulaOf(symbolOf(step.relation.gives))],
      readerLine(result, pen),
    ]),
  };
}

/** A value as its reader wants it. */
export function readerLine({ named, inFormula, forReader }: WrittenQuantity, pen: Pen): Line {
  return [formulaOf(numberIn(forReader ?? inFormula, pen)), basisOf(named, pen)];
}

/** Every rounding, with what it was before. */
export function roundingTable(roundings: readonly RoundedQuantity[], pen: Pen): Table {
  const { derivation: words } = pen.reader.language;
  const units = pen.figures.digits === 'exact' ? SI_UNITS : pen.figures.units;
  return {
    kind: 'table',
    columns: [
      { heading: words.quantity, align: 'left' },
      { heading: words.exact, align: 'right' },
      { heading: words.direction, align: 'left' },
      { heading: words.written, align: 'right' },
    ],
    rows: roundings.map((one): readonly Line[] => [
      words.rounded[one.of],
      [formulaOf(numberIn(pen.figures.given(one, units), pen)), basisOf(one, pen)],
      words.directions[one.toward],
      localised(one.written, pen.reader.language),
    ]),
  };
}
