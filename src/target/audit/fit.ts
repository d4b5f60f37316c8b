import { relation, step2, type Trace } from '../../basis/relation.js';
import { densityAt, pvtAt, temperatureAt } from '../../gas/door.js';
import type { GasModel } from '../../gas/model.js';
import { densityUncertainty, type DensityUncertainty } from '../../gas/state.js';
import { TO_ABSOLUTE, TO_GAUGE } from '../../quantity/pressure.js';
import { agreementOf, middleOf, type Agreement, type Interval } from './overlap.js';
import type { Sheet } from './sheet.js';

// A gas model against a column: at constant density every cell of a table follows from one number. A printed cell stands
// for all pressures that round to it; at its temperature pressure increases with density, so it admits an interval of
// density, whose ends are the densities at the ends of the rounding.

export const ROUNDS_FROM = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_stated', 'dp_step'],
  formula: 'p_stated - dp_step / 2',
  source: 'the least pressure that rounds to a printed one, by definition of rounding to nearest',
  of: (p_stated, dp_step) => p_stated - dp_step / 2,
});

export const ROUNDS_TO = /* @__PURE__ */ relation({
  gives: 'p_g',
  unit: 'Pa',
  from: ['p_stated', 'dp_step'],
  formula: 'p_stated + dp_step / 2',
  source: 'the greatest pressure that rounds to a printed one, by definition of rounding to nearest',
  of: (p_stated, dp_step) => p_stated + dp_step / 2,
});

export const LEAST_DENSITY = /* @__PURE__ */ relation({
  gives: 'rho_low',
  unit: 'mol/m3',
  from: ['rho', 'u_rho'],
  formula: 'rho * (1 - u_rho)',
  source: 'relative uncertainty of density, as the source of the gas model states it',
  of: (rho, u_rho) => rho * (1 - u_rho),
});

export const GREATEST_DENSITY = /* @__PURE__ */ relation({
  gives: 'rho_high',
  unit: 'mol/m3',
  from: ['rho', 'u_rho'],
  formula: 'rho * (1 + u_rho)',
  source: 'relative uncertainty of density, as the source of the gas model states it',
  of: (rho, u_rho) => rho * (1 + u_rho),
});

export const RESIDUAL = /* @__PURE__ */ relation({
  gives: 'dp_off',
  unit: 'Pa',
  from: ['p_stated', 'p_g'],
  formula: 'p_stated - p_g',
  source: 'residual of a printed pressure, by definition',
  of: (p_stated, p_g) => p_stated - p_g,
});

/** Whether the equation of a model is taken as it stands, or with the uncertainty of density that its source states. */
export type Equation = 'exact' | 'within its stated uncertainty';

/** Numbers of one kind: the least and the greatest that the rounding admits, and the best between them. */
export interface Three extends Interval {
  readonly best: number;
}

/** A model against a sheet. */
export interface Fit {
  readonly agreement: Agreement;
  /** For each cell; 'not counted' where the equation is taken as exact. */
  readonly uncertainties: readonly (DensityUncertainty | 'not counted')[];
  /** Density to which the residuals refer: the best, or the one nearest to all cells where not all agree on one. */
  readonly rho_mol_m3: number;
  /** Printed pressure of each cell by the model at that density. */
  readonly byModel_Pa: readonly number[];
}

/** Beyond the last place: solving must not part two intervals that meet. */
const LAST_PLACES = 1e-12;

/** Holds a model against a sheet. Throws a fault where the sheet leaves the model. */
export function fitOf(model: GasModel, sheet: Sheet, equation: Equation, about: string, trace?: Trace): Fit {
  const agreement = agreementBy(model, sheet, equation, about, trace);
  const uncertainties = sheet.T_K.map((_, i) => uncertaintyAt(model, sheet, i, equation));
  const settled = agreement.by === 'every cell' || agreement.by === 'all but misprints';
  const rho_mol_m3 = settled ? middleOf(agreement.overlap) : nearestDensity(model, sheet);
  const byModel_Pa = sheet.T_K.map((T, i) => printedAt(model, sheet, T, rho_mol_m3, `${about}, row ${i}`, trace));
  return { agreement, uncertainties, rho_mol_m3, byModel_Pa };
}

