export { checksOf } from "./read";
export { type AddRuleSetInput, addRuleSet } from "./write";
