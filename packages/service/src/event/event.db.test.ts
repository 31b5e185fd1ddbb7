import { openWorld, type World } from "@trunnion/fixtures";
import { starterChecks, starterClasses } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { eventPage } from "../event-page";
import { openOperator } from "../gate";
import { home } from "../home";
import { addRuleSet, checksOf } from "../rule-set";
import { addEntries, addEvent, listEvents } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: Parameters<typeof openOperator<T>>[2]) => openOperator(world.database, "ours", work);
const addRules = () =>
  ours((ctx) =>
    addRuleSet(ctx, {
      slug: "track-day",
      name: "Starter rules",
      edition: "2026",
      checks: starterChecks,
      classes: starterClasses,
    }),
  );

describe("a rule set", () => {
  test("is read back as the checks it was made of, in their order", async () => {
    const id = await addRules();
    expect(await ours((ctx) => checksOf(ctx, id))).toEqual(starterChecks);
  });

  test("added again is the next version, copied from the one before", async () => {
    await addRules();
    const rows = await world.inClub((db) => db.ruleSet.findMany({ orderBy: { version: "asc" } }));
    expect(rows.map(({ version }) => version)).toEqual([1, 2]);
    expect(rows.map(({ copiedFromId }) => copiedFromId)).toEqual([null, rows[0]?.id]);
  });

  test("with a check that does not read as one stops, as a bug and not as a mistake of the reader", async () => {
    const { ruleSetId } = await world.event();
    await world.inClub((db) =>
      db.ruleCheck.updateMany({
        where: { ruleSetId, code: "wheel-nuts" },
        data: { condition: { op: "perhaps" } },
      }),
    );
    const error = await ours((ctx) => checksOf(ctx, ruleSetId)).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Error);
    expect((error as Error).name).toBe("Error");
    expect((error as Error).message).toMatch(/^check "wheel-nuts" is kept as something that is none/);
  });
});

describe("an event", () => {
  test("lists its entries as people count, and says what differs on each car on the day", async () => {
    const ruleSetId = await addRules();
    const car = await world.car({
      chassis: "M1-050",
      modified: { "front.disc.face": "drilled" },
      modifiedOn: "2026-06-01",
    });
    const make = (slug: string, on: string) =>
      ours(async (ctx) => {
        const eventId = await addEvent(ctx, { slug, name: slug, on, venue: "Kvitnes ring", ruleSetId });
        await addEntries(ctx, eventId, [
          { runningNumber: "12", carId: car.id, driver: "Åse Ørnhøi" },
          { runningNumber: "7", describedAs: "saloon, 1966" },
        ]);
      });
    await make("before", "2026-05-31");
    await make("after", "2026-06-01");
    const pages = await ours(async (ctx) => [await eventPage(ctx, "before"), await eventPage(ctx, "after")]);
    expect(pages.map(({ entries }) => entries.map(({ runningNumber }) => runningNumber))).toEqual([
      ["7", "12"],
      ["7", "12"],
    ]);
    expect(pages.map(({ entries }) => entries.map(({ deviating }) => deviating))).toEqual([
      [undefined, 0],
      [undefined, 1],
    ]);
    expect(pages[1]?.entries[1]).toMatchObject({ car: { reference: "M1-050" }, assemblies: { brakes: 1 } });
    expect((await ours(listEvents)).slice(0, 2).map(({ slug, entryCount }) => [slug, entryCount])).toEqual([
      ["after", 2],
      ["before", 2],
    ]);
  });

  test("puts no driver's name into the journal", async () => {
    const lines = await world.inClub((db) => db.journalEntry.findMany({ where: { action: "entry.add" } }));
    expect(lines.length).toBeGreaterThan(0);
    expect(JSON.stringify(lines.map(({ after }) => after))).not.toContain("Ørnhøi");
    expect(lines.map(({ after }) => (after as { driver: string }).driver)).toContain("given");
  });

  test("refuses a number that is taken, and enters none of the others with it", async () => {
    const event = await world.event({ slug: "taken", entries: [{ number: "7" }] });
    const attempt = ours((ctx) =>
      addEntries(ctx, event.id, [{ runningNumber: "8" }, { runningNumber: "7" }]),
    );
    await expect(attempt).rejects.toMatchObject({
      code: "RUNNING_NUMBER_TAKEN",
      details: { event: "taken", number: "7" },
    });
    const entries = await world.inClub((db) => db.entry.findMany({ where: { eventId: event.id } }));
    expect(entries.map(({ runningNumber }) => runningNumber)).toEqual(["7"]);
  });
});

describe("the first page", () => {
  test("counts the cars, names the numbers in dispute and the next event that has not been", async () => {
    await world.car({ chassis: "M1-060" });
    await world.car({ chassis: "M1-060", claim: 2 });
    await world.car({ chassis: "M1-060", club: world.theirs });
    const told = await openOperator(world.database, "ours", home, { now: new Date("2026-06-01T20:00:00Z") });
    expect(told).toMatchObject({
      today: "2026-06-01",
      cars: 3,
      disputed: [{ reference: "M1-060", claims: 2 }],
      nextEvent: { slug: "after", on: "2026-06-01", entryCount: 2 },
      ownCars: [],
    });
    const past = await openOperator(world.database, "ours", home, { now: new Date("2026-06-02T00:00:00Z") });
    expect(past).not.toHaveProperty("nextEvent");
  });
});
