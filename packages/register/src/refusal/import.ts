import { list, megabytes, type Words } from "./words";

/** A car that keeps a reading-in from being undone, and why. */
export interface UndoBlock {
  /** The car as addresses name it. */
  readonly car: string;
  readonly because: string;
}

/** What the service refuses about reading files in, apart from the general refusals. */
export interface ImportRefusals {
  FILE_LOCKED: { readonly file: string };
  WORKBOOK_TOO_LARGE: {
    readonly file: string;
    /** Bytes in the file, bytes it claims to unpack to, and the most that are unpacked. */
    readonly packed: number;
    readonly unpacked: number;
    readonly limit: number;
  };
  WORKBOOK_BROKEN: { readonly file: string; readonly problem: string };
  SHEET_NOT_FOUND: { readonly file: string; readonly sheet: string; readonly known: readonly string[] };
  HEAD_LINE_EMPTY: { readonly file: string; readonly line: number };
  MAPPING_NOT_READ: { readonly file: string; readonly problems: readonly string[] };
  IMPORT_NOT_FOUND: { readonly run: string };
  IMPORT_RUNNING: { readonly file: string };
  /** Asked for at a moment it cannot be done: `status` is what it is, in words. */
  IMPORT_NOT_READY: { readonly file: string; readonly status: string };
  IMPORT_FILE_GONE: { readonly file: string };
  UNDO_BLOCKED: {
    readonly file: string;
    /** The first of them. */
    readonly cars: readonly UndoBlock[];
    readonly count: number;
  };
}

const blocks = (cars: readonly UndoBlock[], count: number) => {
  const named = cars.map(({ car, because }) => `${car} (${because})`).join("; ");
  return count > cars.length ? `${named}; and ${count - cars.length} more` : named;
};

const cars = (count: number) => (count === 1 ? "One car stands" : `${count} cars stand`);

export const importWords: Words<ImportRefusals> = {
  FILE_LOCKED: ({ file }) => ({
    what: `${file} is locked with a password.`,
    remedy: "Take the password off in your spreadsheet program, or save the sheet as CSV, then try again.",
  }),
  WORKBOOK_TOO_LARGE: ({ file, packed, unpacked, limit }) => ({
    what: `${file} packs ${megabytes(unpacked)} into ${megabytes(packed)}; at most ${megabytes(limit)} are unpacked.`,
    remedy:
      "Nothing was unpacked. Leave out sheets and columns that say nothing of a car, or save the sheet as CSV.",
  }),
  WORKBOOK_BROKEN: ({ file, problem }) => ({
    what: `${file} cannot be read as a workbook: ${problem}.`,
    remedy: "Open it in your spreadsheet program, save it again as XLSX, ODS or CSV, then try again.",
  }),
  SHEET_NOT_FOUND: ({ file, sheet, known }) => ({
    what: sheet === "" ? `${file} has no sheet to read.` : `${file} has no sheet "${sheet}".`,
    remedy: `Its sheets: ${list(known)}.`,
  }),
  HEAD_LINE_EMPTY: ({ file, line }) => ({
    what: `There is nothing on line ${line} of ${file}.`,
    remedy: "Say the line that names the columns, counted from the top of the file.",
  }),
  MAPPING_NOT_READ: ({ file, problems }) => ({
    what: `What the columns of ${file} are taken for cannot be understood: ${problems.join(" ")}`,
    remedy: "Mend each of these; nothing was written.",
  }),
  IMPORT_NOT_FOUND: ({ run }) => ({
    what: `There is no import "${run}" in this club.`,
    remedy: "Choose one from the list of imports.",
  }),
  IMPORT_RUNNING: ({ file }) => ({
    what: `${file} is being read in just now, and a club has one import at a time.`,
    remedy: "Wait until it is done, then try again.",
  }),
  IMPORT_NOT_READY: ({ file, status }) => ({
    what: `The import of ${file} ${status}.`,
    remedy: "Look at its page for what can be done now.",
  }),
  IMPORT_FILE_GONE: ({ file }) => ({
    what: `The uploaded file ${file} is no longer kept here.`,
    remedy: "Choose the same file again: what was read in already stays as it is.",
  }),
  UNDO_BLOCKED: ({ file, cars: named, count }) => ({
    what: `The import of ${file} cannot be undone: ${cars(count)} in its way: ${blocks(named, count)}.`,
    remedy: "Nothing was undone. Take those changes back first, or mend the cars one by one.",
  }),
};
