export * from "./carried";
export * from "./check";
export * from "./eligibility";
export { checksForCar, fillWhy, whyProblems } from "./for-car";
export * from "./limit";
export * from "./reading-place";
export { checkSchema } from "./schema";
export { staleFigures } from "./short";
export { starterChecks, starterClasses } from "./starter";
