export { type PrintSheetsInput, printSheets } from "./write";
