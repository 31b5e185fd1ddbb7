export {
  carHasPart,
  type FeatureDifference,
  featureDifferences,
  spotOf,
  tellingTolerance,
  type Use,
} from "./feature";
export { looksAlike } from "./look-alike";
export { type Fitting, type MixKind, type MixWarning, mixWarnings } from "./mix";
export * from "./part";
export { type FeatureRow, type FitRow, type FitSeries, readPartFeatures, readPartFits } from "./read-part";
export {
  byScarcity,
  type Scarcity,
  type ScarcityInput,
  type ScarcityRung,
  scarcityOf,
  scarcityRule,
  scarcityRungs,
  scarcityWords,
} from "./scarcity";
