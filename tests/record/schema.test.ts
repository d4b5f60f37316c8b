import { describe, expect, test } from 'vitest';
import { Ajv2020 } from 'ajv/dist/2020.js';
import {
  CAUTION_CODES,
  OUTCOMES,
  PROBLEM_CODES,
  REASONS,
  reportJsonSchema,
  RoundReportShape,
  roundJsonSchema,
  RoundShape,
} from 'isochore/record';
import { CORRUPTIONS } from '../support/corruptions.js';
import { exampleRound, jsonPath, keysOf, nodesOf, NOTHING, onePlaceOfEach, put, reportRest } from '../support/round.js'; // prettier-ignore
import { smallRound } from '../support/small-round.js';

test('the shape of a round takes the round of the examples, and changes nothing of it', () => {
  expect(RoundShape.parse(exampleRound())).toStrictEqual(exampleRound());
});

test('shape alone: what only its meaning forbids is let through', () => {
  const round = exampleRound();
  const [group] = round.groups;
  if (group !== undefined) group.specification = 'unknown';
  expect(RoundShape.safeParse(round).success).toBe(true);
  expect(reportRest(round).complete).toBe('partial');
});

describe.each([
  ['a round', roundJsonSchema, ['version', 'specifications', 'groups']],
  [
    'a report',
    reportJsonSchema,
    [
      ...['version', 'libraryVersion', 'complete', 'problemsFound', 'problems', 'cautions', 'models', 'counts'],
      ...['gasToAdd', 'instruments', 'groups', 'accumulators', 'notJudged', 'digest'],
    ],
  ],
] as const)('JSON Schema of %s', (_title, schemaOf, required) => {
  const schema: unknown = schemaOf();

  test('is an object with the fields that must be there', () => {
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      required,
      properties: { version: { const: 1 } },
      additionalProperties: false,
    });
  });

  test('takes no unknown field anywhere', () => {
    const objects = nodesOf(schema).filter(
      ({ value }) => typeof value === 'object' && value !== null && 'properties' in value && 'type' in value,
    );
    expect(objects.length).toBeGreaterThan(10);
    for (const { value } of objects) expect(value).toMatchObject({ type: 'object', additionalProperties: false });
  });

  test('is itself JSON, made anew each time', () => {
    expect(JSON.parse(JSON.stringify(schema))).toStrictEqual(schema);
    expect(schemaOf()).not.toBe(schema);
    expect(schemaOf()).toStrictEqual(schema);
  });
});

// Ajv is the widely used validator of JSON Schema. Formats are annotations in draft 2020-12: the patterns decide.
describe('Ajv, in strict mode', () => {
  const ajv = new Ajv2020({ strict: true, validateFormats: false, allowUnionTypes: true });
  const round = ajv.compile(roundJsonSchema());
  const report = ajv.compile(reportJsonSchema());

  test('takes the round of the examples and its report', () => {
    expect([round(exampleRound()), round.errors]).toEqual([true, null]);
    expect([report(reportRest(exampleRound())), report.errors]).toEqual([true, null]);
    expect(round(reportRest(exampleRound()))).toBe(false);
    expect(report(exampleRound())).toBe(false);
  });

  test.each(CORRUPTIONS.map(({ title, puts }) => [title, puts] as const))('judges as zod does: %s', (_title, puts) => {
    const json = exampleRound();
    for (const [path, value] of puts) put(json, keysOf(path), value);
    expect(round(json)).toBe(RoundShape.safeParse(json).success);
    const partial = reportRest(json);
    expect([report(partial), report.errors]).toEqual([true, null]);
  });

  test('the corruptions are of both sorts', () => {
    const fits = CORRUPTIONS.map(({ puts }) => {
      const json = exampleRound();
      for (const [path, value] of puts) put(json, keysOf(path), value);
      return round(json);
    });
    expect(fits.filter(Boolean).length).toBeGreaterThan(30);
    expect(fits.filter((fit) => !fit).length).toBeGreaterThan(60);
  });

  test('judges as zod does of a report with any one place changed or taken out', { timeout: 240_000 }, () => {
    const whole = reportRest(smallRound());
    const places = onePlaceOfEach(whole).filter(({ keys }) => keys.length > 0 && keys[0] !== 'input');
    let refused = 0;
    for (const { keys, value: was } of places) {
      for (const value of [null, 'x', -1, {}, [], ...(typeof keys.at(-1) === 'string' ? [NOTHING] : [])]) {
        put(whole, keys, value);
        const wanted = RoundReportShape.safeParse(whole).success;
        expect([jsonPath(keys), value, report(whole)]).toEqual([jsonPath(keys), value, wanted]);
        if (!wanted) refused += 1;
      }
      put(whole, keys, was);
    }
    expect(report(whole)).toBe(true);
    expect(refused).toBeGreaterThan(500);
  });

  test.each([
    [200, true],
    [201, false],
  ])('both count characters, not UTF-16 code units: %i beyond U+FFFF', (length, fits) => {
    const json = exampleRound();
    json.title = '\u{1F600}'.repeat(length);
    expect(round(json)).toBe(fits);
    expect(RoundShape.safeParse(json).success).toBe(fits);
  });
});

