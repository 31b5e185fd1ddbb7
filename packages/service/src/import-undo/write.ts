import { type RowUpdate, updateRows } from "@trunnion/db";
import { refused } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { requireMayImport, requireRun, statusOf, statusWords, waitForTurn } from "../import-run";
import { type JournalLine, writeJournal } from "../journal";
import { type KeptStep, stepsOf, type Undoing, undoBlocks, undoingOf } from "./read";

/** What undoing a reading-in did. */
export interface UndoReport {
  readonly run: string;
  readonly file: string;
  /** Cars that it had added, and that are gone again. */
  readonly carsRemoved: number;
  /** Cars that it had changed, and that are as they were. */
  readonly carsRestored: number;
}

/** Tables in the order in which rows of a reading-in can go: what rests on others first. */
const order = [
  "settingSheet",
  "modification",
  "submission",
  "keepership",
  "keeper",
  "asBuiltValue",
  "carOption",
  "carStatusSpan",
  "carIdentity",
] as const;

async function removeRows({ db }: Context, { rows }: Undoing): Promise<void> {
  const ids = (table: (typeof order)[number]) => [...(rows.get(table) ?? [])];
  await db.reading.deleteMany({ where: { settingSheetId: { in: ids("settingSheet") } } });
  await db.settingSheet.deleteMany({ where: { id: { in: ids("settingSheet") } } });
  await db.modificationChange.deleteMany({ where: { modificationId: { in: ids("modification") } } });
  await db.modification.deleteMany({ where: { id: { in: ids("modification") } } });
  await db.submission.deleteMany({ where: { id: { in: ids("submission") } } });
  await db.keepership.deleteMany({ where: { id: { in: ids("keepership") } } });
  await db.keeper.deleteMany({ where: { id: { in: ids("keeper") }, keeperships: { none: {} } } });
  await db.asBuiltValue.deleteMany({ where: { id: { in: ids("asBuiltValue") } } });
  const options = ids("carOption").map((key) => key.split(" "));
  await db.$executeRaw`
    DELETE FROM car_option USING unnest(${options.map(([car]) => car)}::uuid[], ${options.map(([, code]) => code)}::text[]) AS gone(car_id, code)
    WHERE car_option.car_id = gone.car_id AND car_option.code = gone.code`;
  await db.carStatusSpan.deleteMany({ where: { id: { in: ids("carStatusSpan") } } });
  await db.carIdentity.deleteMany({ where: { id: { in: ids("carIdentity") } } });
}

/** Statements that take cars away with all they have, in the order that foreign keys want; `$1` is the cars. */
const removals = [
  "DELETE FROM reading USING setting_sheet s WHERE s.club_id = reading.club_id AND s.id = reading.setting_sheet_id AND s.car_id = ANY($1::uuid[])",
  "DELETE FROM setting_sheet WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM modification_change USING modification m WHERE m.club_id = modification_change.club_id AND m.id = modification_change.modification_id AND m.car_id = ANY($1::uuid[])",
  "DELETE FROM modification WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM submission WHERE car_id = ANY($1::uuid[])",
  // A keeper whom somebody has given another car since stays with that.
  `WITH gone AS (DELETE FROM keepership WHERE car_id = ANY($1::uuid[]) RETURNING id, keeper_id, recorded_at)
   DELETE FROM keeper USING gone WHERE keeper.id = gone.keeper_id AND keeper.recorded_at = gone.recorded_at
     AND NOT EXISTS (SELECT FROM keepership k WHERE k.club_id = keeper.club_id AND k.keeper_id = keeper.id AND NOT k.car_id = ANY($1::uuid[]))`,
  "DELETE FROM as_built_value WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM car_option WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM car_status_span WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM car_identity WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM current_value WHERE car_id = ANY($1::uuid[])",
  "DELETE FROM car WHERE id = ANY($1::uuid[])",
];

