// An invented filling, to be varied in one place at a time.
import {
  gauge,
  nitrogen,
  OBJECTIVES,
  pressureDifference,
  standardAtmosphere,
  temperature,
  volume,
  type Bottle,
  type PlanGiven,
  type Rig,
  type ToFill,
} from 'isochore';

export const bar = (value: number) => gauge(value, 'bar');
export const RIG: Rig = { kit: { volume: volume(30, 'mL'), rated: bar(300) }, regulator: 'none' };

export const bottleOf = (name: string, p_bar: number, t_C = 20, changed: Partial<Bottle> = {}): Bottle => ({
  name,
  waterVolume: volume(50, 'L'),
  label: {
    gas: 'nitrogen',
    purityPercent: 99.99,
    filling: bar(200),
    rated: bar(200),
    ambient: standardAtmosphere,
  },
  read: { pressure: bar(p_bar), temperature: temperature(t_C, '°C'), ambient: standardAtmosphere },
  within: pressureDifference(4, 'bar'),
  residual: bar(5),
  ...changed,
});

export const emptyTo = (name: string, from: number, to: number, changed: Partial<ToFill> = {}): ToFill => ({
  name,
  gasVolume: volume(5, 'L'),
  read: { pressure: bar(from), temperature: temperature(20, '°C'), ambient: standardAtmosphere },
  to: bar(to),
  allowable: bar(250),
  ...changed,
});

export const fillingOf = (changed: Partial<PlanGiven> = {}): PlanGiven => ({
  gas: nitrogen,
  leastPurityPercent: 99.9,
  accumulators: [emptyTo('A', 100, 140)],
  bottles: [bottleOf('1', 190)],
  rig: RIG,
  objectives: OBJECTIVES,
  ...changed,
});
