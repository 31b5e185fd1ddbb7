export type { Picture } from "./document/sheet-document";
export { DOSSIER_PICTURES, type DossierOptions, drawDossier } from "./dossier/draw-dossier";
export { drawSheets, type SheetsOptions } from "./draw-sheets";
export type { Paper } from "./layout/paper";
export { drawSetupPlan } from "./setup-plan/draw-setup-plan";
