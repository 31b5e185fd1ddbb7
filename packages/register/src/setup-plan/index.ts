export { type OfferedAdjuster, offeredAdjusters, type ShimDirection, shimDirections } from "./adjuster";
export { adjustmentsOnRecord, type PlanField, type PlanSide, planFields, planPoints } from "./field";
export { type PlanReadingText, SETUP_PLAN_LAYOUT, type SetupPlanModel } from "./model";
export {
  makeSetupPlan,
  type PlanReading,
  type PlanResult,
  type PlanStep,
  type PlanTyped,
  planTolerance,
  type ReadPlan,
  readPlan,
  type SetupPlan,
  targetFields,
} from "./plan";
