// All that computes, but for reading text: that is what needs decimal.js, and a file apart lets a bundler leave it out.
export { describe, Fault, isFault, type Problem, type ProblemCode } from './basis/fault.js';
export type { Relation, Step, Trace } from './basis/relation.js';
export type { Source } from './basis/source.js';

export type {
  AbsolutePressure,
  Amount,
  Checked,
  GaugePressure,
  Kind,
  Mass,
  PressureDifference,
  Quantity,
  QuantityOf,
  SeveralKinds,
  Temperature,
  TemperatureDifference,
  Volume,
} from './quantity/kind.js';
export type { AmountUnit, MassUnit, PressureUnit, TemperatureUnit, VolumeUnit } from './quantity/unit.js';
export { absolute, gauge, pressureDifference, standardAtmosphere, toAbsolute, toGauge } from './quantity/pressure.js';
export { temperature, temperatureDifference } from './quantity/temperature.js';
export { amount, mass, volume } from './quantity/contents.js';
export {
  compare,
  difference,
  ratio,
  shift,
  type DifferenceOf,
  type Levelled,
  type SameKind,
} from './quantity/arithmetic.js';
export { roundTo, valueIn, write, type Division, type Rounding, type Toward, type UnitOf } from './quantity/step.js';
export {
  normalConditions,
  reference0C1bar,
  reference15C1bar,
  reference20C1atm,
  reference60F,
  reference70F,
  standardReferenceConditions,
  writeNormalVolume,
  type GasCondition,
  type NormalVolume,
} from './quantity/normal-volume.js';
export { readmit } from './quantity/readmit.js';

export type { Equilibrium, GasKernel, GasModel, Properties, Pvt, Range, UncertaintyRegion } from './gas/model.js';
export { isentropicExpansion, type Expansion } from './gas/expansion.js';
export { cubicNitrogen } from './gas/nitrogen/cubic.js';
export { idealNitrogen } from './gas/nitrogen/ideal-gas.js';
export { nitrogen } from './gas/nitrogen/nitrogen.js';
export {
  saturationAt,
  stateAt,
  type DensityUncertainty,
  type GasState,
  type Given,
  type Saturation,
} from './gas/state.js';
export { massOfGas, normalVolume, normalVolumeAsIdealGas } from './gas/amount.js';

