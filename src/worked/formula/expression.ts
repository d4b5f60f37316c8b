// A formula as data, and its three printed forms. Parentheses are not stored: the printers set them where they are needed.

/** A formula, or one with numbers in it. */
export type Expression =
  /** A number, formatted already, with its unit where that is to be shown. */
  | { readonly kind: 'number'; readonly text: string; readonly unit?: string }
  /** A symbol by its name in the table of symbols: `p_abs`, `rho_high`. */
  | { readonly kind: 'symbol'; readonly name: string }
  | {
      readonly kind: 'operation';
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'minus'; readonly of: Expression }
  | { readonly kind: 'call'; readonly name: string; readonly of: readonly Expression[] };

/** What joins two sides of an expression. */
export type Operator = '+' | '−' | '×' | '÷' | 'power';

const SIGN = { '+': ' + ', '−': ' − ', '×': ' · ', '÷': ' / ', power: '^' } as const;
const LATEX_SIGN = { '+': ' + ', '−': ' - ', '×': ' \\cdot ' } as const;
const BINDS = { '+': 1, '−': 1, '×': 2, '÷': 2, power: 4 } as const;

/** How tightly an expression binds, so that an operand that binds less is put in parentheses. */
function binds(expression: Expression): number {
  if (expression.kind === 'operation') return BINDS[expression.operator];
  if (expression.kind === 'minus') return 1;
  if (expression.kind === 'number' && /^[-−]/.test(expression.text)) return 1;
  if (expression.kind === 'number' && expression.text.includes('e')) return 2;
  if (expression.kind === 'number' && expression.unit !== undefined) return 3;
  return 5;
}

interface Printer {
  readonly number: (text: string, unit: string | undefined) => string;
  readonly symbol: (name: string) => string;
  readonly sign: (operator: Operator) => string;
  readonly group: (text: string) => string;
  readonly call: (name: string, given: readonly string[]) => string;
  /** A fraction or power that needs no parentheses of its own. */
  readonly built: Readonly<Partial<Record<Operator, (left: string, right: string) => string>>>;
  /** A sum of many terms under a root, where lines do not break by themselves. */
  readonly longSum?: (terms: readonly string[]) => string;
}

function print(expression: Expression, by: Printer): string {
  const operand = (one: Expression, least: number): string => {
    const text = print(one, by);
    return binds(one) < least && !(one.kind === 'operation' && one.operator === '÷' && by.built['÷'])
      ? by.group(text)
      : text;
  };
  if (expression.kind === 'number') return by.number(expression.text, expression.unit);
  if (expression.kind === 'symbol') return by.symbol(expression.name);
  if (expression.kind === 'minus') return `${by.sign('−').trim()}${operand(expression.of, 2)}`;
  if (expression.kind === 'call' && expression.name === 'sqrt' && by.longSum !== undefined) {
    const terms = termsOf(expression.of[0]);
    if (terms.length > MANY) return by.call('sqrt', [by.longSum(terms.map((one) => print(one, by)))]);
  }
  if (expression.kind === 'call')
    return by.call(
      expression.name,
      expression.of.map((one) => print(one, by)),
    );
  const { operator, left, right } = expression;
  if (operator === '÷' && by.built['÷']) return by.built['÷'](print(left, by), print(right, by));
  if (operator === 'power' && by.built.power) {
    const base = print(left, by);
    return by.built.power(binds(left) < 5 ? by.group(base) : base, print(right, by));
  }
  const level = BINDS[operator];
  // From left to right, as it is computed: a right operand of the same level keeps its parentheses.
  const first =
    left.kind === 'minus' && level === 1 ? print(left, by) : operand(left, operator === 'power' ? 5 : level);
  return `${first}${by.sign(operator)}${operand(right, level + 1)}`;
}

/** More terms than stand on a line of a page. */
const MANY = 3;

/** The terms of a sum, from left to right. */
function termsOf(sum: Expression | undefined): readonly Expression[] {
  if (sum === undefined) return [];
  return sum.kind === 'operation' && sum.operator === '+' ? [...termsOf(sum.left), sum.right] : [sum];
}

/** An expression in plain text: `p_abs / (ρ · R · T)`. */
export function expressionText(expression: Expression): string {
  return print(expression, {
    number: (text, unit) => {
      const number = timesTen(text, (mantissa, power) => `${mantissa} · 10^(${power})`);
      return unit === undefined ? number : `${number} ${unit}`;
    },
    symbol: symbolText,
    sign: (operator) => SIGN[operator],
    group: (text) => `(${text})`,
    call: (name, all) => `${name}(${all.join('; ')})`,
    built: {},
  });
}

