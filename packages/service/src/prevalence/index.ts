export {
  type Others,
  type OthersRow,
  others,
  type Prevalence,
  type PrevalenceRow,
  prevalence,
  sayCommonest,
} from "./read";
