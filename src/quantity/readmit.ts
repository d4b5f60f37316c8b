import { fail, quote } from '../basis/fault.js';
import type { Kind, Quantity } from './kind.js';
import { normalVolumeOf, type NormalVolume } from './normal-volume.js';
import { FORM } from './step.js';

/**
 * A checked quantity from a copy that came through JSON, structuredClone, postMessage or a spread. It is checked as if
 * it were made anew.
 *
 * @throws {@link Fault} `wrong kind` if the copy is not one of a quantity; otherwise as the function that makes the kind
 * @example
 * ```ts
 * const copy: unknown = JSON.parse(JSON.stringify(gauge(140, 'bar')));
 * readmit(copy); // => { kind: 'gauge pressure', pascals: 14000000 }
 * ```
 */
export function readmit(copy: unknown): Quantity | NormalVolume {
  if (!isRecord(copy) || copy['kind'] !== 'normal volume') return simple(copy, 'copy');
  const { cubicMetres, at } = copy;
  if (typeof cubicMetres !== 'number' || !isRecord(at)) return notACopy(copy, 'copy');
  if (Object.keys(copy).length > 3 || Object.keys(at).length > 2) return notACopy(copy, 'copy');
  const pressure = simple(at['pressure'], 'copy.at.pressure');
  const temperature = simple(at['temperature'], 'copy.at.temperature');
  if (pressure.kind !== 'absolute pressure') return notACopy(at['pressure'], 'copy.at.pressure');
  if (temperature.kind !== 'temperature') return notACopy(at['temperature'], 'copy.at.temperature');
  return normalVolumeOf(cubicMetres, { pressure, temperature });
}

function simple(copy: unknown, path: string): Quantity {
  if (!isRecord(copy)) return notACopy(copy, path);
  const { kind, ...fields } = copy;
  if (typeof kind !== 'string' || !Object.hasOwn(FORM, kind)) return notACopy(copy, path);
  const { field, of } = FORM[kind as Kind];
  const { [field]: si, ...more } = fields;
  if (typeof si !== 'number' || Object.keys(more).length > 0) return notACopy(copy, path);
  return of(si, field);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function notACopy(copy: unknown, path: string): never {
  return fail({
    code: 'wrong kind',
    path,
    found: quote(copy),
    wanted: 'the kind and the SI value of a quantity, as JSON.stringify writes it',
    remedy: 'pass what JSON.parse, structuredClone or a spread made of a quantity, with nothing added',
  });
}
