export { mayPrint } from "./policy";
export { type MadeSheet, makeSheets, type PrintSheetsInput, printSheets } from "./write";