async function removeCars({ db }: Context, { added }: Undoing): Promise<void> {
  if (added.length === 0) return;
  for (const statement of removals) await db.$executeRawUnsafe(statement, added);
}

/** Puts changed columns back; a car's version counts on, since this too is a change. */
async function restore({ db }: Context, { restored, changed }: Undoing): Promise<void> {
  for (const table of new Set(restored.map((step) => step.table))) {
    const rows = restored.filter((step) => step.table === table).map(rowBefore);
    await updateRows(db, table, rows);
  }
  const cars = [...changed.keys()];
  await db.$executeRaw`UPDATE car SET version = version + 1 WHERE id = ANY(${cars}::uuid[])`;
}

function rowBefore({ table, rowId, before }: KeptStep): RowUpdate {
  const columns = Object.entries(before ?? {}).filter(([name]) => table !== "car" || name !== "version");
  return { ...Object.fromEntries(columns), id: rowId };
}

interface Told {
  readonly car_id: string;
  readonly action: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** The journal's lines of the reading-in the other way round: what it had made of a car, and what stands again. */
async function reversed({ db }: Context, runId: string, file: string): Promise<readonly JournalLine[]> {
  const rows = await db.$queryRaw<Told[]>`
    SELECT car_id::text, action, before, after FROM journal_entry
    WHERE run_id = ${runId}::uuid AND action IN ('car.add', 'car.change') ORDER BY sequence`;
  return rows.map(({ car_id: carId, action, before, after }) => ({
    action: action === "car.add" ? "car.remove" : "car.change",
    noun: "car",
    nounId: carId,
    carId,
    runId,
    reason: `import of ${file} undone`,
    before: after as object,
    ...(before === null ? {} : { after: before as object }),
  }));
}

/**
 * Takes a reading-in back as one step: cars it added go, cars it changed are as they were. Nothing is undone by halves.
 *
 * @throws Refusal ROLE_NEEDED, IMPORT_NOT_FOUND, IMPORT_NOT_READY for one that has not been done, or was undone already;
 *   UNDO_BLOCKED with the cars that somebody changed since, or hung something on; then nothing is written
 */
export async function undoImport(ctx: Context, runId: string): Promise<UndoReport> {
  requireMayImport(ctx);
  await waitForTurn(ctx);
  const run = await requireRun(ctx, runId);
  const status = statusOf(run, ctx.now);
  const file = run.fileName;
  if (status !== "done" && status !== "interrupted" && status !== "failed") {
    throw refused("IMPORT_NOT_READY", { file, status: statusWords[status] });
  }
  const undoing = undoingOf(await stepsOf(ctx, run.id));
  const { added, changed } = undoing;
  const cars = [...added, ...changed.keys()];
  await ctx.db.$queryRaw`SELECT id FROM car WHERE id = ANY(${cars}::uuid[]) ORDER BY id FOR UPDATE`;
  const blocks = await undoBlocks(ctx, run.id, undoing);
  if (blocks.count > 0) throw refused("UNDO_BLOCKED", { file, ...blocks });
  await removeRows(ctx, undoing);
  await restore(ctx, undoing);
  await removeCars(ctx, undoing);
  await rebuildCurrentValues(ctx, [...changed.keys()], await bookOf(ctx));
  // What it said may name people; once it is undone nothing needs it.
  await ctx.db.importStep.deleteMany({ where: { runId: run.id } });
  await ctx.db.importRun.update({
    where: { clubId_id: { clubId: ctx.club.id, id: run.id } },
    data: { status: "undone", undoneAt: new Date() },
  });
  const after = { file, removed: added.length, restored: changed.size };
  await writeJournal(ctx, [
    ...(await reversed(ctx, run.id, file)),
    { action: "import.undone", noun: "importRun", nounId: run.id, runId: run.id, after },
  ]);
  return { run: run.id, file, carsRemoved: added.length, carsRestored: changed.size };
}
