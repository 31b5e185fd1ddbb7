export { mayPrint } from "./policy";
export { type PrintedSheetNow, printedSheetNow, type SheetFace, sheetFace } from "./read";
export { blankSheet, type MadeSheet, makeSheets, type PrintSheetsInput, printSheets } from "./write";
