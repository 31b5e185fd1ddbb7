import type { Role } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import { openMember } from "../gate";

let world: World;

beforeAll(async () => {
  world = await openWorld();
  await world.car({ chassis: "M1-001", keeper: { name: "Tõnu Bråtvær" } });
}, 120_000);
afterAll(() => world?.close());

async function pageFor(role: Role, club = world.ours) {
  const member = await world.person({ roles: [role], club });
  return openMember(world.database, member, club.slug, (ctx) => carPage(ctx, "M1-001"));
}

describe("the keepers of a car", () => {
  test.each(["registrar", "fleetManager"] as const)("are shown to a %s", async (role) => {
    const { keepers } = await pageFor(role);
    expect(keepers).toMatchObject([{ name: "Tõnu Bråtvær" }]);
  });

  test.each(["owner", "scrutineer"] as const)(
    "are not shown to a member who is only %s, anywhere on the page",
    async (role) => {
      const page = await pageFor(role);
      expect(page.keepers).toBeNull();
      expect(JSON.stringify(page)).not.toContain("Bråtvær");
    },
  );

  test("stand the present one first, and one that was erased says so", async () => {
    await world.inClub(async (db) => {
      const car = await db.car.findFirstOrThrow({ where: { chassisKey: "M1001" } });
      const erased = await db.keeper.create({ data: { erasedAt: new Date() } });
      const to = new Date("1999-12-31");
      await db.keepership.create({ data: { carId: car.id, keeperId: erased.id, to, fromText: "1980" } });
    });
    const { keepers } = await pageFor("registrar");
    expect(keepers?.map(({ name, from, to }) => [name, from, to])).toEqual([
      ["Tõnu Bråtvær", "", undefined],
      ["erased", "1980", "1999-12-31"],
    ]);
  });
});
