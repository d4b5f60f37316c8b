// Each printed substitution is read back by mathjs, and held against the printed result: within what the rounding of the
// printed numbers allows, and exactly where every digit is printed. Solved densities are put into the term-by-term equation
// of the paper (tests/support/span2000.ts), not into the solver that found them.
import { idealNitrogen, nitrogen } from 'isochore';
import {
  derivationBlocks,
  english,
  type Derivation,
  type DerivedStep,
  type Equation,
  type Expression,
  type ReaderUnits,
} from 'isochore/worked';
import { describe, expect, test } from 'vitest';
import { randomBy } from '../support/random.js';
import { equationsByStep, numbersIn, printedNumber, valueOf, type Printed } from '../support/printed.js';
import { span2000 } from '../support/span2000.js';
import { CASES } from './derivation-cases.js';

const UNITS = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
const OTHERS = [
  UNITS,
  { pressure: 'psi', temperature: '°F', volume: 'US gal', mass: 'lb' },
  { pressure: 'MPa', temperature: 'K', volume: 'm3', mass: 'g' },
] as const;

/** SI units of one unit, and where its zero lies: written down here a second time on purpose. */
const FACTOR: Readonly<Record<string, readonly [factor: number, zero: number]>> = {
  bar: [1e5, 0],
  MPa: [1e6, 0],
  psi: [(0.45359237 * 9.80665) / 0.0254 ** 2, 0],
  '°C': [1, 273.15],
  '°F': [5 / 9, 459.67],
  L: [1e-3, 0],
  'US gal': [231 * 0.0254 ** 3, 0],
  lb: [0.45359237, 0],
  g: [1e-3, 0],
};

function inSI({ value, half, unit }: Printed, isDifference: boolean): { value: number; half: number } {
  const [factor, zero] = FACTOR[unit] ?? [1, 0];
  return { value: (value + (isDifference ? 0 : zero)) * factor, half: half * factor };
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));

/** A printed number, exact if it stands for the very value; it must lie within its rounding of it. */
function heldNumber(printed: Printed, value: number, meaning: unknown, where: string): Printed {
  const { value: si, half } = inSI(printed, meaning === 'temperature difference' || meaning === 'pressure difference');
  if (close(si, value)) return { ...printed, half: 0 };
  if (!(Math.abs(si - value) <= half * (1 + 1e-9)))
    expect.fail(`${where}: ${printed.value} ${printed.unit} for ${value}`);
  return printed;
}

const pOf = {
  [nitrogen.id]: (T: number, rho: number): number => span2000(T, rho).p_Pa,
  [idealNitrogen.id]: (T: number, rho: number): number => rho * idealNitrogen.gasConstant_J_molK * T,
};

/** u, h and s by the equations of the paper; those of the ideal gas are its ideal part, which depends on T alone but for s. */
const propertyOf: Readonly<Record<string, (T: number, rho: number) => number>> = {
  u: (T, rho) => span2000(T, rho).u_J_mol,
  h: (T, rho) => span2000(T, rho).h_J_mol,
  s: (T, rho) => span2000(T, rho).s_J_molK,
};

/** What a formula calls, by the model of its step. */
function modelFunction(formula: string, model: string): ((T: number, rho: number) => number) | undefined {
  const name = formula.slice(0, formula.indexOf('('));
  return name === 'p' ? pOf[model] : propertyOf[name];
}

/** By how much the result may be off: every printed number anywhere within its rounding. */
function allowed(evaluate: (scope: Record<string, number>) => number, given: Map<string, Printed>): number {
  const at: Record<string, number> = Object.fromEntries([...given].map(([symbol, { value }]) => [symbol, value]));
  const middle = evaluate(at);
  let sum = 0;
  for (const [symbol, { value, half }] of given) {
    if (half === 0) continue;
    const ends = [value - half, value + half].map((end) => Math.abs(evaluate({ ...at, [symbol]: end }) - middle));
    sum += Math.max(...ends);
  }
  return sum;
}

