import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { RoundReportShape, RoundShape } from 'isochore/record';
import { exampleRound, nodesOf, reportRest } from '../support/round.js';

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
  ['a round', RoundShape, ['version', 'specifications', 'groups']],
  [
    'a report',
    RoundReportShape,
    [
      'version',
      'complete',
      'problemsFound',
      'problems',
      'cautions',
      'models',
      'counts',
      'gasToAdd',
      'accumulators',
      'notJudged',
    ],
  ],
] as const)('JSON Schema of %s', (_title, shape, required) => {
  // Throws for what JSON Schema cannot express: transforms, custom checks, undefined.
  const schema: unknown = z.toJSONSchema(shape);

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

  test('is itself JSON', () => {
    expect(JSON.parse(JSON.stringify(schema))).toStrictEqual(JSON.parse(JSON.stringify(z.toJSONSchema(shape))));
    expect(nodesOf(schema).filter(({ value }) => value === undefined)).toEqual([]);
  });
});
