// Documents that are made to break what reads them. JSON text can hold objects that do not become texts or numbers; data
// can be of any depth, hold itself, or bring its own iterators. Whatever it is: problems, never another error.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { isFault, type Problem } from 'isochore';
import {
  DEEPEST,
  reportJsonSchema,
  reportRoundText,
  reverify,
  roundJsonSchema,
  worstFirst,
  type Round,
  type RoundReport,
} from 'isochore/record';
import { exampleRound, expectInShape, expectSound, jsonPath, keysOf, nodesOf, onePlaceOfEach, put, refusalOf, reportRest } from '../support/round.js'; // prettier-ignore
import { inheriting } from '../support/inheriting.js';
import { PARTS, smallRoundFor } from '../support/small-round.js';

const said = ({ problems }: RoundReport): string[] => problems.map(({ code, path }) => `${code} ${path}`);

/** Becomes neither a text nor a number. */
const STUBBORN = { toString: 1, valueOf: 1 };

describe('an object that becomes neither text nor number', () => {
  const asText = (round: unknown): RoundReport =>
    reportRoundText(JSON.stringify(round), { problems: 'report the rest' });

  test.each<readonly [string, unknown]>([
    ['itself', STUBBORN],
    ['as a length', { length: STUBBORN }],
    ['as a length in a list', [{ length: STUBBORN }]],
  ])('%s, in any place of a round', { timeout: 240_000 }, (_title, value) => {
    for (const part of PARTS) {
      const { round, fields } = smallRoundFor(part);
      for (const { keys } of nodesOf(round)) {
        if (!fields.includes(String(keys[0]))) continue;
        const { round: changed } = smallRoundFor(part);
        put(changed, keys, value);
        const report = asText(changed);
        expect([jsonPath(keys), report.complete]).toEqual([jsonPath(keys), 'partial']);
        expectInShape(report);
      }
    }
  });

  test('in any place of the round of the examples but inside a quantity', () => {
    for (const { keys } of nodesOf(exampleRound())) {
      if (keys.length === 0 || keys.length > 4) continue;
      const round = exampleRound();
      if (keys[0] !== 'supply') delete round.supply; // a plan takes as long as the rest
      put(round, keys, STUBBORN);
      const report = asText(round);
      expect([jsonPath(keys), report.complete]).toEqual([jsonPath(keys), 'partial']);
      expectInShape(report);
    }
  });

  test.each([
    ['$.title', 'not a text $.title'],
    ['$.groups[0].name', 'not a text $.groups[0].name'],
    ['$.groups[0].specification', 'not a text $.groups[0].specification'],
    ['$.groups[0].accumulators[0].visit', 'not a list $.groups[0].accumulators[0].visit'],
    ['$.groups[0].accumulators[0].partsRenewed', 'not a list $.groups[0].accumulators[0].partsRenewed'],
    ['$.instruments[0].name', 'not a text $.instruments[0].name'],
  ])('%s: what is wrong is its kind, and nothing is said of a length', (path, problem) => {
    for (const value of [STUBBORN, { length: STUBBORN }, { length: 1000 }, { length: 0 }]) {
      const round = exampleRound();
      put(round, keysOf(path), value);
      expect(said(reportRest(round)).filter((one) => !one.startsWith('unknown instrument'))).toEqual([problem]);
    }
  });

  test('nor in a table', () => {
    const table = { name: 't', columns: { length: STUBBORN }, rows: [{ pressures: { length: STUBBORN } }] };
    const found = said(reportRest({ version: 1, tables: [table], specifications: [], groups: [] }));
    expect(found).toContain('not a list $.tables[0].columns');
    expect(found).toContain('not a list $.tables[0].rows[0].pressures');
    expect(found).toContain('too short $.tables[0].rows');
  });

  test('nor in a report', () => {
    const report = { ...reportRest(exampleRound()), groups: [{ name: { length: STUBBORN }, specification: 'x' }] };
    expect(reverify(report).problems).toMatchObject([{ code: 'not a text', path: '$.groups[0].name' }]);
    expect(refusalOf(() => worstFirst(report as never))).toMatchObject([
      { code: 'not a text', path: 'groups[0].name' },
    ]);
  });

  test('the limits stand in the JSON Schema as before', () => {
    const text = JSON.stringify(roundJsonSchema());
    const counts = ['"minLength":1,"maxLength":200', '"maxLength":2000', '"minItems":1,"maxItems":100', '"minItems":2,"maxItems":1000', '"maxItems":100']; // prettier-ignore
    for (const count of counts) expect(text).toContain(count);
    expect(text).not.toContain('"minLength":0');
  });
});

