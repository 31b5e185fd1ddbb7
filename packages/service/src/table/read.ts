import { once } from "node:events";
import { setImmediate } from "node:timers/promises";
import { refused } from "@trunnion/register";
import { CsvError, type Options, parse } from "csv-parse";
import { parse as parseAtOnce } from "csv-parse/sync";
import { decodeText } from "./encoding";
import { type Table, type TableRow, tableLimits } from "./limit";
import { measureWorkbook } from "./unpack";
import { readWorkbook } from "./workbook";

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

/** The rows of a text as they come out of the parser, and what becomes of an error. */
class Rows {
  readonly taken: TableRow[] = [];
  /** Where the next row begins: a quotation mark left open shows many lines further down. */
  private line = 1;

  constructor(
    private readonly file: string,
    private readonly delimiter: string,
  ) {}

  readonly options = (): Options => ({
    delimiter: this.delimiter,
    record_delimiter: "\n",
    relax_column_count: true,
    max_record_size: tableLimits.rowBytes,
    to: tableLimits.rows + 2,
    on_record: (record: readonly string[], { lines }) => {
      this.taken.push({ line: this.line, cells: record.map((cell) => cell.trim()) });
      this.line = lines + 1;
      return null;
    },
  });

  broken(error: unknown): never {
    if (!(error instanceof CsvError)) throw error;
    const { file, line } = this;
    throw refused("TABLE_BROKEN", { file, line, problem: problems[error.code] ?? error.message });
  }

  table(): Table {
    const { file } = this;
    const [head, ...rows] = this.taken;
    if (!head) throw refused("FILE_EMPTY", { file });
    if (rows.length > tableLimits.rows) throw refused("TABLE_TOO_LONG", { file, limit: tableLimits.rows });
    const filled = rows.filter(({ cells }) => cells.some((cell) => cell !== ""));
    return { kind: "csv", headings: head.cells, rows: filled };
  }
}

/** Text of a table and how it is to be parsed. */
function opened(bytes: Uint8Array, file: string): { readonly text: string; readonly rows: Rows } {
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
  return { text, rows: new Rows(file, separator) };
}

/**
 * Reads a CSV table: UTF-8 or Windows-1252, comma, semicolon or tab, headings first. Cells are trimmed
 * and nothing in them is worked out; line ends inside them are LF. Empty rows are passed over, and keep their number.
 *
 * @throws Refusal FILE_EMPTY, FILE_TOO_LARGE, FILE_NOT_A_TABLE, FILE_ENCODING, TABLE_TOO_WIDE, TABLE_TOO_LONG, TABLE_BROKEN
 */
export function readTable(bytes: Uint8Array, file: string): Table {
  const { text, rows } = opened(bytes, file);
  try {
    parseAtOnce(text, rows.options());
  } catch (error) {
    rows.broken(error);
  }
  return rows.table();
}

/** Characters parsed before others get their turn. */
const PIECE = 500_000;

/** The same without keeping everybody else waiting while a large file is parsed. */
async function readTableInTurns(bytes: Uint8Array, file: string): Promise<Table> {
  const { text, rows } = opened(bytes, file);
  if (text.length <= PIECE) return readTable(bytes, file);
  const stream = parse(rows.options());
  const ended = once(stream.resume(), "end");
  // Waited for below; an error must not count as unheard until then.
  ended.catch(() => undefined);
  try {
    for (let start = 0; start < text.length; start += PIECE) {
      if (!stream.write(text.slice(start, start + PIECE))) await Promise.race([once(stream, "drain"), ended]);
      await setImmediate();
    }
    stream.end();
    await ended;
  } catch (error) {
    rows.broken(error);
  }
  return rows.table();
}

const ZIP = [0x50, 0x4b];

export interface TableInput {
  readonly bytes: Uint8Array;
  /** Name of the file, for what is said of it; it decides nothing. */
  readonly file: string;
  /** Sheet of a workbook; the first that is shown and has a table in it when left out. */
  readonly sheet?: string;
}

/**
 * Reads a table from CSV, XLSX or OpenDocument (ODS), whichever the file's first bytes and parts show it to be.
 * Of a workbook one sheet is read: values as they are shown, formulas as what they came to.
 *
 * @throws Refusal those of `readTable`, and for a workbook FILE_LOCKED, WORKBOOK_TOO_LARGE, WORKBOOK_BROKEN, SHEET_NOT_FOUND
 */
export async function readTableFile({ bytes, file, sheet }: TableInput): Promise<Table> {
  if (bytes.length > tableLimits.bytes) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: tableLimits.bytes });
  }
  if (!ZIP.every((byte, index) => bytes[index] === byte)) return readTableInTurns(bytes, file);
  const workbook = await measureWorkbook(bytes, file);
  return readWorkbook({ workbook, file, ...(sheet === undefined ? {} : { sheet }) });
}
