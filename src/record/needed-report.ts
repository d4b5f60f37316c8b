// A report as something that is handed in: read once, so that what is checked is what is used.
import { failIfAny } from '../basis/fault.js';
import { DEEPEST } from './document.js';
import { copied, dataProblem, jsonData } from './json-data.js';
import { shapeProblems } from './problems.js';
import { RoundReportShape, type RoundReport } from './report-shape.js';

/** Deepest nesting of a report: its input stands one level down. */
export const DEEPEST_REPORT = DEEPEST + 1;

/** A copy of a report; the problems of its shape are thrown. */
export function neededReport(report: unknown): RoundReport {
  const kind = jsonData(report, DEEPEST_REPORT);
  if (kind !== 'JSON data') failIfAny([dataProblem(kind, DEEPEST_REPORT)]);
  const own: unknown = copied(report);
  failIfAny(shapeProblems(RoundReportShape, own));
  return own as RoundReport;
}
