export { type BuildSheetInput, buildSheet, LAYOUT_VERSION, type SheetCar } from "./build";
export * from "./sheet-model";
