import { relation, step2, step3, type Trace } from '../basis/relation.js';
import { temperatureOf } from '../quantity/kind.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { bandAbout } from './band.js';
import { sumOfParts } from './budget.js';
import { compareWith, type Comparison, type Part } from './contributions.js';
import { correctedReading } from './corrected-reading.js';
import type { Sum } from './distribution.js';
import { subjectsOf } from './subject.js';

export const LOWER_MARGIN = /* @__PURE__ */ relation({
  gives: 'dp_inside',
  unit: 'Pa',
  from: ['p_read', 'p_lower'],
  formula: 'p_read - p_lower',
  source: 'distance of a reading to the lower limit, negative below it, by definition',
  of: (p_read, p_lower) => p_read - p_lower,
});

export const UPPER_MARGIN = /* @__PURE__ */ relation({
  gives: 'dp_inside',
  unit: 'Pa',
  from: ['p_read', 'p_upper'],
  formula: 'p_upper - p_read',
  source: 'distance of a reading to the upper limit, negative above it, by definition',
  of: (p_read, p_upper) => p_upper - p_read,
});

export const LOWER_MARGIN_WARM = /* @__PURE__ */ relation({
  gives: 'dp_inside',
  unit: 'Pa',
  from: ['p_read', 'p_lower', 'dp_vessel'],
  formula: 'p_read - p_lower - dp_vessel',
  source: 'distance of a reading to the lower limit of the vessel as it is warm, negative below it',
  of: (p_read, p_lower, dp_vessel) => p_read - p_lower - dp_vessel,
});

export const UPPER_MARGIN_WARM = /* @__PURE__ */ relation({
  gives: 'dp_inside',
  unit: 'Pa',
  from: ['p_read', 'p_upper', 'dp_vessel'],
  formula: 'p_upper + dp_vessel - p_read',
  source: 'distance of a reading to the upper limit of the vessel as it is warm, negative above it',
  of: (p_read, p_upper, dp_vessel) => p_upper + dp_vessel - p_read,
});

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
export function sidesOf(spec: Specification, reading: Reading, instruments: Instruments, trace?: Trace): Sides {
  const subjects = subjectsOf(spec, instruments);
  const { T_K, p_g_Pa } = correctedReading(reading, instruments);
  const [target, low, high] = [subjects.target, subjects.lower, subjects.upper].map((subject) =>
    compareWith(spec, reading, instruments, subject),
  ) as [Comparison, Comparison, Comparison];
  const at = { temperature: temperatureOf(T_K), ambient: reading.ambient };
  const { lower, upper } = bandAbout(spec, at, target.p_g_Pa, reading, trace);
  const span_Pa = instruments.gauge.fullScale.pascals;
  // Where the target shifts with the vessel, the limits shift with theirs.
  const aboveLower = (p_Pa: number, trace?: Trace): number =>
    low.shift_Pa === 0
      ? step2(trace, LOWER_MARGIN, 'lower limit', p_Pa, lower.pascals)
      : step3(trace, LOWER_MARGIN_WARM, 'lower limit', p_Pa, lower.pascals, low.shift_Pa);
  const belowUpper = (p_Pa: number, trace?: Trace): number =>
    high.shift_Pa === 0
      ? step2(trace, UPPER_MARGIN, 'upper limit', p_Pa, upper.pascals)
      : step3(trace, UPPER_MARGIN_WARM, 'upper limit', p_Pa, upper.pascals, high.shift_Pa);
  const side = (by: Comparison, inside: typeof aboveLower): Side => ({
    inside: inside(p_g_Pa, trace),
    targetInside: inside(target.p_g_Pa + target.shift_Pa),
    parts: by.parts,
    span_Pa,
  });
  return {
    offTarget: p_g_Pa - target.p_g_Pa - target.shift_Pa,
    targetParts: target.parts,
    lower: side(low, aboveLower),
    upper: side(high, belowUpper),
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
