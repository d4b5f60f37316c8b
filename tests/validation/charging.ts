// Charging day: textbook results in closed form, for a perfect gas where they have one, and what the trade knows.
import {
  absolute,
  bleeding,
  bottleState,
  checkLoss,
  fillingPlan,
  nitrogen,
  normalVolume,
  reference15C1bar,
  standardAtmosphere,
  temperature,
  toGauge,
  valueIn,
  volume,
  type GaugePressure,
  type Read,
} from 'isochore';
import { bar, celsius } from '../support/accumulator.js';
import { fills } from '../support/fills.js';
import { GAMMA, perfectGas } from '../support/perfect-gas.js';
import { relativeError } from '../support/reference.js';
import { bottleOf } from '../supply/filling.js';
import { digits, type Check, type Group, type Step } from './check.js';

const ambient = absolute(1000, 'hPa');
const of = (p_bar: number): GaugePressure => toGauge(absolute(p_bar, 'bar'), ambient);
const at = (p_bar: number, T_K: number): Read => ({
  pressure: of(p_bar),
  temperature: temperature(T_K, 'K'),
  ambient,
});
const barAbsolute = (p: GaugePressure): number => (p.pascals + ambient.pascals) / 1e5;

const row = (what: string, expected: number, obtained: number, unit: string, allowance = 1e-9): Check => ({
  what,
  expected: `${digits(expected, 8)} ${unit}`,
  obtained: `${digits(obtained, 8)} ${unit}`,
  deviation: relativeError(obtained, expected),
  allowance,
  unit: 'relative',
});

function adiabaticFilling(): Group {
  const vessel = { gas: perfectGas, gasVolume: volume(5, 'L') };
  return {
    title: 'Filling an evacuated rigid vessel without heat',
    source:
      'First law for a rigid evacuated vessel filled from a main, e.g. Moran and Shapiro, Fundamentals of Engineering ' +
      'Thermodynamics, transient control volumes (from memory): T₂ = γ T_in, for a perfect gas with γ = 7/5.',
    checks: [280, 300, 330].map((T_in) => {
      const supply = { pressure: of(300), temperature: temperature(T_in, 'K') };
      const { adiabatic } = fills(vessel, at(1e-9, 300), { supply, until: { stop: of(150) } });
      return row(`to 150 bar from ${T_in} K`, GAMMA * T_in, adiabatic.temperature.kelvins, 'K');
    }),
  };
}

function blowDown(): Group {
  const vessel = { gas: perfectGas, gasVolume: volume(5, 'L') };
  return {
    title: 'What remains in a vessel that is let out without heat',
    source:
      'Isentropic blow-down of a perfect gas, any textbook of thermodynamics (from memory): ' +
      'T₂ / T₁ = (p₂ / p₁)^((γ − 1) / γ).',
    checks: [0.9, 0.5, 0.1].map((ratio) => {
      const { adiabatic } = bleeding(vessel, at(150, 300), { until: { stop: of(150 * ratio) } });
      const expected = 300 * ratio ** ((GAMMA - 1) / GAMMA);
      return row(`from 150 bar and 300 K to ${150 * ratio} bar`, expected, adiabatic.temperature.kelvins, 'K');
    }),
  };
}

function equalisation(): Group {
  return {
    title: 'Two vessels that equalise',
    source:
      'Conservation of the amount of a perfect gas at one temperature, any textbook (from memory): ' +
      'p = (p₁ V₁ + p₂ V₂) / (V₁ + V₂).',
    checks: [10, 50].map((litres) => {
      const [p_b, p_a] = [120, 20];
      const one = bottleOf('B', 1);
      const bottle = {
        ...one,
        waterVolume: volume(litres, 'L'),
        label: { ...one.label, gas: perfectGas.gas, rated: bar(300) },
        read: at(p_b, 300),
        residual: bar(0),
      };
      const accumulator = {
        name: 'A',
        gasVolume: volume(5, 'L'),
        read: at(p_a, 300),
        to: of(p_b * 0.99),
        allowable: bar(300),
      };
      // A second one of the same bottle completes it, so that the first step is taken at all.
      const high = { ...bottle, name: 'C', read: at(200, 300) };
      const plan = fillingPlan({
        gas: perfectGas,
        leastPurityPercent: 'not demanded',
        accumulators: [accumulator],
        bottles: [bottle, high],
        rig: { kit: { volume: volume(0, 'L'), rated: bar(300) }, regulator: 'none' },
        objectives: [
          'accumulators completed',
          'useful remainder',
          'full bottles opened',
          'bottles used',
          'connections',
        ],
      });
      const step = plan.steps.find((one) => one.ended === 'equalised');
      const obtained = step === undefined ? Number.NaN : barAbsolute(step.accumulatorAfter);
      const expected = (p_b * litres + p_a * 5) / (litres + 5);
      return row(`${p_b} bar in ${litres} L and ${p_a} bar in 5 L`, expected, obtained, 'bar absolute');
    }),
  };
}

function trade(): Group {
  const practice = (what: string, expected: number, obtained: number, allowance: number, unit: string): Check => ({
    what,
    expected: `about ${expected} ${unit}`,
    obtained: `${digits(obtained, 4)} ${unit}`,
    deviation: obtained - expected,
    allowance,
    unit,
  });
  const { contents } = bottleState(nitrogen, bottleOf('1', 200, 15), 'not demanded');
  const hot = [218, 220, 222].map((p) => bottleState(nitrogen, bottleOf('1', p, 35), 'not demanded').at15C);
  const loss = checkLoss(
    nitrogen,
    { gasVolume: volume(1, 'L'), read: { pressure: bar(148), temperature: celsius(20), ambient: standardAtmosphere } },
    volume(30, 'mL'),
    bar(0),
  );
  return {
    title: 'Bottles and kits as the trade knows them',
    source:
      'Common practice, no source: 50 L at 200 bar and 15 °C holds 9.5 to 10 m3 at 15 °C and 1 bar; filled to 200 bar it ' +
      'shows about 220 bar at 35 °C; 30 mL of kit takes about 4.7 bar from 1 L at 148 bar. The allowances are what ' +
      '"about" may mean: a quarter of a cubic metre, two bar, a tenth of a bar.',
    checks: [
      practice('50 L at 200 bar and 15 °C', 9.75, normalVolume(contents.amount, nitrogen, reference15C1bar).cubicMetres, 0.25, 'm3'), // prettier-ignore
      practice('220 bar at 35 °C, referred to 15 °C', 200, valueIn(hot[1] ?? bar(0), 'bar'), 2, 'bar'),
      practice('30 mL vented kit on 1 L at 148 bar', 4.7, valueIn(loss.fall, 'bar'), 0.1, 'bar'),
    ],
  };
}

export function charging(): Step {
  return { title: 'Charging day', groups: [adiabaticFilling(), blowDown(), equalisation(), trade()] };
}
