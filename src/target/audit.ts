import { collect, under, type Problem } from '../basis/fault.js';
import { step2, type Trace } from '../basis/relation.js';
import type { GasModel } from '../gas/model.js';
import type { DensityUncertainty } from '../gas/state.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  temperatureOf,
  type GaugePressure,
  type PressureDifference,
  type Temperature,
} from '../quantity/kind.js';
import { roundTo, valueIn } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { admitted, type Column, type PrintedTable, type TableAuditGiven } from './audit/admit.js';
import {
  admittedIn,
  agreementBy,
  fitOf,
  printedAt,
  RESIDUAL,
  temperatureFor,
  type Fit,
  type Three,
} from './audit/fit.js';
import { middleOf, type Interval } from './audit/overlap.js';
import {
  isOnMark,
  numbersOf,
  otherReadings,
  sheetOf,
  type Numbers,
  type ReadAs,
  type ReadOtherwise,
  type Sheet,
} from './audit/sheet.js';
import type { MakersTable } from './table.js';

/** What the rounding admits of a quantity: nothing below `lower` or above `upper`; `best` is in between. */
export interface Admitted<Q> {
  readonly lower: Q;
  readonly best: Q;
  readonly upper: Q;
}

/** How a printed pressure lies to a model. */
export interface CellResidual {
  /** Index of the row, from 0. */
  readonly row: number;
  readonly temperature: Temperature;
  readonly stated: GaugePressure;
  /** The pressure by the model, not rounded. */
  readonly byModel: GaugePressure;
  /** Stated less by the model. */
  readonly residual: PressureDifference;
  /** The same in printed steps: within ± 0.5 in a cell that was only rounded. */
  readonly steps: number;
  /** Relative uncertainty of density that was allowed for in this cell; 'not counted' where the equation is exact. */
  readonly densityUncertainty: DensityUncertainty | 'not counted';
}

/** A cell that does not fit while all others do, and what it would have to be. */
export interface WrongCell {
  /** Index of the row, from 0. */
  readonly row: number;
  readonly temperature: Temperature;
  readonly stated: GaugePressure;
  /** Stated less the best pressure for this cell, in printed steps. */
  readonly steps: number;
  /** The pressure that the other cells ask for. */
  readonly shouldBe: Admitted<GaugePressure>;
  /** The same as the table would print it: the three are alike where the other cells leave no choice. */
  readonly printed: Admitted<GaugePressure>;
  /** The temperature at which the stated pressure would be right; 'none' if the model has none. */
  readonly rightAt: Temperature | 'none';
}

/** Density and pressure of a line of constant density, as far as the rounding tells them. */
export interface LineFound {
  /** Molar density of the gas, mol/m3. */
  readonly density_mol_m3: Admitted<number>;
  /** Gauge pressure at the reference temperature of the table, in its ambient. */
  readonly referencePressure: Admitted<GaugePressure>;
}

/** One density of the model rounds to every cell, or to all but those that are probably misprints. */
export interface Fits extends LineFound {
  readonly model: string;
  readonly outcome: 'every cell' | 'all but misprints';
  readonly cells: readonly CellResidual[];
  /** None for 'every cell'. */
  readonly misprints: readonly WrongCell[];
}

/** One cell does not fit, and it cannot be said which, or whether it is a slip at all. */
export interface InDoubt {
  readonly model: string;
  readonly outcome: 'one cell in doubt';
  /** Residuals from the density nearest to all cells, whose largest residual is smallest. */
  readonly cells: readonly CellResidual[];
  /** Every cell without which the others fit, with the line of those others. */
  readonly candidates: readonly (WrongCell & LineFound)[];
}

/** No density of the model rounds to the table: it was made otherwise. */
export interface FitsNot {
  readonly model: string;
  readonly outcome: 'no density';
  /** Residuals from the density nearest to all cells, whose largest residual is smallest. */
  readonly cells: readonly CellResidual[];
}

/** The table leaves the model, which says nothing there: often a sign of another unit. */
export interface FitsNowhere {
  readonly model: string;
  readonly outcome: 'outside the model';
  readonly problem: Problem;
}

/** How one gas model fits a column. */
export type ModelFit = Fits | InDoubt | FitsNot | FitsNowhere;

