import fc from 'fast-check';
import {
  absolute,
  cubicNitrogen,
  gauge,
  idealNitrogen,
  isFault,
  nitrogen,
  pressureDifference,
  standardAtmosphere,
  temperature,
  valueIn,
  type Step,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { auditTable } from '../../src/target/audit.js';
import { admitted, type PrintedTable, type TableAuditGiven } from '../../src/target/audit/admit.js';
import { gasModel } from '../../src/gas/model.js';
import { agreementBy } from '../../src/target/audit/fit.js';
import { agreementOf, mostMisprints, ROWS_TO_NAME } from '../../src/target/audit/overlap.js';
import { problemOf } from '../support/problem.js';
import { numberRows } from '../support/reference.js';
import { span2000 } from '../support/span2000.js';
import {
  AMBIENT_bar,
  GIVEN,
  auditOf,
  byIdeal,
  byNitrogen,
  drawnBy,
  evenNumbers,
  fitBy,
  kelvin,
  layout,
  misprinted,
  printed,
  tableOf,
  whole,
  type Drawn,
} from './audit-tables.js';

const EVERY_TEN = [-20, -10, 0, 10, 20, 30, 40, 50, 60];
const sheetOf = (p_bar: number, step: number, t_C = EVERY_TEN): Drawn =>
  drawnBy(byNitrogen(p_bar), { t_C, step, p_bar });
const inBar = ({ pascals }: { readonly pascals: number }): number => pascals / 1e5;

// Source of the lines: tests/reference/isochore.csv, computed by other programs; against the standard atmosphere.
const COLUMNS = ['p_gauge_span2000_bar', 'p_gauge_ideal_bar', 'p_gauge_gerg2008_bar'] as const;
const LINES = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', ...COLUMNS]);
const tableFrom = (column: (typeof COLUMNS)[number], p_ref: number, step: number): Drawn => {
  const rows = LINES.filter((x) => x.p_ref_gauge_bar === p_ref && x.T_ref_C === 20);
  return { t_C: rows.map((x) => x.T_C), p_bar: rows.map((x) => printed(x[column], step)), step };
};

describe('tables of other programs', () => {
  test.each([100, 140, 200, 300])(
    '%d bar at 20 °C of the reference equation is nitrogen, and that pre-charge',
    (p_ref) => {
      const column = auditOf(tableFrom('p_gauge_span2000_bar', p_ref, 0.5));
      expect([column.outcome, column.models]).toEqual(['one model', [nitrogen.id]]);
      const { lower, best, upper } = fitBy(column, nitrogen, 'every cell').referencePressure;
      expect(inBar(lower)).toBeLessThanOrEqual(p_ref);
      expect(inBar(upper)).toBeGreaterThanOrEqual(p_ref);
      expect(Math.abs(inBar(best) - p_ref)).toBeLessThan(0.25);
    },
  );

  test.each([100, 140, 200, 300])('%d bar at 20 °C of the ideal-gas law is that law', (p_ref) => {
    const column = auditOf(tableFrom('p_gauge_ideal_bar', p_ref, 0.5));
    expect([column.outcome, column.models]).toEqual(['one model', [idealNitrogen.id]]);
    expect(column.fits.map(({ outcome }) => outcome)).toEqual(['every cell', 'no density']);
  });

  test('at 5 bar and half-bar steps the two cannot be told apart', () => {
    const column = auditOf(tableFrom('p_gauge_span2000_bar', 5, 0.5));
    expect([column.outcome, column.models]).toEqual(['several models', [nitrogen.id, idealNitrogen.id]]);
  });

  // GERG-2008 (ISO 20765-2) is within 0.009 bar of the reference equation to 200 bar: tests/gas/isochore.test.ts.
  test('to a finer step another sound equation shows, and lies within the stated uncertainty', () => {
    const table = tableFrom('p_gauge_gerg2008_bar', 200, 0.001);
    expect(auditOf(table).outcome).toBe('no model');
    const allowed = auditOf(table, { equation: 'within its stated uncertainty' });
    expect([allowed.outcome, allowed.models]).toEqual(['one model', [nitrogen.id]]);
    const { cells } = fitBy(allowed, nitrogen, 'every cell');
    expect(new Set(cells.map((cell) => cell.densityUncertainty))).toEqual(new Set([2e-4]));
    const ideal = fitBy(allowed, idealNitrogen, 'no density');
    expect(ideal.cells[0]?.densityUncertainty).toBe('not stated by the source');
    expect(fitBy(auditOf(table), nitrogen, 'no density').cells[0]?.densityUncertainty).toBe('not counted');
  });
});

describe('the density and the pre-charge that the rounding admits', () => {
  /** Whether a density prints the table, by the term-by-term equation, a part in 1e9 aside. */
  const prints = ({ t_C, p_bar, step }: Drawn, rho: number): boolean =>
    t_C.every((t, i) => {
      const p = span2000(t + 273.15, rho).p_Pa / 1e5 - AMBIENT_bar;
      return Math.abs(p - (p_bar[i] ?? Number.NaN)) <= step / 2;
    });

  test('are all that print the table, and no others', () => {
    const even = evenNumbers(11);
    for (let i = 0; i < 60; i += 1) {
      const at = layout(even, 2, 12);
      const drawn = drawnBy(byNitrogen(at.p_bar), at);
      const { density_mol_m3: rho, referencePressure: p } = fitBy(auditOf(drawn), nitrogen, 'every cell');
      const width = rho.upper - rho.lower;
      const tried = [rho.lower - 1e-3 * width, rho.lower + 1e-3 * width, rho.best, rho.upper - 1e-3 * width];
      expect([...tried, rho.upper + 1e-3 * width].map((one) => prints(drawn, one))).toEqual([
        false,
        true,
        true,
        true,
        false,
      ]);
      expect(rho.best).toBeCloseTo((rho.lower + rho.upper) / 2, 6);
      expect(at.p_bar).toBeGreaterThanOrEqual(inBar(p.lower));
      expect(at.p_bar).toBeLessThanOrEqual(inBar(p.upper));
      const back = [p.lower, p.best, p.upper].map((one) => byNitrogen(inBar(one))(50));
      const ahead = [rho.lower, rho.best, rho.upper].map((one) => span2000(323.15, one).p_Pa / 1e5 - AMBIENT_bar);
      back.forEach((one, j) => expect(one).toBeCloseTo(ahead[j] ?? Number.NaN, 6));
    }
  });

  test('residuals are stated less by the model, in Pa and in steps', () => {
    const drawn = sheetOf(140, 0.5);
    const { cells, density_mol_m3 } = fitBy(auditOf(drawn), nitrogen, 'every cell');
    cells.forEach(({ row, temperature: T, stated, byModel, residual, steps }, i) => {
      expect([row, valueIn(T, '°C'), inBar(stated)]).toEqual([i, drawn.t_C[i], drawn.p_bar[i]]);
      expect(inBar(byModel)).toBeCloseTo(span2000(T.kelvins, density_mol_m3.best).p_Pa / 1e5 - AMBIENT_bar, 8);
      expect(residual.pascals).toBe(stated.pascals - byModel.pascals);
      expect(steps).toBeCloseTo(residual.pascals / 50_000, 12);
      expect(Math.abs(steps)).toBeLessThanOrEqual(0.5);
    });
  });

  test('where no density fits, residuals are from the density nearest to all cells', () => {
    const { cells } = fitBy(
      auditOf(drawnBy(byIdeal(140), { t_C: EVERY_TEN, step: 0.5, p_bar: 140 })),
      nitrogen,
      'no density',
    );
    const residuals = cells.map((cell) => cell.residual.pascals);
    // The largest up and the largest down are equal: any other density makes one of them larger.
    expect(Math.max(...residuals) / -Math.min(...residuals)).toBeCloseTo(1, 4);
    expect(Math.max(...residuals)).toBeGreaterThan(300_000);
  });
});

describe('a cell that is wrong', () => {
  /** A table without one of its rows. */
  const others = (drawn: Drawn, row: number): Drawn => {
    const t_C = drawn.t_C.filter((_, i) => i !== row);
    const [first = 0, last = 0] = [t_C[0], t_C.at(-1)];
    return {
      ...drawn,
      t_C,
      p_bar: drawn.p_bar.filter((_, i) => i !== row),
      reference: Math.max(first, Math.min(20, last)),
    };
  };

  test('is named with what it should be, unrounded and as printed, and where it would be right', () => {
    const clean = sheetOf(140, 0.5);
    const column = auditOf(misprinted(clean, 6, 22));
    const [wrong, ...more] = fitBy(column, nitrogen, 'all but misprints').misprints;
    expect(more).toEqual([]);
    // The residuals are from the line of the others: all of these were only rounded.
    const { cells } = fitBy(column, nitrogen, 'all but misprints');
    expect(cells.filter(({ steps }) => Math.abs(steps) > 0.5).map(({ row }) => row)).toEqual([6]);
    // The ideal-gas law would need more than one.
    expect([column.outcome, column.models]).toEqual(['one model', [nitrogen.id]]);
    if (wrong === undefined) throw new Error('not named');
    expect([wrong.row, wrong.temperature.kelvins, inBar(wrong.stated)]).toEqual([6, 313.15, 163.5]);
    // 152.61 bar at 40 °C (README); the table prints 152.5.
    expect([wrong.printed.lower, wrong.printed.best, wrong.printed.upper].map(inBar)).toEqual([152.5, 152.5, 152.5]);
    expect(inBar(wrong.shouldBe.lower)).toBeLessThan(152.612);
    expect(inBar(wrong.shouldBe.upper)).toBeGreaterThan(152.612);
    expect(wrong.steps).toBeCloseTo((163.5 - inBar(wrong.shouldBe.best)) / 0.5, 9);
    if (wrong.rightAt === 'none') throw new Error('right at none');
    // The line through 163.5 bar there is the line of the others.
    const others = fitBy(column, nitrogen, 'all but misprints').referencePressure.best;
    expect(byNitrogen(inBar(others))(wrong.rightAt.kelvins - 273.15)).toBeCloseTo(163.5, 6);
  });

  test('of two models the one with fewer of them comes first, and alone', () => {
    const t_C = [-2, 7.6, 17.1, 26.7, 36.2, 45.8, 55.3, 64.9, 74.4, 84];
    const drawn = { t_C, p_bar: [27.5, 28.5, 29.5, 31, 33.5, 33, 34, 35, 36, 37.5], step: 0.5 };
    const column = auditOf(drawn, { models: [idealNitrogen, nitrogen] });
    const wrong = [nitrogen, idealNitrogen].map((model) => fitBy(column, model, 'all but misprints').misprints);
    expect(wrong.map(({ length }) => length)).toEqual([1, 2]);
    expect([column.outcome, column.models]).toEqual(['one model', [nitrogen.id]]);
    expect(column.fits.map(({ model }) => model)).toEqual([nitrogen.id, idealNitrogen.id]);
  });

  test('does not move the density of the others', () => {
    const clean = sheetOf(200, 1);
    const wrong = fitBy(auditOf(misprinted(clean, 4, -3)), nitrogen, 'all but misprints');
    expect(wrong.density_mol_m3).toEqual(fitBy(auditOf(others(clean, 4)), nitrogen, 'every cell').density_mol_m3);
  });

  test('a digit lost, which no temperature of the model explains', () => {
    const clean = sheetOf(140, 0.5);
    const lost = { ...clean, p_bar: clean.p_bar.map((p, i) => (i === 4 ? 1.4e-4 : p)) };
    const [wrong] = fitBy(auditOf(lost), nitrogen, 'all but misprints').misprints;
    expect([wrong?.row, wrong?.rightAt]).toEqual([4, 'none']);
    expect(auditOf(lost).rowsOffTheMarks).toEqual([4]);
  });

  test('two neighbours that are off to the same side are no slips', () => {
    const clean = drawnBy(byNitrogen(140), { t_C: Array.from({ length: 13 }, (_, i) => 5 * i), step: 0.5, p_bar: 140 });
    expect(auditOf(misprinted(misprinted(clean, 5, 4), 6, 4)).outcome).toBe('no model');
    expect(auditOf(misprinted(misprinted(clean, 5, 4), 6, -4)).fits[0]).toMatchObject({
      outcome: 'all but misprints',
      misprints: [{ row: 5 }, { row: 6 }],
    });
  });

  test('beyond the other rows a cell must be further off to stand out', () => {
    // Five rows over 20 K, and one 80 K further: a drift of half a step in 20 K is two steps there.
    const t_C = [0, 5, 10, 15, 20, 100];
    const clean = drawnBy(byNitrogen(140), { t_C, step: 0.5, p_bar: 140 });
    expect(auditOf(misprinted(clean, 5, 3)).outcome).toBe('one cell in doubt');
    expect(auditOf(misprinted(clean, 5, 12)).fits[0]?.outcome).toBe('all but misprints');
  });

  /** Rows without which the others have a density in common, each by an audit of the others alone. */
  const withoutWhich = (drawn: Drawn): number[] =>
    drawn.t_C.flatMap((_, row) => {
      const { fits } = auditOf(others(drawn, row));
      return fits.some(({ model, outcome }) => model === nitrogen.id && outcome === 'every cell') ? [row] : [];
    });

  test('with fewer than six rows every candidate is listed, with the line of the others', () => {
    const even = evenNumbers(12);
    const seen = new Set<number>();
    for (let i = 0; i < 200; i += 1) {
      const at = layout(even, 3, 5);
      const row = whole(even, 0, at.t_C.length - 1);
      const drawn = misprinted(drawnBy(byNitrogen(at.p_bar), at), row, whole(even, 1, 3) * (even() < 0.5 ? -1 : 1));
      const fit = auditOf(drawn).fits.find(({ model }) => model === nitrogen.id);
      const expected = withoutWhich(drawn);
      if (fit?.outcome === 'every cell') continue; // a slip of one step that the rounding hides
      const listed = fit?.outcome === 'one cell in doubt' ? fit.candidates : [];
      expect(listed.map((one) => one.row)).toEqual(expected);
      expect(expected).toContain(row);
      seen.add(listed.length);
      for (const one of listed) {
        const line = fitBy(auditOf(others(drawn, one.row)), nitrogen, 'every cell');
        expect(one.density_mol_m3).toEqual(line.density_mol_m3);
        expect(byNitrogen(inBar(one.referencePressure.best))(0)).toBeCloseTo(
          span2000(273.15, line.density_mol_m3.best).p_Pa / 1e5 - AMBIENT_bar,
          6,
        );
      }
    }
    expect(seen).toEqual(new Set([1, 2]));
  });

  test('two rows that contradict each other say nothing of a cell', () => {
    expect(auditOf({ t_C: [0, 40], p_bar: [140, 141], step: 0.5 }).fits.map(({ outcome }) => outcome)).toEqual([
      'no density',
      'no density',
    ]);
  });

  test('six is the first number of rows for which one is named', () => {
    expect([ROWS_TO_NAME - 1, ROWS_TO_NAME, 9, 10].map(mostMisprints)).toEqual([0, 1, 1, 2]);
  });
});

test('a table of another gas model is told from nitrogen and from the ideal-gas law', () => {
  const models = [idealNitrogen, nitrogen, cubicNitrogen];
  const column = auditOf(tableFrom('p_gauge_span2000_bar', 300, 0.5), { models });
  expect([column.outcome, column.models]).toEqual(['one model', [nitrogen.id]]);
  expect(column.fits.map(({ model }) => model)).toEqual([nitrogen.id, idealNitrogen.id, cubicNitrogen.id]);
});

describe('a column that is read otherwise than it is meant', () => {
  const bar = (p_bar: number, unit: 'psi' | 'MPa' | 'kPa' | 'kgf/cm2'): number => valueIn(gauge(p_bar, 'bar'), unit);
  const t_C = [-20, -10, 0, 10, 20, 30, 40, 50, 60, 70];
  const read = (drawn: Drawn) =>
    auditOf(drawn).otherReadings.map(({ pressureUnit, basis, temperatureUnit, changes, fits }) => ({
      as: [pressureUnit, basis, temperatureUnit].join(' '),
      changes,
      models: fits.map(({ model }) => model),
    }));

  test.each([
    { unit: 'psi', step: 5 },
    { unit: 'MPa', step: 0.01 },
    { unit: 'kPa', step: 10 },
  ] as const)('pressures in $unit', ({ unit, step }) => {
    const column = { t_C, p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), unit), step)), step };
    expect(auditOf(column).outcome).toBe('no model');
    expect(read(column)).toContainEqual({ as: `${unit} gauge °C`, changes: ['pressure unit'], models: [nitrogen.id] });
    const [line] = auditOf(column).otherReadings.find((one) => one.pressureUnit === unit)?.fits ?? [];
    expect(inBar(line?.referencePressure.lower ?? gauge(0, 'bar'))).toBeLessThanOrEqual(140);
    expect(inBar(line?.referencePressure.upper ?? gauge(0, 'bar'))).toBeGreaterThanOrEqual(140);
  });

  test('with a misprint in it, that is found beside', () => {
    const psi = { t_C, p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), 'psi'), 5)), step: 5 };
    const { outcome, otherReadings } = auditOf(misprinted(psi, 4, 6));
    expect(outcome).toBe('no model');
    const [fit] = otherReadings.find(({ pressureUnit }) => pressureUnit === 'psi')?.fits ?? [];
    expect(fit).toMatchObject({ model: nitrogen.id, outcome: 'all but misprints', misprintRows: [4] });
  });

  test('a step is only taken to be coarser where every cell lies on its marks', () => {
    // Three bar too high throughout: to 5 bar it would fit.
    const column = { ...sheetOf(140, 0.5, t_C), p_bar: sheetOf(140, 0.5, t_C).p_bar.map((p) => p + 3) };
    expect(auditOf(column).outcome).toBe('no model');
    expect(auditOf(column).otherReadings.filter(({ changes }) => changes.includes('printed step'))).toEqual([]);
  });

  test('kgf/cm2, 2 % from the bar: only a fine step shows it', () => {
    const column = (step: number): Drawn => ({
      t_C,
      p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), 'kgf/cm2'), step)),
      step,
    });
    expect(read(column(0.1)).map(({ as }) => as)).toContain('kgf/cm2 gauge °C');
    expect(auditOf(column(1)).outcome).toBe('one model');
    // Bars to a coarse step fit: nobody is asked whether they are something else.
    expect(read(column(1))).toEqual([]);
  });

  test('with one cell in doubt too, and every reading of as few changes is listed', () => {
    const drawn = { t_C: [-7, 11, 29, 47, 65, 83], p_bar: [164, 180, 196, 212, 228, 244], step: 0.5 };
    expect(auditOf(drawn).outcome).toBe('one cell in doubt');
    expect(auditOf(drawn).otherReadings.map(({ changes }) => changes)).toEqual([
      ['basis'],
      ['pressure unit'],
      ['printed step'],
    ]);
  });

  // A gas of 0.1034 bar/K against the ambient, printed to 0.5 bar, is one of 0.1 bar/K from vacuum on in every row but the
  // last: half a bar, which to a step of 0.1 bar is a misprint. It is one for the other model too, which is wrong there.
  test('one that fits every cell by some model is not listed beside those that have to leave one out', () => {
    const T_K = Array.from({ length: 16 }, (_, i) => 225 + 10 * i);
    const gas = (T: number): number => 0.1034 * T - AMBIENT_bar;
    const column = { t_C: T_K.map((T) => printed(T - 273.15, 0.01)), p_bar: T_K.map((T) => printed(gas(T), 0.5)) };
    const { pvt, density } = idealNitrogen['~kernel'];
    const hotter = (T: number): number => (T > 370 ? 1.03 * T : T);
    const kernel: (typeof idealNitrogen)['~kernel'] = {
      ...idealNitrogen['~kernel'],
      pvt: (T, rho, out) => {
        pvt(hotter(T), rho, out);
      },
      density: (T, p) => density(hotter(T), p),
    };
    const bent = gasModel({ ...idealNitrogen, id: 'bent', '~kernel': kernel });
    const audited = auditOf({ ...column, step: 0.1, reference: 21.85 }, { models: [idealNitrogen, bent] });
    expect(audited.otherReadings.map(({ changes, fits }) => [changes, fits.map(({ outcome }) => outcome)])).toEqual([
      [['printed step'], ['every cell', 'all but misprints']],
    ]);
  });

  test('absolute pressures', () => {
    const column = { t_C, p_bar: t_C.map((t) => printed(byNitrogen(140)(t) + AMBIENT_bar, 0.01)), step: 0.01 };
    const readings = auditOf(column).otherReadings;
    expect(readings.map(({ basis, changes }) => [basis, changes])).toEqual([['absolute', ['basis']]]);
    // The pre-charge is given as gauge pressure all the same.
    expect(inBar(readings[0]?.fits[0]?.referencePressure.best ?? gauge(0, 'bar'))).toBeCloseTo(140, 2);
  });

  test.each(['°F', 'K'] as const)('temperatures in %s', (unit) => {
    const in_unit = (t: number): number => printed(valueIn(temperature(t, '°C'), unit), 0.01);
    const numbers = t_C.map(in_unit);
    const column = {
      t_C: numbers,
      p_bar: t_C.map((t) => printed(byNitrogen(140)(t), 0.5)),
      step: 0.5,
      reference: in_unit(20),
    };
    const [line] = auditOf(column).otherReadings[0]?.fits ?? [];
    expect(Math.abs(inBar(line?.referencePressure.best ?? gauge(0, 'bar')) - 140)).toBeLessThan(0.25);
    expect(read(column)).toEqual([{ as: `bar gauge ${unit}`, changes: ['temperature unit'], models: [nitrogen.id] }]);
  });

  test('psi and °F at once: two changes, tried when none alone fits', () => {
    const numbers = t_C.map((t) => valueIn(temperature(t, '°C'), '°F'));
    const column = { t_C: numbers, p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), 'psi'), 5)), step: 5 };
    const readings = read(column);
    expect(readings).toContainEqual({
      as: 'psi gauge °F',
      changes: ['pressure unit', 'temperature unit'],
      models: [nitrogen.id],
    });
    expect(new Set(readings.map(({ changes }) => changes.length))).toEqual(new Set([2]));
  });

  test('numbers beyond the model: 2000 psi read as bar and more', () => {
    const column = { t_C, p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), 'psi'), 5)), step: 5 };
    expect(fitBy(auditOf(column), nitrogen, 'outside the model').problem.code).toBe('outside the model');
    // A model that has such pressures says more of them than one that has none, and comes first.
    const cold = { t_C: [-170, -165, -160], p_bar: [30, 33, 30], step: 1, reference: -160 };
    const { fits, models } = auditOf(cold, { models: [nitrogen, idealNitrogen] });
    expect(fits.map(({ outcome }) => outcome)).toEqual(['no density', 'outside the model']);
    expect(models).toEqual([]);
  });

  test('a coarser step than stated', () => {
    const { otherReadings } = auditOf({ ...sheetOf(140, 1, t_C), step: 0.1 });
    expect(otherReadings.map(({ changes, printedStep }) => [changes, inBar(printedStep)])).toEqual([
      [['printed step'], 1],
    ]);
  });

  test('a finer step than stated: the cells are not on its marks', () => {
    const { rowsOffTheMarks } = auditOf({ ...sheetOf(140, 0.1), step: 0.5 });
    const off = sheetOf(140, 0.1).p_bar.flatMap((p, i) => (printed(p, 0.5) === p ? [] : [i]));
    expect(rowsOffTheMarks).toEqual(off);
    expect(off.length).toBeGreaterThan(3);
  });

  test('is never corrected by itself', () => {
    const column = auditOf({ t_C, p_bar: t_C.map((t) => printed(bar(byNitrogen(140)(t), 'psi'), 5)), step: 5 });
    expect([column.outcome, column.models]).toEqual(['no model', []]);
  });
});

