export { type EvidenceFiles, mayArchive } from "./policy";
export { type RestoreInput, type RestoreReport, restoreArchive, restoreRecords } from "./read";
export { evidenceFilesOf } from "./store";
export { type ArchiveInput, type PreparedArchive, prepareArchive } from "./write";
