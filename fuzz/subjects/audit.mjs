// Audits of printed tables: such as a gas model makes them, some with a misprint, and such as no gas makes them.
import { absolute, idealNitrogen, nitrogen, standardAtmosphere, stateAt, temperature } from 'isochore';
import fc from 'fast-check';
import { fields, one, stock, value } from '../draw.mjs';
import { wrongWithProblem } from '../holds.mjs';
import { maybeTrace } from './gas.mjs';
import { a, ambient } from './quantity.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Admitted, ColumnAudit, ModelFit, TableAudit, TableAuditGiven } from 'isochore' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

/** @param {number} n @returns {Recipe} */
const bars = (n) => ({ t: 'call', f: 'gauge', of: [value(n), value('bar')] });
/** @param {number} n @returns {Recipe} */
const celsius = (n) => ({ t: 'call', f: 'temperature', of: [value(n), value('°C')] });
/** @param {readonly (readonly [string, Recipe])[]} of @returns {Recipe} */
const object = (...of) => ({ t: 'fields', of });
/** @param {readonly Recipe[]} of @returns {Recipe} */
const array = (of) => ({ t: 'list', of });

/** Gauge pressures of a gas at constant density, as a table would print them. @param {readonly number[]} temperatures @param {number} p @param {number} step @param {boolean} isIdeal */
function printedOf(temperatures, p, step, isIdeal) {
  const model = isIdeal ? idealNitrogen : nitrogen;
  const at20 = { pressure: absolute(p, 'bar'), temperature: temperature(20, '°C') };
  const { density_mol_m3 } = stateAt(model, at20);
  return temperatures.map((t) => {
    const { pressure } = stateAt(model, { temperature: temperature(t, '°C'), density_mol_m3 });
    const inBar = (pressure.pascals - standardAtmosphere.pascals) / 1e5;
    return Number((Math.round(inBar / step) * step).toFixed(1));
  });
}

/** A table of one column or of several, and the same numbers off by a few steps in one cell or in each. */
const sheet = fc
  .record({
    from: fc.integer({ min: -30, max: 10 }),
    every: fc.constantFrom(1, 5, 5, 10, 20),
    rows: fc.integer({ min: 2, max: 12 }),
    p: fc.integer({ min: 60, max: 200 }),
    step: fc.constantFrom(0.1, 0.5, 0.5, 1),
    isIdeal: fc.boolean(),
    slips: fc.array(fc.tuple(fc.nat(11), fc.integer({ min: -30, max: 30 })), { maxLength: 3 }),
    several: fc.boolean(),
  })
  .map(({ from, every, rows, p, step, isIdeal, slips, several }) => {
    const temperatures = Array.from({ length: rows }, (_, i) => from + every * i);
    /** @param {number} at */
    const pressures = (at) =>
      printedOf(temperatures, at, step, isIdeal).map((printed, row) =>
        Number(slips.reduce((sum, [r, by]) => (r === row ? sum + by * step : sum), printed).toFixed(1)),
      );
    /** @type {readonly [string, Recipe]} */
    const reference = ['referenceTemperature', celsius(temperatures[Math.floor(rows / 2)] ?? from)];
    /** @type {readonly [string, Recipe]} */
    const printedStep = ['printedStep', { t: 'call', f: 'pressureDifference', of: [value(step), value('bar')] }];
    const first = pressures(p);
    if (!several) {
      const points = first.map((bar, i) =>
        object(['pressure', bars(bar)], ['temperature', celsius(temperatures[i] ?? from)]),
      );
      return object(['rows', array(points)], reference, printedStep);
    }
    const columns = [first, pressures(p + 30)].map((own, i) =>
      object(['name', value(i === 0 ? 'A' : 'B')], ['pressures', array(own.map(bars))]),
    );
    return object(
      ['temperatures', array(temperatures.map(celsius))],
      ['columns', array(columns)],
      reference,
      printedStep,
    );
  });

