export * from "./content";
export { submissionContentSchema } from "./content-schema";
export { submissionDifferences } from "./difference";
export {
  type ReadChange,
  type ReadFastener,
  type ReadModification,
  type ReadSubmission,
  readSubmission,
  type SubmissionBasis,
  stateAfter,
  stateBefore,
} from "./read";
export { readEntered } from "./read-field";
export type { ReadReading, ReadSheet } from "./read-sheet";
export * from "./workflow";
