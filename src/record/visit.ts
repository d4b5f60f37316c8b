import { problem, quote, type Problem } from '../basis/fault.js';
import { orderOfReadings, restContradicts, timesBackwards } from '../basis/problem.js';

/** What the order of a visit is seen by; undefined where it is not sound. */
export interface Clock {
  readonly role: string | undefined;
  readonly at: string | undefined;
  readonly minutesAtRest: number | undefined;
  /** Whether it says that its oil side is drained. */
  readonly saysDrained: boolean;
}

/**
 * What is wrong with the order of a visit: it begins with the one reading as found, ends with the one as left if there is
 * one, its times do not run backwards, and no reading claims more rest than the clock, the draining and the work before it
 * allow.
 */
export function visitProblems(readings: readonly Clock[], drainedAt?: string): Problem[] {
  const problems: Problem[] = [];
  readings.forEach(({ role }, i) => {
    const last = i === readings.length - 1;
    if (role === undefined) return;
    if ((role === 'as found') !== (i === 0) || (role === 'as left' && !last))
      problems.push(problem(orderOfReadings, `visit[${i}].role`, quote(role)));
  });
  let most = Number.POSITIVE_INFINITY;
  let before: string | undefined;
  readings.forEach(({ role, at, minutesAtRest, saysDrained }, i) => {
    if (at === undefined) return; // nothing can be said without its time
    if (before !== undefined) {
      const minutes = minutesBetween(before, at);
      if (minutes < 0) {
        problems.push(problem(timesBackwards, `visit[${i}].at`, quote(at), { before }));
        most = Number.POSITIVE_INFINITY;
        // Rest only grows with the clock; filling or venting since the reading before ends it.
      } else most = WORKED.includes(role ?? '') ? minutes : most + minutes;
    }
    before = at;
    if (drainedAt !== undefined) most = Math.min(most, sinceDraining(minutesBetween(drainedAt, at), saysDrained));
    if (minutesAtRest === undefined) return;
    if (minutesAtRest > most) problems.push(restTooLong(i, minutesAtRest, most));
    most = Math.min(most, minutesAtRest);
  });
  return problems;
}

/**
 * The rest that draining allows: it moves the gas too. A reading from before it, that says nothing of a drained oil side,
 * has nothing to do with it.
 */
function sinceDraining(minutes: number, saysDrained: boolean): number {
  return minutes >= 0 || saysDrained ? Math.max(0, minutes) : Number.POSITIVE_INFINITY;
}

/** Roles of readings taken right after gas was moved. */
export const WORKED: readonly string[] = ['after filling', 'after venting'];

/** Minutes from one time to another. */
export function minutesBetween(earlier: string, later: string): number {
  return (instant(later) - instant(earlier)) / 60_000;
}

function instant(rfc3339: string): number {
  // eslint-disable-next-line no-restricted-globals -- reads the text it is given, not the clock
  return Date.parse(rfc3339);
}

/** A rest longer than the time since gas last moved. */
export function restTooLong(i: number, claimed: number, most: number): Problem {
  return problem(restContradicts, `visit[${i}].minutesAtRest`, `${claimed} min`, { most: String(Math.max(0, most)) });
}
