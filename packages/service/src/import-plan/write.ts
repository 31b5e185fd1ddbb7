import { Prisma } from "@trunnion/db";
import { Invalid, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { keepMapping } from "../import-mapping";
import {
  asOfInput,
  type ImportRunRow,
  optionsOf,
  plainMapping,
  type RunOptions,
  requireMayImport,
  requireRun,
  sourceFor,
  statusOf,
  statusWords,
  waitForTurn,
} from "../import-run";
import { columnsOf } from "../planned-row";
import type { Table } from "../table";
import { type SettledColumn, settle } from "./policy";

/** Rows kept for proposing, and characters of a cell that are. */
const SAMPLE = 100;
const CELL = 120;
/** Days after which a planned import that nobody went on with is forgotten. */
const FORGOTTEN = 14;

export interface PlanInput {
  /** Name of the file, as reports call it. */
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly table: Table;
}

function optionsFor({ bytes, table }: Omit<PlanInput, "file" | "sha256">, asOf: string): RunOptions {
  return {
    kind: table.kind,
    bytes,
    ...(table.sheet === undefined ? {} : { sheet: table.sheet }),
    ...(table.sheets === undefined ? {} : { sheets: table.sheets }),
    head: table.head,
    above: table.above,
    asOf,
    stage: "mapping",
    headings: table.headings,
    sample: table.rows.slice(0, SAMPLE).map(({ cells }) => cells.map((cell) => cell.slice(0, CELL))),
  };
}

const json = (options: RunOptions): Prisma.InputJsonObject => JSON.parse(JSON.stringify(options));

function place(ctx: Context, id: string) {
  return { clubId_id: { clubId: ctx.club.id, id } };
}

/** Takes away a planned import with its source, where that has nothing else under it. */
async function forget(ctx: Context, { id, sourceId }: Pick<ImportRunRow, "id" | "sourceId">): Promise<void> {
  await ctx.db.importRun.delete({ where: place(ctx, id) });
  await ctx.db.source.deleteMany({
    where: {
      id: sourceId,
      importRuns: { none: {} },
      identities: { none: {} },
      statuses: { none: {} },
      keeperships: { none: {} },
      asBuilt: { none: {} },
      modifications: { none: {} },
      settingSheets: { none: {} },
      histories: { none: {} },
      datedItems: { none: {} },
      entries: { none: {} },
      alternatives: { none: {} },
      parts: { none: {} },
    },
  });
}

/** Forgets planned imports that nobody went on with; gives the hashes of files that nobody needs any more. */
async function forgetOld(ctx: Context): Promise<readonly string[]> {
  const before = new Date(ctx.now.getTime() - FORGOTTEN * 86_400_000);
  const old = await ctx.db.importRun.findMany({
    where: { status: "planned", recordedAt: { lt: before } },
    select: { id: true, sourceId: true, sha256: true },
  });
  for (const run of old) await forget(ctx, run);
  return unneeded(
    ctx,
    old.map(({ sha256 }) => sha256),
  );
}

/** Those of some files that no import of the club waits for. */
export async function unneeded({ db }: Context, hashes: readonly string[]): Promise<readonly string[]> {
  const waiting = await db.importRun.findMany({
    where: { sha256: { in: [...hashes] }, status: { in: ["planned", "running", "interrupted", "failed"] } },
    select: { sha256: true },
  });
  const needed = new Set(waiting.map(({ sha256 }) => sha256));
  return hashes.filter((hash) => !needed.has(hash));
}

/**
 * Notes a file that was uploaded and read, so that its columns can be settled. Nothing of it is in the register yet.
 *
 * @returns the run, and hashes of kept files that nobody needs any more
 * @throws Refusal ROLE_NEEDED
 */
export async function planImport(
  ctx: Context,
  input: PlanInput,
): Promise<{ readonly run: string; readonly dropped: readonly string[] }> {
  requireMayImport(ctx);
  const dropped = await forgetOld(ctx);
  const id = uuid();
  const { file, sha256, table } = input;
  await ctx.db.importRun.create({
    data: {
      id,
      fileName: file,
      sha256,
      sourceId: await sourceFor(ctx, file),
      madeById: ctx.actor.personId,
      status: "planned",
      options: json(optionsFor(input, ctx.today)),
      rowsRead: table.rows.length,
      carsAdded: 0,
      carsChanged: 0,
      rowsRefused: 0,
    },
  });
  return { run: id, dropped: dropped.filter((hash) => hash !== sha256) };
}

/** A planned import with its options. */
export interface PlannedRun {
  readonly run: ImportRunRow;
  readonly options: RunOptions;
}

/** @throws Refusal IMPORT_NOT_READY for one that is not planned any more */
async function requirePlanned(ctx: Context, id: string): Promise<PlannedRun> {
  requireMayImport(ctx);
  const run = await requireRun(ctx, id);
  const options = optionsOf(run);
  const status = statusOf(run, ctx.now);
  if (status !== "planned" || !options)
    throw refused("IMPORT_NOT_READY", { file: run.fileName, status: statusWords[status] });
  return { run, options };
}

/** Takes another sheet of a planned import's workbook, or other headings: `table` is what is read then. */
export async function takeSheet(ctx: Context, id: string, table: Table): Promise<void> {
  const { run, options } = await requirePlanned(ctx, id);
  const { bytes, asOf } = options;
  await ctx.db.importRun.update({
    where: place(ctx, run.id),
    data: { options: json(optionsFor({ bytes, table }, asOf)), rowsRead: table.rows.length },
  });
}

export interface SettleColumnsInput {
  readonly run: string;
  /** ISO day the file tells of. */
  readonly asOf: string;
  /** In the file's order. */
  readonly columns: readonly SettledColumn[];
}

const untouched = {
  rowsDone: 0,
  carsAdded: 0,
  carsChanged: 0,
  rowsRefused: 0,
  problems: Prisma.DbNull,
  doubts: Prisma.DbNull,
  failure: null,
};

/**
 * Settles what the columns of a planned import are taken for, and remembers it for files with the same headings. The
 * file is to be looked through then: {@link lookThrough}.
 *
 * @throws Refusal ROLE_NEEDED, IMPORT_NOT_FOUND, IMPORT_NOT_READY, HEADING_MISSING, HEADING_TWICE;
 *   Invalid at `asOf` or at the column
 */
export async function settleColumns(ctx: Context, input: SettleColumnsInput): Promise<void> {
  const { run, options } = await requirePlanned(ctx, input.run);
  const day = asOfInput(ctx.today).safeParse({ asOf: input.asOf });
  if (!day.success) {
    throw new Invalid([
      { field: "asOf", message: `A day up to ${ctx.today} is expected, such as ${ctx.today}.` },
    ]);
  }
  const book = await bookOf(ctx);
  const { headings, sample = [] } = options;
  const mapping = settle({ headings, settled: input.columns, sample, book });
  columnsOf({ headings, file: run.fileName, book, mapping });
  await keepMapping(ctx, { headings, mapping, file: run.fileName });
  const { preview: _, ...rest } = options;
  const settled: RunOptions = { ...rest, mapping: plainMapping(mapping), asOf: input.asOf, stage: "looking" };
  await ctx.db.importRun.update({
    where: place(ctx, run.id),
    data: { ...untouched, options: json(settled), beatAt: ctx.now },
  });
}

/**
 * Has a planned import's file looked through again, as its columns were settled.
 *
 * @throws Refusal IMPORT_NOT_READY where they were not
 */
export async function lookAgain(ctx: Context, id: string): Promise<void> {
  const { run, options } = await requirePlanned(ctx, id);
  if (!options.mapping) {
    throw refused("IMPORT_NOT_READY", { file: run.fileName, status: "has not had its columns settled" });
  }
  const { preview: _, ...rest } = options;
  await ctx.db.importRun.update({
    where: place(ctx, run.id),
    data: { ...untouched, options: json({ ...rest, stage: "looking" }), beatAt: ctx.now },
  });
}

/** Goes back to settling the columns of a planned import. */
export async function reopenColumns(ctx: Context, id: string): Promise<void> {
  const { run, options } = await requirePlanned(ctx, id);
  const { preview: _, ...rest } = options;
  await ctx.db.importRun.update({
    where: place(ctx, run.id),
    data: { ...untouched, options: json({ ...rest, stage: "mapping" }) },
  });
}

/**
 * Forgets a planned import.
 *
 * @returns the hash of its file, where nobody needs that any more
 */
export async function discardImport(ctx: Context, id: string): Promise<readonly string[]> {
  const { run } = await requirePlanned(ctx, id);
  await forget(ctx, run);
  return unneeded(ctx, [run.sha256]);
}

/** Refuses while another import of the club is under way. */
async function requireNoOther(ctx: Context, id: string): Promise<void> {
  const others = await ctx.db.importRun.findMany({
    where: { status: "running", id: { not: id } },
    select: { fileName: true, status: true, beatAt: true },
  });
  const live = others.find((other) => statusOf(other, ctx.now) === "running");
  if (live) throw refused("IMPORT_RUNNING", { file: live.fileName });
}

/**
 * Begins a planned import that was looked through, or goes on with one that was interrupted or failed, from the row
 * where it stopped. The work itself is {@link carryOn}.
 *
 * @throws Refusal ROLE_NEEDED, IMPORT_NOT_FOUND, IMPORT_RUNNING while the club has another, or this one, under way;
 *   IMPORT_NOT_READY
 */
export async function beginImport(ctx: Context, id: string): Promise<void> {
  requireMayImport(ctx);
  await waitForTurn(ctx);
  const run = await requireRun(ctx, id);
  const options = optionsOf(run);
  const status = statusOf(run, ctx.now);
  const file = run.fileName;
  if (status === "running") throw refused("IMPORT_RUNNING", { file });
  await requireNoOther(ctx, run.id);
  const first = status === "planned" && options?.stage === "looked";
  if (!options || !(first || status === "interrupted" || status === "failed")) {
    throw refused("IMPORT_NOT_READY", { file, status: statusWords[status] });
  }
  // They served for looking; names of keepers do not stay behind.
  const { sample: _, preview: __, above: ___, ...rest } = options;
  await ctx.db.importRun.update({
    where: place(ctx, run.id),
    data: {
      ...(first ? { ...untouched, startedAt: ctx.now } : { failure: null }),
      options: json(rest),
      status: "running",
      beatAt: ctx.now,
    },
  });
}
