// One accumulator of a round: the work needed on it, judged on its reading as found, and the work done, on that as left.
import { collect, type Problem } from '../basis/fault.js';
import { check, type Check } from '../charge/check.js';
import type { Specification } from '../target/specification.js';
import type { Admitted } from './admit.js';
import { add, type Findings } from './problems.js';
import type { AccumulatorJson } from './report-shape.js';
import { minutesBetween, restTooLong, WORKED } from './visit.js';

/** A specification with the band in service, and with the band after charging. */
export interface Bands {
  readonly inService: Specification;
  readonly afterCharging: Specification;
}

/** A reading with the specification that it was checked against, and what came of it. */
export interface Checked {
  readonly admitted: Admitted;
  readonly spec: Specification;
  readonly check: Check;
}

/** An accumulator as judged. */
export interface Judged {
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
  path: string,
  findings: Findings,
): Judged | undefined {
  const [first] = readings;
  const last = readings.at(-1) ?? first;
  const checked = (admitted: Admitted, index: number, spec: Specification): Checked | undefined => {
    const problems: Problem[] = [];
    const found = collect(problems, '', () => check(spec, admitted.reading));
    add(findings, `${path}.visit[${index}]`, problems, whose.name);
    return found === undefined ? undefined : { admitted, spec, check: found };
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
  return { whose, asFound, asLeft, state: stateOf(asFound, asLeft, readings.length > 1) };
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

function stateAfter({ verdict, charge }: Check): State {
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
