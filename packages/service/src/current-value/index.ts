export { compareCurrentValues, type StaleValue } from "./read";
export { addCurrentValues, currentValuesOf, rebuildAllCurrentValues, rebuildCurrentValues } from "./write";
