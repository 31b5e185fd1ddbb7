import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { openOperator } from "../gate";
import { compareCurrentValues, rebuildAllCurrentValues, rebuildCurrentValues } from "./index";

let world: World;
let car: { readonly id: string };

beforeAll(async () => {
  world = await openWorld();
  car = await world.car({
    chassis: "M1-007",
    asBuilt: { "front.antiRollBar.diameter": "9/16 in" },
    modified: { "front.disc.face": "drilled" },
    read: { "front.camber": "-0°20'" },
  });
  await world.car({ chassis: "M1-008", read: { "front.disc.face": "plain" } });
}, 120_000);
afterAll(() => world?.close());

const compare = () =>
  openOperator(world.database, "ours", async (ctx) => compareCurrentValues(ctx, await bookOf(ctx)));
const rebuild = () =>
  openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));

describe("current values", () => {
  test("are lacking until they are worked out, one by one by the car's reference", async () => {
    const stale = await compare();
    expect(new Set(stale.map(({ problem }) => problem))).toEqual(new Set(["lacking"]));
    expect(stale).toContainEqual({
      car: "M1-007",
      characteristic: "front.camber",
      side: "left",
      problem: "lacking",
    });
  });

  test("are proven once worked out, with where they come from and how they compare", async () => {
    await rebuild();
    expect(await compare()).toEqual([]);
    const rows = await world.inClub((db) => db.currentValue.findMany({ where: { carId: car.id } }));
    const told = Object.fromEntries(
      rows.map(({ characteristic, side, origin, verdict }) => [
        `${characteristic} ${side}`,
        `${origin}, ${verdict}`,
      ]),
    );
    expect(told).toMatchObject({
      "front.antiRollBar.diameter whole": "asBuilt, asSpecified",
      "front.disc.face whole": "modification, differentPart",
      "front.camber left": "reading, insideLimits",
    });
    expect(told).not.toHaveProperty("front.lowerArm.bush whole");
  });

  test.each([
    ["number = 0.02", "front.antiRollBar.diameter", "whole", "different"],
    ["verdict = 'asSpecified'", "front.disc.face", "whole", "different"],
    ["since = '1999-01-01'", "front.camber", "right", "different"],
    ["origin_id = gen_random_uuid()", "front.camber", "left", "different"],
    ["characteristic = 'front.track'", "front.disc.face", "whole", "lacking"],
  ])(
    "that somebody tampered with (%s) are found, and mended by working them out again",
    async (set, characteristic, side, problem) => {
      await world.asOwner((db) =>
        db.$executeRawUnsafe(
          `UPDATE current_value SET ${set} WHERE car_id = '${car.id}' AND characteristic = '${characteristic}' AND side = '${side}'`,
        ),
      );
      const stale = await compare();
      expect(stale).toContainEqual({ car: "M1-007", characteristic, side, problem });
      if (problem === "lacking")
        expect(stale).toContainEqual({
          car: "M1-007",
          characteristic: "front.track",
          side,
          problem: "left over",
        });
      expect(stale).toHaveLength(problem === "lacking" ? 2 : 1);
      await rebuild();
      expect(await compare()).toEqual([]);
    },
  );

  test("of one car are worked out without touching those of another", async () => {
    await world.asOwner((db) => db.$executeRawUnsafe("UPDATE current_value SET entered = 'tampered'"));
    await openOperator(world.database, "ours", async (ctx) =>
      rebuildCurrentValues(ctx, [car.id], await bookOf(ctx)),
    );
    const stale = await compare();
    expect(stale.length).toBeGreaterThan(0);
    expect(new Set(stale.map((one) => one.car))).toEqual(new Set(["M1-008"]));
  });
});
