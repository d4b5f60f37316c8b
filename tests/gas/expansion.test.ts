import {
  absolute,
  cubicNitrogen,
  idealNitrogen,
  isentropicExpansion,
  nitrogen,
  saturationAt,
  standardAtmosphere,
  stateAt,
  temperature,
  type Expansion,
  type GasCondition,
  type Saturation,
  type Step,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { VAPOUR_FRACTION } from '../../src/gas/expansion.js';
import { numberRows, referenceText, relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';
import { span2000 } from '../support/span2000.js';

const K = (kelvins: number) => temperature(kelvins, 'K');
const Pa = (pascals: number) => absolute(pascals, 'Pa');

/** Saturation under a pressure, found by halves. */
function saturationUnder(p_Pa: number): Saturation {
  let [low, high] = [64, 126.19];
  for (let i = 0; i < 60; i += 1) {
    const T = 0.5 * (low + high);
    if (saturationAt(nitrogen, K(T)).pressure.pascals < p_Pa) low = T;
    else high = T;
  }
  return saturationAt(nitrogen, K(high));
}

describe('expansions at constant entropy, in reverse the compressions of tests/reference/isentrope.csv', () => {
  const rows = numberRows('isentrope.csv', ['T1_K', 'p1_abs_bar', 'p2_abs_bar', 'rho1_mol_m3', 'T2_K', 'rho2_mol_m3']);
  test('there are 48, and each comes back to where it was compressed from', () => {
    expect(rows).toHaveLength(48);
    for (const row of rows) {
      const from = { temperature: K(row.T2_K), pressure: absolute(row.p2_abs_bar, 'bar') };
      const end = isentropicExpansion(nitrogen, from, absolute(row.p1_abs_bar, 'bar'));
      expect(relativeError(end.temperature.kelvins, row.T1_K)).toBeLessThan(1e-11);
      expect(relativeError(end.densities_mol_m3[0], row.rho2_mol_m3)).toBeLessThan(1e-11);
      expect(relativeError(end.densities_mol_m3[1], row.rho1_mol_m3)).toBeLessThan(1e-11);
      expect(end.phase).toBe('gas');
    }
  });
});

// Source: CoolProp 8.0.0, the same equation of state in another program; its saturation is solved by itself.
describe('expansions to an ambient pressure, as gas and through two phases: tests/reference/expansion.csv', () => {
  const columns = [
    'T1_C',
    'p1_abs_bar',
    'p2_abs_Pa',
    'rho1_mol_m3',
    'T2_K',
    'rho2_mol_m3',
    'u1_less_u2_J_mol',
  ] as const;
  const rows = numberRows('expansion.csv', columns);
  const ends = rows.map((row) => {
    const from = { temperature: temperature(row.T1_C, '°C'), pressure: absolute(row.p1_abs_bar, 'bar') };
    return isentropicExpansion(nitrogen, from, Pa(row.p2_abs_Pa));
  });
  const quality = vapourFractions();

  test('temperature, density and work, to 1e-9', () => {
    rows.forEach((row, i) => {
      const end = ends[i];
      expect(relativeError(end?.temperature.kelvins ?? 0, row.T2_K)).toBeLessThan(1e-9);
      expect(relativeError(end?.densities_mol_m3[1] ?? 0, row.rho2_mol_m3)).toBeLessThan(1e-9);
      expect(relativeError(end?.work_J_mol ?? 0, row.u1_less_u2_J_mol)).toBeLessThan(1e-9);
    });
  });

  test('the share of vapour, where there are two phases, and gas elsewhere', () => {
    expect(quality.filter((q) => q !== undefined).length).toBeGreaterThan(40);
    expect(quality.filter((q) => q === undefined).length).toBeGreaterThan(10);
    quality.forEach((q, i) => {
      expect(ends[i]?.phase).toBe(q === undefined ? 'gas' : 'liquid and vapour');
      expect(Math.abs((ends[i]?.vapourFraction ?? 0) - (q ?? 1))).toBeLessThan(1e-9);
    });
  });
});

/** Share of vapour of each row; the cell is empty for gas. */
function vapourFractions(): (number | undefined)[] {
  const [, ...lines] = referenceText('expansion.csv').trim().split('\n');
  return lines.map((line) => line.split(',').at(-2)).map((cell) => (cell === '' ? undefined : Number(cell)));
}

describe('laws', () => {
  test('two phases begin without a jump: beside saturated vapour the work changes by little', () => {
    const T = 293.15;
    const works = Array.from({ length: 200 }, (_, i) => {
      const pressure = absolute(85 + i * 0.1, 'bar');
      return isentropicExpansion(nitrogen, { temperature: K(T), pressure }, standardAtmosphere);
    });
    expect(new Set(works.map(({ phase }) => phase)).size).toBe(2);
    works.slice(1).forEach((end, i) => {
      expect(Math.abs(end.work_J_mol - (works[i]?.work_J_mol ?? 0))).toBeLessThan(1);
      expect(end.vapourFraction).toBeLessThanOrEqual(works[i]?.vapourFraction ?? 0);
    });
  });

  test('an expansion to its own pressure does no work', () => {
    const from = { temperature: K(300), pressure: absolute(100, 'bar') };
    const end = isentropicExpansion(nitrogen, from, from.pressure);
    expect(Math.abs(end.work_J_mol)).toBeLessThan(1e-6);
    expect(relativeError(end.temperature.kelvins, 300)).toBeLessThan(1e-12);
  });

  test('saturated vapour under its own pressure is gas still', () => {
    for (let T = 64; T < 126; T += 0.5) {
      const { pressure } = saturationAt(nitrogen, K(T));
      expect(isentropicExpansion(nitrogen, { temperature: K(T), pressure }, pressure).phase).toBe('gas');
    }
  });

  // Above the critical pressure nothing condenses: the gas only becomes denser than at the critical point.
  test('an end above the critical pressure is gas, down to the critical temperature', () => {
    for (const T of [126.2, 127, 130, 140]) {
      const end = stateAt(nitrogen, { temperature: K(T), pressure: Pa(5e6) });
      const from = stateAt(nitrogen, { pressure: Pa(20e6), entropy_J_molK: end.entropy_J_molK });
      const { phase, temperature: found } = isentropicExpansion(nitrogen, from, Pa(5e6));
      expect([phase, found.kelvins.toFixed(6)]).toEqual(['gas', T.toFixed(6)]);
    }
  });

  // Closed form: T2 = T1 (p2/p1)^(2/7) for an ideal gas whose heat capacity at constant pressure is 7/2 R.
  test('in the ideal-gas limit the temperature follows the power law', () => {
    const from = { temperature: K(300), pressure: absolute(2, 'bar') };
    const { kelvins } = isentropicExpansion(idealNitrogen, from, absolute(1, 'bar')).temperature;
    expect(relativeError(kelvins, 300 * 0.5 ** (2 / 7))).toBeLessThan(2e-4);
    const thin = { temperature: K(300), pressure: Pa(20) };
    expect(relativeError(isentropicExpansion(nitrogen, thin, Pa(10)).temperature.kelvins, kelvins)).toBeLessThan(1e-5);
  });

  /** What a step shows, and of what. */
  const shownOf = (from: GasCondition): { shown: unknown[][]; end: Expansion } => {
    const steps: Step[] = [];
    const end = isentropicExpansion(nitrogen, from, standardAtmosphere, (step) => steps.push(step));
    const shown = steps.map(({ about, relation, values, result }) => [about, relation.formula, values, result]);
    return { shown, end };
  };

  test('the working shows entropy and energy of the gas before and after', () => {
    const from = { temperature: K(293.15), pressure: absolute(20, 'bar') };
    const { shown, end } = shownOf(from);
    const before = stateAt(nitrogen, from);
    const after = stateAt(nitrogen, { pressure: standardAtmosphere, entropy_J_molK: before.entropy_J_molK });
    const [at, to] = [
      [293.15, before.density_mol_m3],
      [after.temperature.kelvins, after.density_mol_m3],
    ];
    expect(shown.slice(0, 3)).toEqual([
      ['before', 'p(T, rho) = p_abs', [293.15, 2e6], before.density_mol_m3],
      ['before', 's(T, rho)', at, before.entropy_J_molK],
      ['before', 'u(T, rho)', at, before.internalEnergy_J_mol],
    ]);
    expect(shown.slice(-2)).toEqual([
      ['after', 'u(T, rho)', to, after.internalEnergy_J_mol],
      ['expansion', 'u_high - u_low', [before.internalEnergy_J_mol, after.internalEnergy_J_mol], end.work_J_mol],
    ]);
  });

  test('and through two phases the lever rule, for energy and for volume', () => {
    const { shown, end } = shownOf({ temperature: K(293.15), pressure: absolute(150, 'bar') });
    const { temperature: cold, liquidDensity_mol_m3, vapourDensity_mol_m3 } = saturationUnder(101_325);
    const [wet, dry] = [liquidDensity_mol_m3, vapourDensity_mol_m3].map((rho) => span2000(cold.kelvins, rho));
    const x = end.vapourFraction;
    const u = (wet?.u_J_mol ?? 0) + x * ((dry?.u_J_mol ?? 0) - (wet?.u_J_mol ?? 0));
    const v = 1 / liquidDensity_mol_m3 + x * (1 / vapourDensity_mol_m3 - 1 / liquidDensity_mol_m3);
    expect(shown.slice(-5).map(([about]) => about)).toEqual([
      'after',
      'internal energy after',
      'volume after',
      'after',
      'expansion',
    ]);
    const results = shown.slice(-5).map(([, , , result]) => Number(result));
    [x, u, v, 1 / v, Number(shown[2]?.[3]) - u].forEach((wanted, i) => {
      expect(relativeError(results[i] ?? Number.NaN, wanted)).toBeLessThan(1e-10);
    });
  });

  test('the working shows the share of vapour', () => {
    const steps: Step[] = [];
    const from = { temperature: K(293.15), pressure: absolute(150, 'bar') };
    const { vapourFraction } = isentropicExpansion(nitrogen, from, standardAtmosphere, (step) => steps.push(step));
    expect(steps.find(({ relation }) => relation === VAPOUR_FRACTION)?.result).toBe(vapourFraction);
  });
});

describe('what is refused', () => {
  const from = { temperature: K(293.15), pressure: absolute(150, 'bar') };
  test.each([0, 5e-324, 1e-291])('%d Pa at either end, which is no gas and has no entropy', (p_Pa) => {
    const empty = (path: string): object => ({ code: 'empty space', path, found: `${p_Pa} Pa absolute` });
    expect(problemOf(() => isentropicExpansion(nitrogen, from, Pa(p_Pa)))).toMatchObject(empty('to'));
    expect(problemOf(() => isentropicExpansion(nitrogen, { ...from, pressure: Pa(p_Pa) }, Pa(1)))).toMatchObject(
      empty('from.pressure'),
    );
  });
  test('an end that is all liquid', () => {
    const dense = { temperature: K(130), pressure: absolute(2000, 'bar') };
    const { code, path, found, wanted } = problemOf(() => isentropicExpansion(nitrogen, dense, absolute(20, 'bar')));
    expect([code, path]).toEqual(['liquid', 'to']);
    const [, s] = /^2000000 Pa absolute at (\S+) J\/\(mol K\)$/.exec(found) ?? [];
    const [, least] = /at least (\S+) J\/\(mol K\)/.exec(wanted) ?? [];
    expect(relativeError(Number(s), stateAt(nitrogen, dense).entropy_J_molK)).toBeLessThan(1e-12);
    const { temperature: cold, liquidDensity_mol_m3 } = saturationUnder(20e5);
    expect(relativeError(Number(least), span2000(cold.kelvins, liquidDensity_mol_m3).s_J_molK)).toBeLessThan(1e-10);
  });
  test('an end beyond the model: below 64 K, and below 160 K for the cubic equation', () => {
    const far = { temperature: K(250), pressure: absolute(600, 'bar') };
    expect(problemOf(() => isentropicExpansion(nitrogen, far, Pa(1000))).code).toBe('outside the model');
    expect(problemOf(() => isentropicExpansion(cubicNitrogen, from, standardAtmosphere)).code).toBe(
      'outside the model',
    );
    expect(problemOf(() => isentropicExpansion(idealNitrogen, far, standardAtmosphere)).code).toBe('outside the model');
  });
  test('what is no gas condition', () => {
    for (const given of [null, undefined, {}, 1]) {
      expect(problemOf(() => isentropicExpansion(nitrogen, given as never, standardAtmosphere)).code).toBe(
        'wrong kind',
      );
    }
  });
});

test.each<[string, () => unknown]>([
  ['model', () => isentropicExpansion({} as never, { temperature: K(300), pressure: Pa(1e6) }, Pa(1e5))],
  ['from.pressure', () => isentropicExpansion(nitrogen, { temperature: K(300), pressure: 1e6 as never }, Pa(1e5))],
  ['from.temperature', () => isentropicExpansion(nitrogen, { temperature: 300 as never, pressure: Pa(1e6) }, Pa(1e5))],
  ['to', () => isentropicExpansion(nitrogen, { temperature: K(300), pressure: Pa(1e6) }, 1e5 as never)],
  // Beyond the model: by its temperature, by its pressure.
  ['from.temperature', () => isentropicExpansion(nitrogen, { temperature: K(1001), pressure: Pa(1e6) }, Pa(1e5))],
  ['from.pressure', () => isentropicExpansion(nitrogen, { temperature: K(300), pressure: Pa(201e6) }, Pa(1e5))],
])('what is wrong with an argument is said of it: %s, case %#', (path, call) => {
  expect(problemOf(call).path).toBe(path);
});

test('an end names the model and the pressure that it is under', () => {
  for (const bar of [20, 150]) {
    const from = { temperature: K(293.15), pressure: absolute(bar, 'bar') };
    const end = isentropicExpansion(nitrogen, from, standardAtmosphere);
    expect([end.model, end.pressure]).toEqual([nitrogen.id, standardAtmosphere]);
  }
});

test('a state at the start is the one of stateAt', () => {
  const from = { temperature: K(320), pressure: absolute(210, 'bar') };
  const { densities_mol_m3 } = isentropicExpansion(nitrogen, from, absolute(100, 'bar'));
  expect(densities_mol_m3[0]).toBe(stateAt(nitrogen, from).density_mol_m3);
});
