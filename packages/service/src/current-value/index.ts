export { compareCurrentValues, type StaleValue } from "./read";
export { addCurrentValues, rebuildAllCurrentValues, rebuildCurrentValues } from "./write";
