import type { SheetModel } from "@trunnion/register";
import type { SheetsOptions } from "../draw-sheets";
import type { FormReading } from "../read/read-form";

/** What the thread is asked. Models come in parts, since handing many over at once would hold up who asks. */
export type Asked =
  | { readonly id: number; readonly kind: "models"; readonly models: readonly SheetModel[] }
  | { readonly id: number; readonly kind: "draw"; readonly options: SheetsOptions }
  | { readonly id: number; readonly kind: "read"; readonly bytes: Uint8Array };

/** What it answers. */
export type Answered =
  | { readonly id: number; readonly bytes: Uint8Array }
  | { readonly id: number; readonly reading: FormReading }
  /** `refused`: the models cannot be drawn, in words; else a bug. */
  | { readonly id: number; readonly error: string; readonly refused: boolean };
