// The working of results, and documents of them: the entry isochore/worked.
export { Fault, isFault, type Problem, type ProblemCode } from '../basis/fault.js';
export { card, type CardGiven } from './card/card.js';

export type {
  Block,
  Column,
  Equation,
  Heading,
  Inline,
  Line,
  List,
  Notice,
  PageBreak,
  Paragraph,
  Signatures,
  Table,
  WorkedDocument,
} from './document/block.js';
export { comparisonBlocks, comparisonDocument } from './derivation/comparison.js';
export { derivationBlocks, derivationDocument, derivationExcerpt } from './derivation/document.js';
export { derivationOf } from './derivation/derive.js';
export type {
  Argument,
  Derivation,
  DerivedStep,
  GasStateWorking,
  ModelCited,
  NamedQuantity,
  Origin,
  RoundedOf,
  RoundedQuantity,
} from './derivation/derivation.js';
export type { ReaderUnits } from './derivation/figures.js';
export type { Detail, Reader } from './derivation/reader.js';
export type { Meaning } from './derivation/symbol.js';
export { exercises, type ExercisesGiven } from './exercise/exercises.js';
export type {
  Arithmetic,
  ArithmeticExercise,
  Choice,
  Diagnosis,
  DiagnosisExercise,
  Exercise,
  ExerciseTopic,
  Fact,
  FactCode,
  FactValue,
  Mistake,
} from './exercise/exercise.js';
export { exerciseKey, exerciseSheet } from './exercise/sheet.js';
export { documentHtml } from './document/html.js';
export { documentLatex } from './document/latex.js';
export { documentMarkdown } from './document/markdown.js';
export { documentText, type TextOptions } from './document/text.js';
export { roundDocument, type RoundDocumentGiven } from './round/round.js';
export type { Expression, Operator } from './formula/expression.js';

export { english } from './languages/english.js';
export { german } from './languages/german.js';
export type { DerivationWords, ExerciseWords } from './languages/derivation-words.js';
export type { FillingWords, SafetyWords } from './languages/charging-words.js';
export type { CardWords, DocumentWords, RoundWords } from './languages/document-words.js';
export type { EveryWord, Language, NumberFormat } from './languages/language.js';
