export { Fault, isFault, type Problem, type ProblemCode } from '../basis/fault.js';
export { reportRound, MOST_ACCUMULATORS, type When } from './report.js';
export { DEEPEST, LONGEST_TEXT, reportRoundText } from './text.js';
export { RoundReportShape, type RoundReport } from './report-shape.js';
export { RoundShape, type Round } from './shape.js';
