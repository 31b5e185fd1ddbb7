import { createHash } from "node:crypto";
import type { CharacteristicBook, ImportMapping } from "@trunnion/register";
import { z } from "zod";
import type { Context } from "../context";
import { rememberedMapping } from "../import-mapping";
import {
  columnsOf,
  type DoubtfulRow,
  derivedHeadingsIn,
  type RefusedRow,
  unknownHeadings,
} from "../planned-row";
import { requireRole } from "../role";
import { readTableFile, type Table } from "../table";
import { Progress } from "./progress";
import { type Open, waitForTurn, walk } from "./walk";

export interface ImportInput {
  /** Name of the file, as reports call it. */
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly book: CharacteristicBook;
  /** ISO day the file tells of; what a row says of today gets it, unless the row has a day of its own. */
  readonly asOf: string;
  readonly dryRun: boolean;
  /** Sheet of a workbook; the first that is shown and has a table in it when left out. */
  readonly sheet?: string;
  /** What the columns are taken for; when left out as the last file with these headings, else by the headings alone. */
  readonly mapping?: ImportMapping;
}

/** What a reading-in did, or would do. */
export interface ImportReport {
  readonly file: string;
  readonly sha256: string;
  readonly rowsRead: number;
  readonly refusedRows: readonly RefusedRow[];
  readonly doubtfulRows: readonly DoubtfulRow[];
  /** Headings that mean nothing here; their cells go to the remarks. */
  readonly unknownHeadings: readonly string[];
  /** Headings of columns that were not read, since the program works them out from the record. */
  readonly derivedHeadings: readonly string[];
  readonly dryRun: boolean;
  readonly carsAdded: number;
  readonly carsChanged: number;
  readonly carsUnchanged: number;
  /** The run, by which it can be undone; nothing when nothing was written. */
  readonly run: string | null;
}

/** Refuses a day that is none, or that lies ahead: what is on a car then nobody knows. */
export const asOfInput = (today: string) =>
  z.object({
    asOf: z.iso.date().refine((day) => day <= today, `expected a day up to ${today}`),
  });

/** Who may read files in. */
export function requireMayImport(ctx: Context): void {
  requireRole(ctx.actor, "registrar", "fleetManager");
}

interface Tally {
  rows: number;
  moved: number;
  added: number;
  readonly refused: RefusedRow[];
  readonly doubtful: DoubtfulRow[];
}

async function settleColumns(ctx: Context, table: Table, { file, book, mapping }: ImportInput) {
  const taken = mapping ?? (await rememberedMapping(ctx, table.headings));
  return columnsOf({
    headings: table.headings,
    file,
    book,
    ...(taken === undefined ? {} : { mapping: taken }),
  });
}

async function importTable(open: Open, table: Table, input: ImportInput): Promise<ImportReport> {
  const { file, book, asOf, dryRun } = input;
  const columns = await open(async (ctx) => {
    requireMayImport(ctx);
    asOfInput(ctx.today).parse({ asOf });
    return settleColumns(ctx, table, input);
  });
  const sha256 = createHash("sha256").update(input.bytes).digest("hex");
  const progress = new Progress({ file, sha256, rowsRead: table.rows.length, asOf, book });
  const tally: Tally = { rows: 0, moved: 0, added: 0, refused: [], doubtful: [] };
  await walk({
    open,
    table,
    columns,
    asOf,
    book,
    from: 0,
    held: !dryRun,
    each: async (ctx, chunk) => {
      if (!dryRun) await progress.take(ctx, chunk);
      tally.rows += chunk.read.rows.length;
      tally.moved += chunk.moved.length;
      tally.added += chunk.moved.filter(({ record }) => record === undefined).length;
      tally.refused.push(...chunk.read.refusedRows);
      tally.doubtful.push(...chunk.read.doubtfulRows);
    },
  });
  if (progress.runId !== undefined) await open((ctx) => progress.end(ctx));
  return {
    file,
    sha256,
    rowsRead: table.rows.length,
    refusedRows: tally.refused,
    doubtfulRows: tally.doubtful,
    unknownHeadings: unknownHeadings(columns, table),
    derivedHeadings: derivedHeadingsIn(columns),
    dryRun,
    carsAdded: tally.added,
    carsChanged: tally.moved - tally.added,
    carsUnchanged: tally.rows - tally.moved,
    run: progress.runId ?? null,
  };
}

function tableOf({ bytes, file, sheet }: ImportInput): Promise<Table> {
  return readTableFile({ bytes, file, ...(sheet === undefined ? {} : { sheet }) });
}

/**
 * Reads a register file into the club's register. Rows that cannot be read are reported and left out;
 * the others go in together, in the caller's transaction. Reading the same file again changes nothing.
 * For files of any size there is {@link importInChunks}.
 *
 * @throws Refusal ROLE_NEEDED, those of `readTableFile`, HEADING_MISSING, HEADING_TWICE, MAPPING_NOT_READ; ZodError for an
 *   `asOf` that is no day up to today; then nothing is written
 */
export async function importRegister(ctx: Context, input: ImportInput): Promise<ImportReport> {
  requireMayImport(ctx);
  if (!input.dryRun) await waitForTurn(ctx);
  return importTable((work) => work(ctx), await tableOf(input), input);
}

/**
 * The same in chunks of some hundred rows, each in a transaction of its own: what was done stands when it is stopped
 * half way, and reading the file again goes on from there.
 */
export async function importInChunks(open: Open, input: ImportInput): Promise<ImportReport> {
  return importTable(open, await tableOf(input), input);
}
