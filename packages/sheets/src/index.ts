export { drawSheets, type SheetsOptions } from "./draw-sheets";
export type { Paper } from "./layout/paper";
