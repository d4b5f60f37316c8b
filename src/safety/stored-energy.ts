import { under } from '../basis/fault.js';
import { relation, step2, step3, step4, type Trace } from '../basis/relation.js';
import { taken } from '../basis/taken.js';
import { CONTENTS, TAKES } from '../gas/amount.js';
import { densityAt } from '../gas/door.js';
import { exp, log } from '../gas/elementary.js';
import { expansionOf, type Expansion } from '../gas/expansion.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import {
  absoluteOf,
  amountOf,
  massOf,
  need,
  volumeOf,
  type AbsolutePressure,
  type Amount,
  type GaugePressure,
  type Mass,
  type Temperature,
  type Volume,
} from '../quantity/kind.js';
import { TO_ABSOLUTE } from '../quantity/pressure.js';
import { all } from '../reading/checks.js';
import { needRead, type Read } from '../verdict/compare.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needGiven, needPressure } from './checks.js';
import { needSpace } from '../target/space.js';

/** A vessel with gas: a specification is one, and so is a bottle. */
export interface Vessel {
  readonly gas: GasModel;
  /** Volume of the gas side with the oil side drained, or of the bottle. More than zero. */
  readonly gasVolume: Volume;
}

/** The gas as it is in service: compressed by the oil, at the pressure of the system. */
export interface InService {
  readonly systemPressure: GaugePressure;
  /** Temperature of the gas at that pressure. */
  readonly temperature: Temperature;
}

/** The energy of gas in one state, by two ways. */
export interface EnergyOfGas {
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
  /** Volume that the gas takes in this state. */
  readonly volume: Volume;
  /** By the ideal-gas expression of ASME PCC-2, in J. It counts the work on the atmosphere as part of the energy. */
  readonly pcc2_J: number;
  /** By the real gas, expanding at constant entropy to the ambient pressure. */
  readonly realGas: {
    /** Loss of internal energy, U1 − U2, in J: the work on the atmosphere is counted as part of it. */
    readonly energy_J: number;
    /** Of which goes into pushing the atmosphere aside, p_amb (V2 − V1), in J. */
    readonly onAtmosphere_J: number;
    /** U1 − U2 less the work on the atmosphere, in J: what may tear, throw and sound. */
    readonly lessAtmosphere_J: number;
    /** How the gas ends. */
    readonly ends: Pick<Expansion, 'temperature' | 'phase' | 'vapourFraction'>;
  };
  /** The larger of the two that count the work on the atmosphere. */
  readonly governs: 'ASME PCC-2' | 'real gas';
  /** That larger energy, in J. */
  readonly energy_J: number;
  readonly tnt: Mass;
}

/** The energy stored in the gas of a vessel. */
export interface StoredEnergy {
  readonly amount: Amount;
  /** The gas as it was read, with the oil side drained. */
  readonly charged: EnergyOfGas;
  /** The same gas compressed to the pressure of the system. */
  readonly inService: EnergyOfGas | 'not asked';
  /** Which of the two states has more. */
  readonly worse: 'charged' | 'in service';
  readonly energy_J: number;
  readonly tnt: Mass;
  /** By what an energy was made a mass of TNT. */
  readonly tntFactor: { readonly joulesPerKilogram: number; readonly source: string };
  readonly cautions: readonly CausedCaution<'stored energy'>[];
}

/** Ratio of heat capacities that ASME PCC-2 takes for nitrogen and air, from memory. */
const K_NITROGEN = 1.4;
/** J of a kilogram of TNT in ASME PCC-2, article 501 (from memory: TNT = E / 4 266 920). */
const TNT_J_kg = 4_266_920;
const TNT_SOURCE = 'ASME PCC-2, article 501, from memory';

export const RATIO_POWER = /* @__PURE__ */ relation({
  gives: 'r_k',
  unit: '1',
  from: ['p_abs', 'p_amb', 'k'],
  formula: 'exp((k - 1) / k * log(p_amb / p_abs))',
  source: 'ratio of temperatures of an isentropic expansion of an ideal gas: (p_amb / p_abs)^((k - 1) / k)',
  of: (p_abs, p_amb, k) => exp(((k - 1) / k) * log(p_amb / p_abs)),
});

