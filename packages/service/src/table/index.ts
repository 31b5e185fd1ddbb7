export { FORMULA_ERROR } from "./cell";
export { type Table, type TableRow, tableLimits } from "./limit";
export { readTable, readTableFile, type TableInput } from "./read";
export { workbookLimits } from "./unpack";
