// Step 2 of the method: the gas.
import {
  absolute,
  nitrogen,
  normalConditions,
  saturationAt,
  stateAt,
  temperature,
  type GasState,
  type Saturation,
} from 'isochore';
import { BELL, IDEAL, M, R, RHO_REDUCING, T_REDUCING, TERM } from '../../src/gas/nitrogen/coefficients.js';
import { numberRows, printedRows, relativeError } from '../support/reference.js';
import { SPAN_2000_JSON } from '../support/span2000.js';
import {
  digits,
  printedDigits,
  withinRelative,
  worst,
  type Check,
  type Column,
  type Group,
  type Step,
} from './check.js';

/** Columns of the state files, by the names that they have there. */
const COLUMNS = {
  rho_mol_m3: { what: 'density', of: (x: GasState) => x.density_mol_m3 },
  Z: { what: 'compression factor', of: (x: GasState) => x.compressibility },
  dpdT_rho_Pa_K: { what: '(∂p/∂T) at constant density', of: (x: GasState) => x.dpdT_Pa_K },
  dpdrho_T_Pa_m3_mol: { what: '(∂p/∂ρ) at constant temperature', of: (x: GasState) => x.dpdrho_Pa_m3_mol },
  u_J_mol: { what: 'internal energy', of: (x: GasState) => x.internalEnergy_J_mol },
  h_J_mol: { what: 'enthalpy', of: (x: GasState) => x.enthalpy_J_mol },
  s_J_molK: { what: 'entropy', of: (x: GasState) => x.entropy_J_molK },
  cv_J_molK: { what: 'heat capacity at constant volume', of: (x: GasState) => x.cv_J_molK },
  cp_J_molK: { what: 'heat capacity at constant pressure', of: (x: GasState) => x.cp_J_molK },
  w_m_s: { what: 'speed of sound', of: (x: GasState) => x.speedOfSound_m_s },
  mu_JT_K_Pa: { what: 'Joule–Thomson coefficient', of: (x: GasState) => x.jouleThomson_K_Pa },
} as const;
type Name = keyof typeof COLUMNS;

function at(T_K: number, p_Pa: number): GasState {
  return stateAt(nitrogen, { temperature: temperature(T_K, 'K'), pressure: absolute(p_Pa, 'Pa') });
}

/** A file of states by temperature and pressure, with the library's state beside each row. */
function states<N extends Name>(file: string, names: readonly N[]) {
  return numberRows(file, ['T_K', 'p_Pa', ...names] as const).map((row) => ({ row, here: at(row.T_K, row.p_Pa) }));
}

type States<N extends Name> = ReturnType<typeof states<N>>;

function column<N extends Name>(rows: States<N>, name: N, allowance: number, unit: 'relative' | 'K/Pa' = 'relative') {
  const { what, of } = COLUMNS[name];
  const deviations = rows.map(({ row, here }) => {
    const reference = row[name];
    return {
      where: `${digits(row.T_K, 6)} K, ${digits(row.p_Pa / 1e6, 6)} MPa`,
      deviation: unit === 'relative' ? relativeError(of(here), reference) : Math.abs(of(here) - reference),
    };
  });
  return worst(what, unit, allowance, deviations);
}

function coefficients(): Group {
  const { residual, idealGas, reducing, gasConstant_J_molK, molarMass_kg_mol } = SPAN_2000_JSON;
  const terms = (ours: object, theirs: readonly object[]): { where: string; deviation: number }[] =>
    theirs.flatMap((term, i) =>
      Object.entries(term).map(([name, value]) => {
        const own = Object.values(ours)[i] as Readonly<Record<string, number>> | undefined;
        return { where: `${name} of term ${i + 1}`, deviation: Math.abs((own?.[name] ?? Number.NaN) - Number(value)) };
      }),
    );
  const constants = [
    ['gas constant', R, gasConstant_J_molK],
    ['molar mass', M, molarMass_kg_mol],
    ['reducing temperature', T_REDUCING, reducing.T_K],
    ['reducing density', RHO_REDUCING, reducing.rho_mol_m3_coolprop],
  ] as const;
  const powers: Readonly<Record<string, number>> = IDEAL.power;
  const ideal = [
    ['a1', IDEAL.a1, idealGas.a1],
    ['a2', IDEAL.a2, idealGas.a2],
    ['ln τ', IDEAL.lnTau, idealGas.logTau],
    ...idealGas.power.map(({ n, t }) => [`τ^${t}`, powers[String(t)] ?? Number.NaN, n] as const),
    ['n of the exponential', IDEAL.n_e, idealGas.planckEinstein.n],
    ['θ of the exponential', IDEAL.theta_K, idealGas.planckEinstein.theta_K],
  ] as const;
  const apart = (list: readonly (readonly [where: string, ours: number, theirs: number])[]) =>
    list.map(([where, ours, theirs]) => ({ where, deviation: Math.abs(ours - theirs) }));
  return {
    title: 'The coefficients',
    source:
      'Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361, as carried by CoolProp 6.7.0 and matched term by term ' +
      'against a second copy: `nitrogen-span-2000.json`. Every digit must be there.',
    columns: [
      worst('32 power terms: n, d, t, l', 'as printed', 0, terms(TERM, residual.power)),
      worst('4 Gaussian terms: n, d, t, η, ε, β, γ', 'as printed', 0, terms(BELL, residual.gaussian)),
      worst('ideal part', 'as printed', 0, apart(ideal)),
      worst('constants of the equation', 'as printed', 0, apart(constants)),
    ],
  };
}

