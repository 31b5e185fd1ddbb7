export { type CarRecord, carReference, recordsInTurn, recordsOf } from "./read";
