import * as z from 'zod/mini';
import { needNothingInherited } from './issues.js';
import { RoundReportShape } from './report-shape.js';
import { RoundShape } from './shape.js';

/**
 * The shape of a round as JSON Schema (draft 2020-12), made anew by each call, for software that does not speak zod.
 *
 * It takes what {@link RoundShape} takes: shape alone, not meaning. Its formats are annotations; the patterns decide.
 *
 * @throws {@link Fault} `inherited by all objects` while there is anything on `Object.prototype` that is not the language's
 * @example
 * ```ts
 * roundJsonSchema()['$schema']; // => 'https://json-schema.org/draft/2020-12/schema'
 * ```
 */
export function roundJsonSchema(): Record<string, unknown> {
  needNothingInherited();
  return { ...z.toJSONSchema(RoundShape) };
}

/**
 * The shape of a report as JSON Schema (draft 2020-12), as {@link roundJsonSchema}.
 *
 * @throws {@link Fault} `inherited by all objects` while there is anything on `Object.prototype` that is not the language's
 * @example
 * ```ts
 * reportJsonSchema()['additionalProperties']; // => false
 * ```
 */
export function reportJsonSchema(): Record<string, unknown> {
  needNothingInherited();
  return { ...z.toJSONSchema(RoundReportShape) };
}
