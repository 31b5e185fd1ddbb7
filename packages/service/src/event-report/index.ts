export { eventReport, reportCsv } from "./read";
