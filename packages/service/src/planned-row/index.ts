export {
  type Claimant,
  type ColumnName,
  type PlannedRow,
  placeRow,
  type SeriesFacts,
  withClaimant,
} from "./policy";
export {
  columnsOf,
  type DoubtfulRow,
  derivedHeadingsIn,
  openRowReader,
  type ReadRows,
  type RefusedRow,
  type RowReader,
  seriesFacts,
  unknownHeadings,
} from "./read";