test('temperatures that are rounded too widen what a cell admits', () => {
  // Printed in whole °C, computed at whole °F.
  const t_F = [0, 14, 27, 41, 59, 72, 86, 99, 117, 131];
  const exact_C = t_F.map((t) => ((t - 32) * 5) / 9);
  const drawn = {
    t_C: exact_C.map((t) => printed(t, 1)),
    p_bar: exact_C.map((t) => printed(byNitrogen(140)(t), 0.1)),
    step: 0.1,
  };
  expect(auditOf(drawn).outcome).toBe('no model');
  const wide = auditOf(drawn, { temperatureStep: kelvin(1) });
  expect(wide.models).toEqual([nitrogen.id]);
  const { lower, upper } = fitBy(wide, nitrogen, 'every cell').referencePressure;
  expect(inBar(lower)).toBeLessThanOrEqual(140);
  expect(inBar(upper)).toBeGreaterThanOrEqual(140);
});

test('what a cell should be is the wider for temperatures that are rounded too', () => {
  for (const half of [0, 0.5]) {
    const temperatureStep = half === 0 ? 'exact' : kelvin(2 * half);
    const column = auditOf(misprinted(sheetOf(140, 0.5), 6, 22), { temperatureStep });
    const { density_mol_m3: rho, misprints } = fitBy(column, nitrogen, 'all but misprints');
    const { lower, best, upper } = misprints[0]?.shouldBe ?? expect.fail('not named');
    // The row stands for 40 °C.
    const at = (t_C: number, density: number): number => span2000(t_C + 273.15, density).p_Pa / 1e5 - AMBIENT_bar;
    expect(inBar(lower)).toBeCloseTo(at(40 - half, rho.lower), 8);
    expect(inBar(best)).toBeCloseTo(at(40, rho.best), 8);
    expect(inBar(upper)).toBeCloseTo(at(40 + half, rho.upper), 8);
  }
});

