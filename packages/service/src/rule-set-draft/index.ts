export { ruleKeepers } from "./policy";
export {
  copyRuleSet,
  copyRuleSetInput,
  discardRuleSet,
  draftRef,
  makeRuleSetCurrent,
  putCheck,
  putCheckInput,
  putClass,
  putClassInput,
  putLimit,
  putLimitInput,
  removeRow,
  removeRowInput,
} from "./write";
