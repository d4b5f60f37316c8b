// Documents as those see them who read them: the parts of each format, taken apart by a parser of that format.
import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import katex from 'katex';
import type { Nodes, Root, TableCell } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { toString } from 'mdast-util-to-string';
import { gfmTable } from 'micromark-extension-gfm-table';
import { parse } from '@unified-latex/unified-latex-util-parse';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
  // Of concern to search engines alone: a title may hold a name as long as it is.
  rules: { 'long-title': 'off' },
});

/** What a validator finds wrong with a page. */
export async function wrongWithHtml(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));
}

/** The tags of a page, without their attributes. */
export function tagsOf(html: string): string[] {
  return [...html.matchAll(/<([a-z]\w*)[^>]*>/g)].map(([, name = '']) => name);
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
};

/** The text of a page that is shown. Every other `<` and `&` in it is an entity: the validator sees to that. */
export function textOfHtml(html: string): string {
  const body = /<body>([^]*)<\/body>/.exec(html)?.[1] ?? '';
  return body.replace(/<[^>]*>/g, '').replace(/&[^;]+;/g, (entity) => ENTITIES[entity] ?? entity);
}

export function treeOfMarkdown(markdown: string): Root {
  return fromMarkdown(markdown, { extensions: [gfmTable()], mdastExtensions: [gfmTableFromMarkdown()] });
}

export function nodesOf(node: Nodes): Nodes[] {
  return [node, ...('children' in node ? node.children.flatMap(nodesOf) : [])];
}

/** The tables of a document, cell by cell, as a reader sees them. */
export function tablesOfMarkdown(markdown: string): string[][][] {
  const tables = nodesOf(treeOfMarkdown(markdown)).filter((node) => node.type === 'table');
  return tables.map(({ children }) => children.map((row) => row.children.map((cell: TableCell) => toString(cell))));
}

interface TexNode {
  readonly type: string;
  readonly content?: unknown;
  readonly env?: unknown;
  readonly args?: unknown;
}

/** Every node of a LaTeX document. */
export function nodesOfLatex(latex: string): TexNode[] {
  const found: TexNode[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('type' in value && typeof value.type === 'string') found.push(value as TexNode);
    for (const inner of Object.values(value)) visit(inner);
  };
  visit(parse(latex));
  return found;
}

/** The formulas of a LaTeX document, as they go to a renderer. */
export function formulasOf(latex: string): string[] {
  return [...latex.matchAll(/\\\[([^]*?)\\\]|\\\(([^]*?)\\\)/g)].map(([, shown, inLine]) => shown ?? inLine ?? '');
}

/** Renders a formula strictly; throws where LaTeX would complain. */
export function renderedFormula(formula: string): string {
  return katex.renderToString(formula, { strict: 'error', throwOnError: true, displayMode: true });
}

/** Text that tries to be something else in one format or another, or that simply is not Latin. */
export const anyHostile: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    '</title></style><b>',
    '&amp;&lt;&#x3c;',
    '\\input{/etc/passwd}',
    '\\write18{rm -rf /}',
    '$\\def\\x{\\x}\\x$ 50 % ~ ^ _ {',
    '\\end{document}',
    '}{',
    '\\]\\(',
    '| a | b |',
    '`code` *em* **strong** _em_ ~~gone~~',
    '[link](javascript:alert(1)) ![picture](x)',
    '# heading',
    '- item',
    '1. item',
    '12) item',
    '+ item',
    '> quote',
    '    code',
    '---',
    '===',
    '```',
    '<!-- comment -->',
    '[ref]: http://invalid.example',
    'a\\',
    '\\',
    '=1+1',
    '+cmd|calc',
    '-2+3',
    '@SUM(A1)',
    'مضخة الزيت 3',
    'בדיקה 12 (א)',
    '\u202Eevil\u202C',
    '\u2066isolate',
    '\u2069\u2069out',
    'tab\tline\nnext\r\nlast\u0085\u2028\u2029end',
    '\u001b[31mred\u001b[0m\u0007\u0000',
    '\uD800half',
    'zero\u200Bwidth\uFEFF',
    'e\u0301\u0302\u0303',
    '圧力計 一号',
    '👩‍🔧 gauge',
    'x'.repeat(200),
    'Donaudampfschifffahrt'.repeat(9),
    '',
    ' ',
    '  two  spaces  ',
    "it's \"quoted\" -- ``so''",
    '{braces} {gauge} {0} $& $1',
  ),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc
    .array(fc.constantFrom(...'\\{}$&#^_~%<>"\'`|*[]()!+-.=@ \n1a'.split('')), { maxLength: 40 })
    .map((letters) => letters.join('')),
);
