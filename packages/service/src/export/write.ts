import { createReadStream, createWriteStream } from "node:fs";
import { stat } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { Database } from "@trunnion/db";
import { openClub, openClubSnapshot } from "@trunnion/db/gate";
import { writeXlsxStream } from "hucre/xlsx";
import { openAside } from "../aside-folder";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { refreshSearchIndex } from "../search-index";
import { csvLine, headingOf, type ListExport, type ListInput, xlsxCell } from "./policy";
import { openList } from "./read";

/** Formats a list is written in. `csv` is UTF-8 with a mark at its start, by which spreadsheets know it. */
export const listFormats = ["csv", "csv-plain", "xlsx"] as const;
export type ListFormat = (typeof listFormats)[number];

/** Media type of a format. */
export const listMediaType = (format: ListFormat): string =>
  format === "xlsx"
    ? "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
    : "text/csv; charset=utf-8; header=present";

const BYTE_ORDER_MARK = "\ufeff";
/** Characters gathered before they are given on. */
const BLOCK = 64_000;

async function* csvText({ columns, rows }: ListExport, mark: boolean): AsyncGenerator<string> {
  let text = `${mark ? BYTE_ORDER_MARK : ""}${csvLine(columns.map(headingOf))}`;
  for await (const row of rows) {
    text += csvLine(row);
    if (text.length < BLOCK) continue;
    yield text;
    text = "";
  }
  yield text;
}

async function* xlsxRows({ rows }: ListExport) {
  for await (const row of rows) yield row.map(xlsxCell);
}

/** A list's file as it is made, row by row; memory does not grow with the rows. */
export function writeList(list: ListExport, format: ListFormat): Readable {
  if (format !== "xlsx") return Readable.from(csvText(list, format === "csv"));
  // What the format does not allow in the name of a sheet, and its longest.
  const name = list.title.replace(/[\\/?*[\]:']/g, " ").slice(0, 31);
  const columns = list.columns.map((column) => {
    const header = headingOf(column);
    return { header, width: Math.max(12, header.length + 2) };
  });
  const bytes = writeXlsxStream(xlsxRows(list), { name, columns, freezePane: { rows: 1 } });
  return Readable.from(bytes);
}

/** A file that was made and waits to be sent. */
export interface WaitingFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: number;
  /** Its content; the file is deleted when that is read, or given up. */
  open(): Readable;
  /** Deletes it unread. */
  discard(): Promise<void>;
}

export interface ListFileInput extends ListInput {
  readonly format: ListFormat;
}

/**
 * Makes a list's file in a private temporary folder, all rows of one moment, so that sending it afterwards, however slow,
 * holds nothing up.
 *
 * @param ctx a context of the club, open or ended: who asks, and which club; its own transaction is not used
 * @throws Refusal as `openList`
 */
export async function listFile(
  database: Database,
  ctx: Context,
  { format, ...input }: ListFileInput,
): Promise<WaitingFile> {
  const { path: folder, discard } = await openAside();
  const place = join(folder, "list");
  try {
    // The snapshot only reads, so what is searched in it is brought up to date before.
    await openClub(database, ctx.club.id, async (db) => {
      const open = { ...ctx, db };
      await refreshSearchIndex(open, await bookOf(open));
    });
    const name = await openClubSnapshot(database, ctx.club.id, async (db) => {
      const list = await openList({ ...ctx, db }, input);
      await pipeline(writeList(list, format), createWriteStream(place, { flags: "wx", mode: 0o600 }));
      return list.name;
    });
    const { size: bytes } = await stat(place);
    const open = () => createReadStream(place).once("close", () => void discard());
    const ending = format === "xlsx" ? "xlsx" : "csv";
    return { name: `${name}.${ending}`, mediaType: listMediaType(format), bytes, open, discard };
  } catch (error) {
    await discard();
    throw error;
  }
}
