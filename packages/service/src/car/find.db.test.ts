import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openOperator } from "../gate";
import { findCar } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-007" });
  await world.car({ chassis: "M1-007", claim: 2 });
  await world.car({ chassis: "M1-007", club: world.theirs });
}, 120_000);
afterAll(() => world?.close());

const find = (reference: string) => openOperator(world.database, "ours", (ctx) => findCar(ctx, reference));

describe("a car's reference", () => {
  test.each([
    ["M1-007", 1],
    ["m1007", 1],
    ["M1-007~1", 1],
    ["M1-007~2", 2],
  ])("%s finds claimant %d", async (reference, claim) => {
    expect(await find(reference)).toMatchObject({ chassis: "M1-007", claim });
  });

  test.each(["M1-008", "M1-007~3", "M1-007~x", "M1-007~", "", "~2"])("%j finds none", async (reference) => {
    await expect(find(reference)).rejects.toMatchObject({
      code: "CAR_NOT_FOUND",
      details: { car: reference },
    });
  });
});
