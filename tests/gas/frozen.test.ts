import {
  absolute,
  cubicNitrogen,
  idealNitrogen,
  nitrogen,
  normalConditions,
  stateAt,
  temperature,
  type GasCondition,
  type GasModel,
} from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { gasModel } from '../../src/gas/model.js';
import { problemOf } from '../support/problem.js';

// A model is shared by all that calculates in a program: whoever could change it would change every later result.

/** Every object that can be reached from a value, with its path. */
function reachable(value: unknown, path: string): [path: string, object][] {
  if ((typeof value !== 'object' && typeof value !== 'function') || value === null) return [];
  if (typeof value === 'function') return [];
  const inner = Object.entries(value).flatMap(([key, one]) => reachable(one, `${path}.${key}`));
  return [[path, value], ...inner];
}

describe.each([nitrogen, cubicNitrogen, idealNitrogen])('$id', (model) => {
  test('is frozen through and through', () => {
    const parts = reachable(model, 'model');
    expect(parts.map(([path]) => path)).toEqual(
      expect.arrayContaining([
        'model',
        'model.source',
        'model.validity.temperature_K',
        'model.uncertainty',
        'model.~kernel',
      ]),
    );
    expect(parts.filter(([, part]) => !Object.isFrozen(part)).map(([path]) => path)).toEqual([]);
  });

  test('answers as before after whatever was tried on it', () => {
    const before = stateAt(model, normalConditions);
    const attempts = [
      () => Object.assign(model['~kernel'], { density: () => 1 }),
      () => Object.assign(model, { '~kernel': {} }),
      () => Object.assign(model.validity, { temperature_K: [0, 1e9] }),
      () => Object.assign(model.validity.temperature_K, [0, 1e9]),
      () => Object.assign(model.source, { citation: 'mine' }),
    ];
    for (const attempt of attempts) expect(attempt).toThrow(TypeError);
    expect(stateAt(model, normalConditions)).toStrictEqual(before);
  });
});

describe('what only looks like a model is refused by name', () => {
  const copy = { found: 'an unchecked copy of a gas model', values: { kind: 'a gas model' } };
  test.each([
    ['a spread', { ...nitrogen }, copy],
    ['a spread that is frozen', Object.freeze({ ...nitrogen }), copy],
    ['JSON', JSON.parse(JSON.stringify(nitrogen)) as unknown, copy],
    ['a kernel of one’s own', { '~kernel': { density: () => 1 } }, { found: 'an object' }],
    ['a mark of one’s own', Object.freeze({ ...nitrogen, '~isochore': 'gas model' }), copy],
    ['null', null, { found: 'null' }],
    ['a quantity', temperature(20, '°C'), { found: 'a temperature' }],
  ])('%s', (_, model, refused) => {
    const call = (): unknown => stateAt(model as GasModel, normalConditions);
    expect(problemOf(call)).toMatchObject({ code: 'wrong kind', path: 'model', ...refused });
  });

  test('one of another copy of the library is taken', async () => {
    vi.resetModules();
    const other = await import('../../src/gas/nitrogen/nitrogen.js');
    expect(other.nitrogen).not.toBe(nitrogen);
    expect(stateAt(other.nitrogen, normalConditions)).toStrictEqual(stateAt(nitrogen, normalConditions));
  });

  test('what a model is made of may change afterwards, and the model does not', () => {
    const temperature_K: [number, number] = [100, 200];
    const made = gasModel({ ...nitrogen, validity: { ...nitrogen.validity, temperature_K } });
    temperature_K[1] = 1e9;
    expect(made.validity.temperature_K).toEqual([100, 200]);
  });
});

describe('the names of a state', () => {
  test('are read once', () => {
    const values = [absolute(1, 'bar'), null];
    let reads = 0;
    const given = {
      temperature: temperature(20, '°C'),
      get pressure() {
        reads += 1;
        return values[Math.min(reads - 1, 1)];
      },
    } as unknown as GasCondition;
    expect(stateAt(nitrogen, given).pressure).toBe(values[0]);
    expect(reads).toBe(1);
  });

  test('that are many and long are told in few words', () => {
    const many = Object.fromEntries(Array.from({ length: 10_000 }, (_, i) => [`${i} ${'x'.repeat(100)}\ud83d`, i]));
    const { code, found } = problemOf(() => stateAt(nitrogen, many as unknown as GasCondition));
    expect(code).toBe('not a pair of properties');
    expect(found.length).toBeLessThanOrEqual(450);
    expect(found).not.toMatch(/\p{Surrogate}/u);
  });
});
