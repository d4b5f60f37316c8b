import fc from 'fast-check';
import { absolute, nitrogen, stateAt, temperature, type GasState } from 'isochore';

/** The state of nitrogen at a temperature and an absolute pressure, from bare SI numbers. */
export function at(T_K: number, p_Pa: number): GasState {
  return stateAt(nitrogen, { temperature: temperature(T_K, 'K'), pressure: absolute(p_Pa, 'Pa') });
}

/** Evenly spread numbers, both ends included; a double drawn by its bits would nearly always be tiny. */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const steps = 2 ** 20;
  return fc.integer({ min: 0, max: steps }).map((i) => min + ((max - min) * i) / steps);
}

/** Temperatures of the model's validity, K. */
export const anyTemperature = evenly(160, 1000);

/** Pressures of the model's validity from 1 Pa on, Pa: half of them evenly spread, half evenly in their logarithm. */
export const anyPressure = fc.oneof(
  evenly(1, 200e6),
  evenly(0, Math.log(200e6)).map((x) => Math.min(Math.exp(x), 200e6)),
);
