import type { SpecificationImport } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";

/** What the form that reads a table in knows after it was sent. */
export interface ImportState {
  readonly refusal?: RefusalText;
  readonly report?: SpecificationImport;
  /** The file that was looked at, so that it need not be chosen again: its name, and its bytes in base 64. */
  readonly file?: { readonly name: string; readonly content: string };
  readonly mode: "merge" | "replace";
}

/** Nothing was sent yet. */
export const nothingRead: ImportState = { mode: "merge" };
