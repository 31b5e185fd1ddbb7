import { openWorld, type World } from "@trunnion/fixtures";
import { refused } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openMember, openOperator } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

describe("a club opened for a member", () => {
  test("says who acts, with the roles of that club only", async () => {
    const member = await world.person({ name: "Łucja", roles: ["scrutineer"] });
    const actor = await openMember(world.database, member, "ours", async (ctx) => ctx.actor);
    const { personId, membershipId } = member;
    expect(actor).toEqual({ personId, membershipId, name: "Łucja", roles: ["scrutineer"] });
  });

  test("is refused to a stranger, whether the club is there or not, in the same words", async () => {
    const stranger = await world.person({ roles: ["registrar"], club: world.theirs });
    for (const club of ["ours", "nowhere"]) {
      const attempt = openMember(world.database, stranger, club, async () => "in");
      await expect(attempt).rejects.toMatchObject({ code: "NOT_A_MEMBER", details: { club } });
    }
  });

  test("is refused to who has left", async () => {
    const member = await world.person({ roles: ["registrar"] });
    await world.inClub((db) =>
      db.membership.updateMany({ where: { personId: member.personId }, data: { leftAt: new Date() } }),
    );
    const attempt = openMember(world.database, member, "ours", async () => "in");
    await expect(attempt).rejects.toMatchObject({ code: "NOT_A_MEMBER" });
  });

  test("keeps nothing of work that was refused half way", async () => {
    const member = await world.person({ roles: ["registrar"] });
    const before = await world.fingerprint();
    const attempt = openMember(world.database, member, "ours", async ({ db }) => {
      await db.marque.create({ data: { slug: "half", name: "Half" } });
      throw refused("CAR_NOT_FOUND", { car: "x" });
    });
    await expect(attempt).rejects.toMatchObject({ code: "CAR_NOT_FOUND" });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a club opened for the command line", () => {
  test("acts with every role and as nobody, on the day it is told", async () => {
    const now = new Date("2031-02-03T04:05:06Z");
    const told = await openOperator(
      world.database,
      "ours",
      async ({ actor, today, club }) => ({ actor, today, club }),
      { now },
    );
    expect(told.today).toBe("2031-02-03");
    expect(told.actor).toMatchObject({ personId: null, name: "command line" });
    expect([...told.actor.roles].sort()).toEqual(["fleetManager", "owner", "registrar", "scrutineer"]);
    expect(told.club).toMatchObject({ slug: "ours", unitSystem: "metric", sideWords: "leftRight" });
  });

  test("that is not there is refused with those that are", async () => {
    const attempt = openOperator(world.database, "nowhere", async () => "in");
    await expect(attempt).rejects.toMatchObject({
      code: "CLUB_NOT_FOUND",
      details: { club: "nowhere", known: ["ours", "theirs"] },
    });
  });
});
