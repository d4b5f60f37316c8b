// An expression that a caller hands in.
import { byKind, fieldsOf, listOf, oneOf, orNot, refuse, text, type Take } from '../door.js';
import type { Expression, Operator } from './expression.js';

// What stands in a formula is no line of text: the printers trust it to hold no markup.

/** A text of one form, that is said where it has another. */
function ofForm(form: RegExp, what: string): Take<string> {
  return (given, path, left) => {
    const own = text(given, path, left);
    return form.test(own) ? own : refuse(what, own, path);
  };
}

const name = ofForm(/^[A-Za-z]\w{0,40}$/, 'a name of a symbol such as p_abs');
/** As a language writes it: a point or a comma, spaces between each three digits, a minus or a hyphen; or what is wanted. */
const digits = ofForm(/^([-−+]?\d[\d.,\u0020\u00A0\u202F]{0,60}(e[-−+]?\d{1,5})?|\?|…)$/, 'a number as it is printed');
/** A unit as the library spells it, or an empty text for a number without one. */
export const unit = ofForm(/^[A-Za-z\d°%²³·/() -]{0,40}$/, 'a unit');

const operator = oneOf<Operator>('+', '−', '×', '÷', 'power');

// Each refers to all of them: looked up when it is used.
const inner: Take<Expression> = (given, path, left) => expression(given, path, left);

export const expression: Take<Expression> = /* @__PURE__ */ byKind<Expression>('an expression', {
  number: fieldsOf('a number', { kind: oneOf('number'), text: digits, unit: orNot(unit) }) as Take<
    Extract<Expression, { kind: 'number' }>
  >,
  symbol: fieldsOf('a symbol', { kind: oneOf('symbol'), name }),
  operation: fieldsOf('an operation', { kind: oneOf('operation'), operator, left: inner, right: inner }),
  minus: fieldsOf('a minus', { kind: oneOf('minus'), of: inner }),
  call: fieldsOf('a call', { kind: oneOf('call'), name, of: listOf(inner) }),
});
