// What can hurt, in numbers: expansions by another program, and expressions of standards evaluated by hand.
import {
  absolute,
  amount,
  idealNitrogen,
  isentropicExpansion,
  nitrogen,
  oxygenAfterRelease,
  standardAtmosphere,
  storedEnergy,
  temperature,
  volume,
} from 'isochore';
import { bar, celsius } from '../support/accumulator.js';
import { numberRows, relativeError } from '../support/reference.js';
import { digits, worst, type Check, type Group, type Step } from './check.js';

function expansions(): Group {
  const rows = numberRows('expansion.csv', [
    'T1_C',
    'p1_abs_bar',
    'p2_abs_Pa',
    'T2_K',
    'rho2_mol_m3',
    'u1_less_u2_J_mol',
  ]);
  const ends = rows.map((row) => ({
    row,
    end: isentropicExpansion(
      nitrogen,
      { pressure: absolute(row.p1_abs_bar, 'bar'), temperature: temperature(row.T1_C, '°C') },
      absolute(row.p2_abs_Pa, 'Pa'),
    ),
    where: `${row.p1_abs_bar} bar at ${row.T1_C} °C to ${row.p2_abs_Pa} Pa`,
  }));
  const column = (what: string, of: (one: (typeof ends)[number]) => number) =>
    worst(
      what,
      'relative',
      1e-9,
      ends.map((one) => ({ where: one.where, deviation: of(one) })),
    );
  return {
    title: 'Expansion at constant entropy to an ambient pressure',
    source:
      'CoolProp 8.0.0, the same equation of state in another program: `expansion.csv`. Most of these end in two phases. ' +
      'The allowance is what two solvers of saturation may differ by.',
    columns: [
      column('temperature', ({ row, end }) => relativeError(end.temperature.kelvins, row.T2_K)),
      column('density of both phases', ({ row, end }) => relativeError(end.densities_mol_m3[1], row.rho2_mol_m3)),
      column('loss of internal energy', ({ row, end }) => relativeError(end.work_J_mol, row.u1_less_u2_J_mol)),
    ],
  };
}

function pcc2(): Group {
  const checks = [50, 150, 300].map((p_bar): Check => {
    const P = p_bar * 1e5 + 101_325;
    const expected = 2.5 * P * 0.005 * (1 - (101_325 / P) ** 0.286);
    const { pcc2_J } = storedEnergy(
      { gas: nitrogen, gasVolume: volume(5, 'L') },
      { pressure: bar(p_bar), temperature: celsius(20), ambient: standardAtmosphere },
    ).charged;
    return {
      what: `5 L at ${p_bar} bar gauge`,
      expected: `${digits(expected, 5)} J`,
      obtained: `${digits(pcc2_J, 5)} J`,
      deviation: relativeError(pcc2_J, expected),
      allowance: 1e-3,
      unit: 'relative',
    };
  });
  return {
    title: 'Stored energy of an ideal gas',
    source:
      'ASME PCC-2, article 501, from memory: 2.5 P V [1 − (Pa / P)^0.286] for nitrogen. The library takes 2/7 for the ' +
      'rounded exponent; the allowance is that.',
    checks,
  };
}

function dilution(): Group {
  const conditions = { temperature: celsius(20), ambient: standardAtmosphere };
  const checks = [5, 20, 60].map((cubicMetres): Check => {
    const released = amountInRoom(cubicMetres);
    const expected = 0.209 * Math.exp(-cubicMetres / 60);
    const { figures } = oxygenAfterRelease({
      room: volume(60, 'm3'),
      conditions,
      gas: idealNitrogen,
      released,
      minutes: 'at once',
      ventilation: 'none',
      oxygenBefore: 0.209,
      limit: { fraction: 0.19, source: 'a rule of this test' },
    });
    const obtained = figures.find(({ by }) => by === 'well mixed')?.fraction ?? Number.NaN;
    return {
      what: `${cubicMetres} m3 of nitrogen into 60 m3`,
      expected: digits(expected, 8),
      obtained: digits(obtained, 8),
      deviation: relativeError(obtained, expected),
      allowance: 1e-9,
      unit: 'relative',
    };
  });
  return {
    title: 'Oxygen after a release, well mixed',
    source:
      'Well-mixed dilution, any textbook of ventilation (from memory): x = x₀ exp(−V_gas / V_room), by ideal-gas volumes.',
    checks,
  };
}

/** Amount of an ideal gas that takes a volume at 20 °C and 1 atm; R of CODATA 2018, from memory. */
function amountInRoom(cubicMetres: number) {
  return amount((101_325 * cubicMetres) / (8.314462618 * 293.15), 'mol');
}

export function safety(): Step {
  return { title: 'Safety numbers', groups: [expansions(), pcc2(), dilution()] };
}
