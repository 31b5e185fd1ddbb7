export { type ExportPage, exportPage } from "./read";
