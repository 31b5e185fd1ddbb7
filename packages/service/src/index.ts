export { Database } from "@trunnion/db";
export * from "./archive";
export * from "./as-built";
export * from "./backup";
export * from "./calendar-feed";
export * from "./car";
export * from "./car-event";
export * from "./car-form";
export * from "./car-page";
export * from "./carried-finding";
export * from "./characteristic";
export * from "./claim";
export * from "./club";
export * from "./comparison";
export * from "./consequence";
export type { Actor, ClubFacts, Context } from "./context";
export * from "./current-value";
export * from "./dossier";
export {
  type DueCount,
  type DueDay,
  type DueMonth,
  type DuePage,
  dueInput,
  dueMonth,
  dueMonthInput,
  duePage,
  type FleetDueItem,
} from "./due";
export * from "./entry";
export * from "./entry-list";
export * from "./entry-page";
export * from "./event";
export type { ClassStanding } from "./event-class";
export * from "./event-page";
export * from "./event-report";
export * from "./evidence";
export * from "./export";
export * from "./export-page";
export * from "./filter";
export * from "./garage";
export * from "./gate";
export * from "./history-note";
export * from "./home";
export { type HotQuery, hotList } from "./hot-list";
export * from "./identity";
export { dropFile, type KeepFileInput, type KeptFile, keepFile, readKeptFile } from "./import-file";
export * from "./import-job";
export { keepMapping, rememberedMapping } from "./import-mapping";
export * from "./import-plan";
export type { PreviewCar, PreviewLine } from "./import-preview";
export {
  type DoubtfulRow,
  type ImportInput,
  type ImportReport,
  importInChunks,
  importRegister,
  type Open,
  type RefusedRow,
  requireMayImport,
  requireRun,
} from "./import-run";
export * from "./import-undo";
export * from "./inspection";
export { type DeviceLine, devicesOf } from "./inspection-device";
export * from "./inspection-record";
export * from "./instrument";
export * from "./invitation";
export * from "./journal";
export * from "./keeper";
export {
  createMailer,
  MailSettingError,
  type MailSettings,
  mailSettings,
  sendAllNotices,
  startMailing,
} from "./mail";
export * from "./media";
export * from "./merge";
export * from "./moved-verdict";
export { listNotices, type NoticeLine, type OutgoingNotice, type SendNotice, sendNotices } from "./notice";
export * from "./number";
export {
  type AddPartInput,
  addPart,
  addPartInput,
  changePart,
  changePartInput,
  type DependentCar,
  type ListedPart,
  listedParts,
  type PartNeed,
  type PartUse,
  partNeeds,
  withdrawPart,
  withdrawPartInput,
} from "./part";
export * from "./part-note";
export * from "./part-page";
export * from "./prevalence";
export * from "./printed-sheet";
export * from "./public-extract";
export { type CarRecord, recordsOf } from "./record";
export * from "./register-list";
export * from "./roll-study";
export * from "./rule-set";
export * from "./rule-set-draft";
export * from "./rule-set-page";
export * from "./scarce-part";
export { type Correction, refreshWholeSearchIndex } from "./search-index";
export * from "./series";
export * from "./setting-sheet";
export * from "./setting-sheet-form";
export * from "./setup-plan";
export * from "./sheet-form";
export * from "./sign-in";
export * from "./source";
export * from "./specification";
export * from "./specification-draft";
export * from "./specification-page";
export * from "./specification-table";
export * from "./spread";
export * from "./status";
export * from "./store";
export {
  type CreateDraftInput,
  createDraft,
  createDraftInput,
  type MakerStepInput,
  makerStepInput,
  type SaveDraftInput,
  type SubmissionMark,
  type SubmissionView,
  saveDraft,
  saveDraftInput,
  stepSubmission,
  submissionView,
  supersedeInput,
  supersedeSubmission,
  type ThreadMessage,
} from "./submission";
export * from "./submission-decision";
export {
  type QueuedSubmission,
  type ReviewQueue,
  reviewQueue,
  type SubmissionBrief,
} from "./submission-list";
export {
  type BrowserGround,
  type SubmissionLine,
  type SubmissionPage,
  submissionConsequence,
  submissionPage,
} from "./submission-page";
export * from "./submission-photo";
export * from "./survival";
export { readTableFile, type Table, tableLimits } from "./table";
export { compareTallies, forgetTallies, type WrongTally } from "./tally";
export * from "./timeline";
export * from "./together";
export { prefixedValueColumns, valueColumns } from "./value-columns";
