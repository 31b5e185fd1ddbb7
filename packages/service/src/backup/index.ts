export { type BackupReport, kindOfFile, type RestoreBackupInput, restoreBackup } from "./read";
export { type BackupInput, type PreparedBackup, prepareBackup } from "./write";
