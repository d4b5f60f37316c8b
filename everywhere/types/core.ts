// What a user of the core writes, with the types that come back named where it matters.
import {
  absolute,
  charge,
  check,
  compare,
  difference,
  gauge,
  isFault,
  judge,
  nitrogen,
  pressureDifference,
  read,
  saturationAt,
  specification,
  standardAtmosphere,
  stateAt,
  target,
  temperature,
  volume,
  write,
  type AbsolutePressure,
  type GaugePressure,
  type Outcome,
  type PressureDifference,
  type Quantity,
  type Reading,
  type Specification,
} from 'isochore';

const spec: Specification = specification({
  gas: nitrogen,
  precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: gauge(210, 'bar'),
  settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
});
const reading: Reading = {
  pressure: read('gauge pressure', '143 bar gauge'),
  temperature: temperature(40, '°C'),
  ambient: absolute(1008, 'hPa'),
  gaugeStep: { step: 1, unit: 'bar' },
  oilSide: 'drained, zero verified',
  gasInside: 'nitrogen',
  minutesAtRest: 30,
};

export const wanted: GaugePressure = target(spec, reading);
export const outcome: Outcome = judge(spec, reading).outcome;
export const density: number = stateAt(nitrogen, {
  temperature: temperature(20, '°C'),
  pressure: standardAtmosphere,
}).density_mol_m3;
export const saturated: AbsolutePressure = saturationAt(nitrogen, temperature(80, 'K')).pressure;

/** A union that narrows by its action. */
export function toAdd(): string {
  const move = charge(spec, reading);
  return move.action === 'add' ? move.gas.rounded.mass : move.action;
}

/** A type parameter that follows the kind of quantity. */
export function written(quantity: Quantity): string {
  return quantity.kind === 'gauge pressure' ? write(quantity, { step: 0.1, unit: 'bar' }) : quantity.kind;
}

/** A generic function handed on, and the kind of what comes of two of one kind. */
export const inOrder: GaugePressure[] = [wanted, reading.pressure].sort(compare);
export const apart: PressureDifference = difference(wanted, reading.pressure);

export function codes(): readonly string[] {
  try {
    return check(spec, reading).cautions.map((caution) => caution.code);
  } catch (error) {
    if (isFault(error)) return error.problems.map((problem) => problem.code);
    throw error;
  }
}

// @ts-expect-error A gauge pressure is not an absolute one.
export const mistaken: AbsolutePressure = gauge(140, 'bar');
declare const either: GaugePressure | AbsolutePressure;
// @ts-expect-error It may be a gauge pressure.
export const mixed: number = compare(either, reading.ambient);
// @ts-expect-error A pressure has no degrees.
export const misread: string = write(wanted, { step: 1, unit: '°C' });
