import { inspect } from 'node:util';
import { isFault, type Problem } from 'isochore';

/** The one problem for which a call is refused. Anything else that happens is a failure of the test. */
export function problemOf(call: () => unknown): Problem {
  let result: unknown;
  try {
    result = call();
  } catch (error) {
    if (isFault(error) && error.problems.length === 1) return error.problems[0];
    throw error;
  }
  throw new Error(`not refused, but gave ${inspect(result)}`);
}
