import { once } from "node:events";
import { setImmediate } from "node:timers/promises";
import { refused } from "@trunnion/register";
import { CsvError, type Options, parse } from "csv-parse";
import { parse as parseAtOnce } from "csv-parse/sync";
import { decodeText } from "./encoding";
import { withHeadings } from "./head-row";
import { nothingThere, type Table, type TableRow, tableLimits } from "./limit";
import { measureWorkbook } from "./unpack";
import { readWorkbook } from "./workbook";

const separators = [",", ";", "\t"] as const;

/** Lines that tell which separator a file has, and the characters of them that are looked at. */
const LOOKED = 20;
const LOOKED_AT = 200_000;

/** The first lines, without what stands in quotation marks: a separator in there separates nothing. */
function bareLines(text: string): readonly string[] {
  const bare = text.slice(0, LOOKED_AT).replace(/"[^"]*"/g, "");
  return bare.split("\n", LOOKED).filter((line) => line.trim() !== "");
}

/** How often it occurs, without making a list of the parts: there may be millions. */
function countOf(separator: string, line: string): number {
  let count = 0;
  for (let at = line.indexOf(separator); at >= 0; at = line.indexOf(separator, at + 1)) count++;
  return count;
}

/** How often most lines have a separator, and the share of the lines that have it so often: less than 1 for commas in figures. */
function evenly(counts: readonly number[]): { readonly usual: number; readonly share: number } {
  const times = new Map<number, number>();
  for (const count of counts) if (count > 0) times.set(count, (times.get(count) ?? 0) + 1);
  const [most] = [...times].sort(([, one], [, other]) => other - one);
  return most ? { usual: most[0], share: most[1] / counts.length } : { usual: 0, share: 0 };
}

/**
 * The separator that stands most evenly in the first lines, the headings' most frequent one where two are alike; a comma
 * where there is none.
 */
function separatorOf(text: string): { readonly separator: string; readonly columns: number } {
  const lines = bareLines(text);
  const end = text.indexOf("\n");
  const first = (end < 0 ? text : text.slice(0, end)).replace(/"[^"]*"/g, "");
  const [best] = separators
    .map((separator) => {
      const { usual, share } = evenly(lines.map((line) => countOf(separator, line)));
      const inFirst = countOf(separator, first);
      return { separator, columns: Math.max(usual, inFirst) + 1, inFirst, even: Math.round(share * 10) };
    })
    .sort((one, other) => other.even - one.even || other.inFirst - one.inFirst);
  return best ?? { separator: ",", columns: 1 };
}

/** What a spreadsheet writes above a table to say how its cells are parted. */
const SAID = /^\ufeff?"?sep=([,;\t])"?[ \t]*(?:\n|$)/i;

const problems: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: "a quotation mark is never closed",
  CSV_INVALID_CLOSING_QUOTE: "text follows a closing quotation mark",
  INVALID_OPENING_QUOTE: "a quotation mark stands inside a cell that does not begin with one",
  CSV_MAX_RECORD_SIZE: `the row that begins here is longer than ${tableLimits.rowBytes} bytes`,
};

/** Rows read beyond those of the table: headings, and what stands above them. */
const ABOVE = 25;

/** The rows of a text as they come out of the parser, and what becomes of an error. */
class Rows {
  readonly taken: TableRow[] = [];
  /** Where the next row begins: a quotation mark left open shows many lines further down. */
  private line = 1;

  constructor(
    private readonly file: string,
    private readonly delimiter: string,
    private readonly head: number | undefined,
  ) {}

  readonly options = (): Options => ({
    delimiter: this.delimiter,
    record_delimiter: "\n",
    relax_column_count: true,
    max_record_size: tableLimits.rowBytes,
    to: tableLimits.rows + ABOVE,
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
    const { file, head } = this;
    const read = withHeadings(this.taken, head === undefined ? {} : { head });
    if (!read) throw nothingThere(file, head);
    if (read.rows.length > tableLimits.rows)
      throw refused("TABLE_TOO_LONG", { file, limit: tableLimits.rows });
    return { kind: "csv", ...read };
  }
}

/** Text of a table and how it is to be parsed. */
function opened(
  bytes: Uint8Array,
  file: string,
  head: number | undefined,
): { readonly text: string; readonly rows: Rows } {
  if (bytes.length > tableLimits.bytes) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: tableLimits.bytes });
  }
  // One kind of line end, or the parser counts a CR LF inside a cell as two lines.
  const text = decodeText(bytes, file).replace(/\r\n?/g, "\n");
  if (text.trim() === "") throw refused("FILE_EMPTY", { file });
  const said = SAID.exec(text);
  // The line stays, empty, so that every row keeps its number.
  const table = said ? text.slice(said[0].trimEnd().length) : text;
  const { separator: seen, columns } = separatorOf(table);
  const separator = said?.[1] ?? seen;
  if (columns > tableLimits.columns) {
    throw refused("TABLE_TOO_WIDE", { file, columns, limit: tableLimits.columns });
  }
  return { text: table, rows: new Rows(file, separator, head) };
}

/**
 * Reads a CSV table: UTF-8, UTF-16 or Windows-1252, comma, semicolon or tab, headings first or below a title, in one line or
 * two. Cells are trimmed and nothing in them is worked out; line ends inside them are LF. Empty rows are passed over, and
 * keep their number.
 *
 * @param head line of the headings, where somebody said which
 * @throws Refusal FILE_EMPTY, HEAD_LINE_EMPTY, FILE_TOO_LARGE, FILE_NOT_A_TABLE, FILE_ENCODING, TABLE_TOO_WIDE, TABLE_TOO_LONG, TABLE_BROKEN
 */
export function readTable(bytes: Uint8Array, file: string, head?: number): Table {
  const { text, rows } = opened(bytes, file, head);
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
async function readTableInTurns(bytes: Uint8Array, file: string, head: number | undefined): Promise<Table> {
  const { text, rows } = opened(bytes, file, head);
  if (text.length <= PIECE) return readTable(bytes, file, head);
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
  /** Line, or row of the sheet, that the headings stand on; the first that looks like headings when left out. */
  readonly head?: number;
}

/**
 * Reads a table from CSV, XLSX or OpenDocument (ODS), whichever the file's first bytes and parts show it to be.
 * Of a workbook one sheet is read: values as they are shown, formulas as what they came to.
 *
 * @throws Refusal those of `readTable`, and for a workbook FILE_LOCKED, WORKBOOK_TOO_LARGE, WORKBOOK_BROKEN, SHEET_NOT_FOUND
 */
export async function readTableFile({ bytes, file, sheet, head }: TableInput): Promise<Table> {
  if (bytes.length > tableLimits.bytes) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: tableLimits.bytes });
  }
  if (!ZIP.every((byte, index) => bytes[index] === byte)) return readTableInTurns(bytes, file, head);
  const workbook = await measureWorkbook(bytes, file);
  return readWorkbook({
    workbook,
    file,
    ...(sheet === undefined ? {} : { sheet }),
    ...(head === undefined ? {} : { head }),
  });
}
