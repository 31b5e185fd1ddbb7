import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openOperator } from "./gate";
import { tellPlanner } from "./planner";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

/** Cars that the planner believes there are; below nought while nobody has looked. */
const believed = () =>
  world.asOwner(async (db) => {
    const [row] = await db.$queryRaw<{ cars: number }[]>`
      SELECT reltuples::int AS cars FROM pg_class WHERE oid = 'car'::regclass`;
    return row?.cars;
  });

test("after many cars the planner knows how many there are, told by a role that owns no table; after a few it is left alone", async () => {
  for (const number of [1, 2, 3]) await world.car({ chassis: `M1-00${number}` });
  const before = await believed();
  await openOperator(world.database, "ours", (ctx) => tellPlanner(ctx, 999));
  expect(await believed()).toBe(before);
  await openOperator(world.database, "ours", (ctx) => tellPlanner(ctx, 1_000));
  expect(await believed()).toBe(3);
});
