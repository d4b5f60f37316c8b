// Where a value of a step came from: found by its bits and by its kind.
import type { Relation } from '../../basis/relation.js';
import type { GasModel } from '../../gas/model.js';
import { normalConditions } from '../../quantity/normal-volume.js';
import type { NamedQuantity, Origin } from './derivation.js';
import { leafOf, leavesOf, type Given } from './given.js';
import type { Meaning } from './symbol.js';

/** The last step that gave a value of a kind, and the last that gave it of what it is about. */
export type Before = Map<string, number>;

export function keyOf({ value, meaning, unit }: NamedQuantity): string {
  return `${value} ${typeof meaning === 'object' ? unit : meaning}`;
}

export function keyAbout(named: NamedQuantity, about: string): string {
  return `${keyOf(named)} of ${about}`;
}

/** As {@link bottleState} says it. */
export const AT_LABEL = 'bottle at 15 °C';
export const LABEL = '15 °C, at which bottles are filled and rated (ISO 13769 and EN 1089, from memory)';

/** As {@link normalVolume} says it. */
export const REFERENCE_STATE = 'reference state of the volume';

/** A reference state is handed in as a whole, or it is the one of normal conditions. */
export function referenceOrigin(
  { value, meaning }: NamedQuantity,
  [T = 0, p = 0]: readonly number[],
  inputs: Given,
): Origin {
  const parents = (of: number, kind: Meaning): Set<string> =>
    new Set(leavesOf(inputs, of, kind).map(({ path }) => path.replace(/\.?[^.]*$/, '')));
  const both = parents(p, 'absolute pressure');
  const [parent] = [...parents(T, 'temperature')].filter((one) => both.has(one));
  const { temperature, pressure } = normalConditions;
  const isNormal = T === temperature.kelvins && p === pressure.pascals;
  // A reading at 0 °C has the numbers of normal conditions, and is not what is meant.
  const names = isNormal ? ['temperature', 'pressure'] : ['temperature', 'pressure', 'ambient'];
  const paths = names.map((name) => (parent === '' ? name : `${String(parent)}.${name}`));
  const all = leavesOf(inputs, value, meaning);
  const isWhole = !isNormal || leavesOf(inputs, p, 'absolute pressure').some(({ path }) => path === paths[1]);
  const leaf = isWhole ? all.find(({ path }) => paths.includes(path)) : undefined;
  return leaf === undefined ? { from: 'published', source: NORMAL } : { from: 'given', path: leaf.path };
}

export const NORMAL = 'normal conditions, 0 °C and 101.325 kPa absolute (DIN 1343)';

/** What else a value may have been before it went into its step. */
const ALSO: Readonly<Record<string, readonly Meaning[]>> = {
  // An error is counted in its SI unit, whichever that is.
  e: ['pressure difference', 'temperature difference'],
  c: ['pressure difference'],
  // From zero to the end of the scale.
  p_span: ['gauge pressure'],
};

export function originOf(
  named: NamedQuantity,
  isStated: boolean,
  relation: Relation,
  about: string,
  before: Before,
  inputs: Given,
  model: GasModel | undefined,
): Origin {
  const { symbol, value, meaning } = named;
  const also = Object.hasOwn(ALSO, symbol) ? (ALSO[symbol] ?? []) : [];
  const meanings = [...also, meaning];
  // Two limits may have the same margin: each follows from its own.
  const step = [keyAbout(named, about), ...meanings.map((one) => keyOf({ ...named, meaning: one }))]
    .map((key) => before.get(key))
    .find((one) => one !== undefined);
  const leaf = meanings.map((one) => leafOf(inputs, value, one, isStated, about)).find((one) => one !== undefined);
  // The step of an instrument is never worked out.
  if (step !== undefined && !(leaf !== undefined && symbol.endsWith('_step'))) return { from: 'step', step };
  if (value === 1 && ['dT', 'dp', 'e_rho', 'c'].includes(symbol)) return { from: 'one unit' };
  if (symbol === 'count') return { from: 'counted' };
  if (leaf !== undefined) {
    const row = /\.rows\[(\d+)\]/.exec(leaf.path)?.[1];
    if (row === undefined) return { from: 'given', path: leaf.path };
    return { from: 'table', path: leaf.path, row: Number(row) + 1 };
  }
  const isOfModel = typeof meaning === 'object' && meaning.from === 'model';
  if (model !== undefined && isOfModel) return { from: 'model', model: model.id };
  if (isOfModel || (typeof meaning === 'object' && meaning.from === 'published') || /^[pT]_n$/.test(symbol))
    return { from: 'published', source: relation.source };
  return { from: 'calculation' };
}
