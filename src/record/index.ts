export type { Caution, CautionCode, Severity } from '../basis/caution.js';
export { Fault, isFault, type Problem, type ProblemCode } from '../basis/fault.js';
export type { Cause, Reason, Words } from '../basis/words.js';
export { canonicalJson, sha256 } from './canonical.js';
export {
  CAUSES,
  CAUTION_CODES,
  OUTCOMES,
  PROBLEM_CODES,
  REASONS,
  SETTLED_BY,
  SLIP_CODES,
  SUPPLY_CODES,
  UNCERTAINTY_CODES,
} from './codes.js';
export { reportJsonSchema, roundJsonSchema } from './json-schema.js';
export { MOST_VALUES } from './json-data.js';
export type {
  AbsolutePressureJson,
  GaugePressureJson,
  PressureDifferenceJson,
  RoundAccumulator,
  RoundGroup,
  RoundInstrument,
  RoundReading,
  RoundSpecification,
  RoundTable,
  TemperatureDifferenceJson,
  TemperatureJson,
  VolumeJson,
} from './parts.js';
export { readReport } from './read-report.js';
export { DEEPEST, MOST_ACCUMULATORS } from './document.js';
export { reportRound, type When } from './report.js';
export { RoundReportShape, type AccumulatorJson, type RoundReport } from './report-shape.js';
export {
  recall,
  type NotRecalled,
  type Recalled,
  type RecallChange,
  type RecalledReading,
  type RecalledReport,
  type RecalledVisit,
  type Recalling,
  type ReportProblem,
} from './recall.js';
export { reverify, type Change, type Reverified } from './reverify.js';
export { RoundShape, type Round } from './shape.js';
export { LONGEST_TEXT, reportRoundText } from './text.js';
export { LIBRARY_VERSION } from './version.js';
export { orderFor, type Named, type StoredOrder } from './work-order.js';
export { STAKES, worstFirst, type Ranked, type Stake, type UnitServed } from './worst-first.js';
