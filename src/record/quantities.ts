// From a value with its unit to a quantity, by the same doors that a caller of the core uses, and back.
import { collect } from '../basis/fault.js';
import { toSI } from '../quantity/decimal.js';
import type {
  GaugePressure,
  Kind,
  PressureDifference,
  QuantityOf,
  Temperature,
  TemperatureDifference,
} from '../quantity/kind.js';
import { FORM, valueIn, type Division } from '../quantity/step.js';
import { textToSI } from '../quantity/text.js';
import { scaleOf, type PressureUnit, type TemperatureUnit } from '../quantity/unit.js';
import { isBroken, valueAt, type Part } from './problems.js';

/** A value with its unit, as JSON carries it. */
export interface Measured {
  readonly value: number | string;
  readonly unit: string;
}

/** A quantity at a path of a part; undefined if it is not there or is not sound. */
export function quantityAt<K extends Kind>(part: Part, path: string, kind: K): QuantityOf<K> | undefined {
  const json = soundAt(part, path);
  return json === undefined ? undefined : collect(part.problems, path, () => quantity(kind, json as Measured));
}

/** A gauge step at a path of a part. */
export function divisionAt(part: Part, path: string): Division<PressureUnit> | undefined {
  const json = soundAt(part, path);
  return json === undefined ? undefined : collect(part.problems, path, () => division(json as Measured));
}

/** A decimal without a unit of its own at a path of a part, as a number. */
export function numberAt(part: Part, path: string): number | undefined {
  const json = soundAt(part, path) as number | string | undefined;
  if (typeof json !== 'string') return json;
  return collect(part.problems, path, () => textToSI(json, { num: 1, den: 1, zero: 0 }, ''));
}

/** The raw value at a path of a part, if nothing is wrong there. */
export function soundAt({ raw, problems }: Part, path: string): unknown {
  return isBroken(problems, path) ? undefined : valueAt(raw, path.split('.'));
}

/** A quantity from its value and unit. */
export function quantity<K extends Kind>(kind: K, { value, unit }: Measured): QuantityOf<K> {
  const { units, of } = FORM[kind];
  const scale = scaleOf<string>(units, unit, 'unit');
  const si = typeof value === 'number' ? toSI(value, scale) : textToSI(value, scale, 'value');
  return of(si, 'value', Number(value), unit);
}

/** Whether it is a step at all is checked by the core: here, that it is a pressure. */
function division(json: Measured): Division<PressureUnit> {
  quantity('pressure difference', json);
  return { step: Number(json.value), unit: json.unit as PressureUnit };
}

/** The fields that hold something. */
export function withoutUndefined(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const kept: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(fields)) if (value !== undefined) kept[field] = value;
  return kept;
}

interface Pressure<V, B> {
  value: V;
  unit: PressureUnit;
  basis: B;
}

export function gaugeJson(pressure: GaugePressure, unit: PressureUnit): Pressure<number, 'gauge'> {
  return { value: valueIn(pressure, unit), unit, basis: 'gauge' };
}

export function markJson(value: string, unit: PressureUnit): Pressure<string, 'gauge'> {
  return { value, unit, basis: 'gauge' };
}

export function differenceJson(difference: PressureDifference, unit: PressureUnit): Pressure<number, 'difference'> {
  return { value: valueIn(difference, unit), unit, basis: 'difference' };
}

export function temperatureJson(
  temperature: Temperature,
  unit: TemperatureUnit,
): { value: number; unit: TemperatureUnit } {
  return { value: valueIn(temperature, unit), unit };
}

export function temperatureDifferenceJson(
  difference: TemperatureDifference,
  unit: TemperatureUnit,
): { value: number; unit: TemperatureUnit; basis: 'difference' } {
  return { value: valueIn(difference, unit), unit, basis: 'difference' };
}
