// Every kind of block in every format, letter by letter, and what is refused.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  documentHtml,
  documentLatex,
  documentMarkdown,
  documentText,
  type Block,
  type Expression,
  type WorkedDocument,
} from 'isochore/worked';
import { widthOf, wrapped } from '../../src/worked/document/width.js';
import { problemOf } from '../support/problem.js';
import { formulasOf, renderedFormula, wrongWithHtml } from '../support/renderings.js';

const pageOf = (...blocks: Block[]): WorkedDocument => ({ language: 'en', title: 'Title', blocks });
const number = (text: string, unit?: string): Expression =>
  unit === undefined ? { kind: 'number', text } : { kind: 'number', text, unit };
const symbol = (name: string): Expression => ({ kind: 'symbol', name });
const quotient: Expression = { kind: 'operation', operator: '÷', left: symbol('p_abs'), right: symbol('rho') };

const textOf = (block: Block): string => documentText(pageOf(block), { width: 60 }).replace('Title\n=====\n\n', '');
const markdownOf = (block: Block): string => documentMarkdown(pageOf(block)).replace('# Title\n\n', '');
const htmlOf = (block: Block): string =>
  /<h1>Title<\/h1>\n([^]*?)\n<\/main>/.exec(documentHtml(pageOf(block)))?.[1] ?? '';
const latexOf = (block: Block): string =>
  / Title\\par\}\n\n([^]*?)\n\n\\end\{document\}/.exec(documentLatex(pageOf(block)))?.[1] ?? '';

describe('a block', () => {
  const heading: Block = { kind: 'heading', level: 2, text: 'Part & parcel' };
  const list: Block = { kind: 'list', marks: 'numbered', items: ['first', 'second'] };
  const notice: Block = { kind: 'notice', severity: 'caution', label: 'Caution', text: 'Look.' };
  const table: Block = {
    kind: 'table',
    caption: 'Pressures',
    columns: [
      { heading: 'what', align: 'left' },
      { heading: 'bar', align: 'right' },
    ],
    rows: [
      ['target', '140.0'],
      ['read', '9.5'],
    ],
  };
  const signatures: Block = { kind: 'signatures', who: ['Read by'], fields: ['name', 'date'] };

  test('is plain text', () => {
    expect(textOf(heading)).toBe('Part & parcel\n-------------\n');
    expect(textOf(list)).toBe('1. first\n2. second\n');
    expect(textOf(notice)).toBe('CAUTION: Look.\n');
    expect(textOf(table)).toBe('Pressures\n\nwhat      bar\n------  -----\ntarget  140.0\nread      9.5\n');
    expect(textOf(signatures)).toContain(`Read by\n\n    ${'_'.repeat(40)}\n    name\n`);
  });

  test('is Markdown', () => {
    expect(markdownOf(heading)).toBe('### Part \\& parcel\n');
    expect(markdownOf(list)).toBe('1. first\n2. second\n');
    expect(markdownOf(notice)).toBe('> **Caution:** Look.\n');
    expect(markdownOf(table)).toBe('Pressures\n\n| what | bar |\n| :-- | --: |\n| target | 140.0 |\n| read | 9.5 |\n');
    expect(markdownOf(signatures)).toBe('|  | name | date |\n| :-- | :-- | :-- |\n| Read by |  |  |\n');
  });

  test('is HTML', () => {
    expect(htmlOf(heading)).toBe('<h3>Part &amp; parcel</h3>');
    expect(htmlOf(list)).toBe('<ol>\n<li>first</li>\n<li>second</li>\n</ol>');
    expect(htmlOf(notice)).toBe('<p class="caution"><strong>Caution:</strong> Look.</p>');
    expect(htmlOf(table)).toContain('<tr><td>target</td><td class="number">140.0</td></tr>');
    expect(htmlOf(table)).toContain('<caption>Pressures</caption>');
    expect(htmlOf(signatures)).toBe(
      '<p class="signs">Read by</p>\n<p class="signature"><span>name</span><span>date</span></p>',
    );
  });

  test('is LaTeX', () => {
    expect(latexOf(heading)).toBe('\\subsection*{Part \\& parcel}');
    expect(latexOf(list)).toMatch(/^\\begin\{enumerate\}.*\n\\item \{\}first\n\\item \{\}second\n\\end\{enumerate\}$/);
    expect(latexOf(notice)).toMatch(/^\\fbox\{\\parbox\{.*\}\{\\textbf\{Caution:\} Look\.\}\}$/);
    expect(latexOf(table)).toContain('{}target & {}140.0 \\\\\n{}read & {}9.5 \\\\');
    expect(latexOf({ kind: 'page break' })).toBe('\\newpage');
  });

  test('is as wide in LaTeX as it is, or as the page', () => {
    const wide: Block = { ...table, rows: [['one of many words '.repeat(9), '1']] };
    expect(latexOf(table)).toContain('\\begin{longtable}{lr}');
    const shares = [...latexOf(wide).matchAll(/(raggedright|raggedleft)\\arraybackslash\}p\{\\dimexpr ([\d.]+)/g)];
    expect(shares.map(([, side]) => side)).toEqual(['raggedright', 'raggedleft']);
    expect(shares.reduce((sum, [, , share]) => sum + Number(share), 0)).toBeCloseTo(1, 3);
  });

  test('with a long number of columns keeps words whole in plain text, and gives of the widest first', () => {
    const columns = ['a short one', 'another', 'the third of them'].map((text) => ({
      heading: text,
      align: 'left' as const,
    }));
    const block: Block = {
      kind: 'table',
      columns,
      rows: [['one', 'two', 'a long sentence that does not fit beside the others']],
    };
    const lines = documentText(pageOf(block), { width: 50 }).split('\n');
    expect(lines).toContain('one          two      a long sentence that does');
    expect(lines).toContain('                      not fit beside the others');
  });
});

