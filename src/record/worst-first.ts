import { fail, under } from '../basis/fault.js';
import { has, optional } from '../basis/has.js';
import { beyondDouble, limitsCrossed } from '../basis/problem.js';
import { quantity, type Measured } from './quantities.js';
import { readReport } from './read-report.js';
import type { AccumulatorJson, JudgedJson, RoundReport } from './report-shape.js';

/**
 * What is at stake at an accumulator, the worst first.
 *
 * @example
 * ```ts
 * STAKES[0]; // => 'danger'
 * STAKES.at(-1); // => 'in order'
 * ```
 */
export const STAKES = [
  'danger',
  'gas side empty',
  'outside the band',
  'not known',
  'inconclusive',
  'in order',
] as const;

/** One of {@link STAKES}. */
export type Stake = (typeof STAKES)[number];

/** An accumulator in its place in the order. */
export type Ranked = {
  readonly stake: Stake;
  /** How far the reading lies outside its band, in widths of the band: 0 inside, and where nothing can be compared. */
  readonly outsideBy: number;
  /** Probability that the pre-charge lies outside its band, where the reading came to a decision. */
  readonly probabilityOutside?: number;
} & (
  | { readonly accumulator: AccumulatorJson }
  /** One that could not be judged: nothing is known of it. */
  | { readonly notJudged: RoundReport['notJudged'][number] }
);

/** The accumulators that serve one unit, the worst first. */
export interface UnitServed {
  /** Left out for the accumulators of which the round does not say it. */
  readonly unitServed?: string;
  /** What is at stake at the worst of them. */
  readonly stake: Stake;
  readonly accumulators: readonly Ranked[];
}

/**
 * The accumulators of a report by the unit they serve, worst first, by the reading as left, or as found if there is none:
 *
 * 1. `danger`: a caution of that severity, such as a reading above the allowable pressure;
 * 2. `gas side empty`, or filled without its cause being cleared;
 * 3. `outside the band`: by how far, relative to the width of the band;
 * 4. `not known`: not comparable, gas not known, gauge too coarse, worked on and not read as left, or not judged at all;
 * 5. `inconclusive`: near a limit, on one side or the other of it, which is more than is known of those before;
 * 6. `in order`.
 *
 * Within one stake those further outside the band come first; of those inconclusive, those that more probably are; then
 * those that stand first in the round; those not judged
 * after those judged. Units stand in the order of their worst accumulators.
 *
 * @throws {@link Fault} with the problems of its shape, for what is no report; `not a decimal`, `limits crossed`, `beyond
 * double` where target, limits or what is off are no numbers that a report is made with
 * @example
 * ```ts
 * const [worst] = worstFirst(reportRound(round, { problems: 'refuse the round' }));
 * worst?.stake; // => 'outside the band'
 * worst?.accumulators[0]?.outsideBy.toFixed(2); // => '1.90'
 * ```
 */
export function worstFirst(report: RoundReport): UnitServed[] {
  const { cautions, accumulators, notJudged } = readReport(report);
  const dangers = new Set<string>();
  for (const { code, severity } of cautions) if (severity === 'danger') dangers.add(code);
  // Filled, it is a danger of its own rank.
  dangers.delete('empty gas side');
  const all: Ranked[] = [
    ...accumulators.map((accumulator, i) => under(`accumulators[${i}]`, () => rank(accumulator, dangers))),
    ...notJudged.map((one) => ({ stake: 'not known' as const, outsideBy: 0, notJudged: one })),
  ];
  // Sorting is stable: the order of the round decides between equals.
  all.sort((a, b) => STAKES.indexOf(a.stake) - STAKES.indexOf(b.stake) || pressing(b) - pressing(a));
  const units = new Map<string | undefined, [Ranked, ...Ranked[]]>();
  for (const one of all) {
    const unitServed = optional(has(one, 'accumulator') ? one.accumulator : one.notJudged, 'unitServed');
    const unit = units.get(unitServed);
    if (unit === undefined) units.set(unitServed, [one]);
    else unit.push(one);
  }
  return [...units].map(([unitServed, ranked]) => ({
    ...(unitServed === undefined ? {} : { unitServed }),
    stake: ranked[0].stake,
    accumulators: ranked,
  }));
}

function rank(accumulator: AccumulatorJson, dangers: ReadonlySet<string>): Ranked {
  const { asFound, asLeft } = accumulator;
  const [judged, path] = asLeft === 'not read' ? [asFound, 'asFound'] : [asLeft, 'asLeft'];
  const decision = optional(judged, 'decision');
  const probability =
    decision === undefined || has(decision, 'because') ? {} : { probabilityOutside: decision.adjusting.outsideNow };
  const outside = under(path, () => outsideBy(judged));
  return { stake: stakeOf(accumulator, judged, dangers), outsideBy: outside, ...probability, accumulator };
}

/** By what those of one stake are ordered. */
function pressing({ stake, outsideBy, probabilityOutside }: Ranked): number {
  return stake === 'inconclusive' ? (probabilityOutside ?? 0) : outsideBy;
}

function stakeOf({ asFound, state }: AccumulatorJson, judged: JudgedJson, dangers: ReadonlySet<string>): Stake {
  if (judged.cautions.some((code) => dangers.has(code))) return 'danger';
  const cleared = [asFound, judged].some(({ reading }) => reading.emptyGasSide === 'investigated and cleared');
  if (judged.outcome === 'gas side empty' || (asFound.outcome === 'gas side empty' && !cleared))
    return 'gas side empty';
  if (optional(judged, 'decision')?.outcome === 'inconclusive') return 'inconclusive';
  if (judged.outcome === 'undercharged' || judged.outcome === 'overcharged') return 'outside the band';
  return state === 'in order' ? 'in order' : 'not known';
}

/** By what the report states, which has its shape and may be altered: each value is read as one that comes in. */
function outsideBy(judged: JudgedJson): number {
  const { target, band } = judged;
  const offTarget = optional(judged, 'offTarget');
  if (offTarget === undefined) return 0;
  const gauge = (path: string, json: Measured): number => under(path, () => quantity('gauge pressure', json).pascals);
  const off = under('offTarget', () => quantity('pressure difference', offTarget).pascals);
  const read = gauge('target', target) + off;
  const [lower, upper] = [gauge('band.lower', band.lower), gauge('band.upper', band.upper)];
  if (!(lower < upper)) {
    const [least, most] = [band.lower, band.upper].map(({ value, unit }) => `${value} ${unit}`);
    fail(limitsCrossed, 'band', `${least} to ${most} gauge`);
  }
  const widths = Math.max(0, lower - read, read - upper) / (upper - lower);
  return Number.isFinite(widths)
    ? widths
    : fail(beyondDouble, 'offTarget', String(widths), { unit: 'widths of the band' });
}
