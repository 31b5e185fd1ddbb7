import type { Words } from "./words";

/** What the service refuses about printed sheets and what comes back on them. */
export interface SheetRefusals {
  SHEET_CODE_UNKNOWN: { readonly code: string };
  SHEET_FILE_DAMAGED: { readonly file: string };
  SHEET_FILE_ENCRYPTED: { readonly file: string };
  SHEET_FILE_FOREIGN: { readonly file: string };
  SHEET_FILE_FLAT: { readonly file: string };
  SHEET_FILE_EDITED: { readonly file: string; readonly number: string; readonly field: string };
  SHEET_OF_OTHER_EVENT: { readonly file: string; readonly number: string; readonly event: string };
}

const again = "Save it once more in the program you filled it in with, and drop that file here.";

export const sheetWords: Words<SheetRefusals> = {
  SHEET_CODE_UNKNOWN: ({ code }) => ({
    what: `No sheet with the code ${code} was printed here.`,
    remedy: "Compare it with the foot of the sheet: eight letters and figures, never I, L, O or U.",
  }),
  SHEET_FILE_DAMAGED: ({ file }) => ({
    what: `${file} breaks off or cannot be read as a PDF.`,
    remedy: again,
  }),
  SHEET_FILE_ENCRYPTED: ({ file }) => ({
    what: `${file} is locked with a password or encrypted.`,
    remedy: "Save it without protection, and drop that file here.",
  }),
  SHEET_FILE_FOREIGN: ({ file }) => ({
    what: `${file} is not a sheet printed here to be filled in.`,
    remedy: "Print the event's sheets as a file to fill in, and drop the filled one here.",
  }),
  SHEET_FILE_FLAT: ({ file }) => ({
    what: `${file} holds sheets, but nothing is filled in on any of them.`,
    remedy: `If you did fill it in, its fields were lost when it was saved or printed to a file. ${again}`,
  }),
  SHEET_FILE_EDITED: ({ file, number, field }) => ({
    what: `${file} was edited: on the sheet of number ${number} the field "${field}" is not as it was printed.`,
    remedy: "Print that sheet anew, fill it in, and drop it here; or enter the findings by hand.",
  }),
  SHEET_OF_OTHER_EVENT: ({ file, number, event }) => ({
    what: `${file} holds the sheet of number ${number} for another event: ${event}.`,
    remedy: "Drop it on that event's page.",
  }),
};