describe('data of any depth', () => {
  const deep = (levels: number, innermost: unknown = 1): unknown => {
    let value = innermost;
    for (let i = 0; i < levels; i += 1) value = { inner: value };
    return value;
  };
  const loop: Record<string, unknown> = { name: 'gauge A', kind: 'pressure gauge' };
  loop['itself'] = loop;

  test('is too deep at one level more than is read, as in a text', () => {
    for (const [levels, problem] of [
      [DEEPEST - 1, 'unknown field $.note'],
      [DEEPEST, 'too deep $'],
    ] as const) {
      // prettier-ignore
      const round = { ...exampleRound(), note: deep(levels) };
      expect(said(reportRest(round))).toEqual([problem]);
      expect(said(reportRoundText(JSON.stringify(round), { problems: 'report the rest' }))).toEqual([problem]);
      expectSound(reportRest(round));
    }
  });

  test('a round that hides as an instance is read, and not carried: no report without its round is complete', () => {
    const round = Object.assign(exampleRound(), { [Symbol.toStringTag]: 'Round' });
    const report = reportRest(round);
    expect(report.problems).toMatchObject([{ code: 'not JSON', path: '$', found: 'what JSON cannot carry' }]);
    expect([report.title, report.complete]).toEqual([round.title, 'partial']);
    expect(Object.hasOwn(report, 'input')).toBe(false);
  });

  test('what is no JSON data at the deepest level is that, and no deeper level', () => {
    const round = exampleRound();
    for (const value of [() => 1, Symbol('x'), 1n]) {
      expect(said(reportRest({ ...round, note: deep(DEEPEST - 1, value) }))).toEqual(['unknown field $.note']);
    }
  });

  test('a member that is undefined is none', () => {
    const { title, ...round } = exampleRound();
    expect(title).toBeDefined();
    expect(reportRest({ ...round, title: undefined })).toStrictEqual(reportRest(round));
  });

  test('what is too deep or no JSON data says so, and how deep it may be', () => {
    const [tooDeep] = reportRest({ ...exampleRound(), note: deep(DEEPEST) }).problems;
    expect(tooDeep).toMatchObject({ found: 'deeper nesting', values: { most: String(DEEPEST) } });
    expect(reverify({ ...reportRest(exampleRound()), title: Number.NaN }).problems).toMatchObject([
      { code: 'not JSON', path: '$.title', found: 'what JSON cannot carry' },
    ]);
  });

  test.each<readonly [string, unknown]>([
    ['holds itself', loop],
    ['is 100 000 levels deep', { name: 'gauge A', kind: 'pressure gauge', inner: deep(100_000) }],
  ])('an instrument that %s', (_title, instrument) => {
    const round = exampleRound();
    put(round, ['instruments', 0], instrument);
    expect(said(reportRest(round))).toEqual(['too deep $']);
    // Wherever something else that is no JSON data stands.
    put(round, ['groups', 0, 'accumulators', 0, 'runningHours'], Number.NaN);
    const { version, groups, specifications, instruments } = round;
    expect(said(reportRest({ version, groups, specifications, instruments }))).toEqual(['too deep $']);
  });
});

describe('a number as no instrument shows it loses nothing else of its round', () => {
  // The largest and the finest of which the last step, or the last digit, can no longer be written.
  test.each([1e21, 1e-9])('%d in any place', (size) => {
    const { supply, safety, ...round } = exampleRound();
    expect([supply, safety]).not.toContain(undefined); // each by itself below: a plan takes as long as all else
    for (const { keys, value } of [
      ...onePlaceOfEach(round),
      ...onePlaceOfEach({ supply }),
      ...onePlaceOfEach({ safety }),
    ]) {
      if (typeof value !== 'number') continue;
      const changed: object = {
        ...round,
        ...(keys[0] === 'supply' ? { supply } : keys[0] === 'safety' ? { safety } : {}),
      };
      const copy = structuredClone(changed);
      put(copy, keys, size);
      const report = reportRest(copy);
      const places = new Set(nodesOf(copy).map((one) => jsonPath(one.keys)));
      const nowhere = report.problems.filter(({ path }) => path === '$' || !places.has(path));
      expect([jsonPath(keys), nowhere]).toEqual([jsonPath(keys), []]);
      expectInShape(report);
    }
  });
});

test.each<readonly [string, unknown]>([
  ['is none', 5],
  ['throws', () => { throw new Error('not to be called'); }],
  ['gives other values', function* () { yield Number.NaN; }],
])('a list whose own iterator %s is read by index', (_title, iterator) => {
  const round = exampleRound();
  for (const { value } of nodesOf(round)) {
    if (Array.isArray(value)) Object.defineProperty(value, Symbol.iterator, { value: iterator });
  }
  expect(reportRest(round)).toStrictEqual(reportRest(exampleRound()));
  put(round, ['groups', 0, 'accumulators', 0, 'runningHours'], Number.NaN);
  expect(said(reportRest(round))).toEqual(['not a number $.groups[0].accumulators[0].runningHours']);
}); // prettier-ignore

