import type { Words } from "./words";

/** What the service refuses about the journal, apart from the general refusals. */
export interface JournalRefusals {
  JOURNAL_ENTRY_NOT_FOUND: { readonly sequence: number };
}

export const journalWords: Words<JournalRefusals> = {
  JOURNAL_ENTRY_NOT_FOUND: ({ sequence }) => ({
    what: `The club's journal has no entry ${sequence}.`,
    remedy: "Look for it in the journal by day, person or car.",
  }),
};