test('where no density fits, the largest residual up is as large as the largest down, in a narrow table too', () => {
  // Two hundredths of a bar to and fro about one line.
  const t_C = [0, 10, 20, 30, 40, 50];
  const p_bar = t_C.map((t, i) => printed(byNitrogen(140)(t), 0.01) + (i % 2 === 0 ? 0.02 : -0.02));
  const { cells } = fitBy(auditOf({ t_C, p_bar, step: 0.01 }), nitrogen, 'no density');
  const steps = cells.map((cell) => cell.steps);
  expect(Math.max(...steps)).toBeCloseTo(-Math.min(...steps), 3);
  expect(Math.max(...steps)).toBeLessThan(3);
});

test('the uncertainty of a cell is that of its absolute pressure', () => {
  // To 12 MPa the source states 0.01 %, above it 0.02 %: half a bar to each side of it.
  const drawn = { t_C: [20, 22], p_bar: [118.5, 119.5], step: 0.5 };
  const [fit] = auditOf(drawn, { equation: 'within its stated uncertainty', models: [nitrogen] }).fits;
  if (fit === undefined || !('cells' in fit)) expect.fail('no cells');
  expect(fit.cells.map(({ densityUncertainty }) => densityUncertainty)).toEqual([1e-4, 2e-4]);
});

