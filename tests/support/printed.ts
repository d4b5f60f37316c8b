// Reads printed numbers and formulas back, with mathjs, a general-purpose evaluator, and nothing of the library's.
import { compile, type EvalFunction } from 'mathjs';
import type { Block, Equation, Expression } from 'isochore/worked';
import { expressionText } from '../../src/worked/formula/expression.js';

/** A printed number: its value, and half of its last printed place. */
export interface Printed {
  readonly value: number;
  readonly half: number;
  readonly unit: string;
}

/** A formula or number as mathjs reads it: the printed text, with its signs. */
function asWritten(expression: Expression): string {
  return expressionText(expression)
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll(';', ',')
    .replaceAll('\u202F', '')
    .replace(/[α-ωΔ]/g, (letter) => NAMES[letter] ?? letter);
}

const NAMES: Readonly<Record<string, string>> = {
  ρ: 'rho',
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  δ: 'delta',
  ε: 'epsilon',
  η: 'eta',
  θ: 'theta',
  κ: 'kappa',
  τ: 'tau',
  Δ: 'd',
};

const compiled = new Map<string, EvalFunction>();

/** The value of a printed expression. */
export function valueOf(expression: Expression, scope: Readonly<Record<string, unknown>> = {}): number {
  const text = asWritten(expression);
  let code = compiled.get(text);
  if (code === undefined) {
    code = compile(text);
    compiled.set(text, code);
  }
  return Number(code.evaluate({ ...scope }));
}

/** A number as printed: `14 101 300` stands for what lies within 50 of it. */
export function printedNumber(expression: Expression, unit = ''): Printed {
  if (expression.kind === 'minus') {
    const { value, half, unit: own } = printedNumber(expression.of, unit);
    return { value: -value, half, unit: own };
  }
  if (expression.kind !== 'number') throw new Error(`no number: ${expressionText(expression)}`);
  const [text = '', power = '0'] = expression.text.replaceAll('\u202F', '').replaceAll('−', '-').split('e');
  const decimals = /\.(\d+)$/.exec(text)?.[1]?.length;
  const zeros = /[1-9](0+)$/.exec(text)?.[1]?.length ?? 0;
  const half = 0.5 * 10 ** ((decimals === undefined ? zeros : -decimals) + Number(power));
  return { value: Number(`${text}e${power}`), half, unit: expression.unit ?? unit };
}

/** The formula with a number in place of each symbol, told by symbol: as often as the symbol stands there. */
export function numbersIn(formula: Expression, numbers: Expression): Map<string, Expression> {
  const found = new Map<string, Expression>();
  const walk = (one: Expression, other: Expression): void => {
    if (one.kind === 'symbol') {
      const before = found.get(one.name);
      if (before !== undefined && expressionText(before) !== expressionText(other))
        throw new Error(`${one.name} printed in two ways`);
      found.set(one.name, other);
    } else if (one.kind === 'operation' && other.kind === 'operation' && one.operator === other.operator) {
      walk(one.left, other.left);
      walk(one.right, other.right);
    } else if (one.kind === 'minus' && other.kind === 'minus') walk(one.of, other.of);
    else if (one.kind === 'call' && other.kind === 'call' && one.name === other.name) {
      one.of.forEach((inner, i) => {
        const beside = other.of[i];
        if (beside !== undefined) walk(inner, beside);
      });
    } else if (one.kind !== 'number' || expressionText(one) !== expressionText(other))
      throw new Error(`${expressionText(one)} printed as ${expressionText(other)}`);
  };
  walk(formula, numbers);
  return found;
}

/** The equations under each heading of a step, by its number; those of the working by hand come after the step's own. */
export function equationsByStep(blocks: readonly Block[]): Map<number, Equation[]> {
  const found = new Map<number, Equation[]>();
  let step: Equation[] = [];
  for (const block of blocks) {
    if (block.kind === 'heading' && block.level === 3) {
      const [title] =
        typeof block.text === 'string' ? [block.text] : block.text.filter((piece) => typeof piece === 'string');
      step = [];
      found.set(Number.parseInt(title ?? '', 10), step);
    }
    if (block.kind === 'heading' && block.level < 3) step = [];
    if (block.kind === 'equation') step.push(block);
  }
  return found;
}