function heldClosed(step: DerivedStep, { sides, unit = '' }: Equation, where: string): void {
  const [, formula, numbers, third] = sides;
  if (formula === undefined || numbers === undefined) return expect.fail(`${where}: no substitution`);
  // A copy: the formula is the symbol, and the numbers are the result already.
  const last = sides.at(-1) as Expression;
  const result = printedNumber(last, unit);
  heldNumber(result, step.result.value, step.result.meaning, where);
  if (formula.kind === 'symbol' || formula.kind === 'number' || third === undefined) return;
  const own = numbersIn(formula, numbers);
  const given = new Map(
    step.from.map(({ symbol, value, meaning }) => {
      const printed = own.get(symbol);
      if (printed === undefined) return expect.fail(`${where}: ${symbol} is not printed`);
      return [symbol, heldNumber(printedNumber(printed), value, meaning, `${where}: ${symbol}`)] as const;
    }),
  );
  const evaluate = (scope: Record<string, number>): number => valueOf(formula, scope);
  const found = evaluate(Object.fromEntries([...given].map(([symbol, { value }]) => [symbol, value])));
  const inFormula = heldNumber(printedNumber(third, unit), step.result.value, step.result.meaning, where);
  const room = allowed(evaluate, given) + inFormula.half + 1e-12 * (given.size + 1) * Math.abs(found);
  if (!(Math.abs(found - inFormula.value) <= room * (1 + 1e-9) + scaleOf(given) * 1e-14))
    expect.fail(`${where}: ${found}, printed ${inFormula.value}, within ${room}`);
}

/** Sums of large numbers round in their last places. */
const scaleOf = (given: Map<string, Printed>): number =>
  Math.max(0, ...[...given.values()].map((x) => Math.abs(x.value)));

/** The density or temperature that was solved for, put into the equation of the paper. */
function heldRoot(step: DerivedStep, model: string, equations: readonly Equation[], where: string): void {
  const [formula, numbers, root] = equations;
  const [left, right] = formula?.sides ?? [];
  const [own, p_abs] = numbers?.sides ?? [];
  const solved = root?.sides[1];
  const p = modelFunction(step.relation.formula, model);
  const wantedSymbol = step.relation.formula.split('= ')[1] ?? '';
  if (!left || !right || !own || !p_abs || !solved || !p) return expect.fail(`${where}: no root printed`);
  const scope = new Map<string, Printed>();
  for (const { symbol, value, meaning } of step.from) {
    const printed = symbol === wantedSymbol ? p_abs : numbersIn(left, own).get(symbol);
    if (printed === undefined) return expect.fail(`${where}: ${symbol} is not printed`);
    scope.set(symbol, heldNumber(printedNumber(printed), value, meaning, where));
  }
  const inSi = root.sides.length > 2 ? printedNumber(solved) : printedNumber(solved, root.unit);
  scope.set(step.relation.gives, heldNumber(inSi, step.result.value, step.result.meaning, where));
  const residual = (s: Record<string, number>): number =>
    p(s['T'] ?? Number.NaN, s['rho'] ?? Number.NaN) - (s[wantedSymbol] ?? 0);
  const found = residual(Object.fromEntries([...scope].map(([symbol, { value }]) => [symbol, value])));
  const room = allowed(residual, scope) + 1e-11 * Math.abs(scope.get(wantedSymbol)?.value ?? 0);
  if (!(Math.abs(found) <= room * (1 + 1e-9))) expect.fail(`${where}: residual ${found}, within ${room}`);
}

/** All that is printed of the steps of a derivation, without those that say "as in step". */
function heldSteps(derivation: Derivation, units: ReaderUnits, name: string): number {
  const blocks = derivationBlocks(derivation, { language: english, units, detail: 'steps' });
  const byStep = equationsByStep(blocks);
  let count = 0;
  for (const step of derivation.steps) {
    if (step.sameAs !== undefined) continue;
    const where = `${name}, step ${step.number} (${step.about}: ${step.relation.formula})`;
    const equations = byStep.get(step.number) ?? [];
    const [first] = equations;
    const model = step.state?.model ?? '';
    if (first === undefined) return expect.fail(`${where}: no equation`);
    if (step.relation.formula.includes('=')) heldRoot(step, model, equations, where);
    else if (/^[phsu]\(T, rho\)$/.test(step.relation.formula)) heldPressure(step, model, first, where);
    else heldClosed(step, first, where);
    const byHand = step.state?.steps.at(-1);
    const last = equations.at(-1);
    if (byHand !== undefined && step.state?.asIn === undefined && last !== undefined) {
      heldClosed(byHand, last, `${where}, by hand`);
      if (!(Math.abs(step.state?.residual_Pa ?? Number.NaN) <= 1e-10 * byHand.result.value))
        expect.fail(`${where}: by hand off by ${step.state?.residual_Pa} Pa`);
    }
    count += 1;
  }
  return count;
}