describe('several columns', () => {
  const tables = (changed: (p: number, column: number, row: number) => number = (p) => p): PrintedTable => ({
    temperatures: EVERY_TEN.map((t) => temperature(t, '°C')),
    columns: [100, 140, 200].map((p, c) => ({
      name: `type ${p}`,
      pressures: sheetOf(p, 0.5).p_bar.map((cell, i) => gauge(changed(cell, c, i), 'bar')),
    })),
    referenceTemperature: temperature(20, '°C'),
    printedStep: pressureDifference(0.5, 'bar'),
  });

  test('each has its own audit, under its name', () => {
    const { columns, rowsWithWrongTemperature } = auditTable(
      tables((p, c) => (c === 1 ? p + 3 : p)),
      GIVEN,
    );
    expect(columns.map(({ name, outcome }) => [name, outcome])).toEqual([
      ['type 100', 'one model'],
      ['type 140', 'no model'],
      ['type 200', 'one model'],
    ]);
    expect(rowsWithWrongTemperature).toEqual([]);
  });

  test('a row that is wrong in all of them has a wrong temperature', () => {
    // 37 °C printed for 30 °C: the pressures are those of 37 °C.
    const at37 = [100, 140, 200].map((p) => printed(byNitrogen(p)(37), 0.5));
    const audit = auditTable(
      tables((p, c, row) => (row === 5 ? (at37[c] ?? Number.NaN) : p)),
      GIVEN,
    );
    expect(audit.rowsWithWrongTemperature).toEqual([5]);
    for (const column of audit.columns) {
      const [wrong] = fitBy(column, nitrogen, 'all but misprints').misprints;
      if (wrong === undefined || wrong.rightAt === 'none') throw new Error('no temperature');
      expect(Math.abs(wrong.rightAt.kelvins - 310.15)).toBeLessThan(1);
    }
    const one = auditTable(
      tables((p, c, row) => (row === 5 && c < 2 ? (at37[c] ?? Number.NaN) : p)),
      GIVEN,
    );
    expect(one.rowsWithWrongTemperature).toEqual([]);
    const all = tables((p, c, row) => (row === 5 ? (at37[c] ?? Number.NaN) : p));
    const two = 'columns' in all ? { ...all, columns: all.columns.slice(0, 2) } : all;
    expect(auditTable(two, GIVEN).rowsWithWrongTemperature).toEqual([5]);
  });

  test('a table of one column has no name, and no row is doubted by it alone', () => {
    const audit = auditTable(tableOf(misprinted(sheetOf(140, 0.5), 3, 5)), GIVEN);
    expect(audit.columns[0]).not.toHaveProperty('name');
    expect(audit.rowsWithWrongTemperature).toEqual([]);
  });
});