const SAME_EQUATION =
  'The same equation in another program, so the two agree to rounding. The cancellation of terms takes a digit or two ' +
  'from the caloric properties, and more beside the critical point.';

function grid(): Group {
  const tight = ['rho_mol_m3', 'Z', 'dpdT_rho_Pa_K', 'dpdrho_T_Pa_m3_mol'] as const;
  const caloric = ['u_J_mol', 'h_J_mol', 's_J_molK', 'cv_J_molK', 'cp_J_molK', 'w_m_s', 'mu_JT_K_Pa'] as const;
  const rows = states('nitrogen-grid.csv', [...tight, ...caloric]);
  return {
    title: 'States from 223 K to 423 K and 0.1 MPa to 70 MPa',
    source: `CoolProp 6.7.0, confirmed by a 50-digit evaluation to 2e-15: \`nitrogen-grid.csv\`. ${SAME_EQUATION}`,
    columns: [...tight.map((name) => column(rows, name, 1e-13)), ...caloric.map((name) => column(rows, name, 1e-12))],
  };
}

function cold(): Group {
  const names = Object.keys(COLUMNS).filter((name) => name !== 'mu_JT_K_Pa') as Exclude<Name, 'mu_JT_K_Pa'>[];
  const rows = states('nitrogen-cold.csv', names);
  return {
    title: 'States from 64 K to 220 K: vapour up to saturation, supercritical to 50 MPa',
    source:
      'A 50-digit evaluation of the equation: `nitrogen-cold.csv`. Only these rows and saturation can see a mistake in ' +
      'the four Gaussian terms.',
    columns: names.map((name) => column(rows, name, 1e-12)),
  };
}

const atTemperature = (T_K: number): Saturation => saturationAt(nitrogen, temperature(T_K, 'K'));

function saturation(): Group {
  const rows = numberRows('nitrogen-saturation.csv', ['T_K', 'p_Pa', 'rho_liquid_mol_m3', 'rho_vapour_mol_m3']).map(
    (row) => ({ row, here: atTemperature(row.T_K) }),
  );
  const of = (what: string, error: (x: (typeof rows)[number]) => number): Column =>
    worst(
      what,
      'relative',
      1e-12,
      rows.map((x) => ({ where: `${x.row.T_K} K`, deviation: error(x) })),
    );
  return {
    title: 'Saturation from 64 K to 126 K',
    source: 'Equal Gibbs energy of the equation’s two phases, solved to 50 digits: `nitrogen-saturation.csv`.',
    columns: [
      of('pressure', ({ row, here }) => relativeError(here.pressure.pascals, row.p_Pa)),
      of('density of the liquid', ({ row, here }) => relativeError(here.liquidDensity_mol_m3, row.rho_liquid_mol_m3)),
      of('density of the vapour', ({ row, here }) => relativeError(here.vapourDensity_mol_m3, row.rho_vapour_mol_m3)),
    ],
  };
}

function printedSaturation(): Group {
  const columns = [
    'T_K',
    'p_MPa',
    'rho_liquid_mol_dm3',
    'rho_vapour_mol_dm3',
    'h_vapour_J_mol',
    's_vapour_J_molK',
  ] as const;
  // The triple point lies below the model's lowest temperature.
  const rows = printedRows('published-saturation.csv', columns).filter((row) => Number(row.T_K) >= 64);
  return {
    title: 'Saturation as printed',
    source:
      'Span et al. (2000), p. 1403: `published-saturation.csv`. Every printed digit. The row of the triple point, ' +
      '63.151 K, lies below the model’s lowest temperature; what it prints of the liquid but its density the library ' +
      'does not give.',
    checks: rows.flatMap((row): Check[] => {
      const here = atTemperature(Number(row.T_K));
      const vapour = stateAt(nitrogen, {
        temperature: here.temperature,
        density_mol_m3: here.vapourDensity_mol_m3,
      });
      const at = `${row.T_K} K`;
      return [
        printedDigits(`${at}, pressure`, 'MPa', row.p_MPa, here.pressure.pascals / 1e6),
        printedDigits(`${at}, liquid`, 'mol/dm3', row.rho_liquid_mol_dm3, here.liquidDensity_mol_m3 / 1000),
        printedDigits(`${at}, vapour`, 'mol/dm3', row.rho_vapour_mol_dm3, here.vapourDensity_mol_m3 / 1000),
        printedDigits(`${at}, enthalpy of vapour`, 'J/mol', row.h_vapour_J_mol, vapour.enthalpy_J_mol),
        printedDigits(`${at}, entropy of vapour`, 'J/(mol K)', row.s_vapour_J_molK, vapour.entropy_J_molK),
      ];
    }),
  };
}

