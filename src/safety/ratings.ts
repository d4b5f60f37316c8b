import { fail, quote } from '../basis/fault.js';
import { unknownWord } from '../basis/problem.js';
import { relation, step2, type Trace } from '../basis/relation.js';
import { taken, type Fields } from '../basis/taken.js';
import { gaugeOf, type GaugePressure } from '../quantity/kind.js';
import { all } from '../reading/checks.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needGiven, needPressure } from './checks.js';

/** The parts that are joined for charging, each with what it is rated for. All are gauge pressures above zero. */
export interface ChargingLine {
  readonly bottle: {
    /** The highest pressure that it may hold, from its stamp. */
    readonly rating: GaugePressure;
    /** The highest that it will have while it is used: at the hottest place that it will stand. */
    readonly pressure: GaugePressure;
  };
  /** What reduces the pressure of the bottle; `none` where the bottle is throttled by hand. */
  readonly regulator:
    { readonly inlet: GaugePressure; readonly outlet: GaugePressure; readonly setTo: GaugePressure } | 'none';
  /** Pressure at which a relief valve behind the regulator is fully open; `none` where there is none. */
  readonly relief: { readonly opens: GaugePressure } | 'none';
  readonly hose: { readonly rating: GaugePressure };
  /** The gauge on the charging kit: the end of its scale. */
  readonly gauge: { readonly fullScale: GaugePressure };
  readonly vessel: {
    /** Allowable pressure, from its name plate. */
    readonly allowable: GaugePressure;
    /** The highest that is wanted in it: the stop pressure, or the pressure when hot. */
    readonly pressure: GaugePressure;
  };
}

/** A part of a charging line. */
export type LinePart = 'bottle' | 'regulator inlet' | 'regulator outlet' | 'hose' | 'gauge' | 'vessel';

/** Stable codes of what may be wrong with a charging line. */
export type RatingCode =
  | 'above its rating'
  | 'above its rating if the pressure is not reduced'
  | 'above three quarters of its scale'
  | 'relief valve opens below the pressure wanted'
  | 'regulator set below the pressure wanted';

/** Something wrong with a charging line: the part, what it may take, and what it would see. */
export interface RatingProblem {
  readonly code: RatingCode;
  readonly part: LinePart;
  /** What limits: the rating of the part; of a gauge three quarters of its scale; where the relief valve opens. */
  readonly limit: GaugePressure;
  readonly pressure: GaugePressure;
}

/** Ratings held against each other and against the pressures that occur. */
export interface Ratings {
  /** `nothing found` is no approval: it says that the numbers stated contradict nothing here. */
  readonly outcome: 'nothing found' | 'problems found';
  readonly problems: readonly RatingProblem[];
  /** The part on the side of the vessel that takes least: nothing behind the regulator may see more. */
  readonly weakest: { readonly part: LinePart; readonly takes: GaugePressure };
  /** The most that this side may see if the regulator passes what the bottle has. */
  readonly worstCase: GaugePressure;
  readonly cautions: readonly CausedCaution<'ratings'>[];
}

/** EN 837-2, from memory: under steady pressure a gauge is used up to three quarters of its scale. */
const SHARE_OF_SCALE = 0.75;

export const MOST_ON_SCALE = /* @__PURE__ */ relation({
  gives: 'p_most',
  unit: 'Pa',
  from: ['share', 'p_full'],
  formula: 'share * p_full',
  source: 'EN 837-2, from memory: a gauge for steady pressure is used to 75 % of its scale',
  of: (share, p_full) => share * p_full,
});

const AS_IT_IS = 'as it is';
const LINE: Fields = {
  bottle: { rating: AS_IT_IS, pressure: AS_IT_IS },
  regulator: { inlet: AS_IT_IS, outlet: AS_IT_IS, setTo: AS_IT_IS },
  relief: { opens: AS_IT_IS },
  hose: { rating: AS_IT_IS },
  gauge: { fullScale: AS_IT_IS },
  vessel: { allowable: AS_IT_IS, pressure: AS_IT_IS },
};

/**
 * Ratings of bottle, regulator, hose, gauge and vessel against each other and against the pressures that occur. A regulator
 * may fail, or creep: without a relief valve that opens below it, every part behind it must take what the bottle has.
 *
 * @throws {@link Fault} with every problem found: `wrong kind`, `absolute for gauge`, `unchecked copy`, `not positive`,
 * `unknown word`
 * @example
 * ```ts
 * const bar = (value: number) => gauge(value, 'bar');
 * const line = {
 *   bottle: { rating: bar(300), pressure: bar(220) },
 *   regulator: { inlet: bar(300), outlet: bar(200), setTo: bar(154) },
 *   relief: { opens: bar(205) },
 *   hose: { rating: bar(400) },
 *   gauge: { fullScale: bar(250) },
 *   vessel: { allowable: bar(210), pressure: bar(154) },
 * } as const;
 * const found = ratings(line);
 * found.weakest; // => { part: 'gauge', takes: { kind: 'gauge pressure', pascals: 18750000 } }
 * found.problems.map(({ code, part }) => [code, part]); // => [['above its rating if the pressure is not reduced', 'regulator outlet']]
 * ```
 */
