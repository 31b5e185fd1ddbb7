export { asksUnit, type ContentBasis } from "./content";
export { type BuildPeriod, doubtsBeside, doubtsOf, looksGarbled, sayBeforeBuilt } from "./doubt";
export {
  type Column,
  columnLetter,
  columnsTwice,
  derivedHeadings,
  foldHeading,
  plainHeadings,
  readHeading,
  readHeadings,
} from "./heading";
export { textLikeness } from "./likeness";
export { registerFileBytes } from "./limit";
export {
  allHeadings,
  columnName,
  columnsAs,
  headingKey,
  headingOf as columnHeading,
  type ImportMapping,
  importMappingSchema,
  keepAsRemarks,
  leaveOut,
  type MappedColumn,
  type MappedColumns,
  type MappingProblem,
  mappingOf,
  unitsFor,
  unmatchedHeadings,
} from "./mapping";
export { type Certainty, type ColumnProposal, proposeColumns } from "./propose";
export {
  type CarStatusCode,
  type CellDoubt,
  type CellProblem,
  columnPlace,
  type RecordedValue,
  type RegisterRow,
  type RowReading,
  readRow,
  statusNamed,
} from "./row";
export { dayOfSerial, type Epoch } from "./serial-day";
