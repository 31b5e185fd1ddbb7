export { compareCurrentValues, type StaleValue } from "./read";
export { rebuildAllCurrentValues, rebuildCurrentValues } from "./write";
