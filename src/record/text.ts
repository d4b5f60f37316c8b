import { cut, problem, quote, type Problem } from '../basis/fault.js';
import { duplicateKey, notJsonText, tooDeep, tooMuch } from '../basis/problem.js';
import { add, emptyFindings, taint, type Findings } from './problems.js';
import type { RoundReport } from './report-shape.js';
import { DEEPEST, type Document } from './document.js';
import { reportFound, type When } from './report.js';
import { scan } from './scan.js';

/**
 * Longest JSON text that is read, in UTF-16 code units.
 *
 * @example
 * ```ts
 * LONGEST_TEXT; // => 200000000
 * ```
 */
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
  if (typeof text !== 'string') return refuse(findings, problem(notJsonText, '', quote(text)));
  if (text.length > LONGEST_TEXT) {
    const most = { most: String(LONGEST_TEXT), what: 'characters' };
    return refuse(findings, problem(tooMuch, '', `${text.length} characters`, most));
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const { isTooDeep, duplicates } = scan(body, DEEPEST);
  if (isTooDeep) return refuse(findings, problem(tooDeep, '', 'deeper nesting', { most: String(DEEPEST) }));
  let json: unknown;
  try {
    json = JSON.parse(body);
  } catch (error) {
    const words = error instanceof Error ? cut(error.message) : 'an error';
    return refuse(findings, problem(notJsonText, '', words));
  }
  for (const path of duplicates) {
    add(findings, path, [problem(duplicateKey, '', `${cut(path)} more than once`)]);
    taint(findings, path);
  }
  return { json, isWhole: duplicates.length === 0 };
}

function refuse(findings: Findings, refused: Problem): undefined {
  add(findings, '$', [refused]);
}