describe('what is no table to be judged is said by name', () => {
  test('one pressure for all temperatures', () => {
    const column = auditOf({ t_C: EVERY_TEN, p_bar: EVERY_TEN.map(() => 140), step: 0.5 });
    expect([column.outcome, column.models, column.otherReadings]).toEqual(['all cells alike', [], []]);
  });

  test('but where the rounding hides the change, it fits', () => {
    const column = auditOf({ t_C: [20, 20.5, 21], p_bar: [140, 140, 140], step: 1 });
    expect([column.outcome, column.models]).toEqual(['several models', [nitrogen.id, idealNitrogen.id]]);
  });

  test('cells near vacuum admit densities from nothing on', () => {
    const column = auditOf({ t_C: [0, 20], p_bar: [-1, -1], step: 1 });
    expect(fitBy(column, idealNitrogen, 'every cell').density_mol_m3.lower).toBe(0);
  });

  test('cells that would be liquid leave nitrogen, not the ideal-gas law', () => {
    const column = auditOf({ t_C: [-170, -160], p_bar: [30, 33], step: 1, reference: -160 });
    expect(fitBy(column, nitrogen, 'outside the model').problem).toMatchObject({ code: 'liquid', path: 'rows[0]' });
    expect(column.fits[0]?.model).toBe(idealNitrogen.id);
  });

  test('rows in any order', () => {
    const clean = sheetOf(140, 0.5);
    const back = { ...clean, t_C: [...clean.t_C].reverse(), p_bar: [...clean.p_bar].reverse() };
    expect(fitBy(auditOf(back), nitrogen, 'every cell').density_mol_m3).toEqual(
      fitBy(auditOf(clean), nitrogen, 'every cell').density_mol_m3,
    );
  });
});

