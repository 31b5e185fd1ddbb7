export { readTable, type Table, type TableRow, tableLimits } from "./read";
