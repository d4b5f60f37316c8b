import {
  absolute,
  amount,
  gauge,
  mass,
  pressureDifference,
  temperature,
  temperatureDifference,
  volume,
  type Kind,
  type Quantity,
} from 'isochore';
import { DEFINITIONS } from './definitions.js';

type Make = (value: number, unit: string) => Quantity;

/** A kind as the public functions show it. */
export interface KindCase {
  readonly kind: Kind;
  readonly make: Make;
  /** The word after the unit in a text. */
  readonly word: string;
  readonly signed: boolean;
  readonly unit: string;
}

const kindCase = (kind: Kind, make: unknown, unit: string, word: string, signed: boolean): KindCase => ({
  kind,
  make: make as Make,
  unit,
  word,
  signed,
});

/** Every kind, in one of its units. */
export const KINDS: readonly KindCase[] = [
  kindCase('gauge pressure', gauge, 'bar', 'gauge', true),
  kindCase('absolute pressure', absolute, 'hPa', 'absolute', false),
  kindCase('pressure difference', pressureDifference, 'psi', 'difference', true),
  kindCase('temperature', temperature, '°C', '', false),
  kindCase('temperature difference', temperatureDifference, '°F', 'difference', true),
  kindCase('volume', volume, 'L', '', false),
  kindCase('amount of substance', amount, 'mol', '', false),
  kindCase('mass', mass, 'kg', '', false),
];

/** Every kind, in every unit that its definitions name. */
export const KIND_UNITS: readonly KindCase[] = KINDS.flatMap((each) =>
  Object.keys(DEFINITIONS[each.kind]).map((unit) => ({ ...each, unit })),
);

/** A quantity's one number. */
export function siOf(quantity: Quantity): number {
  if ('pascals' in quantity) return quantity.pascals;
  if ('kelvins' in quantity) return quantity.kelvins;
  if ('cubicMetres' in quantity) return quantity.cubicMetres;
  return 'moles' in quantity ? quantity.moles : quantity.kilograms;
}

/** Value, unit and basis as one text. */
export const spelled = (value: number | string, unit: string, word: string): string =>
  word === '' ? `${value} ${unit}` : `${value} ${unit} ${word}`;