export function ratings(line: ChargingLine, trace?: Trace): Ratings {
  needGiven(line, 'charging line');
  const own = taken(line, LINE);
  needLine(own);
  const { bottle, regulator, relief, hose, gauge, vessel } = own;
  const wanted = vessel.pressure.pascals;
  const supplied = bottle.pressure.pascals;
  const onScale = step2(trace, MOST_ON_SCALE, 'gauge', SHARE_OF_SCALE, gauge.fullScale.pascals);
  // What the side of the vessel sees as intended, and if the pressure is not reduced.
  const intended = regulator === 'none' ? supplied : Math.max(regulator.setTo.pascals, wanted);
  const worst =
    relief === 'none' ? Math.max(supplied, wanted) : Math.min(Math.max(supplied, wanted), relief.opens.pascals);
  const problems: RatingProblem[] = [];
  const add = (code: RatingCode, part: LinePart, limit: number, pressure: number): void => {
    problems.push({ code, part, limit: gaugeOf(limit), pressure: gaugeOf(pressure) });
  };
  const hold = (part: LinePart, limit: number, sees: number, mayLater = sees): void => {
    if (sees > limit) add('above its rating', part, limit, sees);
    else if (mayLater > limit) add('above its rating if the pressure is not reduced', part, limit, mayLater);
  };
  hold('bottle', bottle.rating.pascals, supplied);
  if (regulator !== 'none') {
    hold('regulator inlet', regulator.inlet.pascals, supplied);
    hold('regulator outlet', regulator.outlet.pascals, intended, worst);
    if (regulator.setTo.pascals < wanted)
      add('regulator set below the pressure wanted', 'regulator outlet', regulator.setTo.pascals, wanted);
  }
  hold('hose', hose.rating.pascals, intended, worst);
  hold('gauge', gauge.fullScale.pascals, intended, worst);
  if (wanted > onScale && wanted <= gauge.fullScale.pascals)
    add('above three quarters of its scale', 'gauge', onScale, wanted);
  // By hand the bottle is closed in time; nothing but the relief valve closes it if the hand does not.
  hold('vessel', vessel.allowable.pascals, regulator === 'none' ? wanted : intended, worst);
  if (relief !== 'none' && relief.opens.pascals < wanted)
    add('relief valve opens below the pressure wanted', 'vessel', relief.opens.pascals, wanted);
  return {
    outcome: problems.length === 0 ? 'nothing found' : 'problems found',
    problems,
    weakest: weakestOf(own, onScale),
    worstCase: gaugeOf(worst),
    cautions: cautionsOf('ratings', [
      ...(problems.some(({ code }) => code.startsWith('above its rating')) ? (['rating too low'] as const) : []),
      'stored pressure',
    ]),
  };
}

function weakestOf({ regulator, hose, vessel }: ChargingLine, onScale_Pa: number): Ratings['weakest'] {
  const parts: (readonly [LinePart, number])[] = [
    ['vessel', vessel.allowable.pascals],
    ['hose', hose.rating.pascals],
    ['gauge', onScale_Pa],
  ];
  if (regulator !== 'none') parts.push(['regulator outlet', regulator.outlet.pascals]);
  const [part, takes] = parts.reduce((a, b) => (b[1] < a[1] ? b : a));
  return { part, takes: gaugeOf(takes) };
}

function needLine({ bottle, regulator, relief, hose, gauge, vessel }: ChargingLine): void {
  const pressures = <T extends object>(part: T, names: readonly (keyof T & string)[]): void => {
    needGiven(part, `part of a charging line: ${names.join(', ')}`);
    all(...names.map((name) => [name, () => needPressure(part[name] as GaugePressure)] as const));
  };
  all(
    ['bottle', () => pressures(bottle, ['rating', 'pressure'])],
    ['regulator', () => (absent(regulator) ? undefined : pressures(regulator, ['inlet', 'outlet', 'setTo']))],
    ['relief', () => (absent(relief) ? undefined : pressures(relief, ['opens']))],
    ['hose', () => pressures(hose, ['rating'])],
    ['gauge', () => pressures(gauge, ['fullScale'])],
    ['vessel', () => pressures(vessel, ['allowable', 'pressure'])],
  );
}

/** Whether a part is said not to be there; any other word is refused. */
function absent(part: object | 'none'): part is 'none' {
  if (typeof part !== 'string') return false;
  return part === 'none' || fail(unknownWord, '', quote(part), { words: "the part, or 'none'" });
}
