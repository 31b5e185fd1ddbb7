import type { DossierModel } from "@trunnion/register";
import type { Drawing } from "../layout/sheet-context";

/** What every section of a dossier draws from. */
export interface DossierContext extends Drawing {
  readonly model: DossierModel;
}
