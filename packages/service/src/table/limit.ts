import { type Refusal, refused, registerFileBytes } from "@trunnion/register";

/** What is read at most; `rowBytes` is the length of one row of a CSV file. */
export const tableLimits = {
  bytes: registerFileBytes,
  columns: 500,
  rows: 200_000,
  rowBytes: 100_000,
} as const;

/** A row of a table, with the line of the file, or the row of the sheet, it begins on. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  /** What the file is, by what stands in it. */
  readonly kind: "csv" | "xlsx" | "ods";
  readonly headings: readonly string[];
  /** Line that the headings stand on. */
  readonly head: number;
  /** What stands in the lines above them, which are passed over: a title, a date. */
  readonly above: readonly string[];
  readonly rows: readonly TableRow[];
  /** Sheet of a workbook that was read. */
  readonly sheet?: string;
  /** Sheets the workbook has; hidden ones are read only when asked for by name. OpenDocument does not tell which are. */
  readonly sheets?: readonly { readonly name: string; readonly hidden: boolean }[];
}

/** What is refused where a file has no table, or none below the line that was said to have its headings. */
export function nothingThere(file: string, head: number | undefined): Refusal {
  return head === undefined
    ? refused("FILE_EMPTY", { file })
    : refused("HEAD_LINE_EMPTY", { file, line: head });
}