function heldPressure(step: DerivedStep, model: string, { sides, unit = '' }: Equation, where: string): void {
  const [, formula, numbers, third] = sides;
  const p = modelFunction(step.relation.formula, model);
  if (!formula || !numbers || !third || !p) return expect.fail(`${where}: no substitution`);
  const own = numbersIn(formula, numbers);
  const scope = new Map(
    step.from.map(({ symbol, value, meaning }) => {
      const printed = own.get(symbol);
      if (printed === undefined) return expect.fail(`${where}: ${symbol} is not printed`);
      return [symbol, heldNumber(printedNumber(printed), value, meaning, where)] as const;
    }),
  );
  const evaluate = (s: Record<string, number>): number => p(s['T'] ?? Number.NaN, s['rho'] ?? Number.NaN);
  const found = evaluate(Object.fromEntries([...scope].map(([symbol, { value }]) => [symbol, value])));
  const result = heldNumber(printedNumber(third, unit), step.result.value, step.result.meaning, where);
  const room = allowed(evaluate, scope) + result.half + 1e-11 * Math.abs(found);
  if (!(Math.abs(found - result.value) <= room * (1 + 1e-9)))
    expect.fail(`${where}: ${found}, printed ${result.value}`);
}

/** Powers and logarithms of the library have bits of their own, within one unit in the last place of the exact value. */
const transcends = (formula: string): boolean => /\^|exp|log/.test(formula);

/** Every number printed to its last bit, and the result that of the printed formula, to the last bit. */
function heldExactly(step: DerivedStep, equation: Equation | undefined, where: string): void {
  const [, formula, numbers] = equation?.sides ?? [];
  const result = equation?.sides.at(-1);
  if (formula === undefined || numbers === undefined || result === undefined)
    return expect.fail(`${where}: no equation`);
  if (printedNumber(result).value !== step.result.value)
    expect.fail(`${where}: ${step.result.value} printed as ${printedNumber(result).value}`);
  if (formula.kind === 'symbol') return;
  const own = numbersIn(formula, numbers);
  const scope = Object.fromEntries(
    step.from.map(({ symbol, value }) => {
      const printed = own.get(symbol);
      if (printed === undefined || printedNumber(printed).value !== value)
        return expect.fail(`${where}: ${symbol} = ${value} is not printed`);
      return [symbol, value];
    }),
  );
  const found = valueOf(formula, scope);
  const isHeld = transcends(step.relation.formula)
    ? Math.abs(found / step.result.value - 1) < 1e-14
    : found === step.result.value;
  if (!isHeld) expect.fail(`${where}: ${found}, printed ${step.result.value}`);
}

function heldAtEverything(derivation: Derivation, name: string): void {
  const byStep = equationsByStep(
    derivationBlocks(derivation, { language: english, units: UNITS, detail: 'everything' }),
  );
  for (const step of derivation.steps) {
    if (step.sameAs !== undefined) continue;
    const where = `${name}, step ${step.number} (${step.about}: ${step.relation.formula})`;
    const equations = byStep.get(step.number) ?? [];
    if (!step.relation.formula.includes('(T, rho)')) heldExactly(step, equations[0], where);
    const byHand = step.state?.steps.at(-1);
    if (byHand !== undefined && step.state?.asIn === undefined)
      heldExactly(byHand, equations.at(-1), `${where}, by hand`);
  }
}

/** npm run substitutions draws a thousand of each, at both levels. */
const COUNT = Number(process.env['DERIVATIONS'] ?? 40);
const COUNT_EXACT = Number(process.env['DERIVATIONS'] ?? 5);

describe.each(CASES)('%s', { timeout: 900_000 }, (name, derive) => {
  test('every substitution gives its printed result', () => {
    const random = randomBy(20260314);
    let steps = 0;
    for (let i = 0; i < COUNT; i += 1) {
      const derivation = derive(random);
      expect(derivation.steps.length).toBeGreaterThan(0);
      steps += heldSteps(derivation, i % 10 === 0 ? random.pick<ReaderUnits>(...OTHERS) : UNITS, `${name} ${i}`);
    }
    expect(steps).toBeGreaterThanOrEqual(COUNT);
  });

  test('at everything each gives the very bits', () => {
    const random = randomBy(11);
    for (let i = 0; i < COUNT_EXACT; i += 1) heldAtEverything(derive(random), `${name} ${i}`);
  });
});
