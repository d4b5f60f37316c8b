// The round of the examples, ways to change one place of a document, and what must hold of every report.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { isFault, type Problem } from 'isochore';
import { reportRound, reverify, RoundReportShape, type Round, type RoundReport } from 'isochore/record';
import { expect } from 'vitest';

export type Keys = readonly (string | number)[];

const EXAMPLE = readFileSync(fileURLToPath(new URL('../../examples/round.json', import.meta.url)), 'utf8');

/** The invented round of the examples, a new copy each time. */
export function exampleRound(): Round {
  return JSON.parse(EXAMPLE) as Round;
}

/** The same without gas and rig, of which a plan takes as long as all the rest. */
export function roundWithoutSupply(): Round {
  const round = exampleRound();
  delete round.supply;
  return round;
}

/** What is sound of a document, and what is wrong with it. */
export function reportRest(json: unknown): RoundReport {
  return reportRound(json, { problems: 'report the rest' });
}

/** A report without what differs wherever the round is written differently: the round itself, and the digest. */
export function judgedOf({ input, digest, ...judged }: RoundReport): Omit<RoundReport, 'input' | 'digest'> {
  expect(typeof input).toBe('object');
  expect(digest).toHaveLength(64);
  return judged;
}

/** The problems for which a call is refused. Anything else that happens is a failure of the test. */
export function refusalOf(call: () => unknown): readonly Problem[] {
  try {
    call();
  } catch (error) {
    if (isFault(error)) return error.problems;
    throw error;
  }
  throw new Error('not refused');
}

/** Every value of some JSON data with the keys that lead to it, the root first. */
export function nodesOf(json: unknown, keys: Keys = []): { readonly keys: Keys; readonly value: unknown }[] {
  const inner =
    typeof json !== 'object' || json === null
      ? []
      : Object.entries(json).flatMap(([key, value]) =>
          nodesOf(value, [...keys, Array.isArray(json) ? Number(key) : key]),
        );
  return [{ keys, value: json }, ...inner];
}

/** The first place of each that differ by more than the number in a list. */
export function onePlaceOfEach(json: unknown): ReturnType<typeof nodesOf> {
  const seen = new Set<string>();
  return nodesOf(json).filter(({ keys }) => {
    const place = keys.map((key) => (typeof key === 'number' ? '' : key)).join('.');
    return !seen.has(place) && seen.add(place);
  });
}

/** `$.groups[0].name`: a path of names and indices, as JSONPath (RFC 9535) spells it. */
export function jsonPath(keys: Keys): string {
  const step = (key: string | number): string =>
    typeof key === 'number' ? `[${key}]` : /^\w+$/.test(key) ? `.${key}` : `[${JSON.stringify(key)}]`;
  return `$${keys.map(step).join('')}`;
}

/** The keys of such a path. */
export function keysOf(path: string): Keys {
  return [...path.matchAll(/\.(\w+)|\[(\d+)\]/g)].map(([, name, index]) => name ?? Number(index));
}

/** The own value at the keys; undefined where there is none. */
export function at(json: unknown, keys: Keys): unknown {
  return keys.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<string | number, unknown>)[key]
        : undefined,
    json,
  );
}

/** Stands for a place that is taken out of its object. */
export const NOTHING = Symbol('nothing');

/** Puts a value in one place of a document, or takes the place out. */
export function put(json: unknown, keys: Keys, value: unknown): void {
  const key = keys.at(-1);
  const parent = at(json, keys.slice(0, -1));
  if (key === undefined || typeof parent !== 'object' || parent === null) throw new Error(`no place ${jsonPath(keys)}`);
  if (value === NOTHING) Reflect.deleteProperty(parent, key);
  // Not by assignment: that would set the prototype, where the key is __proto__.
  else Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });
}

/** Whether one path lies at, under or above another. */
export function onOneLine(a: string, b: string): boolean {
  const under = (path: string, outer: string): boolean =>
    path === outer || path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`);
  return under(a, b) || under(b, a);
}

/** Holds of every report: it has the published shape, is JSON data through and through, and can be judged again. */
export function expectSound(report: RoundReport): void {
  expect(reverify(report).because).toEqual(Object.hasOwn(report, 'input') ? [] : ['no input']);
  expectInShape(report);
}

/** The same, but for judging it again, which takes as long as the report itself. */
export function expectInShape(report: RoundReport): void {
  expect(RoundReportShape.safeParse(report).error?.issues ?? []).toEqual([]);
  expect(strangers(report)).toEqual([]);
}

/** Paths of what JSON cannot carry, undefined, NaN, infinities, functions and instances, and of what holds them. */
function strangers(report: unknown): string[] {
  if (isJson(report)) return [];
  return nodesOf(report)
    .filter(({ value }) => !isJson(value))
    .map(({ keys }) => jsonPath(keys));
}

function isJson(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object') return typeof value === 'string' || typeof value === 'boolean';
  if (value === null) return true;
  if (Array.isArray(value)) return value.every(isJson);
  return Object.getPrototypeOf(value) === Object.prototype && Object.values(value).every(isJson);
}
