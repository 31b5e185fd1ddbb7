import { insertRows } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import { assessAll } from "../assessment";
import type { Context } from "../context";
import { recordsOf } from "../record";
import { currentRows } from "./policy";

/** Cars in one go. */
const CARS = 200;

/** Works the current values of some cars out again from their records, in the caller's transaction. */
export async function rebuildCurrentValues(
  ctx: Context,
  carIds: readonly string[],
  book: CharacteristicBook,
): Promise<void> {
  for (let start = 0; start < carIds.length; start += CARS) {
    const chunk = carIds.slice(start, start + CARS);
    const assessments = await assessAll(ctx, await recordsOf(ctx, chunk), book, ctx.today);
    const rows = assessments.flatMap(currentRows);
    await ctx.db.currentValue.deleteMany({ where: { carId: { in: [...chunk] } } });
    await insertRows(ctx.db, "currentValue", rows);
  }
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
