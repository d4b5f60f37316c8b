import { fail } from '../basis/fault.js';
import { outsideBounds } from '../basis/problem.js';
import { relation, step2, step3, step4, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { VOLUME_AT } from '../gas/amount.js';
import { checkTemperature, densityAt } from '../gas/door.js';
import { exp, log } from '../gas/elementary.js';
import type { GasModel } from '../gas/model.js';
import { needModel } from '../gas/state.js';
import { need, volumeOf, type Amount, type Volume } from '../quantity/kind.js';
import { all } from '../reading/checks.js';
import type { Conditions } from '../target/conditions.js';
import { needConditions } from '../target/target.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needFraction, needGiven, needNumber, needSaid } from './checks.js';

/**
 * Oxygen in dry air by volume: 20.9476 %, ISO 2533 (from memory). A value one may pass for the air before a release; it is
 * never assumed.
 *
 * @example
 * ```ts
 * oxygenInDryAir.toFixed(3); // => '0.209'
 * ```
 */
export const oxygenInDryAir = 0.209476;

/** A release of gas into a room. Nothing here has a default. */
export interface Release {
  /** Free volume of the room: what machinery and stores take is not air. More than zero. */
  readonly room: Volume;
  /** Temperature of the room and its ambient pressure. */
  readonly conditions: Conditions;
  readonly gas: GasModel;
  readonly released: Amount;
  /** How long the release takes, at a constant rate: of a burst `at once`. Minutes, more than zero. */
  readonly minutes: number | 'at once';
  /** Fresh air supplied, in volumes of the room per hour; `none` where there is none, or where it may fail. */
  readonly ventilation: { readonly airChangesPerHour: number } | 'none';
  /** Fraction of oxygen by volume in the room before, and in the fresh air; {@link oxygenInDryAir} is one. */
  readonly oxygenBefore: number;
  /** The fraction below which nobody may be in the room, and the code or rule that says so. */
  readonly limit: { readonly fraction: number; readonly source: string };
}

/** One way to compute what is left. */
export interface OxygenLeft {
  readonly by: 'displacement' | 'well mixed';
  readonly ventilation: 'without ventilation' | 'with ventilation';
  /** Fraction of oxygen by volume when the release ends, on the average of the room. */
  readonly fraction: number;
  readonly against: 'below the limit' | 'not below the limit';
}

/** Oxygen in a room after a release of gas. */
export interface OxygenAfterRelease {
  /** What the lowest figure says against the limit. It never says that a space is safe. */
  readonly outcome: 'below the limit' | 'not below the limit by calculation';
  /** Whether there is less room than gas. */
  readonly room: 'larger than the gas released' | 'not larger than the gas released';
  /** Volume of the gas at the temperature and pressure of the room. */
  readonly gasVolume: Volume;
  /** The lowest of all figures: it leads. */
  readonly lowest: OxygenLeft;
  /** Displacement and well mixed; with ventilation too, where it is stated. */
  readonly figures: readonly OxygenLeft[];
  /**
   * Well mixed and ventilated on: minutes from the end of the release until the limit is reached again. `never`: without
   * ventilation, or with fresh air that has no more oxygen than the limit. It plans a wait; a measurement ends it.
   */
  readonly minutesToLimit: number | 'never';
  readonly limit: Release['limit'];
  readonly cautions: readonly CausedCaution<'release into a room'>[];
}

export const GAS_PER_ROOM = /* @__PURE__ */ relation({
  gives: 'r_gas',
  unit: '1',
  from: ['V_gas', 'V_room'],
  formula: 'V_gas / V_room',
  source: 'volume of the gas released, at the conditions of the room, by that of the room',
  of: (V_gas, V_room) => V_gas / V_room,
});

export const DISPLACED = /* @__PURE__ */ relation({
  gives: 'x_O2',
  unit: '1',
  from: ['x_O2_before', 'r_gas'],
  formula: 'x_O2_before * max(1 - r_gas, 0)',
  source: 'displacement: the gas drives out its own volume of air, unmixed, until none is left',
  of: (x_O2_before, r_gas) => x_O2_before * Math.max(1 - r_gas, 0),
});

export const MIXED = /* @__PURE__ */ relation({
  gives: 'x_O2',
  unit: '1',
  from: ['x_O2_before', 'r_gas'],
  formula: 'x_O2_before * exp(-r_gas)',
  source: 'well-mixed dilution: V dx/dt = -q x, from x_O2_before, until V_gas = q t is released',
  of: (x_O2_before, r_gas) => x_O2_before * exp(-r_gas),
});

export const FRESH_AIR = /* @__PURE__ */ relation({
  gives: 'r_air',
  unit: '1',
  from: ['n_air', 't'],
  formula: 'n_air * t / 60',
  source: 'fresh air by volumes of the room, at so many an hour',
  of: (n_air, t) => (n_air * t) / 60,
});

export const DISPLACED_VENTILATED = /* @__PURE__ */ relation({
  gives: 'x_O2',
  unit: '1',
  from: ['x_O2_before', 'r_gas', 'r_air'],
  formula: 'x_O2_before * (1 - r_gas / max(r_gas + r_air, 1))',
  source:
    'displacement with fresh air: both drive out their own volume, and when the room has been replaced what comes in',
  of: (x_O2_before, r_gas, r_air) => x_O2_before * (1 - r_gas / Math.max(r_gas + r_air, 1)),
});

export const MIXED_VENTILATED = /* @__PURE__ */ relation({
  gives: 'x_O2',
  unit: '1',
  from: ['x_O2_before', 'r_gas', 'r_air'],
  formula: 'x_O2_before * ((r_air + r_gas * exp(-(r_gas + r_air))) / (r_gas + r_air))',
  source:
    'well-mixed dilution with fresh air: V dx/dt = Q x_O2_before - (Q + q) x, closed form at the end of the release',
  of: (x_O2_before, r_gas, r_air) => x_O2_before * ((r_air + r_gas * exp(-(r_gas + r_air))) / (r_gas + r_air)),
});

export const MINUTES_TO_LIMIT = /* @__PURE__ */ relation({
  gives: 't_limit',
  unit: 'min',
  from: ['x_O2_before', 'x_O2', 'x_O2_limit', 'n_air'],
  formula: 'log((x_O2_before - x_O2) / (x_O2_before - x_O2_limit)) * 60 / n_air',
  source: 'well-mixed dilution with fresh air alone: V dx/dt = Q (x_O2_before - x)',
  of: (x_O2_before, x_O2, x_O2_limit, n_air) => (log((x_O2_before - x_O2) / (x_O2_before - x_O2_limit)) * 60) / n_air,
});

const AS_IT_IS = 'as it is';
const RELEASE: Fields = {
  room: AS_IT_IS,
  conditions: { temperature: AS_IT_IS, ambient: AS_IT_IS },
  gas: AS_IT_IS,
  released: AS_IT_IS,
  minutes: AS_IT_IS,
  ventilation: { airChangesPerHour: AS_IT_IS },
  oxygenBefore: AS_IT_IS,
  limit: { fraction: AS_IT_IS, source: AS_IT_IS },
};

// Wider than anything that is meant: a year, an air change a second, a box and a cavern, the gas of a tanker.
const MINUTES = [1e-6, 525_960] as const;
const CHANGES = [1e-3, 3600] as const;
const ROOM_m3 = [1e-3, 1e8] as const;
const MOST_mol = 1e10;

/**
 * Oxygen in a room after a release of gas, when the release ends: by displacement (the gas drives out air, unmixed) and well
 * mixed (it mixes at once, and the mixture leaves), without ventilation and, where it is stated, with it. The room stays at
 * its ambient pressure. The lowest figure leads: ventilation may fail.
 *
 * All are averages over the room. Near the release, and low down where cold gas lies, there is less. **A computed figure
 * never clears a space: measure.**
 *
 * @throws {@link Fault} with every problem found: `wrong kind`, `gauge for absolute`, `unchecked copy`, `not a number`,
 * `not positive`, `outside bounds` (a fraction not between 0 and 1; a limit not below the oxygen before), `missing` (the
 * source of the limit), `not a text`, `not an ambient pressure`; `outside the model`
 * @example
 * ```ts
 * const left = oxygenAfterRelease({
 *   room: volume(30, 'm3'),
 *   conditions: { temperature: temperature(35, '°C'), ambient: standardAtmosphere },
 *   gas: nitrogen,
 *   released: amount(400, 'mol'), // a bottle of 50 L
 *   minutes: 'at once',
 *   ventilation: { airChangesPerHour: 10 },
 *   oxygenBefore: oxygenInDryAir,
 *   limit: { fraction: 0.2, source: "the ship's procedure for enclosed spaces (invented)" },
 * });
 * [left.outcome, left.lowest.by, left.lowest.fraction.toFixed(3)]; // => ['below the limit', 'displacement', '0.139']
 * ```
 */
export function oxygenAfterRelease(release: Release, trace?: Trace): OxygenAfterRelease {
  needGiven(release, 'release of gas into a room');
  const own = taken(release, RELEASE);
  needRelease(own);
  const { room, conditions, gas, released, oxygenBefore: before, limit, ventilation, minutes } = own;
  const [T, p] = [conditions.temperature.kelvins, conditions.ambient.pascals];
  checkTemperature(gas, T, 'conditions.temperature');
  const rho = densityAt(gas, T, p, 'conditions.ambient', 'reference state of the volume', trace);
  const gasVolume = step2(trace, VOLUME_AT, 'gas', released.moles, rho);
  const r = step2(trace, GAS_PER_ROOM, 'release', gasVolume, room.cubicMetres);
  const n_air = ventilation === 'none' ? 0 : ventilation.airChangesPerHour;
  const figure = (by: OxygenLeft['by'], ventilated: OxygenLeft['ventilation'], fraction: number): OxygenLeft => ({
    by,
    ventilation: ventilated,
    fraction,
    against: fraction < limit.fraction ? 'below the limit' : 'not below the limit',
  });
  const displaced = step2(trace, DISPLACED, 'release, unmixed', before, r);
  const mixed = step2(trace, MIXED, 'release, mixed', before, r);
  const figures = [
    figure('displacement', 'without ventilation', displaced),
    figure('well mixed', 'without ventilation', mixed),
  ];
  let mixedVentilated = mixed;
  if (ventilation !== 'none') {
    const r_air = step2(trace, FRESH_AIR, 'ventilation', n_air, minutes === 'at once' ? 0 : minutes);
    // With neither gas nor air nothing changes, and the closed form is 0/0.
    const changed = r > 0 || r_air > 0;
    mixedVentilated = changed
      ? step3(trace, MIXED_VENTILATED, 'release, mixed with fresh air', before, r, r_air)
      : before;
    const replaced = step3(trace, DISPLACED_VENTILATED, 'release, unmixed with fresh air', before, r, r_air);
    figures.push(figure('displacement', 'with ventilation', replaced));
    figures.push(figure('well mixed', 'with ventilation', mixedVentilated));
  }
  const lowest = figures.reduce((a, b) => (b.fraction < a.fraction ? b : a));
  const below = lowest.against === 'below the limit';
  return {
    outcome: below ? 'below the limit' : 'not below the limit by calculation',
    room: r < 1 ? 'larger than the gas released' : 'not larger than the gas released',
    gasVolume: volumeOf(gasVolume),
    lowest,
    figures,
    minutesToLimit: minutesTo(limit.fraction, mixedVentilated, before, n_air, trace),
    limit,
    cautions: cautionsOf('release into a room', [
      ...(below ? (['oxygen below the limit'] as const) : []),
      'measure oxygen',
      'asphyxiation',
    ]),
  };
}

function minutesTo(limit: number, x: number, before: number, n_air: number, trace?: Trace): number | 'never' {
  if (x >= limit) return 0;
  return n_air === 0 ? 'never' : step4(trace, MINUTES_TO_LIMIT, 'release', before, x, limit, n_air);
}

function needRelease({ room, conditions, gas, released, minutes, ventilation, oxygenBefore, limit }: Release): void {
  all(
    ['room', () => needRoom(room)],
    ['conditions', () => needConditions(conditions)],
    ['gas', () => needModel(gas, '')],
    ['released', () => needAmount(released)],
    ['minutes', () => (minutes === 'at once' ? undefined : needNumber(minutes, 'min', ...MINUTES))],
    ['ventilation', () => needVentilation(ventilation)],
    ['oxygenBefore', () => needFraction(oxygenBefore)],
    ['limit', () => needLimit(limit, oxygenBefore)],
  );
}

function needRoom(room: Volume): void {
  need('volume', room, '');
  needNumber(room.cubicMetres, 'm3', ...ROOM_m3);
}

function needAmount(released: Amount): void {
  need('amount of substance', released, '');
  if (released.moles > MOST_mol)
    fail(outsideBounds, '', `${released.moles} mol`, { bounds: `at most ${MOST_mol} mol` });
}

function needVentilation(ventilation: Release['ventilation']): void {
  if (ventilation === 'none') return;
  needGiven(ventilation, "'none' or airChangesPerHour");
  all(['airChangesPerHour', () => needNumber(ventilation.airChangesPerHour, 'per hour', ...CHANGES)]);
}

function needLimit(limit: Release['limit'], before: number): void {
  needGiven(limit, 'limit of oxygen: fraction and source');
  all(
    ['fraction', () => needFraction(limit.fraction)],
    ['source', () => needSaid(limit.source, 'the code or rule that sets this limit')],
  );
  // Held against the oxygen before only where that is one; what it is else has a problem of its own.
  if (limit.fraction > 0 && (!Number.isFinite(before) || limit.fraction < before)) return;
  const bounds = Number.isFinite(before) ? `more than 0 and less than the oxygen before, ${before}` : 'more than 0';
  fail(outsideBounds, 'fraction', String(limit.fraction), { bounds });
}
