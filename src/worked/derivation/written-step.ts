// One step in print: in which units its formula is shown, its numbers, and where they come from.
import type { Expression } from '../formula/expression.js';
import { parsed, substituted } from '../formula/parse.js';
import { holdsFromAnyZero, holdsInAnyUnit } from '../formula/units.js';
import type { DerivedStep, NamedQuantity } from './derivation.js';
import {
  dimensionOf,
  halfInSI,
  scaleIn,
  SI_UNITS,
  type Dimension,
  type Figure,
  type Figures,
  type ReaderUnits,
} from './figures.js';

/** A quantity in the unit of its formula, and in the reader's where that is another. */
export interface WrittenQuantity {
  readonly named: NamedQuantity;
  readonly inFormula: Figure;
  /** Undefined where the formula has the reader's unit. */
  readonly forReader: Figure | undefined;
}

/** A step with its printed numbers. */
export interface WrittenStep {
  readonly step: DerivedStep;
  /** One side: the formula of the result. Two: an equation whose root it is. */
  readonly formula: readonly Expression[];
  readonly from: readonly WrittenQuantity[];
  readonly result: WrittenQuantity;
}

/** A step with its numbers printed, in the order in which a reader meets them. */
export function writtenStep(step: DerivedStep, figures: Figures): WrittenStep {
  const formula = parsed(step.relation.formula);
  const units = unitsOf(step, formula, figures.units);
  const from = step.from.map((named): WrittenQuantity => {
    const forReader = figures.given(named, figures.units);
    const inFormula = figures.given(named, units);
    return { named, inFormula, forReader: inFormula.unit === forReader.unit ? undefined : forReader };
  });
  const missed = step.from.reduce(
    (sum, named, i) => sum + missedBy(named.slope, from[i]?.inFormula, scaleIn(units, named.meaning)),
    0,
  );
  const size = Math.max(0, ...step.from.map(({ slope, value }) => Math.abs(slope * value)));
  const inFormula = figures.result(step.result, units, missed, size);
  const forReader = figures.restated(step.result, inFormula, units, figures.units);
  return {
    step,
    formula,
    from,
    result: { named: step.result, inFormula, forReader: inFormula.unit === forReader.unit ? undefined : forReader },
  };
}

function missedBy(slope: number, figure: Figure | undefined, scale: Parameters<typeof halfInSI>[1]): number {
  return figure === undefined || figure.half === 0 ? 0 : Math.abs(slope) * halfInSI(figure, scale);
}

/** The formula with numbers in place of its symbols; the root of an equation stays a symbol. */
export function withNumbers(
  { formula, from, step }: WrittenStep,
  number: (figure: Figure) => Expression,
): readonly Expression[] {
  const byName = new Map(from.map(({ named, inFormula }) => [named.symbol, number(inFormula)]));
  const root: Expression = { kind: 'symbol', name: step.relation.gives };
  return formula.map((side) => substituted(side, (name) => byName.get(name) ?? root));
}

const DIMENSIONS: readonly Dimension[] = ['pressure', 'temperature', 'volume', 'mass'];

/** The reader's units where the formula holds in them, SI units where it holds in no others. */
function unitsOf(step: DerivedStep, formula: readonly Expression[], units: ReaderUnits): ReaderUnits {
  const [only, other] = formula;
  const free = DIMENSIONS.filter((dimension) => {
    if (only === undefined || other !== undefined) return false;
    const meanings = new Map([...step.from, step.result].map(({ symbol, meaning }) => [symbol, meaning]));
    const has = (name: string): number => {
      const meaning = meanings.get(name);
      return meaning !== undefined && dimensionOf(meaning) === dimension ? 1 : 0;
    };
    if (!holdsInAnyUnit(only, has(step.result.symbol), has)) return false;
    const isPoint = (name: string): number => (meanings.get(name) === 'temperature' ? 1 : 0);
    return dimension !== 'temperature' || holdsFromAnyZero(only, isPoint(step.result.symbol), isPoint);
  });
  return {
    pressure: free.includes('pressure') ? units.pressure : SI_UNITS.pressure,
    temperature: free.includes('temperature') ? units.temperature : SI_UNITS.temperature,
    volume: free.includes('volume') ? units.volume : SI_UNITS.volume,
    mass: free.includes('mass') ? units.mass : SI_UNITS.mass,
  };
}
