import { caution, USUAL, type Caution, type CautionCode } from '../basis/caution.js';
import { has } from '../basis/has.js';
import type { Trace } from '../basis/relation.js';
import type { Source } from '../basis/source.js';
import { densityUncertainty, type DensityUncertainty } from '../gas/state.js';
import { TO_ABSOLUTE } from '../quantity/pressure.js';
import type { Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetDensity } from '../target/target.js';
import { readDensity } from '../verdict/compare.js';
import { checkedReading, judged, type Verdict } from '../verdict/judge.js';
import { chargeFor, type Charge } from './charge.js';

/** The whole answer to one reading. */
export interface Check {
  readonly verdict: Verdict;
  readonly charge: Charge;
  /** What belongs to this result first, then the usual cautions of the work. To be shown with the result. */
  readonly cautions: readonly Caution[];
  /** The `id` of the gas model. */
  readonly model: string;
  /** Relative uncertainty of density that the model's source states at the target. The instruments come on top. */
  readonly densityUncertainty: DensityUncertainty;
  readonly sources: readonly Source[];
}

/**
 * Checks an accumulator: the verdict on a reading, what to do about it, and the cautions that go with it.
 *
 * @throws {@link Fault} as {@link judge}
 * @example
 * ```ts
 * const { verdict, charge } = check(spec, reading);
 * verdict.outcome; // => 'undercharged'
 * charge.action; // => 'add'
 * ```
 */
export function check(spec: Specification, reading: Reading, trace?: Trace): Check {
  needSpecification(spec);
  return checked(spec, checkedReading(reading), trace);
}

function checked(spec: Specification, reading: Reading, trace?: Trace): Check {
  const verdict = judged(spec, reading, trace);
  const charge = chargeFor(spec, reading, verdict, trace);
  const target_Pa = TO_ABSOLUTE.of(verdict.target.pascals, reading.ambient.pascals);
  const uncertainty = densityUncertainty(spec.gas, reading.temperature.kelvins, target_Pa);
  return {
    verdict,
    charge,
    cautions: [...ownCautions(spec, reading, verdict, charge, uncertainty), ...USUAL].map((code) => caution(code)),
    model: spec.gas.id,
    densityUncertainty: uncertainty,
    sources: [spec.gas.source],
  };
}

function ownCautions(
  spec: Specification,
  reading: Reading,
  verdict: Verdict,
  charge: Charge,
  uncertainty: DensityUncertainty,
): CautionCode[] {
  const codes: CautionCode[] = [];
  if (reading.pressure.pascals > spec.allowable.pascals) codes.push('reading above the allowable pressure');
  if (verdict.target.pascals > spec.allowable.pascals) codes.push('target above the allowable pressure');
  if (verdict.outcome === 'gas side empty' && charge.action === 'withheld') codes.push('empty gas side');
  if (verdict.outcome === 'gas not known' || verdict.outcome === 'not comparable') codes.push('not comparable');
  if (has(verdict, 'offTarget') && lostMost(spec, reading, verdict)) codes.push('large loss');
  if (has(charge, 'stop')) {
    if (charge.stop.action === 'withheld') codes.push('stop pressure above the allowable pressure');
    else if (charge.stop.mark === 'no mark of the gauge to stop at') codes.push('no mark to stop at');
  }
  if (spec.disagreements.length > 0) codes.push('table and nominal point disagree');
  if (uncertainty === 'not stated by the source') codes.push('model uncertainty not stated');
  return codes;
}

/** Whether less than half of the gas is left: no gauge is that wrong, and no slow leak that fast. */
function lostMost(spec: Specification, reading: Reading, { target }: Verdict): boolean {
  return readDensity(spec, reading) < targetDensity(spec, reading, target.pascals) / 2;
}