/** An expression in LaTeX's math mode. */
export function expressionLatex(expression: Expression): string {
  return print(expression, {
    number: (text, unit) => `${numberLatex(text)}${unit === undefined ? '' : `\\,${unitLatex(unit)}`}`,
    symbol: symbolLatex,
    sign: (operator) => LATEX_SIGN[operator as '+'] ?? '',
    group: (text) => `\\left(${text}\\right)`,
    call: callLatex,
    built: {
      '÷': (left, right) => `\\frac{${left}}{${right}}`,
      power: (base, exponent) => `${base}^{${exponent}}`,
    },
    longSum: (terms) => `\\begin{aligned}&${terms.join('\\\\\n&{}+ ')}\\end{aligned}`,
  });
}

/** An expression in HTML, with nothing but text, `var`, `sub` and `sup`. */
export function expressionHtml(expression: Expression): string {
  return print(expression, {
    number: (text, unit) => {
      const number = timesTen(safe(text), (mantissa, power) => `${mantissa} · 10<sup>${power}</sup>`);
      return unit === undefined ? number : `${number}\u00A0${safe(unit)}`;
    },
    symbol: symbolHtml,
    sign: (operator) => SIGN[operator],
    group: (text) => `(${text})`,
    call: (name, all) => (name === 'sqrt' ? `√(${all.join('; ')})` : `${symbolHtml(name)}(${all.join('; ')})`),
    built: { power: (base, exponent) => `${base}<sup>${exponent}</sup>` },
  });
}

const GREEK: Readonly<Record<string, readonly [string, string]>> = {
  rho: ['ρ', '\\rho'],
  alpha: ['α', '\\alpha'],
  beta: ['β', '\\beta'],
  gamma: ['γ', '\\gamma'],
  delta: ['δ', '\\delta'],
  epsilon: ['ε', '\\varepsilon'],
  eta: ['η', '\\eta'],
  kappa: ['κ', '\\kappa'],
  tau: ['τ', '\\tau'],
  theta: ['θ', '\\theta'],
  dp: ['Δp', '\\Delta p'],
  dT: ['ΔT', '\\Delta T'],
};

interface Symbol {
  readonly letter: readonly [string, string];
  /** A word, as against a letter. */
  readonly isWord: boolean;
  readonly below: string;
}

/** A caller's symbol may be called what every object has, such as `constructor`. */
function own<T>(table: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}

function symbolOf(name: string): Symbol {
  const [first = '', ...below] = name.split('_');
  const greek = own(GREEK, first);
  const isWord = first.length > 1 && greek === undefined;
  return {
    letter: greek ?? [first, isWord ? `\\mathrm{${first}}` : first],
    isWord,
    below: below.map((one) => own(GREEK, one)?.[0] ?? one).join(', '),
  };
}

function symbolText(name: string): string {
  const { letter, below } = symbolOf(name);
  return below === '' ? letter[0] : `${letter[0]}_${below.replaceAll(', ', '_')}`;
}

function symbolLatex(name: string): string {
  const { letter, below } = symbolOf(name);
  const word = below.replaceAll('ρ', '\\rho ').replaceAll('α', '\\alpha ');
  return below === '' ? letter[1] : `${letter[1]}_{\\mathrm{${word}}}`;
}

function symbolHtml(name: string): string {
  const { letter, isWord, below } = symbolOf(name);
  const text = isWord ? safe(letter[0]) : `<var>${safe(letter[0])}</var>`;
  return below === '' ? text : `${text}<sub>${safe(below)}</sub>`;
}

function callLatex(name: string, all: readonly string[]): string {
  const given = all.join(';\\,');
  if (name === 'sqrt') return `\\sqrt{${given}}`;
  if (name === 'abs') return `\\left|${given}\\right|`;
  const word = own({ exp: '\\exp', log: '\\ln', min: '\\min', max: '\\max' }, name) ?? symbolLatex(name);
  return `${word}\\left(${given}\\right)`;
}

/** A number with a power of ten, `1.5e−7`, as people write it. */
function timesTen(text: string, by: (mantissa: string, power: string) => string): string {
  const [mantissa = '', power] = text.split('e');
  return power === undefined ? text : by(mantissa, power.replace('+', ''));
}

/** A number: a decimal comma is no separator of a list. */
function numberLatex(text: string): string {
  return timesTen(text, (mantissa, power) => `${mantissa} \\cdot 10^{${power}}`)
    .replace(',', '{,}')
    .replaceAll('−', '-')
    .replace(/[\u00A0\u202F ]/g, '\\,')
    .replaceAll('×', '\\times ');
}

/** A unit, upright: `mol/m3` has its exponent raised. */
export function unitLatex(unit: string): string {
  return unit
    .split(/(°C|°F|²|³|%|(?<=[a-z])\d)/u)
    .map((part) => {
      if (part === '°C' || part === '°F') return `{}^{\\circ}\\mathrm{${part.slice(1)}}`;
      if (part === '²' || part === '2') return '^{2}';
      if (part === '³' || part === '3') return '^{3}';
      if (part === '%') return '\\%';
      return part === '' ? '' : `\\mathrm{${part.replaceAll(' ', '\\,')}}`;
    })
    .join('');
}

function safe(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
