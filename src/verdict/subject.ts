import { has } from '../basis/has.js';
import type { Instruments } from '../reading/instruments.js';
import { sourceOn, type Curve, type Line } from '../target/curve.js';
import type { Specification } from '../target/specification.js';
import type { Stated } from '../target/table.js';

/** A curve, how much of it counts, and how the manual printed what it is drawn through. */
export interface Subject {
  readonly about: 'target' | 'lower limit' | 'upper limit';
  readonly curve: Curve;
  /** By which an error of the curve is multiplied: a limit that is a percentage of the target takes over as much of it. */
  readonly factor: number;
  readonly printedStep_Pa: number;
}

/** The target and both limits of a specification. */
export function subjectsOf(
  spec: Specification,
  { printed }: Instruments,
): { readonly target: Subject; readonly lower: Subject; readonly upper: Subject } {
  const { target, limits } = spec['~curves'];
  const { tolerance } = spec;
  const step = (stated: Stated): number =>
    has(stated, 'rows')
      ? stated.printedStep.pascals
      : printed.pressure === 'as the table states'
        ? stepBeside(spec.precharge)
        : printed.pressure.pascals;
  const whole = { factor: 1, printedStep_Pa: step(spec.precharge) };
  const subject: Subject = { about: 'target', curve: target, ...whole };
  if (has(tolerance, 'minimum')) {
    const curves = limits as Exclude<typeof limits, string>; // stated limits have curves of their own
    return {
      target: subject,
      lower: { ...subject, about: 'lower limit', curve: curves.lower, printedStep_Pa: step(tolerance.minimum) },
      upper: { ...subject, about: 'upper limit', curve: curves.upper, printedStep_Pa: step(tolerance.maximum) },
    };
  }
  const about = { lower: 'lower limit', upper: 'upper limit' } as const;
  const percent = has(tolerance, 'plusMinusPercentOfGauge') ? tolerance.plusMinusPercentOfGauge / 100 : 0;
  const [low, high] = [1 - percent, 1 + percent];
  if (limits !== 'about the target') {
    // The points of the limits have the tolerance in them already; an error of the reference pressure moves them alike, and
    // one of a percentage by a little less or more.
    const { printedStep_Pa } = whole;
    return {
      target: subject,
      lower: { ...subject, about: about.lower, curve: limits.lower, printedStep_Pa: printedStep_Pa * low },
      upper: { ...subject, about: about.upper, curve: limits.upper, printedStep_Pa: printedStep_Pa * high },
    };
  }
  return {
    target: subject,
    lower: { ...subject, about: about.lower, factor: low },
    upper: { ...subject, about: about.upper, factor: high },
  };
}

/** Limits stated at points beside a table are printed as the table is. */
function stepBeside(precharge: Stated): number {
  return has(precharge, 'rows') ? precharge.printedStep.pascals : 0;
}

/** The line that a curve follows at a temperature; undefined between the rows of a table. */
export function lineAt(curve: Curve, T_K: number): Line | undefined {
  if (curve.by === 'line') return curve;
  const { by, rows } = sourceOn(curve, T_K);
  if (by === 'table' || curve.ends === 'refuse') return undefined;
  return rows[0]?.temperature.kelvins === curve.ends.below.point.T_K ? curve.ends.below : curve.ends.above;
}
