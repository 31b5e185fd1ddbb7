export { type Column, columnLetter, columnsTwice, foldHeading, plainHeadings, readHeadings } from "./heading";
export {
  type CarStatusCode,
  type CellProblem,
  type RecordedValue,
  type RegisterRow,
  type RowReading,
  readRow,
} from "./row";
