// One accumulator of a round: the work needed on it, judged on its reading as found, and the work done, on that as left.
import { collect, type Problem } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { assess, type Assessment } from '../charge/assess.js';
import { check, type Check } from '../charge/check.js';
import { held } from '../charge/held.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import type { SlipCandidate } from '../verdict/slips.js';
import type { Manual } from './admit.js';
import type { Admitted } from './admit-reading.js';
import { measuringOf, type Deciding, type Measuring } from './certainty.js';
import { add, type Findings } from './problems.js';
import type { AccumulatorJson } from './report-shape.js';
import { minutesBetween, restTooLong, WORKED } from './visit.js';

/** A specification with the band in service, and with the band after charging. */
export interface Bands {
  readonly inService: Specification;
  readonly afterCharging: Specification;
  readonly manual: Manual;
}

/** A reading with the specification that it was checked against, and what came of it. */
export interface Checked {
  readonly admitted: Admitted;
  readonly spec: Specification;
  /** As judged: with the corrections of certificates, where the instruments are stated. */
  readonly reading: Reading;
  /** By `assess` where the round has a rule and all is stated that it needs. */
  readonly check: Check | Assessment;
  /** With what it was measured, or what is lacking; undefined where the round has no rule. */
  readonly measuring: Measuring | undefined;
  /** What a reading far off might have been meant as; then no gas is moved on it. */
  readonly slips: readonly SlipCandidate[];
}

/** An accumulator as judged. */
export interface Judged {
  /** In the document. */
  readonly path: string;
  readonly whose: Whose;
  readonly asFound: Checked;
  readonly asLeft: Checked | undefined;
  readonly state: State;
}

/** Group, name, specification, and what is carried. */
export type Whose = Omit<AccumulatorJson, 'state' | 'asFound' | 'asLeft'>;

type State = AccumulatorJson['state'];

/** Judges the readings of one accumulator; undefined, with the problems added, where one of the two cannot be checked. */
export function judge(
  whose: Whose,
  specs: Bands,
  readings: readonly [Admitted, ...Admitted[]],
  deciding: Deciding | undefined,
  path: string,
  findings: Findings,
): Judged | undefined {
  const [first] = readings;
  const last = readings.at(-1) ?? first;
  const checked = (admitted: Admitted, index: number, spec: Specification): Checked | undefined => {
    const problems: Problem[] = [];
    const measuring = deciding && measuringOf(admitted, specs.manual, deciding);
    const found = collect(problems, '', () => checkedWith(admitted, spec, measuring, deciding));
    add(findings, `${path}.visit[${index}]`, problems.map(inDocument(admitted)), whose.name);
    return found;
  };
  const asFound = checked(first, 0, specs.inService);
  const worked = asFound !== undefined && (stateAfter(asFound.check) === 'work needed' || readings.some(isWork));
  const left = worked ? specs.afterCharging : specs.inService;
  const asLeft = last.role === 'as left' ? checked(last, readings.length - 1, left) : undefined;
  if (asFound === undefined || (last.role === 'as left' && asLeft === undefined)) return undefined;
  if (asLeft !== undefined && gasMoved(asFound.check, asLeft.check)) {
    const most = minutesBetween(first.at, last.at);
    const { minutesAtRest } = last.reading;
    if (minutesAtRest !== 'not known' && minutesAtRest > most) {
      add(findings, path, [restTooLong(readings.length - 1, minutesAtRest, most)], whose.name);
      return undefined;
    }
  }
  return { path, whose, asFound, asLeft, state: stateOf(asFound, asLeft, readings.length > 1) };
}

function checkedWith(
  admitted: Admitted,
  spec: Specification,
  measuring: Measuring | undefined,
  deciding: Deciding | undefined,
): Checked {
  const { reading } = admitted;
  if (deciding === undefined || measuring === undefined || has(measuring, 'lacking'))
    return { admitted, spec, reading, measuring, ...held(spec, reading, check(spec, reading), undefined) };
  const { instruments } = measuring;
  const found = assess(spec, reading, instruments, deciding.rule);
  return { admitted, spec, reading: found.reading, measuring, ...held(spec, reading, found, instruments) };
}

/** What the core says of a corrected reading, under the path that the reading has in the document. */
function inDocument({ stated }: Admitted): (one: Problem) => Problem {
  // A step that suits the reading need not suit the target. That of a group is sound by itself.
  const step = stated.gaugeStep === 'for the group' ? 'pressure' : 'gaugeStep.value';
  return (one) => ({ ...one, path: one.path === 'step' ? step : one.path.replace(/^reading\./, '') });
}

function isWork({ role }: Admitted): boolean {
  return WORKED.includes(role);
}

/** Whether gas was moved between two readings: a pre-charge that was off is right only because somebody worked on it. */
function gasMoved(found: Check, left: Check): boolean {
  return stateAfter(found) === 'work needed' && left.verdict.outcome === 'within';
}

/** The state of an accumulator: by its reading as left; as found, if nothing was read after that. */
function stateOf(asFound: Checked, asLeft: Checked | undefined, readAfter: boolean): State {
  if (asLeft === undefined) return readAfter ? 'read again' : stateAfter(asFound.check);
  const cleared = [asFound, asLeft].some(
    ({ admitted }) => admitted.reading.emptyGasSide === 'investigated and cleared',
  );
  const unexplained = asFound.check.verdict.outcome === 'gas side empty' && !cleared;
  return unexplained ? 'work needed' : stateAfter(asLeft.check);
}

function stateAfter(check: Check | Assessment): State {
  const state = stateByVerdict(check);
  if (isHeldBack(check) && !isAboveAllowable(check)) return 'read again';
  if (!has(check, 'decision') || isAboveAllowable(check)) return state;
  const { decision, verdict, charge } = check;
  // Neither on a doubt, nor where verdict and decision part: read again.
  if (decision.outcome === 'no decision' && decision.because === 'no evidence') return state;
  if (decision.outcome !== verdict.outcome) return 'read again';
  return charge.action === 'withheld' && charge.because.includes('not conclusive') ? 'read again' : state;
}

/** Because its reading may be a slip. */
export function isHeldBack({ charge }: Check): boolean {
  return charge.action === 'withheld' && charge.because.includes('slip possible');
}

/** To be made safe, however well it is known. */
function isAboveAllowable({ cautions }: Check): boolean {
  return cautions.some(({ code }) => code === 'reading above the allowable pressure');
}

function stateByVerdict({ verdict, charge }: Check): State {
  switch (verdict.outcome) {
    case 'within':
      // A reading within its band, but above the allowable pressure, is not in order.
      return charge.action === 'none' ? 'in order' : 'work needed';
    case 'undercharged':
    case 'overcharged':
    case 'gas side empty':
      return 'work needed';
    case 'gas not known':
    case 'not comparable':
    case 'gauge too coarse':
      return 'read again';
  }
}
