// Every formula that the library prints is evaluated by mathjs, a general-purpose evaluator, and held against the
// arithmetic beside it. Relations are found in the sources, so that a new one is tested without being named here.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { all, create, parse, type FactoryFunctionMap, type MathNode } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Arithmetic, Relation } from '../../src/basis/relation.js';
import { evenly } from '../support/evenly.js';

// By itself it takes what is nearly a whole number for one.
const mathjs = create(all as FactoryFunctionMap, { relTol: 1e-15, absTol: 1e-15 });

const src = fileURLToPath(new URL('../../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));

function isRelation(value: unknown): value is Relation {
  return typeof value === 'object' && value !== null && 'formula' in value && 'gives' in value && 'from' in value;
}

const modules = await Promise.all(
  // In this form a bundler finds them too, and does not load them a second time.
  files.map((file) => import(/* @vite-ignore */ `../../src/${file}`) as Promise<Record<string, unknown>>),
);
const relations = [
  ...new Map(
    modules.flatMap((exported) =>
      Object.entries(exported).filter((entry): entry is [string, Relation] => isRelation(entry[1])),
    ),
  ),
];
const closed = relations.filter((entry): entry is [string, Arithmetic<readonly string[]>] => 'of' in entry[1]);

/** The symbols of a formula that stand for numbers, functions left out. */
function symbolsOf(formula: string): Set<string> {
  const names = new Set<string>();
  for (const side of formula.split('=')) {
    parse(side).traverse((node: MathNode, path: string, parent: MathNode | null) => {
      const isFunctionName = parent?.type === 'FunctionNode' && path === 'fn';
      if (node.type === 'SymbolNode' && !isFunctionName) names.add(node.toString());
    });
  }
  return names;
}

test('relations are found: closed formulas and roots of the equation of state', () => {
  expect(closed.length).toBeGreaterThanOrEqual(12);
  expect(relations.length - closed.length).toBeGreaterThanOrEqual(3);
  // All that the sources make are there, whole.
  const made = /export const (\w+) = (?:\/\* @__PURE__ \*\/\s*)?(?:relation|implicit)\(/g;
  const texts = files.map((file) => readFileSync(`${src}/${file}`, 'utf8'));
  const names = texts.flatMap((text) => [...text.matchAll(made)].map(([, name]) => name));
  expect(relations.map(([name]) => name).sort()).toEqual(expect.arrayContaining(names.sort()));
  // Each stands in the sources under one name.
  expect(new Set(relations.map(([, relation]) => relation)).size).toBe(relations.length);
});

describe.each(relations)('%s', (_, relation) => {
  test('says what it gives, in which unit, from what and by what source', () => {
    for (const text of [relation.gives, relation.unit, relation.formula, relation.source, ...relation.from]) {
      expect(text).toMatch(/\S/);
    }
    expect(relation.source.length).toBeGreaterThan(10);
    expect([
      'Pa',
      'K',
      'm3',
      'mol',
      'kg',
      'mol/m3',
      'J',
      'J/mol',
      'J/(mol K)',
      'min',
      '1',
      '1/K',
      'Pa m6/mol2',
    ]).toContain(relation.unit);
    expect(new Set(relation.from).size).toBe(relation.from.length);
    expect(relation.from).not.toContain(relation.gives);
  });

  test('prints a formula of its arguments, all of them and no others', () => {
    const symbols = symbolsOf(relation.formula);
    // The root of an equation stands in it beside the arguments.
    if (relation.formula.includes('=')) expect(symbols.delete(relation.gives)).toBe(true);
    expect(symbols).toEqual(new Set(relation.from));
  });
});

describe.each(closed)('the arithmetic of %s', (_, { from, formula, of }) => {
  test('is its printed formula', () => {
    // An exponential of a large number is no double, and the rounding of its argument grows with it.
    const grows = /\b(?:exp|log)\(|\^/.test(formula);
    const argument = grows ? evenly(0.1, 10) : fc.oneof(evenly(-1e7, 1e7), evenly(0.001, 10), evenly(-1, 1));
    const rounding = grows ? 1e-13 : 1e-15;
    fc.assert(
      fc.property(fc.array(argument, { minLength: from.length, maxLength: from.length }), (values) => {
        // Away from zero, where a quotient has no value.
        fc.pre(values.every((value) => Math.abs(value) > 1e-9));
        const printed: unknown = mathjs.evaluate(
          formula,
          Object.fromEntries(from.map((symbol, i) => [symbol, values[i]])),
        );
        // Where a logarithm has no real value.
        fc.pre(typeof printed === 'number' && Number.isFinite(printed));
        const found = of(...values);
        const size = Math.max(...values.map(Math.abs), Math.abs(found));
        expect(Math.abs(printed - found)).toBeLessThanOrEqual(rounding * size);
      }),
      { numRuns: 200 },
    );
  });

  test('takes as many arguments as it names', () => {
    expect(of).toHaveLength(from.length);
  });
});
