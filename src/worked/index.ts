// The working of results, and documents of them: the entry isochore/worked.
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
export { documentHtml } from './document/html.js';
export { documentLatex } from './document/latex.js';
export { documentMarkdown } from './document/markdown.js';
export { documentText, type TextOptions } from './document/text.js';
export type { Expression, Operator } from './formula/expression.js';