/** Another way to read a column, under which it would fit. It is a question to the maker, never a correction. */
export interface OtherReading extends ReadAs {
  /** What of this is other than stated. */
  readonly changes: readonly ReadOtherwise[];
  /** The models that fit then, and the pre-charge that the table would mean. */
  readonly fits: readonly (LineFound &
    Pick<Fits, 'model' | 'outcome'> & { readonly misprintRows: readonly number[] })[];
}

/** What the audit says of one column. */
export interface ColumnAudit {
  /** The name of the column; none for a table of one. */
  readonly name?: string;
  /**
   * - 'one model': it fits, and none of the others does as well
   * - 'several models': they fit alike; the rounding does not tell them apart
   * - 'one cell in doubt': some model would fit but for one cell
   * - 'no model': the table was made otherwise, or is read otherwise than it is meant, or a gross misprint hides a small
   *   one: then the other `equation` may find it, or the audit of the rows without the one that stands alone on one side of `cells`
   * - 'all cells alike': one pressure for all temperatures, and no model has that
   */
  readonly outcome: 'one model' | 'several models' | 'one cell in doubt' | 'no model' | 'all cells alike';
  /** The ids of the models that the outcome speaks of. */
  readonly models: readonly string[];
  /** How each model fits, best first. */
  readonly fits: readonly ModelFit[];
  /** Rows whose pressure is no multiple of the printed step: then the step is not the one stated. */
  readonly rowsOffTheMarks: readonly number[];
  /** Where no model fits as stated: the readings under which one would, those with the fewest changes. */
  readonly otherReadings: readonly OtherReading[];
}

/** An audit of a maker's table, column by column. */
export interface TableAudit {
  readonly columns: readonly ColumnAudit[];
  /** Rows that are misprinted in every one of several columns: there the temperature is wrong rather than the pressures. */
  readonly rowsWithWrongTemperature: readonly number[];
}

/**
 * Audits a maker's table: is it gas at constant density, by which of the models, at what density, and which cells are not.
 *
 * Each printed pressure stands for all that round to it, to the nearest step, and admits an interval of density at its
 * temperature. A model fits if all these intervals have a density in common; that is exact, there is no threshold in it.
 * The interval in common is all that the table tells of the density and of the pre-charge at the reference temperature.
 *
 * A cell that has nothing in common with the others is named as a misprint if it stands out: from six rows on, one cell for
 * every four rows beyond two, each off by more than one and a quarter steps, and by more beyond the end of the other rows.
 * Short of that, from three rows on, every cell is listed without which the others fit. Beyond that no model fits, and the
 * numbers of the table are tried in other units, in the other basis and to coarser steps. A table that was
 * rounded down instead of to nearest may show one cell in doubt, or fit no model.
 *
 * @throws {@link Fault} with every problem found: `too few rows to audit` for fewer than two; `too long` for more
 * than a thousand rows or columns; `wrong kind`, `too short` (no model, no column), `duplicate name` (a model or a column
 * twice), `cells left out`, `reference outside the table`, `below vacuum`, `not positive` (the
 * printed step, a step of temperatures), `step too fine`, `not an ambient pressure`, `unknown unit`, `unknown word`
 * @example
 * ```ts
 * const pressures = [121, 127.5, 133.5, 140, 164, 152.5, 159]; // one of them is misprinted
 * const table = {
 *   rows: pressures.map((bar, i) => ({ pressure: gauge(bar, 'bar'), temperature: temperature(10 * i - 10, '°C') })),
 *   referenceTemperature: temperature(20, '°C'),
 *   printedStep: pressureDifference(0.5, 'bar'),
 * };
 * const { columns } = auditTable(table, {
 *   models: [nitrogen, idealNitrogen],
 *   ambient: standardAtmosphere,
 *   printedIn: { pressure: 'bar', temperature: '°C' },
 *   temperatureStep: 'exact',
 *   equation: 'exact',
 * });
 * const [column] = columns;
 * column?.outcome; // => 'one model'
 * column?.models; // => ['nitrogen-span-2000']
 * const [fit] = column?.fits ?? [];
 * const wrong = fit?.outcome === 'all but misprints' ? fit.misprints : [];
 * wrong.map(({ row, printed }) => [row, write(printed.best, { step: 0.5, unit: 'bar' })]); // => [[4, '146.5 bar gauge']]
 * ```
 */
