// What a document is made of: plain data, and nothing in it is markup. Every text is escaped by the renderer that writes
// it; what other people wrote is marked as such, so that it can be set apart from the words around it as well.
import type { Severity } from '../../basis/caution.js';
import type { Expression } from '../formula/expression.js';

/** A piece of a line: words of the library, words of other people, words that stand out, or a formula. */
export type Inline =
  | string
  /** Other people's text: a name, a note, a title. Whatever direction it is written in, the line around it keeps its own. */
  | { readonly kind: 'given'; readonly text: string }
  | { readonly kind: 'strong'; readonly text: string }
  | { readonly kind: 'formula'; readonly expression: Expression };

/** A line of text: one string, or pieces. */
export type Line = string | readonly Inline[];

/** A heading; `1` is the title of a part, below that of the document. */
export interface Heading {
  readonly kind: 'heading';
  readonly level: 1 | 2 | 3;
  readonly text: Line;
}

/** A paragraph: one line of text, however long. */
export interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Line;
}

/** A list of lines. */
export interface List {
  readonly kind: 'list';
  /** `numbered` where the order is meant. */
  readonly marks: 'numbered' | 'plain';
  readonly items: readonly Line[];
}

/** A column of a table: its head, and to which side its cells stand. */
export interface Column {
  readonly heading: Line;
  /** Numbers stand to the right, words to the left. */
  readonly align: 'left' | 'right';
}

/** Every row has one cell a column. */
export interface Table {
  readonly kind: 'table';
  readonly caption?: Line;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Line[])[];
}

/** A chain of expressions that are equal, or equal but for rounding: what is wanted, its formula, the numbers, the result. */
export interface Equation {
  readonly kind: 'equation';
  readonly sides: readonly Expression[];
  /** The sign before each side but the first; `=` throughout, if it is left out. */
  readonly signs?: readonly ('=' | '≈')[];
  /** Unit of the last side. */
  readonly unit?: string;
  /** Where the formula comes from. */
  readonly source?: Line;
}

/** A caution, with the word for its severity. */
export interface Notice {
  readonly kind: 'notice';
  readonly severity: Severity;
  readonly label: string;
  readonly text: Line;
}

/** Lines to sign on: one row for each who signs, with a field to be filled in by hand for each column. */
export interface Signatures {
  readonly kind: 'signatures';
  readonly who: readonly Line[];
  readonly fields: readonly Line[];
}

/** What follows begins a new page, where there are pages. */
export interface PageBreak {
  readonly kind: 'page break';
}

/** A part of a document. */
export type Block = Heading | Paragraph | List | Table | Equation | Notice | Signatures | PageBreak;

/** A document, before it is written in any format. */
export interface WorkedDocument {
  /** Language of the words, as BCP 47 has it: `en`, `de`. */
  readonly language: string;
  readonly title: Line;
  readonly blocks: readonly Block[];
}
