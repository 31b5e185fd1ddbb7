export * from "./content";
export { submissionContentSchema } from "./content-schema";
export { submissionDifferences } from "./difference";
export { mixesOfSubmission, type SubmissionMix } from "./mix";
export { consequencesOfSubmission, type Proposal, type ProposedConsequences, proposalOf } from "./proposal";
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
export { ratioOfFigure, sayConsequenceFigure } from "./words";
export * from "./workflow";
