export {
  type AssemblyCounts,
  type CarPage,
  type CarTimeline,
  type ChainReport,
  type ComparePage,
  createSignIn,
  Database,
  type DraftEntry,
  type DraftReview,
  type EventView,
  type FilterForm,
  type Home,
  isHealthy,
  type JournalEntryPage,
  type JournalItem,
  type JournalPage,
  type OwnCharacteristic,
  PASSWORD_MINIMUM,
  type RegisterList,
  type SavedFilter,
  type SeriesPage,
  type SignIn,
  type SpecificationImport,
  type SpecificationOverview,
  type SpecificationPage,
  type VersionLine,
} from "@trunnion/service";
export { type DossierPdfInput, dossierPdf } from "./dossier";
export { logFault, problemsOf, refusalOf, type ToldRefusal } from "./failure";
export type { FieldErrors } from "./field-error";
export { type Request, requestOf } from "./request";
export { type AppRouter, appRouter, createCaller, type RouterInputs } from "./router";
export { type SheetsInput, sheetsPdf } from "./sheets";
