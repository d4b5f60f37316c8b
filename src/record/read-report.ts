// A report as something that is handed in: read once, so that what is checked is what is used.
import { failIfAny, Fault } from '../basis/fault.js';
import { DEEPEST } from './document.js';
import { readData } from './json-data.js';
import { shapeProblems } from './problems.js';
import { RoundReportShape, type RoundReport } from './report-shape.js';

/** Deepest nesting of a report: its input stands one level down. */
export const DEEPEST_REPORT = DEEPEST + 1;

/**
 * A stored report back as one, from what `JSON.parse` gives: the door from `unknown` to {@link RoundReport}.
 *
 * It checks the shape and gives a copy of its own, so that what is checked is what is used. Whether the report is the one
 * that was made, its digest and its results, is for {@link reverify}: a report may have the shape and yet be altered.
 *
 * @throws {@link Fault} with every problem of its shape, each with its path; `not JSON`, `too deep`, `too large` for
 * what JSON does not carry or no report holds
 * @example
 * ```ts
 * const made = reportRound(round, { problems: 'refuse the round' });
 * const stored: unknown = JSON.parse(JSON.stringify(made));
 * readReport(stored).accumulators[0]?.name; // => 'EV 1'
 * ```
 */
export function readReport(report: unknown): RoundReport {
  const given = readData(report, DEEPEST_REPORT);
  if (given.read !== 'JSON data') throw new Fault([given.problem]);
  failIfAny(shapeProblems(RoundReportShape, given.data));
  return given.data as RoundReport;
}
