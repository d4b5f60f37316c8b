import { problem, quote, type Problem } from '../basis/fault.js';
import { unknownInstrument } from '../basis/problem.js';
import { InstrumentShape } from './carried.js';
import { isBroken, shapeProblems, valueAt, type Part } from './problems.js';
import type { RoundReport } from './report-shape.js';

type Instrument = RoundReport['instruments'][number];

/**
 * The instruments of a round by name; undefined for one that is listed, but not soundly. `not sound`: so is the whole list,
 * and nothing can be said of any name.
 */
export type Instruments = ReadonlyMap<string, Instrument | undefined> | 'not sound';

const MEASURED = ['pressure', 'temperature'] as const;
type Measured = (typeof MEASURED)[number];

/** The instruments that a reading, or its group, names. */
export interface Used {
  readonly names: Partial<Record<Measured, string>>;
  /** For which of the two what is named is not sound: that is reported where it stands. */
  readonly unsound: readonly Measured[];
}

/** An instrument from JSON, with its problems. */
export function instrumentProblems(raw: unknown): Problem[] {
  return shapeProblems(InstrumentShape, raw);
}

/** The instruments that a part names, with the problems of it added to the part. */
export function admitUsed(part: Part, listed: Instruments): Used {
  const names: Partial<Record<Measured, string>> = {};
  const unsound: Measured[] = [];
  for (const field of MEASURED) {
    const path = `instruments.${field}`;
    const name = valueAt(part.raw, ['instruments', field]) as string | undefined; // by its shape
    if (isBroken(part.problems, path)) unsound.push(field);
    else if (name === undefined) continue;
    else if (listed === 'not sound') unsound.push(field);
    else if (listed.get(name) !== undefined) names[field] = name;
    else {
      if (!listed.has(name)) part.problems.push(problem(unknownInstrument, path, quote(name)));
      unsound.push(field);
    }
  }
  return { names, unsound };
}

/** What a reading names, and for what it does not name, its group. */
export function withGroup(own: Used, group: Used): Used {
  const names: Partial<Record<Measured, string>> = {};
  const unsound: Measured[] = [];
  for (const field of MEASURED) {
    const stated = field in own.names || own.unsound.includes(field) ? own : group;
    const name = stated.names[field];
    if (name !== undefined) names[field] = name;
    if (stated.unsound.includes(field)) unsound.push(field);
  }
  return { names, unsound };
}
