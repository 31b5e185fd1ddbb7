import { insertRows, replaceRows } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import { assessAllKnown } from "../assessment";
import type { Context } from "../context";
import { type CarRecord, recordsOf } from "../record";
import { currentRows } from "./policy";

/** Cars in one go. */
const CARS = 200;

/** Works the current values of some cars out again from their records, in the caller's transaction; writes those that differ. */
export async function rebuildCurrentValues(
  ctx: Context,
  carIds: readonly string[],
  book: CharacteristicBook,
): Promise<void> {
  for (let start = 0; start < carIds.length; start += CARS) {
    const chunk = carIds.slice(start, start + CARS);
    const assessments = await assessAllKnown(ctx, await recordsOf(ctx, chunk), book);
    await replaceRows(ctx.db, "currentValue", {
      owner: "carId",
      owners: chunk,
      key: ["carId", "characteristic", "side"],
      rows: assessments.flatMap(currentRows),
    });
  }
}

/** Writes the current values of cars that have none yet, in the caller's transaction: of records just written, say. */
export async function addCurrentValues(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
): Promise<void> {
  const assessments = await assessAllKnown(ctx, records, book);
  await insertRows(ctx.db, "currentValue", assessments.flatMap(currentRows));
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
