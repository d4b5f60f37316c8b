// Step 3 of the method: the target along a line of constant density.
import {
  absolute,
  cubicNitrogen,
  idealNitrogen,
  nitrogen,
  standardAtmosphere,
  stateAt,
  target,
  temperature,
  type GasModel,
  type Specification,
} from 'isochore';
import { bar, specOf } from '../support/accumulator.js';
import { numberRows, relativeError } from '../support/reference.js';
import { printedDigits, worst, type Cell, type Check, type Column, type Group, type Step } from './check.js';

function specFor(gas: GasModel, p_bar: number, t_C: number): Specification {
  return specOf(p_bar, t_C, {
    gas,
    tolerance: { plusMinusPercentOfGauge: 2, applies: 'at the measured temperature' },
    allowable: bar(400),
  });
}

/** Target in bar gauge, under a standard atmosphere. */
function targetAt(spec: Specification, t_C: number): number {
  return target(spec, { temperature: temperature(t_C, '°C'), ambient: standardAtmosphere }).pascals / 1e5;
}

function lines(): Group {
  const rows = numberRows('isochore.csv', [
    'p_ref_gauge_bar',
    'T_ref_C',
    'T_C',
    'p_gauge_span2000_bar',
    'p_gauge_ideal_bar',
    'p_gauge_gerg2008_bar',
    'rho_span_mol_m3',
  ]);
  type Row = (typeof rows)[number];
  const made = new Map<string, Specification>();
  const lineOf = (gas: GasModel, { p_ref_gauge_bar: p, T_ref_C: t }: Row): Specification => {
    const key = `${gas.id} ${p} ${t}`;
    const spec = made.get(key) ?? specFor(gas, p, t);
    made.set(key, spec);
    return spec;
  };
  const of = (
    what: string,
    unit: string,
    allowance: number,
    error: (row: Row) => number,
    among: readonly Row[] = rows,
  ): Column =>
    worst(
      what,
      unit,
      allowance,
      among.map((row) => ({
        where: `${row.p_ref_gauge_bar} bar at ${row.T_ref_C} °C, at ${row.T_C} °C`,
        deviation: error(row),
      })),
    );
  const off = (gas: GasModel, row: Row, bar: number): number => Math.abs(targetAt(lineOf(gas, row), row.T_C) - bar);
  return {
    title: 'Targets along lines of constant density',
    source:
      'CoolProp 6.7.0, GERG-2008 by NIST’s AGA8 code, and the ideal-gas law: `isochore.csv`, 16 pre-charges at 4 ' +
      'reference temperatures, −20 °C to 80 °C, gauge against 101 325 Pa. The first three are the same equations in ' +
      'other programs. The distance to GERG-2008 was found by comparing.',
    columns: [
      of('density of the line', 'relative', 1e-12, (row) =>
        relativeError(Number(lineOf(nitrogen, row).density_mol_m3), row.rho_span_mol_m3),
      ),
      of('target', 'bar', 1e-9, (row) => off(nitrogen, row, row.p_gauge_span2000_bar)),
      of('target of an ideal gas', 'bar', 1e-9, (row) => off(idealNitrogen, row, row.p_gauge_ideal_bar)),
      of(
        'target, GERG-2008, pre-charges up to 200 bar',
        'bar',
        0.009,
        (row) => off(nitrogen, row, row.p_gauge_gerg2008_bar),
        rows.filter((row) => row.p_ref_gauge_bar <= 200),
      ),
    ],
  };
}

/** 140 bar at 20 °C, as it is printed in tests/reference/README.md. */
const PRINTED = [
  { t_C: 0, real: '127.33', ideal: '130.38' },
  { t_C: 40, real: '152.61', ideal: '149.62' },
  { t_C: 60, real: '165.17', ideal: '159.24' },
] as const;

