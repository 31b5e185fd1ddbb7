import { setImmediate } from "node:timers/promises";
import { insertRows, replaceRows } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import { knownAssessor } from "../assessment";
import type { Context } from "../context";
import { type CarRecord, recordsOf } from "../record";
import { type CurrentRow, currentRows } from "./policy";

/** Cars in one go. */
const CARS = 200;
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
    const records = await recordsOf(ctx, chunk);
    const assess = await knownAssessor(ctx, records, book);
    await replaceRows(ctx.db, "currentValue", {
      owner: "carId",
      owners: chunk,
      key: ["carId", "characteristic", "side"],
      rows: records.map(assess).flatMap(currentRows),
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
  const assess = await knownAssessor(ctx, records, book);
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

/** Works the current values of every car of the club out again. */
export async function rebuildAllCurrentValues(ctx: Context, book: CharacteristicBook): Promise<void> {
  const cars = await ctx.db.car.findMany({ select: { id: true } });
  await rebuildCurrentValues(
    ctx,
    cars.map(({ id }) => id),
    book,
  );
}
