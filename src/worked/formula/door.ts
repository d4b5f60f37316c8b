// An expression that a caller hands in.
import { byKind, fieldsOf, listOf, oneOf, orNot, text, type Take } from '../door.js';
import type { Expression, Operator } from './expression.js';

/** A name that stands in formulas: the printers trust it to hold no markup. */
const name: Take<string> = (given, path, left) => {
  const own = text(given, path, left);
  return /^[A-Za-z]\w{0,40}$/.test(own) ? own : oneOf('a name such as p_abs')(given, path, left);
};

const operator = oneOf<Operator>('+', '−', '×', '÷', 'power');

// Each refers to all of them: looked up when it is used.
const inner: Take<Expression> = (given, path, left) => expression(given, path, left);

export const expression: Take<Expression> = /* @__PURE__ */ byKind<Expression>('an expression', {
  number: fieldsOf('a number', { kind: oneOf('number'), text, unit: orNot(text) }) as Take<
    Extract<Expression, { kind: 'number' }>
  >,
  symbol: fieldsOf('a symbol', { kind: oneOf('symbol'), name }),
  operation: fieldsOf('an operation', { kind: oneOf('operation'), operator, left: inner, right: inner }),
  minus: fieldsOf('a minus', { kind: oneOf('minus'), of: inner }),
  call: fieldsOf('a call', { kind: oneOf('call'), name, of: listOf(inner) }),
});
