export { type MoveDirection, moveDirections, type OfferedAdjuster } from "./adjuster";
export {
  adjustmentsOnRecord,
  layoutOf,
  type PlanField,
  type PlanLayout,
  type PlanSide,
  type PlanWheel,
  planFields,
  planLayout,
  type RecordedAdjustment,
} from "./field";
export { type PlanAxle, type PlannedLayout, plannedLayouts } from "./layout";
export { type PlanReadingText, SETUP_PLAN_LAYOUT, type SetupPlanModel } from "./model";
export {
  makeSetupPlan,
  type PlanForm,
  type PlanReading,
  type PlanResult,
  type PlanStep,
  type PlanTyped,
  planTolerance,
  type ReadPlan,
  readPlan,
  type SetupPlan,
  targetsOf,
} from "./plan";
export { sayAngle, sayMove, sayShift, sayToe, sideEffectsOf } from "./say";
