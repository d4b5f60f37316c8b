// What is not mutated. Words for people may be reworded, and no test should hold them to the letter; codes and units are
// values, and every one of them is mutated.
//
// A string is taken for prose if it has three words or more and is no code: no code is what stands nowhere in src as the
// type of a value, as the key of an object, or in a comparison. A sentence into which a value is put is mutated all the
// same, because the value has to reach the reader.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';
import ts from 'typescript';

const source = fileURLToPath(new URL('../src/', import.meta.url));
const comparisons = new Set([ts.SyntaxKind.EqualsEqualsEqualsToken, ts.SyntaxKind.ExclamationEqualsEqualsToken]);

/** @type {Set<string>} */
const codes = new Set();
for (const name of readdirSync(source, { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.ts')) continue;
  collect(ts.createSourceFile(name, readFileSync(source + name, 'utf8'), ts.ScriptTarget.ES2022, true));
}

/** @param {ts.Node} node */
function collect(node) {
  if (ts.isStringLiteral(node) && isCode(node)) codes.add(node.text);
  ts.forEachChild(node, collect);
}

/** @param {ts.StringLiteral} node */
function isCode(node) {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent)) return parent.name === node;
  if (ts.isBinaryExpression(parent)) return comparisons.has(parent.operatorToken.kind);
  return ts.isLiteralTypeNode(parent) || ts.isCaseClause(parent);
}

/**
 * The part of a place in Babel's syntax tree that is looked at.
 *
 * @typedef {{
 *   readonly key: unknown;
 *   readonly node: {
 *     readonly type: string;
 *     readonly value?: unknown;
 *     readonly expressions?: readonly unknown[];
 *     readonly quasis?: readonly { readonly value: { readonly raw: string } }[];
 *   };
 * }} Place
 */

/** The text of a string without values in it. @param {Place['node']} node */
function textOf(node) {
  if (node.type === 'StringLiteral') return String(node.value);
  if (node.type === 'TemplateLiteral' && node.expressions?.length === 0) return node.quasis?.[0]?.value.raw ?? '';
  return undefined;
}

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, 'prose', {
    shouldIgnore(place) {
      const { key, node } = /** @type {Place} */ (place);
      const text = textOf(node);
      if (text === undefined) return undefined;
      if (key === 'key') return 'the name of a member';
      return text.trim().split(/\s+/).length >= 3 && !codes.has(text) ? 'prose' : undefined;
    },
  }),
];
