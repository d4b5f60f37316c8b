import { problem, quote, type Problem } from '../basis/fault.js';
import { has, optional } from '../basis/has.js';
import { otherInstrument, unknownInstrument } from '../basis/problem.js';
import { admitCharacteristics, InstrumentShape, type Characterised, type InstrumentJson } from './characteristics.js';
import { isBroken, shapeProblems, valueAt, type Part } from './problems.js';

/** A sound instrument of a round. */
export interface Instrument {
  readonly json: InstrumentJson;
  readonly characterised: Characterised;
}

/**
 * The instruments of a round by name; undefined for one that is listed, but not soundly. `not sound`: so is the whole list,
 * and nothing can be said of any name.
 */
export type Instruments = ReadonlyMap<string, Instrument | undefined> | 'not sound';

const MEASURED = ['pressure', 'temperature'] as const;
type Measured = (typeof MEASURED)[number];

/** The instruments that a reading, or its group, names. */
export interface Used {
  readonly by: Readonly<Partial<Record<Measured, Instrument>>>;
  /** For which of the two what is named is not sound: that is reported where it stands. */
  readonly unsound: readonly Measured[];
}

/** An instrument from JSON, sound if there are no problems; undefined if not even its shape is. */
export function admitInstrument(raw: unknown): {
  readonly instrument: Instrument | undefined;
  readonly problems: Problem[];
} {
  const part: Part = { raw, problems: shapeProblems(InstrumentShape, raw) };
  if (part.problems.length > 0) return { instrument: undefined, problems: part.problems };
  const instrument = { json: raw as InstrumentJson, characterised: admitCharacteristics(part) };
  return { instrument, problems: part.problems };
}

/** The instruments that a part names, with the problems of it added to the part. */
export function admitUsed(part: Part, listed: Instruments): Used {
  const by: Partial<Record<Measured, Instrument>> = {};
  const unsound: Measured[] = [];
  for (const field of MEASURED) {
    const path = `instruments.${field}`;
    const name = valueAt(part.raw, ['instruments', field]) as string | undefined; // by its shape
    if (isBroken(part.problems, path)) unsound.push(field);
    else if (name === undefined) continue;
    else if (listed === 'not sound') unsound.push(field);
    else {
      const one = listed.get(name);
      if (one !== undefined && measures(one, field)) by[field] = one;
      else {
        const kind = field === 'pressure' ? 'pressure gauge' : 'thermometer';
        if (one !== undefined) part.problems.push(problem(otherInstrument, path, quote(name), { kind }));
        else if (!listed.has(name)) part.problems.push(problem(unknownInstrument, path, quote(name)));
        unsound.push(field);
      }
    }
  }
  return { by, unsound };
}

/** Whether an instrument can have shown a value; of one without characteristics nothing is known. */
function measures({ characterised }: Instrument, field: Measured): boolean {
  return characterised === undefined || has(characterised, 'gauge') === (field === 'pressure');
}

/** What a reading names, and for what it does not name, its group. */
export function withGroup(own: Used, group: Used): Used {
  const by: Partial<Record<Measured, Instrument>> = {};
  const unsound: Measured[] = [];
  for (const field of MEASURED) {
    const stated = has(own.by, field) || own.unsound.includes(field) ? own : group;
    const one = optional(stated.by, field);
    if (one !== undefined) by[field] = one;
    if (stated.unsound.includes(field)) unsound.push(field);
  }
  return { by, unsound };
}

/** The names of the instruments in use; undefined where there are none. */
export function namesOf({ by }: Used): Partial<Record<Measured, string>> | undefined {
  const names: Partial<Record<Measured, string>> = {};
  for (const field of MEASURED) {
    const one = optional(by, field);
    if (one !== undefined) names[field] = one.json.name;
  }
  return Object.keys(names).length === 0 ? undefined : names;
}

/** Whether the calibration of an instrument in use was past due on a day. Dates of RFC 3339 stand in the order of their texts. */
export function isPastDue({ by }: Used, day: string): boolean {
  return MEASURED.some((field) => {
    const due = valueAt(optional(by, field)?.json, ['due']);
    return typeof due === 'string' && due < day;
  });
}

/** The day of a time, where it was taken. */
export function dayOf(at: string): string {
  return at.slice(0, 'YYYY-MM-DD'.length);
}
