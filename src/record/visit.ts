import { quote, type Problem } from '../basis/fault.js';

/** What the order of a visit is seen by; undefined where it is not sound. */
export interface Clock {
  readonly role: string | undefined;
  readonly at: string | undefined;
  readonly minutesAtRest: number | undefined;
}

/**
 * What is wrong with the order of a visit: it begins with the one reading as found, ends with the one as left if there is
 * one, its times do not run backwards, and no reading claims more rest than the clock and the work before it allow.
 */
export function visitProblems(readings: readonly Clock[]): Problem[] {
  const problems: Problem[] = [];
  readings.forEach(({ role }, i) => {
    const last = i === readings.length - 1;
    if (role === undefined) return;
    if ((role === 'as found') !== (i === 0) || (role === 'as left' && !last)) problems.push(misplaced(i, role));
  });
  let most = Number.POSITIVE_INFINITY;
  let before: string | undefined;
  readings.forEach(({ role, at, minutesAtRest }, i) => {
    if (at === undefined) return; // nothing can be said without its time
    if (before !== undefined) {
      const minutes = minutesBetween(before, at);
      if (minutes < 0) {
        problems.push(backwards(i, at, before));
        most = Number.POSITIVE_INFINITY;
        // Rest only grows with the clock; filling or venting since the reading before ends it.
      } else most = WORKED.includes(role ?? '') ? minutes : most + minutes;
    }
    before = at;
    if (minutesAtRest === undefined) return;
    if (minutesAtRest > most) problems.push(restTooLong(i, minutesAtRest, most));
    most = Math.min(most, minutesAtRest);
  });
  return problems;
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
  return {
    code: 'rest contradicts readings',
    path: `visit[${i}].minutesAtRest`,
    found: `${claimed} min`,
    wanted: `at most ${Math.max(0, most)} min, by the times of the readings and the work between them`,
    remedy: 'check the times and when oil or gas last moved',
  };
}

function misplaced(i: number, role: string): Problem {
  return {
    code: 'order of readings',
    path: `visit[${i}].role`,
    found: quote(role),
    wanted: "'as found' first and only there, 'as left' last and only there",
    remedy: 'put the readings in the order in which they were taken; a second visit is another document',
  };
}

function backwards(i: number, at: string, before: string): Problem {
  return {
    code: 'order of readings',
    path: `visit[${i}].at`,
    found: quote(at),
    wanted: `not earlier than the reading before it, ${before}`,
    remedy: 'put the readings in the order in which they were taken, and check the offsets from UTC',
  };
}
