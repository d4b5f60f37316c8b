// What was handed in to a calculation, by value, so that a number in a step can be traced to it.
import { fail } from '../../basis/fault.js';
import { has } from '../../basis/has.js';
import { tooDeep, tooMuch } from '../../basis/problem.js';
import type { GasModel } from '../../gas/model.js';
import { isChecked } from '../../quantity/kind.js';
import { pressureDifference } from '../../quantity/pressure.js';
import { FORM } from '../../quantity/step.js';
import { PRESSURE, type PressureUnit } from '../../quantity/unit.js';
import type { Meaning } from './symbol.js';

/** A number that was handed in. */
export interface Leaf {
  readonly value: number;
  /** `number` where it has no kind. */
  readonly kind: string;
  readonly path: string;
  /** Whether it stands in a specification, as against the conditions of a reading. */
  readonly isStated: boolean;
}

/** All that was handed in. */
export interface Given {
  readonly leaves: ReadonlyMap<number, readonly Leaf[]>;
  readonly models: readonly GasModel[];
}

const DEEPEST = 30;
/** The most numbers of a calculation: a round of thousands is many calculations. */
const MOST = 100_000;

/** A step of a pressure gauge as a difference of pressure, Pa; undefined for what is none. */
function stepIn(value: object): number | undefined {
  const { step, unit } = value as { readonly step?: unknown; readonly unit?: unknown };
  const isStep = typeof step === 'number' && typeof unit === 'string' && Object.hasOwn(PRESSURE, unit);
  return isStep && step > 0 && Number.isFinite(step)
    ? pressureDifference(step, unit as PressureUnit).pascals
    : undefined;
}

/** Every number in what was handed in, by its value. */
export function givenIn(given: object): Given {
  const leaves = new Map<number, Leaf[]>();
  const models = new Set<GasModel>();
  let count = 0;
  const note = (leaf: Leaf): void => {
    const same = leaves.get(leaf.value);
    if (same === undefined) leaves.set(leaf.value, [leaf]);
    else same.push(leaf);
  };
  const walk = (value: unknown, path: string, depth: number, isStated: boolean): void => {
    count += 1;
    if (count > MOST) fail(tooMuch, path, 'more numbers', { most: String(MOST), what: 'numbers' });
    if (depth > DEEPEST) fail(tooDeep, path, 'deeper nesting', { most: String(DEEPEST) });
    if (typeof value === 'number') note({ value, kind: 'number', path, isStated });
    if (typeof value !== 'object' || value === null) return;
    if (isChecked(value, 'gas model')) {
      models.add(value as GasModel);
      return;
    }
    const { kind } = value as { readonly kind?: unknown };
    if (typeof kind === 'string' && Object.hasOwn(FORM, kind) && isChecked(value, kind)) {
      const { field } = FORM[kind as keyof typeof FORM];
      note({ value: (value as Readonly<Record<string, number>>)[field] ?? Number.NaN, kind, path, isStated });
      return;
    }
    const step = stepIn(value);
    if (step !== undefined) note({ value: step, kind: 'pressure difference', path, isStated });
    const states = isStated || has(value, 'precharge');
    if (Array.isArray(value)) {
      value.forEach((one: unknown, i) => walk(one, `${path}[${i}]`, depth + 1, states));
      return;
    }
    for (const [name, inner] of Object.entries(value)) {
      // What the library solved in advance is no input.
      if (!name.startsWith('~')) walk(inner, path === '' ? name : `${path}.${name}`, depth + 1, states);
    }
  };
  walk(given, '', 0, false);
  return { leaves, models: [...models] };
}

/**
 * What was handed in with a value, of the kind that a symbol stands for: stated in the specification, if that is asked for,
 * and with the name that is nearest to what the step is about.
 */
export function leafOf(
  given: Given,
  value: number,
  meaning: Meaning,
  isStated: boolean,
  about: string,
): Leaf | undefined {
  const alike = leavesOf(given, value, meaning);
  const own = alike.filter((leaf) => leaf.isStated === isStated);
  const words = about.split(' ');
  const shared = ({ path }: Leaf): number => {
    const named = path.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).split(/[^a-z]+/);
    // A limit of error and the step of its instrument are often the same number.
    const isStep = named.includes('step') && !words.includes('step');
    return words.filter((word) => named.includes(word)).length - (isStep ? 1 : 0);
  };
  let nearest: Leaf | undefined;
  for (const leaf of own.length > 0 ? own : alike)
    if (nearest === undefined || shared(leaf) > shared(nearest)) nearest = leaf;
  return nearest;
}

/** All that was handed in with a value, of the kind that a symbol stands for. */
export function leavesOf({ leaves }: Given, value: number, meaning: Meaning): readonly Leaf[] {
  return (leaves.get(value) ?? []).filter(({ kind }) => isOfKind(kind, meaning));
}

function isOfKind(kind: string, meaning: Meaning): boolean {
  if (typeof meaning === 'object') return kind === 'number' || kind === 'amount of substance';
  return kind === meaning;
}
