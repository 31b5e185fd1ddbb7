export {
  type ComparePage,
  comparePage,
  type DraftReview,
  draftReview,
  type SpecificationOverview,
  type SpecificationPage,
  specificationOverview,
  specificationPage,
  type VersionLine,
} from "./read";
