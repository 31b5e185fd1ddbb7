import { foldName } from "../characteristic/fold-name";

/** What a list of entries may hold at most. */
export const entryListLimits = { entries: 500, characters: 200_000 } as const;

/** Columns of a list of entries. */
export const entryColumns = ["number", "car", "mark", "driver", "group", "className"] as const;
export type EntryColumn = (typeof entryColumns)[number];

/** Longest text of each column, as the forms take it. */
export const entryColumnLimits: Readonly<Record<EntryColumn, number>> = {
  number: 12,
  car: 120,
  mark: 60,
  driver: 120,
  group: 60,
  className: 120,
};

/** What of a line is too long or has characters that no text may have: each in words. */
export function entryLineProblems(line: Readonly<Record<EntryColumn, string>>): readonly string[] {
  return entryColumns.flatMap((column) => {
    const [text, limit, label] = [line[column], entryColumnLimits[column], entryColumnLabels[column]];
    const long =
      text.length > limit
        ? [`${label} has ${text.length} characters; at most ${limit} may stand there.`]
        : [];
    const controls = /\p{Cc}/u.test(text) ? [`${label} has control characters.`] : [];
    return [...long, ...controls];
  });
}

/** Columns as they are named to people. */
export const entryColumnLabels: Readonly<Record<EntryColumn, string>> = {
  number: "Number",
  car: "Car",
  mark: "Registration mark",
  driver: "Driver",
  group: "Group",
  className: "Class",
};

const headings: Readonly<Record<EntryColumn, readonly string[]>> = {
  number: ["number", "no", "nr", "race number", "running number", "start number", "start no", "#"],
  car: ["car", "chassis", "chassis number", "vehicle", "model", "car and model"],
  mark: ["registration mark", "registration", "reg", "mark", "plate", "number plate"],
  driver: ["driver", "name", "entrant", "driver name"],
  group: ["group", "session", "run group"],
  className: ["class", "category"],
};

/** One line of a list of entries, as written; empty where the list says nothing. */
export type EntryListLine = Readonly<Record<EntryColumn, string>> & {
  /** Line of the list it stands on. */
  readonly line: number;
};

/** The column a heading names. */
export function entryColumnOf(heading: string): EntryColumn | undefined {
  const folded = foldName(heading);
  return entryColumns.find((column) => headings[column].some((name) => foldName(name) === folded));
}

/** Columns of a list without headings, in this order. */
const asWritten: readonly EntryColumn[] = ["number", "car", "driver", "group", "className"];

export interface ListTable {
  readonly headings: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/**
 * The entries of a table: by its headings where two or more of them are known, else its first row is an entry too and
 * columns are number, car, driver, group, class. Empty rows are passed over; `unknown` names columns that were not read.
 */
export function readEntryLines(table: ListTable): {
  readonly lines: readonly EntryListLine[];
  readonly unknown: readonly string[];
} {
  const known = table.headings.map(entryColumnOf);
  const isHead = known.filter((column) => column !== undefined).length >= 2;
  const columns = isHead ? known : asWritten;
  const first = (table.rows[0]?.line ?? 2) - 1;
  const rows = isHead ? table.rows : [{ line: Math.max(1, first), cells: table.headings }, ...table.rows];
  const lines = rows.flatMap(({ line, cells }): readonly EntryListLine[] => {
    if (cells.every((cell) => cell.trim() === "")) return [];
    const cell = (column: EntryColumn) => {
      const place = columns.indexOf(column);
      return place < 0 ? "" : (cells[place] ?? "").trim();
    };
    return [
      {
        line,
        number: cell("number"),
        car: cell("car"),
        mark: cell("mark"),
        driver: cell("driver"),
        group: cell("group"),
        className: cell("className"),
      },
    ];
  });
  const unknown = isHead ? table.headings.filter((name, at) => known[at] === undefined && name !== "") : [];
  return { lines, unknown };
}
