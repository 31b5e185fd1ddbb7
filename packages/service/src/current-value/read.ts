import type { Database } from "@trunnion/db";
import { clubsNotWorkedOutBy } from "@trunnion/db/gate";
import { type CharacteristicBook, ENGINE_VERSION, stateKey } from "@trunnion/register";
import { assessAll } from "../assessment";
import type { Context } from "../context";
import { recordsOf } from "../record";
import { currentRows } from "./policy";

/** A current value that is not what the records amount to. */
export interface StaleValue {
  readonly car: string;
  readonly characteristic: string;
  readonly side: string;
  readonly problem: "lacking" | "left over" | "different";
}

const compared = [
  "valueKind",
  "entered",
  "number",
  "resolution",
  "text",
  "origin",
  "originId",
  "sinceText",
  "nominalNumber",
  "verdict",
] as const;

type Row = ReturnType<typeof currentRows>[number];

function differs(kept: Row, worked: Row): boolean {
  const since = [kept.since, worked.since].map((since) =>
    since == null ? "" : new Date(since).toISOString(),
  );
  return since[0] !== since[1] || compared.some((part) => kept[part] !== worked[part]);
}

/** Clubs, by short name, whose current values another version of the engines worked out, or nobody knows which. */
export async function outdatedClubs(database: Database): Promise<readonly string[]> {
  return clubsNotWorkedOutBy(database, ENGINE_VERSION);
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
    const rows = await ctx.db.currentValue.findMany({ where: { carId: { in: ids } } });
    const references = new Map<string, string>();
    const kept = new Map(rows.map((row) => [`${row.carId} ${stateKey(row.characteristic, row.side)}`, row]));
    for (const assessment of await assessAll(ctx, await recordsOf(ctx, ids), book, ctx.today)) {
      const car = assessment.record.reference;
      references.set(assessment.record.id, car);
      for (const worked of currentRows(assessment)) {
        const key = `${worked.carId} ${stateKey(worked.characteristic, worked.side)}`;
        const row = kept.get(key);
        kept.delete(key);
        const place = { car, characteristic: worked.characteristic, side: worked.side };
        if (!row) stale.push({ ...place, problem: "lacking" });
        else if (differs(row, worked)) stale.push({ ...place, problem: "different" });
      }
    }
    stale.push(
      ...[...kept.values()].map(({ carId, characteristic, side }) => ({
        car: references.get(carId) ?? carId,
        characteristic,
        side,
        problem: "left over" as const,
      })),
    );
  }
  return stale;
}