// What a browser makes of it is looked at by `npm run everywhere`.
describe('the style sheet', () => {
  const [, style = ''] = /<style>([^]*)<\/style>/.exec(documentHtml(pageOf())) ?? [];
  const [all = '', narrow = '', paper = ''] = style.split(/@media .*\{\n/);

  test('breaks names anywhere, and words of ours in a table only where a word is longer than its cell', () => {
    expect(all).toMatch(/^main \{.*overflow-wrap: anywhere/m);
    expect(all).toMatch(/^th, td \{ overflow-wrap: break-word; \}$/m);
    expect(all).toMatch(/^td bdi \{ overflow-wrap: anywhere; \}$/m);
  });

  test('gives names room in a table, and not all of it', () => {
    expect(all).toMatch(/^td:has\(bdi\) \{ min-width: \d+em; max-width: \d+em; \}$/m);
  });

  test('lets a table scroll on a narrow screen, under a caption that does not', () => {
    expect(narrow).toMatch(/table \{ display: block; overflow-x: auto; \}\n +caption \{ display: block; \}/);
    expect(style).toContain('@media screen and (max-width: ');
  });

  test('is for A4, and breaks no row, notice or line to sign on across pages', () => {
    expect(paper).toContain('@page { size: A4;');
    expect(all).toMatch(/^tr, \.danger, \.caution, \.note, \.signature \{ break-inside: avoid; \}$/m);
  });
});

describe('an equation', () => {
  const equation: Block = {
    kind: 'equation',
    sides: [symbol('Z'), quotient, number('0.998')],
    signs: ['=', '≈'],
    unit: 'bar',
    source: 'by definition',
  };

  test('has a line for each step, the first two together', () => {
    expect(textOf(equation)).toBe('    Z = p_abs / ρ\n      ≈ 0.998 bar\n    [by definition]\n');
    expect(markdownOf(equation)).toBe('```text\nZ = p_abs / ρ\n  ≈ 0.998 bar\n[by definition]\n```\n');
    expect(htmlOf(equation)).toContain('<br>\n≈ 0.998\u00A0bar<br>\n<small>by definition</small>');
  });

  test('is sound in strict LaTeX', () => {
    const formulas = formulasOf(documentLatex(pageOf(equation)));
    expect(formulas).toHaveLength(1);
    expect(formulas.map(renderedFormula)[0]).toContain('katex');
  });

  test('breaks a long sum under a root in LaTeX, which no page is wide enough for', () => {
    const sum = ['b', 'c', 'd', 'e'].reduce<Expression>(
      (left, name) => ({ kind: 'operation', operator: '+', left, right: symbol(name) }),
      symbol('a'),
    );
    const block: Block = { kind: 'equation', sides: [symbol('u'), { kind: 'call', name: 'sqrt', of: [sum] }] };
    expect(latexOf(block)).toContain('\\sqrt{\\begin{aligned}&a\\\\\n&{}+ b\\\\\n&{}+ c');
    expect(formulasOf(documentLatex(pageOf(block))).map(renderedFormula)).toHaveLength(1);
    expect(textOf(block)).toBe('    u = sqrt(a + b + c + d + e)\n');
  });

  test('has its powers raised in HTML', () => {
    const power: Expression = { kind: 'operation', operator: 'power', left: number('10'), right: number('−9') };
    const block: Block = { kind: 'equation', sides: [symbol('x'), power] };
    expect(htmlOf(block)).toContain('10<sup>−9</sup>');
    expect(textOf(block)).toBe('    x = 10^(−9)\n');
  });

  test.each(['constructor', 'valueOf', 'x_toString'])('may have a symbol %s, which every object has', (name) => {
    const block: Block = { kind: 'equation', sides: [symbol(name), { kind: 'call', name, of: [symbol('x')] }] };
    const [first = '', below] = name.split('_');
    expect(textOf(block)).toBe(`    ${name} = ${name}(x)\n`);
    for (const written of [htmlOf(block), latexOf(block)]) {
      expect(written).toContain(first);
      if (below !== undefined) expect(written).toContain(below);
      expect(written).not.toMatch(/undefined|native code/);
    }
  });

  test('stands in a line as well', async () => {
    const page = pageOf({ kind: 'paragraph', text: ['With ', { kind: 'formula', expression: quotient }, '.'] });
    expect(documentText(page, { width: 60 })).toContain('With p_abs / ρ.');
    expect(formulasOf(documentLatex(page)).map(renderedFormula)).toHaveLength(1);
    expect(await wrongWithHtml(documentHtml(page))).toEqual([]);
  });
});

describe('lines', () => {
  test('are broken between words, and inside a word only where it is longer than a line', () => {
    expect(wrapped('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrapped('abcdefghij kl', 4)).toEqual(['abcd', 'efgh', 'ij', 'kl']);
    expect(wrapped('', 4)).toEqual(['']);
  });

  test('lose no word', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,30}$/)), fc.integer({ min: 1, max: 40 }), (words, width) => {
        const lines = wrapped(words.join(' '), width);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
      }),
    );
  });

  // Source: Unicode Standard Annex 11, wide characters; Unicode's general categories Mn, Me and Cf have no width.
  test.each([
    ['bar', 3],
    ['圧力計', 6],
    ['e\u0301', 1],
    ['\u2068a\u2069', 1],
    ['한국', 4],
  ])('%s takes %i columns', (text, width) => {
    expect(widthOf(text)).toBe(width);
  });
});