export const PCC2_ENERGY = /* @__PURE__ */ relation({
  gives: 'E',
  unit: 'J',
  from: ['p_abs', 'V_gas', 'k', 'r_k'],
  formula: 'p_abs * V_gas / (k - 1) * (1 - r_k)',
  source: 'ASME PCC-2, article 501, from memory: ideal gas, isentropic, work on the atmosphere included',
  of: (p_abs, V_gas, k, r_k) => ((p_abs * V_gas) / (k - 1)) * (1 - r_k),
});

export const REAL_ENERGY = /* @__PURE__ */ relation({
  gives: 'E',
  unit: 'J',
  from: ['n', 'w'],
  formula: 'n * w',
  source: 'first law: loss of internal energy of the amount of gas, isentropic by the gas model',
  of: (n, w) => n * w,
});

export const ON_ATMOSPHERE = /* @__PURE__ */ relation({
  gives: 'E',
  unit: 'J',
  from: ['p_amb', 'n', 'rho_high', 'rho_low'],
  formula: 'p_amb * n * (1 / rho_low - 1 / rho_high)',
  source: 'work on an atmosphere of constant pressure, p_amb (V2 - V1)',
  of: (p_amb, n, rho_high, rho_low) => p_amb * n * (1 / rho_low - 1 / rho_high),
});

export const LESS_ATMOSPHERE = /* @__PURE__ */ relation({
  gives: 'E',
  unit: 'J',
  from: ['E_gas', 'E_push'],
  formula: 'E_gas - E_push',
  source: 'energy of the gas less the work on the atmosphere',
  of: (E_gas, E_push) => E_gas - E_push,
});

export const TNT_MASS = /* @__PURE__ */ relation({
  gives: 'm',
  unit: 'kg',
  from: ['E', 'e_TNT'],
  formula: 'E / e_TNT',
  source: 'equivalent of TNT: ASME PCC-2, article 501, from memory',
  of: (E, e_TNT) => E / e_TNT,
});

const AS_IT_IS = 'as it is';

/**
 * The energy that the gas of a vessel sets free if it bursts: by the ideal-gas expression of ASME PCC-2,
 * E = p V / (k − 1) [1 − (p_amb / p)^((k − 1) / k)] with k = 1.4, and by the real gas expanding at constant entropy to the
 * ambient pressure, where from about 100 bar on some of it condenses ({@link isentropicExpansion}). The larger governs. Both
 * count the work on the atmosphere as part of the energy; what is left without it is given beside.
 *
 * Energy of the oil, and of the shell's own strain, is not in it. The expression with k = 1.4 is for nitrogen.
 *
 * @param vessel the gas and its volume: a specification, or a bottle
 * @param charged pressure, temperature and ambient, as read with the oil side drained
 * @param inService the same gas at the pressure of the system: a smaller volume at a higher pressure
 * @throws {@link Fault} `wrong kind`, `gauge for absolute`, `absolute for gauge`, `unchecked copy`; `not positive`,
 * `gauge below vacuum`, `not an ambient pressure`; `outside the model`, `liquid`
 * @example
 * ```ts
 * const charged = { pressure: gauge(150, 'bar'), temperature: temperature(20, '°C'), ambient: standardAtmosphere };
 * const system = { systemPressure: gauge(280, 'bar'), temperature: temperature(50, '°C') };
 * const { charged: by, worse, energy_J, tnt } = storedEnergy(spec, charged, system);
 * [Math.round(by.pcc2_J / 1000), Math.round(by.realGas.energy_J / 1000), by.governs]; // => [144, 122, 'ASME PCC-2']
 * [worse, Math.round(energy_J / 1000), write(tnt, { step: 0.001, unit: 'kg' })]; // => ['in service', 185, '0.043 kg']
 * ```
 */