function idealLaw(): Group {
  const [real, ideal] = [specFor(nitrogen, 140, 20), specFor(idealNitrogen, 140, 20)];
  return {
    title: 'What the ideal-gas law costs: 140 bar at 20 °C',
    source:
      'Values of CoolProp 6.7.0 to two decimals, in `tests/reference/README.md`; the law beside them. Every printed ' +
      'digit of both.',
    checks: PRINTED.flatMap(({ t_C, real: printed, ideal: law }): Check[] => [
      printedDigits(`target at ${t_C} °C`, 'bar', printed, targetAt(real, t_C)),
      printedDigits(`by the ideal-gas law at ${t_C} °C`, 'bar', law, targetAt(ideal, t_C)),
    ]),
  };
}

function commonPractice(): Group {
  const ideal = specFor(idealNitrogen, 140, 20);
  const byHand = ((140 + 1.01325) * (40 + 273.15)) / (20 + 273.15) - 1.01325;
  return {
    title: 'Common practice',
    source:
      'Common practice, no source: the trade corrects by p2 = p1 T2 / T1, of absolute pressure and temperature. Worked by ' +
      'hand, it is the library’s ideal gas.',
    checks: [
      {
        what: '140 bar at 20 °C by hand, at 40 °C',
        expected: `${byHand.toFixed(4)} bar`,
        obtained: `${targetAt(ideal, 40).toFixed(4)} bar`,
        deviation: Math.abs(targetAt(ideal, 40) - byHand),
        allowance: 1e-9,
        unit: 'bar',
      },
    ],
  };
}

const TEMPERATURES_K = [223.15, 253.15, 273.15, 293.15, 313.15, 353.15, 423.15];
const PRESSURES_MPa = [1, 5, 10, 15, 20, 30, 50, 70];

function cubicDensity(): Group {
  const cell = (T_K: number, p_MPa: number): Cell => {
    const at = { temperature: temperature(T_K, 'K'), pressure: absolute(p_MPa, 'MPa') };
    const deviation = stateAt(cubicNitrogen, at).density_mol_m3 / stateAt(nitrogen, at).density_mol_m3 - 1;
    return { text: percent(deviation), deviation, allowance: p_MPa <= 20 ? 0.04 : 0.12 };
  };
  return {
    title: 'The cubic equation beside the reference equation: density',
    source:
      'Peng and Robinson (1976), a general-purpose cubic, against the reference equation above; in per cent of density. ' +
      'Neither paper states a figure for this: 4 % up to 20 MPa and 12 % up to 70 MPa were found by comparing.',
    grid: {
      corner: 'temperature',
      heads: PRESSURES_MPa.map((p) => `${p} MPa`),
      rows: TEMPERATURES_K.map((T) => ({ head: `${T} K`, cells: PRESSURES_MPa.map((p) => cell(T, p)) })),
    },
  };
}

function cubicTarget(): Group {
  const precharges = [60, 100, 140, 200, 250];
  const specs = precharges.map((p) => ({ cubic: specFor(cubicNitrogen, p, 20), real: specFor(nitrogen, p, 20) }));
  return {
    title: 'The cubic equation beside the reference equation: target',
    source:
      'The same, for the target: much of the error in density cancels on a line of constant density. Pre-charges in bar ' +
      'gauge at 20 °C, deviation of the target in per cent of it; 0.7 % was found by comparing.',
    grid: {
      corner: 'measured',
      heads: precharges.map((p) => `${p} bar`),
      rows: [-20, 0, 40, 60, 80].map((t_C) => ({
        head: `${t_C} °C`,
        cells: specs.map(({ cubic, real }) => {
          const deviation = targetAt(cubic, t_C) / targetAt(real, t_C) - 1;
          return { text: percent(deviation), deviation, allowance: 0.007 };
        }),
      })),
    },
  };
}

/** A signed relative deviation in per cent, to two decimals. */
function percent(relative: number): string {
  const text = (100 * Math.abs(relative)).toFixed(2);
  return Number(text) === 0 ? text : `${relative < 0 ? '−' : '+'}${text}`;
}

export function targets(): Step {
  return { title: 'Target', groups: [lines(), idealLaw(), commonPractice()] };
}

export function cubic(): Step {
  return { title: 'The cubic equation, for comparison', groups: [cubicDensity(), cubicTarget()] };
}