test.each([
  ['title', 'x'],
  ['input', Symbol('x')],
])('all objects may inherit a field of the name %s', (name, inherited) => {
  let deep: unknown = 1;
  for (let i = 0; i <= DEEPEST; i += 1) deep = [deep];
  const clean = reportRest('no round');
  Object.defineProperty(Object.prototype, name, { value: inherited, configurable: true, writable: true });
  let reports: readonly RoundReport[];
  try {
    reports = [
      reportRest('no round'),
      reportRest(deep),
      reportRest([Number.NaN]),
      reportRoundText('no JSON', { problems: 'report the rest' }),
    ];
  } finally {
    Reflect.deleteProperty(Object.prototype, name);
  }
  expect(reports.map(said)).toEqual([['not an object $'], ['too deep $'], ['not an object $'], ['not a JSON text $']]);
  expect(reports[0]).toStrictEqual(clean);
  for (const report of reports) expect(Object.hasOwn(report, 'title')).toBe(false);
  for (const report of reports.slice(1)) expect(Object.hasOwn(report, 'input')).toBe(false);
});

describe('what all objects inherit is nothing that a document holds', () => {
  const sound = (): Round => {
    const { supply, safety, groups, ...round } = exampleRound();
    expect([supply, safety]).not.toContain(undefined);
    return {
      ...round,
      groups: groups.slice(0, 1).map((one) => ({ ...one, accumulators: one.accumulators.slice(0, 2) })),
    };
  };
  /** What zod says of several depths must stay as it is. */
  const wrong = (): unknown => {
    const round = sound();
    put(round, ['groups', 0, 'name'], '');
    put(round, ['title'], null);
    put(round, ['specifications', 0, 'tolerance'], { plusMinus: 5 });
    put(round, ['groups', 0, 'accumulators', 0, 'visit'], [{ at: 'noon' }]);
    return round;
  };
  const documents = [sound(), wrong()];
  const clean = documents.map(reportRest);
  // Names of the library's own, and all that the installed zod reads of anything: a newer one may read others.
  const zod = dirname(createRequire(import.meta.url).resolve('zod/v4/core'));
  const sources = ['schemas', 'checks', 'util', 'core', 'parse', 'errors'].map((name) =>
    readFileSync(join(zod, `${name}.js`), 'utf8'),
  );
  const names = new Set([
    ...nodesOf(documents).map(({ keys }) => String(keys.at(-1))),
    ...['emptyGasSide', 'possibleSlip', 'systemPressure', 'fullScale', 'nominal', 'toleranceAfterCharging', 'tables'],
    ...sources.flatMap((source) => [...source.matchAll(/\.([A-Za-z_]\w*)/g)].map(([, name = '']) => name)),
  ]);
  const symbols = [Symbol.iterator, Symbol.toPrimitive, Symbol.toStringTag, Symbol.isConcatSpreadable, Symbol('mine')];
  // An index is a digit to decimal.js: held where texts are read.
  const keys = [...names, ...symbols].filter(
    (key) => !Object.hasOwn(Object.prototype, key) && !/^\d*$/.test(String(key)),
  );

  test('under any name: the same report, or a fault that says what it is', { timeout: 240_000 }, () => {
    expect(keys.length).toBeGreaterThan(300);
    const values = ['investigated and cleared', 1, () => 1];
    const others: unknown[] = [];
    const refused = new Set<PropertyKey>();
    for (const [k, key] of keys.entries()) {
      const value = values[k % values.length];
      const reports = inheriting(key, value, () =>
        documents.map((document): readonly Problem[] | RoundReport => {
          try {
            return reportRest(document);
          } catch (error) {
            if (isFault(error)) return error.problems;
            throw error;
          }
        }),
      );
      for (const [i, report] of reports.entries()) {
        const isRefused = 'length' in report && report[0]?.code === 'inherited by all objects';
        if (isRefused) refused.add(key);
        else if (!isDeepStrictEqual(report, clean[i])) others.push([key, report]);
      }
    }
    expect(others).toStrictEqual([]);
    // Of the zod that is installed; all others are as if they were not there.
    expect([...refused]).toEqual(['memo', 'when', 'coerce', 'path', 'error', 'customError']);
  });

  test.each([roundJsonSchema, reportJsonSchema])('a schema is not made of it', (make) => {
    expect(inheriting('value', 'bar', () => refusalOf(make))).toMatchObject([
      { code: 'inherited by all objects', path: '', found: '"value"' },
    ]);
  });

  test.each(['memo', 'when', 'path', 'coerce'])('%s is a name that zod would take for its own', (name) => {
    for (const value of [[], () => false])
      expect(inheriting(name, value, () => refusalOf(() => reportRest(wrong())))).toMatchObject([
        { code: 'inherited by all objects', path: '', found: `"${name}"` },
      ]);
    // Whatever they inherit beside it.
    expect(inheriting('mine', 1, () => inheriting(name, [], () => refusalOf(() => reportRest(wrong()))))).toMatchObject(
      [{ code: 'inherited by all objects', path: '', found: `"mine", "${name}"` }],
    );
  });

  test.each(['valueOfAll', 'myvalueOf', 'constructors', '__protocol__'])(
    '%s is no name of the language, although one is in it',
    (name) => {
      expect(inheriting(name, 1, () => refusalOf(roundJsonSchema))).toMatchObject([{ found: `"${name}"` }]);
    },
  );
});