export function storedEnergy(vessel: Vessel, charged: Read, inService?: InService, trace?: Trace): StoredEnergy {
  const own = under('vessel', () => needVessel(vessel));
  const read = under('charged', () => {
    const one = needRead(charged);
    all(['pressure', () => needPressure(one.pressure)]);
    return one;
  });
  const system = inService === undefined ? undefined : under('inService', () => needInService(inService));
  const { gas, gasVolume } = own;
  const ambient = read.ambient;
  const V = gasVolume.cubicMetres;
  const p = absoluteOf(step2(trace, TO_ABSOLUTE, 'charged', read.pressure.pascals, ambient.pascals));
  const rho = densityAt(gas, read.temperature.kelvins, p.pascals, 'charged.pressure', 'charged', trace);
  const n = step2(trace, CONTENTS, 'charged', V, rho);
  const asCharged = energyOf(gas, read, gasVolume, ambient, n, 'charged', trace);
  const asServing = system === undefined ? undefined : serving(gas, system, ambient, n, trace);
  const worse = asServing !== undefined && asServing.energy_J > asCharged.energy_J ? 'in service' : 'charged';
  const { energy_J, tnt } = worse === 'in service' && asServing !== undefined ? asServing : asCharged;
  return {
    amount: amountOf(n),
    charged: asCharged,
    inService: asServing ?? 'not asked',
    worse,
    energy_J,
    tnt,
    tntFactor: { joulesPerKilogram: TNT_J_kg, source: TNT_SOURCE },
    cautions: cautionsOf('stored energy', ['stored energy', 'stored pressure']),
  };
}

/** The energy of the gas in service: the volume is what its amount takes at the pressure of the system. */
function serving(gas: GasModel, system: InService, ambient: AbsolutePressure, n: number, trace?: Trace): EnergyOfGas {
  const { systemPressure: pressure, temperature } = system;
  const p_abs = step2(trace, TO_ABSOLUTE, 'in service', pressure.pascals, ambient.pascals);
  const rho = densityAt(gas, temperature.kelvins, p_abs, 'inService.systemPressure', 'in service', trace);
  return energyOf(
    gas,
    { pressure, temperature },
    volumeOf(step2(trace, TAKES, 'in service', n, rho)),
    ambient,
    n,
    'in service',
    trace,
  );
}

function energyOf(
  gas: GasModel,
  { pressure, temperature }: Pick<Read, 'pressure' | 'temperature'>,
  volume: Volume,
  ambient: AbsolutePressure,
  n: number,
  about: string,
  trace?: Trace,
): EnergyOfGas {
  const p_abs = TO_ABSOLUTE.of(pressure.pascals, ambient.pascals);
  const r_k = step3(trace, RATIO_POWER, about, p_abs, ambient.pascals, K_NITROGEN);
  const pcc2_J = step4(trace, PCC2_ENERGY, `${about}, by the ideal gas`, p_abs, volume.cubicMetres, K_NITROGEN, r_k);
  const end = expansionOf(gas, { pressure: absoluteOf(p_abs), temperature }, ambient, trace);
  const [before, after] = end.densities_mol_m3;
  const real = step2(trace, REAL_ENERGY, `${about}, by the gas model`, n, end.work_J_mol);
  const onAtmosphere_J = step4(trace, ON_ATMOSPHERE, `${about}, on the atmosphere`, ambient.pascals, n, before, after);
  const energy_J = Math.max(pcc2_J, real);
  return {
    pressure,
    temperature,
    volume,
    pcc2_J,
    realGas: {
      energy_J: real,
      onAtmosphere_J,
      lessAtmosphere_J: step2(trace, LESS_ATMOSPHERE, `${about}, without the atmosphere`, real, onAtmosphere_J),
      ends: { temperature: end.temperature, phase: end.phase, vapourFraction: end.vapourFraction },
    },
    governs: real > pcc2_J ? 'real gas' : 'ASME PCC-2',
    energy_J,
    tnt: massOf(step2(trace, TNT_MASS, about, energy_J, TNT_J_kg)),
  };
}

/** Gas and volume of a vessel, each read once and checked. */
export function needVessel(vessel: Vessel): Vessel {
  needGiven(vessel, 'vessel: gas and gasVolume');
  const { gas, gasVolume } = vessel;
  all(['gas', () => needModel(gas, '')], ['gasVolume', () => needSpace(gasVolume)]);
  return { gas, gasVolume };
}

function needInService(inService: InService): InService {
  needGiven(inService, 'gas in service: systemPressure and temperature');
  const own = taken(inService, { systemPressure: AS_IT_IS, temperature: AS_IT_IS });
  all(
    ['systemPressure', () => needPressure(own.systemPressure)],
    ['temperature', () => need('temperature', own.temperature, '')],
  );
  return own;
}
