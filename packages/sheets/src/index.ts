export type { Picture } from "./document/sheet-document";
export { DOSSIER_PICTURES, type DossierOptions, drawDossier } from "./dossier/draw-dossier";
export { drawSheets, type SheetKind, type SheetsOptions, sheetKinds } from "./draw-sheets";
export type { Paper } from "./layout/paper";
export { type PackPartName, packParts } from "./pack/pack";
export { FORM_FILE_LIMIT, type FormReading, type FormSheet, readSheetForm } from "./read/read-form";
export { drawEventReport } from "./report/draw-event-report";
export { drawSetupPlan } from "./setup-plan/draw-setup-plan";
export { drawSheetsAside, readSheetFormAside } from "./worker/aside";
