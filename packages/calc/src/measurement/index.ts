export { measurementComputations } from "./catalogue";
export { type ConformityInput, conformityProbability, normalProbability } from "./conformity";
export {
  medianAbsoluteDeviation,
  medianOf,
  outlierThreshold,
  type RobustSummary,
  robustScale,
  robustSummary,
} from "./robust";
export { meanOf, type Repeatability, repeatability, seriesLimit } from "./series";
export {
  arcsineUncertainty,
  type Contribution,
  certificateUncertainty,
  combinedUncertainty,
  coverageFactor,
  effectiveDegreesOfFreedom,
  expandedUncertainty,
  rectangularUncertainty,
  resolutionUncertainty,
  triangularUncertainty,
} from "./uncertainty";
export {
  type AcceptanceZone,
  acceptanceZone,
  type Limits,
  type Verdict,
  type VerdictInput,
  verdict,
  verdicts,
} from "./verdict";
