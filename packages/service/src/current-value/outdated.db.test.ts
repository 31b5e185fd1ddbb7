import { openWorld, type World } from "@trunnion/fixtures";
import { ENGINE_VERSION } from "@trunnion/register";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { openOperator } from "../gate";
import { compareCurrentValues, outdatedClubs, rebuildClub, rebuildOutdatedClubs } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const stale = () =>
  openOperator(world.database, "ours", async (ctx) => compareCurrentValues(ctx, await bookOf(ctx)));

test("what another version of the program judged otherwise is known as such and worked out again, once", async () => {
  await world.car({ read: { "front.camber": "-0°30'" } });
  await rebuildClub(world.database, "theirs");
  await rebuildClub(world.database, "ours");
  expect(await outdatedClubs(world.database)).toEqual([]);

  // As a program would have left it whose comparison came to another verdict.
  await world.inClub((db) => db.currentValue.updateMany({ data: { verdict: "outsideLimits" } }));
  await world.asOwner(
    (db) => db.$executeRaw`UPDATE club SET worked_out_by = ${ENGINE_VERSION - 1} WHERE slug = 'ours'`,
  );
  expect(await outdatedClubs(world.database)).toEqual(["ours"]);
  expect(await stale()).not.toEqual([]);

  const said: string[] = [];
  await rebuildOutdatedClubs(world.database, (line) => said.push(line));
  expect(said).toEqual([expect.stringContaining("ours")]);
  expect(await outdatedClubs(world.database)).toEqual([]);
  expect(await stale()).toEqual([]);
  await rebuildOutdatedClubs(world.database, (line) => said.push(line));
  expect(said).toHaveLength(1);
});
