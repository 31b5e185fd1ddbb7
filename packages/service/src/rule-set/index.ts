export { checksOf, limitsFor, limitsOf, type StoredLimit } from "./read";
export { type AddRuleSetInput, addRuleSet } from "./write";