/** What the rows of published-values.csv print. */
const PRINTED = [
  { column: 'rho_mol_dm3', what: 'density', unit: 'mol/dm3', of: (x: GasState) => x.density_mol_m3 / 1000 },
  { column: 'u_J_mol', what: 'internal energy', unit: 'J/mol', of: (x: GasState) => x.internalEnergy_J_mol },
  { column: 'h_J_mol', what: 'enthalpy', unit: 'J/mol', of: (x: GasState) => x.enthalpy_J_mol },
  { column: 's_J_molK', what: 'entropy', unit: 'J/(mol K)', of: (x: GasState) => x.entropy_J_molK },
  { column: 'cv_J_molK', what: 'c_v', unit: 'J/(mol K)', of: (x: GasState) => x.cv_J_molK },
  { column: 'cp_J_molK', what: 'c_p', unit: 'J/(mol K)', of: (x: GasState) => x.cp_J_molK },
  { column: 'w_m_s', what: 'speed of sound', unit: 'm/s', of: (x: GasState) => x.speedOfSound_m_s },
] as const;

function published(author: string, check: (what: string, unit: string, printed: string, value: number) => Check) {
  return printedRows('published-values.csv', ['source', 'T_K', 'p_MPa', ...PRINTED.map((one) => one.column)])
    .filter((row) => row.source.startsWith(author))
    .flatMap((row) => {
      const here = at(Number(row.T_K), Number(row.p_MPa) * 1e6);
      return PRINTED.map(({ column, what, unit, of }) =>
        check(`${row.T_K} K, ${row.p_MPa} MPa, ${what}`, unit, row[column], of(here)),
      );
    });
}

function span(): Group {
  return {
    title: 'The printed table of the equation',
    source: 'Span et al. (2000), p. 1410: `published-values.csv`. Every printed digit.',
    checks: published('Span 2000', printedDigits),
  };
}

function younglove(): Group {
  return {
    title: 'Another equation: Younglove (1982)',
    source:
      'Younglove, J. Phys. Chem. Ref. Data 11 Suppl. 1 (1982): `published-values.csv`. An older equation, fitted to ' +
      'older measurements and printed to four digits: 0.05 % of density, 0.1 % of the rest, is room for its digits and ' +
      'little more.',
    checks: published('Younglove 1982', (what, unit, printed, value) =>
      withinRelative(what, unit, printed, value, what.endsWith('density') ? 5e-4 : 1e-3),
    ),
  };
}

function gerg(): Group {
  const rows = states('nitrogen-grid-gerg2008.csv', [
    'rho_mol_m3',
    'Z',
    'dpdT_rho_Pa_K',
    'dpdrho_T_Pa_m3_mol',
    'cv_J_molK',
    'cp_J_molK',
    'w_m_s',
    'mu_JT_K_Pa',
  ]);
  const everyday = rows.filter(({ row }) => row.T_K >= 270 && row.T_K <= 350 && row.p_Pa <= 30e6);
  const density = column(everyday, 'rho_mol_m3', 7e-5);
  return {
    title: 'Another equation: GERG-2008 (ISO 20765-2)',
    source:
      'GERG-2008 for pure nitrogen, by NIST’s public-domain AGA8 code: `nitrogen-grid-gerg2008.csv`, 223 K to 423 K and ' +
      '0.1 MPa to 70 MPa. Other authors, other terms, another program. How far the two lie apart was found by comparing ' +
      'them; the allowances are that, rounded up. Its energies and entropies have another zero.',
    columns: [
      { ...density, what: `${density.what}, 270 K to 350 K, to 30 MPa` },
      column(rows, 'rho_mol_m3', 1.7e-4),
      column(rows, 'Z', 1.7e-4),
      column(rows, 'dpdT_rho_Pa_K', 1.2e-3),
      column(rows, 'dpdrho_T_Pa_m3_mol', 1.2e-3),
      column(rows, 'cv_J_molK', 4e-3),
      column(rows, 'cp_J_molK', 2e-3),
      column(rows, 'w_m_s', 1e-3),
      // About its zero a ratio would say nothing.
      column(rows, 'mu_JT_K_Pa', 4e-9, 'K/Pa'),
    ],
  };
}