/** Paths and codes of everything for which a call is refused. */
function refused(call: () => unknown): string[] {
  try {
    call();
  } catch (error) {
    if (isFault(error)) return error.problems.map(({ path, code }) => `${path}: ${code}`);
    throw error;
  }
  throw new Error('not refused');
}

describe('bad input is refused', () => {
  const table = tableOf(sheetOf(140, 0.5));
  const rows = table.rows as readonly unknown[];
  const several = {
    temperatures: [temperature(0, '°C'), temperature(20, '°C')],
    columns: [{ name: 'a', pressures: [gauge(127.5, 'bar'), gauge(140, 'bar')] }],
    referenceTemperature: temperature(20, '°C'),
    printedStep: pressureDifference(0.5, 'bar'),
  };
  const [column] = several.columns;
  const audit = (changed: object, given: object = {}): string[] =>
    refused(() => auditTable({ ...table, ...changed }, { ...GIVEN, ...given }));
  const auditSeveral = (changed: object): string[] => refused(() => auditTable({ ...several, ...changed }, GIVEN));

  test('more rows or columns than any manual has: a thousand are no fault', () => {
    const many = (count: number) => ({ ...table, rows: Array.from({ length: count }, () => rows[4]) });
    const wide = (count: number) => ({
      ...several,
      columns: Array.from({ length: count }, (_, i) => ({ ...column, name: `type ${i}` })),
    });
    const given = { ...GIVEN, models: [idealNitrogen] };
    expect(admitted(many(1000) as PrintedTable, given).columns[0]?.pressures).toHaveLength(1000);
    expect(admitted(wide(1000) as PrintedTable, given).columns).toHaveLength(1000);
    for (const [what, one] of [['rows', many(1001)], ['columns', wide(1001)]] as const) {
      const problem = problemOf(() => admitted(one as PrintedTable, given));
      expect(problem).toMatchObject({ code: 'too long', path: what, found: `1001 ${what}`, values: { most: '1000', what } });
    }
  }); // prettier-ignore

  test('a reference temperature below the coldest row', () => {
    expect(audit({ referenceTemperature: temperature(-21, '°C') })).toEqual([
      'referenceTemperature: reference outside the table',
    ]);
  });

  test('too few rows, with how many are needed for what', () => {
    const problem = problemOf(() => auditTable({ ...table, rows: rows.slice(0, 1) } as PrintedTable, GIVEN));
    expect(problem).toMatchObject({ code: 'too few rows to audit', path: 'rows', found: '1 row' });
    expect(problem.wanted).toMatch(/two rows.*three.*six/);
    expect(audit({ rows: [] })).toEqual(['rows: too few rows to audit']);
  });

  test.each<[string, object, object, string[]]>([
    ['rows of null', { rows: null }, {}, ['rows: wrong kind']],
    ['a row of null', { rows: [rows[0], null] }, {}, ['rows[1]: wrong kind']],
    [
      'a bare pressure',
      { rows: [rows[0], { pressure: 140, temperature: temperature(20, '°C') }] },
      {},
      ['rows[1].pressure: wrong kind'],
    ],
    [
      'an absolute pressure',
      { rows: [rows[0], { pressure: absolute(140, 'bar'), temperature: temperature(20, '°C') }] },
      {},
      ['rows[1].pressure: absolute for gauge'],
    ],
    [
      'a pressure below vacuum',
      { rows: [rows[0], { pressure: gauge(-1.02, 'bar'), temperature: temperature(20, '°C') }] },
      {},
      ['rows[1].pressure: gauge below vacuum'],
    ],
    [
      'a reference temperature beyond the rows',
      { referenceTemperature: temperature(60.1, '°C') },
      {},
      ['referenceTemperature: reference outside the table'],
    ],
    ['no reference temperature', { referenceTemperature: undefined }, {}, ['referenceTemperature: wrong kind']],
    ['a step of zero', { printedStep: pressureDifference(0, 'bar') }, {}, ['printedStep: not positive']],
    ['a step too fine', { printedStep: pressureDifference(1e-12, 'bar') }, {}, ['printedStep.step: step too fine']],
    ['a bare step', { printedStep: 0.5 }, {}, ['printedStep: wrong kind']],
    ['no models', {}, { models: [] }, ['models: too short']],
    ['a model by name', {}, { models: ['nitrogen'] }, ['models[0]: wrong kind']],
    ['a model twice', {}, { models: [nitrogen, nitrogen] }, ['models[1]: duplicate name']],
    ['models not listed', {}, { models: nitrogen }, ['models: wrong kind']],
    ['no ambient', {}, { ambient: undefined }, ['ambient: wrong kind']],
    ['an ambient of no place', {}, { ambient: absolute(1013, 'kPa') }, ['ambient: not an ambient pressure']],
    [
      'a unit with its basis',
      {},
      { printedIn: { pressure: 'barg', temperature: '°C' } },
      ['printedIn.pressure: unknown unit'],
    ],
    [
      'a temperature unit unknown',
      {},
      { printedIn: { pressure: 'bar', temperature: 'C' } },
      ['printedIn.temperature: unknown unit'],
    ],
    ['no units', {}, { printedIn: undefined }, ['printedIn: wrong kind']],
    ['no word of the temperatures', {}, { temperatureStep: undefined }, ['temperatureStep: wrong kind']],
    ['a temperature step of zero', {}, { temperatureStep: kelvin(0) }, ['temperatureStep: not positive']],
    ['an unknown word', {}, { equation: 'roughly' }, ['equation: unknown word']],
    [
      'everything at once',
      { printedStep: 1, rows: [] },
      { models: [], equation: undefined },
      ['rows: too few rows to audit', 'printedStep: wrong kind', 'models: too short', 'equation: unknown word'],
    ],
  ])('%s', (_, changed, given, problems) => {
    expect(audit(changed, given)).toEqual(problems);
  });

  test.each<[string, object, string[]]>([
    ['no columns', { columns: [] }, ['columns: too short']],
    ['columns of null', { columns: null }, ['columns: wrong kind']],
    ['one temperature', { temperatures: several.temperatures.slice(0, 1) }, ['temperatures: too few rows to audit']],
    ['a bare temperature', { temperatures: [0, temperature(20, '°C')] }, ['temperatures[0]: wrong kind']],
    // What is no temperature may look like one, to whoever asks for its kelvins before looking what it is.
    [
      'a temperature that only has kelvins',
      { temperatures: [{ kelvins: Object.create(null) as number }, temperature(20, '°C')] },
      ['temperatures[0]: wrong kind'],
    ],
    [
      'more columns than a manual prints',
      { columns: Array.from({ length: 1001 }, () => column) },
      ['columns: too long'],
    ],
    [
      'more rows than a manual prints',
      { temperatures: Array.from({ length: 200_000 }, () => temperature(20, '°C')) },
      ['temperatures: too long'],
    ],
    [
      'a cell left out',
      { columns: [{ name: 'a', pressures: column?.pressures.slice(0, 1) }] },
      ['columns[0].pressures: cells left out'],
    ],
    [
      'a bare cell',
      { columns: [{ name: 'a', pressures: [gauge(1, 'bar'), 140] }] },
      ['columns[0].pressures[1]: wrong kind'],
    ],
    ['a name twice', { columns: [column, column] }, ['columns[1].name: duplicate name']],
    ['no name', { columns: [{ pressures: column?.pressures }] }, ['columns[0].name: not a text']],
    ['half a surrogate pair as a name', { columns: [{ ...column, name: '\ud83d' }] }, ['columns[0].name: not a text']],
    ['a column of null', { columns: [null, column] }, ['columns[0]: wrong kind']],
    ['a column without pressures', { columns: [{ name: 'a' }] }, ['columns[0].pressures: wrong kind']],
  ])('several columns: %s', (_, changed, problems) => {
    expect(auditSeveral(changed)).toEqual(problems);
  });

  test.each<[string, object, object, string, string]>([
    ['no rows', { rows: [] }, {}, 'no rows', 'two rows'],
    [
      'a reference temperature beyond the rows',
      { referenceTemperature: temperature(400, 'K') },
      {},
      '126.85 °C',
      '-20 °C to 60 °C',
    ],
    ['a step of zero', { printedStep: pressureDifference(0, 'bar') }, {}, '0 bar difference', 'zero'],
    ['no models', {}, { models: [] }, 'no models', 'at least 1 gas model'],
    ['a model twice', {}, { models: [nitrogen, nitrogen] }, `"${nitrogen.id}"`, 'gas model'],
    ['a temperature step of zero', {}, { temperatureStep: kelvin(0) }, '0 K difference', 'zero'],
    ['an unknown word', {}, { equation: 'roughly' }, '"roughly"', "'exact' or 'within its stated uncertainty'"],
  ])('%s, with what was found and what is wanted', (_, changed, given, found, wanted) => {
    const problem = problemOf(() => auditTable({ ...table, ...changed }, { ...GIVEN, ...given }));
    expect(problem.found).toBe(found);
    expect(problem.wanted).toContain(wanted);
  });

  test.each<[string, object, string, string]>([
    ['no columns', { columns: [] }, 'no columns', 'at least 1 column'],
    [
      'a cell left out',
      { columns: [{ name: 'a', pressures: column?.pressures.slice(0, 1) }] },
      '1 pressures in column "a"',
      '2, one for each temperature',
    ],
    ['a name twice', { columns: [column, column] }, '"a"', 'no other column'],
    ['no name', { columns: [{ pressures: column?.pressures }] }, 'undefined', 'text'],
  ])('several columns: %s, with what was found and what is wanted', (_, changed, found, wanted) => {
    const problem = problemOf(() => auditTable({ ...several, ...changed }, GIVEN));
    expect(problem.found).toBe(found);
    expect(problem.wanted).toContain(wanted);
  });

  test('no table, no audit', () => {
    for (const nothing of [null, undefined, 'table']) {
      expect(refused(() => auditTable(nothing as unknown as PrintedTable, GIVEN))).toEqual(['table: wrong kind']);
      expect(refused(() => auditTable(table, nothing as unknown as TableAuditGiven))).toEqual(['given: wrong kind']);
    }
  });
});

