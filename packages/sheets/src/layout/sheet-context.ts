import type { SheetModel } from "@trunnion/register";
import type { Faces } from "../font/face";
import type { PageFlow } from "./page-flow";

/** What every section draws from: the model, and the pages it goes to. */
export interface SheetContext {
  readonly model: SheetModel;
  readonly flow: PageFlow;
  readonly faces: Faces;
}
