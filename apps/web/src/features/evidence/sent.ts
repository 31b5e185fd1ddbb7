import type { Sent } from "./evidence-page";
import type { Outcome } from "./outcome";

/** What the address of a page says of the form that led there. */
export interface SentQuery {
  readonly added?: string;
  readonly outcome?: string;
}

/** How many files were added, or why none was. */
export function sentOf({ added = "" }: SentQuery, outcome: Outcome | undefined): Sent {
  return {
    ...(/^\d{1,2}$/.test(added) ? { added: Number(added) } : {}),
    ...(outcome === undefined ? {} : { outcome }),
  };
}
