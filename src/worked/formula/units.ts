// In which units a formula holds. One that only adds, subtracts and compares pressures holds in bar as it does in pascals;
// one that makes a density of a pressure does not. Which it is, its expression says.
import type { Expression } from './expression.js';

/** To how many powers of its unit a symbol stands: 1 for a pressure, if pressure is asked for, 0 for what has none of it. */
export type Degree = (name: string) => number;

/** Whether a formula gives its result in a unit when its symbols are put in in that unit. */
export function holdsInAnyUnit(formula: Expression, result: number, degree: Degree): boolean {
  return power(formula, degree) === result;
}

/** Whether a formula gives its result on a scale with another zero, as °C is one of K. */
export function holdsFromAnyZero(formula: Expression, result: number, degree: Degree): boolean {
  return offset(formula, degree) === result;
}

/** By which power of the unit the value of an expression changes; undefined if by none. */
function power(of: Expression, degree: Degree): number | undefined {
  switch (of.kind) {
    case 'number':
      return 0;
    case 'symbol':
      return degree(of.name);
    case 'minus':
      return power(of.of, degree);
    case 'call': {
      const all = of.of.map((one) => power(one, degree));
      const [first] = all;
      if (first === undefined || all.some((one) => one !== first)) return undefined;
      if (of.name === 'sqrt') return first / 2;
      return of.name === 'min' || of.name === 'max' || of.name === 'abs' || first === 0 ? first : undefined;
    }
    case 'operation': {
      const [left, right] = [power(of.left, degree), power(of.right, degree)];
      if (left === undefined || right === undefined) return undefined;
      if (of.operator === '×') return left + right;
      if (of.operator === '÷') return left - right;
      if (of.operator === 'power') return left === 0 && right === 0 ? 0 : undefined;
      return left === right ? left : undefined;
    }
  }
}

/** How many times another zero of the scale stands in the value of an expression; undefined if not a number of times. */
function offset(of: Expression, degree: Degree): number | undefined {
  switch (of.kind) {
    case 'number':
      return 0;
    case 'symbol':
      return degree(of.name);
    case 'minus': {
      const inner = offset(of.of, degree);
      return inner === undefined ? undefined : 0 - inner;
    }
    case 'call':
      return of.of.every((one) => offset(one, degree) === 0) ? 0 : undefined;
    case 'operation': {
      const [left, right] = [offset(of.left, degree), offset(of.right, degree)];
      if (left === undefined || right === undefined) return undefined;
      if (of.operator === '+') return left + right;
      if (of.operator === '−') return left - right;
      return left === 0 && right === 0 ? 0 : undefined;
    }
  }
}
