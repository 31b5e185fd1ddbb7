export { breachOf, LEFT_OUT_DOMAIN, tableOf } from "./policy";
export { archiveLines, columnTypes, unmatched } from "./read";
export { type ArchiveLine, RowRefused, RowWriter } from "./write";
