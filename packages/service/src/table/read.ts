import { refused } from "@trunnion/register";
import { CsvError, parse } from "csv-parse/sync";
import { decodeText } from "./encoding";

/** What is read at most; `rowBytes` is the length of one row. */
export const tableLimits = { bytes: 32_000_000, columns: 500, rows: 200_000, rowBytes: 100_000 } as const;

/** A row of a table, with the line of the file it begins on. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
}

const separators = [",", ";", "\t"] as const;

/** The line of headings, without what stands in quotation marks: a separator in there separates nothing. */
function bareHeadings(text: string): string {
  const end = text.indexOf("\n");
  return (end < 0 ? text : text.slice(0, end)).replace(/"[^"]*"/g, "");
}

/** How often it occurs, without making a list of the parts: there may be millions. */
function countOf(separator: string, headings: string): number {
  let count = 0;
  for (let at = headings.indexOf(separator); at >= 0; at = headings.indexOf(separator, at + 1)) count++;
  return count;
}

/** The separator that the line of headings has most of, and how many columns that makes; a comma when it has none. */
function separatorOf(headings: string): { readonly separator: string; readonly columns: number } {
  const counts = separators.map((separator) => countOf(separator, headings));
  const most = Math.max(...counts);
  return { separator: separators[counts.indexOf(most)] ?? ",", columns: most + 1 };
}

const problems: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: "a quotation mark is never closed",
  CSV_INVALID_CLOSING_QUOTE: "text follows a closing quotation mark",
  INVALID_OPENING_QUOTE: "a quotation mark stands inside a cell that does not begin with one",
  CSV_MAX_RECORD_SIZE: `the row that begins here is longer than ${tableLimits.rowBytes} bytes`,
};

interface Place {
  readonly file: string;
  /** Where the row begins that could not be read: a quotation mark left open shows many lines further down. */
  readonly line: number;
}

function broken(error: unknown, place: Place): never {
  if (!(error instanceof CsvError)) throw error;
  throw refused("TABLE_BROKEN", { ...place, problem: problems[error.code] ?? error.message });
}

function parseRows(text: string, delimiter: string, file: string): readonly TableRow[] {
  const rows: TableRow[] = [];
  let line = 1;
  try {
    parse(text, {
      delimiter,
      record_delimiter: "\n",
      relax_column_count: true,
      max_record_size: tableLimits.rowBytes,
      to: tableLimits.rows + 2,
      on_record: (record: readonly string[], { lines }) => {
        rows.push({ line, cells: record.map((cell) => cell.trim()) });
        line = lines + 1;
        return null;
      },
    });
  } catch (error) {
    return broken(error, { file, line });
  }
  return rows;
}

/**
 * Reads a CSV table: UTF-8 or Windows-1252, comma, semicolon or tab, headings first. Cells are trimmed
 * and nothing in them is worked out; line ends inside them are LF. Empty rows are passed over, and keep their number.
 *
 * @throws Refusal FILE_EMPTY, FILE_TOO_LARGE, FILE_NOT_A_TABLE, FILE_ENCODING, TABLE_TOO_WIDE, TABLE_TOO_LONG, TABLE_BROKEN
 */
export function readTable(bytes: Uint8Array, file: string): Table {
  if (bytes.length > tableLimits.bytes) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: tableLimits.bytes });
  }
  // One kind of line end, or the parser counts a CR LF inside a cell as two lines.
  const text = decodeText(bytes, file).replace(/\r\n?/g, "\n");
  if (text.trim() === "") throw refused("FILE_EMPTY", { file });
  const { separator, columns } = separatorOf(bareHeadings(text));
  if (columns > tableLimits.columns) {
    throw refused("TABLE_TOO_WIDE", { file, columns, limit: tableLimits.columns });
  }
  const [head, ...rows] = parseRows(text, separator, file);
  if (!head) throw refused("FILE_EMPTY", { file });
  if (rows.length > tableLimits.rows) throw refused("TABLE_TOO_LONG", { file, limit: tableLimits.rows });
  return { headings: head.cells, rows: rows.filter(({ cells }) => cells.some((cell) => cell !== "")) };
}
