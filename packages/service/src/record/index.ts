export { builtOf, type CarRecord, carReference, recordByClaim, recordsInTurn, recordsOf } from "./read";
