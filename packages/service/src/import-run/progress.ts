import type { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { writeCars } from "../import-chunk";
import { writeJournal } from "../journal";
import type { DoubtfulRow, RefusedRow } from "../planned-row";
import { tellPlanner } from "../planner";
import { KEPT } from "./policy";
import type { WalkedChunk } from "./walk";

export interface ProgressInput {
  readonly file: string;
  readonly sha256: string;
  readonly rowsRead: number;
  readonly asOf: string;
  readonly book: CharacteristicBook;
  /** How it is read, kept with the run. */
  readonly options?: Prisma.InputJsonObject;
}

/** A run that exists already, and how far it is. */
export interface BegunRun {
  readonly id: string;
  readonly sourceId: string;
  readonly steps: number;
  readonly problems: number;
  readonly doubts: number;
}

interface Counts {
  readonly added: number;
  readonly changed: number;
  readonly refused: number;
}

export const sourceTitle = (file: string): string => `Register file ${file}`;

/** The source that a file's rows are recorded under. */
export async function sourceFor(ctx: Context, file: string): Promise<string> {
  const title = sourceTitle(file);
  const { id } = await ctx.db.source.upsert({
    where: { clubId_title: { clubId: ctx.club.id, title } },
    create: { title, kind: "registerFile" },
    update: {},
    select: { id: true },
  });
  return id;
}

export const linesOf = (rows: readonly RefusedRow[]): number => new Set(rows.map(({ line }) => line)).size;

/** Writes chunk after chunk and keeps the run beside them; a file that changes nothing leaves no run behind. */
export class Progress {
  private before: { refused: RefusedRow[]; doubtful: DoubtfulRow[] } = { refused: [], doubtful: [] };

  constructor(
    private readonly input: ProgressInput,
    private run?: BegunRun,
  ) {}

  get runId(): string | undefined {
    return this.run?.id;
  }

  /** Writes what is new in a chunk, and how far the run is, in the context's transaction. */
  async take(ctx: Context, { read, moved, done }: WalkedChunk): Promise<void> {
    if (!this.run && moved.length === 0) {
      this.before.refused.push(...read.refusedRows);
      this.before.doubtful.push(...read.doubtfulRows);
      return;
    }
    const run = this.run ?? (await this.begin(ctx));
    const steps = await writeCars(ctx, moved, {
      runId: run.id,
      sourceId: run.sourceId,
      sourceTitle: sourceTitle(this.input.file),
      file: this.input.file,
      asOf: this.input.asOf,
      book: this.input.book,
      steps: run.steps,
    });
    const problems = [...this.before.refused, ...read.refusedRows];
    const doubts = [...this.before.doubtful, ...read.doubtfulRows];
    this.before = { refused: [], doubtful: [] };
    const added = moved.filter(({ record }) => record === undefined).length;
    const counts = { added, changed: moved.length - added, refused: linesOf(problems) };
    await note(ctx, run, { problems, doubts, done, counts });
    this.run = {
      ...run,
      steps,
      problems: run.problems + problems.length,
      doubts: run.doubts + doubts.length,
    };
  }

  private async begin(ctx: Context): Promise<BegunRun> {
    const { file, sha256, rowsRead, options } = this.input;
    const sourceId = await sourceFor(ctx, file);
    const id = uuid();
    const counts = { rowsRead, carsAdded: 0, carsChanged: 0, rowsRefused: 0 };
    await ctx.db.importRun.create({
      data: {
        id,
        fileName: file,
        sha256,
        sourceId,
        madeById: ctx.actor.personId,
        status: "running",
        startedAt: new Date(),
        ...counts,
        ...(options === undefined ? {} : { options }),
      },
    });
    return { id, sourceId, steps: 0, problems: 0, doubts: 0 };
  }

  /** Ends the run, in the context's transaction; nothing where none was begun. */
  async end(ctx: Context): Promise<void> {
    if (!this.run) return;
    const { file, sha256, rowsRead } = this.input;
    const { id } = this.run;
    const { carsAdded, carsChanged, rowsRefused } = await ctx.db.importRun.update({
      where: { clubId_id: { clubId: ctx.club.id, id } },
      data: { status: "done", endedAt: new Date(), rowsDone: rowsRead, failure: null },
      select: { carsAdded: true, carsChanged: true, rowsRefused: true },
    });
    if (carsAdded + carsChanged === 0) return;
    const after = {
      file,
      sha256,
      rows: rowsRead,
      added: carsAdded,
      changed: carsChanged,
      refused: rowsRefused,
    };
    await writeJournal(ctx, [{ action: "import.done", noun: "importRun", nounId: id, runId: id, after }]);
    await tellPlanner(ctx, carsAdded + carsChanged);
  }
}

interface Noted {
  readonly problems: readonly RefusedRow[];
  readonly doubts: readonly DoubtfulRow[];
  readonly done: number;
  readonly counts: Counts;
}

/** Notes how far a run is, and what was wrong with the rows, as far as there is room to keep that. */
export async function note(
  { db, club }: Context,
  run: BegunRun,
  { problems, doubts, done, counts }: Noted,
): Promise<void> {
  const kept = problems.slice(0, Math.max(0, KEPT - run.problems));
  const doubted = doubts.slice(0, Math.max(0, KEPT - run.doubts));
  await db.$executeRaw`
    UPDATE import_run SET rows_done = ${done}, cars_added = cars_added + ${counts.added},
      cars_changed = cars_changed + ${counts.changed}, rows_refused = rows_refused + ${counts.refused},
      problems = coalesce(problems, '[]'::jsonb) || ${JSON.stringify(kept)}::jsonb,
      doubts = coalesce(doubts, '[]'::jsonb) || ${JSON.stringify(doubted)}::jsonb,
      beat_at = clock_timestamp()
    WHERE club_id = ${club.id}::uuid AND id = ${run.id}::uuid`;
}
