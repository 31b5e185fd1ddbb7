import { refused } from "@trunnion/register";
import { CsvError, parse } from "csv-parse/sync";
import { decodeText } from "./encoding";

/** What is read at most. */
export const tableLimits = { bytes: 32_000_000, columns: 500, rows: 200_000, cell: 10_000 } as const;

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

/** The separator that the line of headings has most of; a comma when it has none. */
function separatorOf(text: string): string {
  const end = text.search(/\r?\n|$/);
  const first = text.slice(0, end);
  const counts = separators.map((separator) => first.split(separator).length - 1);
  const most = Math.max(...counts);
  if (most >= tableLimits.columns) return separators[counts.indexOf(most)] ?? ",";
  return most === 0 ? "," : (separators[counts.indexOf(most)] ?? ",");
}

function refuseWidth(text: string, separator: string, file: string): void {
  const columns = text.slice(0, text.search(/\r?\n|$/)).split(separator).length;
  if (columns > tableLimits.columns) {
    throw refused("TABLE_TOO_WIDE", { file, columns, limit: tableLimits.columns });
  }
}

const problems: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: "a quotation mark is never closed",
  CSV_INVALID_CLOSING_QUOTE: "text follows a closing quotation mark",
  INVALID_OPENING_QUOTE: "a quotation mark stands inside a cell that does not begin with one",
  CSV_MAX_RECORD_SIZE: `a row is longer than ${tableLimits.cell * 10} characters`,
  CSV_RECORD_INCONSISTENT_FIELDS_LENGTH: "it has more or fewer cells than there are headings",
};

function broken(error: unknown, file: string): never {
  if (!(error instanceof CsvError)) throw error;
  const lines = (error as CsvError & { lines?: number }).lines;
  throw refused("TABLE_BROKEN", {
    file,
    line: typeof lines === "number" ? lines : 1,
    problem: problems[error.code] ?? error.message,
  });
}

interface ParsedRow {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

function parseRows(text: string, delimiter: string, file: string): readonly TableRow[] {
  try {
    let begun = 1;
    const parsed = parse(text, {
      bom: true,
      delimiter,
      info: true,
      record_delimiter: ["\r\n", "\n", "\r"],
      relax_column_count: true,
      max_record_size: tableLimits.cell * 10,
      to: tableLimits.rows + 2,
    }) as unknown as readonly ParsedRow[];
    return parsed.map(({ record, info }) => {
      const row = { line: begun, cells: record.map((cell) => cell.trim()) };
      begun = info.lines + 1;
      return row;
    });
  } catch (error) {
    return broken(error, file);
  }
}

/**
 * Reads a CSV table: UTF-8 or Windows-1252, comma, semicolon or tab, headings first. Cells are trimmed;
 * a cell that begins with `=` is text like any other, never a formula. Empty rows are passed over.
 *
 * @throws Refusal FILE_EMPTY, FILE_TOO_LARGE, FILE_NOT_A_TABLE, FILE_ENCODING, TABLE_TOO_WIDE, TABLE_TOO_LONG, TABLE_BROKEN
 */
export function readTable(bytes: Uint8Array, file: string): Table {
  if (bytes.length > tableLimits.bytes) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: tableLimits.bytes });
  }
  const text = decodeText(bytes, file);
  if (text.trim() === "") throw refused("FILE_EMPTY", { file });
  const separator = separatorOf(text);
  refuseWidth(text, separator, file);
  const [head, ...rows] = parseRows(text, separator, file);
  if (!head) throw refused("FILE_EMPTY", { file });
  if (rows.length > tableLimits.rows) throw refused("TABLE_TOO_LONG", { file, limit: tableLimits.rows });
  return { headings: head.cells, rows: rows.filter(({ cells }) => cells.some((cell) => cell !== "")) };
}
