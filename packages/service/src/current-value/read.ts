import type { Database } from "@trunnion/db";
import { clubsNotWorkedOutBy } from "@trunnion/db/gate";
import { type CharacteristicBook, ENGINE_VERSION, stateKey } from "@trunnion/register";
import { type Assessment, assessAll } from "../assessment";
import type { Context } from "../context";
import { recordsOf } from "../record";
import { currentRows, differs, type HeldCells, heldKey, heldSql, heldTextSql } from "./policy";

/** A current value that is not what the records amount to. */
export interface StaleValue {
  readonly car: string;
  readonly characteristic: string;
  readonly side: string;
  readonly problem: "lacking" | "left over" | "different";
}

/** Clubs, by short name, whose current values another version of the engines worked out, or nobody knows which. */
export async function outdatedClubs(database: Database): Promise<readonly string[]> {
  return clubsNotWorkedOutBy(database, ENGINE_VERSION);
}

/** The current values of some cars as they stand, to be asked for by the car's id, once each. */
export async function heldValues(
  { db }: Context,
  carIds: readonly string[],
): Promise<(carId: string) => readonly HeldCells[]> {
  const rows = await db.$queryRaw<{ car: string; held: string }[]>(heldSql(carIds));
  const held = new Map(rows.map((row) => [row.car, row.held]));
  return (carId) => JSON.parse(held.get(carId) ?? "[]") as readonly HeldCells[];
}

/** The same as text, for {@link rowsDiffer}. */
export async function heldTexts(
  { db }: Context,
  carIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await db.$queryRaw<{ car: string; held: string }[]>(heldTextSql(carIds));
  return new Map(rows.map(({ car, held }) => [car, held]));
}

/** What is not right of one car's rows. */
function staleOf(assessment: Assessment, held: readonly HeldCells[]): readonly StaleValue[] {
  const car = assessment.record.reference;
  const kept = new Map(held.map((cells) => [heldKey(cells), cells]));
  const stale: StaleValue[] = [];
  for (const worked of currentRows(assessment)) {
    const { characteristic, side } = worked;
    const cells = kept.get(stateKey(characteristic, side));
    kept.delete(stateKey(characteristic, side));
    if (!cells) stale.push({ car, characteristic, side, problem: "lacking" });
    else if (differs(cells, worked)) stale.push({ car, characteristic, side, problem: "different" });
  }
  for (const [characteristic, side] of kept.values())
    stale.push({ car, characteristic: String(characteristic), side: String(side), problem: "left over" });
  return stale;
}

/** Proves that the current values are what the records amount to; empty when they are. */
export async function compareCurrentValues(
  ctx: Context,
  book: CharacteristicBook,
): Promise<readonly StaleValue[]> {
  const cars = await ctx.db.car.findMany({ select: { id: true } });
  const stale: StaleValue[] = [];
  for (let start = 0; start < cars.length; start += 200) {
    const ids = cars.slice(start, start + 200).map(({ id }) => id);
    const heldOf = await heldValues(ctx, ids);
    const records = await recordsOf(ctx, ids);
    for (const assessment of await assessAll(ctx, records, book, ctx.today))
      stale.push(...staleOf(assessment, heldOf(assessment.record.id)));
  }
  return stale;
}
