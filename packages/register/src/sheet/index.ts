export { type BuildSheetInput, buildSheet, LAYOUT_VERSION, type SheetCar } from "./build";
export { type SheetChange, sheetChanges } from "./change";
export * from "./filled-sheet";
export * from "./sheet-model";
