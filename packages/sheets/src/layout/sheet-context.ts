import type { SheetModel } from "@trunnion/register";
import type { Faces } from "../font/face";
import type { PageFlow } from "./page-flow";

/** What anything is drawn with. */
export interface Drawing {
  readonly flow: PageFlow;
  readonly faces: Faces;
}

/** What every section draws from: the model, and the pages it goes to. */
export interface SheetContext extends Drawing {
  readonly model: SheetModel;
}
