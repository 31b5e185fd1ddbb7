import type { ImportStatus } from "@trunnion/db";
import { allHeadings, type ColumnProposal, columnsAs, proposeColumns } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rememberedMapping } from "../import-mapping";
import type { PreviewCar } from "../import-preview";
import {
  type ImportRunRow,
  optionsOf,
  type RunOptions,
  requireMayImport,
  requireRun,
  STALE,
  statusOf,
  storedDoubts,
  storedProblems,
} from "../import-run";
import { type DoubtfulRow, type RefusedRow, seriesFacts } from "../planned-row";
import { readStored } from "../stored-row";
import { type DoubtGroup, groupDoubts, withRemembered } from "./policy";

/** Imports on one page of the list. */
const PAGE = 50;
/** Refused rows, and kinds of doubt, that a page shows; all can be downloaded. */
const SHOWN = 50;

/** An import as the list has it. */
export interface ImportLine {
  readonly id: string;
  readonly file: string;
  readonly status: ImportStatus;
  /** For a planned one, how far: the columns are asked, the file is looked through, or it waits for "go on". */
  readonly stage: RunOptions["stage"] | null;
  readonly rowsRead: number;
  readonly rowsDone: number;
  readonly carsAdded: number;
  readonly carsChanged: number;
  readonly rowsRefused: number;
  readonly recordedAt: Date;
  readonly endedAt: Date | null;
  readonly undoneAt: Date | null;
  /** A file that is being looked through, and of which nothing was heard for a while: it has to be looked through again. */
  readonly silent: boolean;
}

function lineOf(run: ImportRunRow, now: Date): ImportLine {
  const stage = optionsOf(run)?.stage ?? null;
  const quiet = now.getTime() - (run.beatAt?.getTime() ?? 0) > STALE;
  return {
    id: run.id,
    file: run.fileName,
    status: statusOf(run, now),
    stage,
    silent: stage === "looking" && (quiet || run.failure !== null),
    rowsRead: run.rowsRead,
    rowsDone: run.rowsDone,
    carsAdded: run.carsAdded,
    carsChanged: run.carsChanged,
    rowsRefused: run.rowsRefused,
    recordedAt: run.recordedAt,
    endedAt: run.endedAt,
    undoneAt: run.undoneAt,
  };
}

/** The club's imports, the latest first. For those who may import. */
export async function listImports(ctx: Context): Promise<readonly ImportLine[]> {
  requireMayImport(ctx);
  const runs = await ctx.db.importRun.findMany({
    omit: { problems: true, doubts: true },
    orderBy: { id: "desc" },
    take: PAGE,
  });
  return runs.map((run) => lineOf(run, ctx.now));
}

/** Everything a page says of one import. May hold personal data until the import has begun. */
export interface ImportView extends ImportLine {
  readonly asOf: string;
  readonly sheet: string | null;
  readonly sheets: readonly { readonly name: string; readonly hidden: boolean }[];
  readonly failure: string | null;
  /** A file of the same bytes that was read in and not undone. */
  readonly earlier: { readonly id: string; readonly recordedAt: Date } | null;
  /** Line of the headings, and what stands in those above it, which are passed over. */
  readonly head: number;
  readonly above: readonly string[];
  /** What the columns are proposed to be taken for, while that is not settled. */
  readonly proposals: readonly ColumnProposal[];
  /** Headings to choose from. */
  readonly headings: readonly string[];
  /** What would change, once the file was looked through. */
  readonly preview: readonly PreviewCar[];
  /** Headings whose cells go to the remarks. */
  readonly unknownHeadings: readonly string[];
  readonly refusedRows: readonly RefusedRow[];
  /** What to look at in rows that are taken, by kind. */
  readonly doubtGroups: readonly DoubtGroup[];
  readonly doubts: number;
}

async function proposalsOf(ctx: Context, options: RunOptions) {
  const book = await bookOf(ctx);
  const series = await seriesFacts(ctx);
  const proposals = proposeColumns(options.headings, options.sample ?? [], {
    book,
    patterns: series.map(({ pattern }) => pattern),
    seriesNames: series.flatMap(({ name, slug }) => [name, slug]),
    today: ctx.today,
    unitSystem: ctx.club.unitSystem,
  });
  const remembered = options.mapping ?? (await rememberedMapping(ctx, options.headings));
  const fits = remembered && columnsAs(options.headings, remembered, book).ok;
  return {
    proposals: withRemembered(proposals, fits ? remembered : undefined),
    headings: allHeadings(book),
  };
}

async function rowsOf({ db, club }: Context, id: string) {
  const run = await db.importRun.findUniqueOrThrow({
    where: { clubId_id: { clubId: club.id, id } },
    select: { problems: true, doubts: true },
  });
  return {
    refusedRows: readStored(storedProblems, run.problems, `the problems of import ${id}`) ?? [],
    doubtfulRows: readStored(storedDoubts, run.doubts, `the doubts of import ${id}`) ?? [],
  };
}

/**
 * One import, as its page shows it. For those who may import.
 *
 * @throws Refusal ROLE_NEEDED, IMPORT_NOT_FOUND
 */
export async function importView(ctx: Context, id: string): Promise<ImportView> {
  requireMayImport(ctx);
  const run = await requireRun(ctx, id);
  const options = optionsOf(run);
  const asked = run.status === "planned" && options?.stage === "mapping";
  const { refusedRows, doubtfulRows } = await rowsOf(ctx, run.id);
  const earlier = await ctx.db.importRun.findFirst({
    where: { sha256: run.sha256, status: "done", id: { not: run.id } },
    select: { id: true, recordedAt: true },
    orderBy: { id: "desc" },
  });
  return {
    ...lineOf(run, ctx.now),
    asOf: options?.asOf ?? ctx.today,
    sheet: options?.sheet ?? null,
    sheets: options?.sheets ?? [],
    head: options?.head ?? 1,
    above: options?.above ?? [],
    failure: run.failure,
    earlier,
    ...(asked ? await proposalsOf(ctx, options) : { proposals: [], headings: [] }),
    preview: options?.preview ?? [],
    unknownHeadings: options?.unknownHeadings ?? [],
    refusedRows: refusedRows.slice(0, SHOWN),
    doubtGroups: groupDoubts(doubtfulRows).slice(0, SHOWN),
    doubts: doubtfulRows.length,
  };
}

/** What was wrong with an import's rows, and what to look at, for a file to download; in the file's order. */
export async function importProblems(
  ctx: Context,
  id: string,
): Promise<{
  readonly file: string;
  readonly refusedRows: readonly RefusedRow[];
  readonly doubtfulRows: readonly DoubtfulRow[];
}> {
  requireMayImport(ctx);
  const run = await requireRun(ctx, id);
  return { file: run.fileName, ...(await rowsOf(ctx, run.id)) };
}
