// What one check against something outside the project is, and how a number of it is written.

/** One number of the library beside one from outside. */
export interface Check {
  /** What is compared, and at which state. */
  readonly what: string;
  readonly expected: string;
  readonly obtained: string;
  /** How far apart they are, in `unit`. */
  readonly deviation: number;
  /** How far apart they may be, in `unit`. */
  readonly allowance: number;
  /** Unit of deviation and allowance; `relative` for a ratio. */
  readonly unit: string;
}

/** A column of a file of states, by its worst state. */
export interface Column {
  readonly what: string;
  readonly states: number;
  readonly deviation: number;
  readonly allowance: number;
  readonly unit: string;
  /** Where the deviation is largest. */
  readonly where: string;
}

/** How one model lies off another over states laid out in rows and columns. */
export interface Grid {
  readonly corner: string;
  readonly heads: readonly string[];
  readonly rows: readonly { readonly head: string; readonly cells: readonly Cell[] }[];
}

export interface Cell {
  readonly text: string;
  /** Relative. */
  readonly deviation: number;
  readonly allowance: number;
}

/** Checks against one source. */
export interface Group {
  readonly title: string;
  /** Where the expected numbers come from, and what the allowance rests on. Markdown. */
  readonly source: string;
  readonly checks?: readonly Check[];
  readonly columns?: readonly Column[];
  readonly grid?: Grid;
}

/** A step of the method and what is held there. */
export interface Step {
  readonly title: string;
  readonly groups: readonly Group[];
}

/** A number with so many digits, without an exponent where it is short. */
export function digits(x: number, count: number): string {
  return String(Number(x.toPrecision(count)));
}

/** Half a unit in the last digit that is printed: 0.00005 for 6.3552, and 0.5 for 21800. */
export function halfAUnit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** A value beside a printed number: every printed digit must be met. A bare number has the unit ''. */
export function printedDigits(what: string, unit: string, printed: string, value: number): Check {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return {
    what,
    expected: `${printed} ${unit}`.trimEnd(),
    obtained: `${value.toFixed(decimals + 2)} ${unit}`.trimEnd(),
    deviation: Math.abs(value - Number(printed)),
    allowance: halfAUnit(printed),
    unit,
  };
}

/** A value beside a number of another equation or another instrument: within a relative allowance. */
export function withinRelative(what: string, unit: string, printed: string, value: number, allowance: number): Check {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return {
    what,
    expected: `${printed} ${unit}`,
    obtained: `${value.toFixed(decimals + 1)} ${unit}`,
    deviation: Math.abs(value / Number(printed) - 1),
    allowance,
    unit: 'relative',
  };
}

/** The worst of many deviations as one column. */
export function worst(
  what: string,
  unit: string,
  allowance: number,
  states: readonly { readonly where: string; readonly deviation: number }[],
): Column {
  const found = states.reduce((a, b) => (b.deviation > a.deviation || Number.isNaN(b.deviation) ? b : a));
  return { what, unit, allowance, states: states.length, where: found.where, deviation: found.deviation };
}
