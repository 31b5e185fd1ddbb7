export {
  type Claimant,
  type ColumnName,
  type PlannedRow,
  placeRow,
  type SeriesFacts,
  withClaimant,
} from "./policy";
