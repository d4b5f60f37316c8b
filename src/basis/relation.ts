import { fail, quote } from './fault.js';
import { wrongKind } from './problem.js';

/**
 * A formula: its printed form and its arithmetic, side by side, so that neither can drift from the other
 * (a test evaluates every printed formula against `of`).
 *
 * All values are SI: Pa, K, m3, mol, kg, mol/m3.
 */
export interface Relation<From extends readonly string[] = readonly string[]> {
  /** Symbol of the result. */
  readonly gives: string;
  /** Unit of the result. */
  readonly unit: string;
  /** Symbols of the arguments, in order. */
  readonly from: From;
  /** The printed formula: the right-hand side for `gives`, or an equation whose root `gives` is. */
  readonly formula: string;
  /** Where the formula comes from. */
  readonly source: string;
}

/** A relation with its arithmetic. */
export interface Arithmetic<From extends readonly string[]> extends Relation<From> {
  readonly of: (...values: { [K in keyof From]: number }) => number;
}

/** One step of a calculation, as a {@link Trace} sees it. */
export interface Step {
  readonly relation: Relation;
  /** Whose values these are: `reference point`, `reading`, `target`, … */
  readonly about: string;
  /** The arguments, in the order of `relation.from`. */
  readonly values: readonly number[];
  readonly result: number;
}

/**
 * Receives every step of a calculation, in order. Pass one as the last argument of a calculation to see its working;
 * without one nothing is collected and nothing allocated.
 *
 * @example
 * ```ts
 * const steps: Step[] = [];
 * toAbsolute(gauge(140, 'bar'), standardAtmosphere, (step) => steps.push(step));
 * steps[0]?.relation.formula; // => 'p_g + p_amb'
 * ```
 */
export type Trace = (step: Step) => void;

/**
 * Declares a relation: the argument symbols are inferred as literals, and nobody to whom a step shows it can change it.
 */
// @__NO_SIDE_EFFECTS__
export function relation<const From extends readonly string[]>(given: Arithmetic<From>): Arithmetic<From> {
  Object.freeze(given.from);
  return Object.freeze(given);
}

/** Shows a step to whoever traces. Here, where every traced step passes, a trace that is no function is refused. */
export function show(trace: Trace, step: Step): void {
  if (typeof trace !== 'function')
    fail(wrongKind, 'trace', quote(trace), {
      kind: 'a function that takes a step',
      maker: 'a function such as (step) => steps.push(step), or leave it out',
    });
  trace(step);
}

/** The trace of one part of the work, which its steps name. */
export function inPart(trace: Trace, part: string): Trace {
  return (step) => {
    show(trace, { ...step, about: `${step.about}, ${part}` });
  };
}

// Fixed numbers of arguments on purpose: a rest parameter would allocate on every call, traced or not.

/** Computes a relation of one argument and shows it. */
export function step1(trace: Trace | undefined, r: Arithmetic<readonly [string]>, about: string, a: number): number {
  const result = r.of(a);
  if (trace !== undefined) show(trace, { relation: r, about, values: [a], result });
  return result;
}

/** Computes a relation of two arguments and shows it. */
export function step2(
  trace: Trace | undefined,
  r: Arithmetic<readonly [string, string]>,
  about: string,
  a: number,
  b: number,
): number {
  const result = r.of(a, b);
  if (trace !== undefined) show(trace, { relation: r, about, values: [a, b], result });
  return result;
}

/** Computes a relation of three arguments and shows it. */
export function step3(
  trace: Trace | undefined,
  r: Arithmetic<readonly [string, string, string]>,
  about: string,
  a: number,
  b: number,
  c: number,
): number {
  const result = r.of(a, b, c);
  if (trace !== undefined) show(trace, { relation: r, about, values: [a, b, c], result });
  return result;
}

/** Computes a relation of four arguments and shows it. */
export function step4(
  trace: Trace | undefined,
  r: Arithmetic<readonly [string, string, string, string]>,
  about: string,
  a: number,
  b: number,
  c: number,
  d: number,
): number {
  const result = r.of(a, b, c, d);
  if (trace !== undefined) show(trace, { relation: r, about, values: [a, b, c, d], result });
  return result;
}

/** Computes a relation of five arguments and shows it. */
export function step5(
  trace: Trace | undefined,
  r: Arithmetic<readonly [string, string, string, string, string]>,
  about: string,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
): number {
  const result = r.of(a, b, c, d, e);
  if (trace !== undefined) show(trace, { relation: r, about, values: [a, b, c, d, e], result });
  return result;
}