// By the ideal-gas law 3 k bar at 300 K are 5 k bar at 500 K. Printed to 2 bar the one is the most that rounds to 3 k - 1,
// the other the least that rounds to 5 k + 1: a single line agrees with both, whichever way the last place of it falls.
test('cells whose roundings only meet have that one density in common', () => {
  const odd = [3, 5, 7, 9];
  const pairs = odd.flatMap((a) => odd.filter((b) => b !== a).map((b) => [a, b] as const));
  for (const [a, b] of pairs) {
    for (let k = 1; k < 100; k += 2) {
      const [T_K, p_Pa] = [
        [a * 100, 400, b * 100],
        [(a * k - 1) * 1e5, 4 * k * 1e5, (b * k + 1) * 1e5],
      ];
      const sheet = { T_K, p_Pa, step_Pa: 2e5, zero_Pa: 0, ambient_Pa: 0, reference_K: 300, step_K: 0 };
      expect(agreementBy(idealNitrogen, sheet, 'exact', 'test').by).toBe('every cell');
    }
  }
});

test('the ambient is the one given', () => {
  const high = auditOf(sheetOf(140, 0.01), { ambient: absolute(800, 'hPa') });
  expect(high.outcome).toBe('no model');
  expect(auditOf(sheetOf(140, 0.01), { ambient: standardAtmosphere }).outcome).toBe('one model');
});

