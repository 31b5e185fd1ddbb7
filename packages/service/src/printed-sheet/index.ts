export { mayPrint } from "./policy";
export { type PrintSheetsInput, printSheets } from "./write";
