export type { DoubtfulRow, RefusedRow } from "./read";
export { type ImportInput, type ImportReport, importRegister } from "./write";
