export {
  type BrowserGround,
  linesOf,
  type SubmissionLine,
  type SubmissionPage,
  submissionConsequence,
  submissionPage,
} from "./read";