export function auditTable(table: PrintedTable, given: TableAuditGiven, trace?: Trace): TableAudit {
  const own = admitted(table, given);
  const audits = own.columns.map((column) => auditColumn(column, own.table, own.given, trace));
  return { columns: audits, rowsWithWrongTemperature: wrongInAll(audits) };
}

type Stated = Pick<MakersTable, 'referenceTemperature' | 'printedStep'>;

function auditColumn(column: Column, stated: Stated, given: TableAuditGiven, trace?: Trace): ColumnAudit {
  const { printedIn, temperatureStep, ambient } = given;
  const step = valueIn(stated.printedStep, printedIn.pressure);
  const step_K = temperatureStep === 'exact' ? 0 : valueIn(temperatureStep, printedIn.temperature);
  const numbers = numbersOf(column, stated.referenceTemperature, printedIn, step, step_K);
  const as: ReadAs = {
    pressureUnit: printedIn.pressure,
    basis: 'gauge',
    temperatureUnit: printedIn.temperature,
    printedStep: stated.printedStep,
  };
  const rowsOffTheMarks = under('printedStep', () =>
    numbers.pressures.flatMap((number, i) => (isOnMark(number, step) ? [] : [i])),
  );
  const sheet = sheetOf(numbers, as, ambient.pascals);
  const fits = given.models
    .map((model) => modelFit(model, column, sheet, step, given, trace))
    .sort((a, b) => rankOf(a) - rankOf(b));
  const best = Math.min(...fits.map(rankOf));
  const models = fits.filter((fit) => rankOf(fit) === best && best < NO_FIT).map(({ model }) => model);
  const alike = best > 0 && numbers.pressures.every((number, _, all) => number === all.at(0));
  return {
    ...(column.name === undefined ? {} : { name: column.name }),
    outcome: alike ? 'all cells alike' : outcomeOf(best, models.length),
    models: alike ? [] : models,
    fits,
    rowsOffTheMarks,
    otherReadings: alike || best < DOUBT ? [] : readingsThatFit(numbers, as, given),
  };
}

// Ranks of fits, best first; between 1 and 2 the one with fewer misprints.
const DOUBT = 2;
const NO_FIT = 3;

function rankOf(fit: ModelFit): number {
  switch (fit.outcome) {
    case 'every cell':
      return 0;
    case 'all but misprints':
      return DOUBT - 1 / fit.misprints.length;
    case 'one cell in doubt':
      return DOUBT;
    case 'no density':
      return NO_FIT;
    case 'outside the model':
      return NO_FIT + 1;
  }
}

function outcomeOf(rank: number, models: number): ColumnAudit['outcome'] {
  if (rank >= NO_FIT) return 'no model';
  if (rank === DOUBT) return 'one cell in doubt';
  return models === 1 ? 'one model' : 'several models';
}

function modelFit(
  model: GasModel,
  column: Column,
  sheet: Sheet,
  step: number,
  given: TableAuditGiven,
  trace?: Trace,
): ModelFit {
  const problems: Problem[] = [];
  const found = collect(problems, '', () => {
    const about = column.name === undefined ? model.id : `${column.name}, ${model.id}`;
    const fit = fitOf(model, sheet, given.equation, about, trace);
    return inQuantities(model, column, sheet, { step, unit: given.printedIn.pressure }, fit, about, trace);
  });
  const [problem] = problems;
  if (problem !== undefined) return { model: model.id, outcome: 'outside the model', problem };
  return found as ModelFit;
}

interface PressureStep {
  readonly step: number;
  readonly unit: PressureUnit;
}

function inQuantities(
  model: GasModel,
  column: Column,
  sheet: Sheet,
  printed: PressureStep,
  fit: Fit,
  about: string,
  trace?: Trace,
): ModelFit {
  const cells = column.pressures.map((stated, row): CellResidual => {
    const temperature = column.temperatures[row] as Temperature;
    const byModel_Pa = fit.byModel_Pa[row] ?? Number.NaN;
    const residual = step2(trace, RESIDUAL, `${about}, row ${row}`, stated.pascals, byModel_Pa);
    return {
      row,
      temperature,
      stated,
      byModel: gaugeOf(byModel_Pa),
      residual: pressureDifferenceOf(residual),
      steps: residual / sheet.step_Pa,
      densityUncertainty: fit.uncertainties[row] ?? 'not counted',
    };
  });
  const wrongIn = (overlap: Interval & { readonly without: readonly number[] }): WrongCell[] =>
    overlap.without.flatMap((row) => {
      const cell = cells[row];
      return cell === undefined ? [] : [wrongCell(model, cell, sheet, printed, threeOf(overlap), about)];
    });
  const { agreement } = fit;
  switch (agreement.by) {
    case 'every cell':
    case 'all but misprints': {
      const misprints = wrongIn(agreement.overlap);
      return {
        model: model.id,
        outcome: agreement.by,
        ...lineFound(model, sheet, agreement.overlap, about, trace),
        cells,
        misprints,
      };
    }
    case 'one cell in doubt': {
      const candidates = agreement.overlaps.flatMap((overlap) =>
        wrongIn(overlap).map((cell) => ({ ...cell, ...lineFound(model, sheet, overlap, about, trace) })),
      );
      candidates.sort((a, b) => a.row - b.row);
      return { model: model.id, outcome: agreement.by, cells, candidates };
    }
    case 'no density':
      return { model: model.id, outcome: agreement.by, cells };
  }
}