function isentrope(): Group {
  const rows = numberRows('isentrope.csv', [
    'T1_K',
    'p1_abs_bar',
    's1_J_molK',
    'p2_abs_bar',
    'T2_K',
    'rho2_mol_m3',
    'n_eff',
    'T2_K_gerg',
    'rho2_gerg_mol_m3',
  ]).map((row) => {
    const from = at(row.T1_K, row.p1_abs_bar * 1e5);
    const pressure = absolute(row.p2_abs_bar, 'bar');
    const to = stateAt(nitrogen, { pressure, entropy_J_molK: from.entropy_J_molK });
    const exponent = Math.log(row.p2_abs_bar / row.p1_abs_bar) / Math.log(to.density_mol_m3 / from.density_mol_m3);
    const where = `${digits(row.T1_K, 6)} K, ${row.p1_abs_bar} bar to ${digits(row.p2_abs_bar, 6)} bar`;
    return { row, from, to, exponent, where };
  });
  const of = (what: string, unit: string, allowance: number, error: (x: (typeof rows)[number]) => number): Column =>
    worst(
      what,
      unit,
      allowance,
      rows.map((x) => ({ where: x.where, deviation: error(x) })),
    );
  return {
    title: 'Compression at constant entropy',
    source:
      'CoolProp 6.7.0 and GERG-2008, as above: `isentrope.csv`, 80 bar to 200 bar absolute, compressed up to the ratios ' +
      'of the file. The distance to GERG-2008 was found by comparing.',
    columns: [
      of('entropy before', 'relative', 1e-13, ({ row, from }) => relativeError(from.entropy_J_molK, row.s1_J_molK)),
      of('temperature after', 'relative', 1e-12, ({ row, to }) => relativeError(to.temperature.kelvins, row.T2_K)),
      of('density after', 'relative', 1e-12, ({ row, to }) => relativeError(to.density_mol_m3, row.rho2_mol_m3)),
      of('exponent ln(p2/p1) / ln(ρ2/ρ1)', 'relative', 1e-12, ({ row, exponent }) =>
        relativeError(exponent, row.n_eff),
      ),
      of('temperature after, GERG-2008', 'K', 0.2, ({ row, to }) => Math.abs(to.temperature.kelvins - row.T2_K_gerg)),
      of('density after, GERG-2008', 'relative', 4e-4, ({ row, to }) =>
        relativeError(to.density_mol_m3, row.rho2_gerg_mol_m3),
      ),
    ],
  };
}

function handbook(): Group {
  const normal = stateAt(nitrogen, normalConditions);
  const filled = stateAt(nitrogen, { temperature: temperature(15, '°C'), pressure: absolute(201, 'bar') });
  const free = stateAt(nitrogen, { temperature: temperature(15, '°C'), pressure: absolute(1, 'bar') });
  const bottle = (0.05 * filled.density_mol_m3) / free.density_mol_m3;
  return {
    title: 'Handbook values and common practice',
    source:
      'The first two are in any handbook of gases, brought from memory. The bottle is common practice, no source, and ' +
      'from memory: it is sold by its rounded content, and suppliers differ by a tenth of a cubic metre.',
    checks: [
      printedDigits(
        'density at 0 °C and 101.325 kPa',
        'kg/m3',
        '1.2504',
        normal.density_mol_m3 * nitrogen.molarMass_kg_mol,
      ),
      {
        what: 'saturation pressure at the normal boiling point, 77.355 K',
        expected: '101325 Pa',
        obtained: `${atTemperature(77.355).pressure.pascals.toFixed(0)} Pa`,
        deviation: Math.abs(atTemperature(77.355).pressure.pascals - 101_325),
        // Half a unit in the last digit of the temperature, 0.0005 K, at some 12 kPa/K.
        allowance: 6,
        unit: 'Pa',
      },
      {
        what: 'content of a bottle of 50 L filled to 200 bar at 15 °C, as gas at 15 °C and 1 bar',
        expected: '9.6 m3',
        obtained: `${bottle.toFixed(2)} m3`,
        deviation: Math.abs(bottle - 9.6),
        allowance: 0.1,
        unit: 'm3',
      },
    ],
  };
}

export function gas(): Step {
  return {
    title: 'Gas',
    groups: [
      coefficients(),
      grid(),
      cold(),
      saturation(),
      printedSaturation(),
      isentrope(),
      span(),
      gerg(),
      younglove(),
      handbook(),
    ],
  };
}