export { caution, type Caution, type CautionCode, type Severity } from './basis/caution.js';
export {
  causeText,
  inWords,
  uncertaintyText,
  type Cause,
  type ContributionCode,
  type Lacking,
  type NotCounted,
  type Reason,
  type SettledBy,
  type SlipCode,
  type UncertaintyCode,
  type Undecided,
  type Words,
} from './basis/words.js';
export type { ProblemText } from './basis/problem.js';
export type { Conditions } from './target/conditions.js';
export type { TargetSource } from './target/curve.js';
export { columnOf, type MakersTable, type MakersTables, type ReferencePoint, type Stated } from './target/table.js';
export {
  auditTable,
  type Admitted,
  type CellResidual,
  type ColumnAudit,
  type Fits,
  type FitsNot,
  type FitsNowhere,
  type InDoubt,
  type LineFound,
  type ModelFit,
  type OtherReading,
  type TableAudit,
  type WrongCell,
} from './target/audit.js';
export type { PrintedTable, TableAuditGiven } from './target/audit/admit.js';
export type { Equation } from './target/audit/fit.js';
export type { ReadAs, ReadOtherwise } from './target/audit/sheet.js';
export {
  afterCharging,
  specification,
  type Disagreement,
  type Separator,
  type Specification,
  type SpecificationGiven,
} from './target/specification.js';
export type { Allowed, Applies, Curves, StatedLimits, Tolerance } from './target/tolerance.js';
export { slope, target, targetSource } from './target/target.js';
export type { GasInside, OilSide, Reading } from './reading/reading.js';
export type { Certificate } from './reading/certificate.js';
export {
  ACCURACY_CLASSES,
  type AccuracyClass,
  type DialGauge,
  type DigitalGauge,
  type NotCovered,
} from './reading/gauge.js';
export { MOST_READINGS, type Instruments } from './reading/instruments.js';
export type { ContactThermometer, InfraredThermometer, Thermometer } from './reading/thermometer.js';
export {
  adjustmentCsv,
  adjustmentTable,
  adjustmentText,
  MOST_ROWS,
  type AdjustmentRow,
  type AdjustmentTable,
  type AdjustmentTableGiven,
} from './verdict/adjustment.js';
export { band, type Band } from './verdict/band.js';
export { explainingTemperature, referred, type Read } from './verdict/compare.js';
export {
  judge,
  type Compared,
  type Empty,
  type NotComparable,
  type Outcome,
  type TooCoarse,
  type Verdict,
} from './verdict/judge.js';
export { why } from './verdict/why.js';
export { uncertainty, type Budget, type Contribution, type NoBudget } from './verdict/budget.js';
export type { Repeats } from './verdict/contributions.js';
export { decide, type Decided, type Decision, type NotDecided, type Probabilities } from './verdict/decide.js';
export type { Acceptance, Rule, RuledOutcome } from './verdict/rule.js';
export { settledBy, type SettlingWay } from './verdict/settled-by.js';
export type { Settling } from './verdict/what-settles.js';
export { globalRisks, type GlobalRisks, type Prior } from './verdict/global-risk.js';
export { slips, slipText, type Slip, type SlipCandidate, type SlipKind, type Slips } from './verdict/slips.js';
export {
  together,
  type CommonSlip,
  type Estimate,
  type LeftOut,
  type Remainder,
  type RoundAsWhole,
  type RoundReading,
  type Shift,
  type TooFew,
} from './verdict/together.js';
export { simulate, type Draws, type Simulated } from './verdict/monte-carlo.js';
export {
  charge,
  type Charge,
  type GasQuantity,
  type Move,
  type NoMove,
  type Stop,
  type Withheld,
} from './charge/charge.js';
export { assess, type Assessment } from './charge/assess.js';
export { check, type Check } from './charge/check.js';
export { supplyText, type SupplyCode } from './basis/words.js';
export { bottleState, type Bottle, type BottleState } from './supply/bottle.js';
export { beforeCheck, checkLoss, type BeforeCheck, type CheckLoss } from './supply/check-loss.js';
export type { Held, Kit, Regulator, Rig } from './supply/kit.js';
export { toFill, type ToFill } from './supply/to-fill.js';
export type { Ended } from './supply/flow.js';
export { OBJECTIVES, type Objective } from './supply/objective.js';
export { MOST_CHOSEN, MOST_PAIRS, type Reached } from './supply/best.js';
export type { FillingStep } from './supply/result.js';
export {
  fillingPlan,
  MOST_IN_PLAN,
  type FillingPlan,
  type PlanCause,
  type PlanGiven,
  type PlannedAccumulator,
  type PlannedBottle,
} from './supply/plan.js';
export { MOST_SERVED, serves, type Serves } from './supply/serves.js';
export { bottlesToOrder, MOST_ORDERED, type BottleOrder, type BottleSize } from './supply/order.js';
export {
  filling,
  type Filled,
  type Filling,
  type FillingGiven,
  type FillingSupply,
  type SupplyTooLow,
} from './settling/filling.js';
export { bleeding, type Bleeding, type BleedingGiven } from './settling/bleeding.js';
export { draining, type Draining, type DrainingGiven } from './settling/draining.js';
export { settlingCurve, type SettlingCurve, type SettlingGiven, type SettlingPoint } from './settling/cooling.js';
export { settlingEvidence, type EvidenceGiven, type SettlingEvidence } from './settling/evidence.js';
export { fitTimeConstant, type NoTimeConstant, type TimeConstantFound } from './settling/time-constant.js';
export type { DoneBefore, TimedGiven, TimedReading } from './settling/timed.js';
export { settlingText, type SettlingCode, type SettlingOutcome } from './settling/words.js';
export {
  whereToStop,
  type ExactStops,
  type StopPermission,
  type StopPlan,
  type StopStep,
  type WhereToStopGiven,
} from './settling/stop.js';
export type { AtStop, HeatExchange, HowFar, RigidVessel } from './settling/vessel.js';

export type { CausedCaution, SafetyCause } from './basis/caused.js';
export { pressureWhenHot, type GasWhenHot, type Hot } from './safety/hot.js';
export { leakTest, type LeakShown, type LeakTest } from './safety/leak.js';
export {
  oxygenAfterRelease,
  oxygenInDryAir,
  type OxygenAfterRelease,
  type OxygenLeft,
  type Release,
} from './safety/oxygen.js';
export { purge, type Purge, type Purged } from './safety/purge.js';
export {
  ratings,
  type ChargingLine,
  type LinePart,
  type RatingCode,
  type RatingProblem,
  type Ratings,
} from './safety/ratings.js';
export {
  storedEnergy,
  type EnergyOfGas,
  type InService,
  type StoredEnergy,
  type Vessel,
} from './safety/stored-energy.js';
export {
  workOrder,
  type Assessed,
  type Expected,
  type OrderNumbers,
  type OrderStep,
  type WorkOrder,
} from './procedure/order.js';
export {
  needComplete,
  type LeftOutStep,
  type RecordedStep,
  type ReplacedStep,
  type Signatures,
  type Signed,
  type SignedWork,
} from './procedure/signed.js';
export type { ProtectiveStep, StepRemark, WorkStep, WorkWords } from './procedure/steps.js';
