import { temperatureOf } from '../quantity/kind.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { bandAbout } from './band.js';
import { sumOfParts } from './budget.js';
import { compareWith, correctedReading, type Comparison, type Part } from './contributions.js';
import type { Sum } from './distribution.js';
import { subjectsOf } from './subject.js';

/** How well the errors at one limit are known, and how far from it the reading lies. */
export interface Side {
  /** Of the reading from the limit, positive inside the band; Pa. */
  readonly inside: number;
  /** Of the target from the limit, likewise. */
  readonly targetInside: number;
  readonly parts: readonly Part[];
  readonly span_Pa: number;
}

export interface Sides {
  /** Of the reading from the target, Pa. */
  readonly offTarget: number;
  readonly targetParts: readonly Part[];
  readonly lower: Side;
  readonly upper: Side;
}

/** Where a reading, corrected, and its target lie against both limits, for checked input. */
export function sidesOf(spec: Specification, reading: Reading, instruments: Instruments): Sides {
  const subjects = subjectsOf(spec, instruments);
  const { T_K, p_g_Pa } = correctedReading(reading, instruments);
  const [target, low, high] = [subjects.target, subjects.lower, subjects.upper].map((subject) =>
    compareWith(spec, reading, instruments, subject),
  ) as [Comparison, Comparison, Comparison];
  const at = { temperature: temperatureOf(T_K), ambient: reading.ambient };
  const { lower, upper } = bandAbout(spec, at, target.p_g_Pa, reading);
  const span_Pa = instruments.gauge.fullScale.pascals;
  // Where the target shifts with the vessel, the limits shift with theirs.
  const side = (by: Comparison, above: (p_Pa: number) => number): Side => ({
    inside: above(p_g_Pa),
    targetInside: above(target.p_g_Pa + target.shift_Pa),
    parts: by.parts,
    span_Pa,
  });
  return {
    offTarget: p_g_Pa - target.p_g_Pa - target.shift_Pa,
    targetParts: target.parts,
    lower: side(low, (p_Pa) => p_Pa - lower.pascals - low.shift_Pa),
    upper: side(high, (p_Pa) => upper.pascals + high.shift_Pa - p_Pa),
  };
}

/** The distributions of the errors at both limits. */
export interface Sums {
  readonly lower: Sum;
  readonly upper: Sum;
}

/** The distributions of the errors at both limits. */
export function sumsOf({ lower, upper }: Sides, readings: number): Sums {
  return { lower: sumOfParts(lower.parts, readings), upper: sumOfParts(upper.parts, readings) };
}
