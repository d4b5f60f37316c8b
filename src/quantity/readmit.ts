import { fail, quote } from '../basis/fault.js';
import { notACopy } from '../basis/problem.js';
import type { Kind, Quantity } from './kind.js';
import { normalVolumeOf, type NormalVolume } from './normal-volume.js';
import { FORM } from './step.js';

/**
 * A checked quantity from a copy that came through JSON, structuredClone, postMessage or a spread. It is checked as if
 * it were made anew.
 *
 * @throws {@link Fault} `not a copy of a quantity`; otherwise as the function that makes the kind
 * @example
 * ```ts
 * const copy: unknown = JSON.parse(JSON.stringify(gauge(140, 'bar')));
 * readmit(copy); // => { kind: 'gauge pressure', pascals: 14000000 }
 * ```
 */
export function readmit(copy: unknown): Quantity | NormalVolume {
  if (!isRecord(copy)) return refuse(copy, 'copy');
  const own = { ...copy }; // read once: what is checked is what is used
  if (own['kind'] !== 'normal volume') return simple(own, 'copy');
  const { cubicMetres } = own;
  const at = isRecord(own['at']) ? { ...own['at'] } : undefined;
  if (typeof cubicMetres !== 'number' || at === undefined) return refuse(copy, 'copy');
  if (Object.keys(own).length > 3 || Object.keys(at).length > 2) return refuse(copy, 'copy');
  const pressure = simple(at['pressure'], 'copy.at.pressure');
  const temperature = simple(at['temperature'], 'copy.at.temperature');
  if (pressure.kind !== 'absolute pressure') return refuse(at['pressure'], 'copy.at.pressure');
  if (temperature.kind !== 'temperature') return refuse(at['temperature'], 'copy.at.temperature');
  return normalVolumeOf(cubicMetres, { pressure, temperature });
}

function simple(copy: unknown, path: string): Quantity {
  if (!isRecord(copy)) return refuse(copy, path);
  const { kind, ...fields } = copy;
  if (typeof kind !== 'string' || !Object.hasOwn(FORM, kind)) return refuse(copy, path);
  const { field, of } = FORM[kind as Kind];
  const { [field]: si, ...more } = fields;
  if (typeof si !== 'number' || Object.keys(more).length > 0) return refuse(copy, path);
  return of(si, field);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function refuse(copy: unknown, path: string): never {
  return fail(notACopy, path, quote(copy));
}
