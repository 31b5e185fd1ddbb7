import {
  type CharacteristicBook,
  type ImportMapping,
  Refusal,
  refused,
  sayRefusal,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { dropFile, type KeptFile, readKeptFile } from "../import-file";
import { unneeded } from "../import-plan";
import { type PreviewCar, previewOf } from "../import-preview";
import {
  type BegunRun,
  type ImportRunRow,
  linesOf,
  note,
  type Open,
  optionsOf,
  Progress,
  type RunOptions,
  requireRun,
  walk,
} from "../import-run";
import { columnsOf, unknownHeadings } from "../planned-row";
import { refreshWholeSearchIndex } from "../search-index";
import { readTableFile, type Table } from "../table";

/** Cars a preview shows in full: those changed, and those added. */
const CHANGED = 200;
const ADDED = 50;

export interface JobInput {
  readonly open: Open;
  /** The installation's data folder. */
  readonly folder: string;
  readonly run: string;
}

interface Job extends JobInput {
  readonly row: ImportRunRow;
  readonly options: RunOptions & { readonly mapping: ImportMapping };
  readonly kept: KeptFile;
  readonly table: Table;
  readonly book: CharacteristicBook;
}

async function jobOf(input: JobInput): Promise<Job> {
  const { open, folder } = input;
  const { row, clubId, book } = await open(async (ctx) => ({
    row: await requireRun(ctx, input.run),
    clubId: ctx.club.id,
    book: await bookOf(ctx),
  }));
  const options = optionsOf(row);
  const file = row.fileName;
  if (!options?.mapping)
    throw refused("IMPORT_NOT_READY", { file, status: "has not had its columns settled" });
  const kept: KeptFile = { folder, clubId, sha256: row.sha256, file };
  const bytes = await readKeptFile(kept);
  const { sheet, head, mapping } = options;
  const table = await readTableFile({
    bytes,
    file,
    ...(sheet === undefined ? {} : { sheet }),
    ...(head === undefined ? {} : { head }),
  });
  return { ...input, row, options: { ...options, mapping }, kept, table, book };
}

const at = (ctx: Context, id: string) => ({ clubId_id: { clubId: ctx.club.id, id } });

const isAway = (error: unknown) => error instanceof Refusal && error.code === "DATABASE_AWAY";

function sayFailure(error: unknown): string {
  if (isAway(error)) {
    const { what } = sayRefusal(error as Refusal);
    return `${what} Go on where it stopped once it answers: the part under way was not written.`;
  }
  if (!(error instanceof Refusal)) {
    return "This is a fault of the program, not yours; it was written to the log.";
  }
  const { what, remedy } = sayRefusal(error);
  return `${what} ${remedy}`;
}

/**
 * Ends a job that could not be done: what is wrong is kept with the run, in words. Where the database is still away nothing
 * can be kept: the run then falls silent, which counts as interrupted before long.
 */
async function failed({ open, run }: JobInput, error: unknown, status: "failed" | "planned"): Promise<void> {
  const stands = isAway(error) && status === "failed" ? "interrupted" : status;
  const failure = sayFailure(error);
  try {
    await open((ctx) =>
      ctx.db.importRun.update({
        where: at(ctx, run),
        data: { status: stands, failure },
        select: { id: true },
      }),
    );
  } catch (again) {
    if (!isAway(again)) throw again;
  }
}

function columnsFor({ table, options, row, book }: Job) {
  const { mapping } = options;
  return columnsOf({ headings: table.headings, file: row.fileName, book, mapping });
}

/** Another process may go on with the same run, where this one fell silent for long: the second stops. */
async function requireOurs(
  ctx: Context,
  id: string,
  { status, done }: { readonly status: "planned" | "running"; readonly done: number },
): Promise<void> {
  const [run] = await ctx.db.$queryRaw<{ rows_done: number; status: string; file_name: string }[]>`
    SELECT rows_done, status::text, file_name FROM import_run WHERE id = ${id}::uuid FOR UPDATE`;
  if (run?.status !== status || run.rows_done !== done) {
    throw refused("IMPORT_RUNNING", { file: run?.file_name ?? "" });
  }
}

async function look(job: Job): Promise<void> {
  const { open, table, options, row, book } = job;
  const columns = columnsFor(job);
  const changed: PreviewCar[] = [];
  const added: PreviewCar[] = [];
  let before = 0;
  let kept: BegunRun = { id: row.id, sourceId: row.sourceId, steps: 0, problems: 0, doubts: 0 };
  await walk({
    open,
    table,
    columns,
    asOf: options.asOf,
    book,
    from: 0,
    held: false,
    each: async (ctx, { read, moved, done }) => {
      await requireOurs(ctx, row.id, { status: "planned", done: before });
      before = done;
      const fresh = moved.filter(({ record }) => record === undefined);
      const problems = read.refusedRows;
      const doubts = read.doubtfulRows;
      await note(ctx, kept, {
        problems,
        doubts,
        done,
        counts: { added: fresh.length, changed: moved.length - fresh.length, refused: linesOf(problems) },
      });
      kept = { ...kept, problems: kept.problems + problems.length, doubts: kept.doubts + doubts.length };
      for (const car of moved) {
        if (car.record === undefined && added.length < ADDED) added.push(previewOf(car, book));
        if (car.record !== undefined && changed.length < CHANGED) changed.push(previewOf(car, book));
      }
    },
  });
  const preview = [...changed, ...added];
  const looked = { ...options, stage: "looked", unknownHeadings: unknownHeadings(columns, table), preview };
  await open((ctx) =>
    ctx.db.importRun.update({
      where: { ...at(ctx, row.id), status: "planned" },
      data: { options: JSON.parse(JSON.stringify(looked)), rowsDone: row.rowsRead },
      select: { id: true },
    }),
  );
}

/**
 * Looks through a planned import's file, whose columns are settled: what would be added and changed, which rows are
 * refused and which doubtful. Writes to the run alone. Where it cannot be done, the run says why.
 *
 * @throws whatever was no refusal: a bug, to be logged; Refusal DATABASE_AWAY, which whoever runs the program should hear of
 */
export async function lookThrough(input: JobInput): Promise<void> {
  try {
    await look(await jobOf(input));
  } catch (error) {
    // Its columns were settled anew meanwhile: the later look is the one that counts.
    if (error instanceof Refusal && error.code === "IMPORT_RUNNING") return;
    await failed(input, error, "planned");
    if (!(error instanceof Refusal) || isAway(error)) throw error;
  }
}

async function begun({ open, row }: Job): Promise<BegunRun> {
  return open(async ({ db }) => {
    const [counts] = await db.$queryRaw<{ steps: number; problems: number; doubts: number }[]>`
      SELECT (SELECT coalesce(max(ordinal), 0)::int FROM import_step WHERE run_id = ${row.id}::uuid) AS steps,
        coalesce(jsonb_array_length(problems), 0) AS problems, coalesce(jsonb_array_length(doubts), 0) AS doubts
      FROM import_run WHERE id = ${row.id}::uuid`;
    if (!counts) throw new Error(`import ${row.id} is gone`);
    return { id: row.id, sourceId: row.sourceId, ...counts };
  });
}

async function write(job: Job): Promise<void> {
  const { open, table, options, row, book, kept } = job;
  const input = {
    file: row.fileName,
    sha256: row.sha256,
    rowsRead: table.rows.length,
    asOf: options.asOf,
    book,
  };
  const progress = new Progress(input, await begun(job));
  let done = row.rowsDone;
  await walk({
    open,
    table,
    columns: columnsFor(job),
    asOf: options.asOf,
    book,
    from: done,
    held: true,
    each: async (ctx, chunk) => {
      await requireOurs(ctx, row.id, { status: "running", done });
      await progress.take(ctx, chunk);
      done = chunk.done;
    },
  });
  const dropped = await open(async (ctx) => {
    await progress.end(ctx);
    return unneeded(ctx, [row.sha256]);
  });
  for (const sha256 of dropped) await dropFile({ ...kept, sha256 });
}

/**
 * Does the work of an import that has begun, chunk by chunk, from the row where it stands; the file goes when it is
 * done. Where it cannot be done, what was done stands, and the run says why.
 *
 * @throws whatever was no refusal: a bug, to be logged; Refusal DATABASE_AWAY, which whoever runs the program should hear of
 */
export async function carryOn(input: JobInput): Promise<void> {
  try {
    await write(await jobOf(input));
  } catch (error) {
    // Somebody else goes on with it: the run is theirs.
    if (error instanceof Refusal && error.code === "IMPORT_RUNNING") return;
    await failed(input, error, "failed");
    if (!(error instanceof Refusal) || isAway(error)) throw error;
  }
  // Here nobody waits for it; who looks before has it worked out as far as patience goes.
  await refreshWholeSearchIndex(input.open, await input.open(bookOf));
}
