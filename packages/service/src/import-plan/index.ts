export { AS_WRITTEN, type SettledColumn } from "./policy";
export { type ImportLine, type ImportView, importProblems, importView, listImports } from "./read";
export {
  beginImport,
  discardImport,
  lookAgain,
  type PlanInput,
  planImport,
  reopenColumns,
  type SettleColumnsInput,
  settleColumns,
  takeSheet,
  unneeded,
} from "./write";