/** How the cells of a sheet agree on a density of a model. */
export function agreementBy(
  model: GasModel,
  sheet: Sheet,
  equation: Equation,
  about: string,
  trace?: Trace,
): Agreement {
  const intervals = sheet.T_K.map((_, i) => intervalOf(model, sheet, i, equation, `${about}, row ${i}`, trace));
  return agreementOf(intervals, sheet.T_K);
}

function uncertaintyAt(
  model: GasModel,
  sheet: Sheet,
  i: number,
  equation: Equation,
): DensityUncertainty | 'not counted' {
  if (equation === 'exact') return 'not counted';
  return densityUncertainty(model, sheet.T_K[i] ?? Number.NaN, (sheet.p_Pa[i] ?? Number.NaN) + sheet.zero_Pa);
}

/** The densities that a cell admits. */
function intervalOf(
  model: GasModel,
  sheet: Sheet,
  i: number,
  equation: Equation,
  about: string,
  trace?: Trace,
): Interval {
  const [T, p] = [sheet.T_K[i] ?? Number.NaN, sheet.p_Pa[i] ?? Number.NaN];
  const density = (T_K: number, p_printed: number): number => {
    const p_abs = step2(trace, TO_ABSOLUTE, about, p_printed, sheet.zero_Pa);
    // The last pressures that round to a cell near vacuum may lie below it, where there is no gas.
    return p_abs <= 0 ? 0 : densityAt(model, T_K, p_abs, `rows[${i}]`, about, trace);
  };
  // Where the temperatures are rounded as well, the hottest that rounds to this one needs the least density.
  let lower = density(T + 0.5 * sheet.step_K, step2(trace, ROUNDS_FROM, about, p, sheet.step_Pa));
  let upper = density(T - 0.5 * sheet.step_K, step2(trace, ROUNDS_TO, about, p, sheet.step_Pa));
  const uncertainty = uncertaintyAt(model, sheet, i, equation);
  if (typeof uncertainty === 'number') {
    lower = step2(trace, LEAST_DENSITY, about, lower, uncertainty);
    upper = step2(trace, GREATEST_DENSITY, about, upper, uncertainty);
  }
  return { lower: lower * (1 - LAST_PLACES), upper: upper * (1 + LAST_PLACES) };
}

/** What a sheet would print, unrounded, at a temperature and a density. */
export function printedAt(
  model: GasModel,
  sheet: Sheet,
  T_K: number,
  rho: number,
  about: string,
  trace?: Trace,
): number {
  const { p_Pa } = pvtAt(model, T_K, rho, 'rows', about, trace);
  return step2(trace, TO_GAUGE, about, p_Pa, sheet.zero_Pa);
}

/** The printed pressures that an interval of density admits in a cell. */
export function admittedIn(model: GasModel, sheet: Sheet, i: number, density: Three, about: string): Three {
  const T = sheet.T_K[i] ?? Number.NaN;
  const at = (T_K: number, rho: number): number => printedAt(model, sheet, T_K, rho, about);
  return {
    lower: at(T - 0.5 * sheet.step_K, density.lower),
    best: at(T, density.best),
    upper: at(T + 0.5 * sheet.step_K, density.upper),
  };
}

/** The temperature at which a density has the printed pressure of a cell; undefined if the model has none. */
export function temperatureFor(
  model: GasModel,
  sheet: Sheet,
  i: number,
  rho: number,
  about: string,
): number | undefined {
  return temperatureAt(model, rho, (sheet.p_Pa[i] ?? Number.NaN) + sheet.zero_Pa, about);
}

/** The density whose largest residual is smallest: there the largest one up and the largest one down are equal. */
function nearestDensity(model: GasModel, sheet: Sheet): number {
  const own = sheet.T_K.map((T, i) => densityAt(model, T, (sheet.p_Pa[i] ?? 0) + sheet.zero_Pa, `rows[${i}]`, ''));
  let [low, high] = [Math.min(...own), Math.max(...own)];
  for (;;) {
    const rho = 0.5 * (low + high);
    if (rho === low || rho === high || high - low <= 1e-9 * high) return rho;
    const residuals = sheet.T_K.map((T, i) => (sheet.p_Pa[i] ?? 0) - printedAt(model, sheet, T, rho, ''));
    if (Math.max(...residuals) > -Math.min(...residuals)) low = rho;
    else high = rho;
  }
}