describe('a document is refused', () => {
  const refused = (page: unknown): { code: string; path: string } => {
    const { code, path } = problemOf(() => documentHtml(page as WorkedDocument));
    return { code, path };
  };

  test.each([
    [undefined, 'wrong kind', 'document'],
    [{ ...pageOf(), language: 'x"' }, 'wrong kind', 'document.language'],
    [{ ...pageOf(), title: ' ' }, 'wrong kind', 'document.title'],
    [pageOf({ kind: 'heading', level: 4 as never, text: 'x' }), 'unknown word', 'document.blocks[0].level'],
    [pageOf({ kind: 'script' } as never), 'unknown word', 'document.blocks[0].kind'],
    [pageOf({ kind: 'list', marks: 'plain', items: [] }), 'wrong kind', 'document.blocks[0].items'],
    [
      pageOf({ kind: 'paragraph', text: ['a', { kind: 'html', text: '<b>' } as never] }),
      'unknown word',
      'document.blocks[0].text[1].kind',
    ],
    [
      pageOf({ kind: 'table', columns: [{ heading: 'a', align: 'left' }], rows: [['1', '2']] }),
      'cells left out',
      'document.blocks[0].rows[0]',
    ],
    [pageOf({ kind: 'equation', sides: [symbol('\\input{x}')] }), 'wrong kind', 'document.blocks[0].sides[0].name'],
    [pageOf({ kind: 'equation', sides: [number('\\input{x}')] }), 'wrong kind', 'document.blocks[0].sides[0].text'],
    [pageOf({ kind: 'equation', sides: [number('1', '}$')] }), 'wrong kind', 'document.blocks[0].sides[0].unit'],
    [pageOf({ kind: 'equation', sides: [number('1')], unit: '<b>' }), 'wrong kind', 'document.blocks[0].unit'],
  ])('number %#', (page, code, path) => {
    expect(refused(page)).toEqual({ code, path });
  });

  test('where it contains itself', () => {
    const endless: { kind: 'minus'; of: Expression } = { kind: 'minus', of: symbol('p') };
    endless.of = endless;
    expect(refused(pageOf({ kind: 'equation', sides: [endless] })).code).toBe('too deep');
  });

  test.each([39, 1001, 60.5, Number.NaN, '80'])('in plain text of a width of %s', (width) => {
    expect(problemOf(() => documentText(pageOf(), { width: width as number })).path).toBe('options.width');
  });
});
