import { setImmediate } from "node:timers/promises";
import { type CharacteristicBook, type Column, columnPlace, doubtsBeside } from "@trunnion/register";
import type { Context } from "../context";
import { type CarRow, meetRecords, movedRows } from "../import-chunk";
import { type DoubtfulRow, openRowReader, type ReadRows, type RowReader } from "../planned-row";
import { builtOf } from "../record";
import type { Table } from "../table";

/** Rows looked at in one go: a second's work, so that the progress moves. */
const CHUNK = 1_000;
/** Rows read without a pause. */
const SLICE = 50;

/** Does some work in a transaction of its own; one after another sees what the ones before it wrote. */
export type Open = <T>(work: (ctx: Context) => Promise<T>) => Promise<T>;

/** One import at a time and club writes: two would each find the other's cars missing. Held until the transaction ends. */
export async function waitForTurn({ db, club }: Context): Promise<void> {
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${club.id}, 2))`;
}

/**
 * Has the connection plan its statements anew. What PostgreSQL planned for its checks of foreign keys while the tables
 * were empty it would keep using on the thousands of rows written since, along the wrong index: each chunk of a first
 * import then takes longer than the one before (measured: 2 s for the first 500 rows, 8 s for the sixth).
 */
async function planAnew({ db }: Context): Promise<void> {
  await db.$executeRaw`DISCARD PLANS`;
}

/** What came of some rows of a file. */
export interface WalkedChunk {
  readonly read: ReadRows;
  /** Rows that say something new. */
  readonly moved: readonly CarRow[];
  /** Rows of the file worked through with this chunk. */
  readonly done: number;
}

export interface WalkInput {
  readonly open: Open;
  readonly table: Table;
  readonly columns: readonly Column[];
  /** ISO day the file tells of. */
  readonly asOf: string;
  readonly book: CharacteristicBook;
  /** Rows that were worked through before; they are read again, to know which numbers were met, and not written. */
  readonly from: number;
  /** The cars are kept from others until the chunk is written. */
  readonly held: boolean;
  readonly each: (ctx: Context, chunk: WalkedChunk) => Promise<void>;
}

/** Reads rows a few at a time, so that whatever waits for the database meanwhile is answered. */
async function readAhead(reader: RowReader, rows: Table["rows"]): Promise<ReadRows> {
  const parts: ReadRows[] = [];
  for (let start = 0; start < rows.length; start += SLICE) {
    await setImmediate();
    parts.push(reader.take(rows.slice(start, start + SLICE)));
  }
  return {
    rows: parts.flatMap((part) => part.rows),
    refusedRows: parts.flatMap((part) => part.refusedRows),
    doubtfulRows: parts.flatMap((part) => part.doubtfulRows),
  };
}

/** What is unlikely of a row beside what the register has of its car. */
function besideRecord({ planned, record }: CarRow, columns: readonly Column[]): readonly DoubtfulRow[] {
  const built = record && builtOf(record);
  if (!built) return [];
  const doubts = doubtsBeside(planned.row, built, (wanted) => columnPlace(columns, wanted));
  return doubts.map((doubt) => ({ line: planned.line, ...doubt }));
}

/** Goes through a file chunk by chunk, each in a transaction of its own. */
export async function walk({ open, table, columns, from, held, each, ...basis }: WalkInput): Promise<void> {
  const reader = await open((ctx) => openRowReader(ctx, columns));
  for (let start = 0; start < from; start += CHUNK) {
    reader.take(table.rows.slice(start, Math.min(start + CHUNK, from)));
    await setImmediate();
  }
  let next = readAhead(reader, table.rows.slice(from, from + CHUNK));
  for (let start = from; start < table.rows.length; start += CHUNK) {
    const done = Math.min(start + CHUNK, table.rows.length);
    const read = await next;
    // While the database writes these, the rows after them are read.
    next = readAhead(reader, table.rows.slice(done, done + CHUNK));
    await open(async (ctx) => {
      if (held) {
        await waitForTurn(ctx);
        await planAnew(ctx);
      }
      const cars = await meetRecords(ctx, read.rows, { ...basis, held });
      const doubtfulRows = [...read.doubtfulRows, ...cars.flatMap((car) => besideRecord(car, columns))].sort(
        (one, other) => one.line - other.line,
      );
      await each(ctx, { read: { ...read, doubtfulRows }, moved: movedRows(cars), done });
    });
  }
}