function wrongCell(
  model: GasModel,
  { row, temperature, stated }: CellResidual,
  sheet: Sheet,
  { step, unit }: PressureStep,
  density: Three,
  about: string,
): WrongCell {
  const shouldBe = eachOf(admittedIn(model, sheet, row, density, about), gaugeOf);
  const { lower, best, upper } = shouldBe;
  const onMark = (pressure: GaugePressure): GaugePressure => roundTo(pressure, { step, unit, toward: 'nearest even' });
  const rightAt = temperatureFor(model, sheet, row, density.best, about);
  return {
    row,
    temperature,
    stated,
    steps: (stated.pascals - best.pascals) / sheet.step_Pa,
    shouldBe,
    printed: { lower: onMark(lower), best: onMark(best), upper: onMark(upper) },
    rightAt: rightAt === undefined ? 'none' : temperatureOf(rightAt),
  };
}

function threeOf(interval: Interval): Three {
  const { lower, upper } = interval;
  return { lower, best: middleOf(interval), upper };
}

function eachOf<Q>({ lower, best, upper }: Three, of: (si: number) => Q): Admitted<Q> {
  return { lower: of(lower), best: of(best), upper: of(upper) };
}

function lineFound(model: GasModel, sheet: Sheet, interval: Interval, about: string, trace?: Trace): LineFound {
  const density_mol_m3 = threeOf(interval);
  const at = (rho: number): GaugePressure =>
    gaugeOf(
      printedAt(model, { ...sheet, zero_Pa: sheet.ambient_Pa }, sheet.reference_K, rho, `${about}, reference`, trace),
    );
  return { density_mol_m3, referencePressure: eachOf(density_mol_m3, at) };
}

/** The readings other than the stated one under which some model fits: those of the fewest changes, cleanest first. */
function readingsThatFit(numbers: Numbers, stated: ReadAs, given: TableAuditGiven): OtherReading[] {
  const found: OtherReading[] = [];
  for (const { as, changes } of otherReadings(numbers, stated)) {
    const fewest = found.at(0)?.changes.length;
    if (fewest !== undefined && changes.length > fewest) break;
    const fits = given.models.flatMap((model): OtherReading['fits'][number][] => {
      // A reading that leaves a model is none of its tables.
      const fit = collect([], '', () => {
        const sheet = sheetOf(numbers, as, given.ambient.pascals);
        const agreement = agreementBy(model, sheet, given.equation, model.id);
        if (agreement.by !== 'every cell' && agreement.by !== 'all but misprints') return undefined;
        const line = lineFound(model, sheet, agreement.overlap, model.id);
        return { model: model.id, outcome: agreement.by, ...line, misprintRows: agreement.overlap.without };
      });
      return fit === undefined ? [] : [fit];
    });
    if (fits.length > 0) found.push({ ...as, changes, fits });
  }
  const clean = found.filter(({ fits }) => fits.some(({ outcome }) => outcome === 'every cell'));
  return clean.length > 0 ? clean : found;
}

/** Rows that are misprints in every column of several, by the model that fits it best. */
function wrongInAll(audits: readonly ColumnAudit[]): number[] {
  if (audits.length < 2) return [];
  const rows = audits.map(({ fits: [best] }) =>
    best?.outcome === 'all but misprints' ? best.misprints.map(({ row }) => row) : [],
  );
  return (rows.at(0) ?? []).filter((row) => rows.every((others) => others.includes(row)));
}
