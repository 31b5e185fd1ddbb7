import { Prisma } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import type { Condition } from "@trunnion/register";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { conditionBits, everyCarSql, truthBitsSql } from "../condition-bits";
import { conditionSql } from "../condition-sql";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { refreshSearchIndex } from "../search-index";
import type { Counted } from "../tally";
import { commonestSql, type First, firstCountSql, fourfoldSql } from "./policy";

let world: World;
const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

const keys = ["front.camber", "front.disc.face", "rear.antiRollBar.diameter", "body.colour"] as const;
const verdicts = ["outsideLimits", "asSpecified", "cannotTell", "notRecorded", "missing"] as const;
const CARS = 12;

/** Cars of which something is recorded of every characteristic asked about, and which differ there in every way. */
beforeAll(async () => {
  world = await openWorld();
  const cars: string[] = [];
  for (let at = 0; at < CARS; at += 1) {
    const { id } = await world.car({
      status: at % 3 === 0 ? "laidUp" : "inUse",
      read: { "front.camber left": `-${at % 4}°`, "front.camber right": "0°", "body.colour": "Red" },
      asBuilt: { "rear.antiRollBar.diameter": at % 2 === 0 ? "16 mm" : "20 mm" },
      modified: { "front.disc.face": at % 3 === 1 ? "plain" : "drilled" },
    });
    cars.push(id);
  }
  await inClub(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
  await world.inClub(async (db) => {
    for (const [at, carId] of cars.entries())
      for (const [place, characteristic] of keys.entries()) {
        const verdict = verdicts[(at * 2 + place) % verdicts.length] ?? "added";
        await db.currentValue.updateMany({ where: { carId, characteristic }, data: { verdict } });
      }
  });
  await inClub(async (ctx) => refreshSearchIndex(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

/** Cars of which a condition holds: off the blocks, and gone over one by one. */
function bothWays(ctx: Context, condition: Condition): readonly Counted[] {
  const bits = truthBitsSql({ ...conditionBits(condition, ctx.today), among: everyCarSql({}) });
  const where = Prisma.sql`c.merged_into_id IS NULL AND ${conditionSql(condition, ctx.today).yes}`;
  return [{ where, bits }, { where }];
}

async function asked(ctx: Context, first: First) {
  const tables = await ctx.db.$queryRaw<{ characteristic: string }[]>(fourfoldSql(first));
  const all = tables.map(({ characteristic }) => characteristic);
  const common = await ctx.db.$queryRaw(commonestSql(first, all));
  return { tables, common, cars: await ctx.db.$queryRaw(firstCountSql(first)) };
}

const conditions: readonly Condition[] = [
  { op: "always" },
  { op: "number", characteristic: "front.camber", is: "lt", si: -0.01 },
  { op: "not", of: { op: "status", in: ["inUse"] } },
];
const firsts = [
  { key: "front.camber" },
  { key: "front.disc.face", value: "drilled" },
  { key: "front.disc.face" },
  { key: "rear.antiRollBar.diameter" },
];

test.each(conditions.flatMap((condition) => firsts.map((first) => [condition, first] as const)))(
  "where %j holds, what goes with %j is by blocks what going over the cars gives",
  async (condition, first) => {
    const [blocks, oneByOne] = await inClub(async (ctx) => {
      const found = [];
      for (const counted of bothWays(ctx, condition)) found.push(await asked(ctx, { ...first, counted }));
      return found;
    });
    expect(blocks).toEqual(oneByOne);
    expect(blocks?.tables.length).toBeGreaterThan(0);
  },
);
