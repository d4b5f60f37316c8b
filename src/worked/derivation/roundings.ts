// What a result holds that was rounded for people: marks of a gauge, and what is written of an amount of gas.
import { has } from '../../basis/has.js';
import type { Band } from '../../verdict/band.js';
import type { GasQuantity, Stop } from '../../charge/charge.js';
import type { AdjustmentTable } from '../../verdict/adjustment.js';
import { gauge } from '../../quantity/pressure.js';
import type { RoundedOf, RoundedQuantity } from './derivation.js';
import { unitOf, type Meaning } from './symbol.js';

const DEEPEST = 12;
/** A table has up to a thousand rows of three. */
const MOST = 10_000;

/** Every rounding in a result, in its order. */
export function roundingsIn(result: unknown): RoundedQuantity[] {
  const found: RoundedQuantity[] = [];
  let left = MOST;
  const walk = (value: unknown, depth: number): void => {
    left -= 1;
    if (typeof value !== 'object' || value === null || depth > DEEPEST || left < 0) return;
    if (isTable(value)) found.push(...ofTable(value));
    else if (isBand(value)) found.push(...ofBand(value));
    else if (isStop(value)) found.push(...ofStop(value));
    else if (isGasQuantity(value)) found.push(...ofGas(value));
    else for (const inner of Object.values(value)) walk(inner, depth + 1);
  };
  walk(result, 0);
  return found;
}

const hasAll = (value: object, ...fields: readonly string[]): boolean => fields.every((field) => has(value, field));
const isBand = (value: object): value is Band => hasAll(value, 'lower', 'upper', 'onGauge');
const isStop = (value: object): value is Stop => hasAll(value, 'pressure', 'mark');
const isGasQuantity = (value: object): value is GasQuantity => hasAll(value, 'mass', 'normalVolume', 'rounded');
const isTable = (value: object): value is AdjustmentTable => hasAll(value, 'rows', 'pressureUnit', 'temperatureUnit');

function rounded(
  of: RoundedOf,
  symbol: string,
  value: number,
  meaning: Meaning,
  toward: RoundedQuantity['toward'],
  written: string,
): RoundedQuantity {
  return { of, symbol, value, unit: unitOf(meaning), meaning, toward, written };
}

function ofBand({ lower, upper, onGauge }: Band): RoundedQuantity[] {
  if (typeof onGauge !== 'object') return [];
  const unit = `${onGauge.unit} gauge`;
  return [
    rounded('lower limit', 'p_lower', lower.pascals, 'gauge pressure', 'up', `${onGauge.lower} ${unit}`),
    rounded('upper limit', 'p_upper', upper.pascals, 'gauge pressure', 'down', `${onGauge.upper} ${unit}`),
  ];
}

function ofStop({ pressure, mark }: Stop): RoundedQuantity[] {
  if (typeof mark !== 'object') return [];
  const written = `${mark.value} ${mark.unit} gauge`;
  // Down, but for a vent that would end below the lower limit.
  const toward = gauge(Number(mark.value), mark.unit).pascals > pressure.pascals ? 'up' : 'down';
  return [rounded('stop', 'p_stop', pressure.pascals, 'gauge pressure', toward, written)];
}

function ofGas({ mass, normalVolume, rounded: texts }: GasQuantity): RoundedQuantity[] {
  // To add is rounded up and to vent down: the text says which.
  const toward = Number.parseFloat(texts.mass) >= mass.kilograms ? 'up' : 'down';
  return [
    rounded('mass', 'm', mass.kilograms, 'mass', toward, texts.mass),
    rounded('normal volume', 'V_n', normalVolume.cubicMetres, 'volume', toward, texts.normalVolume),
  ];
}

function ofTable({ rows, pressureUnit }: AdjustmentTable): RoundedQuantity[] {
  return rows.flatMap(({ target, band, written }) => [
    rounded(
      'target',
      'p_target',
      target.pascals,
      'gauge pressure',
      'nearest even',
      `${written.target} ${pressureUnit} gauge`,
    ),
    ...ofBand(band),
  ]);
}
