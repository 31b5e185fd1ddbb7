export { type SetupPlanInput, type SetupPlanPage, setupPlanModel, setupPlanPage } from "./read";
