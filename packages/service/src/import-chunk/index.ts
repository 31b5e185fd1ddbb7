export { type CarChanges, type ChangeBasis, type PresentKeeper, valuesBefore } from "./policy";
export { type CarRow, meetRecords, movedRows } from "./read";
export { type ChunkBasis, writeCars } from "./write";
