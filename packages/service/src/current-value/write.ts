import { setImmediate } from "node:timers/promises";
import { type Database, insertRows, replaceRows } from "@trunnion/db";
import { type CharacteristicBook, ENGINE_VERSION } from "@trunnion/register";
import { knownAssessor, seriesIdsOf } from "../assessment";
import { bookOf } from "../characteristic";
import { listClubs } from "../club";
import type { Context } from "../context";
import { openOperator } from "../gate";
import { tellPlanner } from "../planner";
import { type CarRecord, recordsInTurn } from "../record";
import { refreshWholeSearchIndex, staleCars } from "../search-index";
import { type CurrentRow, currentRows, rowsDiffer } from "./policy";
import { heldTexts, outdatedClubs } from "./read";

/** Cars in one go. */
const CARS = 50;
/** Cars in one transaction, where a whole club is worked out. */
const TURN = 1_000;
/** Such transactions at once: while the database compares for one, this process works the other out. */
const AT_ONCE = 3;
/** Cars assessed without a pause. */
const SLICE = 20;

/** Works the current values of some cars out again from their records, in the caller's transaction; writes those that differ. */
export async function rebuildCurrentValues(
  ctx: Context,
  carIds: readonly string[],
  book: CharacteristicBook,
): Promise<void> {
  for (let start = 0; start < carIds.length; start += CARS) {
    const chunk = carIds.slice(start, start + CARS);
    // A change of such a car that is under way ends first, so that what is written is of the record as it then is.
    const locked = await ctx.db.$queryRaw<{ series: string | null }[]>`
      SELECT series_id::text AS series FROM car WHERE id = ANY(${chunk}::uuid[]) ORDER BY id FOR NO KEY UPDATE`;
    const seriesIds = new Set(locked.flatMap(({ series }) => series ?? []));
    const assess = await knownAssessor(ctx, [...seriesIds], book);
    const held = await heldTexts(ctx, chunk);
    const changed: { readonly id: string; readonly rows: readonly CurrentRow[] }[] = [];
    for (const record of await recordsInTurn(ctx, chunk)) {
      const rows = currentRows(assess(record));
      if (rowsDiffer(held.get(record.id), rows)) changed.push({ id: record.id, rows });
    }
    if (changed.length === 0) continue;
    await replaceRows(ctx.db, "currentValue", {
      owner: "carId",
      owners: changed.map(({ id }) => id),
      key: ["carId", "characteristic", "side"],
      rows: changed.flatMap(({ rows }) => rows),
    });
  }
}

/**
 * Works out the current values of records that are not in the database yet, a few at a time, so that what waits for the
 * database meanwhile is answered.
 */
export async function currentValuesOf(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
): Promise<readonly CurrentRow[]> {
  const rows: CurrentRow[] = [];
  const assess = await knownAssessor(ctx, seriesIdsOf(records), book);
  for (let start = 0; start < records.length; start += SLICE) {
    await setImmediate();
    rows.push(
      ...records
        .slice(start, start + SLICE)
        .map(assess)
        .flatMap(currentRows),
    );
  }
  return rows;
}

/** Writes current values of cars that have none yet, in the caller's transaction. */
export async function addCurrentValues(ctx: Context, rows: readonly CurrentRow[]): Promise<void> {
  await insertRows(ctx.db, "currentValue", rows);
}

/** Works the current values of every car of the club out again, in the caller's transaction. */
export async function rebuildAllCurrentValues(ctx: Context, book: CharacteristicBook): Promise<void> {
  const cars = await ctx.db.car.findMany({ select: { id: true } });
  await rebuildCurrentValues(
    ctx,
    cars.map(({ id }) => id),
    book,
  );
}

/**
 * Works the current values of every car of a club out again, some cars a transaction, and notes by which version of the
 * engines; then what cars that changed are found by and counted under. Whoever changes a car meanwhile waits for its turn at
 * most.
 */
export async function rebuildClub(database: Database, slug: string): Promise<void> {
  const ids = await openOperator(database, slug, ({ db }) =>
    db.car.findMany({ select: { id: true }, orderBy: { id: "asc" } }),
  );
  let next = 0;
  const takeTurns = async () => {
    for (;;) {
      const turn = ids.slice(next, next + TURN).map(({ id }) => id);
      if (turn.length === 0) return;
      next += turn.length;
      await openOperator(database, slug, async (ctx) => rebuildCurrentValues(ctx, turn, await bookOf(ctx)));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, takeTurns));
  await openOperator(database, slug, async (ctx) => {
    const { db, club } = ctx;
    await db.club.update({
      where: { id: club.id },
      data: { workedOutBy: ENGINE_VERSION },
      select: { id: true },
    });
    await tellPlanner(ctx, ids.length);
  });
  const open = <T>(work: (ctx: Context) => Promise<T>) => openOperator(database, slug, work);
  await refreshWholeSearchIndex(open, await open(bookOf));
}

/** Changed cars of a club from which on they are not left to who looks first. */
const MANY = 1_000;

/**
 * Works out again what an earlier version of the program left behind: current values, and what very many cars that changed
 * are found by and counted under.
 *
 * @param say told, a line at a time, what takes long
 */
export async function rebuildOutdatedClubs(database: Database, say: (line: string) => void): Promise<void> {
  for (const slug of await outdatedClubs(database)) {
    say(`Working out the current values of ${slug} again: another version of the program left them …`);
    await rebuildClub(database, slug);
  }
  for (const slug of await listClubs(database)) {
    const open = <T>(work: (ctx: Context) => Promise<T>) => openOperator(database, slug, work);
    const cars = await open(staleCars);
    if (cars < MANY) continue;
    say(`Working out what ${cars} cars of ${slug} are found by and counted under …`);
    await refreshWholeSearchIndex(open, await open(bookOf));
  }
}
