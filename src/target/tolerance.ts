import { collect, fail, failIfAny, fieldNames, quote, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import {
  bandReachesZero,
  bandWithoutWidth,
  limitsCrossed,
  missing,
  negative,
  notAPercentage,
  notATolerance,
  unknownWord,
  outsideBounds,
} from '../basis/problem.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import type { GasModel } from '../gas/model.js';
import { gaugeOf, need, type PressureDifference } from '../quantity/kind.js';
import { inBar } from '../quantity/unit.js';
import { curveOf, gaugeOnCurve, lineThrough, type Curve } from './curve.js';
import { copyOfStated, isObject, needObject, needStated, type ReferencePoint, type Stated } from './table.js';

/**
 * How far a pre-charge may lie off its target: the same to both sides, a size to each side, or a percentage of the gauge
 * target (of a gauge pressure, as the trade has it). Sizes are zero or more, and at least one is more than zero.
 */
export type Tolerance =
  | { readonly plusMinus: PressureDifference }
  | { readonly below: PressureDifference; readonly above: PressureDifference }
  | { readonly plusMinusPercentOfGauge: number };

/**
 * Where the tolerance holds. At the measured temperature it is laid about the target there. At the reference temperature
 * it is laid about the reference pressure, and its limits follow their own constant-density lines: in a hot vessel the
 * band is wider.
 */
export type Applies = 'at the measured temperature' | 'at the reference temperature';

/** The lowest and the highest pressure that a manual allows, each stated at a point or by a table. */
export interface StatedLimits {
  readonly minimum: Stated;
  readonly maximum: Stated;
}

/** What a manual allows: a tolerance about the target, or limits of their own. */
export type Allowed = (Tolerance & { readonly applies: Applies }) | StatedLimits;

/** The solved curves of target and limits. */
export interface Curves {
  readonly target: Curve;
  readonly limits: { readonly lower: Curve; readonly upper: Curve } | 'about the target';
}

/**
 * The curves of target and limits, if the limits leave a band above zero and the target in it. Without a target, which has
 * problems of its own, only what does not depend on it is checked.
 */
export function curvesOf(
  gas: GasModel,
  allowed: Allowed,
  target: Curve | undefined,
  reference: ReferencePoint,
  ambient: number,
): Curves | undefined {
  const reference_Pa = reference.pressure.pascals;
  const { temperature } = reference;
  if (has(allowed, 'minimum')) {
    if (target === undefined) return undefined;
    const lower = curveOf(gas, allowed.minimum, ambient, 'minimum', 'lower limit');
    const upper = curveOf(gas, allowed.maximum, ambient, 'maximum', 'upper limit');
    const T = temperature.kelvins;
    const problems: Problem[] = [];
    const at = (path: string, curve: Curve): number => {
      const own: Problem[] = [];
      const p = collect(own, '', () => gaugeOnCurve(gas, curve, T, ambient, path));
      problems.push(...own.map((problem) => ({ ...problem, path })));
      return p ?? 0;
    };
    const limits = [at('minimum', lower), at('maximum', upper)] as const;
    failIfAny(problems);
    needOrder(limits[0], reference_Pa, limits[1]);
    return Object.freeze({ target, limits: Object.freeze({ lower, upper }) });
  }
  const { below, above } = tolerances(allowed, reference_Pa);
  needOrder(reference_Pa - below, reference_Pa, reference_Pa + above);
  if (target === undefined) return undefined;
  if (allowed.applies !== 'at the reference temperature') return Object.freeze({ target, limits: 'about the target' });
  const line = (p_g: number, about: string): Curve =>
    lineThrough(gas, { pressure: gaugeOf(p_g), temperature }, ambient, '', about);
  const [lower, upper] = [line(reference_Pa - below, 'lower limit'), line(reference_Pa + above, 'upper limit')];
  return Object.freeze({ target, limits: Object.freeze({ lower, upper }) });
}

function needOrder(lower: number, target: number, upper: number): void {
  const limits = `limits of ${inBar(lower)} and ${inBar(upper)} gauge`;
  const place = 'at the reference temperature';
  if (lower === upper) fail(bandWithoutWidth, '', `${limits} ${place}`);
  if (!(lower <= target && target <= upper))
    fail(limitsCrossed, '', `${limits} about a target of ${inBar(target)} gauge ${place}`);
  if (!(lower > 0)) fail(bandReachesZero, '', `a lower limit of ${inBar(lower)} gauge ${place}`);
}

/** What a manual allows, each part of it read once and nothing else taken; frozen, and not checked but for its length. */
export function copyOfAllowed(allowed: Allowed, path: string): Allowed {
  if (!isObject(allowed)) return allowed;
  if (has(allowed, 'minimum') || has(allowed, 'maximum')) {
    const { minimum, maximum, ...more } = allowed as StatedLimits;
    // Of what else there is only the names: it is refused by them.
    const others = Object.fromEntries(Object.keys(more).map((key) => [key, undefined]));
    return Object.freeze({
      ...others,
      minimum: copyOfStated(minimum, `${path}.minimum`),
      maximum: copyOfStated(maximum, `${path}.maximum`),
    });
  }
  const fields = [...FORMS, 'applies'].filter((key) => has(allowed, key));
  const own = Object.fromEntries(fields.map((key) => [key, (allowed as Readonly<Record<string, unknown>>)[key]]));
  return Object.freeze(own) as Allowed;
}

/** Refuses what is no band, with all that is wrong with it. */
export function needAllowed(allowed: Allowed): void {
  if (!isObject(allowed) || !(has(allowed, 'minimum') || has(allowed, 'maximum'))) {
    const problems: Problem[] = [];
    collect(problems, '', () => needTolerance(allowed as Tolerance));
    collect(problems, '', () => needApplies(allowed));
    return failIfAny(problems);
  }
  const { minimum, maximum, ...more } = allowed as StatedLimits;
  const problems: Problem[] = [];
  collect(problems, 'minimum', () => needStated(minimum));
  collect(problems, 'maximum', () => needStated(maximum));
  if (Object.keys(more).length > 0)
    collect(problems, '', () => fail(notATolerance, '', `limits with ${fieldNames(Object.keys(more), ' with ')}`));
  failIfAny(problems);
}

export const PERCENTAGE = /* @__PURE__ */ relation({
  gives: 'dp',
  unit: 'Pa',
  from: ['percent', 'p_g'],
  formula: 'percent / 100 * p_g',
  source: 'tolerance as a percentage of the gauge pressure (common practice, no source)',
  of: (percent, p_g) => (percent / 100) * p_g,
});

/** The sizes of a tolerance about a gauge pressure, in Pa. */
export function tolerances(tolerance: Tolerance, p_g_Pa: number, trace?: Trace): { below: number; above: number } {
  if (has(tolerance, 'plusMinus')) return { below: tolerance.plusMinus.pascals, above: tolerance.plusMinus.pascals };
  if (has(tolerance, 'below')) return { below: tolerance.below.pascals, above: tolerance.above.pascals };
  const size = step2(trace, PERCENTAGE, 'tolerance', tolerance.plusMinusPercentOfGauge, p_g_Pa);
  return { below: size, above: size };
}

const FORMS = ['plusMinus', 'below', 'above', 'plusMinusPercentOfGauge'] as const;

function needApplies(tolerance: Allowed): void {
  if (!isObject(tolerance)) return; // said already
  const applies: unknown = has(tolerance, 'applies') ? tolerance.applies : undefined;
  if (applies === 'at the measured temperature' || applies === 'at the reference temperature') return;
  const words = "'at the measured temperature' or 'at the reference temperature'";
  if (applies === undefined) fail(missing, 'applies', 'nothing', { wanted: words });
  fail(unknownWord, 'applies', quote(applies), { words });
}

function needTolerance(tolerance: Tolerance): void {
  needObject(tolerance, 'tolerance');
  const form = FORMS.filter((key) => has(tolerance, key)).join(' ');
  if (form === 'plusMinus' && has(tolerance, 'plusMinus')) return needWidth([tolerance.plusMinus], ['plusMinus']);
  if (form === 'below above' && has(tolerance, 'below'))
    return needWidth([tolerance.below, tolerance.above], ['below', 'above']);
  if (form === 'plusMinusPercentOfGauge' && has(tolerance, 'plusMinusPercentOfGauge')) {
    const percent = tolerance.plusMinusPercentOfGauge;
    if (Number.isFinite(percent) && percent > 0 && percent < 100) return;
    return fail(notAPercentage, 'plusMinusPercentOfGauge', quote(percent));
  }
  return fail(notATolerance, '', form === '' ? 'no tolerance' : form.replaceAll(' ', ' with '));
}

function needWidth(sizes: readonly PressureDifference[], paths: readonly string[]): void {
  const problems: Problem[] = [];
  sizes.forEach((size, i) => {
    collect(problems, paths[i] ?? '', () => needSize(size));
  });
  failIfAny(problems);
  if (sizes.some((size) => size.pascals > 0)) return;
  fail(bandWithoutWidth, paths.length === 1 ? (paths.at(0) ?? '') : '', '0 bar difference');
}

/** Refuses what is no pressure difference of zero or more: below and above are both counted away from the target. */
export function needSize(size: PressureDifference): void {
  need('pressure difference', size, '');
  const found = `${inBar(size.pascals)} difference`;
  if (size.pascals < 0) fail(negative, '', found);
  if (size.pascals > MOST_PA) fail(outsideBounds, '', found, { bounds: `at most ${inBar(MOST_PA)}` });
}

/** Pressures about an accumulator do not differ by as much; the square of what is vastly more is no number. */
export const MOST_PA = 1e9;
