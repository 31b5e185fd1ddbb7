import type { Role } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { refused } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { survival } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({
    chassis: "M1-001",
    built: "3/71",
    status: "inUse",
    read: { "front.camber": "0°", "body.colour": "Red", "front.disc.face": "plain" },
  });
  const thin = await world.car({
    chassis: "M1-002",
    built: "3/71",
    status: "inUse",
    read: { "body.colour": "Blue" },
    keeper: { name: "Tõnu Bråtvær" },
  });
  await world.car({ chassis: "M1-002", claim: 2 });
  await world.car({ chassis: "M1-003", built: "1972", status: "destroyed", read: { "body.colour": "Blue" } });
  await world.event({ slug: "next", on: "2199-05-01", entries: [{ number: "1", car: thin }] });
  const merged = await world.car({ chassis: "M1-004", built: "3/71", status: "inUse" });
  await world.inClub((db) =>
    db.car.updateMany({ where: { id: merged.id }, data: { mergedIntoId: thin.id } }),
  );
  await openOperator(world.database, "ours", async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const seenBy = async (role: Role, series?: string) => {
  const member = await world.person({ roles: [role] });
  return openMember(world.database, member, "ours", (ctx) => survival(ctx, series));
};

describe("survival", () => {
  test("counts records and numbers apart, by what has become of them, merged records not at all", async () => {
    const { series } = await seenBy("owner");
    expect(series).toMatchObject([
      { name: "Mark 1", cars: 4, numbers: 3, statuses: { inUse: 2, destroyed: 1, unknown: 1 } },
    ]);
  });

  test("goes by month of building where the month is certain", async () => {
    const { months, noMonth } = await seenBy("owner");
    expect(months).toEqual([{ month: "1971-03", cars: 2, inUse: 2, resting: 0, gone: 0, unknown: 0 }]);
    expect(noMonth).toBe(2);
  });

  test("says how much the records of cars that are not gone hold", async () => {
    const { completeness } = await seenBy("owner");
    expect(completeness).toMatchObject({ cars: 3, noStatus: 1, noBuilt: 1, nothing: 1, median: 1 });
  });

  test("names the thinnest in use first, what others of the series have recorded, and where it can be seen", async () => {
    const { thin } = await seenBy("registrar");
    expect(thin.map(({ reference, values }) => [reference, values])).toEqual([
      ["M1-002", 1],
      ["M1-001", 4],
      ["M1-002~2", 0],
    ]);
    expect(thin[0]?.ask).toEqual(["Front camber", "Front disc face"]);
    expect(thin[0]?.seenAt).toMatchObject({ slug: "next", on: "2199-05-01" });
    expect(thin[2]?.ask.slice(0, 2)).toEqual(["What has become of it", "When it was built"]);
  });

  test("says whom to ask to those who may see keepers, and to nobody else", async () => {
    const whom = async (role: Role) => (await seenBy(role)).thin[0]?.whom;
    expect(await whom("registrar")).toEqual({ who: "keeper", member: false, name: "Tõnu Bråtvær" });
    expect(await whom("owner")).toEqual({ who: "registrar" });
    expect(JSON.stringify(await seenBy("scrutineer"))).not.toContain("Bråtvær");
  });

  test("is narrowed to a series that there is", async () => {
    expect((await seenBy("owner", "mark-1")).thin).toHaveLength(3);
    await expect(seenBy("owner", "mark-9")).rejects.toMatchObject(
      refused("SERIES_NOT_FOUND", { series: "mark-9", known: ["mark-1"] }),
    );
  });
});
