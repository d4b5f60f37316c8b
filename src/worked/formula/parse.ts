// The printed formula of a relation, read: names, decimal numbers, + - * / ^, parentheses, functions, and an equals sign.
import { fail, quote } from '../../basis/fault.js';
import { wrongKind } from '../../basis/problem.js';
import type { Expression, Operator } from './expression.js';

/** By sign: the operator, and how much it binds. */
const BINARY: Readonly<Record<string, { readonly operator: Operator; readonly level: number }>> = {
  '+': { operator: '+', level: 1 },
  '-': { operator: '−', level: 1 },
  '*': { operator: '×', level: 2 },
  '/': { operator: '÷', level: 2 },
  '^': { operator: 'power', level: 4 },
};
/** A minus sign stands before a whole product. */
const MINUS_LEVEL = 2;

/** The sides of a formula: one, or the two of an equation. */
export function parsed(formula: string): readonly Expression[] {
  return formula.split('=').map(side);
}

function side(text: string): Expression {
  const tokens = text.match(/\d+(?:\.\d+)?|[A-Za-z]\w*|[-+*/^(),]/g) ?? [];
  let next = 0;
  const whole = upTo(1);
  if (next !== tokens.length || tokens.join('') !== text.replaceAll(' ', '')) refuse();
  return whole;

  /** What binds at least as much as a level, from left to right; a power binds from right to left. */
  function upTo(level: number): Expression {
    let left = operand();
    for (;;) {
      const sign = tokens[next] ?? '';
      const binary = Object.hasOwn(BINARY, sign) ? BINARY[sign] : undefined;
      if (binary === undefined || binary.level < level) return left;
      next += 1;
      const { operator, level: own } = binary;
      left = { kind: 'operation', operator, left, right: upTo(operator === 'power' ? own : own + 1) };
    }
  }

  function operand(): Expression {
    const token = tokens[next] ?? '';
    next += 1;
    if (token === '-') return { kind: 'minus', of: upTo(MINUS_LEVEL) };
    if (token === '(') {
      const inner = upTo(1);
      expect(')');
      return inner;
    }
    if (/^\d/.test(token)) return { kind: 'number', text: token };
    if (!/^[A-Za-z]/.test(token)) refuse();
    if (tokens[next] !== '(') return { kind: 'symbol', name: token };
    const of: Expression[] = [];
    do {
      next += 1;
      of.push(upTo(1));
    } while (tokens[next] === ',');
    expect(')');
    return { kind: 'call', name: token, of };
  }

  function expect(token: string): void {
    if (tokens[next] !== token) refuse();
    next += 1;
  }

  function refuse(): never {
    return fail(wrongKind, 'relation.formula', quote(text), { kind: 'a formula', maker: 'a relation' });
  }
}

/** An expression with another in place of each symbol. */
export function substituted(expression: Expression, by: (name: string) => Expression): Expression {
  switch (expression.kind) {
    case 'number':
      return expression;
    case 'symbol':
      return by(expression.name);
    case 'minus':
      return { kind: 'minus', of: substituted(expression.of, by) };
    case 'call':
      return { ...expression, of: expression.of.map((one) => substituted(one, by)) };
    case 'operation':
      return { ...expression, left: substituted(expression.left, by), right: substituted(expression.right, by) };
  }
}
