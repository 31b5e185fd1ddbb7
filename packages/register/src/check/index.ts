export * from "./check";
export { checksForCar, fillWhy } from "./for-car";
export { checkSchema } from "./schema";
export { starterChecks, starterClasses } from "./starter";
