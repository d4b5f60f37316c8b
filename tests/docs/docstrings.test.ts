// Every public symbol is documented where it is declared: types by a sentence, functions and constants by an example that
// shows a value (tests/docs/examples.test.ts runs them), functions that throw by what they throw.
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { ROOT } from './examples.js';

const ENTRIES = ['src/index.ts', 'src/record/index.ts', 'src/worked/index.ts'].map((path) => `${ROOT}/${path}`);

/** Symbols that do not have what they should. Nothing here is meant to stay. */
const WITHOUT_EXAMPLE: readonly string[] = [];

const { config } = ts.readConfigFile(`${ROOT}/tsconfig.json`, (path) => ts.sys.readFile(path)) as { config: unknown };
const { options } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT);
const program = ts.createProgram(ENTRIES, options);
const checker = program.getTypeChecker();

interface Exported {
  readonly name: string;
  readonly declaration: ts.Declaration;
  readonly what: 'function' | 'constant' | 'type';
}

function exportsOf(entry: string): Exported[] {
  const source = program.getSourceFile(entry);
  const module = source && checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`${entry} exports nothing`);
  return checker.getExportsOfModule(module).map((symbol) => {
    const own = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
    const [declaration] = own.declarations ?? [];
    if (declaration === undefined) throw new Error(`${symbol.name} has no declaration`);
    return { name: symbol.name, declaration, what: whatIs(declaration) };
  });
}

function whatIs(declaration: ts.Declaration): Exported['what'] {
  if (ts.isFunctionDeclaration(declaration)) return 'function';
  if (ts.isVariableDeclaration(declaration)) return 'constant';
  return 'type';
}

const symbols = [...new Map(ENTRIES.flatMap(exportsOf).map((one) => [one.name, one])).values()];
const functions = symbols.filter(({ what }) => what === 'function');
const values = symbols.filter(({ what }) => what !== 'type');
const named = (list: readonly Exported[]): [string, ts.Declaration][] =>
  list.map(({ name, declaration }) => [name, declaration]);

function sentenceOf(declaration: ts.Declaration): string {
  return ts
    .getJSDocCommentsAndTags(declaration)
    .filter(ts.isJSDoc)
    .map(({ comment }) => ts.getTextOfJSDocComment(comment) ?? '')
    .join('\n');
}

function tagsOf(declaration: ts.Declaration, name: string): string[] {
  return ts
    .getJSDocTags(declaration)
    .filter(({ tagName }) => tagName.text === name)
    .map(({ comment }) => ts.getTextOfJSDocComment(comment) ?? '');
}

/** Functions that can be seen to throw: by a throw of their own, or in a function of src that they call by name. */
const seen = new Map<ts.Node, boolean>();
function throws(body: ts.Node): boolean {
  const known = seen.get(body);
  if (known !== undefined) return known;
  seen.set(body, false); // a function that calls itself adds nothing by that
  let found = false;
  const visit = (node: ts.Node): void => {
    if (found || ts.isTryStatement(node)) return;
    found = ts.isThrowStatement(node) || (ts.isCallExpression(node) && calledThrows(node));
    if (!found) ts.forEachChild(node, visit);
  };
  visit(body);
  seen.set(body, found);
  return found;
}

function calledThrows({ expression }: ts.CallExpression): boolean {
  const symbol = checker.getSymbolAtLocation(expression);
  if (symbol === undefined) return false;
  const own = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  return (own.declarations ?? []).some(
    (one) => ts.isFunctionDeclaration(one) && one.body !== undefined && throws(one.body),
  );
}

test('all entries are looked at', () => {
  expect(functions.length).toBeGreaterThan(25);
  expect(symbols.length).toBeGreaterThan(80);
  expect(symbols.map(({ name }) => name)).toEqual(expect.arrayContaining(['judge', 'reportRound', 'documentHtml']));
});

test.each(named(symbols))('%s is said in a sentence', (_, declaration) => {
  expect(sentenceOf(declaration)).toMatch(/\w.*[.…](\s|$)/s);
});

describe('functions and constants have an example that shows a value', () => {
  const due = named(values).filter(([name]) => !WITHOUT_EXAMPLE.includes(name));
  test.each(due)('%s', (_, declaration) => {
    const examples = tagsOf(declaration, 'example');
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) expect(example).toMatch(/```ts\n[^]*\/\/ => [^]*```/);
  });

  test.each(WITHOUT_EXAMPLE)('%s still has none', (name) => {
    const [, declaration] = named(values).find(([own]) => own === name) ?? [];
    expect(declaration && tagsOf(declaration, 'example')).toEqual([]);
  });
});

describe('functions that throw say what', () => {
  const throwing = functions.filter(
    ({ declaration }) => ts.isFunctionDeclaration(declaration) && declaration.body && throws(declaration.body),
  );

  test('most of them do throw', () => {
    expect(throwing.length).toBeGreaterThan(20);
  });

  test.each(named(throwing))('%s', (_, declaration) => {
    // The text itself: TypeScript takes {@link Fault} for the type of the tag, and leaves it out of the comment.
    const text = ts.getJSDocCommentsAndTags(declaration).map((one) => one.getText());
    expect(text.join('\n')).toMatch(/@throws (\{@link Fault\}|nothing)/);
  });
});