/** @type {Arbitrary<Recipe>} */
const given = fields({
  models: fc.subarray(['nitrogen', 'idealNitrogen', 'cubicNitrogen'].map(stock), { minLength: 1 }).map(array),
  ambient: fc.oneof(fc.constant(stock('standardAtmosphere')), ambient),
  printedIn: fields({
    pressure: one('bar', 'bar', 'bar', 'MPa', 'psi', 'kgf/cm2'),
    temperature: one('°C', '°C', '°C', '°F', 'K'),
  }),
  temperatureStep: fc.oneof(one('exact'), a('temperatureDifference')),
  equation: one('exact', 'within its stated uncertainty'),
});

/** @param {Admitted<unknown>} admitted */
function isCrossed({ lower, best, upper }) {
  /** @param {unknown} of */
  const number = (of) => (typeof of === 'number' ? of : /** @type {{ pascals: number }} */ (of).pascals);
  const [from, at, to] = [number(lower), number(best), number(upper)];
  return !(from <= at && at <= to);
}

/** @param {ModelFit} fit @param {number} rows */
function wrongWithFit(fit, rows) {
  if (fit.outcome === 'outside the model') return wrongWithProblem(fit.problem);
  if (fit.cells.length !== rows) return 'not a residual for every cell';
  if (fit.outcome === 'no density') return undefined;
  const lines = fit.outcome === 'one cell in doubt' ? fit.candidates : [fit];
  // Zero where the printed step is coarser than the pressures: then the rounding admits vacuum.
  if (lines.some((line) => !(line.density_mol_m3.lower >= 0))) return 'a density below zero';
  if (lines.some((line) => isCrossed(line.density_mol_m3) || isCrossed(line.referencePressure)))
    return 'bounds of a line crossed';
  const wrong = fit.outcome === 'one cell in doubt' ? fit.candidates : fit.misprints;
  if (wrong.some((cell) => isCrossed(cell.shouldBe) || isCrossed(cell.printed))) return 'bounds of a cell crossed';
  if (wrong.some(({ row }) => !(row >= 0 && row < rows))) return 'a row that there is not';
  if ((fit.outcome === 'every cell') !== (wrong.length === 0)) return 'every cell fits, but for misprints';
  return undefined;
}

/** @param {ColumnAudit} column @param {number} rows @param {TableAuditGiven} about */
function wrongWithColumn({ outcome, models, fits, rowsOffTheMarks, otherReadings }, rows, about) {
  if (fits.length !== about.models.length) return 'not a fit for every model';
  const none = outcome === 'no model' || outcome === 'all cells alike';
  if (none !== (models.length === 0)) return 'an outcome against its models';
  if (outcome === 'one model' && models.length !== 1) return 'one model that is not one';
  if (outcome === 'several models' && models.length < 2) return 'several models that are not several';
  if (rowsOffTheMarks.some((row) => !(row >= 0 && row < rows))) return 'a row that there is not';
  if (otherReadings.some(({ changes, fits: own }) => changes.length === 0 || own.length === 0))
    return 'another reading that is none';
  return fits.map((fit) => wrongWithFit(fit, rows)).find((wrong) => wrong !== undefined);
}

/** @type {readonly Subject[]} */
export const AUDIT = [
  {
    name: 'auditTable',
    args: fc.tuple(sheet, given, maybeTrace),
    holds: (answer, [table, about]) => {
      const { columns, rowsWithWrongTemperature } = /** @type {TableAudit} */ (answer);
      const own = /** @type {{ rows?: readonly unknown[], temperatures?: readonly unknown[] }} */ (table);
      const rows = (own.temperatures ?? own.rows ?? []).length;
      if (columns.length === 0) return 'no column';
      if (rowsWithWrongTemperature.some((row) => !(row >= 0 && row < rows))) return 'a row that there is not';
      return columns
        .map((column) => wrongWithColumn(column, rows, /** @type {TableAuditGiven} */ (about)))
        .find((wrong) => wrong !== undefined);
    },
    weight: 0.5,
  },
];
