import { cut, quote, type Problem } from '../basis/fault.js';
import { add, emptyFindings, taint, type Findings } from './problems.js';
import type { RoundReport } from './report-shape.js';
import { DEEPEST, reportFound, type Document, type When } from './report.js';
import { scan } from './scan.js';

/** Longest JSON text that is read, in UTF-16 code units. */
export const LONGEST_TEXT = 200_000_000;
/**
 * {@link reportRound} from JSON text (RFC 8259; a byte order mark is passed over). The text door also sees what
 * JavaScript's own parser hides: a key given twice in one object, of which the parser keeps the last. What holds one is
 * not judged, and such a report carries no `input`.
 *
 * Limits: text beyond {@link LONGEST_TEXT} UTF-16 code units or {@link DEEPEST} levels is refused unread; of more than
 * {@link MOST_ACCUMULATORS} accumulators the rest is not read; more than {@link MOST_VALUES} values are not read at all.
 *
 * @throws {@link Fault} as {@link reportRound}
 * @example
 * ```ts
 * const report = reportRoundText('{"version": 2, "specifications": [], "groups": []}', { problems: 'report the rest' });
 * report.complete; // => 'partial'
 * report.problems[0]?.code; // => 'unknown version'
 * ```
 */
export function reportRoundText(text: string, when: When): RoundReport {
  const findings = emptyFindings();
  return reportFound(parse(text, findings), when, findings);
}

/** The value of a JSON text; undefined, with the problem, if it is not to be read. */
function parse(text: string, findings: Findings): Document | undefined {
  if (typeof text !== 'string') {
    return refuse(findings, 'not JSON', quote(text), 'a JSON text', 'data that is parsed already goes to reportRound');
  }
  if (text.length > LONGEST_TEXT) {
    const wanted = `at most ${LONGEST_TEXT} characters`;
    return refuse(findings, 'too large', `${text.length} characters`, wanted, 'split the document');
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const { tooDeep, duplicates } = scan(body, DEEPEST);
  if (tooDeep) {
    const wanted = `at most ${DEEPEST} levels`;
    return refuse(findings, 'too deep', 'deeper nesting', wanted, 'check what wrote it: a round has nine levels');
  }
  let json: unknown;
  try {
    json = JSON.parse(body);
  } catch (error) {
    const words = error instanceof Error ? cut(error.message) : 'an error';
    return refuse(findings, 'not JSON', words, 'a JSON text (RFC 8259)', 'mend the text, or what wrote it');
  }
  for (const path of duplicates) {
    add(findings, path, [duplicateKey(path)]);
    taint(findings, path);
  }
  return { json, isWhole: duplicates.length === 0 };
}

function refuse(findings: Findings, code: Problem['code'], found: string, wanted: string, remedy: string): undefined {
  add(findings, '$', [{ code, path: '', found, wanted, remedy }]);
}

function duplicateKey(path: string): Problem {
  return {
    code: 'duplicate key',
    path: '',
    found: `${cut(path)} more than once`,
    wanted: 'each key once in an object',
    remedy: 'keep the one that is meant; what holds both is not judged',
  };
}
