export { type CarRecord, carReference, recordsOf } from "./read";