test('the working of an audit shows both ends of every cell, their densities and the residuals', () => {
  const steps: Step[] = [];
  const drawn = sheetOf(140, 0.5, [0, 20, 40]);
  auditTable(tableOf(drawn), { ...GIVEN, models: [nitrogen], equation: 'within its stated uncertainty' }, (step) =>
    steps.push(step),
  );
  const about = (row: number): Step[] => steps.filter((step) => step.about === `${nitrogen.id}, row ${row}`);
  expect(about(1).map(({ relation }) => relation.formula)).toEqual([
    'p_stated - dp_step / 2',
    'p_g + p_amb',
    'p(T, rho) = p_abs',
    'p_stated + dp_step / 2',
    'p_g + p_amb',
    'p(T, rho) = p_abs',
    'rho * (1 - u_rho)',
    'rho * (1 + u_rho)',
    'p(T, rho)',
    'p_abs - p_amb',
    'p_stated - p_g',
  ]);
  const named = about(1).map(({ relation: { gives, unit, from } }) => `${gives} in ${unit} from ${from.join(', ')}`);
  expect([0, 3, 6, 7, 10].map((i) => named[i])).toEqual([
    'p_g in Pa from p_stated, dp_step',
    'p_g in Pa from p_stated, dp_step',
    'rho_low in mol/m3 from rho, u_rho',
    'rho_high in mol/m3 from rho, u_rho',
    'dp_off in Pa from p_stated, p_g',
  ]);
  expect(
    about(1)
      .map(({ result }) => result)
      .filter((_, i) => i === 0 || i === 3),
  ).toEqual([13_975_000, 14_025_000]);
});

test('of several columns each is named in the working, beside the model', () => {
  const steps: Step[] = [];
  const [a, b] = [sheetOf(140, 0.5, [0, 20, 40]), sheetOf(100, 0.5, [0, 20, 40])];
  const table = {
    temperatures: a.t_C.map((t) => temperature(t, '°C')),
    columns: [a, b].map(({ p_bar }, i) => ({ name: `type ${i}`, pressures: p_bar.map((p) => gauge(p, 'bar')) })),
    referenceTemperature: temperature(20, '°C'),
    printedStep: pressureDifference(0.5, 'bar'),
  };
  auditTable(table, { ...GIVEN, models: [nitrogen] }, (step) => steps.push(step));
  const about = new Set(steps.map((step) => step.about));
  expect(about).toContain(`type 0, ${nitrogen.id}, row 1`);
  expect(about).toContain(`type 1, ${nitrogen.id}, reference`);
});

describe('intervals that overlap', () => {
  const at = (intervals: readonly (readonly [number, number])[]) =>
    agreementOf(
      intervals.map(([lower, upper]) => ({ lower, upper })),
      intervals.map((_, i) => 300 + i),
    );

  test('no cells agree on nothing', () => {
    expect(at([])).toEqual({ by: 'no density' });
  });

  test('ends that touch are in common', () => {
    expect(
      at([
        [1, 2],
        [2, 3],
        [2, 2],
      ]),
    ).toEqual({ by: 'every cell', overlap: { lower: 2, upper: 2, without: [] } });
  });

  test('one pair apart: either may be wrong', () => {
    expect(
      at([
        [1, 2],
        [3, 4],
        [1.5, 3.5],
      ]),
    ).toEqual({
      by: 'one cell in doubt',
      overlaps: [
        { lower: 1.5, upper: 2, without: [1] },
        { lower: 3, upper: 3.5, without: [0] },
      ],
    });
  });

  test('three apart from each other agree on nothing', () => {
    expect(
      at([
        [1, 2],
        [3, 4],
        [5, 6],
      ]),
    ).toEqual({ by: 'no density' });
    expect(
      at([
        [1, 2],
        [1, 2],
        [3, 4],
        [3, 4],
      ]),
    ).toEqual({ by: 'no density' });
  });

  test('the overlap is that of all intervals that hold some number, by trying the ends', () => {
    const interval = fc
      .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 }))
      .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
    fc.assert(
      fc.property(fc.array(interval, { minLength: 1, maxLength: 8 }), (intervals) => {
        const depth = (x: number): number => intervals.filter(([lower, upper]) => lower <= x && x <= upper).length;
        const most = Math.max(...intervals.map(([lower]) => depth(lower)));
        const agreement = at(intervals);
        expect(agreement.by === 'every cell').toBe(most === intervals.length);
        const overlaps =
          agreement.by === 'one cell in doubt' ? agreement.overlaps : 'overlap' in agreement ? [agreement.overlap] : [];
        for (const { lower, upper, without } of overlaps) {
          expect([depth(lower), depth(upper)]).toEqual([most, most]);
          expect(
            [lower - 0.5, upper + 0.5].map(
              (x) => depth(x) < most || !intervals.every(([l, u], i) => without.includes(i) || (l <= x && x <= u)),
            ),
          ).toEqual([true, true]);
          expect(without).toHaveLength(intervals.length - most);
        }
      }),
    );
  });
});