test('the shapes are Standard Schemas', async () => {
  for (const [shape, json] of [
    [RoundShape, exampleRound()],
    [RoundReportShape, reportRest(exampleRound())],
  ] as const) {
    const { version, vendor, validate } = shape['~standard'];
    expect([version, vendor]).toEqual([1, 'zod']);
    expect(await validate(json)).toEqual({ value: json });
    const { issues } = await validate({ ...json, version: 2 });
    expect(issues?.map(({ path }) => path)).toEqual([['version']]);
  }
});

test('the small round has every field that there is', () => {
  const has = new Set(nodesOf(smallRound()).map(({ keys }) => fieldOf(keys)));
  const fields = fieldsOf(roundJsonSchema());
  expect(fields.size).toBeGreaterThan(300);
  expect([...fields].filter((field) => !has.has(field))).toEqual([]);
});

/** A field by its names, without numbers; what is stated alike in several places counts once. */
function fieldOf(keys: readonly (string | number)[]): string {
  return keys
    .filter((key) => typeof key === 'string')
    .join('.')
    .replace(/\btoleranceAfterCharging\b/, 'tolerance')
    .replace(/\b(nominal|tolerance\.minimum|tolerance\.maximum)(?=\.)/, 'precharge');
}

/** All fields of a JSON Schema, whichever of several shapes they belong to. */
function fieldsOf(schema: unknown, keys: readonly string[] = []): Set<string> {
  if (typeof schema !== 'object' || schema === null) return new Set();
  const { anyOf, oneOf, items, properties } = schema as Readonly<Record<string, unknown>>;
  const inner = [anyOf, oneOf]
    .filter(Array.isArray)
    .flat()
    .concat(items)
    .map((one) => fieldsOf(one, keys));
  const own = Object.entries(properties ?? {}).map(([key, value]) => fieldsOf(value, [...keys, key]));
  return new Set([fieldOf(keys), ...[...inner, ...own].flatMap((set) => [...set])]);
}

describe('the codes', () => {
  test.each([
    ['outcomes', OUTCOMES],
    ['reasons', REASONS],
    ['cautions', CAUTION_CODES],
    ['problems', PROBLEM_CODES],
  ])('of %s are all different, and plain words', (_title, codes) => {
    expect(codes.length).toBeGreaterThan(6);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^[A-Za-z]+([ ,][A-Za-z ]+)*$/);
  });

  test.each([
    ['an outcome', '$.accumulators[0].asFound.outcome'],
    ['a reason', '$.accumulators[0].asFound.because[0]'],
    ['a caution', '$.cautions[0].code'],
    ['a caution of an accumulator', '$.accumulators[4].asFound.cautions[0]'],
    ['a problem', '$.problems[0].code'],
  ])('other than these are no %s of a report', (_title, path) => {
    const round = exampleRound();
    put(round, ['note'], 1);
    const report = reportRest(round);
    expect(RoundReportShape.safeParse(report).success).toBe(true);
    put(report, keysOf(path), 'another');
    expect(RoundReportShape.safeParse(report).success).toBe(false);
  });

  test('an outcome that is counted is one of them', () => {
    const report = reportRest(exampleRound());
    expect(Object.keys(report.counts).sort()).toEqual([...OUTCOMES].sort());
    expect(RoundReportShape.safeParse({ ...report, counts: { fine: 1 } }).success).toBe(false);
  });
});
