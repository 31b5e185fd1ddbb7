export {
  readSheetForm,
  repeatsIn,
  type SheetBasis,
  type SheetCell,
  type SheetCellReading,
  type SheetFormReading,
  type SheetMoment,
  sheetField,
  sheetRepeatLimit,
} from "./read-form";
export { readSheetTable, type SheetTableCell, type SheetTableReading, sheetTableRows } from "./read-table";
export {
  isUsualSetting,
  type SheetGroup,
  type SheetGroupKey,
  sheetGroupKeys,
  sheetGroupOf,
  sheetGroups,
  sheetSides,
} from "./row";
