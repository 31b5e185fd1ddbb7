export {
  type CarInRuleSet,
  carInRuleSet,
  listRuleSets,
  type RuleSetFacts,
  type RuleSetPage,
  ruleSetPage,
} from "./read";
